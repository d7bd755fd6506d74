import { sobolPoints, studentQuantile, type VarianceIndices, varianceIndices } from "../numeric/index.js"
import { factorOf } from "../quantity/index.js"
import { type AnyField, fill, type Issue, issue, type Solver } from "../solver/index.js"
import { shown } from "../solver/issue.js"
import { type Asked, readAsked } from "./asked.js"
import { Bench, type Refusal } from "./bench.js"
import type { PathTo } from "./paths.js"
import type { AnySolver, Found } from "./place.js"
import { isNumberPlace, type NumberPlace, placesIn } from "./places.js"
import { Runner, type StudyOptions } from "./run.js"
import { slopesOf } from "./slopes.js"
import { drawn, numberAt, readSpread, type SpreadPlace, type Spreads } from "./spread.js"
import { Arguments } from "./start.js"
import { differenceOf, handyStep, inSentence, opening, place } from "./words.js"

/** How a sensitivity study is run. */
export interface SensitivityOptions<In, Out> extends StudyOptions {
  /** Values of the result, by path; every number outside its lists where left out. */
  readonly outputs?: readonly PathTo<Out, "number">[]
  /** Which inputs, or how they are spread; all numbers that the base gives where left out. Without a spread of its own, a value goes a tenth of itself up and down; zero and a temperature, a tenth of their usual range. */
  readonly vary?: readonly PathTo<In, "number">[] | Spreads<In>
  /** Inputs drawn for each of the values varied: 512 where left out; at 0 only slopes are told. */
  readonly samples?: number
  /** Draws other samples. */
  readonly seed?: number
}

/** An estimate with its 95 % confidence interval. */
export interface Estimate {
  readonly value: number
  readonly low: number
  readonly high: number
}

/** What one input does to one value of the result. */
export interface Influence {
  readonly path: string
  readonly label: string
  /** The input's own value, in SI. */
  readonly value: number
  /** Between which values it was varied. */
  readonly low: number
  readonly high: number
  /** Change of the result for each unit of the input, in SI, at the base; null where the base or what lies beside it has no answer. */
  readonly slope: number | null
  /** Per cent of the result for each per cent of the input; null where either is zero, or has a zero of no meaning (°C). */
  readonly elasticity: number | null
  /** Whether the slope is the same to both sides; where it is not, a kink or a jump is near. */
  readonly isSmooth: boolean | null
  /** Share of the variance that would go if this input alone were known. */
  readonly first: Estimate | null
  /** Share of the variance that would stay if all others were known: what it does together with others included. */
  readonly total: Estimate | null
  /** In words: what a handy step here costs. */
  readonly sentence: string
}

/** What moves one value of the result, the strongest first. */
export interface OutputSensitivity {
  readonly path: string
  readonly label: string
  readonly kind: Asked["kind"]
  /** At the base, in SI; null where it has no such value. */
  readonly value: number | null
  /** Over the samples; null without them, and the standard deviation too. */
  readonly mean: number | null
  readonly deviation: number | null
  readonly inputs: readonly Influence[]
  readonly sentence: string
}

/** Answer of {@link sensitivity}. */
export interface Sensitivity {
  readonly outputs: readonly OutputSensitivity[]
  /** Inputs tried. */
  readonly tried: number
  /** Samples that entered the shares: those for which every mixture has an answer, for the first value of the result. */
  readonly entered: number
  readonly samples: number
  /** Why inputs had no answer, the most frequent first. */
  readonly refused: readonly Refusal[]
}

/** Sets of samples, each scrambled on its own: how they differ tells how sure the shares are. */
const SETS = 8

/** A value that goes a tenth of itself up and down, zero and a temperature a tenth of what is usual, within its field's limits. */
function tenth(number: NumberPlace, field: AnyField): SpreadPlace {
  const at = number.value as number
  const [from, to] = number.typical ?? [number.low, number.high]
  // a tenth of a temperature would hang on where its zero lies
  const own = number.kind === "temperature" ? 0 : Math.abs(at) / 10
  const half = number.whole ? Math.max(1, Math.round(own)) : own || (to - from) / 10
  const inner = number.whole ? 1 : 0
  const low = Math.max(number.allowsLow ? number.low : number.low + inner, at - half)
  const high = Math.min(number.allowsHigh ? number.high : number.high - inner, at + half)
  return { ...number, field, spread: { type: "uniform", low, high }, box: [low, high] }
}

function readVary(solver: AnySolver, si: object, vary: unknown): Found<readonly SpreadPlace[]> {
  if (vary === undefined) {
    const given = placesIn(solver, si)
      .filter(isNumberPlace)
      .filter(({ value }) => value !== null)
    const places = given.flatMap((number) => {
      const at = numberAt(solver, si, number.path, [])
      return at.ok ? [tenth({ ...at.value.number, label: number.label }, at.value.field)] : []
    })
    return { ok: true, value: places.filter(({ box: [low, high] }) => high > low) }
  }
  const fault = (expected: string): Found<never> => ({ ok: false, issues: [issue("wrong-type", ["vary"], shown(vary), expected)] })
  if (typeof vary !== "object" || vary === null) return fault("paths, or spreads by path")
  const entries: readonly (readonly [unknown, unknown])[] = Array.isArray(vary)
    ? (vary as readonly unknown[]).map((path) => [path, undefined])
    : Object.entries(vary)
  if (entries.length === 0) return fault("at least 1 path of the input")
  if (new Set(entries.map(([path]) => path)).size < entries.length) return fault("each path once")
  const read = entries.map(([path, spread], i): Found<SpreadPlace> => {
    const where = Array.isArray(vary) ? ["vary", i] : ["vary", String(path)]
    if (spread !== undefined) return readSpread(solver, si, path as string, spread, where)
    const at = numberAt(solver, si, path, where)
    if (!at.ok) return at
    if (at.value.number.value !== null) return { ok: true, value: tenth(at.value.number, at.value.field) }
    return readSpread(solver, si, path as string, "± 0", where)
  })
  const issues: readonly Issue[] = read.flatMap((one) => (one.ok ? [] : one.issues))
  return issues.length > 0 ? { ok: false, issues } : { ok: true, value: read.flatMap((one) => (one.ok ? [one.value] : [])) }
}

/**
 * What moves a result: for each input the slope and the elasticity at the base, and over the ranges the shares of the variance it accounts for,
 * alone and together with others; ranked, and in words.
 *
 * @param base - an input, quantities in any unit
 * @throws InputError naming every fault of the arguments (the promise is rejected with it)
 * @example
 * ```ts
 * import { sensitivity } from 'alula/study'
 * import { voltageDrop } from 'alula/wire'
 * const run = { current: '4 A', length: '3 m', awg: 20, sourceVoltage: '12 V' } as const
 * const moved = await sensitivity(voltageDrop, run, { outputs: ['drop'], vary: ['length', 'current'] })
 * moved.outputs[0].inputs.length // => 2
 * moved.outputs[0].inputs.find((input) => input.path === 'current').elasticity // => 1
 * ```
 */
export async function sensitivity<In, Out>(
  solver: Solver<In, Out>,
  base: NoInfer<In>,
  options: SensitivityOptions<In, Out> = {},
): Promise<Sensitivity> {
  const asked = solver as unknown as AnySolver
  const read = new Arguments("sensitivity", asked, base)
  const outputs = read.take(readAsked(asked, options.outputs, ["outputs"]), [])
  const places = read.take(readVary(asked, read.base, options.vary), [])
  const wanted = read.number("samples", options.samples, 512, 0, 1_000_000)
  const seed = read.number("seed", options.seed, 1, 0, 2 ** 31 - 1)
  read.rules(
    places,
    places.map((one) => drawn(one, 0.5)),
    ["vary"],
  )
  read.done()

  const width = outputs.length
  const size = Math.ceil(wanted / SETS)
  const runner = new Runner(asked, options)
  const bench = new Bench({ base: read.base, vary: places, outputs }, runner)
  const slopes = await slopesOf(bench, places, width)
  const drawnValues = size > 0 ? await samplesOf(bench, places, width, size, seed) : null
  runner.report(true)

  const entered: number[] = []
  const named = withNames(places)
  const told = outputs.map((output, k): OutputSensitivity => {
    const { base: at, slope, isSmooth } = slopes(k)
    const indices = drawnValues?.(k) ?? null
    entered.push(indices?.whole.rows ?? 0)
    const value = Number.isNaN(at) ? null : at
    const inputs = named.map((input, j) => influence(input, output, value, slope[j] as number, isSmooth[j] ?? null, indices, j))
    inputs.sort((a, b) => (b.total?.value ?? 0) - (a.total?.value ?? 0) || Math.abs(b.elasticity ?? 0) - Math.abs(a.elasticity ?? 0))
    const { path, label, kind } = output
    const whole = indices?.whole
    const isSpread = whole !== undefined && whole.rows > 1 && Number.isFinite(whole.mean)
    return {
      path,
      label,
      kind,
      value,
      mean: isSpread ? whole.mean : null,
      deviation: isSpread ? Math.sqrt(whole.variance) : null,
      inputs,
      sentence: strongest(output, inputs, whole ?? null, SETS * size),
    }
  })
  return { outputs: told, tried: bench.tried, entered: entered[0] ?? 0, samples: SETS * size, refused: bench.refused }
}

/** Labels that several inputs share are told apart by their paths. */
function withNames(places: readonly SpreadPlace[]): readonly SpreadPlace[] {
  const isShared = ({ label, path }: SpreadPlace) => places.some((one) => one.label === label && one.path !== path)
  return places.map((one) => (isShared(one) ? { ...one, label: `${one.label} (${one.path})` } : one))
}

/** Shares of one output: of all samples, and of each set alone. */
interface Shares {
  readonly whole: VarianceIndices
  readonly sets: readonly VarianceIndices[]
}

async function samplesOf(bench: Bench, places: readonly SpreadPlace[], width: number, size: number, seed: number) {
  const n = places.length
  const block = n + 2
  const rows = SETS * size
  const values = new Float64Array(rows * block * width)
  const point = new Float64Array(2 * n)
  for (let set = 0; set < SETS; set++) {
    const next = sobolPoints(2 * n, seed * SETS + set)
    const tried: number[][] = []
    for (let i = 0; i < size; i++) {
      next(point)
      const a = places.map((one, j) => drawn(one, point[j] as number))
      const b = places.map((one, j) => drawn(one, point[n + j] as number))
      tried.push(a, b)
      for (let j = 0; j < n; j++) tried.push(a.map((v, k) => (k === j ? (b[k] as number) : v)))
    }
    values.set((await bench.try(tried)).values, set * size * block * width)
  }
  return (k: number): Shares => {
    const column = (of: number) => Float64Array.from({ length: rows }, (_, i) => values[(i * block + of) * width + k] as number)
    const [a, b] = [column(0), column(1)]
    const mixed = places.map((_, j) => column(2 + j))
    return {
      whole: varianceIndices(a, b, mixed),
      sets: Array.from({ length: SETS }, (_, set) => varianceIndices(a, b, mixed, set * size, (set + 1) * size)),
    }
  }
}

/** An estimate and how far the sets differ in it; null where it is none, or too few of them tell how sure it is. */
function estimate(whole: number, sets: readonly number[]): Estimate | null {
  if (!Number.isFinite(whole)) return null
  const good = sets.filter(Number.isFinite)
  if (good.length < 2) return null
  const mean = good.reduce((sum, v) => sum + v, 0) / good.length
  const spread = Math.sqrt(good.reduce((sum, v) => sum + (v - mean) ** 2, 0) / (good.length - 1) / good.length)
  const half = studentQuantile(0.975, good.length - 1) * spread
  return { value: whole, low: whole - half, high: whole + half }
}

function influence(
  input: SpreadPlace,
  output: Asked,
  at: number | null,
  slope: number,
  isSmooth: boolean | null,
  shares: Shares | null,
  j: number,
): Influence {
  const { path, label, box, kind } = input
  const value = input.value ?? (box[0] + box[1]) / 2
  const known = Number.isNaN(slope) ? null : slope
  const hasZero = kind !== "temperature" && output.kind !== "temperature"
  const elasticity = known === null || at === null || at === 0 || value === 0 || !hasZero ? null : (known * value) / at
  const share = (of: "first" | "total") =>
    shares && shares.whole.variance > 0
      ? estimate(
          shares.whole[of][j] as number,
          shares.sets.map((set) => set[of][j] as number),
        )
      : null
  return {
    path,
    label,
    value,
    low: box[0],
    high: box[1],
    slope: known,
    elasticity,
    isSmooth: known === null ? null : isSmooth,
    first: share("first"),
    total: share("total"),
    sentence: cost(input, output, value, known, isSmooth),
  }
}

const unitSize = (kind: Parameters<typeof factorOf>[0], unit: string): number => {
  const factor = factorOf(kind, unit)
  return factor ? factor[0] / factor[1] : 1
}

/** What a handy step of the input costs, in words. */
function cost(input: SpreadPlace, output: Asked, value: number, slope: number | null, isSmooth: boolean | null): string {
  const names = { input: inSentence(input.label), output: inSentence(output.label) }
  if (slope === null) return fill("Beside this {input} there is no {output} to tell.", names)
  if (slope === 0) return fill("A little more or less {input} leaves {output} as it is.", names)
  const { step, unit } = input.whole ? { step: 1, unit: undefined } : handyStep(input.kind, value, unitSize)
  const change = slope * step
  const template = `${place("step", differenceOf(input.kind), unit)} more {input}: ${place("change", differenceOf(output.kind))} ${change > 0 ? "more" : "less"} {output}${
    isSmooth === false ? ", another amount the other way: there is a kink here" : ""
  }.`
  return fill(template, { ...names, step, change: Math.abs(change) })
}

function strongest(output: Asked, inputs: readonly Influence[], whole: VarianceIndices | null, samples: number): string {
  const [first, second] = inputs
  const label = opening(output.label)
  if (!first) return fill("{label}: there is no number among the inputs to vary.", { label })
  if (whole === null) return fill("{label}: no samples were drawn, so the slopes alone are told.", { label })
  const { rows, variance } = whole
  const few =
    rows < samples ? fill(" Only {rows} of {samples} samples have an answer throughout; these alone count here.", { rows, samples }) : ""
  return moved() + few

  function moved(): string {
    if (rows > 1 && variance === 0) return fill("{label} does not vary with these inputs.", { label })
    if (!first?.total || !(first.total.value > 0)) return fill("{label}: too few samples have an answer to tell what moves it.", { label })
    const share = Math.min(1, first.total.value)
    if (!second?.total || second.total.value < 0.05)
      return fill("{label} is moved by {first} almost alone ({share ratio %} of what it varies).", {
        label,
        first: inSentence(first.label),
        share,
      })
    return fill("{label} is moved most by {first} ({share ratio %} of what it varies), then by {second} ({next ratio %}).", {
      label,
      first: inSentence(first.label),
      second: inSentence(second.label),
      share,
      next: Math.min(1, second.total.value),
    })
  }
}
