// What goes in and what comes out.
import type { SiOf } from "../../solver/index.js"
import type { PinJointInput } from "./parts.js"

/** Result of {@link pinJoint}. */
export interface PinJoint {
  /** Diameter in the hole [d; m] */
  readonly pinDiameter: number
  /** Area sheared in each plane. [A_s; m²] */
  readonly shearArea: number
  /** Shear stress in a pin [tau_p; Pa] */
  readonly pinShearStress: number
  /** Bending moment in a pin between its cheeks; null where they are not given. [M_p; N m] */
  readonly pinMoment: number | null
  /** Bending stress in a pin [sigma_p; Pa] */
  readonly pinBendingStress: number | null
  /** Bearing stress on the hole [sigma_l; Pa] */
  readonly bearingStress: number
  /** Shear stress of the strip that tears out. [tau_e; Pa] */
  readonly tearOutStress: number | null
  /** Area of the member left beside the hole. [A_n; m²] */
  readonly netArea: number | null
  /** Second moment left at the hole. [I_n; m⁴] */
  readonly netSecondMoment: number | null
  /** Maximum bending moment the holed section takes. [M_n; N m] */
  readonly netMoment: number | null
  /** Proof load of a bolt [F_p; N] */
  readonly proofLoad: number | null
  /** Minimum breaking load of a bolt in pull. [F_m; N] */
  readonly breakingLoad: number | null
  /** Clamp force on a tube. [F_q; N] */
  readonly clampForce: number | null
  /** Squeeze at which the tube begins to flatten. [F_c; N] */
  readonly crushForce: number | null
  /** Margin of the pins in shear. [n_p] */
  readonly pinShearSafetyFactor: number
  /** Margin of the pins in bending and shear together; null where no cheeks are given. [n_v] */
  readonly pinBendingSafetyFactor: number | null
  /** Margin of the holes in bearing; null where no strength is known. [n_l] */
  readonly bearingSafetyFactor: number | null
  /** Margin against tearing out. [n_e] */
  readonly tearOutSafetyFactor: number | null
  /** Margin of the clamped tube against flattening. [n_c] */
  readonly crushSafetyFactor: number | null
  /** Margin of the bolt's pull against its proof load. [n_t] */
  readonly tighteningSafetyFactor: number | null
  /** Minimum of the margins. [n_s] */
  readonly safetyFactor: number
  /** What it is that fails first. [text] */
  readonly governedBy: string
}

/** Reasons for which {@link pinJoint} refuses. */
export type PinJointRefusal = "does-not-fit" | "too-hot"

/** Hazards and limits of validity that go with an answer of {@link pinJoint}. */
export type PinJointCaution =
  | "brittle"
  | "clamp-force-scatter"
  | "cold-brittle"
  | "collapse"
  | "creep"
  | "edge-distance"
  | "fibres-split"
  | "member-unknown"
  | "near-the-edge"
  | "pin-bending-unjudged"
  | "pin-stays-bent"
  | "standing-still"
  | "strength-above-published"
  | "thin-margin"
  | "warm-plastic"
  | "welds-weaken"
  | "wide-hole"

export type Si = SiOf<PinJointInput>
