// Faults between fields.
import { type Issue, inconsistent } from "../../solver/index.js"
import type { Si } from "./types.js"

export function motorDriverFaults({ supplyWindow, switching }: Si): Issue[] {
  const faults: Issue[] = []
  if (supplyWindow !== null && !(supplyWindow.low < supplyWindow.high))
    faults.push(
      inconsistent(["supplyWindow", "low"], "{supplyWindow.low voltage}", "less than the highest, {supplyWindow.high voltage}", {
        "supplyWindow.low": supplyWindow.low,
        "supplyWindow.high": supplyWindow.high,
      }),
    )
  if (switching !== null) {
    const edges = 2 * (switching.riseTime + switching.deadTime) * switching.frequency
    if (edges > 0.5)
      faults.push(
        inconsistent(["switching", "frequency"], "edges and dead times of {edges ratio %} of each period", "at most half of it", { edges }),
      )
  }
  return faults
}
