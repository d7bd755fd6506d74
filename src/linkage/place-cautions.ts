import { formatQuantity } from "../quantity/index.js"
import { type Caution, caution, type SiOf } from "../solver/index.js"
import { fallsCaution, pinchCaution } from "./hazards.js"
import type { PlaceActuator, PlaceActuatorInput } from "./place-actuator.js"

/** Hazards and limits of validity of a placement. */
export function placeCautions(si: SiOf<PlaceActuatorInput>, out: PlaceActuator): Caution[] {
  const found = [pinchCaution("Arm, actuator and frame"), fallsCaution("The arm")]
  if (!out.isCertified)
    found.push(
      caution(
        "gap-not-closed",
        "caution",
        `The search stopped after its ${si.boxes} boxes with a gap of ${formatQuantity("ratio", out.gap)}: a placement better by up to that much may exist. Allow more boxes or narrow the regions.`,
        "the bound of this answer",
      ),
    )
  if (out.leastTransmission < Math.PI / 6)
    found.push(
      caution(
        "small-transmission-angle",
        "caution",
        `The rod comes within ${formatQuantity("angle", out.leastTransmission)} of pointing at the hinge: small errors of the anchors change the force a lot there. Ask for a larger leastTransmission.`,
      ),
    )
  if (out.clearance < 0.02 * si.stroke)
    found.push(
      caution(
        "near-dead-point",
        "caution",
        `Only ${formatQuantity("length", out.clearance)} of length are left to a dead point, which cutting tolerances and play in the pins can use up.`,
      ),
    )
  if (out.forceMargin < 1.5)
    found.push(
      caution(
        "little-force-margin",
        "caution",
        `The rating is ${out.forceMargin.toFixed(2)} times the holding force, friction, wind and acceleration not counted: give the placement to hingeActuator with pin friction, and keep a margin.`,
      ),
    )
  return found
}
