// What a description says of a field, in a few words: the tail of its comment, a line of a list of symbols, a row of a page on a solver.
import { factorOf, formatNumber, fromSi, type Kind, kinds, readableUnit, si } from "../quantity/index.js"
import type { AnyField, AnyOutField, OutQuantity } from "../solver/index.js"

type Numeric = Extract<AnyField, { symbol: string }>
interface Amount {
  readonly number: string
  readonly unit: string
}

const DIGITS = 6
const raised: Readonly<Record<string, string>> = { "2": "²", "3": "³", "4": "⁴" }

/** A unit as a reader knows it: `mm2` is `mm²`, `ohm m` is `Ω m`, `degC` is `°C`. */
function unitText(unit: string): string {
  return unit
    .replace(/([a-zA-Z])([234])/g, (_, letter: string, power: string) => `${letter}${raised[power]}`)
    .replace(/ohm/g, "Ω")
    .replace(/deg(?=[CF])/g, "°")
    .replace(/\bdeg\b/g, "°")
    .replace(/\bu(?=[a-zA-ZΩ])/g, "µ")
    .replace(/delta[CF]/, "K")
    .replace(/^(\S+?)\/(\S+?)\/(\S+)$/, "$1/($2·$3)")
}

/** The unit that a result's bare number is in. */
function siUnit(kind: Kind): string {
  return kind === "ratio" ? "as a fraction" : unitText(kinds[kind].si)
}

const numberText = (value: number): string => formatNumber(value, DIGITS).replace("e+", "e").replace("-", "−")

/** A limit or a default in the unit it was written in, a bare number in the one it reads best in. */
function amountOf(kind: Kind | "number", value: unknown, show?: string): Amount {
  if (kind === "number") return { number: numberText(value as number), unit: "" }
  const written = typeof value === "string" ? /^\s*[-+−\d.\s/]*(?:e[-+]?\d+)?\s*(\S.*?)\s*$/.exec(value)?.[1] : undefined
  const number = si(kind, value as never)
  // SI itself where the readable unit makes a round number long
  const readable = show ?? readableUnit(kind, number)
  const inUnit = (unit: string) => (unit === "" ? number : fromSi(number, factorOf(kind, unit) ?? [1, 1]))
  const unit = written ?? (Math.abs(inUnit(readable)) >= 1000 && Math.abs(number) < 1000 ? kinds[kind].si : readable)
  return { number: numberText(inUnit(unit)), unit: unitText(unit) }
}

const amountText = ({ number, unit }: Amount): string =>
  unit === "" || number === "0" ? number : unit === "°" ? `${number}${unit}` : `${number} ${unit}`

/** The unit a field is shown in: the one it names, and for a ratio with a limit or default in per cent that. */
function unitOf(field: Numeric): string | undefined {
  if (field.kind === "number") return undefined
  const { unit, min, max, above, below, default: given } = field as Extract<AnyField, { unit?: string }>
  return unit ?? ([min, max, above, below, given].some((value) => /%$/.test(String(value))) ? "%" : undefined)
}

/** Both limits, the unit named once where it is the same. */
function rangeText(field: Numeric): string | undefined {
  const limit = (value: unknown) => (value === undefined ? undefined : amountOf(field.kind, value, unitOf(field)))
  const low = limit(field.min ?? field.above)
  const high = limit(field.max ?? field.below)
  const over = field.above === undefined ? "" : "above "
  const under = field.below === undefined ? "" : "below "
  const whole = field.kind === "number" && field.whole ? "whole " : ""
  if (low && high) {
    const shared = low.unit === high.unit || low.number === "0"
    const unit = high.number === "0" ? low.unit : high.unit
    const first = shared && unit !== "°" ? low.number : amountText(low)
    const last = high.number === "0" && unit ? (unit === "°" ? "0°" : `0 ${unit}`) : amountText(high)
    return `${whole}${over}${first} to ${under}${last}`
  }
  if (low) return `${whole}${over || "at least "}${amountText(low)}`
  if (high) return `${whole}${under || "at most "}${amountText(high)}`
  return whole.trim() || undefined
}

function defaultText(field: AnyField): string | undefined {
  const given: unknown = field.default
  if (given === undefined) return undefined
  if (given === null) return "optional"
  if (Array.isArray(given) && given.length === 0) return "default none"
  if (typeof given === "boolean") return `default ${given ? "yes" : "no"}`
  if (given === "") return "default empty"
  if ("symbol" in field) return `default ${amountText(amountOf(field.kind, given, unitOf(field as Numeric)))}`
  if (typeof given === "object") return "optional, with a default of its own"
  return `default ${String(given)}`
}

const WORDS_SHOWN = 8

function wordsText(options: Readonly<Record<string, unknown>>): string {
  const words = Object.keys(options)
  return words.length > WORDS_SHOWN ? `one of ${words.length} words` : words.join(", ").replace(/, (?=[^,]*$)/, " or ")
}

function countText(what: string, { min, max }: { readonly min?: number; readonly max?: number }, unit = ""): string {
  if (min !== undefined && max !== undefined) return `${what} of ${min === max ? min : `${min} to ${max}`}${unit}`
  if (max !== undefined) return `${what} of at most ${max}${unit}`
  return min === undefined ? what : `${what} of at least ${min}${unit}`
}

function each(of: AnyField | AnyOutField, value: string | undefined): string {
  return of.kind === "group" || of.kind === "variant"
    ? ""
    : `, each ${["symbol" in of ? of.symbol : undefined, value].filter(Boolean).join(", ")}`
}

function valueText(field: AnyField): string | undefined {
  switch (field.kind) {
    case "choice":
      return wordsText(field.options)
    case "flag":
      return "yes or no"
    case "list":
      return `${countText("list", field)}${each(field.of, valueText(field.of))}`
    case "text":
      return countText("text", field, " characters")
    case "variant":
      return `by its type: ${wordsText(field.of)}`
    default:
      return "symbol" in field ? rangeText(field as Numeric) : (field as AnyField).kind
  }
}

/** What a description says of a field, in three parts; a part is left out where there is nothing to say. */
export interface Facts {
  readonly label: string
  readonly symbol: string | undefined
  readonly value: string | undefined
  readonly given: string | undefined
}

/** Symbol, limits and default of an input. */
export function inputFacts(field: AnyField): Facts {
  return { label: field.label, symbol: "symbol" in field ? field.symbol : undefined, value: valueText(field), given: defaultText(field) }
}

/** `[R_1; 0 to 100 Ω; default 5 mΩ]`. */
export const tailOf = ({ symbol, value, given }: Facts): string => `[${[symbol, value, given].filter(Boolean).join("; ")}]`

function resultText(field: AnyOutField): string | undefined {
  switch (field.kind) {
    case "flag":
      return "yes or no"
    case "list":
      return `list${each(field.of, resultText(field.of))}`
    case "number":
      return field.symbol ? undefined : "number"
    default:
      return field.kind in kinds ? siUnit(field.kind as Kind) : field.kind
  }
}

/** Both ends of a result's band; its type is shared by all solvers, so that only the band's own comment can tell them. */
export function endsOf(field: AnyOutField): readonly [low: OutQuantity, high: OutQuantity] | null {
  if (field.kind !== "group") return null
  const { low, high, ...others } = field.fields
  if (!low || !high || Object.keys(others).length > 0) return null
  const isNumeric = (end: AnyOutField): end is OutQuantity => end.kind === "number" || end.kind in kinds
  return isNumeric(low) && isNumeric(high) ? [low, high] : null
}

/** Symbol and SI unit of a result. */
export function resultFacts(field: AnyOutField): Facts {
  const ends = endsOf(field)
  if (ends) {
    const symbols = ends.flatMap(({ symbol }) => symbol ?? [])
    const value = resultText(ends[0])
    return { label: field.label, symbol: symbols.length ? symbols.join(" to ") : undefined, value, given: undefined }
  }
  return { label: field.label, symbol: "symbol" in field ? field.symbol : undefined, value: resultText(field), given: undefined }
}

/** Unit of a step's value, in brackets; empty for a plain number. */
export function stepTail(kind: Kind | "number" | undefined): string {
  if (kind === undefined || kind === "number" || kind === "ratio") return ""
  return ` [${unitText(kinds[kind].si)}]`
}
