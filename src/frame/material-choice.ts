import type { Density, Pressure } from "../quantity/index.js"
import type { Fields, SiOf } from "../solver/index.js"
import { conditionFields } from "./condition.js"
import { type FrameMaterial, frameMaterials } from "./data-materials.js"

/** What a size or a member among others is made of: a material, or its figures. */
export interface MaterialChoice {
  /** Material; its safe figures are used unless given below. [one of 17 words; optional] */
  material?: FrameMaterial | null
  /** Young's modulus at 23 °C, instead of the material's. [E_g; 1 MPa to 1000 GPa; optional] */
  modulus?: Pressure | null
  /** Yield or breaking stress at 23 °C, instead of the material's. [S_g; 0.1 MPa to 10 GPa; optional] */
  strength?: Pressure | null
  /** Density, instead of the material's heavy end. [rho_g; 1 to 25000 kg/m³; optional] */
  density?: Density | null
}

/** Field description of a density given in the material's place. */
export const densityField = {
  kind: "density",
  symbol: "rho_g",
  label: "density, instead of the material's",
  min: 1,
  max: 25000,
  typical: [400, 8000],
  default: null,
} as const

const { material, modulus, strength } = conditionFields
/** Field descriptions of {@link MaterialChoice}. */
export const choiceFields: Fields<MaterialChoice> = { material, modulus, strength, density: densityField }

/** Density, heavy end, kg/m³; 0 where unknown. */
export const densityOf = ({ density, material: of }: Pick<SiOf<MaterialChoice>, "density" | "material">): number =>
  density ?? (of === null ? 0 : frameMaterials[of].density[1])
