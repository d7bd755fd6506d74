// What goes in and what comes out.
import type { Length, Mass, Ratio, Speed } from "../../../quantity/index.js"
import type { Terrain } from "../data-metabolic.js"

/** Input of {@link metabolicRate}. */
export interface MetabolicRateInput {
  /** Wearer's body mass, undressed. [m_w; 20 to 300 kg] */
  bodyMass: Mass
  /** Mass carried on the trunk: back, hips, chest. [m_t; 0 to 150 kg; default 0] */
  rigMass?: Mass
  /** Mass carried on the head. [m_h; 0 to 60 kg; default 0] */
  headMass?: Mass
  /** Mass held in the hands. [m_a; 0 to 60 kg; default 0] */
  handMass?: Mass
  /** Mass on the feet beyond ordinary shoes. [m_f; 0 to 60 kg; default 0] */
  footMass?: Mass
  /** Walking speed; 0 stands still. [v; 0 to 2.5 m/s; default 0] */
  walkingSpeed?: Speed
  /** Rise over run, negative downhill. [G; −0.4 to 0.45; default 0] */
  grade?: Ratio
  /** Surface underfoot [hard, dirt-road, light-brush, heavy-brush, swamp, loose-sand or soft-snow; default hard] */
  terrain?: Terrain
  /** Depth of the footprint in soft snow; given with any other surface it is a fault. [d_s; 0 to 500 mm; default 0] */
  snowDepth?: Length
  /** Standing rate per kilogram that the backpacking equation starts from, W/kg. [M_s; 0.8 to 2; default 1.05] */
  standingRate?: number
}

/** What one equation says. */
export interface MetabolicReading {
  /** Name of the equation. [text] */
  readonly equation: string
  /** Its metabolic rate. [W] */
  readonly metabolicRate: number
  /** Whether the case lies inside the equation's published range. [yes or no] */
  readonly applies: boolean
  /** Who it was fitted to. [text] */
  readonly sample: string
}

/** Reasons for which {@link metabolicRate} can refuse. */
export type MetabolicRateRefusal = "outside-data"

/** Hazards and limits that an answer of {@link metabolicRate} can carry. */
export type MetabolicRateCaution = "equations-disagree" | "fit-adults" | "heavy-head" | "outside-range" | "small-wearer" | "take-it-off"

/** Result of {@link metabolicRate}. */
export interface MetabolicRate {
  /** Load in the trunk-carried kilograms that cost the same. [m_e; kg] */
  readonly equivalentMass: number
  /** Pandolf with Santee's downhill correction. [M_P; W] */
  readonly pandolf: number
  /** Looney and others 2019, graded walking, on the total mass. [M_L; W] */
  readonly looney2019: number
  /** Looney and others 2022, backpacking; level ground only. [M_B; W] */
  readonly looney2022: number | null
  /** ACSM walking on the total mass; not downhill, not standing. [M_A; W] */
  readonly acsm: number | null
  /** Minimum mechanics; walking only. [M_M; W] */
  readonly minimumMechanics: number | null
  /** Givoni and Goldman; from 0.7 m/s, not downhill. [M_G; W] */
  readonly givoniGoldman: number | null
  /** Smallest of the readings. [M_0; W] */
  readonly minMetabolicRate: number
  /** Metabolic rate to plan with: the largest of the readings. [M; W] */
  readonly metabolicRate: number
  /** Largest reading over smallest. [q; as a fraction] */
  readonly spreadRatio: number
  /** The rate in multiples of 3.5 mL of oxygen per kg and minute (MET). [q_m] */
  readonly met: number
  /** Every reading with its range and sample. [list] */
  readonly readings: readonly MetabolicReading[]
}
