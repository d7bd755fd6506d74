import type { Step } from "../solver/index.js"
import { type ConductorMetal, type Metal, metals } from "./data.js"

/** Area per ampere of the 700-circular-mil rule, m²/A: a rule of thumb for wire in small bundles. */
const areaPerAmpere = 700 * (Math.PI / 4) * 25.4e-6 ** 2

/**
 * Current of a wire by 700 circular mils per ampere, A.
 * Handbook of Electronic Tables and Formulas, copper wire table (700 cmil/A).
 */
export function chassisCurrent(area: number): number {
  return area / areaPerAmpere
}

/** Fusing current of a bare round wire in still air by Preece's law, A: C·(d/inch)^1.5. */
export function fusingCurrent(diameter: number, constant: number): number {
  return constant * (diameter / 0.0254) ** 1.5
}

/** Adiabatic constant of a metal, A·√s/m²: K = √(Q·(β + 20 °C)/ρ₂₀) (IEC 60364-5-54, 2011, Annex A). */
export function adiabaticConstant(metal: Pick<ConductorMetal, "heatCapacity" | "beta" | "resistivity">): number {
  return Math.sqrt((metal.heatCapacity * (metal.beta + 20)) / metal.resistivity)
}

/** Steps that read a metal's constants for short faults. */
export const adiabaticSteps: readonly Step<{ readonly metal: Metal }, unknown>[] = [
  {
    symbol: "Q",
    kind: "number",
    meaning: "heat capacity by volume, J/(K·m³)",
    given: (si) => metals[si.metal].heatCapacity,
    source: "IEC 60364-5-54, Annex A",
  },
  {
    symbol: "beta",
    kind: "number",
    meaning: "reciprocal temperature coefficient at 0 °C, °C",
    given: (si) => metals[si.metal].beta,
    source: "IEC 60364-5-54, Annex A",
  },
]
