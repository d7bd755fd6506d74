import { type Caution, type NoSolution, refuse, type SiOf, type Solver, solver } from "../../solver/index.js"
import { LEAST_TRANSMISSION, pinchCaution, transmissionCaution } from "../hazards.js"
import { cosineRule, norton } from "../sources.js"
import { type FourBarLinks, linkFields } from "./fields.js"
import { fourBarToggles, longestWithin, ROUNDING, triangleAngle } from "./pose.js"

/** Input of {@link fourBarLimits}. */
export type FourBarLimitsInput = FourBarLinks

/** Result of {@link fourBarLimits}; angles from the line of the fixed pivots. */
export interface FourBarLimits {
  /** Input angle, plus or minus, where coupler and output stand stretched in line; null where never. [theta_x; rad] */
  readonly inputExtended: number | null
  /** Input angle, plus or minus, where coupler and output lie folded in line; null where never. [theta_f; rad] */
  readonly inputFolded: number | null
  /** Range of the input link in one assembly; a whole turn where nothing stops it. [Delta_2; rad] */
  readonly inputSwing: number
  /** Input angle of the output's outer dead point (input and coupler stretched in line), open branch. [theta_o; rad] */
  readonly deadOuter: number | null
  /** Input angle of the output's inner dead point (input and coupler folded in line), open branch. [theta_i; rad] */
  readonly deadInner: number | null
  /** Output angle at the outer dead point [psi_o; rad] */
  readonly outputOuter: number | null
  /** Output angle at the inner dead point [psi_i; rad] */
  readonly outputInner: number | null
  /** Range of the output link in one assembly. [Delta_4; rad] */
  readonly outputSwing: number
  /** Slow stroke over fast stroke at constant input speed; null unless the input turns and the output rocks. [T_r; as a fraction] */
  readonly timeRatio: number | null
  /** Angle between coupler and output with the input pointing at the output pivot. [mu_t; rad] */
  readonly couplerOutputToward: number | null
  /** Angle between coupler and output with the input pointing away from it. [mu_a; rad] */
  readonly couplerOutputAway: number | null
  /** Minimum transmission angle anywhere in the range. [mu_min; rad] */
  readonly minTransmissionAngle: number
}

/** Reasons for which {@link fourBarLimits} refuses. */
export type FourBarLimitsRefusal = "cannot-close"

/** Hazards and limits of validity that go with an answer of {@link fourBarLimits}. */
export type FourBarLimitsCaution = "pinch" | "poor-transmission"

const swing = (low: number | null, high: number | null) =>
  low !== null && high !== null ? high - low : high !== null ? 2 * high : low !== null ? 2 * (Math.PI - low) : 2 * Math.PI

function solve({ ground: d, input: a, coupler: b, output: c }: SiOf<FourBarLimitsInput>): FourBarLimits | NoSolution<FourBarLimitsRefusal> {
  const total = d + a + b + c
  const over = 2 * Math.max(d, a, b, c) - total
  if (over > ROUNDING * total)
    return refuse(
      "cannot-close",
      "The longest link is {shortBy length} longer than the three others together.",
      over,
      { longest: Math.max(d, a, b, c) },
      longestWithin({ ground: d, input: a, coupler: b, output: c }),
    )
  const { extended, folded } = fourBarToggles(d, a, b, c)
  // the output mirrors the input: its interior angle at the output pivot, by the reach of input and coupler
  const inside = fourBarToggles(d, c, b, a)
  const outer = triangleAngle(d, a + b, c)
  const inner = a === b ? null : triangleAngle(d, Math.abs(b - a), c)
  const deadInner = inner === null ? null : b > a ? inner + Math.PI : inner
  const stroke = outer === null || deadInner === null || extended !== null || folded !== null ? null : Math.abs(deadInner - outer)
  const between = (f: number) => triangleAngle(b, c, f)
  const toward = folded === null ? between(Math.abs(d - a)) : null
  const away = extended === null ? between(d + a) : null
  const acute = (angle: number | null) => (angle === null ? 0 : Math.min(angle, Math.PI - angle))
  return {
    inputExtended: extended,
    inputFolded: folded,
    inputSwing: swing(folded, extended),
    deadOuter: outer,
    deadInner,
    outputOuter: inside.extended === null ? null : Math.PI - inside.extended,
    outputInner: inside.folded === null ? null : Math.PI - inside.folded,
    outputSwing: swing(inside.folded, inside.extended),
    timeRatio:
      stroke === null || inside.extended === null || inside.folded === null
        ? null
        : Math.max(stroke, 2 * Math.PI - stroke) / Math.min(stroke, 2 * Math.PI - stroke),
    couplerOutputToward: toward,
    couplerOutputAway: away,
    minTransmissionAngle: Math.min(acute(toward), acute(away)),
  }
}

function cautions(_si: SiOf<FourBarLimitsInput>, out: FourBarLimits): Caution<FourBarLimitsCaution>[] {
  return [
    pinchCaution("The links of a four-bar"),
    ...(out.minTransmissionAngle < LEAST_TRANSMISSION ? [transmissionCaution("minTransmissionAngle", out.minTransmissionAngle)] : []),
  ]
}

/** The angle between two sides of a triangle by the one opposite it, from half of it. */
const between = (side: string, other: string, opposite: string) =>
  `2 * atan2(sqrt(max(0, (${opposite} - abs(${side} - (${other}))) / ${side} * (${opposite} + abs(${side} - (${other}))) / (${other}))), sqrt(max(0, (${side} + ${other} - ${opposite}) / ${side} * (${side} + ${other} + ${opposite}) / (${other}))))`

/** A cosine-rule step that applies where the limit exists. */
const limit = (symbol: string, key: keyof FourBarLimits, meaning: string, angle: string, outside = "#") => [
  {
    symbol: `n_${symbol}`,
    kind: "number" as const,
    meaning: `whether there is a ${meaning}`,
    given: (_: unknown, out: FourBarLimits) => (out[key] === null ? 0 : 1),
  },
  {
    symbol,
    meaning,
    is: outside.replace("#", angle),
    when: `n_${symbol} == 1`,
    source: cosineRule,
  },
]

/**
 * How far the links of a four-bar can go: toggles of the input, dead points and swing of the output,
 * time ratio, and the extreme transmission angles.
 *
 * Formula: cosine rule, by half the angle, tan² θ/2 = (1 − cos θ)/(1 + cos θ), which keeps its digits near lines. Input limits cos θ₂ = (d² + a² − (b ± c)²)/(2·d·a); output dead points where input and coupler
 * are in line, cos θ₂ = (d² + r² − c²)/(2·d·r) with r = a + b (outer) or b − a (inner, the input then points the other
 * way); angle between coupler and output cos μ = (b² + c² − f²)/(2·b·c) with f = d − a or d + a. Time ratio at constant
 * input speed is the larger over the smaller input angle between the dead points. a input, b coupler, c output, d
 * ground, angles in rad. Valid for rigid links and pins without play; limits are where the links lie in line, real ones
 * must stop short of them.
 *
 * Refuses `cannot-close` where the links cannot be joined at all.
 *
 * **Inputs**
 * - `ground`: ground, between the fixed pivots [d; 0.01 mm to 100 m]
 * - `input`: input link [a; 0.01 mm to 100 m]
 * - `coupler`: coupler [b; 0.01 mm to 100 m]
 * - `output`: output link [c; 0.01 mm to 100 m]
 *
 * **Results**
 *
 * `inputExtended`: input limit, coupler and output stretched [theta_x; rad]; `inputFolded`: input limit, coupler and
 * output folded [theta_f; rad]; `inputSwing`: input range [Delta_2; rad]; `deadOuter`: input angle at the outer dead
 * point [theta_o; rad]; `deadInner`: input angle at the inner dead point [theta_i; rad]; `outputOuter`: output angle
 * at the outer dead point [psi_o; rad]; `outputInner`: output angle at the inner dead point [psi_i; rad];
 * `outputSwing`: output range [Delta_4; rad]; `timeRatio`: time ratio [T_r; as a fraction]; `couplerOutputToward`:
 * coupler to output, input towards the output pivot [mu_t; rad]; `couplerOutputAway`: coupler to output, input away
 * from it [mu_a; rad]; `minTransmissionAngle`: minimum transmission angle [mu_min; rad].
 *
 * **Symbols of the working**
 *
 * n_theta_x: whether there is a input limit, stretched; n_theta_f: whether there is a input limit, folded; n_theta_o:
 * whether there is a outer dead point; turned: half turn of the input at the inner dead point; n_theta_i: whether
 * there is a inner dead point; n_psi_o: whether there is a output angle at the outer dead point; n_psi_i: whether
 * there is a output angle at the inner dead point; n_T: whether the input turns and the output rocks; beta: input
 * angle between the dead points; n_mu_t: whether there is a coupler to output, input towards the output pivot; n_mu_a:
 * whether there is a coupler to output, input away from it.
 *
 * **Sources**
 * - R. L. Norton (McGraw-Hill): Design of Machinery, 5th ed., 2012, chapters 2 to 8 (not verified against the
 *   document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError where the links cannot be joined at all
 * @example
 * ```ts
 * import { fourBarLimits } from 'alula/linkage'
 * const limits = fourBarLimits({ ground: '100 mm', input: '40 mm', coupler: '120 mm', output: '80 mm' })
 * limits.outputSwing // => 1.28774
 * limits.timeRatio // => 1.35557
 * ```
 */
export const fourBarLimits: Solver<FourBarLimitsInput, FourBarLimits, FourBarLimitsRefusal, FourBarLimitsCaution> = /* @__PURE__ */ solver<
  FourBarLimitsInput,
  FourBarLimits,
  FourBarLimitsRefusal,
  FourBarLimitsCaution
>("fourBarLimits", "How far the links of a four-bar can swing", solve, () => ({
  input: linkFields,
  output: {
    inputExtended: { kind: "angle", symbol: "theta_x", label: "input limit, coupler and output stretched" },
    inputFolded: { kind: "angle", symbol: "theta_f", label: "input limit, coupler and output folded" },
    inputSwing: { kind: "angle", symbol: "Delta_2", label: "input range" },
    deadOuter: { kind: "angle", symbol: "theta_o", label: "input angle at the outer dead point" },
    deadInner: { kind: "angle", symbol: "theta_i", label: "input angle at the inner dead point" },
    outputOuter: { kind: "angle", symbol: "psi_o", label: "output angle at the outer dead point" },
    outputInner: { kind: "angle", symbol: "psi_i", label: "output angle at the inner dead point" },
    outputSwing: { kind: "angle", symbol: "Delta_4", label: "output range" },
    timeRatio: { kind: "ratio", symbol: "T_r", label: "time ratio", unit: "x" },
    couplerOutputToward: { kind: "angle", symbol: "mu_t", label: "coupler to output, input towards the output pivot" },
    couplerOutputAway: { kind: "angle", symbol: "mu_a", label: "coupler to output, input away from it" },
    minTransmissionAngle: { kind: "angle", symbol: "mu_min", label: "minimum transmission angle" },
  },
  example: { ground: "100 mm", input: "40 mm", coupler: "120 mm", output: "80 mm" },
  formulae: [
    ...limit("theta_x", "inputExtended", "input limit, stretched", between("d", "a", "(b + c)")),
    ...limit("theta_f", "inputFolded", "input limit, folded", between("d", "a", "abs(b - c)")),
    { symbol: "Delta_2", meaning: "nothing stops the input", is: "2 * pi", when: "n_theta_x == 0 and n_theta_f == 0" },
    { symbol: "Delta_2", meaning: "range between both limits", is: "theta_x - theta_f", when: "n_theta_x == 1 and n_theta_f == 1" },
    { symbol: "Delta_2", meaning: "range about the ground line", is: "2 * theta_x", when: "n_theta_x == 1 and n_theta_f == 0" },
    {
      symbol: "Delta_2",
      meaning: "range about the far ground line",
      is: "2 * (pi - theta_f)",
      when: "n_theta_x == 0 and n_theta_f == 1",
    },
    ...limit("theta_o", "deadOuter", "outer dead point", between("d", "a + b", "c")),
    {
      symbol: "turned",
      kind: "number",
      meaning: "half turn of the input at the inner dead point",
      given: (si) => (si.coupler > si.input ? Math.PI : 0),
    },
    ...limit("theta_i", "deadInner", "inner dead point", between("d", "abs(b - a)", "c"), "turned + #"),
    ...limit("psi_o", "outputOuter", "output angle at the outer dead point", between("d", "c", "(b + a)"), "pi - #"),
    ...limit("psi_i", "outputInner", "output angle at the inner dead point", between("d", "c", "abs(b - a)"), "pi - #"),
    { symbol: "Delta_4", meaning: "nothing stops the output", is: "2 * pi", when: "n_psi_o == 0 and n_psi_i == 0" },
    { symbol: "Delta_4", meaning: "swing between the dead points", is: "psi_i - psi_o", when: "n_psi_o == 1 and n_psi_i == 1" },
    { symbol: "Delta_4", meaning: "swing about the far ground line", is: "2 * (pi - psi_o)", when: "n_psi_o == 1 and n_psi_i == 0" },
    { symbol: "Delta_4", meaning: "swing about the ground line", is: "2 * psi_i", when: "n_psi_o == 0 and n_psi_i == 1" },
    {
      symbol: "n_T",
      kind: "number",
      meaning: "whether the input turns and the output rocks",
      given: (_, out) => (out.timeRatio === null ? 0 : 1),
    },
    { symbol: "beta", kind: "number", meaning: "input angle between the dead points", is: "abs(theta_i - theta_o)", when: "n_T == 1" },
    {
      symbol: "T_r",
      meaning: "slow stroke over fast stroke",
      is: "max(beta, 2 * pi - beta) / min(beta, 2 * pi - beta)",
      when: "n_T == 1",
    },
    ...limit("mu_t", "couplerOutputToward", "coupler to output, input towards the output pivot", between("b", "c", "abs(d - a)")),
    ...limit("mu_a", "couplerOutputAway", "coupler to output, input away from it", between("b", "c", "(d + a)")),
    { symbol: "mu_min", meaning: "a limit puts coupler and output in line", is: "0", when: "n_mu_t == 0 or n_mu_a == 0" },
    {
      symbol: "mu_min",
      meaning: "minimum transmission angle",
      is: "min(mu_t, pi - mu_t, mu_a, pi - mu_a)",
      when: "n_mu_t == 1 and n_mu_a == 1",
    },
  ],
  sources: [norton],
  cautions,
}))
