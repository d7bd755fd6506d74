import type { Charge, Current, Power, Ratio, Voltage } from "../quantity/index.js"
import {
  type Caution,
  caution,
  commonPractice,
  type Issue,
  inconsistent,
  type NoSolution,
  refuse,
  type SiOf,
  type Solver,
  solver,
} from "../solver/index.js"
import { touchCautions } from "./fields.js"
import { AIR_PASSENGERS, LITHIUM_SAFETY } from "./sources.js"

/** Input of {@link powerBank}. Give the load as a current or a power, at the load. */
export interface PowerBankInput {
  /** Capacity printed on the bank, which is that of its cells. [Q; 1 mAh to 1000 Ah] */
  ratedCapacity: Charge
  /** Nominal voltage of its cells. [V_c; 1 to 20 V; default 3.7 V] */
  cellNominalVoltage?: Voltage
  /** Terminal voltage [V_p; 1 to 60 V; default 5 V] */
  terminalVoltage?: Voltage
  /** Efficiency of its own converter. [eta_b; 0.1 to 1; default 0.85] */
  bankEfficiency?: Ratio
  /** Output current limit [I_max; 0.1 mA to 100 A; default 3 A] */
  outputCurrentLimit?: Current
  /** Voltage the load needs, by a step-up behind the port; left out, the load sits at the port. [V_l; 10 mV to 100 V; optional] */
  loadVoltage?: Voltage | null
  /** Efficiency of the boost converter [eta_u; 0.1 to 1; default 0.9] */
  boostEfficiency?: Ratio
  /** Load current [I_l; 0 to 100 A; optional] */
  current?: Current | null
  /** Load power [P_l; 0 to 1000 W; optional] */
  power?: Power | null
  /** Port current under which the bank takes it that nothing is plugged in and switches off. [I_off; above 0.1 mA to 1 A; default 0.1 A] */
  switchOffCurrent?: Current
}

/** Reasons for which {@link powerBank} can refuse. */
export type PowerBankRefusal = "insufficient-current"

/** Hazards and limits that an answer of {@link powerBank} can carry. */
export type PowerBankCaution = "boost-peaks" | "lithium-battery" | "near-port-limit" | "switches-off" | "touch-voltage"

/** Result of {@link powerBank}. */
export interface PowerBank {
  /** Energy of the cells: the figure for air travel. [E_c; J] */
  readonly cellEnergy: number
  /** Energy that reaches the port. [E_p; J] */
  readonly deliveredEnergy: number
  /** Charge at the port's voltage: what the printed figure comes to. [Q_p; C] */
  readonly deliveredCharge: number
  /** Energy that reaches the load. [E_l; J] */
  readonly loadEnergy: number
  /** Power of the load [P; W] */
  readonly loadPower: number
  /** Output current [I_p; A] */
  readonly outputCurrent: number
  /** Port current against its limit. [u; as a fraction] */
  readonly utilisation: number
  /** Time the load runs; null where it takes nothing. [t; s] */
  readonly runtime: number | null
  /** Whether the bank stays on at this load. [yes or no] */
  readonly staysOn: boolean
  /** Extra load at the port that keeps it on; 0 where it stays on. [P_k; W] */
  readonly keepOnPower: number
  /** Time it would run with that burnt as well. [t_k; s] */
  readonly keptOnRuntime: number
}

type Si = SiOf<PowerBankInput>

function solve(si: Si): PowerBank | NoSolution<PowerBankRefusal> {
  const { ratedCapacity, cellNominalVoltage, terminalVoltage, bankEfficiency, outputCurrentLimit, loadVoltage, switchOffCurrent } = si
  const stepUp = loadVoltage === null ? 1 : si.boostEfficiency
  const loadPower = si.power ?? (si.current as number) * (loadVoltage ?? terminalVoltage)
  const outputCurrent = loadPower / stepUp / terminalVoltage
  if (outputCurrent > outputCurrentLimit) {
    const greatest = 0.999 * outputCurrentLimit * terminalVoltage * stepUp
    return refuse(
      "insufficient-current",
      "The load takes {outputCurrent current} at the port, which gives at most {given.outputCurrentLimit current}: the bank cuts off or the voltage falls. At most {greatest power} reach the load.",
      outputCurrent - outputCurrentLimit,
      { outputCurrent, greatest },
      si.power === null ? { current: greatest / (loadVoltage ?? terminalVoltage) } : { power: greatest },
      { "given.outputCurrentLimit": outputCurrentLimit },
    )
  }
  const cellEnergy = ratedCapacity * cellNominalVoltage
  const deliveredEnergy = cellEnergy * bankEfficiency
  const keptOn = Math.max(outputCurrent, switchOffCurrent) * terminalVoltage
  return {
    cellEnergy,
    deliveredEnergy,
    deliveredCharge: deliveredEnergy / terminalVoltage,
    loadEnergy: deliveredEnergy * stepUp,
    loadPower,
    outputCurrent,
    utilisation: outputCurrent / outputCurrentLimit,
    runtime: loadPower > 1e-9 ? (deliveredEnergy * stepUp) / loadPower : null,
    staysOn: outputCurrent >= switchOffCurrent,
    keepOnPower: Math.max(0, switchOffCurrent - outputCurrent) * terminalVoltage,
    keptOnRuntime: deliveredEnergy / keptOn,
  }
}

function check(si: Si): Issue[] {
  const faults: Issue[] = []
  if (si.loadVoltage !== null && !(si.loadVoltage > si.terminalVoltage))
    faults.push(
      inconsistent(
        ["loadVoltage"],
        "{loadVoltage voltage}",
        "more than the port's {terminalVoltage voltage}, or nothing where the load sits at the port",
        { loadVoltage: si.loadVoltage, terminalVoltage: si.terminalVoltage },
      ),
    )
  return faults
}

function cautions(si: Si, out: PowerBank): Caution<PowerBankCaution>[] {
  const found: Caution<PowerBankCaution>[] = touchCautions(Math.max(si.terminalVoltage, si.loadVoltage ?? 0))
  if (!out.staysOn)
    found.push(
      caution(
        "switches-off",
        "caution",
        "{outputCurrent current} at the port is too little to keep the bank on: it switches off after some seconds. Add {keepOnPower power} of load, pulse one, or choose a bank with a mode for small loads.",
        commonPractice,
        { outputCurrent: out.outputCurrent, keepOnPower: out.keepOnPower },
      ),
    )
  if (si.loadVoltage !== null)
    found.push(
      caution(
        "boost-peaks",
        "caution",
        "A motor's starting current through a step-up asks several times its running power of the port for a moment; many banks cut off. Calculate with the peak, not the mean.",
      ),
    )
  if (out.utilisation > 0.8)
    found.push(
      caution(
        "near-port-limit",
        "caution",
        "{utilisation ratio %} of the port's limit is in use: warm banks and long leads lower it, and the voltage at the load.",
        commonPractice,
        { utilisation: out.utilisation },
      ),
    )
  found.push(
    caution(
      "lithium-battery",
      "warning",
      "A power bank is a lithium pack: keep it where it gets air and can be thrown off at once, not under padding against the body; never use a swollen, wet or dropped one.",
      LITHIUM_SAFETY,
    ),
  )
  return found
}

/**
 * What a power bank really gives: energy at its port and behind a step-up, how long, and whether it stays on.
 *
 * Formula: E_c = Q·V_c, E_p = η_b·E_c, charge at the port E_p/V_p, energy at the load η_s·E_p, port current
 * P/(η_s·V_p), t = η_s·E_p/P. Q is the printed capacity, which is that of the cells at V_c; V_p the port's voltage, η_b
 * the bank's efficiency, η_s that of a step-up to the load's voltage, P the load's power. It stays on where the port
 * current is at least the switch-off current.
 *
 * Valid for a steady load and a healthy bank. Efficiencies and the switch-off current differ from make to
 * make: measure yours. The defaults are common practice, no source (makers quote 80 to 98 %).
 *
 * **Inputs**
 * - `ratedCapacity`: rated capacity as printed [Q; 1 mAh to 1000 Ah]
 * - `cellNominalVoltage`: nominal cell voltage [V_c; 1 to 20 V; default 3.7 V]
 * - `terminalVoltage`: terminal voltage [V_p; 1 to 60 V; default 5 V]
 * - `bankEfficiency`: efficiency of the bank [eta_b; 0.1 to 1; default 0.85]
 * - `outputCurrentLimit`: output current limit [I_max; 0.1 mA to 100 A; default 3 A]
 * - `loadVoltage`: voltage of the load behind a step-up (boost) converter [V_l; 10 mV to 100 V; optional]
 * - `boostEfficiency`: efficiency of the boost converter [eta_u; 0.1 to 1; default 0.9]
 * - `current`: load current [I_l; 0 to 100 A; optional]
 * - `power`: load power [P_l; 0 to 1000 W; optional]
 * - `switchOffCurrent`: switch-off current [I_off; above 0.1 mA to 1 A; default 0.1 A]
 * - exactly one of `current` and `power`
 *
 * **Results**
 *
 * `cellEnergy`: energy of the cells [E_c; J]; `deliveredEnergy`: delivered energy at the port [E_p; J];
 * `deliveredCharge`: delivered charge at the port's voltage [Q_p; C]; `loadEnergy`: energy at the load [E_l; J];
 * `loadPower`: power of the load [P; W]; `outputCurrent`: output current [I_p; A]; `utilisation`: utilisation [u; as a
 * fraction]; `runtime`: runtime [t; s]; `staysOn`: stays on [yes or no]; `keepOnPower`: extra load needed to keep it
 * on [P_k; W]; `keptOnRuntime`: runtime with the extra load [t_k; s].
 *
 * **Symbols of the working**
 *
 * eta_s: efficiency behind the port; runs: 1 where the load takes power.
 *
 * **Sources**
 * - IATA: Dangerous Goods Regulations, provisions for dangerous goods carried by passengers or crew, 67th, 2026,
 *   section 2.3, table 2.3.A (read 2026-11-28)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `insufficient-current`, naming the maximum power at the load
 * @example
 * ```ts
 * import { powerBank } from 'alula/pack'
 * const bank = powerBank({ ratedCapacity: '10000 mAh', bankEfficiency: 0.8, power: '10 W' })
 * bank.deliveredCharge / 3600 // => 5.92
 * bank.runtime / 3600 // => 2.96
 * ```
 */
export const powerBank: Solver<PowerBankInput, PowerBank, PowerBankRefusal, PowerBankCaution> = /* @__PURE__ */ solver<
  PowerBankInput,
  PowerBank,
  PowerBankRefusal,
  PowerBankCaution
>("powerBank", "What a power bank really gives, and whether it stays on", solve, () => ({
  input: {
    ratedCapacity: {
      kind: "charge",
      symbol: "Q",
      label: "rated capacity as printed",
      min: "1 mAh",
      max: "1000 Ah",
      typical: ["5 Ah", "30 Ah"],
    },
    cellNominalVoltage: {
      kind: "voltage",
      symbol: "V_c",
      label: "nominal cell voltage",
      min: 1,
      max: 20,
      typical: [3.6, 3.85],
      default: 3.7,
    },
    terminalVoltage: { kind: "voltage", symbol: "V_p", label: "terminal voltage", min: 1, max: 60, typical: [5, 12], default: 5 },
    bankEfficiency: {
      kind: "ratio",
      symbol: "eta_b",
      label: "efficiency of the bank",
      min: 0.1,
      max: 1,
      typical: [0.75, 0.95],
      default: 0.85,
    },
    outputCurrentLimit: {
      kind: "current",
      symbol: "I_max",
      label: "output current limit",
      min: "0.1 mA",
      max: 100,
      typical: [1, 5],
      default: 3,
    },
    loadVoltage: {
      kind: "voltage",
      symbol: "V_l",
      label: "voltage of the load behind a step-up (boost) converter",
      min: "10 mV",
      max: 100,
      typical: [12.5, 24],
      default: null,
    },
    boostEfficiency: {
      kind: "ratio",
      symbol: "eta_u",
      label: "efficiency of the boost converter",
      min: 0.1,
      max: 1,
      typical: [0.75, 0.95],
      default: 0.9,
    },
    current: { kind: "current", symbol: "I_l", label: "load current", min: 0, max: 100, typical: [0.05, 1], default: null },
    power: { kind: "power", symbol: "P_l", label: "load power", min: 0, max: 1000, typical: [0.1, 12], default: null },
    switchOffCurrent: {
      kind: "current",
      symbol: "I_off",
      label: "switch-off current",
      above: "0.1 mA",
      max: 1,
      typical: [0.02, 0.2],
      default: 0.1,
    },
  },
  output: {
    cellEnergy: { kind: "energy", symbol: "E_c", label: "energy of the cells", unit: "Wh" },
    deliveredEnergy: { kind: "energy", symbol: "E_p", label: "delivered energy at the port", unit: "Wh" },
    deliveredCharge: { kind: "charge", symbol: "Q_p", label: "delivered charge at the port's voltage", unit: "mAh" },
    loadEnergy: { kind: "energy", symbol: "E_l", label: "energy at the load", unit: "Wh" },
    loadPower: { kind: "power", symbol: "P", label: "power of the load" },
    outputCurrent: { kind: "current", symbol: "I_p", label: "output current" },
    utilisation: { kind: "ratio", symbol: "u", label: "utilisation", unit: "%" },
    runtime: { kind: "time", symbol: "t", label: "runtime" },
    staysOn: { kind: "flag", label: "stays on" },
    keepOnPower: { kind: "power", symbol: "P_k", label: "extra load needed to keep it on" },
    keptOnRuntime: { kind: "time", symbol: "t_k", label: "runtime with the extra load" },
  },
  example: { ratedCapacity: "10000 mAh", power: "6 W" },
  formulae: [
    { symbol: "E_c", meaning: "energy of the cells", is: "Q * V_c" },
    { symbol: "E_p", meaning: "energy at the port", is: "eta_b * E_c" },
    { symbol: "Q_p", meaning: "charge at the port", is: "E_p / V_p" },
    { symbol: "eta_s", kind: "ratio", meaning: "efficiency behind the port", is: "eta_u", when: "has_loadVoltage" },
    { symbol: "eta_s", kind: "ratio", meaning: "nothing behind the port", is: "1", when: "not has_loadVoltage" },
    { symbol: "P", meaning: "power of the load as given", is: "P_l", when: "has_power" },
    { symbol: "P", meaning: "power of the load", is: "I_l * V_l", when: "has_current and has_loadVoltage" },
    { symbol: "P", meaning: "power of the load", is: "I_l * V_p", when: "has_current and not has_loadVoltage" },
    { symbol: "E_l", meaning: "energy at the load", is: "E_p * eta_s" },
    { symbol: "I_p", meaning: "current at the port", is: "P / (eta_s * V_p)" },
    { symbol: "u", meaning: "of its limit", is: "I_p / I_max" },
    { symbol: "runs", kind: "number", meaning: "1 where the load takes power", given: (_, out) => (out.runtime === null ? 0 : 1) },
    { symbol: "t", meaning: "runtime", is: "E_l / P", when: "runs == 1" },
    { symbol: "P_k", meaning: "extra load needed to keep it on", is: "max(I_off - I_p, 0 A) * V_p" },
    { symbol: "t_k", meaning: "runtime with the extra load", is: "E_p / (max(I_off, I_p) * V_p)" },
  ],
  sources: [AIR_PASSENGERS],
  either: [{ exactlyOne: ["current", "power"] }],
  check,
  cautions,
}))
