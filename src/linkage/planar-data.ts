import type { Acceleration, Angle, AngularAcceleration, AngularSpeed, Force, Length, Moment, Speed } from "../quantity/index.js"
import type { SiOf } from "../solver/index.js"

/** A named point: a fixed pivot, or a moving pin where the sketch shows it. */
export interface LinkagePoint {
  readonly name: string
  readonly x: Length
  readonly y: Length
}

/** A rigid bar from pin to pin. */
export interface LinkageBar {
  readonly name?: string | null
  readonly from: string
  readonly to: string
  /** Pin to pin; taken from the sketch where left out. */
  readonly length?: Length | null
}

/** A point fixed to a bar: a third pin, a tip, a centre of gravity. */
export interface CarriedPoint {
  readonly point: string
  /** Ends of the bar that carries it. */
  readonly from: string
  readonly to: string
  /** Distance along the bar from `from`; from the sketch where left out. */
  readonly along?: Length | null
  /** Distance to the left of the bar; from the sketch where left out. */
  readonly across?: Length | null
}

/** A point that slides along a straight line through two points of one body, or through two pivots. */
export interface LinkageSlider {
  readonly name?: string | null
  readonly point: string
  readonly from: string
  readonly to: string
  /** Distance of the point to the left of the line; from the sketch where left out. */
  readonly offset?: Length | null
}

/** A motor or servo: it sets the direction of the line `from`–`to`. */
export interface LinkageCrank {
  readonly name?: string | null
  readonly from: string
  readonly to: string
  /** Line that the angle is measured from; the x axis where left out. */
  readonly referenceFrom?: string | null
  readonly referenceTo?: string | null
  /** Angle at the start; from the sketch where left out. */
  readonly start?: Angle | null
  /** Angle at the end; as at the start where left out. */
  readonly end?: Angle | null
  readonly speed?: AngularSpeed
  readonly acceleration?: AngularAcceleration
}

/** A linear actuator: it sets the distance `from`–`to`. */
export interface LinkageActuator {
  readonly name?: string | null
  readonly from: string
  readonly to: string
  /** Length at the start; from the sketch where left out. */
  readonly start?: Length | null
  /** Length at the end; as at the start where left out. */
  readonly end?: Length | null
  readonly speed?: Speed
  readonly acceleration?: Acceleration
}

/** A force at a point. */
export interface LinkageLoad {
  readonly point: string
  readonly forceX?: Force
  readonly forceY?: Force
}

/** A torque on a bar, counter-clockwise positive. */
export interface LinkageTorque {
  readonly from: string
  readonly to: string
  readonly torque: Moment
}

/** A planar mechanism as data; every list but pivots, points and bars may be left out. */
export interface MechanismInput {
  /** Fixed pivots. */
  pivots: readonly LinkagePoint[]
  /** Moving points, where the sketch shows them. */
  points: readonly LinkagePoint[]
  bars: readonly LinkageBar[]
  carried?: readonly CarriedPoint[]
  sliders?: readonly LinkageSlider[]
  cranks?: readonly LinkageCrank[]
  actuators?: readonly LinkageActuator[]
  loads?: readonly LinkageLoad[]
  torques?: readonly LinkageTorque[]
}

/** The mechanism in SI. */
export type MechanismSi = Pick<SiOf<MechanismInput>, keyof MechanismInput>
