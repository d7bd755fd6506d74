import { type Caution, caution, commonPractice, type Solver, solver } from "../../solver/index.js"
import { touchCautions } from "../hazards.js"
import { HOT_SURFACES, MACHINES } from "../sources.js"
import type { One, Si, StartUp, StartUpCaution, StartUpInput } from "./types.js"

export type { LimitAction, StartUp, StartUpCaution, StartUpInput } from "./types.js"

function oneOf(si: Si): One {
  const resistance = si.windingResistance + si.motors * si.sourceResistance
  return {
    resistance,
    limit: si.currentLimit === null ? Number.POSITIVE_INFINITY : si.currentLimit / si.motors,
    stall: si.sourceVoltage / resistance,
    load: si.loadTorque / si.backEmfConstant,
    tau: (si.inertia * resistance) / si.backEmfConstant ** 2,
  }
}

/** Time for the current of a free start to fall from `from` to `to`, s. */
const fall = (one: One, from: number, to: number) => one.tau * Math.log((from - one.load) / (to - one.load))

/** Current to which 95 % of the running speed corresponds, A. */
const nearRunning = (one: One) => one.load + 0.05 * (one.stall - one.load)

/** Tries of a hiccuping supply, at most 10 000; how long they take, or null where they come to nothing. */
function hiccups(si: Si, one: One): { tries: number; time: number | null } {
  const speedAt = (current: number) => ((one.stall - current) * one.resistance) / si.backEmfConstant
  let [speed, time] = [0, 0]
  for (let tries = 1; tries <= 10000; tries++) {
    const from = one.stall - (si.backEmfConstant * speed) / one.resistance
    const over = from > one.limit ? fall(one, from, one.limit) : 0
    if (over <= si.onTime) return { tries, time: time + (from > nearRunning(one) ? fall(one, from, nearRunning(one)) : 0) }
    const current = one.load + (from - one.load) * Math.exp(-si.onTime / one.tau)
    const next = Math.max(0, speedAt(current) - (si.loadTorque / si.inertia) * si.offTime)
    if (next <= speed * (1 + 1e-12)) return { tries, time: null }
    time += si.onTime + si.offTime
    speed = next
  }
  return { tries: 10000, time: null }
}

function outcomeOf(si: Si, one: One): { outcome: string; startTime: number | null; tries: number } {
  if (one.stall <= one.load) return { outcome: "stalls", startTime: null, tries: 1 }
  const free = fall(one, one.stall, nearRunning(one))
  if (one.limit >= one.stall) return { outcome: "starts", startTime: free, tries: 1 }
  if (one.limit <= one.load)
    return {
      outcome: si.limitAction === "hold" ? "stalls" : si.limitAction === "latch" ? "latches-off" : "hiccups",
      startTime: null,
      tries: 1,
    }
  if (si.limitAction === "hold") {
    // the limit drives the rotor evenly until its back-EMF takes over, or until it is fast enough
    const last = Math.max(one.limit, nearRunning(one))
    const even = (((one.stall - last) * one.resistance) / si.backEmfConstant) * (si.inertia / (si.backEmfConstant * (one.limit - one.load)))
    const rest = one.limit > nearRunning(one) ? fall(one, one.limit, nearRunning(one)) : 0
    return { outcome: "starts-limited", startTime: even + rest, tries: 1 }
  }
  const over = fall(one, one.stall, one.limit)
  if (over <= si.onTime) return { outcome: "starts", startTime: free, tries: 1 }
  if (si.limitAction === "latch") return { outcome: "latches-off", startTime: null, tries: 1 }
  const { tries, time } = hiccups(si, one)
  return { outcome: time === null ? "hiccups" : "starts-after-hiccups", startTime: time, tries }
}

/** Whether the supply is off for a while, or for good, before the motors run. */
const switchesOff = (outcome: string) => outcome === "latches-off" || outcome === "hiccups" || outcome === "starts-after-hiccups"

function solve(si: Si): StartUp {
  const one = oneOf(si)
  const { outcome, startTime, tries } = outcomeOf(si, one)
  const peak = si.limitAction === "hold" ? Math.min(one.limit, one.stall) : one.stall
  const minVoltage = switchesOff(outcome)
    ? 0
    : si.limitAction === "hold" && one.limit < one.stall
      ? peak * si.windingResistance
      : si.sourceVoltage - si.motors * si.sourceResistance * peak
  return {
    starts: startTime !== null,
    outcome,
    inrushCurrent: si.motors * one.stall,
    minVoltage,
    runningCurrent: startTime === null ? null : si.motors * one.load,
    runningSpeed: one.stall > one.load ? ((one.stall - one.load) * one.resistance) / si.backEmfConstant : null,
    timeConstant: one.tau,
    overLimitDuration: one.limit < one.stall && one.limit > one.load ? fall(one, one.stall, one.limit) : null,
    startDuration: startTime,
    tries,
    resets: si.resetVoltage === null ? null : minVoltage < si.resetVoltage,
  }
}

/** What an outcome is called in a sentence. */
const words: Readonly<Record<string, string>> = {
  stalls: "the current allowed cannot turn them",
  hiccups: "the supply switches off and on for good",
  "latches-off": "the supply switches off and stays off",
}

function cautions(si: Si, out: StartUp): Caution<StartUpCaution>[] {
  const found: Caution<StartUpCaution>[] = [...touchCautions(si.sourceVoltage)]
  if (out.runningSpeed === null)
    found.push(
      caution(
        "never-starts",
        "warning",
        "The load is more than the motors can turn even with nothing limiting: standing under current they heat quickly and can burn skin or ignite padding. Take off load, or take stronger motors or more voltage.",
        HOT_SURFACES,
      ),
    )
  else if (!out.starts)
    found.push(
      caution(
        "never-starts",
        "warning",
        "The motors never start ({why}): standing under current they heat quickly and can burn skin or ignite padding. Start them one after another, add a soft start, or take a supply of more than {inrushCurrent current}.",
        HOT_SURFACES,
        { why: words[out.outcome] ?? out.outcome, inrushCurrent: out.inrushCurrent },
      ),
    )
  if (out.resets)
    found.push(
      caution(
        "brown-out",
        "caution",
        "The supply falls to {minVoltage voltage} at the start: controllers on it reset, and may start the motors again and again. Feed them separately or hold them up with a diode and a capacitor.",
        commonPractice,
        { minVoltage: out.minVoltage },
      ),
    )
  if (out.outcome === "starts-after-hiccups")
    found.push(
      caution(
        "jerks",
        "caution",
        "The supply switches off and tries again, {tries} tries in all, before the motors run: the movement jerks, and a heavier load or cold grease stops it for good.",
        commonPractice,
        { tries: out.tries },
      ),
    )
  if (si.limitAction !== "hold" && out.overLimitDuration !== null)
    found.push(
      caution(
        "times-vary",
        "note",
        "The overload would last {overLimitDuration time} in a free start. How long a supply lets one pass is rarely on its datasheet and differs between samples: measure it, and keep a factor of two.",
        commonPractice,
        { overLimitDuration: out.overLimitDuration },
      ),
    )
  return found
}

/**
 * Whether motors ever start on a supply: inrush, sag, reset, hiccups.
 *
 * Formula: each motor sees R = R_m + n·R_s. Standing it draws I_0 = E/R; running I_1 = T/k; the current falls as I_1 +
 * (I_0 − I_1)·e^(−t/τ), τ = J·R/k², and is above the limit for τ·ln((I_0 − I_1)/(I_lim/n − I_1)). A supply that holds
 * its limit drives the rotor evenly first. One that hiccups lets the overload pass for t_on, waits t_off while the load
 * slows the rotor, and tries again. The lowest voltage is E − n·R_s·I_0, or I_lim/n·R_m where the limit is held, or 0
 * where the supply switches off. E is the supply's voltage, R_s its resistance, n the motors, R_m a winding, k back-EMF
 * per speed (V·s/rad, the same as N·m/A), J inertia, T friction and load at the shaft. The start is done at 95 % of the
 * running speed. The winding's inductance is neglected: valid where it is much faster than the rotor.
 *
 * **Inputs**
 * - `sourceVoltage`: supply voltage, open circuit [E; 10 mV to 1000 V]
 * - `sourceResistance`: supply, wires and contacts [R_s; 0 to 1000 Ω; default 0]
 * - `currentLimit`: current limit of the supply [I_lim; 0.1 mA to 1000 A; optional]
 * - `limitAction`: what it does at the limit [hold, hiccup or latch; default hold]
 * - `onTime`: overload it lets pass [t_on; 0 to 100 s; default 10 ms]
 * - `offTime`: wait before the next try [t_off; 0 to 16.6667 min; default 300 ms]
 * - `motors`: motors starting together [n; whole 1 to 100; default 1]
 * - `windingResistance`: winding resistance [R_m; 1 mΩ to 10 kΩ]
 * - `backEmfConstant`: back-EMF per angular speed [k; 1e−5 to 100 V s/rad]
 * - `inertia`: inertia at the shaft [J; 0.001 g cm² to 1000 kg m²]
 * - `loadTorque`: friction and load at the shaft [T; 0 to 1000 N m]
 * - `resetVoltage`: voltage below which a controller resets [V_r; 10 mV to 1000 V; optional]
 *
 * **Results**
 *
 * `starts`: motors start [yes or no]; `outcome`: what happens [text]; `inrushCurrent`: unlimited inrush [I_in; A];
 * `minVoltage`: lowest voltage at the motors [V_low; V]; `runningCurrent`: current once they run [I_run; A];
 * `runningSpeed`: speed once they run [w; rad/s]; `timeConstant`: time constant of the start [tau; s];
 * `overLimitDuration`: time above the limit in a free start [t_o; s]; `startDuration`: time to 95 % of the speed [t_s;
 * s]; `tries`: tries [N]; `resets`: controller resets [yes or no].
 *
 * **Symbols of the working**
 *
 * R: resistance as one motor sees it [Ω]; I_0: current of one motor, standing [A]; I_1: current of one motor for its
 * load [A]; started: 1 where they start; runs: 1 where the load is within the standing torque; I_5: current at 95 % of
 * that speed [A]; way: start: 1 free, 2 with a held limit, 3 after hiccups, 0 none; held: 1 where the supply holds its
 * limit at the start; off: 1 where the supply switches off on the way; left: 1 where the limit is met and left again;
 * I_h: current at the end of the even part [A]; t_3: tries, waits and the last start, try by try [s].
 *
 * **Sources**
 * - A. E. Fitzgerald, C. Kingsley, S. D. Umans: Electric Machinery, 6th, 2003, chapter 7: direct-current machines (not
 *   verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { startUp } from 'alula/converter'
 * const start = startUp({
 *   sourceVoltage: '12 V', sourceResistance: '0.3 ohm', currentLimit: '3 A', limitAction: 'hiccup', motors: 2,
 *   windingResistance: '2 ohm', backEmfConstant: 0.02, inertia: '40 g cm2', loadTorque: '10 mN m',
 * })
 * start.inrushCurrent // => 9.231
 * start.outcome // => 'hiccups'
 * ```
 */
export const startUp: Solver<StartUpInput, StartUp, never, StartUpCaution> = /* @__PURE__ */ solver<
  StartUpInput,
  StartUp,
  never,
  StartUpCaution
>("startUp", "Whether motors start on a supply", solve, () => ({
  input: {
    sourceVoltage: { kind: "voltage", symbol: "E", label: "supply voltage, open circuit", min: "10 mV", max: 1000, typical: [5, 24] },
    sourceResistance: {
      kind: "resistance",
      symbol: "R_s",
      label: "supply, wires and contacts",
      min: 0,
      max: 1000,
      typical: ["50 mohm", "1 ohm"],
      default: 0,
    },
    currentLimit: {
      kind: "current",
      symbol: "I_lim",
      label: "current limit of the supply",
      min: "0.1 mA",
      max: 1000,
      typical: [1, 10],
      default: null,
    },
    limitAction: {
      kind: "choice",
      label: "what it does at the limit",
      options: { hold: "holds the current", hiccup: "switches off and tries again", latch: "switches off for good" },
      default: "hold",
    },
    onTime: {
      kind: "time",
      symbol: "t_on",
      label: "overload it lets pass",
      min: 0,
      max: 100,
      typical: ["1 ms", "50 ms"],
      default: "10 ms",
    },
    offTime: {
      kind: "time",
      symbol: "t_off",
      label: "wait before the next try",
      min: 0,
      max: 1000,
      typical: ["50 ms", "2 s"],
      default: "300 ms",
    },
    motors: {
      kind: "number",
      symbol: "n",
      label: "motors starting together",
      whole: true,
      min: 1,
      max: 100,
      typical: [1, 4],
      default: 1,
    },
    windingResistance: { kind: "resistance", symbol: "R_m", label: "winding resistance", min: "1 mohm", max: 1e4, typical: [0.5, 10] },
    backEmfConstant: {
      kind: "backEmfConstant",
      symbol: "k",
      label: "back-EMF per angular speed",
      min: 1e-5,
      max: 100,
      typical: [0.005, 0.05],
    },
    inertia: { kind: "momentOfInertia", symbol: "J", label: "inertia at the shaft", min: 1e-10, max: 1000, typical: [2e-7, 5e-6] },
    loadTorque: { kind: "moment", symbol: "T", label: "friction and load at the shaft", min: 0, max: 1000, typical: [0.001, 0.05] },
    resetVoltage: {
      kind: "voltage",
      symbol: "V_r",
      label: "voltage below which a controller resets",
      min: "10 mV",
      max: 1000,
      typical: [2.7, 9],
      default: null,
    },
  },
  output: {
    starts: { kind: "flag", label: "motors start" },
    outcome: { kind: "text", label: "what happens" },
    inrushCurrent: { kind: "current", symbol: "I_in", label: "unlimited inrush" },
    minVoltage: { kind: "voltage", symbol: "V_low", label: "lowest voltage at the motors" },
    runningCurrent: { kind: "current", symbol: "I_run", label: "current once they run" },
    runningSpeed: { kind: "angularSpeed", symbol: "w", label: "speed once they run" },
    timeConstant: { kind: "time", symbol: "tau", label: "time constant of the start" },
    overLimitDuration: { kind: "time", symbol: "t_o", label: "time above the limit in a free start" },
    startDuration: { kind: "time", symbol: "t_s", label: "time to 95 % of the speed" },
    tries: { kind: "number", symbol: "N", label: "tries" },
    resets: { kind: "flag", label: "controller resets" },
  },
  example: {
    sourceVoltage: "12 V",
    sourceResistance: "0.3 ohm",
    currentLimit: "4 A",
    motors: 2,
    windingResistance: "2 ohm",
    backEmfConstant: 0.02,
    inertia: "8 g cm2",
    loadTorque: "10 mN m",
    resetVoltage: "4.5 V",
  },
  formulae: [
    { symbol: "R", kind: "resistance", meaning: "resistance as one motor sees it", is: "R_m + n * R_s" },
    { symbol: "I_0", kind: "current", meaning: "current of one motor, standing", is: "E / R" },
    { symbol: "I_1", kind: "current", meaning: "current of one motor for its load", is: "T / k" },
    { symbol: "I_in", meaning: "inrush", is: "n * I_0" },
    { symbol: "started", kind: "number", meaning: "1 where they start", given: (_, out) => (out.starts ? 1 : 0) },
    { symbol: "I_run", meaning: "running current", is: "n * I_1", when: "started == 1" },
    { symbol: "tau", meaning: "time constant", is: "J * R / k^2" },
    {
      symbol: "runs",
      kind: "number",
      meaning: "1 where the load is within the standing torque",
      given: (_, out) => (out.runningSpeed === null ? 0 : 1),
    },
    { symbol: "w", meaning: "running speed", is: "(I_0 - I_1) * R / k", when: "runs == 1" },
    { symbol: "I_5", kind: "current", meaning: "current at 95 % of that speed", is: "I_1 + 0.05 * (I_0 - I_1)" },
    {
      symbol: "way",
      kind: "number",
      meaning: "start: 1 free, 2 with a held limit, 3 after hiccups, 0 none",
      given: (_, out) => (out.outcome === "starts" ? 1 : out.outcome === "starts-limited" ? 2 : out.starts ? 3 : 0),
    },
    {
      symbol: "held",
      kind: "number",
      meaning: "1 where the supply holds its limit at the start",
      given: (si) => (si.limitAction === "hold" && oneOf(si).limit < oneOf(si).stall ? 1 : 0),
    },
    {
      symbol: "off",
      kind: "number",
      meaning: "1 where the supply switches off on the way",
      given: (_, out) => (switchesOff(out.outcome) ? 1 : 0),
    },
    { symbol: "V_low", meaning: "voltage at the motors, limit held", is: "I_lim / n * R_m", when: "held == 1 and off == 0" },
    { symbol: "V_low", meaning: "voltage at the motors", is: "E - n * R_s * I_0", when: "held == 0 and off == 0" },
    { symbol: "V_low", meaning: "nothing while the supply is off", is: "0 V", when: "off == 1" },
    {
      symbol: "left",
      kind: "number",
      meaning: "1 where the limit is met and left again",
      given: (_, out) => (out.overLimitDuration === null ? 0 : 1),
    },
    {
      symbol: "t_o",
      meaning: "time above the limit in a free start",
      is: "tau * log((I_0 - I_1) / (I_lim / n - I_1))",
      when: "left == 1",
    },
    { symbol: "t_s", meaning: "free start", is: "tau * log((I_0 - I_1) / (I_5 - I_1))", when: "way == 1" },
    { symbol: "I_h", kind: "current", meaning: "current at the end of the even part", is: "max(I_lim / n, I_5)", when: "way == 2" },
    {
      symbol: "t_s",
      meaning: "even part, then the free one",
      is: "(I_0 - I_h) * R / k * J / (k * (I_lim / n - I_1)) + tau * log((I_h - I_1) / (I_5 - I_1))",
      when: "way == 2",
    },
    { symbol: "t_3", kind: "time", meaning: "tries, waits and the last start, try by try", given: (_, out) => out.startDuration ?? 0 },
    { symbol: "t_s", meaning: "start after hiccups", is: "t_3", when: "way == 3" },
    { symbol: "N", kind: "number", meaning: "tries, try by try", given: (_, out) => out.tries },
  ],
  sources: [MACHINES],
  cautions,
}))
