// What motorDriver takes and gives back.
import type { Current, Frequency, Ratio, Resistance, Temperature, ThermalResistance, Time, Voltage } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"

/** A bridge of bipolar transistors: it takes volts. */
export interface BipolarBridge {
  /** It takes volts. */
  type: "bipolar"
  /** What both transistors in the motor's path take together at this current. [V_d; 0 to 10 V] */
  totalDrop: Voltage
}
/** A bridge of field-effect transistors: it takes ohms. */
export interface MosfetBridge {
  /** It takes ohms. */
  type: "mosfet"
  /** Resistance of one switch, at 25 °C; the motor's path leads through two. [R_s; 0.1 mΩ to 10 Ω] */
  switchResistance: Resistance
  /** Resistance hot over that at 25 °C. [f_h; 1 to 2.5; default 1.4] */
  warmFactor?: number
}
/** The bridge switched on and off fast, the current going round through its lower switches meanwhile. */
export interface BridgeSwitching {
  /** Switching frequency [f; 10 Hz to 1 MHz] */
  frequency: Frequency
  /** Share of the time that it is on. [D; 1 to 100 %] */
  duty: Ratio
  /** Time in which its output rises or falls. [t_r; 0 to 0.1 ms] */
  riseTime: Time
  /** Dead time [t_d; 0 to 0.1 ms; default 0] */
  deadTime?: Time
  /** Drop of its diodes [V_f; 0 to 3 V; default 1 V] */
  diodeDrop?: Voltage
}

/** Input of {@link motorDriver}. */
export interface MotorDriverInput {
  /** Supply voltage [V; 1 to 200 V] */
  supplyVoltage: Voltage
  /** Current of the motor at the load asked about. [I; 1 mA to 500 A] */
  current: Current
  /** Bridge [by its type: bipolar or mosfet] */
  bridge: BipolarBridge | MosfetBridge
  /** Switching [group; optional] */
  switching?: BridgeSwitching | null
  /** Supply voltage at which it works. [group; optional] */
  supplyWindow?: {
    /** Lowest [V_l; 0.5 to 200 V] */
    low: Voltage
    /** Highest [V_h; 0.5 to 250 V] */
    high: Voltage
  } | null
  /** Current that it can carry for as long as it likes, as it is cooled. [I_r; 1 mA to 500 A; optional] */
  ratedCurrent?: Current | null
  /** Current at which it limits or switches itself off. [I_l; 1 mA to 1000 A; optional] */
  currentLimit?: Current | null
  /** Winding of the motor, for what flows as it starts, is braked and is reversed. [R_w; 1 mΩ to 10 kΩ; optional] */
  windingResistance?: Resistance | null
  /** What the motor does while the driver is disabled: coasts (leads open) or brakes (leads joined). [coasts or brakes; default coasts] */
  whenDisabled?: "coasts" | "brakes"
  /** Standby current [I_q; 0 to 5 A; default 0] */
  standbyCurrent?: Current
  /** From the hottest place of the chip to the air, as it is mounted. [R_th; 0.01 to 1000 K/W; optional] */
  thermalResistance?: ThermalResistance | null
  /** Air at the driver [T_a; −40 to 85 °C; default 25 °C] */
  ambientTemperature?: Temperature
  /** Temperature at which the chip switches itself off. [T_m; 80 to 200 °C; default 150 °C] */
  chipTemperatureLimit?: Temperature
}

/** Why {@link motorDriver} can refuse. */
export type MotorDriverRefusal = "insufficient-voltage" | "input-too-high"

/** Hazards and limits of validity that go with an answer of {@link motorDriver}. */
export type MotorDriverCaution =
  | "burns"
  | "coasts"
  | "brake-does-not-hold"
  | "enable-is-no-stop"
  | "over-rating"
  | "limits-at-stall"
  | "limit-unknown"
  | "overheating"
  | "returns-current"
  | "touch-voltage"

/** Result of {@link motorDriver}. */
export interface MotorDriver {
  /** Mean voltage at the motor. [V_m; V] */
  readonly motorVoltage: number
  /** What the bridge takes of the mean voltage. [V_x; V] */
  readonly drop: number
  /** Conduction loss [P_c; W] */
  readonly conductionLoss: number
  /** Switching loss [P_s; W] */
  readonly switchingLoss: number
  /** Heat in the driver, its own needs included. [P; W] */
  readonly heat: number
  /** Power to the motor [P_m; W] */
  readonly motorPower: number
  /** Supply current [I_s; A] */
  readonly supplyCurrent: number
  /** Efficiency [eta; as a fraction] */
  readonly efficiency: number
  /** Standby power [P_q; W] */
  readonly standbyPower: number
  /** Chip temperature [T_c; °C] */
  readonly chipTemperature: number | null
  /** Current against continuous current [u; as a fraction] */
  readonly utilisation: number | null
  /** Current as it starts from standstill at full supply; null without the winding. [I_st; A] */
  readonly startCurrent: number | null
  /** Current as it is braked from this speed; null without the winding. [I_b; A] */
  readonly brakingCurrent: number | null
  /** Current as it is reversed from this speed at full supply; null without the winding. [I_v; A] */
  readonly reversingCurrent: number | null
}

export type Si = SiOf<MotorDriverInput>
