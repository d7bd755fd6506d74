import { type Issue, inconsistent, type SiOf } from "../../../solver/index.js"
import { problemOf } from "./front.js"
import type { PlaceActuatorInput } from "./types.js"

/** Regions, angles and limits that do not go together. */
export function placeFaults(si: SiOf<PlaceActuatorInput>): Issue[] {
  const found: Issue[] = []
  for (const key of ["baseRegion", "pinRegion"] as const) {
    const { left, right, bottom, top } = si[key]
    if (!(left < right))
      found.push(
        key === "baseRegion"
          ? inconsistent([key, "right"], "{baseRegion.right length}", "more than left, {baseRegion.left length}", {
              "baseRegion.right": right,
              "baseRegion.left": left,
            })
          : inconsistent([key, "right"], "{pinRegion.right length}", "more than left, {pinRegion.left length}", {
              "pinRegion.right": right,
              "pinRegion.left": left,
            }),
      )
    if (!(bottom < top))
      found.push(
        key === "baseRegion"
          ? inconsistent([key, "top"], "{baseRegion.top length}", "more than bottom, {baseRegion.bottom length}", {
              "baseRegion.top": top,
              "baseRegion.bottom": bottom,
            })
          : inconsistent([key, "top"], "{pinRegion.top length}", "more than bottom, {pinRegion.bottom length}", {
              "pinRegion.top": top,
              "pinRegion.bottom": bottom,
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
  const { mostSwing, swing, mostLever, leastLever } = si
  if (mostSwing !== null && !(mostSwing >= swing))
    found.push(inconsistent(["mostSwing"], "{mostSwing angle °}", "at least the swing wanted, {swing angle °}", { mostSwing, swing }))
  if (mostLever !== null && !(mostLever > leastLever))
    found.push(inconsistent(["mostLever"], "{mostLever length}", "more than leastLever, {leastLever length}", { mostLever, leastLever }))
  if (!(problemOf(si).amplitude > 1e-9))
    found.push(inconsistent(["weights"], "masses without a moment about the hinge", "at least one mass away from the hinge"))
  return found
}
