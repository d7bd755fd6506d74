// What goes in and what comes out.
import type { Charge, Current, Resistance, Temperature, Time, Voltage } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"
import type { Chemistry } from "../chemistry.js"

/** A string of cells, or a pack, beside others. */
export interface ParallelString {
  /** Open-circuit voltage [E_k; 10 mV to 1000 V] */
  openCircuitVoltage: Voltage
  /** Resistance of the string, its leads and contacts included. [r_k; 1 mΩ to 1000 Ω] */
  resistance: Resistance
  /** Capacity of the string. [Q_k; 0.1 to 1000 Ah] */
  capacity: Charge
  /** Maximum continuous discharge current at 25 °C. [I_d; 0 to 1000 A; optional] */
  maxCurrent?: Current | null
  /** Maximum charge current it may be given at 25 °C. [I_c; 0 to 1000 A; optional] */
  maxChargeCurrent?: Current | null
}

/** Input of {@link parallelSharing}. */
export interface ParallelSharingInput {
  /** Strings joined in parallel. [list of 1 to 50] */
  strings: readonly ParallelString[]
  /** Load current all told; 0 for strings joined without load. [I_l; 0 to 1000 A; optional] */
  current?: Current | null
  /** Load resistance instead. [R_L; 1 µΩ to 1000 kΩ; optional] */
  loadResistance?: Resistance | null
  /**
   * Rise of a string's voltage from empty to full, in its straight middle part; by the chemistry's curve and as many
   * cells as the voltage has where left out. [U; 1 mV to 200 V; optional]
   */
  voltageSpan?: Voltage | null
  /** Chemistry of all cells. [nmc, lfp, lco, nimh, alkaline or lead; default nmc] */
  chemistry?: Chemistry
  /** Cell temperature [T; −40 to 80 °C; default 25 °C] */
  cellTemperature?: Temperature
  /** Time after which the shares are wanted as well. [t_a; 0 to 10 h; default 10 s] */
  laterTime?: Time
}

/** One string's part. */
export interface StringState {
  /** Current in the first moment; negative where it is being charged. [A] */
  readonly current: number
  /** Current after the time asked for. [A] */
  readonly laterCurrent: number
  /** Current in the long run. [A] */
  readonly steadyCurrent: number
  /** Heat in it in the first moment. [W] */
  readonly heat: number
}

/** Reasons for which {@link parallelSharing} can refuse. */
export type ParallelSharingRefusal = "insufficient-current"

/** Hazards and limits that an answer of {@link parallelSharing} can carry. */
export type ParallelSharingCaution =
  | "battery-fire"
  | "beyond-empty"
  | "cold-charge"
  | "not-rechargeable"
  | "over-charge"
  | "over-current"
  | "span-taken"
  | "too-hot-to-charge"
  | "touch-voltage"
  | "unequal-charge"
  | "unequal-resistance"

/** Result of {@link parallelSharing}. */
export interface ParallelSharing {
  /** Common voltage in the first moment. [V; V] */
  readonly terminalVoltage: number
  /** Load current [I; A] */
  readonly loadCurrent: number
  /** Resistance of all strings together. [R; Ω] */
  readonly resistance: number
  /** Maximum current of any string in the first moment, either way. [I_w; A] */
  readonly maxStringCurrent: number
  /** Maximum current into any string in the first moment. [I_r; A] */
  readonly maxStringChargeCurrent: number
  /** Heat in all strings in the first moment. [P_h; W] */
  readonly heat: number
  /** Time in which the slowest difference falls to 37 %; null for one string. [tau; s] */
  readonly timeConstant: number | null
  /**
   * Load current at which the first string reaches its discharge limit, in the first moment; 0 where one is over it
   * even without load, null where a string has none. [I_s; A]
   */
  readonly loadCurrentAtLimit: number | null
  /** Each string's part. [list] */
  readonly strings: readonly StringState[]
  /** Number of strings being charged by the others in the first moment. [N_c] */
  readonly chargedCount: number
}

export type Si = SiOf<ParallelSharingInput>
