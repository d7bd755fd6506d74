// What beltDrive takes and gives back.
import type { Angle, AngularSpeed, Force, Length, LinearDensity, Moment, Ratio } from "../../quantity/index.js"
import type { Transmits } from "../../solver/index.js"

/** Smooth pulleys: friction carries the pull. */
interface OnFriction {
  /** Diameter of the driving pulley, to the middle of the belt. [d_1; 2 mm to 10 m] */
  drivingDiameter: Length
  /** Diameter of the driven pulley, to the middle of the belt. [d_2; 2 mm to 10 m] */
  drivenDiameter: Length
  /** Friction of belt on pulley [mu; 0.01 to 1.5; default 0.3] */
  friction?: number
}
/** A flat belt. */
export interface FlatBelt extends OnFriction {
  /** Runs flat on smooth pulleys. */
  type: "flat"
  /** Whether the belt crosses over between the pulleys, so that they turn opposite ways. [yes or no; default no] */
  crossed?: boolean
}
/** A belt that wedges in grooves. */
export interface VBelt extends OnFriction {
  /** Wedges in grooves. */
  type: "v"
  /** Whole angle of the groove. [beta; 20° to 180°; default 38°] */
  grooveAngle?: Angle
}
/** A round cord, in grooves or on plain pulleys. */
export interface RoundBelt extends OnFriction {
  /** Round in section. */
  type: "round"
  /** Whole angle of the groove; 180° for a round-bottomed one, where it does not wedge. [beta; 20° to 180°; default 180°] */
  grooveAngle?: Angle
  /** Whether the cord crosses over between the pulleys, so that they turn opposite ways. [yes or no; default no] */
  crossed?: boolean
}
/** A toothed belt: no slip, until its teeth climb over. */
export interface ToothedBelt {
  /** Runs on teeth. */
  type: "toothed"
  /** Distance from tooth to tooth. [p; 0.5 to 50 mm] */
  pitch: Length
  /** Teeth of the driving pulley [z_1; whole 6 to 1000] */
  drivingTeeth: number
  /** Teeth of the driven pulley [z_2; whole 6 to 1000] */
  drivenTeeth: number
}

/** Input of {@link beltDrive}. */
export interface BeltDriveInput {
  /** Belt [by its type: toothed, flat, v or round] */
  belt: ToothedBelt | FlatBelt | VBelt | RoundBelt
  /** Distance between the shafts [C; 5 mm to 50 m] */
  centreDistance: Length
  /** Pull in each strand at rest, as the shafts are set. [F_0; 1 mN to 1000 kN] */
  pretension: Force
  /** Torque at the driven shaft: positive against the motion, negative where the load helps it. [T; −1000000 to 1000000 N m] */
  torque: Moment
  /** Speed of the driving shaft [omega_1; 0 to 100000 rpm; optional] */
  inputSpeed?: AngularSpeed | null
  /** Mass of a length of belt, for what its speed takes of the grip. [q; 0 to 100 kg/m; default 0] */
  linearDensity?: LinearDensity
  /** Share of the work that bending the belt and the bearings leave. [eta; 50 to 100 %; default 95 %] */
  efficiency?: Ratio
  /** The same where the load drives; as the other way when left out. [eta_g; 30 to 100 %; optional] */
  backwardEfficiency?: Ratio | null
  /** Share of its speed that the driven pulley loses, the belt stretching under its pull. [s; 0 to 20 %; default 0] */
  creep?: Ratio
}

/** Result of {@link beltDrive}. */
export interface BeltDrive {
  /** A belt hands on torque whichever shaft drives: `both-ways`. [text] */
  readonly transmits: Transmits
  /** Turns of the driving shaft for one of the driven, without creep. [i] */
  readonly ratio: number
  /** Whether the driven shaft turns the other way. [yes or no] */
  readonly reverses: boolean
  /** Length of the belt along its middle. [L; m] */
  readonly length: number
  /** Teeth of the next belt that is long enough; null without teeth. [z_b] */
  readonly beltTeeth: number | null
  /** Distance between the shafts at which that belt fits; null without teeth. [C_f; m] */
  readonly fittingDistance: number | null
  /** Wrap on the driving pulley [theta_1; rad] */
  readonly drivingWrap: number
  /** Wrap on the driven pulley [theta_2; rad] */
  readonly drivenWrap: number
  /** Teeth in mesh on the smaller pulley; null without teeth. [z_m] */
  readonly teethInMesh: number | null
  /** Torque needed at the driving shaft; below zero where the load drives it. [T_1; N m] */
  readonly inputTorque: number
  /** The same with the motion reversed under the same load: its other direction. [T_r; N m] */
  readonly returnTorque: number
  /** Pull that carries the torque: the difference of the strands. [F; N] */
  readonly pull: number
  /** Largest pull before it slips, or before a toothed belt's slack strand hangs loose and its teeth can climb. [F_m; N] */
  readonly maxPull: number
  /** Torque at the driven shaft at that pull. [T_m; N m] */
  readonly maxTorque: number
  /** Pull against the largest [u; as a fraction] */
  readonly utilisation: number
  /** Pull that is left before it slips or its teeth climb. [F_l; N] */
  readonly slipMargin: number
  /** Pretension at which this torque is just carried. [F_n; N] */
  readonly requiredPretension: number
  /** Tight strand [F_t; N] */
  readonly tightTension: number
  /** Slack strand [F_s; N] */
  readonly slackTension: number
  /** Part of both that the belt's own speed takes, off the pulleys. [F_c; N] */
  readonly centrifugalTension: number
  /** Force on each shaft [F_w; N] */
  readonly shaftForce: number
  /** Speed of the belt [v; m/s] */
  readonly beltSpeed: number | null
  /** Speed of the driven shaft [omega_2; rad/s] */
  readonly outputSpeed: number | null
  /** Power in [P_1; W] */
  readonly inputPower: number | null
  /** Power given to the load; below zero where the load gives it. [P_2; W] */
  readonly outputPower: number | null
  /** Heat in belt, pulleys and bearings. [P_h; W] */
  readonly heat: number | null
}

/** Why {@link beltDrive} can refuse. */
export type BeltDriveRefusal = "slips" | "skips"

/** Hazards and limits of validity that go with an answer of {@link beltDrive}. */
export type BeltDriveCaution = "drawn-in" | "strength-not-judged" | "back-driven" | "near-slip" | "little-wrap" | "few-teeth-in-mesh"
