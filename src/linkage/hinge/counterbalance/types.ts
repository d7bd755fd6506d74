// What goes in and what comes out.
import type { Angle, Force, ForcePerLength, Length, Pressure, Ratio } from "../../../quantity/index.js"
import type { SiOf } from "../../../solver/index.js"
import type { HingeWeightInput, MovingPivotInput, PointInput } from "../fields.js"

/** A helical spring, which only pulls. */
export interface SpringElement {
  /** A helical spring. */
  type: "spring"
  /** Stiffness [k_g; 0 to 10000 N/mm; optional] */
  stiffness?: ForcePerLength | null
  /** Helical spring by its wire. [group; optional] */
  coil?: {
    /** Wire diameter [d_w; 0.01 to 100 mm] */
    wire: Length
    /** Mean coil diameter [D_m; 0.1 mm to 1 m] */
    meanDiameter: Length
    /** Coils that stretch. [N_a; 0.1 to 10000] */
    activeCoils: number
    /** Shear modulus of the wire. [G; 1 MPa to 1000 GPa; default 79.3 GPa] */
    shearModulus?: Pressure
  } | null
  /** Length between its ends when unloaded. [x_0; 0 to 20 m; default 0] */
  freeLength?: Length
  /** Initial tension of a close-wound spring. [F_0; 0 to 100 kN; default 0] */
  preload?: Force
}
/** An elastic cord, which only pulls. */
export interface CordElement {
  /** An elastic cord. */
  type: "cord"
  /** Stiffness [k_g; 0 to 10000 N/mm] */
  stiffness: ForcePerLength
  /** Length between its ends when unloaded. [x_0; 0 to 20 m; default 0] */
  freeLength?: Length
}
/** A gas strut, which pushes, by its datasheet. */
export interface StrutElement {
  /** A gas strut. */
  type: "gas-strut"
  /** Length between its ends when extended. [x_1; 1 mm to 5 m] */
  extendedLength: Length
  /** Stroke [s_1; 0.1 mm to 5 m] */
  stroke: Length
  /** Force when extended. [F_1; 0 to 100 kN] */
  force: Force
  /** Force when pushed in over force when extended. [p_1; 1 to 3; default 1.3] */
  progression?: Ratio
}

/** Input of {@link counterbalance}. */
export interface CounterbalanceInput {
  /** What offloads the actuator. [by its type: spring, cord or gas-strut] */
  element: SpringElement | CordElement | StrutElement
  /** Hinge of the arm. [group; optional, with a default of its own] */
  hinge?: PointInput
  /** Fixed end of the element. [group] */
  fixedPivot: PointInput
  /** Pivot on the arm. [group] */
  movingPivot: MovingPivotInput
  /** Masses on the arm [list of 1 to 50] */
  masses: readonly HingeWeightInput[]
  /** Angle of the arm over its swing. [group] */
  armAngle: {
    /** At the clockwise end of the swing. [theta_1; −401.07° to 401.07°] */
    low: Angle
    /** At the counter-clockwise end. [theta_2; −401.07° to 401.07°] */
    high: Angle
  }
  /** Usual lean of the wearer; positive turns the frame counter-clockwise. [lambda; −183.346° to 183.346°; default 0] */
  frameTilt?: Angle
  /** The wearer may lean this much either way from there. [Lambda; 0 to 91.6732°; default 0] */
  tiltEitherWay?: Angle
}

/** Result of {@link counterbalance}. */
export interface Counterbalance {
  /** Stiffness of spring or cord; null for a gas strut. [k; N/m] */
  readonly stiffness: number | null
  /** Stiffness of a zero-free-length spring between the same ends that balances best. [k_i; N/m] */
  readonly idealStiffness: number
  /** Angle by which the fixed end is off the place for perfect balance, at the usual lean. [gamma; rad] */
  readonly idealDeviation: number
  /** Largest moment of the weights over the swing at the usual lean. [M_u; N m] */
  readonly maxGravityMoment: number
  /** Largest unbalanced moment of the swing at the usual lean. [M_a; N m] */
  readonly maxUnbalancedMoment: number
  /** Arm angle at which it is left. [theta_r; rad] */
  readonly maxUnbalancedAngle: number
  /** Moment left there: positive, the arm falls clockwise; negative, it is driven up. [M_r; N m] */
  readonly unbalancedMoment: number
  /** Part of the largest moment that is taken off; negative where the element makes it worse. [eta; as a fraction] */
  readonly offloadShare: number
  /** Largest moment left with the wearer leaning anywhere allowed. [M_l; N m] */
  readonly maxTiltedUnbalancedMoment: number
  /** Maximum force in the element over the swing. [T_max; N] */
  readonly maxForce: number
  /** Energy that can come loose: most stored over the swing. [W; J] */
  readonly storedEnergy: number
  /** Poses over the swing [list] */
  readonly poses: readonly CounterbalancePose[]
}

/** Reasons for which {@link counterbalance} refuses. */
export type CounterbalanceRefusal = "out-of-reach"

/** Hazards and limits of validity that go with an answer of {@link counterbalance}. */
export type CounterbalanceCaution =
  | "cord-is-not-a-spring"
  | "falls-unpowered"
  | "lean-spoils-balance"
  | "makes-worse"
  | "pinch"
  | "stored-energy"
  | "strut-varies"

/** One pose of the swing. */
export interface CounterbalancePose {
  /** Arm angle [rad] */
  readonly angle: number
  /** Length of the element. [m] */
  readonly length: number
  /** Its force: positive pulls, negative pushes. [N] */
  readonly force: number
  /** Moment of the weights, clockwise. [N m] */
  readonly gravityMoment: number
  /** Moment of the element, counter-clockwise. [N m] */
  readonly balanceMoment: number
  /** Moment left for the actuator. [N m] */
  readonly unbalancedMoment: number
}

export type Si = SiOf<CounterbalanceInput>
