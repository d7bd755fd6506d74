// The demo rigs of version 2: every motion passes, every check answers for its own field, no verdict is contradicted.
import { describe, expect, it } from "vitest"
import { assessRig, move, type Rig, type RigFinding } from "../../src/rig/index.js"
import { creature, creatureNames } from "../helpers/rigs.js"

/** A document with one value changed, at a path of keys and indices. */
function changed(rig: Rig, path: readonly (string | number)[], value: unknown): Rig {
  const copy = structuredClone(rig) as unknown as Record<string | number, unknown>
  let here = copy
  for (const key of path.slice(0, -1)) {
    here[key] ??= {}
    here = here[key] as Record<string | number, unknown>
  }
  here[path[path.length - 1] as string | number] = value
  return copy as unknown as Rig
}

const verdict = (findings: readonly RigFinding[], id: string, subject: string) =>
  findings.find((f) => f.id === id && f.subject === subject)?.verdict

describe.each(creatureNames)("%s", (name) => {
  const rig = creature(name)
  it("moves, each motion out and back, and its energies add up", () => {
    for (const { name: motion } of rig.motions) {
      const out = move({ ...rig, motion })
      expect(out.outDuration, motion).toBeGreaterThan(0)
      expect(Math.abs(out.out.energy.residual), motion).toBeLessThan(1e-9)
      expect(Math.abs(out.back.energy.residual), motion).toBeLessThan(1e-9)
    }
  })
  it("is assessed: nothing that was not judged is said to be met", () => {
    const { findings } = assessRig(rig)
    for (const f of findings) {
      if (f.missing !== null) expect(f.verdict).toBe("not enough data")
      if (f.verdict === "meets" && f.relation === "at-most") expect(f.value, f.id).toBeLessThanOrEqual(f.limit as number)
      if (f.verdict === "meets" && f.relation === "at-least") expect(f.value, f.id).toBeGreaterThanOrEqual(f.limit as number)
    }
  })
})

describe("a fault planted in the document of the nine-feather fan", () => {
  const rig = creature("nine-feather-fan")
  const before = assessRig(rig).findings
  const bus = (i: number, ...rest: string[]) => ["power", "buses", i, ...rest]
  const motion = (i: number, ...rest: (string | number)[]) => ["motions", i, ...rest]
  const rows: readonly (readonly [what: string, path: readonly (string | number)[], value: unknown, id: string, subject: string])[] = [
    ["a hair-thin wire", bus(0, "run"), { length: "0.2 m", awg: 40, insulation: "80 degC" }, "wire-heat", "motor line"],
    ["a thin wire behind the same fuse", bus(0, "run", "awg"), 32, "fuse-protects", "motor line"],
    ["a fuse far too large", bus(0, "fuseRating"), "40 A", "fuse-protects", "motor line"],
    ["a fuse that blows at once", bus(0, "fuseRating"), "0.5 A", "fuse-carries", "motor line"],
    ["a switch for a lamp", bus(0, "switchRating"), "0.3 A", "switch-current", "motor line"],
    ["weak cells", ["power", "sources", 0, "cellCurrent"], "0.3 A", "source-current", "pack"],
    ["a run across the hall", bus(0, "run", "length"), "30 m", "drop", "motor line"],
    ["a converter that needs more than an empty pack", bus(1, "converter", "minInputVoltage"), "11.8 V", "supply-carries", "servo line"],
    ["a converter too small", bus(1, "converter", "outputCurrentLimit"), "0.3 A", "supply-carries", "servo line"],
    ["a converter set too high", bus(1, "converter", "outputVoltage"), "8.4 V", "over-voltage", "jaw"],
    ["a touchy receiver", ["power", "loads", 0, "resetVoltage"], "6.5 V", "controller-voltage", "receiver"],
    ["a cue that is too short", motion(0, "wanted", "duration"), "1 s", "duration-out", "fan"],
    ["a way back that is too long", motion(0, "wanted", "backDuration"), "1 s", "duration-back", "fan"],
    ["a wider gape", motion(1, "wanted", "swing"), "80 deg", "swing", "jaw"],
    ["a motor at its limit", motion(0, "drive", "ratedTorque"), "0.3 N m", "rated-effort", "fan"],
    ["a motor that does not hold", motion(0, "drive", "holdingTorque"), "0.1 N m", "holds-unpowered", "fan"],
    ["a driver too small", motion(0, "drive", "currentLimit"), "0.2 A", "passes", "fan"],
    ["feathers of lead", motion(0, "mechanisms", 4, "masses", 0, "mass"), "12 kg", "passes", "fan"],
    ["two days without a charger", ["day", "hours"], "48 h", "day-energy", "pack"],
    ["a smaller purse", ["budget", "price"], 20, "price", "rig"],
    ["a lighter wish", ["budget", "mass"], "0.5 kg", "mass", "rig"],
  ]
  it.each(rows)("%s", (_, path, value, id, subject) => {
    if (verdict(before, id, subject) !== undefined) expect(["meets", "marginal"]).toContain(verdict(before, id, subject))
    expect(verdict(assessRig(changed(rig, path, value)).findings, id, subject)).toBe("falls short")
  })
  it("changes nothing else where nothing else reads the field", () => {
    const after = assessRig(changed(rig, ["budget", "price"], 20)).findings
    for (const f of before) if (f.id !== "price") expect(verdict(after, f.id, f.subject), f.id).toBe(f.verdict)
  })
  it("a field taken away never meets", () => {
    for (const [path, id, subject] of [
      [["power", "sources", 0, "cellCurrent"], "source-current", "pack"],
      [bus(0, "switchRating"), "switch-current", "motor line"],
      [bus(0, "fuseRating"), "fuse-protects", "motor line"],
      [motion(0, "drive", "ratedTorque"), "rated-effort", "fan"],
      [["day", "hours"], "day-energy", "pack"],
    ] as const)
      expect(verdict(assessRig(changed(rig, path, null)).findings, id, subject), id).toBe("not enough data")
  })
})
