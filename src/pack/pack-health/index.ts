import { type Caution, caution, commonPractice, type Issue, inconsistent, type Solver, solver, without } from "../../solver/index.js"
import { capacityFactor, resistanceFactor } from "../chemistry.js"
import { capacityShareByDuration } from "../data-rate.js"
import { cellHazard, coldChargeCautions, fullTouchCautions, packFields, temperatureCautions } from "../fields.js"
import {
  COLD_RESISTANCE,
  END_OF_LIFE,
  LEAD_RATES,
  LITHIUM_SAFETY,
  LITHIUM_TEMPERATURE,
  MEASUREMENT_UNCERTAINTY,
  TWO_LOADS,
  WORN_RESISTANCE,
} from "../sources.js"
import { figuresFit, inTestRoom, solve, verdictsOf, voltageFits, voltagesOf, worn } from "./kernel.js"
import type { PackHealth, PackHealthCaution, PackHealthInput, PackHealthRefusal, Si } from "./types.js"

export type { PackHealth, PackHealthInput } from "./types.js"

/** The heavier load must be this many times the lighter one, or the difference is all error. */
const leastStep = 1.1

function check(si: Si): Issue[] {
  const { lightCurrent, heavyCurrent, lightVoltage, heavyVoltage } = si
  const faults: Issue[] = []
  if (!(heavyCurrent >= leastStep * lightCurrent))
    faults.push(
      inconsistent(["heavyCurrent"], "{heavyCurrent current}", "a tenth or more above the lighter load of {lightCurrent current}", {
        heavyCurrent,
        lightCurrent,
      }),
    )
  if (!(heavyVoltage < lightVoltage))
    faults.push(
      inconsistent(["heavyVoltage"], "{heavyVoltage voltage}", "less than the {lightVoltage voltage} under the lighter load", {
        heavyVoltage,
        lightVoltage,
      }),
    )
  return faults
}

function cautions(si: Si, out: PackHealth): Caution<PackHealthCaution>[] {
  const found: Caution<PackHealthCaution>[] = [
    cellHazard(si.chemistry),
    ...fullTouchCautions(si, out.openCircuitVoltage),
    ...coldChargeCautions(si),
    ...temperatureCautions(si),
  ]
  if (!voltageFits(si, out))
    found.push(
      caution(
        "unlikely-voltage",
        "warning",
        "{openCircuitVoltage voltage} without load is not what {given.series} such cells in series have, {lowest voltage} to {highest voltage}: check their number, the chemistry and the meter. A lithium pack that is truly outside has been harmed: do not charge or use it.",
        LITHIUM_SAFETY,
        { openCircuitVoltage: out.openCircuitVoltage, "given.series": si.series, ...voltagesOf(si) },
      ),
    )
  if (!figuresFit(out))
    found.push(
      caution(
        "unlikely-figures",
        "warning",
        "By these figures the cells are far better than new ones can be: check the printed capacity, the resistance of a new cell, the cells in parallel and the units before anything is built on them.",
        commonPractice,
      ),
    )
  if (out.resistanceUncertainty > 0.2 * out.resistance)
    found.push(
      caution(
        "reading-too-coarse",
        "caution",
        "{resistance resistance} is known to {resistanceUncertainty resistance} only: read a digit more, or draw a heavier second load.",
        MEASUREMENT_UNCERTAINTY,
        { resistance: out.resistance, resistanceUncertainty: out.resistanceUncertainty },
      ),
    )
  if (si.ratedCellCapacity !== null) {
    const hourly = (si.ratedCellCapacity * si.parallel) / 3600
    const [light, heavy] = [0.2 * hourly, hourly]
    if (si.heavyCurrent < heavy / 2 || si.heavyCurrent > 2 * heavy || si.lightCurrent > 2 * light)
      found.push(
        caution(
          "other-loads",
          "note",
          "The standard's loads are {light current} for 10 s, then {heavy current} for 1 s: a resistance read with others is to be compared with readings of your own alone.",
          TWO_LOADS,
          { light, heavy },
        ),
      )
  }
  if (!inTestRoom(si.cellTemperature))
    found.push(
      caution(
        "test-temperature",
        "caution",
        "Printed figures are of 20 °C, give or take 5: read at {given.cellTemperature temperature °C}, resistance and capacity are carried over by rounded laws, which the uncertainties leave out, and no pack is called sound by them. Read again in a room.",
        COLD_RESISTANCE,
        { "given.cellTemperature": si.cellTemperature },
      ),
    )
  if (
    out.capacityShare !== null &&
    out.capacityShareUncertainty !== null &&
    worn.capacityShare - out.capacityShare > out.capacityShareUncertainty
  )
    found.push(
      caution(
        "worn-capacity",
        "warning",
        "{capacityShare ratio %} of the printed capacity is left, less than the {limit ratio %} at which packs are replaced: plan the night with what was measured, and replace cells that swell, get hot or lose charge at rest at once.",
        END_OF_LIFE,
        { capacityShare: out.capacityShare, limit: worn.capacityShare },
      ),
    )
  if (
    out.resistanceRatio !== null &&
    out.resistanceRatioUncertainty !== null &&
    out.resistanceRatio - worn.resistanceRatio > out.resistanceRatioUncertainty
  )
    found.push(
      caution(
        "worn-resistance",
        "warning",
        "The cells have {resistanceRatio} times the resistance of new ones: under load they sag and heat that much more. Check every joint first; if it is the cells, replace them or lower the load.",
        WORN_RESISTANCE,
        { resistanceRatio: out.resistanceRatio },
      ),
    )
  if (verdictsOf(out).includes("cannot-tell"))
    found.push(
      caution(
        "cannot-tell",
        "note",
        "Within what the readings may be off by, the pack could be sound or worn: read again with a finer meter, a heavier load or a longer discharge.",
        MEASUREMENT_UNCERTAINTY,
      ),
    )
  return found
}

const packed = without(packFields, "cellCapacity", "cellResistance", "cellCutOffVoltage")

/**
 * How tired a pack is: its resistance from the voltage at two loads, its capacity from a timed discharge, each with its
 * uncertainty.
 *
 * Formula: R = (U₁ − U₂)/(I₂ − I₁), with U₁ at the lighter load I₁ and U₂ at the heavier I₂; without load E = U₁ + I₁·R;
 * each cell r = (R − R_l)·n_p/(n_s·k_T), carried over to 25 °C. Capacity Q_c = I_d·t_d/(n_p·k_c·k_r), carried over to the
 * temperature and the rate of printed figures. Readings off by at most ±a, evenly spread: 2/√3 times the root of the sum
 * of squares is about 95 %.
 *
 * Valid for loads near the standard's (a fifth of the capacity per hour for 10 s, the capacity per hour for 1 s), a
 * discharge from full to the cut-off voltage at a steady current, and errors that are independent; an error of scale that all
 * currents share makes no more. It is worn under 80 % of the printed capacity, or over twice the resistance of new cells.
 *
 * **Inputs**
 * - `series`: cells in series [n_s; whole 1 to 200]
 * - `parallel`: cells in parallel [n_p; whole 1 to 200]
 * - `chemistry`: cell chemistry [nmc, lfp, lco, nimh, alkaline or lead; default nmc]
 * - `interconnectResistance`: interconnect resistance (links and leads) [R_l; 0 to 100 Ω; default 0]
 * - `cellTemperature`: cell temperature [T; −40 to 80 °C; default 25 °C]
 * - `lightCurrent`: lighter load [I_1; 0 to 1000 A; default 0]
 * - `lightVoltage`: voltage at the lighter load [U_1; 10 mV to 1000 V]
 * - `heavyCurrent`: heavier load [I_2; 1 mA to 1000 A]
 * - `heavyVoltage`: voltage at the heavier load [U_2; 1 mV to 1000 V]
 * - `dischargeCurrent`: current of the timed discharge [I_d; 1 mA to 1000 A; optional]
 * - `dischargeDuration`: duration of the timed discharge [t_d; 1 min to 1000 h; optional]
 * - `voltageUncertainty`: voltage reading off by at most [a_U; 0 to 10 V; default 20 mV]
 * - `currentUncertainty`: current reading off by at most [a_I; 0 to 20 %; default 2 %]
 * - `durationUncertainty`: duration off by at most [a_t; 0 to 1 h; default 1 min]
 * - `ratedCellCapacity`: printed capacity of a cell [Q_r; 1 mAh to 1000 Ah; optional]
 * - `newCellResistance`: resistance of a new cell [r_n; 1 µΩ to 100 Ω; optional]
 * - `dischargeCurrent` and `dischargeDuration` only together
 *
 * **Results**
 *
 * `resistance`: resistance of the pack [R; Ω]; `resistanceUncertainty`: uncertainty of the resistance [u_R; Ω];
 * `openCircuitVoltage`: voltage without load [E; V]; `cellResistance`: resistance of one cell at 25 °C [r; Ω];
 * `cellResistanceUncertainty`: uncertainty of the cell resistance [u_r; Ω]; `dischargedCharge`: discharged charge
 * [Q_d; C]; `cellCapacity`: capacity of one cell [Q_c; C]; `cellCapacityUncertainty`: uncertainty of the cell capacity
 * [u_Q; C]; `capacityShare`: capacity against the printed one [h; as a fraction]; `capacityShareUncertainty`:
 * uncertainty of the capacity share [u_h; as a fraction]; `resistanceRatio`: resistance against new cells [w; as a
 * fraction]; `resistanceRatioUncertainty`: uncertainty of the resistance ratio [u_w; as a fraction]; `verdict`:
 * verdict [text].
 *
 * **Symbols of the working**
 *
 * k_T: resistance at this temperature against 25 °C; k_c: capacity at this temperature against 20 to 25 °C; k_r:
 * capacity at this rate against the printed one.
 *
 * **Sources**
 * - IEC: IEC 61960-3, Secondary lithium cells and batteries for portable applications, 2017, direct-current method, as
 *   quoted by makers of test gear: a fifth of the capacity per hour for 10 s, then the capacity per hour for 1 s; (U1
 *   - U2)/(I2 - I1)
 * - Joint Committee for Guides in Metrology: JCGM 100, Guide to the expression of uncertainty in measurement, 2008,
 *   clauses 4.3.7 (rectangular), 5.1.2 (combined) and 6.2.1 (expanded, factor 2) (not verified against the document)
 * - IEEE: IEEE 1188, Recommended practice for maintenance, testing, and replacement of valve-regulated lead-acid
 *   batteries, 2005, replace where less than 80 % of the rated capacity is left; cell makers count their cycles to the
 *   same share (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `links-exceed-reading`
 * @example
 * ```ts
 * import { packHealth } from 'alula/pack'
 * const tired = packHealth({
 *   series: 3, parallel: 2, lightCurrent: '1 A', lightVoltage: '11.42 V', heavyCurrent: '5 A', heavyVoltage: '10.9 V',
 *   dischargeCurrent: '1 A', dischargeDuration: '3.9 h', ratedCellCapacity: '2.6 Ah',
 * })
 * tired.resistance // => 0.13
 * tired.capacityShare // => 0.75
 * tired.verdict // => 'worn'
 * ```
 */
export const packHealth: Solver<PackHealthInput, PackHealth, PackHealthRefusal, PackHealthCaution> = /* @__PURE__ */ solver<
  PackHealthInput,
  PackHealth,
  PackHealthRefusal,
  PackHealthCaution
>("packHealth", "How tired a pack is, from the voltage at two loads and a timed discharge", solve, () => ({
  input: {
    ...packed,
    lightCurrent: { kind: "current", symbol: "I_1", label: "lighter load", min: 0, max: 1000, typical: [0.2, 2], default: 0 },
    lightVoltage: { kind: "voltage", symbol: "U_1", label: "voltage at the lighter load", min: "10 mV", max: 1000, typical: [11, 12.4] },
    heavyCurrent: { kind: "current", symbol: "I_2", label: "heavier load", min: "1 mA", max: 1000, typical: [3, 10] },
    heavyVoltage: { kind: "voltage", symbol: "U_2", label: "voltage at the heavier load", min: "1 mV", max: 1000, typical: [9.5, 10.9] },
    dischargeCurrent: {
      kind: "current",
      symbol: "I_d",
      label: "current of the timed discharge",
      min: "1 mA",
      max: 1000,
      typical: [0.5, 3],
      default: null,
    },
    dischargeDuration: {
      kind: "time",
      symbol: "t_d",
      label: "duration of the timed discharge",
      min: "1 min",
      max: "1000 h",
      typical: ["1 h", "8 h"],
      default: null,
    },
    voltageUncertainty: {
      kind: "voltage",
      symbol: "a_U",
      label: "voltage reading off by at most",
      min: 0,
      max: 10,
      typical: [0.001, 0.02],
      default: "20 mV",
    },
    currentUncertainty: {
      kind: "ratio",
      symbol: "a_I",
      label: "current reading off by at most",
      min: 0,
      max: 0.2,
      typical: [0.005, 0.03],
      unit: "%",
      default: 0.02,
    },
    durationUncertainty: {
      kind: "time",
      symbol: "a_t",
      label: "duration off by at most",
      min: 0,
      max: "1 h",
      typical: ["1 s", "5 min"],
      default: "1 min",
    },
    ratedCellCapacity: {
      kind: "charge",
      symbol: "Q_r",
      label: "printed capacity of a cell",
      min: "1 mAh",
      max: "1000 Ah",
      typical: ["1 Ah", "6 Ah"],
      default: null,
    },
    newCellResistance: {
      kind: "resistance",
      symbol: "r_n",
      label: "resistance of a new cell",
      min: "1 uohm",
      max: 100,
      typical: ["20 mohm", "100 mohm"],
      default: null,
    },
  },
  output: {
    resistance: { kind: "resistance", symbol: "R", label: "resistance of the pack" },
    resistanceUncertainty: { kind: "resistance", symbol: "u_R", label: "uncertainty of the resistance" },
    openCircuitVoltage: { kind: "voltage", symbol: "E", label: "voltage without load" },
    cellResistance: { kind: "resistance", symbol: "r", label: "resistance of one cell at 25 °C" },
    cellResistanceUncertainty: { kind: "resistance", symbol: "u_r", label: "uncertainty of the cell resistance" },
    dischargedCharge: { kind: "charge", symbol: "Q_d", label: "discharged charge", unit: "Ah" },
    cellCapacity: { kind: "charge", symbol: "Q_c", label: "capacity of one cell", unit: "Ah" },
    cellCapacityUncertainty: { kind: "charge", symbol: "u_Q", label: "uncertainty of the cell capacity", unit: "Ah" },
    capacityShare: { kind: "ratio", symbol: "h", label: "capacity against the printed one", unit: "%" },
    capacityShareUncertainty: { kind: "ratio", symbol: "u_h", label: "uncertainty of the capacity share", unit: "%" },
    resistanceRatio: { kind: "ratio", symbol: "w", label: "resistance against new cells" },
    resistanceRatioUncertainty: { kind: "ratio", symbol: "u_w", label: "uncertainty of the resistance ratio" },
    verdict: { kind: "text", label: "verdict" },
  },
  example: {
    series: 3,
    parallel: 2,
    lightCurrent: "1 A",
    lightVoltage: "11.42 V",
    heavyCurrent: "5 A",
    heavyVoltage: "10.9 V",
    dischargeCurrent: "1 A",
    dischargeDuration: "3.9 h",
    ratedCellCapacity: "2.6 Ah",
    newCellResistance: "50 mohm",
  },
  formulae: [
    { symbol: "R", meaning: "resistance from the two readings", is: "(U_1 - U_2) / (I_2 - I_1)", source: TWO_LOADS },
    {
      symbol: "u_R",
      meaning: "its uncertainty",
      is: "2 / sqrt(3) * sqrt(2 * a_U^2 + (R * a_I)^2 * (I_1^2 + I_2^2)) / (I_2 - I_1)",
      source: MEASUREMENT_UNCERTAINTY,
    },
    { symbol: "E", meaning: "voltage without load", is: "U_1 + I_1 * R" },
    {
      symbol: "k_T",
      kind: "number",
      meaning: "resistance at this temperature against 25 °C",
      given: (si) => resistanceFactor(si.chemistry, si.cellTemperature),
      source: COLD_RESISTANCE,
    },
    { symbol: "r", meaning: "resistance of one cell", is: "(R - R_l) * n_p / (n_s * k_T)" },
    { symbol: "u_r", meaning: "its uncertainty", is: "u_R * n_p / (n_s * k_T)" },
    { symbol: "Q_d", meaning: "charge taken out", is: "I_d * t_d", when: "has_dischargeCurrent" },
    {
      symbol: "k_c",
      kind: "number",
      meaning: "capacity at this temperature against 20 to 25 °C",
      given: (si) => capacityFactor(si.chemistry, si.cellTemperature),
      source: LITHIUM_TEMPERATURE,
    },
    {
      symbol: "k_r",
      kind: "number",
      meaning: "capacity at this rate against the printed one",
      given: (si) => (si.dischargeDuration === null ? 1 : capacityShareByDuration(si.chemistry, si.dischargeDuration / 3600)),
      source: LEAD_RATES,
    },
    { symbol: "Q_c", meaning: "capacity of one cell", is: "Q_d / (n_p * k_c * k_r)", when: "has_dischargeCurrent" },
    {
      symbol: "u_Q",
      meaning: "its uncertainty",
      is: "2 / sqrt(3) * Q_c * sqrt(a_I^2 + (a_t / t_d)^2)",
      when: "has_dischargeCurrent",
      source: MEASUREMENT_UNCERTAINTY,
    },
    { symbol: "h", meaning: "against the printed capacity", is: "Q_c / Q_r", when: "has_dischargeCurrent and has_ratedCellCapacity" },
    { symbol: "u_h", meaning: "its uncertainty", is: "u_Q / Q_r", when: "has_dischargeCurrent and has_ratedCellCapacity" },
    { symbol: "w", meaning: "against the resistance of a new cell", is: "r / r_n", when: "has_newCellResistance" },
    { symbol: "u_w", meaning: "its uncertainty", is: "u_r / r_n", when: "has_newCellResistance" },
  ],
  sources: [TWO_LOADS, MEASUREMENT_UNCERTAINTY, END_OF_LIFE],
  either: [{ together: ["dischargeCurrent", "dischargeDuration"] }],
  check,
  cautions,
}))
