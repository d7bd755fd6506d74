// What goes in and what comes out.

import type { SiOf } from "../../solver/index.js"
import type { PackCaution, RateCaution } from "../fields.js"
import type { RuntimeInput } from "./problem.js"

/** What one step of the pattern took, all rounds together. */
export interface LoadTotal {
  /** Name [text] */
  readonly name: string
  /** Time [t_i; s] */
  readonly duration: number
  /** Charge [q_i; C] */
  readonly charge: number
  /** Energy at the pack's terminals. [W_i; J] */
  readonly energy: number
}

/** A moment of the discharge. */
export interface DischargePoint {
  /** Time [s] */
  readonly time: number
  /** State of charge [as a fraction] */
  readonly stateOfCharge: number
  /** Voltage [V] */
  readonly voltage: number
  /** Current [A] */
  readonly current: number
}

/** Reasons for which {@link runtime} can refuse. */
export type RuntimeRefusal = "depleted" | "insufficient-power" | "insufficient-voltage" | "no-load"

/** Hazards and limits that an answer of {@link runtime} can carry. */
export type RuntimeCaution =
  | "alkaline-rate"
  | "cold"
  | "collapse"
  | "optimistic"
  | "over-current"
  | PackCaution
  | PulseCaution
  | RateCaution

/** What is said of steps above the continuous limit of a cell that has one for pulses. */
export type PulseCaution = "over-pulse" | "pulse" | "pulse-heat" | "pulse-too-long"

/** Result of {@link runtime}. */
export interface Runtime {
  /** Time until cut off. [t; s] */
  readonly runtime: number
  /** Rounds of the pattern until then (whole ones, where it has more than one step). [N] */
  readonly rounds: number
  /** Energy given at the terminals. [W; J] */
  readonly deliveredEnergy: number
  /** Heat inside the pack. [W_h; J] */
  readonly heat: number
  /** Delivered charge [q; C] */
  readonly deliveredCharge: number
  /** Charge left at the end, 0 to 1. [s_1; as a fraction] */
  readonly endStateOfCharge: number
  /** Mean current [I_mean; A] */
  readonly meanCurrent: number
  /** Root-mean-square current, which heats wires and cells; null for a pack without resistance. [I_rms; A] */
  readonly rmsCurrent: number | null
  /**
   * Share of the capacity that these currents leave of lead and nickel, each load at its own rate; 1 for the others.
   * [k_r; as a fraction]
   */
  readonly rateShare: number
  /** Peak current [I_peak; A] */
  readonly peakCurrent: number
  /** Maximum current of the pattern at the start. [I_start; A] */
  readonly startCurrent: number
  /** Current at the end [I_end; A] */
  readonly endCurrent: number
  /** Voltage at the end under the load that ended it: below the minimum voltage where a heavier load was just due. [V_end; V] */
  readonly endVoltage: number
  /** What ends it: `cut-off` (minimum voltage), `collapse` (more power than it can give) or `depleted`. [text] */
  readonly endedBy: string
  /** What nominal watt-hours over the mean power would have promised. [t_s; s] */
  readonly simpleRuntime: number
  /** Each step's share. [list] */
  readonly pattern: readonly LoadTotal[]
  /** The course of it, at most 65 points. [list] */
  readonly history: readonly DischargePoint[]
  /** Pieces of the calculation. [number] */
  readonly iterations: number
  /** Largest error of the runtime from following the pattern's mean; 0 where every round was followed. [s] */
  readonly errorEstimate: number
}

export type Si = SiOf<RuntimeInput>
