// What goes in and what comes out.
import type { Angle, Length } from "../../../quantity/index.js"
import type { SiOf } from "../../../solver/index.js"

/** A bar or edge as the line along its middle. */
export interface GapBar {
  /** First end, across [x_1; −10 to 10 m] */
  x1: Length
  /** First end, up [y_1; −10 to 10 m] */
  y1: Length
  /** Other end, across [x_2; −10 to 10 m] */
  x2: Length
  /** Other end, up [y_2; −10 to 10 m] */
  y2: Length
}

/** Where the moving part's own axes stand at one moment. */
export interface MovingPose {
  /** Place of their origin. [x_p; −10 to 10 m] */
  x: Length
  /** Origin, up [y_p; −10 to 10 m] */
  y: Length
  /** Turn of the part. [theta_p; −2 to 2 rev] */
  angle: Angle
}

/** Input of {@link pinchGap}. */
export interface PinchGapInput {
  /** Bars of the moving part, in its own axes (put the origin at the hinge). [list of 1 to 50] */
  movingBars: readonly GapBar[]
  /** Bars and edges it moves against, among them the body's outline. [list of 1 to 50] */
  fixedBars: readonly GapBar[]
  /** Places of the moving part through the motion, in order; between two of them place and angle change evenly. [list of 2 to 40] */
  poses: readonly MovingPose[]
  /** Thickness of the moving bars [t_m; 0 to 1 m; default 20 mm] */
  movingThickness?: Length
  /** Thickness of the fixed bars [t_f; 0 to 1 m; default 20 mm] */
  fixedThickness?: Length
}

/** What the gap means for one part of the body. */
export interface CrushFinding {
  /** Part [text] */
  readonly part: string
  /** Published minimum gap [m] */
  readonly minGap: number
  /** How much the gap falls short of it; negative where there is room. [m] */
  readonly shortBy: number
  /** Narrowest gap it gets into at all. [m] */
  readonly entryGap: number
  /**
   * Whether the motion can crush it: somewhere the gap opens wide enough to let it in and closes to less than the
   * minimum gap. [yes or no]
   */
  readonly crushes: boolean
}

/** Hazards and limits that an answer of {@link pinchGap} can carry. */
export type PinchGapCaution = "adults-only" | "coarse-proof" | "crush" | "narrow-gap" | "not-a-clearance" | "overlap"

/** Result of {@link pinchGap}. */
export interface PinchGap {
  /** Smallest gap found through the motion; negative where the parts overlap. [d; m] */
  readonly minGap: number
  /** Largest gap found. [d_o; m] */
  readonly maxGap: number
  /** Where in the motion the gap is smallest: 0 at the first pose, 1 at the second and so on. [s] */
  readonly motionShare: number
  /** Place of the nearest point on the moving bar's middle. [x_m; m] */
  readonly movingX: number
  /** Nearest point of the moving bar, up [y_m; m] */
  readonly movingY: number
  /** Place of the nearest point on the fixed bar's middle. [x_f; m] */
  readonly fixedX: number
  /** Nearest point of the fixed bar, up [y_f; m] */
  readonly fixedY: number
  /** No gap in the motion is less than this: proven from how fast the part can come closer. [d_c; m] */
  readonly provenMinGap: number
  /** Whether any part of the body can be crushed. [yes or no] */
  readonly crushes: boolean
  /** Each part of the body, smallest gap first. [list] */
  readonly parts: readonly CrushFinding[]
  /** Smallest gap less the proven one. [m] */
  readonly errorEstimate: number
  /** Places at which the gap was calculated. [number] */
  readonly evaluations: number
}

export type Si = SiOf<PinchGapInput>

export interface Stretch {
  readonly a: number
  readonly b: number
  readonly fa: number
  readonly fb: number
  /** No gap in the stretch is less than this. */
  readonly bound: number
}
