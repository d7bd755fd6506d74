import { type Caution, caution, type Issue, inconsistent, type NoSolution, refuse, type Solver, solver } from "../../solver/index.js"
import { chemistries } from "../chemistry.js"
import { dischargeLimitFactor, temperatureLimitSource } from "../data.js"
import { discharge, emfAt, thresholdOf } from "../discharge.js"
import { ageFields, cellLimitField, packCautions, packFaults, packFields, shareCautions } from "../fields.js"
import { curveFaults, curveField } from "../open-circuit.js"
import { ALKALINE_RATES, BATTERY_MODEL, LITHIUM_SAFETY, LITHIUM_TEMPERATURE, MEASURED_RUNS, TEMPERATURE_LIMITS } from "../sources.js"
import { runtimeFormulae } from "./formulae.js"
import { LEAST_LOAD, problemOf, type RuntimeInput } from "./problem.js"
import { pulseCautions, pulseFields } from "./pulses.js"
import type { Runtime, RuntimeCaution, RuntimeRefusal, Si } from "./types.js"

export type { DischargePoint, LoadTotal, Runtime } from "./types.js"

/** Whether every load runs at the start. */
function runs(si: Si): boolean {
  const { curve, resistance, cutOff, start, loads } = problemOf(si)
  return start > 0 && loads.every((load) => emfAt(curve, start) > thresholdOf(load, resistance, cutOff).emf)
}

/** Changes of the input, each alone, with which every load runs at the start. */
function offers(si: Si): Record<string, number> {
  const offered: Record<string, number> = {}
  if (runs({ ...si, startStateOfCharge: 1 })) {
    // the smallest full hundredth of charge from which it runs
    let [low, high] = [Math.floor(100 * si.startStateOfCharge), 100]
    while (high - low > 1) {
      const mid = (low + high) >> 1
      if (runs({ ...si, startStateOfCharge: mid / 100 })) high = mid
      else low = mid
    }
    offered.startStateOfCharge = high / 100
  }
  for (let parallel = si.parallel + 1; parallel <= 200; parallel++)
    if (runs({ ...si, parallel })) {
      offered.parallel = parallel
      break
    }
  return offered
}

function solve(si: Si): Runtime | NoSolution<RuntimeRefusal> {
  const problem = problemOf(si)
  const { curve, capacity, resistance, cutOff, start, loads } = problem
  const emf = emfAt(curve, start)
  if (loads.every((load) => load.draws === "rest"))
    return refuse(
      "no-load",
      "No step of the pattern draws anything, so the pack never empties. Give at least one step a current, a power or a load resistance.",
      LEAST_LOAD,
    )
  for (const load of loads) {
    const threshold = thresholdOf(load, resistance, cutOff)
    if (emf > threshold.emf) continue
    const greatest = resistance > 0 ? (emf * emf) / (4 * resistance) : 0
    if (threshold.collapses)
      return refuse(
        "insufficient-power",
        "The pack can give less than {maxPower power} at this charge; {power power} were asked for. Take more cells in parallel, or less power.",
        load.value - 0.999 * greatest,
        { power: load.value, openCircuitVoltage: emf, maxPower: greatest },
        offers(si),
      )
    const most = resistance > 0 ? Math.max(0, (emf - cutOff) / resistance) : 0
    return refuse(
      "insufficient-voltage",
      "The load pulls the pack to its minimum voltage of {cutOffVoltage voltage} at once: it would need {needed voltage} without load and has {openCircuitVoltage voltage}. At this charge it can give less than {greatestCurrent current}. Charge it, take more cells in parallel, or draw less.",
      1.001 * threshold.emf - emf,
      { openCircuitVoltage: emf, cutOffVoltage: cutOff, needed: threshold.emf, greatestCurrent: most },
      offers(si),
    )
  }
  if (!(start > 0))
    return refuse(
      "depleted",
      "The pack starts empty. Charge it to {nearest.startStateOfCharge ratio %} or more.",
      0.01,
      {},
      { startStateOfCharge: 0.01 },
    )
  const run = discharge(problem)
  const deliveredCharge = capacity * (start - run.endStateOfCharge)
  const nominal = chemistries[si.chemistry].cellNominalVoltage * si.series
  return {
    runtime: run.time,
    rounds: run.rounds,
    deliveredEnergy: run.energy,
    heat: run.heat,
    deliveredCharge,
    endStateOfCharge: run.endStateOfCharge,
    meanCurrent: deliveredCharge / run.time,
    rmsCurrent: resistance > 1e-12 ? Math.sqrt(Math.max(0, run.heat) / (resistance * run.time)) : null,
    rateShare: problem.rateShare,
    peakCurrent: run.peakCurrent,
    startCurrent: run.startCurrent,
    endCurrent: run.endCurrent,
    endVoltage: run.endVoltage,
    endedBy: run.ends,
    simpleRuntime: (nominal * si.cellCapacity * si.parallel * start * run.time) / run.energy,
    pattern: run.shares.map((share, i) => ({ name: si.pattern[i]?.name || `step ${i + 1}`, ...share })),
    history: run.history,
    iterations: run.iterations,
    errorEstimate: run.errorEstimate,
  }
}

function check(si: Si): Issue[] {
  const faults = [...packFaults(si), ...curveFaults(si.openCircuitCurve)]
  const { cellPulseCurrent, cellMaxCurrent } = si
  if (cellPulseCurrent !== null && cellMaxCurrent !== null && cellPulseCurrent < cellMaxCurrent)
    faults.push(
      inconsistent(["cellPulseCurrent"], "{cellPulseCurrent current}", "no less than the continuous {cellMaxCurrent current}", {
        cellPulseCurrent,
        cellMaxCurrent,
      }),
    )
  return faults
}

function cautions(si: Si, out: Runtime): Caution<RuntimeCaution>[] {
  const found: Caution<RuntimeCaution>[] = packCautions(si, (si.openCircuitCurve?.at(-1)?.voltage ?? 0) * si.series)
  const { lithiumIon } = chemistries[si.chemistry]
  found.push(
    caution(
      "optimistic",
      "note",
      "One curve and one resistance promise 0.3 to 7 % more than measured discharges gave, most for iron phosphate; cells also lose capacity with age. Plan on a fifth less than {runtime time}.",
      MEASURED_RUNS,
      { runtime: out.runtime },
    ),
  )
  const limit = si.cellMaxCurrent === null ? null : si.cellMaxCurrent * dischargeLimitFactor(si.chemistry, si.cellTemperature)
  const cellCurrent = out.peakCurrent / si.parallel
  if (limit !== null && si.cellPulseCurrent !== null) found.push(...pulseCautions(si, out, limit))
  else if (limit !== null && cellCurrent > limit)
    found.push(
      caution(
        "over-current",
        "warning",
        "At its peak a cell gives {cellCurrent current}, above the {limit current} it may give at this temperature: it overheats. Use more in parallel or another cell.",
        limit === si.cellMaxCurrent ? LITHIUM_SAFETY : lithiumIon ? temperatureLimitSource : TEMPERATURE_LIMITS,
        { cellCurrent, limit },
      ),
    )
  if (out.endedBy === "collapse")
    found.push(
      caution(
        "collapse",
        "caution",
        "The voltage collapses from {endVoltage voltage} under the power load before the cells reach their minimum voltage: the load drops out suddenly, perhaps in mid move.",
        BATTERY_MODEL,
        { endVoltage: out.endVoltage },
      ),
    )
  if (si.cellTemperature < 0)
    found.push(
      caution(
        "cold",
        "caution",
        "In the cold capacity and voltage fall together; both are taken into account with makers' minimum values, and a warm start will do better.",
        LITHIUM_TEMPERATURE,
      ),
    )
  if (si.chemistry === "alkaline")
    found.push(
      caution(
        "alkaline-rate",
        "caution",
        "Alkaline cells hold half as much at 0.5 A as at 25 mA: give the capacity for your current, not the one printed.",
        ALKALINE_RATES,
      ),
    )
  found.push(...shareCautions(si.chemistry, out.rateShare))
  return found
}

/**
 * How long a pack lasts under a pattern of loads, followed to its cut-off.
 *
 * Formula: ds/dt = −I/Q with Q = n_p·Q_c·h·k_c·k_r, E = n_s·U, R = r_c·w·k_T·n_s/n_p + R_l; a current load draws I, a load
 * resistance R_L draws E/(R + R_L), a power P draws 2P/(E + √(E² − 4·R·P)). It ends when E − I·R falls to the cut-off
 * n_s·V_cut, when E² falls to 4·R·P, or when s reaches 0. U is the chemistry's open-circuit curve or the one given, in
 * straight lines, s the charge left (0 to 1), k_T and k_c the effect of the cell temperature T on resistance and
 * capacity, h and w that of age. k_r is what the rate leaves of lead and nickel: each load counts at its own rate by makers' sheets,
 * q/Σ(q_i/f_i). Within each straight piece the integral is exact, so nothing depends on a time step; a pattern of very many
 * short rounds (over 20000 pieces) is followed by its mean, with `errorEstimate` of one round.
 *
 * Valid for loads that last seconds or more, cells of one kind; what is lost at rest before (see `packStorage`) is to be taken off the charge at the start. Rests give
 * lead some of it back, which is left out. The first load
 * that cannot be carried ends it, even if a lighter one could go on.
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
 * - `pattern`: pattern of loads [list of 1 to 100]
 *   - `name`: name [text of 0 to 100 characters; default empty]
 *   - `duration`: duration [t_l; 0.01 s to 1000 d; default 1 h]
 *   - `current`: constant current [I_l; 0 to 1000 A; optional]
 *   - `power`: constant power [P_l; 0 to 100 kW; optional]
 *   - `loadResistance`: load resistance [R_L; 0.1 mΩ to 1000 kΩ; optional]
 *   - at most one of `current`, `power` and `loadResistance`
 * - `capacityShare`: capacity against the printed one [h; 5 to 120 %; default 100 %]
 * - `resistanceRatio`: resistance against new cells [w; 0.2 to 50; default 1]
 * - `cellMaxCurrent`: maximum discharge current of a cell [I_d; 0.1 mA to 1000 A; optional]
 * - `cellPulseCurrent`: pulse current of a cell [I_p; 0.1 mA to 5000 A; optional]
 * - `cellPulseDuration`: longest pulse [t_p; 1 ms to 10 min; optional]
 * - `startStateOfCharge`: state of charge at the start [s_0; 0 to 100 %; default 100 %]
 * - `openCircuitCurve`: open-circuit curve of a cell [list of 2 to 2000; optional]
 *   - `stateOfCharge`: state of charge [s_u; 0 to 1]
 *   - `voltage`: open-circuit voltage [U_u; 10 mV to 20 V]
 * - `cellPulseCurrent` and `cellPulseDuration` only together
 * - `cellPulseCurrent` only beside `cellMaxCurrent`
 *
 * **Results**
 *
 * `runtime`: runtime [t; s]; `rounds`: rounds of the pattern [N]; `deliveredEnergy`: delivered energy [W; J]; `heat`:
 * heat inside [W_h; J]; `deliveredCharge`: delivered charge [q; C]; `endStateOfCharge`: state of charge at the end
 * [s_1; as a fraction]; `meanCurrent`: mean current [I_mean; A]; `rmsCurrent`: root-mean-square current [I_rms; A];
 * `rateShare`: capacity left at these currents [k_r; as a fraction]; `peakCurrent`: peak current [I_peak; A];
 * `startCurrent`: peak current at the start [I_start; A]; `endCurrent`: current at the end [I_end; A]; `endVoltage`:
 * voltage at the end [V_end; V]; `endedBy`: ended by [text]; `simpleRuntime`: simple runtime: nominal energy over mean
 * power [t_s; s]; `pattern`: shares of the steps [list]; `history`: course [list]; `iterations`: pieces [number];
 * `errorEstimate`: error from following the mean [s].
 *
 * **Symbols of the working**
 *
 * k_c: capacity at this temperature against 20 to 25 °C; q_w: charge of each step in a round, at the largest current
 * it comes to [C]; f_w: share of the capacity left at that current; Q: capacity of the pack [C]; k_T: resistance at
 * this temperature against 25 °C; R: resistance of the pack [Ω]; W_oc: energy the cells gave up: charge times
 * open-circuit voltage, by quadrature [J]; t_q: runtime of a single load by quadrature of charge over current [s];
 * resists: 1 where the pack has a resistance; I_a: largest of the loads' currents at the starting voltage [A]; E_end:
 * open-circuit voltage at the charge left [V]; N_t: rounds that fit in the runtime; V_n: nominal voltage of a cell
 * [V].
 *
 * **Sources**
 * - M. Chen, G. A. Rincón-Mora (IEEE Trans. Energy Conversion 21(2)): Accurate Electrical Battery Model Capable of
 *   Predicting Runtime and I-V Performance, 2006
 * - Li-ion cell specification, temperature characteristics, item 9, acceptance minima
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `insufficient-power`, `insufficient-voltage`, `depleted` or `no-load`
 * @example
 * ```ts
 * import { genericCells, runtime } from 'alula/pack'
 * const { cellCapacity, cellResistance } = genericCells['18650-standard']
 * const day = runtime({
 *   series: 3, parallel: 2, cellCapacity, cellResistance,
 *   pattern: [
 *     { name: 'raise and lower', duration: '25 s', power: '45 W' },
 *     { name: 'lights', duration: '10 min', power: '6 W' },
 *   ],
 * })
 * day.runtime / 3600 // => 7.565
 * day.rounds // => 43
 * day.endedBy // => 'cut-off'
 * ```
 */
export const runtime: Solver<RuntimeInput, Runtime, RuntimeRefusal, RuntimeCaution> = /* @__PURE__ */ solver<
  RuntimeInput,
  Runtime,
  RuntimeRefusal,
  RuntimeCaution
>("runtime", "How long a pack lasts under a pattern of loads", solve, () => ({
  input: {
    ...packFields,
    pattern: {
      kind: "list",
      label: "pattern of loads",
      min: 1,
      max: 100,
      of: {
        kind: "group",
        label: "step",
        either: [{ atMostOne: ["current", "power", "loadResistance"] }],
        fields: {
          name: { kind: "text", label: "name", min: 0, max: 100, default: "" },
          duration: {
            kind: "time",
            symbol: "t_l",
            label: "duration",
            min: "0.01 s",
            max: "1000 d",
            typical: ["5 s", "30 min"],
            default: "1 h",
          },
          current: { kind: "current", symbol: "I_l", label: "constant current", min: 0, max: 1000, typical: [0.1, 5], default: null },
          power: { kind: "power", symbol: "P_l", label: "constant power", min: 0, max: "100 kW", typical: [1, 40], default: null },
          loadResistance: {
            kind: "resistance",
            symbol: "R_L",
            label: "load resistance",
            min: "0.1 mohm",
            max: 1e6,
            typical: [2, 50],
            default: null,
          },
        },
      },
    },
    ...ageFields,
    cellMaxCurrent: cellLimitField,
    ...pulseFields,
    startStateOfCharge: {
      kind: "ratio",
      symbol: "s_0",
      label: "state of charge at the start",
      min: 0,
      max: 1,
      typical: [0.5, 1],
      unit: "%",
      default: 1,
    },
    openCircuitCurve: curveField,
  },
  output: {
    runtime: { kind: "time", symbol: "t", label: "runtime" },
    rounds: { kind: "number", symbol: "N", label: "rounds of the pattern" },
    deliveredEnergy: { kind: "energy", symbol: "W", label: "delivered energy", unit: "Wh" },
    heat: { kind: "energy", symbol: "W_h", label: "heat inside", unit: "Wh" },
    deliveredCharge: { kind: "charge", symbol: "q", label: "delivered charge", unit: "Ah" },
    endStateOfCharge: { kind: "ratio", symbol: "s_1", label: "state of charge at the end", unit: "%" },
    meanCurrent: { kind: "current", symbol: "I_mean", label: "mean current" },
    rmsCurrent: { kind: "current", symbol: "I_rms", label: "root-mean-square current" },
    rateShare: { kind: "ratio", symbol: "k_r", label: "capacity left at these currents", unit: "%" },
    peakCurrent: { kind: "current", symbol: "I_peak", label: "peak current" },
    startCurrent: { kind: "current", symbol: "I_start", label: "peak current at the start" },
    endCurrent: { kind: "current", symbol: "I_end", label: "current at the end" },
    endVoltage: { kind: "voltage", symbol: "V_end", label: "voltage at the end" },
    endedBy: { kind: "text", label: "ended by" },
    simpleRuntime: { kind: "time", symbol: "t_s", label: "simple runtime: nominal energy over mean power" },
    pattern: {
      kind: "list",
      label: "shares of the steps",
      of: {
        kind: "group",
        label: "share",
        fields: {
          name: { kind: "text", label: "name" },
          duration: { kind: "time", symbol: "t_i", label: "time" },
          charge: { kind: "charge", symbol: "q_i", label: "charge" },
          energy: { kind: "energy", symbol: "W_i", label: "energy" },
        },
      },
    },
    history: {
      kind: "list",
      label: "course",
      of: {
        kind: "group",
        label: "moment",
        fields: {
          time: { kind: "time", label: "time" },
          stateOfCharge: { kind: "ratio", label: "state of charge" },
          voltage: { kind: "voltage", label: "voltage" },
          current: { kind: "current", label: "current" },
        },
      },
    },
    iterations: { kind: "number", label: "pieces" },
    errorEstimate: { kind: "time", label: "error from following the mean" },
  },
  example: {
    series: 3,
    parallel: 2,
    cellCapacity: "2.6 Ah",
    cellResistance: "80 mohm",
    pattern: [
      { name: "raise and lower", duration: "25 s", power: "45 W" },
      { name: "lights", duration: "10 min", power: "6 W" },
    ],
  },
  formulae: runtimeFormulae,
  sources: [BATTERY_MODEL, LITHIUM_TEMPERATURE],
  either: [{ together: ["cellPulseCurrent", "cellPulseDuration"] }, { given: "cellPulseCurrent", needs: ["cellMaxCurrent"] }],
  check,
  cautions,
}))
