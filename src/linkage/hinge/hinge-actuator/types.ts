// What goes in and what comes out.
import type { Angle, Force, Length } from "../../../quantity/index.js"
import type { HingeSpringInput, HingeWeightInput, MovingPivotInput, PointInput } from "../fields.js"
import type { HingeStatics } from "../load.js"
import type { Peak } from "./peaks.js"

/** Input of {@link hingeActuator}. */
export interface HingeActuatorInput {
  /** Hinge of the arm. [group; optional, with a default of its own] */
  hinge?: PointInput
  /** Fixed pivot of the actuator. [group] */
  fixedPivot: PointInput
  /** Pivot on the arm. [group] */
  movingPivot: MovingPivotInput
  /** Distance by which the rod axis misses the fixed pivot. [o; 0 to 5 m; default 0] */
  axisOffset?: Length
  /** Length of the actuator between its pivots when retracted. [L_r; 1 mm to 20 m] */
  retractedLength: Length
  /** Stroke [S; 0.1 mm to 10 m] */
  stroke: Length
  /** Extension at which the pose is wanted; half the stroke where left out. [s_c; 0 to 10 m; optional] */
  extension?: Length | null
  /** Assembly branch: which way extension turns the arm. [counter-clockwise or clockwise; default counter-clockwise] */
  assembly?: "counter-clockwise" | "clockwise"
  /** Masses on the arm [list of 1 to 50] */
  masses: readonly HingeWeightInput[]
  /** Lean of the wearer; positive turns the frame counter-clockwise. [lambda; −183.346° to 183.346°; default 0] */
  frameTilt?: Angle
  /** Springs and elastic cords between the frame and the arm. [list of 1 to 20; optional] */
  springs?: readonly HingeSpringInput[] | null
  /** Coefficient of friction at the pins [mu; 0 to 1; default 0] */
  pinFriction?: number
  /** Hinge pin diameter [d_h; 0 to 200 mm; default 0] */
  hingePinDiameter?: Length
  /** Diameter of the pins at the actuator's ends. [d_a; 0 to 200 mm; default 0] */
  endPinDiameter?: Length
  /**
   * Weight at its largest over weight at rest, as `walkingFactor` gives it; as it swings above, so it swings below,
   * down to nothing. [k_w; 1 to 5; default 1]
   */
  loadFactor?: number
  /** Force of a gust square to the arm, from either side. [F_g; 0 to 100 kN; default 0] */
  gustForce?: Force
  /** Where on the arm the gust works, from the hinge. [r_g; 0 to 20 m; default 0] */
  gustRadius?: Length
  /** Force across the plane of the swing: wind on the face of a wing, a skew pull. [F_a; 0 to 100 kN; default 0] */
  sideForce?: Force
  /** Where on the arm it works, from the hinge. [r_a; 0 to 20 m; default 0] */
  sideForceRadius?: Length
  /** Distance between the two bearings of the hinge, along its pin. [s_b; 1 mm to 2 m; default 40 mm] */
  bearingSpan?: Length
  /** Force the unpowered actuator holds without creeping, from its datasheet. [F_u; 0 to 1000 kN; optional] */
  holdingForce?: Force | null
}

/** Result of {@link hingeActuator}. */
export interface HingeActuator {
  /** Arm angle at the chosen extension. [theta_c; rad] */
  readonly angle: number
  /** Length of the actuator there. [L_c; m] */
  readonly length: number
  /** Lever arm dL/dθ there; positive where extension raises the arm. [l_c; m] */
  readonly lever: number
  /** Acute angle between the rod and the line hinge–moving pivot. [tau_c; rad] */
  readonly transmissionAngle: number
  /** Moment of the weights about the hinge, clockwise. [M_c; N m] */
  readonly gravityMoment: number
  /** Moment of the springs about the hinge, counter-clockwise. [N_c; N m] */
  readonly springMoment: number
  /** Force that holds the pose without friction; positive pushes. [F_c; N] */
  readonly force: number
  /** Force while extending, friction against it. [E_c; N] */
  readonly extendForce: number
  /** Force while retracting, friction against it. [R_c; N] */
  readonly retractForce: number
  /** Largest force to hold the pose whichever way the wearer leans. [F_any; N] */
  readonly anyTiltForce: number
  /** Force of the hinge on the arm, outward. [H_x; N] */
  readonly reactionX: number
  /** Force of the hinge on the arm, upward. [H_y; N] */
  readonly reactionY: number
  /** Size of the hinge's force. [H; N] */
  readonly reaction: number
  /** Loads of the hinge's two bearings together, at most: of that force and of a moment across the hinge. [H_b; N] */
  readonly bearingLoad: number
  /** Friction moment of the hinge pin under them. [M_f; N m] */
  readonly frictionMoment: number
  /** Load across the rod from axis offset and friction at the end pins. [F_t; N] */
  readonly sideLoad: number
  /** Arm angle at the same extension on the other assembly branch. [theta_o; rad] */
  readonly otherAssemblyAngle: number
  /** Arm angle when retracted. [theta_1; rad] */
  readonly retractedAngle: number
  /** Arm angle when extended. [theta_2; rad] */
  readonly extendedAngle: number
  /** Angle swept over the stroke. [sigma; rad] */
  readonly swing: number
  /** Largest force over the stroke in either direction of travel, with the gusts and steps given. [F_max; N] */
  readonly peakForce: number
  /** Extension at which it is needed. [s_p; m] */
  readonly peakForceExtension: number
  /** Arm angle at which it is needed. [theta_p; rad] */
  readonly peakForceAngle: number
  /** Largest force over the stroke while the arm is raised. [F_up; N] */
  readonly peakRaisingForce: number
  /** Extension at which it is needed. [s_h; m] */
  readonly peakRaisingExtension: number
  /** Largest force over the stroke while the arm is lowered. [F_dn; N] */
  readonly peakLoweringForce: number
  /** Extension at which it is needed. [s_d; m] */
  readonly peakLoweringExtension: number
  /** Largest force over the stroke to stand still, friction left out. [F_hold; N] */
  readonly requiredHoldingForce: number
  /** Extension at which it is needed. [s_q; m] */
  readonly requiredHoldingExtension: number
  /** Unpowered holding force over that force; below 1 the arm creeps or falls. Null where not given or nothing is to be held. [n_u] */
  readonly holdingSafetyFactor: number | null
  /** Whether the arm stays anywhere on the stroke without power; null where the back-drive force is not given. [yes or no] */
  readonly holdsUnpowered: boolean | null
  /** Minimum transmission angle over the stroke. [tau_min; rad] */
  readonly minTransmissionAngle: number
  /** Shortest length the triangle can have: a dead point. [L_min; m] */
  readonly minLength: number
  /** Longest length the triangle can have: a dead point. [L_max; m] */
  readonly maxLength: number
  /** Arm angle at the shortest length. [theta_s; rad] */
  readonly minLengthAngle: number
  /** Arm angle at the longest length. [theta_l; rad] */
  readonly maxLengthAngle: number
  /** Length left to the nearer dead point at the ends of the stroke. [c_d; m] */
  readonly deadPointMargin: number
  /** Poses over the stroke, evenly spaced in extension. [list] */
  readonly poses: readonly HingePose[]
}

/** Reasons for which {@link hingeActuator} refuses. */
export type HingeActuatorRefusal = "cannot-close" | "dead-point" | "jammed"

/** Hazards and limits of validity that go with an answer of {@link hingeActuator}. */
export type HingeActuatorCaution =
  | "falls-unpowered"
  | "holding-unknown"
  | "near-dead-point"
  | "pinch"
  | "poor-transmission"
  | "side-load"
  | "stored-energy"
  | "thin-holding-margin"

/** One pose of the stroke. */
export interface HingePose {
  /** Extension [m] */
  readonly extension: number
  /** Arm angle [rad] */
  readonly angle: number
  /** Lever arm [m] */
  readonly lever: number
  /** Force without friction. [N] */
  readonly force: number
  /** Force while extending [N] */
  readonly extendForce: number
  /** Force while retracting [N] */
  readonly retractForce: number
}

/** A pose as the kernel works it out. */
export interface Pose {
  readonly extension: number
  readonly angle: number
  readonly at: HingeStatics
}

/** What the kernel found on its way, for the working. */
export interface HingeTrace {
  readonly raising: Peak
  readonly lowering: Peak
  readonly hold: Peak
}
