import type { Force, Length, Moment, Pressure } from "../quantity/index.js"
import { isNoSolution, type NoSolution, type SiOf } from "../solver/index.js"
import { conditionOf, type StrengthInput } from "./condition.js"
import { type BoltClass, type BoltSize, boltClasses, bolts } from "./data-bolts.js"
import type { Motion } from "./data-loads.js"
import { frameMaterials } from "./data-materials.js"
import type { ShapeInput } from "./section.js"

/** Where a cross hole sits against the bending: through the stretched and squeezed faces, or through the sides. */
export type HolePlace = "outerFibre" | "neutralAxis"

/** Input of the pin joint solver. Give a bolt or a plain pin, and a tube or a thickness. */
export interface PinJointInput extends StrengthInput {
  /** Force the joint carries across the pins. */
  force: Force
  /** Pins or bolts that share it evenly. */
  pins?: number
  /** Bolt size. */
  bolt?: BoltSize | null
  /** Bolt class; an unmarked bolt counts as the weakest. */
  boltClass?: BoltClass
  /** Diameter of a plain pin. */
  pinDiameter?: Length | null
  /** Yield stress of a plain pin; mild steel where left out. */
  pinStrength?: Pressure
  /** Planes in which each pin is sheared. */
  shearPlanes?: number
  /** Whether a bolt's thread lies in a shear plane. */
  threadInShear?: boolean
  /** Thickness each pin bears on, all plates of one side together; both walls of `tube` where left out. */
  thickness?: Length | null
  /** Tube or bar the pin goes through. */
  tube?: ShapeInput | null
  /** How the hole sits against the bending of the tube. */
  hole?: HolePlace
  /** Centre of the last hole to the end of the member. */
  edgeDistance?: Length | null
  /** Width of the pads that clamp a round tube, along it. */
  clampWidth?: Length | null
  /** Force the clamp squeezes with. */
  clampForce?: Force | null
  /** Torque the bolt is tightened with, for the squeeze. */
  tighteningTorque?: Moment | null
  /** How it is handled; multiplies the force. */
  motion?: Motion
}

type Si = SiOf<PinJointInput>

/** Nut factor in T = K·F·d for dry zinc-plated threads. */
export const nutFactor = 0.2

/** Pin or bolt: diameter, sheared area and shear strength. */
export function pinOf(si: Si): { diameter: number; area: number; strength: number } {
  if (si.bolt === null) {
    const diameter = si.pinDiameter as number
    return { diameter, area: (Math.PI / 4) * diameter ** 2, strength: si.pinStrength / Math.sqrt(3) }
  }
  const bolt = bolts[si.bolt]
  const { tensile, shearRatio } = boltClasses[si.boltClass]
  const area = si.threadInShear ? bolt.stressArea : (Math.PI / 4) * bolt.diameter ** 2
  return { diameter: bolt.diameter, area, strength: shearRatio * tensile }
}

/** Strengths of what the pin goes through, Pa. */
export interface MemberStrength {
  readonly along: number | null
  readonly bearing: number | null
  readonly shear: number | null
}

/** Strengths of the member: null where not known, or where its fibres split. */
export function memberStrength(si: Si): MemberStrength | NoSolution {
  const condition = conditionOf({ ...si, modulus: null })
  if (isNoSolution(condition)) return condition
  const splits = si.material !== null && frameMaterials[si.material].splits
  return splits
    ? { along: condition.strength, bearing: null, shear: null }
    : { along: condition.strength, bearing: condition.strength, shear: condition.shearStrength }
}

/** Squeeze on a clamped tube, N. */
export function squeezeOf(si: Si, diameter: number): number | null {
  if (si.clampForce !== null) return si.clampForce
  return si.tighteningTorque === null ? null : si.tighteningTorque / (nutFactor * diameter)
}
