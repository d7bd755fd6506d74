import type { Ratio, Temperature, Time } from "../quantity/index.js"
import { at, type Caution, caution, commonPractice, type Issue, inconsistent, type SiOf, type Solver, solver } from "../solver/index.js"
import { HUGHES, IEC_60034, ISO_13732 } from "./sources.js"

/** Input of {@link dutyCycle}: the duty the maker allows, and the one you mean to ask. */
export interface DutyCycleInput {
  /** Share of the time the maker allows it to run, such as 10 %. [D; 0.1 to 100 %] */
  ratedDuty: Ratio
  /** Longest single run of the rated duty. [t_r; 1 s to 10 h] */
  ratedRunDuration: Time
  /** Thermal time constant of the motor while it runs. [tau; 10 s to 100 h; default 15 min] */
  timeConstant?: Time
  /** Thermal time constant at rest, where cooling differs; the same where left out. [tau_0; 10 s to 100 h; optional] */
  restTimeConstant?: Time | null
  /** Time of one run (a raise, or a raise and lowering). [t_1; 0.1 s to 10 h] */
  runDuration: Time
  /** Rest between runs [t_2; 0 to 100 h] */
  restDuration: Time
  /** Current of these runs against the rated current; heat goes with its square. [i; 0.01 to 5; default 1] */
  currentUtilisation?: Ratio
  /** Temperature limit [T_lim; 0 to 250 °C; default 80 °C] */
  temperatureLimit?: Temperature
  /** Surrounding temperature of the rating. [T_a0; −40 to 100 °C; default 25 °C] */
  ratedAmbientTemperature?: Temperature
  /** Surrounding temperature in use: inside a costume it is warmer than the weather. [T_a; −40 to 100 °C; default 25 °C] */
  ambientTemperature?: Temperature
}

/** Result of {@link dutyCycle}. */
export interface DutyCycle {
  /** Share of the time it runs. [d; as a fraction] */
  readonly duty: number
  /** Rise above the surroundings in the long run if it never rested at rated current. [Theta_c; K] */
  readonly ratedContinuousRise: number
  /** The same at this current. [Theta; K] */
  readonly continuousRise: number
  /** Rise allowed in these surroundings. [Theta_a; K] */
  readonly allowedRise: number
  /** Temperature at the end of the runs in the long run. [T_p; °C] */
  readonly peakTemperature: number
  /** Temperature after the first run from cold. [T_f; °C] */
  readonly firstRunTemperature: number
  /** Whether the pattern stays below the limit however long it goes on, no run longer than the maker states. [yes or no] */
  readonly sustained: boolean
  /** Runs in a row, from cold, before it must rest; null where there is no limit. [n] */
  readonly runsBeforeRest: number | null
  /** Longest single run from cold: never more than the maker states. [t_m; s] */
  readonly maxRunDuration: number
  /**
   * Rest after which one more run just ends at the limit, and so the minimum rest with which the runs stay below the
   * limit; null where a run from cold is too long already. [t_w; s]
   */
  readonly requiredRestDuration: number | null
}

/** Hazards and limits of validity that go with an answer of {@link dutyCycle}. */
export type DutyCycleCaution = "burns" | "far-over-rated" | "longer-run" | "must-rest" | "overheats-at-once" | "time-constant"

type Si = SiOf<DutyCycleInput>

function solve(si: Si): DutyCycle {
  const { ratedDuty, ratedRunDuration, timeConstant, runDuration, restDuration } = si
  const restTimeConstant = si.restTimeConstant ?? timeConstant
  // decay over the rated and the wanted run and rest
  const ratedRest = ratedRunDuration * (1 / ratedDuty - 1)
  const warmed = -Math.expm1(-ratedRunDuration / timeConstant)
  const ratedBoth = -Math.expm1(-ratedRunDuration / timeConstant - ratedRest / restTimeConstant)
  const limitRise = si.temperatureLimit - si.ratedAmbientTemperature
  const ratedContinuousRise = (limitRise * ratedBoth) / warmed
  const continuousRise = ratedContinuousRise * si.currentUtilisation ** 2
  const allowedRise = si.temperatureLimit - si.ambientTemperature
  const gained = -Math.expm1(-runDuration / timeConstant) * continuousRise
  const both = -Math.expm1(-runDuration / timeConstant - restDuration / restTimeConstant)
  const peak = gained / both
  const cool = peak <= allowedRise * (1 + 1e-12)
  // a winding heats faster than the whole motor, so that the maker's longest run stands whatever this model says
  const beyondStated = runDuration > ratedRunDuration
  // after n runs the rise is peak·(1 − q^n), q the decay over run and rest
  const exact = Math.log1p(-allowedRise / peak) / (-runDuration / timeConstant - restDuration / restTimeConstant)
  const tooLong = beyondStated || gained > allowedRise * (1 + 1e-12)
  const thermal = continuousRise > allowedRise ? -timeConstant * Math.log1p(-allowedRise / continuousRise) : ratedRunDuration
  // before a run the rise may be at most this, so that its end is just at the limit
  const before = (allowedRise - gained) * Math.exp(runDuration / timeConstant)
  const needed = before > 1e-12 * allowedRise ? Math.max(0, restTimeConstant * Math.log(allowedRise / before)) : null
  return {
    duty: runDuration / (runDuration + restDuration),
    ratedContinuousRise,
    continuousRise,
    allowedRise,
    peakTemperature: si.ambientTemperature + peak,
    firstRunTemperature: si.ambientTemperature + gained,
    sustained: cool && !beyondStated,
    runsBeforeRest: beyondStated ? 0 : cool ? null : Math.floor(exact + 1e-9),
    maxRunDuration: Math.min(thermal, ratedRunDuration),
    requiredRestDuration: tooLong ? null : needed,
  }
}

function check(si: Si): Issue[] {
  const { temperatureLimit, ratedAmbientTemperature, ambientTemperature } = si
  const faults: Issue[] = []
  if (!(temperatureLimit > ratedAmbientTemperature + 1))
    faults.push(
      inconsistent(
        ["temperatureLimit"],
        "{temperatureLimit temperature}",
        "above the rated ambient temperature of {ratedAmbientTemperature temperature}",
        {
          temperatureLimit,
          ratedAmbientTemperature,
        },
      ),
    )
  if (!(temperatureLimit > ambientTemperature + 1))
    faults.push(
      inconsistent(["ambientTemperature"], "{ambientTemperature temperature}", "below the limit of {temperatureLimit temperature}", {
        ambientTemperature,
        temperatureLimit,
      }),
    )
  return faults
}

/** Bare metal touched for a minute burns from about here, °C. */
const BURNS = 51

function cautions(si: Si, out: DutyCycle): Caution<DutyCycleCaution>[] {
  const found: Caution<DutyCycleCaution>[] = [
    caution(
      "time-constant",
      "note",
      "The thermal time constant is seldom printed: measure it with a contact thermometer, as the time in which the hot motor loses 63 % of its rise. Small gear motors lie between 5 and 30 minutes.",
    ),
  ]
  if (out.peakTemperature > BURNS)
    found.push(
      caution(
        "burns",
        "caution",
        "It reaches {peakTemperature temperature}: bare metal burns skin from about 51 °C held for a minute, and sooner when hotter. Cover or space it away from skin, and let children nowhere near.",
        ISO_13732,
        { peakTemperature: out.peakTemperature },
      ),
    )
  if (out.firstRunTemperature > si.temperatureLimit + 1e-9)
    found.push(
      caution(
        "overheats-at-once",
        "warning",
        "The first run already ends at {firstRunTemperature temperature}, above the limit of {given.temperatureLimit temperature}: run at most {maxRunDuration time}, or lower the current. A hot actuator can burn skin or stop with a part raised.",
        at(IEC_60034, "clause 4.2 (intermittent periodic duty)"),
        { firstRunTemperature: out.firstRunTemperature, "given.temperatureLimit": si.temperatureLimit, maxRunDuration: out.maxRunDuration },
      ),
    )
  else if (out.runsBeforeRest !== null && out.runsBeforeRest > 0)
    found.push(
      caution(
        "must-rest",
        "warning",
        "Going on like this it overheats after {runsBeforeRest} runs. A hot actuator can burn skin, melt its glue or stop with a part raised: plan the rests, and a way down without power.",
        at(IEC_60034, "clause 4.2 (intermittent periodic duty)"),
        { runsBeforeRest: out.runsBeforeRest },
      ),
    )
  if (si.runDuration > si.ratedRunDuration)
    found.push(
      caution(
        "longer-run",
        "warning",
        "One run of {given.runDuration time} is longer than the {given.ratedRunDuration time} that the maker allows: brushes and winding heat faster than the case, which one time constant does not see. Keep to the maker's longest run.",
        at(IEC_60034, "clause 4.2 (duty types)"),
        { "given.runDuration": si.runDuration, "given.ratedRunDuration": si.ratedRunDuration },
      ),
    )
  if (si.currentUtilisation > 1.5)
    found.push(
      caution(
        "far-over-rated",
        "warning",
        "{given.currentUtilisation} times the rated current: above one and a half times, the winding heats faster than this model of the whole motor tells. Lower the current.",
        commonPractice,
        { "given.currentUtilisation": si.currentUtilisation },
      ),
    )
  return found
}

/**
 * How many runs a motor or actuator stands before it must rest, from its rated duty and a time constant.
 *
 * Formula: with running and resting time constants τ and τ_r, the rated duty D at runs of t_r is taken to end its runs
 * just at the limit: Θ_c·(1 − e^(−t_r/τ))/(1 − e^(−t_r/τ − t_0/τ_r)) = T_lim − T_a0, t_0 = t_r·(1/D − 1). At a share i
 * of the rated current the long-run rise is Θ = Θ_c·i². Runs of t_1 with rests of t_2 end, after n of them from cold,
 * at Θ·(1 − e^(−t_1/τ))·(1 − q^n)/(1 − q), q = e^(−t_1/τ − t_2/τ_r). Runs before rest: the largest n with that within
 * T_lim − T_a; none where a run is longer than t_r. The longest run is that which just ends at the limit from cold, and
 * never longer than t_r. T_lim is the temperature it may reach, T_a0 the rating's surroundings, T_a those in use.
 *
 * Valid for one lumped heat capacity; a rating of, say, "10 %, at most 2 min" is D = 0.1, t_r = 2 min. The time
 * constant's default is common practice, no source.
 *
 * **Inputs**
 * - `ratedDuty`: rated duty [D; 0.1 to 100 %]
 * - `ratedRunDuration`: longest run of the rated duty [t_r; 1 s to 10 h]
 * - `timeConstant`: thermal time constant [tau; 10 s to 100 h; default 15 min]
 * - `restTimeConstant`: time constant at rest [tau_0; 10 s to 100 h; optional]
 * - `runDuration`: one run [t_1; 0.1 s to 10 h]
 * - `restDuration`: rest between runs [t_2; 0 to 100 h]
 * - `currentUtilisation`: current against rated [i; 0.01 to 5; default 1]
 * - `temperatureLimit`: temperature limit [T_lim; 0 to 250 °C; default 80 °C]
 * - `ratedAmbientTemperature`: surroundings of the rating [T_a0; −40 to 100 °C; default 25 °C]
 * - `ambientTemperature`: surroundings in use [T_a; −40 to 100 °C; default 25 °C]
 *
 * **Results**
 *
 * `duty`: share of time running [d; as a fraction]; `ratedContinuousRise`: rise without rest, rated current [Theta_c;
 * K]; `continuousRise`: rise without rest, this current [Theta; K]; `allowedRise`: rise allowed [Theta_a; K];
 * `peakTemperature`: peak temperature in the long run [T_p; °C]; `firstRunTemperature`: after the first run [T_f; °C];
 * `sustained`: stays below the limit in this model [yes or no]; `runsBeforeRest`: runs before it must rest [n];
 * `maxRunDuration`: longest single run from cold [t_m; s]; `requiredRestDuration`: rest it needs between runs [t_w;
 * s].
 *
 * **Symbols of the working**
 *
 * tau_r: time constant at rest [s]; Theta_1: rise of the first run [K]; Theta_p: peak rise in the long run [K]; tires:
 * 1 where it must rest; fits: 1 where a run from cold fits; Theta_b: rise at which a run may start [K].
 *
 * **Sources**
 * - IEC: IEC 60034-1, Rotating electrical machines: rating and performance, 2022, clause 4.2 (not verified against the
 *   document)
 * - A. Hughes, B. Drury: Electric Motors and Drives, 5th, 2019, motor and drive selection (not verified against the
 *   document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { dutyCycle } from 'alula/drive'
 * const show = dutyCycle({ ratedDuty: 0.1, ratedRunDuration: '2 min', runDuration: '30 s', restDuration: '60 s', timeConstant: '10 min' })
 * show.sustained // => false
 * show.runsBeforeRest // => 6
 * show.requiredRestDuration // => 128.9
 * ```
 */
export const dutyCycle: Solver<DutyCycleInput, DutyCycle, never, DutyCycleCaution> = /* @__PURE__ */ solver<
  DutyCycleInput,
  DutyCycle,
  never,
  DutyCycleCaution
>("dutyCycle", "How many runs before a motor must rest", solve, () => ({
  input: {
    ratedDuty: { kind: "ratio", symbol: "D", label: "rated duty", min: 0.001, max: 1, typical: [0.05, 0.5], unit: "%" },
    ratedRunDuration: {
      kind: "time",
      symbol: "t_r",
      label: "longest run of the rated duty",
      min: "1 s",
      max: "10 h",
      typical: ["30 s", "5 min"],
    },
    timeConstant: {
      kind: "time",
      symbol: "tau",
      label: "thermal time constant",
      min: "10 s",
      max: "100 h",
      typical: ["5 min", "30 min"],
      default: "15 min",
    },
    restTimeConstant: {
      kind: "time",
      symbol: "tau_0",
      label: "time constant at rest",
      min: "10 s",
      max: "100 h",
      typical: ["5 min", "60 min"],
      default: null,
    },
    runDuration: { kind: "time", symbol: "t_1", label: "one run", min: "0.1 s", max: "10 h", typical: ["5 s", "2 min"] },
    restDuration: { kind: "time", symbol: "t_2", label: "rest between runs", min: 0, max: "100 h", typical: ["5 s", "10 min"] },
    currentUtilisation: {
      kind: "ratio",
      symbol: "i",
      label: "current against rated",
      min: 0.01,
      max: 5,
      typical: [0.4, 1.3],
      default: 1,
    },
    temperatureLimit: {
      kind: "temperature",
      symbol: "T_lim",
      label: "temperature limit",
      min: 0,
      max: 250,
      typical: [60, 120],
      default: 80,
    },
    ratedAmbientTemperature: {
      kind: "temperature",
      symbol: "T_a0",
      label: "surroundings of the rating",
      min: -40,
      max: 100,
      typical: [20, 40],
      default: 25,
    },
    ambientTemperature: {
      kind: "temperature",
      symbol: "T_a",
      label: "surroundings in use",
      min: -40,
      max: 100,
      typical: [0, 45],
      default: 25,
    },
  },
  output: {
    duty: { kind: "ratio", symbol: "d", label: "share of time running", unit: "%" },
    ratedContinuousRise: { kind: "temperatureDifference", symbol: "Theta_c", label: "rise without rest, rated current" },
    continuousRise: { kind: "temperatureDifference", symbol: "Theta", label: "rise without rest, this current" },
    allowedRise: { kind: "temperatureDifference", symbol: "Theta_a", label: "rise allowed" },
    peakTemperature: { kind: "temperature", symbol: "T_p", label: "peak temperature in the long run" },
    firstRunTemperature: { kind: "temperature", symbol: "T_f", label: "after the first run" },
    sustained: { kind: "flag", label: "stays below the limit in this model" },
    runsBeforeRest: { kind: "number", symbol: "n", label: "runs before it must rest" },
    maxRunDuration: { kind: "time", symbol: "t_m", label: "longest single run from cold" },
    requiredRestDuration: { kind: "time", symbol: "t_w", label: "rest it needs between runs" },
  },
  example: { ratedDuty: 0.1, ratedRunDuration: "2 min", runDuration: "30 s", restDuration: "60 s", timeConstant: "10 min" },
  formulae: [
    { symbol: "tau_r", kind: "time", meaning: "time constant at rest", is: "tau_0", when: "has_restTimeConstant" },
    { symbol: "tau_r", kind: "time", meaning: "time constant at rest, the same", is: "tau", when: "not has_restTimeConstant" },
    { symbol: "d", meaning: "share of time running", is: "t_1 / (t_1 + t_2)" },
    {
      symbol: "Theta_c",
      meaning: "rise without rest that makes the rated duty end at the limit",
      is: "(T_lim - T_a0) * expm1(-t_r / tau - t_r * (1 / D - 1) / tau_r) / expm1(-t_r / tau)",
      source: at(IEC_60034, "clause 4.2, duty type S3"),
    },
    { symbol: "Theta", meaning: "rise without rest, this current", is: "Theta_c * i^2" },
    { symbol: "Theta_a", meaning: "rise allowed", is: "T_lim - T_a" },
    { symbol: "Theta_1", kind: "temperatureDifference", meaning: "rise of the first run", is: "-Theta * expm1(-t_1 / tau)" },
    { symbol: "T_f", meaning: "temperature after the first run", is: "T_a + Theta_1" },
    {
      symbol: "Theta_p",
      kind: "temperatureDifference",
      meaning: "peak rise in the long run",
      is: "-Theta_1 / expm1(-t_1 / tau - t_2 / tau_r)",
    },
    { symbol: "T_p", meaning: "peak temperature in the long run", is: "T_a + Theta_p" },
    {
      symbol: "tires",
      kind: "number",
      meaning: "1 where it must rest",
      given: (si, out) => (out.sustained || si.runDuration > si.ratedRunDuration ? 0 : 1),
    },
    {
      symbol: "n",
      meaning: "largest number of runs within the limit",
      is: "floor(log(1 - Theta_a / Theta_p) / (-t_1 / tau - t_2 / tau_r) + 1e-9)",
      when: "tires == 1",
    },
    { symbol: "n", meaning: "none: one run is longer than the maker states", is: "0", when: "t_1 > t_r" },
    { symbol: "t_m", meaning: "longest single run, as the maker states", is: "t_r" },
    {
      symbol: "t_m",
      meaning: "longest single run from cold, at most that",
      is: "min(t_r, -tau * log1p(-Theta_a / Theta))",
      when: "Theta > Theta_a",
    },
    {
      symbol: "fits",
      kind: "number",
      meaning: "1 where a run from cold fits",
      given: (_, out) => (out.requiredRestDuration === null ? 0 : 1),
    },
    {
      symbol: "Theta_b",
      kind: "temperatureDifference",
      meaning: "rise at which a run may start",
      is: "(Theta_a - Theta_1) * exp(t_1 / tau)",
    },
    {
      symbol: "t_w",
      meaning: "rest from the limit down to that: with it the runs can go on",
      is: "max(tau_r * log(Theta_a / Theta_b), 0 s)",
      when: "fits == 1",
    },
  ],
  sources: [at(IEC_60034, "clause 4.2"), at(HUGHES, "motor and drive selection")],
  check,
  cautions,
}))
