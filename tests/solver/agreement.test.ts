import { Ajv2020 } from "ajv/dist/2020.js"
import fc from "fast-check"
import { describe, expect, it } from "vitest"
import type { z } from "zod"
import type { AnyFields, Issue } from "../../src/solver/index.js"
import { readInput } from "../../src/solver/read.js"
import { zodSchema } from "../../src/zod/index.js"
import { faultyInputs, type Path } from "../helpers/faulty.js"
import { type AnySolver, solvers } from "../helpers/solvers.js"
import { zodOfFields } from "../helpers/zod-fields.js"
import { lamp } from "./lamp.js"
import { lantern } from "./lantern.js"

/** Places that zod finds at fault, an unknown key by its own name as we give it. */
const zodPlaces = (issues: readonly z.core.$ZodIssue[]): readonly Path[] =>
  issues.flatMap((i) => (i.code === "unrecognized_keys" ? i.keys.map((key) => [...i.path, key]) : [i.path])) as Path[]

/** Lists of a wrong length: zod says no more about their entries, we go on. */
const wrongLists = (issues: readonly z.core.$ZodIssue[]): readonly Path[] =>
  issues.filter((i) => (i.code === "too_big" || i.code === "too_small") && i.origin === "array").map((i) => i.path) as Path[]

const isBelow = (path: Path, above: Path) => path.length > above.length && above.every((part, i) => part === path[i])
const texts = (paths: readonly Path[]): readonly string[] => [...new Set(paths.map((path) => JSON.stringify(path)))].sort()

function readOrNull(solver: AnySolver, input: unknown): unknown {
  try {
    return solver.read(input)
  } catch {
    return null
  }
}

/** What a pattern cannot tell, the only faults of the reader that the JSON Schema lets through. */
function isListed({ code, path }: Issue, input: unknown): boolean {
  const value = path.reduce<unknown>((so, part) => (so as Record<string | number, unknown> | undefined)?.[part], input)
  if (typeof value !== "string") return false
  // a limit is compared in SI, the text stands in any unit; a nought under the bar, or 1e999, is a number only when worked out
  return code === "too-small" || code === "too-large" || code === "not-finite"
}

/** What JSON carries of an input. Objects of unitsnet-js belong to programs: the reader takes them, a document has no use for them. */
function asJson(input: unknown): unknown {
  const isOfUnitsNet = (value: unknown) => typeof value === "object" && value !== null && ("Meters" in value || "Kelvins" in value)
  return JSON.parse(JSON.stringify(input, (_, value: unknown) => (typeof value === "bigint" || isOfUnitsNet(value) ? null : value)))
}

const ajv = new Ajv2020({ strict: false })
const made = [
  { id: "lantern", solver: lantern as unknown as AnySolver },
  { id: "lamp", solver: lamp as unknown as AnySolver },
]

/** Corrupted inputs tried for each solver. */
const RUNS = 100
let [taken, refused] = [0, 0]

describe("zod and JSON Schema, told of the same fields, take and refuse the same inputs", () => {
  it.each([...solvers, ...made])("$id", ({ solver }: { id: string; solver: AnySolver }) => {
    const fields = solver.input as unknown as AnyFields
    const schema = zodOfFields(fields, solver.either)
    const offered = zodSchema(solver)
    const arbitrary = faultyInputs(fields, solver.example, solver.either)
    const describes = ajv.compile(solver.jsonSchema())
    fc.assert(
      fc.property(arbitrary, (input) => {
        const [ours, theirs] = [readInput(fields, input, solver.either), schema.safeParse(input)]
        if (ours.ok) taken++
        else refused++
        const issues = theirs.error?.issues ?? []
        const lists = wrongLists(issues)
        const found = (paths: readonly Path[]) => texts(paths.filter((path) => !lists.some((list) => isBelow(path, list))))
        expect(found(ours.ok ? [] : ours.issues.map((i) => i.path))).toEqual(found(zodPlaces(issues)))
        if (ours.ok && theirs.success) expect(ours.si).toEqual(theirs.data)
        // the JSON Schema, on what JSON can carry
        const json = asJson(input)
        const [read2, described] = [readInput(fields, json, solver.either), describes(json)]
        if (described && !read2.ok) expect(read2.issues.filter((i) => !isListed(i, json)).map((i) => i.message)).toEqual([])
        if (!described && read2.ok) expect(describes.errors).toEqual([])
        // and the schema that users are given takes what the whole solver takes, faults between fields included
        const [read, bridged] = [readOrNull(solver, input), offered.safeParse(input)]
        expect(bridged.success).toBe(read !== null)
        if (bridged.success) expect(bridged.data).toEqual(read)
      }),
      // shrinking a whole rig document takes minutes: the first counterexample is told as it is
      { numRuns: RUNS, endOnFailure: true },
    )
  })
  it("over thousands of inputs, many of each sort", () => {
    expect(solvers.length * RUNS).toBeGreaterThanOrEqual(5000)
    expect(taken + refused).toBeGreaterThanOrEqual(solvers.length * RUNS)
    expect(taken).toBeGreaterThan(1000)
    expect(refused).toBeGreaterThan(1000)
  })
})
