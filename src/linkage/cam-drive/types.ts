// A plate cam that lifts a roller follower.
import type { Angle, AngularSpeed, Force, ForcePerLength, Length, Mass } from "../../quantity/index.js"
import type { SiOf, Transmits } from "../../solver/index.js"

/** How the follower rises over the turn of the cam; `uniform` has the same lever arm all the way, the others are tailored. */
export type CamLaw = "uniform" | "parabolic" | "harmonic" | "cycloidal" | "polynomial-345" | "polynomial-4567"

/** Input of {@link camDrive}. */
export interface CamDriveInput {
  /** How the follower rises. [uniform, parabolic, harmonic, cycloidal, polynomial-345 or polynomial-4567; default cycloidal] */
  law?: CamLaw
  /** Lift [h; 0.1 mm to 1 m] */
  lift: Length
  /** Turn of the cam over which the follower rises. [beta; 1° to 360°] */
  riseAngle: Angle
  /** Turn of the cam from the start of the rise. [theta; 0 to 360°] */
  camAngle: Angle
  /** Cam centre to roller centre before the rise. [R_p; 1 mm to 2 m] */
  primeRadius: Length
  /** Distance of the slide line from the cam centre, positive to the side towards which the rising cam pushes. [o; −2 to 2 m; default 0] */
  offset?: Length
  /** Radius of the roller [r_r; 0 to 1 m; default 0] */
  rollerRadius?: Length
  /** Speed of the cam [omega; −9549.3 to 9549.3 rpm; default 0] */
  camSpeed?: AngularSpeed
  /** Force of what is moved, towards the cam. [F_l; 0 to 100 kN; default 0] */
  load?: Force
  /** Mass of the follower [m_f; 0 to 100 kg; default 0] */
  followerMass?: Mass
  /** Force of the return spring before the rise. [F_0; 0 to 100 kN; default 0] */
  preload?: Force
  /** Rate of the return spring [k; 0 to 10000 N/mm; default 0] */
  springRate?: ForcePerLength
  /** Coefficient of friction of the follower in its guide. [mu; 0 to 1; default 0] */
  guideFriction?: number
  /** Length of the guide [L_g; 1 mm to 2 m; default 40 mm] */
  guideLength?: Length
  /** Distance from the roller to the guide. [L_o; 0 to 2 m; default 0] */
  overhang?: Length
  /** Inertia of the cam itself is left to its drive; this is the largest pressure angle wanted. [alpha_l; 5° to 80°; default 30°] */
  pressureLimit?: Angle
}

/** Extremes over the whole rise. */
export interface CamExtremes {
  /** Largest pressure angle [rad] */
  readonly maxPressureAngle: number
  /** Smallest radius of the path of the roller's centre where the cam bulges outward. [m] */
  readonly minRadius: number
  /** Largest speed [m/s] */
  readonly maxSpeed: number
  /** Largest acceleration [m/s²] */
  readonly maxAcceleration: number
  /** Largest moment at the cam while it lifts. [N m] */
  readonly maxEffort: number
  /** Minimum force between roller and cam; negative where the follower would lift off. [N] */
  readonly minContact: number
}

/** Result of {@link camDrive}. */
export interface CamDrive {
  /** The cam lifts its follower; spring and load bring it back: `push-only`. [text] */
  readonly transmits: Transmits
  /** Rise of the follower [s_f; m] */
  readonly displacement: number
  /** Travel of the follower for a turn of the cam: its lever arm. [r; m] */
  readonly lever: number
  /** Change of the lever arm for a turn of the cam. [r_s; m] */
  readonly leverSlope: number
  /** Speed of the follower [v; m/s] */
  readonly speed: number
  /** Acceleration of the follower [a; m/s²] */
  readonly acceleration: number
  /** Angle between the push of the cam and the slide, positive where the push leans the way the cam pushes. [alpha; rad] */
  readonly pressureAngle: number
  /** Force towards the cam along the slide. [P; N] */
  readonly followerForce: number
  /** Force between roller and cam while the cam lifts. [F_c; N] */
  readonly contactForce: number
  /** Force of the follower across its guide while the cam lifts. [F_s; N] */
  readonly sideForce: number
  /** Moment at the cam that holds, friction left out. [T; N m] */
  readonly effort: number
  /** Moment at the cam while it lifts. [T_r; N m] */
  readonly risingEffort: number
  /** Moment at the cam while it lets the follower down. [T_b; N m] */
  readonly returningEffort: number
  /** Inertia of the follower, felt at the cam. [J; kg m²] */
  readonly inertia: number
  /** Change of the inertia per radian [J_s; kg m²] */
  readonly inertiaSlope: number
  /** Over the whole rise [group] */
  readonly rise: CamExtremes
}

/** Reasons for which {@link camDrive} refuses. */
export type CamDriveRefusal = "jammed" | "undercut"

/** Hazards and limits of validity that go with an answer of {@link camDrive}. */
export type CamDriveCaution = "falls-unpowered" | "follower-lifts" | "jolts" | "large-pressure-angle" | "pinch" | "stored-energy"

export type Si = SiOf<CamDriveInput>
