// Hazards of a skew hinge, and faults between its fields.

import { type Caution, caution, type Issue, inconsistent } from "../../solver/index.js"
import { fallsCaution, pinchCaution } from "../hazards.js"
import { equilibrium, reachSource } from "../sources.js"
import type { Si, SkewHinge, SkewHingeCaution } from "./types.js"

/** Share of the swing's radius by which a tip may stand forward or back before it is told. */
const AHEAD = 0.1

/** Moment that is rounding alone, N m: an upright axis. */
const NO_MOMENT = 1e-9

export function skewCautions(si: Si, out: SkewHinge) {
  const { swingRadius, maxEffort, tipAhead } = out
  return [
    pinchCaution("Hinge, part and frame"),
    caution(
      "tip-sweeps",
      "warning",
      "The tip swings {swingRadius length} from its axis and comes forward and back as well as up, at a child's face as easily as at a shoulder: pad and round every edge and tip, move it slowly, and keep people, the wearer's own head and arms among them, out of its path.",
      reachSource,
      { swingRadius },
    ),
    ...(maxEffort > NO_MOMENT ? [fallsCaution("The swinging part")] : []),
    ...(Math.abs(tipAhead) > AHEAD * swingRadius
      ? [
          caution(
            "not-seen-from-front",
            "note",
            "The tip stands {off length} {where} its hinge, which nobody sees from the front: check doors, and people before and behind the wearer, from the side and from above.",
            equilibrium,
            { off: Math.abs(tipAhead), where: tipAhead > 0 ? "forward of" : "behind" },
          ),
        ]
      : []),
    ...(si.pinFriction * si.pinDiameter === 0
      ? [
          caution(
            "friction-left-out",
            "note",
            "No friction is given: a skew hinge loads its bearings on edge, and real ones need more to turn and hold more at rest than told here.",
          ),
        ]
      : []),
  ] satisfies Caution<SkewHingeCaution>[]
}

/** Parts of the axis below which it has no direction. */
const NO_DIRECTION = 1e-3

export function skewFaults(si: Si): Issue[] {
  const found: Issue[] = []
  if (Math.hypot(si.axis.forward, si.axis.left, si.axis.up) < NO_DIRECTION)
    found.push(inconsistent(["axis"], "parts that are all next to nothing", "a direction"))
  const frictionRadius = (si.pinFriction * si.pinDiameter) / 2
  if (si.driveRadius > 0 && si.driveRadius <= frictionRadius)
    found.push(
      inconsistent(
        ["driveRadius"],
        "{driveRadius length}",
        "more than {frictionRadius length}, the friction radius of the pin: within it no force turns the part",
        { driveRadius: si.driveRadius, frictionRadius },
      ),
    )
  return found
}
