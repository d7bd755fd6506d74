import { describe, expect, it } from "vitest"
import { NoSolutionError } from "../../src/solver/index.js"
import { centreHeight, isPart, type SegmentTable, segmentRows, upperBodies, winterCompounds } from "../../src/worn/body/data-segments.js"
import { carriedLoad } from "../../src/worn/index.js"

const G = 9.80665
const grid = (from: number, to: number, steps: number) => Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * i) / steps)
const tables = Object.keys(segmentRows) as SegmentTable[]
const lower = ["thigh", "shank", "leg", "foot"]

interface Point {
  readonly mass: number
  readonly x: number
  readonly z: number
}

/** Body and rig as point masses about the hips: each segment of the table at its own place, the trunk's parts not twice. */
function points(table: SegmentTable, body: number, stature: number, load: number, x: number, z: number): readonly Point[] {
  const hip = segmentRows[table].find((r) => r.name === "thigh")?.top as number
  return [
    ...segmentRows[table]
      .filter((r) => !isPart(r.name) && !lower.includes(r.name))
      .map((r) => ({ mass: r.count * r.mass * body, x: 0, z: (centreHeight(r) - hip) * stature })),
    { mass: load, x, z: z - hip * stature },
  ]
}

/** Free body of the leaning upper body: the moment that the legs have to give it about the hips, N·m. */
function momentOf(all: readonly Point[], lean: number): number {
  const [c, s] = [Math.cos(lean), Math.sin(lean)]
  let sum = 0
  for (const p of all) sum += p.mass * G * (p.x * c + p.z * s)
  return sum
}

/** What that moment is measured against, N·m. */
const scaleOf = (all: readonly Point[]) => all.reduce((a, p) => a + p.mass * G * Math.hypot(p.x, p.z), 0)

/** Lean at which the free body needs no moment, by bisection. */
function leanByBisection(all: readonly Point[]): number {
  let [low, high] = [-Math.PI / 2, Math.PI / 2]
  // halved 60 times the bracket is narrower than the last digit of a double
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2
    if (momentOf(all, middle) > 0) high = middle
    else low = middle
  }
  return (low + high) / 2
}

describe("carriedLoad by second routes", () => {
  it("balances every pose: the free body of trunk, head, arms and rig needs no moment at the hips, to 1e-9", () => {
    let [worstMoment, worstLean, cases] = [0, 0, 0]
    for (const body of [40, 60, 95])
      for (const stature of [1.45, 1.65, 1.95])
        for (const share of [0.02, 0.15, 0.6])
          for (const forward of grid(-0.8, 0.6, 7))
            for (const up of grid(0.7, 2.8, 5)) {
              const rigMass = share * body
              const out = carriedLoad({ bodyMass: body, stature, rigMass, poses: [{ name: "one", forward, up }] })
              expect(out.residual).toBeLessThan(1e-9)
              const leans = tables.map((t) => leanByBisection(points(t, body, stature, rigMass, forward, up)))
              const largest = leans.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a))
              worstLean = Math.max(worstLean, Math.abs(largest - (out.poses[0]?.trunkLean as number)))
              const table = tables[leans.indexOf(largest)] as SegmentTable
              const all = points(table, body, stature, rigMass, forward, up)
              worstMoment = Math.max(worstMoment, Math.abs(momentOf(all, out.poses[0]?.trunkLean as number)) / scaleOf(all))
              cases++
            }
    expect(cases).toBe(3 * 3 * 3 * 8 * 6)
    expect(worstMoment).toBeLessThan(1e-9)
    expect(worstLean).toBeLessThan(1e-9)
  })

  it("low-back moment: sum over the segments above the joint, leaning", () => {
    let worst = 0
    for (const forward of grid(-0.5, 0.3, 8))
      for (const up of grid(0.9, 2.2, 5)) {
        const [body, stature, load] = [62, 1.68, 11]
        const out = carriedLoad({ bodyMass: body, stature, rigMass: load, poses: [{ name: "one", forward, up }] }).poses[0]
        const byTable = tables.map((t) => {
          const pelvis = segmentRows[t].find((r) => r.name === "lower trunk" || r.name === "pelvis")
          const hip = upperBodies[t].hipHeight
          const back = ((pelvis?.top as number) - hip) * stature
          const all = points(t, body, stature, load, forward, up)
          const minus = { mass: -(pelvis?.mass as number) * body, x: 0, z: (centreHeight(pelvis as never) - hip) * stature }
          const above = [...all, minus].map((p) => ({ ...p, z: p.z - back }))
          return momentOf(above, leanByBisection(all))
        })
        const largest = byTable.reduce((a, b) => (Math.abs(b) > Math.abs(a) ? b : a))
        worst = Math.max(worst, Math.abs((out?.backMomentLeaning as number) - largest))
      }
    expect(worst).toBeLessThan(1e-7)
  })

  it("feet: two supports under a common weight, by moments about either", () => {
    for (const left of grid(-0.3, 0.3, 6)) {
      const out = carriedLoad({
        bodyMass: 70,
        stature: 1.7,
        rigMass: 10,
        footSpacing: 0.3,
        poses: [{ name: "one", forward: 0, left, up: 1.3 }],
      })
      const rightFoot = (70 * 0.15 + 10 * (0.15 - left)) / 0.3
      expect(out.poses[0]?.leftShare).toBeCloseTo(1 - rightFoot / 80, 12)
    }
  })

  it("walking multiplies the rig's weight as the four harmonics of the published table do, 1.66 times at 2 steps a second", () => {
    const out = carriedLoad({ ...carriedLoad.example, rigMass: 10, stepRate: 2 })
    // 0.41·1.05 + (0.069 + 0.0056·4) + (0.033 + 0.0064·6) + (0.013 + 0.0065·8), added by hand
    expect(out.peakForce / (10 * 9.80665)).toBeCloseTo(1 + 0.4305 + 0.0914 + 0.0714 + 0.065, 12)
  })

  it("Winter's compound segment agrees with the sum of its parts within 1 %", () => {
    const { upperMass, upperHeight } = upperBodies.winter
    expect(upperMass).toBeCloseTo(winterCompounds.headArmsTrunk.mass, 12)
    expect(Math.abs(upperHeight / (winterCompounds.headArmsTrunk.centre * 0.288) - 1)).toBeLessThan(0.01)
  })

  it("never asks for less lean, moment or force when mass is added, and none where the rig sits over the hips", () => {
    for (const forward of [-0.4, -0.1, 0.25])
      for (const up of [0.95, 1.3, 2.4]) {
        let before = { maxTrunkLean: 0, backMoment: 0, peakForce: 0 }
        for (const rigMass of grid(0.5, 60, 40)) {
          const out = carriedLoad({ bodyMass: 60, stature: 1.65, rigMass, poses: [{ name: "one", forward, up }] })
          expect(out.maxTrunkLean).toBeGreaterThanOrEqual(before.maxTrunkLean)
          expect(out.backMoment).toBeGreaterThanOrEqual(before.backMoment)
          expect(out.peakForce).toBeGreaterThan(before.peakForce)
          before = out
        }
      }
    const over = carriedLoad({ bodyMass: 60, stature: 1.65, rigMass: 9, poses: [{ name: "one", forward: 0, up: 1.4 }] })
    expect([over.maxTrunkLean, over.hipMoment, over.backMoment]).toEqual([0, 0, 0])
  })

  it("mirrors left and right, front and back", () => {
    const at = (forward: number, left: number) =>
      carriedLoad({ bodyMass: 60, stature: 1.65, rigMass: 9, poses: [{ name: "one", forward, left, up: 1.4 }] })
    const [a, b] = [at(-0.2, 0.05), at(0.2, -0.05)]
    expect(a.maxTrunkLean).toBeCloseTo(b.maxTrunkLean, 14)
    expect(a.poses[0]?.trunkLean).toBeCloseTo(-(b.poses[0]?.trunkLean as number), 14)
    expect(a.poses[0]?.leftShare).toBeCloseTo(1 - (b.poses[0]?.leftShare as number), 14)
  })

  it("refuses what cannot stand, naming the nearest place that does", () => {
    const hung = { bodyMass: 50, stature: 1.6, rigMass: 120, poses: [{ name: "anklets", forward: -0.2, up: 0.1 }] }
    const low = carriedLoad.attempt(hung)
    expect(!low.ok && low.error instanceof NoSolutionError && low.error.noSolution).toBe("cannot-balance")
    const nearest = (outcome: typeof low, path: string) =>
      !outcome.ok && outcome.error instanceof NoSolutionError ? (outcome.error.nearest[path] as number) : Number.NaN
    const least = nearest(low, "poses.0.up")
    const at = (height: number) => carriedLoad.attempt({ ...hung, poses: [{ name: "anklets", forward: -0.2, up: height }] })
    expect(at(least).ok).toBe(true)
    expect(at(least - 1e-6).ok).toBe(false)
    const aside = { bodyMass: 50, stature: 1.6, rigMass: 30, poses: [{ name: "banner", forward: 0, left: 0.5, up: 1.5 }] }
    const side = carriedLoad.attempt(aside)
    expect(!side.ok && side.error instanceof NoSolutionError && side.error.noSolution).toBe("tips-sideways")
    const most = nearest(side, "poses.0.left")
    const put = (change: object) => carriedLoad.attempt({ ...aside, ...change })
    const banner = (left: number) => ({ poses: [{ name: "banner", forward: 0, left, up: 1.5 }] })
    expect([put(banner(most)).ok, put(banner(most + 1e-6)).ok]).toEqual([true, false])
    // to the right as to the left
    const right = put(banner(-0.5))
    expect(nearest(right, "poses.0.left")).toBe(-most)
    const footSpacing = nearest(side, "footSpacing")
    expect([put({ footSpacing }).ok, put({ footSpacing: footSpacing - 1e-6 }).ok]).toEqual([true, false])
  })

  it("warns over the limit, for a child, for a large lean and a lopsided rig, and says what it is not", () => {
    const codes = (load: number, bodyMass: number, forward: number, left: number) =>
      carriedLoad({ bodyMass, stature: 1.6, rigMass: load, poses: [{ name: "one", forward, left, up: 1.4 }] }).cautions.map((c) => c.code)
    expect(codes(5, 60, -0.1, 0)).toEqual(["take-it-off", "limit-is-posture", "lean-is-balance"])
    expect(codes(20, 60, -0.3, 0.06)).toEqual(expect.arrayContaining(["over-limit", "large-lean", "lopsided"]))
    expect(codes(5, 40, -0.1, 0)).toContain("small-wearer")
    expect(codes(30, 60, -0.5, 0)).toContain("near-tipping")
    expect(codes(60, 60, -0.5, 0)).toContain("back-compression")
  })
})
