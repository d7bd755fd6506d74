import { type Evolved, evolution, frontOf, globalMinimum, type Judged } from "../numeric/index.js"
import { fill, issue, type Solver } from "../solver/index.js"
import { type Asked, type Limit, type OutputLimit, passes, readAsked, readLimits } from "./asked.js"
import { Bench, type Refusal } from "./bench.js"
import type { PathTo } from "./paths.js"
import type { AnySolver } from "./place.js"
import { type AllowedValues, type ChoicePlaceOf, chosenAt, pointOf, readChoices } from "./ranges.js"
import { Runner, type StudyOptions } from "./run.js"
import { Arguments } from "./start.js"
import { inSentence, told } from "./words.js"

/** What an optimisation looks for, and how it is run. */
export interface OptimizeOptions<In, Out> extends StudyOptions {
  /** What may be chosen, by path of the input. */
  readonly vary: AllowedValues<In>
  /** Values of the result to be made small; several of them, or some here and some there, give a front. */
  readonly minimize?: PathTo<Out, "number"> | readonly PathTo<Out, "number">[]
  /** Values to be made large. */
  readonly maximize?: PathTo<Out, "number"> | readonly PathTo<Out, "number">[]
  /** Limits to be kept. An input without an answer keeps none. */
  readonly subjectTo?: { readonly [P in PathTo<Out, "number" | "flag">]?: OutputLimit }
  /** Most inputs to try: 20 000 where left out. */
  readonly budget?: number
  /** Takes other turns; the same seed gives the same answer on any machine and any number of threads. */
  readonly seed?: number
}

/** One way to choose. */
export interface Design {
  /** What was chosen, in SI by path of the input. */
  readonly inputs: Readonly<Record<string, unknown>>
  /** The goals and the limited values, in SI by path of the result. */
  readonly outputs: Readonly<Record<string, number>>
}

/** The design that comes nearest to keeping the limits, where none keeps them. */
export interface Nearest extends Omit<Design, "outputs"> {
  /** The goals and the limited values, in SI by path of the result; null where it has no such value. */
  readonly outputs: Readonly<Record<string, number | null>>
  /** Limits it passes, in words. */
  readonly passes: readonly string[]
}

/** Answer of {@link optimize}. */
export interface Optimum {
  /** The best design; of several goals the one nearest to the best of each; null where none keeps the limits. */
  readonly best: Design | null
  /** Designs that none tried is better than in everything; one, for one goal. */
  readonly front: readonly Design[]
  /** Where none keeps the limits: the one that comes nearest; null where there is one, or nothing answers. */
  readonly nearest: Nearest | null
  /** Whether every possible choice was tried, so that none can be better; otherwise the best was found, not proved. */
  readonly isProved: boolean
  /** Searches that began anew, and how many of them ended at the best; null where all choices were tried, or for several goals. */
  readonly searches: { readonly begun: number; readonly agreeing: number } | null
  /** Inputs tried. */
  readonly tried: number
  /** Why inputs had no answer, the most frequent first. */
  readonly refused: readonly Refusal[]
  readonly sentence: string
}

interface Goal extends Asked {
  readonly sign: 1 | -1
}

interface Row extends Judged {
  readonly row: readonly unknown[]
  readonly values: Float64Array
}

/** What an input without an answer counts against limits passed: more than any of them. */
const REFUSED = 1e6

/**
 * Looks for the inputs that make results small or large within limits: from ranges, lists and words, for one goal or several (a front). Inputs
 * without an answer keep no limit. Where all choices can be tried within the budget they are, and the answer is proved; otherwise it is the best
 * of several searches that begin anew.
 *
 * @param base - an input, quantities in any unit; its own values are among those tried where they may be chosen
 * @throws InputError naming every fault of the arguments (the promise is rejected with it)
 * @example
 * ```ts
 * import { optimize } from 'alula/study'
 * import { voltageDrop } from 'alula/wire'
 * const run = { current: '4 A', length: '3 m', awg: 20, sourceVoltage: '12 V' } as const
 * const thin = await optimize(voltageDrop, run, {
 *   vary: { awg: [14, 16, 18, 20, 22, 24] },
 *   maximize: ['drop'], // the thinnest wire
 *   subjectTo: { drop: { atMost: '0.6 V' } },
 * })
 * thin.best.inputs.awg // => 18
 * thin.isProved // => true
 * ```
 */
export async function optimize<In, Out>(solver: Solver<In, Out>, base: NoInfer<In>, options: OptimizeOptions<In, Out>): Promise<Optimum> {
  const asked = solver as unknown as AnySolver
  const read = new Arguments("optimize", asked, base)
  const places = read.take(readChoices(asked, read.base, options.vary, ["vary"]), [])
  const goals = (["minimize", "maximize"] as const).flatMap((name): Goal[] => {
    if (options[name] === undefined) return []
    return read.take(readAsked(asked, options[name], [name]), []).map((one) => ({ ...one, sign: name === "minimize" ? 1 : -1 }))
  })
  if (options.minimize === undefined && options.maximize === undefined)
    read.fault(issue("missing", ["minimize"], "nothing", "a value of the result to minimize or to maximize"))
  const limits = read.take(readLimits(asked, options.subjectTo, ["subjectTo"]), [])
  const budget = read.number("budget", options.budget, 20_000, 8, 10_000_000)
  const seed = read.number("seed", options.seed, 1, 0, 2 ** 31 - 1)
  read.rules(places, chosenAt(places, new Float64Array(places.length).fill(0.5)), ["vary"])
  read.done()

  const outputs: readonly Asked[] = [...goals, ...limits]
  const runner = new Runner(asked, options)
  const bench = new Bench({ base: read.base, vary: places, outputs }, runner)
  const judge = judgeOf(goals, limits)
  const count = places.reduce((product, { values }) => product * (values?.length ?? Number.POSITIVE_INFINITY), 1)
  const all = count <= budget
  const outcome = all ? await everyOne(bench, places, count, judge) : await searched(bench, places, goals.length, { budget, seed, judge })
  runner.report(true)

  const designs = outcome.rows.filter(({ violation }) => violation === 0)
  const design = ({ row, values }: Row): Design => ({
    inputs: Object.fromEntries(places.map(({ path }, j) => [path, row[j]])),
    outputs: Object.fromEntries(outputs.map(({ path }, k) => [path, values[k] as number])),
  })
  const best = middleOf(designs)
  const missed = best ? undefined : outcome.rows.find(({ violation }) => violation < REFUSED)
  const { searches } = outcome
  const found = {
    best: best ? design(best) : null,
    front: designs.map(design),
    nearest: missed
      ? {
          inputs: design(missed).inputs,
          outputs: tellable(design(missed).outputs),
          passes: limits.flatMap((limit, n) => passed(limit, missed.values[goals.length + n] as number)),
        }
      : null,
    isProved: all,
    searches,
    tried: bench.tried,
    refused: bench.refused,
  }
  return { ...found, sentence: sentenceOf(goals, places, best, designs.length, found) }
}

const tellable = (outputs: Design["outputs"]): Nearest["outputs"] =>
  Object.fromEntries(Object.entries(outputs).map(([path, value]) => [path, Number.isNaN(value) ? null : value]))

type Judge = (values: Float64Array, refused: string | null) => Judged

function judgeOf(goals: readonly Goal[], limits: readonly Limit[]): Judge {
  const nothing = goals.map(() => 0)
  return (values, refused) => {
    if (refused !== null) return { goals: nothing, violation: 2 * REFUSED }
    const own = goals.map(({ sign }, k) => sign * (values[k] as number))
    // an answer without the value asked for is as good as none
    if (own.some(Number.isNaN)) return { goals: nothing, violation: REFUSED }
    const over = limits.reduce(
      (sum, limit, n) => sum + Math.min(passes(limit, values[goals.length + n] as number), REFUSED / (limits.length + 1)),
      0,
    )
    return { goals: own, violation: over }
  }
}

interface Outcome {
  readonly rows: readonly Row[]
  readonly searches: Optimum["searches"]
}

/** Rows tried, each with what came of it. */
async function judgedRows(bench: Bench, rows: readonly (readonly unknown[])[], judge: Judge): Promise<readonly Row[]> {
  const width = bench.question.outputs.length
  const { values, refused } = await bench.try(rows)
  return rows.map((row, i): Row => {
    const own = values.subarray(i * width, (i + 1) * width)
    return { row, values: own, ...judge(own, refused[i] ?? null) }
  })
}

/** Rows tried at a time when all are. */
const BATCH = 1024

/** Every choice there is. */
async function everyOne(bench: Bench, places: readonly ChoicePlaceOf[], count: number, judge: Judge): Promise<Outcome> {
  let front: readonly Row[] = []
  for (let from = 0; from < count; from += BATCH) {
    const rows = Array.from({ length: Math.min(BATCH, count - from) }, (_, i) => {
      let rest = from + i
      return places.map(({ values }) => {
        const own = values as readonly unknown[]
        const value = own[rest % own.length]
        rest = Math.floor(rest / own.length)
        return value
      })
    })
    front = frontOf([...front, ...(await judgedRows(bench, rows, judge))])
  }
  return { rows: front, searches: null }
}

interface SearchOptions {
  readonly budget: number
  readonly seed: number
  readonly judge: Judge
}

async function searched(
  bench: Bench,
  places: readonly ChoicePlaceOf[],
  goals: number,
  { budget, seed, judge }: SearchOptions,
): Promise<Outcome> {
  const own = pointOf(places)
  const start = own ? [own] : []
  const dimensions = places.length
  const rowOf = (point: Float64Array) => chosenAt(places, point)
  const again = async (points: readonly Float64Array[]) => frontOf(await judgedRows(bench, points.map(rowOf), judge))
  if (goals === 1) {
    const picks = places.map(({ values }) => values !== null)
    // the best point is asked once more, for the values its limits are told by
    const found = await bench.ask(globalMinimum({ dimensions, seed, budget: budget - 1, start, picks }), rowOf, judge)
    return { rows: await again([found.best.point]), searches: { begun: found.runs, agreeing: found.agreeing } }
  }
  const size = Math.min(Math.max(24, Math.min(100, Math.floor(budget / 20))), Math.floor(budget / 2))
  const found: Evolved = await bench.ask(evolution({ dimensions, goals, seed, budget: budget - size, size, start }), rowOf, judge)
  return { rows: await again(found.front.map(({ point }) => point)), searches: null }
}

/** Of a front the design nearest to the best of each goal, each measured against its range over the front. */
function middleOf(front: readonly Row[]): Row | null {
  const goals = front[0]?.goals.length ?? 0
  const ends = Array.from({ length: goals }, (_, k) => {
    const own = front.map((one) => one.goals[k] as number)
    return [Math.min(...own), Math.max(...own)] as const
  })
  const off = (one: Row) =>
    ends.reduce((sum, [low, high], k) => sum + (high > low ? (((one.goals[k] as number) - low) / (high - low)) ** 2 : 0), 0)
  return front.reduce<Row | null>((best, one) => (best === null || off(one) < off(best) ? one : best), null)
}

function passed(limit: Limit, value: number): string[] {
  if (passes(limit, value) === 0) return []
  const { label, kind, low, high } = limit
  if (Number.isNaN(value)) return [fill("its result has no {label}", { label: inSentence(label) })]
  const words = { label: inSentence(label), value: told(kind, value) }
  if (value > high) return [fill("{label} {value}, at most {limit} allowed", { ...words, limit: told(kind, high) })]
  return [fill("{label} {value}, at least {limit} needed", { ...words, limit: told(kind, low) })]
}

function sentenceOf(
  goals: readonly Goal[],
  places: readonly ChoicePlaceOf[],
  best: Row | null,
  size: number,
  { isProved, searches, tried, nearest, refused }: Omit<Optimum, "sentence">,
): string {
  if (!best) {
    if (nearest)
      return fill("None of {tried} tried keeps the limits; the nearest one: {passes}.", { tried, passes: nearest.passes.join("; ") })
    return fill("None of {tried} tried has an answer: {why}", { tried, why: refused[0]?.message ?? "the values asked for are missing." })
  }
  const choice = places.map(({ field, path }, j) => {
    const value = best.row[j]
    const kind = "symbol" in field ? field.kind : null
    return fill("{label} {value}", {
      label: path.includes(".") ? path : inSentence(field.label),
      value: kind && typeof value === "number" ? told(kind, value) : String(value),
    })
  })
  const reached = goals.map(({ label, kind }, k) =>
    fill("{label} {value}", { label: inSentence(label), value: told(kind, best.values[k] as number) }),
  )
  const proof = isProved
    ? "proved: all {tried} choices were tried"
    : searches
      ? "found, not proved: {agreeing} of {begun} searches that began anew ended here, {tried} tried"
      : "found, not proved: {tried} tried"
  const words = {
    choice: choice.join(", "),
    reached: reached.join(", "),
    tried,
    size,
    agreeing: searches?.agreeing ?? 0,
    begun: searches?.begun ?? 0,
  }
  if (goals.length === 1) return fill(`{reached} with {choice} (${proof}).`, words)
  return fill(
    `{size} designs that none is better than in everything; nearest to the best of each: {reached} with {choice} (${proof}).`,
    words,
  )
}
