import { type Issue, inconsistent, type NoSolution, refuse, type Solver, solver, tried } from "../../solver/index.js"
import { plasticOptions, plastics } from "../data.js"
import { BRAZIER, CONDUIT_CHART, CONDUIT_CODE, CONDUIT_HEATER, practice, SAND_BENDING } from "../sources.js"
import { conduitBends, sandBending, springbacks } from "../tables.js"
import { cautions } from "./cautions.js"
import { angleFor, isCorner, NO_CORNER, radiusFor, reach, SQUARE, takeUp } from "./legs.js"
import type { Si, TubeBend, TubeBendCaution, TubeBendInput, TubeBendRefusal } from "./types.js"

export type { TubeBend, TubeBendInput } from "./types.js"

/** Poisson's ratio on the side that kinks sooner; rigid plastics 0.38 to 0.42, rubbery 0.5 . */
const POISSON = 0.4
/** Widest radius that is asked for, m. */
const WIDEST = 100

const lostPart = ({ springback, hot }: Si) => springback ?? springbacks[hot ? "heated" : "cold"].value

function conduitRadius({ material, outsideDiameter }: Si): number | null {
  return material === "pvc" ? (conduitBends.find((b) => b.outsideDiameter >= outsideDiameter * 0.999)?.other ?? null) : null
}

/** Minimum radii: what kinks empty (Brazier), and what to plan with. */
function radii({ outsideDiameter: d, wall, material, ovalityLimit }: Si) {
  const middle = (d - wall) / 2
  const brazier = (middle ** 2 * Math.sqrt(1 - POISSON ** 2)) / wall
  const kinkRadius = (3 / Math.SQRT2) * brazier
  const filled = sandBending.leastRadius * d
  const strain = plastics[material].coldStrain
  return {
    brazier,
    kinkRadius,
    filled,
    empty: Math.max(filled, kinkRadius, brazier * Math.sqrt(2 / ovalityLimit)),
    cold: strain === null ? null : d / (2 * strain.low),
  }
}

/** The radius to plan with for this support and heat; null where no maker publishes one. */
function leastRadius(si: Si): number | null {
  const { empty, filled, cold } = radii(si)
  return si.hot ? (si.support === "empty" ? empty : filled) : cold
}

function kernel(si: Si): TubeBend | NoSolution<TubeBendRefusal> {
  const { outsideDiameter: d, wall, radius, angle, support, legA, legB } = si
  const { brazier, kinkRadius, filled: leastRadiusFilled, empty: leastRadiusEmpty, cold: leastRadiusCold } = radii(si)
  const legs = [legA, legB].filter((leg) => leg !== null)
  // the widest radius that the legs leave room for
  const legRadius = legs.length ? radiusFor(si, Math.min(...legs)) : WIDEST
  const narrowest = support === "empty" ? kinkRadius * 1.001 : 0
  const wider = support === "empty" ? leastRadiusEmpty : leastRadiusFilled
  const roomy = Math.max(narrowest, Math.min(wider, legRadius * 0.999, WIDEST))
  if (!(radius > d / 2))
    return refuse(
      "too-tight",
      "A bend of {given.radius length} to the centreline folds a tube of {given.outsideDiameter length} onto itself: its inside would have no radius left. Bend it wider.",
      Math.max(d / 2 - radius, Number.EPSILON * d),
      { radius },
      { radius: roomy },
      { "given.radius": radius, "given.outsideDiameter": d },
    )
  if (support === "empty" && radius < kinkRadius)
    return refuse(
      "kinks",
      "An empty tube of {given.outsideDiameter length} × {given.wall length} kinks at {kinkRadius length} radius, before {given.radius length}: fill it, or bend wider.",
      kinkRadius - radius,
      { radius, kinkRadius },
      { radius: roomy, wall: stiffWall(d, radius) },
      { "given.outsideDiameter": d, "given.wall": wall, "given.radius": radius },
    )
  const setback = angle < NO_CORNER ? radius * Math.tan(angle / 2) : null
  const developedLength = radius * angle
  const needed = reach(si)
  const straight = (leg: number | null) => (leg === null || needed === null ? null : leg - needed)
  const [straightA, straightB] = [straight(legA), straight(legB)]
  for (const [name, left] of [
    ["legA", straightA],
    ["legB", straightB],
  ] as const)
    if (left !== null && needed !== null && left < 0)
      return refuse(
        "does-not-fit",
        "The bend itself reaches {shortBy length} past the end of {leg}: that leg needs at least {needed length}. Lengthen it, bend tighter or bend less.",
        -left,
        { [name]: si[name] as number, needed },
        { [name]: needed, radius: legRadius * 0.999, ...lessBent(si, Math.min(...legs)) },
        { leg: name === "legA" ? "leg A" : "leg B" },
      )
  const cutLength = straightA === null || straightB === null ? null : straightA + developedLength + straightB
  const lost = lostPart(si)
  const least = leastRadius(si)
  return {
    fibreStrain: d / (2 * radius),
    outerWall: (wall * radius) / (radius + d / 2),
    innerWall: (wall * radius) / (radius - d / 2),
    thinning: d / 2 / (radius + d / 2),
    ovality: support === "empty" ? 2 * (brazier / radius) ** 2 : null,
    kinkRadius,
    minRadiusEmpty: leastRadiusEmpty,
    minRadiusFilled: leastRadiusFilled,
    minRadiusCold: leastRadiusCold,
    wideEnough: least !== null && radius >= least,
    minConduitRadius: conduitRadius(si),
    developedLength,
    heatedLength: developedLength + 2 * d,
    setback,
    gain: setback === null ? null : 2 * setback - developedLength,
    takeUp: takeUp(si),
    straightA,
    straightB,
    cutLength,
    legGain: cutLength === null || legA === null || legB === null ? null : legA + legB - cutLength,
    springback: lost,
    jigAngle: angle / (1 - lost),
    jigRadius: radius * (1 - lost),
  }
}

function lessBent(si: Si, leg: number): { angle?: number } {
  const angle = angleFor(si, leg * 0.999)
  return angle === null ? {} : { angle }
}

/** Wall, a little more than just enough, with which a tube does not kink at a radius: the root of (3/√2)·√(1 − ν²)·((D − s)/2)² = R·s. */
function stiffWall(diameter: number, radius: number): number {
  const c = ((3 / Math.SQRT2) * Math.sqrt(1 - POISSON ** 2)) / 4
  const b = 2 * c * diameter + radius
  return ((b - Math.sqrt(b * b - 4 * c * c * diameter * diameter)) / (2 * c)) * 1.001
}

function check({ outsideDiameter, wall, legA, legMeasure, angle }: Si): Issue[] {
  const faults: Issue[] = []
  if (!(wall < 0.49 * outsideDiameter))
    faults.push(
      inconsistent(["wall"], "{wall length} in a tube of {outsideDiameter length}", "a wall thinner than 0.49 of the diameter", {
        wall,
        outsideDiameter,
      }),
    )
  if (legA !== null && isCorner(legMeasure) && angle >= NO_CORNER)
    faults.push(
      inconsistent(
        ["legA"],
        "legs to the corner of a bend of {angle angle °}",
        "legs to the back of the bend, or to where it begins, from 175° on: the corner lies too far away, and past 180° there is none",
        { angle },
      ),
    )
  if (legA !== null && legMeasure === "bend" && angle < SQUARE)
    faults.push(
      inconsistent(
        ["legMeasure"],
        "the back of a bend of {angle angle °}",
        "a corner, or where the bend begins, below 90°: the other leg reaches past its back",
        { angle },
      ),
    )
  return faults
}

const solve = (si: Si): TubeBend | NoSolution<TubeBendRefusal> => tried(kernel(si), si, tubeBend.input, kernel, check, tubeBend.either)

/**
 * What a bend does to a tube, how tight it may be, what to heat and cut, and what angle to bend to.
 *
 * Formula: fibre strain ε = D/(2·R); wall outside s·R/(R + D/2) and inside s·R/(R − D/2) (length kept at the
 * centreline, volume kept); ovality of an empty tube 2·r⁴·(1 − ν²)/(R²·s²) and kink radius (3/√2)·r²·√(1 − ν²)/s
 * (Brazier, r = (D − s)/2, ν = 0.4); developed length R·θ; setback R·tan(θ/2); gain 2·R·tan(θ/2) − R·θ; straight leg =
 * leg − what the bend takes of it: (R + D/2)·tan(θ/2) to the corner of the backs, R·tan(θ/2) to that of the centrelines, (R − D/2)·tan(θ/2)
 * to that of the insides (none of them from 175° on), R + D/2 to the back of
 * the bend (take-up, from 90° on), nothing to where it begins; jig angle θ/(1 − q) and jig
 * radius R·(1 − q). D outer diameter, s wall, R centreline radius, θ angle, q springback. Minimum radius: 5 D, and when
 * empty no more than the ovality limit. Valid for bends held round a jig. Brazier's sums hold for thin walls (r/s above
 * about 5) and are on the safe side for thicker ones.
 *
 * **Inputs**
 * - `outsideDiameter`: outside diameter [D; 1 to 300 mm]
 * - `wall`: wall [s_w; 0.1 to 50 mm]
 * - `radius`: centreline radius [R; 1 mm to 100 m]
 * - `angle`: angle of the bend [theta; 1° to 360°]
 * - `material`: plastic [one of 12 words; default pvc]
 * - `support`: support inside [empty or filled; default empty]
 * - `hot`: bent hot [yes or no; default yes]
 * - `springback`: springback [q_given; 0 to 0.9; optional]
 * - `ovalityLimit`: maximum ovality [o_max; 0.01 to 0.2; default 0.08]
 * - `legA`: leg A, as measured [A_leg; 1 mm to 100 m; optional]
 * - `legB`: leg B, as measured [B_leg; 1 mm to 100 m; optional]
 * - `legMeasure`: legs measured to [backs, centrelines, insides, bend or straight; default backs]
 * - `legA` and `legB` only together
 *
 * **Results**
 *
 * `fibreStrain`: strain of the outer fibre [epsilon; as a fraction]; `outerWall`: wall outside [s_out; m];
 * `innerWall`: wall inside [s_in; m]; `thinning`: thinning [n_thin; as a fraction]; `ovality`: ovality [o; as a
 * fraction]; `kinkRadius`: kink radius when empty [R_kink; m]; `minRadiusEmpty`: minimum radius empty [R_empty; m];
 * `minRadiusFilled`: minimum radius filled [R_filled; m]; `minRadiusCold`: minimum radius cold [R_cold; m];
 * `wideEnough`: radius is wide enough [yes or no]; `minConduitRadius`: minimum field bend of conduit [R_conduit; m];
 * `developedLength`: length of the bend [l_dev; m]; `heatedLength`: length to heat [l_heat; m]; `setback`: setback
 * [l_set; m]; `gain`: gain [l_gain; m]; `takeUp`: take-up, to the back of the bend [l_take; m]; `straightA`: straight
 * of leg A [l_A; m]; `straightB`: straight of leg B [l_B; m]; `cutLength`: cut length [l_cut; m]; `legGain`: legs less
 * the cut length [l_more; m]; `springback`: springback [q; as a fraction]; `jigAngle`: angle in the jig [theta_jig;
 * rad]; `jigRadius`: centreline radius in the jig [R_jig; m].
 *
 * **Symbols of the working**
 *
 * r: radius of the wall's middle [m]; nu: Poisson's ratio, safe side; has_cold: 1 where a maker publishes a cold
 * strain; epsilon_cold: strain allowed cold; has_conduit: 1 for PVC up to the table's largest size; R_table: conduit
 * of this size or the next, bent without a one-shot bender [m]; l_reach: tangent point to where legs are measured [m].
 *
 * **Sources**
 * - L. G. Brazier: On the flexure of thin cylindrical shells and other thin sections, Proc. R. Soc. A 116, 1927 (not
 *   verified against the document)
 * - NFPA: National Electrical Code (NFPA 70), chapter 9 table 2, to which 352.24 refers (not verified against the
 *   document)
 * - PVC conduit heater, operating instructions, additional bending information, p. 8
 * - Electrical conduit bending chart, minimum bending radius of one-shot bends
 * - Practical Sailor: Using heat to bend PVC pipe, as quoted on a forum, hot sand, five diameters, 30 min in the jig
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `too-tight`, `kinks`, `does-not-fit`
 * @example
 * ```ts
 * import { tubeBend } from 'alula/thermoform'
 * const rib = tubeBend({ outsideDiameter: '2.375 in', wall: '0.154 in', radius: '24 in', angle: '90 deg', support: 'filled', legA: '48 in', legB: '44 in' })
 * rib.developedLength // => 0.9576
 * rib.fibreStrain // => 0.04948
 * ```
 */
export const tubeBend: Solver<TubeBendInput, TubeBend, TubeBendRefusal, TubeBendCaution> = /* @__PURE__ */ solver<
  TubeBendInput,
  TubeBend,
  TubeBendRefusal,
  TubeBendCaution
>("tubeBend", "What a bend does to a tube, and what to heat and cut for it", solve, () => ({
  input: {
    outsideDiameter: { kind: "length", symbol: "D", label: "outside diameter", min: "1 mm", max: "300 mm", typical: ["15 mm", "60 mm"] },
    wall: { kind: "length", symbol: "s_w", label: "wall", min: "0.1 mm", max: "50 mm", typical: ["1.5 mm", "5 mm"] },
    radius: { kind: "length", symbol: "R", label: "centreline radius", min: "1 mm", max: WIDEST, typical: ["100 mm", "1 m"] },
    angle: { kind: "angle", symbol: "theta", label: "angle of the bend", min: "1 deg", max: "360 deg", typical: ["20 deg", "120 deg"] },
    material: { kind: "choice", label: "plastic", options: plasticOptions, default: "pvc" },
    support: { kind: "choice", label: "support inside", options: { empty: "none", filled: "dry sand or a spring" }, default: "empty" },
    hot: { kind: "flag", label: "bent hot", default: true },
    springback: { kind: "ratio", symbol: "q_given", label: "springback", min: 0, max: 0.9, typical: [0, 0.1], default: null },
    ovalityLimit: { kind: "ratio", symbol: "o_max", label: "maximum ovality", min: 0.01, max: 0.2, default: 0.08 },
    legA: {
      kind: "length",
      symbol: "A_leg",
      label: "leg A, as measured",
      min: "1 mm",
      max: 100,
      typical: ["0.3 m", "2 m"],
      default: null,
    },
    legB: {
      kind: "length",
      symbol: "B_leg",
      label: "leg B, as measured",
      min: "1 mm",
      max: 100,
      typical: ["0.3 m", "2 m"],
      default: null,
    },
    legMeasure: {
      kind: "choice",
      label: "legs measured to",
      options: {
        backs: "corner of the backs",
        centrelines: "corner of the centrelines",
        insides: "corner of the insides",
        bend: "back of the bend",
        straight: "where the bend begins",
      },
      default: "backs",
    },
  },
  output: {
    fibreStrain: { kind: "ratio", symbol: "epsilon", label: "strain of the outer fibre", unit: "%" },
    outerWall: { kind: "length", symbol: "s_out", label: "wall outside" },
    innerWall: { kind: "length", symbol: "s_in", label: "wall inside" },
    thinning: { kind: "ratio", symbol: "n_thin", label: "thinning", unit: "%" },
    ovality: { kind: "ratio", symbol: "o", label: "ovality", unit: "%" },
    kinkRadius: { kind: "length", symbol: "R_kink", label: "kink radius when empty" },
    minRadiusEmpty: { kind: "length", symbol: "R_empty", label: "minimum radius empty" },
    minRadiusFilled: { kind: "length", symbol: "R_filled", label: "minimum radius filled" },
    minRadiusCold: { kind: "length", symbol: "R_cold", label: "minimum radius cold" },
    wideEnough: { kind: "flag", label: "radius is wide enough" },
    minConduitRadius: { kind: "length", symbol: "R_conduit", label: "minimum field bend of conduit" },
    developedLength: { kind: "length", symbol: "l_dev", label: "length of the bend" },
    heatedLength: { kind: "length", symbol: "l_heat", label: "length to heat" },
    setback: { kind: "length", symbol: "l_set", label: "setback" },
    gain: { kind: "length", symbol: "l_gain", label: "gain" },
    takeUp: { kind: "length", symbol: "l_take", label: "take-up, to the back of the bend" },
    straightA: { kind: "length", symbol: "l_A", label: "straight of leg A" },
    straightB: { kind: "length", symbol: "l_B", label: "straight of leg B" },
    cutLength: { kind: "length", symbol: "l_cut", label: "cut length" },
    legGain: { kind: "length", symbol: "l_more", label: "legs less the cut length" },
    springback: { kind: "ratio", symbol: "q", label: "springback", unit: "%" },
    jigAngle: { kind: "angle", symbol: "theta_jig", label: "angle in the jig" },
    jigRadius: { kind: "length", symbol: "R_jig", label: "centreline radius in the jig" },
  },
  example: {
    outsideDiameter: "26.7 mm",
    wall: "2.9 mm",
    radius: "250 mm",
    angle: "60 deg",
    support: "filled",
    legA: "0.6 m",
    legB: "0.9 m",
  },
  formulae: [
    { symbol: "epsilon", meaning: "strain of the outermost fibre", is: "D / (2 * R)" },
    { symbol: "s_out", meaning: "wall outside, volume kept", is: "s_w * R / (R + D / 2)" },
    { symbol: "s_in", meaning: "wall inside, volume kept", is: "s_w * R / (R - D / 2)" },
    { symbol: "n_thin", meaning: "thinning", is: "(D / 2) / (R + D / 2)" },
    { symbol: "r", kind: "length", meaning: "radius of the wall's middle", is: "(D - s_w) / 2" },
    { symbol: "nu", kind: "number", meaning: "Poisson's ratio, safe side", given: () => POISSON },
    {
      symbol: "o",
      meaning: "ovality by inextensional flattening",
      is: "2 * r^4 * (1 - nu^2) / (R^2 * s_w^2)",
      when: 'equalText(support, "empty")',
      source: BRAZIER,
    },
    { symbol: "R_kink", meaning: "radius of maximum moment", is: "3 / sqrt(2) * r^2 * sqrt(1 - nu^2) / s_w", source: BRAZIER },
    { symbol: "R_filled", meaning: "five diameters", is: "5 * D", source: practice },
    {
      symbol: "R_empty",
      meaning: "the largest of five diameters, kink and ovality limit",
      is: "max(R_filled, R_kink, r^2 * sqrt(1 - nu^2) / s_w * sqrt(2 / o_max))",
    },
    {
      symbol: "has_cold",
      kind: "number",
      meaning: "1 where a maker publishes a cold strain",
      given: (si) => (plastics[si.material].coldStrain ? 1 : 0),
    },
    {
      symbol: "epsilon_cold",
      kind: "number",
      meaning: "strain allowed cold",
      given: (si) => plastics[si.material].coldStrain?.low ?? 1,
    },
    { symbol: "R_cold", meaning: "minimum radius cold", is: "D / (2 * epsilon_cold)", when: "has_cold == 1" },
    {
      symbol: "has_conduit",
      kind: "number",
      meaning: "1 for PVC up to the table's largest size",
      given: (si) => (conduitRadius(si) === null ? 0 : 1),
    },
    {
      symbol: "R_table",
      kind: "length",
      meaning: "conduit of this size or the next, bent without a one-shot bender",
      given: (si) => conduitRadius(si) ?? 0,
      source: CONDUIT_CODE,
    },
    { symbol: "R_conduit", meaning: "minimum field bend of conduit", is: "R_table", when: "has_conduit == 1" },
    { symbol: "l_dev", meaning: "length of the bend along the centreline", is: "R * theta" },
    { symbol: "l_heat", meaning: "bend and a diameter at each end", is: "l_dev + 2 * D", source: practice },
    { symbol: "l_set", meaning: "tangent point to corner", is: "R * tan(theta / 2)", when: "theta < 175 / 180 * pi" },
    { symbol: "l_gain", meaning: "corner to corner less along the bend", is: "2 * l_set - l_dev", when: "theta < 175 / 180 * pi" },
    { symbol: "l_take", meaning: "tangent point to the back of the bend", is: "R + D / 2", when: `theta >= ${SQUARE}` },
    ...(
      [
        ["backs", "(R + D / 2) * tan(theta / 2)"],
        ["centrelines", "R * tan(theta / 2)"],
        ["insides", "(R - D / 2) * tan(theta / 2)"],
        ["bend", "R + D / 2"],
        ["straight", "0 * R"],
      ] as const
    ).map(([measure, is]) => ({
      symbol: "l_reach",
      kind: "length" as const,
      meaning: "tangent point to where legs are measured",
      is,
      when: `has_legA and equalText(legMeasure, "${measure}")`,
    })),
    { symbol: "l_A", meaning: "straight of leg A", is: "A_leg - l_reach", when: "has_legA" },
    { symbol: "l_B", meaning: "straight of leg B", is: "B_leg - l_reach", when: "has_legA" },
    { symbol: "l_cut", meaning: "length to cut", is: "l_A + l_dev + l_B", when: "has_legA" },
    { symbol: "l_more", meaning: "both legs less the cut length", is: "A_leg + B_leg - l_cut", when: "has_legA" },
    { symbol: "q", kind: "ratio", meaning: "springback, given or usual", given: (si) => lostPart(si) },
    { symbol: "theta_jig", meaning: "angle in the jig", is: "theta / (1 - q)" },
    { symbol: "R_jig", meaning: "radius in the jig, length kept", is: "R * (1 - q)" },
  ],
  sources: [BRAZIER, CONDUIT_CODE, CONDUIT_HEATER, CONDUIT_CHART, SAND_BENDING],
  either: [{ together: ["legA", "legB"] }],
  check,
  cautions,
}))
