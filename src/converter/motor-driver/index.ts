import { type Solver, solver } from "../../solver/index.js"
import { DRIVER_LOSSES, IEC_60204, SWITCH_WARMTH } from "../sources.js"
import { motorDriverCautions } from "./cautions.js"
import { motorDriverFaults } from "./check.js"
import { motorDriverFields, motorDriverOutput } from "./fields.js"
import { motorDriverFormulae } from "./formulae.js"
import { solve } from "./kernel.js"
import type { MotorDriver, MotorDriverCaution, MotorDriverInput, MotorDriverRefusal } from "./types.js"

export type {
  BipolarBridge,
  BridgeSwitching,
  MosfetBridge,
  MotorDriver,
  MotorDriverCaution,
  MotorDriverInput,
  MotorDriverRefusal,
} from "./types.js"

/**
 * A bridge between supply and motor: what it drops, its heat, what it takes from the supply, and the currents as the motor starts,
 * is braked and is reversed.
 *
 * Formula: a bipolar bridge takes V_d, one of field-effect transistors 2·R_s·f_h·I (two switches, warm). Mean voltage D·V less
 * that. Switching adds (V·t_r + 2·V_f·t_d)·I·f. The supply gives motor power and heat. With E = V_m − I·R_w the motor takes
 * (V − V_b)/(R_w + R_b) from standstill, (E − V_b)/(R_w + R_b) braked, (V + E − V_b)/(R_w + R_b) reversed at speed.
 *
 * Valid for a motor current that is smooth over a switching period, the bridge's lower switches carrying it while off.
 *
 * **Inputs**
 * - `supplyVoltage`: supply voltage [V; 1 to 200 V]
 * - `current`: motor current [I; 1 mA to 500 A]
 * - `bridge`: bridge [by its type: bipolar or mosfet]
 *   - `bipolar`: bipolar transistors
 *     - `totalDrop`: drop of both transistors [V_d; 0 to 10 V]
 *   - `mosfet`: field-effect transistors
 *     - `switchResistance`: resistance of one switch [R_s; 0.1 mΩ to 10 Ω]
 *     - `warmFactor`: resistance hot over cold [f_h; 1 to 2.5; default 1.4]
 * - `switching`: switching [group; optional]
 *   - `frequency`: switching frequency [f; 10 Hz to 1 MHz]
 *   - `duty`: duty cycle [D; 1 to 100 %]
 *   - `riseTime`: rise and fall time [t_r; 0 to 0.1 ms]
 *   - `deadTime`: dead time [t_d; 0 to 0.1 ms; default 0]
 *   - `diodeDrop`: drop of its diodes [V_f; 0 to 3 V; default 1 V]
 * - `supplyWindow`: supply that it works on [group; optional]
 *   - `low`: lowest [V_l; 0.5 to 200 V]
 *   - `high`: highest [V_h; 0.5 to 250 V]
 * - `ratedCurrent`: continuous current [I_r; 1 mA to 500 A; optional]
 * - `currentLimit`: current limit [I_l; 1 mA to 1000 A; optional]
 * - `windingResistance`: winding resistance [R_w; 1 mΩ to 10 kΩ; optional]
 * - `whenDisabled`: motor while the driver is disabled [coasts or brakes; default coasts]
 * - `standbyCurrent`: standby current [I_q; 0 to 5 A; default 0]
 * - `thermalResistance`: chip to air [R_th; 0.01 to 1000 K/W; optional]
 * - `ambientTemperature`: air at the driver [T_a; −40 to 85 °C; default 25 °C]
 * - `chipTemperatureLimit`: chip switches off [T_m; 80 to 200 °C; default 150 °C]
 *
 * **Results**
 *
 * `motorVoltage`: voltage at the motor [V_m; V]; `drop`: drop of the bridge [V_x; V]; `conductionLoss`: conduction
 * loss [P_c; W]; `switchingLoss`: switching loss [P_s; W]; `heat`: heat in the driver [P; W]; `motorPower`: power to
 * the motor [P_m; W]; `supplyCurrent`: supply current [I_s; A]; `efficiency`: efficiency [eta; as a fraction];
 * `standbyPower`: standby power [P_q; W]; `chipTemperature`: chip temperature [T_c; °C]; `utilisation`: current
 * against continuous current [u; as a fraction]; `startCurrent`: start-up current [I_st; A]; `brakingCurrent`: braking
 * current [I_b; A]; `reversingCurrent`: current on reversing at speed [I_v; A].
 *
 * **Symbols of the working**
 *
 * bipolar: 1 for a bridge that takes volts; D_t: duty cycle; V_b: volts that the path takes [V]; R_b: ohms that the
 * path takes: two switches, warm [Ω]; E: what the motor makes by turning [V].
 *
 * **Sources**
 * - Texas Instruments: Calculating Motor Driver Power Dissipation, SLVA504, worked example
 * - Texas Instruments: DRV8833 datasheet SLVSAR1C, 2013, equation 2; 40 % more at 125 °C (not verified against the
 *   document)
 * - IEC: IEC 60204-1, Safety of machinery: electrical equipment of machines, part 1: general requirements, 2016,
 *   clauses 5.4 and 9.2 (unexpected start-up, stop categories) (not verified against the document; read 2026-11-29)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `insufficient-voltage` below what the driver needs, `input-too-high` above what it bears
 * @example
 * ```ts
 * import { motorDriver } from 'alula/converter'
 * const driver = motorDriver({ supplyVoltage: '12 V', current: '1 A', bridge: { type: 'bipolar', totalDrop: '2.5 V' } })
 * driver.motorVoltage // => 9.5
 * driver.heat // => 2.5
 * ```
 */
export const motorDriver: Solver<MotorDriverInput, MotorDriver, MotorDriverRefusal, MotorDriverCaution> = /* @__PURE__ */ solver<
  MotorDriverInput,
  MotorDriver,
  MotorDriverRefusal,
  MotorDriverCaution
>("motorDriver", "Drop, heat and currents of a motor driver", solve, () => ({
  input: motorDriverFields(),
  output: motorDriverOutput(),
  example: {
    supplyVoltage: "12 V",
    current: "2 A",
    bridge: { type: "mosfet", switchResistance: "120 mohm" },
    switching: { frequency: "20 kHz", duty: "85 %", riseTime: 2e-7, deadTime: 1e-7 },
    supplyWindow: { low: "6 V", high: "28 V" },
    ratedCurrent: "3 A",
    currentLimit: "10 A",
    windingResistance: "2 ohm",
    standbyCurrent: "4 mA",
    thermalResistance: "35 K/W",
  },
  formulae: motorDriverFormulae(),
  sources: [DRIVER_LOSSES, SWITCH_WARMTH, IEC_60204],
  check: motorDriverFaults,
  cautions: motorDriverCautions,
}))
