import { describe, expect, it } from "vitest"
import { walkingLoad } from "../../src/worn/index.js"
import { walkingFactor } from "../../src/worn/load/data-load.js"
import { limitsOf } from "../helpers/field-limits.js"

const G = 9.80665
const harmonics = [1, 2, 3, 4] as const

interface Hung {
  readonly rigMass: number
  readonly stepRate: number
  readonly stiffness: number
  readonly dampingRatio: number
}

/**
 * The load stepped in time from rest (classical Runge–Kutta, fourth order) over a trunk shaken by these harmonics, until what the
 * start left has died away; then highest and lowest force and greatest travel from rest over two whole steps.
 */
function stepped({ rigMass, stepRate, stiffness, dampingRatio }: Hung, shaken: readonly { h: number; a: number; phase: number }[]) {
  const own = Math.sqrt(stiffness / rigMass)
  const damper = 2 * dampingRatio * own
  const trunk = (t: number) => shaken.reduce((sum, { h, a, phase }) => sum + a * G * Math.cos(2 * Math.PI * h * stepRate * t + phase), 0)
  const rate = (t: number, z: number, v: number) => -trunk(t) - damper * v - own * own * z
  const settled = Math.ceil((16 / (dampingRatio * own)) * stepRate)
  const perStep = Math.ceil(Math.max(240, (60 * own) / (2 * Math.PI * stepRate)))
  const dt = 1 / stepRate / perStep
  let [z, v, most, least, travel] = [0, 0, 0, Number.POSITIVE_INFINITY, 0]
  for (let i = 0; i < (settled + 2) * perStep; i++) {
    const t = i * dt
    const a1 = rate(t, z, v)
    const a2 = rate(t + dt / 2, z + (v * dt) / 2, v + (a1 * dt) / 2)
    const v2 = v + (a1 * dt) / 2
    const a3 = rate(t + dt / 2, z + (v2 * dt) / 2, v + (a2 * dt) / 2)
    const v3 = v + (a2 * dt) / 2
    const a4 = rate(t + dt, z + v3 * dt, v + a3 * dt)
    const v4 = v + a3 * dt
    z += (dt * (v + 2 * v2 + 2 * v3 + v4)) / 6
    v += (dt * (a1 + 2 * a2 + 2 * a3 + a4)) / 6
    if (i < settled * perStep) continue
    // what spring and damper pass on, about the weight
    const force = rigMass * (-own * own * z - damper * v)
    most = Math.max(most, force)
    least = Math.min(least, force)
    travel = Math.max(travel, Math.abs(z))
  }
  return { most: rigMass * G + most, least: rigMass * G + least, travel }
}

const cases: readonly Hung[] = [0.1, 0.3, 1].flatMap((dampingRatio) =>
  [600, 1500, 4000, 20000].map((stiffness) => ({ rigMass: 6, stepRate: 1.8, stiffness, dampingRatio })),
)

describe("walkingLoad", () => {
  it("is the sum of what each harmonic does alone, stepped in time", () => {
    let worst = 0
    for (const given of cases) {
      const out = walkingLoad(given)
      const alone = harmonics.map((h) => stepped(given, [{ h, a: walkingFactor(h, h * given.stepRate), phase: 0 }]))
      const weight = given.rigMass * G
      const peak = weight + alone.reduce((sum, one) => sum + one.most - weight, 0)
      const least = weight + alone.reduce((sum, one) => sum + one.least - weight, 0)
      const travel = alone.reduce((sum, one) => sum + one.travel, 0)
      worst = Math.max(
        worst,
        Math.abs(peak / out.peakForce - 1),
        Math.abs(least - out.minForce) / weight,
        Math.abs(travel / (out.travel as number) - 1),
      )
    }
    // peaks are read at 240 places of a step, 60 of the fourth harmonic: cos(π/60) is 0.14 % low at worst
    expect(worst).toBeLessThan(2e-3)
  })

  it("is never passed by all harmonics together, whatever their phases", () => {
    let nearest = 0
    for (const given of cases.filter((_, i) => i % 3 === 0)) {
      const out = walkingLoad(given)
      for (const k of [0, 1, 2, 3, 4, 5]) {
        const all = harmonics.map((h) => ({ h, a: walkingFactor(h, h * given.stepRate), phase: k * h * h * 0.9 }))
        const run = stepped(given, all)
        expect(run.most).toBeLessThan(out.peakForce * (1 + 1e-6))
        expect(run.least).toBeGreaterThan(out.minForce - 1e-6 * out.peakForce)
        expect(run.travel).toBeLessThan((out.travel as number) * (1 + 1e-6))
        nearest = Math.max(nearest, run.most / out.peakForce)
      }
    }
    expect(nearest).toBeGreaterThan(0.9)
  })

  it("comes to the load fixed to the trunk as the hanger stiffens, and to a still load as it softens", () => {
    const base = { rigMass: 2, stepRate: 2, dampingRatio: 0.02 }
    const fixed = walkingLoad({ rigMass: 2, stepRate: 2 })
    // CCIP-016: 0.4305 + 0.0914 + 0.0714 + 0.065 at two steps a second
    expect(fixed.fixedPeakFactor).toBeCloseTo(1.6583, 10)
    expect([fixed.peakFactor, fixed.amplification, fixed.travel, fixed.sag]).toEqual([fixed.fixedPeakFactor, 1, null, null])
    expect(walkingLoad({ ...base, stiffness: 1e6 }).peakFactor).toBeCloseTo(fixed.peakFactor, 2)
    const soft = walkingLoad({ ...base, rigMass: 150, stiffness: 50 })
    expect(soft.peakFactor).toBeLessThan(1.01)
    // still in space: the trunk's own rise and fall, a·g/ω² of each harmonic
    const rise = harmonics.reduce((sum, h) => sum + (walkingFactor(h, 2 * h) * G) / (4 * Math.PI * h) ** 2, 0)
    expect((soft.travel as number) / rise).toBeCloseTo(1, 2)
  })

  it("pulls in proportion to the mass where stiffness follows it; damping tames a resonance", () => {
    const one = walkingLoad({ rigMass: 3, stiffness: 2000 })
    const two = walkingLoad({ rigMass: 6, stiffness: 4000 })
    expect(two.peakForce / one.peakForce).toBeCloseTo(2, 12)
    expect(two.travel).toBeCloseTo(one.travel as number, 12)
    // natural frequency at the step rate: 1/(2ζ) of the first harmonic's travel
    const own = 6 * (2 * Math.PI * 2) ** 2
    const peaks = [0.05, 0.1, 0.2, 0.4].map((dampingRatio) => walkingLoad({ rigMass: 6, stiffness: own, dampingRatio }).peakFactor)
    for (const [i, peak] of peaks.entries()) if (i) expect(peak).toBeLessThan(peaks[i - 1] as number)
    expect(walkingLoad({ rigMass: 6, stiffness: own, dampingRatio: 0.1 }).stepTransmissibility).toBeCloseTo(Math.sqrt(1.04) / 0.2, 9)
  })

  it("limits and defaults of its fields", () => {
    expect(limitsOf(walkingLoad.input)).toEqual([
      "rigMass: min 0.01, max 150",
      "stepRate: min 1, max 2.8, default 2",
      "stiffness: min 50 N/m, max 1000 N/mm, default null",
      "dampingRatio: min 0.02, max 2, default 0.1",
      "freeTravel: min 1 mm, max 1, default null",
    ])
    expect(walkingLoad({ rigMass: 6, stiffness: 20000, freeTravel: 0.002 }).travelUtilisation).toBeCloseTo(
      (walkingLoad({ rigMass: 6, stiffness: 20000 }).travel as number) / 0.002,
      12,
    )
  })
})
