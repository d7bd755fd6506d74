import { at, type NoSolution, type SiOf, type Solver, solver, tried } from "../../solver/index.js"
import { BEVAN, KHURMI, TIMING_BELTS } from "../sources.js"
import { cautions } from "./cautions.js"
import { check, input, output } from "./fields.js"
import { formulae } from "./formulae.js"
import { kernel } from "./kernel.js"
import type { BeltDrive, BeltDriveCaution, BeltDriveInput, BeltDriveRefusal } from "./types.js"

export { drawBeltDrive } from "./drawing.js"
export type { BeltDrive, BeltDriveCaution, BeltDriveInput, BeltDriveRefusal, FlatBelt, RoundBelt, ToothedBelt, VBelt } from "./types.js"

const solve = (si: SiOf<BeltDriveInput>): BeltDrive | NoSolution<BeltDriveRefusal> => tried(kernel(si), si, beltDrive.input, kernel, check)

/**
 * Length, wrap, ratio, tensions, slip and shaft load of a belt on two pulleys, toothed, flat, V or round.
 *
 * Formula: strands lean by φ = asin((r₂ ∓ r₁)/C), open or crossed; L = 2·C·cos φ + r₁·θ₁ + r₂·θ₂ with θ = π ± 2φ. Shafts set fast
 * keep the strands' sum: F_t, F_s = F₀ ± F/2 with F = |T|/r₂. It slips where (F_t − F_c)/(F_s − F_c) = e^(µ·θ), in a groove of
 * whole angle β e^(µ·θ/sin(β/2)), with F_c = q·v²; a toothed belt's teeth can climb where the slack strand hangs loose. On each
 * shaft both strands less F_c, leaning. T₁ = T/(i·η) with the load against it, T·η_b/i with the load driving.
 *
 * Valid for shafts set fast, without a tensioner that gives; friction of rest and of motion alike.
 *
 * **Inputs**
 * - `belt`: belt [by its type: toothed, flat, v or round]
 *   - `toothed`: toothed belt
 *     - `pitch`: pitch [p; 0.5 to 50 mm]
 *     - `drivingTeeth`: teeth of the driving pulley [z_1; whole 6 to 1000]
 *     - `drivenTeeth`: teeth of the driven pulley [z_2; whole 6 to 1000]
 *   - `flat`: flat belt
 *     - `drivingDiameter`: driving pulley [d_1; 2 mm to 10 m]
 *     - `drivenDiameter`: driven pulley [d_2; 2 mm to 10 m]
 *     - `friction`: friction of belt on pulley [mu; 0.01 to 1.5; default 0.3]
 *     - `crossed`: crosses over [yes or no; default no]
 *   - `v`: V-belt
 *     - `drivingDiameter`: driving pulley [d_1; 2 mm to 10 m]
 *     - `drivenDiameter`: driven pulley [d_2; 2 mm to 10 m]
 *     - `friction`: friction of belt on pulley [mu; 0.01 to 1.5; default 0.3]
 *     - `grooveAngle`: whole angle of the groove [beta; 20° to 180°; default 38°]
 *   - `round`: round belt
 *     - `drivingDiameter`: driving pulley [d_1; 2 mm to 10 m]
 *     - `drivenDiameter`: driven pulley [d_2; 2 mm to 10 m]
 *     - `friction`: friction of belt on pulley [mu; 0.01 to 1.5; default 0.3]
 *     - `grooveAngle`: whole angle of the groove [beta; 20° to 180°; default 180°]
 *     - `crossed`: crosses over [yes or no; default no]
 * - `centreDistance`: distance between the shafts [C; 5 mm to 50 m]
 * - `pretension`: pretension of each strand [F_0; 1 mN to 1000 kN]
 * - `torque`: torque at the driven shaft [T; −1000000 to 1000000 N m]
 * - `inputSpeed`: speed of the driving shaft [omega_1; 0 to 100000 rpm; optional]
 * - `linearDensity`: mass of a length of belt [q; 0 to 100 kg/m; default 0]
 * - `efficiency`: efficiency [eta; 50 to 100 %; default 95 %]
 * - `backwardEfficiency`: efficiency, load driving [eta_g; 30 to 100 %; optional]
 * - `creep`: creep [s; 0 to 20 %; default 0]
 *
 * **Results**
 *
 * `transmits`: transmits [text]; `ratio`: ratio [i]; `reverses`: driven shaft turns the other way [yes or no];
 * `length`: length of the belt [L; m]; `beltTeeth`: teeth of the belt [z_b]; `fittingDistance`: distance at which it
 * fits [C_f; m]; `drivingWrap`: wrap on the driving pulley [theta_1; rad]; `drivenWrap`: wrap on the driven pulley
 * [theta_2; rad]; `teethInMesh`: teeth in mesh [z_m]; `inputTorque`: torque at the driving shaft [T_1; N m];
 * `returnTorque`: torque at the driving shaft, motion reversed [T_r; N m]; `pull`: pull [F; N]; `maxPull`: largest
 * pull [F_m; N]; `maxTorque`: largest torque [T_m; N m]; `utilisation`: pull against the largest [u; as a fraction];
 * `slipMargin`: pull left before it slips [F_l; N]; `requiredPretension`: pretension needed [F_n; N]; `tightTension`:
 * tight strand [F_t; N]; `slackTension`: slack strand [F_s; N]; `centrifugalTension`: centrifugal part [F_c; N];
 * `shaftForce`: force on each shaft [F_w; N]; `beltSpeed`: speed of the belt [v; m/s]; `outputSpeed`: speed of the
 * driven shaft [omega_2; rad/s]; `inputPower`: power in [P_1; W]; `outputPower`: power out [P_2; W]; `heat`: heat
 * [P_h; W].
 *
 * **Symbols of the working**
 *
 * toothed: 1 for a toothed belt; groove: 1 where it lies in a groove; cross: 1 for a crossed belt; helps: 1 where the
 * load helps; loaded: 1 where there is a torque; r_1: radius of the driving pulley [m]; r_2: radius of the driven
 * pulley [m]; phi: lean of the strands, open belt; phi_f: lean of its strands; eta_b: efficiency, load driving, as
 * given; g: grip: all of the pretension with teeth; e_g: strands' ratio at which it slips (Euler and Eytelwein).
 *
 * **Sources**
 * - R. S. Khurmi, J. K. Gupta: Theory of Machines, 2005, chapter 11 (not verified against the document)
 * - T. Bevan: The Theory of Machines, 3rd, 1956, chapter 7 (not verified against the document)
 * - The world of timing belts, read 2026, teeth in mesh, from six on without loss (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `slips` where friction does not carry the torque, `skips` where a toothed belt is too slack for it
 * @example
 * ```ts
 * import { beltDrive } from 'alula/drive'
 * const jaw = beltDrive({
 *   belt: { type: 'toothed', pitch: '3 mm', drivingTeeth: 20, drivenTeeth: 48 },
 *   centreDistance: '140 mm', pretension: '60 N', torque: '1.2 N m', inputSpeed: '300 rpm',
 * })
 * jaw.length // => 0.3833
 * jaw.inputTorque // => 0.5263
 * jaw.shaftForce // => 119.6
 * jaw.slipMargin // => 67.64
 * ```
 */
export const beltDrive: Solver<BeltDriveInput, BeltDrive, BeltDriveRefusal, BeltDriveCaution> = /* @__PURE__ */ solver<
  BeltDriveInput,
  BeltDrive,
  BeltDriveRefusal,
  BeltDriveCaution
>("beltDrive", "A belt on two pulleys: tensions, slip and shaft load", solve, () => ({
  input,
  output,
  example: {
    belt: { type: "toothed", pitch: "3 mm", drivingTeeth: 20, drivenTeeth: 48 },
    centreDistance: "140 mm",
    pretension: "60 N",
    torque: "1.2 N m",
    inputSpeed: "300 rpm",
    linearDensity: 0.02,
  },
  formulae,
  sources: [at(KHURMI, "chapter 11"), at(BEVAN, "chapter 7"), TIMING_BELTS],
  check,
  cautions,
}))
