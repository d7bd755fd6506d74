// What goes in and what comes out.

import type { Angle, Force, Length } from "../../../quantity/index.js"
import type { Band } from "../../../solver/index.js"

/** Input of {@link breakaway}. */
export interface BreakawayInput {
  /** Where the band is worn [neck, shoulder or waist] */
  place: "neck" | "shoulder" | "waist"
  /** Radius of the body under the band: girth over 2π at neck and waist. [r; 20 to 300 mm] */
  bodyRadius: Length
  /** Width of the band [w; 1 to 300 mm] */
  bandWidth: Length
  /** Tension while worn, what hangs from the band included. [T_w; 0 to 300 N; default 0] */
  wornTension?: Force
  /** Tension of the band at which the breakaway came open, lowest and highest of at least ten tries with a spring balance. [group] */
  partingTension: {
    /** Lowest of the tries [F_l; 0.5 to 1000 N] */
    low: Force
    /** Highest of the tries [F_h; 0.5 to 1000 N] */
    high: Force
  }
  /** From where the band is caught round to the breakaway; 180° is across the body from it. [psi; 0 to 180°; default 180°] */
  breakawayAngle?: Angle
  /**
   * Angle between both sides of the band where it is caught; 0 where it is caught far from the body, the hardest pull.
   * [gamma; 0 to 160°; default 0]
   */
  pullOpening?: Angle
  /** Friction between band and skin or clothes. [mu; 0 to 1.5; default 0.9] */
  friction?: number
  /** Stature of the smallest wearer; left out, a child is assumed. [H; 800 mm to 2.5 m; optional] */
  stature?: Length | null
}

/** Reasons for which {@link breakaway} can refuse. */
export type BreakawayRefusal = "parts-at-once"

/** Hazards and limits that an answer of {@link breakaway} can carry. */
export type BreakawayCaution =
  | "artery-force"
  | "friction-holds"
  | "no-pull-limit"
  | "over-pressure"
  | "over-pull"
  | "parts-while-walking"
  | "take-it-off"
  | "throat"
  | "try-it"
  | "young-wearer"

/** Result of {@link breakaway}. */
export interface Breakaway {
  /** Pressure while worn [p; Pa] */
  readonly pressure: number
  /** Pressure that counts: where skin flow stops for a neck, the usual limit for hours elsewhere. [p_a; Pa] */
  readonly pressureLimit: number
  /** Utilisation of the pressure limit [q_p; as a fraction] */
  readonly pressureUtilisation: number
  /** How far the band lies on the body between the side that is pulled and the breakaway. [phi; rad] */
  readonly wrapAngle: number
  /** Tension of the pulled side over that at the breakaway. [k] */
  readonly tensionRatio: number
  /** Pull on the band, and on the wearer, when the breakaway comes open. [P_l to P_h; N] */
  readonly pull: Band
  /** The same with the breakaway where friction does not reach: in the part that is pulled clear of the body. [P_0; N] */
  readonly besidePull: number
  /** Tension of the pulled side, parting [T_p; N] */
  readonly peakTension: number
  /** Pressure of the pulled side, parting [p_p; Pa] */
  readonly peakPressure: number
  /** Published limit of the pull; null where none was found. [P_a; N] */
  readonly pullLimit: number | null
  /** Utilisation of the limit of the pull [q_n; as a fraction] */
  readonly pullUtilisation: number | null
  /** Tension at which the breakaway has to come open for the limit of the pull. [F_n; N] */
  readonly requiredPartingTension: number | null
  /** Tension while worn over the lowest parting tension. [q_w; as a fraction] */
  readonly wornUtilisation: number
  /** Within the limits of pressure and pull that were compared. [yes or no] */
  readonly withinLimits: boolean
}
