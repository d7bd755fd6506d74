// Faults between fields.
import { type Issue, inconsistent } from "../../solver/index.js"
import type { Si } from "./types.js"

export function latchFaults({ fixedPivotDistance, movingPivotRadius, freeLength }: Si): Issue[] {
  const found: Issue[] = []
  if (movingPivotRadius >= fixedPivotDistance)
    found.push(
      inconsistent(
        ["movingPivotRadius"],
        "{movingPivotRadius length}",
        "less than {fixedPivotDistance length}, the distance of the spring's fixed end: else the spring passes through the pivot",
        {
          movingPivotRadius,
          fixedPivotDistance,
        },
      ),
    )
  if (freeLength >= fixedPivotDistance + movingPivotRadius)
    found.push(
      inconsistent(["freeLength"], "{freeLength length}", "less than {longest length}, the spring's length on the dead centre", {
        freeLength,
        longest: fixedPivotDistance + movingPivotRadius,
      }),
    )
  return found
}
