import { type Factor, type Kind, kinds, type UnitsOf } from "./kinds.js"

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

const NUMBER = String.raw`[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?`
// the unit is what follows, cut off and trimmed: matching it here as well takes a long text cubic time
const AMOUNT = new RegExp(`^\\s*(${NUMBER})(?:(?:\\s+(\\d+))?\\s*/\\s*(\\d+))?`)

function amount(first: string, middle: string | undefined, over: string | undefined): number {
  if (over === undefined) return Number(first)
  if (middle === undefined) return Number(first) / Number(over)
  const whole = Number(first)
  const part = Number(middle) / Number(over)
  return whole < 0 || Object.is(whole, -0) ? whole - part : whole + part
}

/**
 * Reads a value of `kind` as a bare SI number.
 *
 * @param kind - the kind expected
 * @param value - a bare SI number, a string with a unit (fractions allowed), or a unitsnet-js object
 * @returns the SI number, or why it can't be read
 */
export function readQuantity(kind: Kind, value: unknown): number | ReadFault {
  const spec = kinds[kind]
  const expected = `${kind}: a number in ${spec.si || "1"}, or a string with one of ${Object.keys(spec.units).join(", ")}`
  if (typeof value === "number") return Number.isFinite(value) ? value : { code: "not-finite", expected }
  if (typeof value === "string") {
    const match = AMOUNT.exec(value)
    if (!match) return { code: "not-a-number", expected }
    const number = amount(match[1] as string, match[2], match[3])
    if (!Number.isFinite(number)) return { code: "not-finite", expected }
    const factor = factorOf(kind, value.slice(match[0].length).trim())
    return factor ? toSi(number, factor) : { code: "wrong-unit", expected }
  }
  if (typeof value === "object" && value !== null && spec.net) {
    const reading: unknown = (value as Readonly<Record<string, unknown>>)[spec.net]
    // a unitsnet-js Temperature also reads in kelvins: the offset kind is not a difference
    const isOffset = kind === "temperatureDifference" && "SolarTemperatures" in value
    if (typeof reading === "number" && !isOffset) return Number.isFinite(reading) ? reading : { code: "not-finite", expected }
  }
  return { code: "wrong-type", expected }
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
