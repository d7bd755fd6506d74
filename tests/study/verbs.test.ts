import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { isNoSolution } from "../../src/solver/index.js"
import { inputPlaces, isNumberPlace, type NumberPlace, solveFor, sweep } from "../../src/study/index.js"
import { plainOutputs } from "../../src/study/outputs.js"
import { valueAt, withValue } from "../../src/study/place.js"
import { inputs } from "../helpers/arbitrary.js"
import { type AnySolver, solvers } from "../helpers/solvers.js"

/** Milliseconds that a kernel may take to be asked often, and that a solver is tried for. */
const QUICK = 0.5
const BUDGET = 40

/** Stops a study whose time is up. */
const until = (end: number) => ({
  get aborted() {
    return performance.now() > end
  },
  reason: "time is up",
  addEventListener: () => undefined,
  removeEventListener: () => undefined,
})
const unlessLate = <T>(study: Promise<T>): Promise<T | null> =>
  study.catch((error: unknown) => {
    if (error === "time is up") return null
    throw error
  })

/** Beside a value: within the field's limits. */
const aside = (place: NumberPlace, value: number, by: number): number => {
  const raw = value === 0 ? (by - 1) * (Math.min(1, place.high) - Math.max(-1, place.low)) : value * by
  const whole = place.whole ? Math.round(raw) : raw
  return Math.min(place.allowsHigh ? place.high : value, Math.max(place.allowsLow ? place.low : value, whole))
}

/** What a value's neighbours must be: solved by the solver itself, one by one. */
const alone = (solver: AnySolver, si: object, path: string): unknown => {
  if (solver.check(si as never).length) return "inconsistent"
  const out = solver.si(si as never)
  return isNoSolution(out) ? out.noSolution : valueAt(out, path.split("."))
}

async function tryVerbs(solver: AnySolver, input: Record<string, unknown>, end: number): Promise<void> {
  const read = solver.attempt(input)
  if (!read.ok) return
  const si = solver.read(input) as object
  const began = performance.now()
  solver.si(si as never)
  const spent = performance.now() - began
  const isQuick = spent < QUICK
  const places = inputPlaces(solver, input)
    .filter(isNumberPlace)
    .filter((p) => p.value !== null)
  const numbers = plainOutputs(solver.output as never).filter(
    ({ kind, path }) => kind !== "flag" && kind !== "text" && typeof valueAt(read.value, path.split(".")) === "number",
  )
  for (const place of places.slice(0, isQuick ? 4 : 1)) {
    if (performance.now() > end) return
    const value = place.value as number
    const values = [value, ...(spent < BUDGET / 4 ? [aside(place, value, 0.95)] : []), ...(isQuick ? [aside(place, value, 1.05)] : [])]
    const [output] = numbers
    const outputs = output ? [output.path] : undefined
    const table = await sweep(solver as never, input as never, { [place.path]: values } as never, outputs ? ({ outputs } as never) : {})
    expect(table.count).toBe(values.length)
    const path = output?.path ?? Object.keys(table.outputs)[0]
    values.forEach((x, i) => {
      const told =
        table.refused[i] ??
        (path === undefined ? null : ((table.outputs as Record<string, readonly unknown[]>)[path] as readonly unknown[])[i])
      if (path !== undefined) expect(told, `${place.path} ${x}`).toEqual(alone(solver, withValue(si, place.keys, x), path) ?? null)
    })
    JSON.parse(JSON.stringify(table))
    expect(table.csv().split("\r\n")).toHaveLength(values.length + 2)
    if (output) await tryFor(solver, input, si, place, output.path, isQuick, end)
  }
}

/** Asks which value gives what the input's own value does. */
async function tryFor(
  solver: AnySolver,
  input: object,
  si: object,
  place: NumberPlace,
  output: string,
  isQuick: boolean,
  end: number,
): Promise<void> {
  const value = place.value as number
  const wanted = alone(solver, si, output) as number
  const [low, high] = [aside(place, value, 0.93), aside(place, value, 1.09)].sort((a, b) => a - b) as [number, number]
  if (low === high || performance.now() > end) return
  const isSeries = place.whole || !isQuick
  const among = isQuick ? (isSeries ? [low, value, high] : { from: low, to: high, count: 5 }) : [value]
  const asked = { vary: place.path, among, target: { output, equals: wanted } }
  const found = await unlessLate(solveFor(solver as never, input as never, asked as never, isQuick ? { signal: until(end) } : {}))
  if (found === null) return
  const at = (x: number) => alone(solver, withValue(si, place.keys, x), output)
  for (const hit of found.hits as readonly { value: number; output: number }[]) expect(at(hit.value)).toBe(hit.output)
  if (isSeries) {
    expect(found.hits.map((hit) => hit.value)).toContain(value)
    return
  }
  const [first, last] = [at(low), at(high)]
  const isCrossed = typeof first === "number" && typeof last === "number" && (first - wanted) * (last - wanted) < 0
  const told = found.hits.length + found.jumps.length + found.stretches.length + found.refusals.length
  if (isCrossed) expect(told, `${place.path} for ${output}`).toBeGreaterThan(0)
  // nothing else between: the value is the one it was made from
  if (isCrossed && told === 1 && found.hits.length === 1) {
    const hit = found.hits[0] as { readonly value: never; readonly output: number }
    expect(Math.abs(hit.output - wanted) <= 1e-9 * Math.abs(wanted), `${place.path}: ${hit.output} for ${wanted}`).toBe(true)
  }
}

describe("verbs on every solver", () => {
  it.each(solvers.map(({ id, solver }) => [id, solver] as const))(
    "%s: a sweep and a search agree with the solver asked by itself",
    async (_, solver) => {
      await tryVerbs(solver, solver.example, performance.now() + BUDGET)
      const end = performance.now() + BUDGET
      const drawn = fc.sample(inputs(solver.input as never, solver.example, solver.either as never), { numRuns: 2, seed: 20261125 })
      for (const input of drawn) if (performance.now() < end) await tryVerbs(solver, input, end)
    },
  )
})
