import type { Force, Length } from "../../quantity/index.js"
import {
  type Band,
  bandField,
  bandOf,
  type Caution,
  caution,
  commonPractice,
  isNoSolution,
  type NoSolution,
  refuse,
  type SiOf,
  type Solver,
  type Step,
  solver,
  tried,
} from "../../solver/index.js"
import {
  type ConditionInput,
  conditionCautions,
  conditionFields,
  conditionOf,
  conditionRules,
  conditionSteps,
  leastStress,
  marginCautions,
} from "../condition.js"
import { type HandlingCase, handlingCases, handlingField, motionCautions } from "../data-loads.js"
import { type SectionInput, sectionFaults, sectionFields, sectionOf, sectionRules, sectionSteps } from "../section.js"
import { FRISCH_FAY, MATTIASSON } from "../sources.js"
import { elastica, greatestLoadParameter, legendreRule } from "./elastica.js"

/** Input of {@link bendingRod}. */
export interface BendingRodInput extends ConditionInput {
  /** Length from the clamp to the tip. [L; 1 mm to 20 m] */
  length: Length
  /** Cross-section. [group] */
  section: SectionInput
  /** Force at the tip, across the unbent rod and staying so. [P_g; 0.01 mN to 10 kN] */
  force: Force
  /** How it is handled; multiplies the force. [still, walking, sudden or stumble; default still] */
  handling?: HandlingCase
}

/** Result of {@link bendingRod}. */
export interface BendingRod {
  /** Force as handled against the rod's stiffness, P·L²/(E·I), at the soft end of the material's range. [alpha] */
  readonly loadParameter: number
  /** Drop of the tip, at the stiff and the soft end of the range. [y_l to y_t; m] */
  readonly tipDrop: Band
  /** How far out the tip still reaches, at the soft end. [x_t; m] */
  readonly tipReach: number
  /** Slope of the tip, at the stiff and the soft end of the range. [theta_l to theta; rad] */
  readonly tipSlope: Band
  /** Drop the straight-beam formula would say, at the soft end. [y_s; m] */
  readonly straightDrop: number
  /** Bending moment at the clamp: that of the stiff end, which reaches further. [M_0; N m] */
  readonly clampMoment: number
  /** Bending stress at the clamp. [sigma; Pa] */
  readonly bendingStress: number | null
  /** Strength against stress, at the weak and the strong end of the range. [n_s to n_u] */
  readonly safetyFactor: Band | null
  /** Search steps [number] */
  readonly iterations: number
  /** What is left of the load equation, relative. [number] */
  readonly residual: number
}

/** Reasons for which {@link bendingRod} refuses. */
export type BendingRodRefusal = "hangs-down" | "too-hot"

/** Hazards and limits of validity that go with an answer of {@link bendingRod}. */
export type BendingRodCaution =
  | "brittle"
  | "cold-brittle"
  | "collapse"
  | "creep"
  | "modulus-above-published"
  | "no-material"
  | "springs-back"
  | "standing-still"
  | "strength-above-published"
  | "thin-margin"
  | "tip-load-only"
  | "warm-plastic"
  | "welds-weaken"

/** What is offered lies this little within the limit, so that rounding does not put it beyond. */
const WITHIN = 1 - 1e-9

function kernel(si: SiOf<BendingRodInput>): BendingRod | NoSolution<BendingRodRefusal> {
  const condition = conditionOf(si)
  if (isNoSolution(condition)) return condition
  const { secondMoment, fibre } = sectionOf(si.section)
  const force = si.force * handlingCases[si.handling].factor
  const alpha = (modulus: number) => (force * si.length ** 2) / (modulus * secondMoment)
  const loadParameter = alpha(condition.modulus)
  if (loadParameter > greatestLoadParameter) {
    const most = (greatestLoadParameter * condition.modulus * secondMoment) / si.length ** 2
    return refuse(
      "hangs-down",
      "The rod hangs straight down: {force force} as handled is {shortBy force} more than the {most force} that this model covers. Shorten it, or take a stiffer one.",
      force - most * WITHIN,
      { force, most },
      { force: (most * WITHIN) / handlingCases[si.handling].factor },
    )
  }
  const [soft, stiff] = [elastica(loadParameter), elastica(alpha(condition.maxModulus))]
  const clampMoment = force * stiff.reach * si.length
  const bendingStress = fibre === null ? null : (clampMoment * fibre) / secondMoment
  const margin = (strength: number | null) =>
    strength !== null && bendingStress !== null && bendingStress > leastStress ? strength / bendingStress : null
  return {
    loadParameter,
    tipDrop: { low: stiff.drop * si.length, high: soft.drop * si.length },
    tipReach: soft.reach * si.length,
    tipSlope: { low: stiff.tipSlope, high: soft.tipSlope },
    straightDrop: (loadParameter / 3) * si.length,
    clampMoment,
    bendingStress,
    safetyFactor: bandOf(margin(condition.strength), margin(condition.maxStrength)),
    iterations: soft.iterations + stiff.iterations,
    residual: soft.residual,
  }
}

const check = (si: SiOf<BendingRodInput>) => [...sectionFaults(si.section, ["section"])]
const solve = (si: SiOf<BendingRodInput>): BendingRod | NoSolution<BendingRodRefusal> =>
  tried(kernel(si), si, bendingRod.input, kernel, check, bendingRod.either)

function cautions(si: SiOf<BendingRodInput>, out: BendingRod): Caution<BendingRodCaution>[] {
  return [
    ...marginCautions(out.safetyFactor),
    ...conditionCautions(si),
    ...motionCautions(si.handling),
    caution(
      "tip-load-only",
      "note",
      "One force at the tip that keeps its direction; the rod's own weight and loads along it are not counted.",
      MATTIASSON,
    ),
    ...(out.tipSlope.high > 0.5
      ? [
          caution(
            "springs-back",
            "warning",
            "Bent to {tipSlope.high angle deg} at its tip it stores energy and springs back when let go: keep faces away, and cap the end.",
            commonPractice,
            { "tipSlope.high": out.tipSlope.high },
          ),
        ]
      : []),
  ]
}

type RodStep = Step<SiOf<BendingRodInput>, BendingRod>

/** Steps that take a slope as found and prove it against its load parameter. */
const proof = (slope: string, alpha: string, n: string): RodStep[] => [
  { symbol: `k_${n}`, kind: "number", meaning: "modulus of the elliptic integrals", is: `sqrt((1 + sin(${slope})) / 2)` },
  { symbol: `j_${n}`, kind: "number", meaning: "complementary modulus", is: `sin((pi / 2 - ${slope}) / 2)` },
  {
    symbol: `z_${n}`,
    kind: "number",
    meaning: "end of the substituted range",
    is: `asinh(k_${n} / j_${n} * sqrt(sin(${slope}) / (1 + sin(${slope}))))`,
  },
  {
    symbol: `K_${n}`,
    kind: "number",
    meaning: "K - F by quadrature",
    is: `z_${n} * sum(w_g .* map(g_g, f(x) = 1 / sqrt(k_${n}^2 - (j_${n} * sinh(z_${n} * x))^2)))`,
  },
  { left: alpha, right: `K_${n}^2 + 0 * ${slope}`, meaning: "the slope belongs to the load parameter" },
  {
    symbol: `y_${n}`,
    kind: "number",
    meaning: "drop over the length",
    is: `z_${n} * sum(w_g .* map(g_g, f(x) = (sin(${slope}) - 2 * (j_${n} * sinh(z_${n} * x))^2) / sqrt(k_${n}^2 - (j_${n} * sinh(z_${n} * x))^2))) / K_${n}`,
  },
]

/**
 * How a rod bends that bends far: clamped at one end, a force at its tip.
 *
 * Formula: E·I·θ″ = −P·cos θ (elastica). With α = P·L²/(E·I): √α = K(k) − F(φ₀, k), k² = (1 + sin θ)/2, sin φ₀ =
 * 1/(k·√2); drop = L·(1 − 2·(E(k) − E(φ₀, k))/√α), reach = L·√(2·sin θ/α). θ is the slope of the tip, P the force
 * (multiplied by the factor of `handling`), L the length, E the modulus at the temperature and after the duration, I the
 * second moment. The drop is that of the soft, moment and stress are those of the stiff end of the material's range.
 * Valid for slender elastic rods and α up to 100; below about 0.7 the straight-beam formula is within 5 %.
 *
 * **Inputs**
 * - `length`: length [L; 1 mm to 20 m]
 * - `section`: section [group]
 *   - `pipe`: standard pipe [one of 11 words; optional]
 *   - `outsideDiameter`: outside diameter [D; 0.1 mm to 2 m; optional]
 *   - `width`: width [b_w; 0.1 mm to 2 m; optional]
 *   - `height`: height [h_w; 0.1 mm to 2 m; optional]
 *   - `wall`: wall [t_w; 0.01 mm to 1 m; optional]
 *   - `secondMoment`: second moment of area [I_g; 1e−6 mm⁴ to 1 m⁴; optional]
 *   - `fibre`: distance to the outermost fibre [c_g; 0.01 mm to 1 m; optional]
 *   - `area`: area [A_g; 0.01 mm² to 1 m²; optional]
 *   - exactly one of `pipe`, `outsideDiameter`, `width` with `height` and `secondMoment`
 *   - `wall` only beside `outsideDiameter` or `width` with `height`
 *   - `fibre` only beside `secondMoment`
 *   - `area` only beside `secondMoment`
 * - `material`: material [one of 17 words; optional]
 * - `modulus`: Young's modulus [E_g; 1 MPa to 1000 GPa; optional]
 * - `strength`: yield or breaking stress [S_g; 0.1 MPa to 10 GPa; optional]
 * - `materialTemperature`: temperature of the member [T; −40 to 200 °C; default 23 °C]
 * - `duration`: time the load stands [t_l; 0 to 1000 h; default 0]
 * - `force`: force at the tip [P_g; 0.01 mN to 10 kN]
 * - `handling`: handling [still, walking, sudden or stumble; default still]
 * - at least one of `material` and `modulus`
 *
 * **Results**
 *
 * `loadParameter`: load against stiffness [alpha]; `tipDrop`: tip deflection [y_l to y_t; m]; `tipReach`: horizontal
 * reach of the tip [x_t; m]; `tipSlope`: tip slope [theta_l to theta; rad]; `straightDrop`: small-deflection result
 * [y_s; m]; `clampMoment`: moment at the clamp [M_0; N m]; `bendingStress`: bending stress [sigma; Pa];
 * `safetyFactor`: safety factor [n_s to n_u]; `iterations`: search steps [number]; `residual`: error of the load
 * equation [number].
 *
 * **Symbols of the working**
 *
 * D_p: outside diameter of the pipe, 0 where it is none [m]; t_p: minimum wall of the pipe, 0 where it is none [m];
 * D_o: outside diameter [m]; D_i: inside diameter [m]; A: area of the ring [m²]; I: second moment of the ring [m⁴]; c:
 * neutral axis to outermost fibre [m]; b_i: width inside [m]; h_i: height inside [m]; Q: first moment of half the ring
 * [m³]; b_n: material at the neutral axis [m]; E_l: minimum modulus at 23 °C [Pa]; E_h: maximum modulus at 23 °C [Pa];
 * S_l: minimum strength at 23 °C, 0 where unknown [Pa]; S_h: maximum strength at 23 °C, 0 where unknown [Pa]; S_o:
 * shear strength where the material has its own, else 0 [Pa]; f_E: stiffness left at the temperature; f_S: strength
 * left at the temperature; f_c: stiffness and strength left after the load has stood; S: strength, safe end [Pa]; S_u:
 * strength, other end [Pa]; S_s: shear strength, safe end [Pa]; S_su: shear strength, other end [Pa]; E: modulus, safe
 * end [Pa]; E_u: modulus, other end [Pa]; k_m: factor of handling; g_g: Gauss-Legendre nodes on 0 to 1; w_g:
 * Gauss-Legendre weights; P: force as handled [N]; beta: load against stiffness, stiff end; k_1: modulus of the
 * elliptic integrals; j_1: complementary modulus; z_1: end of the substituted range; K_1: K - F by quadrature; y_1:
 * drop over the length; k_2: modulus of the elliptic integrals; j_2: complementary modulus; z_2: end of the
 * substituted range; K_2: K - F by quadrature; y_2: drop over the length.
 *
 * **Sources**
 * - K. Mattiasson: Numerical results from large deflection beam and frame problems analysed by elliptic integrals,
 *   Int. J. Numer. Meth. Eng. 17, 1981, pages 145-153 (not verified against the document)
 * - R. Frisch-Fay: Flexible Bars, 1962, chapter 2 (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `hangs-down` beyond α = 100; `too-hot` above the material's limit
 * @example
 * ```ts
 * import { bendingRod } from 'alula/frame'
 * const rod = bendingRod({ length: 1, section: { secondMoment: '1 mm4' }, modulus: '100 GPa', force: '0.1 N' })
 * rod.tipDrop.high // => 0.30172
 * rod.tipSlope.high // => 0.46135
 * ```
 */
export const bendingRod: Solver<BendingRodInput, BendingRod, BendingRodRefusal, BendingRodCaution> = /* @__PURE__ */ solver<
  BendingRodInput,
  BendingRod,
  BendingRodRefusal,
  BendingRodCaution
>("bendingRod", "Large deflection of a bending rod", solve, () => ({
  input: {
    length: { kind: "length", symbol: "L", label: "length", min: "1 mm", max: 20, typical: [0.4, 1.2] },
    section: { kind: "group", label: "section", fields: sectionFields, either: sectionRules },
    ...conditionFields,
    force: { kind: "force", symbol: "P_g", label: "force at the tip", min: "0.01 mN", max: 1e4, typical: [0.2, 10] },
    handling: handlingField,
  },
  output: {
    loadParameter: { kind: "number", symbol: "alpha", label: "load against stiffness" },
    tipDrop: bandField("length", "tip deflection", { symbols: ["y_l", "y_t"] }),
    tipReach: { kind: "length", symbol: "x_t", label: "horizontal reach of the tip" },
    tipSlope: bandField("angle", "tip slope", { symbols: ["theta_l", "theta"] }),
    straightDrop: { kind: "length", symbol: "y_s", label: "small-deflection result" },
    clampMoment: { kind: "moment", symbol: "M_0", label: "moment at the clamp" },
    bendingStress: { kind: "pressure", symbol: "sigma", label: "bending stress" },
    safetyFactor: bandField("number", "safety factor", { symbols: ["n_s", "n_u"] }),
    iterations: { kind: "number", label: "search steps" },
    residual: { kind: "number", label: "error of the load equation" },
  },
  example: { length: "900 mm", section: { outsideDiameter: "4 mm" }, material: "carbon-pultruded", force: "1.2 N" },
  formulae: [
    ...sectionSteps<SiOf<BendingRodInput>, BendingRod>((si) => si.section, false, true),
    ...conditionSteps<SiOf<BendingRodInput>, BendingRod>(),
    { symbol: "k_m", kind: "number", meaning: "factor of handling", given: (si) => handlingCases[si.handling].factor },
    { symbol: "g_g", kind: "number", meaning: "Gauss-Legendre nodes on 0 to 1", given: () => legendreRule().nodes },
    { symbol: "w_g", kind: "number", meaning: "Gauss-Legendre weights", given: () => legendreRule().weights },
    { symbol: "P", kind: "force", meaning: "force as handled", is: "k_m * P_g" },
    { symbol: "alpha", meaning: "load against stiffness, soft end", is: "P * L^2 / (E * I)" },
    { symbol: "beta", kind: "number", meaning: "load against stiffness, stiff end", is: "P * L^2 / (E_u * I)" },
    { solved: "theta", meaning: "slope of the tip" },
    ...proof("theta", "alpha", "1"),
    { solved: "theta_l", meaning: "slope of the tip, stiff end" },
    ...proof("theta_l", "beta", "2"),
    { symbol: "y_t", meaning: "tip deflection", is: "y_1 * L" },
    { symbol: "x_t", meaning: "horizontal reach of the tip", is: "sqrt(2 * sin(theta) / alpha) * L" },
    { symbol: "y_s", meaning: "straight-beam formula", is: "P * L^3 / (3 * E * I)" },
    { symbol: "y_l", meaning: "tip deflection, stiff end", is: "y_2 * L" },
    { symbol: "M_0", meaning: "moment at the clamp, stiff end", is: "P * sqrt(2 * sin(theta_l) / beta) * L" },
    { symbol: "sigma", meaning: "bending stress", is: "M_0 * c / I", when: "has_fibre or has_pipe or has_outsideDiameter or has_width" },
    ...(["n_s", "n_u"] as const).map((symbol) => ({
      symbol,
      meaning: symbol === "n_s" ? "safety factor, safe end" : "safety factor, other end",
      is: symbol === "n_s" ? "S / sigma" : "S_u / sigma",
      when: "(has_strength or has_material) and (has_fibre or has_pipe or has_outsideDiameter or has_width) ? sigma > 1 Pa : false",
    })),
  ],
  sources: [MATTIASSON, FRISCH_FAY],
  either: conditionRules,
  check,
  cautions,
}))
