import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { isNoSolution } from "../../src/solver/index.js"
import { reach } from "../../src/worn/index.js"
import { between } from "./draws.js"

type Vector = readonly [x: number, y: number, z: number]
/** How far the upper arm is inside 45° behind the shoulder, a limit that closes from the horizontal to straight up (by common practice). */
const behindSlack = ([x, , z]: Vector) => x + (z > 0 ? 1 - z : 1) * Math.SQRT1_2
/** How far forwards the forearm's part square to the upper arm points. */
const bendSlack = (u: Vector, f: Vector) => f[0] - (u[0] * f[0] + u[1] * f[1] + u[2] * f[2]) * u[0]

const draws = fc.record({
  stature: between(1.4, 2),
  /** Upper arm: turn about the vertical and lift from hanging. */
  turn: between(-Math.PI, Math.PI),
  lift: between(0, Math.PI),
  bend: between(0, (150 * Math.PI) / 180),
  roll: between(-Math.PI, Math.PI),
  grip: fc.boolean(),
})
type Draw = typeof draws extends fc.Arbitrary<infer T> ? T : never

/** Forward route: turns the joints and sees where the hand comes, shoulder at 0.818 of stature and half of 0.2244 out. */
function forward(d: Draw): { hand: Vector; upper: Vector; fore: Vector } {
  const upper: Vector = [Math.sin(d.lift) * Math.cos(d.turn), Math.sin(d.lift) * Math.sin(d.turn), -Math.cos(d.lift)]
  // two directions square to the upper arm, about which the elbow bends
  const a: Vector = [Math.cos(d.lift) * Math.cos(d.turn), Math.cos(d.lift) * Math.sin(d.turn), Math.sin(d.lift)]
  const b: Vector = [-Math.sin(d.turn), Math.cos(d.turn), 0]
  const [l1, l2] = [0.186 * d.stature, (0.146 + (d.grip ? 0.5 : 1) * 0.108) * d.stature]
  const fore = [0, 1, 2].map(
    (i) =>
      Math.cos(d.bend) * (upper[i] as number) +
      Math.sin(d.bend) * (Math.cos(d.roll) * (a[i] as number) + Math.sin(d.roll) * (b[i] as number)),
  )
  const shoulder = [0, (0.2244 / 2) * d.stature, 0.818 * d.stature]
  const hand = [0, 1, 2].map((i) => (shoulder[i] as number) + l1 * (upper[i] as number) + l2 * (fore[i] as number))
  return { hand: hand as unknown as Vector, upper, fore: fore as unknown as Vector }
}

const input = (d: Draw, [forward, outward, up]: Vector, reserve = 0) =>
  ({ stature: d.stature, forward, outward, up, handling: d.grip ? "grip" : "press", reserve }) as const

describe("reach", () => {
  it("finds every place that turning the joints within their limits reaches, with the same bend of the elbow", () => {
    let [worst, reached] = [0, 0]
    fc.assert(
      fc.property(draws, (d) => {
        const { hand, upper, fore } = forward(d)
        if (behindSlack(upper) < 1e-6 || bendSlack(upper, fore) < 1e-6 || hand[2] < 0) return
        const out = reach.si(reach.read(input(d, hand)))
        if (isNoSolution(out)) {
          // only rounding at the very ends of the reach may refuse
          expect(out.shortBy).toBeLessThan(1e-9)
          return
        }
        reached++
        // the straight arm magnifies rounding: cosines are compared, not angles
        worst = Math.max(worst, Math.abs(Math.cos(out.elbowBend) - Math.cos(d.bend)))
      }),
      { numRuns: 1500 },
    )
    expect(reached).toBeGreaterThan(300)
    expect(worst).toBeLessThan(1e-9)
  })

  it("its own pose holds the hand at the switch and the arm within its limits", () => {
    fc.assert(
      fc.property(draws, (d) => {
        const { hand } = forward(d)
        if (hand[2] < 0) return
        const out = reach.si(reach.read(input(d, hand)))
        if (isNoSolution(out)) return
        const [l1, l2] = [0.186 * d.stature, (0.146 + (d.grip ? 0.5 : 1) * 0.108) * d.stature]
        const elbow = [out.elbowForward, out.elbowOutward - (0.2244 / 2) * d.stature, out.elbowUp - out.shoulderHeight] as const
        expect(Math.hypot(...elbow)).toBeCloseTo(l1, 9)
        expect(Math.hypot(hand[0] - out.elbowForward, hand[1] - out.elbowOutward, hand[2] - out.elbowUp)).toBeCloseTo(l2, 9)
        const upper = elbow.map((v) => v / l1) as unknown as Vector
        const fore: Vector = [(hand[0] - out.elbowForward) / l2, (hand[1] - out.elbowOutward) / l2, (hand[2] - out.elbowUp) / l2]
        expect(behindSlack(upper)).toBeGreaterThanOrEqual(-1e-9)
        expect(bendSlack(upper, fore)).toBeGreaterThanOrEqual(-1e-8)
        expect(Math.cos(out.armElevation)).toBeCloseTo(-elbow[2] / l1, 9)
      }),
      { numRuns: 500 },
    )
  })

  it("holds the elbow as low as the limits let it: no other turn about the line to the hand is lower and within them", () => {
    let turned = 0
    fc.assert(
      fc.property(draws, (d) => {
        const { hand, upper, fore } = forward(d)
        // a refusal searches for the nearest places, which is not asked here
        if (behindSlack(upper) < 1e-6 || bendSlack(upper, fore) < 1e-6 || hand[2] < 0) return
        const out = reach.si(reach.read(input(d, hand)))
        if (isNoSolution(out)) return
        const [l1, l2] = [0.186 * d.stature, (0.146 + (d.grip ? 0.5 : 1) * 0.108) * d.stature]
        const shoulder: Vector = [0, 0.1122 * d.stature, 0.818 * d.stature]
        const to = hand.map((v, i) => v - (shoulder[i] as number)) as unknown as Vector
        const far = Math.hypot(...to)
        const n = to.map((v) => v / far) as unknown as Vector
        const level = Math.hypot(n[0], n[1])
        if (level < 1e-3) return
        // level and falling directions square to the line
        const p: Vector = [-n[1] / level, n[0] / level, 0]
        const q: Vector = [(n[0] * n[2]) / level, (n[1] * n[2]) / level, -level]
        const along = (l1 ** 2 - l2 ** 2 + far ** 2) / (2 * far)
        const off = Math.sqrt(Math.max(0, l1 ** 2 - along ** 2))
        let lowest = Number.POSITIVE_INFINITY
        for (let k = 0; k < 720; k++) {
          const [c, s] = [Math.cos((k * Math.PI) / 360), Math.sin((k * Math.PI) / 360)]
          const elbow = [0, 1, 2].map((i) => along * (n[i] as number) + off * (c * (q[i] as number) + s * (p[i] as number)))
          const u = elbow.map((v) => v / l1) as unknown as Vector
          const f = to.map((v, i) => (v - (elbow[i] as number)) / l2) as unknown as Vector
          if (behindSlack(u) >= 0 && bendSlack(u, f) >= 0) lowest = Math.min(lowest, elbow[2] as number)
        }
        if (!Number.isFinite(lowest)) return
        if (off * level > 0.01 && lowest > along * n[2] - off * level + 1e-3) turned++
        expect(out.elbowUp - out.shoulderHeight).toBeLessThan(lowest + 1e-6)
      }),
      { numRuns: 900 },
    )
    expect(turned).toBeGreaterThan(10)
  })

  it("refuses what no turn of the joints reaches: the hand comes no nearer than it says", () => {
    let offered = 0
    fc.assert(
      fc.property(draws, between(0.01, 0.5), (d, beyond) => {
        const l = (0.186 + 0.146 + (d.grip ? 0.5 : 1) * 0.108) * d.stature
        const direction = forward({ ...d, bend: 0 })
        const shoulder: Vector = [0, (0.2244 / 2) * d.stature, 0.818 * d.stature]
        const target = shoulder.map((s, i) => s + (direction.upper[i] as number) * (l + beyond)) as unknown as Vector
        if (target[2] < 0) return
        const out = reach.si(reach.read(input(d, target)))
        expect(isNoSolution(out) && out.noSolution).toBe("out-of-reach")
        if (!isNoSolution(out)) return
        expect(out.shortBy).toBeCloseTo(beyond, 9)
        // each axis by itself: the hand holds it there, and nowhere nearer than the arm is long
        for (const [axis, value] of Object.entries(out.nearest)) {
          offered++
          const there = { ...input(d, target), [axis]: value }
          expect(reach.attempt(there).ok).toBe(true)
          expect(Math.abs(value - ((input(d, target) as unknown as Record<string, number>)[axis] as number))).toBeGreaterThanOrEqual(
            beyond - 1e-9,
          )
        }
      }),
      { numRuns: 200 },
    )
    expect(offered).toBeGreaterThan(30)
  })

  it("law: a longer reserve or a shorter wearer never reaches more ahead at shoulder height", () => {
    const most = (stature: number, reserve: number) =>
      reach({ stature, forward: 0.3, outward: 0.2, up: 0.8 * stature, reserve }).maxDistance
    fc.assert(
      fc.property(between(1.4, 2), between(0, 0.3), between(0, 0.1), (stature, reserve, more) => {
        expect(most(stature, reserve + more)).toBeLessThanOrEqual(most(stature, reserve))
        expect(most(stature - more, reserve)).toBeLessThanOrEqual(most(stature, reserve))
      }),
    )
  })

  it("says no to the middle of the back and to one's own shoulder", () => {
    expect(() => reach({ stature: 1.65, forward: -0.45, outward: 0.2, up: 1.3 })).toThrow(/behind the shoulder/)
    expect(() => reach({ stature: 1.65, forward: 0.02, outward: 0.185, up: 1.35 })).toThrow(/bent elbow/)
  })

  it("warns of switches out of sight, overhead, and out of a seated helper's reach", () => {
    const codes = (ahead: number, height: number, stature = 1.7) =>
      reach({ stature, forward: ahead, outward: 0.3, up: height }).cautions.map((c) => c.code)
    expect(codes(-0.1, 0.85)).toContain("out-of-sight")
    expect(codes(0.2, 2)).toEqual(expect.arrayContaining(["arm-raised", "seated-helper"]))
    expect(codes(0.2, 1)).toEqual(["not-a-clearance", "try-it-on"])
    expect(codes(0.2, 0.9, 1.3)).toContain("proportions")
  })
})
