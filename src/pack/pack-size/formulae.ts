// Steps from the best pack back to what it was chosen by.
import type { Step } from "../../solver/index.js"
import { capacityFactor, chemistries, openCircuitVoltage, resistanceFactor } from "../chemistry.js"
import { dischargeLimitFactor } from "../data.js"
import { LEAD_RATES } from "../sources.js"
import { leastVoltage, shareOf } from "./candidates.js"
import { bestCell } from "./kernel.js"
import type { PackSize, Si } from "./types.js"

/** Steps of {@link packSize}. */
export const packSizeFormulae: readonly Step<Si, PackSize>[] = [
  { solved: "n_s", meaning: "cells in series of the best pack" },
  { solved: "n_p", meaning: "cells in parallel of the best pack" },
  {
    symbol: "U_full",
    kind: "voltage",
    meaning: "full cell",
    given: (si, out) => chemistries[bestCell(si, out).chemistry].cellFullVoltage,
  },
  { left: "n_s", right: "min(n_s, floor(V_max / U_full + 1e-9))", meaning: "in series no more than the maximum voltage allows" },
  {
    symbol: "U_nom",
    kind: "voltage",
    meaning: "nominal cell",
    given: (si, out) => chemistries[bestCell(si, out).chemistry].cellNominalVoltage,
  },
  { symbol: "Q_b", kind: "charge", meaning: "capacity of the best cell", given: (si, out) => bestCell(si, out).cellCapacity },
  { symbol: "m_b", kind: "mass", meaning: "mass of the best cell", given: (si, out) => bestCell(si, out).cellMass },
  {
    symbol: "I_b",
    kind: "current",
    meaning: "current limit of the best cell at this temperature",
    given: (si, out) => bestCell(si, out).cellMaxCurrent * dischargeLimitFactor(bestCell(si, out).chemistry, si.cellTemperature),
  },
  {
    symbol: "r_b",
    kind: "resistance",
    meaning: "resistance of the best cell at this temperature",
    given: (si, out) => bestCell(si, out).cellResistance * resistanceFactor(bestCell(si, out).chemistry, si.cellTemperature),
  },
  {
    symbol: "k_c",
    kind: "number",
    meaning: "capacity left at this temperature",
    given: (si, out) => capacityFactor(bestCell(si, out).chemistry, si.cellTemperature),
  },
  {
    symbol: "U_low",
    kind: "voltage",
    meaning: "cell at low charge, without load",
    given: (si, out) => openCircuitVoltage(bestCell(si, out).chemistry, si.minStateOfCharge),
  },
  {
    symbol: "U_cut",
    kind: "voltage",
    meaning: "minimum cell voltage",
    given: (si, out) => leastVoltage(bestCell(si, out)),
  },
  {
    symbol: "k_r",
    kind: "number",
    meaning: "capacity left at the rate",
    given: (si, out) => shareOf(bestCell(si, out), out.series, si),
    source: LEAD_RATES,
  },
  { symbol: "p_I", kind: "number", meaning: "in parallel for current", is: "I / I_b" },
  { symbol: "p_W", kind: "number", meaning: "in parallel for energy", is: "W / (n_s * U_nom * Q_b * h * s_0 * y * k_c * k_r)" },
  {
    symbol: "p_V",
    kind: "number",
    meaning: "in parallel against sag",
    is: "I * r_b * w * n_s / (n_s * U_low - max(V_min, n_s * U_cut))",
  },
  { left: "n_p", right: "max(1, ceil(max(p_I, p_W, p_V) - 1e-9))", meaning: "the smallest whole number that meets all three" },
  { symbol: "W_p", meaning: "energy", is: "n_s * n_p * U_nom * Q_b" },
  { symbol: "m_p", meaning: "mass of the cells", is: "n_s * n_p * m_b" },
]
