import type { Charge, Ratio, Resistance, Temperature, Voltage } from "../quantity/index.js"
import { type Caution, caution, type Issue, inconsistent, optionsFrom } from "../solver/index.js"
import { type Chemistry, chemistries, resistanceFactor } from "./chemistry.js"
import { coldestUse, hottestUse } from "./data.js"
import {
  CELL_SHEETS,
  COLD_RESISTANCE,
  LEAD_RATES,
  LEAD_SAFETY,
  LITHIUM_SAFETY,
  NICKEL_CARE,
  NICKEL_SAFETY,
  TEMPERATURE_LIMITS,
  TOUCH_VOLTAGE,
} from "./sources.js"

/** Cells and how they are joined: the part of the input that pack solvers share. */
export interface PackCells {
  /** Cells in series [n_s; whole 1 to 200] */
  series: number
  /** Cells in parallel [n_p; whole 1 to 200] */
  parallel: number
  /** Cell chemistry [nmc, lfp, lco, nimh, alkaline or lead; default nmc] */
  chemistry?: Chemistry
  /** Capacity of one cell [Q_c; 1 mAh to 1000 Ah] */
  capacity: Charge
  /** Direct-current resistance of one cell at 25 °C: 2 to 5 times the 1 kHz figure on a datasheet. [r_c; 0 to 100 Ω] */
  resistance: Resistance
  /** Resistance of all links, leads and the protection circuit together. [R_l; 0 to 100 Ω; default 0] */
  linkResistance?: Resistance
  /** Cell temperature [T; −40 to 80 °C; default 25 °C] */
  temperature?: Temperature
  /** Least voltage of a cell under load; the chemistry's where left out. [V_cut; 1 mV to 10 V; optional] */
  cutOffVoltage?: Voltage | null
}

/** The shared part in SI. */
export interface PackCellsSi {
  readonly series: number
  readonly parallel: number
  readonly chemistry: Chemistry
  readonly capacity: number
  readonly resistance: number
  readonly linkResistance: number
  readonly temperature: number
  readonly cutOffVoltage: number | null
}

/** Descriptions of the shared part. */
export const packFields = {
  series: { kind: "number", symbol: "n_s", label: "cells in series", whole: true, min: 1, max: 200, typical: [1, 8] },
  parallel: { kind: "number", symbol: "n_p", label: "cells in parallel", whole: true, min: 1, max: 200, typical: [1, 6] },
  chemistry: {
    kind: "choice",
    label: "cell chemistry",
    options: optionsFrom(chemistries, (key) => chemistries[key].label),
    default: "nmc",
  },
  capacity: { kind: "charge", symbol: "Q_c", label: "capacity of one cell", min: "1 mAh", max: "1000 Ah", typical: ["1 Ah", "6 Ah"] },
  resistance: { kind: "resistance", symbol: "r_c", label: "resistance of one cell", min: 0, max: 100, typical: ["10 mohm", "100 mohm"] },
  linkResistance: {
    kind: "resistance",
    symbol: "R_l",
    label: "resistance of links and leads",
    min: 0,
    max: 100,
    typical: [0, "50 mohm"],
    default: 0,
  },
  temperature: { kind: "temperature", symbol: "T", label: "cell temperature", min: -40, max: 80, typical: [-10, 45], default: 25 },
  cutOffVoltage: {
    kind: "voltage",
    symbol: "V_cut",
    label: "least voltage of a cell",
    min: "1 mV",
    max: 10,
    typical: [2.5, 3.3],
    default: null,
  },
} as const

/** Field of a cell's discharge limit. */
export const cellLimitField = {
  kind: "current",
  symbol: "I_d",
  label: "greatest discharge current of a cell",
  min: "0.1 mA",
  max: 1000,
  typical: [1, 35],
  default: null,
} as const

/** Field of a state of charge. */
export const stateOfChargeField = {
  kind: "ratio",
  symbol: "s",
  label: "state of charge",
  min: 0,
  max: 1,
  typical: [0.1, 1],
  unit: "%",
} as const

/** State of charge as an input. */
export type StateOfCharge = Ratio

/** What the resistance depends on. */
export type JoinedCellsSi = Omit<PackCellsSi, "cutOffVoltage">

/** Resistance of the whole pack at its temperature, Ω. */
export function packResistance(si: JoinedCellsSi): number {
  return (si.resistance * resistanceFactor(si.chemistry, si.temperature) * si.series) / si.parallel + si.linkResistance
}

/** Least voltage of the whole pack under load, V. */
export function packCutOff(si: PackCellsSi): number {
  return (si.cutOffVoltage ?? chemistries[si.chemistry].cutOffVoltage) * si.series
}

/** Formula steps for {@link packResistance}. */
export const packResistanceSteps = [
  {
    symbol: "k_T",
    kind: "number",
    meaning: "resistance at this temperature against 25 °C",
    given: (si: JoinedCellsSi) => resistanceFactor(si.chemistry, si.temperature),
    source: COLD_RESISTANCE,
  },
  { symbol: "R", kind: "resistance", meaning: "resistance of the pack", is: "r_c * k_T * n_s / n_p + R_l" },
] as const

/** Faults between the shared fields. */
export function packFaults(si: PackCellsSi): Issue[] {
  const { cutOffVoltage, chemistry } = si
  const full = chemistries[chemistry].fullVoltage
  return cutOffVoltage !== null && !(cutOffVoltage < full)
    ? [inconsistent(["cutOffVoltage"], "{cutOffVoltage voltage}", "less than the {full voltage} of a full cell", { cutOffVoltage, full })]
    : []
}

/** Voltage above which bare parts can hurt wet or sweating skin, V; where dry it is {@link dryTouchVoltage}. */
export const wetTouchVoltage = 30
export const dryTouchVoltage = 60

/** The caution for a voltage that can hurt by touch. */
export function touchCautions(voltage: number): Caution[] {
  return voltage > wetTouchVoltage
    ? [
        caution(
          "touch-voltage",
          "warning",
          "{full voltage} is above the {wet voltage} at which bare parts can hurt wet or sweating skin ({dry voltage} where it stays dry). Cover every live part, follow the local wiring rules, and have a qualified person build it.",
          TOUCH_VOLTAGE,
          { full: voltage, wet: wetTouchVoltage, dry: dryTouchVoltage },
        ),
      ]
    : []
}

/** What can hurt people in a pack of any such cells. */
function hazards(chemistry: Chemistry): Caution {
  if (chemistries[chemistry].lithiumIon)
    return caution(
      "lithium-pack",
      "warning",
      "Lithium cells can burn: use a protection circuit that watches every series group, a fuse at the pack before any wire, cells of one kind, age and charge, and never a dented, swollen, wet or puncture-damaged cell. If you have not built such packs, buy one or have it built.",
      LITHIUM_SAFETY,
    )
  if (chemistry === "lead")
    return caution(
      "lead-battery",
      "warning",
      "Lead batteries give off hydrogen when charged, which a spark explodes, hold sulfuric acid, and push hundreds of amperes through a short circuit. Never seal one in, fuse it at its terminal, cover the terminals, wear eye protection, and keep it upright and off the body.",
      LEAD_SAFETY,
    )
  if (chemistry === "nimh")
    return caution(
      "nickel-pack",
      "warning",
      "Nickel cells that are overcharged, driven backwards or short-circuited get hot enough to burn, vent hydrogen and spray caustic electrolyte. Fuse the pack, leave the vents free, and never seal it in.",
      NICKEL_SAFETY,
    )
  return caution(
    "alkaline-pack",
    "warning",
    "Alkaline cells leak caustic liquid or burst when charged, driven backwards or short-circuited: never charge them, never mix old and new, and fuse the pack.",
  )
}

/** Cautions that go with any pack. A voltage stated for it counts where it is above the chemistry's, and never silences that. */
export function packCautions(si: PackCellsSi, stated = 0): Caution[] {
  const { lithiumIon, cutOffVoltage, fullVoltage } = chemistries[si.chemistry]
  const found = [hazards(si.chemistry), ...touchCautions(Math.max(stated, fullVoltage * si.series))]
  if (lithiumIon && si.temperature < 0)
    found.push(
      caution(
        "no-charging-in-frost",
        "warning",
        "Do not charge lithium cells below 0 °C: lithium plates out inside and the cell can fail later. Warm them first.",
        CELL_SHEETS,
      ),
    )
  const hottest = hottestUse[si.chemistry]
  if (si.temperature > hottest)
    found.push(
      caution(
        "hot-cells",
        "warning",
        "Above {hottest temperature °C} makers forbid use: at {given.temperature temperature °C} take the cells off the body and leave them to cool outdoors.",
        lithiumIon ? CELL_SHEETS : TEMPERATURE_LIMITS,
        { hottest, "given.temperature": si.temperature },
      ),
    )
  if (si.temperature < coldestUse)
    found.push(
      caution(
        "too-cold-to-use",
        "warning",
        "Below {coldest temperature °C} makers allow no discharge: at {given.temperature temperature °C} warm the cells first.",
        TEMPERATURE_LIMITS,
        { coldest: coldestUse, "given.temperature": si.temperature },
      ),
    )
  if (si.cutOffVoltage !== null && si.cutOffVoltage < cutOffVoltage - 1e-9)
    found.push(
      caution(
        "deep-discharge",
        "warning",
        "A least cell voltage of {least voltage} is below the {allowed voltage} that this chemistry allows: the cell is harmed and may be unsafe to charge again.",
        LITHIUM_SAFETY,
        { least: si.cutOffVoltage, allowed: cutOffVoltage },
      ),
    )
  return found
}

/** Rate (multiples of the capacity per hour) up to which the printed capacity holds within a tenth. */
export const ratedRate = { lead: 0.1, nimh: 1 } as const

/** The caution for a lead or nickel pack drawn faster than its capacity is rated for. */
export function rateCautions(chemistry: Chemistry, rate: number): Caution[] {
  if (chemistry === "lead" && rate > ratedRate.lead)
    return [
      caution(
        "lead-rate",
        "warning",
        "The printed capacity of a lead battery is that of 20 h. Drawn at {rate} times it per hour it gives less, which is not in this answer: at the 1 h rate only 60 to 75 % is left. Take the time from peukert.",
        LEAD_RATES,
        { rate },
      ),
    ]
  if (chemistry === "nimh" && rate > ratedRate.nimh)
    return [
      caution(
        "nickel-rate",
        "warning",
        "The printed capacity of a nickel cell is that of 5 h. Drawn at {rate} times it per hour it gives less, which is not in this answer, and the cell warms: take capacity and voltage from the datasheet's curve for that rate.",
        NICKEL_CARE,
        { rate },
      ),
    ]
  return []
}
