import { at, type Source } from "../solver/index.js"
import type { Chemistry } from "./chemistry.js"
import { ALKALINE_RATES, LEAD_CHARGE_TIMES, NICKEL_SHEETS, PACK_SHEETS } from "./sources.js"

/** A cell of a common size: what a pack is calculated from, in SI, ready to spread into a solver's input. */
export interface GenericCell {
  readonly chemistry: Chemistry
  /** Capacity, C (3600 C are 1 Ah). */
  readonly cellCapacity: number
  /** Direct-current resistance, Ω. */
  readonly cellResistance: number
  /** Mass of one cell, kg. */
  readonly cellMass: number
  /** Maximum continuous discharge current, A. */
  readonly cellMaxCurrent: number
  /** Maximum charge current, A; null where it cannot be charged. */
  readonly cellMaxChargeCurrent: number | null
  /** Minimum voltage under load, V. */
  readonly cellCutOffVoltage: number
}

const ah = (value: number) => value * 3600
/** Minutes-scale resistance is 2 to 5 times the 1 kHz reading on a sheet; 2 is taken where only that is printed. */
const fromKilohertz = (reading: number) => 2 * reading

/**
 * Cells by chemistry and size, after the datasheet that {@link genericCellSources} names; what a sheet does not print is said
 * there. Check them against the datasheet of the cell you buy. `cellPack` and `packSize` take an entry whole, the others its
 * chemistry, capacity, resistance, minimum voltage and, where they ask for it, `cellMaxCurrent`.
 */
export const genericCells = {
  "18650-standard": {
    chemistry: "nmc",
    cellCapacity: ah(2.6),
    cellResistance: fromKilohertz(0.025),
    cellMass: 0.048,
    cellMaxCurrent: 7.8,
    cellMaxChargeCurrent: 1.3,
    cellCutOffVoltage: 2.75,
  },
  "18650-power": {
    chemistry: "nmc",
    cellCapacity: ah(2.5),
    cellResistance: 0.026,
    cellMass: 0.045,
    cellMaxCurrent: 20,
    cellMaxChargeCurrent: 4,
    cellCutOffVoltage: 2.5,
  },
  "21700-power": {
    chemistry: "nmc",
    cellCapacity: ah(4),
    cellResistance: fromKilohertz(0.01),
    cellMass: 0.07,
    cellMaxCurrent: 35,
    cellMaxChargeCurrent: 6,
    cellCutOffVoltage: 2.5,
  },
  "21700-energy": {
    chemistry: "nmc",
    cellCapacity: ah(4.8),
    cellResistance: 0.03,
    cellMass: 0.072,
    cellMaxCurrent: 25,
    cellMaxChargeCurrent: 6,
    cellCutOffVoltage: 2.5,
  },
  "26650-lfp": {
    chemistry: "lfp",
    cellCapacity: ah(3.3),
    cellResistance: fromKilohertz(0.03),
    cellMass: 0.09,
    cellMaxCurrent: 9.9,
    cellMaxChargeCurrent: 3.3,
    cellCutOffVoltage: 2.5,
  },
  "aaa-nimh": {
    chemistry: "nimh",
    cellCapacity: ah(0.7),
    cellResistance: fromKilohertz(0.03),
    cellMass: 0.013,
    cellMaxCurrent: 1.4,
    cellMaxChargeCurrent: 0.7,
    cellCutOffVoltage: 1,
  },
  "a-nimh": {
    chemistry: "nimh",
    cellCapacity: ah(4.2),
    cellResistance: fromKilohertz(0.025),
    cellMass: 0.06,
    cellMaxCurrent: 8.4,
    cellMaxChargeCurrent: 4.2,
    cellCutOffVoltage: 1,
  },
  "aa-alkaline": {
    chemistry: "alkaline",
    cellCapacity: ah(1.4),
    cellResistance: 0.403,
    cellMass: 0.023,
    cellMaxCurrent: 0.5,
    cellMaxChargeCurrent: null,
    cellCutOffVoltage: 0.8,
  },
  "agm-5ah": {
    chemistry: "lead",
    cellCapacity: ah(5),
    cellResistance: 0.027 / 6,
    cellMass: 1.92 / 6,
    cellMaxCurrent: 15,
    cellMaxChargeCurrent: 1.5,
    cellCutOffVoltage: 1.75,
  },
} as const satisfies Readonly<Record<string, GenericCell>>

/** Name of a {@link genericCells} entry. */
export type GenericCellName = keyof typeof genericCells

/** Where each generic cell's figures come from. */
export const genericCellSources: Readonly<Record<GenericCellName, Source>> = {
  "18650-standard": at(PACK_SHEETS, "14.8 V pack, cell table: maximum 1 kHz resistance, doubled; maximum mass; 2.75 V"),
  "18650-power": {
    title: "High-rate 18650 cells of 2.5 Ah",
    where: "rounded figures of several makers",
    verified: "not-seen",
  },
  "21700-power": {
    title: "21700 4.0 Ah power cell datasheet",
    where: "cell characteristics; 35 A only with its temperature watched",
    verified: "seen",
  },
  "21700-energy": {
    title: "21700 5.0 Ah cell datasheet",
    where: "rated (least) capacity and continuous current; its resistance is not on the sheet",
    verified: "not-seen",
  },
  "26650-lfp": { title: "LFP 26650 3300 mAh cell specification", edition: "2015", where: "product specifications", verified: "seen" },
  "aaa-nimh": at(NICKEL_SHEETS, "AAA cell; discharge at twice the capacity per hour taken as the continuous limit"),
  "a-nimh": at(NICKEL_SHEETS, "large A cell; discharge at twice the capacity per hour taken as the continuous limit"),
  "aa-alkaline": {
    title: "LR6 alkaline AA product specification",
    where: `item 5; capacity at 0.5 A from: ${ALKALINE_RATES.title}`,
    verified: "seen",
  },
  "agm-5ah": at(LEAD_CHARGE_TIMES, "one of its six cells; a continuous current of 3 times the capacity per hour is common practice"),
}

interface Band {
  /** Upper end of the band, °C, still in it. */
  readonly to: number
  readonly value: number
}

/** Value of the band that holds a temperature, from `from` on; 0 outside all of them. */
const bandOf = (from: number, bands: readonly Band[], temperature: number): number =>
  temperature < from ? 0 : (bands.find((b) => temperature <= b.to)?.value ?? 0)

/** Source of {@link dischargeLimitFactor} and {@link chargeRateLimit}. */
export const temperatureLimitSource: Source = PACK_SHEETS

/** Hottest at which makers let a cell be used, °C: lithium 60; nickel 65; lead 50. Alkaline takes lead's. */
export const hottestUse = { nmc: 60, lco: 60, lfp: 60, nimh: 65, alkaline: 50, lead: 50 } as const satisfies Record<Chemistry, number>

/** Coldest at which makers let a cell be used, °C. */
export const coldestUse = -20

/**
 * Share of a cell's continuous current that is left at a cell temperature (°C). Lithium-ion: a sixth from −20 to 5 °C (LFP a
 * quarter), full above 5 and below 45 °C, a third (LFP half) from 45 to 60 °C; none outside, for most makers forbid use there
 * though single sheets go on to 75 °C. Other chemistries: 1 from −20 °C to 65 °C (nickel) or 50 °C (alkaline, lead).
 */
export function dischargeLimitFactor(chemistry: Chemistry, temperature: number): number {
  const hottest = hottestUse[chemistry]
  const lithium = chemistry === "nmc" || chemistry === "lco" || chemistry === "lfp"
  if (!lithium) return bandOf(coldestUse, [{ to: hottest, value: 1 }], temperature)
  const [cold, hot] = chemistry === "lfp" ? [1 / 4, 1 / 2] : [1 / 6, 1 / 3]
  if (temperature > 5 && temperature < 45) return 1
  return bandOf(
    coldestUse,
    [
      { to: 5, value: cold as number },
      { to: hottest, value: hot as number },
    ],
    temperature,
  )
}

/** Hottest at which the strictest makers let a cell be charged, °C; null where it never is. */
export const hottestCharge = { nmc: 45, lco: 45, lfp: 45, nimh: 45, lead: 50, alkaline: null } as const satisfies Record<
  Chemistry,
  number | null
>

/**
 * Maximum charge rate (multiples of the capacity per hour) at a cell temperature (°C). Lithium-ion: 0.1, 0.2 and 0.5 from 0,
 * above 5 and above 15 °C (LFP: 0.2, 0.5 and 1), none below 0 and above 45 °C. Nickel-metal hydride: 0.3 from 0 to 5, 1 to
 * 45 °C. Lead: 0.3 from −10 to 50 °C. Alkaline cells: none.
 */
export function chargeRateLimit(chemistry: Chemistry, temperature: number): number {
  switch (chemistry) {
    case "nimh":
      return bandOf(
        0,
        [
          { to: 5, value: 0.3 },
          { to: hottestCharge.nimh, value: 1 },
        ],
        temperature,
      )
    case "lead":
      return bandOf(-10, [{ to: hottestCharge.lead, value: 0.3 }], temperature)
    case "alkaline":
      return 0
    default: {
      const [least, mid, full] = chemistry === "lfp" ? [0.2, 0.5, 1] : [0.1, 0.2, 0.5]
      return bandOf(
        0,
        [
          { to: 5, value: least as number },
          { to: 15, value: mid as number },
          { to: hottestCharge[chemistry], value: full as number },
        ],
        temperature,
      )
    }
  }
}

/** Share of a cell's maximum charge current that is left at a cell temperature (°C), against that at 25 °C. */
export function chargeLimitFactor(chemistry: Chemistry, temperature: number): number {
  const rated = chargeRateLimit(chemistry, 25)
  return rated > 0 ? chargeRateLimit(chemistry, temperature) / rated : 0
}
