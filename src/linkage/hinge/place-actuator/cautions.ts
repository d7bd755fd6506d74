import { type Caution, caution, type SiOf } from "../../../solver/index.js"
import { fallsCaution, pinchCaution } from "../../hazards.js"
import { ownResult } from "../../sources.js"
import type { PlaceActuator, PlaceActuatorInput } from "./types.js"

/** Hazards and limits of validity of a placement. */
export function placeCautions(si: SiOf<PlaceActuatorInput>, out: PlaceActuator): Caution[] {
  const { gap, leastTransmission, clearance, forceMargin } = out
  const found: Caution[] = [pinchCaution("Arm, actuator and frame"), fallsCaution("The arm")]
  if (!out.isCertified)
    found.push(
      caution(
        "gap-not-closed",
        "caution",
        "The search stopped after {given.boxes} boxes with a gap of {gap ratio %}: a placement better by up to that much may exist. Allow more boxes or narrow the regions.",
        ownResult,
        { "given.boxes": si.boxes, gap },
      ),
    )
  if (leastTransmission < Math.PI / 6)
    found.push(
      caution(
        "small-transmission-angle",
        "caution",
        "The rod comes within {leastTransmission angle °} of pointing at the hinge: small errors of the pivots change the force a lot there. Ask for a larger leastTransmission.",
        undefined,
        { leastTransmission },
      ),
    )
  if (clearance < 0.02 * si.stroke)
    found.push(
      caution(
        "near-dead-point",
        "caution",
        "Only {clearance length} of length are left to a dead point, which cutting tolerances and play in the pins can use up.",
        undefined,
        { clearance },
      ),
    )
  if (forceMargin < 1.5)
    found.push(
      caution(
        "little-force-margin",
        "caution",
        "The rating is {forceMargin} times the holding force, friction, wind and acceleration not counted: give the placement to hingeActuator with pin friction, and keep a margin.",
        undefined,
        { forceMargin },
      ),
    )
  return found
}
