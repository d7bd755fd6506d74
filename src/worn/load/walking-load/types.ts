// What goes in and what comes out.

import type { ForcePerLength, Frequency, Length, Mass, Ratio } from "../../../quantity/index.js"

/** Input of {@link walkingLoad}. */
export interface WalkingLoadInput {
  /** Mass that hangs from, or stands on, the springy part. [m_r; 10 g to 150 kg] */
  rigMass: Mass
  /** Step rate [f_s; 1 to 2.8 Hz; default 2 Hz] */
  stepRate?: Frequency
  /**
   * Force over sag of straps, frame or mast that the mass moves on, upwards; left out for a load that moves with the
   * trunk. [k_u; 50 N/m to 1000 N/mm; optional]
   */
  stiffness?: ForcePerLength | null
  /** Share of critical damping: how soon the load stops swinging after a knock. [zeta; 0.02 to 2; default 0.1] */
  dampingRatio?: Ratio
  /** How far the load can move up or down before it hits something. [s_f; 1 mm to 1 m; optional] */
  freeTravel?: Length | null
}

/** Hazards and limits that an answer of {@link walkingLoad} can carry. */
export type WalkingLoadCaution = "bounces-harder" | "hits-stops" | "snatches" | "take-it-off" | "walking-only"

/** Result of {@link walkingLoad}. Peaks are those of all four harmonics at once, an upper bound. */
export interface WalkingLoad {
  /** Of the load on its springy part; null for a load that moves with the trunk. [f_n; Hz] */
  readonly naturalFrequency: number | null
  /** How far the load sags at rest. [s_0; m] */
  readonly sag: number | null
  /** Shake of the load over that of the trunk at the step rate. [t_f] */
  readonly stepTransmissibility: number | null
  /** Peak force over weight with the load fixed to the trunk. [n_0] */
  readonly fixedPeakFactor: number
  /** Peak factor [n_p] */
  readonly peakFactor: number
  /** Peak force [F_p; N] */
  readonly peakForce: number
  /** Below 0 the load lifts off, and what holds it goes slack. [F_m; N] */
  readonly minForce: number
  /** What the springy part makes of the shake: over 1 it adds, below 1 it spares the wearer. [A] */
  readonly amplification: number
  /** Up or down from rest, against the trunk. [z; m] */
  readonly travel: number | null
  /** Utilisation of the free travel [q_s; as a fraction] */
  readonly travelUtilisation: number | null
}
