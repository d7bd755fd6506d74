// What chainDrive takes and gives back.
import type { AngularSpeed, Force, Length, LinearDensity, Moment, Ratio } from "../../quantity/index.js"
import type { Transmits } from "../../solver/index.js"

/** Input of {@link chainDrive}. */
export interface ChainDriveInput {
  /** Distance from pin to pin. [p; 2 to 150 mm] */
  pitch: Length
  /** Teeth of the driving sprocket [z_1; whole 6 to 300] */
  drivingTeeth: number
  /** Teeth of the driven sprocket [z_2; whole 6 to 300] */
  drivenTeeth: number
  /** Distance between the shafts that is wanted; the one that fits whole links is near it. [C; 10 mm to 50 m] */
  centreDistance: Length
  /** Torque at the driven shaft: positive against the motion, negative where the load helps it. [T; −1000000 to 1000000 N m] */
  torque: Moment
  /** Speed of the driving shaft [omega_1; 0 to 10000 rpm; optional] */
  inputSpeed?: AngularSpeed | null
  /** Jolts as a multiple of the steady pull: 1 smooth, 1.5 with starts and stops, 2 with blows. [K; 1 to 5; default 1.5] */
  shockFactor?: number
  /** Mass of a length of chain. [q; 0 to 100 kg/m; default 0] */
  linearDensity?: LinearDensity
  /** Force at which the chain breaks, by its standard or its maker. [F_b; 1 N to 100000 kN; optional] */
  breakingForce?: Force | null
  /** Share of the work that joints, teeth and bearings leave. [eta; 50 to 100 %; default 96 %] */
  efficiency?: Ratio
  /** The same where the load drives; as the other way when left out. [eta_g; 30 to 100 %; optional] */
  backwardEfficiency?: Ratio | null
}

/** Result of {@link chainDrive}. */
export interface ChainDrive {
  /** A chain hands on torque whichever shaft drives: `both-ways`. [text] */
  readonly transmits: Transmits
  /** Turns of the driving shaft for one of the driven. [i] */
  readonly ratio: number
  /** Pitch circle, driving sprocket [D_1; m] */
  readonly drivingDiameter: number
  /** Pitch circle, driven sprocket [D_2; m] */
  readonly drivenDiameter: number
  /** Links that the distance asked for would take. [X_0] */
  readonly exactLinks: number
  /** The next even number: an odd one needs a cranked link, which is weaker. [X] */
  readonly links: number
  /** Length of the chain [L; m] */
  readonly length: number
  /** Distance between the shafts at which these links fit tight. [C_f; m] */
  readonly fittingDistance: number
  /** Angle over which the chain lies on the smaller sprocket. [theta; rad] */
  readonly smallWrap: number
  /** Rise and fall of the chain's speed, teeth being corners: peak to peak over the mean. [delta; as a fraction] */
  readonly speedRipple: number
  /** Torque needed at the driving shaft, mean; below zero where the load drives it. [T_1; N m] */
  readonly inputTorque: number
  /** The same with the motion reversed under the same load: its other direction. [T_r; N m] */
  readonly returnTorque: number
  /** Mean pull that carries the torque. [F; N] */
  readonly pull: number
  /** Pull where the chain runs nearest to the shaft, between two teeth. [F_p; N] */
  readonly peakPull: number
  /** Part of the tension that the chain's own speed takes. [F_c; N] */
  readonly centrifugalTension: number
  /** Largest tension at work: peak pull with its jolts, and the centrifugal part. [F_w; N] */
  readonly workingTension: number
  /** Breaking force against it; null without a breaking force, and where next to nothing pulls. [S] */
  readonly safetyFactor: number | null
  /** Force on each shaft, the slack strand hanging loose. [F_s; N] */
  readonly shaftForce: number
  /** Speed of the chain [v; m/s] */
  readonly chainSpeed: number | null
  /** Speed of the driven shaft [omega_2; rad/s] */
  readonly outputSpeed: number | null
  /** Power in [P_1; W] */
  readonly inputPower: number | null
  /** Power given to the load; below zero where the load gives it. [P_2; W] */
  readonly outputPower: number | null
  /** Heat in chain, teeth and bearings. [P_h; W] */
  readonly heat: number | null
}

/** Hazards and limits of validity that go with an answer of {@link chainDrive}. */
export type ChainDriveCaution = "drawn-in" | "back-driven" | "strength-not-judged" | "thin-chain" | "few-teeth" | "little-wrap"
