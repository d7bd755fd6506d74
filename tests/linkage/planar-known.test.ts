import { describe, expect, it } from "vitest"
import { fourBarPose } from "../../src/linkage/four-bar/pose.js"
import { type HingeGeometry, hingeLengthAt, hingeLeverAt, hingePinAt, planarLinkage } from "../../src/linkage/index.js"
import { lehmer } from "./random.js"
import { refusalOf } from "./refusal.js"

type XY = readonly [number, number]
const at = (name: string, [x, y]: XY) => ({ name, x, y })
const add = (a: XY, b: XY): XY => [a[0] + b[0], a[1] + b[1]]
const less = (a: XY, b: XY): XY => [a[0] - b[0], a[1] - b[1]]
const times = (a: XY, b: XY): XY => [a[0] * b[0] - a[1] * b[1], a[0] * b[1] + a[1] * b[0]]
const over = (a: XY, b: XY): XY => {
  const s = b[0] ** 2 + b[1] ** 2
  return [(a[0] * b[0] + a[1] * b[1]) / s, (a[1] * b[0] - a[0] * b[1]) / s]
}

describe("planarLinkage against theorems and the hinged arm", () => {
  it("draws Peaucellier's exact straight line", () => {
    // rhombus of sides s on two long arms; the near corner runs on a circle through the fixed pivot
    const [long, s, r] = [0.2, 0.08, 0.1]
    const t = 0.4
    const c: XY = [r + r * Math.cos(t), r * Math.sin(t)]
    const reach = Math.hypot(...c)
    const along: XY = [c[0] / reach, c[1] / reach]
    // the rhombus is symmetric about the line from the pivot
    const middle = (reach ** 2 + long ** 2 - s ** 2) / (2 * reach)
    const half = Math.sqrt(long ** 2 - middle ** 2)
    const corner = (sign: number): XY => [along[0] * middle - sign * along[1] * half, along[1] * middle + sign * along[0] * half]
    const d: XY = [along[0] * (2 * middle - reach), along[1] * (2 * middle - reach)]
    const inversor = (end: number) => ({
      pivots: [at("O", [0, 0]), at("Q", [r, 0])],
      points: [at("A", corner(1)), at("B", corner(-1)), at("C", c), at("D", d)],
      bars: [
        { from: "Q", to: "C" },
        { from: "O", to: "A" },
        { from: "O", to: "B" },
        { from: "A", to: "C" },
        { from: "C", to: "B" },
        { from: "B", to: "D" },
        { from: "D", to: "A" },
      ],
      cranks: [{ name: "arm", from: "Q", to: "C", end }],
      steps: 60,
      trace: "D",
    })
    const out = planarLinkage(inversor(-0.7))
    // inversion: |OC|·|OD| = long² − s², so the line stands square to O–Q at (long² − s²)/(2·r)
    const line = (long ** 2 - s ** 2) / (2 * r)
    for (const p of out.path) expect(Math.abs(p.x - line)).toBeLessThan(1e-13)
    const heights = out.path.map((p) => p.y)
    expect(Math.max(...heights) - Math.min(...heights)).toBeGreaterThan(0.08)
    // where both corners of the rhombus meet, |OC| = |OD|, it falls together and can open either way
    const refusal = refusalOf(planarLinkage.attempt(inversor(-1)))
    expect(refusal.noSolution).toBe("singular")
    expect(-1 + refusal.shortBy).toBeCloseTo(-2 * Math.acos(Math.sqrt(long ** 2 - s ** 2) / (2 * r)), 4)
  })

  it("draws one coupler curve with a four-bar and its cognate, as Roberts and Chebyshev proved", () => {
    const random = lehmer(83)
    let met = 0
    for (let k = 0; k < 24; k++) {
      const [d, a, b, c] = [0.1, random.real(0.02, 0.05), random.real(0.08, 0.13), random.real(0.07, 0.1)]
      if (Math.abs(d - a) < Math.abs(b - c) + 5e-3 || d + a > b + c - 5e-3) continue
      met++
      const z: XY = [random.real(-0.5, 1.5), random.real(0.2, 1)]
      // sketched by the cosine rule at one angle
      const pinA: XY = [a * Math.cos(1), a * Math.sin(1)]
      const f = Math.hypot(d - pinA[0], pinA[1])
      const u = (f * f + b * b - c * c) / (2 * f)
      const h = Math.sqrt(b * b - u * u)
      const pinB = add(pinA, times([(d - pinA[0]) / f, -pinA[1] / f], [u, h]))
      const p = add(pinA, times(z, less(pinB, pinA)))
      const own = planarLinkage({
        pivots: [at("O", [0, 0]), at("Q", [d, 0])],
        points: [at("A", pinA), at("B", pinB), at("P", p)],
        bars: [
          { from: "O", to: "A" },
          { from: "A", to: "B" },
          { from: "Q", to: "B" },
        ],
        carried: [{ point: "P", from: "A", to: "B" }],
        cranks: [{ from: "O", to: "A", end: 1 + 2 * Math.PI }],
        steps: 36,
        trace: "P",
      })
      // the cognate: its crank runs parallel to the coupler's side A–P, its third pivot completes the triangle
      const third = times(z, [d, 0])
      const first = less(p, pinA)
      const second = add(first, times(z, pinA))
      const cognate = planarLinkage({
        pivots: [at("O", [0, 0]), at("R", third)],
        points: [at("A", first), at("B", second), at("P", add(first, over(less(second, first), z)))],
        bars: [
          { from: "O", to: "A" },
          { from: "A", to: "B" },
          { from: "R", to: "B" },
        ],
        carried: [{ point: "P", from: "A", to: "B" }],
        // its coupler turns as the first crank does
        cranks: [{ from: "A", to: "B", end: Math.atan2(second[1] - first[1], second[0] - first[0]) + 2 * Math.PI }],
        steps: 36,
        trace: "P",
      })
      own.path.forEach((q, i) => {
        const other = cognate.path[i] as typeof q
        expect(Math.hypot(q.x - other.x, q.y - other.y)).toBeLessThan(1e-11)
      })
    }
    expect(met).toBeGreaterThan(3)
  })

  it("keeps its branch through random Stephenson six-bars, or stops at the very angle where the dyad no longer closes", () => {
    const random = lehmer(113)
    const scan = 1440
    let [turned, stopped] = [0, 0]
    for (let k = 0; k < 120; k++) {
      const [d, a, b, c] = [0.1, random.real(0.02, 0.05), random.real(0.08, 0.13), random.real(0.07, 0.1)]
      if (Math.abs(d - a) < Math.abs(b - c) + 5e-3 || d + a > b + c - 5e-3) continue
      const z: XY = [random.real(0, 1.2), random.real(-0.8, 0.8)]
      const far: XY = [random.real(0.1, 0.25), random.real(-0.1, 0.1)]
      const [link, rocker] = [random.real(0.06, 0.2), random.real(0.05, 0.15)]
      const side = random.sign()
      /** All pins by circle intersection at one crank angle; null where the dyad misses. */
      const closed = (angle: number) => {
        const pose = fourBarPose(d, a, b, c, angle, "open")
        if (typeof pose === "number") throw new Error("turns fully")
        const [pinA, pinB]: [XY, XY] = [
          [pose.inputPin.x, pose.inputPin.y],
          [pose.outputPin.x, pose.outputPin.y],
        ]
        const p = add(pinA, times(z, less(pinB, pinA)))
        const [ux, uy] = less(far, p)
        const reach = Math.hypot(ux, uy)
        const u = (reach ** 2 + link ** 2 - rocker ** 2) / (2 * reach)
        const squared = link ** 2 - u ** 2
        if (squared < 0) return null
        const e = add(p, times([ux / reach, uy / reach], [u, side * Math.sqrt(squared)]))
        // how far the dyad is from lying in line
        return { pinA, pinB, p, e, room: Math.sqrt(squared) / link }
      }
      const first = closed(1)
      if (!first || first.room < 0.05) continue
      const poses = Array.from({ length: scan + 1 }, (_, i) => closed(1 + (2 * Math.PI * i) / scan))
      const fails = poses.indexOf(null)
      if (fails < 0 && poses.some((q) => (q as NonNullable<typeof q>).room < 0.02)) continue
      const outcome = planarLinkage.attempt({
        pivots: [at("O", [0, 0]), at("Q", [d, 0]), at("R", far)],
        points: [at("A", first.pinA), at("B", first.pinB), at("P", first.p), at("E", first.e)],
        bars: [
          { from: "O", to: "A" },
          { from: "A", to: "B" },
          { from: "Q", to: "B" },
          { from: "P", to: "E" },
          { from: "R", to: "E" },
        ],
        carried: [{ point: "P", from: "A", to: "B" }],
        cranks: [{ name: "crank", from: "O", to: "A", start: 1, end: 1 + 2 * Math.PI }],
        steps: 20,
        trace: "E",
      })
      if (fails < 0) {
        turned++
        if (!outcome.ok) throw outcome.error
        outcome.value.path.forEach((q, i) => {
          const [x, y] = (poses[(i * scan) / 20] as NonNullable<(typeof poses)[number]>).e
          expect(Math.hypot(q.x - x, q.y - y)).toBeLessThan(1e-11)
        })
      } else {
        stopped++
        const refusal = refusalOf(outcome)
        expect(refusal.noSolution).toBe("dead-point")
        const limit = 1 + (2 * Math.PI * fails) / scan
        const reached = 1 + 2 * Math.PI - refusal.shortBy
        expect(reached).toBeLessThan(limit)
        expect(reached).toBeGreaterThan(limit - (2 * Math.PI) / scan - 2e-5)
      }
    }
    expect(turned).toBeGreaterThan(4)
    expect(stopped).toBeGreaterThan(15)
  })

  it("is the hinged arm with its actuator: length, lever, holding force and hinge reaction, axis offset too", () => {
    const random = lehmer(97)
    let [met, worst] = [0, 0]
    for (let k = 0; k < 80; k++) {
      const g: HingeGeometry = {
        hinge: { x: random.real(-0.05, 0.05), y: random.real(-0.05, 0.05) },
        fixedPivot: { x: random.real(-0.1, 0.1), y: random.real(-0.3, -0.1) },
        movingPivot: { radius: random.real(0.03, 0.1), angle: random.real(-1, 1) },
        axisOffset: k % 2 ? random.real(-0.02, 0.02) : 0,
      }
      const arm = random.real(-1, 1.5)
      const lever = hingeLeverAt(g, arm)
      if (Math.abs(lever) < 0.01) continue
      met++
      const pin = hingePinAt(g, arm)
      const [weight, centre] = [random.real(1, 20), random.real(0.1, 0.5)]
      const tip: XY = [g.hinge.x + centre * Math.cos(arm), g.hinge.y + centre * Math.sin(arm)]
      const q = Math.hypot(pin.x - g.fixedPivot.x, pin.y - g.fixedPivot.y)
      // the barrel is a bar on the base pivot; the rod's pin slides along it, off its line by the offset
      const turn = Math.atan2(pin.y - g.fixedPivot.y, pin.x - g.fixedPivot.x) - Math.asin(g.axisOffset / q)
      const out = planarLinkage({
        pivots: [at("hinge", [g.hinge.x, g.hinge.y]), at("base", [g.fixedPivot.x, g.fixedPivot.y])],
        points: [
          at("pin", [pin.x, pin.y]),
          at("load", tip),
          at("guide", [g.fixedPivot.x + Math.cos(turn), g.fixedPivot.y + Math.sin(turn)]),
        ],
        bars: [
          { name: "arm", from: "hinge", to: "load" },
          { name: "barrel", from: "base", to: "guide" },
        ],
        carried: [{ point: "pin", from: "hinge", to: "load" }],
        sliders: [{ name: "rod", point: "pin", from: "base", to: "guide", offset: g.axisOffset }],
        actuators: [{ from: "base", to: "pin", speed: 1 }],
        loads: [{ point: "load", forceY: -weight }],
      })
      const [rod, beam] = [out.sliders[0], out.bars[0]]
      const along = (rod?.speed as number) / (beam?.speed as number)
      // the driver's effort counts per pin distance; the rod's own thrust per rod length
      const thrust = ((out.drivers[0]?.force as number) * 1) / (rod?.speed as number)
      const expected = (weight * centre * Math.cos(arm)) / lever
      worst = Math.max(
        worst,
        Math.abs((rod?.position as number) - hingeLengthAt(g, arm)),
        Math.abs(along - lever),
        Math.abs(thrust - expected) / (1 + Math.abs(expected)),
      )
      if (g.axisOffset === 0) {
        // the hinge takes the weight less what the actuator carries
        const [ux, uy] = [(pin.x - g.fixedPivot.x) / q, (pin.y - g.fixedPivot.y) / q]
        const reaction = out.pins.find((p) => p.bar === "arm" && p.point === "hinge")
        worst = Math.max(
          worst,
          Math.abs((reaction?.forceX as number) + thrust * ux) / (1 + Math.abs(expected)),
          Math.abs((reaction?.forceY as number) + thrust * uy - weight) / (1 + Math.abs(expected)),
        )
      }
    }
    expect(met).toBeGreaterThan(50)
    expect(worst).toBeLessThan(1e-9)
  })
})
