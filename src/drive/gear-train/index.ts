import { at, type Solver, solver } from "../../solver/index.js"
import { BEVAN, GEARMOTOR_FAQ, KHURMI, SHIGLEY } from "../sources.js"
import { cautions } from "./cautions.js"
import { check, input, output } from "./fields.js"
import { formulae } from "./formulae.js"
import { solve } from "./kernel.js"
import type { GearTrain, GearTrainCaution, GearTrainInput } from "./types.js"

export type {
  GearStage,
  GearStageResult,
  GearTrain,
  GearTrainCaution,
  GearTrainInput,
  PlanetaryPath,
  PlanetaryStage,
  SpurStage,
  WormStage,
} from "./types.js"

/**
 * Ratio, efficiency both ways, locking, play, inertia and torques of a gear train: spur, planetary and worm stages in any order.
 *
 * Formula: a stage of z₁ driving and z₂ driven teeth has r = z₂/z₁ and, by mesh efficiency η_m, η = η_m both
 * ways. A planetary stage with k = ring/sun teeth and both meshes η₀ = η_m² (Willis: ω_S + k·ω_R = (1 + k)·ω_C) has
 * r = 1 + k and η = (1 + k·η₀)/(1 + k) from sun to carrier, r = 1/(1 + k) and η = (1 + k)/(1 + k/η₀) back; r = 1 + 1/k and
 * η = (k + η₀)/(k + 1) from ring to carrier; r = k and η₀ from sun to ring, which turns the other way. A worm with lead angle γ,
 * friction μ and pressure angle α has η = (cos α − μ·tan γ)/(cos α + μ·cot γ) driving and
 * η = (cos α − μ·cot γ)/(cos α + μ·tan γ) driven back: it locks where that is not above zero. `selfLocking` asks that it still
 * locks with half of μ. With i = Πr: T₁ = T/(i·Πη) + T_d against a load T, T₁ = T·Πη_b/i + T_d with one that helps (T < 0),
 * T_d the drag at the input; where a stage locks, the input has to drive the load down. Play at the output
 * Σβ_k·f_k/i, inertia at the input J₀ + ΣJ_k/f_k² + J_L/i², f_k the turns of the input for one of stage k's output.
 * Force along the pitch circle 2T/(m·z), shared by the planets.
 *
 * Valid at steady speed, for gears in their rated range; rigid shafts, evenly loaded planets. The same in both directions of rotation.
 *
 * **Inputs**
 * - `stages`: stages, from motor to load [list of 1 to 8]
 *   - `spur`: spur gears
 *     - `drivingTeeth`: teeth of the driving gear [z_1; whole 1 to 1000]
 *     - `drivenTeeth`: teeth of the driven gear [z_2; whole 6 to 1000]
 *     - `meshEfficiency`: efficiency of one mesh [eta_m; 50 to 100 %; default 97 %]
 *     - `pressureAngle`: pressure angle [alpha; 0 to 30°; default 20°]
 *     - `module`: module [m_n; 0.1 to 20 mm; optional]
 *     - `backlash`: play at the stage's output [beta_s; 0 to 10°; default 0]
 *     - `inertia`: inertia turning with it [J_s; 0 to 1000 kg m²; default 0]
 *   - `planetary`: planetary gears
 *     - `drivingTeeth`: teeth of the sun [z_S; whole 1 to 1000]
 *     - `drivenTeeth`: teeth of the ring [z_R; whole 6 to 1000]
 *     - `path`: path through it [sun-to-carrier, carrier-to-sun, ring-to-carrier, carrier-to-ring, sun-to-ring or
 *       ring-to-sun; default sun-to-carrier]
 *     - `planets`: planets [N_p; whole 1 to 8; default 3]
 *     - `meshEfficiency`: efficiency of one mesh [eta_m; 50 to 100 %; default 97 %]
 *     - `pressureAngle`: pressure angle [alpha; 0 to 30°; default 20°]
 *     - `module`: module [m_n; 0.1 to 20 mm; optional]
 *     - `backlash`: play at the stage's output [beta_s; 0 to 10°; default 0]
 *     - `inertia`: inertia turning with it [J_s; 0 to 1000 kg m²; default 0]
 *   - `worm`: worm and wheel
 *     - `drivingTeeth`: starts of the worm [z_1; whole 1 to 1000]
 *     - `drivenTeeth`: teeth of the wheel [z_2; whole 6 to 1000]
 *     - `leadAngle`: lead angle of the worm [gamma; 0.5° to 45°]
 *     - `friction`: friction of the worm [mu; 0 to 0.6; optional]
 *     - `wormEfficiency`: efficiency of the worm, driving [eta_w; 5 to 100 %; optional]
 *     - `pressureAngle`: pressure angle [alpha; 0 to 30°; default 20°]
 *     - `module`: module [m_n; 0.1 to 20 mm; optional]
 *     - `backlash`: play at the stage's output [beta_s; 0 to 10°; default 0]
 *     - `inertia`: inertia turning with it [J_s; 0 to 1000 kg m²; default 0]
 *     - exactly one of `friction` and `wormEfficiency`
 * - `torque`: torque at the output [T; −100000 to 100000 N m]
 * - `dragTorque`: drag at the input [T_d; 0 to 10000 N m; default 0]
 * - `inputSpeed`: speed of the input [omega_1; 0 to 100000 rpm; optional]
 * - `inputInertia`: inertia on the input [J_0; 0 to 1000 kg m²; default 0]
 * - `loadInertia`: inertia of the load [J_L; 0 to 100000 kg m²; default 0]
 * - `tipRadius`: radius of the tip [R; 1 mm to 20 m; optional]
 *
 * **Results**
 *
 * `transmits`: transmits [text]; `ratio`: ratio [i]; `reverses`: output turns the other way [yes or no]; `efficiency`:
 * efficiency, load against the motion [eta; as a fraction]; `backwardEfficiency`: efficiency, load driving [eta_b; as
 * a fraction]; `locksAtFriction`: locks at the friction given [yes or no]; `selfLocking`: locks with half of it [yes
 * or no]; `inputTorque`: torque at the input [T_1; N m]; `returnTorque`: torque at the input, motion reversed [T_r; N
 * m]; `backDriveTorque`: torque that drives it back [T_b; N m]; `housingTorque`: torque on the mounting [T_h; N m];
 * `inertiaAtInput`: inertia at the input [J_1; kg m²]; `inertiaAtOutput`: inertia at the output [J_2; kg m²];
 * `backlash`: play at the output [beta; rad]; `tipPlay`: play at the tip [s; m]; `outputSpeed`: speed of the output
 * [omega_2; rad/s]; `inputPower`: power in [P_1; W]; `outputPower`: power out [P_2; W]; `heat`: heat in the gears
 * [P_h; W]; `stages`: stages [list].
 *
 * **Symbols of the working**
 *
 * r_k: ratio of each stage; e_k: its efficiency, load against the motion; b_k: its efficiency, load driving; f_k:
 * turns of the input for one of each stage's output; J_k: inertia turning with each stage's output [kg m²]; beta_k:
 * play at each stage's output [rad]; d_k: torque let through by each stage with the motion reversed, against one
 * without loss; helps: 1 where the load helps; locked: 1 where a stage locks; aligned: 1 where all axes are parallel;
 * sense: −1 where the output turns the other way; c_k: torque let through by each stage, against one without loss.
 *
 * **Sources**
 * - T. Bevan: The Theory of Machines, 3rd, 1956, chapters 10 and 11 (not verified against the document)
 * - R. S. Khurmi, J. K. Gupta: Theory of Machines, 2005, chapter 13 (not verified against the document)
 * - R. G. Budynas, J. K. Nisbett: Shigley's Mechanical Engineering Design, 10th, 2015, section 13-17 (not verified
 *   against the document)
 * - FAQ for electric motors, gearmotors and frequency inverters, read 2026, answer 2.1.3
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { gearTrain } from 'alula/drive'
 * const wing = gearTrain({
 *   stages: [
 *     { type: 'planetary', drivingTeeth: 12, drivenTeeth: 48 },
 *     { type: 'worm', drivingTeeth: 1, drivenTeeth: 30, leadAngle: '4 deg', friction: 0.1 },
 *   ],
 *   torque: '6 N m',
 * })
 * wing.ratio // => 150
 * wing.efficiency // => 0.375
 * wing.inputTorque // => 0.1067
 * wing.locksAtFriction // => true
 * wing.selfLocking // => false
 * ```
 */
export const gearTrain: Solver<GearTrainInput, GearTrain, never, GearTrainCaution> = /* @__PURE__ */ solver<
  GearTrainInput,
  GearTrain,
  never,
  GearTrainCaution
>("gearTrain", "What a gear train makes of speed and torque, and whether it holds", solve, () => ({
  input,
  output,
  example: {
    stages: [
      { type: "planetary", drivingTeeth: 12, drivenTeeth: 48, module: "0.5 mm", backlash: "0.5 deg" },
      { type: "worm", drivingTeeth: 1, drivenTeeth: 30, leadAngle: "4 deg", friction: 0.1, module: "1 mm", backlash: "0.3 deg" },
    ],
    torque: "6 N m",
    dragTorque: "2 mN m",
    inputSpeed: "5000 rpm",
    inputInertia: "20 g cm2",
    loadInertia: "0.4 kg m2",
    tipRadius: "900 mm",
  },
  formulae,
  sources: [at(BEVAN, "chapters 10 and 11"), at(KHURMI, "chapter 13"), at(SHIGLEY, "section 13-17"), at(GEARMOTOR_FAQ, "answer 2.1.3")],
  check,
  cautions,
}))
