import type { Source } from "../solver/index.js"

/** Energy released per litre of oxygen, J/L: 5.0 kcal/L as printed with the ACSM equations, 1 kcal = 4184 J. */
export const oxygenEnergy = 20920

/** Surfaces underfoot. */
export type Terrain = "hard" | "dirtRoad" | "lightBrush" | "heavyBrush" | "swamp" | "looseSand" | "softSnow"

/**
 * Factor on the cost of walking against a treadmill (R. G. Soule and R. F. Goldman, Terrain coefficients for energy cost
 * prediction, J. Appl. Physiol. 32, 1972; reprinted in A. T. Johnson, Biomechanics and Exercise Physiology, 1991, table
 * 5.5.1). From memory except soft snow, which adds 0.1 per centimetre of footprint.
 */
export const terrains: Readonly<Record<Terrain, { readonly label: string; readonly factor: number }>> = {
  hard: { label: "paved road, floor or treadmill", factor: 1 },
  dirtRoad: { label: "dirt road", factor: 1.1 },
  lightBrush: { label: "light brush", factor: 1.2 },
  heavyBrush: { label: "heavy brush", factor: 1.5 },
  swamp: { label: "swamp", factor: 1.8 },
  looseSand: { label: "loose sand", factor: 2.1 },
  softSnow: { label: "soft snow", factor: 1.1 },
}

/** Terrain factor of a surface, with the depth of the footprint in soft snow. */
export function terrainFactor(terrain: Terrain, snowDepth = 0): number {
  return terrains[terrain].factor + (terrain === "softSnow" ? 10 * snowDepth : 0)
}

/**
 * Energy cost of a kilogram of load against a kilogram of body mass, by where it is carried, at 67, 80 and 93 m/min (R. G.
 * Soule and R. F. Goldman, 1969, as table 2.5.1 of A. T. Johnson, Biomechanics and Exercise Physiology, 1991). The table
 * heads the speeds "m/sec"; they are m/min.
 */
export const placementCosts = {
  speeds: [67 / 60, 80 / 60, 93 / 60],
  head: [1.3, 1.0, 1.3],
  handsLight: [1.0, 1.3, 1.9],
  handsHeavy: [2.0, 1.8, 1.8],
  feet: [4.2, 5.8, 6.2],
} as const

/** The greatest cost printed for each place at any speed, so that no placement is priced too low. */
export const placementFactor = {
  head: Math.max(...placementCosts.head),
  hands: Math.max(...placementCosts.handsLight, ...placementCosts.handsHeavy),
  feet: Math.max(...placementCosts.feet),
} as const

/** Equations compared by metabolicRate. */
export type MetabolicEquation = "pandolf" | "lcdaWalking" | "lcdaBackpack" | "acsm" | "minimumMechanics" | "givoniGoldman"

/** Who each equation was fitted to and where it holds: speed in m/s, grade as a ratio, load as a share of body mass. */
export interface MetabolicSample {
  readonly label: string
  readonly sample: string
  readonly speed: readonly [number, number]
  readonly grade: readonly [number, number]
  readonly share: number
  /** Whether the equation carries a terrain factor. */
  readonly terrain: boolean
  readonly source: Source
}

/** Samples and ranges of the equations, as their sources state them. */
export const metabolicSamples: Readonly<Record<MetabolicEquation, MetabolicSample>> = {
  pandolf: {
    label: "Pandolf, downhill by Santee",
    sample: "young fit male soldiers standing and walking slowly on a treadmill, packs to about 50 kg; reads low for heavy loads",
    speed: [0, 1.34],
    grade: [-0.12, 0.25],
    share: 0.7,
    terrain: true,
    source: {
      title: "Predicting energy expenditure with loads while standing or walking very slowly",
      by: "K. B. Pandolf, B. Givoni, R. F. Goldman",
      edition: "J. Appl. Physiol. 43, 1977",
      where: "equation; downhill: W. R. Santee and others, 2001",
    },
  },
  lcdaWalking: {
    label: "LCDA standing and walking, graded",
    sample: "healthy adults of military age, 48 studies, unloaded; a light load is counted as body mass here",
    speed: [0, 1.96],
    grade: [-0.4, 0.45],
    share: 0.2,
    terrain: false,
    source: {
      title: "Estimating energy expenditure during level, uphill, and downhill walking",
      by: "D. P. Looney and others",
      edition: "Med. Sci. Sports Exerc. 51, 2019",
      where: "graded walking equation",
    },
  },
  lcdaBackpack: {
    label: "LCDA backpacking",
    sample: "27 men and 3 women of 77 ± 15 kg, packs to 66 % of body mass, level treadmill",
    speed: [0.45, 1.97],
    grade: [0, 0],
    share: 0.66,
    terrain: true,
    source: {
      title: "Modeling the metabolic costs of heavy military backpacking",
      by: "D. P. Looney and others",
      edition: "Med. Sci. Sports Exerc. 54, 2022",
      where: "equations 2 and 4",
    },
  },
  acsm: {
    label: "ACSM walking",
    sample: "adults in steady walking; a load is counted as body mass here",
    speed: [50 / 60, 100 / 60],
    grade: [0, 0.45],
    share: 0.2,
    terrain: false,
    source: {
      title: "ACSM's Guidelines for Exercise Testing and Prescription",
      by: "American College of Sports Medicine",
      edition: "9th, 2014 (equation as quoted in McArdle, Katch and Katch, Exercise Physiology, chapter 10)",
      where: "walking equation; speed range from memory",
    },
  },
  minimumMechanics: {
    label: "minimum mechanics",
    sample: "healthy adults, 0.4 to 1.6 m/s, torso loads to 31 % of body mass",
    speed: [0.4, 1.6],
    grade: [-0.105, 0.158],
    share: 0.31,
    terrain: false,
    source: {
      title: "Walking economy is predictably determined by speed, grade, and gravitational load",
      by: "L. W. Ludlow, P. G. Weyand",
      edition: "J. Appl. Physiol. 123, 2017",
      where: "table 4",
    },
  },
  givoniGoldman: {
    label: "Givoni and Goldman",
    sample: "soldiers walking at 0.7 m/s or more, load counted as body mass",
    speed: [0.7, 2.5],
    grade: [0, 0.25],
    share: 0.7,
    terrain: true,
    source: {
      title: "Biomechanics and Exercise Physiology",
      by: "A. T. Johnson (after B. Givoni and R. F. Goldman, 1971)",
      edition: "1991",
      where: "equation 5.5.1",
    },
  },
}
