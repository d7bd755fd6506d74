// What goes in and what comes out.

import type { Charge, Current, Ratio, Resistance, Temperature, Time, Voltage } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"
import type { Chemistry } from "../chemistry.js"
import type { CellCaution, TemperatureCaution } from "../fields.js"

/** Input of {@link packHealth}. */
export interface PackHealthInput {
  /** Cells in series [n_s; whole 1 to 200] */
  series: number
  /** Cells in parallel [n_p; whole 1 to 200] */
  parallel: number
  /** Cell chemistry [nmc, lfp, lco, nimh, alkaline or lead; default nmc] */
  chemistry?: Chemistry
  /**
   * Resistance of all links, leads and the protection circuit between the cells and where the voltage was read. [R_l; 0
   * to 100 Ω; default 0]
   */
  interconnectResistance?: Resistance
  /** Temperature of the cells as they were read. [T; −40 to 80 °C; default 25 °C] */
  cellTemperature?: Temperature
  /** The lighter load, drawn for about 10 s; 0 where the voltage was read without any. [I_1; 0 to 1000 A; default 0] */
  lightCurrent?: Current
  /** Voltage of the whole pack at the end of that. [U_1; 10 mV to 1000 V] */
  lightVoltage: Voltage
  /** The heavier load, drawn for about 1 s straight after. [I_2; 1 mA to 1000 A] */
  heavyCurrent: Current
  /** Voltage of the whole pack at the end of that. [U_2; 1 mV to 1000 V] */
  heavyVoltage: Voltage
  /** Current of a discharge from full to the cut-off voltage, held constant or its mean. [I_d; 1 mA to 1000 A; optional] */
  dischargeCurrent?: Current | null
  /** How long that discharge took. [t_d; 1 min to 1000 h; optional] */
  dischargeDuration?: Time | null
  /**
   * What one voltage reading may be off by, either way: two of its last digits, where the meter's sheet is not at hand.
   * [a_U; 0 to 10 V; default 20 mV]
   */
  voltageUncertainty?: Voltage
  /** What a current reading may be off by, either way, as a share of it. [a_I; 0 to 20 %; default 2 %] */
  currentUncertainty?: Ratio
  /** What the time of the discharge may be off by, either way. [a_t; 0 to 1 h; default 1 min] */
  durationUncertainty?: Time
  /** Printed capacity of one cell. [Q_r; 1 mAh to 1000 Ah; optional] */
  ratedCellCapacity?: Charge | null
  /**
   * Resistance of one cell when new, at 25 °C: from readings as these, not the 1 kHz figure of a datasheet. [r_n; 1 µΩ
   * to 100 Ω; optional]
   */
  newCellResistance?: Resistance | null
}

/** Reasons for which {@link packHealth} can refuse. */
export type PackHealthRefusal = "links-exceed-reading"

/** Hazards and limits that an answer of {@link packHealth} can carry. */
export type PackHealthCaution =
  | "cannot-tell"
  | "other-loads"
  | "reading-too-coarse"
  | "test-temperature"
  | "unlikely-figures"
  | "unlikely-voltage"
  | "worn-capacity"
  | "worn-resistance"
  | "cold-charge"
  | "touch-voltage"
  | CellCaution
  | TemperatureCaution

/** Result of {@link packHealth}. Uncertainties are of about 95 %, either way. */
export interface PackHealth {
  /** Resistance of the pack [R; Ω] */
  readonly resistance: number
  /** Uncertainty of the resistance [u_R; Ω] */
  readonly resistanceUncertainty: number
  /** Voltage without load [E; V] */
  readonly openCircuitVoltage: number
  /** Resistance of one cell at 25 °C, links taken off: what the other pack solvers ask for. [r; Ω] */
  readonly cellResistance: number
  /** Uncertainty of the cell resistance [u_r; Ω] */
  readonly cellResistanceUncertainty: number
  /** Charge that the discharge took out of the pack. [Q_d; C] */
  readonly dischargedCharge: number | null
  /** Capacity of one cell, carried over to the temperature and the rate of printed figures. [Q_c; C] */
  readonly cellCapacity: number | null
  /** Uncertainty of the cell capacity [u_Q; C] */
  readonly cellCapacityUncertainty: number | null
  /** Capacity against the printed one. [h; as a fraction] */
  readonly capacityShare: number | null
  /** Uncertainty of the capacity share [u_h; as a fraction] */
  readonly capacityShareUncertainty: number | null
  /** Cell resistance against that when new. [w; as a fraction] */
  readonly resistanceRatio: number | null
  /** Uncertainty of the resistance ratio [u_w; as a fraction] */
  readonly resistanceRatioUncertainty: number | null
  /**
   * `sound`, `worn`, `cannot-tell` (the readings leave both open, fit no such pack or were not taken in a room) or
   * `not-judged` (nothing to compare with). [text]
   */
  readonly verdict: string
}

export type Si = SiOf<PackHealthInput>
