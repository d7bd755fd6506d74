import type { Source } from "../solver/index.js"
import type { Chemistry } from "./chemistry.js"

/** A cell of a common size: what a pack is reckoned from, in SI, ready to spread into a solver's input. */
export interface GenericCell {
  readonly chemistry: Chemistry
  /** Capacity, C (3600 C are 1 Ah). */
  readonly capacity: number
  /** Direct-current resistance, Ω. */
  readonly resistance: number
  /** Mass of one cell, kg. */
  readonly cellMass: number
  /** Greatest lasting discharge current, A. */
  readonly maxCurrent: number
  /** Greatest charge current, A; null where it cannot be charged. */
  readonly maxChargeCurrent: number | null
}

const ah = (value: number) => value * 3600
/** Minutes-scale resistance is 2 to 5 times the 1 kHz reading on a sheet; 2 is taken where only that is printed. */
const fromKilohertz = (reading: number) => 2 * reading

/**
 * Cells by chemistry and size, figures of one datasheet each (see {@link genericCellSources}); check them against
 * the sheet of the cell you buy. `cellPack` and `sizePack` take an entry whole, the others its chemistry, capacity,
 * resistance and, where they ask for it, `maxCurrent`.
 */
export const genericCells = {
  "18650-standard": { chemistry: "nmc", capacity: ah(2.6), resistance: 0.08, cellMass: 0.045, maxCurrent: 7.8, maxChargeCurrent: 1.3 },
  "18650-power": { chemistry: "nmc", capacity: ah(2.5), resistance: 0.026, cellMass: 0.045, maxCurrent: 20, maxChargeCurrent: 4 },
  "21700-power": {
    chemistry: "nmc",
    capacity: ah(4),
    resistance: fromKilohertz(0.01),
    cellMass: 0.07,
    maxCurrent: 35,
    maxChargeCurrent: 6,
  },
  "21700-energy": { chemistry: "nmc", capacity: ah(4.8), resistance: 0.03, cellMass: 0.072, maxCurrent: 25, maxChargeCurrent: 6 },
  "26650-lfp": {
    chemistry: "lfp",
    capacity: ah(3.3),
    resistance: fromKilohertz(0.03),
    cellMass: 0.09,
    maxCurrent: 9.9,
    maxChargeCurrent: 3.3,
  },
  "aaa-nimh": {
    chemistry: "nimh",
    capacity: ah(0.7),
    resistance: fromKilohertz(0.03),
    cellMass: 0.013,
    maxCurrent: 1.4,
    maxChargeCurrent: 0.7,
  },
  "a-nimh": {
    chemistry: "nimh",
    capacity: ah(4.2),
    resistance: fromKilohertz(0.025),
    cellMass: 0.06,
    maxCurrent: 8.4,
    maxChargeCurrent: 4.2,
  },
  "aa-alkaline": { chemistry: "alkaline", capacity: ah(1.4), resistance: 0.403, cellMass: 0.023, maxCurrent: 0.5, maxChargeCurrent: null },
  "agm-5ah": { chemistry: "lead", capacity: ah(5), resistance: 0.027 / 6, cellMass: 1.92 / 6, maxCurrent: 15, maxChargeCurrent: 1.5 },
} as const satisfies Readonly<Record<string, GenericCell>>

/** Name of a {@link genericCells} entry. */
export type GenericCellName = keyof typeof genericCells

/** Where each generic cell's figures come from. */
export const genericCellSources: Readonly<Record<GenericCellName, Source>> = {
  "18650-standard": {
    title: "18650 14.8 V 2600 mAh pack, cell specification table",
    edition: "2020",
    where: "items 3.6 and 3.8; resistance: greatest 1 kHz value of common 18650 sheets",
  },
  "18650-power": { title: "High-rate 18650 cells of 2.5 Ah, from memory" },
  "21700-power": { title: "INR21700 4.0 Ah power cell datasheet", where: "cell characteristics; 35 A only with its temperature watched" },
  "21700-energy": {
    title: "INR21700 5.0 Ah cell datasheet",
    where: "rated (least) capacity and lasting current; resistance from memory",
  },
  "26650-lfp": { title: "LFP 26650 3300 mAh cell specification", edition: "2015" },
  "aaa-nimh": {
    title: "Nickel metal hydride individual data sheets",
    edition: "2005",
    where: "AAA cell; discharge at 2 C taken as the lasting limit",
  },
  "a-nimh": {
    title: "Nickel metal hydride individual data sheets",
    edition: "2005",
    where: "L-fat A cell; discharge at 2 C taken as the lasting limit",
  },
  "aa-alkaline": {
    title: "LR6 alkaline AA product specification",
    where: "item 5; capacity at 0.5 A from a comparison of AA battery chemistries",
  },
  "agm-5ah": {
    title: "12 V 5 Ah AGM battery datasheet",
    where: "one of its six cells; lasting currents of 3 C and 0.3 C are common practice",
  },
}

interface Band {
  /** Upper end of the band, °C, not included. */
  readonly below: number
  readonly value: number
}

const bandOf = (bands: readonly Band[], temperature: number): number => bands.find((b) => temperature < b.below)?.value ?? 0

const packSheets = "18650 and LFP 26650 pack specifications, cell tables, 2020, items 3.6 and 3.8"

/** Source of {@link dischargeLimitFactor} and {@link chargeRateLimit}. */
export const temperatureLimitSource: Source = { title: packSheets }

/**
 * Share of a lithium-ion cell's lasting current that is left at a cell temperature (°C): full from 5 to
 * 45 °C; below, a sixth (LFP: a quarter); from 45 to 75 °C a third (LFP: half); none outside −20 to 75 °C.
 * Other chemistries: 1 from −20 to 60 °C.
 */
export function dischargeLimitFactor(chemistry: Chemistry, temperature: number): number {
  const cold = { below: -20, value: 0 }
  switch (chemistry) {
    case "nmc":
    case "lco":
      return bandOf([cold, { below: 5, value: 1 / 6 }, { below: 45, value: 1 }, { below: 75, value: 1 / 3 }], temperature)
    case "lfp":
      return bandOf([cold, { below: 5, value: 1 / 4 }, { below: 45, value: 1 }, { below: 75, value: 1 / 2 }], temperature)
    default:
      return bandOf([cold, { below: 60, value: 1 }], temperature)
  }
}

/**
 * Greatest charge rate (multiples of the capacity per hour) at a cell temperature (°C) for ordinary
 * lithium-ion cells: 0.1, 0.2 and 0.5 from 0, 5 and 15 °C (LFP: 0.2, 0.5 and 1); 0 where charging is not
 * allowed, which is below 0 °C and, on the strictest sheets, above 45 °C. Null where a chemistry has no such table.
 */
export function chargeRateLimit(chemistry: Chemistry, temperature: number): number | null {
  if (chemistry !== "nmc" && chemistry !== "lco" && chemistry !== "lfp") return null
  if (temperature === 45) return chargeRateLimit(chemistry, 44)
  const [least, mid, full] = chemistry === "lfp" ? [0.2, 0.5, 1] : [0.1, 0.2, 0.5]
  return bandOf(
    [
      { below: 0, value: 0 },
      { below: 5, value: least as number },
      { below: 15, value: mid as number },
      { below: 45, value: full as number },
    ],
    temperature,
  )
}

/** Capacity left at a temperature, against that at 20 to 25 °C; straight lines between the rows, ends held. */
export const capacityAtTemperature: Readonly<Record<"lithium" | "lead", readonly (readonly [celsius: number, fraction: number])[]>> = {
  lithium: [
    [-20, 0.6],
    [-10, 0.85],
    [20, 1],
    [45, 1],
    [50, 0.85],
  ],
  lead: [
    [-10, 0.74],
    [10, 0.9],
    [25, 1],
    [30, 1.03],
  ],
}

/** Sources of {@link capacityAtTemperature}. */
export const capacityAtTemperatureSources: readonly Source[] = [
  { title: "Li-ion cell specification, temperature characteristics", where: "item 9, acceptance minima" },
  { title: "2200 mAh cylindrical Li-ion cell test specification", where: "items 1 to 3, acceptance minima" },
  { title: "12 V 40 Ah sealed lead-acid battery specification", edition: "2008", where: "specification table" },
]

/** Sources of the cautions about lithium cells. */
export const lithiumSources = {
  cells:
    "IEC 62133-2, 2017, clauses 5 and 7 (design, abnormal charge, external short circuit; from memory), and the cell makers' own limits",
  charging: "18650 and LFP cell specifications (charging 0 to 45 °C); IEC 62133-2, 2017, annex A (from memory)",
  transport: "IATA Dangerous Goods Regulations, section 2.3",
} as const
