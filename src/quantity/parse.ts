import { kinds } from "./kinds.js"
import type { Factor, Kind, UnitsOf } from "./units-of.js"
import { compounds, unitOfWord } from "./words.js"

/** Why a value could not be read as a quantity. */
export interface ReadFault {
  readonly code: "wrong-type" | "not-a-number" | "not-finite" | "wrong-unit"
  readonly expected: string
}

const signs: Readonly<Record<string, string>> = { "²": "2", "³": "3", "⁴": "4", µ: "u", μ: "u", Ω: "ohm", "°": "deg", "·": " " }

/** A unit in plain letters and digits: `mm²` is `mm2`, `W/(m·K)` is `W/m/K`, `°C` is `degC`. */
export function plainUnit(unit: string): string {
  return unit.replace(/[²³⁴µμΩ°·]/g, (sign) => signs[sign] as string).replace(/\/\((\S+) (\S+)\)/, "/$1/$2")
}

/** The factor of `unit` within `kind`, or undefined where the kind has no such unit. */
export function factorOf(kind: Kind, unit: string): Factor | undefined {
  const units: Readonly<Record<string, Factor>> = kinds[kind].units
  const plain = plainUnit(unit)
  return Object.hasOwn(units, plain) ? units[plain] : undefined
}

/** `si = value · num / den + add`: multiply first, then divide, so that exact ratios stay exact. */
export function toSi(value: number, [num, den, add = 0]: Factor): number {
  return (value * num) / den + add
}

/** Inverse of {@link toSi}. */
export function fromSi(si: number, [num, den, add = 0]: Factor): number {
  return ((si - add) * den) / num
}

/** Longest text that is read as a quantity: the longest sensible one has about thirty characters. */
export const LONGEST = 100

const vulgar: Readonly<Record<string, string>> = {
  "½": "1/2",
  "¼": "1/4",
  "¾": "3/4",
  "⅓": "1/3",
  "⅔": "2/3",
  "⅛": "1/8",
  "⅜": "3/8",
  "⅝": "5/8",
  "⅞": "7/8",
}

/** A text with the signs of fractions and minus written out: `1½ in` is `1 1/2 in`. */
function spelled(text: string): string {
  return text
    .replace(/([\d.]?)\s*([½¼¾⅓⅔⅛⅜⅝⅞])/g, (_, before: string, sign: string) => `${before}${before ? " " : ""}${vulgar[sign]}`)
    .replace(/(\d\s*)⁄(\s*\d)/g, "$1/$2")
    .replace(/−/g, "-")
}

const NUMBER = String.raw`[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:[eE][+-]?\d+)?`
// the unit is what follows, cut off and trimmed: matching it here as well takes a long text cubic time
const AMOUNT = new RegExp(`^\\s*(${NUMBER})(?:(?:\\s+(\\d+))?\\s*/\\s*(\\d+))?`)

function amount(first: string, middle: string | undefined, over: string | undefined): number {
  if (over === undefined) return Number(first)
  if (middle === undefined) return Number(first) / Number(over)
  const whole = Number(first)
  const part = Number(middle) / Number(over)
  return whole < 0 || Object.is(whole, -0) ? whole - part : whole + part
}

/** `2 ft 3 in`, `1 h 30 min`: amounts in ever smaller units; null where the text is not of that form. */
function compound(kind: Kind, text: string): number | null {
  const order = compounds[kind]
  if (!order) return null
  const whole = /^\s*(-?)\s*(.*)$/s.exec(text) as RegExpExecArray
  let rest = whole[2] as string
  let sum = 0
  let last = -1
  while (rest !== "") {
    const match = AMOUNT.exec(rest)
    const unit = match && /^\s*([a-zA-Z]+|['"′″])\s*/.exec(rest.slice(match[0].length))
    if (!match || !unit || /^\s*[+-]/.test(rest)) return null
    const token = unitOfWord(unit[1] as string)
    const place = order.indexOf(token)
    if (place <= last) return null
    last = place
    sum += toSi(amount(match[1] as string, match[2], match[3]), factorOf(kind, token) as Factor)
    rest = rest.slice(match[0].length + unit[0].length)
  }
  return whole[1] === "-" ? -sum : sum
}

/** What a quantity of a kind can be, for the message of one that could not be read. */
function expectedOf(kind: Kind): string {
  const spec = kinds[kind]
  return `${kind}: a number in ${spec.si || "1"}, or a string with one of ${Object.keys(spec.units).join(", ")}`
}

/** What to write instead, where a text is nearly a quantity. */
function better(kind: Kind, text: string): string {
  const comma = /^\s*([+-]?\d+),(\d+)(.*)$/s.exec(text)
  if (!comma) return expectedOf(kind)
  const [, whole, part, unit] = comma as unknown as readonly [string, string, string, string]
  const dotted = `'${whole}.${part}${unit}'`
  return part.length === 3
    ? `${dotted} or '${whole}${part}${unit}' (a point for decimals, nothing for thousands)`
    : `${dotted} (a point for decimals)`
}

const fault = (code: ReadFault["code"], kind: Kind): ReadFault => ({ code, expected: expectedOf(kind) })

function readText(kind: Kind, value: string): number | ReadFault {
  if (value.length > LONGEST) return { code: "not-a-number", expected: `${expectedOf(kind)}, in at most ${LONGEST} characters` }
  const text = spelled(value)
  const match = AMOUNT.exec(text)
  if (!match) return fault("not-a-number", kind)
  const number = amount(match[1] as string, match[2], match[3])
  if (!Number.isFinite(number)) return fault("not-finite", kind)
  const unit = text.slice(match[0].length).trim()
  const factor = factorOf(kind, unit) ?? factorOf(kind, unitOfWord(unit))
  const si = factor ? toSi(number, factor) : compound(kind, text)
  if (si === null) return { code: "wrong-unit", expected: better(kind, value) }
  return Number.isFinite(si) ? si : fault("not-finite", kind)
}

/**
 * Reads a value of `kind` as a bare SI number.
 *
 * @param kind - the kind expected
 * @param value - a bare SI number, a string with a unit (fractions, `2 ft 3 in` and unit words allowed), or a unitsnet-js object
 * @returns the SI number, or why it can't be read
 */
export function readQuantity(kind: Kind, value: unknown): number | ReadFault {
  if (typeof value === "number") return Number.isFinite(value) ? value : fault("not-finite", kind)
  if (typeof value === "string") return readText(kind, value)
  const { net } = kinds[kind]
  if (typeof value === "object" && value !== null && net) {
    const reading: unknown = (value as Readonly<Record<string, unknown>>)[net]
    // a unitsnet-js Temperature also reads in kelvins: the offset kind is not a difference
    const isOffset = kind === "temperatureDifference" && "SolarTemperatures" in value
    if (typeof reading === "number" && !isOffset) return Number.isFinite(reading) ? reading : fault("not-finite", kind)
  }
  return fault("wrong-type", kind)
}

/**
 * Reads a quantity as a bare SI number: `si('length', '4 in')` is 0.1016.
 *
 * @throws TypeError when the value is not a quantity of that kind
 */
export function si<K extends Kind>(kind: K, value: unknown): number {
  const read = readQuantity(kind, value)
  if (typeof read === "number") return read
  throw new TypeError(`${String(value)} is not a ${read.expected}`)
}

/** The SI number `value` of `kind` in another unit of that kind: `inUnit('length', 0.1016, 'in')` is 4. */
export function inUnit<K extends Kind>(kind: K, value: number, unit: UnitsOf[K]): number {
  return fromSi(value, factorOf(kind, unit) as Factor)
}
