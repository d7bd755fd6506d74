import type { Pressure, Temperature, Time } from "../quantity/index.js"
import {
  type Caution,
  caution,
  type Fields,
  type Issue,
  inconsistent,
  type NoSolution,
  optionsFrom,
  refuse,
  type SiOf,
  type Step,
} from "../solver/index.js"
import { type FrameMaterial, frameMaterials } from "./data-materials.js"
import { creepFactor, longestDuration, stiffnessFactor, strengthFactor } from "./material-factors.js"

/** What a member is made of and in what state it carries its load. */
export interface ConditionInput {
  /** Material; its safe figures are used unless given below. */
  material?: FrameMaterial | null
  /** Young's modulus at 23 °C, instead of the material's. */
  modulus?: Pressure | null
  /** Yield or breaking stress at 23 °C, instead of the material's. */
  strength?: Pressure | null
  /** Temperature of the member: plastics in the sun or near lamps are hotter than the air. */
  temperature?: Temperature
  /** How long the load stands without a rest, for creep. */
  duration?: Time
}

/** Stiffness and strength of a member as it stands, Pa; null where not known. */
export interface Condition {
  readonly modulus: number
  readonly modulusMost: number
  readonly strength: number | null
  readonly strengthMost: number | null
  readonly shearStrength: number | null
  readonly shearStrengthMost: number | null
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
export function conditionOf(si: SiOf<ConditionInput>): Condition | NoSolution {
  const data = dataOf(si)
  const [modulus, strength, shear] = [modulusOf(si), strengthOf(si), shearOf(si)]
  if (data && si.temperature > data.limit)
    return refuse(
      "too-hot",
      `${data.label} may be reckoned up to ${data.limit} °C and is at ${Number(si.temperature.toPrecision(6))} °C`,
      si.temperature - data.limit,
      { temperature: si.temperature },
      { temperature: data.limit },
    )
  const factors = {
    stiffnessFactor: data ? stiffnessFactor(data, si.temperature) : 1,
    strengthFactor: data ? strengthFactor(data, si.temperature) : 1,
    creepFactor: data ? creepFactor(data, si.duration) : 1,
  }
  const soft = factors.stiffnessFactor * factors.creepFactor
  const weak = factors.strengthFactor * factors.creepFactor
  const [low, high] = modulus ?? [0, 0]
  const sheared = (s: number) => (shear === null ? s / Math.sqrt(3) : shear) * weak
  return {
    modulus: low * soft,
    modulusMost: high * soft,
    strength: strength && strength[0] * weak,
    strengthMost: strength && strength[1] * weak,
    shearStrength: strength && sheared(strength[0]),
    shearStrengthMost: strength && sheared(strength[1]),
    ...factors,
  }
}

/** Faults: a member needs a modulus from somewhere. */
export function conditionFaults({ material, modulus }: SiOf<ConditionInput>): Issue[] {
  return material === null && modulus === null ? [inconsistent(["material"], "neither material nor modulus", "one of them")] : []
}

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
  temperature: { kind: "temperature", symbol: "T", label: "temperature of the member", min: -40, max: 200, typical: [0, 45], default: 23 },
  duration: { kind: "time", symbol: "t_l", label: "time the load stands", min: 0, max: longestDuration, typical: [0, "8 h"], default: 0 },
}

const known = "has_strength or has_material"

/** Steps that work out, where strength is known, S, S_u, S_s and S_su. */
export function strengthSteps<Si extends SiOf<StrengthInput>, Out>(): Step<Si, Out>[] {
  const factor = (of: typeof strengthFactor) => (si: Si) => {
    const data = dataOf(si)
    return data ? of(data, si.temperature) : 1
  }
  return [
    { symbol: "S_l", kind: "pressure", meaning: "least strength at 23 °C, 0 where unknown", given: (si) => strengthOf(si)?.[0] ?? 0 },
    { symbol: "S_h", kind: "pressure", meaning: "greatest strength at 23 °C, 0 where unknown", given: (si) => strengthOf(si)?.[1] ?? 0 },
    { symbol: "S_o", kind: "pressure", meaning: "shear strength where the material has its own, else 0", given: (si) => shearOf(si) ?? 0 },
    {
      symbol: "f_E",
      kind: "number",
      meaning: "stiffness left at the temperature",
      given: factor(stiffnessFactor),
      source: "straight line from 23 °C to the temperature of deflection under load (ISO 75-1)",
    },
    {
      symbol: "f_S",
      kind: "number",
      meaning: "strength left at the temperature",
      given: factor(strengthFactor),
      source: "pipe maker's derating table for PVC; as stiffness for other plastics",
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
      source: "von Mises, unless the material has its own",
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
    { symbol: "E_l", kind: "pressure", meaning: "least modulus at 23 °C", given: (si) => modulusOf(si)?.[0] ?? 0 },
    { symbol: "E_h", kind: "pressure", meaning: "greatest modulus at 23 °C", given: (si) => modulusOf(si)?.[1] ?? 0 },
    ...strengthSteps<Si, Out>(),
    { symbol: "E", kind: "pressure", meaning: "modulus, safe end", is: "E_l * f_E * f_c" },
    { symbol: "E_u", kind: "pressure", meaning: "modulus, other end", is: "E_h * f_E * f_c" },
  ]
}

/** Hazards of the material's state. */
export function conditionCautions(si: SiOf<StrengthInput>): Caution[] {
  const data = dataOf(si)
  const found: Caution[] = []
  if (!data) {
    found.push(
      caution("no-material", "caution", "Figures are used as given: heat and creep are not allowed for, because no material is named."),
    )
    return found
  }
  if (si.material === "aluminium6061")
    found.push(
      caution(
        "welds-weaken",
        "note",
        "Figures are those of unwelded tube: beside a weld 6061-T6 keeps about half of its strength.",
        "Aluminum Design Manual, 2015, table A.4.3, from memory",
      ),
    )
  if (data.hdt !== null && si.temperature > 23)
    found.push(
      caution(
        "warm-plastic",
        "caution",
        `${data.label} softens with heat: a straight line from 23 °C to its deflection temperature of ${data.hdt} °C is assumed. Sun and lamps make parts hotter than the air.`,
        "ISO 75-1, 2020 (definition of the test); the line itself is an assumption",
      ),
    )
  if (si.temperature < 0 && (data.hdt !== null || data.brittle))
    found.push(
      caution(
        "cold-brittle",
        "caution",
        `${data.label} is more brittle in the cold: a knock may break it below the stress shown.`,
        data.source,
      ),
    )
  if (data.creep !== null)
    found.push(
      caution(
        "creep",
        si.duration > 0 ? "caution" : "note",
        si.duration > 0
          ? `Creep under a standing load is allowed for: ${data.creepSource}.`
          : `${data.label} goes on bending under a standing load; give the duration to allow for it.`,
        data.creepSource,
      ),
    )
  if (data.brittle)
    found.push(caution("brittle", "caution", `${data.label} breaks without bending first and may leave sharp ends.`, data.source))
  return found
}

/** Warns where the margin is thin; `factor` is the least safety factor, null where nothing stresses it. */
export function marginCautions(factor: number | null): Caution[] {
  if (factor === null || factor >= leastSafetyFactor) return []
  const fails = factor < 1
  return [
    caution(
      fails ? "collapse" : "thin-margin",
      "warning",
      fails
        ? "It fails under this load: what it holds up falls on the wearer or the people beside. Do not use it."
        : `The margin is below ${leastSafetyFactor}, less than is usual where people are underneath: make it stronger, and have anything held above people checked by a qualified person under the local rules.`,
      "safety factors of 3 and more for uncertain loads or brittle materials: J. P. Vidosic, Machine Design Projects, 1957, from memory",
    ),
  ]
}

/** Margin below which a member above people is cautioned against. */
export const leastSafetyFactor = 3

/** Stress below which no safety factor is named, Pa. */
export const leastStress = 1
