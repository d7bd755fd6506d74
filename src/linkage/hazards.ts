import { type Caution, caution } from "../solver/index.js"

/** Links that close on one another like scissors. */
export function pinchCaution(what: string): Caution {
  return caution(
    "pinch-point",
    "warning",
    `${what} close on one another like scissors and can shear or trap fingers, hair and cloth. The minimum gaps of ISO 13854 are for crushing alone and do not cover shearing: guard such places so that nobody can reach in, and have the finished piece looked at by somebody qualified before people come near it.`,
    "ISO 13854, 2017, clause 1 (scope: crushing only, not shearing or drawing-in; from memory)",
  )
}

/** A load that comes down when nothing holds the driver. */
export function fallsCaution(what: string): Caution {
  return caution(
    "falls-without-power",
    "warning",
    `${what} comes down when power is lost unless the driver holds by itself: nobody may be under it or inside its sweep, and a stop or a self-locking drive has to hold it.`,
    "ISO 12100, 2010, clause 6.2.11.5 (interruption of power supply; clause number from memory)",
  )
}

/** A transmission angle below the usual design limit. */
export function transmissionCaution(angle: number): Caution {
  return caution(
    "poor-transmission",
    "caution",
    `The transmission angle is down to ${Math.round((angle * 180) / Math.PI)}°: below about 40° pin forces and friction rise fast and small errors of length move the output a lot.`,
    "R. L. Norton, Design of Machinery, 5th ed., 2012, section 3.3 (from memory)",
  )
}

/** Least transmission angle that usual practice accepts, rad. */
export const LEAST_TRANSMISSION = (40 * Math.PI) / 180
