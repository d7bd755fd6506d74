// Everything that a document declares adjustable.
import { isUnder, valueAt } from "./paths.js"
import type { Ladder, Row, RowRig, Rung } from "./rows.js"
import { motionRows } from "./rows-motion.js"
import { powerRows } from "./rows-power.js"
import { wornRows } from "./rows-worn.js"

/** The table: each adjustable a row. */
export const rows: readonly Row[] = [...powerRows, ...motionRows, ...wornRows]

/** What may be changed: a path, or a pattern such as `power.buses[].run`, with all below it; numbers of it within limits. */
export interface AllowedPath {
  readonly path: string
  /** Smallest and largest value that is tried, SI. */
  readonly min?: number
  readonly max?: number
}

type Reading = (settings: Rung["settings"]) => unknown

/** Whether a change is among what may be changed. */
function isAllowed({ settings }: Rung, allowed: readonly AllowedPath[], read: Reading): boolean {
  const limited = allowed.some(({ min, max }) => min !== undefined || max !== undefined)
  const si = limited ? read(settings) : null
  return settings.every(({ path }) =>
    allowed.some(({ path: pattern, min = Number.NEGATIVE_INFINITY, max = Number.POSITIVE_INFINITY }) => {
      const value = limited ? valueAt(si, path) : undefined
      return isUnder(path, pattern) && (typeof value !== "number" || (value >= min && value <= max))
    }),
  )
}

/** Ladders of a rig, of what may be changed alone. */
export function laddersOf(rig: RowRig, more: readonly Row[], allowed: readonly AllowedPath[] | null, read: Reading): readonly Ladder[] {
  return [...more, ...rows].flatMap((row) =>
    row.ladders(rig).flatMap((ladder): Ladder[] => {
      const rungs = allowed ? ladder.rungs.filter((rung) => isAllowed(rung, allowed, read)) : ladder.rungs
      return rungs.length ? [{ ...ladder, rungs }] : []
    }),
  )
}
