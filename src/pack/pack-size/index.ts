import { type Caution, inconsistent, optionsFrom, type Solver, solver } from "../../solver/index.js"
import { chemistries } from "../chemistry.js"
import { temperatureLimitSource } from "../data.js"
import { capacityShareByRate } from "../data-rate.js"
import { ageFields, cellHazard, coldChargeCautions, deepDischargeCautions, fullTouchCautions, shareCautions } from "../fields.js"
import { LITHIUM_TEMPERATURE, RATED_FIGURES } from "../sources.js"
import { packSizeFormulae } from "./formulae.js"
import { bestCell, solve } from "./kernel.js"
import type { PackSize, PackSizeCaution, PackSizeInput, PackSizeRefusal, Si } from "./types.js"

export type { PackSize, PackSizeInput } from "./types.js"

function check(si: Si) {
  const faults = []
  const { minVoltage, maxVoltage } = si
  si.cells.forEach((cell, i) => {
    if (si.cells.findIndex((other) => other.name === cell.name) < i)
      faults.push(inconsistent(["cells", i, "name"], "'{name}' twice", "a name of its own for each cell", { name: cell.name }))
    const full = chemistries[cell.chemistry].cellFullVoltage
    if (cell.cellCutOffVoltage !== null && !(cell.cellCutOffVoltage < full))
      faults.push(
        inconsistent(["cells", i, "cellCutOffVoltage"], "{least voltage}", "less than the {full voltage} of a full cell", {
          least: cell.cellCutOffVoltage,
          full,
        }),
      )
  })
  if (!(minVoltage < maxVoltage))
    faults.push(
      inconsistent(["minVoltage"], "{minVoltage voltage}", "less than maxVoltage, {maxVoltage voltage}", { minVoltage, maxVoltage }),
    )
  if (si.rankBy === "price" && si.cells.every((cell) => cell.cellPrice === null))
    faults.push(inconsistent(["rankBy"], "price without any price", "a cellPrice on some cell"))
  return faults
}

function cautions(si: Si, out: PackSize): Caution<PackSizeCaution>[] {
  const best = bestCell(si, out)
  return [
    cellHazard(best.chemistry),
    ...fullTouchCautions({ chemistry: best.chemistry, series: out.series }),
    ...coldChargeCautions({ chemistry: best.chemistry, cellTemperature: si.cellTemperature }),
    ...deepDischargeCautions(best),
    ...shareCautions(
      best.chemistry,
      capacityShareByRate(
        best.chemistry,
        ((si.meanCurrent ?? si.peakCurrent) * 3600) / (out.parallel * best.cellCapacity * si.capacityShare),
      ),
    ),
  ]
}

/**
 * Which cell, how many in series and how many in parallel: the smallest pack that meets everything, and
 * why every other lost.
 *
 * Formula: for each cell and each number in series n_s with n_s·U_full ≤ V_max, the number in parallel is the minimum
 * whole n_p not under I/(I_d·k_d) (current), W/(n_s·U_nom·Q_c·h·s_0·k_c·k_r·y) (energy) and I·r_c·w·k_T·n_s/(n_s·U(s_low) − V_low)
 * (sag), where V_low is the larger of V_min and n_s·U_cut. I is the peak current, W the energy to deliver, y the share
 * of nominal energy counted on, s_low the charge at which the minimum voltage must still hold, k_d, k_c and k_T the
 * effects of temperature on current limit, capacity and resistance, h and w those of age, s_0 the charge left after standing, k_r
 * what the rate leaves of lead and nickel: the energy lasts for W/(n_s·U_nom·y·k_c·s_0·I_m) at the mean current I_m.
 * Packs over the mass or transport limit fall out;
 * the rest are ranked by mass, number of cells or price.
 *
 * Valid for continuous peaks; short ones may be allowed more by a cell's sheet. Check the winner with `runtime`.
 *
 * The shares of 0.8 and 0.2 are common practice, without a source.
 *
 * **Inputs**
 * - `cells`: cells to choose from [list of 1 to 500]
 *   - `name`: name [text of 1 to 100 characters]
 *   - `chemistry`: cell chemistry [nmc, lfp, lco, nimh, alkaline or lead; default nmc]
 *   - `cellCapacity`: capacity [Q_c; 1 mAh to 1000 Ah]
 *   - `cellResistance`: resistance [r_c; 0 to 100 Ω]
 *   - `cellMass`: mass [m_c; 0.1 g to 100 kg]
 *   - `cellMaxCurrent`: maximum discharge current [I_d; 0.1 mA to 1000 A]
 *   - `cellMaxChargeCurrent`: maximum charge current [I_c; 0 to 1000 A; optional]
 *   - `cellCutOffVoltage`: cut-off voltage [V_cut; 1 mV to 10 V; optional]
 *   - `cellPrice`: price [c_c; 0 to 1000000; optional]
 * - `minVoltage`: minimum voltage [V_min; 10 mV to 500 V]
 * - `maxVoltage`: maximum voltage [V_max; 10 mV to 500 V]
 * - `peakCurrent`: peak current [I; 0.1 mA to 1000 A]
 * - `meanCurrent`: mean current [I_m; 0.1 mA to 1000 A; optional]
 * - `startStateOfCharge`: state of charge at the start [s_0; 5 to 100 %; default 100 %]
 * - `capacityShare`: capacity against the printed one [h; 5 to 120 %; default 100 %]
 * - `resistanceRatio`: resistance against new cells [w; 0.2 to 50; default 1]
 * - `energy`: energy to deliver [W; 3.6 J to 100 kWh]
 * - `usableShare`: usable share of nominal energy [y; 0.05 to 1; default 0.8]
 * - `minStateOfCharge`: state of charge at which the minimum voltage still holds [s_low; 0 to 1; default 0.2]
 * - `cellTemperature`: cell temperature [T; −40 to 80 °C; default 25 °C]
 * - `maxMass`: maximum mass of the cells [m_max; 0.1 g to 1000 kg; optional]
 * - `transportEnergyLimit`: watt-hours allowed for carriage [W_max; 3.6 J to 100 kWh; optional]
 * - `maxParallel`: maximum cells in parallel [n_max; whole 1 to 200; default 50]
 * - `rankBy`: rank by [mass, cells or price; default mass]
 *
 * **Results**
 *
 * `bestCell`: best cell [text]; `series`: in series [n_s]; `parallel`: in parallel [n_p]; `energy`: energy [W_p; J];
 * `mass`: mass of the cells [m_p; kg]; `candidates`: packs that fit [list]; `rejected`: packs that fail [list].
 *
 * **Symbols of the working**
 *
 * U_full: full cell [V]; U_nom: nominal cell [V]; Q_b: capacity of the best cell [C]; m_b: mass of the best cell [kg];
 * I_b: current limit of the best cell at this temperature [A]; r_b: resistance of the best cell at this temperature
 * [Ω]; k_c: capacity left at this temperature; U_low: cell at low charge, without load [V]; U_cut: minimum cell
 * voltage [V]; k_r: capacity left at the rate; p_I: in parallel for current; p_W: in parallel for energy; p_V: in
 * parallel against sag.
 *
 * **Sources**
 * - IEC: IEC 61960-3, Secondary lithium cells and batteries for portable applications, 2017, clause 3: rated capacity,
 *   nominal voltage (not verified against the document)
 * - Li-ion cell specification, temperature characteristics, item 9, acceptance minima
 * - Specifications of a 14.8 V 2600 mAh 18650 pack and of a 26650 LFP pack, cell tables, 2020, items 3.6 and 3.8
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `no-candidate`, naming the nearest miss
 * @example
 * ```ts
 * import { genericCells, packSize } from 'alula/pack'
 * const found = packSize({
 *   cells: [
 *     { name: 'standard 18650', ...genericCells['18650-standard'] },
 *     { name: 'power 21700', ...genericCells['21700-power'] },
 *   ],
 *   minVoltage: '9 V', maxVoltage: '13 V', peakCurrent: '8 A', energy: '40 Wh',
 * })
 * found.bestCell // => 'standard 18650'
 * found.series // => 3
 * found.parallel // => 2
 * ```
 */
export const packSize: Solver<PackSizeInput, PackSize, PackSizeRefusal, PackSizeCaution> = /* @__PURE__ */ solver<
  PackSizeInput,
  PackSize,
  PackSizeRefusal,
  PackSizeCaution
>("packSize", "The smallest pack that meets voltage, current, energy and mass", solve, () => ({
  input: {
    cells: {
      kind: "list",
      label: "cells to choose from",
      min: 1,
      max: 500,
      of: {
        kind: "group",
        label: "cell",
        fields: {
          name: { kind: "text", label: "name", min: 1, max: 100 },
          chemistry: {
            kind: "choice",
            label: "cell chemistry",
            options: optionsFrom(chemistries, (key) => chemistries[key].label),
            default: "nmc",
          },
          cellCapacity: { kind: "charge", symbol: "Q_c", label: "capacity", min: "1 mAh", max: "1000 Ah", typical: ["1 Ah", "6 Ah"] },
          cellResistance: { kind: "resistance", symbol: "r_c", label: "resistance", min: 0, max: 100, typical: ["10 mohm", "100 mohm"] },
          cellMass: { kind: "mass", symbol: "m_c", label: "mass", min: "0.1 g", max: 100, typical: ["20 g", "100 g"] },
          cellMaxCurrent: {
            kind: "current",
            symbol: "I_d",
            label: "maximum discharge current",
            min: "0.1 mA",
            max: 1000,
            typical: [2, 35],
          },
          cellMaxChargeCurrent: {
            kind: "current",
            symbol: "I_c",
            label: "maximum charge current",
            min: 0,
            max: 1000,
            typical: [1, 6],
            default: null,
          },
          cellCutOffVoltage: {
            kind: "voltage",
            symbol: "V_cut",
            label: "cut-off voltage",
            min: "1 mV",
            max: 10,
            typical: [2.5, 3.3],
            default: null,
          },
          cellPrice: { kind: "number", symbol: "c_c", label: "price", min: 0, max: 1e6, typical: [1, 10], default: null },
        },
      },
    },
    minVoltage: { kind: "voltage", symbol: "V_min", label: "minimum voltage", min: "10 mV", max: 500, typical: [4, 20] },
    maxVoltage: { kind: "voltage", symbol: "V_max", label: "maximum voltage", min: "10 mV", max: 500, typical: [8, 30] },
    peakCurrent: { kind: "current", symbol: "I", label: "peak current", min: "0.1 mA", max: 1000, typical: [1, 20] },
    meanCurrent: { kind: "current", symbol: "I_m", label: "mean current", min: "0.1 mA", max: 1000, typical: [0.5, 10], default: null },
    startStateOfCharge: {
      kind: "ratio",
      symbol: "s_0",
      label: "state of charge at the start",
      min: 0.05,
      max: 1,
      typical: [0.7, 1],
      unit: "%",
      default: 1,
    },
    ...ageFields,
    energy: { kind: "energy", symbol: "W", label: "energy to deliver", min: 3.6, max: "100 kWh", typical: ["10 Wh", "200 Wh"] },
    usableShare: {
      kind: "ratio",
      symbol: "y",
      label: "usable share of nominal energy",
      min: 0.05,
      max: 1,
      typical: [0.6, 1],
      default: 0.8,
    },
    minStateOfCharge: {
      kind: "ratio",
      symbol: "s_low",
      label: "state of charge at which the minimum voltage still holds",
      min: 0,
      max: 1,
      typical: [0.05, 0.5],
      default: 0.2,
    },
    cellTemperature: { kind: "temperature", symbol: "T", label: "cell temperature", min: -40, max: 80, typical: [-10, 40], default: 25 },
    maxMass: {
      kind: "mass",
      symbol: "m_max",
      label: "maximum mass of the cells",
      min: "0.1 g",
      max: 1000,
      typical: [0.2, 3],
      default: null,
    },
    transportEnergyLimit: {
      kind: "energy",
      symbol: "W_max",
      label: "watt-hours allowed for carriage",
      min: 3.6,
      max: "100 kWh",
      typical: ["100 Wh", "160 Wh"],
      default: null,
    },
    maxParallel: {
      kind: "number",
      symbol: "n_max",
      label: "maximum cells in parallel",
      whole: true,
      min: 1,
      max: 200,
      typical: [4, 20],
      default: 50,
    },
    rankBy: {
      kind: "choice",
      label: "rank by",
      options: { mass: "mass", cells: "number of cells", price: "price of the cells" },
      default: "mass",
    },
  },
  output: {
    bestCell: { kind: "text", label: "best cell" },
    series: { kind: "number", symbol: "n_s", label: "in series" },
    parallel: { kind: "number", symbol: "n_p", label: "in parallel" },
    energy: { kind: "energy", symbol: "W_p", label: "energy", unit: "Wh" },
    mass: { kind: "mass", symbol: "m_p", label: "mass of the cells" },
    candidates: {
      kind: "list",
      label: "packs that fit",
      of: {
        kind: "group",
        label: "pack",
        fields: {
          name: { kind: "text", label: "cell" },
          series: { kind: "number", label: "in series" },
          parallel: { kind: "number", label: "in parallel" },
          cellCount: { kind: "number", label: "cells" },
          nominalVoltage: { kind: "voltage", label: "nominal voltage" },
          energy: { kind: "energy", label: "energy", unit: "Wh" },
          mass: { kind: "mass", label: "mass" },
          minTerminalVoltage: { kind: "voltage", label: "voltage at peak and low charge" },
          cellUtilisation: { kind: "ratio", label: "utilisation of a cell's current limit", unit: "%" },
          price: { kind: "number", label: "price" },
          setBy: { kind: "text", label: "parallel set by" },
          lostBy: { kind: "text", label: "not first because" },
        },
      },
    },
    rejected: {
      kind: "list",
      label: "packs that fail",
      of: {
        kind: "group",
        label: "pack",
        fields: {
          name: { kind: "text", label: "cell" },
          series: { kind: "number", label: "in series" },
          reason: { kind: "text", label: "because" },
        },
      },
    },
  },
  example: {
    cells: [
      {
        name: "A",
        chemistry: "nmc",
        cellCapacity: "2.6 Ah",
        cellResistance: "80 mohm",
        cellMass: "45 g",
        cellMaxCurrent: "7.8 A",
        cellPrice: 4,
      },
      {
        name: "B",
        chemistry: "nmc",
        cellCapacity: "4 Ah",
        cellResistance: "20 mohm",
        cellMass: "70 g",
        cellMaxCurrent: "35 A",
        cellPrice: 7,
      },
      {
        name: "C",
        chemistry: "lfp",
        cellCapacity: "3.3 Ah",
        cellResistance: "60 mohm",
        cellMass: "90 g",
        cellMaxCurrent: "9.9 A",
        cellPrice: 6,
      },
    ],
    minVoltage: "9 V",
    maxVoltage: "15 V",
    peakCurrent: "8 A",
    energy: "40 Wh",
  },
  formulae: packSizeFormulae,
  sources: [RATED_FIGURES, LITHIUM_TEMPERATURE, temperatureLimitSource],
  check,
  cautions,
}))
