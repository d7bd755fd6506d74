// The working of chainDrive.
import type { SiOf, Step } from "../../solver/index.js"
import { ISO_10823 } from "../sources.js"
import type { ChainDrive, ChainDriveInput } from "./types.js"

export const formulae: readonly Step<SiOf<ChainDriveInput>, ChainDrive>[] = [
  { symbol: "helps", kind: "number", meaning: "1 where the load helps", given: (si) => (si.torque < 0 ? 1 : 0) },
  { symbol: "judged", kind: "number", meaning: "1 where the strength is judged", given: (_, out) => (out.safetyFactor === null ? 0 : 1) },
  { symbol: "i", meaning: "ratio", is: "z_2 / z_1" },
  { symbol: "D_1", meaning: "pitch circle, driving sprocket", is: "p / sin(pi / z_1)" },
  { symbol: "D_2", meaning: "pitch circle, driven sprocket", is: "p / sin(pi / z_2)" },
  { symbol: "k", kind: "number", meaning: "for the strands' lean", is: "((z_2 - z_1) / (2 * pi))^2" },
  { symbol: "X_0", meaning: "links at the distance asked for", is: "2 * C / p + (z_1 + z_2) / 2 + k * p / C", source: ISO_10823 },
  { symbol: "X", meaning: "links, even", is: "2 * ceil(X_0 / 2 - 1e-9)" },
  { symbol: "L", meaning: "length of the chain", is: "X * p" },
  { symbol: "X_f", kind: "number", meaning: "links of both strands", is: "X - (z_1 + z_2) / 2" },
  { symbol: "C_f", meaning: "distance at which it fits", is: "p / 4 * (X_f + sqrt(X_f^2 - 8 * k))" },
  { symbol: "theta", meaning: "wrap on the smaller sprocket", is: "pi - 2 * asin(abs(D_2 - D_1) / (2 * C))" },
  { symbol: "delta", meaning: "rise and fall of its speed, over the mean", is: "pi / z_1 * (1 / sin(pi / z_1) - 1 / tan(pi / z_1))" },
  { symbol: "eta_b", kind: "number", meaning: "efficiency, load driving, as given", is: "eta_g", when: "has_backwardEfficiency" },
  { symbol: "eta_b", kind: "number", meaning: "efficiency, load driving, as the other way", is: "eta", when: "not has_backwardEfficiency" },
  { symbol: "T_1", meaning: "torque at the driving shaft", is: "T / (i * eta)", when: "helps == 0" },
  { symbol: "T_1", meaning: "torque at the driving shaft, load driving", is: "T * eta_b / i", when: "helps == 1" },
  { symbol: "T_r", meaning: "motion reversed: the load drives", is: "-T * eta_b / i", when: "helps == 0" },
  { symbol: "T_r", meaning: "motion reversed: the load is against it", is: "-T / (i * eta)", when: "helps == 1" },
  { symbol: "F", meaning: "mean pull: work of one turn over its links", is: "2 * pi * abs(T) / (p * z_2)" },
  { symbol: "F_p", meaning: "peak pull, at the smallest lever", is: "abs(T) / (D_2 / 2 * cos(pi / z_2))" },
  { symbol: "v", meaning: "speed of the chain", is: "omega_1 * p * z_1 / (2 * pi)", when: "has_inputSpeed" },
  { symbol: "F_c", meaning: "centrifugal part", is: "q * v^2", when: "has_inputSpeed" },
  { symbol: "F_c", meaning: "none at rest", is: "0 N", when: "not has_inputSpeed" },
  { symbol: "F_s", meaning: "force on each shaft", is: "K * F_p" },
  { symbol: "F_w", meaning: "working tension", is: "F_s + F_c" },
  { symbol: "S", meaning: "safety factor", is: "F_b / F_w", when: "judged == 1" },
  { symbol: "omega_2", meaning: "speed of the driven shaft", is: "omega_1 / i", when: "has_inputSpeed" },
  { symbol: "P_1", meaning: "power in", is: "T_1 * omega_1", when: "has_inputSpeed" },
  { symbol: "P_2", meaning: "power out", is: "T * omega_2", when: "has_inputSpeed" },
  { symbol: "P_h", meaning: "heat", is: "P_1 - P_2", when: "has_inputSpeed" },
]
