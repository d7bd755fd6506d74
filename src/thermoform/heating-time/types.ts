// What goes in and what comes out.

import type {
  Density,
  HeatTransferCoefficient,
  Length,
  Ratio,
  SpecificHeat,
  Temperature,
  TemperatureDifference,
  ThermalConductivity,
} from "../../quantity/index.js"
import type { Band, SiOf } from "../../solver/index.js"
import type { Plastic } from "../data.js"
import type { HeatCaution, WindowCaution } from "../forming-window.js"

/** Input of {@link heatingTime}. */
export interface HeatingTimeInput {
  /** What is heated. [sheet, rod or tube] */
  shape: "sheet" | "rod" | "tube"
  /** Thickness of the sheet, or wall of the tube. [s_t; 0.1 to 100 mm; optional] */
  thickness?: Length | null
  /** Outer diameter of the rod or tube. [D; 1 to 300 mm; optional] */
  outsideDiameter?: Length | null
  /** Plastic [one of 12 words] */
  material: Plastic
  /** What the tube is filled with. [empty or dry-sand; default empty] */
  filling?: "empty" | "dry-sand"
  /** Temperature of the sand when it is poured; left out, it starts as cold as the part. [T_sand; 0 to 300 °C; optional] */
  sandTemperature?: Temperature | null
  /** What heats it. [oven, heat-gun, hot-plate, radiant or water-bath] */
  heatSource: "oven" | "heat-gun" | "hot-plate" | "radiant" | "water-bath"
  /** Temperature of the air, plate, heating element or water. [T_src; 0 to 1200 °C] */
  sourceTemperature: Temperature
  /**
   * Core temperature wanted; left out, the lower forming temperature. Give the usual one for sharp bends and time to
   * work. [T_core; 20 to 300 °C; optional]
   */
  coreTemperature?: Temperature | null
  /** Faces of a sheet that the source reaches: 1 or 2. [n_f; whole 1 to 2; default 2] */
  faces?: number
  /**
   * Film coefficient at the heated face, radiation of the oven included; for a radiant heater that of the air alone.
   * [h_given; 0.5 to 20000 W/(m²·K); optional]
   */
  filmCoefficient?: HeatTransferCoefficient | null
  /**
   * Radiant heater: emissivity of element and sheet together with the share of the heater that the sheet sees.
   * [epsilon; 0.05 to 1; default 0.9]
   */
  emissivity?: Ratio
  /** Temperature of the part at the start. [T_start; −20 to 150 °C; default 20 °C] */
  startTemperature?: Temperature
  /**
   * Temperature of the room, which cools the back of a sheet on a hot plate or under a radiant heater. [T_room; −20 to
   * 50 °C; default 20 °C]
   */
  ambientTemperature?: Temperature
  /** How far off the source's temperature may be. [dT_src; 0 to 50 K; default 5 K] */
  sourceTemperatureError?: TemperatureDifference
  /** Conductivity of the plastic, instead of the table's. [k_given; 0.01 to 500 W/(m·K); optional] */
  conductivity?: ThermalConductivity | null
  /** Density of the plastic, instead of the table's. [rho_given; 20 to 9000 kg/m³; optional] */
  density?: Density | null
  /** Specific heat of the plastic, heat of melting included, instead of the table's. [c_given; 100 to 10000 J/(kg·K); optional] */
  specificHeat?: SpecificHeat | null
}

/** Reasons for which {@link heatingTime} can refuse. */
export type HeatingTimeRefusal = "never-reached"

/** Hazards and limits that an answer of {@link heatingTime} can carry. */
export type HeatingTimeCaution =
  | "film-estimate"
  | "hot-sand"
  | "no-safe-source"
  | "sand-above-limit"
  | "source-chars"
  | "surface-first"
  | "take-out-in-time"
  | "uneven"
  | HeatCaution
  | WindowCaution

/** Result of {@link heatingTime}. */
export interface HeatingTime {
  /** Core temperature to be reached. [T_l; °C] */
  readonly coreTemperature: number
  /** Surface temperature not to be passed. [T_u; °C] */
  readonly surfaceTemperatureLimit: number
  /** Time until the core is there [t; s] */
  readonly time: number
  /** The same over the spread of the plastic's properties: at the fast end and at the slow end. [t_fast to t_slow; s] */
  readonly timeRange: Band
  /** Peak surface temperature [T_hot; °C] */
  readonly peakSurfaceTemperature: number
  /** When it is that hot. [t_hot; s] */
  readonly peakSurfaceTime: number
  /** When the surface of the usual plastic passes its limit; null where it never does. [t_u; s] */
  readonly surfaceLimitTime: number | null
  /** The earliest that a surface may pass its limit, whatever the spread; null where none does. [t_u1; s] */
  readonly minSurfaceLimitTime: number | null
  /** Whether a surface may pass its limit before the core is surely ready. [yes or no] */
  readonly overheatsFirst: boolean
  /**
   * Hottest source with which no surface passes its limit before the core is surely ready; never above the onset of
   * charring. [T_lim; °C]
   */
  readonly maxSourceTemperature: number | null
  /** `solved`; `scorch`: held down to the onset of charring; `none`: no source does; `not-sought`: preheated sand. [text] */
  readonly maxSourceNote: string
  /**
   * Source temperature to set: with it no surface passes its limit however long it takes, the source's error allowed
   * for; null where none is safe. [T_adv; °C]
   */
  readonly advisedSourceTemperature: number | null
  /**
   * Time at the advised source: the earliest (fast plastic, source hot by its error), and that after which the core is
   * there whatever the spread; null where none is safe. [t_a1 to t_a2; s]
   */
  readonly advisedTime: Band | null
  /** Film coefficient at the heated face. [h; W/(m²·K)] */
  readonly filmCoefficient: number
  /** Air temperature that would heat alike: that of the source, except for a radiant heater. [T_e; °C] */
  readonly equivalentTemperature: number
  /** Biot number on the half thickness, thickness, radius or wall. [Bi] */
  readonly biotNumber: number
  /** Fourier number at `time` on the same length. [Fo] */
  readonly fourierNumber: number
  /** Iterations [number] */
  readonly iterations: number
  /** Core temperature less target at `time`. [K] */
  readonly residual: number
}

export type Si = SiOf<HeatingTimeInput>
