import type { Density, ForcePerLength, Length, RotationalStiffness } from "../../quantity/index.js"
import type { Band } from "../../solver/index.js"
import type { BeamExtreme, BeamProblem } from "../beam/curve.js"
import type { BeamLoads } from "../beam/loads.js"
import type { BeamStrength } from "../beam/strength.js"
import type { ConditionInput } from "../condition.js"
import type { HandlingCase } from "../data-loads.js"
import type { Section, SectionInput } from "../section.js"

/** One support of a beam. */
export type BeamRest = PinnedRest | ClampedRest | SpringRest
/** Holds up and down, and lets the beam turn. */
export interface PinnedRest {
  type: "pinned"
  /** Distance from the start of the beam. [a_s; 0 to 100 m] */
  position: Length
}
/** Holds up and down and against turning. */
export interface ClampedRest {
  type: "clamped"
  /** Distance from the start of the beam. [a_s; 0 to 100 m] */
  position: Length
}
/** Gives with the force on it, and with the moment too where it holds against turning. */
export interface SpringRest {
  type: "spring"
  /** Distance from the start of the beam. [a_s; 0 to 100 m] */
  position: Length
  /** Force for each length that it gives; rigid where left out. [k_s; 10 N/m to 1000000 N/mm; optional] */
  stiffness?: ForcePerLength | null
  /** Moment for each angle that it turns; free to turn where left out. [k_t; 0.1 to 1e9 N m/rad; optional] */
  turningStiffness?: RotationalStiffness | null
}

/** Input of {@link continuousBeam}. */
export interface ContinuousBeamInput extends ConditionInput, BeamLoads {
  /** Whole length. [L; 10 mm to 100 m] */
  length: Length
  /** Supports along the beam, in any order. [list of 1 to 30] */
  supports: readonly BeamRest[]
  /** Section [group] */
  section: SectionInput
  /** Density, instead of the material's heavy end. [rho_g; 1 to 25000 kg/m³; optional] */
  density?: Density | null
  /** Whether its own weight, lying level, is added. [yes or no; default yes] */
  countsOwnWeight?: boolean
  /** How it is handled; multiplies every load. [still, walking, sudden or stumble; default still] */
  handling?: HandlingCase
}

/** An end or a support of the beam; with springs, at the soft end of the material's range. */
export interface BeamPlace {
  /** Place [x_p; m] */
  readonly position: number
  /** Force that a support pushes up with; null at a free end. [R_p; N] */
  readonly reaction: number | null
  /** Moment that a support holds against turning with, positive like the loads'; null where it does not. [N_p; N m] */
  readonly holdingMoment: number | null
  /** Bending moment there, the larger of both sides. [M_p; N m] */
  readonly bendingMoment: number
  /** Deflection [y_p; m] */
  readonly deflection: number
  /** Slope [theta_p; rad] */
  readonly slope: number
}
/** A span between two supports, or an overhang. */
export interface BeamSpan {
  /** From [x_1; m] */
  readonly start: number
  /** To [x_2; m] */
  readonly end: number
  /** Largest sagging moment; negative where all of it hogs. [M_s; N m] */
  readonly maxSagging: number
  /**   at [x_s; m] */
  readonly maxSaggingPosition: number
  /** Largest hogging moment, as a negative number; positive where all of it sags. [M_h; N m] */
  readonly maxHogging: number
  /** Deflection largest in magnitude. [y_s; m] */
  readonly maxDeflection: number
  /**   at [x_d; m] */
  readonly maxDeflectionPosition: number
}

/** Result of {@link continuousBeam}; downwards and sagging are positive. */
export interface ContinuousBeam extends BeamStrength {
  /** Both ends and every support, from the start on. [list] */
  readonly places: readonly BeamPlace[]
  /** Spans and overhangs, from the start on. [list] */
  readonly spans: readonly BeamSpan[]
  /** Bending moment largest in magnitude, at whichever end of the material's range it is larger. [M_x; N m] */
  readonly maxMoment: number
  /**   at [x_M; m] */
  readonly maxMomentPosition: number
  /** Shear force largest in magnitude, at whichever end of the range it is larger. [V_x; N] */
  readonly maxShearForce: number
  /** Deflection largest in magnitude, between the stiff and the soft end of the range; upward ones are negative. [y_l to y_h; m] */
  readonly maxDeflection: Band
  /**   at [x_y; m] */
  readonly maxDeflectionPosition: number
  /** Own weight, before the factor of handling. [W_o; N] */
  readonly weight: number
  /** Handling factor [k_m] */
  readonly loadFactor: number
}

/** Reasons for which {@link continuousBeam} refuses. */
export type ContinuousBeamRefusal = "too-hot" | "unstable"

/** Hazards and limits of validity that go with an answer of {@link continuousBeam}. */
export type ContinuousBeamCaution =
  | "bends-far"
  | "brittle"
  | "cold-brittle"
  | "collapse"
  | "creep"
  | "lifts-off"
  | "modulus-above-published"
  | "no-material"
  | "rigid-clamp"
  | "short-beam"
  | "standing-still"
  | "strength-above-published"
  | "stress-unknown"
  | "thin-margin"
  | "warm-plastic"
  | "weight-unknown"
  | "welds-weaken"

/** An extreme, the stretch it lies in as a beam of its own, and where that stretch starts. */
export interface Found {
  readonly extreme: BeamExtreme
  readonly side: 1 | -1
  readonly stretch: BeamProblem
  readonly start: number
}
/** What the kernel found on its way, for cautions and formulae. */
export interface ContinuousBeamTrace {
  readonly section: Section
  readonly moment: Found
  readonly shear: Found
  readonly sag: Found
  readonly stiffSag: Found
}
