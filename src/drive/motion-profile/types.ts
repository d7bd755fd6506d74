// What motionProfile takes and gives back.
import type { Angle, AngularAcceleration, AngularSpeed, Length, Moment, MomentOfInertia, Ratio, Time } from "../../quantity/index.js"

/** A move that takes a set time. */
export interface TimedMove {
  /** The time is set. */
  type: "duration"
  /** Time of the whole move. [t_s; 1 ms to 1 h] */
  duration: Time
  /** Share of that time spent speeding up. [f_a; 1 to 99 %; default 33.3333 %] */
  accelerationShare?: Ratio
  /** Share of it spent slowing down. [f_d; 1 to 99 %; default 33.3333 %] */
  decelerationShare?: Ratio
  /**
   * Share of each ramp in which the acceleration itself changes, 1 for a full S-curve; left out for a trapezoid of
   * speed. [f_j; 1 to 100 %; optional]
   */
  jerkShare?: Ratio | null
}
/** The quickest move within limits, speeding up and slowing down alike. */
export interface LimitedMove {
  /** The limits are set. */
  type: "limits"
  /** Speed allowed [omega_l; 0.00095493 to 100000 rpm] */
  maxSpeed: AngularSpeed
  /** Acceleration allowed [alpha_l; 0.00572958 to 5.72958e7 °/s²] */
  maxAcceleration: AngularAcceleration
  /** Time in which the acceleration may reach its limit; left out for a trapezoid of speed. [t_l; 1 ms to 60 s; optional] */
  jerkTime?: Time | null
}

/** Input of {@link motionProfile}. */
export interface MotionProfileInput {
  /** Angle from rest to rest. [theta; 0.1° to 10000 rev] */
  swing: Angle
  /** What sets the pace. [by its type: duration or limits] */
  timing: TimedMove | LimitedMove
  /** Moment of inertia about the shaft, drive included. [J; 0 to 100000 kg m²] */
  inertia: MomentOfInertia
  /** Steady torque of the load: positive against the move out, so that it helps the move back. [T_L; −100000 to 100000 N m; default 0] */
  loadTorque?: Moment
  /** Torque of friction, against the motion both ways. [T_f; 0 to 100000 N m; default 0] */
  frictionTorque?: Moment
  /** Rest after each move. [t_r; 0 to 24 h; default 0] */
  restDuration?: Time
  /** Whether the drive holds the load with torque while it rests. [yes or no; default no] */
  holdsAtRest?: boolean
  /** Distance from the shaft to the tip of the arm. [R; 1 mm to 20 m; optional] */
  tipRadius?: Length | null
}

/** Torques and work of a move one way. */
export interface MoveTorques {
  /** Torque at full acceleration. [N m] */
  readonly accelerationTorque: number
  /** Torque at steady speed; below zero where the drive has to hold the load back. [N m] */
  readonly cruiseTorque: number
  /** Torque at full deceleration; below zero where the drive brakes. [N m] */
  readonly decelerationTorque: number
  /** Largest of these, whatever its sense. [N m] */
  readonly peakTorque: number
  /** Root mean square of the torque while it moves. [N m] */
  readonly rmsTorque: number
  /** Work done by the drive; below zero where it is given back. [J] */
  readonly work: number
}

/** Result of {@link motionProfile}. */
export interface MotionProfile {
  /** Time of one move. [t; s] */
  readonly duration: number
  /** Time speeding up [t_a; s] */
  readonly accelerationTime: number
  /** Time at steady speed [t_c; s] */
  readonly cruiseTime: number
  /** Time slowing down [t_d; s] */
  readonly decelerationTime: number
  /** Peak speed [omega; rad/s] */
  readonly peakSpeed: number
  /** Peak acceleration [alpha_a; rad/s²] */
  readonly peakAcceleration: number
  /** Peak deceleration [alpha_d; rad/s²] */
  readonly peakDeceleration: number
  /** Maximum change of acceleration in a second; null where it changes at once. [j] */
  readonly peakJerk: number | null
  /** Whether the move is too short to reach the speed allowed. [yes or no] */
  readonly shortened: boolean
  /** The move out. [group] */
  readonly out: MoveTorques
  /** The move back. [group] */
  readonly back: MoveTorques
  /** Largest torque, both ways. [T_p; N m] */
  readonly peakTorque: number
  /** Root mean square of the torque over out, rest, back and rest: what heats the motor. [T_rms; N m] */
  readonly rmsTorque: number
  /** Heat of friction in one move. [Q_f; J] */
  readonly frictionHeat: number
  /** Energy of motion at peak speed. [E_p; J] */
  readonly peakEnergy: number
  /** Peak speed of the tip [v_t; m/s] */
  readonly tipSpeed: number | null
}

/** Hazards and limits of validity that go with an answer of {@link motionProfile}. */
export type MotionProfileCaution = "load-drives" | "pinch" | "strike" | "sudden-start"
