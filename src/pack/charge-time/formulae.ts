import type { Step } from "../../solver/index.js"
import { chemistries } from "../chemistry.js"
import { packResistanceSteps } from "../fields.js"
import { CHARGE_TIMES, LEAD_CHARGE_TIMES, LEAD_CHARGING, LEAD_FULL_TIMES, NICKEL_ENDS, NICKEL_SHEETS } from "../sources.js"
import { LEAD_RETURN, nickelTermination, nickelTimerFactor } from "./ends.js"
import { nickelChargeFactor } from "./kernel.js"
import { changeOverByBisection, endByBisection, heatByQuadrature, storedByQuadrature, tailByQuadrature } from "./problem.js"
import type { ChargeTime, Si } from "./types.js"

const rateOf = (si: Si) => si.chargeCurrent / ((si.cellCapacity * si.parallel) / 3600)

/** Steps of {@link chargeTime}. */
export const chargeFormulae: readonly Step<Si, ChargeTime>[] = [
  { symbol: "Q", kind: "charge", meaning: "capacity of the pack", is: "Q_c * n_p" },
  ...packResistanceSteps,
  { symbol: "nickel", kind: "number", meaning: "1 for nickel-metal hydride", given: (si) => (si.chemistry === "nimh" ? 1 : 0) },
  { symbol: "lithium", kind: "number", meaning: "1 for lithium", given: (si) => (chemistries[si.chemistry].lithiumIon ? 1 : 0) },
  { symbol: "t_s", meaning: "charge over current", is: "Q * (1 - s_0) / I" },
  { solved: "s_c", meaning: "charge at the change-over" },
  {
    symbol: "s_b",
    kind: "ratio",
    meaning: "the same by bisection of E + I·R against the charge voltage",
    given: (si) => changeOverByBisection(si),
  },
  { left: "s_c", right: "s_b", meaning: "change-over where E + I·R reaches the charge voltage", within: 1e-8, when: "nickel == 0" },
  { left: "s_c", right: "1", meaning: "no change-over: charged at constant current", when: "nickel == 1" },
  { symbol: "t_1", meaning: "time at constant current", is: "Q * (s_c - s_0) / I", when: "nickel == 0" },
  {
    symbol: "k_n",
    kind: "number",
    meaning: "charge put in over charge gained",
    given: (si) => nickelChargeFactor(rateOf(si)),
    source: NICKEL_SHEETS,
  },
  { symbol: "t_1", meaning: "time at constant current", is: "k_n * t_s", when: "nickel == 1" },
  { solved: "s_e", meaning: "charge at the end" },
  { solved: "t_2", meaning: "time at constant voltage" },
  { symbol: "t_q", kind: "time", meaning: "the same by quadrature of Q·R/(V − E)", given: (si, out) => tailByQuadrature(si, out) },
  { left: "t_2", right: "t_q", meaning: "time at constant voltage against quadrature", within: 1e-7 },
  {
    symbol: "s_f",
    kind: "ratio",
    meaning: "charge at which the current has fallen to the stopping current, by bisection",
    given: (si, out) => endByBisection(si, out),
  },
  { left: "s_e", right: "s_f", meaning: "it stops at the stopping current", within: 1e-8 },
  { symbol: "t", meaning: "time", is: "t_1 + t_2" },
  { symbol: "k_o", meaning: "time against charge over current", is: "t / t_s" },
  { solved: "W_h", meaning: "heat in the resistance" },
  { symbol: "W_q", kind: "energy", meaning: "heat by quadrature of current squared", given: (si, out) => heatByQuadrature(si, out) },
  { left: "W_h + 1e-9 J", right: "W_q + 1e-9 J", meaning: "heat against quadrature", within: 1e-7 },
  {
    symbol: "W_s",
    kind: "energy",
    meaning: "energy stored, by quadrature of the open-circuit voltage",
    given: (si, out) => storedByQuadrature(si, out),
  },
  {
    symbol: "k_w",
    kind: "number",
    meaning: "charge put in for each that is kept",
    given: (si, out) => (si.chemistry === "nimh" ? out.durationRatio : 1),
  },
  { symbol: "W", meaning: "energy put in", is: "W_s * k_w + W_h" },
  {
    symbol: "t_l",
    meaning: "to expect, at least",
    is: "max(t, t_s + 20 minutes * (1 - s_0))",
    when: "lithium == 1",
    source: CHARGE_TIMES,
  },
  { symbol: "t_m", meaning: "to expect, at most", is: "max(t, t_s + 2 hours)", when: "lithium == 1", source: CHARGE_TIMES },
  {
    symbol: "t_l",
    meaning: "to expect, at least",
    is: "max(t, 9 hours * (1 - s_0) + 3 hours, 1.1 * t_s)",
    when: "lithium == 0 and nickel == 0",
    source: LEAD_FULL_TIMES,
  },
  {
    symbol: "t_m",
    meaning: "to expect, at most",
    is: "max(t, 12 hours * (1 - s_0) + 4 hours, 1.1 * t_s + 4 hours)",
    when: "lithium == 0 and nickel == 0",
    source: LEAD_CHARGE_TIMES,
  },
  {
    symbol: "k_r",
    kind: "number",
    meaning: "charge put in over charge gained, losses included",
    given: (si) => (si.chemistry === "nimh" ? nickelChargeFactor(rateOf(si)) : si.chemistry === "lead" ? LEAD_RETURN : 1),
    source: LEAD_CHARGING,
  },
  { symbol: "Q_i", meaning: "charge put in", is: "k_r * Q * (s_e - s_0)" },
  {
    symbol: "k_x",
    kind: "number",
    meaning: "charge after which a timer stops, over the charge to gain",
    given: (si) => nickelTimerFactor(rateOf(si)),
    source: NICKEL_ENDS,
  },
  { symbol: "t_x", meaning: "longest time on the charger", is: "k_x * t_s", when: "nickel == 1" },
  {
    symbol: "shows",
    kind: "number",
    meaning: "1 where a full pack shows in its voltage",
    given: (si) => (rateOf(si) > nickelTermination.timerOnlyRate ? 1 : 0),
    source: NICKEL_ENDS,
  },
  { symbol: "U_d", meaning: "fall from the peak", is: "3 mV * n_s", when: "nickel == 1 and shows == 1", source: NICKEL_ENDS },
]
