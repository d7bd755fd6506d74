import type { Source } from "../../solver/index.js"
import { ISO_11228_1, NIOSH_1994, NIOSH_TABLES, TEAM_LIFTS } from "../sources-load.js"

/** How long such lifting goes on: up to 1 h, 2 h or 8 h. */
export type LiftDuration = "short" | "medium" | "long"
/** How well the hands hold. */
export type Coupling = "good" | "fair" | "poor"
/** Who lifts, for the ISO reference mass. */
export type Lifter = "anyone" | "men-adult" | "men-other" | "women-adult" | "women-other"

/** NIOSH load constant, kg. */
export const loadConstant = 23

/** Frequency multipliers by lifts a minute: start of the lift below 75 cm, and from 75 cm (NIOSH manual, table 5). */
export const frequencyTable: Readonly<
  Record<LiftDuration, { readonly rates: readonly number[]; readonly factors: readonly number[]; readonly below: number }>
> = {
  short: {
    rates: [0.2, 0.5, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15],
    factors: [1, 0.97, 0.94, 0.91, 0.88, 0.84, 0.8, 0.75, 0.7, 0.6, 0.52, 0.45, 0.41, 0.37, 0.34, 0.31, 0.28],
    below: 12,
  },
  medium: {
    rates: [0.2, 0.5, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12],
    factors: [0.95, 0.92, 0.88, 0.84, 0.79, 0.72, 0.6, 0.5, 0.42, 0.35, 0.3, 0.26, 0.23, 0.21],
    below: 10,
  },
  long: {
    rates: [0.2, 0.5, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10],
    factors: [0.85, 0.81, 0.75, 0.65, 0.55, 0.45, 0.35, 0.27, 0.22, 0.18, 0.15, 0.13],
    below: 8,
  },
}

/** Height from which the upper band of the tables counts, m. */
export const knuckleHeight = 0.75

/** Coupling multipliers, below and from 75 cm (NIOSH manual, table 7). */
export const couplingTable: Readonly<Record<Coupling, { readonly label: string; readonly below: number; readonly above: number }>> = {
  good: { label: "good: handles or hand-holds", below: 1, above: 1 },
  fair: { label: "fair: fingers flexed under an edge", below: 0.95, above: 1 },
  poor: { label: "poor: bulky, sagging or slippery", below: 0.9, above: 0.9 },
}

/** Reference masses of ISO 11228-1:2021, kg, all of them for people of working age; `anyone` is the smallest of them. */
export const referenceMasses: Readonly<Record<Lifter, { readonly label: string; readonly mass: number }>> = {
  anyone: { label: "any adult", mass: 15 },
  "men-adult": { label: "men of 20 to 45 years", mass: 25 },
  "men-other": { label: "men under 20 or over 45 years", mass: 20 },
  "women-adult": { label: "women of 20 to 45 years", mass: 20 },
  "women-other": { label: "women under 20 or over 45 years", mass: 15 },
}

/** Share of what they can lift singly, added up, that one, two and three people manage together. */
export const teamShares = [1, 2 / 3, 1 / 2] as const

/** Largest values the NIOSH equation covers: reach and height in m, turn in rad. */
export const liftRange = { reach: 0.63, height: 1.75, asymmetry: (135 * Math.PI) / 180 } as const

/** Sources on lifting. */
export const liftSources: readonly Source[] = [NIOSH_1994, NIOSH_TABLES, ISO_11228_1, TEAM_LIFTS]
