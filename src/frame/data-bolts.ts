import { at, type Source } from "../solver/index.js"
import { EN_1993, ISO_898, ISO_3506 } from "./sources.js"

/** Coarse-thread metric bolts. */
export type BoltSize = "M3" | "M4" | "M5" | "M6" | "M8" | "M10"
/** Property classes of bolts. */
export type BoltClass = "4.6" | "5.6" | "8.8" | "10.9" | "A2-70"

/** One bolt size, m. */
export interface Bolt {
  readonly diameter: number
  readonly pitch: number
  /** Nominal stress area of the thread as the standard prints it, to 3 figures, m². */
  readonly stressArea: number
}

/** Diameters and coarse pitches (ISO 261, table 2); stress areas (ISO 898-1, table 4; those of M4, M8 and M10 not verified). */
export const bolts: Readonly<Record<BoltSize, Bolt>> = {
  M3: { diameter: 3e-3, pitch: 0.5e-3, stressArea: 5.03e-6 },
  M4: { diameter: 4e-3, pitch: 0.7e-3, stressArea: 8.78e-6 },
  M5: { diameter: 5e-3, pitch: 0.8e-3, stressArea: 14.2e-6 },
  M6: { diameter: 6e-3, pitch: 1e-3, stressArea: 20.1e-6 },
  M8: { diameter: 8e-3, pitch: 1.25e-3, stressArea: 36.6e-6 },
  M10: { diameter: 10e-3, pitch: 1.5e-3, stressArea: 58e-6 },
}

/** A bolt class: strengths in Pa and the part of tensile strength a shank may carry in shear. */
export interface BoltStrength {
  readonly label: string
  readonly tensile: number
  readonly proof: number
  readonly shearRatio: number
  readonly sources: readonly Source[]
}

const shear = /* @__PURE__ */ at(EN_1993, "table 3.4")
const strengths = /* @__PURE__ */ at(ISO_898, "table 3")
// only the figures of class 8.8 were compared
const unread: Source = { ...strengths, verified: "not-seen" }

/** Bolt classes. */
export const boltClasses: Readonly<Record<BoltClass, BoltStrength>> = {
  "4.6": { label: "class 4.6, or unmarked", tensile: 400e6, proof: 225e6, shearRatio: 0.6, sources: [unread, shear] },
  "5.6": { label: "class 5.6", tensile: 500e6, proof: 280e6, shearRatio: 0.6, sources: [unread, shear] },
  "8.8": { label: "class 8.8", tensile: 800e6, proof: 580e6, shearRatio: 0.6, sources: [at(ISO_898, "table 3, up to 16 mm"), shear] },
  "10.9": {
    label: "class 10.9",
    tensile: 1000e6,
    proof: 830e6,
    shearRatio: 0.5,
    sources: [at(unread, "table 3 (1040 N/mm² in tension, 1000 used)"), shear],
  },
  "A2-70": {
    label: "stainless A2-70",
    tensile: 700e6,
    proof: 450e6,
    shearRatio: 0.5,
    sources: [at(ISO_3506, "table 3 (the 0.2 % limit stands for proof)"), shear],
  },
}

/** Tensile stress area of a thread, m²: π/4·(d − 0.9382·p)² (ISO 898-1, 2009, clause 9.1.6.1). */
export function threadStressArea({ diameter, pitch }: Pick<Bolt, "diameter" | "pitch">): number {
  return (Math.PI / 4) * (diameter - 0.9382 * pitch) ** 2
}
