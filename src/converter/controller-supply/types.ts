// What controllerSupply takes and gives back.
import type { Current, Ratio, Resistance, Voltage } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"

/** The controller hangs on the motors' own supply. */
export interface DirectFeed {
  /** Straight from the motors' supply. */
  type: "direct"
}
/** A linear regulator feeds it. */
export interface LinearFeed {
  /** A linear regulator. */
  type: "linear"
  /** Output voltage [V_o; 0.8 to 60 V] */
  outputVoltage: Voltage
  /** What it needs above its output. [V_d; 0 to 5 V; default 1.5 V] */
  dropout?: Voltage
}
/** A step-down converter feeds it. */
export interface SwitchingFeed {
  /** A step-down converter. */
  type: "switching"
  /** Output voltage [V_o; 0.8 to 60 V] */
  outputVoltage: Voltage
  /** Input below which it switches off. [V_m; 0.5 to 100 V] */
  minInputVoltage: Voltage
  /** Efficiency [eta; 10 to 100 %; default 85 %] */
  efficiency?: Ratio
}
/** A signal from a sender to a receiver whose grounds are joined by a wire that motor current also flows in. */
export interface SignalLine {
  /** Lowest voltage that the sender gives for high. [V_oh; 0.1 to 60 V] */
  highOutput: Voltage
  /** Highest voltage that it gives for low. [V_ol; 0 to 30 V] */
  lowOutput: Voltage
  /** Voltage from which on the receiver reads high. [V_ih; 0.1 to 60 V] */
  highThreshold: Voltage
  /** Voltage up to which it reads low. [V_il; 0 to 30 V] */
  lowThreshold: Voltage
  /** Ground wire and contacts that signal and motors share. [R_g; 0 to 10 Ω] */
  groundResistance: Resistance
}

/** Input of {@link controllerSupply}. */
export interface ControllerSupplyInput {
  /** Voltage of the source without load. [group] */
  sourceVoltage: {
    /** At the lowest charge in use. [V_0; 1 to 100 V] */
    low: Voltage
    /** Freshly charged. [V_f; 1 to 100 V] */
    high: Voltage
  }
  /** Source, wires and contacts up to where motors and controller part. [R_0; 0.1 mΩ to 100 Ω] */
  sourceResistance: Resistance
  /** All motors starting or stalled at once. [I_m; 0 to 1000 A] */
  motorCurrent: Current
  /** Controller, receiver and what they feed. [I_c; 0.1 mA to 20 A] */
  controllerCurrent: Current
  /** Fed by [by its type: direct, linear or switching] */
  feed: DirectFeed | LinearFeed | SwitchingFeed
  /** Voltage that the controller is made for. [group] */
  supplyWindow: {
    /** Lowest [V_l; 0.5 to 60 V] */
    low: Voltage
    /** Highest [V_h; 0.8 to 100 V] */
    high: Voltage
  }
  /** Voltage at which it resets (brown-out). [V_r; 0.5 to 60 V] */
  resetVoltage: Voltage
  /** Signal [group; optional] */
  signal?: SignalLine | null
}

/** Hazards and limits of validity that go with an answer of {@link controllerSupply}. */
export type ControllerSupplyCaution = "resets" | "below-window" | "thin-margin" | "over-voltage" | "signal-lost" | "lost-link" | "spikes"

/** Result of {@link controllerSupply}. */
export interface ControllerSupply {
  /** Motors' supply while they rest. [V_1; V] */
  readonly restVoltage: number
  /** Motors' supply while they start. [V_2; V] */
  readonly dipVoltage: number
  /** Controller while the motors rest. [U_1; V] */
  readonly controllerRestVoltage: number
  /** Controller while they start; zero where its converter has switched off. [U_2; V] */
  readonly controllerDipVoltage: number
  /** Most that the controller gets, freshly charged. [U_f; V] */
  readonly controllerMaxVoltage: number
  /** Above its reset [M_r; V] */
  readonly resetMargin: number
  /** Above its lowest supply [M_l; V] */
  readonly lowMargin: number
  /** Below its highest supply [M_h; V] */
  readonly highMargin: number
  /** Motor current at which the controller just does not reset; below zero: it resets even without. [I_x; A] */
  readonly maxMotorCurrent: number
  /** Ground moved by the motors' current; null without a signal. [V_g; V] */
  readonly groundShift: number | null
  /** Signal margin, high [N_h; V] */
  readonly signalHighMargin: number | null
  /** Signal margin, low [N_l; V] */
  readonly signalLowMargin: number | null
}

export type Si = SiOf<ControllerSupplyInput>
