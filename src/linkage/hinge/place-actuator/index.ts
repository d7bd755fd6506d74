import { isNoSolution, type NoSolution, type Solver, solver, withNearest } from "../../../solver/index.js"
import { branchAndBoundSource } from "../../sources.js"
import { placeCautions } from "./cautions.js"
import { placeFaults } from "./check.js"
import { placeFields } from "./fields.js"
import { placeActuatorFormulae } from "./formulae.js"
import { kernel, type PlaceTrace } from "./kernel.js"
import type { PlaceActuator, PlaceActuatorCaution, PlaceActuatorInput, PlaceActuatorRefusal, Si } from "./types.js"

export type {
  FrontPoint,
  KeepOutInput,
  PlaceActuator,
  PlaceActuatorCaution,
  PlaceActuatorInput,
  PlaceActuatorRefusal,
  RegionInput,
  WorstBuild,
} from "./types.js"

function solve(si: Si, trace?: Partial<PlaceTrace>): PlaceActuator | NoSolution<PlaceActuatorRefusal> {
  const out = kernel(si, trace)
  // the front is the dear part, and no answer depends on it
  return isNoSolution(out) ? withNearest(out, placeActuator, (other) => kernel({ ...other, frontPoints: 0 }), si, out.nearest) : out
}

/**
 * Where to put both pivots of an actuator so that an arm swings as wanted with the minimum peak force, or
 * swings most within the force rating, with a proof of how far from the best the answer can be.
 *
 * Formula: with D and r the distances of fixed and moving pivot from the hinge, u = D + r and v = D − r, the angle
 * between them at length L is φ(L) = 2·atan √((L² − v²)/(u² − L²)), the swing over the stroke φ(L_r + S) − φ(L_r), and
 * the lever arm l = √((u² − L²)(L² − v²))/(2L). The force to hold is F = |M(θ)|/l, with M(θ) the moment at an arm angle: of
 * either set of masses, times the weight factor at its largest or smallest, at any lean within reach, less that of the springs, with a
 * gust from either side; the worst of them counts. Peak force is the largest F over the stroke. Only D, r and the angle
 * between the pivots' directions decide it; the regions allow a range of directions for every D and r.
 *
 * Tolerances: a build may have D and r off by `pivotTolerance` e, both pivots off across their lines to the hinge by as much (the arm
 * turned by asin(e/D) + asin(e/r)), and both lengths off by `lengthTolerance`. Every limit is kept by every such build, and the force
 * that is made smallest is that of the worst one (`worstBuild`). The box of builds contains the circle of radius e about either pivot.
 *
 * The search is a branch and bound over u, v and that angle, and over the direction of the fixed pivot where there are parts to keep
 * clear of. φ, swing and l are monotone in u and |v|, so each box has exact ranges, padded against rounding: `forceBound` (or
 * `swingBound`) holds for every point of the regions, not only for those looked at. `certified` says whether the gap asked for was
 * reached within `maxBoxes`; if not, `gap` says what was. The actuator keeps clear of a part where its line stays
 * farther from it than half its width and what the tolerances move it by.
 *
 * Valid for slow moves, the whole stroke used, rod axis through its pivots, no friction: give the answer to hingeActuator for that.
 * Springs are taken as fitted where they are drawn.
 *
 * Refuses: `regions-too-near`, `regions-too-far` where the actuator fits between no two points of the
 * regions; `insufficient-swing`, `low-end-out-of-range`, `parts-in-the-way`, `limits-exclude-all` where no placement keeps all limits;
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
 * - `otherMasses`: masses on the arm at other times [list of 1 to 50; optional]
 *   - `mass`: mass [m_o; 0 to 200 kg]
 *   - `radius`: distance from the hinge [r_o; 0 to 20 m]
 *   - `angle`: angle from the arm [a_o; −572.958° to 572.958°; default 0]
 * - `springs`: springs [list of 1 to 20; optional]
 *   - `fixedPivot`: fixed end [group]
 *     - `x`: fixed end, outward [x_s; −20 to 20 m]
 *     - `y`: fixed end, up [y_s; −20 to 20 m]
 *   - `radius`: moving end from the hinge [r_s; 0 to 20 m]
 *   - `angle`: angle from the arm to the moving end [a_s; −572.958° to 572.958°; default 0]
 *   - `stiffness`: stiffness [k_s; 0 to 10000 N/mm]
 *   - `freeLength`: free length [l_s; 0 to 20 m]
 *   - `preload`: initial tension [F_s; 0 to 100 kN; default 0]
 *   - `pullsOnly`: only pulls [yes or no; default yes]
 * - `loadFactor`: weight while walking over weight at rest [k_w; 1 to 5; default 1]
 * - `gustForce`: gust square to the arm [F_g; 0 to 100 kN; default 0]
 * - `gustRadius`: gust from the hinge [r_g; 0 to 20 m; default 0]
 * - `frameTilt`: lean of the wearer [lambda; −183.346° to 183.346°; default 0]
 * - `tiltEitherWay`: lean either way [Lambda; 0 to 91.6732°; default 0]
 * - `pivotTolerance`: tolerance of the pivots [d_p; 0 to 50 mm; default 0]
 * - `lengthTolerance`: tolerance of the actuator's lengths [d_l; 0 to 50 mm; default 0]
 * - `keepOut`: parts to keep clear of [list of 1 to 20; optional]
 *   - `corners`: corners [list of 3 to 50]
 *     - `x`: corner, outward [x_k; −20 to 20 m]
 *     - `y`: corner, up [y_k; −20 to 20 m]
 * - `actuatorWidth`: width of the actuator [w_a; 0 to 1 m; default 0]
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
 * [s_p; m]; `peakForceAngle`: arm angle at peak force [theta_p; rad]; `minLever`: minimum lever arm [l_min; m];
 * `minTransmissionAngle`: minimum transmission angle [tau_min; rad]; `deadPointMargin`: clearance to dead point [c;
 * m]; `worstBuild`: worst build [group]; `safetyFactor`: force rating over peak force, worst build [n]; `forceBound`:
 * proven lower bound of the force [F_b; N]; `swingBound`: proven upper bound of the swing [sigma_b; rad]; `gap`: gap
 * to the proven optimum [g_a; as a fraction]; `certified`: within the gap asked for [yes or no]; `iterations`: search
 * boxes [number]; `residual`: best to bound [number]; `front`: swing against force [list].
 *
 * **Symbols of the working**
 *
 * p_s: springs that only pull (1) or also push (0); b: 1 raised by extending, −1 by retracting; g_n: standard gravity
 * [m/s²]; L_1: retracted length [m]; phi_1: angle at the hinge between the pivots retracted [rad]; lever_1: lever arm
 * retracted [m]; L_2: extended length [m]; phi_2: angle at the hinge between the pivots extended [rad]; lever_2: lever
 * arm extended [m]; theta_0: low end of the swing, up to whole turns [rad]; L_p: length at peak force [m]; phi_p:
 * angle at the hinge between the pivots at peak force [rad]; lever_p: lever arm at peak force [m]; k_p: weight over
 * weight at rest at peak force; e_p: gust at peak force: 1 pushes the arm down, −1 up; j_p: masses at peak force: 0
 * the first, 1 those at other times; lambda_p: lean at peak force [rad]; M_p: moment of the weights at peak force [N
 * m]; X_p: springs, moving end to fixed end, outward, at peak force [m]; Y_p: springs, moving end to fixed end, up, at
 * peak force [m]; Z_p: lengths of the springs at peak force [m]; T_p: tensions of the springs at peak force; one that
 * only pulls is slack below its free length [N]; N_p: moment of the springs at peak force [N m]; phi_v: angle at the
 * hinge between the pivots in the worst build [rad]; lever_v: lever arm in the worst build [m]; delta_v: turn of the
 * arm there by pivots off across their lines, at most asin(d_p/D) + asin(d_p/r) either way [rad]; k_v: weight over
 * weight at rest in the worst build; e_v: gust in the worst build: 1 pushes the arm down, −1 up; j_v: masses in the
 * worst build: 0 the first, 1 those at other times; lambda_v: lean in the worst build [rad]; M_v: moment of the
 * weights in the worst build [N m]; X_v: springs, moving end to fixed end, outward, in the worst build [m]; Y_v:
 * springs, moving end to fixed end, up, in the worst build [m]; Z_v: lengths of the springs in the worst build [m];
 * T_v: tensions of the springs in the worst build; one that only pulls is slack below its free length [N]; N_v: moment
 * of the springs in the worst build [N m]; D_u: fixed pivot from the hinge in the corner of the tolerances with the
 * smallest swing [m]; r_u: moving pivot from the hinge in that corner [m]; L_s: retracted length at its longest [m];
 * phi_s: angle at the hinge between the pivots in that corner, retracted [rad]; lever_s: lever arm in that corner,
 * retracted [m]; L_t: extended length at its shortest [m]; phi_t: angle at the hinge between the pivots in that
 * corner, extended [rad]; lever_t: lever arm in that corner, extended [m]; e_D: what the tangent there falls by on the
 * way to the other fixed pivot; e_r: what the tangent there falls by on the way to the other moving pivot.
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
  PlaceActuatorCaution,
  PlaceTrace
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
    minLever: { kind: "length", symbol: "l_min", label: "minimum lever arm" },
    minTransmissionAngle: { kind: "angle", symbol: "tau_min", label: "minimum transmission angle" },
    deadPointMargin: { kind: "length", symbol: "c", label: "clearance to dead point" },
    worstBuild: {
      kind: "group",
      label: "worst build",
      fields: {
        peakForce: { kind: "force", symbol: "F_v", label: "peak force, worst build" },
        fixedPivotDistance: { kind: "length", symbol: "D_v", label: "fixed pivot from the hinge, there" },
        movingPivotRadius: { kind: "length", symbol: "r_v", label: "moving pivot from the hinge, there" },
        length: { kind: "length", symbol: "L_v", label: "actuator length, there" },
        angle: { kind: "angle", symbol: "theta_v", label: "arm angle, there" },
        swing: { kind: "angle", symbol: "sigma_v", label: "swing, worst build" },
        minLever: { kind: "length", symbol: "l_v", label: "minimum lever arm, worst build" },
        minTransmissionAngle: { kind: "angle", symbol: "tau_v", label: "minimum transmission angle, worst build" },
        deadPointMargin: { kind: "length", symbol: "c_v", label: "clearance to dead point, worst build" },
      },
    },
    safetyFactor: { kind: "number", symbol: "n", label: "force rating over peak force, worst build" },
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
