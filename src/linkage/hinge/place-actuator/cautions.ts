import { type Caution, caution, type SiOf } from "../../../solver/index.js"
import { fallsCaution, pinchCaution } from "../../hazards.js"
import { ownResult } from "../../sources.js"
import { storedEnergyCautions } from "../stored-energy.js"
import { POSES } from "./force.js"
import type { PlaceActuator, PlaceActuatorCaution, PlaceActuatorInput } from "./types.js"

/** Hazards and limits of validity of a placement. */
export function placeCautions(si: SiOf<PlaceActuatorInput>, out: PlaceActuator): Caution<PlaceActuatorCaution>[] {
  const { gap, safetyFactor } = out
  const { minTransmissionAngle, deadPointMargin } = out.worstBuild
  const found: Caution<PlaceActuatorCaution>[] = [pinchCaution("Arm, actuator and frame"), fallsCaution("The arm")]
  found.push(
    ...storedEnergyCautions(
      si.hinge,
      si.springs ?? [],
      Array.from({ length: POSES }, (_, i) => out.lowAngle + (out.swing * i) / (POSES - 1)),
    ),
  )
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
        "The rod comes within {worstBuild.minTransmissionAngle angle °} of pointing at the hinge: small errors of the pivots change the force a lot there. Ask for a larger minTransmissionAngle.",
        undefined,
        { "worstBuild.minTransmissionAngle": minTransmissionAngle },
      ),
    )
  if (deadPointMargin < 0.02 * si.stroke)
    found.push(
      caution(
        "near-dead-point",
        "caution",
        "Only {worstBuild.deadPointMargin length} of length are left to a dead point, which cutting tolerances and play in the pins can use up.",
        undefined,
        { "worstBuild.deadPointMargin": deadPointMargin },
      ),
    )
  if (safetyFactor !== null && safetyFactor < 1.5)
    found.push(
      caution(
        "thin-margin",
        "caution",
        "The rating is {safetyFactor} times the holding force, friction and acceleration not counted: give the placement to hingeActuator with pin friction, and keep a margin.",
        undefined,
        { safetyFactor },
      ),
    )
  return found
}
