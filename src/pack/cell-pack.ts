import type { Charge, Current, Mass, Voltage } from "../quantity/index.js"
import { type Caution, caution, inconsistent, type SiOf, type Solver, solver } from "../solver/index.js"
import { chemistries } from "./chemistry.js"
import { chargeLimitFactor, dischargeLimitFactor, temperatureLimitSource } from "./data.js"
import type { PackCaution } from "./fields.js"
import { type PackCells, packCautions, packCutOff, packFaults, packFields, packResistance, packResistanceSteps } from "./fields.js"
import { AIR_PASSENGERS, LITHIUM_SAFETY, NICKEL_SHEETS, RATED_FIGURES, TEMPERATURE_LIMITS } from "./sources.js"

/** Input of {@link cellPack}; an entry of `genericCells` can be spread into it. */
export interface CellPackInput extends PackCells {
  /** Nominal voltage of a cell; the chemistry's where left out. [V_nom; 10 mV to 20 V; optional] */
  cellNominalVoltage?: Voltage | null
  /** Voltage of a full cell; the chemistry's where left out. [V_full; 10 mV to 20 V; optional] */
  cellFullVoltage?: Voltage | null
  /**
   * Measured capacity of each parallel group, from one end of the series to the other, where they differ. [list of 1 to
   * 200, each Q_g, 1 mAh to 100000 Ah; optional]
   */
  groupCapacities?: readonly Charge[] | null
  /** Maximum continuous discharge current of a cell. [I_d; 0 to 1000 A; optional] */
  cellMaxCurrent?: Current | null
  /** Maximum charge current of a cell [I_c; 0 to 1000 A; optional] */
  cellMaxChargeCurrent?: Current | null
  /** Mass of one cell [m_c; 0.1 g to 100 kg; optional] */
  cellMass?: Mass | null
  /** Mass of holder, case, circuit and leads together. [m_x; 0 to 100 kg; default 0] */
  extraMass?: Mass
  /** Price of one cell, in any currency. [c_c; 0 to 1000000; optional] */
  cellPrice?: number | null
}

/** Hazards and limits that an answer of {@link cellPack} can carry. */
export type CellPackCaution =
  | "air-travel"
  | "charge-limit-by-temperature"
  | "limit-by-temperature"
  | "unequal-strings"
  | "weak-group"
  | PackCaution

/** Result of {@link cellPack}. */
export interface CellPack {
  /** Number of cells. [N] */
  readonly cellCount: number
  /** Nominal voltage [V; V] */
  readonly nominalVoltage: number
  /** Voltage when full [V_max; V] */
  readonly fullVoltage: number
  /** Cut-off voltage [V_min; V] */
  readonly cutOffVoltage: number
  /** Capacity: that of the weakest group, at which the pack must stop. [Q; C] */
  readonly capacity: number
  /** Charge that stays unused in the stronger groups. [Q_s; C] */
  readonly strandedCharge: number
  /** Energy at nominal voltage [E; J] */
  readonly energy: number
  /** Resistance at the cell temperature. [R; Ω] */
  readonly resistance: number
  /** Maximum continuous discharge current at the cell temperature. [I_max; A] */
  readonly maxCurrent: number | null
  /** Maximum charge current at the cell temperature. [I_chg; A] */
  readonly maxChargeCurrent: number | null
  /** Mass [M; kg] */
  readonly mass: number | null
  /** Energy for each kilogram. [e; J/kg] */
  readonly specificEnergy: number | null
  /** Price of the cells, in the currency given. [c] */
  readonly price: number | null
}

function solve(si: SiOf<CellPackInput>): CellPack {
  const { series, parallel, chemistry } = si
  const kind = chemistries[chemistry]
  const cellCount = series * parallel
  const nominalVoltage = (si.cellNominalVoltage ?? kind.cellNominalVoltage) * series
  const groups = si.groupCapacities ?? [si.cellCapacity * parallel]
  const capacity = Math.min(...groups)
  const energy = nominalVoltage * capacity
  const mass = si.cellMass === null ? null : cellCount * si.cellMass + si.extraMass
  return {
    cellCount,
    nominalVoltage,
    fullVoltage: (si.cellFullVoltage ?? kind.cellFullVoltage) * series,
    cutOffVoltage: packCutOff(si),
    capacity,
    strandedCharge: groups.reduce((sum, group) => sum + (group - capacity), 0),
    energy,
    resistance: packResistance(si),
    maxCurrent: si.cellMaxCurrent === null ? null : si.cellMaxCurrent * parallel * dischargeLimitFactor(chemistry, si.cellTemperature),
    maxChargeCurrent:
      si.cellMaxChargeCurrent === null ? null : si.cellMaxChargeCurrent * parallel * chargeLimitFactor(chemistry, si.cellTemperature),
    mass,
    specificEnergy: mass === null ? null : energy / mass,
    price: si.cellPrice === null ? null : cellCount * si.cellPrice,
  }
}

function cautions(si: SiOf<CellPackInput>, out: CellPack): Caution<CellPackCaution>[] {
  const found: Caution<CellPackCaution>[] = packCautions(si, out.fullVoltage)
  const { lithiumIon } = chemistries[si.chemistry]
  if (si.parallel > 1 && lithiumIon)
    found.push(
      caution(
        "unequal-strings",
        "warning",
        "Join cells in parallel only when their voltages are within a few hundredths of a volt of each other: a fuller one charges its neighbour with whatever current their resistances allow (see parallelSharing).",
        LITHIUM_SAFETY,
      ),
    )
  if (out.strandedCharge > 0.05 * out.capacity * si.series)
    found.push(
      caution(
        "weak-group",
        "warning",
        "The weakest group, {capacity charge Ah}, is empty first and, without a circuit that watches every group, is driven below its minimum voltage and reversed. Sort the cells into groups of equal capacity.",
        LITHIUM_SAFETY,
        { capacity: out.capacity },
      ),
    )
  const [discharge, charge] = [dischargeLimitFactor(si.chemistry, si.cellTemperature), chargeLimitFactor(si.chemistry, si.cellTemperature)]
  if (out.maxCurrent !== null && discharge < 1)
    found.push(
      caution(
        "limit-by-temperature",
        "caution",
        "At this cell temperature makers allow {left ratio %} of the rated discharge current; the limit shown is cut accordingly.",
        lithiumIon ? temperatureLimitSource : TEMPERATURE_LIMITS,
        { left: discharge },
      ),
    )
  if (out.maxChargeCurrent !== null && charge < 1)
    found.push(
      caution(
        "charge-limit-by-temperature",
        "warning",
        charge === 0
          ? "At this cell temperature makers of such cells allow no charging at all; the limit shown is zero."
          : "At this cell temperature makers allow a part of the rated charge current; the limit shown is cut accordingly.",
        lithiumIon ? temperatureLimitSource : si.chemistry === "nimh" ? NICKEL_SHEETS : TEMPERATURE_LIMITS,
      ),
    )
  if (lithiumIon && out.energy > 100 * 3600)
    found.push(
      caution(
        "air-travel",
        "note",
        "{energy energy Wh} is over 100 Wh: airlines limit such a pack or refuse it (see airTravel).",
        AIR_PASSENGERS,
        { energy: out.energy },
      ),
    )
  return found
}

/**
 * What a pack of equal cells amounts to: voltages, capacity, energy, resistance, limits, mass and price.
 *
 * Formula: V = n_s·V_c, Q = n_p·Q_c (or that of the weakest group, where each was measured), E = V·Q, R =
 * r_c·k_T·n_s/n_p + R_l, m = n_s·n_p·m_c + m_x, where n_s and n_p are the cells in series and parallel, V_c the voltage
 * of a cell (V; nominal, full and cut-off, by chemistry where left out), Q_c its capacity, r_c its direct-current
 * resistance at 25 °C, k_T the factor for the cell temperature T, R_l the links, m_c and m_x mass of a cell and of
 * everything else. Current limits are n_p times the cell's, both cut by temperature as makers' datasheets do. Only
 * cells in parallel add current, series never does.
 *
 * Valid for cells of one kind, age and charge. Watt-hours use the nominal voltage, as transport rules do.
 *
 * **Inputs**
 * - `series`: cells in series [n_s; whole 1 to 200]
 * - `parallel`: cells in parallel [n_p; whole 1 to 200]
 * - `chemistry`: cell chemistry [nmc, lfp, lco, nimh, alkaline or lead; default nmc]
 * - `cellCapacity`: capacity of one cell [Q_c; 1 mAh to 1000 Ah]
 * - `cellResistance`: resistance of one cell [r_c; 0 to 100 Ω]
 * - `interconnectResistance`: interconnect resistance (links and leads) [R_l; 0 to 100 Ω; default 0]
 * - `cellTemperature`: cell temperature [T; −40 to 80 °C; default 25 °C]
 * - `cellCutOffVoltage`: cut-off voltage of a cell [V_cut; 1 mV to 10 V; optional]
 * - `cellNominalVoltage`: nominal voltage of a cell [V_nom; 10 mV to 20 V; optional]
 * - `cellFullVoltage`: voltage of a full cell [V_full; 10 mV to 20 V; optional]
 * - `groupCapacities`: measured capacity of each group in series [list of 1 to 200, each Q_g, 1 mAh to 100000 Ah;
 *   optional]
 * - `cellMaxCurrent`: maximum discharge current of a cell [I_d; 0 to 1000 A; optional]
 * - `cellMaxChargeCurrent`: maximum charge current of a cell [I_c; 0 to 1000 A; optional]
 * - `cellMass`: mass of one cell [m_c; 0.1 g to 100 kg; optional]
 * - `extraMass`: mass of holder, case and circuit [m_x; 0 to 100 kg; default 0]
 * - `cellPrice`: price of one cell [c_c; 0 to 1000000; optional]
 *
 * **Results**
 *
 * `cellCount`: cells [N]; `nominalVoltage`: nominal voltage [V; V]; `fullVoltage`: voltage when full [V_max; V];
 * `cutOffVoltage`: cut-off voltage [V_min; V]; `capacity`: capacity [Q; C]; `strandedCharge`: unused in stronger
 * groups [Q_s; C]; `energy`: energy at nominal voltage [E; J]; `resistance`: resistance [R; Ω]; `maxCurrent`: maximum
 * continuous discharge current [I_max; A]; `maxChargeCurrent`: maximum charge current [I_chg; A]; `mass`: mass [M;
 * kg]; `specificEnergy`: energy for its mass [e; J/kg]; `price`: price of the cells [c].
 *
 * **Symbols of the working**
 *
 * V_1: nominal voltage of a cell [V]; V_2: voltage of a full cell [V]; V_3: minimum voltage of a cell [V]; k_T:
 * resistance at this temperature against 25 °C; k_d: share of the discharge limit left at this temperature; k_g: share
 * of the charge limit left at this temperature.
 *
 * **Sources**
 * - IEC: IEC 61960-3, Secondary lithium cells and batteries for portable applications, 2017, clause 3: rated capacity,
 *   nominal voltage (not verified against the document)
 * - IATA: Dangerous Goods Regulations, provisions for dangerous goods carried by passengers or crew, 67th, 2026,
 *   section 2.3, table 2.3.A (read 2026-11-28)
 * - Specifications of a 14.8 V 2600 mAh 18650 pack and of a 26650 LFP pack, cell tables, 2020, items 3.6 and 3.8
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { cellPack, genericCells } from 'alula/pack'
 * const pack = cellPack({ series: 3, parallel: 2, ...genericCells['18650-standard'] })
 * pack.nominalVoltage // => 10.8
 * pack.energy / 3600 // => 56.16
 * pack.resistance // => 0.075
 * pack.mass // => 0.288
 * ```
 */
export const cellPack: Solver<CellPackInput, CellPack, never, CellPackCaution> = /* @__PURE__ */ solver<
  CellPackInput,
  CellPack,
  never,
  CellPackCaution
>("cellPack", "What a pack of cells in series and parallel amounts to", solve, () => ({
  input: {
    ...packFields,
    cellNominalVoltage: {
      kind: "voltage",
      symbol: "V_nom",
      label: "nominal voltage of a cell",
      min: "10 mV",
      max: 20,
      typical: [1.2, 3.8],
      default: null,
    },
    cellFullVoltage: {
      kind: "voltage",
      symbol: "V_full",
      label: "voltage of a full cell",
      min: "10 mV",
      max: 20,
      typical: [1.4, 4.3],
      default: null,
    },
    groupCapacities: {
      kind: "list",
      label: "measured capacity of each group in series",
      min: 1,
      max: 200,
      default: null,
      of: { kind: "charge", symbol: "Q_g", label: "capacity of the group", min: "1 mAh", max: "100000 Ah", typical: ["2 Ah", "10 Ah"] },
    },
    cellMaxCurrent: {
      kind: "current",
      symbol: "I_d",
      label: "maximum discharge current of a cell",
      min: 0,
      max: 1000,
      typical: [1, 35],
      default: null,
    },
    cellMaxChargeCurrent: {
      kind: "current",
      symbol: "I_c",
      label: "maximum charge current of a cell",
      min: 0,
      max: 1000,
      typical: [0.5, 6],
      default: null,
    },
    cellMass: {
      kind: "mass",
      symbol: "m_c",
      label: "mass of one cell",
      min: "0.1 g",
      max: 100,
      typical: ["20 g", "100 g"],
      default: null,
    },
    extraMass: {
      kind: "mass",
      symbol: "m_x",
      label: "mass of holder, case and circuit",
      min: 0,
      max: 100,
      typical: [0, 0.5],
      default: 0,
    },
    cellPrice: { kind: "number", symbol: "c_c", label: "price of one cell", min: 0, max: 1e6, typical: [1, 10], default: null },
  },
  output: {
    cellCount: { kind: "number", symbol: "N", label: "cells" },
    nominalVoltage: { kind: "voltage", symbol: "V", label: "nominal voltage" },
    fullVoltage: { kind: "voltage", symbol: "V_max", label: "voltage when full" },
    cutOffVoltage: { kind: "voltage", symbol: "V_min", label: "cut-off voltage" },
    capacity: { kind: "charge", symbol: "Q", label: "capacity", unit: "Ah" },
    strandedCharge: { kind: "charge", symbol: "Q_s", label: "unused in stronger groups", unit: "Ah" },
    energy: { kind: "energy", symbol: "E", label: "energy at nominal voltage", unit: "Wh" },
    resistance: { kind: "resistance", symbol: "R", label: "resistance" },
    maxCurrent: { kind: "current", symbol: "I_max", label: "maximum continuous discharge current" },
    maxChargeCurrent: { kind: "current", symbol: "I_chg", label: "maximum charge current" },
    mass: { kind: "mass", symbol: "M", label: "mass" },
    specificEnergy: { kind: "specificEnergy", symbol: "e", label: "energy for its mass", unit: "Wh/kg" },
    price: { kind: "number", symbol: "c", label: "price of the cells" },
  },
  example: {
    series: 3,
    parallel: 2,
    cellCapacity: "2.6 Ah",
    cellResistance: "80 mohm",
    cellMaxCurrent: "7.8 A",
    cellMaxChargeCurrent: "1.3 A",
    cellMass: "45 g",
    cellPrice: 4.5,
  },
  formulae: [
    { symbol: "N", meaning: "number of cells", is: "n_s * n_p" },
    {
      symbol: "V_1",
      kind: "voltage",
      meaning: "nominal voltage of a cell",
      given: (si) => si.cellNominalVoltage ?? chemistries[si.chemistry].cellNominalVoltage,
      source: RATED_FIGURES,
    },
    {
      symbol: "V_2",
      kind: "voltage",
      meaning: "voltage of a full cell",
      given: (si) => si.cellFullVoltage ?? chemistries[si.chemistry].cellFullVoltage,
      source: RATED_FIGURES,
    },
    {
      symbol: "V_3",
      kind: "voltage",
      meaning: "minimum voltage of a cell",
      given: (si) => si.cellCutOffVoltage ?? chemistries[si.chemistry].cellCutOffVoltage,
      source: RATED_FIGURES,
    },
    { symbol: "V", meaning: "nominal voltage", is: "n_s * V_1" },
    { symbol: "V_max", meaning: "voltage when full", is: "n_s * V_2" },
    { symbol: "V_min", meaning: "minimum voltage under load", is: "n_s * V_3" },
    { symbol: "Q", meaning: "capacity", is: "n_p * Q_c", when: "not has_groupCapacities" },
    { symbol: "Q_s", meaning: "equal groups leave nothing unused", is: "0 * Q", when: "not has_groupCapacities" },
    { symbol: "Q", meaning: "capacity of the weakest group", is: "min(Q_g)", when: "has_groupCapacities" },
    { symbol: "Q_s", meaning: "unused in the stronger groups", is: "sum(Q_g) - n_s * Q", when: "has_groupCapacities" },
    { symbol: "E", meaning: "energy", is: "V * Q" },
    ...packResistanceSteps,
    {
      symbol: "k_d",
      kind: "number",
      meaning: "share of the discharge limit left at this temperature",
      given: (si) => dischargeLimitFactor(si.chemistry, si.cellTemperature),
      source: temperatureLimitSource,
    },
    { symbol: "I_max", meaning: "maximum discharge current", is: "n_p * I_d * k_d", when: "has_cellMaxCurrent" },
    {
      symbol: "k_g",
      kind: "number",
      meaning: "share of the charge limit left at this temperature",
      given: (si) => chargeLimitFactor(si.chemistry, si.cellTemperature),
      source: temperatureLimitSource,
    },
    { symbol: "I_chg", meaning: "maximum charge current", is: "n_p * I_c * k_g", when: "has_cellMaxChargeCurrent" },
    { symbol: "M", meaning: "mass", is: "N * m_c + m_x", when: "has_cellMass" },
    { symbol: "e", meaning: "energy for its mass", is: "E / M", when: "has_cellMass" },
    { symbol: "c", meaning: "price of the cells", is: "N * c_c", when: "has_cellPrice" },
  ],
  sources: [RATED_FIGURES, AIR_PASSENGERS, temperatureLimitSource],
  check: (si) =>
    si.groupCapacities === null || si.groupCapacities.length === si.series
      ? packFaults(si)
      : [
          ...packFaults(si),
          inconsistent(["groupCapacities"], "{groups} groups", "one for each of the {series} in series", {
            groups: si.groupCapacities.length,
            series: si.series,
          }),
        ],
  cautions,
}))
