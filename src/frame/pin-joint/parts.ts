import type { Force, Length, Moment, Pressure } from "../../quantity/index.js"
import { isNoSolution, type NoSolution, type SiOf } from "../../solver/index.js"
import { conditionOf, type StrengthInput } from "../condition.js"
import { type BoltClass, type BoltSize, boltClasses, bolts } from "../data-bolts.js"
import type { HandlingCase } from "../data-loads.js"
import { frameMaterials } from "../data-materials.js"
import type { ShapeInput } from "../section.js"

/** Where a cross hole sits against the bending: through the stretched and squeezed faces, or through the sides. */
export type HolePlace = "outer-fibre" | "neutral-axis"

/** Input of the pin joint solver. Give a bolt or a plain pin, and a tube or a thickness. */
export interface PinJointInput extends StrengthInput {
  /** Force the joint carries across the pins. [F; 1 mN to 1000 kN] */
  force: Force
  /** Pins or bolts that share it evenly. [n; whole 1 to 20; default 1] */
  pins?: number
  /** Bolt size. [M3, M4, M5, M6, M8 or M10; optional] */
  bolt?: BoltSize | null
  /** Bolt class; an unmarked bolt counts as the weakest. [4.6, 5.6, 8.8, 10.9 or A2-70; default 4.6] */
  boltClass?: BoltClass
  /** Diameter of a plain pin. [d_g; 0.1 to 100 mm; optional] */
  pinDiameter?: Length | null
  /** Yield stress of a plain pin; mild steel where left out. [S_p; 1 MPa to 3 GPa; default 220 MPa] */
  pinStrength?: Pressure
  /** Planes in which each pin is sheared. [k_p; whole 1 to 10; default 2] */
  shearPlanes?: number
  /** Whether a bolt's thread lies in a shear plane. [yes or no; default yes] */
  threadSheared?: boolean
  /** Thickness each pin bears on, all plates of one side together; both walls of `tube` where left out. [t_g; 0.05 to 200 mm; optional] */
  thickness?: Length | null
  /** Thickness of each of two cheeks that hold the pin, for its bending; not judged where left out. [a_c; 0.05 to 200 mm; optional] */
  cheekThickness?: Length | null
  /** Gap between each cheek and what lies between them. [c_p; 0 to 200 mm; default 0] */
  gap?: Length
  /** Tube or bar the pin goes through. [group; optional] */
  tube?: ShapeInput | null
  /** How the hole sits against the bending of the tube. [outer-fibre or neutral-axis; default outer-fibre] */
  hole?: HolePlace
  /** Centre of the last hole to the end of the member. [e_d; 0.1 mm to 1 m; optional] */
  edgeDistance?: Length | null
  /** Width of the pads that clamp a round tube, along it. [b_c; 0.5 mm to 1 m; optional] */
  clampWidth?: Length | null
  /** Force the clamp squeezes with. [F_s; 1 mN to 1000 kN; optional] */
  clampForce?: Force | null
  /** Torque the bolt is tightened with, for the squeeze. [M_s; 1 mN m to 1000 N m; optional] */
  tighteningTorque?: Moment | null
  /** How it is handled; multiplies the force. [still, walking, sudden or stumble; default still] */
  handling?: HandlingCase
}

type Si = SiOf<PinJointInput>

/** Nut factor in T = K·F·d for dry zinc-plated threads. */
export const nutFactor = 0.2

/** Pin or bolt: diameter, sheared area, shear strength and yield stress. */
export function pinOf(si: Si): { diameter: number; area: number; strength: number; yield: number } {
  if (si.bolt === null) {
    const diameter = si.pinDiameter as number
    return { diameter, area: (Math.PI / 4) * diameter ** 2, strength: si.pinStrength / Math.sqrt(3), yield: si.pinStrength }
  }
  const bolt = bolts[si.bolt]
  const { tensile, proof, shearRatio } = boltClasses[si.boltClass]
  const area = si.threadSheared ? bolt.stressArea : (Math.PI / 4) * bolt.diameter ** 2
  return { diameter: bolt.diameter, area, strength: shearRatio * tensile, yield: proof }
}

/** Strengths of what the pin goes through, Pa. */
export interface MemberStrength {
  readonly along: number | null
  readonly bearing: number | null
  readonly shear: number | null
}

/** Strengths of the member: null where not known, or where its fibres split. */
export function memberStrength(si: Si): MemberStrength | NoSolution<"too-hot"> {
  const condition = conditionOf({ ...si, modulus: null })
  if (isNoSolution(condition)) return condition
  const splits = si.material !== null && frameMaterials[si.material].splits
  return splits
    ? { along: condition.strength, bearing: null, shear: null }
    : { along: condition.strength, bearing: condition.strength, shear: condition.shearStrength }
}

/** Times the outermost fibre's yield that a round pin takes in bending before it gives way (EN 1993-1-8, table 3.10). */
export const plasticReserve = 1.5
/** Share of yield up to which a pin can be taken out again (EN 1993-1-8, table 3.10). */
export const replaceable = 0.8

/** Bending of a pin between two cheeks: middle and cheeks press evenly over their thickness. */
export function bendingOf(si: Si, each: number, thickness: number): { moment: number; stress: number } | null {
  if (si.cheekThickness === null) return null
  const { area } = pinOf(si)
  const moment = (each / 8) * (thickness + 4 * si.gap + 2 * si.cheekThickness)
  return { moment, stress: moment / ((Math.PI / 32) * ((4 * area) / Math.PI) ** 1.5) }
}

/** Clamp force on a tube, N. */
export function squeezeOf(si: Si, diameter: number): number | null {
  if (si.clampForce !== null) return si.clampForce
  return si.tighteningTorque === null ? null : si.tighteningTorque / (nutFactor * diameter)
}
