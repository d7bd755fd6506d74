// Faults between fields.
import { type Issue, inconsistent } from "../../solver/index.js"
import type { Si } from "./types.js"

export function latchFaults({ anchorDistance, pinRadius, freeLength }: Si): Issue[] {
  const found: Issue[] = []
  if (pinRadius >= anchorDistance)
    found.push(
      inconsistent(
        ["pinRadius"],
        "{pinRadius length}",
        "less than {anchorDistance length}, the distance of the anchor: else the spring passes through the pivot",
        {
          pinRadius,
          anchorDistance,
        },
      ),
    )
  if (freeLength >= anchorDistance + pinRadius)
    found.push(
      inconsistent(["freeLength"], "{freeLength length}", "less than {longest length}, the spring's length on the dead centre", {
        freeLength,
        longest: anchorDistance + pinRadius,
      }),
    )
  return found
}
