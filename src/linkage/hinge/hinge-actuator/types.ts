// What goes in and what comes out.
import type { Angle, Force, Length } from "../../../quantity/index.js"
import type { HingeSpringInput, HingeWeightInput, PointInput } from "../fields.js"
import type { HingeStatics } from "../load.js"

/** Input of {@link hingeActuator}. */
export interface HingeActuatorInput {
  /** Hinge of the arm. [group; optional, with a default of its own] */
  hinge?: PointInput
  /** Fixed anchor of the actuator. [group] */
  base: PointInput
  /** Distance of the moving anchor from the hinge. [r; 0.1 mm to 20 m] */
  pinRadius: Length
  /** Angle from the arm to the line hinge–moving anchor. [beta; −572.958° to 572.958°; default 0] */
  pinAngle?: Angle
  /** Distance by which the rod axis misses the base pivot. [o; 0 to 5 m; default 0] */
  axisOffset?: Length
  /** Length of the actuator between its anchors when retracted. [L_r; 1 mm to 20 m] */
  retracted: Length
  /** Stroke [S; 0.1 mm to 10 m] */
  stroke: Length
  /** Extension at which the pose is wanted; half the stroke where left out. [s_c; 0 to 10 m; optional] */
  extension?: Length | null
  /** Assembly branch: which way extension turns the arm. [counter-clockwise or clockwise; default counter-clockwise] */
  turns?: "counter-clockwise" | "clockwise"
  /** Masses on the arm [list of 1 to 50] */
  weights: readonly HingeWeightInput[]
  /** Lean of the wearer; positive turns the frame counter-clockwise. [lambda; −183.346° to 183.346°; default 0] */
  lean?: Angle
  /** Springs and elastic cords between the frame and the arm. [list of 1 to 20; optional] */
  springs?: readonly HingeSpringInput[] | null
  /** Coefficient of friction at the pins [mu; 0 to 1; default 0] */
  friction?: number
  /** Hinge pin diameter [d_h; 0 to 200 mm; default 0] */
  hingePinDiameter?: Length
  /** Diameter of the pins at the actuator's ends. [d_a; 0 to 200 mm; default 0] */
  endPinDiameter?: Length
  /** Force the unpowered actuator holds without creeping, from its datasheet. [F_u; 0 to 1000 kN; optional] */
  backDriveForce?: Force | null
}

/** Result of {@link hingeActuator}. */
export interface HingeActuator {
  /** Arm angle at the chosen extension. [theta_c; rad] */
  readonly angle: number
  /** Length of the actuator there. [L_c; m] */
  readonly length: number
  /** Lever arm dL/dθ there; positive where extension raises the arm. [l_c; m] */
  readonly lever: number
  /** Acute angle between the rod and the line hinge–moving anchor. [tau_c; rad] */
  readonly transmission: number
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
  readonly anyLeanForce: number
  /** Force of the hinge on the arm, outward. [H_x; N] */
  readonly reactionX: number
  /** Force of the hinge on the arm, upward. [H_y; N] */
  readonly reactionY: number
  /** Size of the hinge's force. [H; N] */
  readonly reaction: number
  /** Friction moment of the hinge pin under that force. [M_f; N m] */
  readonly frictionMoment: number
  /** Load across the rod from axis offset and friction at the end pins. [F_t; N] */
  readonly sideLoad: number
  /** Arm angle at the same extension on the other assembly branch. [theta_o; rad] */
  readonly otherAngle: number
  /** Arm angle when retracted. [theta_1; rad] */
  readonly startAngle: number
  /** Arm angle when extended. [theta_2; rad] */
  readonly endAngle: number
  /** Angle swept over the stroke. [sigma; rad] */
  readonly swing: number
  /** Largest force over the stroke in either direction of travel. [F_max; N] */
  readonly peakForce: number
  /** Extension at which it is needed. [s_p; m] */
  readonly peakExtension: number
  /** Arm angle at which it is needed. [theta_p; rad] */
  readonly peakAngle: number
  /** Largest force over the stroke to stand still, friction left out. [F_hold; N] */
  readonly holdForce: number
  /** Extension at which it is needed. [s_q; m] */
  readonly holdExtension: number
  /** Unpowered holding force over that force; below 1 the arm creeps or falls. Null where not given or nothing is to be held. [n_u] */
  readonly holdMargin: number | null
  /** Whether the arm stays anywhere on the stroke without power; null where the back-drive force is not given. [yes or no] */
  readonly holdsUnpowered: boolean | null
  /** Least transmission angle over the stroke. [tau_min; rad] */
  readonly leastTransmission: number
  /** Shortest length the triangle can have: a dead point. [L_min; m] */
  readonly shortest: number
  /** Longest length the triangle can have: a dead point. [L_max; m] */
  readonly longest: number
  /** Arm angle at the shortest length. [theta_s; rad] */
  readonly shortestAngle: number
  /** Arm angle at the longest length. [theta_l; rad] */
  readonly longestAngle: number
  /** Length left to the nearer dead point at the ends of the stroke. [c_d; m] */
  readonly clearance: number
  /** Poses over the stroke, evenly spaced in extension. [list] */
  readonly poses: readonly HingePose[]
}

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

export interface Pose extends HingeStatics {
  readonly extension: number
  readonly angle: number
}
