import {
  type Caution,
  caution,
  type Issue,
  inconsistent,
  type NoSolution,
  refuse,
  type SiOf,
  type Solver,
  solver,
} from "../solver/index.js"
import { chemistries } from "./chemistry.js"
import { dischargeLimitFactor, lithiumSources, temperatureLimitSource } from "./data.js"
import { discharge, emfAt, thresholdOf } from "./discharge.js"
import { cellLimitField, packCautions, packFaults, packFields } from "./fields.js"
import { curveFaults, curveField } from "./open-circuit.js"
import { runtimeFormulae } from "./runtime-formulae.js"
import { problemOf, type RuntimeInput } from "./runtime-problem.js"

/** What one step of the pattern took, all rounds together. */
export interface LoadTotal {
  /** Name. */
  readonly name: string
  /** Time, s. */
  readonly time: number
  /** Charge, C. */
  readonly charge: number
  /** Energy at the pack's terminals, J. */
  readonly energy: number
}

/** A moment of the discharge. */
export interface DischargePoint {
  /** Time. */
  readonly time: number
  /** Charge left. */
  readonly stateOfCharge: number
  /** Voltage. */
  readonly voltage: number
  /** Current. */
  readonly current: number
}

/** Result of {@link runtime}. */
export interface Runtime {
  /** Time until cut off, s. */
  readonly runtime: number
  /** Rounds of the pattern until then (whole ones, where it has more than one step). */
  readonly rounds: number
  /** Energy given at the terminals, J. */
  readonly energy: number
  /** Heat inside the pack, J. */
  readonly heat: number
  /** Charge given, C. */
  readonly charge: number
  /** Charge left at the end, 0 to 1. */
  readonly endCharge: number
  /** Mean current, A. */
  readonly meanCurrent: number
  /** Root-mean-square current, which heats wires and cells, A; null for a pack without resistance. */
  readonly rmsCurrent: number | null
  /** Greatest current, A. */
  readonly peakCurrent: number
  /** Greatest current of the pattern at the start, A. */
  readonly startCurrent: number
  /** Current at the end, A. */
  readonly endCurrent: number
  /** Voltage at the end under the load that ended it, V: below the least voltage where a heavier load was just due. */
  readonly endVoltage: number
  /** What ends it: `cut-off` (least voltage), `collapse` (more power than it can give) or `empty`. */
  readonly ends: string
  /** What nominal watt-hours over the mean power would have promised, s. */
  readonly simpleEstimate: number
  /** Each step's share. */
  readonly loads: readonly LoadTotal[]
  /** The course of it, at most 65 points. */
  readonly history: readonly DischargePoint[]
  /** Pieces of the reckoning. */
  readonly iterations: number
  /** Greatest error of the runtime from following the pattern's mean, s; 0 where every round was followed. */
  readonly errorEstimate: number
}

type Si = SiOf<RuntimeInput>

function solve(si: Si): Runtime | NoSolution {
  const problem = problemOf(si)
  const { curve, capacity, resistance, cutOff, start, loads } = problem
  const emf = emfAt(curve, start)
  if (loads.every((load) => load.draws === "rest"))
    return refuse("no-load", "No step of the pattern draws anything, so the pack never empties.", 0, { startCharge: start })
  for (const load of loads) {
    const threshold = thresholdOf(load, resistance, cutOff)
    if (emf > threshold.emf) continue
    const greatest = resistance > 0 ? (emf * emf) / (4 * resistance) : 0
    if (threshold.collapses)
      return refuse(
        "too-much-power",
        `The pack can give at most ${greatest.toPrecision(4)} W at this charge; ${load.value.toPrecision(4)} W were asked for.`,
        load.value - greatest,
        { power: load.value, openCircuitVoltage: emf },
        { power: greatest * 0.999 },
      )
    const most = resistance > 0 ? Math.max(0, (emf - cutOff) / resistance) : 0
    return refuse(
      "cut-off-at-start",
      `The load pulls the pack to its least voltage of ${cutOff.toPrecision(4)} V at once: it would need ${threshold.emf.toPrecision(4)} V without load and has ${emf.toPrecision(4)} V. At this charge it can give at most ${most.toPrecision(4)} A.`,
      threshold.emf - emf,
      { openCircuitVoltage: emf, cutOffVoltage: cutOff },
      { current: most * 0.999, power: most * cutOff * 0.999 },
    )
  }
  if (!(start > 0)) return refuse("empty", "The pack starts empty.", 0, { startCharge: start })
  const run = discharge(problem)
  const charge = capacity * (start - run.endStateOfCharge)
  const nominal = chemistries[si.chemistry].nominalVoltage * si.series
  return {
    runtime: run.time,
    rounds: run.rounds,
    energy: run.energy,
    heat: run.heat,
    charge,
    endCharge: run.endStateOfCharge,
    meanCurrent: charge / run.time,
    rmsCurrent: resistance > 1e-12 ? Math.sqrt(Math.max(0, run.heat) / (resistance * run.time)) : null,
    peakCurrent: run.peakCurrent,
    startCurrent: run.startCurrent,
    endCurrent: run.endCurrent,
    endVoltage: run.endVoltage,
    ends: run.ends,
    simpleEstimate: (nominal * si.capacity * si.parallel * start * run.time) / run.energy,
    loads: run.shares.map((share, i) => ({ name: si.pattern[i]?.name || `step ${i + 1}`, ...share })),
    history: run.history,
    iterations: run.iterations,
    errorEstimate: run.errorEstimate,
  }
}

function check(si: Si): Issue[] {
  const faults = [...packFaults(si), ...curveFaults(si.curve)]
  si.pattern.forEach((step, i) => {
    const given = [step.current, step.power, step.loadResistance].filter((load) => load !== null).length
    if (given > 1) faults.push(inconsistent(["pattern", i], `${given} loads`, "at most one of current, power and loadResistance"))
  })
  return faults
}

function cautions(si: Si, out: Runtime): Caution[] {
  const found = packCautions(si)
  found.push(
    caution(
      "optimistic",
      "note",
      "One curve and one resistance promise 0.3 to 7 % more than measured discharges gave, most for iron phosphate; cells also lose capacity with age. Plan on a fifth less.",
      "NMC111 and LFP cell parameterisations for Battery Parameter eXchange, validation data, 2022; the fifth is common practice, no source",
    ),
  )
  const limit = si.maxCurrent === null ? null : si.maxCurrent * dischargeLimitFactor(si.chemistry, si.temperature)
  if (limit !== null && out.peakCurrent / si.parallel > limit)
    found.push(
      caution(
        "over-cell-current",
        "warning",
        `At its peak a cell gives ${(out.peakCurrent / si.parallel).toPrecision(3)} A, above the ${limit.toPrecision(3)} A it may give at this temperature: it overheats. Use more in parallel or another cell.`,
        limit < (si.maxCurrent as number) ? temperatureLimitSource.title : lithiumSources.cells,
      ),
    )
  if (out.ends === "collapse")
    found.push(
      caution(
        "collapse",
        "caution",
        "The voltage collapses under the power load before the cells reach their least voltage: the load drops out suddenly, perhaps in mid move.",
      ),
    )
  if (si.temperature < 0)
    found.push(
      caution(
        "cold",
        "caution",
        "In the cold capacity and voltage fall together; both are taken into account with makers' least values, and a warm start will do better.",
        "Li-ion cell specifications, temperature characteristics (acceptance minima)",
      ),
    )
  if (si.chemistry === "alkaline")
    found.push(
      caution(
        "alkaline-rate",
        "caution",
        "Alkaline cells hold half as much at 0.5 A as at 25 mA: give the capacity for your current, not the one printed.",
        "Comparison of AA battery chemistries, alkaline section",
      ),
    )
  return found
}

/**
 * How long a pack lasts under a pattern of loads, followed to its cut-off.
 *
 * Formula: ds/dt = −I/Q with Q = n_p·Q_c·k_c, E = n_s·U(s), R = r_c·k_T·n_s/n_p + R_l; a current load draws
 * I, a load resistance R_L draws E/(R + R_L), a power P draws 2P/(E + √(E² − 4·R·P)). It ends when E − I·R
 * falls to the cut-off n_s·V_cut (V), when E² falls to 4·R·P, or when s reaches 0. U is the chemistry's
 * open-circuit curve or the one given, in straight lines, s the charge left (0 to 1), k_T and k_c the
 * effect of the cell temperature T (°C, default 25) on resistance and capacity. Within each straight piece
 * the integral is exact, so nothing depends on a time step; a pattern of very many short rounds (over
 * 20000 pieces) is followed by its mean, with `errorEstimate` of one round.
 *
 * Valid for loads that last seconds or more, cells of one kind and no self-discharge. The first load
 * that cannot be carried ends it, even if a lighter one could go on.
 *
 * Sources: M. Chen and G. A. Rincón-Mora, IEEE Trans. Energy Conversion 21(2), 2006 (source, resistance and
 * runtime); curves as named in `chemistries`.
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `too-much-power`, `cut-off-at-start`, `empty` or `no-load`
 * @example
 * ```ts
 * import { genericCells, runtime } from 'alula/pack'
 * const { capacity, resistance } = genericCells['18650-standard']
 * const day = runtime({
 *   series: 3, parallel: 2, capacity, resistance,
 *   pattern: [
 *     { name: 'raise and lower', duration: '25 s', power: '45 W' },
 *     { name: 'lights', duration: '10 min', power: '6 W' },
 *   ],
 * })
 * day.runtime / 3600 // => 7.469
 * day.rounds // => 43
 * day.ends // => 'cut-off'
 * ```
 */
export const runtime: Solver<RuntimeInput, Runtime> = /* @__PURE__ */ solver<RuntimeInput, Runtime>({
  name: "runtime",
  title: "How long a pack lasts under a pattern of loads",
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
        fields: {
          name: { kind: "text", label: "name", default: "" },
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
    maxCurrent: cellLimitField,
    startCharge: { kind: "ratio", symbol: "s_0", label: "charge at the start", min: 0, max: 1, typical: [0.5, 1], unit: "%", default: 1 },
    curve: curveField,
  },
  output: {
    runtime: { kind: "time", symbol: "t", label: "runtime" },
    rounds: { kind: "number", symbol: "N", label: "rounds of the pattern" },
    energy: { kind: "energy", symbol: "W", label: "energy given", unit: "Wh" },
    heat: { kind: "energy", symbol: "W_h", label: "heat inside", unit: "Wh" },
    charge: { kind: "charge", symbol: "q", label: "charge given", unit: "Ah" },
    endCharge: { kind: "ratio", symbol: "s_1", label: "charge left at the end", unit: "%" },
    meanCurrent: { kind: "current", symbol: "I_mean", label: "mean current" },
    rmsCurrent: { kind: "current", symbol: "I_rms", label: "root-mean-square current" },
    peakCurrent: { kind: "current", symbol: "I_peak", label: "greatest current" },
    startCurrent: { kind: "current", symbol: "I_start", label: "greatest current at the start" },
    endCurrent: { kind: "current", symbol: "I_end", label: "current at the end" },
    endVoltage: { kind: "voltage", symbol: "V_end", label: "voltage at the end" },
    ends: { kind: "text", label: "ends by" },
    simpleEstimate: { kind: "time", symbol: "t_s", label: "nominal energy over mean power" },
    loads: {
      kind: "list",
      label: "shares of the steps",
      of: {
        kind: "group",
        label: "share",
        fields: {
          name: { kind: "text", label: "name" },
          time: { kind: "time", symbol: "t_i", label: "time" },
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
          stateOfCharge: { kind: "ratio", label: "charge left" },
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
    capacity: "2.6 Ah",
    resistance: "80 mohm",
    pattern: [
      { name: "raise and lower", duration: "25 s", power: "45 W" },
      { name: "lights", duration: "10 min", power: "6 W" },
    ],
  },
  formulae: runtimeFormulae,
  sources: [
    {
      title: "Accurate Electrical Battery Model Capable of Predicting Runtime and I-V Performance",
      by: "M. Chen, G. A. Rincón-Mora (IEEE Trans. Energy Conversion 21(2))",
      edition: "2006",
    },
    { title: "Li-ion cell specification, temperature characteristics", where: "item 9" },
  ],
  check,
  solve,
  cautions,
})
