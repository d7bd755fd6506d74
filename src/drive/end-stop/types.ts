// What endStop takes and gives back.
import type { AngularSpeed, Force, ForcePerLength, Frequency, Length, Mass, Moment, MomentOfInertia, Ratio } from "../../quantity/index.js"
import type { Transmits } from "../../solver/index.js"

/** A stop that yields as a spring: a rubber buffer, a coil spring, a bending tab. */
export interface SpringStop {
  /** It yields as a spring. */
  type: "spring"
  /** Force for each length that it yields. [k; 1 N/m to 1e9 N/mm] */
  stiffness: ForcePerLength
  /** How far it can yield before it is solid. [x_m; 10 µm to 10 m; optional] */
  travel?: Length | null
  /** Share of the energy that it gives back: about a half for rubber, nearly all for a coil spring. [f_r; 0 to 100 %; default 100 %] */
  returnedShare?: Ratio
}
/** A stop that takes the energy away over a set stroke: a shock absorber, or foam that crushes. */
export interface AbsorberStop {
  /** It takes the energy away. */
  type: "absorber"
  /** Way over which it stops. [x_s; 10 µm to 10 m] */
  stroke: Length
  /** Mean of its force over the peak. [eta_s; 0.2 to 1; default 0.85] */
  absorberEfficiency?: Ratio
}

/** Input of {@link endStop}. */
export interface EndStopInput {
  /**
   * Moment of inertia about the hinge of all that moves; a geared rotor counts with the square of its ratio. [J; 0.01 g
   * cm² to 1e8 kg m²]
   */
  inertia: MomentOfInertia
  /** Speed on meeting the stop. [omega; 0.00572958 °/s to 95493 rpm] */
  speed: AngularSpeed
  /** Torque that goes on pushing into the stop: the drive, and the weight of what falls. [T; 0 to 1e8 N m; default 0] */
  drivingTorque?: Moment
  /** Distance from the hinge to the stop. [r; 1 mm to 100 m] */
  stopRadius: Length
  /** Stop [by its type: spring or absorber] */
  stop: SpringStop | AbsorberStop
  /** Mass of the arm, for the force on its hinge. [m_1; 1 mg to 1000000 kg; optional] */
  mass?: Mass | null
  /** Distance from the hinge to its centre of mass. [r_c; 0 to 100 m; default 0] */
  centreRadius?: Length
  /** How often it meets the stop. [n; 0 to 60000 1/min; default 0] */
  strikeRate?: Frequency
  /** Force that the stop and what holds it bear. [F_r; 1 mN to 1000000 kN; optional] */
  ratedForce?: Force | null
}

/** Result of {@link endStop}. */
export interface EndStop {
  /** A stop lets go of what moves away from it: `push-only`. [text] */
  readonly transmits: Transmits
  /** Energy of motion on meeting the stop. [E_k; J] */
  readonly kineticEnergy: number
  /** Work of the driving torque while it stops. [E_d; J] */
  readonly drivingWork: number
  /** Energy that the stop takes. [E; J] */
  readonly energy: number
  /** How far the stop yields. [x; m] */
  readonly stoppingLength: number
  /** How far the arm turns meanwhile. [phi; rad] */
  readonly stoppingAngle: number
  /** Stopping time [t; s] */
  readonly stoppingTime: number
  /** Peak force at the stop. [F; N] */
  readonly peakForce: number
  /** Mean force at the stop [F_m; N] */
  readonly meanForce: number
  /** Force at the stop once at rest, the drive still pushing. [F_0; N] */
  readonly restForce: number
  /** Angular deceleration at the peak. [alpha; rad/s²] */
  readonly peakDeceleration: number
  /** Speed at which it is thrown back, the drive still pushing. [omega_b; rad/s] */
  readonly reboundSpeed: number
  /** Mass that the stop feels. [m_e; kg] */
  readonly effectiveMass: number
  /** Force on the hinge, across the arm, at the peak; null without a mass. [F_h; N] */
  readonly hingeForce: number | null
  /** Heat that the stop has to lose. [P; W] */
  readonly meanHeat: number
  /** Peak force against the rated one. [u; as a fraction] */
  readonly utilisation: number | null
}

/** Reasons for which {@link endStop} refuses. */
export type EndStopRefusal = "bottoms-out"

/** Hazards and limits of validity that go with an answer of {@link endStop}. */
export type EndStopCaution = "drive-pushes" | "over-force" | "pinch" | "rigid-arm" | "snap-back"
