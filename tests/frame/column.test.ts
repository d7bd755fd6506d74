import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { beam, bendingRod, column, columnEnds, eulerStress, johnsonStress, pinJoint, transitionSlenderness } from "../../src/frame/index.js"
import { assemble, elementPush, elementStiffness, evenNodes, leastEigenvalue, type Matrix, without } from "./elements.js"

/** Least buckling load of a unit column (E·I = 1, L = 1) by finite elements; `held` as deflection 0 and slope 1 of each end. */
function bucklingLoad(held: { readonly start: readonly number[]; readonly end: readonly number[] }, n = 20): number {
  const fixed = [...held.start, ...held.end.map((d) => 2 * n + d)]
  const [a, b] = [elementStiffness, elementPush].map((one) => without(assemble(evenNodes(n), one), fixed)) as [Matrix, Matrix]
  return leastEigenvalue(a, b)
}

describe("column against other routes", () => {
  it("theoretical end constants by finite elements", () => {
    const cases = {
      "pinned-pinned": { start: [0], end: [0] },
      "fixed-free": { start: [0, 1], end: [] },
      "fixed-pinned": { start: [0, 1], end: [0] },
      "fixed-fixed": { start: [0, 1], end: [0, 1] },
    }
    for (const [name, held] of Object.entries(cases)) {
      const { theory, design } = columnEnds[name as keyof typeof cases]
      // the clamped and pinned constant is tabled to 4 figures
      expect(Math.abs(bucklingLoad(held) / Math.PI ** 2 / theory - 1), name).toBeLessThan(2e-4)
      expect(design).toBeLessThanOrEqual(theory)
    }
  })

  it("Euler and Johnson meet with equal stress and slope at half the strength, for any material", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1e9, max: 3e11, noNaN: true }),
        fc.double({ min: 1e6, max: 1e9, noNaN: true }),
        fc.double({ min: 0.25, max: 4, noNaN: true }),
        (modulus, strength, ends) => {
          const at = transitionSlenderness(modulus, strength, ends)
          const [e, j] = [eulerStress(modulus, ends, at), johnsonStress(modulus, strength, ends, at)]
          expect(e / strength).toBeCloseTo(0.5, 12)
          expect(j / strength).toBeCloseTo(0.5, 12)
          const step = 1e-5 * at
          const slope = (f: (x: number) => number) => ((f(at + step) - f(at - step)) / (2 * step)) * (at / strength)
          expect(slope((x) => eulerStress(modulus, ends, x))).toBeCloseTo(-1, 8)
          expect(slope((x) => johnsonStress(modulus, strength, ends, x))).toBeCloseTo(-1, 8)
        },
      ),
      { seed: 3, numRuns: 100 },
    )
  })

  it("the solver follows the load form of the formulae over its whole range of length", () => {
    let most = 0
    const [D, d, E, S] = [0.02, 0.017, 68.9e9, 241e6]
    const I = (Math.PI / 64) * (D ** 4 - d ** 4)
    const A = (Math.PI / 4) * (D ** 2 - d ** 2)
    let before = Number.POSITIVE_INFINITY
    for (let step = 0; step <= 400; step++) {
      const length = 0.001 * 10 ** ((step / 400) * 5)
      const out = column({ length, section: { outsideDiameter: D, wall: (D - d) / 2 }, modulus: E, strength: S })
      const euler = (Math.PI ** 2 * E * I) / length ** 2
      const expected = euler < (S * A) / 2 ? euler : S * A - (S * A) ** 2 / (4 * euler)
      most = Math.max(most, Math.abs(out.criticalLoad.low / expected - 1))
      expect(out.criticalLoad.low).toBeLessThanOrEqual(before)
      expect(out.governedBy).toBe(euler < (S * A) / 2 ? "Euler" : "Johnson")
      before = out.criticalLoad.low
    }
    expect(most).toBeLessThan(1e-11)
  })

  it("a rectangle buckles across its thin side, however it is laid", () => {
    const one = column({ length: 0.5, section: { width: 0.005, height: 0.03 }, material: "steel" })
    const other = column({ length: 0.5, section: { width: 0.03, height: 0.005 }, material: "steel" })
    expect(one.criticalLoad).toEqual(other.criticalLoad)
    expect(one.radiusOfGyration).toBeCloseTo(0.005 / Math.sqrt(12), 12)
    const hollow = column({ length: 0.5, section: { width: 0.01, height: 0.03, wall: 0.001 }, material: "steel" })
    expect(hollow.criticalLoad).toEqual(
      column({ length: 0.5, section: { width: 0.03, height: 0.01, wall: 0.001 }, material: "steel" }).criticalLoad,
    )
  })

  it("a wall as thin as foil folds before the column does", () => {
    const foil = column({ length: 0.3, section: { outsideDiameter: 0.1, wall: 0.00003 }, material: "aluminium-6061" })
    expect(foil.governedBy).toBe("wall")
    expect(foil.criticalStress).toBe(foil.wallBucklingStress)
  })

  it("scaling every length by s scales the Euler load by s²; a warm plastic strut takes less", () => {
    const at = (s: number) =>
      column({ length: 2 * s, section: { outsideDiameter: 0.02 * s, wall: 0.002 * s }, modulus: 2.5e9 }).criticalLoad.low
    expect(at(3) / at(1)).toBeCloseTo(9, 10)
    const warm = (temperature: number) =>
      column({ length: 1, section: { pipe: "3/4" }, material: "pvc-pipe", materialTemperature: temperature }).criticalLoad.low
    expect(warm(45)).toBeLessThan(warm(23))
  })

  it("warns where the load is near the critical one, and asks for the area of another shape", () => {
    const codes = (load: number) =>
      column({ length: 1, section: { outsideDiameter: 0.02, wall: 0.001 }, material: "aluminium-6061", load }).cautions.map((c) => c.code)
    expect(codes(1e5)).toContain("collapse")
    expect(codes(1)).not.toContain("thin-margin")
    const outcome = column.attempt({ length: 1, section: { secondMoment: 1e-9 }, material: "steel" })
    expect(!outcome.ok && "issues" in outcome.error && outcome.error.issues.map((i) => i.path.join("."))).toEqual(["section.area"])
  })

  it("says of every member with a load on it that standing still was reckoned, until a handling is named", () => {
    const section = { outsideDiameter: "20 mm", wall: "1.5 mm" } as const
    const material = "aluminium-6061"
    const members = (motion: "still" | "walking") => [
      column({ length: 1, section, material, load: 100, handling: motion }),
      beam({ length: 1, support: "cantilever", section, material, forces: [{ force: 5, position: 1 }], handling: motion }),
      bendingRod({ length: 1, section, material, force: 5, handling: motion }),
      pinJoint({ force: 100, bolt: "M6", tube: section, material, handling: motion }),
    ]
    for (const { cautions } of members("still")) expect(cautions.map((c) => c.code)).toContain("standing-still")
    for (const { cautions } of members("walking")) expect(cautions.map((c) => c.code)).not.toContain("standing-still")
    expect(column({ length: 1, section, material }).cautions.map((c) => c.code)).not.toContain("standing-still")
  })
})
