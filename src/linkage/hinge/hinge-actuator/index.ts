import {
  type Issue,
  inconsistent,
  isNoSolution,
  type NoSolution,
  type SiOf,
  type Solver,
  solver,
  withNearest,
} from "../../../solver/index.js"
import { gravitySource, journalFriction, virtualWork } from "../../sources.js"
import { gustFields, movingPivotField, pointField, springField, weightField } from "../fields.js"
import { hingeCautions } from "./cautions.js"
import { hingeActuatorFormulae } from "./formulae.js"
import { kernel } from "./kernel.js"
import type { HingeActuator, HingeActuatorCaution, HingeActuatorInput, HingeActuatorRefusal, HingeTrace } from "./types.js"

export type { HingeActuator, HingeActuatorCaution, HingeActuatorInput, HingeActuatorRefusal, HingePose } from "./types.js"

function solve(si: SiOf<HingeActuatorInput>, trace?: Partial<HingeTrace>): HingeActuator | NoSolution<HingeActuatorRefusal> {
  const out = kernel(si, trace)
  if (!isNoSolution(out)) return out
  const offered: Record<string, number> = {}
  const { lever } = out.at
  if (out.noSolution === "jammed" && lever !== undefined) {
    // a hair inside the lever arm: at the circle itself the force has no limit
    const radius = Math.abs(lever) * (1 - 1e-3)
    offered.hingePinDiameter = (2 * radius) / si.pinFriction
    offered.pinFriction = (2 * radius) / si.hingePinDiameter
  }
  return withNearest(out, hingeActuator, (changed) => kernel(changed), si, offered, [
    { path: "retractedLength", from: 0.2 * si.retractedLength, to: 3 * si.retractedLength },
    { path: "stroke", from: 0, to: si.stroke },
    { path: "movingPivot.radius", from: 0.02 * si.movingPivot.radius, to: 5 * si.movingPivot.radius },
  ])
}

function check(si: SiOf<HingeActuatorInput>): Issue[] {
  const found: Issue[] = []
  if (!(Math.hypot(si.fixedPivot.x - si.hinge.x, si.fixedPivot.y - si.hinge.y) >= 1e-6))
    found.push(inconsistent(["fixedPivot"], "the same point as the hinge", "a point at least 1 µm from the hinge"))
  if (si.extension !== null && si.extension > si.stroke)
    found.push(
      inconsistent(["extension"], "{extension length}", "at most the stroke, {stroke length}", {
        extension: si.extension,
        stroke: si.stroke,
      }),
    )
  return found
}

/**
 * A hinged arm moved by a linear actuator between a fixed pivot and a pivot on the arm.
 *
 * Formula: with D the distance hinge–fixed pivot, r the distance hinge–moving pivot, o the axis offset and L = L_r + s the
 * length at extension s, the pivots are q = √(L² + o²) apart and φ = 2·atan √((q² − (D − r)²) / ((D + r)² − q²)) is
 * the angle between D and r at the hinge. The arm stands at θ = φ_b − β ± φ, with φ_b the direction of the base from
 * the hinge, β the angle from the arm to the moving pivot, + where extension turns the arm counter-clockwise. Lever
 * arm by virtual work l = dL/dθ = ±D·r·sin φ / L. Force without friction F = (M_g − M_s) / l with M_g = g·Σ m·r_w·cos(θ
 * + a + λ) (masses m at radius r_w and angle a, kg, m, rad; λ lean; g = 9.80665 m/s²) and M_s the moment of the
 * springs. Moving, l·x = ±ρ·√(|reaction(F + x)|² + c²) gives the further force x against pin friction, ρ = µ·d/2 (coefficient µ;
 * pin diameter d). Load across the rod F·(o + µ·d_a)/L, with d_a the end pins' diameter: the part from the pins is the
 * worst case of both resisting alike.
 *
 * The peaks are those with the gusts and steps given: weight k_w times that at rest and 2 − k_w times (nothing at least), each
 * with a gust square to the arm from either side. A force across the swing loads the two bearings by a couple c = 2·F_a·r_a/s_b
 * together; ρ then works on √(|reaction|² + c²), never less than the loads of both bearings added, at most 41 % more. Between the
 * poses listed, a peak is where the derivative of the force in closed form is 0; stretches end where a cord goes slack.
 *
 * Valid for slow moves of stiff parts in one plane; inertia, play and the weight of the actuator itself are
 * left out (count half the actuator's mass as a mass at the moving pivot).
 *
 * Refuses: `cannot-close` where no pose fits the actuator, `dead-point` where the stroke runs into a dead
 * point, `jammed` where the lever arm lies within the friction circle.
 *
 * **Inputs**
 * - `hinge`: hinge [group; optional, with a default of its own]
 *   - `x`: hinge, outward [x_h; −20 to 20 m]
 *   - `y`: hinge, up [y_h; −20 to 20 m]
 * - `fixedPivot`: fixed pivot [group]
 *   - `x`: fixed pivot, outward [x_b; −20 to 20 m]
 *   - `y`: fixed pivot, up [y_b; −20 to 20 m]
 * - `movingPivot`: moving pivot [group]
 *   - `radius`: moving pivot from the hinge [r; 0.1 mm to 20 m]
 *   - `angle`: angle from the arm to the moving pivot [beta; −572.958° to 572.958°; default 0]
 * - `axisOffset`: rod axis off its fixed pivot [o; 0 to 5 m; default 0]
 * - `retractedLength`: retracted length [L_r; 1 mm to 20 m]
 * - `stroke`: stroke [S; 0.1 mm to 10 m]
 * - `extension`: chosen extension [s_c; 0 to 10 m; optional]
 * - `assembly`: extension turns the arm [counter-clockwise or clockwise; default counter-clockwise]
 * - `masses`: masses on the arm [list of 1 to 50]
 *   - `mass`: mass [m_w; 0 to 200 kg]
 *   - `radius`: distance from the hinge [r_w; 0 to 20 m]
 *   - `angle`: angle from the arm [a_w; −572.958° to 572.958°; default 0]
 * - `frameTilt`: lean of the wearer [lambda; −183.346° to 183.346°; default 0]
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
 * - `pinFriction`: coefficient of friction at the pins [mu; 0 to 1; default 0]
 * - `hingePinDiameter`: hinge pin diameter [d_h; 0 to 200 mm; default 0]
 * - `endPinDiameter`: end pin diameter [d_a; 0 to 200 mm; default 0]
 * - `loadFactor`: weight while walking over weight at rest [k_w; 1 to 5; default 1]
 * - `gustForce`: gust square to the arm [F_g; 0 to 100 kN; default 0]
 * - `gustRadius`: gust from the hinge [r_g; 0 to 20 m; default 0]
 * - `sideForce`: force across the swing [F_a; 0 to 100 kN; default 0]
 * - `sideForceRadius`: force across the swing, from the hinge [r_a; 0 to 20 m; default 0]
 * - `bearingSpan`: distance between the hinge's bearings [s_b; 1 mm to 2 m; default 40 mm]
 * - `holdingForce`: unpowered holding force [F_u; 0 to 1000 kN; optional]
 *
 * **Results**
 *
 * `angle`: arm angle [theta_c; rad]; `length`: actuator length [L_c; m]; `lever`: lever arm [l_c; m];
 * `transmissionAngle`: transmission angle [tau_c; rad]; `gravityMoment`: moment of the weights [M_c; N m];
 * `springMoment`: moment of the springs [N_c; N m]; `force`: holding force [F_c; N]; `extendForce`: force while
 * extending [E_c; N]; `retractForce`: force while retracting [R_c; N]; `anyTiltForce`: holding force at the worst lean
 * [F_any; N]; `reactionX`: hinge force outward [H_x; N]; `reactionY`: hinge force upward [H_y; N]; `reaction`: hinge
 * force [H; N]; `bearingLoad`: loads on both bearings [H_b; N]; `frictionMoment`: hinge friction moment [M_f; N m];
 * `sideLoad`: side load on the rod [F_t; N]; `otherAssemblyAngle`: arm angle on the other branch [theta_o; rad];
 * `retractedAngle`: arm angle retracted [theta_1; rad]; `extendedAngle`: arm angle extended [theta_2; rad]; `swing`:
 * swing [sigma; rad]; `peakForce`: peak force [F_max; N]; `peakForceExtension`: extension at peak force [s_p; m];
 * `peakForceAngle`: arm angle at peak force [theta_p; rad]; `peakRaisingForce`: peak force while raising [F_up; N];
 * `peakRaisingExtension`: extension at peak force while raising [s_h; m]; `peakLoweringForce`: peak force while
 * lowering [F_dn; N]; `peakLoweringExtension`: extension at peak force while lowering [s_d; m];
 * `requiredHoldingForce`: largest holding force [F_hold; N]; `requiredHoldingExtension`: extension at largest holding
 * force [s_q; m]; `holdingSafetyFactor`: unpowered holding margin [n_u]; `holdsUnpowered`: holds without power [yes or
 * no]; `minTransmissionAngle`: minimum transmission angle [tau_min; rad]; `minLength`: shortest possible length
 * [L_min; m]; `maxLength`: longest possible length [L_max; m]; `minLengthAngle`: dead point, shortest [theta_s; rad];
 * `maxLengthAngle`: dead point, longest [theta_l; rad]; `deadPointMargin`: clearance to dead point [c_d; m]; `poses`:
 * poses over the stroke [list].
 *
 * **Symbols of the working**
 *
 * b: sign of the assembly branch; p_s: springs that only pull (1) or also push (0); g_n: standard gravity [m/s²]; D:
 * distance hinge–fixed pivot [m]; psi: direction of the fixed pivot less the moving pivot's angle [rad]; L_1:
 * retracted length [m]; q_1: distance of the pivots retracted [m]; phi_1: angle at the hinge between the pivots
 * retracted [rad]; l_1: lever arm dL/dθ retracted [m]; tau_1: transmission angle retracted [rad]; L_2: extended length
 * [m]; q_2: distance of the pivots extended [m]; phi_2: angle at the hinge between the pivots extended [rad]; l_2:
 * lever arm dL/dθ extended [m]; tau_2: transmission angle extended [rad]; rho: friction radius of the hinge pin [m];
 * C_a: load of the force across the swing on both bearings [N]; q_c: distance of the pivots at the chosen extension
 * [m]; phi_c: angle at the hinge between the pivots at the chosen extension [rad]; X_c: springs, moving end to fixed
 * end, outward, at the chosen extension [m]; Y_c: springs, moving end to fixed end, up, at the chosen extension [m];
 * Z_c: lengths of the springs at the chosen extension [m]; T_c: tensions of the springs at the chosen extension; one
 * that only pulls is slack below its free length [N]; u_c: thrust outward at the chosen extension; v_c: thrust upward
 * at the chosen extension; A_c: all forces on the arm but the hinge's, outward, at the chosen extension [N]; B_c: all
 * forces on the arm but the hinge's, up, at the chosen extension [N]; J_c: quadratic for the force against friction at
 * the chosen extension [m²]; K_c: its linear part at the chosen extension [N]; Q_c: half the distance of its roots at
 * the chosen extension [N]; k_h: weight over weight at rest at peak force while raising; e_h: gust at peak force while
 * raising: 1 pushes the arm down, −1 up, 0 none; L_h: length at peak force while raising [m]; q_h: distance of the
 * pivots at peak force while raising [m]; phi_h: angle at the hinge between the pivots at peak force while raising
 * [rad]; theta_h: arm angle at peak force while raising [rad]; l_h: lever arm dL/dθ at peak force while raising [m];
 * tau_h: transmission angle at peak force while raising [rad]; M_h: moment of the weights at peak force while raising
 * [N m]; X_h: springs, moving end to fixed end, outward, at peak force while raising [m]; Y_h: springs, moving end to
 * fixed end, up, at peak force while raising [m]; Z_h: lengths of the springs at peak force while raising [m]; T_h:
 * tensions of the springs at peak force while raising; one that only pulls is slack below its free length [N]; N_h:
 * moment of the springs at peak force while raising [N m]; F_h: force without friction at peak force while raising
 * [N]; u_h: thrust outward at peak force while raising; v_h: thrust upward at peak force while raising; A_h: all
 * forces on the arm but the hinge's, outward, at peak force while raising [N]; B_h: all forces on the arm but the
 * hinge's, up, at peak force while raising [N]; J_h: quadratic for the force against friction at peak force while
 * raising [m²]; K_h: its linear part at peak force while raising [N]; Q_h: half the distance of its roots at peak
 * force while raising [N]; E_h: force while extending at peak force while raising [N]; R_h: force while retracting at
 * peak force while raising [N]; k_d: weight over weight at rest at peak force while lowering; e_d: gust at peak force
 * while lowering: 1 pushes the arm down, −1 up, 0 none; L_d: length at peak force while lowering [m]; q_d: distance of
 * the pivots at peak force while lowering [m]; phi_d: angle at the hinge between the pivots at peak force while
 * lowering [rad]; theta_d: arm angle at peak force while lowering [rad]; l_d: lever arm dL/dθ at peak force while
 * lowering [m]; tau_d: transmission angle at peak force while lowering [rad]; M_d: moment of the weights at peak force
 * while lowering [N m]; X_d: springs, moving end to fixed end, outward, at peak force while lowering [m]; Y_d:
 * springs, moving end to fixed end, up, at peak force while lowering [m]; Z_d: lengths of the springs at peak force
 * while lowering [m]; T_d: tensions of the springs at peak force while lowering; one that only pulls is slack below
 * its free length [N]; N_d: moment of the springs at peak force while lowering [N m]; F_d: force without friction at
 * peak force while lowering [N]; u_d: thrust outward at peak force while lowering; v_d: thrust upward at peak force
 * while lowering; A_d: all forces on the arm but the hinge's, outward, at peak force while lowering [N]; B_d: all
 * forces on the arm but the hinge's, up, at peak force while lowering [N]; J_d: quadratic for the force against
 * friction at peak force while lowering [m²]; K_d: its linear part at peak force while lowering [N]; Q_d: half the
 * distance of its roots at peak force while lowering [N]; E_d: force while extending at peak force while lowering [N];
 * R_d: force while retracting at peak force while lowering [N]; k_q: weight over weight at rest at the largest holding
 * force; e_q: gust at the largest holding force: 1 pushes the arm down, −1 up, 0 none; L_q: length at the largest
 * holding force [m]; q_q: distance of the pivots at the largest holding force [m]; phi_q: angle at the hinge between
 * the pivots at the largest holding force [rad]; theta_q: arm angle at the largest holding force [rad]; l_q: lever arm
 * dL/dθ at the largest holding force [m]; tau_q: transmission angle at the largest holding force [rad]; M_q: moment of
 * the weights at the largest holding force [N m]; X_q: springs, moving end to fixed end, outward, at the largest
 * holding force [m]; Y_q: springs, moving end to fixed end, up, at the largest holding force [m]; Z_q: lengths of the
 * springs at the largest holding force [m]; T_q: tensions of the springs at the largest holding force; one that only
 * pulls is slack below its free length [N]; N_q: moment of the springs at the largest holding force [N m]; F_q: force
 * without friction at the largest holding force [N].
 *
 * **Sources**
 * - R. C. Hibbeler (Pearson): Engineering Mechanics: Statics, 14th ed., 2016, chapter 11 (virtual work) (not verified
 *   against the document)
 * - R. C. Hibbeler (Pearson): Engineering Mechanics: Statics, 14th ed., 2016, section 8.7 (journal bearings) (not
 *   verified against the document)
 * - NIST: Guide for the use of the International System of Units, SP 811, 2008, appendix B.8 (standard gravity) (not
 *   verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `cannot-close`, `dead-point`, `jammed`
 * @example
 * ```ts
 * import { hingeActuator } from 'alula/linkage'
 * const wing = hingeActuator({
 *   fixedPivot: { x: '-40 mm', y: '-250 mm' },
 *   movingPivot: { radius: '55 mm', angle: '-90 deg' },
 *   retractedLength: '215 mm',
 *   stroke: '40 mm',
 *   masses: [{ mass: '1.8 kg', radius: '600 mm' }],
 * })
 * wing.swing // => 0.7733
 * wing.peakForce // => 209.2
 * ```
 */
export const hingeActuator: Solver<HingeActuatorInput, HingeActuator, HingeActuatorRefusal, HingeActuatorCaution> = /* @__PURE__ */ solver<
  HingeActuatorInput,
  HingeActuator,
  HingeActuatorRefusal,
  HingeActuatorCaution,
  HingeTrace
>("hingeActuator", "How a linear actuator moves a hinged arm, and how hard it must push", solve, () => ({
  input: {
    hinge: { ...pointField("hinge", "h"), default: { x: 0, y: 0 } },
    fixedPivot: pointField("fixed pivot", "b"),
    movingPivot: movingPivotField("moving pivot", ["30 mm", "150 mm"], ["-100 deg", "40 deg"]),
    axisOffset: {
      kind: "length",
      symbol: "o",
      label: "rod axis off its fixed pivot",
      min: 0,
      max: 5,
      typical: ["0 mm", "20 mm"],
      default: 0,
    },
    retractedLength: { kind: "length", symbol: "L_r", label: "retracted length", min: "1 mm", max: 20, typical: ["100 mm", "300 mm"] },
    stroke: { kind: "length", symbol: "S", label: "stroke", min: "0.1 mm", max: 10, typical: ["20 mm", "100 mm"] },
    extension: { kind: "length", symbol: "s_c", label: "chosen extension", min: 0, max: 10, typical: ["0 mm", "20 mm"], default: null },
    assembly: {
      kind: "choice",
      label: "extension turns the arm",
      options: { "counter-clockwise": "counter-clockwise (raises it)", clockwise: "clockwise (lowers it)" },
      default: "counter-clockwise",
    },
    masses: { kind: "list", label: "masses on the arm", of: weightField, min: 1, max: 50 },
    frameTilt: {
      kind: "angle",
      symbol: "lambda",
      label: "lean of the wearer",
      min: -3.2,
      max: 3.2,
      typical: ["-30 deg", "30 deg"],
      default: 0,
    },
    springs: { kind: "list", label: "springs", of: springField, min: 1, max: 20, default: null },
    pinFriction: {
      kind: "number",
      symbol: "mu",
      label: "coefficient of friction at the pins",
      min: 0,
      max: 1,
      typical: [0.05, 0.3],
      default: 0,
    },
    hingePinDiameter: {
      kind: "length",
      symbol: "d_h",
      label: "hinge pin diameter",
      min: 0,
      max: 0.2,
      typical: ["3 mm", "12 mm"],
      default: 0,
    },
    endPinDiameter: { kind: "length", symbol: "d_a", label: "end pin diameter", min: 0, max: 0.2, typical: ["3 mm", "8 mm"], default: 0 },
    ...gustFields,
    sideForce: { kind: "force", symbol: "F_a", label: "force across the swing", min: 0, max: 1e5, typical: ["0 N", "20 N"], default: 0 },
    sideForceRadius: {
      kind: "length",
      symbol: "r_a",
      label: "force across the swing, from the hinge",
      min: 0,
      max: 20,
      typical: ["0.2 m", "1 m"],
      default: 0,
    },
    bearingSpan: {
      kind: "length",
      symbol: "s_b",
      label: "distance between the hinge's bearings",
      min: "1 mm",
      max: 2,
      typical: ["20 mm", "80 mm"],
      default: "40 mm",
    },
    holdingForce: {
      kind: "force",
      symbol: "F_u",
      label: "unpowered holding force",
      min: 0,
      max: 1e6,
      typical: ["50 N", "500 N"],
      default: null,
    },
  },
  output: {
    angle: { kind: "angle", symbol: "theta_c", label: "arm angle" },
    length: { kind: "length", symbol: "L_c", label: "actuator length" },
    lever: { kind: "length", symbol: "l_c", label: "lever arm" },
    transmissionAngle: { kind: "angle", symbol: "tau_c", label: "transmission angle" },
    gravityMoment: { kind: "moment", symbol: "M_c", label: "moment of the weights" },
    springMoment: { kind: "moment", symbol: "N_c", label: "moment of the springs" },
    force: { kind: "force", symbol: "F_c", label: "holding force" },
    extendForce: { kind: "force", symbol: "E_c", label: "force while extending" },
    retractForce: { kind: "force", symbol: "R_c", label: "force while retracting" },
    anyTiltForce: { kind: "force", symbol: "F_any", label: "holding force at the worst lean" },
    reactionX: { kind: "force", symbol: "H_x", label: "hinge force outward" },
    reactionY: { kind: "force", symbol: "H_y", label: "hinge force upward" },
    reaction: { kind: "force", symbol: "H", label: "hinge force" },
    bearingLoad: { kind: "force", symbol: "H_b", label: "loads on both bearings" },
    frictionMoment: { kind: "moment", symbol: "M_f", label: "hinge friction moment" },
    sideLoad: { kind: "force", symbol: "F_t", label: "side load on the rod" },
    otherAssemblyAngle: { kind: "angle", symbol: "theta_o", label: "arm angle on the other branch" },
    retractedAngle: { kind: "angle", symbol: "theta_1", label: "arm angle retracted" },
    extendedAngle: { kind: "angle", symbol: "theta_2", label: "arm angle extended" },
    swing: { kind: "angle", symbol: "sigma", label: "swing" },
    peakForce: { kind: "force", symbol: "F_max", label: "peak force" },
    peakForceExtension: { kind: "length", symbol: "s_p", label: "extension at peak force" },
    peakForceAngle: { kind: "angle", symbol: "theta_p", label: "arm angle at peak force" },
    peakRaisingForce: { kind: "force", symbol: "F_up", label: "peak force while raising" },
    peakRaisingExtension: { kind: "length", symbol: "s_h", label: "extension at peak force while raising" },
    peakLoweringForce: { kind: "force", symbol: "F_dn", label: "peak force while lowering" },
    peakLoweringExtension: { kind: "length", symbol: "s_d", label: "extension at peak force while lowering" },
    requiredHoldingForce: { kind: "force", symbol: "F_hold", label: "largest holding force" },
    requiredHoldingExtension: { kind: "length", symbol: "s_q", label: "extension at largest holding force" },
    holdingSafetyFactor: { kind: "number", symbol: "n_u", label: "unpowered holding margin" },
    holdsUnpowered: { kind: "flag", label: "holds without power" },
    minTransmissionAngle: { kind: "angle", symbol: "tau_min", label: "minimum transmission angle" },
    minLength: { kind: "length", symbol: "L_min", label: "shortest possible length" },
    maxLength: { kind: "length", symbol: "L_max", label: "longest possible length" },
    minLengthAngle: { kind: "angle", symbol: "theta_s", label: "dead point, shortest" },
    maxLengthAngle: { kind: "angle", symbol: "theta_l", label: "dead point, longest" },
    deadPointMargin: { kind: "length", symbol: "c_d", label: "clearance to dead point" },
    poses: {
      kind: "list",
      label: "poses over the stroke",
      of: {
        kind: "group",
        label: "pose",
        fields: {
          extension: { kind: "length", label: "extension" },
          angle: { kind: "angle", label: "arm angle" },
          lever: { kind: "length", label: "lever arm" },
          force: { kind: "force", label: "holding force" },
          extendForce: { kind: "force", label: "force while extending" },
          retractForce: { kind: "force", label: "force while retracting" },
        },
      },
    },
  },
  example: {
    hinge: { x: 0, y: 0 },
    fixedPivot: { x: "-40 mm", y: "-250 mm" },
    movingPivot: { radius: "55 mm", angle: "-90 deg" },
    axisOffset: "4 mm",
    retractedLength: "210 mm",
    stroke: "40 mm",
    extension: "15 mm",
    masses: [
      { mass: "1.2 kg", radius: "500 mm" },
      { mass: "0.3 kg", radius: "900 mm", angle: "5 deg" },
    ],
    frameTilt: "10 deg",
    springs: [{ fixedPivot: { x: "-60 mm", y: "120 mm" }, radius: "80 mm", stiffness: "150 N/m", freeLength: "70 mm", preload: "2 N" }],
    pinFriction: 0.15,
    hingePinDiameter: "8 mm",
    endPinDiameter: "6 mm",
    loadFactor: 1.2,
    gustForce: "3 N",
    gustRadius: "400 mm",
    sideForce: "4 N",
    sideForceRadius: "400 mm",
    holdingForce: "250 N",
  },
  formulae: hingeActuatorFormulae,
  sources: [virtualWork, journalFriction, gravitySource],
  check,
  cautions: hingeCautions,
}))
