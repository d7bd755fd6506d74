// What goes in and what comes out.
import type { Angle, Length, Ratio } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"
import type { Path } from "../curve.js"

/** A point the centreline passes through. */
export interface BendPoint {
  /** To the right [x_p; −100 to 100 m] */
  x: Length
  /** Upwards [y_p; −100 to 100 m] */
  y: Length
}

/** Input of {@link bendTemplate}. */
export interface BendTemplateInput {
  /** A circular arc by radius and angle, or a free curve through points. [arc or curve] */
  shape: "arc" | "curve"
  /** Outer diameter of the tube, or thickness of the strip. [D; 1 to 300 mm] */
  outsideDiameter: Length
  /** Arc: radius of the finished bend to the centreline. [R_given; 5 mm to 100 m; optional] */
  radius?: Length | null
  /** Arc: angle of the finished bend. [theta; 0.1° to 350°; optional] */
  angle?: Angle | null
  /** Curve: points of the finished centreline, in order. [list of 0 to 200; default none] */
  points?: readonly BendPoint[]
  /** Curve: side of the tube the jig lies on, going along the points; an arc's jig lies inside. [left or right; default left] */
  side?: "left" | "right"
  /** Part of the angle lost on release. [q; 0 to 0.6; default 0.03] */
  springback?: Ratio
  /** Straight run of jig beyond each end of the bend. [l_run; 0 to 2 m; default 60 mm] */
  straightRun?: Length
}

/** A point of the template, m. */
export interface TemplatePoint {
  /** Coordinate x. [m] */
  readonly x: number
  /** Coordinate y. [m] */
  readonly y: number
}

/** Reasons for which {@link bendTemplate} can refuse. */
export type BendTemplateRefusal = "too-tight"

/** Hazards and limits that an answer of {@link bendTemplate} can carry. */
export type BendTemplateCaution = "burns" | "closed-jig" | "springback-guess" | "tight-radius" | "true-scale"

/** Result of {@link bendTemplate}. */
export interface BendTemplate {
  /** Angle the finished bend turns through from end to end, rad (left positive). [phi; rad] */
  readonly turn: number
  /** Angle the jig turns through. [phi_jig; rad] */
  readonly jigTurn: number
  /** Minimum radius of the finished centreline. [R; m] */
  readonly minRadius: number
  /** Minimum radius of the centreline in the jig. [R_jig; m] */
  readonly minJigRadius: number
  /** Minimum radius of the jig's edge where it lies inside the bend. [R_edge; m] */
  readonly minEdgeRadius: number
  /** Length of tube in the bend, without the straight runs. [l; m] */
  readonly length: number
  /** Straight distance between the ends of the edge, to check the print with. [c_edge; m] */
  readonly chord: number
  /** Size of the jig's edge. [w_edge; m] */
  readonly width: number
  /** Height of the edge [h_edge; m] */
  readonly height: number
  /** The edge the tube lies against, in order. [list] */
  readonly edge: readonly TemplatePoint[]
  /** The tube's centreline in the jig. [list] */
  readonly centreline: readonly TemplatePoint[]
}

export type Si = SiOf<BendTemplateInput>

export interface Finished {
  readonly path: Path
  readonly leastRadius: number
}
