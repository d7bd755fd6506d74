import { type Issue, inconsistent, type SiOf } from "../../../solver/index.js"
import { standardGravity } from "../load.js"
import type { PlaceActuatorInput } from "./types.js"

/** Regions, angles and limits that do not go together. */
export function placeFaults(si: SiOf<PlaceActuatorInput>): Issue[] {
  const found: Issue[] = []
  for (const key of ["fixedPivotRegion", "movingPivotRegion"] as const) {
    const { left, right, bottom, top } = si[key]
    if (!(left < right))
      found.push(
        key === "fixedPivotRegion"
          ? inconsistent([key, "right"], "{fixedPivotRegion.right length}", "more than left, {fixedPivotRegion.left length}", {
              "fixedPivotRegion.right": right,
              "fixedPivotRegion.left": left,
            })
          : inconsistent([key, "right"], "{movingPivotRegion.right length}", "more than left, {movingPivotRegion.left length}", {
              "movingPivotRegion.right": right,
              "movingPivotRegion.left": left,
            }),
      )
    if (!(bottom < top))
      found.push(
        key === "fixedPivotRegion"
          ? inconsistent([key, "top"], "{fixedPivotRegion.top length}", "more than bottom, {fixedPivotRegion.bottom length}", {
              "fixedPivotRegion.top": top,
              "fixedPivotRegion.bottom": bottom,
            })
          : inconsistent([key, "top"], "{movingPivotRegion.top length}", "more than bottom, {movingPivotRegion.bottom length}", {
              "movingPivotRegion.top": top,
              "movingPivotRegion.bottom": bottom,
            }),
      )
  }
  const { from, to } = si.lowAngle
  if (!(from <= to))
    found.push(
      inconsistent(["lowAngle", "to"], "{lowAngle.to angle °}", "at least lowAngle.from, {lowAngle.from angle °}", {
        "lowAngle.to": to,
        "lowAngle.from": from,
      }),
    )
  if (!(to - from <= 2 * Math.PI))
    found.push(
      inconsistent(["lowAngle", "to"], "{lowAngle.to angle °}", "at most one turn from lowAngle.from, {lowAngle.from angle °}", {
        "lowAngle.to": to,
        "lowAngle.from": from,
      }),
    )
  const { maxSwing, swing, maxLever, minLever } = si
  if (maxSwing !== null && !(maxSwing >= swing))
    found.push(inconsistent(["maxSwing"], "{maxSwing angle °}", "at least the swing wanted, {swing angle °}", { maxSwing, swing }))
  if (maxLever !== null && !(maxLever > minLever))
    found.push(inconsistent(["maxLever"], "{maxLever length}", "more than minLever, {minLever length}", { maxLever, minLever }))
  let [along, across] = [0, 0]
  for (const { mass, radius, angle } of si.masses) {
    along += mass * radius * Math.cos(angle)
    across += mass * radius * Math.sin(angle)
  }
  if (!(standardGravity * Math.hypot(along, across) > 1e-9))
    found.push(inconsistent(["masses"], "masses without a moment about the hinge", "at least one mass away from the hinge"))
  return found
}
