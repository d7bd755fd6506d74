/** What is worn, for the adjustment added to the WBGT. */
export type HeatClothing = "work-clothes" | "cloth-coverall" | "double-layer" | "vapour-barrier" | "vapour-barrier-over-clothes"

/**
 * Clothing adjustments, K (ISO 7243:2017, clothing adjustment annex; NIOSH 2016, table 3-2; over other clothes NR-9, annex III). For
 * the vapour-tight suit alone the sources print 10 and 11: the higher is kept.
 */
export const clothingAdjustments: Readonly<Record<HeatClothing, { readonly label: string; readonly adjustment: number }>> = {
  "work-clothes": { label: "ordinary work clothes", adjustment: 0 },
  "cloth-coverall": { label: "woven cloth coverall", adjustment: 0 },
  "double-layer": { label: "two layers of woven cloth", adjustment: 3 },
  "vapour-barrier": { label: "vapour-tight suit, foam or plastic costume", adjustment: 11 },
  "vapour-barrier-over-clothes": { label: "vapour-tight suit or costume over other clothes", adjustment: 12 },
}

/** What a hood, mask or closed head adds to any clothing, K (NR-9, annex III). */
export const hoodAdjustment = 1

/** Body surface that the classes and limits in watts are stated for, m². */
export const standardSurface = 1.8

/** Metabolic rate of a standard person at rest, W (class 0). */
export const standardRest = 115

/** One class of metabolic rate. */
export interface HeatClass {
  /** Representative metabolic rate, W, and the highest that still counts in the class. */
  readonly rate: number
  readonly upTo: number
  /** WBGT reference limits, °C. */
  readonly acclimatized: number
  readonly notAcclimatized: number
}

/** ISO 8996:2021 classes with the limits of ISO 7243:2017, table A.1; classes 3 and 4 not verified. */
export const heatClasses: readonly HeatClass[] = [
  { rate: 115, upTo: 125, acclimatized: 33, notAcclimatized: 32 },
  { rate: 180, upTo: 235, acclimatized: 30, notAcclimatized: 29 },
  { rate: 300, upTo: 360, acclimatized: 28, notAcclimatized: 26 },
  { rate: 415, upTo: 465, acclimatized: 26, notAcclimatized: 23 },
  { rate: 520, upTo: Number.POSITIVE_INFINITY, acclimatized: 25, notAcclimatized: 20 },
]

/** NIOSH limits, °C WBGT for a rate in watts: offset − slope·log₁₀(rate); the one for the unacclimatized is not verified. */
export const nioshHeat = {
  acclimatized: { offset: 56.7, slope: 11.5 },
  notAcclimatized: { offset: 59.9, slope: 14.1 },
} as const

/** Published adjustment of what is worn, K. */
export const publishedAdjustment = (clothing: HeatClothing, hood: boolean): number =>
  clothingAdjustments[clothing].adjustment + (hood ? hoodAdjustment : 0)

/** The higher of the published adjustment and one's own, K: an own figure never makes it cooler. */
export const adjustmentOf = (worn: {
  readonly clothing: HeatClothing
  readonly hooded: boolean
  readonly clothingAdjustment: number | null
}): number => Math.max(worn.clothingAdjustment ?? 0, publishedAdjustment(worn.clothing, worn.hooded))
