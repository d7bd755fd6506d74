import type { Source } from "../../solver/index.js"
import { ACSM, GIVONI, LOONEY_2019, LOONEY_2022, LUDLOW, PANDOLF } from "../sources-load.js"

/** Energy released per litre of oxygen, J/L: 5.0 kcal/L as printed with the ACSM equations, 1 kcal = 4184 J. */
export const oxygenEnergy = 20920

/** Lightest walker of the table that the equations were compared with, kg (Passmore and Durnin 1955: 80 lb). */
export const lightestWalker = 36

/** Surfaces underfoot. */
export type Terrain = "hard" | "dirt-road" | "light-brush" | "heavy-brush" | "swamp" | "loose-sand" | "soft-snow"

/**
 * Factor on the cost of walking against a treadmill (R. G. Soule and R. F. Goldman, Terrain coefficients for energy cost
 * prediction, J. Appl. Physiol. 32, 1972; reprinted in A. T. Johnson, Biomechanics and Exercise Physiology, 1991, table
 * 5.5.1); soft snow adds 0.1 per centimetre of footprint.
 */
export const terrains: Readonly<Record<Terrain, { readonly label: string; readonly factor: number }>> = {
  hard: { label: "paved road, floor or treadmill", factor: 1 },
  "dirt-road": { label: "dirt road", factor: 1.1 },
  "light-brush": { label: "light brush", factor: 1.2 },
  "heavy-brush": { label: "heavy brush", factor: 1.5 },
  swamp: { label: "swamp", factor: 1.8 },
  "loose-sand": { label: "loose sand", factor: 2.1 },
  "soft-snow": { label: "soft snow", factor: 1.1 },
}

/** Terrain factor of a surface, with the depth of the footprint in soft snow. */
export function terrainFactor(terrain: Terrain, snowDepth = 0): number {
  return terrains[terrain].factor + (terrain === "soft-snow" ? 10 * snowDepth : 0)
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

/** The maximum cost printed for each place at any speed, so that no placement is priced too low. */
export const placementFactor = {
  head: Math.max(...placementCosts.head),
  hands: Math.max(...placementCosts.handsLight, ...placementCosts.handsHeavy),
  feet: Math.max(...placementCosts.feet),
} as const

/** Equations compared by metabolicRate. */
export type MetabolicEquation = "pandolf" | "looney2019" | "looney2022" | "acsm" | "minimumMechanics" | "givoniGoldman"

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
    label: "Pandolf and others 1977, downhill by Santee",
    sample: "young fit male soldiers standing and walking slowly on a treadmill, packs to about 50 kg; reads low for heavy loads",
    speed: [0, 1.34],
    grade: [-0.12, 0.25],
    share: 0.7,
    terrain: true,
    source: PANDOLF,
  },
  looney2019: {
    label: "Looney and others 2019, graded walking",
    sample: "healthy adults of military age, 48 studies, unloaded; a light load is counted as body mass here",
    speed: [0, 1.96],
    grade: [-0.4, 0.45],
    share: 0.2,
    terrain: false,
    source: LOONEY_2019,
  },
  looney2022: {
    label: "Looney and others 2022, backpacking",
    sample: "27 men and 3 women of 77 ± 15 kg, packs to 66 % of body mass, level treadmill",
    speed: [0.45, 1.97],
    grade: [0, 0],
    share: 0.66,
    terrain: true,
    source: LOONEY_2022,
  },
  acsm: {
    label: "ACSM walking",
    sample: "adults in steady walking; a load is counted as body mass here",
    speed: [50 / 60, 100 / 60],
    grade: [0, 0.45],
    share: 0.2,
    terrain: false,
    source: ACSM,
  },
  minimumMechanics: {
    label: "minimum mechanics",
    sample: "healthy adults, 0.4 to 1.6 m/s, torso loads to 31 % of body mass",
    speed: [0.4, 1.6],
    grade: [-0.105, 0.158],
    share: 0.31,
    terrain: false,
    source: LUDLOW,
  },
  givoniGoldman: {
    label: "Givoni and Goldman",
    sample: "soldiers walking at 0.7 m/s or more, load counted as body mass",
    speed: [0.7, 2.5],
    grade: [0, 0.25],
    share: 0.7,
    terrain: true,
    source: GIVONI,
  },
}
