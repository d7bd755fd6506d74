import { lusolve } from "mathjs"
import { describe, expect, it } from "vitest"
import { fourBarPose } from "../../src/linkage/four-bar/pose.js"
import { fourBar, type PlanarLinkage, type PlanarLinkageInput, planarLinkage } from "../../src/linkage/index.js"
import { fourBarData } from "./four-bar-data.js"
import { lehmer } from "./random.js"

const GRAVITY = 9.80665

interface Link {
  /** Centre of gravity from the first pin, along and to the left of the line of its pins, m. */
  readonly along: number
  readonly across: number
  readonly mass: number
  readonly inertia: number
}

/** A four-bar with masses, as data and as the numbers of its closed form. */
function fourBarWith(random: ReturnType<typeof lehmer>) {
  for (;;) {
    const [d, a, b, c] = [0.1, random.real(0.02, 0.05), random.real(0.08, 0.13), random.real(0.06, 0.11)]
    const angle = random.real(-3, 3)
    const pose = fourBarPose(d, a, b, c, angle, "open")
    if (typeof pose === "number") continue
    const [speed, acceleration] = [random.real(-8, 8), random.real(-40, 40)]
    const known = fourBar.attempt({
      ...{ ground: d, input: a, coupler: b, output: c, inputAngle: angle, assembly: "open" },
      ...{ inputSpeed: speed, inputAcceleration: acceleration },
    })
    if (!known.ok || Math.sin(known.value.transmissionAngle) < 0.5) continue
    const link = (length: number): Link => ({
      along: length * random.real(0.2, 0.9),
      across: length * random.real(-0.3, 0.3),
      mass: random.real(0.02, 1),
      inertia: random.real(0, 1e-3),
    })
    const links = [link(a), link(b), link(c)] as const
    const load = { forceX: random.real(-20, 20), forceY: random.real(-20, 20) }
    const frameTilt = random.real(-1, 1)
    const ends = [
      ["O", "A"],
      ["A", "B"],
      ["Q", "B"],
    ] as const
    const data: PlanarLinkageInput = {
      pivots: [
        { name: "O", x: 0, y: 0 },
        { name: "Q", x: d, y: 0 },
      ],
      points: [
        { name: "A", ...pose.inputPin },
        { name: "B", ...pose.outputPin },
      ],
      bars: ends.map(([from, to], i) => ({ from, to, length: [a, b, c][i] as number })),
      cranks: [{ from: "O", to: "A", start: angle, speed, acceleration }],
      masses: links.map((one, i) => ({ from: ends[i]?.[0] as string, to: ends[i]?.[1] as string, ...one })),
      frameTilt,
      loads: [{ point: "B", ...load }],
    }
    return { d, a, b, c, angle, pose, speed, acceleration, known: known.value, links, load, frameTilt, data }
  }
}

/** Newton's and Euler's equations of three free bodies: nine unknowns, the forces of the pins and the torque; by mathjs. */
function freeBodies(m: ReturnType<typeof fourBarWith>, radius: number) {
  const { d, pose, known, links, load, frameTilt } = m
  const O = { x: 0, y: 0 }
  const Q = { x: d, y: 0 }
  const [A, B] = [pose.inputPin, pose.outputPin]
  const turns = [m.angle, known.couplerAngle, known.outputAngle]
  const w = [m.speed, known.couplerSpeed, known.outputSpeed] as const
  const al = [m.acceleration, known.couplerAcceleration, known.outputAcceleration] as const
  const accelerated = (r: { x: number; y: number }, i: number) => ({
    x: -((w[i] as number) ** 2) * r.x - (al[i] as number) * r.y,
    y: -((w[i] as number) ** 2) * r.y + (al[i] as number) * r.x,
  })
  const from = [O, A, Q]
  const aA = accelerated(A, 0)
  const bodies = links.map((link, i) => {
    const t = turns[i] as number
    const r = { x: link.along * Math.cos(t) - link.across * Math.sin(t), y: link.along * Math.sin(t) + link.across * Math.cos(t) }
    const own = accelerated(r, i)
    const start = from[i] as { x: number; y: number }
    return { x: start.x + r.x, y: start.y + r.y, ax: own.x + (i === 1 ? aA.x : 0), ay: own.y + (i === 1 ? aA.y : 0), ...link }
  })
  const [gx, gy] = [-GRAVITY * Math.sin(frameTilt), -GRAVITY * Math.cos(frameTilt)]
  // unknowns: pin O on the crank, crank on the coupler at A, coupler on the output at B, pin Q on the output; torque
  const columns = [
    { at: O, on: 0, against: -1 },
    { at: A, on: 1, against: 0 },
    { at: B, on: 2, against: 1 },
    { at: Q, on: 2, against: -1 },
  ]
  let friction = [0, 0, 0, 0]
  for (let round = 0; ; round++) {
    const matrix: number[][] = []
    const right: number[] = []
    bodies.forEach((body, i) => {
      const [fx, fy, moment] = [new Array(9).fill(0), new Array(9).fill(0), new Array(9).fill(0)] as [number[], number[], number[]]
      let rubbed = 0
      columns.forEach(({ at, on, against }, k) => {
        const sign = on === i ? 1 : against === i ? -1 : 0
        fx[2 * k] = sign
        fy[2 * k + 1] = sign
        moment[2 * k] = -sign * (at.y - body.y)
        moment[2 * k + 1] = sign * (at.x - body.x)
        rubbed += sign * (friction[k] as number)
      })
      if (i === 0) moment[8] = 1
      matrix.push(fx, fy, moment)
      // the load at B works on its pin: the coupler, listed first, holds the pin and so takes the load
      const own = i === 1 ? load : { forceX: 0, forceY: 0 }
      right.push(
        body.mass * (body.ax - gx) - own.forceX,
        body.mass * (body.ay - gy) - own.forceY,
        body.inertia * (al[i] as number) - rubbed - ((B.x - body.x) * own.forceY - (B.y - body.y) * own.forceX),
      )
    })
    const x = (lusolve(matrix, right) as number[][]).map((row) => row[0] as number)
    const forces = columns.map((_, k) => Math.hypot(x[2 * k] as number, x[2 * k + 1] as number))
    const next = columns.map(({ on, against }, k) => {
      const turning = (w[on] as number) - (against < 0 ? 0 : (w[against] as number))
      return -radius * (forces[k] as number) * Math.sign(turning)
    })
    const off = Math.max(...next.map((f, k) => Math.abs(f - (friction[k] as number))))
    friction = next
    const loss = columns.reduce(
      (sum, { on, against }, k) =>
        sum + radius * (forces[k] as number) * Math.abs((w[on] as number) - (against < 0 ? 0 : (w[against] as number))),
      0,
    )
    // kinetic energy's rate and what weights and load bring
    const velocity = bodies.map((body, i) => {
      const start = from[i] as { x: number; y: number }
      const [vx, vy] = i === 1 ? [-(w[0] as number) * A.y, (w[0] as number) * A.x] : [0, 0]
      return { x: vx - (w[i] as number) * (body.y - start.y), y: vy + (w[i] as number) * (body.x - start.x) }
    })
    const rate = bodies.reduce(
      (sum, body, i) =>
        sum +
        body.mass * ((velocity[i]?.x as number) * body.ax + (velocity[i]?.y as number) * body.ay) +
        body.inertia * (w[i] as number) * (al[i] as number),
      0,
    )
    const vB = { x: -(w[2] as number) * B.y, y: (w[2] as number) * (B.x - d) }
    const brought =
      bodies.reduce((sum, body, i) => sum + body.mass * (gx * (velocity[i]?.x as number) + gy * (velocity[i]?.y as number)), 0) +
      load.forceX * vB.x +
      load.forceY * vB.y
    if (off < 1e-15 * Math.max(...forces) || round > 200) return { x, forces, loss, rate, brought, off: off / Math.max(...forces) }
  }
}

const pin = (out: PlanarLinkage, bar: string, point: string) =>
  out.pins.find((p) => p.bar === bar && p.point === point) as PlanarLinkage["pins"][number]

describe("planarLinkage's forces against free bodies and energy", () => {
  it("are those of Newton and Euler with weight, inertia and friction, and power in is power out, lost and stored", () => {
    const random = lehmer(31)
    let [worst, power, lost] = [0, 0, 0]
    for (let k = 0; k < 60; k++) {
      const m = fourBarWith(random)
      const pinDiameter = k % 3 === 0 ? 0 : random.real(0.001, 0.006)
      const out = planarLinkage({ ...m.data, pinFriction: 0.2, pinDiameter })
      const free = freeBodies(m, 0.1 * pinDiameter)
      expect(free.off).toBeLessThan(1e-12)
      const scale = 1 + Math.max(...free.forces)
      const torque = out.drivers[0]?.torque as number
      const pairs: [number, number][] = [
        [pin(out, "O-A", "O").forceX, free.x[0] as number],
        [pin(out, "O-A", "O").forceY, free.x[1] as number],
        [pin(out, "A-B", "A").forceX, free.x[2] as number],
        [pin(out, "A-B", "A").forceY, free.x[3] as number],
        [pin(out, "Q-B", "B").forceX, free.x[4] as number],
        [pin(out, "Q-B", "B").forceY, free.x[5] as number],
        [pin(out, "Q-B", "Q").forceX, free.x[6] as number],
        [pin(out, "Q-B", "Q").forceY, free.x[7] as number],
        [torque / 0.1, (free.x[8] as number) / 0.1],
      ]
      for (const [a, b] of pairs) worst = Math.max(worst, Math.abs(a - b) / scale)
      const through = Math.abs(torque * m.speed) + Math.abs(free.rate) + Math.abs(free.brought) + free.loss
      power = Math.max(power, Math.abs(torque * m.speed + free.brought - out.frictionLoss - free.rate) / through)
      if (out.frictionLoss > 1e-3 * through) lost++
    }
    expect(worst).toBeLessThan(1e-9)
    expect(power).toBeLessThan(1e-9)
    expect(lost).toBeGreaterThan(20)
  })

  it("of a pendulum on a motor are a point mass's on a string that does not give", () => {
    const [length, mass, speed, angle] = [0.4, 0.7, 3, -0.5]
    const out = planarLinkage({
      pivots: [{ name: "O", x: 0, y: 0 }],
      points: [{ name: "A", x: length * Math.cos(angle), y: length * Math.sin(angle) }],
      bars: [{ from: "O", to: "A" }],
      cranks: [{ from: "O", to: "A", speed, acceleration: 5 }],
      masses: [{ from: "O", to: "A", mass, along: length, inertia: 0 }],
    })
    expect(out.drivers[0]?.torque).toBeCloseTo(mass * length * (GRAVITY * Math.cos(angle) + 5 * length), 12)
    const along = (p: PlanarLinkage["pins"][number]) => p.forceX * Math.cos(angle) + p.forceY * Math.sin(angle)
    // the pin holds it in on its circle and against its weight along the bar
    expect(along(pin(out, "O-A", "O"))).toBeCloseTo(-mass * (speed ** 2 * length - GRAVITY * Math.sin(angle)), 12)
    // left out, inertia is that of a slender bar, its centre in the middle: m·l²/3 about the pivot
    const slender = planarLinkage({
      pivots: [{ name: "O", x: 0, y: 0 }],
      points: [{ name: "A", x: length, y: 0 }],
      bars: [{ from: "O", to: "A" }],
      cranks: [{ from: "O", to: "A", acceleration: 7 }],
      masses: [{ from: "A", to: "O", mass }],
      gravity: 0,
    })
    expect(slender.drivers[0]?.torque).toBeCloseTo((mass * length ** 2 * 7) / 3, 12)
  })
})

describe("planarLinkage's friction up to where nothing moves any more", () => {
  const arm = 0.05
  /** A lever whose ram works square to it, up against the load's torque or down with it. */
  const lever = (circle: number, speed: number): PlanarLinkageInput => ({
    pivots: [
      { name: "O", x: 0, y: 0 },
      { name: "C", x: arm, y: -0.3 },
    ],
    points: [{ name: "A", x: arm, y: 0 }],
    bars: [{ from: "O", to: "A" }],
    actuators: [{ from: "C", to: "A", speed }],
    torques: [{ from: "O", to: "A", torque: -1 }],
    pinFriction: 1,
    pinDiameter: 2 * circle,
  })

  it("is the free lever's M = F·(l ∓ ρ) at any size of the friction circle", () => {
    for (const share of [0.1, 0.5, 0.88, 0.9, 0.95, 0.99, 0.999]) {
      const up = planarLinkage(lever(share * arm, 0.01))
      const down = planarLinkage(lever(share * arm, -0.01))
      expect((up.drivers[0]?.force as number) * arm * (1 - share)).toBeCloseTo(1, 9)
      expect((down.drivers[0]?.force as number) * arm * (1 + share)).toBeCloseTo(1, 9)
    }
  })

  it("holds the lever fast just where its circle reaches out to the ram, and says by how much", () => {
    for (const share of [1.001, 1.05, 1.5, 1.9]) {
      const outcome = planarLinkage.attempt(lever(share * arm, 0.01))
      if (outcome.ok || !("noSolution" in outcome.error)) throw new Error("answered")
      expect(outcome.error.noSolution).toBe("jammed")
      expect(outcome.error.shortBy).toBeCloseTo((share - 1) * arm, 9)
    }
  })

  it("of a four-bar near its lock is what free bodies find, with nothing between an answer and a lock", () => {
    const random = lehmer(77)
    let answered = 0
    for (let k = 0; k < 12; k++) {
      const m = fourBarWith(random)
      const at = (radius: number) => planarLinkage.attempt({ ...m.data, pinFriction: 1, pinDiameter: 2 * radius })
      for (const radius of [0.004, 0.008, 0.012, 0.016]) {
        const [found, free] = [at(radius), freeBodies(m, radius)]
        if (!(free.off < 1e-12)) continue
        if (!found.ok) throw new Error(found.error.message)
        answered++
        const torque = found.value.drivers[0]?.torque as number
        expect(Math.abs(torque - (free.x[8] as number)) / (Math.abs(torque) + 0.1)).toBeLessThan(1e-8)
      }
    }
    expect(answered).toBeGreaterThan(30)
  })
})

describe("planarLinkage's peaks over the whole motion", () => {
  /** A four-bar whose coupler and output come to within a hair of a line half way, where a load on the output goes through the rod. */
  const nearToggle = (spare: number): PlanarLinkageInput => {
    const [d, a, b] = [0.1, 0.03, 0.09]
    // at crank angle π the pins A and Q are d + a apart: coupler and output together just longer
    const c = d + a + spare - b
    const base = fourBarData(d, a, b, c, Math.PI - 0.6, "open")
    if (base === null) throw new Error("does not close")
    return {
      ...base,
      cranks: [{ from: "O", to: "A", start: Math.PI - 0.6, end: Math.PI + 0.5 }],
      loads: [{ point: "B", forceY: -5 }],
    }
  }

  it("sees what the rod bears as it passes close to a toggle half way, in however few steps it is listed", () => {
    for (const spare of [1e-4, 1e-3, 1e-2]) {
      const data = nearToggle(spare)
      // another model: at every crank angle the two bars A-B and Q-B as a bracket under the load, by the sine rule
      let [push, share, torque] = [0, 0, 0]
      const poses = 40000
      for (let i = 0; i <= poses; i++) {
        const angle = Math.PI - 0.6 + (1.1 * i) / poses
        const pose = fourBarPose(0.1, 0.03, 0.09, 0.04 + spare, angle, "open")
        if (typeof pose === "number") throw new Error("does not close")
        const { x: ax, y: ay } = pose.inputPin
        const { x: bx, y: by } = pose.outputPin
        const [rod, arm] = [Math.atan2(by - ay, bx - ax), Math.atan2(by, bx - 0.1)]
        // 5 N down at B: the rod's share square to the arm
        const force = (5 * Math.cos(arm)) / Math.sin(rod - arm)
        if (Math.abs(force) > push) [push, share] = [Math.abs(force), i / poses]
        torque = Math.max(torque, Math.abs(force * (ax * Math.sin(rod) - ay * Math.cos(rod))))
      }
      for (const steps of [0, 1, 7]) {
        const out = planarLinkage({ ...data, steps })
        const rod = out.barPeaks.find((p) => p.name === "coupler") as PlanarLinkage["barPeaks"][number]
        const most = Math.max(rod.tension, rod.compression)
        expect(Math.abs(most - push) / push).toBeLessThan(1e-5)
        expect(Math.abs((rod.tension > rod.compression ? rod.tensionShare : rod.compressionShare) - share)).toBeLessThan(1e-3)
        expect(Math.abs((out.driverPeaks[0]?.torque as number) - torque) / torque).toBeLessThan(1e-4)
        const pinA = out.pinPeaks.find((p) => p.bar === "coupler" && p.point === "A")
        expect(pinA?.force).toBeCloseTo(most, 6)
        if (spare === 1e-4) {
          // the end alone knows nothing of it, and how near to singular it comes is told for the way as well
          expect(most).toBeGreaterThan(5 * Math.max(...out.pins.filter((p) => p.bar === "coupler").map((p) => p.force)))
          expect(out.minConditioning).toBeLessThan(out.conditioning / 3)
          expect(out.minConditioningShare).toBeCloseTo(0.6 / 1.1, 2)
        }
      }
    }
  })

  it("never lie below any pose listed, guides included, and are the pose's own where nothing moves", () => {
    const crank: PlanarLinkageInput = {
      pivots: [
        { name: "O", x: 0, y: 0 },
        { name: "S", x: 0.05, y: 0.01 },
        { name: "T", x: 0.3, y: 0.01 },
      ],
      points: [
        { name: "A", x: 0.03, y: 0 },
        { name: "P", x: 0.1285, y: 0.01 },
      ],
      bars: [
        { from: "O", to: "A" },
        { from: "A", to: "P" },
      ],
      sliders: [{ point: "P", from: "S", to: "T" }],
      cranks: [{ from: "O", to: "A", end: 6, speed: 10 }],
      loads: [{ point: "P", forceX: -30 }],
      masses: [
        { from: "O", to: "A", mass: 0.1 },
        { from: "A", to: "P", mass: 0.2 },
      ],
    }
    const whole = planarLinkage(crank)
    let side = 0
    for (let i = 0; i <= 60; i++) {
      const here = planarLinkage({ ...crank, cranks: [{ from: "O", to: "A", start: i / 10, speed: 10 }] })
      side = Math.max(side, Math.abs(here.sliders[0]?.sideForce as number))
      here.pins.forEach((p, k) => {
        expect(p.force).toBeLessThanOrEqual((whole.pinPeaks[k]?.force as number) * (1 + 1e-7))
        expect(here.pinPeaks[k]).toEqual({ bar: p.bar, point: p.point, force: p.force, share: 1 })
      })
    }
    const most = whole.sliderPeaks[0]?.sideForce as number
    expect(side).toBeLessThanOrEqual(most * (1 + 1e-7))
    expect(side).toBeGreaterThan(0.98 * most)
  })
})
