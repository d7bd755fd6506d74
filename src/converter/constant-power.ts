import type { Capacitance, Inductance, Power, Resistance, Voltage } from "../quantity/index.js"
import { type Caution, caution, type NoSolution, refuse, type SiOf, type Solver, solver } from "../solver/index.js"
import { touchCautions } from "./hazards.js"
import { CONSTANT_POWER, HOT_SURFACES, INPUT_FILTERS } from "./sources.js"

/** Input of {@link constantPowerPoint}. */
export interface ConstantPowerPointInput {
  /** Source voltage, open circuit [E; 10 mV to 1000 V] */
  sourceVoltage: Voltage
  /** Resistance of source, wires and contacts together. [R; 1 µΩ to 1000 kΩ] */
  sourceResistance: Resistance
  /** Power the load takes, whatever its voltage. [P; 0.001 mW to 100 kW] */
  power: Power
  /** Inductance of the wires, for the stability of the point. [L; 0 to 1 H; default 1 µH] */
  inductance?: Inductance
  /** Capacitor at the load, for the stability of the point. [C; 0.001 nF to 100 F; optional] */
  capacitance?: Capacitance | null
}

/** Result of {@link constantPowerPoint}. */
export interface ConstantPowerPoint {
  /** Load voltage at the working root. [V; V] */
  readonly terminalVoltage: number
  /** Current at the working root. [I; A] */
  readonly current: number
  /** Load voltage at the second (unstable) point. [V_2; V] */
  readonly unstableVoltage: number
  /** Current at the second (unstable) point. [I_2; A] */
  readonly unstableCurrent: number
  /** Maximum power the source can give to any load. [P_max; W] */
  readonly maxPower: number
  /** Part of that maximum power in use. [u; as a fraction] */
  readonly utilisation: number
  /** Heat in source, wires and contacts. [P_h; W] */
  readonly lineHeat: number
  /** Whether the load takes the maximum power the source can give. [yes or no] */
  readonly atLimit: boolean
  /** Resistance the load shows to small changes: negative. [R_d; Ω] */
  readonly incrementalResistance: number
  /** Capacitor at the load above which the voltage is stable. [C_min; F] */
  readonly minCapacitance: number
  /** Whether the voltage is stable with the capacitor given; null without one. [yes or no] */
  readonly stable: boolean | null
}

/** Reasons for which {@link constantPowerPoint} refuses. */
export type ConstantPowerPointRefusal = "insufficient-power"

/** Hazards and limits of validity that go with an answer of {@link constantPowerPoint}. */
export type ConstantPowerPointCaution = "burns" | "near-collapse" | "oscillation" | "touch-voltage"

function solve(si: SiOf<ConstantPowerPointInput>): ConstantPowerPoint | NoSolution<ConstantPowerPointRefusal> {
  const { sourceVoltage, sourceResistance, power, inductance, capacitance } = si
  const maxPower = sourceVoltage ** 2 / (4 * sourceResistance)
  if (power > maxPower)
    return refuse(
      "insufficient-power",
      "The load asks for {given.power power}; the maximum power this source can give is {nearest.power power}, short by {shortBy power}. Take less power, or a source and wires of less resistance.",
      power - maxPower,
      {},
      // rounding may put the exact resistance just past the limit
      { power: maxPower, sourceResistance: (0.999999 * sourceVoltage ** 2) / (4 * power) },
      { "given.power": power },
    )
  const root = Math.sqrt(Math.max(0, 1 - (4 * sourceResistance * power) / sourceVoltage ** 2))
  const terminalVoltage = (sourceVoltage * (1 + root)) / 2
  const current = power / terminalVoltage
  const unstableVoltage = sourceResistance * current
  const minCapacitance = (power * inductance) / (sourceResistance * terminalVoltage ** 2)
  return {
    terminalVoltage,
    current,
    unstableVoltage,
    unstableCurrent: terminalVoltage / sourceResistance,
    maxPower,
    utilisation: power / maxPower,
    lineHeat: sourceResistance * current ** 2,
    atLimit: root === 0,
    incrementalResistance: -(terminalVoltage ** 2) / power,
    minCapacitance,
    stable: capacitance === null ? null : capacitance > minCapacitance && terminalVoltage > unstableVoltage,
  }
}

function cautions(si: SiOf<ConstantPowerPointInput>, out: ConstantPowerPoint): Caution<ConstantPowerPointCaution>[] {
  const found: Caution<ConstantPowerPointCaution>[] = [...touchCautions(si.sourceVoltage)]
  if (out.utilisation > 0.5)
    found.push(
      caution(
        "near-collapse",
        "caution",
        "The load takes {utilisation ratio %} of the maximum power this source can give: a colder or emptier battery, or one worn contact, and it collapses to the second voltage or switches off.",
        CONSTANT_POWER,
        { utilisation: out.utilisation },
      ),
    )
  if (out.stable === false)
    found.push(
      caution(
        "oscillation",
        "caution",
        "With this wire and capacitor the voltage starts to oscillate: a constant-power load has a negative resistance. Put more than {minCapacitance capacitance} at the load, or shorten the wires.",
        INPUT_FILTERS,
        { minCapacitance: out.minCapacitance },
      ),
    )
  if (out.lineHeat > 5)
    found.push(
      caution(
        "burns",
        "warning",
        "{lineHeat power} heats the source and its wires: check each contact and cell by touch only with the power off, and keep them off skin.",
        HOT_SURFACES,
        { lineHeat: out.lineHeat },
      ),
    )
  return found
}

/**
 * Operating points of a load that takes constant power (a converter, a speed-held motor) behind a resistance.
 *
 * Formula: V = (E ± √(E² − 4·R·P))/2, I = P/V, P_max = E²/(4R), where E is the open-circuit voltage, R the resistance
 * of source, wires and contacts and P the load's power. The root at the higher voltage is the working one; the other is
 * where a load falls to when it is started from a sagging supply. Small oscillations die out while the capacitance at the
 * load C > L·P/(R·V²) (L the wires' inductance, by common practice that of about a metre of wire) and V > E/2. Both
 * roots are one at P = P_max; above it there is none. Valid in steady state, for small oscillations, and for loads that
 * hold their power down to the voltage found.
 *
 * The stability bound is the trace of the linearised L–C circuit.
 *
 * **Inputs**
 * - `sourceVoltage`: source voltage, open circuit [E; 10 mV to 1000 V]
 * - `sourceResistance`: resistance of source, wires and contacts [R; 1 µΩ to 1000 kΩ]
 * - `power`: power of the load [P; 0.001 mW to 100 kW]
 * - `inductance`: inductance of the wires [L; 0 to 1 H; default 1 µH]
 * - `capacitance`: capacitor at the load [C; 0.001 nF to 100 F; optional]
 *
 * **Results**
 *
 * `terminalVoltage`: load voltage [V; V]; `current`: current [I; A]; `unstableVoltage`: second (unstable) voltage
 * [V_2; V]; `unstableCurrent`: current at the second voltage [I_2; A]; `maxPower`: maximum power the source gives
 * [P_max; W]; `utilisation`: share of the maximum power in use [u; as a fraction]; `lineHeat`: heat in source and
 * wires [P_h; W]; `atLimit`: at maximum power [yes or no]; `incrementalResistance`: small-signal resistance [R_d; Ω];
 * `minCapacitance`: minimum capacitor for a stable point [C_min; F]; `stable`: stable [yes or no].
 *
 * **Symbols of the working**
 *
 * D: discriminant, against E².
 *
 * **Sources**
 * - M. Jeeninga, C. De Persis, A. van der Schaft: DC power grids with constant-power loads, Part I: a full
 *   characterization of power flow feasibility, 2020, single-source case
 * - R. D. Middlebrook (IEEE IAS): Input filter considerations in design and application of switching regulators, 1976
 *   (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `insufficient-power`, naming the maximum power available
 * @example
 * ```ts
 * import { constantPowerPoint } from 'alula/converter'
 * const point = constantPowerPoint({ sourceVoltage: '12 V', sourceResistance: '0.2 ohm', power: '60 W' })
 * point.terminalVoltage // => 10.899
 * point.unstableVoltage // => 1.101
 * point.maxPower // => 180
 * ```
 */
export const constantPowerPoint: Solver<ConstantPowerPointInput, ConstantPowerPoint, ConstantPowerPointRefusal, ConstantPowerPointCaution> =
  /* @__PURE__ */ solver<ConstantPowerPointInput, ConstantPowerPoint, ConstantPowerPointRefusal, ConstantPowerPointCaution>(
    "constantPowerPoint",
    "Where a constant-power load settles on a source",
    solve,
    () => ({
      input: {
        sourceVoltage: { kind: "voltage", symbol: "E", label: "source voltage, open circuit", min: "10 mV", max: 1000, typical: [3, 24] },
        sourceResistance: {
          kind: "resistance",
          symbol: "R",
          label: "resistance of source, wires and contacts",
          min: "1 uohm",
          max: 1e6,
          typical: ["20 mohm", "1 ohm"],
        },
        power: { kind: "power", symbol: "P", label: "power of the load", min: 1e-6, max: 1e5, typical: [1, 60] },
        inductance: {
          kind: "inductance",
          symbol: "L",
          label: "inductance of the wires",
          min: 0,
          max: 1,
          typical: ["0.5 uH", "10 uH"],
          default: "1 uH",
        },
        capacitance: {
          kind: "capacitance",
          symbol: "C",
          label: "capacitor at the load",
          min: 1e-12,
          max: 100,
          typical: ["10 uF", "2000 uF"],
          default: null,
        },
      },
      output: {
        terminalVoltage: { kind: "voltage", symbol: "V", label: "load voltage" },
        current: { kind: "current", symbol: "I", label: "current" },
        unstableVoltage: { kind: "voltage", symbol: "V_2", label: "second (unstable) voltage" },
        unstableCurrent: { kind: "current", symbol: "I_2", label: "current at the second voltage" },
        maxPower: { kind: "power", symbol: "P_max", label: "maximum power the source gives" },
        utilisation: { kind: "ratio", symbol: "u", label: "share of the maximum power in use", unit: "%" },
        lineHeat: { kind: "power", symbol: "P_h", label: "heat in source and wires" },
        atLimit: { kind: "flag", label: "at maximum power" },
        incrementalResistance: { kind: "resistance", symbol: "R_d", label: "small-signal resistance" },
        minCapacitance: { kind: "capacitance", symbol: "C_min", label: "minimum capacitor for a stable point" },
        stable: { kind: "flag", label: "stable" },
      },
      example: { sourceVoltage: "12 V", sourceResistance: "0.2 ohm", power: "60 W", capacitance: "470 uF" },
      formulae: [
        { symbol: "P_max", meaning: "maximum power, at half the voltage", is: "E^2 / (4 * R)" },
        { symbol: "u", meaning: "part of it in use", is: "P / P_max" },
        { symbol: "D", kind: "number", meaning: "discriminant, against E²", is: "1 - 4 * R * P / E^2" },
        { symbol: "V", meaning: "stable (upper) voltage", is: "E * (1 + sqrt(max(0, D))) / 2" },
        { symbol: "I", meaning: "current there", is: "P / V" },
        { symbol: "V_2", meaning: "second (unstable) voltage", is: "R * I" },
        { symbol: "I_2", meaning: "current there", is: "P / V_2" },
        { symbol: "P_h", meaning: "heat in source and wires", is: "R * I^2" },
        { symbol: "R_d", meaning: "slope of voltage over current at constant power", is: "-V^2 / P" },
        { symbol: "C_min", meaning: "capacitance at which the trace of the linearised circuit is zero", is: "P * L / (R * V^2)" },
        { left: "E", right: "V + R * I", meaning: "Kirchhoff's voltage law at the stable voltage" },
        { left: "E", right: "V_2 + R * I_2", meaning: "and at the second voltage" },
      ],
      sources: [CONSTANT_POWER, INPUT_FILTERS],
      cautions,
    }),
  )
