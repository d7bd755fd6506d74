// What goes in and what comes out.
import type { AngularSpeed, Area, ForcePerLength, Length, Mass, Moment, Ratio, Speed } from "../../../quantity/index.js"
import type { BodyRegion } from "../data-contact.js"

/** Input of {@link contactSeverity}. Give a swinging arm (`armMass`, `armLength`, `swingSpeed`) or a moving mass (`movingMass`, `movingSpeed`). */
export interface ContactSeverityInput {
  /** What is struck. [one of 12 words] */
  region: BodyRegion
  /** Mass of a slender arm, even along its length. [m_a; 1 g to 100 kg; optional] */
  armMass?: Mass | null
  /** Length of the arm from its hinge. [L; 10 mm to 10 m; optional] */
  armLength?: Length | null
  /** Speed at which it swings. [omega; 0 to 477.465 rpm; optional] */
  swingSpeed?: AngularSpeed | null
  /** Distance from the hinge to the place that strikes; the tip when left out. [r_s; 10 mm to 10 m; optional] */
  strikeRadius?: Length | null
  /** Mass that acts at the place of contact, for parts that are no swinging arm. [m_m; 1 g to 1000 kg; optional] */
  movingMass?: Mass | null
  /** Speed of that mass against the person. [v_m; 0 to 50 m/s; optional] */
  movingSpeed?: Speed | null
  /** Speed at which the person moves towards the part. [v_a; 0 to 10 m/s; default 0] */
  approachSpeed?: Speed
  /** Stiffness of the padding at the place of contact, as a spring. [k_p; 0.001 to 1000 N/mm; optional] */
  paddingStiffness?: ForcePerLength | null
  /** Thickness of the padding [t_p; 0.1 mm to 1 m; optional] */
  paddingThickness?: Length | null
  /**
   * Share of the padding's thickness that can be used before it turns hard; no more than the published 0.6 is counted.
   * [s_p; 0.01 to 1; default 0.6]
   */
  usablePaddingShare?: Ratio
  /** Area over which the part touches, for the pressure. [A_c; 0.01 mm² to 1 m²; optional] */
  contactArea?: Area | null
  /** Peak moment of the drive at the hinge, for the force on someone who is clamped. [M_d; 0 to 100000 N m; optional] */
  peakDriveMoment?: Moment | null
}

/** Hazards and limits that an answer of {@link contactSeverity} can carry. */
export type ContactSeverityCaution =
  | "door-limit"
  | "head-contact"
  | "neck-contact"
  | "no-area"
  | "no-clamping"
  | "not-a-clearance"
  | "over-limit"
  | "padding-used-up"
  | "slow-approach"
  | "usable-padding"

/** Result of {@link contactSeverity}. */
export interface ContactSeverity {
  /** Speed of the contact [v; m/s] */
  readonly contactSpeed: number
  /** Mass that acts at the place of contact. [m_e; kg] */
  readonly effectiveMass: number
  /** Kinetic energy of the moving part at the contact speed. [E_k; J] */
  readonly kineticEnergy: number
  /** Reduced mass of part and body region. [mu; kg] */
  readonly reducedMass: number
  /** Energy that goes into the contact. [E; J] */
  readonly contactEnergy: number
  /** Stiffness of body and padding in series. [k; N/m] */
  readonly stiffness: number
  /** Peak force of the contact. [F; N] */
  readonly peakForce: number
  /** The same without the padding. [F_b; N] */
  readonly peakBareForce: number
  /** Compression of the padding [x_p; m] */
  readonly paddingCompression: number
  /** Whether the padding is used up and turns hard. [yes or no] */
  readonly bottomed: boolean
  /** Time from touch to peak force, twice over; absent where the padding is used up. [t_c; s] */
  readonly contactDuration: number | null
  /** Published transient force of the region; absent where the standard permits no contact. [F_t; N] */
  readonly transientLimit: number | null
  /** Permissible clamping force of the region. [F_q; N] */
  readonly clampingLimit: number
  /** Limit the blow is held against: transient, or clamping where no transient contact is permitted. [F_l; N] */
  readonly forceLimit: number
  /** Peak force over that limit. [r_F; as a fraction] */
  readonly forceUtilisation: number
  /** Speed of contact at which the blow reaches the limit. [v_l; m/s] */
  readonly speedLimit: number
  /** Energy at which the bare body region reaches the limit. [E_l; J] */
  readonly energyLimit: number
  /** Peak mean pressure, where the area was given. [p; Pa] */
  readonly peakPressure: number | null
  /** Limit of pressure for the blow. [p_l; Pa] */
  readonly pressureLimit: number
  /** Pressure over its limit. [r_p; as a fraction] */
  readonly pressureUtilisation: number | null
  /** Force on someone clamped by the drive. [F_c; N] */
  readonly clampingForce: number | null
  /** That force over the region's clamping limit. [r_c; as a fraction] */
  readonly clampingUtilisation: number | null
  /** Highest of the ratios; where contact is forbidden it only shows how bad it would be. [r; as a fraction] */
  readonly utilisation: number
  /** Padding thickness that would just not be used up; absent without padding. [t_n; m] */
  readonly requiredPaddingThickness: number | null
  /** Whether nothing may strike this region at all: head, face and neck. [yes or no] */
  readonly forbidden: boolean
  /** The verdict in one word: false where contact is forbidden or any limit compared is passed. [yes or no] */
  readonly withinLimits: boolean
  /** What the comparison says [text] */
  readonly verdict: string
}
