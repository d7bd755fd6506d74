// What goes in and what comes out.

import type { Angle, Force, Length, Mass, Pressure, Ratio } from "../../../quantity/index.js"
import type { Band } from "../../../solver/index.js"

/** Input of {@link strapPressure}. Heights are measured from the hip belt, upwards. */
export interface StrapPressureInput {
  /** Rig mass on the straps [m_r; 10 g to 150 kg] */
  rigMass: Mass
  /** Centre of mass of the rig behind the back panel. [x_c; 1 mm to 1 m] */
  centreOffset: Length
  /** Height of the upper strap anchors above the hip belt. [h_u; 0.1 m to 900 mm; default 0.42 m] */
  upperAnchor?: Length
  /** Height of the lower strap anchors above the hip belt; negative below it. [h_l; −0.3 to 0.4 m; default 0] */
  lowerAnchor?: Length
  /** Rise of the upper strap from the anchor to the shoulder, above the horizontal. [a_u; 0 to 75°; default 35°] */
  upperAngle?: Angle
  /** Rise of the lower strap from the anchor to the chest, above the horizontal. [a_l; 10° to 85°; default 50°] */
  lowerAngle?: Angle
  /** Share of the weight that the hip belt is to take. [q_b; 0 to 0.95; default 0.3] */
  beltShare?: Ratio
  /** Tension in the hip belt. [T_b; 0 to 300 N; default 60 N] */
  beltTension?: Force
  /** Friction between belt and hips. [mu_b; 0 to 1.5; default 0.3] */
  beltFriction?: number
  /** Width of the hip belt. [w_b; 20 to 300 mm; default 60 mm] */
  beltWidth?: Length
  /** Radius of the hips under the belt: circumference over 2π. [r_b; 80 to 300 mm; default 150 mm] */
  hipRadius?: Length
  /** Width of one shoulder strap. [w; 5 to 200 mm] */
  strapWidth: Length
  /** Radius of the shoulder under the strap. [r; 20 to 150 mm; default 60 mm] */
  shoulderRadius?: Length
  /** Angle the strap wraps around the shoulder. [theta; 0 to 180°; default 120°] */
  wrapAngle?: Angle
  /** Friction between strap and shoulder. [mu; 0 to 1; default 0.3] */
  shoulderFriction?: number
  /** Share of the shoulder load on the more loaded side. [c; 0.5 to 1; default 0.65] */
  heavierShoulderShare?: Ratio
  /** Pressure not to exceed for hours; a limit above the usual 14 kPa never counts. [p_l; 1 to 100 kPa; default 14 kPa] */
  pressureLimit?: Pressure
}

/** Reasons for which {@link strapPressure} can refuse. */
export type StrapPressureRefusal = "cannot-balance" | "hangs-back"

/** Hazards and limits that an answer of {@link strapPressure} can carry. */
export type StrapPressureCaution =
  | "belt-over-limit"
  | "belt-share-not-settled"
  | "belt-slips"
  | "belt-tension-untried"
  | "hangs-back"
  | "limit-not-settled"
  | "limit-raised"
  | "over-limit"
  | "skin-irritation"
  | "take-it-off"
  | "throat"
  | "wider-than-tested"

/** Result of {@link strapPressure}. */
export interface StrapPressure {
  /** Weight on the hip belt and on the shoulders. [F_b; N] */
  readonly beltLoad: number
  /** Weight on the shoulders [F_s; N] */
  readonly shoulderLoad: number
  /** Share of the weight that the hip belt really takes. [q; as a fraction] */
  readonly beltShare: number
  /** Most the belt holds by friction. [F_B; N] */
  readonly beltCapacity: number
  /** Whether the belt slips down before it takes its share. [yes or no] */
  readonly beltSlips: boolean
  /** Push of the back on the upper edge and at the belt; the upper one is 0 where the rig hangs back. [N_u; N] */
  readonly upperPush: number
  /** Push of the back, belt [N_l; N] */
  readonly lowerPush: number
  /** Tension of both upper straps together without friction over the shoulder. [T; N] */
  readonly tension: number
  /** Tension of the straps ahead of the shoulder over that behind, at most, by friction. [k] */
  readonly tensionRatio: number
  /** Maximum tension of one strap, friction either way, more loaded side. [T_m; N] */
  readonly maxTension: number
  /** Mean pressure under the more loaded strap, and the maximum. [p; Pa] */
  readonly pressure: number
  /** Maximum pressure [p_m; Pa] */
  readonly maxPressure: number
  /** Pressure that counts as the limit: the one given, 14 kPa at most. [p_a; Pa] */
  readonly pressureLimit: number
  /** Maximum pressure against the limit. [q_p; as a fraction] */
  readonly utilisation: number
  /** Mean pressure under the belt by its own tension. [p_b; Pa] */
  readonly beltPressure: number
  /** The belt's pressure against the same limit. [q_t; as a fraction] */
  readonly beltUtilisation: number
  /** Whether straps and belt are both within the limit. [yes or no] */
  readonly withinLimit: boolean
  /** Minimum strap width for the limit, and the next 5 mm up. [w_n; m] */
  readonly minWidth: number
  /** Suggested width [w_c; m] */
  readonly suggestedWidth: number
  /** Heaviest load for this strap and limit. [m_l; kg] */
  readonly massAtLimit: number
}

export interface Held {
  /** Tension behind the shoulder and ahead of it, both straps, N. */
  readonly behind: number
  readonly ahead: number
  readonly belt: number
  readonly upperPush: number
  readonly lowerPush: number
}

export interface Levers {
  /** Level pull of the upper straps, and of the lower ones at their slackest and tightest, as levers. */
  readonly up: number
  readonly lower: Band
  readonly lift: number
}
