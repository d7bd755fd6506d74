import type { Step } from "../../solver/index.js"
import { efficiencyAt } from "../limit.js"
import { dropOutCurrent, type LimitTrace, type Si } from "./problem.js"
import type { ConverterLimit } from "./types.js"

/** Steps of {@link converterLimit}. */
export const limitFormulae: readonly Step<Si, ConverterLimit, LimitTrace>[] = [
  {
    symbol: "eta",
    kind: "ratio",
    meaning: "efficiency at the load current, off the curve",
    given: (si) => efficiencyAt(si.efficiency, si.loadCurrent),
  },
  {
    symbol: "bound",
    kind: "number",
    meaning: "input bound: 1 current, 2 minimum voltage, 3 source power, 0 none",
    given: (_si, _out, trace) => boundCode(trace),
  },
  {
    symbol: "binds",
    kind: "number",
    meaning: "what binds: 0 nothing, 1 the input bound, 2 the output limit",
    given: (_, out) => bindCode(out),
  },
  { symbol: "V_0", kind: "voltage", meaning: "input voltage without load", is: "E - R * I_q" },
  { symbol: "P_d", kind: "power", meaning: "power the load asks for, before the efficiency", is: "V_set * I / eta" },
  { symbol: "I_b", kind: "current", meaning: "current at the input limit", is: "I_lim - I_q", when: "bound == 1" },
  { symbol: "I_b", kind: "current", meaning: "current at the minimum input voltage", is: "(V_0 - V_min) / R", when: "bound == 2" },
  { symbol: "I_b", kind: "current", meaning: "current at the source's maximum power", is: "V_0 / (2 * R)", when: "bound == 3" },
  { symbol: "P_a", meaning: "maximum power to the output", is: "eta * (V_0 - R * I_b) * I_b", when: "bound > 0" },
  {
    symbol: "I_x",
    kind: "current",
    meaning: "current for that power (the root at the higher voltage)",
    is: "2 * P_d / (V_0 + sqrt(V_0^2 - 4 * R * P_d))",
    when: "binds == 0",
  },
  { symbol: "I_x", kind: "current", meaning: "current at the bound", is: "I_b", when: "binds == 1" },
  { symbol: "I_x", kind: "current", meaning: "no power goes out", is: "0 A", when: "binds == 2" },
  { symbol: "V_in", meaning: "voltage at the input", is: "V_0 - R * I_x" },
  { symbol: "I_in", meaning: "input current", is: "I_q + I_x" },
  { symbol: "V", meaning: "the set voltage holds", is: "V_set", when: "binds == 0" },
  { symbol: "V", meaning: "output at which power balances", is: "eta * V_in * I_x / I", when: "binds == 1" },
  { symbol: "V", meaning: "output collapsed", is: "0 V", when: "binds == 2" },
  { symbol: "P_out", meaning: "power to the load", is: "V * I" },
  { symbol: "P_in", meaning: "power into the converter", is: "V_in * I_in" },
  { symbol: "P_h", meaning: "heat in the converter", is: "P_in - P_out" },
  { symbol: "P_l", meaning: "heat before the converter", is: "R * I_in^2" },
  {
    symbol: "eta_h",
    kind: "ratio",
    meaning: "efficiency where the set voltage just holds",
    given: (si, out) => (out.fullVoltageCurrent === null ? 0 : efficiencyAt(si.efficiency, out.fullVoltageCurrent)),
  },
  {
    symbol: "byInput",
    kind: "number",
    meaning: "what ends the set voltage first: 1 the input bound, 2 the drop-out of a step-down, 0 the output limit",
    given: (si, out) =>
      out.fullVoltageCurrent === null
        ? -1
        : out.fullVoltageCurrent === si.outputCurrentLimit
          ? 0
          : out.fullVoltageCurrent === dropOutCurrent(si)
            ? 2
            : 1,
  },
  { symbol: "I_h", meaning: "load current the set voltage holds to", is: "eta_h * (V_0 - R * I_b) * I_b / V_set", when: "byInput == 1" },
  { symbol: "I_h", meaning: "load current the set voltage holds to", is: "I_ol", when: "byInput == 0" },
  {
    symbol: "I_h",
    meaning: "load current the set voltage holds to",
    is: "eta_h * (V_0 - V_set) / R",
    when: "byInput == 2",
  },
]

function boundCode({ bound }: Partial<LimitTrace>): number {
  if (!bound || bound.power === Number.POSITIVE_INFINITY) return 0
  return bound.limitedBy === "input-current" ? 1 : bound.limitedBy === "input-voltage" ? 2 : 3
}

function bindCode(out: ConverterLimit): number {
  return out.limitedBy === "none" ? 0 : out.limitedBy === "output-current" ? 2 : 1
}
