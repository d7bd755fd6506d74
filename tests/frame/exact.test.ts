import { expect, it } from "vitest"
import { beam, bendingRod, column, massProperties, naturalFrequency, pinJoint, tubeSection } from "../../src/frame/index.js"

/** On the very edge: numbers that arithmetic hits exactly, where "above" and "at least" part. */
type Any = { attempt(input: unknown): { ok: boolean; value?: { cautions: readonly { code: string }[] }; error?: unknown } }
const codes = (solver: unknown, input: object): string[] => {
  const outcome = (solver as Any).attempt(input)
  if (!outcome.ok || !outcome.value) throw outcome.error
  return outcome.value.cautions.map((c) => c.code)
}
const faults = (solver: unknown, input: object): string[] => {
  const outcome = (solver as Any).attempt(input)
  const issues = (outcome.error as { issues?: readonly { path: readonly (string | number)[] }[] } | undefined)?.issues ?? []
  return issues.map((i) => i.path.join("."))
}

it("margins of 3 and of 1", () => {
  const strut = { length: 1, section: { outsideDiameter: 0.02, wall: 0.001 }, material: "steel" } as const
  const { low: criticalLoad } = column(strut).criticalLoad
  const [three, one] = [criticalLoad / 3, criticalLoad]
  expect([criticalLoad / three, column({ ...strut, load: one }).safetyFactor?.low]).toEqual([3, 1])
  expect(codes(column, { ...strut, load: three })).not.toContain("thin-margin")
  expect(codes(column, { ...strut, load: three * 1.001 })).toContain("thin-margin")
  expect(codes(column, { ...strut, load: one })).toContain("thin-margin")
  expect(codes(column, { ...strut, load: one })).not.toContain("collapse")
  expect(codes(column, { ...strut, load: one * 1.001 })).toContain("collapse")
})

it("beam: ten times its depth, a load at its end, the shortest stretch", () => {
  const base = { support: "cantilever", section: { outsideDiameter: 0.02 }, material: "steel" } as const
  expect(codes(beam, { ...base, length: 20 * 0.01 })).not.toContain("short-beam")
  expect(codes(beam, { ...base, length: 0.1999 })).toContain("short-beam")
  expect(faults(beam, { ...base, length: 1, distributedLoads: [{ startLoad: 1, endLoad: 1, start: 0, end: 1e-6 }] })).toEqual([])
  expect(faults(beam, { ...base, length: 1, distributedLoads: [{ startLoad: 1, endLoad: 1, start: 0, end: 0.9e-6 }] })).toEqual([
    "distributedLoads.0.end",
  ])
})

it("pinJoint: a third of the width, 1.2 and 0.51 of the hole", () => {
  const joint = { force: 10, tube: { outsideDiameter: 0.018, wall: 0.001 }, material: "steel" } as const
  expect(codes(pinJoint, { ...joint, pinDiameter: 0.018 / 3 })).not.toContain("wide-hole")
  expect(codes(pinJoint, { ...joint, pinDiameter: 0.00601 })).toContain("wide-hole")
  expect(codes(pinJoint, { ...joint, pinDiameter: 0.005, edgeDistance: 1.2 * 0.005 })).not.toContain("near-the-edge")
  expect(codes(pinJoint, { ...joint, pinDiameter: 0.005, edgeDistance: 0.00599 })).toContain("near-the-edge")
  expect(faults(pinJoint, { ...joint, pinDiameter: 0.005, edgeDistance: 0.51 * 0.005 })).toEqual(["edgeDistance"])
  expect(faults(pinJoint, { ...joint, pinDiameter: 0.005, edgeDistance: 0.00256 })).toEqual([])
})

it("massProperties: the shortest arrow counted", () => {
  const at = (x: number) => ({ parts: [{ mass: 1, x: 0, y: 0, z: 0, directionX: x }], axisDirectionX: x, axisDirectionZ: 0 })
  expect(faults(massProperties, at(1e-6))).toEqual(["axisDirectionX", "parts.0.directionX"])
  expect(faults(massProperties, at(1.1e-6))).toEqual([])
})

it("naturalFrequency: steps at its very frequency, and the least mass along the length", () => {
  const boom = { ...naturalFrequency.example, tipMass: 1.5 }
  const frequency = naturalFrequency(boom).frequency.low
  expect(codes(naturalFrequency, { ...boom, stepRate: frequency })).not.toContain("slower-than-steps")
  expect(codes(naturalFrequency, { ...boom, stepRate: frequency * 1.001 })).toContain("slower-than-steps")
  const bare = (addedMass: number) => ({ length: 1, section: { secondMoment: 1e-9 }, modulus: 1e9, addedMass })
  expect(faults(naturalFrequency, bare(1e-6))).toEqual([])
  expect(faults(naturalFrequency, bare(0.97e-6))).toEqual(["massPerLength"])
})

it("tubeSection: a wall of a tenth of the side", () => {
  expect(codes(tubeSection, { width: 0.02, height: 0.03, wall: 0.1 * 0.02 })).not.toContain("thick-wall")
  expect(codes(tubeSection, { width: 0.03, height: 0.02, wall: 0.002001 })).toContain("thick-wall")
})

it("no margin is named below a stress of 1 Pa, and one above it, in every member", () => {
  const bar = { width: 0.02, height: 0.03 }
  // stress of a moment on a rectangle: 6·M/(b·h²)
  const momentFor = (stress: number) => (stress * 0.02 * 0.03 ** 2) / 6
  const named = (stress: number) => [
    tubeSection({ ...bar, material: "steel", moment: momentFor(stress) }).safetyFactor !== null,
    beam({
      ...{ length: 1, support: "cantilever", section: bar, material: "steel", countsOwnWeight: false },
      moments: [{ moment: momentFor(stress), position: 1 }],
    }).safetyFactor !== null,
    bendingRod({ length: 0.05, section: bar, material: "steel", force: momentFor(stress) / 0.05 }).safetyFactor !== null,
  ]
  expect(named(1.02)).toEqual([true, true, true])
  expect(named(0.98)).toEqual([false, false, false])
})
