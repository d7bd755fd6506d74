import type { Acceleration, Angle, AngularAcceleration, AngularSpeed, Force, Length, Moment, Speed } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"

/** A named point: a fixed pivot, or a moving pin where the sketch shows it. */
export interface LinkagePoint {
  /** Name that the other lists call it by. [text of 1 to 100 characters] */
  readonly name: string
  /** Place in the sketch. [x; −100 to 100 m] */
  readonly x: Length
  /** Coordinate y. [y; −100 to 100 m] */
  readonly y: Length
}

/** A rigid bar from pin to pin. */
export interface LinkageBar {
  /** Name; `from-to` where left out. [text of 1 to 100 characters; optional] */
  readonly name?: string | null
  /** Pin at one end. [text of 1 to 100 characters] */
  readonly from: string
  /** Pin at the other end. [text of 1 to 100 characters] */
  readonly to: string
  /** Pin to pin; taken from the sketch where left out. [l; 0.01 mm to 100 m; optional] */
  readonly length?: Length | null
}

/** A point fixed to a bar: a third pin, a tip, a centre of gravity. */
export interface CarriedPoint {
  /** The point carried. [text of 1 to 100 characters] */
  readonly point: string
  /** Ends of the bar that carries it. [text of 1 to 100 characters] */
  readonly from: string
  /** To point [text of 1 to 100 characters] */
  readonly to: string
  /** Distance along the bar from `from`; from the sketch where left out. [u; −100 to 100 m; optional] */
  readonly along?: Length | null
  /** Distance to the left of the bar; from the sketch where left out. [w; −100 to 100 m; optional] */
  readonly across?: Length | null
}

/** A point that slides along a straight line through two points of one body, or through two pivots. */
export interface LinkageSlider {
  /** Name; `from-to` where left out. [text of 1 to 100 characters; optional] */
  readonly name?: string | null
  /** The point that slides. [text of 1 to 100 characters] */
  readonly point: string
  /** First point of the line. [text of 1 to 100 characters] */
  readonly from: string
  /** Second point of the line. [text of 1 to 100 characters] */
  readonly to: string
  /** Distance of the point to the left of the line; from the sketch where left out. [h; −100 to 100 m; optional] */
  readonly offset?: Length | null
}

/** A motor or servo: it sets the direction of the line `from`–`to`. */
export interface LinkageCrank {
  /** Name; `from-to` where left out. [text of 1 to 100 characters; optional] */
  readonly name?: string | null
  /** From point [text of 1 to 100 characters] */
  readonly from: string
  /** … to here. [text of 1 to 100 characters] */
  readonly to: string
  /** Line that the angle is measured from; the x axis where left out. [text of 1 to 100 characters; optional] */
  readonly referenceFrom?: string | null
  /** Reference line to [text of 1 to 100 characters; optional] */
  readonly referenceTo?: string | null
  /** Angle at the start; from the sketch where left out. [theta_0; −57295.8° to 57295.8°; optional] */
  readonly start?: Angle | null
  /** Angle at the end; as at the start where left out. [theta_1; −57295.8° to 57295.8°; optional] */
  readonly end?: Angle | null
  /** Speed at the end of the motion, for velocities there. [omega; −9549.3 to 9549.3 rpm; default 0] */
  readonly speed?: AngularSpeed
  /** Acceleration there. [alpha; −5.72958e7 to 5.72958e7 °/s²; default 0] */
  readonly acceleration?: AngularAcceleration
}

/** A linear actuator: it sets the distance `from`–`to`. */
export interface LinkageActuator {
  /** Name; `from-to` where left out. [text of 1 to 100 characters; optional] */
  readonly name?: string | null
  /** From point [text of 1 to 100 characters] */
  readonly from: string
  /** To point [text of 1 to 100 characters] */
  readonly to: string
  /** Length at the start; from the sketch where left out. [s_0; 0.01 mm to 100 m; optional] */
  readonly start?: Length | null
  /** Length at the end; as at the start where left out. [s_1; 0.01 mm to 100 m; optional] */
  readonly end?: Length | null
  /** Speed at the end of the motion, for velocities there. [v; −1000 to 1000 m/s; default 0] */
  readonly speed?: Speed
  /** Acceleration there. [a; −1000000 to 1000000 m/s²; default 0] */
  readonly acceleration?: Acceleration
}

/** A force at a point. */
export interface LinkageLoad {
  /** Where it works. [text of 1 to 100 characters] */
  readonly point: string
  /** Force along x [F_x; −1000 to 1000 kN; default 0] */
  readonly forceX?: Force
  /** Force along y; a weight is negative. [F_y; −1000 to 1000 kN; default 0] */
  readonly forceY?: Force
}

/** A torque on a bar, counter-clockwise positive. */
export interface LinkageTorque {
  /** Two points of the bar that it works on. [text of 1 to 100 characters] */
  readonly from: string
  /** To point [text of 1 to 100 characters] */
  readonly to: string
  /** Torque, counter-clockwise positive. [M; −1000000 to 1000000 N m] */
  readonly torque: Moment
}

/** A planar mechanism as data; every list but pivots, points and bars may be left out. */
export interface MechanismInput {
  /** Fixed pivots [list of 1 to 60] */
  pivots: readonly LinkagePoint[]
  /** Moving points, where the sketch shows them. [list of 1 to 60] */
  points: readonly LinkagePoint[]
  /** Rigid bars. [list of 1 to 200] */
  bars: readonly LinkageBar[]
  /** Points fixed to bars. [list of 0 to 100; default none] */
  carried?: readonly CarriedPoint[]
  /** Points that slide on lines. [list of 0 to 100; default none] */
  sliders?: readonly LinkageSlider[]
  /** Rotary drivers [list of 0 to 20; default none] */
  cranks?: readonly LinkageCrank[]
  /** Linear drivers [list of 0 to 20; default none] */
  actuators?: readonly LinkageActuator[]
  /** Forces [list of 0 to 200; default none] */
  loads?: readonly LinkageLoad[]
  /** Torques [list of 0 to 100; default none] */
  torques?: readonly LinkageTorque[]
}

/** The mechanism in SI. */
export type MechanismSi = Pick<SiOf<MechanismInput>, keyof MechanismInput>
