import { type Solver, solver } from "../../solver/index.js"
import { CONSTANT_POWER, IEC_60204 } from "../sources.js"
import { controllerSupplyCautions } from "./cautions.js"
import { controllerSupplyFaults } from "./check.js"
import { controllerSupplyFields, controllerSupplyOutput } from "./fields.js"
import { controllerSupplyFormulae } from "./formulae.js"
import { solve } from "./kernel.js"
import type { ControllerSupply, ControllerSupplyCaution, ControllerSupplyInput } from "./types.js"

export type {
  ControllerSupply,
  ControllerSupplyCaution,
  ControllerSupplyInput,
  DirectFeed,
  LinearFeed,
  SignalLine,
  SwitchingFeed,
} from "./types.js"

/**
 * Controller and receiver on a supply that they share with motors: whether they reset as the motors start, and whether signals are
 * still read rightly.
 *
 * Formula: the motors leave V₀ − R₀·I_m. A direct or linear feed takes I_c of it, a converter the constant power V_o·I_c/η, whose
 * higher balance (S + √(S² − 4·R₀·P))/2 stands; below its lowest input it is off and the controller without supply. The ground
 * that signals share with the motors moves by I_m·R_g, which is taken off both noise margins.
 *
 * Valid for currents that last longer than the capacitors at the controller hold it up.
 *
 * **Inputs**
 * - `sourceVoltage`: source voltage [group]
 *   - `low`: source voltage, lowest charge [V_0; 1 to 100 V]
 *   - `high`: source voltage, freshly charged [V_f; 1 to 100 V]
 * - `sourceResistance`: resistance shared with the motors [R_0; 0.1 mΩ to 100 Ω]
 * - `motorCurrent`: motors, starting [I_m; 0 to 1000 A]
 * - `controllerCurrent`: controller and receiver [I_c; 0.1 mA to 20 A]
 * - `feed`: fed by [by its type: direct, linear or switching]
 *   - `direct`: the motors' supply itself
 *   - `linear`: a linear regulator
 *     - `outputVoltage`: output voltage [V_o; 0.8 to 60 V]
 *     - `dropout`: dropout voltage [V_d; 0 to 5 V; default 1.5 V]
 *   - `switching`: a step-down converter
 *     - `outputVoltage`: output voltage [V_o; 0.8 to 60 V]
 *     - `minInputVoltage`: lowest input [V_m; 0.5 to 100 V]
 *     - `efficiency`: efficiency [eta; 10 to 100 %; default 85 %]
 * - `supplyWindow`: supply that the controller is made for [group]
 *   - `low`: lowest [V_l; 0.5 to 60 V]
 *   - `high`: highest [V_h; 0.8 to 100 V]
 * - `resetVoltage`: reset voltage [V_r; 0.5 to 60 V]
 * - `signal`: signal [group; optional]
 *   - `highOutput`: high, sent [V_oh; 0.1 to 60 V]
 *   - `lowOutput`: low, sent [V_ol; 0 to 30 V]
 *   - `highThreshold`: read as high from [V_ih; 0.1 to 60 V]
 *   - `lowThreshold`: read as low up to [V_il; 0 to 30 V]
 *   - `groundResistance`: ground shared with the motors [R_g; 0 to 10 Ω]
 *
 * **Results**
 *
 * `restVoltage`: supply, motors at rest [V_1; V]; `dipVoltage`: supply, motors starting [V_2; V];
 * `controllerRestVoltage`: controller, motors at rest [U_1; V]; `controllerDipVoltage`: controller, motors starting
 * [U_2; V]; `controllerMaxVoltage`: controller, freshly charged [U_f; V]; `resetMargin`: above its reset [M_r; V];
 * `lowMargin`: above its lowest supply [M_l; V]; `highMargin`: below its highest supply [M_h; V]; `maxMotorCurrent`:
 * motor current without a reset [I_x; A]; `groundShift`: ground moved by the motors [V_g; V]; `signalHighMargin`:
 * signal margin, high [N_h; V]; `signalLowMargin`: signal margin, low [N_l; V].
 *
 * **Symbols of the working**
 *
 * straight: 1 on the motors' own supply; converts: 1 behind a step-down converter; P_c: power that the converter takes
 * [W]; S_1: what the motors leave, motors at rest [V]; Q_1: discriminant with the converter's constant power, against
 * the square of the voltage; B_1: higher of both balances, 0 where there is none [V]; S_2: what the motors leave,
 * motors starting [V]; Q_2: discriminant with the converter's constant power, against the square of the voltage; B_2:
 * higher of both balances, 0 where there is none [V]; V_n: supply at which it just does not reset [V]; I_n: current
 * that its feed takes there [A].
 *
 * **Sources**
 * - M. Jeeninga, C. De Persis, A. van der Schaft: DC power grids with constant-power loads, Part I: a full
 *   characterization of power flow feasibility, 2020, single-source case
 * - IEC: IEC 60204-1, Safety of machinery: electrical equipment of machines, part 1: general requirements, 2016,
 *   clauses 5.4 and 9.2 (unexpected start-up, stop categories) (not verified against the document; read 2026-11-29)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @example
 * ```ts
 * import { controllerSupply } from 'alula/converter'
 * const brain = controllerSupply({
 *   sourceVoltage: { low: '9.6 V', high: '12.6 V' }, sourceResistance: '200 mohm', motorCurrent: '10 A', controllerCurrent: '200 mA',
 *   feed: { type: 'linear', outputVoltage: '5 V' }, supplyWindow: { low: '4.5 V', high: '5.5 V' }, resetVoltage: '4.3 V',
 * })
 * brain.dipVoltage // => 7.56
 * brain.maxMotorCurrent // => 18.8
 * ```
 */
export const controllerSupply: Solver<ControllerSupplyInput, ControllerSupply, never, ControllerSupplyCaution> = /* @__PURE__ */ solver<
  ControllerSupplyInput,
  ControllerSupply,
  never,
  ControllerSupplyCaution
>("controllerSupply", "Controller and receiver on the motors' supply", solve, () => ({
  input: controllerSupplyFields(),
  output: controllerSupplyOutput(),
  example: {
    sourceVoltage: { low: "9.6 V", high: "12.6 V" },
    sourceResistance: "200 mohm",
    motorCurrent: "10 A",
    controllerCurrent: "200 mA",
    feed: { type: "linear", outputVoltage: "5 V" },
    supplyWindow: { low: "4.5 V", high: "14 V" },
    resetVoltage: "4.3 V",
    signal: { highOutput: "3 V", lowOutput: "0.3 V", highThreshold: "2.2 V", lowThreshold: "0.8 V", groundResistance: "20 mohm" },
  },
  formulae: controllerSupplyFormulae(),
  sources: [CONSTANT_POWER, IEC_60204],
  check: controllerSupplyFaults,
  cautions: controllerSupplyCautions,
}))
