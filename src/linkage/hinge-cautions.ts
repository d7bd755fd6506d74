import { formatQuantity } from "../quantity/index.js"
import { type Caution, caution, type SiOf } from "../solver/index.js"
import type { HingeActuator, HingeActuatorInput } from "./hinge-actuator.js"
import { springAt, springEnergy } from "./hinge-load.js"

/** Most energy the springs hold anywhere on the stroke, J. */
function storedEnergy(si: SiOf<HingeActuatorInput>, out: HingeActuator): number {
  const energies = out.poses.map(({ angle }) =>
    (si.springs ?? []).reduce((sum, spring) => sum + springEnergy(spring, springAt(si.hinge, spring, angle).length), 0),
  )
  return Math.max(0, ...energies)
}

/** Hazards and limits of validity of a hinged arm. */
export function hingeCautions(si: SiOf<HingeActuatorInput>, out: HingeActuator): Caution[] {
  const found: Caution[] = [
    caution(
      "pinch-points",
      "warning",
      "The hinge, both anchors and the closing gap between arm and actuator can crush fingers, hair and cloth: guard them, and keep hands and spectators clear while it moves.",
      "ISO 13854, Safety of machinery: minimum gaps to avoid crushing of parts of the human body, 2017 (from memory)",
    ),
  ]
  if (out.holdsUnpowered === false)
    found.push(
      caution(
        "falls-unpowered",
        "warning",
        `Without power the arm falls or creeps: up to ${formatQuantity("force", out.holdForce)} must be held and the actuator holds ${formatQuantity("force", si.backDriveForce as number)}. Add a brake, a latch or a counterbalance, and never stand beneath it.`,
        "ISO 12100, Safety of machinery, 2010, clause 6.2.11.5 (interruption of power supply; from memory)",
      ),
    )
  if (out.holdsUnpowered === true && out.holdMargin !== null && out.holdMargin < 2)
    found.push(
      caution(
        "holds-by-little",
        "caution",
        `The unpowered actuator holds only ${out.holdMargin.toPrecision(2)} times what this pose and lean ask of it: a bump, a gust, another lean or wear can use that up. Treat the arm as able to fall.`,
        "common practice, no source (factor of two)",
      ),
    )
  if (out.holdsUnpowered === null && out.holdForce > 0)
    found.push(
      caution(
        "holding-unknown",
        "caution",
        `The load must also be held when power is lost, here up to ${formatQuantity("force", out.holdForce)}: give the actuator's unpowered holding (back-drive) force, and treat the arm as able to fall until that is known.`,
        "ISO 12100, Safety of machinery, 2010, clause 6.2.11.5 (interruption of power supply; from memory)",
      ),
    )
  const energy = si.springs ? storedEnergy(si, out) : 0
  if (energy > 0)
    found.push(
      caution(
        "stored-energy",
        "warning",
        `The springs store up to ${formatQuantity("energy", energy)} whether or not there is power: a cut cord or a slipped anchor throws the arm. Tether the spring, wear eye protection when fitting it, and move the arm to its least tension before taking anything apart.`,
        "ISO 12100, Safety of machinery, 2010, clause 6.3.5.4 (energy dissipation; from memory)",
      ),
    )
  if (out.leastTransmission < Math.PI / 6)
    found.push(
      caution(
        "small-transmission-angle",
        "caution",
        `The rod comes within ${formatQuantity("angle", out.leastTransmission)} of pointing at the hinge: most of its force then loads the hinge instead of turning the arm, and small errors of the anchors change the force a lot.`,
      ),
    )
  if (out.clearance < 0.02 * si.stroke)
    found.push(
      caution(
        "near-dead-point",
        "caution",
        `Only ${formatQuantity("length", out.clearance)} of length are left to a dead point: cutting tolerances and play in the pins can use that up, and the arm may then flip to its other branch or jam.`,
      ),
    )
  if (out.sideLoad > 0)
    found.push(
      caution(
        "side-load",
        "caution",
        `About ${formatQuantity("force", out.sideLoad)} act across the rod: small linear actuators are made for thrust along the rod, compare with the side load its maker allows.`,
      ),
    )
  return found
}
