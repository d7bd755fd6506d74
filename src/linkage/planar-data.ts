import type { Acceleration, Angle, AngularAcceleration, AngularSpeed, Force, Length, Moment, Speed } from "../quantity/index.js"
import type { SiOf } from "../solver/index.js"

/** A named point: a fixed pivot, or a moving pin where the sketch shows it. */
export interface LinkagePoint {
  /** Name that the other lists call it by. */
  readonly name: string
  /** Place in the sketch. */
  readonly x: Length
  /** Coordinate y. */
  readonly y: Length
}

/** A rigid bar from pin to pin. */
export interface LinkageBar {
  /** Name; `from-to` where left out. */
  readonly name?: string | null
  /** Pin at one end. */
  readonly from: string
  /** Pin at the other end. */
  readonly to: string
  /** Pin to pin; taken from the sketch where left out. */
  readonly length?: Length | null
}

/** A point fixed to a bar: a third pin, a tip, a centre of gravity. */
export interface CarriedPoint {
  /** The point carried. */
  readonly point: string
  /** Ends of the bar that carries it. */
  readonly from: string
  /** To point. */
  readonly to: string
  /** Distance along the bar from `from`; from the sketch where left out. */
  readonly along?: Length | null
  /** Distance to the left of the bar; from the sketch where left out. */
  readonly across?: Length | null
}

/** A point that slides along a straight line through two points of one body, or through two pivots. */
export interface LinkageSlider {
  /** Name; `from-to` where left out. */
  readonly name?: string | null
  /** The point that slides. */
  readonly point: string
  /** First point of the line. */
  readonly from: string
  /** Second point of the line. */
  readonly to: string
  /** Distance of the point to the left of the line; from the sketch where left out. */
  readonly offset?: Length | null
}

/** A motor or servo: it sets the direction of the line `from`–`to`. */
export interface LinkageCrank {
  /** Name; `from-to` where left out. */
  readonly name?: string | null
  /** The line turned runs from here … */
  readonly from: string
  /** … to here. */
  readonly to: string
  /** Line that the angle is measured from; the x axis where left out. */
  readonly referenceFrom?: string | null
  /** Reference line to. */
  readonly referenceTo?: string | null
  /** Angle at the start; from the sketch where left out. */
  readonly start?: Angle | null
  /** Angle at the end; as at the start where left out. */
  readonly end?: Angle | null
  /** Speed at the end of the motion, for velocities there. */
  readonly speed?: AngularSpeed
  /** Acceleration there. */
  readonly acceleration?: AngularAcceleration
}

/** A linear actuator: it sets the distance `from`–`to`. */
export interface LinkageActuator {
  /** Name; `from-to` where left out. */
  readonly name?: string | null
  /** Mounted at this point … */
  readonly from: string
  /** … and this one. */
  readonly to: string
  /** Length at the start; from the sketch where left out. */
  readonly start?: Length | null
  /** Length at the end; as at the start where left out. */
  readonly end?: Length | null
  /** Speed at the end of the motion, for velocities there. */
  readonly speed?: Speed
  /** Acceleration there. */
  readonly acceleration?: Acceleration
}

/** A force at a point. */
export interface LinkageLoad {
  /** Where it works. */
  readonly point: string
  /** Force along x. */
  readonly forceX?: Force
  /** Force along y; a weight is negative. */
  readonly forceY?: Force
}

/** A torque on a bar, counter-clockwise positive. */
export interface LinkageTorque {
  /** Two points of the bar that it works on. */
  readonly from: string
  /** To point. */
  readonly to: string
  /** Torque, counter-clockwise positive. */
  readonly torque: Moment
}

/** A planar mechanism as data; every list but pivots, points and bars may be left out. */
export interface MechanismInput {
  /** Fixed pivots. */
  pivots: readonly LinkagePoint[]
  /** Moving points, where the sketch shows them. */
  points: readonly LinkagePoint[]
  /** Rigid bars. */
  bars: readonly LinkageBar[]
  /** Points fixed to bars. */
  carried?: readonly CarriedPoint[]
  /** Points that slide on lines. */
  sliders?: readonly LinkageSlider[]
  /** Rotary drivers. */
  cranks?: readonly LinkageCrank[]
  /** Linear drivers. */
  actuators?: readonly LinkageActuator[]
  /** Forces. */
  loads?: readonly LinkageLoad[]
  /** Torques. */
  torques?: readonly LinkageTorque[]
}

/** The mechanism in SI. */
export type MechanismSi = Pick<SiOf<MechanismInput>, keyof MechanismInput>
