// What a bent member is stressed to and how near that is to its strength: one piece for every kind of beam.
import { type Band, bandField, bandOf, type Caution, caution, type OutFields, type Step } from "../../solver/index.js"
import { type Condition, leastStress } from "../condition.js"
import type { Section } from "../section.js"
import { VIDOSIC } from "../sources.js"

/** What a beam is stressed to, and the figures of its material. */
export interface BeamStrength {
  /** Bending stress at the outermost fibre. [sigma; Pa] */
  readonly bendingStress: number | null
  /** Shear stress at the neutral axis. [tau; Pa] */
  readonly shearStress: number | null
  /** Modulus used [E; Pa] */
  readonly modulus: number
  /** Strength used [S; Pa] */
  readonly strength: number | null
  /** Stiffness left at the temperature. [f_E] */
  readonly stiffnessFactor: number
  /** Strength left at the temperature. [f_S] */
  readonly strengthFactor: number
  /** Stiffness and strength left after the load has stood. [f_c] */
  readonly creepFactor: number
  /** Strength against stress, the lower of bending and shear, at the weak and the strong end of the material's range. [n_s to n_u] */
  readonly safetyFactor: Band | null
}

/** Stresses under the largest moment (N·m) and shear force (N), and the margins to the strength at both ends of its range. */
export function strengthOf(section: Section, condition: Condition, moment: number, shear: number): BeamStrength {
  const bendingStress = section.fibre === null ? null : (Math.abs(moment) * section.fibre) / section.secondMoment
  const shearStress =
    section.firstMoment === null || section.shearWidth === null
      ? null
      : (Math.abs(shear) * section.firstMoment) / (section.secondMoment * section.shearWidth)
  const margin = (strength: number | null, shearStrength: number | null) => {
    if (strength === null || shearStrength === null || bendingStress === null) return null
    if (!(Math.max(bendingStress, shearStress ?? 0) > leastStress)) return null
    return 1 / Math.max(bendingStress / strength, (shearStress ?? 0) / shearStrength)
  }
  return {
    bendingStress,
    shearStress,
    modulus: condition.modulus,
    strength: condition.strength,
    stiffnessFactor: condition.stiffnessFactor,
    strengthFactor: condition.strengthFactor,
    creepFactor: condition.creepFactor,
    safetyFactor: bandOf(margin(condition.strength, condition.shearStrength), margin(condition.maxStrength, condition.maxShearStrength)),
  }
}

/** Descriptions of {@link BeamStrength}. */
export const strengthOutput: OutFields<BeamStrength> = {
  bendingStress: { kind: "pressure", symbol: "sigma", label: "bending stress" },
  shearStress: { kind: "pressure", symbol: "tau", label: "shear stress" },
  modulus: { kind: "pressure", symbol: "E", label: "modulus used" },
  strength: { kind: "pressure", symbol: "S", label: "strength used" },
  stiffnessFactor: { kind: "number", symbol: "f_E", label: "stiffness left, heat" },
  strengthFactor: { kind: "number", symbol: "f_S", label: "strength left, heat" },
  creepFactor: { kind: "number", symbol: "f_c", label: "stiffness factor after creep" },
  safetyFactor: bandField("number", "safety factor", { symbols: ["n_s", "n_u"] }),
}

const known = "(has_strength or has_material)"
const shaped = "(has_pipe or has_outsideDiameter or has_width)"

/** The working of stresses and margins, over M_x, V_x and the symbols of section and condition. */
export const stressSteps = <S, O, T = unknown>(): Step<S, O, T>[] => [
  { symbol: "sigma", meaning: "bending stress", is: "abs(M_x) * c / I", when: `${shaped} or has_fibre` },
  { symbol: "tau", meaning: "shear stress at the neutral axis", is: "abs(V_x) * Q / (I * b_n)", when: shaped },
  ...(["n_s", "n_u"] as const).flatMap((symbol): Step<S, O, T>[] => {
    const [s, t] = symbol === "n_s" ? ["S", "S_s"] : ["S_u", "S_su"]
    const meaning = symbol === "n_s" ? "safety factor, safe end" : "safety factor, other end"
    return [
      { symbol, meaning, is: `1 / max(sigma / ${s}, tau / ${t})`, when: `${known} and ${shaped} ? max(sigma, tau) > 1 Pa : false` },
      { symbol, meaning, is: `${s} / sigma`, when: `${known} and has_fibre ? sigma > 1 Pa : false` },
    ]
  }),
]

/** Both ends of a deflection that is y_x at the soft and y_z at the stiff end of the range. */
export const deflectionSteps = <S, O, T = unknown>(): Step<S, O, T>[] => [
  { symbol: "y_l", meaning: "maximum deflection, low end", is: "min(y_x, y_z)" },
  { symbol: "y_h", meaning: "maximum deflection, high end", is: "max(y_x, y_z)" },
]

/** A support that would have to pull: by how much, N, and nothing where that is rounding beside what the supports carry. */
export function pullDown(reactions: readonly number[]): number {
  const pull = -Math.min(...reactions)
  return pull > 1e-9 * reactions.reduce((sum, r) => sum + Math.abs(r), 0) ? pull : 0
}

/** Cautions about what the answer does not know. */
export function unknownCautions(
  si: { readonly countsOwnWeight: boolean },
  out: Pick<BeamStrength, "bendingStress" | "safetyFactor"> & { readonly weight: number },
): Caution<"stress-unknown" | "weight-unknown">[] {
  const found: Caution<"stress-unknown" | "weight-unknown">[] = []
  if (si.countsOwnWeight && !(out.weight > 0))
    found.push(
      caution("weight-unknown", "note", "Its own weight is not counted: name a material or a density and a shape, or add it as a load."),
    )
  if (out.safetyFactor === null && out.bendingStress === null)
    found.push(
      caution(
        "stress-unknown",
        "caution",
        "No stress is worked out: give the distance to the outermost fibre. A safety factor of 3 or more is usual above people.",
        VIDOSIC,
      ),
    )
  return found
}
