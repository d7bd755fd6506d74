import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { type AnyFields, isNoSolution, type Values } from "../../src/solver/index.js"
import { readInput } from "../../src/solver/read.js"
import { inputs } from "../helpers/arbitrary.js"
import { allEdges, changed, type Numbers } from "../helpers/edges.js"
import { type AnySolver, solvers } from "../helpers/solvers.js"

const RUNS = 40

/** The value at a dotted path, own properties only. */
function at(value: unknown, path: string): unknown {
  let found: unknown = value
  for (const part of path.split(".")) {
    if (typeof found !== "object" || found === null || !Object.hasOwn(found, part)) return undefined
    found = (found as Record<string, unknown>)[part]
  }
  return found
}

const close = (a: number, b: number) => Math.abs(a - b) <= 1e-9 * Math.max(Math.abs(a), Math.abs(b)) + 1e-12

/** Holds one named number of a message to what its name says it is; null when it is that. */
function wrong(
  key: string,
  value: number | string,
  said: unknown,
  second: Numbers[string] | undefined,
  si: unknown,
  out: unknown,
): string | null {
  const expected = second ? second(si, out) : said
  if (expected === undefined) return typeof value === "string" ? null : `${key} = ${value}: no such path and no second computation`
  if (typeof value === "string" || typeof expected === "string")
    return value === expected ? null : `${key}: says ${value}, is ${String(expected)}`
  return typeof expected === "number" && close(value, expected) ? null : `${key}: says ${value}, is ${String(expected)}`
}

/** What a name of a caution means: a path in the result, or after `given.` in the input. */
const inResult = (name: string, si: unknown, out: unknown) => (name.startsWith("given.") ? at(si, name.slice(6)) : at(out, name))
const inInput = (name: string, si: unknown) => at(si, name.startsWith("given.") ? name.slice(6) : name)

/** Every number of the messages that this input brings forth, against its second meaning. */
function wrongNumbers(id: string, solver: AnySolver, numbers: Numbers, input: unknown): string[] {
  const name = id.split(".")[1] as string
  const outcome = solver.attempt(input)
  const check = (code: string, values: Values, si: unknown, out: unknown, mean: (n: string) => unknown, prefix = "") =>
    Object.entries(values).flatMap(
      ([n, value]) => wrong(`${name}.${code}.${prefix}${n}`, value, mean(n), numbers[`${name}.${code}.${prefix}${n}`], si, out) ?? [],
    )
  if (outcome.ok) {
    const si = solver.read(input)
    const { cautions, ...out } = outcome.value
    return cautions.flatMap((c) => check(c.code, c.values, si, out, (n) => inResult(n, si, out)))
  }
  if (!isNoSolution(outcome.error)) return []
  const { noSolution: code, shortBy, at: where, values } = outcome.error
  const si = solver.read(input)
  return [
    ...check(code, { shortBy }, si, null, () => undefined),
    ...check(code, where, si, null, (n) => inInput(n, si), "at."),
    ...check(code, values, si, null, (n) => inInput(n, si)),
  ]
}

const judged = solvers.filter(({ id }) => allEdges.has(id.split(".")[0] as string))

it("judges the solvers of every domain", () => {
  expect(solvers.filter((s) => !judged.includes(s) && !/^(rig|advice)\./.test(s.id)).map((s) => s.id)).toEqual([])
})

describe.each(judged)("messages: $id", ({ id, solver }: { id: string; solver: AnySolver }) => {
  const edges = allEdges.get(id.split(".")[0] as string)
  if (!edges) throw new Error(`no edges for ${id}`)

  it("says numbers that are what their names say, at every edge", () => {
    const rows = [
      ...edges.cautions.filter((row) => row.solver === solver).flatMap((row) => [row.shown, row.notShown ?? {}]),
      ...edges.refusals.filter((row) => row.solver === solver).map((row) => row.refused),
    ]
    expect(rows.flatMap((change) => wrongNumbers(id, solver, edges.numbers, changed(solver, change)))).toEqual([])
  })

  it("and for random inputs", () => {
    fc.assert(
      fc.property(inputs(solver.input as unknown as AnyFields, solver.example, solver.either), (input) => {
        expect(wrongNumbers(id, solver, edges.numbers, input)).toEqual([])
      }),
      { numRuns: RUNS },
    )
  })

  it("says them in faults between fields, by their paths", () => {
    for (const row of edges.faults.filter((r) => r.solver === solver)) {
      const input = changed(solver, row.faulty)
      const outcome = solver.attempt(input)
      if (outcome.ok || !("issues" in outcome.error)) throw new Error(`no fault at ${row.path}`)
      // the faulty input cannot be read as a whole; what its faults say is compared with the sound one where they are alike
      const name = id.split(".")[1] as string
      for (const issue of outcome.error.issues)
        for (const [n, value] of Object.entries(issue.values ?? {})) {
          const second = edges.numbers[`${name}.${row.path}.${n}`]
          const said = readSi(solver, input)
          expect(wrong(`${name}.${row.path}.${n}`, value, inInput(n, said), second, said, null), issue.message).toBeNull()
        }
    }
  })
})

/** The input in SI without the faults between its fields. */
function readSi(solver: AnySolver, input: unknown): unknown {
  const read = readInput(solver.input as unknown as AnyFields, input)
  return read.ok ? read.si : undefined
}
