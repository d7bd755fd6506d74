import { type Covariance, covariance, type LeastSquares, leastSquares, sobolPoints, studentQuantile } from "../numeric/index.js"
import type { Kind } from "../quantity/index.js"
import { type AnyField, fill, type Issue, issue, type Path, type Solver } from "../solver/index.js"
import { shown, unknownKey } from "../solver/issue.js"
import { type Asked, askedAt, readValue } from "./asked.js"
import { leafAt } from "./axes.js"
import { Bench, type Refusal } from "./bench.js"
import type { PathTo, ValueAt } from "./paths.js"
import { type AnySolver, type Found, type Place, readAt, studyError } from "./place.js"
import { numberPlace } from "./places.js"
import { Runner, type StudyOptions } from "./run.js"
import { numberAt, readDifference } from "./spread.js"
import { Arguments } from "./start.js"
import { differenceOf, inSentence, opening, told } from "./words.js"

/** One reading of a value of the result, quantities in any unit. */
export interface Reading<In, Out> {
  /** Which value was read. */
  readonly of: PathTo<Out, "number">
  readonly value: unknown
  /** Standard deviation of the reading; where no reading has one, how far readings scatter tells it. */
  readonly deviation?: unknown
  /** What was set otherwise than in the base for this reading, by path of the input. */
  readonly at?: { readonly [P in PathTo<In>]?: ValueAt<In, P> }
}

/** What a fit looks for, and how it is run. */
export interface FitOptions<In, Out> extends StudyOptions {
  /** Which inputs to find: paths, or ranges by path; within its field's limits where no range is given. */
  readonly vary:
    | readonly PathTo<In, "number">[]
    | { readonly [P in PathTo<In, "number">]?: { readonly from: ValueAt<In, P>; readonly to: ValueAt<In, P> } }
  readonly readings: readonly Reading<In, Out>[]
  /** Places to begin at beside the base's own: 6 where left out. */
  readonly starts?: number
  readonly seed?: number
}

/** An input that the readings imply, in SI. */
export interface Fitted {
  readonly path: string
  readonly label: string
  readonly kind: Kind | "number"
  readonly value: number
  /** Standard deviation; null where the readings do not tell it. */
  readonly deviation: number | null
  /** Between which values it lies with 95 % confidence; null where the readings do not tell it. */
  readonly low: number | null
  readonly high: number | null
  /** Whether it stands at an end of its range: then its best value may lie beyond. */
  readonly isAtEnd: boolean
  readonly sentence: string
}

/** Inputs that the readings do not tell apart. */
export interface Untold {
  readonly paths: readonly string[]
  readonly sentence: string
}

/** One reading beside what the fitted input gives. */
export interface FittedReading {
  readonly of: string
  readonly read: number
  readonly fitted: number
  /** Reading less fitted value. */
  readonly residual: number
}

/** Answer of {@link fit}. */
export interface Fit {
  readonly inputs: readonly Fitted[]
  /** What the readings cannot tell apart or do not show at all; empty where they show everything. */
  readonly cannotTell: readonly Untold[]
  readonly readings: readonly FittedReading[]
  /** Readings more than unknowns. */
  readonly freedom: number
  /** Root of the mean squared residual for each reading to spare, against the deviations where they are given (near 1 is as expected); null where none is to spare. */
  readonly scatter: number | null
  /** Whether no step brings anything more. */
  readonly isSettled: boolean
  readonly tried: number
  readonly refused: readonly Refusal[]
  readonly sentence: string
}

/** A reading in SI. */
interface Read {
  readonly asked: Asked
  readonly value: number
  readonly deviation: number | null
  readonly at: readonly (Place & { readonly put: unknown })[]
}

interface Unknown {
  readonly path: string
  readonly keys: Path
  readonly field: AnyField
  readonly value: number | null
  readonly label: string
  readonly kind: Kind | "number"
  readonly low: number
  readonly high: number
}

function readReading(solver: AnySolver, si: object, given: unknown, where: Path): Found<Read> {
  if (typeof given !== "object" || given === null)
    return { ok: false, issues: [issue("wrong-type", where, shown(given), "a reading { of, value }")] }
  const { of, value, deviation, at = {}, ...others } = given as Readonly<Record<string, unknown>>
  const issues: Issue[] = Object.keys(others).map((name) => unknownKey(where, name, ["of", "value", "deviation", "at"]))
  const asked = askedAt(solver, of, [...where, "of"])
  let [read, spread] = [0, null as number | null]
  if (!asked.ok) issues.push(...asked.issues)
  else if (asked.value.kind === "flag") issues.push(issue("wrong-type", [...where, "of"], shown(of), "the path of a number of the result"))
  else {
    const own = readValue(asked.value, value, [...where, "value"])
    if (own.ok) read = own.value
    else issues.push(...own.issues)
    if (deviation !== undefined) {
      const off = readDifference(asked.value.kind, deviation, read, [...where, "deviation"])
      if (!off.ok) issues.push(...off.issues)
      else if (!(off.value > 0)) issues.push(issue("too-small", [...where, "deviation"], shown(deviation), "more than 0"))
      else spread = off.value
    }
  }
  const isSettings = typeof at === "object" && at !== null && !Array.isArray(at)
  if (!isSettings) issues.push(issue("wrong-type", [...where, "at"], shown(at), "settings by path of the input"))
  const set = Object.entries(isSettings ? at : {}).flatMap(([path, put]: [string, unknown]) => {
    const to = [...where, "at", path]
    const place = leafAt(solver, si, path, to)
    const own = place.ok ? readAt(place.value, put, to) : place
    if (place.ok && own.ok && own.value !== null) return [{ ...place.value, put: own.value }]
    // whether a value is given is the base's to say: rules between fields hang on it
    issues.push(...(own.ok ? [issue("wrong-type", to, "null", "a value")] : own.issues))
    return []
  })
  if (issues.length > 0 || !asked.ok) return { ok: false, issues }
  return { ok: true, value: { asked: asked.value, value: read, deviation: spread, at: set } }
}

function readUnknowns(solver: AnySolver, si: object, vary: unknown): Found<readonly Unknown[]> {
  const where = ["vary"]
  if (typeof vary !== "object" || vary === null)
    return { ok: false, issues: [issue("wrong-type", where, shown(vary), "paths, or ranges by path")] }
  const entries: readonly (readonly [unknown, unknown, Path])[] = Array.isArray(vary)
    ? (vary as readonly unknown[]).map((path, i) => [path, undefined, [...where, i]])
    : Object.entries(vary).map(([path, range]) => [path, range, [...where, path]])
  if (entries.length === 0) return { ok: false, issues: [issue("too-few", where, "none", "at least 1 path of the input")] }
  const issues: Issue[] = []
  if (new Set(entries.map(([path]) => path)).size < entries.length)
    issues.push(issue("inconsistent", where, "one path twice", "each path once"))
  const unknowns = entries.flatMap(([path, range, at]): Unknown[] => {
    const found = numberAt(solver, si, path, at)
    if (!found.ok) {
      issues.push(...found.issues)
      return []
    }
    const { number, keys, value } = found.value
    if (number.whole)
      issues.push(issue("wrong-type", at, shown(path), "a number that need not be whole: solveFor and optimize try whole ones"))
    const isRange = range === undefined || (typeof range === "object" && range !== null && !Array.isArray(range))
    if (!isRange) issues.push(issue("wrong-type", at, shown(range), "a range { from, to }"))
    const given = (isRange ? (range ?? {}) : {}) as Readonly<Record<string, unknown>>
    for (const name of Object.keys(given)) if (name !== "from" && name !== "to") issues.push(unknownKey(at, name, ["from", "to"]))
    const ends = (["from", "to"] as const).map((name) => {
      const end = given[name]
      if (end === undefined) return name === "from" ? inner(number.low, number.allowsLow, 1) : inner(number.high, number.allowsHigh, -1)
      const own = readAt(found.value, end, [...at, name])
      if (own.ok && typeof own.value === "number") return own.value
      issues.push(...(own.ok ? [issue("wrong-type", [...at, name], "null", "a value")] : own.issues))
      return 0
    }) as [number, number]
    if (issues.length === 0 && !(ends[0] < ends[1])) issues.push(issue("inconsistent", at, "from", "less than to"))
    const { path: name, label, kind } = numberPlace(number, found.value.field as Parameters<typeof numberPlace>[1], value as number | null)
    return [{ path: name, keys, field: found.value.field, value: value as number | null, label, kind, low: ends[0], high: ends[1] }]
  })
  return issues.length > 0 ? { ok: false, issues } : { ok: true, value: unknowns }
}

/** A limit itself, or just inside one that is not allowed. */
const inner = (limit: number, allows: boolean, sign: 1 | -1) => (allows ? limit : limit + sign * Math.max(Math.abs(limit) * 1e-9, 1e-12))

/** Hardest that two inputs may be tied to one another before it is said. */
const TIED = 0.98

/**
 * What readings of results say of the inputs: the values that come nearest to them (least squares), how sure each is, and what the readings cannot
 * tell apart. Readings may be of several values and at several settings.
 *
 * @param base - an input, quantities in any unit: what is known, and where the search begins
 * @throws InputError naming every fault of the arguments (the promise is rejected with it), or that no place that was tried has an answer for every reading
 * @example
 * ```ts
 * import { fit } from 'alula/study'
 * import { voltageDrop } from 'alula/wire'
 * const run = { current: '4 A', length: '3 m', awg: 20, sourceVoltage: '12 V' } as const
 * const made = voltageDrop({ ...run, length: '2.5 m' }).drop
 * const found = await fit(voltageDrop, run, { vary: ['length'], readings: [{ of: 'drop', value: made }] })
 * Math.round(found.inputs[0].value * 1000) // => 2500
 * found.cannotTell // => []
 * ```
 */
export async function fit<In, Out>(solver: Solver<In, Out>, base: NoInfer<In>, options: FitOptions<In, Out>): Promise<Fit> {
  const asked = solver as unknown as AnySolver
  const read = new Arguments("fit", asked, base)
  const unknowns = read.take(readUnknowns(asked, read.base, options.vary), [])
  const given: readonly unknown[] = Array.isArray(options.readings) ? options.readings : []
  if (given.length === 0) read.fault(issue("too-few", ["readings"], "none", "at least 1 reading"))
  const readings = given.flatMap((one, i) => {
    const own = read.take<Read | null>(readReading(asked, read.base, one, ["readings", i]), null)
    return own ? [own] : []
  })
  const known = readings.filter(({ deviation }) => deviation !== null).length
  const paths = new Set(readings.map(({ asked: { path } }) => path))
  if (known > 0 && known < readings.length)
    read.fault(issue("inconsistent", ["readings"], "a deviation for some", "one for each reading, or for none"))
  else if (known === 0 && paths.size > 1)
    read.fault(
      issue(
        "missing",
        ["readings"],
        "none",
        "a deviation for each reading, since values of different kinds are weighed against one another",
      ),
    )
  const starts = read.number("starts", options.starts, 6, 0, 1000)
  const seed = read.number("seed", options.seed, 1, 0, 2 ** 31 - 1)
  const clash = readings.flatMap(({ at }) => at).find(({ path }) => unknowns.some((unknown) => unknown.path === path))
  if (clash) read.fault(issue("inconsistent", ["readings"], `a setting of ${clash.path}`, "settings of inputs that are not looked for"))
  const middle = unknowns.map(({ low, high }) => (low + high) / 2)
  read.rules(unknowns, middle, ["vary"])
  readings.forEach(({ at }, i) => {
    read.rules([...unknowns, ...at], [...middle, ...at.map(({ put }) => put)], ["readings", i, "at"])
  })
  read.done()

  const runner = new Runner(asked, options)
  const model = modelOf(read.base, unknowns, readings, runner)
  const begin = unknowns.map(({ value, low, high }) => Math.min(high, Math.max(low, value ?? (low + high) / 2)))
  const scale = unknowns.map(({ low, high }, j) => Math.abs(begin[j] as number) || (high - low) / 10)
  const found = await bestOf(model, unknowns, begin, scale, starts, seed)
  runner.report(true)
  if (!found) {
    const why = model.bench.refused[0]?.message ?? "the value read is missing"
    throw studyError("fit", asked, [
      issue(
        "inconsistent",
        ["vary"],
        `${model.bench.tried} inputs without an answer for every reading (${why})`,
        "a base or ranges with an answer",
      ),
    ])
  }
  return report(unknowns, readings, found, known > 0, model.bench)
}

/** The residuals of all readings at values of the unknowns. */
function modelOf(base: object, unknowns: readonly Unknown[], readings: readonly Read[], runner: Runner) {
  const settings = [...new Map(readings.flatMap(({ at }) => at).map((place) => [place.path, place])).values()]
  const rowsOf = readings.map(({ at }) => settings.map(({ path, value }) => at.find((one) => one.path === path)?.put ?? value))
  // readings at the same settings share one answer
  const distinct = [...new Map(rowsOf.map((row) => [JSON.stringify(row), row])).values()]
  const rowAt = rowsOf.map((row) => distinct.findIndex((one) => JSON.stringify(one) === JSON.stringify(row)))
  const outputs = [...new Map(readings.map(({ asked }) => [asked.path, asked])).values()]
  const outputAt = readings.map(({ asked }) => outputs.findIndex(({ path }) => path === asked.path))
  const bench = new Bench({ base, vary: [...unknowns, ...settings], outputs }, runner)
  return {
    bench,
    /** Of each point the residuals, over their deviations; null where one of them is missing. */
    async residuals(points: readonly Float64Array[]): Promise<readonly (readonly number[] | null)[]> {
      const { values } = await bench.try(points.flatMap((point) => distinct.map((row) => [...point, ...row])))
      return points.map((_, p) => {
        const own = readings.map(({ value, deviation }, i) => {
          const fitted = values[(p * distinct.length + (rowAt[i] as number)) * outputs.length + (outputAt[i] as number)] as number
          return (fitted - value) / (deviation ?? 1)
        })
        return own.some(Number.isNaN) ? null : own
      })
    },
  }
}

type Model = ReturnType<typeof modelOf>

/** The best of several searches: from the base's own values, and from places spread over the ranges. */
async function bestOf(
  model: Model,
  unknowns: readonly Unknown[],
  begin: readonly number[],
  scale: readonly number[],
  starts: number,
  seed: number,
) {
  const [low, high] = [unknowns.map((one) => one.low), unknowns.map((one) => one.high)]
  const next = sobolPoints(unknowns.length, seed)
  const share = new Float64Array(unknowns.length)
  let best: LeastSquares | null = null
  for (let i = 0; i <= starts; i++) {
    let start = begin
    if (i > 0) {
      next(share)
      // around the base's own values first, a decade to both sides, since fields allow far more than anyone means
      start = begin.map((v, j) => Math.min(high[j] as number, Math.max(low[j] as number, near(v, scale[j] as number, share[j] as number))))
    }
    const search = leastSquares({ start, low, high, scale })
    let step = search.next()
    while (!step.done) step = search.next(await model.residuals(step.value))
    const found = step.value
    if (found && (best === null || found.squares < best.squares)) best = found
  }
  return best
}

const near = (value: number, scale: number, share: number) => (value === 0 ? scale * (2 * share - 1) : value * 10 ** (2 * share - 1))

function report(unknowns: readonly Unknown[], readings: readonly Read[], found: LeastSquares, isWeighed: boolean, bench: Bench): Fit {
  const n = unknowns.length
  const freedom = readings.length - n
  const scale = unknowns.map(({ low, high }, j) => Math.abs(found.x[j] as number) || (high - low) / 10)
  const told: Covariance = covariance(found.slopes, scale)
  const scatter = freedom > 0 ? Math.sqrt(found.squares / freedom) : null
  // readings whose deviations are known tell themselves how sure the unknowns are; otherwise their scatter does
  const size = isWeighed ? 1 : scatter
  const factor = isWeighed ? 1.959963984540054 : freedom > 0 ? studentQuantile(0.975, freedom) : Number.NaN
  const cannotTell = untold(unknowns, scale, told)
  const inputs = unknowns.map((unknown, j): Fitted => {
    const { path, label, kind, low, high } = unknown
    const value = found.x[j] as number
    const deviation = told.matrix && size !== null ? Math.sqrt(told.matrix[j]?.[j] as number) * size : null
    const isAtEnd = value === low || value === high
    const half = deviation === null ? null : deviation * factor
    return {
      path,
      label,
      kind,
      value,
      deviation,
      low: half === null ? null : value - half,
      high: half === null ? null : value + half,
      isAtEnd,
      sentence: inputSentence(unknown, value, half, isAtEnd),
    }
  })
  return {
    inputs,
    cannotTell,
    readings: readings.map(({ asked, value, deviation }, i) => {
      const residual = -(found.residuals[i] as number) * (deviation ?? 1)
      return { of: asked.path, read: value, fitted: value - residual, residual }
    }),
    freedom,
    scatter,
    isSettled: found.isSettled,
    tried: bench.tried,
    refused: bench.refused,
    sentence: closing(inputs, cannotTell, freedom, isWeighed ? scatter : null),
  }
}

function inputSentence({ label, kind }: Unknown, value: number, half: number | null, isAtEnd: boolean): string {
  const words = { label: opening(label), value: told(kind, value) }
  const end = isAtEnd ? ", at the end of its range: the best value may lie beyond" : ""
  if (half === null) return fill(`{label} {value}, how sure the readings do not tell${end}.`, words)
  return fill(`{label} {value} ± {half} with 95 % confidence${end}.`, { ...words, half: told(differenceOf(kind), half) })
}

/** Directions the readings do not show, and inputs so tied to one another that one alone is hardly known. */
function untold(unknowns: readonly Unknown[], scale: readonly number[], told: Covariance): readonly Untold[] {
  const label = (j: number) => inSentence(unknowns[j]?.label as string)
  const list = (at: readonly number[]): Untold => {
    const paths = at.map((j) => unknowns[j]?.path as string)
    const names = at.map(label).join(" and ")
    if (at.length === 1) return { paths, sentence: fill("These readings do not show {names} at all.", { names }) }
    return { paths, sentence: fill("These readings cannot tell {names} apart: measure one of them, or read at other settings.", { names }) }
  }
  const unseen = told.unseen.map((direction) => list(direction.map((_, j) => j).filter((j) => Math.abs(direction[j] as number) > 0.05)))
  const { matrix } = told
  if (!matrix) return unseen
  return scale.flatMap((_, j) =>
    scale.flatMap((_, k) => {
      const tie = (matrix[j]?.[k] as number) / Math.sqrt((matrix[j]?.[j] as number) * (matrix[k]?.[k] as number))
      return k > j && Math.abs(tie) > TIED ? [list([j, k])] : []
    }),
  )
}

function closing(inputs: readonly Fitted[], cannotTell: readonly Untold[], freedom: number, scatter: number | null): string {
  const first = cannotTell[0]?.sentence ?? inputs.map(({ sentence }) => sentence).join(" ")
  if (scatter !== null && scatter > 2)
    return fill(`${"{first}"} The readings lie {scatter} times farther off than their deviations say: something else is at work.`, {
      first,
      scatter,
    })
  if (freedom === 0) return fill("{first} There are as many readings as unknowns: none is left to check with.", { first })
  return first
}
