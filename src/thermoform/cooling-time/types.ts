// What goes in and what comes out.

import type { Density, HeatTransferCoefficient, Length, SpecificHeat, Temperature, ThermalConductivity } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"
import type { Plastic } from "../data.js"
import type { VapourCaution, WindowCaution } from "../forming-window.js"

/** Input of {@link coolingTime}. */
export interface CoolingTimeInput {
  /** What cools. [sheet, rod or tube] */
  shape: "sheet" | "rod" | "tube"
  /** Thickness of the sheet, or wall of the tube. [s_t; 0.1 to 100 mm; optional] */
  thickness?: Length | null
  /** Outer diameter of the rod or tube. [D; 1 to 300 mm; optional] */
  outsideDiameter?: Length | null
  /** Plastic [one of 12 words] */
  material: Plastic
  /** What the tube is filled with; the filling starts as hot as the wall. [empty or dry-sand; default empty] */
  filling?: "empty" | "dry-sand"
  /** Temperature at which it leaves the heat, all through; left out, the plastic's usual one. [T_given; 30 to 260 °C; optional] */
  formingTemperature?: Temperature | null
  /** Temperature of the room, or of the water. [T_room; −20 to 60 °C; default 20 °C] */
  ambientTemperature?: Temperature
  /** What cools it in the jig. [still-air, fan or water; default still-air] */
  cooling?: "still-air" | "fan" | "water"
  /** Film coefficient in the jig, radiation included, instead of the typical one. [h_given; 0.5 to 20000 W/(m²·K); optional] */
  filmCoefficient?: HeatTransferCoefficient | null
  /** Faces of a sheet that cool in the jig: 1 where it lies on a wooden form. [n_f; whole 1 to 2; default 1] */
  faces?: number
  /** Temperature below which it is let go; left out, the low end of the set temperatures. [T_rgiven; 0 to 150 °C; optional] */
  releaseTemperature?: Temperature | null
  /** Conductivity of the plastic, instead of the table's. [k_given; 0.01 to 500 W/(m·K); optional] */
  conductivity?: ThermalConductivity | null
  /** Density of the plastic, instead of the table's. [rho_given; 20 to 9000 kg/m³; optional] */
  density?: Density | null
  /** Specific heat of the plastic, heat of melting included, instead of the table's. [c_given; 100 to 10000 J/(kg·K); optional] */
  specificHeat?: SpecificHeat | null
}

/** Reasons for which {@link coolingTime} can refuse. */
export type CoolingTimeRefusal = "never-reached"

/** Hazards and limits that an answer of {@link coolingTime} can carry. */
export type CoolingTimeCaution =
  | "burns"
  | "film-estimate"
  | "hot-sand"
  | "overheated"
  | "quench"
  | "release-late"
  | "short-working-time"
  | "supercools"
  | VapourCaution
  | WindowCaution

/** Result of {@link coolingTime}. */
export interface CoolingTime {
  /** Temperature at which it leaves the heat. [T_f; °C] */
  readonly formingTemperature: number
  /** Coldest spot that may still be formed. [T_from; °C] */
  readonly minFormingTemperature: number
  /** Temperature of the warmest spot at release. [T_release; °C] */
  readonly releaseTemperature: number
  /** Time in still air until the coldest spot is too cold to form. [t_work; s] */
  readonly workingTime: number
  /** The same with the minimum heat in the plastic's spread: the time to plan with. [t_work_safe; s] */
  readonly plannedWorkingTime: number
  /** Time in the jig until the warmest spot is at the release temperature. [t_hold; s] */
  readonly holdTime: number
  /** The same at the slow end of the spread: the time to plan with. [t_hold_safe; s] */
  readonly plannedHoldTime: number
  /** Film coefficient in the jig [h; W/(m²·K)] */
  readonly filmCoefficient: number
  /** Biot number in the jig [Bi] */
  readonly biotNumber: number
  /** Iterations [number] */
  readonly iterations: number
  /** Warmest spot less release temperature at `holdTime`. [K] */
  readonly residual: number
}

export type Si = SiOf<CoolingTimeInput>
