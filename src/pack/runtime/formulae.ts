import type { SiOf, Step } from "../../solver/index.js"
import { capacityFactor, chemistries } from "../chemistry.js"
import { emfAt, loadCurrent } from "../discharge.js"
import { packResistanceSteps } from "../fields.js"
import { LEAD_RATES, LITHIUM_TEMPERATURE } from "../sources.js"
import { cellEnergy, problemOf, quadratureTime, type RuntimeInput, ratesOf } from "./problem.js"
import type { Runtime } from "./types.js"

const rated = (si: SiOf<RuntimeInput>) => {
  const { curve, resistance, loads } = problemOf(si)
  return ratesOf(si, curve, resistance, loads)
}

/** Steps of {@link runtime}. */
export const runtimeFormulae: readonly Step<SiOf<RuntimeInput>, Runtime>[] = [
  {
    symbol: "k_c",
    kind: "number",
    meaning: "capacity at this temperature against 20 to 25 °C",
    given: (si) => capacityFactor(si.chemistry, si.cellTemperature),
    source: LITHIUM_TEMPERATURE,
  },
  {
    symbol: "q_w",
    kind: "charge",
    meaning: "charge of each step in a round, at the largest current it comes to",
    given: (si) => rated(si).map(({ charge }) => charge),
  },
  {
    symbol: "f_w",
    kind: "number",
    meaning: "share of the capacity left at that current",
    given: (si) => rated(si).map(({ share }) => share),
    source: LEAD_RATES,
  },
  { symbol: "k_r", meaning: "share of the capacity left at these currents", is: "sum(q_w) / sum(q_w ./ f_w)" },
  { symbol: "Q", kind: "charge", meaning: "capacity of the pack", is: "Q_c * n_p * h * k_c * k_r" },
  packResistanceSteps[0],
  { symbol: "R", kind: "resistance", meaning: "resistance of the pack", is: "r_c * w * k_T * n_s / n_p + R_l" },
  { solved: "t", meaning: "runtime, followed piece by piece" },
  { solved: "s_1", meaning: "charge left at the end" },
  { solved: "W", meaning: "energy given at the terminals" },
  { solved: "W_h", meaning: "heat inside" },
  { symbol: "q_i", kind: "charge", meaning: "charge of each step", given: (_, out) => out.pattern.map((l) => l.charge) },
  { symbol: "t_i", kind: "time", meaning: "time of each step", given: (_, out) => out.pattern.map((l) => l.duration) },
  { symbol: "W_i", kind: "energy", meaning: "energy of each step", given: (_, out) => out.pattern.map((l) => l.energy) },
  { symbol: "q", meaning: "charge given, the steps' together", is: "sum(q_i)" },
  { left: "q", right: "Q * (s_0 - s_1)", meaning: "the charge given is what has left the cells" },
  { left: "t", right: "sum(t_i)", meaning: "the steps' times add up to the runtime" },
  { left: "W", right: "sum(W_i)", meaning: "the steps' energies add up to the energy given" },
  {
    symbol: "W_oc",
    kind: "energy",
    meaning: "energy the cells gave up: charge times open-circuit voltage, by quadrature",
    given: (si, out) => cellEnergy(si, out.endStateOfCharge),
  },
  { left: "W_oc", right: "W + W_h", meaning: "energy account: what the cells gave up is given or is heat", within: 1e-8 },
  {
    symbol: "t_q",
    kind: "time",
    meaning: "runtime of a single load by quadrature of charge over current",
    given: (si, out) => quadratureTime(si) ?? out.runtime,
  },
  { left: "t", right: "t_q", meaning: "runtime against quadrature", within: 1e-7 },
  { symbol: "I_mean", meaning: "mean current", is: "q / t" },
  {
    symbol: "resists",
    kind: "number",
    meaning: "1 where the pack has a resistance",
    given: (_, out) => (out.rmsCurrent === null ? 0 : 1),
  },
  { symbol: "I_rms", meaning: "current that makes this heat", is: "sqrt(W_h / (R * t))", when: "resists == 1" },
  { solved: "I_start", meaning: "maximum current of the pattern at the start" },
  {
    symbol: "I_a",
    kind: "current",
    meaning: "largest of the loads' currents at the starting voltage",
    given: (si) => {
      const { curve, start, loads, resistance } = problemOf(si)
      return Math.max(...loads.map((load) => loadCurrent(load, emfAt(curve, start), resistance)))
    },
  },
  { left: "I_start", right: "I_a", meaning: "current at the start" },
  { solved: "I_end", meaning: "current at the end" },
  { solved: "V_end", meaning: "voltage at the end" },
  {
    symbol: "E_end",
    kind: "voltage",
    meaning: "open-circuit voltage at the charge left",
    given: (si, out) => emfAt(problemOf(si).curve, out.endStateOfCharge),
  },
  { left: "V_end", right: "E_end - I_end * R", meaning: "terminal voltage at the end", within: 1e-8 },
  { solved: "I_peak", meaning: "maximum current" },
  { left: "I_peak", right: "max(I_peak, I_mean)", meaning: "the mean is no greater than the peak" },
  { solved: "N", meaning: "rounds of the pattern" },
  {
    symbol: "N_t",
    kind: "number",
    meaning: "rounds that fit in the runtime",
    given: (si, out) => {
      const round = si.pattern.reduce((sum, step) => sum + step.duration, 0)
      return si.pattern.length === 1 || out.errorEstimate > 0 ? out.runtime / round : Math.floor(out.runtime / round + 1e-9)
    },
  },
  { left: "N", right: "N_t", meaning: "rounds that fit in the runtime" },
  { symbol: "V_n", kind: "voltage", meaning: "nominal voltage of a cell", given: (si) => chemistries[si.chemistry].cellNominalVoltage },
  { symbol: "t_s", meaning: "nominal energy over mean power", is: "V_n * n_s * Q_c * n_p * s_0 * t / W" },
]
