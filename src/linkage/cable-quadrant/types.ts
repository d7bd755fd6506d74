// What cableQuadrant takes and gives back.
import type { Angle, Force, ForcePerLength, Length, Moment } from "../../quantity/index.js"
import type { Band, SiOf, Transmits } from "../../solver/index.js"
import type { HingeWeightInput } from "../hinge/fields.js"

/** A spring that pulls the quadrant back, on a rim of its own. */
export interface ReturnSpring {
  /** A spring brings it back. */
  type: "spring"
  /** Radius of the spring's rim [r_2; 1 mm to 2 m] */
  radius: Length
  /** Rate of the spring [k_2; 1 N/m to 10000 N/mm] */
  springRate: ForcePerLength
}
/** A second cable that pulls the other way, from the same drive. */
export interface ReturnCable {
  /** A second cable brings it back. */
  type: "cable"
  /** Radius of the second cable [r_2; 1 mm to 2 m] */
  radius: Length
  /** Force that stretches this cable, its sheath included, by a length, the drive held. [k_2; 1 N/m to 10000 N/mm] */
  stiffness: ForcePerLength
  /** Arc on which it lies on its rim at the start; it winds on as the quadrant turns. [w_2; 0 to 360°] */
  wrap: Angle
  /** Arc of its rim that can take it up. [w_m; 1° to 360°] */
  rimAngle: Angle
}

/** Input of {@link cableQuadrant}. */
export interface CableQuadrantInput {
  /** Radius at which the opening cable lies, to its middle. [r_1; 1 mm to 2 m] */
  radius: Length
  /** Angle of the arm at the start: 0 is level, positive is up. [q_0; −180° to 180°] */
  startAngle: Angle
  /** Angle of travel [q_t; 1° to 330°] */
  travel: Angle
  /** Arc on which the opening cable lies on its rim at the start; it unwinds as the quadrant turns. [w_1; 0 to 360°] */
  wrap: Angle
  /** Force that stretches the opening cable, its sheath included, by a length, the drive held. [k_1; 1 N/m to 10000 N/mm] */
  cableStiffness: ForcePerLength
  /** Pull of the return spring at the start, or of the opening cable with nothing on the arm. [T_0; 0 to 100 kN] */
  pretension: Force
  /** What brings it back [by its type: spring or cable] */
  returnedBy: ReturnSpring | ReturnCable
  /** Masses on the arm [list of 1 to 20] */
  masses: readonly HingeWeightInput[]
  /** Angle by which the wearer leans; positive raises the arm. [lambda; −90° to 90°; default 0] */
  frameTilt?: Angle
  /** Moment that is always there; positive pulls the arm down. [M_l; −10000 to 10000 N m; default 0] */
  loadMoment?: Moment
  /** Moment against every motion, up and down: air, gears, what it takes to speed the arm up. [M_d; 0 to 10000 N m; default 0] */
  opposingMoment?: Moment
  /** Friction of the pivot [mu; 0 to 1; default 0] */
  pinFriction?: number
  /** Diameter of the pivot [d_p; 0 to 1 m; default 0] */
  pinDiameter?: Length
  /** Pivot to the tip [R; 1 mm to 20 m; optional] */
  tipRadius?: Length | null
}

/** The quadrant at one angle. */
export interface QuadrantPose {
  /** Angle of the arm [rad] */
  readonly angle: number
  /** Travel of the opening cable [m] */
  readonly cableTravel: number
  /** Load moment [N m] */
  readonly loadMoment: number
  /** Moment of the cables, turning [N m] */
  readonly openingMoment: number
  /** Moment of the cables, coming back [N m] */
  readonly returningMoment: number
  /** Opening cable, turning [N] */
  readonly openingTension: number
  /** Opening cable, coming back [N] */
  readonly returningTension: number
  /** Spring or second cable, turning [N] */
  readonly springOpening: number
  /** Spring or second cable, coming back [N] */
  readonly springReturning: number
}

/** Result of {@link cableQuadrant}. */
export interface CableQuadrant {
  /** Two cables turn the arm both ways; against a spring the drive only pulls. [text] */
  readonly transmits: Transmits
  /** Travel of the opening cable [s_1; m] */
  readonly cableTravel: number
  /** Travel of spring or second cable [s_2; m] */
  readonly returnTravel: number
  /** Arc of the opening cable left at the end [w_l; rad] */
  readonly wrapLeft: number
  /** Arc of the second cable's rim left at the end [w_r; rad] */
  readonly rimLeft: number | null
  /** Inertia of the masses [J; kg m²] */
  readonly inertia: number
  /** Load moment over the travel, positive where it closes. [M_n to M_x; N m] */
  readonly loadMoment: Band
  /** Tension of the opening cable over the travel, both ways. [T_n to T_x; N] */
  readonly openingTension: Band
  /** Tension of spring or second cable over the travel, both ways. [S_n to S_x; N] */
  readonly returningTension: Band
  /** Pretension that keeps both taut [T_r; N] */
  readonly requiredPretension: number
  /** Stiffness at the pivot, drive held [K; N m/rad] */
  readonly rotationalStiffness: number
  /** Play of the tip under the load [y; m] */
  readonly tipDeflection: number | null
  /** Energy stored, at most [W_e; J] */
  readonly storedEnergy: number
  /** Over the travel [list] */
  readonly poses: readonly QuadrantPose[]
}

/** Why {@link cableQuadrant} can refuse. */
export type CableQuadrantRefusal = "runs-off-rim" | "goes-slack"

/** Hazards and limits of validity that go with an answer of {@link cableQuadrant}. */
export type CableQuadrantCaution = "pinch" | "falls-unpowered" | "stored-energy" | "little-wrap" | "retension"

export type Si = SiOf<CableQuadrantInput>
