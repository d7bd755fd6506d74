// A lever that a spring holds on either side of its dead centre.
import type { Angle, Force, ForcePerLength, Length, Mass, Moment } from "../../quantity/index.js"
import type { Band, SiOf } from "../../solver/index.js"

/** Input of {@link overCentreLatch}. */
export interface OverCentreLatchInput {
  /** Pivot of the lever to the fixed end of the spring. [d; 1 mm to 5 m] */
  fixedPivotDistance: Length
  /** Pivot of the lever to the spring's pin. [r; 0.5 mm to 5 m] */
  movingPivotRadius: Length
  /** Length of the spring at which it pulls nothing. [x_0; 0 to 10 m] */
  freeLength: Length
  /** Rate of the spring [k; 1 N/m to 10000 N/mm] */
  springRate: ForcePerLength
  /** Tension at which a close-wound spring begins to open. [F_0; 0 to 100 kN; default 0] */
  preload?: Force
  /**
   * Stop on the clockwise side: angle of the pin past the dead centre, where fixed end, pivot and pin lie in line.
   * [theta_c; 0.1° to 179°]
   */
  clockwiseStop: Angle
  /** Stop on the counter-clockwise side. [theta_k; 0.1° to 179°] */
  counterStop: Angle
  /** Moment of what the lever holds, counter-clockwise positive, the same at every angle. [M_l; −10000 to 10000 N m; default 0] */
  loadMoment?: Moment
  /** Pivot to where the hand or drive acts. [R_h; 1 mm to 5 m] */
  handleRadius: Length
  /** Mass of the lever, for how hard it strikes. [m_l; 0 to 100 kg; default 0] */
  leverMass?: Mass
  /** Pivot to the lever's centre of gravity [l_c; 0 to 5 m; default 0] */
  leverCentre?: Length
  /** Coefficient of friction of the pivot. [mu; 0 to 1; default 0] */
  pinFriction?: number
  /** Diameter of the pivot [d_p; 0 to 100 mm; default 0] */
  pinDiameter?: Length
}

/** The latch on one of its stops. */
export interface LatchSide {
  /** Angle past the dead centre, counter-clockwise positive. [rad] */
  readonly angle: number
  /** Moment that presses the lever onto its stop; friction left out. [N m] */
  readonly holdingMoment: number
  /** Force on the stop as it would be at the handle's radius. [N] */
  readonly holdingForce: number
  /** Force at the handle that starts the lever off its stop against friction. [N] */
  readonly releaseForce: number
  /** Largest force at the handle on the way from here to the snap-over point. [N] */
  readonly tripForce: number
  /** Work at the handle from here to the snap-over point. [J] */
  readonly tripWork: number
  /** Energy that the snap from the far side of the dead centre onto this stop lets loose, friction taken off. [J] */
  readonly releasedEnergy: number
  /** Speed of the handle as it strikes this stop; null without a mass. [m/s] */
  readonly strikeSpeed: number | null
}

/** One place of the lever. */
export interface LatchPose {
  /** Angle past the dead centre [rad] */
  readonly angle: number
  /** Tension of the spring [N] */
  readonly springForce: number
  /** Moment of spring and load, counter-clockwise. [N m] */
  readonly moment: number
}

/** Result of {@link overCentreLatch}. */
export interface OverCentreLatch {
  /** Angle at which the lever goes over by itself, from the dead centre. [theta_s; rad] */
  readonly snapAngle: number
  /** Largest tension of the spring between the stops; pivot and fixed end bear as much. [F_m; N] */
  readonly maxSpringForce: number
  /** Energy stored at the snap-over point [W_s; J] */
  readonly storedEnergy: number
  /** Inertia of the lever about its pivot, the mass at its centre of gravity. [J; kg m²] */
  readonly inertia: number
  /** The smaller holding force of the two sides, at the handle. [F_h; N] */
  readonly minHoldingForce: number
  /** Angles between which friction alone keeps the lever where it is. [rad] */
  readonly band: Band
  /** On the clockwise stop [group] */
  readonly clockwise: LatchSide
  /** On the counter-clockwise stop [group] */
  readonly counter: LatchSide
  /** From stop to stop [list] */
  readonly poses: readonly LatchPose[]
}

/** Reasons for which {@link overCentreLatch} refuses. */
export type OverCentreLatchRefusal = "does-not-hold"

/** Hazards and limits of validity that go with an answer of {@link overCentreLatch}. */
export type OverCentreLatchCaution = "pinch" | "snaps-over" | "stored-energy" | "trips-by-little"

export type Si = SiOf<OverCentreLatchInput>
