// What goes in and what comes out.

import type { Length, Ratio } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"
import type { Plastic } from "../data.js"
import type { HeatCaution } from "../forming-window.js"

/** Input of {@link drape}. */
export interface DrapeInput {
  /** Plastic [one of 12 words] */
  material: Plastic
  /** Thickness of the sheet. [s_t; 0.1 to 50 mm] */
  thickness: Length
  /** What it is drawn into: straight cup, tapered cup, full cone, free-blown dome, or rectangular box. [cup, frustum, cone, dome or box] */
  shape: "cup" | "frustum" | "cone" | "dome" | "box"
  /** Diameter at the rim, or the longer side of a box. [w_1; 5 mm to 5 m] */
  width: Length
  /** Box: the shorter side. [w_2; 5 mm to 5 m; optional] */
  breadth?: Length | null
  /** Tapered cup: diameter of its flat base. [w_b; 1 mm to 5 m; optional] */
  baseDiameter?: Length | null
  /** Depth (height of a dome). [H_d; 1 mm to 5 m] */
  depth: Length
  /** Cup and tapered cup: fillet radius between wall and base. [r_f; 0.2 mm to 1 m; optional] */
  fillet?: Length | null
  /** Box: size of a plug that carries the sheet down unstretched. [p_1; 1 mm to 5 m; optional] */
  plugWidth?: Length | null
  /** Plug, shorter side [p_2; 1 mm to 5 m; optional] */
  plugBreadth?: Length | null
  /**
   * Finished size of the part with its rim, along the direction of extrusion and across it, for the blank. [f_1; 1 mm
   * to 10 m; optional]
   */
  finishedLength?: Length | null
  /** Finished width [f_2; 1 mm to 10 m; optional] */
  finishedWidth?: Length | null
  /**
   * Shrinkage along and across; growth is negative; left out, the plastic's highest in that direction. [q_1given; −0.2
   * to 0.5; optional]
   */
  shrinkageAlong?: Ratio | null
  /** Shrinkage across [q_2given; −0.2 to 0.5; optional] */
  shrinkageAcross?: Ratio | null
}

/** Reasons for which {@link drape} can refuse. */
export type DrapeRefusal = "does-not-fit"

/** Hazards and limits that an answer of {@link drape} can carry. */
export type DrapeCaution =
  | "corners-thinner"
  | "deep-draw"
  | "shrinkage-of-mouldings"
  | "shrinkage-spread"
  | "two-draw-ratios"
  | "very-thin"
  | HeatCaution

/** Result of {@link drape}. */
export interface Drape {
  /** Area of the opening. [A_0; m²] */
  readonly openArea: number
  /** Area of the formed surface. [A_f; m²] */
  readonly formedArea: number
  /** Areal draw ratio: formed over open area. [ADR] */
  readonly arealDrawRatio: number
  /** Depth over the smallest plan dimension. [LDR] */
  readonly linearDrawRatio: number
  /** Mean thickness [s_mean; m] */
  readonly meanThickness: number
  /** Minimum thickness; null where no sum is known. [s_least; m] */
  readonly minThickness: number | null
  /** Wall of a plug-assisted box. [s_plug; m] */
  readonly plugThickness: number | null
  /** Blank to cut, where the finished size is given. [b_1; m] */
  readonly blankLength: number | null
  /** Blank width [b_2; m] */
  readonly blankWidth: number | null
}

export type Si = SiOf<DrapeInput>

export type Size = "breadth" | "baseDiameter" | "fillet" | "plugWidth" | "plugBreadth"
