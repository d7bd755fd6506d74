import type { Pressure, Temperature, Time } from "../quantity/index.js"
import {
  at,
  type Band,
  type Caution,
  caution,
  type Either,
  type Fields,
  type NoSolution,
  optionsFrom,
  refuse,
  type SiOf,
  type Source,
  type Step,
} from "../solver/index.js"
import { type FrameMaterial, frameMaterials } from "./data-materials.js"
import { creepFactor, longestDuration, stiffnessFactor, strengthFactor } from "./material-factors.js"
import { ALUMINUM_MANUAL, ISO_75, PIPE_DERATING, SHIGLEY, VIDOSIC } from "./sources.js"

/** What a member is made of and in what state it carries its load. */
export interface ConditionInput {
  /** Material; its safe figures are used unless given below. [one of 17 words; optional] */
  material?: FrameMaterial | null
  /** Young's modulus at 23 °C, instead of the material's. [E_g; 1 MPa to 1000 GPa; optional] */
  modulus?: Pressure | null
  /** Yield or breaking stress at 23 °C, instead of the material's. [S_g; 0.1 MPa to 10 GPa; optional] */
  strength?: Pressure | null
  /** Temperature of the member: plastics in the sun or near lamps are hotter than the air. [T; −40 to 200 °C; default 23 °C] */
  materialTemperature?: Temperature
  /** How long the load stands without a rest, for creep. [t_l; 0 to 1000 h; default 0] */
  duration?: Time
}

/** Stiffness and strength of a member as it stands, Pa; null where not known. */
export interface Condition {
  readonly modulus: number
  readonly maxModulus: number
  readonly strength: number | null
  readonly maxStrength: number | null
  readonly shearStrength: number | null
  readonly maxShearStrength: number | null
  readonly stiffnessFactor: number
  readonly strengthFactor: number
  readonly creepFactor: number
}

/** What strength follows from: everything but the modulus. */
export type StrengthInput = Omit<ConditionInput, "modulus">

const rangeOf = (given: number | null, from: readonly [number, number] | undefined) =>
  given === null ? (from ?? null) : ([given, given] as const)
const dataOf = ({ material }: SiOf<StrengthInput>) => (material === null ? null : frameMaterials[material])
const modulusOf = (si: SiOf<ConditionInput>) => rangeOf(si.modulus, dataOf(si)?.modulus)
const strengthOf = (si: SiOf<StrengthInput>) => rangeOf(si.strength, dataOf(si)?.strength)
const shearOf = (si: SiOf<StrengthInput>) => dataOf(si)?.shear ?? null

/** Stiffness and strength at the temperature and after the duration given, or a refusal where it is too hot. */
export function conditionOf(si: SiOf<ConditionInput>): Condition | NoSolution<"too-hot"> {
  const data = dataOf(si)
  const [modulus, strength, shear] = [modulusOf(si), strengthOf(si), shearOf(si)]
  if (data && si.materialTemperature > data.limit)
    return refuse(
      "too-hot",
      "Figures of {named} hold up to {limit temperature}, and it is at {materialTemperature temperature}: keep it cooler, or take another material.",
      si.materialTemperature - data.limit,
      { materialTemperature: si.materialTemperature, limit: data.limit },
      { materialTemperature: data.limit },
      { named: data.label },
    )
  const factors = {
    stiffnessFactor: data ? stiffnessFactor(data, si.materialTemperature) : 1,
    strengthFactor: data ? strengthFactor(data, si.materialTemperature) : 1,
    creepFactor: data ? creepFactor(data, si.duration) : 1,
  }
  const soft = factors.stiffnessFactor * factors.creepFactor
  const weak = factors.strengthFactor * factors.creepFactor
  const [low, high] = modulus ?? [0, 0]
  const sheared = (s: number) => (shear === null ? s / Math.sqrt(3) : shear) * weak
  return {
    modulus: low * soft,
    maxModulus: high * soft,
    strength: strength && strength[0] * weak,
    maxStrength: strength && strength[1] * weak,
    shearStrength: strength && sheared(strength[0]),
    maxShearStrength: strength && sheared(strength[1]),
    ...factors,
  }
}

/** A member needs a modulus from somewhere. */
export const conditionRules = [{ atLeastOne: ["material", "modulus"] }] as const satisfies readonly Either[]

/** Field descriptions of {@link ConditionInput}. */
export const conditionFields: Fields<ConditionInput> = {
  material: { kind: "choice", label: "material", options: optionsFrom(frameMaterials, (key) => frameMaterials[key].label), default: null },
  modulus: {
    kind: "pressure",
    symbol: "E_g",
    label: "Young's modulus",
    min: "1 MPa",
    max: "1000 GPa",
    typical: ["2 GPa", "70 GPa"],
    default: null,
  },
  strength: {
    kind: "pressure",
    symbol: "S_g",
    label: "yield or breaking stress",
    min: "0.1 MPa",
    max: "10 GPa",
    typical: ["20 MPa", "400 MPa"],
    default: null,
  },
  materialTemperature: {
    kind: "temperature",
    symbol: "T",
    label: "temperature of the member",
    min: -40,
    max: 200,
    typical: [0, 45],
    default: 23,
  },
  duration: { kind: "time", symbol: "t_l", label: "time the load stands", min: 0, max: longestDuration, typical: [0, "8 h"], default: 0 },
}

const known = "has_strength or has_material"
const VON_MISES: Source = /* @__PURE__ */ at(SHIGLEY, "section 5-5 (distortion energy), unless the material has its own")

/** Steps that work out, where strength is known, S, S_u, S_s and S_su. */
export function strengthSteps<Si extends SiOf<StrengthInput>, Out>(): Step<Si, Out>[] {
  const factor = (of: typeof strengthFactor) => (si: Si) => {
    const data = dataOf(si)
    return data ? of(data, si.materialTemperature) : 1
  }
  return [
    { symbol: "S_l", kind: "pressure", meaning: "minimum strength at 23 °C, 0 where unknown", given: (si) => strengthOf(si)?.[0] ?? 0 },
    { symbol: "S_h", kind: "pressure", meaning: "maximum strength at 23 °C, 0 where unknown", given: (si) => strengthOf(si)?.[1] ?? 0 },
    { symbol: "S_o", kind: "pressure", meaning: "shear strength where the material has its own, else 0", given: (si) => shearOf(si) ?? 0 },
    {
      symbol: "f_E",
      kind: "number",
      meaning: "stiffness left at the temperature",
      given: factor(stiffnessFactor),
      source: at(ISO_75, "clause 3; a straight line from 23 °C to that temperature is assumed"),
    },
    {
      symbol: "f_S",
      kind: "number",
      meaning: "strength left at the temperature",
      given: factor(strengthFactor),
      source: at(PIPE_DERATING, "PVC only; other plastics as their stiffness"),
    },
    {
      symbol: "f_c",
      kind: "number",
      meaning: "stiffness and strength left after the load has stood",
      given: (si) => {
        const data = dataOf(si)
        return data ? creepFactor(data, si.duration) : 1
      },
    },
    { symbol: "S", kind: "pressure", meaning: "strength, safe end", is: "S_l * f_S * f_c", when: known },
    { symbol: "S_u", kind: "pressure", meaning: "strength, other end", is: "S_h * f_S * f_c", when: known },
    {
      symbol: "S_s",
      kind: "pressure",
      meaning: "shear strength, safe end",
      is: "S_o > 0 Pa ? S_o * f_S * f_c : S / sqrt(3)",
      when: known,
      source: VON_MISES,
    },
    {
      symbol: "S_su",
      kind: "pressure",
      meaning: "shear strength, other end",
      is: "S_o > 0 Pa ? S_o * f_S * f_c : S_u / sqrt(3)",
      when: known,
    },
  ]
}

/** Steps that work out E and E_u, and those of {@link strengthSteps}. */
export function conditionSteps<Si extends SiOf<ConditionInput>, Out>(): Step<Si, Out>[] {
  return [
    { symbol: "E_l", kind: "pressure", meaning: "minimum modulus at 23 °C", given: (si) => modulusOf(si)?.[0] ?? 0 },
    { symbol: "E_h", kind: "pressure", meaning: "maximum modulus at 23 °C", given: (si) => modulusOf(si)?.[1] ?? 0 },
    ...strengthSteps<Si, Out>(),
    { symbol: "E", kind: "pressure", meaning: "modulus, safe end", is: "E_l * f_E * f_c" },
    { symbol: "E_u", kind: "pressure", meaning: "modulus, other end", is: "E_h * f_E * f_c" },
  ]
}

/** Hazards of a material's state, and limits of what is published for its strength. */
export type MaterialCaution = "brittle" | "cold-brittle" | "creep" | "strength-above-published" | "warm-plastic" | "welds-weaken"

/** Hazards of a member's state whose stiffness counts as well. */
export type ConditionCaution = MaterialCaution | "modulus-above-published" | "no-material"

/** A modulus typed in above what is published for the material. */
export function modulusCautions(si: SiOf<ConditionInput>): Caution<"modulus-above-published">[] {
  const data = dataOf(si)
  if (!data || si.modulus === null || si.modulus <= data.modulus[1]) return []
  return [
    caution(
      "modulus-above-published",
      "caution",
      "The modulus given, {given.modulus pressure}, is above the {published pressure} published for {material}: it may bend or buckle more easily than shown. Measure the sag of a sample.",
      data.sources[0],
      { "given.modulus": si.modulus, published: data.modulus[1], material: data.label },
    ),
  ]
}

/** Hazards of a member's state: of its material where one is named, else that none is. */
export function conditionCautions(si: SiOf<ConditionInput>): Caution<ConditionCaution>[] {
  if (si.material === null)
    return [
      caution("no-material", "caution", "Figures are used as given: heat and creep are not allowed for, because no material is named."),
    ]
  return [...modulusCautions(si), ...materialCautions(si)]
}

/** Hazards of the material's state; a strength typed in above what is published must not silence the margin. */
export function materialCautions(si: SiOf<StrengthInput>): Caution<MaterialCaution>[] {
  const data = dataOf(si)
  if (!data) return []
  const found: Caution<MaterialCaution>[] = []
  const published = data.strength[1]
  if (si.strength !== null && si.strength > published)
    found.push(
      caution(
        "strength-above-published",
        "warning",
        "The strength given, {given.strength pressure}, is above the {published pressure} published for {material}: the margin shown rests on it. Have it proven by a test of a sample.",
        data.sources[0],
        { "given.strength": si.strength, published, material: data.label },
      ),
    )
  if (si.material === "aluminium-6061")
    found.push(
      caution(
        "welds-weaken",
        "note",
        "Figures are those of unwelded tube: beside a weld 6061-T6 keeps about half of its strength.",
        ALUMINUM_MANUAL,
      ),
    )
  if (data.hdt !== null && si.materialTemperature > 23)
    found.push(
      caution(
        "warm-plastic",
        "caution",
        "{material} softens with heat: a straight line from 23 °C to its deflection temperature of {deflectsAt temperature} is assumed. Sun and lamps make parts hotter than the air.",
        at(ISO_75, "clause 3; the line is an assumption"),
        { material: data.label, deflectsAt: data.hdt },
      ),
    )
  if (si.materialTemperature < 0 && (data.hdt !== null || data.brittle))
    found.push(
      caution(
        "cold-brittle",
        "caution",
        "{material} is more brittle in the cold, and it is at {given.materialTemperature temperature}: a knock may break it below the stress shown.",
        data.sources[0],
        { material: data.label, "given.materialTemperature": si.materialTemperature },
      ),
    )
  if (data.creep !== null)
    found.push(
      si.duration > 0
        ? caution(
            "creep",
            "caution",
            "{material} goes on bending while its load stands: after {given.duration time}, {left ratio %} of stiffness and strength is counted. Creep figures are scarce; rest it between shows and look at it.",
            data.creepSource,
            { material: data.label, "given.duration": si.duration, left: creepFactor(data, si.duration) },
          )
        : caution(
            "creep",
            "note",
            "{material} goes on bending under a standing load; give the duration to allow for it.",
            data.creepSource,
            { material: data.label },
          ),
    )
  if (data.brittle)
    found.push(
      caution("brittle", "caution", "{material} breaks without bending first and may leave sharp ends.", data.sources[0], {
        material: data.label,
      }),
    )
  return found
}

/** How far the larger of both ends deflects, either way. */
export const farthest = ({ low, high }: Band): number => Math.max(-low, high)

/** Warns where a result's safety factor is thin, at its low end where it is a band; null where nothing stresses it. */
export function marginCautions(margin: number | Band | null): Caution<"collapse" | "thin-margin">[] {
  const factor = typeof margin === "number" ? margin : (margin?.low ?? null)
  if (factor === null || factor >= leastSafetyFactor) return []
  const source = at(VIDOSIC, "safety factors of 3 and more for uncertain loads or brittle materials")
  const found =
    factor < 1
      ? caution(
          "collapse",
          "warning",
          "It fails under this load (safety factor {safetyFactor}): what it holds up falls on the wearer or the people beside. Do not use it.",
          source,
          { safetyFactor: factor },
        )
      : caution(
          "thin-margin",
          "warning",
          "The safety factor of {safetyFactor} is below the 3 that is usual where people are underneath: make it stronger, and have anything held above people checked by a qualified person under the local rules.",
          source,
          { safetyFactor: factor },
        )
  return [typeof margin === "number" ? found : { ...found, values: { "safetyFactor.low": factor } }]
}

/** Margin below which a member above people is cautioned against. */
export const leastSafetyFactor = 3

/** Stress below which no safety factor is named, Pa. */
export const leastStress = 1
