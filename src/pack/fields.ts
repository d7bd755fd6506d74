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
  NICKEL_RATES,
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
  cellCapacity: Charge
  /** Direct-current resistance of one cell at 25 °C: 2 to 5 times the 1 kHz figure on a datasheet. [r_c; 0 to 100 Ω] */
  cellResistance: Resistance
  /** Resistance of all links, leads and the protection circuit together. [R_l; 0 to 100 Ω; default 0] */
  interconnectResistance?: Resistance
  /** Cell temperature [T; −40 to 80 °C; default 25 °C] */
  cellTemperature?: Temperature
  /** Minimum voltage of a cell under load; the chemistry's where left out. [V_cut; 1 mV to 10 V; optional] */
  cellCutOffVoltage?: Voltage | null
}

/** The shared part in SI. */
export interface PackCellsSi {
  readonly series: number
  readonly parallel: number
  readonly chemistry: Chemistry
  readonly cellCapacity: number
  readonly cellResistance: number
  readonly interconnectResistance: number
  readonly cellTemperature: number
  readonly cellCutOffVoltage: number | null
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
  cellCapacity: { kind: "charge", symbol: "Q_c", label: "capacity of one cell", min: "1 mAh", max: "1000 Ah", typical: ["1 Ah", "6 Ah"] },
  cellResistance: {
    kind: "resistance",
    symbol: "r_c",
    label: "resistance of one cell",
    min: 0,
    max: 100,
    typical: ["10 mohm", "100 mohm"],
  },
  interconnectResistance: {
    kind: "resistance",
    symbol: "R_l",
    label: "interconnect resistance (links and leads)",
    min: 0,
    max: 100,
    typical: [0, "50 mohm"],
    default: 0,
  },
  cellTemperature: { kind: "temperature", symbol: "T", label: "cell temperature", min: -40, max: 80, typical: [-10, 45], default: 25 },
  cellCutOffVoltage: {
    kind: "voltage",
    symbol: "V_cut",
    label: "cut-off voltage of a cell",
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
  label: "maximum discharge current of a cell",
  min: "0.1 mA",
  max: 1000,
  typical: [1, 35],
  default: null,
} as const

/** What age has made of the cells, as packHealth reads it. */
export interface PackAge {
  /** Share of the printed capacity that age has left; as packHealth reads it. [h; 5 to 120 %; default 100 %] */
  capacityShare?: Ratio
  /** Resistance of the cells against that when new; as packHealth reads it. [w; 0.2 to 50; default 1] */
  resistanceRatio?: Ratio
}

/** Fields of what age has made of the cells. */
export const ageFields = {
  capacityShare: {
    kind: "ratio",
    symbol: "h",
    label: "capacity against the printed one",
    min: 0.05,
    max: 1.2,
    typical: [0.6, 1],
    unit: "%",
    default: 1,
  },
  resistanceRatio: {
    kind: "ratio",
    symbol: "w",
    label: "resistance against new cells",
    min: 0.2,
    max: 50,
    typical: [1, 3],
    default: 1,
  },
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
export type JoinedCellsSi = Omit<PackCellsSi, "cellCutOffVoltage">

/** Resistance of the whole pack at its temperature, Ω. */
export function packResistance(si: JoinedCellsSi): number {
  return (si.cellResistance * resistanceFactor(si.chemistry, si.cellTemperature) * si.series) / si.parallel + si.interconnectResistance
}

/** Minimum voltage of the whole pack under load, V. */
export function packCutOff(si: PackCellsSi): number {
  return (si.cellCutOffVoltage ?? chemistries[si.chemistry].cellCutOffVoltage) * si.series
}

/** Formula steps for {@link packResistance}. */
export const packResistanceSteps = [
  {
    symbol: "k_T",
    kind: "number",
    meaning: "resistance at this temperature against 25 °C",
    given: (si: JoinedCellsSi) => resistanceFactor(si.chemistry, si.cellTemperature),
    source: COLD_RESISTANCE,
  },
  { symbol: "R", kind: "resistance", meaning: "resistance of the pack", is: "r_c * k_T * n_s / n_p + R_l" },
] as const

/** Faults between the shared fields. */
export function packFaults(si: PackCellsSi): Issue[] {
  const { cellCutOffVoltage, chemistry } = si
  const full = chemistries[chemistry].cellFullVoltage
  return cellCutOffVoltage !== null && !(cellCutOffVoltage < full)
    ? [
        inconsistent(["cellCutOffVoltage"], "{cellCutOffVoltage voltage}", "less than the {full voltage} of a full cell", {
          cellCutOffVoltage,
          full,
        }),
      ]
    : []
}

/** Voltage above which bare parts can hurt wet or sweating skin, V; where dry it is {@link dryTouchVoltage}. */
export const wetTouchVoltage = 30
export const dryTouchVoltage = 60

/** The caution for a voltage that can hurt by touch. */
export function touchCautions(voltage: number): Caution<"touch-voltage">[] {
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

/** Hazards of a pack of cells that can be charged again. */
export type RechargeableCaution = "lithium-battery" | "lead-battery" | "nickel-battery"

/** Hazards of a pack of any such cells. */
export type CellCaution = RechargeableCaution | "alkaline-battery"

/** Hazards of cells at their temperature. */
export type TemperatureCaution = "hot-cells" | "too-cold-to-use"

/** What `packCautions` can say. */
export type PackCaution = CellCaution | "touch-voltage" | "cold-charge" | TemperatureCaution | "deep-discharge"

/** What `rateCautions` can say. */
export type RateCaution = "lead-rate" | "nickel-rate"

/** What can hurt people in a pack of cells that can be charged again. */
export function rechargeableHazard(chemistry: Chemistry): Caution<RechargeableCaution> {
  if (chemistries[chemistry].lithiumIon)
    return caution(
      "lithium-battery",
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
  return caution(
    "nickel-battery",
    "warning",
    "Nickel cells that are overcharged, driven backwards or short-circuited get hot enough to burn, vent hydrogen and spray caustic electrolyte. Fuse the pack, leave the vents free, and never seal it in.",
    NICKEL_SAFETY,
  )
}

/** What can hurt people in a pack of any such cells. */
export function cellHazard(chemistry: Chemistry): Caution<CellCaution> {
  if (chemistry !== "alkaline") return rechargeableHazard(chemistry)
  return caution(
    "alkaline-battery",
    "warning",
    "Alkaline cells leak caustic liquid or burst when charged, driven backwards or short-circuited: never charge them, never mix old and new, and fuse the pack.",
  )
}

/** Bare parts of a full pack; a voltage stated for it counts where it is above the chemistry's, and never silences that. */
export const fullTouchCautions = (si: Pick<PackCellsSi, "chemistry" | "series">, stated = 0): Caution<"touch-voltage">[] =>
  touchCautions(Math.max(stated, chemistries[si.chemistry].cellFullVoltage * si.series))

/** Charging cells as cold as these. */
export function coldChargeCautions(si: Pick<PackCellsSi, "chemistry" | "cellTemperature">): Caution<"cold-charge">[] {
  if (!chemistries[si.chemistry].lithiumIon || si.cellTemperature >= 0) return []
  return [
    caution(
      "cold-charge",
      "warning",
      "Do not charge lithium cells below 0 °C: lithium plates out inside and the cell can fail later. Warm them first.",
      CELL_SHEETS,
    ),
  ]
}

/** Using cells outside the temperatures that their makers allow. */
export function temperatureCautions(si: Pick<PackCellsSi, "chemistry" | "cellTemperature">): Caution<TemperatureCaution>[] {
  const found: Caution<TemperatureCaution>[] = []
  const hottest = hottestUse[si.chemistry]
  if (si.cellTemperature > hottest)
    found.push(
      caution(
        "hot-cells",
        "warning",
        "Above {hottest temperature °C} makers forbid use: at {given.cellTemperature temperature °C} take the cells off the body and leave them to cool outdoors.",
        chemistries[si.chemistry].lithiumIon ? CELL_SHEETS : TEMPERATURE_LIMITS,
        { hottest, "given.cellTemperature": si.cellTemperature },
      ),
    )
  if (si.cellTemperature < coldestUse)
    found.push(
      caution(
        "too-cold-to-use",
        "warning",
        "Below {coldest temperature °C} makers allow no discharge: at {given.cellTemperature temperature °C} warm the cells first.",
        TEMPERATURE_LIMITS,
        { coldest: coldestUse, "given.cellTemperature": si.cellTemperature },
      ),
    )
  return found
}

/** Drawing cells down further than their chemistry allows. */
export function deepDischargeCautions(si: Pick<PackCellsSi, "chemistry" | "cellCutOffVoltage">): Caution<"deep-discharge">[] {
  const allowed = chemistries[si.chemistry].cellCutOffVoltage
  if (si.cellCutOffVoltage === null || si.cellCutOffVoltage >= allowed - 1e-9) return []
  return [
    caution(
      "deep-discharge",
      "warning",
      "A minimum cell voltage of {least voltage} is below the {allowed voltage} that this chemistry allows: the cell is harmed and may be unsafe to charge again.",
      LITHIUM_SAFETY,
      { least: si.cellCutOffVoltage, allowed },
    ),
  ]
}

/** Cautions that go with a pack whose cells are drawn down to a voltage of their own. */
export const packCautions = (si: PackCellsSi, stated = 0): Caution<PackCaution>[] => [
  cellHazard(si.chemistry),
  ...fullTouchCautions(si, stated),
  ...coldChargeCautions(si),
  ...temperatureCautions(si),
  ...deepDischargeCautions(si),
]

/** Rate (multiples of the capacity per hour) up to which the printed capacity holds within a tenth. */
export const ratedRate = { lead: 0.1, nimh: 1 } as const

/** The caution for a lead or nickel pack drawn faster than its capacity is rated for, where the answer allows for no capacity. */
export function rateCautions(chemistry: Chemistry, rate: number): Caution<RateCaution>[] {
  if (chemistry === "lead" && rate > ratedRate.lead)
    return [
      caution(
        "lead-rate",
        "warning",
        "The printed capacity of a lead battery is that of 20 h. Drawn at {rate} times it per hour it gives less: at the 1 h rate only 60 to 75 % is left (see runtime).",
        LEAD_RATES,
        { rate },
      ),
    ]
  if (chemistry === "nimh" && rate > ratedRate.nimh)
    return [
      caution(
        "nickel-rate",
        "warning",
        "The printed capacity of a nickel cell is that of 5 h. Drawn at {rate} times it per hour it gives less (see runtime), and the cell warms.",
        NICKEL_CARE,
        { rate },
      ),
    ]
  return []
}

/** The caution for a lead or nickel pack of whose printed capacity the currents leave less than nine tenths. */
export function shareCautions(chemistry: Chemistry, rateShare: number): Caution<RateCaution>[] {
  if (!(rateShare < 0.9 - 1e-9)) return []
  return chemistry === "lead"
    ? [
        caution(
          "lead-rate",
          "warning",
          "The printed capacity of a lead battery is that of 20 h; at these currents {rateShare ratio %} of it is taken, after one sheet. Another battery may differ by a quarter: compare the table on the sheet of yours.",
          LEAD_RATES,
          { rateShare },
        ),
      ]
    : [
        caution(
          "nickel-rate",
          "warning",
          "The printed capacity of a nickel cell is that of 5 h; at these currents {rateShare ratio %} of it is taken. Above its capacity per hour no sheet was at hand, and the cell warms: compare the curve on the sheet of yours.",
          NICKEL_RATES,
          { rateShare },
        ),
      ]
}
