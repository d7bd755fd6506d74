// What goes in and what comes out.
import type { Current, Power, Ratio, Resistance, Temperature, Time, Voltage } from "../../quantity/index.js"
import type { Band, SiOf } from "../../solver/index.js"
import type { ConductorDescription } from "../conductor.js"
import type { Laid } from "../laid.js"

/** Hold current of a part at one air temperature, by its own sheet. */
export interface HoldPoint {
  /** Air temperature [T_k1; −60 to 150 °C] */
  temperature: Temperature
  /** Hold current over that at 23 °C. [f_k1; 0.01 to 4] */
  share: Ratio
}

/** Input of {@link resettableFuse}: the part by its sheet, the circuit, and the wire behind it. */
export interface ResettableFuseInput extends ConductorDescription, Laid {
  /** Current it carries for good at 23 °C. [I_n; 1 mA to 100 A] */
  holdCurrent: Current
  /** Current that trips it for sure at 23 °C; twice the hold current where left out. [I_t; 1 mA to 300 A; optional] */
  tripCurrent?: Current | null
  /** Current at which its sheet prints the time to trip; five times the hold current where left out. [I_p; 1 mA to 1000 A; optional] */
  testCurrent?: Current | null
  /** Longest time to trip at that current. [t_n; 1 ms to 10 min] */
  tripTime: Time
  /** Resistance of a new part, at least. [R_lo; 0 to 1000 Ω] */
  minResistance: Resistance
  /** Resistance one hour after it tripped, at most. [R_hi; 0.1 mΩ to 1000 Ω] */
  maxResistance: Resistance
  /** Voltage it may stand against when tripped. [U_m; 1 to 600 V] */
  maxVoltage: Voltage
  /** Current it may break. [I_b; 1 to 1000 A; default 40 A] */
  maxFaultCurrent?: Current
  /** Heat it gives off while tripped. [P_d; 1 mW to 100 W; optional] */
  trippedPower?: Power | null
  /** Hold current by air temperature from its own sheet, instead of the published range. [list of 2 to 50; optional] */
  holdCurve?: readonly HoldPoint[] | null
  /** Voltage of the full pack. [U_s; 0.1 to 600 V] */
  sourceVoltage: Voltage
  /** Steady current of the circuit. [I; 0.1 mA to 300 A] */
  current: Current
  /** Current of a short circuit behind it, full pack. [I_f; 1 mA to 10000 A; optional] */
  faultCurrent?: Current | null
  /** Coldest air around it in use, where it trips last. [T_lo; −40 to 85 °C; default 0] */
  minDeviceTemperature?: Temperature
  /** Warmest air around it in use, where it holds the lowest current. [T_hi; −40 to 85 °C; default 40 °C] */
  maxDeviceTemperature?: Temperature
  /**
   * Current the wire's own datasheet allows, where that is less than the heat balance of how it is laid. [I_w; 0.1 mA
   * to 1000 A; optional]
   */
  datasheetAmpacity?: Current | null
  /** Conductor temperature a short fault may reach. [T_f; 70 to 350 °C; default 160 °C] */
  faultTemperatureLimit?: Temperature
}

/** Result of {@link resettableFuse}. */
export interface ResettableFuse {
  /** Current it carries for good in the warmest place. [I_h; A] */
  readonly holdLimit: number
  /** Rating at 23 °C that the steady current needs there. [I_q; A] */
  readonly requiredHoldCurrent: number
  /** Current it may carry for good in the coldest place. [I_c; A] */
  readonly tripLimit: number
  /** Current that it may let through for more than 5 s in the coldest place. [I_5; A] */
  readonly slowCurrent: number
  /** Current at which the conductor reaches its insulation's rating where it lies. [I_r; A] */
  readonly ampacity: number
  /** Current the wire bears for good: that, or its own datasheet's where that is less. [I_z; A] */
  readonly continuousCurrent: number
  /** It carries the steady current in the warmest place. [yes or no] */
  readonly carriesLoad: boolean
  /** The wire bears for good whatever may flow for more than 5 s. [yes or no] */
  readonly protectsWire: boolean
  /** Longest time to trip at the fault current, in the coldest place; null where it may never trip. [t_f; s] */
  readonly tripDuration: number | null
  /** The wire bears every fault until it trips. [yes or no] */
  readonly survivesFault: boolean
  /**
   * Its voltage and breaking current are enough for this pack; null where the voltage is and no short-circuit current
   * is given. [yes or no]
   */
  readonly withinRating: boolean | null
  /** Every check here is passed, and a short circuit trips it in the coldest place too. [yes or no] */
  readonly coordinated: boolean
  /** Voltage lost in it at the steady current: new, and after it has tripped. [U_lo to U_hi; V] */
  readonly drop: Band
  /** Heat in it at the steady current after it has tripped. [P; W] */
  readonly heat: number
  /** Current that still flows while it is tripped; null where its heat is not given. [I_x; A] */
  readonly trippedCurrent: number | null
}

/** Hazards and limits of validity that go with an answer of {@link resettableFuse}. */
export type ResettableFuseCaution =
  | "burns"
  | "fault-burns"
  | "fault-current"
  | "fault-not-given"
  | "limit-raised"
  | "may-not-trip"
  | "over-voltage"
  | "still-live"
  | "trip-time"
  | "trips-in-use"
  | "wire-unprotected"

export type Si = SiOf<ResettableFuseInput>
