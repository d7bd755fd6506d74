import { cholesky, quantileRanks, shareInterval, sobolPoints } from "../numeric/index.js"
import { fill, type Issue, issue, type Solver } from "../solver/index.js"
import { shown } from "../solver/issue.js"
import { type Asked, type Limit, type OutputLimit, readAsked, readLimits, valuesAt } from "./asked.js"
import { Bench, type Refusal } from "./bench.js"
import type { PathTo } from "./paths.js"
import { type AnySolver, type Found, placeAt } from "./place.js"
import { Runner, type StudyOptions } from "./run.js"
import { correlate, drawn, readSpreads, type SpreadPlace, type Spreads } from "./spread.js"
import { Arguments } from "./start.js"
import { chanceText, opening, place, told } from "./words.js"
import { type Worst, worstOf } from "./worst.js"

/** How an uncertainty study is run. */
export interface UncertaintyOptions<In, Out> extends StudyOptions {
  /** Values of the result, by path; where left out those with limits, or without limits every number outside its lists. */
  readonly outputs?: readonly PathTo<Out, "number" | "flag">[]
  /** Limits whose chance of being met is told. An input without an answer meets none. */
  readonly limits?: { readonly [P in PathTo<Out, "number" | "flag">]?: OutputLimit }
  /** Which inputs vary together: correlation of their normal scores, which for normal spreads is their own. */
  readonly correlations?: readonly {
    readonly between: readonly [PathTo<In, "number">, PathTo<In, "number">]
    readonly coefficient: number
  }[]
  /** Most inputs to try: 20 000 where left out. */
  readonly samples?: number
  /**
   * Half the width of a chance's 95 % interval at which to stop before that: 0.01 where left out. Percentiles have to be known
   * to a tenth of the range between the 5th and the 95th as well. At 0 all samples are taken.
   */
  readonly within?: number
  /** Draws other samples; the same seed gives the same answer on any machine and any number of threads. */
  readonly seed?: number
  /** Whether the worst cases are looked for too: true where left out. */
  readonly worst?: boolean
}

/** A share with its 95 % confidence interval. */
export interface Chance {
  readonly share: number
  readonly low: number
  readonly high: number
}

/** A value that a share of the answers lies below, with its 95 % confidence interval (null where too few answers tell). */
export interface Percentile {
  readonly share: number
  readonly value: number
  readonly low: number | null
  readonly high: number | null
}

/** How one value of the result is spread, in SI. */
export interface OutputSpread {
  readonly path: string
  readonly label: string
  readonly kind: Asked["kind"]
  /** At the base itself; null where it has no such value. */
  readonly atBase: number | null
  /** Inputs that have the value: the rest of this is about them alone. */
  readonly answered: number
  readonly mean: number | null
  /** Standard deviation. */
  readonly deviation: number | null
  /** The 2.5th, 5th, 50th, 95th and 97.5th, in this order; empty where nothing answered. */
  readonly percentiles: readonly Percentile[]
  /** Over the whole box of the spreads: the most extreme found, at corners, within, and by searching from there; null where not asked for or nothing answers. */
  readonly worst: Worst | null
  /** In words. */
  readonly sentence: string
}

/** How likely a limit is met. */
export interface LimitChance {
  readonly path: string
  readonly label: string
  readonly atMost: number | null
  readonly atLeast: number | null
  readonly chance: Chance
  readonly sentence: string
}

/** Answer of {@link uncertainty}. */
export interface Uncertainty {
  readonly outputs: readonly OutputSpread[]
  readonly limits: readonly LimitChance[]
  /** Chance that all limits are met by one input; null without limits. */
  readonly together: Chance | null
  /** Inputs drawn. */
  readonly samples: number
  /** Inputs tried, those of the worst cases and the base included. */
  readonly tried: number
  /** Chance of an input without an answer. */
  readonly unanswered: Chance
  /** Why they have none, the most frequent first. */
  readonly refused: readonly Refusal[]
  /** Whether everything is known as well as asked; otherwise the samples were spent. */
  readonly isSure: boolean
  readonly sentence: string
}

const SHARES = [0.025, 0.05, 0.5, 0.95, 0.975]
const FIRST = 1024

function readCorrelations(solver: AnySolver, si: object, spreads: readonly SpreadPlace[], given: unknown): Found<number[][] | null> {
  if (given === undefined || (Array.isArray(given) && given.length === 0)) return { ok: true, value: null }
  const where = ["correlations"]
  if (!Array.isArray(given)) return { ok: false, issues: [issue("wrong-type", where, shown(given), "a list of { between, coefficient }")] }
  const issues: Issue[] = []
  const matrix = spreads.map((_, i) => spreads.map((_, j): number => (i === j ? 1 : 0)))
  given.forEach((one: unknown, n) => {
    const { between, coefficient } = (one ?? {}) as { readonly between?: unknown; readonly coefficient?: unknown }
    const places = Array.isArray(between) && between.length === 2 ? between : null
    if (!places) issues.push(issue("wrong-type", [...where, n, "between"], shown(between), "two paths"))
    const [i, j] = (places ?? []).map((path) => spreads.findIndex((s) => s.path === path)) as [number?, number?]
    places?.forEach((path: unknown, k) => {
      const at = [...where, n, "between", k]
      const known = placeAt(solver, si, path, at)
      if (!known.ok) issues.push(...known.issues)
      else if ([i, j][k] === -1) issues.push(issue("inconsistent", at, shown(path), "one of the paths that are spread"))
    })
    if (i !== undefined && i === j && i >= 0) issues.push(issue("inconsistent", [...where, n, "between"], "one path twice", "two paths"))
    if (typeof coefficient !== "number" || !(Math.abs(coefficient) < 1))
      issues.push(
        issue("wrong-type", [...where, n, "coefficient"], shown(coefficient), "a number between −1 and 1, neither of them itself"),
      )
    else if (i !== undefined && j !== undefined && i >= 0 && j >= 0) {
      ;(matrix[i] as number[])[j] = coefficient
      ;(matrix[j] as number[])[i] = coefficient
    }
  })
  if (issues.length > 0) return { ok: false, issues }
  const lower = cholesky(matrix)
  if (lower) return { ok: true, value: lower }
  return {
    ok: false,
    issues: [issue("inconsistent", where, "coefficients that no values can have together", "a positive definite correlation matrix")],
  }
}

const chance = (count: number, trials: number): Chance => ({ share: count / trials, ...shareInterval(count, trials) })

/** Sorted values and what they tell of a quantile. */
function percentile(sorted: Float64Array, share: number): Percentile {
  const { low, high } = quantileRanks(share, sorted.length)
  // between the two values beside it
  const place = share * (sorted.length - 1)
  const under = Math.floor(place)
  const [a, b] = [sorted[under] as number, sorted[Math.min(under + 1, sorted.length - 1)] as number]
  return {
    share,
    value: a + (b - a) * (place - under),
    low: low === null ? null : (sorted[low] as number),
    high: high === null ? null : (sorted[high] as number),
  }
}

/** Values of one output, those there are, sorted. */
function sortedOf(all: Float64Array, width: number, k: number, rows: number): Float64Array {
  const values = new Float64Array(rows)
  let count = 0
  for (let i = 0; i < rows; i++) {
    const value = all[i * width + k] as number
    if (!Number.isNaN(value)) values[count++] = value
  }
  return values.subarray(0, count).sort()
}

/** Whether its percentiles are known to a tenth of its range. */
function isKnown(sorted: Float64Array): boolean {
  if (sorted.length === 0) return true
  const [low, middle, high] = [0.05, 0.5, 0.95].map((share) => percentile(sorted, share)) as [Percentile, Percentile, Percentile]
  const range = high.value - low.value
  return [low, middle, high].every((p) => p.low !== null && p.high !== null && p.high - p.low <= 0.2 * range)
}

const meets = ({ low, high }: Limit, value: number) => value >= low && value <= high

/**
 * How sure an answer is: draws inputs as they are spread, asks the solver, and tells how its results are spread, how likely limits
 * are met, and the worst cases over the box. Samples are seeded Sobol points, scrambled; intervals are those of as many independent samples,
 * which evenly spread ones keep as a rule with room to spare. It stops when sure enough. Inputs without an answer are counted, never left out: they
 * meet no limit.
 *
 * @param base - an input, quantities in any unit
 * @param spreads - how its values are spread, by path
 * @throws InputError naming every fault of the arguments (the promise is rejected with it)
 * @example
 * ```ts
 * import { uncertainty } from 'alula/study'
 * import { voltageDrop } from 'alula/wire'
 * const run = { current: '4 A', length: '3 m', awg: 20, sourceVoltage: '12 V' } as const
 * const spreads = { length: '3 m ± 10 cm', current: { type: 'normal', deviation: '5 %' } } as const
 * const sure = await uncertainty(voltageDrop, run, spreads, { limits: { drop: { atMost: '0.85 V' } } })
 * sure.limits.length // => 1
 * sure.limits[0].chance.low > 0.5 // => true
 * sure.unanswered.share // => 0
 * sure.outputs[0].worst.high.at.length // => 3.1
 * ```
 */
export async function uncertainty<In, Out>(
  solver: Solver<In, Out>,
  base: NoInfer<In>,
  spreads: Spreads<In>,
  options: UncertaintyOptions<In, Out> = {},
): Promise<Uncertainty> {
  const asked = solver as unknown as AnySolver
  const read = new Arguments("uncertainty", asked, base)
  const places = read.take(readSpreads(asked, read.base, spreads, ["spreads"]), [])
  const limits = read.take(readLimits(asked, options.limits, ["limits"]), [])
  const wanted = read.take(readAsked(asked, options.outputs, ["outputs"]), [])
  const lower = read.take(readCorrelations(asked, read.base, places, options.correlations), null)
  const most = read.number("samples", options.samples, 20_000, 16, 10_000_000)
  const within = read.number("within", options.within, 0.01, 0, 0.5, false)
  const seed = read.number("seed", options.seed, 1, 0, 2 ** 31 - 1)
  read.rules(
    places,
    places.map((one) => drawn(one, 0.5)),
    ["spreads"],
  )
  read.done()

  const named = options.outputs === undefined && limits.length > 0 ? [] : wanted
  const outputs: readonly Asked[] = [...named, ...limits].filter((one, i, all) => all.findIndex(({ path }) => path === one.path) === i)
  const width = outputs.length
  const runner = new Runner(asked, options)
  const bench = new Bench({ base: read.base, vary: places, outputs }, runner)
  const atBase = valuesAt(asked, read.base, outputs)

  const next = sobolPoints(places.length, seed)
  const share = new Float64Array(places.length)
  const values = new Float64Array(most * width)
  const met = limits.map(() => 0)
  const at = limits.map(({ path }) => outputs.findIndex((one) => one.path === path))
  let [samples, unanswered, together, isSure] = [0, 0, 0, false]
  while (samples < most && !isSure) {
    const count = Math.min(samples === 0 ? FIRST : samples, most - samples)
    const rows = Array.from({ length: count }, () => {
      next(share)
      if (lower) correlate(share, lower)
      return places.map((one, j) => drawn(one, share[j] as number))
    })
    const part = await bench.try(rows)
    values.set(part.values, samples * width)
    unanswered += part.refused.filter((code) => code !== null).length
    for (let i = 0; i < count; i++) {
      const kept = limits.map((limit, n) => meets(limit, part.values[i * width + (at[n] as number)] as number))
      kept.forEach((keeps, n) => {
        if (keeps) met[n] = (met[n] as number) + 1
      })
      if (kept.every(Boolean)) together++
    }
    samples += count
    const isNarrow = [...met, unanswered, ...(limits.length > 0 ? [together] : [])].every((n) => {
      const { low, high } = shareInterval(n, samples)
      return high - low <= 2 * within
    })
    isSure = within > 0 && isNarrow && outputs.every((_, k) => isKnown(sortedOf(values, width, k, samples)))
  }
  isSure ||= within === 0

  // on a bench of its own, so that refusals at the edge of the box are not counted among those of the samples
  const edge = new Bench(bench.question, runner)
  const worst = options.worst === false ? null : await worstOf(edge, places, width)
  runner.report(true)
  const told = outputs.map((one, k) =>
    summary(one, atBase[k] as number, sortedOf(values, width, k, samples), values, width, k, samples, worst?.[k] ?? null),
  )
  const chances = limits.map((limit, n) => limitChance(limit, chance(met[n] as number, samples)))
  const none = chance(unanswered, samples)
  return {
    outputs: told,
    limits: chances,
    together: limits.length > 0 ? chance(together, samples) : null,
    samples,
    tried: bench.tried + edge.tried + 1,
    unanswered: none,
    refused: bench.refused,
    isSure,
    sentence: closing(samples, unanswered, none, isSure),
  }
}

function summary(
  { path, label, kind }: Asked,
  atBase: number,
  sorted: Float64Array,
  values: Float64Array,
  width: number,
  k: number,
  rows: number,
  worst: Worst | null,
): OutputSpread {
  const n = sorted.length
  const common = { path, label, kind, atBase: Number.isNaN(atBase) ? null : atBase, answered: n, worst }
  if (n === 0)
    return {
      ...common,
      mean: null,
      deviation: null,
      percentiles: [],
      sentence: fill("{label}: no answer at all.", { label: opening(label) }),
    }
  // about a value in the middle, so that nothing is lost of a small spread of a large number
  const middle = sorted[n >> 1] as number
  let [sum, squares] = [0, 0]
  for (let i = 0; i < rows; i++) {
    const off = (values[i * width + k] as number) - middle
    if (Number.isNaN(off)) continue
    sum += off
    squares += off * off
  }
  const percentiles = SHARES.map((one) => percentile(sorted, one))
  const [low, half, high] = [1, 2, 3].map((i) => percentiles[i]?.value) as [number, number, number]
  return {
    ...common,
    mean: middle + sum / n,
    deviation: n > 1 ? Math.sqrt(Math.max(0, squares - (sum * sum) / n) / (n - 1)) : null,
    percentiles,
    sentence: fill(
      `{label}: in nine of ten ${n < rows ? "of the {n} cases out of {rows} that have it" : "cases"} ${place("low", kind)} to ${place("high", kind)}, as often above ${place("half", kind)} as below.`,
      {
        label: opening(label),
        low,
        high,
        half,
        n,
        rows,
      },
    ),
  }
}

function limitChance({ path, label, kind, low, high }: Limit, met: Chance): LimitChance {
  const [atLeast, atMost] = [Number.isFinite(low) ? low : null, Number.isFinite(high) ? high : null]
  const words = [atLeast === null ? null : `at least ${told(kind, atLeast)}`, atMost === null ? null : `at most ${told(kind, atMost)}`]
  return {
    path,
    label,
    atMost,
    atLeast,
    chance: met,
    sentence: fill("{label} {limit}: met in {share} of cases ({low} to {high} with 95 % confidence).", {
      label: opening(label),
      limit: words.filter(Boolean).join(" and "),
      share: chanceText(met.share),
      low: chanceText(met.low),
      high: chanceText(met.high),
    }),
  }
}

function closing(samples: number, unanswered: number, none: Chance, isSure: boolean): string {
  const sure = isSure ? "" : " That is not yet as sure as asked: allow more samples."
  const without =
    unanswered === 0
      ? `each of them has an answer (up to {high} may have none, with 95 % confidence)`
      : "{share} of them have no answer and meet no limit"
  return fill(`{samples} inputs were drawn; ${without}.${sure}`, { samples, share: chanceText(none.share), high: chanceText(none.high) })
}
