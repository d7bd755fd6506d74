// How the values of an input are spread: tolerances as drawings write them, or a distribution.
import { type Distribution, normalQuantile, normalShare, quantile } from "../numeric/index.js"
import { type Kind, type Quantity, readQuantity } from "../quantity/index.js"
import { type Issue, issue, type Path } from "../solver/index.js"
import { shown, unknownKey } from "../solver/issue.js"
import type { PathTo, ValueAt } from "./paths.js"
import { type AnySolver, type Found, type Place, placeAt, readAt } from "./place.js"
import { type NumberPlace, numberPlace } from "./places.js"
import { differenceOf } from "./words.js"

/**
 * How one value is spread, quantities in any unit. A text with ± is a tolerance: any value between its ends is as likely as any
 * other (`"120 mm ± 1 mm"`, `"120 mm ± 2 %"`; `"± 1 mm"` is round the base's own value). Where a mean, mode or median is left out,
 * it is the base's own value.
 */
export type Spread<Value = Quantity<Kind> | number> =
  | `${string}±${string}`
  | { readonly type: "uniform"; readonly low: Value; readonly high: Value }
  | { readonly type: "triangular"; readonly low: Value; readonly high: Value; readonly mode?: Value }
  /** The deviation is the standard one, as a quantity of the same kind. */
  | { readonly type: "normal"; readonly deviation: Value | `${number} %`; readonly mean?: Value }
  /** Two thirds lie within `factor` times and a `factor`-th of the median. */
  | { readonly type: "lognormal"; readonly factor: number; readonly median?: Value }

/** Spreads by path of the input. */
export type Spreads<In> = { readonly [P in PathTo<In, "number">]?: Spread<ValueAt<In, P>> }

/** A value of an input and how it is spread, in SI. */
export interface SpreadPlace extends NumberPlace, Pick<Place, "field"> {
  readonly spread: Distribution
  /** Ends between which all of it lies; of a normal or lognormal one, all but 27 in 10 000. */
  readonly box: readonly [low: number, high: number]
}

const found = <T>(value: T): Found<T> => ({ ok: true, value })
const none = <T>(...issues: readonly Issue[]): Found<T> => ({ ok: false, issues })

/** The number at a path of the input, with what its description says of it. */
export function numberAt(solver: AnySolver, si: object, path: unknown, where: Path): Found<Place & { readonly number: NumberPlace }> {
  const place = placeAt(solver, si, path, where)
  if (!place.ok) return place
  const { field, value, keys } = place.value
  if (!("symbol" in field)) return none(issue("wrong-type", where, shown(path), "the path of a number of the input"))
  const number = numberPlace({ path: place.value.path, keys, label: field.label }, field, value as number | null)
  return found({ ...place.value, number })
}

/** A text with a scale of temperature read as a difference on it: `5 °C` is 5 K, `9 °F` as well. */
function temperatureStep(text: unknown): unknown {
  if (typeof text !== "string") return text
  const [full, zero] = [text, text.replace(/^\s*[-+−]?[\d.]+/, "0")].map((one) => readQuantity("temperature", one))
  return typeof full === "number" && typeof zero === "number" ? full - zero : text
}

/** What is read as a difference: a tolerance or a deviation, itself or in per cent of the middle. */
export function readDifference(kind: Kind | "number", given: unknown, middle: number, where: Path): Found<number> {
  const share = typeof given === "string" ? /^\s*(\d+(?:\.\d+)?)\s*%\s*$/.exec(given) : null
  if (share && kind === "temperature")
    return none(
      issue("wrong-type", where, shown(given), "a difference such as 2 °C: a share of a temperature depends on where its zero lies"),
    )
  if (share && kind !== "ratio") return found((Math.abs(middle) * Number(share[1])) / 100)
  const own = differenceOf(kind)
  const value =
    kind === "temperature"
      ? temperatureStep(given)
      : kind === "number" && typeof given === "string" && given.trim() !== ""
        ? Number(given)
        : given
  const read = own === "number" ? value : readQuantity(own as Kind, value)
  if (typeof read === "number" && Number.isFinite(read) && read >= 0) return found(read)
  const expected = typeof read === "object" && read !== null && "expected" in read ? String(read.expected) : "a number"
  return none(issue("wrong-type", where, shown(given), `${expected}, not negative`))
}

/** Reads one spread. */
export function readSpread(solver: AnySolver, si: object, path: string, spread: unknown, where: Path): Found<SpreadPlace> {
  const at = numberAt(solver, si, path, where)
  if (!at.ok) return at
  const { number } = at.value
  const issues: Issue[] = []
  const value = (given: unknown, name?: string): number => {
    const to = name === undefined ? where : [...where, name]
    if (given === undefined) {
      if (number.value !== null) return number.value
      issues.push(issue("missing", to, "nothing", "a value, since the base gives none"))
      return 0
    }
    const read = readAt(at.value, given, to)
    if (read.ok && typeof read.value === "number") return read.value
    issues.push(...(read.ok ? [issue("wrong-type", to, shown(given), "a value")] : read.issues))
    return 0
  }
  const distribution = (): Distribution | null => {
    if (typeof spread === "string") return tolerance(spread)
    if (typeof spread !== "object" || spread === null) {
      issues.push(issue("wrong-type", where, shown(spread), "a tolerance such as '120 mm ± 1 mm', or a distribution"))
      return null
    }
    return described(spread as Readonly<Record<string, unknown>>)
  }
  const tolerance = (text: string): Distribution | null => {
    const parts = text.split(/±|\+\/-/)
    if (parts.length !== 2) {
      issues.push(issue("wrong-type", where, shown(text), "a value and its tolerance, such as '120 mm ± 1 mm'"))
      return null
    }
    const [left, right] = parts as [string, string]
    // a plain number may be written as one
    const said = left.trim() === "" ? undefined : number.kind === "number" || /^[-+]?[\d.]+$/.test(left.trim()) ? Number(left) : left.trim()
    const middle = value(said)
    const half = readDifference(number.kind, right.trim(), middle, where)
    if (!half.ok) {
      issues.push(...half.issues)
      return null
    }
    const [low, high] = [middle - half.value, middle + half.value]
    for (const end of [low, high]) value(end)
    return { type: "uniform", low, high }
  }
  const described = (given: Readonly<Record<string, unknown>>): Distribution | null => {
    const names = {
      uniform: ["low", "high"],
      triangular: ["low", "high", "mode"],
      normal: ["deviation", "mean"],
      lognormal: ["factor", "median"],
    }
    const type = given.type as keyof typeof names
    if (typeof type !== "string" || !Object.hasOwn(names, type)) {
      issues.push(issue("not-a-choice", [...where, "type"], shown(given.type), `one of ${Object.keys(names).join(", ")}`))
      return null
    }
    for (const name of Object.keys(given))
      if (name !== "type" && !names[type].includes(name)) issues.push(unknownKey(where, name, names[type]))
    const needed = (name: string) => {
      if (given[name] === undefined) issues.push(issue("missing", [...where, name], "nothing", "a value"))
      return given[name] === undefined ? 0 : value(given[name], name)
    }
    switch (type) {
      case "uniform":
      case "triangular": {
        const [low, high] = [needed("low"), needed("high")]
        if (issues.length === 0 && low > high)
          issues.push(issue("inconsistent", where, `low ${shown(given.low)}`, `no more than high ${shown(given.high)}`))
        if (type === "uniform") return { type, low, high }
        const mode = value(given.mode, "mode")
        if (issues.length === 0 && (mode < low || mode > high))
          issues.push(issue("inconsistent", [...where, "mode"], shown(given.mode ?? number.value), "a value between low and high"))
        return { type, low, mode, high }
      }
      case "normal": {
        const mean = value(given.mean, "mean")
        const deviation = readDifference(number.kind, given.deviation, mean, [...where, "deviation"])
        if (deviation.ok) return { type, mean, deviation: deviation.value }
        issues.push(...deviation.issues)
        return null
      }
      case "lognormal": {
        const median = value(given.median, "median")
        if (typeof given.factor !== "number" || !(given.factor >= 1) || !Number.isFinite(given.factor))
          issues.push(issue("wrong-type", [...where, "factor"], shown(given.factor), "a number of at least 1"))
        if (issues.length === 0 && !(median > 0)) issues.push(issue("too-small", [...where, "median"], shown(median), "a value above 0"))
        return { type, median, factor: given.factor as number }
      }
    }
  }
  const read = distribution()
  if (issues.length > 0 || read === null) return none(...issues)
  return found({ ...number, field: at.value.field, spread: read, box: boxOf(read) })
}

/** Three standard deviations to both sides, as a process is commonly held to. */
const TAIL = 0.00135

function boxOf(spread: Distribution): readonly [number, number] {
  if ("low" in spread) return [spread.low, spread.high]
  return [quantile(spread, TAIL), quantile(spread, 1 - TAIL)]
}

/** Spreads by path. */
export function readSpreads(solver: AnySolver, si: object, spreads: unknown, where: Path): Found<readonly SpreadPlace[]> {
  if (typeof spreads !== "object" || spreads === null || Array.isArray(spreads) || Object.values(spreads).every((one) => one === undefined))
    return none(issue("wrong-type", where, shown(spreads), "at least one spread by path of the input"))
  const read = Object.entries(spreads)
    .filter(([, spread]) => spread !== undefined)
    .map(([path, spread]) => readSpread(solver, si, path, spread, [...where, path]))
  const issues = read.flatMap((one) => (one.ok ? [] : one.issues))
  return issues.length ? none(...issues) : found(read.flatMap((one) => (one.ok ? [one.value] : [])))
}

/** The value that a share of a spread lies below, whole where its field asks for whole numbers. */
export function drawn({ spread, whole }: SpreadPlace, share: number): number {
  // each whole number as likely as any other, both ends too, which rounding would halve
  if (whole && spread.type === "uniform") return Math.min(spread.high, spread.low + Math.floor(share * (spread.high - spread.low + 1)))
  const value = quantile(spread, share)
  return whole ? Math.round(value) : value
}

/** Shares with the correlations of a lower triangle between their normal scores put in. */
export function correlate(shares: Float64Array, lower: readonly (readonly number[])[]): void {
  const scores = lower.map((_, i) => normalQuantile(shares[i] as number))
  lower.forEach((row, i) => {
    let sum = 0
    for (let j = 0; j <= i; j++) sum += (row[j] as number) * (scores[j] as number)
    // a share of exactly nothing or all has no place in a distribution with tails
    shares[i] = Math.min(1 - 2 ** -53, Math.max(Number.MIN_VALUE, normalShare(sum)))
  })
}
