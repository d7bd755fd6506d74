import { type NoSolution, refuse, type SiOf, type Solver, type Step, solver } from "../../../solver/index.js"
import { CAPSTAN } from "../../sources-load.js"
import { wearerFields } from "../../wearer.js"
import { heavierShoulder, hipBeltShare, strapPressureLimit, strapSources } from "../data-straps.js"
import { strapPressureCautions } from "./cautions.js"
import type { Held, Levers, StrapPressure, StrapPressureCaution, StrapPressureInput, StrapPressureRefusal } from "./types.js"

export type { StrapPressure, StrapPressureInput } from "./types.js"

const GRAVITY = 9.80665

/** Equilibrium of the rig for a ratio of the tension ahead of the shoulder to that behind. */
function held(si: SiOf<StrapPressureInput>, ratio: number, wanted: number): Held {
  const weight = GRAVITY * si.rigMass
  const lift = Math.sin(si.upperAngle) + ratio * Math.sin(si.lowerAngle)
  const turn = Math.cos(si.upperAngle) * si.upperAnchor + ratio * Math.cos(si.lowerAngle) * si.lowerAnchor
  const hanging = (weight * si.centreOffset) / turn
  const resting = (weight - wanted) / lift
  const behind = Math.max(resting, hanging)
  // where the rig hangs the upper edge does not press at all, whatever the rounding of the difference
  const upperPush = resting > hanging ? (behind * turn - weight * si.centreOffset) / si.upperAnchor : 0
  const push = behind * (Math.cos(si.upperAngle) + ratio * Math.cos(si.lowerAngle))
  return { behind, ahead: ratio * behind, belt: weight - behind * lift, upperPush, lowerPush: push - upperPush }
}

/** Highest upper and lower anchors taken, m, and the closest centre. */
const ANCHORS = { upper: 0.9, lower: 0.4 } as const
const CLOSEST = 0.001
/** A nanometre beyond the edge, so that rounding cannot refuse again what is offered as nearest. */
const BEYOND = 1e-9

function leversOf(si: SiOf<StrapPressureInput>): Levers {
  const [up, low] = [Math.cos(si.upperAngle), Math.cos(si.lowerAngle)]
  return {
    up,
    lower: { low, high: low * Math.exp(si.shoulderFriction * si.wrapAngle) },
    lift: Math.sin(si.upperAngle) + Math.sin(si.lowerAngle),
  }
}

/** How far the straps' moment about the belt is from holding the rig, m; both positive where it hangs. */
function hold(si: SiOf<StrapPressureInput>): { readonly levers: number; readonly tips: number } {
  const { up, lower, lift } = leversOf(si)
  return {
    levers: up * si.upperAnchor + lower.high * Math.min(si.lowerAnchor, 0),
    tips: (up * si.upperAnchor + lower.low * si.lowerAnchor) / lift - si.centreOffset,
  }
}

/** Changes, each by itself, with which the rig hangs; only those within the fields' limits that do. */
function nearestHung(si: SiOf<StrapPressureInput>): Record<string, number> {
  const { up, lower: pull, lift } = leversOf(si)
  const { upperAnchor, lowerAnchor, centreOffset } = si
  const upper = Math.max((-pull.high * Math.min(lowerAnchor, 0)) / up, (centreOffset * lift - pull.low * lowerAnchor) / up) + BEYOND
  const lower = Math.max((-up * upperAnchor) / pull.high, (centreOffset * lift - up * upperAnchor) / pull.low) + BEYOND
  const closer = (up * upperAnchor + pull.low * lowerAnchor) / lift - BEYOND
  const offered = {
    ...(closer < centreOffset && closer >= CLOSEST ? { centreOffset: closer } : {}),
    ...(upper > upperAnchor && upper <= ANCHORS.upper ? { upperAnchor: upper } : {}),
    ...(lower > lowerAnchor && lower <= ANCHORS.lower ? { lowerAnchor: lower } : {}),
  }
  return Object.fromEntries(
    Object.entries(offered).filter(([name, value]) => {
      const { levers, tips } = hold({ ...si, [name]: value })
      return levers > 0 && tips >= 0
    }),
  )
}

function solve(si: SiOf<StrapPressureInput>): StrapPressure | NoSolution<StrapPressureRefusal> {
  const weight = GRAVITY * si.rigMass
  const tensionRatio = Math.exp(si.shoulderFriction * si.wrapAngle)
  const { levers, tips } = hold(si)
  if (!(levers > 0))
    return refuse(
      "cannot-balance",
      "The lower straps pull below the hip belt harder than the upper straps hold: the rig tips back. Raise the upper anchors by more than {shortBy length mm}, or bring the lower ones up to the belt.",
      Math.max(-levers / Math.cos(si.upperAngle), BEYOND),
      { upperAnchor: si.upperAnchor },
      nearestHung(si),
    )
  if (!(tips >= 0))
    return refuse(
      "hangs-back",
      "The rig's centre is {centreOffset length mm} behind the back, {shortBy length mm} too far: the straps that keep it from tipping would lift it off the hips. Bring it closer or raise the anchors.",
      -tips,
      { centreOffset: si.centreOffset },
      nearestHung(si),
    )
  const beltCapacity = 2 * Math.PI * si.beltFriction * si.beltTension
  const wanted = Math.min(si.beltShare * weight, beltCapacity)
  const free = held(si, 1, wanted)
  const pressureLimit = Math.min(si.pressureLimit, strapPressureLimit)
  const either = [held(si, tensionRatio, wanted), held(si, 1 / tensionRatio, wanted), free]
  const most = Math.max(...either.flatMap((h) => [h.behind, h.ahead]))
  const maxTension = si.heavierShoulderShare * most
  const maxPressure = maxTension / (si.shoulderRadius * si.strapWidth)
  const minWidth = maxTension / (si.shoulderRadius * pressureLimit)
  const beltPressure = si.beltTension / (si.hipRadius * si.beltWidth)
  return {
    beltLoad: free.belt,
    shoulderLoad: weight - free.belt,
    beltShare: free.belt / weight,
    beltCapacity,
    beltSlips: si.beltShare * weight > beltCapacity,
    upperPush: free.upperPush,
    lowerPush: free.lowerPush,
    tension: free.behind,
    tensionRatio,
    maxTension,
    pressure: (si.heavierShoulderShare * free.behind) / (si.shoulderRadius * si.strapWidth),
    maxPressure,
    pressureLimit,
    utilisation: maxPressure / pressureLimit,
    beltPressure,
    beltUtilisation: beltPressure / pressureLimit,
    withinLimit: maxPressure <= pressureLimit && beltPressure <= pressureLimit,
    minWidth,
    suggestedWidth: Math.ceil(minWidth / 0.005 - 1e-9) * 0.005,
    massAtLimit: loadFor(si, pressureLimit, tensionRatio),
  }
}

/** Load whose maximum strap tension just meets the limit; the belt's share is capped by friction, so two cases. */
function loadFor(si: SiOf<StrapPressureInput>, limit: number, tensionRatio: number): number {
  const allowed = (limit * si.shoulderRadius * si.strapWidth) / si.heavierShoulderShare
  const loads = [tensionRatio, 1 / tensionRatio, 1].map((ratio) => {
    const behind = allowed / Math.max(1, ratio)
    const lift = Math.sin(si.upperAngle) + ratio * Math.sin(si.lowerAngle)
    const turn = Math.cos(si.upperAngle) * si.upperAnchor + ratio * Math.cos(si.lowerAngle) * si.lowerAnchor
    const capacity = 2 * Math.PI * si.beltFriction * si.beltTension
    return Math.min((behind * lift) / (1 - si.beltShare), behind * lift + capacity, (behind * turn) / si.centreOffset)
  })
  return Math.min(...loads) / GRAVITY
}

/** Tension behind the shoulder for one ratio of the tensions, and the load that meets the limit with it. */
function caseSteps(index: 1 | 2 | 3, ratio: string, meaning: string): readonly Step<SiOf<StrapPressureInput>, StrapPressure>[] {
  const n = `n_${index}`
  const lift = `(sin(a_u) + ${n} * sin(a_l))`
  const turn = `(cos(a_u) * h_u + ${n} * cos(a_l) * h_l)`
  return [
    { symbol: n, kind: "number", meaning: `tension ahead over behind: ${meaning}`, is: ratio },
    {
      symbol: `T_${index}`,
      kind: "force",
      meaning: "tension behind: upward balance, or tipping where that asks for more",
      is: `max((W_0 - W_b) / ${lift}, W_0 * x_c / ${turn})`,
    },
    {
      symbol: `L_${index}`,
      kind: "force",
      meaning: "weight whose strap tension meets the limit",
      is: `min(T_a / max(1, ${n}) * ${lift} / (1 - q_b), T_a / max(1, ${n}) * ${lift} + F_B, T_a / max(1, ${n}) * ${turn} / x_c)`,
    },
  ]
}

const length = (symbol: string, label: string, min: string, max: string, typical: readonly [string, string]) =>
  ({ kind: "length", symbol, label, min: min as "1 mm", max: max as "1 mm", typical: typical as ["1 mm", "1 mm"] }) as const
const force = (symbol: string, label: string) => ({ kind: "force", symbol, label }) as const
const pressure = (symbol: string, label: string) => ({ kind: "pressure", symbol, label, unit: "kPa" }) as const

/**
 * What the straps press with: split between shoulders and hip belt, tension, contact pressure and the width to choose.
 *
 * The rig (weight W = m·g, centre x_c behind the back panel) is held by the upper straps (anchors h_u above the belt,
 * rising at α_u), the lower straps (h_l, rising at α_l), the belt and the push of the back. Upward: T·(sin α_u + n·sin
 * α_l) + B = W; about the belt: T·(cos α_u·h_u + n·cos α_l·h_l) = W·x_c + N_u·h_u with the push N_u ≥ 0; so T = max[(W
 * − B)/(sin α_u + n·sin α_l), W·x_c/(cos α_u·h_u + n·cos α_l·h_l)]. The belt takes B = min(share·W, 2π·μ_b·T_b) (T_b
 * the belt's tension, μ_b its friction). Friction over the shoulder lets the ratio n lie anywhere between e^(−μ·θ) and
 * e^(μ·θ) (friction μ, wrap θ): the tighter end of either extreme counts, an upper bound. Pressure of one strap: p =
 * c·T/(r·w), c the share of the more loaded shoulder, r the radius under the strap, w its width; width
 * needed: c·T/(r·p_limit), p_limit the published limit or a lower one given. The belt presses with T_b/(r_b·w_b), held to the same
 * limit. Mean over the width, standing still: edges and steps press harder. The belt share and the pressure limit are
 * common practice and not settled. Valid for a rigid rig on a standing adult, straps at rest.
 *
 * Strap angles, radii and friction are common practice, without a source.
 *
 * **Inputs**
 * - `rigMass`: rig mass on the straps [m_r; 10 g to 150 kg]
 * - `centreOffset`: centre behind the back panel [x_c; 1 mm to 1 m]
 * - `upperAnchor`: upper anchors above the belt [h_u; 0.1 m to 900 mm; default 0.42 m]
 * - `lowerAnchor`: lower anchors above the belt [h_l; −0.3 to 0.4 m; default 0]
 * - `upperAngle`: rise of the upper straps [a_u; 0 to 75°; default 35°]
 * - `lowerAngle`: rise of the lower straps [a_l; 10° to 85°; default 50°]
 * - `beltShare`: share the belt is to take [q_b; 0 to 0.95; default 0.3]
 * - `beltTension`: tension in the belt [T_b; 0 to 300 N; default 60 N]
 * - `beltFriction`: friction of the belt [mu_b; 0 to 1.5; default 0.3]
 * - `beltWidth`: width of the belt [w_b; 20 to 300 mm; default 60 mm]
 * - `hipRadius`: radius of the hips [r_b; 80 to 300 mm; default 150 mm]
 * - `strapWidth`: width of one strap [w; 5 to 200 mm]
 * - `shoulderRadius`: radius of the shoulder [r; 20 to 150 mm; default 60 mm]
 * - `wrapAngle`: wrap around the shoulder [theta; 0 to 180°; default 120°]
 * - `shoulderFriction`: friction over the shoulder [mu; 0 to 1; default 0.3]
 * - `heavierShoulderShare`: share of the more loaded shoulder [c; 0.5 to 1; default 0.65]
 * - `pressureLimit`: pressure limit [p_l; 1 to 100 kPa; default 14 kPa]
 *
 * **Results**
 *
 * `beltLoad`: weight on the belt [F_b; N]; `shoulderLoad`: weight on the shoulders [F_s; N]; `beltShare`: share of the
 * belt [q; as a fraction]; `beltCapacity`: most the belt holds [F_B; N]; `beltSlips`: belt slips [yes or no];
 * `upperPush`: push of the back, upper edge [N_u; N]; `lowerPush`: push of the back, belt [N_l; N]; `tension`: tension
 * of both straps, no friction [T; N]; `tensionRatio`: friction's ratio of tensions [k]; `maxTension`: maximum tension
 * of one strap [T_m; N]; `pressure`: pressure, no friction [p; Pa]; `maxPressure`: maximum pressure [p_m; Pa];
 * `pressureLimit`: limit that counts [p_a; Pa]; `utilisation`: utilisation [q_p; as a fraction]; `beltPressure`:
 * pressure of the belt [p_b; Pa]; `beltUtilisation`: utilisation of the belt [q_t; as a fraction]; `withinLimit`:
 * straps and belt within the limit [yes or no]; `minWidth`: minimum width [w_n; m]; `suggestedWidth`: suggested width
 * [w_c; m]; `massAtLimit`: maximum mass for this strap [m_l; kg].
 *
 * **Symbols of the working**
 *
 * W_0: weight [N]; W_b: what the belt is to take [N]; T_a: tension of both straps at the limit [N]; n_1: tension ahead
 * over behind: no friction; T_1: tension behind: upward balance, or tipping where that asks for more [N]; L_1: weight
 * whose strap tension meets the limit [N]; n_2: tension ahead over behind: ahead tighter; T_2: tension behind: upward
 * balance, or tipping where that asks for more [N]; L_2: weight whose strap tension meets the limit [N]; n_3: tension
 * ahead over behind: behind tighter; T_3: tension behind: upward balance, or tipping where that asks for more [N];
 * L_3: weight whose strap tension meets the limit [N].
 *
 * **Sources**
 * - B. R. Macias and others: Asymmetric loads and pain associated with backpack carrying by children, J. Pediatr.
 *   Orthop. 28, 2008, abstract
 * - M. LaFiandra, E. Harman: The distribution of forces between the upper and lower back during load carriage, Med.
 *   Sci. Sports Exerc. 36, 2004, abstract: about 30 % of the vertical force on the lower back (not verified against
 *   the document)
 * - P. D. Wettenschwiler and others: Validation of an instrumented dummy to assess mechanical aspects of discomfort
 *   during load carriage, PLoS ONE 12, e0180069, 2017, abstract: hip belt tensions of 30, 60, 90 and 120 N
 * - S. Golriz and others: The effect of shoulder strap width and load placement on shoulder-backpack interface
 *   pressure, 2017, abstract: widths of 5 to 8 cm under 20 kg
 * - M. Holewijn: Physiological strain due to load carrying, Eur. J. Appl. Physiol. 61, 1990, abstract
 * - L. Euler, J. A. Eytelwein: Capstan equation: tension of a band over a round surface with friction
 * - CEN: EN 71-1, Safety of toys: mechanical and physical properties, 2005+A8:2009, clause 5.4, as quoted: a cord that
 *   can form a loop at the neck parts at 25 N or less; later editions changed lengths (read 2026-11-28)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `hangs-back` or `cannot-balance` with the nearest geometry that holds
 * @example
 * ```ts
 * import { strapPressure } from 'alula/worn'
 * const straps = strapPressure({ rigMass: '9 kg', centreOffset: '0.12 m', strapWidth: '60 mm' })
 * straps.beltShare // => 0.3
 * straps.tension // => 46.12
 * straps.suggestedWidth // => 0.05
 * ```
 */
export const strapPressure: Solver<StrapPressureInput, StrapPressure, StrapPressureRefusal, StrapPressureCaution> = /* @__PURE__ */ solver<
  StrapPressureInput,
  StrapPressure,
  StrapPressureRefusal,
  StrapPressureCaution
>("strapPressure", "How hard the straps press, and how wide they should be", solve, () => ({
  input: {
    rigMass: { ...wearerFields.rigMass, label: "rig mass on the straps" },
    centreOffset: length("x_c", "centre behind the back panel", "1 mm", "1 m", ["30 mm", "250 mm"]),
    upperAnchor: { ...length("h_u", "upper anchors above the belt", "0.1 m", "900 mm", ["0.3 m", "0.55 m"]), default: "0.42 m" },
    lowerAnchor: { ...length("h_l", "lower anchors above the belt", "-0.3 m", "0.4 m", ["-0.05 m", "0.1 m"]), default: 0 },
    upperAngle: {
      kind: "angle",
      symbol: "a_u",
      label: "rise of the upper straps",
      min: 0,
      max: "75°",
      typical: ["10°", "50°"],
      default: "35°",
    },
    lowerAngle: {
      kind: "angle",
      symbol: "a_l",
      label: "rise of the lower straps",
      min: "10°",
      max: "85°",
      typical: ["30°", "70°"],
      default: "50°",
    },
    beltShare: {
      kind: "ratio",
      symbol: "q_b",
      label: "share the belt is to take",
      min: 0,
      max: 0.95,
      typical: [0, 0.7],
      default: hipBeltShare,
    },
    beltTension: { kind: "force", symbol: "T_b", label: "tension in the belt", min: 0, max: 300, typical: [30, 120], default: 60 },
    beltFriction: { kind: "number", symbol: "mu_b", label: "friction of the belt", min: 0, max: 1.5, typical: [0.2, 0.6], default: 0.3 },
    beltWidth: { ...length("w_b", "width of the belt", "20 mm", "300 mm", ["40 mm", "120 mm"]), default: "60 mm" },
    hipRadius: { ...length("r_b", "radius of the hips", "80 mm", "300 mm", ["120 mm", "200 mm"]), default: "150 mm" },
    strapWidth: length("w", "width of one strap", "5 mm", "200 mm", ["25 mm", "80 mm"]),
    shoulderRadius: { ...length("r", "radius of the shoulder", "20 mm", "150 mm", ["40 mm", "80 mm"]), default: "60 mm" },
    wrapAngle: {
      kind: "angle",
      symbol: "theta",
      label: "wrap around the shoulder",
      min: 0,
      max: "180°",
      typical: ["90°", "150°"],
      default: "120°",
    },
    shoulderFriction: {
      kind: "number",
      symbol: "mu",
      label: "friction over the shoulder",
      min: 0,
      max: 1,
      typical: [0.1, 0.5],
      default: 0.3,
    },
    heavierShoulderShare: {
      kind: "ratio",
      symbol: "c",
      label: "share of the more loaded shoulder",
      min: 0.5,
      max: 1,
      default: heavierShoulder,
    },
    pressureLimit: {
      kind: "pressure",
      symbol: "p_l",
      label: "pressure limit",
      min: 1000,
      max: 100000,
      typical: [4000, 14000],
      default: strapPressureLimit,
    },
  },
  output: {
    beltLoad: force("F_b", "weight on the belt"),
    shoulderLoad: force("F_s", "weight on the shoulders"),
    beltShare: { kind: "ratio", symbol: "q", label: "share of the belt", unit: "%" },
    beltCapacity: force("F_B", "most the belt holds"),
    beltSlips: { kind: "flag", label: "belt slips" },
    upperPush: force("N_u", "push of the back, upper edge"),
    lowerPush: force("N_l", "push of the back, belt"),
    tension: force("T", "tension of both straps, no friction"),
    tensionRatio: { kind: "number", symbol: "k", label: "friction's ratio of tensions" },
    maxTension: force("T_m", "maximum tension of one strap"),
    pressure: pressure("p", "pressure, no friction"),
    maxPressure: pressure("p_m", "maximum pressure"),
    pressureLimit: pressure("p_a", "limit that counts"),
    utilisation: { kind: "ratio", symbol: "q_p", label: "utilisation", unit: "%" },
    beltPressure: pressure("p_b", "pressure of the belt"),
    beltUtilisation: { kind: "ratio", symbol: "q_t", label: "utilisation of the belt", unit: "%" },
    withinLimit: { kind: "flag", label: "straps and belt within the limit" },
    minWidth: { kind: "length", symbol: "w_n", label: "minimum width" },
    suggestedWidth: { kind: "length", symbol: "w_c", label: "suggested width" },
    massAtLimit: { kind: "mass", symbol: "m_l", label: "maximum mass for this strap" },
  },
  example: { rigMass: "9 kg", centreOffset: "0.12 m", strapWidth: "60 mm" },
  formulae: [
    { symbol: "W_0", kind: "force", meaning: "weight", is: "m_r * (9.80665 m/s^2)" },
    { symbol: "F_B", meaning: "most the belt holds: friction on a closed band", is: "2 * pi * mu_b * T_b" },
    { symbol: "W_b", kind: "force", meaning: "what the belt is to take", is: "min(q_b * W_0, F_B)" },
    { symbol: "k", meaning: "capstan ratio over the shoulder", is: "exp(mu * theta)", source: CAPSTAN },
    { symbol: "p_a", meaning: "limit that counts, at most the usual one", is: "min(p_l, 14 kPa)" },
    { symbol: "T_a", kind: "force", meaning: "tension of both straps at the limit", is: "p_a * r * w / c" },
    ...caseSteps(1, "1", "no friction"),
    ...caseSteps(2, "k", "ahead tighter"),
    ...caseSteps(3, "1 / k", "behind tighter"),
    { symbol: "T", meaning: "tension without friction", is: "T_1" },
    { symbol: "F_b", meaning: "weight left to the belt", is: "W_0 - T * (sin(a_u) + sin(a_l))" },
    { symbol: "F_s", meaning: "weight on the shoulders", is: "W_0 - F_b" },
    { symbol: "q", meaning: "share of the belt", is: "F_b / W_0" },
    {
      symbol: "N_u",
      meaning: "push at the upper edge, moments about the belt",
      is: "(T * (cos(a_u) * h_u + cos(a_l) * h_l) - W_0 * x_c) / h_u",
    },
    { symbol: "N_l", meaning: "push at the belt, level balance", is: "T * (cos(a_u) + cos(a_l)) - N_u" },
    { symbol: "T_m", meaning: "maximum tension of one strap", is: "c * max(T_1, T_2, k * T_2, T_3, T_3 / k)" },
    { symbol: "p", meaning: "pressure without friction", is: "c * T / (r * w)" },
    { symbol: "p_m", meaning: "maximum pressure", is: "T_m / (r * w)" },
    { symbol: "q_p", meaning: "against the limit", is: "p_m / p_a" },
    { symbol: "p_b", meaning: "pressure of the belt", is: "T_b / (r_b * w_b)" },
    { symbol: "q_t", meaning: "belt against the limit", is: "p_b / p_a" },
    { symbol: "w_n", meaning: "width that meets the limit", is: "T_m / (r * p_a)" },
    { symbol: "w_c", meaning: "next 5 mm up", is: "ceil(w_n / (5 mm) - 1e-9) * (5 mm)" },
    { symbol: "m_l", meaning: "heaviest load for this strap", is: "min(L_1, L_2, L_3) / (9.80665 m/s^2)" },
  ],
  sources: strapSources,
  cautions: strapPressureCautions,
}))
