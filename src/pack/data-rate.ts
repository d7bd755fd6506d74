// What is left of the printed capacity when it is drawn faster than it is rated for.
import type { Source } from "../solver/index.js"
import type { Chemistry } from "./chemistry.js"
import { LEAD_RATES, NICKEL_CARE, NICKEL_RATES } from "./sources.js"

/** Duration of a discharge, h, against the share of the printed capacity it gives, by makers' sheets; longest first. */
export const capacityAtRate = {
  lead: [
    [20, 1],
    [10, 0.925],
    [5, 0.825],
    [1, 0.6],
  ],
  nimh: [
    [5, 1],
    [0.9, 0.9],
  ],
} as const satisfies Readonly<Record<string, readonly (readonly [hours: number, share: number])[]>>

/** Sources of {@link capacityAtRate}. */
export const capacityAtRateSources: Readonly<Record<"lead" | "nimh", readonly Source[]>> = {
  lead: [LEAD_RATES],
  nimh: [NICKEL_RATES, NICKEL_CARE],
}

const rowsOf = (chemistry: Chemistry): readonly (readonly [hours: number, share: number])[] | null =>
  chemistry === "lead" || chemistry === "nimh" ? capacityAtRate[chemistry] : null

/** Straight between the logarithms of the rows, as Peukert's law is; held before the first and carried on behind the last. */
function along(rows: readonly (readonly [hours: number, share: number])[], place: (hours: number, share: number) => number, x: number) {
  if (x >= place(...(rows[0] as readonly [number, number]))) return 1
  const found = rows.findIndex(([hours, share]) => x >= place(hours, share))
  const i = found < 0 ? rows.length - 1 : found
  const [slow, fast] = [rows[i - 1], rows[i]] as [readonly [number, number], readonly [number, number]]
  const way = Math.log(x / place(...slow)) / Math.log(place(...fast) / place(...slow))
  return slow[1] * (fast[1] / slow[1]) ** way
}

/** Share of the printed capacity that a discharge of this duration gives (h); 1 for chemistries whose charge hardly depends on it. */
export function capacityShareByDuration(chemistry: Chemistry, hours: number): number {
  const rows = rowsOf(chemistry)
  return rows === null ? 1 : along(rows, (h) => h, hours)
}

/**
 * Share of the printed capacity left at a rate (multiples of the printed capacity per hour): lead 1 up to 0.05, 0.925 at 0.0925,
 * 0.825 at 0.165, 0.6 at 0.6; nickel-metal hydride 1 up to 0.2, 0.9 at 1. Beyond the last row the law of the last two goes on.
 */
export function capacityShareByRate(chemistry: Chemistry, rate: number): number {
  const rows = rowsOf(chemistry)
  return rows === null || !(rate > 0) ? 1 : along(rows, (h, share) => h / share, 1 / rate)
}
