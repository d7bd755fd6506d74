import { at, type NoSolution, type SiOf, type Solver, solver, tried } from "../../solver/index.js"
import { sheetRules } from "../dc-motor/constants.js"
import { BEVAN, HUGHES, IEC_60028, KHURMI } from "../sources.js"
import { cautions } from "./cautions.js"
import { check, inputFields, output } from "./fields.js"
import { formulae } from "./formulae.js"
import { kernel } from "./kernel.js"
import type { Gearmotor, GearmotorCaution, GearmotorInput, GearmotorRefusal } from "./types.js"

export type { Gearmotor, GearmotorCaution, GearmotorInput, GearmotorRefusal } from "./types.js"

const solve = (si: SiOf<GearmotorInput>): Gearmotor | NoSolution<GearmotorRefusal> =>
  tried(kernel(si), si, gearmotor.input, kernel, check, gearmotor.either)

/**
 * Speed, current, efficiency, back-driving and start of a brushed motor behind gears, with the load against it or helping.
 *
 * Formula: the gears as in gearTrain (i, η, T_d), the motor as in dcMotor (k_T, k_E, R′, I₀). T_m = T/(i·η) + T_d against a load
 * T, T·η_b/i + T_d with one that helps; I = I₀ + T_m/k_T (the larger of k_T and k_E where the load drives it), ω_m = (V − I·R′)/k_E, ω₂ = ω_m/i. Stall at the output
 * (k_T·(V/R′ − I₀) − T_d)·i·η; best efficiency η·k_T/k_E·(1 − √(I_d/I_s))² with I_d = I₀ + T_d/k_T. A load turns it back
 * without power above (T_d + k_T·I₀)·i/η_b. Acceleration from rest
 * (T_s − T_m)/(i·(J₀ + ΣJ_k/(f_k²·g_k) + J_L/(i²·η))), g_k the efficiency up to stage k: what lies behind losses weighs more.
 * Time constant R′·(J₀ + ΣJ_k/f_k² + J_L/i²)/(k_T·k_E).
 *
 * Give the datasheet of the motor alone. For one that prints speed and torque at the output of its gears use dcMotor.
 * Valid at steady speed for permanent-magnet brushed motors; the same in both directions of rotation.
 *
 * **Inputs**
 * - `ratedVoltage`: datasheet voltage [V_r; 10 mV to 1000 V; optional]
 * - `noLoadSpeed`: no-load speed [n_0; 0.572958 °/s to 100000 rpm; optional]
 * - `noLoadCurrent`: no-load current [I_0; 0 to 1000 A; default 0]
 * - `loadTorque`: torque of the second point [T_1; 0.01 mN m to 1000000 N m; optional]
 * - `loadSpeed`: speed of the second point [n_1; 0 to 100000 rpm; optional]
 * - `loadCurrent`: current of the second point [I_1; 0.1 mA to 10000 A; optional]
 * - `backEmfConstant`: back-emf constant [k_0; above 1e−6 to 1000 V s/rad; optional]
 * - `windingResistance`: resistance [R_0; above 1 µΩ to 1000 kΩ; optional]
 * - `terminalVoltage`: voltage at the motor [V_m; 10 mV to 1000 V]
 * - `windingTemperature`: winding temperature [T_w; −50 to 200 °C; default 20 °C]
 * - `datasheetTemperature`: winding temperature of the datasheet [T_s; −50 to 200 °C; default 20 °C]
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
 * - `dragTorque`: drag at the motor [T_d; 0 to 10000 N m; default 0]
 * - `rotorInertia`: inertia of the rotor [J_0; 0 to 1000 kg m²; default 0]
 * - `loadInertia`: inertia of the load [J_L; 0 to 100000 kg m²; default 0]
 * - exactly one of `backEmfConstant` with `windingResistance` and `ratedVoltage` with `noLoadSpeed` with `loadTorque`
 *   with `loadSpeed` with `loadCurrent`
 *
 * **Results**
 *
 * `transmits`: transmits [text]; `ratio`: ratio [i]; `speed`: speed of the output [omega_2; rad/s]; `motorSpeed`:
 * speed of the motor [omega_m; rad/s]; `motorTorque`: torque at the motor [T_m; N m]; `returnTorque`: torque at the
 * motor, motion reversed [T_r; N m]; `current`: current [I; A]; `electricalPower`: power taken [P_e; W];
 * `mechanicalPower`: power to the load [P_2; W]; `windingHeat`: heat in the winding [P_w; W]; `motorFrictionHeat`:
 * heat by friction in the motor [P_f; W]; `gearHeat`: heat in the gears [P_g; W]; `efficiency`: efficiency, motor and
 * gears [eta_t; as a fraction]; `gearEfficiency`: efficiency of the gears [eta; as a fraction]; `torqueConstant`:
 * torque constant [k_T; N m/A]; `backEmfConstant`: back-emf constant [k_E; V s/rad]; `windingResistance`: winding
 * resistance [R_w; Ω]; `noLoadSpeed`: no-load speed of the output [omega_f; rad/s]; `stallTorque`: stall torque at the
 * output [T_st; N m]; `stallCurrent`: stall current [I_st; A]; `maxEfficiencyTorque`: torque of best efficiency [T_be;
 * N m]; `maxEfficiency`: best efficiency [eta_be; as a fraction]; `backDriveTorque`: torque that drives it back [T_b;
 * N m]; `shortedBackDriveSpeed`: back-drive speed, leads shorted [omega_b; rad/s]; `locksAtFriction`: gears lock at
 * the friction given [yes or no]; `selfLocking`: gears lock with half of it [yes or no]; `inertiaAtOutput`: inertia at
 * the output [J_2; kg m²]; `rotorShare`: rotor's share of the inertia [s_r; as a fraction]; `startAcceleration`:
 * acceleration from rest [alpha_2; rad/s²]; `timeConstant`: mechanical time constant [tau; s]; `stages`: stages
 * [list].
 *
 * **Symbols of the working**
 *
 * R_20: resistance from both points [Ω]; r_k: ratio of each stage; e_k: its efficiency, load against the motion; b_k:
 * its efficiency, load driving; J_k: inertia turning with each stage's output [kg m²]; d_k: torque let through by each
 * stage with the motion reversed, against one without loss; f_k: turns of the motor for one of each stage's output;
 * g_k: efficiency from the motor to each stage's output; c_k: torque let through by each stage, against one without
 * loss; helps: 1 where the load helps; locked: 1 where a stage locks; starts: 1 where there is inertia to start;
 * draws: 1 where power is taken for a load; drives: 1 where the load drives the motor; T_sm: torque at the motor at
 * standstill [N m]; I_d: current that friction and drag take [A]; eta_b: efficiency of the gears, load driving; J_m:
 * inertia at the motor [kg m²]; shares: 1 where the rotor has a share of the inertia.
 *
 * **Sources**
 * - A. Hughes, B. Drury: Electric Motors and Drives, 5th, 2019, chapter 3 (not verified against the document)
 * - T. Bevan: The Theory of Machines, 3rd, 1956, chapters 10 and 11 (not verified against the document)
 * - R. S. Khurmi, J. K. Gupta: Theory of Machines, 2005, section 3.13 (not verified against the document)
 * - IEC: IEC 60028, International standard of resistance for copper, 1925, clause 1 (not verified against the
 *   document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `insufficient-torque`, `insufficient-voltage`, or `jammed` where locking gears cannot be driven down
 * @example
 * ```ts
 * import { gearmotor } from 'alula/drive'
 * const wing = gearmotor({
 *   backEmfConstant: '0.012 V s/rad', windingResistance: '1.2 ohm', noLoadCurrent: '0.2 A', terminalVoltage: '12 V',
 *   stages: [{ type: 'planetary', drivingTeeth: 12, drivenTeeth: 48 }, { type: 'planetary', drivingTeeth: 12, drivenTeeth: 48 }],
 *   torque: '0.8 N m',
 * })
 * wing.speed // => 27.45
 * wing.current // => 3.138
 * wing.efficiency // => 0.5832
 * wing.backDriveTorque // => 0.06618
 * ```
 */
export const gearmotor: Solver<GearmotorInput, Gearmotor, GearmotorRefusal, GearmotorCaution> = /* @__PURE__ */ solver<
  GearmotorInput,
  Gearmotor,
  GearmotorRefusal,
  GearmotorCaution
>("gearmotor", "What a motor with its gears does at a load, and what drives it back", solve, () => ({
  input: inputFields(),
  either: sheetRules,
  output,
  example: {
    backEmfConstant: 0.012,
    windingResistance: "1.2 ohm",
    noLoadCurrent: "0.2 A",
    terminalVoltage: "12 V",
    stages: [
      { type: "planetary", drivingTeeth: 12, drivenTeeth: 48, module: "0.5 mm" },
      { type: "planetary", drivingTeeth: 12, drivenTeeth: 48, module: "0.5 mm", inertia: "2 g cm2" },
      { type: "spur", drivingTeeth: 20, drivenTeeth: 60 },
    ],
    torque: "2.5 N m",
    dragTorque: "0.5 mN m",
    rotorInertia: "20 g cm2",
    loadInertia: "0.2 kg m2",
  },
  formulae: formulae(),
  sources: [at(HUGHES, "chapter 3"), at(BEVAN, "chapters 10 and 11"), at(KHURMI, "section 3.13"), IEC_60028],
  check,
  cautions,
}))
