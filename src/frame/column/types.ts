// What column takes and gives back.

import type { Force, Length } from "../../quantity/index.js"
import type { Band } from "../../solver/index.js"
import type { ConditionInput } from "../condition.js"
import type { ColumnEnds } from "../data-columns.js"
import type { HandlingCase } from "../data-loads.js"
import type { SectionInput } from "../section.js"

/** Input of {@link column}. */
export interface ColumnInput extends ConditionInput {
  /** Length between the ends. [L; 1 mm to 100 m] */
  length: Length
  /** How the ends are held. [pinned-pinned, fixed-free, fixed-pinned or fixed-fixed; default pinned-pinned] */
  ends?: ColumnEnds
  /** End constant C, instead of the conservative one for `ends`. [C_g; 0.1 to 4; optional] */
  endConstant?: number | null
  /** Cross-section; of another shape give the minimum second moment, and the area. [group] */
  section: SectionInput
  /** Axial load [F; 1 mN to 1000 kN; optional] */
  load?: Force | null
  /** How it is handled; multiplies the load. [still, walking, sudden or stumble; default still] */
  handling?: HandlingCase
}

/** Result of {@link column}. */
export interface Column {
  /** End constant used. [C_e] */
  readonly endConstant: number
  /** Minimum radius of gyration [r; m] */
  readonly radiusOfGyration: number
  /** Length over radius of gyration. [lambda] */
  readonly slenderness: number
  /** Slenderness at which Johnson's curve passes into Euler's; null where no strength is known. [lambda_1] */
  readonly transitionSlenderness: number | null
  /** Euler's stress [sigma_E; Pa] */
  readonly eulerStress: number
  /** Johnson's stress; null where it does not hold, or no strength is known. [sigma_J; Pa] */
  readonly johnsonStress: number | null
  /** Stress at which the wall itself buckles; null where it is not a thin round wall of isotropic material. [sigma_w; Pa] */
  readonly wallBucklingStress: number | null
  /** Stress at which it fails. [sigma_c; Pa] */
  readonly criticalStress: number
  /** Load at which it fails, at the weak and the strong end of the material's range. [F_c to F_u; N] */
  readonly criticalLoad: Band
  /** What governs. [text] */
  readonly governedBy: "Euler" | "Johnson" | "wall"
  /** Critical load against the load as handled. [n_s to n_u] */
  readonly safetyFactor: Band | null
}

/** Reasons for which {@link column} refuses. */
export type ColumnRefusal = "too-hot"

/** Hazards and limits of validity that go with an answer of {@link column}. */
export type ColumnCaution =
  | "beyond-theory"
  | "brittle"
  | "brittle-column"
  | "cold-brittle"
  | "collapse"
  | "counted-as-turning"
  | "creep"
  | "euler-only"
  | "modulus-above-published"
  | "no-material"
  | "standing-still"
  | "stiff-ends"
  | "straight-and-central"
  | "strength-above-published"
  | "thin-margin"
  | "warm-plastic"
  | "welds-weaken"
