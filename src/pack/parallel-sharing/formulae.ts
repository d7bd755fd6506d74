import type { SiOf, Step } from "../../solver/index.js"
import { dischargeLimitFactor, temperatureLimitSource } from "../data.js"
import { COMMON_VOLTAGE } from "../sources.js"
import { ratesApart, ratesOf, spanned } from "./transient.js"
import type { ParallelSharing, ParallelSharingInput } from "./types.js"

/** Steps of {@link parallelSharing}. */
export const sharingFormulae: readonly Step<SiOf<ParallelSharingInput>, ParallelSharing>[] = [
  {
    symbol: "I_0",
    kind: "current",
    meaning: "constant load current",
    given: (si) => (si.loadResistance === null ? (si.current ?? 0) : 0),
  },
  { symbol: "g", kind: "number", meaning: "conductances, per ohm", is: "map(r_k, f(x) = 1 ohm / x)" },
  { symbol: "R", meaning: "resistance together", is: "1 ohm / sum(g)" },
  {
    symbol: "V",
    meaning: "common voltage, load current",
    is: "(sum(g .* E_k) - I_0 * 1 ohm) / sum(g)",
    when: "not has_loadResistance",
    source: COMMON_VOLTAGE,
  },
  {
    symbol: "V",
    meaning: "common voltage, load resistance",
    is: "sum(g .* E_k) / (sum(g) + 1 ohm / R_L)",
    when: "has_loadResistance",
    source: COMMON_VOLTAGE,
  },
  { symbol: "I", meaning: "load current", is: "I_0", when: "not has_loadResistance" },
  { symbol: "I", meaning: "load current", is: "V / R_L", when: "has_loadResistance" },
  { symbol: "I_k", kind: "current", meaning: "current of each string", is: "map(E_k, f(x) = x - V) .* g / (1 ohm)" },
  { symbol: "I_w", meaning: "largest of them, either way", is: "max(map(I_k, f(x) = abs(x)))" },
  { symbol: "I_r", meaning: "maximum current into a string", is: "max(concat([0 A], map(I_k, f(x) = -x)))" },
  { symbol: "P_h", meaning: "heat in the strings", is: "sum(I_k .* I_k .* r_k)" },
  { symbol: "N_c", meaning: "strings being charged", is: "sum(map(I_k, f(x) = x < -1e-12 A ? 1 : 0))" },
  { symbol: "several", kind: "number", meaning: "1 for more than one string", given: (_, out) => (out.timeConstant === null ? 0 : 1) },
  { solved: "tau", meaning: "time constant of evening out", when: "several == 1" },
  {
    symbol: "a_1",
    kind: "frequency",
    meaning: "slowest string's own rate U/(Q·r)",
    given: (si) => (ratesOf(spanned(si))[0] as readonly number[])[0] as number,
  },
  {
    symbol: "g_1",
    kind: "number",
    meaning: "its conductance, per ohm",
    given: (si) => (ratesOf(spanned(si))[0] as readonly number[])[1] as number,
  },
  {
    symbol: "a_n",
    kind: "frequency",
    meaning: "the other strings' rates",
    given: (si) =>
      ratesOf(spanned(si))
        .slice(1)
        .map(([a]) => a),
  },
  {
    symbol: "g_n",
    kind: "number",
    meaning: "their conductances, per ohm",
    given: (si) =>
      ratesOf(spanned(si))
        .slice(1)
        .map(([, g]) => g),
  },
  { symbol: "apart", kind: "number", meaning: "1 where the two slowest rates differ", given: (si) => (ratesApart(spanned(si)) ? 1 : 0) },
  {
    left: "g_1 / (1 / tau - a_1)",
    right: "sum(g_n ./ map(a_n, f(x) = x - 1 / tau))",
    meaning: "the time constant satisfies the strings' equation",
    within: 1e-5,
    when: "several == 1 and apart == 1",
  },
  { left: "1 / tau", right: "a_1", meaning: "equal rates: their own time constant", when: "several == 1 and apart == 0", within: 1e-4 },
  {
    symbol: "limited",
    kind: "number",
    meaning: "1 where every string has a limit",
    given: (_, out) => (out.loadCurrentAtLimit === null ? 0 : 1),
  },
  {
    symbol: "k_d",
    kind: "number",
    meaning: "share of the discharge limit left at this temperature",
    given: (si) => dischargeLimitFactor(si.chemistry, si.cellTemperature),
    source: temperatureLimitSource,
  },
  {
    symbol: "V_s",
    kind: "voltage",
    meaning: "voltage at which the first string is at its limit",
    given: (si) => {
      const factor = dischargeLimitFactor(si.chemistry, si.cellTemperature)
      return Math.max(...si.strings.map((s) => s.openCircuitVoltage - (s.maxCurrent ?? 0) * factor * s.resistance))
    },
  },
  {
    symbol: "I_s",
    meaning: "load at that voltage",
    is: "max(sum(map(E_k, f(x) = x - V_s) .* g) / (1 ohm), 0 A)",
    when: "limited == 1",
  },
]
