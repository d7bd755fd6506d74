// The working of a gas spring.
import type { Step } from "../../solver/index.js"
import { gasLaw, gasSpringReadings } from "../sources.js"
import type { GasSpring, Si } from "./types.js"

export const gasSpringFormulae = (): readonly Step<Si, GasSpring>[] => [
  { symbol: "p", meaning: "progression as given", is: "p_1", when: "has_progression" },
  { symbol: "p", meaning: "progression: the rod takes room from the gas", is: "V_0 / (V_0 - pi / 4 * d^2 * s_1)", when: "has_gasVolume" },
  {
    symbol: "G_1",
    kind: "force",
    meaning: "push of the gas extended, friction added, at its temperature",
    is: "(F_1 + F_r) * T / (293.15 K)",
    source: gasLaw,
  },
  { symbol: "c", kind: "number", meaning: "share of the gas's room that the stroke takes", is: "1 - 1 / p" },
  { symbol: "G", kind: "force", meaning: "push of the gas here", is: "G_1 / (1 - c * s / s_1)" },
  { symbol: "F_e", meaning: "force extending", is: "G - F_r", source: gasSpringReadings },
  { symbol: "F_c", meaning: "force compressing", is: "G + F_r", source: gasSpringReadings },
  { symbol: "F_1T", meaning: "force with the rod out", is: "G_1 - F_r" },
  { symbol: "F_2T", meaning: "force to push the rod all in", is: "G_1 * p + F_r" },
  { symbol: "F_f", meaning: "force compressing at once, no heat let out", is: "G_1 * (G / G_1)^1.4 + F_r" },
  { symbol: "k", meaning: "stiffness: slope of the force", is: "G * c / (s_1 - c * s)" },
  { symbol: "f_T", meaning: "gas pushes in step with its absolute temperature", is: "1 / T", source: gasLaw },
  { symbol: "W", meaning: "area under the gas's push", is: "-G_1 * s_1 / c * log1p(-c * s / s_1)", when: "p > 1" },
  { symbol: "W", meaning: "area under the gas's push", is: "G_1 * s", when: "p == 1" },
  { symbol: "W_c", meaning: "work to compress it", is: "W + F_r * s" },
  { symbol: "W_e", meaning: "work given back", is: "W - F_r * s" },
  { symbol: "W_f", meaning: "work lost, in and out", is: "2 * F_r * s" },
]
