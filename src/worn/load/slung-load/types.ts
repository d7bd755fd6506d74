// What goes in and what comes out.

import type { Angle, Length, Mass, Pressure } from "../../../quantity/index.js"

/** Input of {@link slungLoad}. Sideways distances count from the spine towards the shoulder that bears the strap. */
export interface SlungLoadInput {
  /** Body mass [m_w; 20 to 300 kg] */
  bodyMass: Mass
  /** Rig mass [m_r; 10 g to 150 kg] */
  rigMass: Mass
  /** Centre of the load beside the spine; negative where it hangs at the other hip. [x; −800 to 800 mm] */
  loadOffset: Length
  /**
   * From the vertical towards the other hip, seen from the front; 0 where the strap hangs straight down its own side.
   * [delta; 0 to 60°; default 0]
   */
  strapAngle?: Angle
  /** How far the shoulder falls away from the neck, under the strap. [sigma; 0 to 45°; default 20°] */
  shoulderSlope?: Angle
  /** Width of the strap [w; 5 to 200 mm] */
  strapWidth: Length
  /** Radius of the shoulder [r; 20 to 150 mm; default 60 mm] */
  shoulderRadius?: Length
  /** Angle the strap wraps around the shoulder, from front to back. [theta; 0 to 180°; default 180°] */
  wrapAngle?: Angle
  /** Friction between strap and shoulder, along the strap and across it. [mu; 0 to 1; default 0.3] */
  shoulderFriction?: number
  /** Distance from the spine to the muscles that hold the trunk upright sideways. [e; 30 to 200 mm; default 60 mm] */
  muscleLeverArm?: Length
  /** Distance between the middles of both feet. [b; 50 mm to 1.2 m; default 200 mm] */
  footSpacing?: Length
  /** Pressure not to exceed for hours; a limit above the usual 14 kPa never counts. [p_l; 1 to 100 kPa; default 14 kPa] */
  pressureLimit?: Pressure
}

/** Reasons for which {@link slungLoad} can refuse. */
export type SlungLoadRefusal = "tips-sideways"

/** Hazards and limits that an answer of {@link slungLoad} can carry. */
export type SlungLoadCaution =
  | "change-sides"
  | "complaints"
  | "limit-raised"
  | "lopsided"
  | "over-limit"
  | "over-pressure"
  | "slides-off"
  | "slides-to-neck"
  | "small-wearer"
  | "take-it-off"

/** Result of {@link slungLoad}. */
export interface SlungLoad {
  /** Load over body mass. [q; as a fraction] */
  readonly massShare: number
  /** Share that counts: 10 % for adults, 4 % for children and very light adults. [q_a; as a fraction] */
  readonly shareLimit: number
  /** Maximum mass by that share [m_a; kg] */
  readonly maxMass: number
  /** Utilisation of the mass limit [q_m; as a fraction] */
  readonly shareUtilisation: number
  /** Moment of the load about the spine, sideways. [M; N m] */
  readonly sidewaysMoment: number
  /** Pull of the muscles of the other side that holds it, trunk upright. [F; N] */
  readonly muscleForce: number
  /** What load and muscles add to the compression of the low back. [C; N] */
  readonly addedCompression: number
  /** Share of all weight on the more loaded foot, standing upright. [q_f; as a fraction] */
  readonly maxFootShare: number
  /** Of one end of the strap without friction. [T; N] */
  readonly tension: number
  /** Friction's ratio of tensions [k] */
  readonly tensionRatio: number
  /** Of the tighter end, friction over the shoulder at its most. [T_m; N] */
  readonly maxTension: number
  /** Maximum pressure [p; Pa] */
  readonly pressure: number
  /** Limit that counts [p_a; Pa] */
  readonly pressureLimit: number
  /** Utilisation of the pressure limit [q_p; as a fraction] */
  readonly pressureUtilisation: number
  /** Push of the load against the hip that a strap across the body makes. [H; N] */
  readonly hipPush: number
  /** Friction across the strap without which it slides down the shoulder or up to the neck. [mu_n] */
  readonly requiredFriction: number
  /** Whether friction holds the strap where it lies. [yes or no] */
  readonly strapStays: boolean
  /** Within the limits of mass and pressure that were compared, and the strap stays. [yes or no] */
  readonly withinLimits: boolean
}
