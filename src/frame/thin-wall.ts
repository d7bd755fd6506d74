// Thin round walls that buckle, alone or in a member among others.
import { type Caution, caution } from "../solver/index.js"
import { type FrameMaterial, frameMaterials } from "./data-materials.js"
import type { Section } from "./section.js"
import { SP_8007 } from "./sources.js"

/** Buckling of a thin round wall: knock-down factors and stresses, Pa. */
export interface CylinderBuckling {
  readonly gammaAxial: number
  readonly gammaBending: number
  readonly axial: number
  readonly bending: number
}

/**
 * Stress (Pa) at which the wall of a thin tube buckles, under end load or in bending:
 * γ·E·t / (R·√(3·(1 − ν²))) with the knock-down factors of NASA SP-8007 (1968).
 */
export function cylinderBuckling(meanRadius: number, wall: number, modulus: number, poisson: number): CylinderBuckling {
  const knock = 1 - Math.exp(-Math.sqrt(meanRadius / wall) / 16)
  const classical = (modulus * wall) / (meanRadius * Math.sqrt(3 * (1 - poisson ** 2)))
  const [gammaAxial, gammaBending] = [1 - 0.901 * knock, 1 - 0.731 * knock]
  return { gammaAxial, gammaBending, axial: gammaAxial * classical, bending: gammaBending * classical }
}

/** The same for a section of a material, or null where its wall is not a thin round one or its Poisson's ratio is not known. */
export function wallBuckling({ tube }: Section, material: FrameMaterial | null, modulus: number): CylinderBuckling | null {
  const poisson = material === null ? null : frameMaterials[material].poisson
  return tube === null || poisson === null ? null : cylinderBuckling(tube.meanRadius, tube.wall, modulus, poisson)
}

/** Warns of a member whose thin wall buckles at a small multiple of its stress. */
export const wallCaution = (name: string, margin: number): Caution<"wall-buckling"> =>
  caution(
    "wall-buckling",
    "warning",
    "The thin wall of {name} buckles at {margin} times its stress, below the 3 that is usual: a dent or a clamp makes it fold suddenly. Take a thicker wall.",
    SP_8007,
    { name, margin },
  )
