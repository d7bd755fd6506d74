import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { pinchGap } from "../../src/worn/index.js"
import { barDistance } from "../../src/worn/surroundings/bar-distance.js"
import { between } from "./draws.js"

const bar = fc.record({ x1: between(-1, 1), y1: between(-1, 1), x2: between(-1, 1), y2: between(-1, 1) })
const pose = fc.record({ x: between(-0.5, 0.5), y: between(-0.5, 0.5), angle: between(-3, 3) })
const motions = fc.record({
  movingBars: fc.array(bar, { minLength: 1, maxLength: 3 }),
  fixedBars: fc.array(
    // well apart from the moving part for the most part, so that gaps and not crossings are met
    bar.map((b) => ({ x1: b.x1 + 2.6, y1: b.y1, x2: b.x2 + 2.6, y2: b.y2 })),
    { minLength: 1, maxLength: 3 },
  ),
  poses: fc.array(pose, { minLength: 2, maxLength: 3 }),
  movingThickness: fc.constant(0),
  fixedThickness: fc.constant(0),
})
type Motion = typeof motions extends fc.Arbitrary<infer T> ? T : never

/** Places along a bar, both ends among them. */
const along = (b: Motion["movingBars"][number], count: number) =>
  Array.from({ length: count + 1 }, (_, k) => [b.x1 + (k / count) * (b.x2 - b.x1), b.y1 + (k / count) * (b.y2 - b.y1)] as const)

/** Every moment, every point against every point: no segment formula, no bound. */
function bruteForce(m: Motion, moments: number, points: number): number {
  let least = Number.POSITIVE_INFINITY
  const still = m.fixedBars.flatMap((b) => along(b, points))
  const own = m.movingBars.flatMap((b) => along(b, points))
  for (let leg = 0; leg + 1 < m.poses.length; leg++) {
    const [p, q] = [m.poses[leg] as Motion["poses"][number], m.poses[leg + 1] as Motion["poses"][number]]
    for (let k = 0; k <= moments; k++) {
      const f = k / moments
      const angle = p.angle + f * (q.angle - p.angle)
      const [x, y] = [p.x + f * (q.x - p.x), p.y + f * (q.y - p.y)]
      const [c, s] = [Math.cos(angle), Math.sin(angle)]
      for (const [u, v] of own) {
        const [px, py] = [x + c * u - s * v, y + s * u + c * v]
        for (const [fx, fy] of still) {
          const square = (px - fx) * (px - fx) + (py - fy) * (py - fy)
          if (square < least) least = square
        }
      }
    }
  }
  return Math.sqrt(least)
}

describe("pinchGap", () => {
  it("agrees with brute force over moments and points, and its proven gap is never above it", () => {
    let worst = 0
    fc.assert(
      fc.property(motions, (m) => {
        const out = pinchGap(m)
        const [moments, points] = [300, 30]
        const brute = bruteForce(m, moments, points)
        // brute force can only find too much: by half a step of time and of place
        expect(brute).toBeGreaterThanOrEqual(out.provenMinGap - 1e-12)
        const spacing = Math.max(...[...m.movingBars, ...m.fixedBars].map((b) => Math.hypot(b.x2 - b.x1, b.y2 - b.y1))) / points
        const legs = m.poses.slice(1).map((q, i) => {
          const p = m.poses[i] as Motion["poses"][number]
          return Math.hypot(q.x - p.x, q.y - p.y) + Math.SQRT2 * Math.abs(q.angle - p.angle)
        })
        expect(brute - out.minGap).toBeLessThan(spacing + Math.max(...legs) / moments / 2)
        expect(brute).toBeGreaterThanOrEqual(out.minGap - out.errorEstimate - 1e-12)
        worst = Math.max(worst, out.errorEstimate)
      }),
      { numRuns: 15 },
    )
    expect(worst).toBeLessThan(0.01)
  })

  it("finds a tip's closest approach to a wall, known exactly", () => {
    // a bar of 0.6 m swings past the vertical wall x = 0.65: closest when level, 50 mm, in the middle of the motion
    const out = pinchGap({
      movingBars: [{ x1: 0, y1: 0, x2: 0.6, y2: 0 }],
      fixedBars: [{ x1: 0.65, y1: -1, x2: 0.65, y2: 1 }],
      poses: [
        { x: 0, y: 0, angle: "-50 deg" },
        { x: 0, y: 0, angle: "77 deg" },
      ],
      movingThickness: 0,
      fixedThickness: 0,
    })
    expect(out.minGap).toBeCloseTo(0.05, 5)
    expect(out.provenMinGap).toBeLessThanOrEqual(0.05)
    expect(out.motionShare).toBeCloseTo(50 / 127, 2)
    expect(out.errorEstimate).toBeLessThanOrEqual(1.0001e-5)
    // finger 25 mm has room; toes 50 mm and all larger parts have not, since the proven gap is a shade less than 50 mm
    expect(out.parts.filter((p) => !p.crushes).map((p) => p.part)).toEqual(["finger"])
  })

  it("a narrow gap that stands still crushes nothing, whatever its width", () => {
    for (const gap of [0.002, 0.01, 0.05, 0.2]) {
      const still = pinchGap({
        movingBars: [{ x1: 0, y1: gap, x2: 0.5, y2: gap }],
        fixedBars: [{ x1: 0, y1: 0, x2: 0.5, y2: 0 }],
        poses: [
          { x: 0, y: 0, angle: 0 },
          { x: 0, y: 0, angle: 0 },
        ],
        movingThickness: 0,
        fixedThickness: 0,
      })
      expect(still.crushes).toBe(false)
      expect(still.cautions.map((c) => c.code)).toContain("narrow-gap")
    }
  })

  it("a gap that closes crushes what it opens for: fingers at 10 mm, a head only past 89 mm", () => {
    const closing = (open: number, closed: number) =>
      pinchGap({
        movingBars: [{ x1: 0, y1: 0, x2: 0.5, y2: 0 }],
        fixedBars: [{ x1: 0, y1: 0, x2: 0.5, y2: 0 }],
        poses: [
          { x: 0, y: open, angle: 0 },
          { x: 0, y: closed, angle: 0 },
        ],
        movingThickness: 0,
        fixedThickness: 0,
      })
        .parts.filter((p) => p.crushes)
        .map((p) => p.part)
    expect(closing(0.012, 0.01)).toContain("finger")
    expect(closing(0.012, 0.01)).not.toContain("head")
    expect(closing(0.08, 0.01)).not.toContain("head")
    expect(closing(0.1, 0.01)).toContain("head")
    expect(closing(0.6, 0.29)).toEqual(["head", "body"])
    expect(closing(0.6, 0.31)).toEqual(["body"])
    expect(closing(0.9, 0.51)).toEqual([])
    // the same the other way round: opening is closing on the way back
    expect(closing(0.01, 0.1)).toContain("head")
  })

  it("is the same seen from the other side: left for right, turning the other way", () => {
    fc.assert(
      fc.property(motions, (m) => {
        const flip = (b: Motion["movingBars"][number]) => ({ x1: -b.x1, y1: b.y1, x2: -b.x2, y2: b.y2 })
        const seen = pinchGap({
          ...m,
          movingBars: m.movingBars.map(flip),
          fixedBars: m.fixedBars.map(flip),
          poses: m.poses.map((p) => ({ x: -p.x, y: p.y, angle: -p.angle })),
        })
        const here = pinchGap(m)
        expect(seen.minGap).toBeCloseTo(here.minGap, 9)
        expect(seen.parts.map((p) => p.crushes)).toEqual(here.parts.map((p) => p.crushes))
      }),
      { numRuns: 12 },
    )
  })

  it("knows the narrowest gap each part gets into, from both sides", () => {
    const crushed = (part: string, open: number) =>
      pinchGap({
        movingBars: [{ x1: 0, y1: 0, x2: 0.001, y2: 0 }],
        fixedBars: [{ x1: 0, y1: 0, x2: 0.001, y2: 0 }],
        poses: [
          { x: 0, y: open, angle: 0 },
          { x: 0, y: 0.001, angle: 0 },
        ],
        movingThickness: 0,
        fixedThickness: 0,
      }).parts.find((p) => p.part === part)?.crushes
    for (const { part, entryGap } of pinchGap(pinchGap.example).parts) {
      // places and moments between those looked at count as open by up to half their distance: here under a millimetre
      expect(crushed(part, entryGap - 0.0008), part).toBe(false)
      expect(crushed(part, entryGap + 0.0002), part).toBe(true)
    }
  })

  it("sees the gap close beside a hinge, where the parts are near each other all the way", () => {
    // an arm folds onto a bar it is hinged to: the least distance is nothing throughout, yet the far end closes from 0.6 m
    const fold = pinchGap({
      movingBars: [{ x1: 0, y1: 0, x2: 0.6, y2: 0 }],
      fixedBars: [{ x1: 0, y1: 0, x2: 0.6, y2: 0 }],
      poses: [
        { x: 0, y: 0, angle: "60 deg" },
        { x: 0, y: 0, angle: "2 deg" },
      ],
      movingThickness: 0,
      fixedThickness: 0,
    })
    expect(fold.maxGap).toBeLessThan(1e-9)
    expect(fold.parts.filter((p) => p.crushes).map((p) => p.part)).toEqual(expect.arrayContaining(["finger", "arm", "head", "body"]))
  })

  it("barDistance agrees with points along both bars, and is symmetric", () => {
    fc.assert(
      fc.property(bar, bar, (a, b) => {
        const one = barDistance(a, b)
        expect(barDistance(b, a).distance).toBeCloseTo(one.distance, 12)
        let brute = Number.POSITIVE_INFINITY
        const other = along(b, 200)
        for (const [x, y] of along(a, 200)) for (const [u, v] of other) brute = Math.min(brute, (x - u) * (x - u) + (y - v) * (y - v))
        brute = Math.sqrt(brute)
        const spacing = (Math.hypot(a.x2 - a.x1, a.y2 - a.y1) + Math.hypot(b.x2 - b.x1, b.y2 - b.y1)) / 200
        expect(brute).toBeGreaterThanOrEqual(one.distance - 1e-12)
        expect(brute - one.distance).toBeLessThanOrEqual(spacing)
      }),
      { numRuns: 40 },
    )
  })

  it("law: thicker bars, a longer motion or another fixed bar never leave more room", () => {
    fc.assert(
      fc.property(motions, bar, pose, between(0, 0.2), (m, extra, next, thicker) => {
        const now = pinchGap(m)
        const slack = now.errorEstimate + 1e-12
        for (const worse of [
          { ...m, movingThickness: thicker },
          { ...m, fixedBars: [...m.fixedBars, { x1: extra.x1 + 2.6, y1: extra.y1, x2: extra.x2 + 2.6, y2: extra.y2 }] },
          { ...m, poses: [...m.poses, next] },
        ])
          expect(pinchGap(worse).provenMinGap).toBeLessThanOrEqual(now.minGap + slack)
        expect(now.crushes).toBe(now.parts.some((p) => p.crushes))
        // what has room crushes nothing; what has none must still open for the part and close on it
        for (const p of now.parts) if (p.crushes) expect(p.shortBy).toBeGreaterThan(0)
      }),
      { numRuns: 25 },
    )
  })

  it("takes the proven gap where the gap stays even all the way and proof is dear", () => {
    // a bar turning about its own middle line's centre inside a ring of bars: flat minimum
    const ring = Array.from({ length: 24 }, (_, k) => {
      const [a, b] = [(k / 24) * 2 * Math.PI, ((k + 1) / 24) * 2 * Math.PI]
      return { x1: 2 * Math.cos(a), y1: 2 * Math.sin(a), x2: 2 * Math.cos(b), y2: 2 * Math.sin(b) }
    })
    const out = pinchGap({
      movingBars: [{ x1: 0, y1: 0, x2: 1.9, y2: 0 }],
      fixedBars: ring,
      poses: [
        { x: 0, y: 0, angle: 0 },
        { x: 0, y: 0, angle: 6.28 },
      ],
    })
    // the ring is nearest in the middle of each bar: 2·cos(7.5°) − 1.9 less 20 mm
    expect(out.minGap).toBeCloseTo(2 * Math.cos(Math.PI / 24) - 1.9 - 0.02, 4)
    expect(out.provenMinGap).toBeLessThanOrEqual(out.minGap)
    expect(out.evaluations).toBeLessThanOrEqual(4000)
  })

  it("warns of overlap and shear", () => {
    const out = pinchGap({
      ...pinchGap.example,
      poses: [
        { x: 0, y: 0, angle: "60 deg" },
        { x: 0, y: 0, angle: "-45 deg" },
      ],
    })
    expect(out.minGap).toBeLessThan(0)
    expect(out.cautions.map((c) => c.code)).toEqual(expect.arrayContaining(["overlap", "crush", "not-a-clearance"]))
  })

  it("proves the gap of a part that only slides, there and back across the origin", () => {
    // a short bar passes a peg 20 mm off its way, between two of the places looked at first
    const [peg, off, thick] = [0.0113, 0.02, 0.004]
    const out = pinchGap({
      movingBars: [{ x1: 0, y1: 0, x2: 0, y2: 0.001 }],
      fixedBars: [{ x1: peg, y1: -off, x2: peg, y2: -off - 0.1 }],
      poses: [
        { x: -0.5, y: 0, angle: 0 },
        { x: 0.5, y: 0, angle: 0 },
      ],
      movingThickness: thick,
      fixedThickness: thick,
    })
    expect(out.minGap).toBeCloseTo(off - thick, 5)
    expect(out.provenMinGap).toBeLessThanOrEqual(off - thick)
    expect(out.provenMinGap).toBeGreaterThan(off - thick - 2e-5)
  })
})
