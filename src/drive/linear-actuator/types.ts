// What goes in and what comes out.
import type { Current, Force, Length, Speed, Temperature, Voltage } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"

/** Input of {@link linearActuator}: two points of the datasheet, and how it is used. */
export interface LinearActuatorInput {
  /** Voltage the datasheet's points were taken at. [V_r; 10 mV to 1000 V] */
  ratedVoltage: Voltage
  /** Speed without load. [v_0; 0.01 mm/s to 10 m/s] */
  noLoadSpeed: Speed
  /** Current without load. [I_0; 0 to 1000 A] */
  noLoadCurrent: Current
  /** Rated force, where the rated speed and current apply. [F_1; 1 mN to 1000 kN] */
  ratedForce: Force
  /** Speed against the rated force. [v_1; 0.01 mm/s to 10 m/s] */
  ratedSpeed: Speed
  /** Current against the rated force. [I_1; 0.1 mA to 1000 A] */
  ratedCurrent: Current
  /** Voltage at the actuator's own leads in use. [V_a; 10 mV to 1000 V] */
  terminalVoltage: Voltage
  /** Force against the motion; negative where the load helps, as in lowering. [F; −1000 to 1000 kN] */
  force: Force
  /** Stroke, for the time it takes. [S; 1 mm to 10 m; optional] */
  stroke?: Length | null
  /** Force the maker states that it holds without power (static or self-locking force). [F_m; 0 to 1000 kN; optional] */
  holdingForce?: Force | null
  /** Winding temperature in use. [T; −50 to 200 °C; default 20 °C] */
  windingTemperature?: Temperature
  /** Winding temperature the datasheet was taken at. [T_0; −50 to 200 °C; default 20 °C] */
  datasheetTemperature?: Temperature
}

/** Result of {@link linearActuator}. */
export interface LinearActuator {
  /** Speed of the rod in the direction it is driven. [v; m/s] */
  readonly speed: number
  /** Current; negative where the load drives the motor as a generator. [I; A] */
  readonly current: number
  /** Power taken from the supply. [P_e; W] */
  readonly electricalPower: number
  /** Power given to the load; negative where the load helps. [P_m; W] */
  readonly mechanicalPower: number
  /** Heat in the winding [P_w; W] */
  readonly windingHeat: number
  /** Heat in screw, gears and bearings. [P_f; W] */
  readonly frictionHeat: number
  /** Work given to the load against power taken, where the load opposes the motion. [eta; as a fraction] */
  readonly efficiency: number | null
  /** Time for the stroke, where a stroke was given. [t; s] */
  readonly strokeDuration: number | null
  /** Force at which it stands still at this voltage. [F_s; N] */
  readonly stallForce: number
  /** Current at which it stands still at this voltage. [I_s; A] */
  readonly stallCurrent: number
  /** Winding resistance in use. [R_w; Ω] */
  readonly windingResistance: number
  /** Force for each ampere beyond the friction current. [k_F; N/A] */
  readonly forceConstant: number
  /** Back electromotive force for each metre per second. [k_V; V s/m] */
  readonly backEmfConstant: number
  /** Current that friction takes. [I_f; A] */
  readonly frictionCurrent: number
  /** Efficiency of screw and gears when lifting: kF/kV. [eta_s; as a fraction] */
  readonly screwEfficiency: number
  /** Whether the maker states that it holds this load without power. [yes or no] */
  readonly selfLocking: boolean
  /** Force it holds without power as the maker states it; null where that is not known. [F_h; N] */
  readonly holdingForce: number | null
  /** Estimate: force from which the load drives it back without power; null where friction is estimated to hold any. [F_b; N] */
  readonly backDriveForce: number | null
  /** Estimate: speed at which the load drives it back with its leads shorted. [v_b; m/s] */
  readonly shortedBackDriveSpeed: number
}

/** Reasons for which {@link linearActuator} refuses. */
export type LinearActuatorRefusal = "insufficient-force"

/** Hazards and limits of validity that go with an answer of {@link linearActuator}. */
export type LinearActuatorCaution =
  | "back-driven"
  | "falls-unpowered"
  | "holding-unknown"
  | "over-current"
  | "over-force"
  | "over-voltage"
  | "pinch"
  | "runs-away"

export type Si = SiOf<LinearActuatorInput>
