// How the values of a document are stepped: sizes that are sold, or a share or an amount more or less.
import { formatNumber, formatQuantity, type Kind, readQuantity } from "../../quantity/index.js"

/** Steps from a value on: along sizes that are sold, by shares of itself, or by amounts. */
export type Steps =
  | { readonly sizes: readonly number[]; readonly way: "up" | "down" | "both"; readonly reach?: number }
  | { readonly times: readonly number[] }
  | { readonly by: readonly number[] }

/** Sizes that are tried on each side, unless a row says otherwise. */
const REACH = 6

const two = (value: number) => Number(value.toPrecision(2))

/** Values on both sides of one, the nearest first. */
export function stepped(value: number, steps: Steps, whole = false): readonly (readonly number[])[] {
  const tiny = 1e-9 * Math.abs(value)
  const sides = (list: readonly number[]): readonly [readonly number[], readonly number[]] => [
    list.filter((one) => one > value + tiny).sort((a, b) => a - b),
    list.filter((one) => one < value - tiny).sort((a, b) => b - a),
  ]
  if ("times" in steps) return sides([...new Set(steps.times.map((share) => (whole ? Math.round(value * share) : two(value * share))))])
  if ("by" in steps) return sides(steps.by.map((amount) => Number((value + amount).toPrecision(6))))
  const [up, down] = sides(steps.sizes)
  const found = { up: [up], down: [down], both: [up, down] }[steps.way]
  return found.map((side) => side.slice(0, steps.reach ?? REACH))
}

/** Kind of a value, and the unit it is told in. */
export interface Shown {
  readonly kind: Kind | "number"
  readonly unit?: string
}

/** A value as it is told, and as it then stands in the document. */
export function tellValue(
  { kind, unit }: Shown,
  value: number,
): { readonly text: string; readonly value: number | string; readonly si: number } {
  if (kind === "number") return { text: formatNumber(value, 6), value, si: value }
  const text = formatQuantity(kind, value, unit)
  const read = readQuantity(kind, text)
  return typeof read === "number" ? { text, value: text, si: read } : { text, value, si: value }
}

/** Gauges that are sold. */
export const GAUGES = [30, 28, 26, 24, 22, 20, 18, 16, 14, 12, 10, 8]
/** Cross-sections that are sold, m²: IEC 60228 from 0.5 mm² on, finer ones of equipment wire. */
export const AREAS = [0.14, 0.25, 0.34, 0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16].map((mm2) => mm2 * 1e-6)
/** Ratings of blade fuses, A: ISO 8820-3. */
export const FUSES = [1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40]
/** Temperatures that insulations are rated for, °C. */
export const INSULATIONS = [70, 80, 90, 105, 125, 150, 180, 200]
/** Ratings of switches for direct current, A. */
export const SWITCHES = [1, 2, 3, 5, 6, 8, 10, 15, 20, 25, 30, 40]
/** Rounded steps of strengths and currents, by 25 %: ISO 3, R10. */
export const TENTHS = [-3, -2, -1, 0, 1, 2, 3, 4, 5].flatMap((power) =>
  [1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8].map((one) => Number((one * 10 ** power).toPrecision(3))),
)
/** Currents that sockets of banks and supplies give, A. */
export const SOCKETS = [0.5, 1, 1.5, 2, 2.1, 2.4, 3, 4, 5, 6, 8, 10, 15, 20]
/** Voltages that converters and supplies are set or sold for, V. */
export const VOLTAGES = [3.3, 5, 6, 7.4, 9, 12, 15, 18, 19, 20, 24]
/** Outside diameters of tubes, m. */
export const TUBES = [6, 8, 10, 12, 14, 15, 16, 18, 20, 22, 25, 28, 30, 32, 35, 40].map((mm) => mm / 1000)
/** Walls of tubes, m. */
export const WALLS = [0.5, 0.75, 1, 1.25, 1.5, 2, 2.5, 3].map((mm) => mm / 1000)
/** Widths of straps, m. */
export const STRAPS = [25, 40, 50, 60, 75, 90, 100].map((mm) => mm / 1000)
/** Rests and pauses, s. */
export const PAUSES = [1, 2, 3, 5, 10, 15, 20, 30, 45, 60, 90, 120].map((minutes) => minutes * 60)
/** Strokes of linear actuators, m. */
export const STROKES = [20, 30, 50, 75, 80, 100, 120, 150, 200, 250, 300, 400].map((mm) => mm / 1000)
/** Energies that banks are sold with, J. */
export const BANKS = [18, 24, 37, 55, 74, 99].map((hours) => hours * 3600)
