import type { Moment, Ratio, Time } from "../../quantity/index.js"
import { at, type Caution, caution, type NoSolution, optionsFrom, refuse, type SiOf, type Solver, solver } from "../../solver/index.js"
import { takeItOff } from "../care.js"
import { EL_AHRACHE, FREY_LAW_2010, KAMON, ROHMERT_1973 } from "../sources-load.js"
import {
  enduranceModels,
  enduranceSources,
  holdingTime,
  type Joint,
  powerLaws,
  restKamon,
  restRohmert,
  rohmertEffort,
} from "./data-endurance.js"

/** Input of {@link endurance}. Give `effort`, or `moment` and `maxMoment`. */
export interface EnduranceInput {
  /** Joint that holds. [general, ankle, knee, trunk, shoulder, elbow or hand-grip] */
  joint: Joint
  /** Share of maximum strength [f_g; 0.01 to 1; optional] */
  effort?: Ratio | null
  /** Moment held [M; 0.1 to 500 N m; optional] */
  moment?: Moment | null
  /** Maximum moment the wearer can make there. [M_m; 1 to 600 N m; optional] */
  maxMoment?: Moment | null
  /** Time it is to be held. [t_h; 1 s to 24 h; optional] */
  holdDuration?: Time | null
}

/** What one model says. */
export interface EnduranceReading {
  /** Model [text] */
  readonly model: string
  /** Holding time [s] */
  readonly enduranceTime: number
}

/** Reasons for which {@link endurance} can refuse. */
export type EnduranceRefusal = "insufficient-strength"

/** Hazards and limits that an answer of {@link endurance} can carry. */
export type EnduranceCaution = "hold-too-long" | "low-effort" | "models-disagree" | "strength-varies" | "take-it-off" | "to-exhaustion"

/** Result of {@link endurance}. */
export interface Endurance {
  /** Share of the maximum force. [f; as a fraction] */
  readonly effort: number
  /** Holding time by the joint's power law. [t_j; s] */
  readonly jointEnduranceTime: number
  /** Holding time, muscle in general [t_g; s] */
  readonly generalEnduranceTime: number
  /** Holding time by Rohmert's curve; from 15 % effort. [t_r; s] */
  readonly rohmertEnduranceTime: number | null
  /** Holding time to plan with: the shortest of these. [t; s] */
  readonly enduranceTime: number
  /** Every model that applies. [list] */
  readonly readings: readonly EnduranceReading[]
  /** The hold against the time to plan with. [q; as a fraction] */
  readonly utilisation: number | null
  /** Rest after the hold, the longer of two forms; null without a hold or below 15 % effort. [t_p; s] */
  readonly restDuration: number | null
  /** Largest effort whose time to plan with is not less than the hold. [f_h; as a fraction] */
  readonly maxEffort: number | null
}

function solve(si: SiOf<EnduranceInput>): Endurance | NoSolution<EnduranceRefusal> {
  const { joint, holdDuration } = si
  const effort = si.effort ?? (si.moment as number) / (si.maxMoment as number)
  if (!(effort <= 1)) {
    const [moment, strength] = [si.moment as number, si.maxMoment as number]
    return refuse(
      "insufficient-strength",
      "Holding {moment moment N m} asks for {shortBy moment N m} more than the wearer's maximum of {nearest.moment moment N m}: bring the mass closer to the joint, or hang part of it on a counterweight.",
      moment - strength,
      { moment },
      { moment: strength },
    )
  }
  const jointEnduranceTime = holdingTime(joint, effort)
  const generalEnduranceTime = holdingTime("general", effort)
  const rohmert = enduranceModels.rohmert1960 as (typeof enduranceModels)[string]
  const rohmertEnduranceTime = effort >= rohmert.from ? 60 * rohmert.minutes(effort) : null
  const enduranceTime = Math.min(jointEnduranceTime, generalEnduranceTime, rohmertEnduranceTime ?? jointEnduranceTime)
  const readings = [
    { model: `power law, ${powerLaws[joint].label}`, enduranceTime: jointEnduranceTime },
    ...(joint === "general" ? [] : [{ model: `power law, ${powerLaws.general.label}`, enduranceTime: generalEnduranceTime }]),
    ...Object.values(enduranceModels)
      .filter((m) => effort >= m.from && (m.joint === null || m.joint === joint))
      .map((m) => ({ model: m.label, enduranceTime: 60 * m.minutes(effort) })),
  ]
  // what a power law allows below Rohmert's range stands; above it Rohmert's curve may ask for less
  const byRohmert = holdDuration === null ? 1 : Math.max(rohmert.from, rohmertEffort(holdDuration))
  const effortFor = (of: Joint) => ((holdDuration as number) / powerLaws[of].b0) ** (1 / powerLaws[of].b1)
  return {
    effort,
    jointEnduranceTime,
    generalEnduranceTime,
    rohmertEnduranceTime,
    enduranceTime,
    readings,
    utilisation: holdDuration === null ? null : holdDuration / enduranceTime,
    restDuration:
      holdDuration === null || effort < 0.15
        ? null
        : Math.max(restKamon(holdDuration, enduranceTime, effort), restRohmert(holdDuration, enduranceTime, effort)),
    maxEffort: holdDuration === null ? null : Math.min(1, effortFor(joint), effortFor("general"), byRohmert),
  }
}

function cautions(si: SiOf<EnduranceInput>, out: Endurance): Caution<EnduranceCaution>[] {
  const found: Caution<EnduranceCaution>[] = [
    takeItOff,
    caution(
      "to-exhaustion",
      "warning",
      "Holding times are to exhaustion of adult volunteers who held as long as they could: plan with a third of them at most. None is known for children.",
      KAMON,
    ),
  ]
  if (out.effort < 0.15)
    found.push(
      caution(
        "low-effort",
        "caution",
        "Below 15 % the laws are extrapolated: the old claim that 15 % can be held without end is rejected by later work. For hours of wear stay below about 5 %, with pauses.",
        FREY_LAW_2010,
      ),
    )
  const times = out.readings.map((r) => r.enduranceTime)
  const [shortest, longest] = [Math.min(...times), Math.max(...times)]
  if (longest > 1.5 * shortest)
    found.push(
      caution(
        "models-disagree",
        "note",
        "Published models say {shortest time s} to {longest time s} here; people differ as much again.",
        EL_AHRACHE,
        { shortest, longest },
      ),
    )
  if (out.utilisation !== null && out.utilisation > 1 / 3)
    found.push(
      caution(
        "hold-too-long",
        "warning",
        "The hold takes {utilisation ratio %} of the time to exhaustion: support the load on the hips, a frame or a counterweight, or shorten it.",
        KAMON,
        { utilisation: out.utilisation },
      ),
    )
  if (si.moment !== null)
    found.push(
      caution(
        "strength-varies",
        "note",
        "Strength differs between people by a factor of three and more: measure the wearer or take the weakest.",
        at(KAMON, "table 2.2.2"),
      ),
    )
  return found
}

/**
 * How long a static effort can be held, by joint.
 *
 * With f the share of the maximum force (or moment over strength): joint power law t = b₀·f^b₁ (s; b₀ and b₁ by
 * joint), muscle in general t = 11.4·f^−2.42, Rohmert t = 60·(−1.5 + 2.1/f − 0.6/f² + 0.1/f³) (s, from f = 0.15).
 * `enduranceTime` is the shortest of them, and `maxEffort` the largest f whose shortest time still reaches the hold;
 * `readings` holds further published models. Rest after a hold of t: the longer of 1080·(t/T)^1.4·(f − 0.15)^0.5 s
 * (Kamon) and 18·(t/T)^1.4·(f − 0.15)^0.5·t (Rohmert), from f = 0.15. Valid for 0.15 ≤ f ≤ 1 in unmoved postures of
 * adults; below, an extrapolation with a caution.
 *
 * **Inputs**
 * - `joint`: joint [general, ankle, knee, trunk, shoulder, elbow or hand-grip]
 * - `effort`: share of maximum strength [f_g; 0.01 to 1; optional]
 * - `moment`: moment held [M; 0.1 to 500 N m; optional]
 * - `maxMoment`: maximum moment of the joint [M_m; 1 to 600 N m; optional]
 * - `holdDuration`: time it is held [t_h; 1 s to 24 h; optional]
 * - exactly one of `effort` and `moment` with `maxMoment`
 *
 * **Results**
 *
 * `effort`: effort [f; as a fraction]; `jointEnduranceTime`: holding time, joint [t_j; s]; `generalEnduranceTime`:
 * holding time, muscle in general [t_g; s]; `rohmertEnduranceTime`: holding time, Rohmert [t_r; s]; `enduranceTime`:
 * holding time to plan with [t; s]; `readings`: models [list]; `utilisation`: utilisation [q; as a fraction];
 * `restDuration`: rest after the hold [t_p; s]; `maxEffort`: effort that can be held so long [f_h; as a fraction].
 *
 * **Symbols of the working**
 *
 * b_0: coefficient of the joint in s; b_1: exponent of the joint; r_w: 1 where Rohmert's curve and the rest forms
 * apply; u_1: Rohmert's cubic in 1/f, turned round by Cardano; w_1: its cube root, the term that does not cancel.
 *
 * **Sources**
 * - L. A. Frey Law, K. G. Avin: Endurance time is joint-specific: a modelling and meta-analysis investigation,
 *   Ergonomics 53, 2010, power models by joint (not verified against the document)
 * - A. T. Johnson (after E. Kamon 1981): Biomechanics and Exercise Physiology, 1991, equations 2.6.1 to 2.6.4, table
 *   2.2.2
 * - K. El ahrache, D. Imbeau, B. Farbos: Percentile values for determining maximum endurance times for static muscular
 *   work, Int. J. Ind. Ergon. 36, 2006, models compared, Rohmert 1960 among them (not verified against the document)
 * - W. Rohmert: Problems of determination of rest allowances, Applied Ergonomics 4, 1973, rest after a static hold
 *   (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `insufficient-strength`, by how much
 * @example
 * ```ts
 * import { endurance } from 'alula/worn'
 * const arms = endurance({ joint: 'shoulder', effort: '30 %' })
 * arms.jointEnduranceTime // => 134.6
 * arms.enduranceTime // => 134.6
 * ```
 */
export const endurance: Solver<EnduranceInput, Endurance, EnduranceRefusal, EnduranceCaution> = /* @__PURE__ */ solver<
  EnduranceInput,
  Endurance,
  EnduranceRefusal,
  EnduranceCaution
>("endurance", "How long a joint can hold a static load", solve, () => ({
  input: {
    joint: { kind: "choice", label: "joint", options: optionsFrom(powerLaws, (key) => powerLaws[key].label) },
    effort: {
      kind: "ratio",
      symbol: "f_g",
      label: "share of maximum strength",
      min: 0.01,
      max: 1,
      typical: [0.05, 0.7],
      default: null,
    },
    moment: { kind: "moment", symbol: "M", label: "moment held", min: 0.1, max: 500, typical: [2, 60], default: null },
    maxMoment: {
      kind: "moment",
      symbol: "M_m",
      label: "maximum moment of the joint",
      min: 1,
      max: 600,
      typical: [60, 240],
      default: null,
    },
    holdDuration: { kind: "time", symbol: "t_h", label: "time it is held", min: 1, max: 86400, typical: [5, 600], default: null },
  },
  output: {
    effort: { kind: "ratio", symbol: "f", label: "effort", unit: "%" },
    jointEnduranceTime: { kind: "time", symbol: "t_j", label: "holding time, joint" },
    generalEnduranceTime: { kind: "time", symbol: "t_g", label: "holding time, muscle in general" },
    rohmertEnduranceTime: { kind: "time", symbol: "t_r", label: "holding time, Rohmert" },
    enduranceTime: { kind: "time", symbol: "t", label: "holding time to plan with" },
    readings: {
      kind: "list",
      label: "models",
      of: {
        kind: "group",
        label: "model",
        fields: { model: { kind: "text", label: "model" }, enduranceTime: { kind: "time", label: "holding time" } },
      },
    },
    utilisation: { kind: "ratio", symbol: "q", label: "utilisation", unit: "%" },
    restDuration: { kind: "time", symbol: "t_p", label: "rest after the hold" },
    maxEffort: { kind: "ratio", symbol: "f_h", label: "effort that can be held so long", unit: "%" },
  },
  example: { joint: "shoulder", effort: 0.3, holdDuration: "30 s" },
  formulae: [
    { symbol: "f", meaning: "effort as given", is: "f_g", when: "has_effort" },
    { symbol: "f", meaning: "effort by moments", is: "M / M_m", when: "has_moment" },
    {
      symbol: "b_0",
      kind: "number",
      meaning: "coefficient of the joint in s",
      given: (si) => powerLaws[si.joint].b0,
      source: FREY_LAW_2010,
    },
    {
      symbol: "b_1",
      kind: "number",
      meaning: "exponent of the joint",
      given: (si) => powerLaws[si.joint].b1,
      source: FREY_LAW_2010,
    },
    { symbol: "t_j", meaning: "joint's power law", is: "b_0 * f^b_1 * (1 s)" },
    { symbol: "t_g", meaning: "muscle in general", is: "11.4 * f^(-2.42) * (1 s)", source: at(KAMON, "equation 2.6.3") },
    { symbol: "t", meaning: "shorter of the two", is: "min(t_j, t_g)" },
    {
      symbol: "r_w",
      kind: "number",
      meaning: "1 where Rohmert's curve and the rest forms apply",
      given: (_, out) => (out.effort >= 0.15 ? 1 : 0),
    },
    {
      symbol: "t_r",
      meaning: "Rohmert",
      is: "60 * (-1.5 + 2.1 / f - 0.6 / f^2 + 0.1 / f^3) * (1 s)",
      when: "r_w == 1",
      source: EL_AHRACHE,
    },
    { symbol: "t", meaning: "or Rohmert's", is: "min(t, t_r)", when: "r_w == 1" },
    { symbol: "q", meaning: "hold against it", is: "t_h / t", when: "has_holdDuration" },
    {
      symbol: "t_p",
      meaning: "rest: the longer of Kamon and Rohmert",
      is: "(t_h / t)^1.4 * max(f - 0.15, 0)^0.5 * max(1080 s, 18 * t_h)",
      when: "has_holdDuration and r_w == 1",
      source: ROHMERT_1973,
    },
    {
      symbol: "u_1",
      kind: "number",
      meaning: "Rohmert's cubic in 1/f, turned round by Cardano",
      is: "t_h / (1 s) / 12 - 5.5",
      when: "has_holdDuration",
    },
    {
      symbol: "w_1",
      kind: "number",
      meaning: "its cube root, the term that does not cancel",
      is: "u_1 >= 0 ? cbrt(u_1 + sqrt(u_1^2 + 27)) : 3 / cbrt(sqrt(u_1^2 + 27) - u_1)",
      when: "has_holdDuration",
    },
    {
      symbol: "f_h",
      meaning: "effort whose time is the hold",
      is: "min(1, (t_h / (1 s) / b_0)^(1 / b_1), (t_h / (1 s) / 11.4)^(-1 / 2.42), max(0.15, 1 / (2 + w_1 - 3 / w_1)))",
      when: "has_holdDuration",
    },
  ],
  sources: enduranceSources,
  either: [{ exactlyOne: ["effort", ["moment", "maxMoment"]] }],
  cautions,
}))
