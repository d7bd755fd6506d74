import { type Caution, caution } from "../solver/index.js"
import { crushingOnly, nortonTransmission, powerLoss } from "./sources.js"

/** Links that close on one another like scissors. */
export function pinchCaution(what: string): Caution<"pinch"> {
  return caution(
    "pinch",
    "warning",
    "{what} close on one another like scissors and can shear or trap fingers, hair and cloth; a child's finger fits where an adult's does not. The minimum gaps of ISO 13854 are for crushing alone and do not cover shearing: guard such places so that nobody can reach in, and have the finished piece looked at by somebody qualified before people come near it.",
    crushingOnly,
    { what },
  )
}

/** A load that comes down when nothing holds the driver. */
export function fallsCaution(what: string): Caution<"falls-unpowered"> {
  return caution(
    "falls-unpowered",
    "warning",
    "{what} comes down when power is lost unless the driver holds by itself: nobody may be under it or inside its sweep, and a stop or a self-locking drive has to hold it.",
    powerLoss,
    { what },
  )
}

/** A transmission angle below the usual design limit; `name` is the result's field that holds it. */
export function transmissionCaution(name: "transmissionAngle" | "minTransmissionAngle", angle: number): Caution<"poor-transmission"> {
  const template: string = `The transmission angle is down to {${name} angle °}: below about 40° pin forces and friction rise fast and small errors of length move the output a lot.`
  return caution("poor-transmission", "caution", template, nortonTransmission, { [name]: angle })
}

/** Minimum transmission angle that usual practice accepts, rad. */
export const LEAST_TRANSMISSION = (40 * Math.PI) / 180
