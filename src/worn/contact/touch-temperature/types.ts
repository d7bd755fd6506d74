// What goes in and what comes out.

import type { Temperature, Time } from "../../../quantity/index.js"
import type { Band } from "../../../solver/index.js"
import type { TouchMaterial } from "../data-touch.js"

/** Input of {@link touchTemperature}. */
export interface TouchTemperatureInput {
  /** Surface temperature as measured, once it no longer climbs. [T_s; −40 to 300 °C] */
  surfaceTemperature: Temperature
  /** Material that is touched. [metal, coated-metal, glass, plastic or wood] */
  material: TouchMaterial
  /** How long skin may stay on it: 8 h for what is worn. [t_k; 1 ms to 24 h; default 8 h] */
  contactDuration?: Time
  /** Temperature of the surroundings when it was measured. [T_m; −40 to 60 °C; default 25 °C] */
  measuredAmbientTemperature?: Temperature
  /** Temperature of the surroundings where it is worn. [T_w; −40 to 60 °C; default 25 °C] */
  ambientTemperature?: Temperature
}

/** What one standard says. */
export interface TouchLimit {
  /** Standard [text] */
  readonly standard: string
  /** Limit [°C] */
  readonly limit: number
  /** Limit less the temperature in use; negative where it is too hot. [K] */
  readonly temperatureMargin: number
}

/** Hazards and limits that an answer of {@link touchTemperature} can carry. */
export type TouchTemperatureCaution =
  | "adults-only"
  | "cold-metal"
  | "cold-surface"
  | "curve-extrapolated"
  | "not-a-clearance"
  | "painful"
  | "short-contact"
  | "shorter-than-scope"
  | "too-hot"
  | "warmer-surroundings"

/** Result of {@link touchTemperature}. */
export interface TouchTemperature {
  /** Temperature that IEC 62368-1 compares: as measured, not shifted to warmer surroundings. [T_c; °C] */
  readonly comparedTemperature: number
  /** Temperature to expect where it is worn; never taken below the measured one. [T_u; °C] */
  readonly temperatureInUse: number
  /** Coldest it is to be expected: where it is worn or where it was measured, whichever is colder. [T_k; °C] */
  readonly minTemperature: number
  /**
   * Limits of the standards for this material and time: the low one is to be kept, the high one is the far end of their
   * spread. [T_l to T_h; °C]
   */
  readonly limit: Band
  /** Lowest limit less the temperature in use. [dT; K] */
  readonly temperatureMargin: number
  /** Whether the temperature in use is above the lowest limit. [yes or no] */
  readonly tooHot: boolean
  /** Whether lasting contact hurts at the chest and back. [yes or no] */
  readonly painful: boolean
  /** Time to reversible injury of skin at this temperature; absent past six hours. [t_1; s] */
  readonly reversibleTime: number | null
  /** Time to injury through the epidermis; absent past six hours. [t_2; s] */
  readonly lastingTime: number | null
  /** Time by the halving rule for long, low-temperature contact; absent outside 44 to 51 °C. [t_3; s] */
  readonly halvingTime: number | null
  /** Shortest of the three times; absent where none applies. [t_b; s] */
  readonly burnTime: number | null
  /** Every standard's limit. [list] */
  readonly limits: readonly TouchLimit[]
}
