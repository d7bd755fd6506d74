import fc from "fast-check"
import { describe, expect, it } from "vitest"
import type { z } from "zod"
import type { AnyField, AnyFields } from "../../src/solver/index.js"
import { readInput } from "../../src/solver/read.js"
import { zodSchema } from "../../src/zod/index.js"
import { inOtherUnits, inputs, replaced } from "../helpers/arbitrary.js"
import { type AnySolver, solvers } from "../helpers/solvers.js"
import { zodOfFields } from "../helpers/zod-fields.js"

type Path = readonly (string | number)[]

type Place = { readonly path: Path; readonly field: AnyField }
const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value)

/** Every place of an input, groups and lists among them, as far as it has the shape described. */
function places(fields: AnyFields, input: unknown, path: Path = []): readonly Place[] {
  const below = (field: AnyField, value: unknown, at: Path): readonly Place[] => [
    { path: at, field },
    ...(field.kind === "group" ? places(field.fields, value, at) : []),
    ...(field.kind === "list" && Array.isArray(value) ? value.flatMap((v, i) => below(field.of, v, [...at, i])) : []),
  ]
  return isObject(input) ? Object.entries(fields).flatMap(([key, field]) => below(field, input[key], [...path, key])) : []
}

const junk: readonly unknown[] = [
  ...[undefined, null, true, false, 0, -0, 1, -1, 3.5, 1e9, -1e9, 1e300, Number.MIN_VALUE, Number.NaN, Number.POSITIVE_INFINITY, 3n],
  ...["", "x", "3", "plenty", "3 parsecs", "3 m", "1/4 in", "-1 1/2 in", "4 kg", "20 degC", "68 °F", "293 K", "12 V", "1/0 m", "1e999 A"],
  ...["80 %", "3 mm²", "5 N·m", "2 W/(m·K)", "10 ppm/K", "5 °", "1e-3 Ω", "3 Ω·mm²/m", "3\nm", " 3  m ", "3 toString", ".5 A", "+5. s"],
  ...[
    {},
    [],
    [1],
    [[]],
    { x: 1 },
    { Meters: 3 },
    { Meters: Number.NaN },
    { DegreesCelsius: 3, Kelvins: 276.15, SolarTemperatures: 0 },
    { Kelvins: 4 },
  ],
]

/** One fault (or odd but sound value) put into an input. */
type Corruption = { readonly at: number; readonly how: number; readonly junk: unknown; readonly step: number }
const corruption: fc.Arbitrary<Corruption> = fc.record({
  at: fc.nat(1e6),
  how: fc.nat(9),
  junk: fc.oneof(
    fc.constantFrom(...junk),
    fc.double(),
    fc.string(),
    fc.double({ noNaN: true }).map((x) => `${x} m`),
  ),
  step: fc.constantFrom(0, 1e-12, -1e-12, 0.5, -0.5, 1e3, -1e3),
})

function corrupt(fields: AnyFields, input: unknown, { at, how, junk, step }: Corruption): unknown {
  const all = places(fields, input)
  const place = all[at % all.length]!
  const { path, field } = place
  const value = path.reduce((v, key) => (v as Record<string | number, unknown> | undefined)?.[key], input as unknown)
  if (how === 0) return replaced(input, path, undefined)
  if (how === 1) return { ...(input as object), [["sprocket", "toString", "constructor", "Length", ""][at % 5]!]: junk }
  if (how === 2 && isObject(value)) return replaced(input, path, { ...value, sprocket: junk })
  if (how === 3 && Array.isArray(value))
    return replaced(
      input,
      path,
      at % 2 ? [] : Array.from({ length: (field as { max?: number }).max ?? 3 }, () => value[0]).concat([value[0]]),
    )
  if (how <= 5 && typeof value === "number") return replaced(input, path, value + step * Math.max(1, Math.abs(value)))
  if (how === 6 && "min" in field && field.kind !== "list") return replaced(input, path, field.min)
  if (how === 7 && "above" in field) return replaced(input, path, field.above)
  if (how === 8 && "max" in field && field.kind !== "list") return replaced(input, path, field.max)
  return replaced(input, path, junk)
}

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

/** Corrupted inputs tried for each solver. */
const RUNS = 100
let [taken, refused] = [0, 0]

describe("zod, told of the same fields, takes and refuses the same inputs", () => {
  it.each(solvers)("$id", ({ solver }: { id: string; solver: AnySolver }) => {
    const fields = solver.input as unknown as AnyFields
    const schema = zodOfFields(fields)
    const offered = zodSchema(solver)
    const arbitrary = fc.tuple(
      inputs(fields, solver.example),
      fc.boolean(),
      fc.infiniteStream(fc.nat(1e6)),
      fc.array(corruption, { minLength: 0, maxLength: 3 }),
    )
    fc.assert(
      fc.property(arbitrary, ([sound, isMixed, stream, corruptions]) => {
        const start = isMixed ? inOtherUnits(fields, sound, (count) => (stream.next().value as number) % count) : sound
        const input = corruptions.reduce<unknown>((value, one) => corrupt(fields, value, one), start)
        const [ours, theirs] = [readInput(fields, input), schema.safeParse(input)]
        if (ours.ok) taken++
        else refused++
        const issues = theirs.error?.issues ?? []
        const lists = wrongLists(issues)
        const found = (paths: readonly Path[]) => texts(paths.filter((path) => !lists.some((list) => isBelow(path, list))))
        expect(found(ours.ok ? [] : ours.issues.map((i) => i.path))).toEqual(found(zodPlaces(issues)))
        if (ours.ok && theirs.success) expect(ours.si).toEqual(theirs.data)
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
