// What sheets print of resettable fuses (polymer, positive temperature coefficient).
import type { Source } from "../../solver/index.js"
import { PTC_DERATING } from "../sources.js"

/** A published table: share of the rated hold current at an air temperature, °C, coldest first. */
export type HoldTable = readonly (readonly [celsius: number, share: number])[]

/** Air temperature that hold and trip currents are rated at, °C. */
export const RATED_AT = 23

const table = (...rows: HoldTable): HoldTable => rows

/** Hold current over the rated one, by kind of part; those from 23 °C on print nothing colder. */
export const holdTables = {
  chip: table([-40, 1.45], [-20, 1.31], [0, 1.16], [23, 1], [30, 0.94], [40, 0.86], [50, 0.77], [60, 0.69], [70, 0.6], [85, 0.48]),
  // printed for 0.55 A at 20 °C
  "radial-99V": table(
    [-40, 0.85 / 0.55],
    [-20, 0.75 / 0.55],
    [0, 0.65 / 0.55],
    [20, 1],
    [40, 0.45 / 0.55],
    [50, 0.4 / 0.55],
    [60, 0.35 / 0.55],
    [70, 0.3 / 0.55],
    [85, 0.22 / 0.55],
  ),
  "radial-30V": table([23, 1], [40, 0.83], [50, 0.77], [60, 0.68]),
  "radial-high-current": table([23, 1], [40, 0.88], [50, 0.8], [60, 0.72], [70, 0.62]),
} as const satisfies Readonly<Record<string, HoldTable>>

/** Source of {@link holdTables}. */
export const holdTablesSource: Source = PTC_DERATING

/** A table at a temperature: straight between its rows, and on along its ends. */
export function shareIn(rows: HoldTable, temperature: number): number {
  let i = 1
  while (i < rows.length - 1 && temperature > (rows[i] as readonly [number, number])[0]) i++
  const [[t0, f0], [t1, f1]] = [rows[i - 1], rows[i]] as [readonly [number, number], readonly [number, number]]
  return f0 + ((f1 - f0) * (temperature - t0)) / (t1 - t0)
}

/** The lowest and the highest that any of the tables prints at a temperature, against 23 °C. */
export function publishedShare(temperature: number): { readonly low: number; readonly high: number } {
  const all = Object.values(holdTables)
    .filter((rows) => temperature >= RATED_AT || (rows[0] as readonly [number, number])[0] < RATED_AT)
    .map((rows) => shareIn(rows, temperature) / shareIn(rows, RATED_AT))
  return { low: Math.min(...all), high: Math.max(...all) }
}

/** Trip over hold current where no sheet is at hand: twice, though small parts print 1.75 to 3 times. */
export const TRIP_RATIO = 2

/** Current over the hold current at which sheets print the time to trip. */
export const TEST_RATIO = 5
