// What goes in and what comes out.
import type { Length, Mass, Power, Temperature, TemperatureDifference } from "../../../quantity/index.js"
import type { SiOf } from "../../../solver/index.js"
import type { HeatClothing } from "../data-heat.js"

/** Input of {@link heatStress}. Give `wbgt` from a meter, or `wetBulbTemperature` and `globeTemperature`. */
export interface HeatStressInput {
  /** Metabolic rate with the rig on (from metabolicRate), averaged over an hour. [M; 60 to 1200 W] */
  metabolicRate: Power
  /** WBGT as a meter shows it. [t_m; −20 to 60 °C; optional] */
  wbgt?: Temperature | null
  /** Natural wet bulb temperature: a wet wick in the open, not the psychrometric one. [t_nw; −20 to 60 °C; optional] */
  wetBulbTemperature?: Temperature | null
  /** Temperature in a black globe. [t_g; −20 to 90 °C; optional] */
  globeTemperature?: Temperature | null
  /** Air temperature in the shade; with the sun out. [t_a; −20 to 60 °C; optional] */
  ambientTemperature?: Temperature | null
  /**
   * What is worn under and as the rig. [work-clothes, cloth-coverall, double-layer, vapour-barrier or
   * vapour-barrier-over-clothes; default vapour-barrier]
   */
  clothing?: HeatClothing
  /** Whether a hood, mask or closed head is worn. [yes or no; default no] */
  hooded?: boolean
  /** Adjustment of one's own, where it is more than the published one; a lower one is not used. [d_o; 0 to 20 K; optional] */
  clothingAdjustment?: TemperatureDifference | null
  /** Whether the wearer has worked a week or more in such heat. [yes or no; default no] */
  acclimatized?: boolean
  /**
   * Metabolic rate while resting; without it, rest of a standard person scaled to the wearer, and no more than
   * `metabolicRate`. [M_r; 40 to 250 W; optional]
   */
  restMetabolicRate?: Power | null
  /**
   * Mass of the wearer: with `stature`, limits stated for a standard person are scaled down to a small wearer. [m_w; 20
   * to 300 kg; optional]
   */
  bodyMass?: Mass | null
  /** Stature [H; 800 mm to 2.5 m; optional] */
  stature?: Length | null
}

/** Hazards and limits that an answer of {@link heatStress} can carry. */
export type HeatStressCaution =
  | "acclimatized"
  | "adults-only"
  | "costumes-are-tight"
  | "heat-can-kill"
  | "limits-disagree"
  | "outside-range"
  | "own-adjustment"
  | "standard-person"
  | "take-it-off"
  | "tight-suit"
  | "too-hot"

/** Result of {@link heatStress}. */
export interface HeatStress {
  /** WBGT [t_w; °C] */
  readonly wbgt: number
  /** WBGT with the clothing's adjustment. [t_e; °C] */
  readonly effectiveWbgt: number
  /** Body surface of the wearer; absent where mass or stature is not given. [S_d; m²] */
  readonly bodySurface: number | null
  /** Metabolic rate that a standard person of 1.8 m² would have at the same work; never below `metabolicRate`. [M_s; W] */
  readonly standardMetabolicRate: number
  /** Class of that metabolic rate, 0 to 4. [n_c] */
  readonly metabolicClass: number
  /** Limit by class [t_i; °C] */
  readonly classLimit: number
  /** Limit by the NIOSH curve. [t_n; °C] */
  readonly curveLimit: number
  /** Lower of the two limits. [t_l; °C] */
  readonly wbgtLimit: number
  /** Limit less effective WBGT; negative where it is exceeded. [d_t; K] */
  readonly wbgtMargin: number
  /** Metabolic rate while resting [M_q; W] */
  readonly restMetabolicRate: number
  /** Mean metabolic rate of this wearer over an hour that meets curve and class at this heat. [M_l; W] */
  readonly metabolicRateAtLimit: number
  /** Part of each hour with the rig on that meets it, resting in the same heat; 0 where not even rest does. [q_w; as a fraction] */
  readonly workShare: number
  /** Whether it is too hot to do this unbroken. [yes or no] */
  readonly exceeded: boolean
}

export type Si = SiOf<HeatStressInput>
