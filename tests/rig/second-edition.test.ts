// The rig's second edition, from document to answer.
import { describe, expect, it } from "vitest"
import { assessRig, move, rigWith } from "../../src/rig/index.js"
import { fromVersion1 } from "../../src/rig/whole/migrate.js"
import { InputError } from "../../src/solver/index.js"
import { demo, demoNames } from "../helpers/rigs.js"

const hinged = demoNames.filter((name) => demo(name).hinged)

type Rig = typeof move.example
const brought = (name: string) => fromVersion1(demo(name) as unknown as Record<string, unknown>)
const rigOf = (name: string) => brought(name).rig as unknown as Rig

describe("a document of version 1 brought to version 2", () => {
  it.each(hinged)("loses nothing on its way, and takes longer while all else draws: %s", (name) => {
    const rig = rigOf(name)
    const alone = move({ ...rig, power: rig.power ? { ...rig.power, loads: [] } : null })
    const whole = move(rig)
    expect(whole.outDuration).toBeGreaterThan(alone.outDuration)
    for (const way of [alone.out, alone.back, whole.out, whole.back]) expect(Math.abs(way.energy.residual)).toBeLessThan(1e-9)
  })
  it.each(demoNames)("is read from its text, and says in its note what was left out: %s", (name) => {
    const rig = rigWith().read(JSON.stringify(demo(name)))
    expect(rig.version).toBe(2)
    for (const key of brought(name).left) expect(rig.note).toContain(key)
    expect(rigWith().read(rig)).toEqual(rig)
  })
  it.each(demoNames)("tells what it has no place for: %s", (name) => {
    const sections = demo(name) as unknown as Record<string, unknown>
    for (const key of ["duty", "pinch", "starting", "flaps", "scissor", "hinged"]) expect(brought(name).left).not.toContain(key)
    if (sections.starting) expect(brought(name).left.filter((path) => path.startsWith("starting"))).toEqual([])
  })
  it.each(demoNames)("is assessed, every finding with its sentence: %s", (name) => {
    const { findings, fallsShort, marginal, meets, unknown } = assessRig(rigOf(name))
    expect(findings.length).toBe(fallsShort + marginal + meets + unknown)
    expect(findings.length).toBeGreaterThan(25)
    for (const f of findings) expect(f.sentence).toMatch(/[.]$/)
  })
})

describe("a fact of the trade (common practice, no source)", () => {
  // a pair rated 10 s per stroke took about 20 s from a 5 V bank through a step-up and about 12 s from 3S2P cells
  const alone = (rig: Rig): Rig => ({ ...rig, power: rig.power ? { ...rig.power, loads: [] } : null })
  const cells = rigOf("lantern-moth-cells")
  const stiff: Rig = { ...cells, power: null, motions: cells.motions.map((motion) => ({ ...motion, bus: null })) }
  it.each([
    ["rated supply", 10, stiff],
    ["5 V battery bank through a step-up to 12 V", 20, alone(rigOf("lantern-moth-bank"))],
    ["two parallel strings of three 18650 cells in series", 12, alone(cells)],
  ] as const)("%s: about %d s", (_, seconds, rig) => {
    const { outDuration } = move(rig)
    expect(Math.abs(outDuration / seconds - 1), `${outDuration} s against ${seconds} s`).toBeLessThan(0.15)
  })
})

describe("reading a document", () => {
  const { read } = rigWith()
  const faults = (source: unknown) => {
    try {
      read(source)
    } catch (error) {
      if (error instanceof InputError) return error.issues.map((i) => i.path.join("."))
      throw error
    }
    return []
  }
  it("says what is not JSON, not a document, or of a later version", () => {
    expect(faults("{")).toEqual([""])
    expect(faults(null)).toEqual([""])
    expect(faults({ version: 3, name: "later" })).toEqual(["version"])
    expect(faults({ name: "no version" })).toEqual(["version"])
    expect(faults({ version: 0.5, name: "half" })).toEqual(["version"])
  })
  it("names every fault at its place", () => {
    const rig = JSON.parse(JSON.stringify(move.example)) as Record<string, never>
    const motion = (rig.motions as unknown as Record<string, unknown>[])[0] as Record<string, unknown>
    motion.bus = "nowhere"
    motion.transmission = [{ type: "drum", drumDiameter: "40 mm", lineDiameter: "2 mm" }]
    expect(faults(rig)).toEqual(
      expect.arrayContaining(["motions.0.bus", "motions.0.transmission.0.type", "motions.0.mechanisms.0.startLength"]),
    )
  })
})
