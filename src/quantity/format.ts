import { kinds } from "./kinds.js"
import { factorOf, fromSi } from "./parse.js"
import type { Kind } from "./units-of.js"

/**
 * What is shown to people has three figures: what they measure and buy is known no better. This is the one place that decides
 * it, for printed results, messages, reports and pictures; only what must be exact (limits, a worked formula) asks for more.
 */
const FIGURES = 3

const isWhole = (value: number): boolean => Math.abs(value - Math.round(value)) <= 1e-9 * Math.abs(value)

/** A whole number stands as it is: it is a count, or was given so. */
function shownNumber(value: number): string {
  return String(isWhole(value) ? Math.round(value) : Number(value.toPrecision(FIGURES)))
}

/** Per cent: whole ones from 5 % up and two figures below, since a share is rarely known to a tenth of a per cent; halves stand. */
function shownPercent(value: number): string {
  if (isWhole(2 * value)) return String(Math.round(2 * value) / 2)
  return String(Math.abs(value) < 5 ? Number(value.toPrecision(2)) : Math.round(value))
}

/**
 * A number as people read it: three figures, a whole one as it is, no trailing zeros, never `-0`.
 *
 * @param value - the number
 * @param digits - significant digits, where it must be more exact or less
 */
export function formatNumber(value: number, digits?: number): string {
  if (value === 0) return "0"
  const size = Math.abs(value)
  if (size >= 1e7 || size < 1e-4) return Number(value.toPrecision(digits ?? FIGURES)).toExponential()
  if (digits === undefined) return shownNumber(value)
  if (size >= 10 ** digits) return String(Math.round(value))
  return String(Number(value.toPrecision(digits)))
}

/** The unit a maker would read `si` (a value of `kind`) in. */
export function readableUnit(kind: Kind, value: number): string {
  const { show } = kinds[kind]
  const size = Math.abs(value)
  let unit: string = show[0]?.[0] ?? ""
  // exact zero reads best in the unit most values of the kind are shown in
  if (size === 0) return show[show.length > 2 ? 1 : show.length - 1]?.[0] ?? unit
  for (const [candidate, from] of show) if (size >= from) unit = candidate
  return unit
}

/**
 * Formats an SI number of `kind` for a reader: `formatQuantity('length', 0.45)` is `'450 mm'`.
 *
 * @param kind - kind of quantity
 * @param value - SI number
 * @param unit - unit to show; chosen by magnitude when left out
 * @param digits - significant digits, where it must be more exact or less than people read
 */
export function formatQuantity(kind: Kind, value: number, unit?: string, digits?: number): string {
  const shown = unit ?? readableUnit(kind, value)
  if (shown === "") return formatNumber(value, digits)
  const factor = factorOf(kind, shown)
  if (!factor) throw new TypeError(`${kind} has no unit ${shown}`)
  const inUnit = fromSi(value, factor)
  const number = shown === "%" && digits === undefined ? shownPercent(inUnit) : formatNumber(inUnit, digits)
  return shown === "°" ? `${number}${shown}` : `${number} ${shown}`
}
