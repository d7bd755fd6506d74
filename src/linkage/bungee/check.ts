// Faults between fields.
import { type Issue, inconsistent } from "../../solver/index.js"
import type { Si } from "./types.js"

export function bungeeFaults({ readings }: Si): Issue[] {
  return readings.flatMap((reading, k) => {
    const before = readings[k - 1]
    if (before === undefined) return []
    const faults: Issue[] = []
    if (!(reading.elongation > before.elongation))
      faults.push(
        inconsistent(["readings", k, "elongation"], "{elongation ratio %}", "more than the reading before it, {before ratio %}", {
          elongation: reading.elongation,
          before: before.elongation,
        }),
      )
    if (reading.force < before.force)
      faults.push(
        inconsistent(["readings", k, "force"], "{force force}", "at least that of the reading before it, {before force}", {
          force: reading.force,
          before: before.force,
        }),
      )
    return faults
  })
}
