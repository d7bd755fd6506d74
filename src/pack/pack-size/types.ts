// What goes in and what comes out.

import type { Current, Energy, Mass, Ratio, Temperature, Voltage } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"
import type { CellCaution, PackAge, RateCaution } from "../fields.js"
import type { CellOnOffer, PackCandidate, RejectedPack } from "./candidates.js"

/** Input of {@link packSize}. */
export interface PackSizeInput extends PackAge {
  /** Cells to choose from [list of 1 to 500] */
  cells: readonly CellOnOffer[]
  /** Minimum voltage the load needs, under the peak current and nearly empty. [V_min; 10 mV to 500 V] */
  minVoltage: Voltage
  /** Maximum voltage the load stands, at full charge. [V_max; 10 mV to 500 V] */
  maxVoltage: Voltage
  /** Peak current [I; 0.1 mA to 1000 A] */
  peakCurrent: Current
  /**
   * Mean current while energy is drawn, by which lead and nickel lose capacity; the peak current where left out. [I_m;
   * 0.1 mA to 1000 A; optional]
   */
  meanCurrent?: Current | null
  /** Charge left when it is needed, after standing since it was charged. [s_0; 5 to 100 %; default 100 %] */
  startStateOfCharge?: Ratio
  /** Energy to be delivered. [W; 3.6 J to 100 kWh] */
  energy: Energy
  /** Share of the nominal energy that is counted on. [y; 0.05 to 1; default 0.8] */
  usableShare?: Ratio
  /** Charge at which the minimum voltage must still hold. [s_low; 0 to 1; default 0.2] */
  minStateOfCharge?: Ratio
  /** Cell temperature in use. [T; −40 to 80 °C; default 25 °C] */
  cellTemperature?: Temperature
  /** Maximum mass of the cells [m_max; 0.1 g to 1000 kg; optional] */
  maxMass?: Mass | null
  /** Maximum watt-hours for carriage, such as 100 Wh. [W_max; 3.6 J to 100 kWh; optional] */
  transportEnergyLimit?: Energy | null
  /** Most cells in parallel considered. [n_max; whole 1 to 200; default 50] */
  maxParallel?: number
  /** What the ranking goes by. [mass, cells or price; default mass] */
  rankBy?: "mass" | "cells" | "price"
}

/** Reasons for which {@link packSize} can refuse. */
export type PackSizeRefusal = "no-candidate"

/** Hazards and limits that an answer of {@link packSize} can carry. */
export type PackSizeCaution = "cold-charge" | "deep-discharge" | "touch-voltage" | CellCaution | RateCaution

/** Result of {@link packSize}. */
export interface PackSize {
  /** Name of the best cell. [text] */
  readonly bestCell: string
  /** Cells in series. [n_s] */
  readonly series: number
  /** Cells in parallel. [n_p] */
  readonly parallel: number
  /** Nominal energy of the best. [W_p; J] */
  readonly energy: number
  /** Mass of the cells [m_p; kg] */
  readonly mass: number
  /** Every pack that fits, best first; one for each cell and number in series. [list] */
  readonly candidates: readonly PackCandidate[]
  /** Every cell and number in series that fails, with the reason. [list] */
  readonly rejected: readonly RejectedPack[]
}

export type Si = SiOf<PackSizeInput>
