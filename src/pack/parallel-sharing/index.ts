import { type Caution, caution, commonPractice, type NoSolution, refuse, type Solver, solver } from "../../solver/index.js"
import { chemistries } from "../chemistry.js"
import { chargeLimitFactor, dischargeLimitFactor, temperatureLimitSource } from "../data.js"
import { packFields, touchCautions } from "../fields.js"
import { COMMON_VOLTAGE, LITHIUM_SAFETY, PARALLEL_CELLS, TEMPERATURE_LIMITS } from "../sources.js"
import { sharingFormulae } from "./formulae.js"
import { cellsTaken, commonVoltage, ratesOf, slowestRate, spanned, total, voltagesAfter } from "./transient.js"
import type { ParallelSharing, ParallelSharingCaution, ParallelSharingInput, ParallelSharingRefusal, Si, StringState } from "./types.js"

export type { ParallelSharing, ParallelSharingInput, ParallelString, StringState } from "./types.js"

function solve(si: Si): ParallelSharing | NoSolution<ParallelSharingRefusal> {
  const conductance = si.strings.map((s) => 1 / s.resistance)
  const emf = si.strings.map((s) => s.openCircuitVoltage)
  const load = {
    current: si.loadResistance === null ? (si.current ?? 0) : 0,
    conductance: si.loadResistance === null ? 0 : 1 / si.loadResistance,
  }
  const most = total(emf.map((e, k) => e * (conductance[k] as number)))
  if (load.current >= most)
    return refuse(
      "insufficient-current",
      "Even short-circuited the strings give {shortCircuit current}; {given.current current} were asked for. Join more strings, or draw less.",
      load.current - 0.999 * most,
      { shortCircuit: most },
      { current: 0.999 * most },
      { "given.current": load.current },
    )
  const terminalVoltage = commonVoltage(emf, conductance, load.current, load.conductance)
  const currents = emf.map((e, k) => (e - terminalVoltage) * (conductance[k] as number))
  const loadCurrent = load.conductance > 0 ? terminalVoltage * load.conductance : load.current
  const later = voltagesAfter(spanned(si), load)
  const laterVoltage = commonVoltage(later, conductance, load.current, load.conductance)
  const laterLoad = load.conductance > 0 ? laterVoltage * load.conductance : load.current
  const capacities = si.strings.map((s) => s.capacity)
  const strings = si.strings.map((s, k) => ({
    current: currents[k] as number,
    laterCurrent: ((later[k] as number) - laterVoltage) * (conductance[k] as number),
    steadyCurrent: (laterLoad * s.capacity) / total(capacities),
    heat: (currents[k] as number) ** 2 * s.resistance,
  }))
  return {
    terminalVoltage,
    loadCurrent,
    resistance: 1 / total(conductance),
    maxStringCurrent: Math.max(...currents.map(Math.abs)),
    maxStringChargeCurrent: Math.max(0, ...currents.map((i) => -i)),
    heat: total(strings.map((s) => s.heat)),
    timeConstant: si.strings.length < 2 ? null : 1 / slowestRate(ratesOf(spanned(si))),
    loadCurrentAtLimit: safeCurrent(si, emf, conductance),
    strings,
    chargedCount: currents.filter((i) => i < -1e-12).length,
  }
}

/** Maximum load current with every string within its discharge limit at the first moment; null where a string has none. */
function safeCurrent(si: Si, emf: readonly number[], conductance: readonly number[]): number | null {
  if (si.strings.some((s) => s.maxCurrent === null)) return null
  const factor = dischargeLimitFactor(si.chemistry, si.cellTemperature)
  // each string allows the common voltage to fall to E − I_max·r; the highest of these voltages binds
  const least = Math.max(...si.strings.map((s) => s.openCircuitVoltage - (s.maxCurrent as number) * factor * s.resistance))
  return Math.max(0, total(emf.map((e, k) => (e - least) * (conductance[k] as number))))
}

const limitAt = (limit: number | null, factor: number) => (limit === null ? null : limit * factor)

/** The string that a current burdens most against its limit, where one is over it. */
function worst(si: Si, limitOf: (s: Si["strings"][number]) => number | null, currentOf: (k: number) => number) {
  let over: { string: number; current: number; limit: number } | null = null
  si.strings.forEach((s, k) => {
    const limit = limitOf(s)
    if (limit === null || !(currentOf(k) > limit)) return
    if (over === null || currentOf(k) * over.limit > over.current * limit) over = { string: k + 1, current: currentOf(k), limit }
  })
  return over as { string: number; current: number; limit: number } | null
}

function cautions(si: Si, out: ParallelSharing): Caution<ParallelSharingCaution>[] {
  const emf = si.strings.map((s) => s.openCircuitVoltage)
  const currentOf = (k: number) => (out.strings[k] as StringState).current
  const found: Caution<ParallelSharingCaution>[] = [...touchCautions(Math.max(...emf))]
  if (si.strings.length > 1)
    found.push(
      caution(
        "battery-fire",
        "warning",
        "Strings in parallel feed any fault in one of them with all they hold, which can set it on fire: give every string its own fuse and, if lithium, its own protection circuit, and never join them on the body.",
        LITHIUM_SAFETY,
      ),
    )
  const spread = Math.max(...emf) - Math.min(...emf)
  if (spread > 0.05)
    found.push(
      caution(
        "unequal-charge",
        "warning",
        "The strings differ by {spread voltage}, more than 50 mV: joined like this the fuller charges the emptier, with nobody watching. Bring each to the same voltage first.",
        commonPractice,
        { spread },
      ),
    )
  const discharged = worst(si, (s) => limitAt(s.maxCurrent, dischargeLimitFactor(si.chemistry, si.cellTemperature)), currentOf)
  if (discharged)
    found.push(
      caution(
        "over-current",
        "warning",
        "String {string} gives {current current} in the first moment, more than its limit of {limit current}; the pack is only as good as its hardest worked string.",
        LITHIUM_SAFETY,
        discharged,
      ),
    )
  const allowed = chargeLimitFactor(si.chemistry, si.cellTemperature)
  const charged = worst(
    si,
    (s) => limitAt(s.maxChargeCurrent, allowed),
    (k) => -currentOf(k),
  )
  const { coldestCharge, lithiumIon, rechargeable } = chemistries[si.chemistry]
  if (out.chargedCount > 0 && !rechargeable)
    found.push(
      caution(
        "not-rechargeable",
        "warning",
        "{chargedCount} of the strings are charged by the others, and alkaline cells must not be charged: they leak or burst. Do not join such strings; put fresh cells of one kind into all of them at once.",
        commonPractice,
        { chargedCount: out.chargedCount },
      ),
    )
  else if (out.chargedCount > 0 && allowed === 0) {
    const cold = coldestCharge !== null && si.cellTemperature < coldestCharge
    found.push(
      caution(
        cold ? "cold-charge" : "too-hot-to-charge",
        "warning",
        cold
          ? "At {given.cellTemperature temperature °C} such cells must not be charged, and {chargedCount} of the strings are, by the others: bring all to one voltage in the warm, then join them."
          : "At {given.cellTemperature temperature °C} the strictest makers let no cell of this kind be charged, and {chargedCount} of the strings are, by the others: bring all to one voltage before joining them.",
        lithiumIon ? temperatureLimitSource : TEMPERATURE_LIMITS,
        { "given.cellTemperature": si.cellTemperature, chargedCount: out.chargedCount },
      ),
    )
  }
  if (charged)
    found.push(
      caution(
        "over-charge",
        "warning",
        "String {string} is charged by the others with {current current} in the first moment, more than the {limit current} it may be given. Bring the strings to one voltage before joining them.",
        LITHIUM_SAFETY,
        charged,
      ),
    )
  const resistances = si.strings.map((s) => s.resistance)
  if (Math.max(...resistances) > 1.2 * Math.min(...resistances))
    found.push(
      caution(
        "unequal-resistance",
        "caution",
        "A fifth more resistance in one string cost four tenths of the cycle life in a measured pair at high rate: use equal cells, leads and contacts.",
        PARALLEL_CELLS,
      ),
    )
  if (si.voltageSpan === null && si.strings.length > 1)
    found.push(
      caution(
        "span-taken",
        "note",
        "The later shares take the rise from empty to full as {span voltage}, that of {cells} cells of this chemistry in series, half charged. Give voltageSpan where their number is another, or where the strings are nearly full or empty.",
        commonPractice,
        { span: spanned(si).voltageSpan, cells: cellsTaken(si) },
      ),
    )
  if (out.loadCurrent * si.laterTime > total(si.strings.map((s) => s.capacity)))
    found.push(
      caution(
        "beyond-empty",
        "caution",
        "Within {given.laterTime time} this load draws more than the strings hold: they are empty before, and the later currents do not come about.",
        COMMON_VOLTAGE,
        { "given.laterTime": si.laterTime },
      ),
    )
  return found
}

/**
 * How strings in parallel share a load, at first and in the long run, and who charges whom.
 *
 * Formula: at first V = (ΣE_k/r_k − I)/(Σ1/r_k + 1/R_L) and I_k = (E_k − V)/r_k (A; negative is being charged). Then
 * each voltage falls with the charge drawn, dE_k/dt = −I_k·U/Q_k, U being the rise from empty to full: differences die
 * out, the slowest with the time constant τ, and the strings end up sharing by capacity, Q_k/ΣQ. E_k, r_k, Q_k are
 * open-circuit voltage, resistance and capacity of string k, I a constant load current or R_L a load resistance. The
 * safe current is the load at which the first string reaches its own limit.
 *
 * Valid in the straight middle of the curve; iron phosphate's flat curve shares far more slowly, and its ends far faster.
 *
 * **Inputs**
 * - `strings`: strings [list of 1 to 50]
 *   - `openCircuitVoltage`: open-circuit voltage [E_k; 10 mV to 1000 V]
 *   - `resistance`: resistance [r_k; 1 mΩ to 1000 Ω]
 *   - `capacity`: capacity [Q_k; 0.1 to 1000 Ah]
 *   - `maxCurrent`: maximum discharge current [I_d; 0 to 1000 A; optional]
 *   - `maxChargeCurrent`: maximum charge current [I_c; 0 to 1000 A; optional]
 * - `current`: load current [I_l; 0 to 1000 A; optional]
 * - `loadResistance`: load resistance [R_L; 1 µΩ to 1000 kΩ; optional]
 * - `voltageSpan`: rise from empty to full [U; 1 mV to 200 V; optional]
 * - `chemistry`: cell chemistry [nmc, lfp, lco, nimh, alkaline or lead; default nmc]
 * - `cellTemperature`: cell temperature [T; −40 to 80 °C; default 25 °C]
 * - `laterTime`: time of the later state [t_a; 0 to 10 h; default 10 s]
 * - at most one of `current` and `loadResistance`
 *
 * **Results**
 *
 * `terminalVoltage`: terminal voltage at the start [V; V]; `loadCurrent`: load current [I; A]; `resistance`:
 * resistance together [R; Ω]; `maxStringCurrent`: maximum string current at the start [I_w; A];
 * `maxStringChargeCurrent`: maximum charging current of a string at the start [I_r; A]; `heat`: heat in the strings at
 * the start [P_h; W]; `timeConstant`: time constant of evening out [tau; s]; `loadCurrentAtLimit`: load at which the
 * first string is at its limit [I_s; A]; `strings`: strings [list]; `chargedCount`: strings being charged at the start
 * [N_c].
 *
 * **Symbols of the working**
 *
 * I_0: constant load current [A]; g: conductances, per ohm; I_k: current of each string [A]; several: 1 for more than
 * one string; a_1: slowest string's own rate U/(Q·r) [Hz]; g_1: its conductance, per ohm; a_n: the other strings'
 * rates [Hz]; g_n: their conductances, per ohm; apart: 1 where the two slowest rates differ; limited: 1 where every
 * string has a limit; k_d: share of the discharge limit left at this temperature; V_s: voltage at which the first
 * string is at its limit [V].
 *
 * **Sources**
 * - J. Millman (Proceedings of the IRE 28): A useful network theorem, 1940 (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `insufficient-current`
 * @example
 * ```ts
 * import { parallelSharing } from 'alula/pack'
 * const joined = parallelSharing({
 *   strings: [
 *     { openCircuitVoltage: '4.0637 V', resistance: '20 mohm', capacity: '4.2 Ah' },
 *     { openCircuitVoltage: '3.7017 V', resistance: '30 mohm', capacity: '4.2 Ah' },
 *   ],
 *   current: '10 A',
 * })
 * joined.terminalVoltage // => 3.799
 * joined.strings[0].current // => 13.24
 * joined.strings[1].current // => -3.240
 * ```
 */
export const parallelSharing: Solver<ParallelSharingInput, ParallelSharing, ParallelSharingRefusal, ParallelSharingCaution> =
  /* @__PURE__ */ solver<ParallelSharingInput, ParallelSharing, ParallelSharingRefusal, ParallelSharingCaution>(
    "parallelSharing",
    "How strings in parallel share the load",
    solve,
    () => ({
      input: {
        strings: {
          kind: "list",
          label: "strings",
          min: 1,
          max: 50,
          of: {
            kind: "group",
            label: "string",
            fields: {
              openCircuitVoltage: {
                kind: "voltage",
                symbol: "E_k",
                label: "open-circuit voltage",
                min: "10 mV",
                max: 1000,
                typical: [10, 13],
              },
              resistance: {
                kind: "resistance",
                symbol: "r_k",
                label: "resistance",
                min: "1 mohm",
                max: 1000,
                typical: ["20 mohm", "300 mohm"],
              },
              capacity: { kind: "charge", symbol: "Q_k", label: "capacity", min: "0.1 Ah", max: "1000 Ah", typical: ["1 Ah", "10 Ah"] },
              maxCurrent: {
                kind: "current",
                symbol: "I_d",
                label: "maximum discharge current",
                min: 0,
                max: 1000,
                typical: [2, 30],
                default: null,
              },
              maxChargeCurrent: {
                kind: "current",
                symbol: "I_c",
                label: "maximum charge current",
                min: 0,
                max: 1000,
                typical: [1, 6],
                default: null,
              },
            },
          },
        },
        current: { kind: "current", symbol: "I_l", label: "load current", min: 0, max: 1000, typical: [0, 20], default: null },
        loadResistance: {
          kind: "resistance",
          symbol: "R_L",
          label: "load resistance",
          min: 1e-6,
          max: 1e6,
          typical: [0.5, 50],
          default: null,
        },
        voltageSpan: {
          kind: "voltage",
          symbol: "U",
          label: "rise from empty to full",
          min: "1 mV",
          max: 200,
          typical: [0.5, 5],
          default: null,
        },
        chemistry: packFields.chemistry,
        cellTemperature: packFields.cellTemperature,
        laterTime: {
          kind: "time",
          symbol: "t_a",
          label: "time of the later state",
          min: 0,
          max: "10 h",
          typical: [0, "30 min"],
          default: "10 s",
        },
      },
      output: {
        terminalVoltage: { kind: "voltage", symbol: "V", label: "terminal voltage at the start" },
        loadCurrent: { kind: "current", symbol: "I", label: "load current" },
        resistance: { kind: "resistance", symbol: "R", label: "resistance together" },
        maxStringCurrent: { kind: "current", symbol: "I_w", label: "maximum string current at the start" },
        maxStringChargeCurrent: { kind: "current", symbol: "I_r", label: "maximum charging current of a string at the start" },
        heat: { kind: "power", symbol: "P_h", label: "heat in the strings at the start" },
        timeConstant: { kind: "time", symbol: "tau", label: "time constant of evening out" },
        loadCurrentAtLimit: { kind: "current", symbol: "I_s", label: "load at which the first string is at its limit" },
        strings: {
          kind: "list",
          label: "strings",
          of: {
            kind: "group",
            label: "string",
            fields: {
              current: { kind: "current", label: "at the start" },
              laterCurrent: { kind: "current", label: "later" },
              steadyCurrent: { kind: "current", label: "steady" },
              heat: { kind: "power", label: "heat at the start" },
            },
          },
        },
        chargedCount: { kind: "number", symbol: "N_c", label: "strings being charged at the start" },
      },
      example: {
        strings: [
          { openCircuitVoltage: "12.2 V", resistance: "0.12 ohm", capacity: "2.6 Ah", maxCurrent: "7.8 A", maxChargeCurrent: "1.3 A" },
          { openCircuitVoltage: "11.9 V", resistance: "0.15 ohm", capacity: "2.5 Ah", maxCurrent: "7.8 A", maxChargeCurrent: "1.3 A" },
        ],
        current: "6 A",
        voltageSpan: "2.7 V",
      },
      formulae: sharingFormulae,
      sources: [COMMON_VOLTAGE],
      either: [{ atMostOne: ["current", "loadResistance"] }],
      cautions,
    }),
  )
