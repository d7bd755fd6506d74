import { type Solver, solver } from "../../solver/index.js"
import { equilibrium, rotationFormula } from "../sources.js"
import { skewCautions, skewFaults } from "./cautions.js"
import { skewFields, skewOutput } from "./fields.js"
import { skewFormulae } from "./formulae.js"
import { solve } from "./kernel.js"
import type { SkewHinge, SkewHingeCaution, SkewHingeInput } from "./types.js"

export { skewHingePicture } from "./picture.js"
export type {
  BodyDirectionInput,
  BodyPointInput,
  SkewHinge,
  SkewHingeCaution,
  SkewHingeInput,
  SkewHingeMassInput,
  SkewHingePose,
} from "./types.js"

/**
 * A part on a hinge whose axis points anywhere in space: where the swing takes its tip, what it looks like from the front, the
 * moment and the loads of its weight.
 *
 * Formula: Rodrigues, r(θ) = r·cos θ + (e × r)·sin θ + e·(e·r)·(1 − cos θ), with e the unit vector of the axis and r from the hinge,
 * in body axes: forward, left, up, right-handed. Moment about the axis that holds the part M = g·v·(e × Σ m·r(θ)), with v
 * straight up seen from a trunk that leans forward and to the left. The frame gives the weight and the moment Σ r × m·g·v about the
 * hinge point; its part across the axis loads the two bearings, s apart, by half the weight's part across and ± the couple
 * over s. Friction M ± ρ·(F₁ + F₂ + F_axial + |M|/R), ρ = µ·d/2, with the thrust on the pin's rim and the drive's force at
 * its lever arm R added in full, which is the safe side. Inertia about the axis is the same at every swing, so its slope is zero.
 * Valid for a rigid part, moved slowly.
 *
 * **Inputs**
 * - `hinge`: hinge [group; optional, with a default of its own]
 *   - `forward`: hinge, forward [f_h; −20 to 20 m]
 *   - `left`: hinge, left [l_h; −20 to 20 m]
 *   - `up`: hinge, up [u_h; −20 to 20 m]
 * - `axis`: direction of the axis [group]
 *   - `forward`: axis, part forward [f_a; −1000 to 1000]
 *   - `left`: axis, part left [l_a; −1000 to 1000]
 *   - `up`: axis, part up [u_a; −1000 to 1000]
 * - `masses`: masses of the swinging part [list of 1 to 50]
 *   - `mass`: mass [m_w; 0 to 200 kg]
 *   - `forward`: mass, forward [f_w; −20 to 20 m]
 *   - `left`: mass, left [l_w; −20 to 20 m]
 *   - `up`: mass, up [u_w; −20 to 20 m]
 * - `tip`: tip [group]
 *   - `forward`: tip, forward [f_t; −20 to 20 m]
 *   - `left`: tip, left [l_t; −20 to 20 m]
 *   - `up`: tip, up [u_t; −20 to 20 m]
 * - `swing`: swing asked for [theta; −401.07° to 401.07°]
 * - `swingFrom`: swing, one end [theta_1; −401.07° to 401.07°; default 0]
 * - `swingTo`: swing, other end [theta_2; −401.07° to 401.07°]
 * - `forwardLean`: lean of the trunk forward [lambda_f; −90° to 90°; default 0]
 * - `leftLean`: lean of the trunk to the left [lambda_l; −90° to 90°; default 0]
 * - `pinFriction`: friction of the bearings [mu; 0 to 1; default 0]
 * - `pinDiameter`: diameter of the pin [d_p; 0 to 100 mm; default 0]
 * - `bearingSpan`: distance between the bearings [s_b; 1 mm to 2 m; default 40 mm]
 * - `driveRadius`: lever arm of the drive [R_d; 0 to 2 m; default 0]
 *
 * **Results**
 *
 * `tipForward`: tip, forward [f_p; m]; `tipLeft`: tip, left [l_p; m]; `tipUp`: tip, up [u_p; m]; `swingRadius`:
 * distance of the tip from the axis [r_s; m]; `effort`: moment that holds it [M; N m]; `turningEffort`: moment while
 * turning [M_t; N m]; `returningEffort`: moment while turning back [M_r; N m]; `maxEffort`: largest holding moment
 * over the swing [M_m; N m]; `bearingLoad`: loads on both bearings [F_b; N]; `thrust`: load along the axis [F_a; N];
 * `inertia`: inertia about the axis [J; kg m²]; `reactionForce`: force of the frame [F_h; N]; `reactionMoment`: moment
 * of the frame [M_h; N m]; `frontReach`: hinge to tip, seen from the front [r_f; m]; `frontAngle`: direction to the
 * tip, seen from the front [beta_f; rad]; `tipAhead`: tip forward of the hinge [f_d; m]; `reaction`: force of the
 * frame, by direction [group]; `moment`: moment of the frame, by direction [group]; `perAcceleration`: moment per
 * acceleration of the body, kg m [group]; `path`: path of the tip [list].
 *
 * **Symbols of the working**
 *
 * f_e: unit axis, f; l_e: unit axis, l; u_e: unit axis, u; f_r: hinge to tip before any swing, f [m]; l_r: hinge to
 * tip before any swing, l [m]; u_r: hinge to tip before any swing, u [m]; l_d: hinge to tip, l [m]; u_d: hinge to tip,
 * u [m]; m_s: mass carried [kg]; f_k: mass times place from the hinge before any swing, kg m, f; l_k: mass times place
 * from the hinge before any swing, kg m, l; u_k: mass times place from the hinge before any swing, kg m, u; f_c: mass
 * times place from the hinge, kg m, f; l_c: mass times place from the hinge, kg m, l; u_c: mass times place from the
 * hinge, kg m, u; g_n: standard gravity [m/s²]; f_v: straight up in body axes, forward; l_v: straight up in body axes,
 * left; u_v: straight up in body axes, up; f_m: moment of the frame, f [N m]; l_m: moment of the frame, l [N m]; u_m:
 * moment of the frame, u [N m]; n_v: part of straight up along the axis; f_x: half the load across the axis, f [N];
 * l_x: half the load across the axis, l [N]; u_x: half the load across the axis, u [N]; f_y: couple on the bearings, f
 * [N]; l_y: couple on the bearings, l [N]; u_y: couple on the bearings, u [N]; rho: friction radius [m]; M_t_0: before
 * the drive's own force counts [N m]; M_r_0: before the drive's own force counts [N m]; A_c: holding moment before any
 * swing [N m]; A_s: holding moment a quarter turn on [N m]; theta_c: swing at which it is largest.
 *
 * **Sources**
 * - R. C. Hibbeler (Pearson): Engineering Mechanics: Statics, 14th ed., 2016, chapter 5 (equilibrium of a rigid body)
 *   (not verified against the document)
 * - O. Rodrigues (Journal de mathématiques pures et appliquées 5): Rotation of a vector about a unit axis (Rodrigues'
 *   formula), 1840, pages 380–440 (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { skewHinge } from 'alula/linkage'
 * const wing = skewHinge({
 *   axis: { forward: 1, left: 0, up: 0 },
 *   masses: [{ mass: '400 g', forward: 0, left: '300 mm', up: 0 }],
 *   tip: { forward: 0, left: '700 mm', up: 0 },
 *   swing: '60 deg',
 *   swingTo: '80 deg',
 * })
 * wing.tipUp // => 0.60622
 * wing.effort // => 0.5884
 * ```
 */
export const skewHinge: Solver<SkewHingeInput, SkewHinge, never, SkewHingeCaution> = /* @__PURE__ */ solver<
  SkewHingeInput,
  SkewHinge,
  never,
  SkewHingeCaution
>("skewHinge", "A part that swings about an axis at any angle in space", solve, () => ({
  input: skewFields(),
  output: skewOutput(),
  example: {
    hinge: { forward: "-60 mm", left: "120 mm", up: "150 mm" },
    axis: { forward: 0.9, left: -0.3, up: 0.4 },
    masses: [
      { mass: "350 g", forward: "-80 mm", left: "350 mm", up: "160 mm" },
      { mass: "120 g", forward: "-140 mm", left: "700 mm", up: "120 mm" },
    ],
    tip: { forward: "-160 mm", left: "900 mm", up: "80 mm" },
    swing: "35 deg",
    swingFrom: "-20 deg",
    swingTo: "80 deg",
    forwardLean: "8 deg",
    leftLean: "3 deg",
    pinFriction: 0.2,
    pinDiameter: "8 mm",
    bearingSpan: "50 mm",
    driveRadius: "40 mm",
  },
  formulae: skewFormulae(),
  sources: [equilibrium, rotationFormula],
  check: skewFaults,
  cautions: skewCautions,
}))
