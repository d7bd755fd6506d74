import { describe, expect, it } from "vitest"
import { fourBarPose } from "../../src/linkage/four-bar/pose.js"
import {
  fourBar,
  type MechanismInput,
  type PlanarLinkage,
  type PlanarLinkageInput,
  planarLinkage,
  scissor,
  sliderCrank,
} from "../../src/linkage/index.js"
import { derivative } from "./difference.js"
import { fourBarData } from "./four-bar-data.js"
import { apart, lehmer } from "./random.js"
import { refusalOf } from "./refusal.js"
import { scissorMechanism } from "./scissor-mechanism.js"

const DEG = Math.PI / 180
const point = (out: PlanarLinkage, name: string) => out.points.find((p) => p.name === name) as PlanarLinkage["points"][number]

/** Every point's place, speed and acceleration as lists. */
const flat = (out: PlanarLinkage, of: "place" | "speed" | "acceleration") =>
  out.points.flatMap((p) => (of === "place" ? [p.x, p.y] : of === "speed" ? [p.speedX, p.speedY] : [p.accelerationX, p.accelerationY]))

/** A Stephenson six-bar with a slider on its dyad: every kind of constraint at once. */
const rich: PlanarLinkageInput = {
  pivots: [
    { name: "O", x: 0, y: 0 },
    { name: "Q", x: 0.09, y: 0 },
    { name: "S", x: 0.16, y: -0.05 },
    { name: "T", x: 0.2, y: 0.15 },
  ],
  points: [
    { name: "A", x: 0.0192, y: 0.0161 },
    { name: "B", x: 0.0861, y: 0.0599 },
    { name: "P", x: 0.0451, y: 0.0811 },
    { name: "E", x: 0.172, y: 0.01 },
    { name: "W", x: 0.1, y: 0.1 },
    { name: "Z", x: 0.14, y: 0.06 },
  ],
  bars: [
    { from: "O", to: "A" },
    { from: "A", to: "B" },
    { from: "Q", to: "B" },
    { from: "P", to: "E" },
    { from: "B", to: "W" },
  ],
  carried: [{ point: "P", from: "A", to: "B" }],
  sliders: [
    { point: "E", from: "S", to: "T" },
    { point: "Z", from: "P", to: "E" },
  ],
  cranks: [
    { name: "main", from: "O", to: "A", speed: 2, acceleration: -3 },
    { name: "wrist", from: "B", to: "W", referenceFrom: "Q", referenceTo: "B", speed: -1.5, acceleration: 2 },
  ],
  actuators: [{ name: "ram", from: "P", to: "Z", speed: 0.02, acceleration: 0.05 }],
  loads: [
    { point: "P", forceX: 2, forceY: -3 },
    { point: "E", forceX: 1, forceY: 4 },
    { point: "W", forceY: -6 },
    { point: "Z", forceX: -1, forceY: 2 },
  ],
  torques: [
    { from: "Q", to: "B", torque: 0.2 },
    { from: "P", to: "E", torque: -0.1 },
  ],
}

describe("planarLinkage against closed form", () => {
  it("is the four-bar, in position, speed and acceleration, over hundreds of linkages and near singular ones", () => {
    const random = lehmer(101)
    const worst = { place: 0, speed: 0, acceleration: 0 }
    let [met, tight] = [0, 0]
    for (let k = 0; k < 800; k++) {
      const [d, a, b, c] = [random.real(0.03, 0.15), random.real(0.02, 0.1), random.real(0.03, 0.15), random.real(0.03, 0.15)]
      const assembly = random.sign() > 0 ? "open" : "crossed"
      let angle = random.real(-Math.PI, Math.PI)
      // every fourth close to the pose where coupler and output are in line
      const cosine = (d * d + a * a - (b + c) ** 2) / (2 * d * a)
      if (k % 4 === 0 && Math.abs(cosine) < 1) angle = Math.acos(cosine) - 10 ** random.real(-6, -2)
      const data = fourBarData(d, a, b, c, angle, assembly)
      if (!data) continue
      const [w, al] = [random.real(-3, 3), random.real(-3, 3)]
      const closed = fourBar.attempt({
        ground: d,
        input: a,
        coupler: b,
        output: c,
        inputAngle: angle,
        assembly,
        inputSpeed: w,
        inputAcceleration: al,
      })
      if (!closed.ok) continue
      const sine = Math.sin(closed.value.transmissionAngle)
      // sketched a little off, so that Newton has to find the pose
      const nudge = 0.02 * sine * sine
      const points = data.points.map((p) => ({
        ...p,
        x: (p.x as number) + nudge * random.real(-0.1, 0.1),
        y: (p.y as number) + nudge * random.real(-0.1, 0.1),
      }))
      const out = planarLinkage.attempt({ ...data, points, cranks: [{ from: "O", to: "A", start: angle, speed: w, acceleration: al }] })
      if (!out.ok) throw out.error
      met++
      if (sine < 0.01) tight++
      const [, coupler, output] = out.value.bars as [
        PlanarLinkage["bars"][number],
        PlanarLinkage["bars"][number],
        PlanarLinkage["bars"][number],
      ]
      const v = closed.value
      // rounding is blown up by 1/sin of the transmission angle, once per derivative
      worst.place = Math.max(worst.place, apart(coupler.angle, v.couplerAngle) * sine, apart(output.angle, v.outputAngle) * sine)
      worst.speed = Math.max(worst.speed, (Math.abs(coupler.speed - v.couplerSpeed) + Math.abs(output.speed - v.outputSpeed)) * sine ** 3)
      worst.acceleration = Math.max(
        worst.acceleration,
        (Math.abs(coupler.acceleration - v.couplerAcceleration) + Math.abs(output.acceleration - v.outputAcceleration)) * sine ** 5,
      )
    }
    expect(met).toBeGreaterThan(400)
    expect(tight).toBeGreaterThan(12)
    expect(worst.place).toBeLessThan(1e-12)
    expect(worst.speed).toBeLessThan(1e-11)
    expect(worst.acceleration).toBeLessThan(1e-10)
  })

  it("is the slider-crank, with torque and side force", () => {
    const random = lehmer(7)
    let [met, worst] = [0, 0]
    for (let k = 0; k < 300; k++) {
      const [crank, coupler, offset] = [random.real(0.01, 0.08), random.real(0.05, 0.2), random.real(-0.04, 0.04)]
      const [crankAngle, speed, acceleration, load] = [random.real(-3, 3), random.real(-3, 3), random.real(-3, 3), random.real(-20, 20)]
      const assembly = random.sign() > 0 ? "open" : "crossed"
      const closed = sliderCrank.attempt({
        crank,
        coupler,
        offset,
        crankAngle,
        assembly,
        crankSpeed: speed,
        crankAcceleration: acceleration,
        load,
      })
      if (!closed.ok || Math.sin(closed.value.transmissionAngle) < 0.1) continue
      met++
      const v = closed.value
      const out = planarLinkage({
        pivots: [
          { name: "O", x: 0, y: 0 },
          { name: "S", x: 0, y: offset },
          { name: "T", x: 1, y: offset },
        ],
        points: [
          { name: "A", x: crank * Math.cos(crankAngle), y: crank * Math.sin(crankAngle) },
          { name: "P", x: v.position, y: offset },
        ],
        bars: [
          { from: "O", to: "A", length: crank },
          { from: "P", to: "A", length: coupler },
        ],
        sliders: [{ point: "P", from: "S", to: "T", offset: 0 }],
        cranks: [{ from: "O", to: "A", start: crankAngle, speed, acceleration }],
        loads: [{ point: "P", forceX: -load }],
      })
      const [slide, rod, drive] = [out.sliders[0], out.bars[1], out.drivers[0]]
      const pairs = [
        [slide?.position, v.position],
        [slide?.speed, v.speed],
        [slide?.acceleration, v.acceleration],
        [rod?.speed, v.couplerSpeed],
        [rod?.acceleration, v.couplerAcceleration],
        [drive?.torque, v.torque],
        // what the guide gives back to the slider
        [slide?.sideForce, -v.sideForce],
      ] as [number, number][]
      for (const [x, y] of pairs) worst = Math.max(worst, Math.abs(x - y) / (1 + Math.abs(y)))
    }
    expect(met).toBeGreaterThan(180)
    expect(worst).toBeLessThan(1e-9)
  })

  it("is the scissor, in force, torque and reach, at any tilt and however it is held", () => {
    const random = lehmer(41)
    let worst = 0
    for (let k = 0; k < 36; k++) {
      const cells = 1 + (k % 6)
      const [arm, angle, tilt] = [random.real(0.05, 0.4), random.real(0.2, 1.3), random.real(-Math.PI / 2, Math.PI / 2)]
      const held = k % 2 ? "lower" : "upper"
      const [tip, arms, push] = [random.real(0, 30), random.real(0, 30), random.real(-10, 10)]
      const closed = scissor({
        cells,
        armLength: arm,
        foldedAngle: angle,
        extendedAngle: angle + 0.01,
        tilt,
        fixedJoint: held,
        tipMass: tip / 9.80665,
        armsMass: arms / 9.80665,
        push,
      })
      const data = scissorMechanism({ cells, arm, angle, direction: tilt, tip, arms, push, held })
      const screw = planarLinkage(data)
      const servo = planarLinkage({ ...data, actuators: [], cranks: [{ from: "L0", to: "R1", speed: 1 }] })
      // the actuator's length falls as the array goes out; the held arm turns towards the direction of extension
      const force = screw.drivers[0]?.force as number
      const torque = servo.drivers[0]?.torque as number
      const towards = held === "lower" ? -1 : 1
      const scale = 1 + closed.peakForce
      worst = Math.max(worst, Math.abs(-force - closed.forceFolded) / scale, Math.abs(towards * torque - closed.torqueFolded) / scale)
      // the sliding base joint carries half of what works along the axis, and the couple of what hangs off it sideways
      const hung = scissor({
        cells,
        armLength: arm,
        foldedAngle: angle - 0.01,
        extendedAngle: angle,
        tilt,
        tipMass: tip / 9.80665,
        armsMass: arms / 9.80665,
      })
      const axial = push + (tip + arms) * Math.sin(tilt)
      const carried = (screw.sliders[0]?.sideForce as number) * towards
      worst = Math.max(worst, Math.abs(carried - (axial / 2 + towards * hung.rootForce)) / (scale + hung.rootForce))
      const tipSpeed = point(screw, `L${cells}`)
      const along = tipSpeed.speedX * Math.cos(tilt) + tipSpeed.speedY * Math.sin(tilt)
      worst = Math.max(worst, Math.abs(-along - closed.ratioFolded) / (1 + closed.ratioFolded))
    }
    expect(worst).toBeLessThan(1e-9)
  })
})

describe("planarLinkage by itself", () => {
  it("has speeds and accelerations that central differences confirm, with every kind of constraint at once", () => {
    const base = planarLinkage(rich)
    const [main, wrist, ram] = base.drivers as [
      PlanarLinkage["drivers"][number],
      PlanarLinkage["drivers"][number],
      PlanarLinkage["drivers"][number],
    ]
    const setAt = (start: number, rate: number, change: number, t: number) => ({
      start: start + rate * t + (change * t * t) / 2,
      speed: rate + change * t,
    })
    const at = (t: number) =>
      planarLinkage({
        ...rich,
        cranks: [
          { ...rich.cranks?.[0], from: "O", to: "A", ...setAt(main.angle as number, 2, -3, t) },
          { ...rich.cranks?.[1], from: "B", to: "W", ...setAt(wrist.angle as number, -1.5, 2, t) },
        ],
        actuators: [{ from: "P", to: "Z", ...setAt(ram.length as number, 0.02, 0.05, t) }],
      })
    const speeds = derivative((t) => flat(at(t), "place"), 1e-3)
    const changes = derivative((t) => flat(at(t), "speed"), 1e-3)
    flat(base, "speed").forEach((v, i) => {
      expect(Math.abs(v - (speeds[i] as number))).toBeLessThan(1e-8)
    })
    flat(base, "acceleration").forEach((v, i) => {
      expect(Math.abs(v - (changes[i] as number))).toBeLessThan(1e-7)
    })
    // sliders too: position, speed, acceleration along their lines
    const slides = (key: "position" | "speed") => (t: number) => at(t).sliders.map((s) => s[key])
    const [first, second] = [derivative(slides("position"), 1e-3), derivative(slides("speed"), 1e-3)]
    base.sliders.forEach((s, i) => {
      expect(Math.abs(s.speed - (first[i] as number))).toBeLessThan(1e-8)
      expect(Math.abs(s.acceleration - (second[i] as number))).toBeLessThan(1e-7)
    })
  })

  it("balances every bar as a free body: forces and moments of pins, loads, torques and drivers add up to nothing", () => {
    const out = planarLinkage(rich)
    const effort = (name: string) => out.drivers.find((d) => d.name === name) as PlanarLinkage["drivers"][number]
    const at = (name: string) => point(out, name)
    const [slideE, slideZ] = out.sliders as [PlanarLinkage["sliders"][number], PlanarLinkage["sliders"][number]]
    // forces that reach a bar elsewhere than at its pins: the block Z on the bar P-E presses on it square to its line
    const [p, e, z] = [at("P"), at("E"), at("Z")]
    const length = Math.hypot(e.x - p.x, e.y - p.y)
    const normal = { x: -(e.y - p.y) / length, y: (e.x - p.x) / length }
    const extra: Record<string, { x: number; y: number; fx: number; fy: number }[]> = {
      "P-E": [{ x: z.x, y: z.y, fx: -slideZ.sideForce * normal.x, fy: -slideZ.sideForce * normal.y }],
    }
    const applied: Record<string, number> = {
      "O-A": effort("main").torque as number,
      "B-W": effort("wrist").torque as number,
      "Q-B": 0.2 - (effort("wrist").torque as number),
      "P-E": -0.1,
    }
    for (const bar of out.bars) {
      const members = out.pins.filter((pin) => pin.bar === bar.name)
      const all = [...members.map((pin) => ({ ...at(pin.point), fx: pin.forceX, fy: pin.forceY })), ...(extra[bar.name] ?? [])]
      const sum = (of: (f: (typeof all)[number]) => number) => all.reduce((s, f) => s + of(f), 0)
      expect(Math.abs(sum((f) => f.fx))).toBeLessThan(1e-9)
      expect(Math.abs(sum((f) => f.fy))).toBeLessThan(1e-9)
      expect(Math.abs(sum((f) => f.x * f.fy - f.y * f.fx) + (applied[bar.name] ?? 0))).toBeLessThan(1e-9)
    }
    // and every pin: what the bars take from it is what loads, guides and rams bring to it
    const ram = effort("ram").force as number
    const reach = Math.hypot(z.x - p.x, z.y - p.y)
    const ramAt = { x: ((z.x - p.x) / reach) * ram, y: ((z.y - p.y) / reach) * ram }
    const guide = Math.hypot(0.04, 0.2)
    const brought: Record<string, [number, number]> = {
      A: [0, 0],
      B: [0, 0],
      P: [2 - ramAt.x, -3 - ramAt.y],
      E: [1 - (slideE.sideForce * 0.2) / guide, 4 + (slideE.sideForce * 0.04) / guide],
      W: [0, -6],
    }
    for (const [name, [fx, fy]] of Object.entries(brought)) {
      const taken = out.pins.filter((pin) => pin.point === name)
      expect(taken.reduce((s, pin) => s + pin.forceX, 0)).toBeCloseTo(fx, 9)
      expect(taken.reduce((s, pin) => s + pin.forceY, 0)).toBeCloseTo(fy, 9)
    }
  })

  it("follows one branch round a whole turn and comes back to where it began", () => {
    const random = lehmer(77)
    let met = 0
    for (let k = 0; k < 200; k++) {
      const [d, a, b, c] = [0.1, random.real(0.01, 0.06), random.real(0.06, 0.14), random.real(0.06, 0.12)]
      if (Math.abs(d - a) < Math.abs(b - c) + 1e-4 || d + a > b + c - 1e-4) continue
      const branch = random.sign() > 0 ? "open" : "crossed"
      const data = fourBarData(d, a, b, c, 1, branch)
      if (!data) continue
      met++
      const out = planarLinkage({ ...data, cranks: [{ from: "O", to: "A", start: 1, end: 1 + 2 * Math.PI }], steps: 24, trace: "B" })
      out.path.forEach((p, i) => {
        const pose = fourBarPose(d, a, b, c, 1 + (i * Math.PI) / 12, branch)
        if (typeof pose === "number") throw new Error("turns fully")
        expect(Math.hypot(p.x - pose.outputPin.x, p.y - pose.outputPin.y)).toBeLessThan(1e-12)
      })
    }
    expect(met).toBeGreaterThan(80)
  })

  it("names what is wrong", () => {
    const base = fourBarData(0.1, 0.04, 0.12, 0.08, 1, "open") as MechanismInput
    const crank = { from: "O", to: "A" }
    const under = refusalOf(planarLinkage.attempt(base))
    expect([under.noSolution, under.shortBy]).toEqual(["under-constrained", 1])
    const over = refusalOf(planarLinkage.attempt({ ...base, cranks: [crank, { from: "Q", to: "B" }] }))
    expect([over.noSolution, over.shortBy]).toEqual(["over-constrained", 1])
    // a truss and a free bar at once: as many constraints as coordinates, and still a motion free
    const mixed = refusalOf(
      planarLinkage.attempt({
        ...base,
        points: [...base.points, { name: "C", x: 0.2, y: 0.1 }],
        bars: [...base.bars, { from: "O", to: "B" }, { from: "Q", to: "A" }, { from: "B", to: "C" }],
      }),
    )
    expect(mixed.noSolution).toBe("under-constrained")
    expect(mixed.message).toContain("only repeat others")
    // a sketch a hundred metres off is a matter of putting the parts together, not of how many there are
    const farOff = {
      ...base,
      points: [
        { name: "A", x: 0.02, y: 0.03 },
        { name: "B", x: 0.1, y: -100 },
      ],
    }
    const fine = farOff.bars.map((bar) => (bar.name === "coupler" ? { ...bar, length: 1e-5 } : bar))
    expect(refusalOf(planarLinkage.attempt({ ...farOff, bars: fine, cranks: [crank] })).noSolution).toBe("cannot-close")
    const apartFrom = refusalOf(planarLinkage.attempt({ ...base, bars: base.bars.map((b) => ({ ...b, length: 0.02 })), cranks: [crank] }))
    expect(apartFrom.noSolution).toBe("cannot-close")
    // beyond its toggle a double rocker stops, and says where
    const rocker = fourBarData(0.1, 0.075, 0.045, 0.085, 60 * DEG, "open") as MechanismInput
    const stops = refusalOf(planarLinkage.attempt({ ...rocker, cranks: [{ name: "arm", ...crank, end: 120 * DEG }], steps: 10 }))
    expect(stops.noSolution).toBe("dead-point")
    // published toggle of these links (shared/references/linkage.json, toggle-limits-double-rocker)
    expect(stops.shortBy).toBeCloseTo((120 - 94.87602487) * DEG, 4)
    expect(stops.nearest["cranks.0.end"]).toBeCloseTo(94.87602487 * DEG - 1e-3, 5)
    // a parallelogram laid flat can go on as parallelogram or crossed over
    const parallelogram = fourBarData(0.1, 0.04, 0.1, 0.04, 1, "open") as MechanismInput
    const flat = refusalOf(planarLinkage.attempt({ ...parallelogram, cranks: [{ ...crank, end: -1 }], steps: 4 }))
    expect(flat.noSolution).toBe("singular")
    const lying = {
      ...parallelogram,
      points: [
        { name: "A", x: 0.04, y: 0 },
        { name: "B", x: 0.14, y: 0 },
      ],
    }
    expect(refusalOf(planarLinkage.attempt({ ...lying, cranks: [crank] })).noSolution).toBe("singular")
  })

  it("points at faults of the lists", () => {
    const base = fourBarData(0.1, 0.04, 0.12, 0.08, 1, "open") as MechanismInput
    const message = (change: Partial<PlanarLinkageInput>) => {
      const outcome = planarLinkage.attempt({ ...base, cranks: [{ from: "O", to: "A" }], ...change })
      if (outcome.ok) throw new Error("expected a fault")
      return outcome.error.message
    }
    expect(message({ bars: [{ from: "O", to: "Z" }] })).toContain("bars[0].to: expected a point (O, Q, A, B), received 'Z'")
    expect(message({ bars: [{ from: "O", to: "Q" }] })).toContain("bars[0].to")
    expect(message({ points: [...base.points, { name: "A", x: 1, y: 1 }] })).toContain("points[2].name")
    expect(message({ carried: [{ point: "B", from: "O", to: "B" }] })).toContain("carried[0].from")
    expect(message({ sliders: [{ point: "A", from: "O", to: "B" }] })).toContain("sliders[0].from")
    expect(message({ sliders: [{ point: "B", from: "Q", to: "B" }] })).toContain("sliders[0].point")
    expect(message({ trace: "nose" })).toContain("trace")
    expect(message({ cranks: [{ from: "O", to: "A", referenceFrom: "Q" }] })).toContain("cranks[0].referenceTo")
  })

  it("tells how far from singular: a single arm's Jacobian is a turn of the axes, and says so near a dead point", () => {
    const arm = (angle: number) =>
      planarLinkage({
        pivots: [{ name: "hip", x: 0, y: 0 }],
        points: [{ name: "tip", x: 1, y: 0 }],
        bars: [{ from: "hip", to: "tip" }],
        cranks: [{ from: "hip", to: "tip", start: angle }],
      })
    // greatest row sum of a turn by φ, and of its inverse: |cos φ| + |sin φ|
    for (const angle of [0, 0.3, Math.PI / 4, 1.2])
      expect(arm(angle).conditioning).toBeCloseTo(1 / (Math.cos(angle) + Math.sin(angle)) ** 2, 9)
    expect(arm(1).cautions.map((c) => c.code)).not.toContain("near-singular")
    // a slider a hair short of its crank's dead point, driven by an actuator along its way
    const short = planarLinkage({
      pivots: [
        { name: "O", x: 0, y: 0 },
        { name: "P", x: 5, y: 0 },
      ],
      points: [{ name: "A", x: 1, y: 0.0004 }],
      bars: [{ from: "O", to: "A" }],
      actuators: [{ from: "P", to: "A" }],
    })
    expect(short.cautions.map((c) => c.code)).toContain("near-singular")
  })

  it("answers for the end of the motion whatever number of steps is listed", () => {
    const at = (steps: number) => planarLinkage({ ...planarLinkage.example, steps })
    const [none, many] = [at(0), at(24)]
    expect(none.efforts.length).toBe(1)
    expect(none.drivers[0]?.angle).toBeCloseTo((130 * Math.PI) / 180, 12)
    none.points.forEach((point, i) => {
      expect(point.x).toBeCloseTo(many.points[i]?.x as number, 12)
      expect(point.speedY).toBeCloseTo(many.points[i]?.speedY as number, 9)
    })
    expect(none.drivers[0]?.torque as number).toBeCloseTo(many.drivers[0]?.torque as number, 9)
  })
})
