// What goes in and what comes out.

import type { Angle, Length, Ratio } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"
import type { Plastic } from "../data.js"
import type { HeatCaution, WindowCaution } from "../forming-window.js"

/** Input of {@link lineBend}. */
export interface LineBendInput {
  /** Plastic [one of 12 words] */
  material: Plastic
  /** Thickness of the sheet. [s_t; 0.3 to 30 mm] */
  thickness: Length
  /** Radius at the inside of the bend. [R_i; 0.1 mm to 1 m] */
  insideRadius: Length
  /** Angle of the bend, from flat. [theta; 1° to 180°] */
  angle: Angle
  /** Along one leg, square to the line, from its edge to where legs are measured. [A_leg; 1 mm to 10 m; optional] */
  legA?: Length | null
  /** The same along the other leg. [B_leg; 1 mm to 10 m; optional] */
  legB?: Length | null
  /**
   * Where legs are measured to: the mould line where the outer or inner faces meet, the back of the bend (from 90° on),
   * or where it begins. [outside, inside, bend or straight; default outside]
   */
  legMeasure?: "outside" | "inside" | "bend" | "straight"
  /** How deep the fibre that keeps its length lies under the inner face, in thicknesses. [K_n; 0.25 to 0.6; default 0.5] */
  neutralShare?: Ratio
  /** Width that the strip heater, or the slot before it, lays open. [w_h; 1 mm to 0.5 m; optional] */
  heaterWidth?: Length | null
  /** Faces heated: 1 or 2, at once or in turn. [n_f; whole 1 to 2; default 2] */
  faces?: number
}

/** Reasons for which {@link lineBend} can refuse. */
export type LineBendRefusal = "does-not-fit"

/** Hazards and limits that an answer of {@link lineBend} can carry. */
export type LineBendCaution =
  | "bows"
  | "narrow-heater"
  | "near-edge"
  | "one-face"
  | "tight-radius"
  | "warm-beside"
  | HeatCaution
  | WindowCaution

/** Result of {@link lineBend}. */
export interface LineBend {
  /** Minimum inside radius to plan with, a multiple of the thickness. [R_least; m] */
  readonly minRadius: number
  /** Whether the inside radius is at least that. [yes or no] */
  readonly wideEnough: boolean
  /** Stretch of the outer face. [epsilon; as a fraction] */
  readonly outerStrain: number
  /** Length of the bend along the fibre that keeps its length. [l_bend; m] */
  readonly bendLength: number
  /** Width to be soft right through: the bend and a thickness to either side. [w_soft; m] */
  readonly softWidth: number
  /**
   * How far beside the heated band the sheet is warmed at last: its excess falls to 37 % over this length, and again
   * over the next. [l_warm; m]
   */
  readonly spreadLength: number
  /** From where the bend begins to the mould line of the outer faces; null from 175° on. [l_out; m] */
  readonly outsideSetback: number | null
  /** From where the bend begins to the mould line of the inner faces; null from 175° on. [l_in; m] */
  readonly insideSetback: number | null
  /** Both outside setbacks less the length of the bend; null from 175° on. [l_less; m] */
  readonly deduction: number | null
  /** Flat part of leg A. [l_A; m] */
  readonly straightA: number | null
  /** Flat part of leg B. [l_B; m] */
  readonly straightB: number | null
  /** Length to cut, square to the line. [l_flat; m] */
  readonly flatLength: number | null
  /** From the edge of leg A to the line over which the heater is centred. [l_line; m] */
  readonly heaterLine: number | null
  /** Border to leave between line and edge, where a maker publishes one. [l_border; m] */
  readonly minBorder: number | null
}

export type Si = SiOf<LineBendInput>
