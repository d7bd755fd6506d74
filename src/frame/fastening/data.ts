// Published strengths of joints as makers make them.
import type { Source } from "../../solver/index.js"
import { frameMaterials } from "../data-materials.js"

/** Epoxy between steel. */
export const EPOXY_SHEAR: Source = {
  title: "A study of epoxy resin adhesive joints in shear",
  by: "A. R. Cusens, D. W. Smith",
  edition: "The Structural Engineer 58A(1), 1980",
  where: "abstract (steel at least 13 N/mm², cycled between -7 and 35 °C)",
  verified: "seen",
}
/** Steel against aluminium. */
export const EPOXY_ALUMINIUM: Source = {
  title: "Lap shear strength of epoxy joints of aluminium alloy and steel by adhesive thickness (ASTM D1002, D905)",
  by: "journal abstract, read 2026",
  where: "abstract (aluminium stronger than steel)",
  verified: "seen",
}
/** Wood screws pulled out. */
export const SCREW_WITHDRAWAL: Source = {
  title: "Wood screws: allowable withdrawal load",
  by: "The Engineering ToolBox",
  edition: "read 2026",
  where: "F = 2850·G²·D, example of spruce",
  verified: "seen",
}
/** Screws driven along the grain. */
export const SCREW_END_GRAIN: Source = {
  title: "Audel Carpenters and Builders Math, Plans and Specifications",
  by: "M. R. Miller, R. Miller",
  edition: "7th, 2005",
  where: "strength of wood screws (60 % with the grain)",
  verified: "seen",
}
/** Screws in plywood. */
export const SCREW_PLYWOOD: Source = {
  title: "Prediction of withdrawal resistance of single screw on Korean wood products",
  by: "K.-S. Ahn, S.-J. Pang, J.-K. Oh",
  edition: "J. Korean Wood Sci. Technol. 49(1), 2021",
  where: "abstract",
  verified: "seen",
}
/** Cable ties by width. */
export const TIE_STRENGTHS: Source = {
  title: "How strong are cable ties? Nylon 6/6 ties by width",
  by: "cable tie supplier",
  edition: "read 2026",
  where: "list of standard ties",
  verified: "seen",
}
/** Cord by diameter. */
export const CORD_STRENGTHS: Source = {
  title: "Static cords and ropes: ratings",
  by: "rope maker",
  edition: "read 2026",
  where: "nylon accessory cord, 2 to 8 mm",
  verified: "seen",
}
/** What a knot leaves of a rope. */
export const KNOT_STRENGTHS: Source = {
  title: "Knots for the Outdoors",
  by: "C. Jacobson",
  where: "breaking strength of knots (Plymouth Cordage, 1946)",
  verified: "seen",
}

/** Shear strength of epoxy between clean, roughened steel, Pa. */
export const epoxyShear = 13e6
/** Temperatures between which it was cycled without harm, °C. */
export const epoxyTested = { low: -7, high: 35 } as const

/** What is glued. */
export type GluedMaterial = "steel" | "aluminium-6061" | "softwood" | "plywood" | "mdf" | "chipboard" | "osb"
export const gluedMaterials: Readonly<Record<GluedMaterial, string>> = {
  steel: frameMaterials.steel.label,
  "aluminium-6061": frameMaterials["aluminium-6061"].label,
  softwood: frameMaterials.softwood.label,
  plywood: frameMaterials.plywood.label,
  mdf: frameMaterials.mdf.label,
  chipboard: frameMaterials.chipboard.label,
  osb: frameMaterials.osb.label,
}
/** Shear strength of the glued lap, Pa: the glue's, or that of wood or board beside it. */
export const lapStrength = (material: GluedMaterial): number => Math.min(epoxyShear, frameMaterials[material].shear ?? epoxyShear)

/** Allowable pull-out load of a wood screw in side grain over G²·D·L, Pa: 2850 pounds to the square inch. */
export const screwWithdrawal: number = (2850 * 0.45359237 * 9.80665) / 0.0254 ** 2
/** What a screw along the grain holds of it. */
export const endGrain = 0.6

/** Widths of nylon cable ties. */
export type TieWidth = "2.5 mm" | "3.6 mm" | "4.8 mm" | "7.6 mm" | "9 mm" | "12.7 mm"
const kilograms = (m: number) => m * 9.80665
/** Strength of a tie's loop, N. */
export const ties: Readonly<Record<TieWidth, number>> = {
  "2.5 mm": kilograms(8),
  "3.6 mm": kilograms(18.2),
  "4.8 mm": kilograms(22.2),
  "7.6 mm": kilograms(54.4),
  "9 mm": kilograms(79.4),
  "12.7 mm": kilograms(114),
}

/** Diameters of nylon accessory cord. */
export type CordSize = "2 mm" | "3 mm" | "4 mm" | "5 mm" | "6 mm" | "7 mm" | "8 mm"
/** Breaking load of new cord without a knot, N. */
export const cords: Readonly<Record<CordSize, number>> = {
  "2 mm": kilograms(100),
  "3 mm": kilograms(200),
  "4 mm": kilograms(295),
  "5 mm": kilograms(550),
  "6 mm": kilograms(750),
  "7 mm": kilograms(1150),
  "8 mm": kilograms(1400),
}

/** Knots that end a lashing. */
export type Knot = "clove-hitch" | "two-half-hitches" | "timber-hitch" | "bowline" | "reef-knot"
/** What each leaves of the cord's breaking load. */
export const knots: Readonly<Record<Knot, { readonly label: string; readonly share: number }>> = {
  "clove-hitch": { label: "clove hitch", share: 0.75 },
  "two-half-hitches": { label: "two half hitches", share: 0.75 },
  "timber-hitch": { label: "timber hitch", share: 0.7 },
  bowline: { label: "bowline", share: 0.6 },
  "reef-knot": { label: "square (reef) knot", share: 0.45 },
}
