import { type Solver, solver } from "../../solver/index.js"
import { nortonSynthesis } from "../sources.js"
import { synthesisCautions } from "./cautions.js"
import { synthesisFaults } from "./check.js"
import { synthesisFields, synthesisOutput } from "./fields.js"
import { synthesisFormulae } from "./formulae.js"
import { solve } from "./kernel.js"
import type { FourBarSynthesis, FourBarSynthesisCaution, FourBarSynthesisInput, FourBarSynthesisRefusal } from "./types.js"

export { type CouplerPose, centrePoint, circlePoint } from "./dyads.js"
export { fourBarSynthesisPicture } from "./picture.js"
export type {
  CouplerPoseInput,
  FourBarSynthesis,
  FourBarSynthesisCaution,
  FourBarSynthesisInput,
  FourBarSynthesisRefusal,
  PivotRegionInput,
  SynthesisedFourBar,
  SynthesisTally,
} from "./types.js"

/**
 * Four-bar linkages that carry their coupler through two or three poses, in order and on one branch: the best of all pairs of
 * links that the regions allow.
 *
 * Formula: a fixed pivot O, seen from the coupler in pose j, is b_j = R(−α_j)·(O − P_j), with P_j the place of the
 * coupler's origin and α_j its direction. The pin that keeps its distance from O through all poses is the middle of the
 * circle through b₁, b₂, b₃; with two poses it lies anywhere on the perpendicular bisector of b₁ b₂. Fixed pivots are
 * tried over their region, and with two poses pins along their line, a step s apart; every pair of links that result is
 * tried as input and output. A pair passes when the output pin stays on one side of the line from input pin to output
 * pivot, when one sense of turning of the input link meets the poses in order, and when the transmission angle never
 * falls below the limit anywhere between: cos μ = (b² + c² − f²)/(2·b·c) at the minimum and the largest f² = d² + a² −
 * 2·d·a·cos θ of the way, a input, b coupler, c output, d ground (all within `linkLengths`), θ
 * the input angle from the line of the fixed pivots. Best is the largest minimum transmission angle or the
 * smallest a + b + c + d. No better linkage exists with its pivots on the places tried; between them there may be.
 * Valid for rigid links without play.
 *
 * Refuses `no-candidate` where every pair changes branch, is out of order or out of length, `poor-transmission` where the best is
 * below the limit.
 *
 * **Inputs**
 * - `poses`: poses of the coupler, in order [list of 2 to 3]
 *   - `x`: x of the coupler's origin [x_p; −20 to 20 m]
 *   - `y`: y of the coupler's origin [y_p; −20 to 20 m]
 *   - `angle`: direction of the coupler's x axis [alpha_p; −401.07° to 401.07°]
 * - `fixedPivotRegion`: region of the fixed pivots [group]
 *   - `left`: region of the fixed pivots, minimum x [l_f; −20 to 20 m]
 *   - `right`: region of the fixed pivots, maximum x [r_f; −20 to 20 m]
 *   - `bottom`: region of the fixed pivots, minimum y [b_f; −20 to 20 m]
 *   - `top`: region of the fixed pivots, maximum y [t_f; −20 to 20 m]
 * - `movingPivotRegion`: region of the pins, in the coupler's axes [group]
 *   - `left`: region of the pins, in the coupler's axes, minimum x [l_m; −20 to 20 m]
 *   - `right`: region of the pins, in the coupler's axes, maximum x [r_m; −20 to 20 m]
 *   - `bottom`: region of the pins, in the coupler's axes, minimum y [b_m; −20 to 20 m]
 *   - `top`: region of the pins, in the coupler's axes, maximum y [t_m; −20 to 20 m]
 * - `step`: step between the pivots tried [s; 0.1 mm to 10 m]
 * - `objective`: what makes a linkage the best [best-transmission or smallest; default best-transmission]
 * - `turns`: way the input link turns [either, counter-clockwise or clockwise; default either]
 * - `linkLengths`: lengths allowed for every link [group; optional, with a default of its own]
 *   - `low`: shortest link allowed [L_l; 0.1 mm to 10 m]
 *   - `high`: longest link allowed [L_h; 1 mm to 20 m]
 * - `transmissionLimit`: minimum transmission angle to keep [mu_l; 0.1° to 89°; default 40°]
 * - `listed`: linkages listed [n_l; whole 1 to 50; default 5]
 *
 * **Results**
 *
 * `minTransmissionAngle`: minimum transmission angle of the best [mu; rad]; `size`: sum of its four lengths [L_s; m];
 * `ground`: distance of its fixed pivots [d; m]; `input`: its input link [a; m]; `coupler`: its coupler, pin to pin
 * [b; m]; `output`: its output link [c; m]; `inputTravel`: turn of its input link [Delta; rad]; `solutions`: linkages
 * that pass, best first [list]; `tried`: what was tried [group].
 *
 * **Symbols of the working**
 *
 * x_A: fixed pivot of the input link, x [m]; y_A: fixed pivot of the input link, y [m]; x_B: fixed pivot of the output
 * link, x [m]; y_B: fixed pivot of the output link, y [m]; u_A: pin of the input link along the coupler's x axis [m];
 * v_A: pin of the input link along the coupler's y axis [m]; u_B: pin of the output link along the coupler's x axis
 * [m]; v_B: pin of the output link along the coupler's y axis [m]; X_A: pin of the input link at the poses, x [m];
 * Y_A: pin of the input link at the poses, y [m]; X_B: pin of the output link at the poses, x [m]; Y_B: pin of the
 * output link at the poses, y [m]; theta_i: angles of the input link at the poses, from the line of the fixed pivots,
 * running on; n_p: poses; theta_l: lower end of the turn; theta_h: upper end of the turn; f_l: minimum distance from
 * input pin to output pivot on the way [m]; f_h: maximum distance from input pin to output pivot on the way [m].
 *
 * **Sources**
 * - R. L. Norton (McGraw-Hill): Design of Machinery, 5th ed., 2012, chapter 5 (two- and three-position motion
 *   generation, branch and order) (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError where no linkage passes
 * @example
 * ```ts
 * import { fourBarSynthesis } from 'alula/linkage'
 * const jaw = fourBarSynthesis({
 *   poses: [{ x: 0, y: 0, angle: 0 }, { x: '40 mm', y: '18 mm', angle: '20 deg' }, { x: '72 mm', y: '48 mm', angle: '47 deg' }],
 *   fixedPivotRegion: { left: '-80 mm', right: '60 mm', bottom: '40 mm', top: '140 mm' },
 *   movingPivotRegion: { left: '-100 mm', right: '120 mm', bottom: '-100 mm', top: '120 mm' },
 *   step: '20 mm',
 * })
 * jaw.solutions[0]?.branch // => 'open'
 * ```
 */
export const fourBarSynthesis: Solver<FourBarSynthesisInput, FourBarSynthesis, FourBarSynthesisRefusal, FourBarSynthesisCaution> =
  /* @__PURE__ */ solver<FourBarSynthesisInput, FourBarSynthesis, FourBarSynthesisRefusal, FourBarSynthesisCaution>(
    "fourBarSynthesis",
    "Four-bars that carry a coupler through two or three poses",
    solve,
    () => ({
      input: synthesisFields(),
      output: synthesisOutput(),
      example: {
        poses: [
          { x: 0, y: 0, angle: 0 },
          { x: "40 mm", y: "18 mm", angle: "20 deg" },
          { x: "72 mm", y: "48 mm", angle: "47 deg" },
        ],
        fixedPivotRegion: { left: "-80 mm", right: "60 mm", bottom: "40 mm", top: "140 mm" },
        movingPivotRegion: { left: "-100 mm", right: "120 mm", bottom: "-100 mm", top: "120 mm" },
        step: "20 mm",
      },
      formulae: synthesisFormulae(),
      sources: [nortonSynthesis],
      check: synthesisFaults,
      cautions: synthesisCautions,
    }),
  )
