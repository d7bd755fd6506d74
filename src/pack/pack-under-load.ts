import type { Current, Power, Resistance, Voltage } from "../quantity/index.js"
import { type Caution, caution, type NoSolution, refuse, type SiOf, type Solver, solver } from "../solver/index.js"
import { chemistries, openCircuitVoltage } from "./chemistry.js"
import { dischargeLimitFactor, temperatureLimitSource } from "./data.js"
import type { PackCaution, RateCaution } from "./fields.js"
import {
  cellLimitField,
  type PackCells,
  packCautions,
  packCutOff,
  packFaults,
  packFields,
  packResistance,
  packResistanceSteps,
  rateCautions,
  type StateOfCharge,
  stateOfChargeField,
} from "./fields.js"
import { LITHIUM_SAFETY, MEASURED_CURVES, TEMPERATURE_LIMITS, TERMINAL_VOLTAGE } from "./sources.js"

/** Input of {@link packUnderLoad}. Give one of current, power and load resistance. */
export interface PackUnderLoadInput extends PackCells {
  /** Charge left, 0 to 1. [s; 0 to 100 %; default 50 %] */
  stateOfCharge?: StateOfCharge
  /** Voltage of the whole pack without load, as measured; calculated from the charge where left out. [E_m; 10 mV to 1000 V; optional] */
  openCircuitVoltage?: Voltage | null
  /** Load that draws a constant current. [I_l; 0 to 1000 A; optional] */
  current?: Current | null
  /** Load that draws a constant power, as a converter does. [P_l; 0 to 100 kW; optional] */
  power?: Power | null
  /** Load that is a resistance, as a heater or lamp is. [R_L; 1 µΩ to 1000 kΩ; optional] */
  loadResistance?: Resistance | null
  /** Maximum continuous discharge current of a cell. [I_d; 0.1 mA to 1000 A; optional] */
  cellMaxCurrent?: Current | null
}

/** Reasons for which {@link packUnderLoad} can refuse. */
export type PackUnderLoadRefusal = "insufficient-current" | "insufficient-power"

/** Hazards and limits that an answer of {@link packUnderLoad} can carry. */
export type PackUnderLoadCaution = "below-cut-off" | "near-collapse" | "over-current" | PackCaution | RateCaution

/** Result of {@link packUnderLoad}. */
export interface PackUnderLoad {
  /** Open-circuit voltage [E; V] */
  readonly openCircuitVoltage: number
  /** Resistance of the pack. [R; Ω] */
  readonly resistance: number
  /** Current [I; A] */
  readonly current: number
  /** Terminal voltage [V; V] */
  readonly terminalVoltage: number
  /** Voltage lost inside. [dV; V] */
  readonly sag: number
  /** Power at the terminals [P; W] */
  readonly power: number
  /** Heat inside the pack. [P_h; W] */
  readonly heat: number
  /** Share of the power that reaches the terminals. [eta; as a fraction] */
  readonly efficiency: number
  /** Current of each cell [I_1; A] */
  readonly cellCurrent: number
  /** Cell current against its limit at this temperature; null where none was given, or none is allowed. [u; as a fraction] */
  readonly cellUtilisation: number | null
  /** Voltage above the minimum allowed; negative when cut off. [dV_m; V] */
  readonly voltageMargin: number
  /** Maximum power this pack can give at this charge; null without any resistance. [P_max; W] */
  readonly maxPower: number | null
}

/** Current that a constant power draws from a source, A: the smaller root of P = I·(E − I·R). */
export function constantPowerCurrent(emf: number, resistance: number, power: number): number {
  return (2 * power) / (emf + Math.sqrt(Math.max(0, emf * emf - 4 * resistance * power)))
}

function solve(si: SiOf<PackUnderLoadInput>): PackUnderLoad | NoSolution<PackUnderLoadRefusal> {
  const { series, parallel, stateOfCharge, power, loadResistance } = si
  const emf = si.openCircuitVoltage ?? openCircuitVoltage(si.chemistry, stateOfCharge) * series
  const resistance = packResistance(si)
  const maxPower = resistance > 1e-12 ? (emf * emf) / (4 * resistance) : null
  if (power !== null && maxPower !== null && power > maxPower)
    return refuse(
      "insufficient-power",
      "The pack can give at most {nearest.power power} with {openCircuitVoltage voltage} without load; {given.power power} were asked for. Take more cells, or less power.",
      power - maxPower,
      { openCircuitVoltage: emf, resistance },
      { power: maxPower },
      { "given.power": power },
    )
  const shorted = resistance > 0 ? emf / resistance : Number.POSITIVE_INFINITY
  if (si.current !== null && si.current >= shorted)
    return refuse(
      "insufficient-current",
      "Even short-circuited the pack gives {shortCircuit current}; {given.current current} were asked for. Take more cells in parallel, or less current.",
      si.current - 0.999 * shorted,
      { openCircuitVoltage: emf, resistance, shortCircuit: shorted },
      { current: 0.999 * shorted },
      { "given.current": si.current },
    )
  const current =
    si.current !== null
      ? si.current
      : power !== null
        ? constantPowerCurrent(emf, resistance, power)
        : emf / (resistance + (loadResistance as number))
  const terminalVoltage = emf - current * resistance
  const limit = si.cellMaxCurrent === null ? 0 : si.cellMaxCurrent * dischargeLimitFactor(si.chemistry, si.cellTemperature)
  const sag = current * resistance
  const cellCurrent = current / parallel
  return {
    openCircuitVoltage: emf,
    resistance,
    current,
    terminalVoltage,
    sag,
    power: terminalVoltage * current,
    heat: current * sag,
    efficiency: terminalVoltage / emf,
    cellCurrent,
    cellUtilisation: limit > 0 ? cellCurrent / limit : null,
    voltageMargin: terminalVoltage - packCutOff(si),
    maxPower,
  }
}

function cautions(si: SiOf<PackUnderLoadInput>, out: PackUnderLoad): Caution<PackUnderLoadCaution>[] {
  const found: Caution<PackUnderLoadCaution>[] = packCautions(si, out.openCircuitVoltage)
  if (out.voltageMargin < 0)
    found.push(
      caution(
        "below-cut-off",
        "warning",
        "Under this load the cells are below their minimum voltage: the protection circuit cuts off, or, without one, the cells are harmed.",
        chemistries[si.chemistry].source,
      ),
    )
  const left = dischargeLimitFactor(si.chemistry, si.cellTemperature)
  if (si.cellMaxCurrent !== null && out.cellCurrent > si.cellMaxCurrent * left) {
    const limit = si.cellMaxCurrent * left
    found.push(
      left < 1
        ? caution(
            "over-current",
            "warning",
            "Each cell gives {cellCurrent current}, more than the {limit current} that makers allow at {given.cellTemperature temperature °C}: warm or cool the pack, or use more in parallel.",
            chemistries[si.chemistry].lithiumIon ? temperatureLimitSource : TEMPERATURE_LIMITS,
            { cellCurrent: out.cellCurrent, limit, "given.cellTemperature": si.cellTemperature },
          )
        : caution(
            "over-current",
            "warning",
            "Each cell gives {cellCurrent current}, above its continuous limit of {given.cellMaxCurrent current}: the cells overheat. Use more in parallel or another cell.",
            LITHIUM_SAFETY,
            { cellCurrent: out.cellCurrent, "given.cellMaxCurrent": si.cellMaxCurrent },
          ),
    )
  }
  if (out.maxPower !== null && out.power > 0.5 * out.maxPower)
    found.push(
      caution(
        "near-collapse",
        "caution",
        "{power power} is more than half of the {maxPower power} that this pack can give: a little less charge or a colder day and the voltage collapses.",
        TERMINAL_VOLTAGE,
        { power: out.power, maxPower: out.maxPower },
      ),
    )
  found.push(...rateCautions(si.chemistry, (out.cellCurrent * 3600) / si.cellCapacity))
  return found
}

/**
 * Voltage, sag, heat and cell current of a pack under a load.
 *
 * Formula: E = n_s·U, U being the chemistry's open-circuit voltage at state of charge s, or as measured; R =
 * r_c·k_T·n_s/n_p + R_l as in cellPack. A constant current I leaves V = E − I·R; a load resistance R_L draws I = E/(R +
 * R_L); a constant power P draws the smaller root of P = I·(E − I·R), I = 2P/(E + √(E² − 4·R·P)), and none above
 * E²/(4R). Heat inside I²·R, efficiency V/E.
 *
 * Valid for minutes-scale loads, with a direct-current resistance; the first milliseconds sag less. The
 * curve of another cell of the chemistry departs by up to 40 mV (alkaline 100 mV).
 *
 * The open-circuit curves' sources are named in `chemistries`.
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
 * - `stateOfCharge`: state of charge [s; 0 to 100 %; default 50 %]
 * - `openCircuitVoltage`: open-circuit voltage, measured [E_m; 10 mV to 1000 V; optional]
 * - `current`: constant current [I_l; 0 to 1000 A; optional]
 * - `power`: constant power [P_l; 0 to 100 kW; optional]
 * - `loadResistance`: load resistance [R_L; 1 µΩ to 1000 kΩ; optional]
 * - `cellMaxCurrent`: maximum discharge current of a cell [I_d; 0.1 mA to 1000 A; optional]
 * - exactly one of `current`, `power` and `loadResistance`
 *
 * **Results**
 *
 * `openCircuitVoltage`: open-circuit voltage [E; V]; `resistance`: resistance [R; Ω]; `current`: current [I; A];
 * `terminalVoltage`: terminal voltage [V; V]; `sag`: sag [dV; V]; `power`: power at the terminals [P; W]; `heat`: heat
 * inside [P_h; W]; `efficiency`: efficiency [eta; as a fraction]; `cellCurrent`: current of each cell [I_1; A];
 * `cellUtilisation`: utilisation [u; as a fraction]; `voltageMargin`: margin to the cut-off voltage [dV_m; V];
 * `maxPower`: maximum power it can give [P_max; W].
 *
 * **Symbols of the working**
 *
 * E_c: open-circuit voltage of a cell at this charge [V]; k_T: resistance at this temperature against 25 °C; k_d:
 * share of the discharge limit left at this temperature; V_min: minimum voltage of the pack [V]; resists: 1 where the
 * pack has a resistance.
 *
 * **Sources**
 * - OpenStax: College Physics 2e, 2022, section 21.2
 * - Specifications of a 14.8 V 2600 mAh 18650 pack and of a 26650 LFP pack, cell tables, 2020, items 3.6 and 3.8
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `insufficient-power` or `insufficient-current`, naming the maximum that can be had
 * @example
 * ```ts
 * import { genericCells, packUnderLoad } from 'alula/pack'
 * const { cellCapacity, cellResistance } = genericCells['18650-standard']
 * const loaded = packUnderLoad({ series: 3, parallel: 2, cellCapacity, cellResistance, stateOfCharge: 0.5, power: '40 W' })
 * loaded.openCircuitVoltage // => 11.15
 * loaded.current // => 3.678
 * loaded.terminalVoltage // => 10.87
 * loaded.heat // => 1.015
 * ```
 */
export const packUnderLoad: Solver<PackUnderLoadInput, PackUnderLoad, PackUnderLoadRefusal, PackUnderLoadCaution> = /* @__PURE__ */ solver<
  PackUnderLoadInput,
  PackUnderLoad,
  PackUnderLoadRefusal,
  PackUnderLoadCaution
>("packUnderLoad", "How a pack sags and warms under a load", solve, () => ({
  input: {
    ...packFields,
    stateOfCharge: { ...stateOfChargeField, default: 0.5 },
    openCircuitVoltage: {
      kind: "voltage",
      symbol: "E_m",
      label: "open-circuit voltage, measured",
      min: "10 mV",
      max: 1000,
      typical: [3, 25],
      default: null,
    },
    current: { kind: "current", symbol: "I_l", label: "constant current", min: 0, max: 1000, typical: [0.5, 20], default: null },
    power: { kind: "power", symbol: "P_l", label: "constant power", min: 0, max: "100 kW", typical: [1, 100], default: null },
    loadResistance: {
      kind: "resistance",
      symbol: "R_L",
      label: "load resistance",
      min: 1e-6,
      max: 1e6,
      typical: [0.5, 50],
      default: null,
    },
    cellMaxCurrent: cellLimitField,
  },
  output: {
    openCircuitVoltage: { kind: "voltage", symbol: "E", label: "open-circuit voltage" },
    resistance: { kind: "resistance", symbol: "R", label: "resistance" },
    current: { kind: "current", symbol: "I", label: "current" },
    terminalVoltage: { kind: "voltage", symbol: "V", label: "terminal voltage" },
    sag: { kind: "voltage", symbol: "dV", label: "sag" },
    power: { kind: "power", symbol: "P", label: "power at the terminals" },
    heat: { kind: "power", symbol: "P_h", label: "heat inside" },
    efficiency: { kind: "ratio", symbol: "eta", label: "efficiency", unit: "%" },
    cellCurrent: { kind: "current", symbol: "I_1", label: "current of each cell" },
    cellUtilisation: { kind: "ratio", symbol: "u", label: "utilisation", unit: "%" },
    voltageMargin: { kind: "voltage", symbol: "dV_m", label: "margin to the cut-off voltage" },
    maxPower: { kind: "power", symbol: "P_max", label: "maximum power it can give" },
  },
  example: {
    series: 3,
    parallel: 2,
    cellCapacity: "2.6 Ah",
    cellResistance: "80 mohm",
    stateOfCharge: 0.5,
    power: "40 W",
    cellMaxCurrent: "7.8 A",
  },
  formulae: [
    {
      symbol: "E_c",
      kind: "voltage",
      meaning: "open-circuit voltage of a cell at this charge",
      given: (si) => openCircuitVoltage(si.chemistry, si.stateOfCharge),
      source: MEASURED_CURVES,
    },
    { symbol: "E", meaning: "voltage without load", is: "n_s * E_c", when: "not has_openCircuitVoltage" },
    { symbol: "E", meaning: "voltage without load, measured", is: "E_m", when: "has_openCircuitVoltage" },
    ...packResistanceSteps,
    { symbol: "I", meaning: "current of a constant-current load", is: "I_l", when: "has_current" },
    {
      symbol: "I",
      meaning: "current that the power draws",
      is: "2 * P_l / (E + sqrt(max(E^2 - 4 * R * P_l, 0 V^2)))",
      when: "has_power",
    },
    { symbol: "I", meaning: "current of the load resistance", is: "E / (R + R_L)", when: "has_loadResistance" },
    { symbol: "dV", meaning: "sag", is: "I * R" },
    { symbol: "V", meaning: "voltage at the terminals", is: "E - dV" },
    { symbol: "P", meaning: "power at the terminals", is: "V * I" },
    { symbol: "P_h", meaning: "heat inside", is: "I^2 * R" },
    { symbol: "eta", meaning: "efficiency", is: "V / E" },
    { symbol: "I_1", meaning: "current of each cell", is: "I / n_p" },
    {
      symbol: "k_d",
      kind: "number",
      meaning: "share of the discharge limit left at this temperature",
      given: (si) => dischargeLimitFactor(si.chemistry, si.cellTemperature),
      source: temperatureLimitSource,
    },
    { symbol: "u", meaning: "of its limit", is: "I_1 / (I_d * k_d)", when: "has_cellMaxCurrent and k_d > 0" },
    { symbol: "V_min", kind: "voltage", meaning: "minimum voltage of the pack", given: (si) => packCutOff(si) },
    { symbol: "dV_m", meaning: "above the minimum voltage", is: "V - V_min" },
    {
      symbol: "resists",
      kind: "number",
      meaning: "1 where the pack has a resistance",
      given: (_, out) => (out.maxPower === null ? 0 : 1),
    },
    { symbol: "P_max", meaning: "maximum power", is: "E^2 / (4 * R)", when: "resists == 1" },
  ],
  sources: [TERMINAL_VOLTAGE, temperatureLimitSource],
  either: [{ exactlyOne: ["current", "power", "loadResistance"] }],
  check: packFaults,
  cautions,
}))
