// Forces and energies of a gas spring at one compression and temperature.

import { gasForce, gasWork } from "./law.js"
import type { GasSpring, Si } from "./types.js"

/** Temperature at which gas springs are rated, K. */
export const RATED = 293.15
/** Exponent of nitrogen pressed faster than its heat gets out (ratio of specific heats of a gas of two atoms). */
export const ADIABATIC = 1.4

export const rodVolume = (si: Si): number => (Math.PI / 4) * (si.rodDiameter as number) ** 2 * si.stroke

export const progressionOf = (si: Si): number =>
  si.progression === null ? (si.gasVolume as number) / ((si.gasVolume as number) - rodVolume(si)) : si.progression

export function solve(si: Si): GasSpring {
  const { force, stroke, compression, frictionForce, extensionSpeed } = si
  const progression = progressionOf(si)
  const taken = 1 - 1 / progression
  const warmth = (si.materialTemperature + 273.15) / RATED
  // the reading is taken while it extends: the gas pushes harder by the friction
  const gas = (force + frictionForce) * warmth
  const at = (compressed: number) => gasForce(gas, progression, compressed, stroke)
  const storedEnergy = gasWork(gas, progression, compression, stroke)
  const here = at(compression)
  return {
    transmits: "push-only",
    progression,
    extendingForce: here - frictionForce,
    compressingForce: here + frictionForce,
    forceExtended: gas - frictionForce,
    forceCompressed: at(stroke) + frictionForce,
    fastForce: gas * (here / gas) ** ADIABATIC + frictionForce,
    stiffness: (here * taken) / (stroke - taken * compression),
    forcePerTemperature: 1 / (si.materialTemperature + 273.15),
    storedEnergy,
    compressingWork: storedEnergy + frictionForce * compression,
    returnedWork: storedEnergy - frictionForce * compression,
    frictionWork: 2 * frictionForce * compression,
    extensionDuration: extensionSpeed === null ? null : { low: stroke / extensionSpeed.high, high: stroke / extensionSpeed.low },
  }
}
