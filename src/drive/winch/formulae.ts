// The working of winch.
import { interpolate } from "../../numeric/index.js"
import type { SiOf, Step } from "../../solver/index.js"
import { BENT_STRENGTH, bentStrength } from "./data.js"
import type { Winch, WinchInput } from "./types.js"

const layerOf = (length: string) => `max(1, ceil((sqrt(b^2 + 4 * h * (${length}) / (pi * n)) - b) / (2 * h) - 1e-9))`
const turnsOf = (layer: string, length: string) =>
  `n * (${layer} - 1) + (${length} - pi * n * (${layer} - 1) * (2 * r_1 + h * (${layer} - 2))) / (2 * pi * (r_1 + h * (${layer} - 1)))`

export const formulae: readonly Step<SiOf<WinchInput>, Winch>[] = [
  { symbol: "n", meaning: "turns in one layer, as given", is: "n_g", when: "has_turnsPerLayer" },
  { symbol: "n", meaning: "turns in one layer", is: "floor(W / d + 1e-9)", when: "has_drumWidth" },
  { symbol: "r_1", kind: "length", meaning: "radius of the first layer", is: "(D + d) / 2" },
  { symbol: "h", kind: "length", meaning: "rise of a layer", is: "e * d" },
  { symbol: "b", kind: "length", meaning: "diameter of the first layer, less one rise", is: "2 * r_1 - h" },
  { symbol: "N_w", meaning: "layer in which the line ends: N layers hold π·n·N·(2·r₁ + h·(N − 1))", is: layerOf("L") },
  { symbol: "N_p", meaning: "layer in which what is left ends", is: layerOf("L - s") },
  { symbol: "t_w", meaning: "turns on the drum, wound in", is: turnsOf("N_w", "L") },
  { symbol: "t_s", meaning: "turns left on the drum", is: turnsOf("N_p", "L - s") },
  { symbol: "t", meaning: "turns for the travel", is: "t_w - t_s" },
  { symbol: "r_o", kind: "length", meaning: "radius of the outer layer", is: "r_1 + h * (N_w - 1)" },
  { symbol: "r_i", kind: "length", meaning: "radius of the inner layer", is: "r_1 + h * (N_p - 1)" },
  { symbol: "D_w", meaning: "diameter over the line", is: "2 * r_o + d" },
  {
    symbol: "N_f",
    kind: "number",
    meaning: "layers that fit",
    is: "floor((D_f - D - 2 * d) / (2 * h) + 1e-9) + 1",
    when: "has_flangeDiameter",
  },
  { symbol: "L_c", meaning: "line that fits", is: "pi * n * N_f * (2 * r_1 + h * (N_f - 1))", when: "has_flangeDiameter" },
  { symbol: "lambda", meaning: "drum and line against line", is: "(D + d) / d" },
  { symbol: "eta_b", kind: "number", meaning: "efficiency, load pulling out, as given", is: "eta_g", when: "has_backwardEfficiency" },
  {
    symbol: "eta_b",
    kind: "number",
    meaning: "efficiency, load pulling out, as winding in",
    is: "eta",
    when: "not has_backwardEfficiency",
  },
  { symbol: "T_R", meaning: "torque to wind in, outer layer", is: "F * r_o / eta + T_d" },
  { symbol: "T_L", meaning: "torque to pay out, outer layer", is: "T_d - F * r_o * eta_b" },
  { symbol: "T_h", meaning: "torque to hold, outer layer, friction not counted on", is: "F * r_o" },
  { symbol: "S_h", meaning: "safety factor, holding", is: "T_c / T_h", when: "has_holdingTorque" },
  { symbol: "F_o", meaning: "pull, outer layer", is: "(T - T_d) * eta / r_o", when: "has_torque" },
  { symbol: "F_i", meaning: "pull, inner layer", is: "(T - T_d) * eta / r_i", when: "has_torque" },
  { symbol: "v_i", meaning: "speed of the line, inner layer", is: "omega * r_i", when: "has_speed" },
  { symbol: "v_o", meaning: "speed of the line, outer layer", is: "omega * r_o", when: "has_speed" },
  { symbol: "t_m", meaning: "time for the travel", is: "2 * pi * t / omega", when: "has_speed" },
  { symbol: "P", meaning: "power to wind in, outer layer", is: "T_R * omega", when: "has_speed" },
  { symbol: "E_l", meaning: "work on the load", is: "F * s" },
  { symbol: "E_R", meaning: "work to wind in: torque times angle, layer by layer", is: "E_l / eta + 2 * pi * t * T_d" },
  { symbol: "E_L", meaning: "work to pay out", is: "2 * pi * t * T_d - E_l * eta_b" },
  { symbol: "Q_R", meaning: "lost winding in", is: "E_R - E_l" },
  { symbol: "Q_L", meaning: "lost paying out", is: "E_L + E_l" },
  { symbol: "wire", kind: "number", meaning: "1 for wire rope", given: (si) => (si.lineType === "wire-rope" ? 1 : 0) },
  {
    symbol: "k_0",
    kind: "number",
    meaning: "strength that a bend of D/d leaves a wire rope",
    given: (si) => interpolate(bentStrength, si.drumDiameter / si.lineDiameter),
    source: BENT_STRENGTH,
  },
  { symbol: "k_b", meaning: "strength left on the drum", is: "k_0", when: "wire == 1" },
  {
    symbol: "F_k",
    kind: "force",
    meaning: "strength of the line on the drum",
    is: "F_b * (wire * k_0 + 1 - wire)",
    when: "has_lineStrength",
  },
  { symbol: "S_l", meaning: "safety factor of the line", is: "F_k / F", when: "has_lineStrength" },
  { symbol: "S_s", meaning: "safety factor of the line, stalled", is: "F_k / F_i", when: "has_lineStrength and has_torque" },
  { symbol: "F_x", meaning: "pull on the fixing: friction takes its part on each turn", is: "F * exp(-2 * pi * mu * t_s)" },
]
