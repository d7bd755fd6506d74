import type { Band } from "../../solver/index.js"
import type { Section } from "../section.js"
import type { BeamCurve, BeamExtreme } from "./curve.js"
import type { BeamStrength } from "./strength.js"

/** Result of {@link beam}; downwards and sagging are positive. */
export interface Beam extends BeamStrength {
  /** Force the first support or the clamp pushes up with. [R_a; N] */
  readonly reactionStart: number
  /** Force the second support pushes up with; null for a cantilever. [R_b; N] */
  readonly reactionEnd: number | null
  /** Bending moment at the clamp; null on two supports. [M_0; N m] */
  readonly clampMoment: number | null
  /** Bending moment largest in magnitude. [M_x; N m] */
  readonly maxMoment: number
  /** Where it is, m from the start. [x_M; m] */
  readonly maxMomentPosition: number
  /** Shear force largest in magnitude. [V_x; N] */
  readonly maxShearForce: number
  /**
   * Deflection largest in magnitude, between the stiff and the soft end of the material's range; upward ones are
   * negative. [y_l to y_h; m]
   */
  readonly maxDeflection: Band
  /** Where it is, m from the start. [x_y; m] */
  readonly maxDeflectionPosition: number
  /** Deflection of the end [y_e; m] */
  readonly endDeflection: number
  /** Slope of the end [theta_e; rad] */
  readonly endSlope: number
  /** Own weight, before the factor of handling. [W_o; N] */
  readonly weight: number
  /** Factor of handling on every load. [k_m] */
  readonly loadFactor: number
  /** Steps taken to find the places of maximum moment and deflection. [number] */
  readonly iterations: number
  /** Slope left at the place of maximum deflection; 0 where it is an end or a load. [rad] */
  readonly residual: number
}

/** Reasons for which {@link beam} refuses. */
export type BeamRefusal = "too-hot"

/** Hazards and limits of validity that go with an answer of {@link beam}. */
export type BeamCaution =
  | "bends-far"
  | "brittle"
  | "cold-brittle"
  | "collapse"
  | "creep"
  | "lifts-off"
  | "modulus-above-published"
  | "no-material"
  | "short-beam"
  | "standing-still"
  | "strength-above-published"
  | "stress-unknown"
  | "thin-margin"
  | "warm-plastic"
  | "weight-unknown"
  | "welds-weaken"

/** What the kernel found on its way, for cautions and formulae. */
export interface BeamTrace {
  readonly section: Section
  readonly curve: BeamCurve
  readonly moment: BeamExtreme
  readonly shear: BeamExtreme
  readonly sag: BeamExtreme
}
