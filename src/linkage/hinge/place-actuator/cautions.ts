import { type Caution, caution, type SiOf } from "../../../solver/index.js"
import { fallsCaution, pinchCaution } from "../../hazards.js"
import { ownResult } from "../../sources.js"
import type { PlaceActuator, PlaceActuatorCaution, PlaceActuatorInput } from "./types.js"

/** Hazards and limits of validity of a placement. */
export function placeCautions(si: SiOf<PlaceActuatorInput>, out: PlaceActuator): Caution<PlaceActuatorCaution>[] {
  const { gap, minTransmissionAngle, deadPointMargin, safetyFactor } = out
  const found: Caution<PlaceActuatorCaution>[] = [pinchCaution("Arm, actuator and frame"), fallsCaution("The arm")]
  if (!out.certified)
    found.push(
      caution(
        "gap-not-closed",
        "caution",
        "The search stopped after {given.maxBoxes} boxes with a gap of {gap ratio %}: a placement better by up to that much may exist. Allow more boxes or narrow the regions.",
        ownResult,
        { "given.maxBoxes": si.maxBoxes, gap },
      ),
    )
  if (minTransmissionAngle < Math.PI / 6)
    found.push(
      caution(
        "poor-transmission",
        "caution",
        "The rod comes within {minTransmissionAngle angle °} of pointing at the hinge: small errors of the pivots change the force a lot there. Ask for a larger minTransmissionAngle.",
        undefined,
        { minTransmissionAngle },
      ),
    )
  if (deadPointMargin < 0.02 * si.stroke)
    found.push(
      caution(
        "near-dead-point",
        "caution",
        "Only {deadPointMargin length} of length are left to a dead point, which cutting tolerances and play in the pins can use up.",
        undefined,
        { deadPointMargin },
      ),
    )
  if (safetyFactor < 1.5)
    found.push(
      caution(
        "thin-margin",
        "caution",
        "The rating is {safetyFactor} times the holding force, friction, wind and acceleration not counted: give the placement to hingeActuator with pin friction, and keep a margin.",
        undefined,
        { safetyFactor },
      ),
    )
  return found
}
