// What the springs of an arm can let loose.

import { type Caution, caution } from "../../solver/index.js"
import { storedEnergySource } from "../sources.js"
import type { Point } from "./geometry.js"
import { type HingeSpring, springAt, springEnergy } from "./load.js"

/** Warns of the most energy the springs hold at any of the arm's angles, J; of none where they hold none. */
export function storedEnergyCautions(hinge: Point, springs: readonly HingeSpring[], angles: readonly number[]): Caution<"stored-energy">[] {
  const energies = angles.map((angle) =>
    springs.reduce((sum, spring) => sum + springEnergy(spring, springAt(hinge, spring, angle).length), 0),
  )
  const energy = Math.max(0, ...energies)
  if (!(energy > 0)) return []
  return [
    caution(
      "stored-energy",
      "warning",
      "The springs store up to {energy energy} whether or not there is power: a cut cord or a slipped end throws the arm. Tether the spring, wear eye protection when fitting it, and move the arm to its minimum tension before taking anything apart.",
      storedEnergySource,
      { energy },
    ),
  ]
}
