// What goes in and what comes out.

import type { Force, Length, Moment, Pressure } from "../../quantity/index.js"
import type { Band } from "../../solver/index.js"
import type { ConditionInput } from "../condition.js"
import type { ShapeInput } from "../section.js"

/** Input of {@link tubeSection}: a shape, what it is made of, and what acts on the section. */
export interface TubeSectionInput extends ShapeInput, ConditionInput {
  /** Shear modulus, instead of that of an isotropic material. [G_g; 1 MPa to 400 GPa; optional] */
  shearModulus?: Pressure | null
  /** Bending moment on the section. [M_b; −1000000 to 1000000 N m; default 0] */
  moment?: Moment
  /** Torque about its axis. [M_t; −1000000 to 1000000 N m; default 0] */
  torque?: Moment
  /** Shear force across it. [V; −1000 to 1000 kN; default 0] */
  shearForce?: Force
  /** Force along it, pull or push. [F_a; −1000 to 1000 kN; default 0] */
  axialForce?: Force
  /** Length over which the torque twists it. [L; 0 to 100 m; optional] */
  length?: Length | null
}

/** Result of {@link tubeSection}. */
export interface TubeSection {
  /** Area [A; m²] */
  readonly area: number
  /** Second moment of area about the axis across the load. [I; m⁴] */
  readonly secondMoment: number
  /** Section modulus [W_b; m³] */
  readonly sectionModulus: number
  /** Radius of gyration [r; m] */
  readonly radiusOfGyration: number
  /** First moment of half the area about the neutral axis. [Q; m³] */
  readonly firstMoment: number
  /** Torsion constant (polar moment of a ring). [J; m⁴] */
  readonly torsionConstant: number
  /** Torsion section modulus [W_t; m³] */
  readonly torsionModulus: number
  /** Mass per length at the heavy end of the density range; of pipe at its mean wall. [m_l; kg/m] */
  readonly massPerLength: number | null
  /** Shear modulus [G; Pa] */
  readonly shearModulus: number | null
  /** Bending stress at the outermost fibre. [sigma_b; Pa] */
  readonly bendingStress: number
  /** Stress along the axis from the axial force. [sigma_a; Pa] */
  readonly axialStress: number
  /** Maximum shear stress from the torque. [tau_t; Pa] */
  readonly torsionStress: number
  /** Shear stress at the neutral axis from the shear force. [tau_v; Pa] */
  readonly shearStress: number
  /** Maximum equivalent stress after von Mises. [sigma_v; Pa] */
  readonly vonMisesStress: number
  /** Maximum equivalent stress after Tresca. [sigma_t; Pa] */
  readonly trescaStress: number
  /** Angle the torque twists the length by. [phi; rad] */
  readonly twist: number | null
  /** Stress at which a thin wall buckles under end load; round tubes of isotropic material. [sigma_ca; Pa] */
  readonly axialBucklingStress: number | null
  /** Stress at which a thin wall buckles in bending. [sigma_cb; Pa] */
  readonly bendingBucklingStress: number | null
  /** Strength against stress, at the weak and the strong end of the material's range; null without stress or strength. [n_s to n_u] */
  readonly safetyFactor: Band | null
}

/** Reasons for which {@link tubeSection} refuses. */
export type TubeSectionRefusal = "too-hot"

/** Hazards and limits of validity that go with an answer of {@link tubeSection}. */
export type TubeSectionCaution =
  | "brittle"
  | "cold-brittle"
  | "collapse"
  | "creep"
  | "min-wall"
  | "modulus-above-published"
  | "strength-above-published"
  | "thick-wall"
  | "thin-margin"
  | "wall-buckling"
  | "warm-plastic"
  | "welds-weaken"
