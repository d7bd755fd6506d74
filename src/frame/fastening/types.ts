// What fastening takes and gives back.
import type { Density, Force, Length, Temperature } from "../../quantity/index.js"
import type { SiOf } from "../../solver/index.js"
import type { HandlingCase } from "../data-loads.js"
import type { CordSize, GluedMaterial, Knot, TieWidth } from "./data.js"

/** A lap glued with two-part epoxy, loaded along itself. */
export interface GluedJoint {
  /** It is glued. */
  type: "glued"
  /** What is glued; of two materials the weaker. [steel, aluminium-6061, softwood, plywood, mdf, chipboard or osb] */
  material: GluedMaterial
  /** Overlap along the force. [l_g; 1 to 500 mm] */
  overlap: Length
  /** Width across the force; round a tube its circumference. [b_g; 1 mm to 2 m] */
  width: Length
  /** Temperature of the glue: lamps and sun make parts hotter than the air. [T; −40 to 200 °C; default 23 °C] */
  materialTemperature?: Temperature
}
/** Wood screws in solid wood, pulled out along themselves. */
export interface ScrewedJoint {
  /** It is screwed. */
  type: "screwed"
  /** Screws that share the force. [n_f; whole 1 to 100; default 1] */
  screws?: number
  /** Diameter of the screw's shank. [D_f; 1 to 10 mm] */
  diameter: Length
  /** Length of thread in the wood that holds it. [l_f; 2 to 300 mm] */
  threadLength: Length
  /** Density of the wood, oven-dry; that of the lightest softwood where left out. [rho_w; 100 to 1200 kg/m³; default 310 kg/m³] */
  woodDensity?: Density
  /** Whether the screw goes across the grain or along it. [side or end; default side] */
  grain?: "side" | "end"
}
/** Nylon cable ties round both parts, pulled apart. */
export interface TiedJoint {
  /** It is tied. */
  type: "tied"
  /** Ties that share the force. [n_f; whole 1 to 100; default 1] */
  ties?: number
  /** Width of a tie. [2.5 mm, 3.6 mm, 4.8 mm, 7.6 mm, 9 mm or 12.7 mm] */
  tieWidth: TieWidth
}
/** Nylon cord wound round both parts, pulled apart. */
export interface LashedJoint {
  /** It is lashed. */
  type: "lashed"
  /** Full turns round both parts; each carries with two strands. [n_f; whole 1 to 100] */
  turns: number
  /** Diameter of the cord. [2 mm, 3 mm, 4 mm, 5 mm, 6 mm, 7 mm or 8 mm] */
  cord: CordSize
  /** Knot that ends it; the weakest of several. [clove-hitch, two-half-hitches, timber-hitch, bowline or reef-knot; default reef-knot] */
  knot?: Knot
}

/** Input of {@link fastening}. */
export interface FasteningInput {
  /** Force that the joint carries. [F; 1 mN to 1000 kN] */
  force: Force
  /** Joint [by its type: glued, screwed, tied or lashed] */
  joint: GluedJoint | ScrewedJoint | TiedJoint | LashedJoint
  /** How it is handled; multiplies the force. [still, walking, sudden or stumble; default still] */
  handling?: HandlingCase
}

/** Result of {@link fastening}. */
export interface Fastening {
  /** Glued area, screws, ties or strands that share the force. [n_p] */
  readonly parts: number
  /** Strength of one of them; of a glued lap the whole. [F_p; N] */
  readonly partStrength: number
  /** Force that the joint as a whole bears by the published figure. [F_c; N] */
  readonly capacity: number
  /** Whether that figure is a breaking load or one that has its margin in it: `breaking` or `allowable`. [text] */
  readonly basis: "breaking" | "allowable"
  /** Shear stress of the glue; null for other joints. [tau; Pa] */
  readonly glueStress: number | null
  /** Force that the joint bears over the force as handled. [n_s] */
  readonly safetyFactor: number
}

/** Hazards and limits of validity that go with an answer of {@link fastening}. */
export type FasteningCaution =
  | "above-allowable"
  | "collapse"
  | "end-grain"
  | "glue-not-tested-there"
  | "glue-surface"
  | "long-overlap"
  | "nylon-ages"
  | "peel"
  | "pulls-out-only"
  | "slides"
  | "standing-still"
  | "thin-margin"
  | "uneven-share"

export type Si = SiOf<FasteningInput>
