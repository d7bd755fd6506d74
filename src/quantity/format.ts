import { type Kind, kinds } from "./kinds.js"
import { factorOf, fromSi } from "./parse.js"

/** A number with `digits` significant digits, no trailing zeros, never `-0`. */
export function formatNumber(value: number, digits = 4): string {
  if (value === 0) return "0"
  const size = Math.abs(value)
  if (size >= 1e7 || size < 1e-4) return Number(value.toPrecision(digits)).toExponential()
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
 * @param digits - significant digits, 4 by default
 */
export function formatQuantity(kind: Kind, value: number, unit?: string, digits = 4): string {
  const shown = unit ?? readableUnit(kind, value)
  if (shown === "") return formatNumber(value, digits)
  const factor = factorOf(kind, shown)
  if (!factor) throw new TypeError(`${kind} has no unit ${shown}`)
  const number = formatNumber(fromSi(value, factor), digits)
  return shown === "°" || shown === "%" ? `${number}${shown}` : `${number} ${shown}`
}
