import type { Source } from "../solver/index.js"

/** What is worn, for the adjustment added to the WBGT. */
export type HeatClothing = "workClothes" | "clothCoverall" | "doubleLayer" | "vapourBarrier"

/** Clothing adjustments, K (ISO 7243:2017, clothing adjustment annex). */
export const clothingAdjustments: Readonly<Record<HeatClothing, { readonly label: string; readonly adjustment: number }>> = {
  workClothes: { label: "ordinary work clothes", adjustment: 0 },
  clothCoverall: { label: "woven cloth coverall", adjustment: 0 },
  doubleLayer: { label: "two layers of woven cloth", adjustment: 3 },
  vapourBarrier: { label: "vapour-tight suit, foam or plastic costume", adjustment: 11 },
}

/** One class of metabolic rate. */
export interface HeatClass {
  /** Representative metabolic rate, W, and the greatest that still counts in the class. */
  readonly rate: number
  readonly upTo: number
  /** WBGT reference limits, °C. */
  readonly acclimatized: number
  readonly notAcclimatized: number
}

/** ISO 8996:2021 classes with the limits of ISO 7243:2017, table A.1; bounds of the classes and classes 3 and 4 from memory. */
export const heatClasses: readonly HeatClass[] = [
  { rate: 115, upTo: 125, acclimatized: 33, notAcclimatized: 32 },
  { rate: 180, upTo: 235, acclimatized: 30, notAcclimatized: 29 },
  { rate: 300, upTo: 360, acclimatized: 28, notAcclimatized: 26 },
  { rate: 415, upTo: 465, acclimatized: 26, notAcclimatized: 23 },
  { rate: 520, upTo: Number.POSITIVE_INFINITY, acclimatized: 25, notAcclimatized: 20 },
]

/** NIOSH limits, °C WBGT for a rate in watts: offset − slope·log₁₀(rate); the one for the unacclimatized is from memory. */
export const nioshHeat = {
  acclimatized: { offset: 56.7, slope: 11.5 },
  notAcclimatized: { offset: 59.9, slope: 14.1 },
} as const

/** Sources on heat. */
export const heatSources: readonly Source[] = [
  {
    title: "ISO 7243, Ergonomics of the thermal environment: assessment of heat stress using the WBGT index",
    by: "ISO",
    edition: "2017",
    where: "table A.1, clothing adjustment annex",
  },
  { title: "ISO 8996, Determination of metabolic rate", by: "ISO", edition: "2021", where: "classes" },
  {
    title: "Criteria for a recommended standard: occupational exposure to heat and hot environments",
    by: "NIOSH",
    edition: "2016",
    where: "section 8.1",
  },
]
