// Which value of an input makes a result what is wanted.
import { type Issue, issue, type Path, type Solver } from "../../solver/index.js"
import { shown } from "../../solver/issue.js"
import { columnsOf, leafAt, MOST_POINTS, readAxes, spaced } from "../axes.js"
import type { PathTo } from "../paths.js"
import { type AnySolver, type Found, type Place, readBase, ruleFaults, studyError, valueAt, withValue } from "../place.js"
import { type NumberPlace, numberPlace } from "../places.js"
import { Runner, type StudyOptions, type Told } from "../run.js"
import { solveContinuous } from "./continuous.js"
import { type Candidates, solveSeries } from "./series.js"
import { type ReadTarget, readTarget } from "./target.js"
import type { SolvedFor, Varied, VariedRow, WantedOfAxes, WantedOfInput, WantedOfRows } from "./types.js"

/** Tries in a range where none are stated: steps of half a per cent of it. */
const TRIES = 201
/** Most whole numbers that are tried without being asked for. */
const MOST_WHOLE = 10_000

/** What is varied, read: a range to look through, or candidates to try. */
type Read =
  | { readonly by: "range"; readonly place: Place; readonly grid: readonly number[] }
  | { readonly by: "series"; readonly candidates: Candidates; readonly single: boolean }

/** The range of a number where none is stated: what makers use, else what is allowed. */
function usualGrid({ low, high, allowsLow, allowsHigh, typical }: NumberPlace): number[] {
  const inset = (high - low) * 1e-9
  const [from, to] = typical ?? [allowsLow ? low : low + inset, allowsHigh ? high : high - inset]
  // over decades by equal ratios; from zero too, with zero itself in front
  if (from > 0 && to / from > 100) return spaced(from, to, TRIES, "logarithmic", false)
  if (from === 0) return [0, ...spaced(to * 1e-6, to, TRIES - 1, "logarithmic", false)]
  return spaced(from, to, TRIES, "even", false)
}

const series = (path: string, values: readonly unknown[]): Found<Read> => ({
  ok: true,
  value: { by: "series", candidates: { inputs: [path], columns: [values] }, single: true },
})

/** The values of one input where none are stated. */
function usual(place: Place): Found<Read> {
  const { field, path } = place
  const fault = (expected: string): Found<Read> => ({ ok: false, issues: [issue("missing", ["among"], "nothing", expected)] })
  if (field.kind === "choice") return series(path, Object.keys(field.options))
  if (field.kind === "flag") return series(path, [false, true])
  if (!("symbol" in field)) return fault(`the words to try for ${path}`)
  const number = numberPlace({ path, keys: place.keys, label: field.label }, field, null)
  if (!number.whole) return { ok: true, value: { by: "range", place, grid: usualGrid(number) } }
  const [low, high] = [Math.ceil(number.low), Math.floor(number.high)]
  const first = low === number.low && !number.allowsLow ? low + 1 : low
  const last = high === number.high && !number.allowsHigh ? high - 1 : high
  if (last - first >= MOST_WHOLE) return fault(`which of the ${last - first + 1} whole numbers to try`)
  return series(path, spaced(first, last, Math.max(2, last - first + 1), "even", true))
}

function readVary(solver: AnySolver, si: object, vary: unknown, among: unknown): Found<Read> {
  const place = leafAt(solver, si, vary, ["vary"])
  if (!place.ok) return place
  const read = among === undefined ? usual(place.value) : readAmong(solver, si, place.value, among)
  if (!read.ok) return read
  const first = read.value.by === "range" ? read.value.grid[0] : read.value.candidates.columns[0]?.[0]
  const faults = ruleFaults(solver, withValue(si, place.value.keys, first), ["vary"])
  return faults.length ? { ok: false, issues: faults } : read
}

function readAmong(solver: AnySolver, si: object, place: Place, among: unknown): Found<Read> {
  const isSpan = typeof among === "object" && among !== null && !Array.isArray(among)
  const isNumber = "symbol" in place.field
  const isWhole = isNumber && place.field.kind === "number" && "whole" in place.field && place.field.whole === true
  const span = isSpan && isNumber && !isWhole ? { count: TRIES, ...among } : among
  const read = readAxes(solver, si, { [place.path]: span }, [])
  if (!read.ok)
    // one input alone: its values stand under `among`
    return { ok: false, issues: read.issues.map((one) => issue(one.code, ["among", ...one.path.slice(1)], one.received, one.expected)) }
  const values = read.value[0]?.values ?? []
  if (!isSpan || isWhole) return series(place.path, values)
  return { ok: true, value: { by: "range", place, grid: [...(values as readonly number[])].sort((a, b) => a - b) } }
}

function readRows(solver: AnySolver, si: object, rows: unknown): Found<Read> {
  const fault = (path: Path, received: string, expected: string, code: Issue["code"] = "wrong-type"): Found<Read> => ({
    ok: false,
    issues: [issue(code, path, received, expected)],
  })
  if (!Array.isArray(rows) || rows.length === 0) return fault(["rows"], shown(rows), "a list of rows, each inputs by path with a value")
  if (rows.length > MOST_POINTS) return fault(["rows"], `${rows.length} rows`, `at most ${MOST_POINTS} rows`, "too-many")
  const paths = Object.keys((rows[0] ?? {}) as object)
  const issues: Issue[] = []
  const columns: unknown[][] = paths.map(() => [])
  rows.forEach((row: unknown, i) => {
    if (typeof row !== "object" || row === null || Array.isArray(row)) {
      issues.push(issue("wrong-type", ["rows", i], shown(row), "inputs by path, each with a value"))
      return
    }
    const keys = Object.keys(row)
    if (keys.length !== paths.length || !paths.every((path) => Object.hasOwn(row, path)))
      issues.push(
        issue("inconsistent", ["rows", i], keys.join(", ") || "nothing", `a value for each of ${paths.join(", ")}, as in the first row`),
      )
    const read = readAxes(solver, si, Object.fromEntries(Object.entries(row).map(([path, value]) => [path, [value]])), ["rows", i])
    if (!read.ok) issues.push(...read.issues.map((one) => ({ ...one, path: one.path.filter((key, at) => at !== 3 || key !== 0) })))
    else for (const { place, values } of read.value) columns[paths.indexOf(place.path)]?.push(values[0])
  })
  if (issues.length) return { ok: false, issues }
  return { ok: true, value: { by: "series", candidates: { inputs: paths, columns }, single: false } }
}

const ways = ["vary", "varyAll", "rows"] as const

function readWanted(solver: AnySolver, si: object, wanted: Readonly<Record<string, unknown>>): Found<Read> {
  const known = [...ways, "among", "target"]
  const issues = Object.keys(wanted)
    .filter((key) => !known.includes(key) && wanted[key] !== undefined)
    .map((key) => issue("unknown-key", [key], shown(key), `one of ${known.join(", ")}`))
  const given = ways.filter((way) => wanted[way] !== undefined)
  const [way] = given
  if (way === undefined || given.length > 1 || (wanted.among !== undefined && way !== "vary"))
    issues.push(issue("inconsistent", [], Object.keys(wanted).join(", ") || "nothing", `one of ${ways.join(", ")}; among with vary alone`))
  if (issues.length) return { ok: false, issues }
  if (way === "vary") return readVary(solver, si, wanted.vary, wanted.among)
  if (way === "rows") return readRows(solver, si, wanted.rows)
  const read = readAxes(solver, si, wanted.varyAll, ["varyAll"])
  if (!read.ok) return read
  const inputs = read.value.map(({ place }) => place.path)
  return { ok: true, value: { by: "series", candidates: { inputs, columns: columnsOf(read.value) }, single: false } }
}

/**
 * What must this be: which value of an input makes the result what is wanted.
 *
 * A number is looked for through a range, step by step: every change of side between two tries is closed in on to the last
 * digits, and told as a value that meets the target, as a leap over it, or as a refusal in between; where the result turns
 * round or touches the value without crossing it, that is a near miss. What is narrower than the step told in `looked` may be
 * overlooked. At most, at least, a word or a flag give the stretches that meet them. Whole numbers, choices, lists of what can
 * be had, rows of a rack and combinations are tried one and all, and those that meet the target told in the order given.
 *
 * Every value told was tried. None is advice that something is safe: the base's cautions are the solver's to give, so ask it
 * again with the value chosen.
 *
 * @param solver - any solver
 * @param base - a valid input: what is not varied
 * @param wanted - what is varied (`vary` one input by path, `varyAll` several in every combination, `rows` several together) and
 *   the `target`: `{ output, equals | atMost | atLeast | is }` with a path of the result, or `{ answers: true }`
 * @param options - a signal to stop, whom to tell of progress, a pool
 * @throws InputError naming every fault of the base, the target and what is varied (the promise is rejected with it)
 * @example
 * ```ts
 * import { solveFor } from 'alula/study'
 * import { voltageDrop } from 'alula/wire'
 * const run = { current: '4 A', length: '3 m', awg: 20, sourceVoltage: '12 V' } as const
 * const far = await solveFor(voltageDrop, run, { vary: 'length', target: { output: 'drop', equals: '1 V' } })
 * far.hits.length // => 1
 * const thick = await solveFor(voltageDrop, run, { vary: 'awg', among: [22, 18, 14], target: { output: 'drop', atMost: '0.5 V' } })
 * thick.hits.map((hit) => hit.value) // => [14]
 * ```
 */
export async function solveFor<In, Out, P extends PathTo<In>>(
  solver: Solver<In, Out>,
  base: NoInfer<In>,
  wanted: WantedOfInput<In, Out, P>,
  options?: StudyOptions,
): Promise<SolvedFor<Varied<In, P>>>
export async function solveFor<In, Out, P extends PathTo<In>>(
  solver: Solver<In, Out>,
  base: NoInfer<In>,
  wanted: WantedOfAxes<In, Out, P> | WantedOfRows<In, Out, P>,
  options?: StudyOptions,
): Promise<SolvedFor<VariedRow<In, P>>>
export async function solveFor<In, Out>(
  solver: Solver<In, Out>,
  base: In,
  wanted: object,
  options: StudyOptions = {},
): Promise<SolvedFor<unknown>> {
  const any = solver as unknown as AnySolver
  const si = readBase(any, base)
  const { target: asked = undefined, ...rest } = wanted as Readonly<Record<string, unknown>>
  const target = readTarget(any, asked)
  const read = si.ok ? readWanted(any, si.value, rest) : null
  const issues = [si, read, target].flatMap((part) => (part && !part.ok ? part.issues : []))
  if (!si.ok || !read?.ok || !target.ok) throw studyError("solveFor", solver, issues)
  const runner = new Runner(any, options)
  const found = await solve(runner, si.value, read.value, target.value)
  runner.report(true)
  return found
}

function solve(runner: Runner, si: object, read: Read, target: ReadTarget): Promise<SolvedFor<unknown>> {
  if (read.by === "range") {
    const outputKeys = target.output?.split(".") ?? []
    const look = {
      inputs: [read.place.path],
      grid: read.grid,
      inputAt: (x: number) => withValue(si, read.place.keys, x),
      toldOf: (out: object) => (target.output === null ? null : ((valueAt(out, outputKeys) ?? null) as Told)),
    }
    return solveContinuous(runner, si, look, target)
  }
  const { candidates, single } = read
  const { inputs, columns } = candidates
  const entryAt = (row: number): unknown =>
    single ? columns[0]?.[row] : Object.fromEntries(inputs.map((path, i) => [path, columns[i]?.[row]]))
  return solveSeries(runner, si, candidates, target, entryAt)
}
