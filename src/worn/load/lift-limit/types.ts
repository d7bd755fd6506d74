// What goes in and what comes out.

import type { Angle, Length, Mass } from "../../../quantity/index.js"
import type { Coupling, LiftDuration, Lifter } from "../data-lift.js"

/** Input of {@link liftLimit}. Reaches are from the middle of the ankles to the middle of the hands, level. */
export interface LiftLimitInput {
  /** Mass of the rig as it is lifted. [m_r; 10 g to 150 kg] */
  rigMass: Mass
  /** Height of the hands at the start. [V_1; 0 to 1.75 m] */
  startHeight: Length
  /** Height of the hands at the end. [V_2; 0 to 1.75 m] */
  endHeight: Length
  /** Reach at the start [H_1; 100 to 630 mm] */
  startReach: Length
  /** Reach at the end [H_g; 100 to 630 mm; optional] */
  endReach?: Length | null
  /** Turn of the trunk at the start. [A_1; 0 to 135°; default 0] */
  startTurn?: Angle
  /** Turn of the trunk at the end. [A_2; 0 to 135°; default 0] */
  endTurn?: Angle
  /** Lifts a minute; 0.2 stands for one in five minutes and fewer. [f; 0.2 to 15; default 0.2] */
  liftRate?: number
  /** How long such lifting goes on. [short, medium or long; default short] */
  duration?: LiftDuration
  /** How well the hands hold. [good, fair or poor; default fair] */
  coupling?: Coupling
  /** Who lifts. [anyone, men-adult, men-other, women-adult or women-other; default anyone] */
  lifter?: Lifter
}

/** Reasons for which {@link liftLimit} can refuse. */
export type LiftLimitRefusal = "outside-data"

/** Hazards and limits that an answer of {@link liftLimit} can carry. */
export type LiftLimitCaution =
  | "adults-only"
  | "lift-together"
  | "lifting-only"
  | "over-limit"
  | "over-reference"
  | "reach-under-25cm"
  | "take-it-off"
  | "too-heavy-for-three"

/** Result of {@link liftLimit}. */
export interface LiftLimit {
  /** Multipliers at the start: reach, height, turn, frequency, coupling. [k_h1] */
  readonly startReachFactor: number
  /** Height factor, start [k_v1] */
  readonly startHeightFactor: number
  /** Turn factor, start [k_a1] */
  readonly startTurnFactor: number
  /** Frequency factor, start [k_f1] */
  readonly startFrequencyFactor: number
  /** Hold factor, start [k_c1] */
  readonly startCouplingFactor: number
  /** Multiplier of the distance lifted. [k_d] */
  readonly distanceFactor: number
  /** Recommended weight limit at the start and at the end. [m_1; kg] */
  readonly startLimit: number
  /** Limit at the end [m_2; kg] */
  readonly endLimit: number
  /** The lower. [m_l; kg] */
  readonly massLimit: number
  /** Load over limit. [n_l] */
  readonly liftingIndex: number
  /** ISO reference mass for the lifter. [m_i; kg] */
  readonly referenceMass: number
  /** Load for one pair of hands that keeps to both. [m_p; kg] */
  readonly recommendedMass: number
  /** People who can lift it together, each as strong as the lifter; null above what guidance grants a team of three. [n_p] */
  readonly peopleCount: number | null
}
