import type { Charge, Ratio, Resistance, Temperature, Voltage } from "../quantity/index.js"
import { type Caution, caution, type Issue, inconsistent, optionsFrom } from "../solver/index.js"
import { type Chemistry, chemistries, resistanceFactor } from "./chemistry.js"
import { lithiumSources } from "./data.js"

/** Cells and how they are joined: the part of the input that pack solvers share. */
export interface PackCells {
  /** Cells in series. */
  series: number
  /** Cells in parallel. */
  parallel: number
  /** Cell chemistry. */
  chemistry?: Chemistry
  /** Capacity of one cell. */
  capacity: Charge
  /** Direct-current resistance of one cell at 25 °C: 2 to 5 times the 1 kHz figure on a datasheet. */
  resistance: Resistance
  /** Resistance of all links, leads and the protection circuit together. */
  linkResistance?: Resistance
  /** Cell temperature. */
  temperature?: Temperature
  /** Least voltage of a cell under load; the chemistry's where left out. */
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
    above: 0,
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
  above: 0,
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
    source: "Arrhenius with rounded activation energies, from memory",
  },
  { symbol: "R", kind: "resistance", meaning: "resistance of the pack", is: "r_c * k_T * n_s / n_p + R_l" },
] as const

/** Faults between the shared fields. */
export function packFaults(si: PackCellsSi): Issue[] {
  const { cutOffVoltage, chemistry } = si
  const full = chemistries[chemistry].fullVoltage
  return cutOffVoltage !== null && !(cutOffVoltage < full)
    ? [inconsistent(["cutOffVoltage"], `${cutOffVoltage} V`, `less than the ${full} V of a full cell`)]
    : []
}

/** Cautions that go with any pack. */
export function packCautions(si: PackCellsSi): Caution[] {
  const found: Caution[] = []
  const { lithiumIon, cutOffVoltage } = chemistries[si.chemistry]
  if (lithiumIon) {
    found.push(
      caution(
        "lithium-pack",
        "warning",
        "Lithium cells can burn: use a protection circuit that watches every series group, a fuse at the pack before any wire, cells of one kind, age and charge, and never a dented, swollen, wet or puncture-damaged cell. If you have not built such packs, buy one or have it built.",
        lithiumSources.cells,
      ),
    )
    if (si.temperature < 0)
      found.push(
        caution(
          "no-charging-in-frost",
          "warning",
          "Do not charge lithium cells below 0 °C: lithium plates out inside and the cell can fail later. Warm them first.",
          lithiumSources.charging,
        ),
      )
  }
  if (si.temperature > 60)
    found.push(
      caution(
        "hot-cells",
        "warning",
        "Above 60 °C most makers forbid use; cells this hot must be taken off the body and left to cool outdoors.",
        lithiumSources.cells,
      ),
    )
  if (si.cutOffVoltage !== null && si.cutOffVoltage < cutOffVoltage - 1e-9)
    found.push(
      caution(
        "deep-discharge",
        "warning",
        `The least cell voltage is below the ${cutOffVoltage} V that this chemistry allows: the cell is harmed and may be unsafe to charge again.`,
        lithiumSources.cells,
      ),
    )
  return found
}
