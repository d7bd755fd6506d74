import { type Caution, caution, type SiOf } from "../../../solver/index.js"
import { pinchCaution } from "../../hazards.js"
import { powerLoss } from "../../sources.js"
import { storedEnergyCautions } from "../stored-energy.js"
import type { HingeActuator, HingeActuatorCaution, HingeActuatorInput } from "./types.js"

/** Hazards and limits of validity of a hinged arm. */
export function hingeCautions(si: SiOf<HingeActuatorInput>, out: HingeActuator): Caution<HingeActuatorCaution>[] {
  const { requiredHoldingForce, holdingSafetyFactor, minTransmissionAngle, deadPointMargin, sideLoad } = out
  const found: Caution<HingeActuatorCaution>[] = [pinchCaution("Hinge, pivots, arm and actuator")]
  if (out.holdsUnpowered === false && si.holdingForce !== null)
    found.push(
      caution(
        "falls-unpowered",
        "warning",
        "Without power the arm falls or creeps: up to {requiredHoldingForce force} must be held and the actuator holds {given.holdingForce force}. Add a brake, a latch or a counterbalance, and never stand beneath it.",
        powerLoss,
        { requiredHoldingForce, "given.holdingForce": si.holdingForce },
      ),
    )
  if (out.holdsUnpowered === true && holdingSafetyFactor !== null && holdingSafetyFactor < 2)
    found.push(
      caution(
        "thin-holding-margin",
        "caution",
        "The unpowered actuator holds only {holdingSafetyFactor} times what the stroke asks of it at this lean: a bump, a gust, another lean or wear can use that up. Treat the arm as able to fall.",
        undefined,
        { holdingSafetyFactor },
      ),
    )
  if (out.holdsUnpowered === null && requiredHoldingForce > 0)
    found.push(
      caution(
        "holding-unknown",
        "caution",
        "The load must also be held when power is lost, here up to {requiredHoldingForce force}: give the actuator's unpowered holding (back-drive) force, and treat the arm as able to fall until that is known.",
        powerLoss,
        { requiredHoldingForce },
      ),
    )
  found.push(
    ...storedEnergyCautions(
      si.hinge,
      si.springs ?? [],
      out.poses.map(({ angle }) => angle),
    ),
  )
  if (minTransmissionAngle < Math.PI / 6)
    found.push(
      caution(
        "poor-transmission",
        "caution",
        "The rod comes within {minTransmissionAngle angle °} of pointing at the hinge: most of its force then loads the hinge instead of turning the arm, and small errors of the pivots change the force a lot.",
        undefined,
        { minTransmissionAngle },
      ),
    )
  if (deadPointMargin < 0.02 * si.stroke)
    found.push(
      caution(
        "near-dead-point",
        "caution",
        "Only {deadPointMargin length} of length are left to a dead point: cutting tolerances and play in the pins can use that up, and the arm may then flip to its other branch or jam.",
        undefined,
        { deadPointMargin },
      ),
    )
  if (sideLoad > 0)
    found.push(
      caution(
        "side-load",
        "caution",
        "About {sideLoad force} act across the rod: small linear actuators are made for thrust along the rod. Compare with the side load its maker allows.",
        undefined,
        { sideLoad },
      ),
    )
  return found
}
