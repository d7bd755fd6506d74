import { type Solver, solver } from "../../solver/index.js"
import { virtualWork } from "../sources.js"
import { chainCautions, chainFaults } from "./cautions.js"
import { chainFields, chainOutput } from "./fields.js"
import { chainFormulae } from "./formulae.js"
import { solve } from "./kernel.js"
import type { FoldingChain, FoldingChainCaution, FoldingChainInput } from "./types.js"

export { foldingChainPicture } from "./picture.js"
export type { ChainBox, ChainJoint, ChainPose, ChainSegmentInput, FoldingChain, FoldingChainCaution, FoldingChainInput } from "./types.js"

/**
 * A chain of segments folded and spread by one driver: places, space taken up, loads at every joint, effort and inertia at the
 * driver.
 *
 * Formula: the joint of segment j turns q_j = α_j + n_j·φ_t·(p − p_s) while the share p of the driver's travel φ_t lies between
 * p_s and p_e, and stands still before and after; directions θ are sums of q from the frame outward. Moment that holds
 * everything outward of a joint M_j = Σ m·g·(arm) in the plane, its gravity lessened by the tilt of the plane, τ, and turned by the
 * lean λ. A joint's drive gives M_j ± ρ·(W_j + |moment|/R_j) in the two directions, with ρ = µ·d/2 the friction radius, W_j the
 * weight on the pin and R_j the lever arm of its rod or cable. Moment at the driver by virtual work T = Σ n_j·(moment of joint j).
 * Inertia Σ m·|dr/dφ|² with every segment a slender rod, and its slope. At a place where a joint begins or stops, what
 * comes next counts; at the end, what came last. Valid for rigid segments, all joints parallel, moved slowly; bending of pins
 * out of the plane adds friction that is not counted.
 *
 * **Inputs**
 * - `segments`: segments from the frame outward [list of 1 to 12]
 *   - `length`: length of a segment [L_s; 1 mm to 10 m]
 *   - `width`: depth across [b_s; 0 to 5 m; default 0]
 *   - `mass`: mass of a segment [m_s; 0 to 100 kg; default 0]
 *   - `centreShare`: place of the centre of gravity [k_s; 0 to 1; default 0.5]
 *   - `foldedAngle`: angle when folded [alpha_s; −401.07° to 401.07°]
 *   - `ratio`: turn of the joint per turn of the driver [n_s; −20 to 20]
 *   - `startsAt`: begins to turn at [p_s; 0 to 99 %; default 0]
 *   - `endsAt`: stands still from [p_e; 1 to 100 %; default 100 %]
 *   - `driveRadius`: lever arm of its drive [R_s; 0 to 1 m; default 0]
 * - `driverTravel`: turn of the driver from folded to spread [phi_t; 0.1° to 700 rad]
 * - `position`: place in the travel [p; 0 to 1; default 1]
 * - `tipMass`: mass at the tip [m_t; 0 to 100 kg; default 0]
 * - `frameTilt`: lean of the frame in the plane [lambda; −183.346° to 183.346°; default 0]
 * - `planeTilt`: tilt of the plane of folding [tau; −90° to 90°; default 0]
 * - `pinFriction`: friction of the pins [mu; 0 to 1; default 0]
 * - `pinDiameter`: diameter of the pins [d_p; 0 to 100 mm; default 0]
 *
 * **Results**
 *
 * `transmits`: transmits [text]; `tipX`: tip, x [x_t; m]; `tipY`: tip, y [y_t; m]; `tipRateX`: travel of the tip per
 * radian of the driver, x [x_r; m]; `tipRateY`: travel of the tip per radian of the driver, y [y_r; m]; `effort`:
 * moment at the driver that holds it [T; N m]; `spreadEffort`: moment at the driver while spreading [T_s; N m];
 * `foldEffort`: moment at the driver while folding [T_f; N m]; `inertia`: inertia at the driver [J; kg m²];
 * `inertiaSlope`: change of the inertia per radian [J_r; kg m²]; `reactionX`: force of the frame, x [F_x; N];
 * `reactionY`: force of the frame, y [F_y; N]; `reactionMoment`: moment of the frame [M_0; N m]; `maxEffort`: largest
 * moment at the driver over the travel [T_m; N m]; `maxReach`: largest reach over the travel [r_m; m]; `joints`:
 * joints [list]; `spreadOrder`: order of the joints, spreading [list, each number]; `folded`: box when folded [group];
 * `spread`: box when spread [group]; `swept`: box around the whole movement [group]; `poses`: travel [list].
 *
 * **Symbols of the working**
 *
 * q_j: angles of the joints [rad]; n_a: turn of each joint per turn of the driver, 0 for one that stands still;
 * theta_j: directions of the segments [rad]; w_j: turn of each segment per turn of the driver; X_e: outer ends, x [m];
 * Y_e: outer ends, y [m]; X_j: joints, x [m]; Y_j: joints, y [m]; X_c: centres of gravity, x [m]; Y_c: centres of
 * gravity, y [m]; n_e: number of segments; U_e: travel of the outer ends per radian, x [m]; V_e: travel of the outer
 * ends per radian, y [m]; U_c: travel of the centres of gravity, x [m]; V_c: travel of the centres of gravity, y [m];
 * g_n: standard gravity [m/s²]; k_p: share of gravity in the plane: cosine of its tilt; g_x: its part in the plane, x
 * [m/s²]; g_y: its part in the plane, y [m/s²]; M_j: moments that hold everything outward of each joint [N m]; W_j:
 * weights on the pins [N]; r_f: friction radius of the pins [m]; c_j: friction radius over lever arm of the drive, 0
 * where it has none; P_e: change of U_e per radian [m]; Q_e: change of V_e per radian [m]; T_w: the largest moment
 * among the poses of the travel, either sign [N m].
 *
 * **Sources**
 * - R. C. Hibbeler (Pearson): Engineering Mechanics: Statics, 14th ed., 2016, chapter 11 (virtual work) (not verified
 *   against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { foldingChain } from 'alula/linkage'
 * const wing = foldingChain({
 *   segments: [
 *     { length: '200 mm', mass: '120 g', foldedAngle: '80 deg', ratio: -1 },
 *     { length: '220 mm', mass: '90 g', foldedAngle: '-160 deg', ratio: 2 },
 *     { length: '260 mm', mass: '60 g', foldedAngle: '160 deg', ratio: -2 },
 *   ],
 *   driverTravel: '80 deg',
 * })
 * wing.tipX // => 0.68
 * ```
 */
export const foldingChain: Solver<FoldingChainInput, FoldingChain, never, FoldingChainCaution> = /* @__PURE__ */ solver<
  FoldingChainInput,
  FoldingChain,
  never,
  FoldingChainCaution
>("foldingChain", "A chain of segments folded and spread by one driver", solve, () => ({
  input: chainFields(),
  output: chainOutput(),
  example: {
    segments: [
      { length: "200 mm", width: "60 mm", mass: "120 g", foldedAngle: "80 deg", ratio: -0.9, driveRadius: "30 mm" },
      { length: "220 mm", width: "50 mm", mass: "90 g", foldedAngle: "-160 deg", ratio: 1.9, driveRadius: "20 mm" },
      { length: "260 mm", width: "40 mm", mass: "60 g", foldedAngle: "160 deg", ratio: -1.8, driveRadius: "15 mm" },
    ],
    driverTravel: "80 deg",
    position: 0.7,
    frameTilt: "5 deg",
    planeTilt: "20 deg",
    pinFriction: 0.2,
    pinDiameter: "5 mm",
  },
  formulae: chainFormulae(),
  sources: [virtualWork],
  check: chainFaults,
  cautions: chainCautions,
}))
