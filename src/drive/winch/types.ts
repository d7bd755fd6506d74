// What winch takes and gives back.
import type { AngularSpeed, Force, Length, Moment, Ratio } from "../../quantity/index.js"
import type { Band, Transmits } from "../../solver/index.js"

/** Input of {@link winch}. Give the width of the drum or the turns in one layer. */
export interface WinchInput {
  /** Pull in the line while it works, the largest on the way. [F; 10 mN to 1000 kN] */
  pull: Force
  /** Diameter of the bare drum, where the line lies. [D; 3 mm to 5 m] */
  drumDiameter: Length
  /** Line [d; 0.1 to 100 mm] */
  lineDiameter: Length
  /** Wire rope suffers more from a small drum than a fibre line does. [wire-rope or fibre-rope] */
  lineType: "wire-rope" | "fibre-rope"
  /** Width between the flanges. [W; 0.5 mm to 10 m; optional] */
  drumWidth?: Length | null
  /** Turns in one layer [n_g; whole 1 to 10000; optional] */
  turnsPerLayer?: number | null
  /** Rise of the radius from layer to layer against the line's diameter: 1 stacked, 0.866 nested in the gaps. [e; 0.8 to 1; default 1] */
  layerRise?: Ratio
  /** Line on the drum when it is wound in as far as it goes. [L; 10 mm to 500 m] */
  lineLength: Length
  /** Line paid out from there. [s; 1 mm to 500 m] */
  travel: Length
  /** Flanges [D_f; 4 mm to 10 m; optional] */
  flangeDiameter?: Length | null
  /** Breaking force of the line, as its maker states it for the straight line. [F_b; 0.1 N to 10000 kN; optional] */
  lineStrength?: Force | null
  /** Friction of the line on the drum, for what reaches its fixing. [mu; 0 to 1; default 0.1] */
  lineFriction?: number
  /** Share of the work that bending the line, bearings and guides leave while it winds in. [eta; 30 to 100 %; default 95 %] */
  efficiency?: Ratio
  /** The same while the load pulls the line out; as winding in when left out. [eta_g; 5 to 100 %; optional] */
  backwardEfficiency?: Ratio | null
  /** Drag at the drum, load or none. [T_d; 0 to 100000 N m; default 0] */
  dragTorque?: Moment
  /** Torque that the gearmotor gives at the drum. [T; 0.1 mN m to 1e7 N m; optional] */
  torque?: Moment | null
  /** Speed of the drum [omega; 0.0095493 to 10000 rpm; optional] */
  speed?: AngularSpeed | null
  /** Torque that a brake or a self-locking gear holds at the drum without power. [T_c; 0.1 mN m to 1e7 N m; optional] */
  holdingTorque?: Moment | null
}

/** A winch on one layer of its drum. */
export interface WinchLayer {
  /** Layer, counted from the drum. [number] */
  readonly layer: number
  /** Centre of the drum to the middle of the line. [m] */
  readonly radius: number
  /** Torque at the drum to wind in. [N m] */
  readonly raiseTorque: number
  /** Torque at the drum to pay out; below zero the line turns the drum and has to be held back. [N m] */
  readonly lowerTorque: number
  /** Torque at the drum that holds the line at rest, no friction counted on. [N m] */
  readonly holdingTorque: number
  /** Pull that the torque given winds in; null without one. [N] */
  readonly liftingPull: number | null
  /** Pull that the torque given lets out under control; null without one. [N] */
  readonly loweringPull: number | null
  /** Speed of the line; null without a speed of the drum. [m/s] */
  readonly lineSpeed: number | null
}

/** Result of {@link winch}. */
export interface Winch {
  /** A line never pushes: `pull-only`. [text] */
  readonly transmits: Transmits
  /** Turns in one layer [n] */
  readonly turnsPerLayer: number
  /** Layer that the line leaves from when wound in. [N_w] */
  readonly outerLayer: number
  /** Layer that it leaves from when paid out. [N_p] */
  readonly innerLayer: number
  /** Turns on the drum, wound in [t_w] */
  readonly woundTurns: number
  /** Turns that stay on the drum when the line is paid out. [t_s] */
  readonly safetyTurns: number
  /** Turns of the drum for the whole travel. [t] */
  readonly drumTurns: number
  /** Over the line, wound in. [D_w; m] */
  readonly woundDiameter: number
  /** Line that fits below the rim of the flanges; null without their diameter. [L_c; m] */
  readonly capacity: number | null
  /** Drum and line against the line's diameter, (D + d)/d. [lambda] */
  readonly diameterRatio: number
  /** Torque to wind in, on the outer layer, where it is largest. [T_R; N m] */
  readonly raiseTorque: number
  /** Torque to pay out on the outer layer; below zero it has to be held back. [T_L; N m] */
  readonly lowerTorque: number
  /** What a brake or a self-locking gear has to hold at the drum: outer layer, friction not counted on. [T_h; N m] */
  readonly requiredHoldingTorque: number
  /** Safety factor, holding [S_h] */
  readonly holdingSafetyFactor: number | null
  /**
   * Pull that the torque given winds in: smallest on the outer layer, largest on the inner one, which the line bears if
   * something catches; null without a torque. [F_o to F_i; N]
   */
  readonly liftingPull: Band | null
  /** Speed of the line: slowest on the inner layer, fastest on the outer one; null without a speed. [v_i to v_o; m/s] */
  readonly lineSpeed: Band | null
  /** Time for the whole travel at that speed of the drum. [t_m; s] */
  readonly duration: number | null
  /** Power to wind in [P; W] */
  readonly raisePower: number | null
  /** Work on the load while the line winds in. [E_l; J] */
  readonly loadWork: number
  /** Work at the drum to wind in the whole travel. [E_R; J] */
  readonly raiseWork: number
  /** Work at the drum to pay it out; below zero a brake or the motor takes it up. [E_L; J] */
  readonly lowerWork: number
  /** Lost winding in [Q_R; J] */
  readonly raiseLoss: number
  /** Lost paying out [Q_L; J] */
  readonly lowerLoss: number
  /** Static strength that bending round the drum leaves a wire rope; null for fibre. [k_b; as a fraction] */
  readonly bentStrengthShare: number | null
  /** Strength left on the drum against the pull. [S_l] */
  readonly lineSafetyFactor: number | null
  /** The same against the largest pull that the torque given makes. [S_s] */
  readonly stallSafetyFactor: number | null
  /** Pull that reaches the line's fixing on the drum when it is paid out. [F_x; N] */
  readonly fixingPull: number
  /** Paid out, on the inner layer. [group] */
  readonly paidOut: WinchLayer
  /** Wound in, on the outer layer. [group] */
  readonly woundIn: WinchLayer
  /** All layers that the line leaves from on the way, from the inner one on. [list] */
  readonly layers: readonly WinchLayer[]
}

/** Why {@link winch} can refuse. */
export type WinchRefusal = "does-not-fit" | "insufficient-torque"

/** Hazards and limits of validity that go with an answer of {@link winch}. */
export type WinchCaution =
  | "drawn-in"
  | "pull-only"
  | "back-driven"
  | "thin-holding-margin"
  | "strength-not-judged"
  | "thin-line"
  | "breaks-its-line"
  | "few-safety-turns"
  | "small-drum"
  | "near-rim"
  | "uneven-layers"
