import type { Certified } from "../../../numeric/index.js"
import { isNoSolution, type NoSolution, refuse, type Solver, solver, withNearest } from "../../../solver/index.js"
import { branchAndBoundSource } from "../../sources.js"
import { wrapAngle } from "../geometry.js"
import { placeCautions } from "./cautions.js"
import { placeFaults } from "./check.js"
import { placeFields } from "./fields.js"
import { placeActuatorFormulae } from "./formulae.js"
import { frontOf, pivotsOf, problemOf } from "./front.js"
import { hingeAngle, leverArm, type Placement, type PlaceProblem, placementPeak, swingOf } from "./model.js"
import { placementRefusal } from "./refusal.js"
import { searchPlacement } from "./search.js"
import type { PlaceActuator, PlaceActuatorCaution, PlaceActuatorInput, PlaceActuatorRefusal, Si } from "./types.js"

export type { FrontPoint, PlaceActuator, PlaceActuatorCaution, PlaceActuatorInput, PlaceActuatorRefusal, RegionInput } from "./types.js"

function solve(si: Si): PlaceActuator | NoSolution<PlaceActuatorRefusal> {
  const out = kernel(si)
  // the front is the dear part, and no answer depends on it
  return isNoSolution(out) ? withNearest(out, placeActuator, (other) => kernel({ ...other, frontPoints: 0 }), si, out.nearest) : out
}

/** The minimum peak force; where a rating lies between what was proved and what was found, the search goes on for one within it. */
function leastForce(problem: PlaceProblem, { swing, gapLimit, maxBoxes, ratedForce }: Si): Certified<Placement> {
  const goal = { objective: "min-force", swing, force: Number.POSITIVE_INFINITY, gap: gapLimit, budget: maxBoxes } as const
  const first = searchPlacement(problem, goal)
  if (first.best === null || first.best.value <= ratedForce || first.bound > ratedForce) return first
  const further = searchPlacement(problem, { ...goal, gap: 1e-9, budget: 8 * maxBoxes, enough: ratedForce }, first.best.found)
  const best = further.best ?? first.best
  const bound = Math.min(Math.max(first.bound, further.bound), best.value)
  return { best, bound, explored: first.explored + further.explored, isClosed: bound >= best.value * (1 - gapLimit) }
}

function kernel(si: Si): PlaceActuator | NoSolution<PlaceActuatorRefusal> {
  const problem = problemOf(si)
  const { retractedLength, stroke, ratedForce, gapLimit, maxBoxes } = si
  const extended = retractedLength + stroke
  const least = leastForce(problem, si)
  if (least.best === null) return placementRefusal(problem, si, least)
  if (least.best.value > ratedForce) {
    const at = { peakForce: least.best.value, forceBound: least.bound }
    const rating = { "given.ratedForce": ratedForce }
    return least.bound > ratedForce
      ? refuse(
          "insufficient-force",
          "The best placement found needs {peakForce force}, {shortBy force} above the actuator's rating of {given.ratedForce force}; none of the allowed placements needs less than {forceBound force}.",
          at.peakForce - ratedForce,
          at,
          { ratedForce: at.peakForce },
          rating,
        )
      : refuse(
          "undecided",
          "The best placement found needs {peakForce force}, {shortBy force} above the actuator's rating of {given.ratedForce force}; whether another is within it is still open, as none is proved to need more than {forceBound force}. Allow more boxes.",
          at.peakForce - ratedForce,
          at,
          { ratedForce: at.peakForce },
          rating,
        )
  }
  const seeksForce = si.objective === "min-force"
  const widest = seeksForce
    ? null
    : searchPlacement(
        problem,
        { objective: "max-swing", swing: si.swing, force: ratedForce, gap: gapLimit, budget: maxBoxes },
        least.best.found,
      )
  const search = widest ?? least
  const widestFound = widest?.best?.found
  // many placements may swing as far: of those, the one with the minimum force
  const eased = widestFound
    ? searchPlacement(
        problem,
        { objective: "min-force", swing: widestFound.swing, force: ratedForce, gap: gapLimit, budget: maxBoxes },
        widestFound,
      )
    : null
  const found = (eased ?? search).best?.found ?? least.best.found
  const { front, explored } = frontOf(si, problem, least.best.found)
  const { base, pin } = pivotsOf(si, found)
  const distance = Math.hypot(base.x - si.hinge.x, base.y - si.hinge.y)
  const radius = Math.hypot(pin.x, pin.y)
  const [u, v] = [distance + radius, Math.abs(distance - radius)]
  const swing = swingOf(problem, u, v)
  const at = placementPeak(problem, { ...found, distance, radius })
  const levers = [leverArm(u, v, retractedLength), leverArm(u, v, extended)] as const
  const transmission = (length: number, lever: number) =>
    Math.atan2(lever * length, Math.abs((radius ** 2 + length ** 2 - distance ** 2) / 2))
  const lowEnd = found.branch === 1 ? retractedLength : extended
  const raised = Math.abs(hingeAngle(u, v, at.length) - hingeAngle(u, v, lowEnd))
  // as the pivots give it, in the turn that was asked for
  const stands = Math.atan2(base.y - si.hinge.y, base.x - si.hinge.x) - Math.atan2(pin.y, pin.x) + found.branch * hingeAngle(u, v, lowEnd)
  const low = found.low + wrapAngle(stands - found.low)
  const forceBound = seeksForce ? Math.min(search.bound, at.force) : null
  const swingBound = seeksForce ? null : Math.max(-search.bound, swing)
  const achieved = forceBound === null ? (swingBound as number) / swing - 1 : 1 - forceBound / at.force
  return {
    fixedPivot: base,
    movingPivot: { radius, angle: Math.atan2(pin.y, pin.x) },
    movingPivotX: pin.x,
    movingPivotY: pin.y,
    raisedBy: found.branch === 1 ? "extending" : "retracting",
    fixedPivotDistance: distance,
    lowAngle: low,
    highAngle: low + swing,
    swing,
    peakForce: at.force,
    peakForceExtension: at.length - retractedLength,
    peakForceAngle: low + raised,
    safetyFactor: ratedForce / at.force,
    minLever: Math.min(...levers),
    minTransmissionAngle: Math.min(transmission(retractedLength, levers[0]), transmission(extended, levers[1])),
    deadPointMargin: Math.min(retractedLength - v, u - extended),
    forceBound,
    swingBound,
    gap: achieved,
    certified: search.isClosed,
    iterations: least.explored + (widest?.explored ?? 0) + (eased?.explored ?? 0) + explored,
    residual: forceBound === null ? (swingBound as number) - swing : at.force - forceBound,
    front,
  }
}

/**
 * Where to put both pivots of an actuator so that an arm swings as wanted with the minimum peak force, or
 * swings most within the force rating, with a proof of how far from the best the answer can be.
 *
 * Formula: with D and r the distances of fixed and moving pivot from the hinge, u = D + r and v = D − r, the angle
 * between them at length L is φ(L) = 2·atan √((L² − v²)/(u² − L²)), the swing over the stroke φ(L_r + S) − φ(L_r), and
 * the lever arm l = √((u² − L²)(L² − v²))/(2L). The force to hold is F = g·|Σ m·r_w·e^(i·a)|·cos(max(0, δ − Λ))/l, with
 * δ the angle from the arm's heaviest pose (level centre of gravity), lean λ included, and Λ the lean either way. Peak
 * force is its largest value over the stroke. Only D, r and the arm angle at the low end of the swing decide it; the
 * regions allow a range of directions for every D and r.
 *
 * The search is a branch and bound over u, v and that angle. φ, swing and l are monotone in u and |v|, so each box has
 * exact ranges, padded against rounding: `forceBound` (or `swingBound`) holds for every point of the regions, not only
 * for those looked at. `certified` says whether the gap asked for was reached within `maxBoxes`; if not, `gapLimit` says what
 * was.
 *
 * Valid for slow moves, the whole stroke used, rod axis through its pivots, no springs and no friction:
 * give the answer to hingeActuator for those.
 *
 * Refuses: `regions-too-near`, `regions-too-far` where the actuator fits between no two points of the
 * regions; `insufficient-swing`, `low-end-out-of-range`, `limits-exclude-all` where no placement keeps all limits;
 * `insufficient-force`; `no-candidate` and `undecided` where the boxes ran out.
 *
 * The bounds follow from the monotony above.
 *
 * **Inputs**
 * - `hinge`: hinge [group; optional, with a default of its own]
 *   - `x`: hinge, outward [x_h; −20 to 20 m]
 *   - `y`: hinge, up [y_h; −20 to 20 m]
 * - `retractedLength`: retracted length [L_r; 1 mm to 20 m]
 * - `stroke`: stroke [S; 1 mm to 10 m]
 * - `ratedForce`: force rating [F_r; 1 mN to 1000 kN]
 * - `masses`: masses on the arm [list of 1 to 50]
 *   - `mass`: mass [m_w; 0 to 200 kg]
 *   - `radius`: distance from the hinge [r_w; 0 to 20 m]
 *   - `angle`: angle from the arm [a_w; −572.958° to 572.958°; default 0]
 * - `frameTilt`: lean of the wearer [lambda; −183.346° to 183.346°; default 0]
 * - `tiltEitherWay`: lean either way [Lambda; 0 to 91.6732°; default 0]
 * - `fixedPivotRegion`: region of the fixed pivot [group]
 *   - `left`: region of the fixed pivot, minimum x [x_B1; −20 to 20 m]
 *   - `right`: region of the fixed pivot, maximum x [x_B2; −20 to 20 m]
 *   - `bottom`: region of the fixed pivot, minimum y [y_B1; −20 to 20 m]
 *   - `top`: region of the fixed pivot, maximum y [y_B2; −20 to 20 m]
 * - `movingPivotRegion`: region of the moving pivot [group]
 *   - `left`: region of the moving pivot, minimum x [x_P1; −20 to 20 m]
 *   - `right`: region of the moving pivot, maximum x [x_P2; −20 to 20 m]
 *   - `bottom`: region of the moving pivot, minimum y [y_P1; −20 to 20 m]
 *   - `top`: region of the moving pivot, maximum y [y_P2; −20 to 20 m]
 * - `lowAngle`: lower end of the swing [group]
 *   - `from`: minimum [t_1; −401.07° to 401.07°]
 *   - `to`: maximum [t_2; −401.07° to 401.07°]
 * - `swing`: swing wanted [sigma_w; 0.1° to 177.617°]
 * - `maxSwing`: swing allowed [sigma_m; 0.1° to 183.346°; optional]
 * - `objective`: search for [min-force or max-swing; default min-force]
 * - `raisedBy`: arm is raised by [either, extending or retracting; default either]
 * - `minLever`: minimum lever arm allowed [l_1; 0 to 10 m; default 0]
 * - `maxLever`: maximum lever arm allowed [l_2; 0.1 mm to 10 m; optional]
 * - `minTransmissionAngle`: minimum transmission angle allowed [tau_w; 0 to 85.9437°; default 0]
 * - `minDeadPointMargin`: length to keep from dead points [c_w; 0 to 1 m; default 1 mm]
 * - `gapLimit`: gap to stop at [epsilon; 0.01 to 50 %; default 1 %]
 * - `maxBoxes`: boxes at most [n_b; whole 10 to 200000; default 20000]
 * - `frontPoints`: points of the front [n_f; whole 0 to 20; default 5]
 *
 * **Results**
 *
 * `fixedPivot`: fixed pivot [group]; `movingPivot`: moving pivot [group]; `movingPivotX`: moving pivot, along the arm
 * [x_p; m]; `movingPivotY`: moving pivot, to its left [y_p; m]; `raisedBy`: raised by [text]; `fixedPivotDistance`:
 * fixed pivot from the hinge [D; m]; `lowAngle`: arm angle low [theta_l; rad]; `highAngle`: arm angle high [theta_h;
 * rad]; `swing`: swing [sigma; rad]; `peakForce`: peak force [F_max; N]; `peakForceExtension`: extension at peak force
 * [s_p; m]; `peakForceAngle`: arm angle at peak force [theta_p; rad]; `safetyFactor`: force rating over peak force
 * [n]; `minLever`: minimum lever arm [l_min; m]; `minTransmissionAngle`: minimum transmission angle [tau_min; rad];
 * `deadPointMargin`: clearance to dead point [c; m]; `forceBound`: proven lower bound of the force [F_b; N];
 * `swingBound`: proven upper bound of the swing [sigma_b; rad]; `gap`: gap to the proven optimum [g_a; as a fraction];
 * `certified`: within the gap asked for [yes or no]; `iterations`: search boxes [number]; `residual`: best to bound
 * [number]; `front`: swing against force [list].
 *
 * **Symbols of the working**
 *
 * b: 1 raised by extending, −1 by retracting; g_n: standard gravity [m/s²]; L_1: retracted length [m]; phi_1: angle at
 * the hinge between the pivots retracted [rad]; lever_1: lever arm retracted [m]; L_2: extended length [m]; phi_2:
 * angle at the hinge between the pivots extended [rad]; lever_2: lever arm extended [m]; theta_0: low end of the
 * swing, up to whole turns [rad]; A_x: moment of the weights, arm level [N m]; A_y: moment of the weights, arm upright
 * [N m]; A: their largest moment [N m]; s_0: direction of the centre of gravity, with the lean; L_p: length at peak
 * force [m]; phi_p: angle at the hinge between the pivots at peak force [rad]; lever_p: lever arm at peak force [m];
 * delta: centre of gravity off level at peak force [rad].
 *
 * **Sources**
 * - A. H. Land, A. G. Doig (Econometrica 28): An automatic method of solving discrete programming problems, 1960,
 *   pages 497–520 (branch and bound) (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError with one of the codes above
 * @example
 * ```ts
 * import { placeActuator } from 'alula/linkage'
 * const wing = placeActuator({
 *   retractedLength: '160 mm',
 *   stroke: '50 mm',
 *   ratedForce: '400 N',
 *   masses: [{ mass: '1.5 kg', radius: '500 mm' }],
 *   fixedPivotRegion: { left: '-100 mm', right: '20 mm', bottom: '-300 mm', top: '-50 mm' },
 *   movingPivotRegion: { left: '0 mm', right: '150 mm', bottom: '-60 mm', top: '30 mm' },
 *   lowAngle: { from: '-75 deg', to: '-65 deg' },
 *   swing: '70 deg',
 * })
 * wing.peakForce // => 139.5
 * wing.certified // => true
 * ```
 */
export const placeActuator: Solver<PlaceActuatorInput, PlaceActuator, PlaceActuatorRefusal, PlaceActuatorCaution> = /* @__PURE__ */ solver<
  PlaceActuatorInput,
  PlaceActuator,
  PlaceActuatorRefusal,
  PlaceActuatorCaution
>("placeActuator", "Where to put an actuator's pivots, with proof that nothing does much better", solve, () => ({
  input: /* @__PURE__ */ placeFields(),
  output: {
    fixedPivot: {
      kind: "group",
      label: "fixed pivot",
      fields: { x: { kind: "length", symbol: "x_b", label: "outward" }, y: { kind: "length", symbol: "y_b", label: "up" } },
    },
    movingPivot: {
      kind: "group",
      label: "moving pivot",
      fields: {
        radius: { kind: "length", symbol: "r", label: "from the hinge" },
        angle: { kind: "angle", symbol: "beta", label: "from the arm" },
      },
    },
    movingPivotX: { kind: "length", symbol: "x_p", label: "moving pivot, along the arm" },
    movingPivotY: { kind: "length", symbol: "y_p", label: "moving pivot, to its left" },
    raisedBy: { kind: "text", label: "raised by" },
    fixedPivotDistance: { kind: "length", symbol: "D", label: "fixed pivot from the hinge" },
    lowAngle: { kind: "angle", symbol: "theta_l", label: "arm angle low" },
    highAngle: { kind: "angle", symbol: "theta_h", label: "arm angle high" },
    swing: { kind: "angle", symbol: "sigma", label: "swing" },
    peakForce: { kind: "force", symbol: "F_max", label: "peak force" },
    peakForceExtension: { kind: "length", symbol: "s_p", label: "extension at peak force" },
    peakForceAngle: { kind: "angle", symbol: "theta_p", label: "arm angle at peak force" },
    safetyFactor: { kind: "number", symbol: "n", label: "force rating over peak force" },
    minLever: { kind: "length", symbol: "l_min", label: "minimum lever arm" },
    minTransmissionAngle: { kind: "angle", symbol: "tau_min", label: "minimum transmission angle" },
    deadPointMargin: { kind: "length", symbol: "c", label: "clearance to dead point" },
    forceBound: { kind: "force", symbol: "F_b", label: "proven lower bound of the force" },
    swingBound: { kind: "angle", symbol: "sigma_b", label: "proven upper bound of the swing" },
    gap: { kind: "ratio", symbol: "g_a", label: "gap to the proven optimum", unit: "%" },
    certified: { kind: "flag", label: "within the gap asked for" },
    iterations: { kind: "number", label: "search boxes" },
    residual: { kind: "number", label: "best to bound" },
    front: {
      kind: "list",
      label: "swing against force",
      of: {
        kind: "group",
        label: "placement",
        fields: {
          swing: { kind: "angle", label: "swing" },
          peakForce: { kind: "force", label: "peak force" },
          minSwing: { kind: "angle", label: "swing asked for" },
          forceBound: { kind: "force", label: "none needs less than" },
          fixedPivotX: { kind: "length", label: "fixed pivot, outward" },
          fixedPivotY: { kind: "length", label: "fixed pivot, up" },
          movingPivotX: { kind: "length", label: "moving pivot, along the arm" },
          movingPivotY: { kind: "length", label: "moving pivot, to its left" },
        },
      },
    },
  },
  example: {
    retractedLength: "160 mm",
    stroke: "50 mm",
    ratedForce: "400 N",
    masses: [{ mass: "1.5 kg", radius: "500 mm", angle: "2 deg" }],
    frameTilt: "3 deg",
    tiltEitherWay: "5 deg",
    fixedPivotRegion: { left: "-100 mm", right: "20 mm", bottom: "-280 mm", top: "-50 mm" },
    movingPivotRegion: { left: "10 mm", right: "140 mm", bottom: "-60 mm", top: "30 mm" },
    lowAngle: { from: "-75 deg", to: "-60 deg" },
    swing: "60 deg",
    minTransmissionAngle: "15 deg",
    minDeadPointMargin: "2 mm",
    maxBoxes: 4000,
    frontPoints: 2,
  },
  formulae: placeActuatorFormulae,
  sources: [branchAndBoundSource],
  check: placeFaults,
  cautions: placeCautions,
}))
