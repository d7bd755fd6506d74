import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { NoSolutionError } from "../../src/solver/index.js"
import { type Overturning, type OverturningInput, overturning } from "../../src/worn/index.js"
import { between } from "./draws.js"

/** A limit that is there. */
const limitOf = ({ pushForceLimit }: Overturning) => {
  if (pushForceLimit === null) throw new Error("no push limit")
  return pushForceLimit
}

const G = 9.80665

type Point = readonly [number, number]
const turned = ([x, y]: Point, by: number): Point => [x * Math.cos(by) + y * Math.sin(by), y * Math.cos(by) - x * Math.sin(by)]
/** Moment that tips over the edge, about it: a force (fx, fy) at a place. */
const tipping = (edge: Point, at: Point, [fx, fy]: Point) => (at[1] - edge[1]) * fx - (at[0] - edge[0]) * fy

const ground = fc.record({
  bodyMass: between(20, 120),
  rigMass: between(0, 20),
  stature: between(1, 2),
  windFrom: fc.constantFrom("front" as const, "behind" as const, "side" as const),
  dragArea: between(0, 1),
  forceHeight: between(0.5, 2),
  windSpeed: between(0, 4),
  pushHeight: between(0.5, 1.6),
  rigCentreHeight: between(0.5, 1.6),
  slope: between(0, 0.4),
  slopeDirection: between(-Math.PI, Math.PI),
  drop: between(0, 0.8),
})

/** Tips through `edge` when given `speed`: the linear inverted pendulum, stepped by Runge and Kutta. */
function passes(edge: number, height: number, speed: number, steady: number): boolean {
  const rate = G / height
  const pull = (x: number) => rate * (x - edge) + steady
  let [x, v] = [0, speed]
  const dt = 0.002
  for (let n = 0; n < 20_000; n++) {
    const [k1x, k1v] = [v, pull(x)]
    const [k2x, k2v] = [v + (dt / 2) * k1v, pull(x + (dt / 2) * k1x)]
    const [k3x, k3v] = [v + (dt / 2) * k2v, pull(x + (dt / 2) * k2x)]
    const [k4x, k4v] = [v + dt * k3v, pull(x + dt * k3x)]
    x += (dt / 6) * (k1x + 2 * k2x + 2 * k3x + k4x)
    v += (dt / 6) * (k1v + 2 * k2v + 2 * k3v + k4v)
    if (x > edge) return true
    if (v < 0) return false
  }
  return false
}

/** A stiff body on its edge, stepped in time: whether a turning speed carries it over. */
function topples(edge: number, height: number, turning: number, gyration: number): boolean {
  const reach = Math.hypot(edge, height)
  const inertia = reach ** 2 + gyration ** 2
  const pull = (angle: number) => (G * reach * Math.sin(angle)) / inertia
  // angle of the line from edge to centre short of plumb
  let [angle, rate] = [Math.atan2(edge, height), -turning]
  const dt = 0.001
  for (let n = 0; n < 20_000; n++) {
    rate += (dt / 2) * pull(angle)
    angle += dt * rate
    rate += (dt / 2) * pull(angle)
    if (angle < 0) return true
    if (rate > 0) return false
  }
  return false
}

function least(tips: (value: number) => boolean, high: number): number {
  let [low, top] = [0, high]
  for (let n = 0; n < 45; n++) {
    const middle = (low + top) / 2
    if (tips(middle)) top = middle
    else low = middle
  }
  return top
}

describe("overturning by a push and on uneven ground", () => {
  it("second route: free bodies, each force at its turned place, balance about the usable edge at the push it holds", () => {
    let held = 0
    fc.assert(
      fc.property(ground, ({ drop, ...i }) => {
        const level = overturning(i)
        const stepHeight = drop * Math.min(level.stepHeightLimit as number, 0.5)
        const out = overturning({ ...i, stepHeight })
        const base = i.windFrom === "side" ? 0.3 : 0.24
        const tilt = Math.atan(stepHeight / base)
        const down = Math.atan(Math.tan(i.slope) * Math.cos(i.slopeDirection))
        const centre = (i.bodyMass * 0.56 * i.stature + i.rigMass * i.rigCentreHeight) / (i.bodyMass + i.rigMass)
        const weight: Point = [0, -G * (i.bodyMass + i.rigMass)]
        const air = 1.66 * i.windSpeed + 1.4
        const wind: Point = [(1.225 / 2) * i.dragArea * air ** 2, 0]
        const edge = turned([0.6 * out.edgeDistance, 0], down + tilt)
        const restoring = -tipping(edge, turned([0, centre], tilt), weight)
        const windMoment = tipping(edge, turned([0, i.forceHeight], tilt), wind)
        const perNewton = tipping(edge, turned([0, i.pushHeight], tilt), [1, 0])
        const off = (a: number, b: number) => Math.abs(a - b) / Math.max(1, Math.abs(b))
        expect(off(out.restoringMoment, restoring)).toBeLessThan(1e-9)
        expect(off(out.windMoment, windMoment)).toBeLessThan(1e-9)
        const left = (1 - air ** 2 / 225) * restoring - 1.5 * windMoment
        const limit = limitOf(out)
        expect(off(1.5 * limit * perNewton, Math.max(0, left))).toBeLessThan(1e-9)
        if (limit > 0) {
          held++
          const pushed = overturning({ ...i, stepHeight, pushForce: limit })
          expect(pushed.utilisation).toBeCloseTo(1, 9)
          expect(pushed.foldWindSpeed).toBeCloseTo(Math.min(i.windSpeed, 10), 6)
        }
        const needed = out.requiredEdgeDistance
        if (needed !== null && needed > 1e-5 && needed < 2 && stepHeight === 0)
          expect(overturning({ ...i, edgeDistance: needed }).utilisation).toBeCloseTo(1, 9)
        // the whole of the drop that the stance takes leaves nothing for wind or push
        if ((level.stepHeightLimit as number) < 0.5)
          expect(overturning({ ...i, stepHeight: (level.stepHeightLimit as number) * 0.9999999 }).leverArm).toBeLessThan(1e-6)
      }),
      { numRuns: 150 },
    )
    expect(held).toBeGreaterThan(50)
  })

  it("second route: a bump that an inverted pendulum, stepped in time, just does not tip from, with and without a steady push", () => {
    for (const [bodyMass, stature, share] of [
      [25, 1.15, 0],
      [62, 1.7, 0],
      [62, 1.7, 0.5],
      [110, 1.95, 0.3],
    ] as const) {
      const i = { ...overturning.example, bodyMass, stature, windSpeed: 0, walkingSpeed: 0, bumpMass: 40, bumpSpeed: 0, pushHeight: 1 }
      const bare = overturning(i)
      const mass = bodyMass + 8
      const height = bare.centreHeight
      const steady = share * limitOf(bare) * 1.5
      const speed = least((v) => passes(0.6 * bare.edgeDistance, height, (40 * v) / (mass * height), steady / (mass * height)), 2)
      // its own factor of 1.5 taken off again
      const own = ((1 - share) * 1.5 * (bare.bumpSpeedLimit as number)) / speed
      expect(Math.abs(own - 1)).toBeLessThan(1e-5)
    }
  })

  it("second route: a stiff body that rocks about the same edge is never tipped by less, and by little more where all its mass is in one place", () => {
    for (const edgeDistance of [0.05, 0.1, 0.2])
      for (const gyration of [0, 0.3]) {
        const out = overturning({
          ...overturning.example,
          ...{ rigMass: 0, windSpeed: 0, walkingSpeed: 0, bumpMass: 40, bumpSpeed: 0, pushHeight: 1, edgeDistance },
        })
        const [edge, height] = [0.6 * edgeDistance, out.centreHeight]
        const inertia = 62 * (edge ** 2 + height ** 2 + gyration ** 2)
        const ratio = least((v) => topples(edge, height, (40 * v) / inertia, gyration), 5) / (1.5 * (out.bumpSpeedLimit as number))
        expect(ratio).toBeGreaterThan(1)
        const inTheLarge = Math.sqrt(1 + (gyration / height) ** 2)
        expect(ratio / inTheLarge).toBeLessThan(1 + (edge / height) ** 2 + 1e-3)
      }
  })

  it("law: a push, a bump, a drop and a slope towards the edge never let the wearer take more wind", () => {
    fc.assert(
      fc.property(ground, ({ drop, ...i }) => {
        const on: OverturningInput = { ...i, slopeDirection: 0 }
        const now = overturning(on)
        const step = 0.5 * drop * Math.min(now.stepHeightLimit as number, 0.5)
        for (const worse of [
          { ...on, pushForce: 5 },
          { ...on, bumpMass: 30, bumpSpeed: 0.1 },
          { ...on, stepHeight: step },
          { ...on, slope: i.slope + 0.1 },
        ]) {
          const next = overturning(worse)
          expect(next.foldWindSpeed).toBeLessThanOrEqual(now.foldWindSpeed + 1e-12)
          expect(next.pushForceLimit).toBeLessThanOrEqual(limitOf(now) + 1e-9)
          expect(next.utilisation).toBeGreaterThanOrEqual(now.utilisation - 1e-12)
        }
      }),
      { numRuns: 60 },
    )
  })

  it("a larger share of the foot and a smaller factor never let a push pass for harmless; a child holds a fraction of it", () => {
    const still = { ...overturning.example, windSpeed: 0, walkingSpeed: 0 }
    const own = limitOf(overturning(still))
    expect(overturning({ ...still, usableShare: 1, safetyFactor: 1 }).pushForceLimit).toBe(own)
    expect(overturning({ ...still, usableShare: 0.3 }).pushForceLimit).toBeLessThan(own)
    const child = overturning({ ...still, bodyMass: 22, rigMass: 2, stature: 1.2, footLength: 0.18 })
    expect(child.pushForceLimit).toBeLessThan(own / 2)
    expect(child.cautions.map((c) => c.code)).toContain("light-wearer")
    const bold = overturning({ ...still, usableShare: 1, safetyFactor: 1, pushForce: own * 1.01 })
    expect(bold.cautions.map((c) => c.code)).toContain("push-over")
  })

  it("wind and pushes that act no higher than the edge tip nobody over it, and are no help either", () => {
    // the ground rises by 30 degrees behind the wearer: the edge, half a metre back, lies 29 cm higher
    const uphill = { ...overturning.example, edgeDistance: 0.5, slope: Math.PI / 6, slopeDirection: Math.PI, stepHeight: null }
    const low = overturning({ ...uphill, forceHeight: 0, pushHeight: 0.1, pushForce: 50 })
    expect([low.windMoment, low.pushMoment, low.pushForceLimit]).toEqual([0, 0, null])
    expect(low.cautions.map((c) => c.code)).not.toContain("push-over")
    // the published share of 0.6 puts it 15 cm up: a push between that and 25 cm, all of the foot, is held by the share alone
    const still = overturning({ ...uphill, usableShare: 1, pushHeight: 0.2, windSpeed: 0, walkingSpeed: 0 })
    const held = (still.weight * 0.3 * Math.cos(Math.PI / 6)) / 1.5
    expect(limitOf(still)).toBeCloseTo(held / 0.05, 6)
  })

  it("the edge that wind and push ask for holds them, and a shorter one does not, where either acts below it", () => {
    let below = 0
    for (const slope of [-0.5, -0.3, -0.1, 0, 0.1])
      for (const forceHeight of [0, 0.05, 0.2, 1.4])
        for (const pushHeight of [0.1, 0.3, 1.3])
          for (const pushForce of [0, 40, 150]) {
            const i = {
              ...{ ...overturning.example, forceHeight, pushHeight, pushForce, usableShare: 1, dragArea: 2 },
              ...{ slope: Math.abs(slope), slopeDirection: slope < 0 ? Math.PI : 0 },
            }
            const needed = overturning(i).requiredEdgeDistance
            if (needed === null || needed < 1e-5 || needed > 2) continue
            if (needed * Math.sin(-slope) > Math.min(forceHeight, pushHeight)) below++
            expect(overturning({ ...i, edgeDistance: needed }).utilisation).toBeCloseTo(1, 9)
          }
    expect(below).toBeGreaterThan(5)
  })

  it("refuses a drop with one that is held, however small the stance", () => {
    for (const usableShare of [0.01, 0.6, 1])
      for (const stanceWidth of [0.01, 0.3]) {
        const i = { ...overturning.example, windFrom: "side" as const, usableShare, stanceWidth, stepHeight: 0.4 }
        const refused = overturning.attempt(i)
        if (refused.ok || !(refused.error instanceof NoSolutionError)) throw new Error("expected a refusal")
        const { nearest, shortBy } = refused.error
        expect(shortBy).toBeGreaterThan(0)
        expect(overturning.attempt({ ...i, ...nearest }).ok).toBe(true)
      }
  })

  it("a bump beside a steady push is held to what that push leaves", () => {
    const i = { ...overturning.example, windSpeed: 0, walkingSpeed: 0, bumpMass: 40, bumpSpeed: 0 }
    const alone = overturning(i)
    const pushed = overturning({ ...i, pushForce: limitOf(alone) / 4 })
    expect((pushed.bumpSpeedLimit as number) / (alone.bumpSpeedLimit as number)).toBeCloseTo(0.75, 9)
    const both = overturning({ ...i, pushForce: limitOf(alone) / 4, bumpSpeed: pushed.bumpSpeedLimit as number })
    expect(both.utilisation).toBeCloseTo(1, 9)
    expect(overturning({ ...i, pushForce: limitOf(alone) * 2 }).bumpSpeedLimit).toBe(0)
  })
})
