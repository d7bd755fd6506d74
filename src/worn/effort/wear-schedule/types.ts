// What goes in and what comes out.

import type { Mass, Moment, Ratio, Speed, Time } from "../../../quantity/index.js"
import type { Band } from "../../../solver/index.js"

/** What is done in a part of the day; in `off` the rig is taken off and set down. */
export type WearActivity = "standing" | "walking" | "stage" | "sitting" | "off"

/** One part of the day. */
export interface WearPart {
  /** Name of the part. [text of 1 to 100 characters] */
  name: string
  /** What is done. [standing, walking, stage, sitting or off] */
  activity: WearActivity
  /** How long. [t; 60 s to 12 h] */
  duration: Time
  /** Walking speed, in `walking` and `stage` only; null: 0.9 m/s there. [v; 0 to 2.5 m/s; optional] */
  walkingSpeed?: Speed | null
}

/** Input of {@link wearSchedule}. */
export interface WearScheduleInput {
  /** Wearer's body mass, undressed. [m_w; 20 to 300 kg] */
  bodyMass: Mass
  /** Rig mass [m_r; 10 g to 150 kg] */
  rigMass: Mass
  /** The day, part by part. [list of 1 to 200] */
  plan: readonly WearPart[]
  /** Maximum oxygen uptake, mL per kg of body mass and minute. [c_o; 10 to 90; default 30] */
  maxOxygenUptake?: number
  /** Moment the back holds with this load (`backMomentLeaning` of carriedLoad); null leaves the back out. [M_b; 0 to 500 N m; optional] */
  backMoment?: Moment | null
  /** Maximum moment of the back. [M_m; 10 to 600 N m; default 130 N m] */
  backStrength?: Moment
  /** Cost of a stage performance against plain walking at its speed. [k_s; 1 to 4; default 1.5] */
  stageFactor?: number
  /** Part of the time to exhaustion that counts as the limit. [p_w; 0.1 to 1; default 0.333333] */
  workShare?: Ratio
  /** Time constant in which strain fades while the rig is off. [tau; 10 min to 6 h; default 22.2167 min] */
  recoveryTimeConstant?: Time
  /** Strain at which a rest ends [r; 0.05 to 0.9; default 0.5] */
  resumeStrain?: Ratio
}

/** One part of the day, worked out. */
export interface PartWorn {
  /** Name [text] */
  readonly name: string
  /** Activity [text] */
  readonly activity: string
  /** Start [s] */
  readonly startTime: number
  /** End [s] */
  readonly endTime: number
  /** Metabolic rate [W] */
  readonly metabolicRate: number
  /** Share of the aerobic capacity. [as a fraction] */
  readonly capacityShare: number
  /** Unbroken time that uses the wearer up; null while the rig is off. [s] */
  readonly maxDuration: number | null
  /** Strain at the end, without extra rests. [as a fraction] */
  readonly strain: number
}

/** Reasons for which {@link wearSchedule} can refuse. */
export type WearScheduleRefusal = "insufficient-capacity" | "outside-data"

/** Hazards and limits that an answer of {@link wearSchedule} can carry. */
export type WearScheduleCaution =
  | "back-extrapolated"
  | "back-left-out"
  | "gentle-work-extrapolated"
  | "more-rest-than-wear"
  | "no-load-is-bearable"
  | "not-bearable"
  | "over-published-share"
  | "over-share"
  | "recovery-assumed"
  | "small-wearer"
  | "take-it-off"

/** Result of {@link wearSchedule}. */
export interface WearSchedule {
  /** Length of the plan, and of it with the rig on. [t_d; s] */
  readonly duration: number
  /** Of it with the rig on [t_w; s] */
  readonly wornDuration: number
  /**
   * Largest strain without extra rests; 1 is the limit. High by the stricter of the published limits on whole-body
   * work, which counts; low by the more lenient one: the spread, not a recommendation. [S_l to S_m; as a fraction]
   */
  readonly peakStrain: Band
  /** Strain at the end [S_e; as a fraction] */
  readonly endStrain: number
  /**
   * Whether the plan stays within the stricter published limit on work and the rig within the published share of body
   * mass; no finding of fitness. [yes or no]
   */
  readonly bearable: boolean
  /** Mass that the published share of body mass comes to for this wearer. [m_l; kg] */
  readonly massAtLimit: number
  /** Maximum unbroken wear, hardest part [T_m; s] */
  readonly maxUnbrokenDuration: number
  /** Length of one rest with the rig off. [t_r; s] */
  readonly restDuration: number
  /** Mean share of the aerobic capacity while the rig is on. [q_m; as a fraction] */
  readonly meanShare: number
  /** Share that is published for so many hours of work. [q_l; as a fraction] */
  readonly shareLimit: number
  /** When the strain first reaches 1; null where it never does. [group] */
  readonly firstLimit: FirstLimit | null
  /** Rests that keep the strain at or below 1 (the first hundred). [list] */
  readonly rests: readonly Rest[]
  /** How many rests in all, and how long together. [group] */
  readonly resting: {
    /** Number [number] */
    readonly count: number
    /** Together [s] */
    readonly total: number
  }
  /**
   * Heaviest load with the published share of body mass kept: low within the stricter published limit, null where not
   * even none is; high by the more lenient one: the spread, not a recommendation. [group]
   */
  readonly maxRig: Band<MaxRig | null>
  /** Parts [list] */
  readonly plan: readonly PartWorn[]
}

/** When the strain first reaches 1 without extra rests. */
export interface FirstLimit {
  /** Time from the start. [s] */
  readonly time: number
  /** Of it with the rig on. [s] */
  readonly wornDuration: number
  /** Part of the plan it happens in. [text] */
  readonly during: string
}

/** One rest to put in. */
export interface Rest {
  /** When, from the start, earlier rests counted in. [s] */
  readonly time: number
  /** Part of the plan it interrupts. [text] */
  readonly during: string
  /** How long. [s] */
  readonly duration: number
}

/** Heaviest load with which the whole plan stays under a strain of 1, never above the published share of body mass. */
export interface MaxRig {
  /** Load. [kg] */
  readonly rigMass: number
  /** Share of body mass [as a fraction] */
  readonly massShare: number
  /** What keeps it from being heavier: the strain, or the published share of body mass. [text] */
  readonly boundBy: string
  /** Iterations [number] */
  readonly iterations: number
  /** Largest strain less 1; not zero where the aerobic capacity or the published share is what limits. [number] */
  readonly residual: number
}
