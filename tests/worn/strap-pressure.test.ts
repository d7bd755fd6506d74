import { lusolve } from "mathjs"
import { describe, expect, it } from "vitest"
import { NoSolutionError } from "../../src/solver/index.js"
import { strapPressure } from "../../src/worn/index.js"

const G = 9.80665
const grid = (from: number, to: number, steps: number) => Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * i) / steps)
const base = { rigMass: 9, centreOffset: 0.12, strapWidth: 0.06 }

/** The rig as a free body: forces forward and up, moments about the point (x, z) = (−0.3, −0.7), ahead of it and below. */
function freeBody(load: number, offset: number, ratio: number, belt: number | null) {
  const [up, low, high, down] = [(35 * Math.PI) / 180, (50 * Math.PI) / 180, 0.42, 0]
  const [fx, fz] = [Math.cos(up) + ratio * Math.cos(low), Math.sin(up) + ratio * Math.sin(low)]
  const [px, pz] = [-0.3, -0.7]
  const about = (x: number, z: number, forceX: number, forceZ: number) => (x - px) * forceZ - (z - pz) * forceX
  const straps = about(0, high, Math.cos(up), Math.sin(up)) + ratio * about(0, down, Math.cos(low), Math.sin(low))
  const weight = load * G
  // with the belt's share given the unknowns are tension and both pushes; where the rig hangs back the upper push is 0 and the belt unknown
  const [matrix, right] =
    belt === null
      ? [
          [
            [fx, -1, 0],
            [fz, 0, 1],
            [straps, about(0, 0, -1, 0), about(0, 0, 0, 1)],
          ],
          [0, weight, -about(-offset, 0.2, 0, -weight)],
        ]
      : [
          [
            [fx, -1, -1],
            [fz, 0, 0],
            [straps, about(0, high, -1, 0), about(0, 0, -1, 0)],
          ],
          [0, weight - belt, -about(-offset, 0.2, 0, -weight) - about(0, 0, 0, belt)],
        ]
  const x = (lusolve(matrix as number[][], right as number[]) as unknown as number[][]).map((row) => row[0] as number)
  return belt === null
    ? { tension: x[0] as number, upperPush: 0, lowerPush: x[1] as number, belt: x[2] as number }
    : { tension: x[0] as number, upperPush: x[1] as number, lowerPush: x[2] as number, belt }
}

describe("strapPressure by second routes", () => {
  it("agrees with the free body solved as three equations, resting on the back or hanging from the straps", () => {
    let [worst, resting, hanging] = [0, 0, 0]
    for (const rigMass of [1, 6, 15, 40])
      for (const centreOffset of grid(0.01, 0.25, 12))
        for (const beltShare of grid(0, 0.9, 9)) {
          const outcome = strapPressure.attempt({ ...base, rigMass, centreOffset, beltShare })
          if (!outcome.ok) continue
          const out = outcome.value
          const rest = freeBody(rigMass, centreOffset, 1, Math.min(beltShare * rigMass * G, out.beltCapacity))
          const free = rest.upperPush >= 0 ? rest : freeBody(rigMass, centreOffset, 1, null)
          if (rest.upperPush >= 0) resting++
          else hanging++
          for (const [a, b] of [
            [out.tension, free.tension],
            [out.upperPush, free.upperPush],
            [out.lowerPush, free.lowerPush],
            [out.beltLoad, free.belt],
          ] as const)
            worst = Math.max(worst, Math.abs(a - b) / (rigMass * G))
        }
    expect(worst).toBeLessThan(1e-9)
    expect(Math.min(resting, hanging)).toBeGreaterThan(50)
  })

  it("capstan: tension stepped along the wrap, and the pressure it makes adds up to the pull of both ends", () => {
    for (const shoulderFriction of [0, 0.15, 0.3, 0.8]) {
      const wrap = (120 * Math.PI) / 180
      const steps = 200000
      const d = wrap / steps
      let [tension, x, z] = [1, 0, 0]
      for (let i = 0; i < steps; i++) {
        const middle = tension * (1 + (shoulderFriction * d) / 2)
        const at = (i + 0.5) * d
        // normal push T·dθ outwards from the body on the strap, friction μ·T·dθ along it
        x += middle * d * (Math.cos(at) + shoulderFriction * Math.sin(at))
        z += middle * d * (Math.sin(at) - shoulderFriction * Math.cos(at))
        tension += shoulderFriction * middle * d
      }
      const { tensionRatio } = strapPressure({ ...base, shoulderFriction })
      expect(Math.abs(tension / tensionRatio - 1)).toBeLessThan(1e-9)
      // ends of the strap pull along their tangents
      expect(Math.abs(x - tension * Math.sin(wrap))).toBeLessThan(1e-8)
      expect(Math.abs(z - (1 - tension * Math.cos(wrap)))).toBeLessThan(1e-8)
    }
  })

  it("never presses more with a wider strap, a smaller load, a closer rig or a smoother strap", () => {
    const most = (change: object) => {
      const out = strapPressure.attempt({ ...base, ...change })
      return out.ok ? out.value.maxPressure : Number.NaN
    }
    const rising = (values: number[]) => {
      const answered = values.filter((v) => !Number.isNaN(v))
      expect(answered.length).toBeGreaterThan(10)
      answered.slice(1).forEach((v, i) => {
        expect(v).toBeGreaterThanOrEqual(answered[i] as number)
      })
    }
    rising(grid(0.2, 0.005, 60).map((strapWidth) => most({ strapWidth })))
    rising(grid(0.5, 40, 60).map((rigMass) => most({ rigMass })))
    rising(grid(0.001, 0.25, 60).map((centreOffset) => most({ centreOffset })))
    rising(grid(0, 1, 60).map((shoulderFriction) => most({ shoulderFriction })))
    rising(grid(0.9, 0, 60).map((beltShare) => most({ beltShare })))
  })

  it("the width needed and the heaviest load each just meet the limit", () => {
    for (const rigMass of [2, 9, 25])
      for (const beltShare of [0, 0.3, 0.8])
        for (const centreOffset of [0.02, 0.12, 0.19]) {
          const out = strapPressure({ ...base, rigMass, beltShare, centreOffset })
          expect(out.suggestedWidth).toBeGreaterThanOrEqual(out.minWidth - 1e-11)
          expect(out.suggestedWidth - out.minWidth).toBeLessThan(0.005)
          if (out.minWidth > 0.005)
            expect(strapPressure({ ...base, rigMass, beltShare, centreOffset, strapWidth: out.minWidth }).utilisation).toBeCloseTo(1, 10)
          expect(strapPressure({ ...base, rigMass: out.massAtLimit, beltShare, centreOffset }).utilisation).toBeCloseTo(1, 10)
        }
  })

  it("refuses a rig that hangs back, naming the offset that holds", () => {
    const outcome = strapPressure.attempt({ ...base, centreOffset: 0.6 })
    if (outcome.ok || !(outcome.error instanceof NoSolutionError)) throw new Error("expected a refusal")
    expect(outcome.error.noSolution).toBe("hangs-back")
    const most = outcome.error.nearest.centreOffset as number
    expect(strapPressure.attempt({ ...base, centreOffset: most }).ok).toBe(true)
    expect(strapPressure.attempt({ ...base, centreOffset: most * 1.001 }).ok).toBe(false)
  })

  it("refuses lower straps that lever the rig off, naming the upper anchor from which they no longer do", () => {
    const at = (upperAnchor: number) => strapPressure.attempt({ ...base, centreOffset: 0.005, upperAnchor, lowerAnchor: -0.2 })
    const low = at(0.1)
    if (low.ok || !(low.error instanceof NoSolutionError)) throw new Error("expected a refusal")
    expect(low.error.noSolution).toBe("cannot-balance")
    // both straps' level pulls about the belt, the lower one tighter by friction: cos 35° · h_u against e^(0.3 · 120°) · cos 50° · 0.2 m
    const degree = Math.PI / 180
    const least = (Math.exp(0.3 * 120 * degree) * Math.cos(50 * degree) * 0.2) / Math.cos(35 * degree)
    // a nanometre more, so that it holds when put in
    expect((low.error.nearest.upperAnchor as number) - least).toBeCloseTo(1e-9, 12)
    expect(at(low.error.nearest.upperAnchor as number).ok).toBe(true)
    expect(low.error.shortBy).toBeCloseTo(least - 0.1, 12)
    const reason = (upperAnchor: number) => {
      const outcome = at(upperAnchor)
      return outcome.ok ? "holds" : (outcome.error as NoSolutionError).noSolution
    }
    expect(reason(least * 0.999)).toBe("cannot-balance")
    expect(reason(least * 1.001)).not.toBe("cannot-balance")
  })

  it("says which figures are not settled, and warns of slipping and of too much pressure", () => {
    const codes = (change: object) => strapPressure({ ...base, ...change }).cautions.map((c) => c.code)
    expect(codes({})).toEqual(["take-it-off", "throat", "limit-not-settled", "skin-irritation", "belt-share-not-settled"])
    expect(codes({ rigMass: 20 })).toContain("over-limit")
    expect(codes({ beltTension: 5 })).toEqual(expect.arrayContaining(["belt-slips", "belt-tension-untried"]))
    expect(codes({ rigMass: 40 })).toContain("wider-than-tested")
    expect(codes({ centreOffset: 0.2 })).toContain("hangs-back")
  })
})
