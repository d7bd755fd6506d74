// The working of an elastic cord.
import type { Step } from "../../solver/index.js"
import { piecesOf } from "./kernel.js"
import type { Bungee, Si } from "./types.js"

/** Pieces of the curve, or none of it where the cord is slack. */
const used = (si: Si) => {
  const pieces = piecesOf(si)
  return pieces.length ? pieces : [{ from: 0, to: 0, low: 0, high: 0, slope: 0 }]
}

export const bungeeFormulae = (): readonly Step<Si, Bungee>[] => [
  { symbol: "e", meaning: "elongation", is: "max(L / L_0 - 1, 0)" },
  { symbol: "e_i", kind: "number", meaning: "pieces of the curve in use: from", given: (si) => used(si).map((p) => p.from) },
  { symbol: "e_j", kind: "number", meaning: "to", given: (si) => used(si).map((p) => p.to) },
  { symbol: "F_i", kind: "force", meaning: "force of one cord, from", given: (si) => used(si).map((p) => p.low) },
  { symbol: "F_j", kind: "force", meaning: "to", given: (si) => used(si).map((p) => p.high) },
  { symbol: "m_e", kind: "force", meaning: "slope of the last piece, by elongation", given: (si) => used(si).at(-1)?.slope ?? 0 },
  { symbol: "F", meaning: "force of all cords", is: "N * max(F_j)" },
  { symbol: "k", meaning: "stiffness there", is: "N * m_e / L_0" },
  { symbol: "W", meaning: "energy: the area under the curve", is: "N * L_0 * sum((F_i + F_j) .* (e_j - e_i)) / 2" },
  { symbol: "F_b", meaning: "force, unloading", is: "F * (1 - h)", when: "has_lossShare" },
  { symbol: "W_b", meaning: "energy given back", is: "W * (1 - h)", when: "has_lossShare" },
  { symbol: "L_m", meaning: "length allowed", is: "L_0 * (1 + e_m)" },
  { symbol: "u", meaning: "elongation against what is allowed", is: "e / e_m" },
]
