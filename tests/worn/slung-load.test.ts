import { lusolve } from "mathjs"
import { describe, expect, it } from "vitest"
import { NoSolutionError } from "../../src/solver/index.js"
import { slungLoad } from "../../src/worn/index.js"
import { limitsOf } from "../helpers/field-limits.js"

const G = 9.80665
const degree = Math.PI / 180
const base = { bodyMass: 64, rigMass: 4, loadOffset: 0.2, strapWidth: 0.05 }
const solved = (matrix: number[][], right: number[]) => (lusolve(matrix, right) as unknown as number[][]).map((row) => row[0] as number)

/** A strap on the shoulder let go from rest, seen from the front: does it slide along the slope within a second? 1 down, −1 to the neck. */
function slides(slope: number, strapAngle: number, friction: number): number {
  let [place, speed] = [0, 0]
  const dt = 1e-3
  // pull of 1 per mass, δ inwards of straight down; down the slope is outwards
  const [level, down] = [-Math.sin(strapAngle), Math.cos(strapAngle)]
  const along = level * Math.cos(slope) + down * Math.sin(slope)
  const press = -level * Math.sin(slope) + down * Math.cos(slope)
  for (let i = 0; i < 1000; i++) {
    const held = friction * press
    if (speed === 0 && Math.abs(along) <= held) return 0
    speed += (along - Math.sign(speed || along) * held) * dt
    place += speed * dt
  }
  return Math.sign(place)
}

describe("slungLoad", () => {
  it("agrees with three free bodies solved as equations: the load, the trunk's section, the feet", () => {
    let worst = 0
    for (const rigMass of [0.5, 4, 9])
      for (const loadOffset of [-0.25, 0, 0.1, 0.3])
        for (const angle of [0, 15, 40]) {
          const strapAngle = angle * degree
          const out = slungLoad({ ...base, rigMass, loadOffset, strapAngle, footSpacing: 0.3 })
          const weight = rigMass * G
          // load: both ends of the strap and the hip; up, and level
          const [tension, hip] = solved(
            [
              [2 * Math.cos(strapAngle), 0],
              [2 * Math.sin(strapAngle), -1],
            ],
            [weight, 0],
          )
          // section at the low back, all above it and the load: joint and muscle, moments about a point 1 m aside
          const body = 0.6 * base.bodyMass * G
          const side = loadOffset > 0 ? -0.06 : 0.06
          const [joint, muscle] = solved(
            [
              [1, -1],
              [1, -(side + 1)],
            ],
            [body + weight, body + weight * (loadOffset + 1)],
          )
          // feet, moments about a point 2 m aside
          const [left, right] = solved(
            [
              [1, 1],
              [0.15 + 2, -0.15 + 2],
            ],
            [(base.bodyMass + rigMass) * G, base.bodyMass * G * 2 + weight * (loadOffset + 2)],
          )
          const near = (a: number, b: number, scale: number) => {
            worst = Math.max(worst, Math.abs(a - b) / scale)
          }
          near(out.tension, tension as number, weight)
          near(out.hipPush, hip as number, weight)
          near(out.muscleForce, muscle as number, weight)
          near(out.addedCompression, (joint as number) - body, weight)
          near(out.maxFootShare, Math.max(left as number, right as number) / ((left as number) + (right as number)), 1)
        }
    expect(worst).toBeLessThan(1e-9)
  })

  it("says of the strap what a strap let go does, stepped in time", () => {
    for (const slope of [0, 10, 20, 35, 45])
      for (const angle of [0, 12, 25, 45, 60])
        for (const friction of [0.05, 0.15, 0.33, 0.62, 0.95]) {
          const out = slungLoad({ ...base, shoulderSlope: slope * degree, strapAngle: angle * degree, shoulderFriction: friction })
          const way = slides(slope * degree, angle * degree, friction)
          expect(out.strapStays).toBe(way === 0)
          const codes = out.cautions.map((c) => c.code)
          expect([codes.includes("slides-off"), codes.includes("slides-to-neck")]).toEqual([way === 1, way === -1])
        }
  })

  it("the tighter end: tension stepped along the wrap from one end to the other, both holding the load", () => {
    for (const shoulderFriction of [0, 0.2, 0.6]) {
      const out = slungLoad({ ...base, shoulderFriction })
      const steps = 200000
      let tension = 1
      for (let i = 0; i < steps; i++)
        tension += (shoulderFriction * tension * (1 + (shoulderFriction * Math.PI) / steps / 2) * Math.PI) / steps
      expect(out.maxTension).toBeCloseTo((4 * G * tension) / (1 + tension), 6)
    }
  })

  it("holds adults to 10 % of body mass (Phonpichit and others 2016), the light to 4 % (Abdon and others 2018)", () => {
    expect(slungLoad(base).maxMass).toBeCloseTo(6.4, 12)
    expect(slungLoad({ ...base, bodyMass: 44 }).maxMass).toBeCloseTo(1.76, 12)
    const stays = { ...base, strapAngle: 20 * degree, strapWidth: 0.08 }
    const at = (rigMass: number, more = {}) => slungLoad({ ...stays, rigMass, ...more }).withinLimits
    expect([at(6.39), at(6.41), at(4, { strapAngle: 0 }), at(4, { strapWidth: 0.02 })]).toEqual([true, false, false, false])
  })

  it("refuses a load that tips the wearer, naming an offset and a stance that hold", () => {
    const outcome = slungLoad.attempt({ ...base, rigMass: 40, loadOffset: 0.3 })
    if (outcome.ok || !(outcome.error instanceof NoSolutionError)) throw new Error("expected a refusal")
    const { loadOffset, footSpacing } = outcome.error.nearest
    expect(slungLoad({ ...base, rigMass: 40, loadOffset: loadOffset as number }).maxFootShare).toBeCloseTo(1, 6)
    expect(slungLoad({ ...base, rigMass: 40, loadOffset: 0.3, footSpacing: footSpacing as number }).maxFootShare).toBeCloseTo(1, 6)
  })

  it("limits and defaults of its fields", () => {
    expect(limitsOf(slungLoad.input)).toEqual([
      "bodyMass: min 20, max 300",
      "rigMass: min 0.01, max 150",
      "loadOffset: min -0.8, max 0.8",
      "strapAngle: min 0, max 60°, default 0",
      "shoulderSlope: min 0, max 45°, default 20°",
      "strapWidth: min 5 mm, max 200 mm",
      "shoulderRadius: min 20 mm, max 150 mm, default 60 mm",
      "wrapAngle: min 0, max 180°, default 180°",
      "shoulderFriction: min 0, max 1, default 0.3",
      "muscleLeverArm: min 30 mm, max 200 mm, default 60 mm",
      "footSpacing: min 0.05, max 1.2, default 0.2",
      "pressureLimit: min 1000, max 100000, default 14000",
    ])
  })
})
