// What cells lose as they stand, by published figures.
import { interpolate } from "../../numeric/index.js"
import type { Source } from "../../solver/index.js"
import {
  ALKALINE_STANDING,
  FLOODED_STANDING,
  LEAD_STANDING,
  LITHIUM_STORAGE,
  LOW_NICKEL_STANDING,
  NICKEL_STANDING,
  STANDING_LOSSES,
} from "../sources.js"

export const DAY = 86400
export const YEAR = 365 * DAY
const MONTH = YEAR / 12

/** One end of a published range: a share of the full charge lost in the first day, then at an even rate. */
export interface Standing {
  /** Lost within the first 24 h after charging, share of the full charge. */
  readonly firstDay: number
  /** Lost from then on, share of the full charge in a second. */
  readonly rate: number
  /** Cell temperature that holds for, °C. */
  readonly temperature: number
}

/** A kind of cell as it stands. */
export interface StandingCells {
  readonly label: string
  readonly low: Standing
  readonly high: Standing
  /** Factor on the loss for so many kelvin more. */
  readonly growth: { readonly factor: number; readonly kelvin: number }
  readonly sources: readonly Source[]
}

const even = (rate: number, temperature: number): Standing => ({ firstDay: 0, rate, temperature })

/** Self-discharge by kind of cell. Sheets of lead draw it straight: 3 % a month is 64 % after a year, not 69 %. */
export const standingCells = {
  lithium: {
    label: "lithium-ion, lithium polymer, iron phosphate",
    low: even(0.02 / MONTH, 20),
    high: even(0.05 / MONTH, 20),
    growth: { factor: 2, kelvin: 10 },
    sources: [STANDING_LOSSES],
  },
  "lead-sealed": {
    label: "sealed lead-acid (absorbed glass mat or gel)",
    low: even(0.03 / MONTH, 25),
    high: even(1 / 30 / MONTH, 20),
    growth: { factor: 2, kelvin: 10 },
    sources: [LEAD_STANDING],
  },
  "lead-flooded": {
    label: "lead-acid that can be topped up",
    low: even(0.04 / MONTH, 20),
    high: even(0.04 / (7 * DAY), (80 - 32) / 1.8),
    growth: { factor: 2, kelvin: 10 },
    sources: [FLOODED_STANDING],
  },
  nickel: {
    label: "nickel-metal hydride, ordinary",
    low: { firstDay: 0.1, rate: 0.1 / MONTH, temperature: 20 },
    high: { firstDay: 0.2, rate: 0.15 / MONTH, temperature: 20 },
    growth: { factor: 3, kelvin: 20 },
    sources: [NICKEL_STANDING],
  },
  "nickel-low-loss": {
    label: "nickel-metal hydride with low self-discharge",
    low: even(0.15 / YEAR, 20),
    high: even(0.3 / YEAR, 20),
    growth: { factor: 3, kelvin: 20 },
    sources: [LOW_NICKEL_STANDING],
  },
  alkaline: {
    label: "alkaline; not rechargeable",
    low: even(0.02 / YEAR, (70 - 32) / 1.8),
    high: even(0.03 / YEAR, (70 - 32) / 1.8),
    growth: { factor: 2, kelvin: 10 },
    sources: [ALKALINE_STANDING],
  },
} as const satisfies Readonly<Record<string, StandingCells>>

/** A kind of {@link standingCells}. */
export type StandingKind = keyof typeof standingCells

/** Yearly loss of alkaline cells at 70, 85 and 100 °F, as logarithms. */
const alkaline = [
  [(70 - 32) / 1.8, Math.log(0.02)],
  [(85 - 32) / 1.8, Math.log(0.05)],
  [(100 - 32) / 1.8, Math.log(0.25)],
] as const

/** Factor on the loss of a kind at a temperature (°C), against that at `from`. */
export function standingFactor(kind: StandingKind, temperature: number, from: number): number {
  const { factor, kelvin } = standingCells[kind].growth
  if (kind !== "alkaline") return factor ** ((temperature - from) / kelvin)
  // between the published temperatures along their own line, beyond them by the common law
  const [coldest, , hottest] = alkaline
  const within = Math.min(hottest[0], Math.max(coldest[0], temperature))
  return Math.exp(interpolate(alkaline, within) - interpolate(alkaline, from)) * factor ** ((temperature - within) / kelvin)
}

/** Share of its capacity that lithium loses for good in a year, by temperature, °C: at 40 % of its charge or less, and full. */
export const lithiumAgeing = {
  half: [
    [0, 0.02],
    [25, 0.04],
    [40, 0.15],
    [60, 0.25],
  ],
  // at 60 °C 40 % in three months, which by the square root of time are 80 % in a year
  full: [
    [0, 0.06],
    [25, 0.2],
    [40, 0.35],
    [60, 0.8],
  ],
} as const

/** Source of {@link lithiumAgeing}. */
export const lithiumAgeingSource: Source = LITHIUM_STORAGE

/** Yearly loss for good at a charge and temperature: straight between 40 % and full. */
export function yearlyAgeing(stateOfCharge: number, temperature: number): number {
  const [half, full] = [interpolate(lithiumAgeing.half, temperature), interpolate(lithiumAgeing.full, temperature)]
  return half + ((full - half) * Math.max(0, stateOfCharge - 0.4)) / 0.6
}

/** Lead is charged again every six months at 20 to 25 °C, or as it rests at 2.05 V a cell, before it sulphates. */
export const leadTopping = { interval: YEAR / 2, cellVoltage: 2.05, temperature: 25 } as const
