// What goes in and what comes out.
import type { Length, Time } from "../../quantity/index.js"
import type { MechanismInput } from "../planar/data.js"
import type { MotionRefusal } from "../planar/output.js"
import type { OutlineCorner } from "./outline.js"

/** Input of {@link sweptEnvelope}: a mechanism with drivers that move from start (folded) to end (raised). */
export interface SweptEnvelopeInput extends MechanismInput {
  /** How far parts stand out around the lines between their pins: half their width, cloth or feathers. [w; 0 to 10 m; default 0] */
  halfWidth?: Length
  /** Time of the whole move, all drivers at constant rate. [t; 1 ms to 277.778 h] */
  duration: Time
  /** Point whose path and speed are wanted. [text of 1 to 100 characters] */
  tip: string
  /** Poses in each half of the move. [n; whole 1 to 200; default 40] */
  steps?: number
  /** Strips of the profile [n_s; whole 1 to 200; default 24] */
  strips?: number
  /** Grid cells that the outline is traced on, along its longer side. [n_g; whole 8 to 200; default 80] */
  grid?: number
}

/** Result of {@link sweptEnvelope}; nothing of the mechanism leaves outline or profile. */
export interface SweptEnvelope {
  /** Width of all parts at the start. [S_0; m] */
  readonly spanFolded: number
  /** Height of all parts at the start. [H_0; m] */
  readonly heightFolded: number
  /** Width half way. [S_1; m] */
  readonly spanMid: number
  /** Height half way [H_1; m] */
  readonly heightMid: number
  /** Width at the end. [S_2; m] */
  readonly spanRaised: number
  /** Height at the end. [H_2; m] */
  readonly heightRaised: number
  /** Left limit of everything swept, allowance for what lies between poses included. [x_l; m] */
  readonly left: number
  /** Right limit [x_r; m] */
  readonly right: number
  /** Lower limit [y_b; m] */
  readonly bottom: number
  /** Upper limit [y_t; m] */
  readonly top: number
  /** Width of everything swept. [S; m] */
  readonly sweptSpan: number
  /** Height of everything swept. [H; m] */
  readonly sweptHeight: number
  /** Area inside the outline, holes filled in. [A; m²] */
  readonly outlineArea: number
  /** The outline stands off what is swept by no more than this. [a_o; m] */
  readonly outlineAllowance: number
  /** Length of the tip's path. [L_t; m] */
  readonly tipPath: number
  /** Maximum tip speed at the poses calculated. [v_t; m/s] */
  readonly peakTipSpeed: number
  /** Outline around everything swept, counter-clockwise, part by part, holes filled in. [list] */
  readonly outline: readonly OutlineCorner[]
  /** Lowest and highest place swept in each strip, left to right; null where nothing passes. [list] */
  readonly profile: readonly {
    /** From x [m] */
    readonly from: number
    /** To x [m] */
    readonly to: number
    /** Lowest [m] */
    readonly bottom: number | null
    /** Highest [m] */
    readonly top: number | null
  }[]
  /** Place (m) and speed (m/s) of the tip at every pose asked for. [list] */
  readonly tip: readonly {
    /** X [m] */
    readonly x: number
    /** Y [m] */
    readonly y: number
    /** Speed [m/s] */
    readonly speed: number
  }[]
  /** Allowance for what points do between poses. [m] */
  readonly errorEstimate: number
}

/** Reasons for which {@link sweptEnvelope} refuses. */
export type SweptEnvelopeRefusal = MotionRefusal | "unresolved"

/** Hazards and limits of validity that go with an answer of {@link sweptEnvelope}. */
export type SweptEnvelopeCaution = "clear-space" | "fast-tip" | "pinch"

export interface Extent {
  readonly span: number
  readonly height: number
}
