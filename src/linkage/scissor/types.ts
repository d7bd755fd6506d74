// What goes in and what comes out.
import type { Angle, Force, ForcePerLength, Length, Mass, Ratio } from "../../quantity/index.js"

/** Input of {@link scissor}. */
export interface ScissorInput {
  /** Cells: crossed pairs of arms, one after the other. [n; whole 1 to 200] */
  cells: number
  /** One arm, end pin to end pin; the pair is pinned at the middle. [L; 1 mm to 10 m] */
  armLength: Length
  /** Angle of the arms from the base line when folded. [theta_0; 0.1° to 89.9°] */
  foldedAngle: Angle
  /** Angle of the arms from the base line when extended. [theta_1; 0.1° to 89.9°] */
  extendedAngle: Angle
  /** Direction it extends in, above the horizontal: 90° straight up, 0 level, −90° straight down. [beta; −90° to 90°; default 90°] */
  tilt?: Angle
  /** Which base joint stands still: none (both move alike), the lower or the upper one. [centre, lower or upper; default centre] */
  fixedJoint?: "centre" | "lower" | "upper"
  /** Mass carried at the tip. [m_t; 0 to 1000 kg; default 0] */
  tipMass?: Mass
  /** Mass of all arms together, spread evenly. [m_a; 0 to 1000 kg; default 0] */
  armsMass?: Mass
  /** Force against the tip along the direction of extension. [P; −100 to 100 kN; default 0] */
  push?: Force
  /** Lead of a screw that draws the base joints together: travel of their distance per turn. [p; 0.05 mm to 1 m; optional] */
  screwLead?: Length | null
  /** Share of the screw's work that arrives. [eta; 0.1 to 100 %; default 30 %] */
  screwEfficiency?: Ratio
  /** Maximum force the driver can exert between the base joints, where known. [F_d; 1 mN to 10000 kN; optional] */
  driverForce?: Force | null
  /** Stiffness of the driver and its mounting, where known. [k; 1 N/m to 1e7 N/mm; optional] */
  driverStiffness?: ForcePerLength | null
  /** Play of every pin in its hole, across. [e; 0 to 5 mm; default 0] */
  pinPlay?: Length
}

/** Result of {@link scissor}. */
export interface Scissor {
  /** Span folded [H_0; m] */
  readonly spanFolded: number
  /** Span extended [H_1; m] */
  readonly spanExtended: number
  /** Distance of the base joints folded. [X_0; m] */
  readonly spreadFolded: number
  /** Distance of the base joints extended. [X_1; m] */
  readonly spreadExtended: number
  /** Travel of one base joint against the other. [s; m] */
  readonly driverStroke: number
  /** Span gained per spread given up, folded. [r_0; as a fraction] */
  readonly ratioFolded: number
  /** The same, extended. [r_1; as a fraction] */
  readonly ratioExtended: number
  /** Force that draws the base joints together; negative where the array pulls itself out. [F_0; N] */
  readonly forceFolded: number
  /** The same force extended. [F_1; N] */
  readonly forceExtended: number
  /** Largest size of that force over the travel. [F_p; N] */
  readonly peakForce: number
  /** Torque on one base arm about its base joint, for a servo there. [T_0; N m] */
  readonly torqueFolded: number
  /** The same torque extended. [T_1; N m] */
  readonly torqueExtended: number
  /** Largest size of that torque over the travel. [T_p; N m] */
  readonly peakTorque: number
  /** Torque on the screw at the peak force; null without a screw. [T_s; N m] */
  readonly screwTorque: number | null
  /** Turns of the screw over the travel; null without a screw. [n_t] */
  readonly screwTurns: number | null
  /** How far the tip sinks back because the driver gives, folded; null where its stiffness is not given. [z_0; m] */
  readonly sagFolded: number | null
  /** The same extended. [z_1; m] */
  readonly sagExtended: number | null
  /** How far the tip can hang off its line through play of the pins, extended. [z_d; m] */
  readonly droop: number
  /** Push and pull in the base joints from the weight hanging out sideways, extended. [F_r; N] */
  readonly rootForce: number
}

/** Reasons for which {@link scissor} refuses. */
export type ScissorRefusal = "insufficient-force"

/** Hazards and limits of validity that go with an answer of {@link scissor}. */
export type ScissorCaution = "falls-unpowered" | "flat-scissor" | "force-changes-sign" | "pinch" | "soft-driver" | "thin-holding-margin"
