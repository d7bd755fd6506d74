import { at, type SiOf, type Step } from "../../../solver/index.js"
import { publishedShare } from "../../load/data-load.js"
import { CHILD_PACKS, FREY_LAW_2010, KAMON, NIOSH_1993, PANDOLF } from "../../sources-load.js"
import { isWorn, rateOf } from "./strain.js"
import type { WearSchedule, WearScheduleInput } from "./types.js"

/** The formulae of wearSchedule, in order. */
export const wearScheduleSteps: readonly Step<SiOf<WearScheduleInput>, WearSchedule>[] = [
  { symbol: "w", kind: "number", meaning: "1 where the rig is on", given: (si) => si.plan.map((p) => (isWorn(p) ? 1 : 0)) },
  {
    symbol: "M_k",
    kind: "power",
    meaning: "metabolic rate of each part, by metabolicRate; sitting and off: 1 MET",
    given: (si) => si.plan.map((p) => rateOf(si, p, si.rigMass)),
    source: PANDOLF,
  },
  { symbol: "b_t", kind: "number", meaning: "durations in s", is: "t / (1 s)" },
  { symbol: "P_o", kind: "power", meaning: "maximum aerobic power (5.0 kcal/L)", is: "c_o * m_w / kg * 5 * 4184 / 60000 * (1 W)" },
  { symbol: "q_k", kind: "number", meaning: "share of the capacity", is: "M_k / P_o" },
  { symbol: "e_b", kind: "number", meaning: "effort of the back", is: "M_b / M_m", when: "has_backMoment" },
  {
    symbol: "R_b",
    kind: "number",
    meaning: "strain per second by the back",
    is: "e_b < 1e-6 ? 0 : 1 / (p_w * 22.69 * e_b^(-2.27))",
    when: "has_backMoment",
    source: FREY_LAW_2010,
  },
  { symbol: "R_b", kind: "number", meaning: "back left out", is: "0", when: "not has_backMoment" },
  {
    symbol: "K_k",
    kind: "number",
    meaning: "work period by Kamon in s",
    is: "p_w * (7200 ./ q_k - 7020)",
    source: at(KAMON, "equation 2.6.1"),
  },
  {
    symbol: "N_k",
    kind: "number",
    meaning: "work time by the shares of 50, 40 and 33 % for 1, 2 and 8 h, in s",
    is: "map(q_k, f(z) = z >= 0.4 ? 3600 * 2^((z - 0.5) / (-0.1)) : 7200 * 4^((z - 0.4) / (-0.07)))",
    source: NIOSH_1993,
  },
  {
    symbol: "R_k",
    kind: "number",
    meaning: "strain per second, breath or back, stricter limit",
    is: "map(1:size(q_k)[1], f(i) = max(1 / min(K_k[i], N_k[i]), R_b))",
  },
  {
    symbol: "R_l",
    kind: "number",
    meaning: "the same by the more lenient limit",
    is: "map(1:size(q_k)[1], f(i) = max(1 / max(K_k[i], N_k[i]), R_b))",
  },
  { symbol: "t_d", meaning: "length of the plan", is: "sum(t)" },
  { symbol: "t_w", meaning: "of it with the rig on", is: "sum(w .* b_t) * (1 s)" },
  { symbol: "c_k", kind: "number", meaning: "time off so far over the time constant", is: "cumsum((1 - w) .* b_t) / (tau / (1 s))" },
  {
    symbol: "S_k",
    kind: "number",
    meaning: "strain after each part",
    is: "map(-c_k, exp) .* cumsum(w .* b_t .* R_k .* map(c_k, exp))",
  },
  {
    symbol: "m_l",
    meaning: "mass at the published share",
    given: (si) => publishedShare(si.bodyMass) * si.bodyMass,
    kind: "mass",
    source: CHILD_PACKS,
  },
  { symbol: "S_m", meaning: "largest strain", is: "max(S_k)" },
  {
    symbol: "S_l",
    meaning: "largest strain, lenient limits",
    is: "max(map(-c_k, exp) .* cumsum(w .* b_t .* R_l .* map(c_k, exp)))",
  },
  { symbol: "S_e", meaning: "strain at the end", is: "S_k[size(S_k)[1]]" },
  { symbol: "T_m", meaning: "longest unbroken wear in the hardest part", is: "1 / max(w .* R_k) * (1 s)" },
  { symbol: "t_r", meaning: "length of one rest", is: "tau * log(1 / r)" },
  { symbol: "q_m", meaning: "mean share of the capacity, rig on", is: "sum(w .* b_t .* q_k) / sum(w .* b_t)" },
  {
    symbol: "q_l",
    meaning: "published acceptable share for that time",
    is: "t_w / (1 s) <= 3600 * (1 + 1e-9) ? 0.5 : (t_w / (1 s) <= 7200 * (1 + 1e-9) ? 0.4 : 0.33)",
    source: NIOSH_1993,
  },
]
