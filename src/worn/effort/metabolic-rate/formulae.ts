import type { SiOf, Step } from "../../../solver/index.js"
import { ACSM, GIVONI, LOONEY_2019, LOONEY_2022, LUDLOW, PANDOLF, PLACEMENT, SANTEE, TERRAIN } from "../../sources-load.js"
import { terrainFactor } from "../data-metabolic.js"
import type { MetabolicRate, MetabolicRateInput } from "./types.js"

/** The formulae of metabolicRate, in order. */
export const metabolicRateSteps: readonly Step<SiOf<MetabolicRateInput>, MetabolicRate>[] = [
  {
    symbol: "eta",
    kind: "number",
    meaning: "terrain factor",
    given: (si) => terrainFactor(si.terrain, si.snowDepth),
    source: TERRAIN,
  },
  {
    symbol: "m_e",
    meaning: "load in kilograms that cost like trunk load, each place at the maximum cost printed for it",
    is: "m_t + 1.3 * m_h + 2 * m_a + 6.2 * m_f",
    source: PLACEMENT,
  },
  { symbol: "b", kind: "number", meaning: "body mass in kg", is: "m_w / kg" },
  { symbol: "c", kind: "number", meaning: "mass moved in kg", is: "(m_w + m_e) / kg" },
  { symbol: "x", kind: "number", meaning: "speed in m/s; below 1 mm/s is standing", is: "v / (m/s) < 1e-3 ? 0 : v / (m/s)" },
  { symbol: "p", kind: "number", meaning: "grade in per cent", is: "abs(G) < 1e-6 ? 0 : 100 * G" },
  {
    symbol: "M_P",
    meaning: "Pandolf and others 1977",
    is: "(1.5 * b + 2 * c * (m_e / m_w)^2 + eta * c * (1.5 * x^2 + 0.35 * x * p)) * (1 W)",
    source: PANDOLF,
  },
  {
    symbol: "M_P",
    meaning: "Pandolf, corrected downhill",
    is: "M_P - eta * (p * c * x / 3.5 - c * (p + 6)^2 / b + 25 - x^2) * (1 W)",
    when: "x > 0 and p < 0",
    source: SANTEE,
  },
  {
    symbol: "M_L",
    meaning: "Looney and others 2019",
    is: "c * (1.44 + 1.94 * x^0.43 + 0.24 * x^4 + 0.34 * x * p * (1 - 1.05^(1 - 1.1^(p + 32)))) * (1 W)",
    source: LOONEY_2019,
  },
  {
    symbol: "M_B",
    meaning: "Looney and others 2022, level",
    is: "b * (M_s + (0.19 + eta * (1.78 * x^0.58 + 0.27 * x^4)) * (1 + 1.96 * (m_e / m_w)^1.36)) * (1 W)",
    when: "p == 0",
    source: LOONEY_2022,
  },
  { symbol: "k_o", kind: "number", meaning: "watts for 1 mL of oxygen a minute (5.0 kcal/L)", is: "5 * 4184 / 60 / 1000" },
  {
    symbol: "M_A",
    meaning: "ACSM walking",
    is: "c * (3.5 + 6 * x + 1.08 * x * p) * k_o * (1 W)",
    when: "x > 0 and p >= 0",
    source: ACSM,
  },
  {
    symbol: "M_M",
    meaning: "minimum mechanics",
    is: "(3.05 * b + c * (0.32 * p + 3.28 + (1 + 0.19 * p) * 2.66 * x^2)) * k_o * (1 W)",
    when: "x > 0 and p >= 0",
    source: LUDLOW,
  },
  {
    symbol: "M_M",
    meaning: "minimum mechanics, downhill",
    is: "(3.05 * b + 0.73 * c * (3.28 + 2.66 * x^2)) * k_o * (1 W)",
    when: "x > 0 and p < 0",
    source: LUDLOW,
  },
  {
    symbol: "w_g",
    kind: "number",
    meaning: "1 where Givoni and Goldman holds: from 0.7 m/s, not downhill",
    given: (_, out) => (out.givoniGoldman === null ? 0 : 1),
  },
  {
    symbol: "M_G",
    meaning: "Givoni and Goldman",
    is: "0.1 * eta * 9.80665 * c * (2.7 + 3.2 * (x - 0.7)^1.65 + p * (0.23 + 0.29 * (x - 0.7))) * (1 W)",
    when: "w_g == 1",
    source: GIVONI,
  },
  { symbol: "M", meaning: "largest of Pandolf and Looney 2019", is: "max(M_P, M_L)" },
  { symbol: "M", meaning: "or of backpacking", is: "max(M, M_B)", when: "p == 0" },
  { symbol: "M", meaning: "or of ACSM", is: "max(M, M_A)", when: "x > 0 and p >= 0" },
  { symbol: "M", meaning: "or of minimum mechanics", is: "max(M, M_M)", when: "x > 0" },
  { symbol: "M", meaning: "or of Givoni and Goldman", is: "max(M, M_G)", when: "w_g == 1" },
  { symbol: "M_0", meaning: "smallest of Pandolf and Looney 2019", is: "min(M_P, M_L)" },
  { symbol: "M_0", meaning: "or of backpacking", is: "min(M_0, M_B)", when: "p == 0" },
  { symbol: "M_0", meaning: "or of ACSM", is: "min(M_0, M_A)", when: "x > 0 and p >= 0" },
  { symbol: "M_0", meaning: "or of minimum mechanics", is: "min(M_0, M_M)", when: "x > 0" },
  { symbol: "M_0", meaning: "or of Givoni and Goldman", is: "min(M_0, M_G)", when: "w_g == 1" },
  { symbol: "q", meaning: "how far the equations part", is: "M / M_0" },
  { symbol: "q_m", meaning: "rate in MET", is: "M / (3.5 * k_o * b * (1 W))" },
]
