// What goes in and what comes out.
import type { Charge, Current, Ratio, Temperature, Time } from "../../quantity/index.js"
import type { Band, SiOf } from "../../solver/index.js"
import type { StandingKind } from "./data.js"

/** Input of {@link packStorage}. */
export interface PackStorageInput {
  /** Kind of cells [lithium, lead-sealed, lead-flooded, nickel, nickel-low-loss or alkaline; default lithium] */
  cells?: StandingKind
  /** Capacity of the pack [Q; 1 mAh to 10000 Ah] */
  capacity: Charge
  /** How long it stands. [t; 0 to 730 d] */
  duration: Time
  /** State of charge as it is put away. [s_0; 0 to 100 %; default 100 %] */
  startStateOfCharge?: Ratio
  /** Mean temperature of the place over that time. [T; −20 to 60 °C; default 20 °C] */
  storageTemperature?: Temperature
  /** What a protection circuit, a display or a converter left on draws all the while. [I_0; 0 to 1 A; default 0] */
  circuitCurrent?: Current
  /** Charge at which it has to be charged again. [s_1; 0 to 100 %; default 20 %] */
  minStateOfCharge?: Ratio
}

/** Hazards and limits that an answer of {@link packStorage} can carry. */
export type PackStorageCaution = "ages-in-storage" | "battery-fire" | "faulty-cell" | "runs-empty" | "top-up"

/** Result of {@link packStorage}. */
export interface PackStorage {
  /** Charge left, by the higher loss and by the lower. [s_l to s_h; as a fraction] */
  readonly stateOfCharge: Band
  /**
   * What the cells lose by themselves, share of a full charge; more than 1 where they would be empty before. [L_l to
   * L_h; as a fraction]
   */
  readonly selfDischarge: Band
  /** What the circuit takes, share of a full charge. [L_c; as a fraction] */
  readonly circuitShare: number
  /** Time until the charge may have fallen to the minimum; for lead no more than the interval of its makers. [t_u; s] */
  readonly topUpInterval: number
  /** Capacity left of lithium after that time, as a share of what it had; null for the others. [h; as a fraction] */
  readonly capacityShare: number | null
}

export type Si = SiOf<PackStorageInput>
