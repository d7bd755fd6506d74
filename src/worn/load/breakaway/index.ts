import { bandField, type Issue, inconsistent, type NoSolution, refuse, type SiOf, type Solver, solver } from "../../../solver/index.js"
import { BREAK_AWAY_CORDS, CAPSTAN, CHILDREN_CORDS, EN_71_1, MACIAS, NECK_FORCE, SKIN_FRICTION } from "../../sources-load.js"
import { wearerFields } from "../../wearer.js"
import { occlusionPressure, skinFriction, strapPressureLimit, throatRelease } from "../data-straps.js"
import { breakawayCautions } from "./cautions.js"
import type { Breakaway, BreakawayCaution, BreakawayInput, BreakawayRefusal } from "./types.js"

export type { Breakaway, BreakawayInput } from "./types.js"

function solve(si: SiOf<BreakawayInput>): Breakaway | NoSolution<BreakawayRefusal> {
  const { place, bodyRadius, bandWidth, wornTension, partingTension, friction } = si
  if (wornTension > partingTension.low)
    return refuse(
      "parts-at-once",
      "The band is worn with {wornTension force N} and its breakaway opens from {partingTension.low force N}, {shortBy force N} less: it cannot be worn so. Slacken the band or take the load off it; do not make a breakaway near a neck stronger.",
      wornTension - partingTension.low,
      { wornTension, "partingTension.low": partingTension.low },
      { wornTension: partingTension.low },
    )
  const neck = place === "neck"
  const footprint = bodyRadius * bandWidth
  const pressure = wornTension / footprint
  const pressureLimit = neck ? occlusionPressure : strapPressureLimit
  // each side leaves the body where it is square to the radius
  const wrapAngle = Math.max(0, si.breakawayAngle - (Math.PI - si.pullOpening) / 2)
  const tensionRatio = Math.exp(friction * wrapAngle)
  const sides = 2 * Math.cos(si.pullOpening / 2)
  const pull = { low: sides * partingTension.low * tensionRatio, high: sides * partingTension.high * tensionRatio }
  const peakTension = partingTension.high * tensionRatio
  const pullLimit = neck ? throatRelease : null
  return {
    pressure,
    pressureLimit,
    pressureUtilisation: pressure / pressureLimit,
    wrapAngle,
    tensionRatio,
    pull,
    besidePull: sides * partingTension.high,
    peakTension,
    peakPressure: peakTension / footprint,
    pullLimit,
    pullUtilisation: pullLimit === null ? null : pull.high / pullLimit,
    requiredPartingTension: pullLimit === null ? null : pullLimit / (sides * tensionRatio),
    wornUtilisation: wornTension / partingTension.low,
    withinLimits: pressure <= pressureLimit && (pullLimit === null || pull.high <= pullLimit),
  }
}

function check({ partingTension: { low, high } }: SiOf<BreakawayInput>): Issue[] {
  if (low <= high) return []
  return [
    inconsistent(
      ["partingTension", "low"],
      "a lowest tension of {partingTension.low force N}",
      "no more than the highest, {partingTension.high force N}",
      { "partingTension.low": low, "partingTension.high": high },
    ),
  ]
}

/**
 * A collar, strap or belt on the body: how it presses while worn, and how hard it must be pulled before its breakaway comes open.
 *
 * Formula: pressure T/(r·w) of a band of tension T and width w on a radius r. Caught at one point and pulled away from the body,
 * with an angle γ between its sides, the band leaves the body at (180° − γ)/2 to either side of the pull; a breakaway at ψ from
 * there lies φ = ψ − (180° − γ)/2 further round, or in the part pulled clear. Friction μ keeps tension from it: the pulled side
 * holds F·e^(μ·φ) when the breakaway opens at F, and the wearer is pulled with P = 2·F·e^(μ·φ)·cos(γ/2). At a neck P is held to
 * the 25 N of the rule for toys and the pressure to that at which blood stops in the skin; elsewhere the pressure to the usual
 * limit for hours. Valid for a band pulled alike on both sides, slowly, on a round part of the body.
 *
 * **Inputs**
 * - `place`: where the band is worn [neck, shoulder or waist]
 * - `bodyRadius`: radius of the body under the band [r; 20 to 300 mm]
 * - `bandWidth`: width of the band [w; 1 to 300 mm]
 * - `wornTension`: tension while worn [T_w; 0 to 300 N; default 0]
 * - `partingTension`: tension at which the breakaway opens [group]
 *   - `low`: lowest of the tries [F_l; 0.5 to 1000 N]
 *   - `high`: highest of the tries [F_h; 0.5 to 1000 N]
 * - `breakawayAngle`: from the catch round to the breakaway [psi; 0 to 180°; default 180°]
 * - `pullOpening`: angle between both sides of the band [gamma; 0 to 160°; default 0]
 * - `friction`: friction of the band [mu; 0 to 1.5; default 0.9]
 * - `stature`: stature of the smallest wearer [H; 800 mm to 2.5 m; optional]
 *
 * **Results**
 *
 * `pressure`: pressure while worn [p; Pa]; `pressureLimit`: pressure limit [p_a; Pa]; `pressureUtilisation`:
 * utilisation of the pressure limit [q_p; as a fraction]; `wrapAngle`: wrap up to the breakaway [phi; rad];
 * `tensionRatio`: friction's ratio of tensions [k]; `pull`: pull at which the band parts [P_l to P_h; N];
 * `besidePull`: pull with the breakaway beside the catch [P_0; N]; `peakTension`: tension of the pulled side, parting
 * [T_p; N]; `peakPressure`: pressure of the pulled side, parting [p_p; Pa]; `pullLimit`: limit of the pull [P_a; N];
 * `pullUtilisation`: utilisation of the limit of the pull [q_n; as a fraction]; `requiredPartingTension`: required
 * parting tension, at most [F_n; N]; `wornUtilisation`: utilisation of the lowest parting tension [q_w; as a
 * fraction]; `withinLimits`: within every limit compared [yes or no].
 *
 * **Sources**
 * - CEN: EN 71-1, Safety of toys: mechanical and physical properties, 2005+A8:2009, clause 5.4, as quoted: a cord that
 *   can form a loop at the neck parts at 25 N or less; later editions changed lengths (read 2026-11-28)
 * - SGS: Toy updates: cords that break off below 25 N are outside the rule for drawstrings on dressing-up clothes,
 *   July 2020, cords (read 2026-11-28)
 * - Tukes, Finnish Safety and Chemicals Agency: Cords and drawstrings on children's clothing (EN 14682), up to 7 years
 *   and 134 cm: no cords at hood and neck; up to 14 years: no free ends at the neck; stage costumes are outside the
 *   rule (read 2026-11-28)
 * - M. Temel, A. A. Johnson, A. B. Lloyd: Evaluating the repeatability of friction coefficient measurements and
 *   tactile perceptions in skin–textile interactions across body regions, Tribology Letters 70, 2022, abstract: cotton
 *   at rest on skin, 0.90 ± 0.19 on the chest, 0.31 ± 0.07 on the back of the forearm
 * - L. Euler, J. A. Eytelwein: Capstan equation: tension of a band over a round surface with friction
 * - B. R. Macias and others: Asymmetric loads and pain associated with backpack carrying by children, J. Pediatr.
 *   Orthop. 28, 2008, abstract
 * - Measurement of force to obstruct the cervical arteries and distribution of tension exerted on a ligature in
 *   hanging, 2009, abstract: 6 kg for the carotid arteries, 7 kg for the vertebral
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `parts-at-once` with the tension that can be worn
 * @example
 * ```ts
 * import { breakaway } from 'alula/worn'
 * const ruff = breakaway({ place: 'neck', bodyRadius: '57 mm', bandWidth: '30 mm', partingTension: { low: '4 N', high: '6 N' }, breakawayAngle: '180 deg' })
 * ruff.pull.high // => 49.33
 * ruff.requiredPartingTension // => 3.04
 * ```
 */
export const breakaway: Solver<BreakawayInput, Breakaway, BreakawayRefusal, BreakawayCaution> = /* @__PURE__ */ solver<
  BreakawayInput,
  Breakaway,
  BreakawayRefusal,
  BreakawayCaution
>("breakaway", "Pull that parts a collar, strap or belt", solve, () => ({
  input: {
    place: {
      kind: "choice",
      label: "where the band is worn",
      options: { neck: "at the neck or near the throat", shoulder: "over a shoulder", waist: "round waist or hips" },
    },
    bodyRadius: {
      kind: "length",
      symbol: "r",
      label: "radius of the body under the band",
      min: "20 mm",
      max: "300 mm",
      typical: ["45 mm", "180 mm"],
    },
    bandWidth: { kind: "length", symbol: "w", label: "width of the band", min: "1 mm", max: "300 mm", typical: ["10 mm", "80 mm"] },
    wornTension: { kind: "force", symbol: "T_w", label: "tension while worn", min: 0, max: 300, typical: [0, 4], default: 0 },
    partingTension: {
      kind: "group",
      label: "tension at which the breakaway opens",
      fields: {
        low: { kind: "force", symbol: "F_l", label: "lowest of the tries", min: 0.5, max: 1000, typical: [5, 20] },
        high: { kind: "force", symbol: "F_h", label: "highest of the tries", min: 0.5, max: 1000, typical: [21, 60] },
      },
    },
    breakawayAngle: {
      kind: "angle",
      symbol: "psi",
      label: "from the catch round to the breakaway",
      min: 0,
      max: "180°",
      typical: [0, "180°"],
      default: "180°",
    },
    pullOpening: {
      kind: "angle",
      symbol: "gamma",
      label: "angle between both sides of the band",
      min: 0,
      max: "160°",
      typical: [0, "120°"],
      default: 0,
    },
    friction: {
      kind: "number",
      symbol: "mu",
      label: "friction of the band",
      min: 0,
      max: 1.5,
      typical: [skinFriction.low, skinFriction.high],
      default: skinFriction.high,
    },
    stature: { ...wearerFields.stature, label: "stature of the smallest wearer", default: null },
  },
  output: {
    pressure: { kind: "pressure", symbol: "p", label: "pressure while worn", unit: "kPa" },
    pressureLimit: { kind: "pressure", symbol: "p_a", label: "pressure limit", unit: "kPa" },
    pressureUtilisation: { kind: "ratio", symbol: "q_p", label: "utilisation of the pressure limit", unit: "%" },
    wrapAngle: { kind: "angle", symbol: "phi", label: "wrap up to the breakaway" },
    tensionRatio: { kind: "number", symbol: "k", label: "friction's ratio of tensions" },
    pull: bandField("force", "pull at which the band parts", { symbols: ["P_l", "P_h"] }),
    besidePull: { kind: "force", symbol: "P_0", label: "pull with the breakaway beside the catch" },
    peakTension: { kind: "force", symbol: "T_p", label: "tension of the pulled side, parting" },
    peakPressure: { kind: "pressure", symbol: "p_p", label: "pressure of the pulled side, parting", unit: "kPa" },
    pullLimit: { kind: "force", symbol: "P_a", label: "limit of the pull" },
    pullUtilisation: { kind: "ratio", symbol: "q_n", label: "utilisation of the limit of the pull", unit: "%" },
    requiredPartingTension: { kind: "force", symbol: "F_n", label: "required parting tension, at most" },
    wornUtilisation: { kind: "ratio", symbol: "q_w", label: "utilisation of the lowest parting tension", unit: "%" },
    withinLimits: { kind: "flag", label: "within every limit compared" },
  },
  example: {
    place: "neck",
    bodyRadius: "57 mm",
    bandWidth: "30 mm",
    wornTension: "1 N",
    partingTension: { low: "8 N", high: "12 N" },
    breakawayAngle: "90 deg",
  },
  formulae: [
    { symbol: "p", meaning: "tension over radius and width", is: "T_w / (r * w)" },
    {
      symbol: "p_a",
      meaning: "pressure at which blood stops in the skin: 30 mmHg",
      is: "30 * (133.322 Pa)",
      when: 'equalText(place, "neck")',
      source: MACIAS,
    },
    { symbol: "p_a", meaning: "usual limit for hours", is: "14 kPa", when: 'not equalText(place, "neck")' },
    { symbol: "q_p", meaning: "pressure against its limit", is: "p / p_a" },
    { symbol: "phi", meaning: "round the body from where the band leaves it", is: "max(0, psi - (pi - gamma) / 2)" },
    { symbol: "k", meaning: "capstan ratio", is: "exp(mu * phi)", source: CAPSTAN },
    { symbol: "P_l", meaning: "both sides at the lowest parting tension", is: "2 * F_l * k * cos(gamma / 2)" },
    { symbol: "P_h", meaning: "both sides at the highest", is: "2 * F_h * k * cos(gamma / 2)" },
    { symbol: "P_0", meaning: "the same without friction", is: "2 * F_h * cos(gamma / 2)" },
    { symbol: "T_p", meaning: "tension of the pulled side", is: "F_h * k" },
    { symbol: "p_p", meaning: "its pressure", is: "T_p / (r * w)" },
    { symbol: "P_a", meaning: "pull at which a cord near a neck must part", is: "25 N", when: 'equalText(place, "neck")', source: EN_71_1 },
    { symbol: "q_n", meaning: "pull against its limit", is: "P_h / P_a", when: 'equalText(place, "neck")' },
    {
      symbol: "F_n",
      meaning: "parting tension that meets the limit",
      is: "P_a / (2 * k * cos(gamma / 2))",
      when: 'equalText(place, "neck")',
    },
    { symbol: "q_w", meaning: "tension while worn over the lowest parting tension", is: "T_w / F_l" },
  ],
  sources: [EN_71_1, BREAK_AWAY_CORDS, CHILDREN_CORDS, SKIN_FRICTION, CAPSTAN, MACIAS, NECK_FORCE],
  check,
  cautions: breakawayCautions,
}))
