// What goes in and what comes out.
import type { Current, Length, Power, Resistance, ResistancePerLength } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"
import type { UsbStandard } from "../data.js"

/** Input of {@link usbSupply}. */
export interface UsbSupplyInput {
  /** What the port promises [one of 14 words] */
  type: UsbStandard
  /** Current the build takes from it. [I; 0.1 mA to 10 A] */
  loadCurrent: Current
  /** Rated power of a Power Delivery source. [P_r; 0.1 to 240 W; optional] */
  ratedPower?: Power | null
  /** Whether the cable is marked for 5 A. [yes or no; default no] */
  cableMarked?: boolean
  /** Length of the cable; null takes the worst cable Type-C allows. [L; 0 to 100 m; optional] */
  cableLength?: Length | null
  /** Resistance per length of one power conductor of the cable. [r; 0.001 mΩ/m to 10 Ω/m; default 90.9 mΩ/m] */
  conductorResistance?: ResistancePerLength
  /** Power contacts in the path, out and back. [n; whole 0 to 100; default 4] */
  contacts?: number
  /** Resistance of one contact [R_k; 0 to 10 Ω; default 30 mΩ] */
  contactResistance?: Resistance
}

/** Result of {@link usbSupply}. */
export interface UsbSupply {
  /** Nominal port voltage [V_p; V] */
  readonly sourceVoltage: number
  /** Minimum voltage the port may have under load. [V_m; V] */
  readonly minSourceVoltage: number
  /** Current promised [I_p; A] */
  readonly promisedCurrent: number
  /** Power promised at nominal voltage. [P_p; W] */
  readonly promisedPower: number
  /** Whether the current asked for is promised. [yes or no] */
  readonly promised: boolean
  /** Resistance of the cable, both ways, contacts included. [R_c; Ω] */
  readonly cableResistance: number
  /** Voltage lost in it. [U; V] */
  readonly cableDrop: number
  /** Heat in the cable [P_c; W] */
  readonly cableHeat: number
  /** Voltage at the build from the nominal port. [V_b; V] */
  readonly loadVoltage: number
  /** Voltage at the build from the minimum port voltage. [V_l; V] */
  readonly minLoadVoltage: number
  /** Power at the build from the minimum port voltage. [P_l; W] */
  readonly minLoadPower: number
  /** Length at which this cable loses what a USB 2.0 cable may (0.125 V each way); null where the contacts alone lose it. [L_m; m] */
  readonly maxCableLength: number | null
  /** Voltage to be found on the sink's CC pin; null where the standard has none. [V_cc; V] */
  readonly ccVoltage: number | null
}

/** Reasons for which {@link usbSupply} refuses. */
export type UsbSupplyRefusal = "insufficient-voltage" | "needs-marked-cable" | "not-offered"

/** Hazards and limits of validity that go with an answer of {@link usbSupply}. */
export type UsbSupplyCaution =
  | "auto-off"
  | "enumerate"
  | "low-voltage"
  | "negotiated-voltage"
  | "over-current"
  | "overheating"
  | "touch-voltage"
  | "twelve-volts"

export type Si = SiOf<UsbSupplyInput>
