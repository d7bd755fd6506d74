import type { Source } from "../solver/index.js"
import { ADIABATIC, ALUMINIUM, BLADE, COPPER } from "./sources.js"

/** A conductor metal: what its resistance, heat and weight are calculated from. */
export interface ConductorMetal {
  readonly label: string
  /** Resistivity at 20 °C, Ω·m. */
  readonly resistivity: number
  /** Temperature coefficient of resistance at constant mass, referred to 20 °C, 1/K. */
  readonly coefficient: number
  /** Density, kg/m³. */
  readonly density: number
  /** Heat capacity by volume, J/(K·m³). */
  readonly heatCapacity: number
  /** Reciprocal of the temperature coefficient at 0 °C, °C. */
  readonly beta: number
  readonly sources: readonly Source[]
}

/** Metals of wire. */
export type Metal = "copper" | "aluminium"

/** Conductor metals, each with its source. */
export const metals: Readonly<Record<Metal, ConductorMetal>> = {
  copper: {
    label: "annealed copper",
    resistivity: 1 / 58e6,
    coefficient: 0.00393,
    density: 8890,
    heatCapacity: 3.45e6,
    beta: 234.5,
    sources: [COPPER, ADIABATIC],
  },
  aluminium: {
    label: "hard-drawn aluminium",
    resistivity: 28.264e-9,
    coefficient: 0.00403,
    density: 2703,
    heatCapacity: 2.5e6,
    beta: 228,
    sources: [ALUMINIUM, ADIABATIC],
  },
}

/** How a conductor is made up. */
export type Stranding = "solid" | "stranded" | "class2" | "class2-tinned" | "class5" | "class5-tinned"

/** Labels of {@link Stranding}. */
export const strandings: Readonly<Record<Stranding, string>> = {
  solid: "one solid wire",
  stranded: "stranded, 2 % longer by its lay",
  class2: "IEC 60228 class 2, plain copper, maximum resistance",
  "class2-tinned": "IEC 60228 class 2, tinned copper, maximum resistance",
  class5: "IEC 60228 class 5 (flexible), plain copper, maximum resistance",
  "class5-tinned": "IEC 60228 class 5 (flexible), tinned copper, maximum resistance",
}

/** Resistance of concentric-lay stranded wire over solid of the same area (ASTM B8). */
export const layFactor = 1.02

/** IEC 60228, 2004: maximum resistance at 20 °C, Ω/km, by nominal area in mm² and class. */
export interface NominalConductor {
  /** Nominal cross-section, mm²: a name; the resistance defines the conductor. */
  readonly area: number
  readonly class2: number
  readonly "class2-tinned": number
  readonly class5: number
  readonly "class5-tinned": number
}

/** IEC 60228, 2004, tables 2 and 3. */
export const nominalConductors: readonly NominalConductor[] = [
  { area: 0.5, class2: 36.0, "class2-tinned": 36.7, class5: 39.0, "class5-tinned": 40.1 },
  { area: 0.75, class2: 24.5, "class2-tinned": 24.8, class5: 26.0, "class5-tinned": 26.7 },
  { area: 1, class2: 18.1, "class2-tinned": 18.2, class5: 19.5, "class5-tinned": 20.0 },
  { area: 1.5, class2: 12.1, "class2-tinned": 12.2, class5: 13.3, "class5-tinned": 13.7 },
  { area: 2.5, class2: 7.41, "class2-tinned": 7.56, class5: 7.98, "class5-tinned": 8.21 },
  { area: 4, class2: 4.61, "class2-tinned": 4.7, class5: 4.95, "class5-tinned": 5.09 },
  { area: 6, class2: 3.08, "class2-tinned": 3.11, class5: 3.3, "class5-tinned": 3.39 },
  { area: 10, class2: 1.83, "class2-tinned": 1.84, class5: 1.91, "class5-tinned": 1.95 },
  { area: 16, class2: 1.15, "class2-tinned": 1.16, class5: 1.21, "class5-tinned": 1.24 },
]

/** Shapes of a current pulse and their I²t over peak² · time. */
export type PulseShape = "square" | "half-sine" | "triangle" | "parabola" | "exponential"

/** Pulse energy, chart 1 (Fuseology, 2017). Exponential: time is the time constant. */
export const pulseShapes: Readonly<Record<PulseShape, { readonly factor: number }>> = {
  square: { factor: 1 },
  "half-sine": { factor: 1 / 2 },
  triangle: { factor: 1 / 3 },
  parabola: { factor: 1 / 5 },
  exponential: { factor: 1 / 2 },
}

/** Part of the nominal melting I²t a pulse may have, by pulses outlived: chart 2 (Fuseology, 2017). */
export const pulseFractions: readonly { readonly pulses: number; readonly fraction: number }[] = [
  { pulses: 100, fraction: 0.48 },
  { pulses: 1000, fraction: 0.38 },
  { pulses: 10000, fraction: 0.29 },
  { pulses: 100000, fraction: 0.22 },
]

/** Opening times of blade fuses, types C and F. */
export const bladeFuse = {
  /** Multiple of the rating it may carry for many minutes. */
  longMultiple: 1.35,
  holds: { multiple: 1.1, shortest: 360000 },
  long: { multiple: 1.35, shortest: 0.75, longest: 600 },
  overload: { multiple: 2, shortest: 0.15, longest: 5 },
  /** Largest rating of these types, A: above it blades are larger and slower. */
  largest: 40,
  source: BLADE,
} as const

/** Wire that a fuse may stand away from the positive pole, m (7 in, rounded up; ABYC E-11). */
export const FUSE_WITHIN = 0.18

/** Usual ratings of blade fuses of these types, A (ISO 8820-3). */
export const bladeRatings: readonly number[] = [1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40]

/** Preece's constants for round wire in still air, A per inch^1.5. */
export const preeceConstants = { copper: 10244, aluminium: 7585, tin: 1642 } as const

/** Kinds of {@link contactKinds}. */
export type ContactKind = "wire-to-board-2.5mm" | "subminiature-toggle" | "miniature-toggle-silver" | "miniature-toggle-gold"

/** Contacts met in small builds: maximum current (A, null where not stated) and maximum resistance (Ω). */
export const contactKinds: Readonly<
  Record<ContactKind, { readonly current: number | null; readonly resistance: number; readonly source: Source }>
> = {
  "wire-to-board-2.5mm": {
    current: 3,
    resistance: 0.02,
    source: {
      title: "XH connector specification, as distributors summarise it",
      where: "rating table (AWG 22, resistance after test)",
      verified: "seen",
    },
  },
  "subminiature-toggle": {
    current: null,
    resistance: 0.05,
    source: { title: "Series A subminiature toggles, general specifications", where: "0.4 VA: no power path", verified: "seen" },
  },
  "miniature-toggle-silver": {
    current: null,
    resistance: 0.01,
    source: { title: "Series M miniature toggles, general specifications", verified: "seen" },
  },
  "miniature-toggle-gold": {
    current: null,
    resistance: 0.02,
    source: { title: "Series M miniature toggles, general specifications", verified: "seen" },
  },
}
