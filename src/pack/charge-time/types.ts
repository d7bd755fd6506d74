// What goes in and what comes out.

import type { Band, SiOf } from "../../solver/index.js"
import type { RechargeableCaution, TemperatureCaution } from "../fields.js"
import type { ChargeTimeInput } from "./problem.js"

/** Reasons for which {@link chargeTime} can refuse. */
export type ChargeTimeRefusal = "already-full" | "insufficient-voltage" | "not-rechargeable" | "too-cold"

/** Hazards and limits that an answer of {@link chargeTime} can carry. */
export type ChargeTimeCaution =
  | "charge-rate"
  | "charge-time-is-minimum"
  | "lead-tail"
  | "nickel-end"
  | "nickel-timer"
  | "over-charge"
  | "slow-nickel"
  | "too-hot-to-charge"
  | "cold-charge"
  | "touch-voltage"
  | RechargeableCaution
  | TemperatureCaution

/** Result of {@link chargeTime}. */
export interface ChargeTime {
  /** Time that one resistance promises: the minimum. [t; s] */
  readonly minDuration: number
  /** Part of it at constant current. [t_1; s] */
  readonly constantCurrentDuration: number
  /** Part of it at constant voltage. [t_2; s] */
  readonly constantVoltageDuration: number
  /** Charge when the charger changes over, 0 to 1. [s_c; as a fraction] */
  readonly changeOverStateOfCharge: number
  /** Charge when it stops, 0 to 1. [s_e; as a fraction] */
  readonly endStateOfCharge: number
  /** Energy into the pack. [W; J] */
  readonly energy: number
  /** Part of it lost as heat by the resistance. [W_h; J] */
  readonly heat: number
  /** Charge over current, which no charger meets. [t_s; s] */
  readonly simpleDuration: number
  /** Time against that. [k_o; as a fraction] */
  readonly durationRatio: number
  /** Charge to put in, with what the cells lose of it. [Q_i; C] */
  readonly chargeIn: number
  /** Time to expect by datasheets, shortest and longest; null for nickel. [t_l to t_m; s] */
  readonly likelyDuration: Band | null
  /** What ends the charge of nickel, whichever comes first; null for the others, which the current ends. [group] */
  readonly termination: {
    /** Longest time on the charger [t_x; s] */
    readonly timer: number
    /** Fall of the pack's voltage from its peak; null where none shows at this rate. [U_d; V] */
    readonly voltageDip: number | null
  } | null
}

export type Si = SiOf<ChargeTimeInput>
