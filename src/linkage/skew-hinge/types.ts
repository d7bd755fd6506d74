// A part that swings about an axis at any angle in space, in body axes.
import type { Angle, Length, Mass } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"
import type { BodyVector } from "../space.js"

/** A place on the body. */
export interface BodyPointInput {
  /** Hinge, forward or tip, forward [−20 to 20 m] */
  forward: Length
  /** Hinge, left or tip, left [−20 to 20 m] */
  left: Length
  /** Hinge, up or tip, up [−20 to 20 m] */
  up: Length
}

/** A direction on the body; only the proportions of the three numbers count. */
export interface BodyDirectionInput {
  /** Axis, part forward [f_a; −1000 to 1000] */
  forward: number
  /** Axis, part left [l_a; −1000 to 1000] */
  left: number
  /** Axis, part up [u_a; −1000 to 1000] */
  up: number
}

/** A mass on the swinging part, where it is before any swing. */
export interface SkewHingeMassInput {
  /** Mass [m_w; 0 to 200 kg] */
  mass: Mass
  /** Mass, forward [f_w; −20 to 20 m] */
  forward: Length
  /** Mass, left [l_w; −20 to 20 m] */
  left: Length
  /** Mass, up [u_w; −20 to 20 m] */
  up: Length
}

/** Input of {@link skewHinge}. */
export interface SkewHingeInput {
  /** A point of the axis, midway between the two bearings. [group; optional, with a default of its own] */
  hinge?: BodyPointInput
  /** Direction of the axis; the swing turns right-handed about it. [group] */
  axis: BodyDirectionInput
  /** Masses of the swinging part [list of 1 to 50] */
  masses: readonly SkewHingeMassInput[]
  /** Tip of the swinging part before any swing. [group] */
  tip: BodyPointInput
  /** Swing at which the answer is asked for, from the pose in which masses and tip are given. [theta; −401.07° to 401.07°] */
  swing: Angle
  /** Swing, one end [theta_1; −401.07° to 401.07°; default 0] */
  swingFrom?: Angle
  /** Swing, other end [theta_2; −401.07° to 401.07°] */
  swingTo: Angle
  /** Lean of the trunk forward [lambda_f; −90° to 90°; default 0] */
  forwardLean?: Angle
  /** Lean of the trunk to the left [lambda_l; −90° to 90°; default 0] */
  leftLean?: Angle
  /** Coefficient of friction of the bearings. [mu; 0 to 1; default 0] */
  pinFriction?: number
  /** Diameter of the pin [d_p; 0 to 100 mm; default 0] */
  pinDiameter?: Length
  /** Distance between the two bearings along the axis. [s_b; 1 mm to 2 m; default 40 mm] */
  bearingSpan?: Length
  /** Lever arm of the rod, cable or gear that turns the part; 0 leaves its force on the bearings out. [R_d; 0 to 2 m; default 0] */
  driveRadius?: Length
}

/** The part at one place of its swing. */
export interface SkewHingePose {
  /** Swing [rad] */
  readonly swing: number
  /** Tip, forward [m] */
  readonly forward: number
  /** Tip, left [m] */
  readonly left: number
  /** Tip, up [m] */
  readonly up: number
  /** Moment that holds it [N m] */
  readonly effort: number
}

/** Result of {@link skewHinge}, in body axes. */
export interface SkewHinge {
  /** Tip, forward [f_p; m] */
  readonly tipForward: number
  /** Tip, left [l_p; m] */
  readonly tipLeft: number
  /** Tip, up [u_p; m] */
  readonly tipUp: number
  /** Distance of the tip from the axis [r_s; m] */
  readonly swingRadius: number
  /** Moment about the axis that holds the part, right-handed; friction left out. [M; N m] */
  readonly effort: number
  /** Moment while the part turns right-handed about its axis. [M_t; N m] */
  readonly turningEffort: number
  /** Moment while it turns back. [M_r; N m] */
  readonly returningEffort: number
  /** Largest size of the holding moment between the ends of the swing. [M_m; N m] */
  readonly maxEffort: number
  /** Sum of the loads on the two bearings, across the axis. [F_b; N] */
  readonly bearingLoad: number
  /** Load along the axis [F_a; N] */
  readonly thrust: number
  /** Inertia about the axis, the same at every swing. [J; kg m²] */
  readonly inertia: number
  /** Force of the frame on the hinge: the weight carried. [F_h; N] */
  readonly reactionForce: number
  /** Moment of the frame about the hinge point: of hinge and drive together. [M_h; N m] */
  readonly reactionMoment: number
  /** Distance from hinge to tip as it is seen from the front. [r_f; m] */
  readonly frontReach: number
  /** Direction from hinge to tip as it is seen from the front: 0 to the wearer's left, a quarter turn up. [beta_f; rad] */
  readonly frontAngle: number
  /** How far the tip stands forward of the hinge. [f_d; m] */
  readonly tipAhead: number
  /** Force of the frame on the hinge, by direction. [group] */
  readonly reaction: BodyVector
  /** Moment of the frame about the hinge point, by direction. [group] */
  readonly moment: BodyVector
  /** Moment about the axis for an acceleration of the body of 1 m/s² in each direction, kg m. [group] */
  readonly perAcceleration: BodyVector
  /** Path of the tip [list] */
  readonly path: readonly SkewHingePose[]
}

/** Hazards and limits of validity that go with an answer of {@link skewHinge}. */
export type SkewHingeCaution = "falls-unpowered" | "friction-left-out" | "not-seen-from-front" | "pinch" | "tip-sweeps"

export type Si = SiOf<SkewHingeInput>
