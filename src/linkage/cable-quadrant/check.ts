// Faults between fields.
import { type Issue, inconsistent } from "../../solver/index.js"
import type { Si } from "./types.js"

export function quadrantFaults({ radius, returnedBy, pinDiameter }: Si): Issue[] {
  const smaller = Math.min(radius, returnedBy.radius)
  return pinDiameter / 2 < smaller
    ? []
    : [
        inconsistent(["pinDiameter"], "{pinDiameter length}", "less than {across length}, twice the smaller radius of the quadrant", {
          pinDiameter,
          across: 2 * smaller,
        }),
      ]
}
