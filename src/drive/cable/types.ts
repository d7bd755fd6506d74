// What cable takes and gives back.
import type { Angle, Area, Force, ForcePerLength, Length, Pressure, Ratio } from "../../quantity/index.js"
import type { Transmits } from "../../solver/index.js"
import type { CableConstruction } from "./data.js"

/** One bend of a sheath. */
export interface SheathBend {
  /** How far the cable turns in it. [theta; 0 to 1080°] */
  angle: Angle
  /** Radius of the bend, to the middle of the cable. [r_b; 0.5 mm to 10 m] */
  radius: Length
}
/** A cable in a sheath that bears what the cable pulls (Bowden cable). */
export interface SheathedRoute {
  /** It runs in a sheath. */
  type: "sheath"
  /** Bends, from the far end [list of 1 to 12] */
  bends: readonly SheathBend[]
  /** Friction in the sheath [mu; 0 to 1] */
  friction: number
  /** Stiffness of the sheath, end to end [k_s; 100 N/m to 1e7 N/mm; optional] */
  sheathRate?: ForcePerLength | null
  /** Bore of the sheath [D_i; 0.1 to 200 mm; optional] */
  sheathBore?: Length | null
}
/** One pulley. */
export interface CablePulley {
  /** Wrap on the pulley [phi; 0 to 360°] */
  angle: Angle
  /** Diameter of the pulley, to the middle of the cable [D_p; 1 mm to 2 m] */
  pulleyDiameter: Length
  /** Diameter of its pin [d_p; 0.1 mm to 1 m] */
  pinDiameter: Length
  /** Friction of its bearing [mu_p; 0 to 1] */
  bearingFriction: number
  /** Tension lost by bending the cable [c_p; 0 to 30 %; default 2 %] */
  bendingLoss?: Ratio
}
/** A plain cable over pulleys. */
export interface PulleyRoute {
  /** It runs over pulleys. */
  type: "pulleys"
  /** Pulleys, from the far end [list of 1 to 12] */
  pulleys: readonly CablePulley[]
}

/** Input of {@link cable}. */
export interface CableInput {
  /** Tension at the far end [F; 1 mN to 1000 kN] */
  force: Force
  /** Travel of the far end [s_2; 0.1 mm to 100 m] */
  travel: Length
  /** Length of the cable [L; 10 mm to 1000 m] */
  length: Length
  /** Diameter of the cable [d; 0.1 to 100 mm] */
  diameter: Length
  /**
   * Construction of a wire cable [1x7-galvanised, 1x19-galvanised, 7x7-galvanised, 7x19-galvanised, 1x19-stainless,
   * 7x7-stainless or 7x19-stainless; optional]
   */
  construction?: CableConstruction | null
  /** Area of its section [A; 0.001 to 10000 mm²; optional] */
  area?: Area | null
  /** Modulus of the cable [E; 0.1 to 500 GPa; optional] */
  modulus?: Pressure | null
  /** Breaking force [F_b; 1 N to 100000 kN] */
  breakingForce: Force
  /** Minimum bend radius of the cable [r_m; 0.5 mm to 10 m; optional] */
  minBendRadius?: Length | null
  /** Route [by its type: sheath or pulleys] */
  route: SheathedRoute | PulleyRoute
}

/** Tension of the cable past one of its bends. */
export interface CableSpan {
  /** Angle turned so far [rad] */
  readonly turned: number
  /** Tension, pulling [N] */
  readonly pulling: number
  /** Tension, paying out [N] */
  readonly payingOut: number
}

/** Result of {@link cable}. */
export interface Cable {
  /** A single cable never pushes: `pull-only`. [text] */
  readonly transmits: Transmits
  /** Total angle of bends [theta_t; rad] */
  readonly turnedAngle: number
  /** Force at the drive, pulling [F_1; N] */
  readonly pullingForce: number
  /** Force at the drive, paying out [F_3; N] */
  readonly payingOutForce: number
  /** Efficiency, pulling [eta; as a fraction] */
  readonly efficiency: number
  /** Efficiency, paying out [eta_b; as a fraction] */
  readonly backwardEfficiency: number
  /** Stretch of the cable [x_c; m] */
  readonly stretch: number
  /** Shortening of the sheath [x_s; m] */
  readonly sheathShortening: number | null
  /** Lost motion under load [x; m] */
  readonly lostMotion: number
  /** Travel of the drive, from slack [s_1; m] */
  readonly driveTravel: number
  /** Lost motion on reversing [b_r; m] */
  readonly reversalLoss: number
  /** Slack taken up in the bends [b_s; m] */
  readonly slackPlay: number | null
  /** Work of the drive [W_1; J] */
  readonly workIn: number
  /** Work at the far end [W_2; J] */
  readonly workOut: number
  /** Work lost, pulling [W_f; J] */
  readonly frictionWork: number
  /** Work given back, paying out [W_3; J] */
  readonly returnedWork: number
  /** Energy stored, at most [W_e; J] */
  readonly storedEnergy: number
  /** Tightest radius [r_t; m] */
  readonly minRadius: number
  /** Tightest bend, diameter over the cable's [D_d] */
  readonly bendRatio: number
  /** Strength left in the tightest bend [f_b; as a fraction] */
  readonly strengthShare: number
  /** Safety factor of the cable [S] */
  readonly safetyFactor: number
  /** Minimum bend radius against the tightest [u; as a fraction] */
  readonly bendUtilisation: number | null
  /** Tension, from the far end [list] */
  readonly spans: readonly CableSpan[]
}

/** Why {@link cable} can refuse. */
export type CableRefusal = "breaks"

/** Hazards and limits of validity that go with an answer of {@link cable}. */
export type CableCaution =
  | "stored-energy"
  | "pull-only"
  | "pinch"
  | "sheath-stops"
  | "sheath-rigid"
  | "thin-margin"
  | "over-bent"
  | "tight-bend"
  | "large-loss"
