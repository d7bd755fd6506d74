import { type Solver, solver } from "../../solver/index.js"
import { CONTACT_CATEGORIES, CONTROL_CONTACTS, EMERGENCY_STOP, MACHINE_WIRING } from "../sources.js"
import { motorSwitchingCautions } from "./cautions.js"
import { motorSwitchingFaults } from "./check.js"
import { motorSwitchingFields, motorSwitchingOutput } from "./fields.js"
import { motorSwitchingFormulae } from "./formulae.js"
import { solve } from "./kernel.js"
import type { MotorSwitching, MotorSwitchingCaution, MotorSwitchingInput, MotorSwitchingRefusal } from "./types.js"

export { type ContactCategory, type ContactRating, contactCategories } from "./data.js"
export type {
  DriverBehind,
  EmergencyStopSwitch,
  LimitSwitch,
  MotorRelay,
  MotorSwitch,
  MotorSwitching,
  MotorSwitchingCaution,
  MotorSwitchingInput,
  MotorSwitchingRefusal,
  ReversingSwitch,
  StoppedPart,
} from "./types.js"

/**
 * The switches between supply and motor: drop, what they have to switch against their ratings on direct voltage, and what happens
 * when one opens.
 *
 * Formula: closed contacts take I·Σ n·R_c; coming back from an end a diode takes V_d in place of its limit switch. The motor takes
 * I_s from standstill, 2·I_s − I reversed at speed, I_s − I round its joined leads, a limit ahead allowing. A contact may switch its
 * rated current times what its category allows, at a time constant of L·I_s/V no longer than that of its category. Opened ahead of a
 * driver, √(V² + (L·I² + 2·E_r)/C) is left at it. Until it stands the fastest point goes v·(t₁ + t₂/2).
 *
 * Valid for a permanent-magnet motor and contacts in one row with it; their resistance grows with wear. The arc itself takes at least
 * the energy of the winding's field, the supply adding to it while it burns.
 *
 * **Inputs**
 * - `supplyVoltage`: supply voltage [V; 1 to 1000 V]
 * - `runningCurrent`: running current [I; 1 mA to 1000 A]
 * - `stallCurrent`: stall current [I_s; 1 mA to 10000 A]
 * - `inductance`: inductance of the motor [L; 0 to 10 H; optional]
 * - `currentLimit`: current limit of the chain [I_l; 1 mA to 10000 A; optional]
 * - `switches`: switches [list of 1 to 12]
 *   - `reversing-switch`: reversing switch
 *     - `contacts`: contacts in the motor's path [n_c; whole 1 to 4; default 1]
 *     - `contactResistance`: resistance of one contact [R_c; 0 to 10 Ω]
 *     - `ratedCurrent`: rated current [I_r; 1 mA to 1000 A]
 *     - `ratedVoltage`: direct voltage rated for [V_r; 1 to 1000 V]
 *     - `category`: utilization category [dc-1, dc-3, dc-5, dc-12 or dc-13; default dc-12]
 *     - `reversesAtSpeed`: can be turned over at speed [yes or no; default yes]
 *   - `limit-switch`: limit switch
 *     - `contacts`: contacts in the motor's path [n_c; whole 1 to 4; default 1]
 *     - `contactResistance`: resistance of one contact [R_c; 0 to 10 Ω]
 *     - `ratedCurrent`: rated current [I_r; 1 mA to 1000 A]
 *     - `ratedVoltage`: direct voltage rated for [V_r; 1 to 1000 V]
 *     - `category`: utilization category [dc-1, dc-3, dc-5, dc-12 or dc-13; default dc-12]
 *     - `diodeDrop`: drop of its diode [V_d; 0 to 3 V; optional]
 *   - `emergency-stop`: emergency stop
 *     - `contacts`: contacts in the motor's path [n_c; whole 1 to 4; default 1]
 *     - `contactResistance`: resistance of one contact [R_c; 0 to 10 Ω]
 *     - `ratedCurrent`: rated current [I_r; 1 mA to 1000 A]
 *     - `ratedVoltage`: direct voltage rated for [V_r; 1 to 1000 V]
 *     - `category`: utilization category [dc-1, dc-3, dc-5, dc-12 or dc-13; default dc-12]
 *   - `relay`: relay or contactor
 *     - `contacts`: contacts in the motor's path [n_c; whole 1 to 4; default 1]
 *     - `contactResistance`: resistance of one contact [R_c; 0 to 10 Ω]
 *     - `ratedCurrent`: rated current [I_r; 1 mA to 1000 A]
 *     - `ratedVoltage`: direct voltage rated for [V_r; 1 to 1000 V]
 *     - `category`: utilization category [dc-1, dc-3, dc-5, dc-12 or dc-13; default dc-12]
 *     - `coilCurrent`: coil current [I_c; 0 to 20 A]
 *     - `latching`: stays as it is without coil power [yes or no; default no]
 * - `driver`: driver behind the switches [group; optional]
 *   - `inputCapacitance`: input capacitance [C; 1 nF to 100 F]
 *   - `voltageLimit`: highest voltage that it bears [V_m; 1 to 2000 V]
 *   - `returnedEnergy`: energy sent back [E_r; 0 to 277.778 Wh; default 0]
 *   - `standbyCurrent`: standby current [I_q; 0 to 5 A; default 0]
 * - `emergencyStop`: emergency stop [opens-supply, signal-only or none]
 * - `whenOpened`: motor while a switch is open [coasts or brakes; default coasts]
 * - `holdsUnpowered`: holds its load unpowered [yes or no]
 * - `moving`: what moves [group; optional]
 *   - `tipSpeed`: speed of the fastest point [v; 1 mm/s to 50 m/s]
 *   - `reactionDuration`: until the contact opens [t_1; 0 to 60 s]
 *   - `stoppingDuration`: from there until it stands [t_2; 0 to 60 s]
 *
 * **Results**
 *
 * `resistance`: resistance of the closed contacts [R_x; Ω]; `drop`: drop of the contacts [V_x; V]; `motorVoltage`:
 * voltage behind the switches [V_t; V]; `endDrop`: drop coming back from an end [V_e; V]; `heat`: heat in the contacts
 * [P; W]; `startCurrent`: start-up current [I_st; A]; `reversingCurrent`: current on reversing at speed [I_v; A];
 * `switchedCurrent`: largest switched current [I_x; A]; `brakingCurrent`: braking current [I_b; A]; `timeConstant`:
 * time constant of the motor [tau; s]; `fieldEnergy`: energy of the winding's field [W; J]; `utilisation`: switched
 * current against the weakest contact [u; as a fraction]; `carryingUtilisation`: running current against the smallest
 * rating [u_c; as a fraction]; `voltageUtilisation`: supply against the lowest voltage rating [u_V; as a fraction];
 * `arcUtilisation`: time constant against the shortest tried with [u_t; as a fraction]; `standbyPower`: standby power
 * [P_q; W]; `pumpedVoltage`: voltage at the driver, supply opened [V_p; V]; `runOn`: way on until it stands [s; m].
 *
 * **Symbols of the working**
 *
 * R_k: each switch, closed [Ω]; I_k: what each may switch by its category [A]; A_k: their rated currents [A]; V_k:
 * their rated voltages [V]; t_k: time constant that each is tried with [s]; diodes: limit switches with a diode; D_k:
 * their drops [V]; B_k: the contacts that they stand in for [Ω]; turned: 1 where it can be reversed at speed; I_w:
 * current of coils and of a driver that waits [A].
 *
 * **Sources**
 * - IEC: IEC 60204-1, Safety of machinery: electrical equipment of machines, part 1: general requirements, 2016,
 *   clauses 9.2 to 9.4 (stop categories, control functions in the event of failure) (not verified against the
 *   document; read 2026-11-29)
 * - ISO: ISO 13850, Safety of machinery: emergency stop function: principles for design, 2015, stop categories 0 and
 *   1, latching, unlatching does not start (not verified against the document; read 2026-11-29)
 * - Contactors, system manual: utilization categories for DC voltages, after IEC 60947-4-1, table 3-2 (DC-1, DC-3,
 *   DC-5: switching capacity, time constant) (not verified against the document)
 * - IEC: IEC 60947-5-1, Low-voltage switchgear and controlgear: control circuit devices and switching elements, 2016,
 *   table 4 (DC-12: 1 ms to 95 %; DC-13: 6 ms for each watt, at most 300 ms) (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `insufficient-voltage` where the switches take the whole supply
 * @example
 * ```ts
 * import { motorSwitching } from 'alula/wire'
 * const chain = motorSwitching({
 *   supplyVoltage: '12 V', runningCurrent: '2 A', stallCurrent: '9 A', emergencyStop: 'opens-supply', holdsUnpowered: true,
 *   switches: [
 *     { type: 'emergency-stop', contactResistance: '20 mohm', ratedCurrent: '5 A', ratedVoltage: '24 V', category: 'dc-3' },
 *     { type: 'reversing-switch', contactResistance: '15 mohm', contacts: 2, ratedCurrent: '10 A', ratedVoltage: '28 V' },
 *   ],
 * })
 * chain.drop // => 0.1
 * chain.switchedCurrent // => 16
 * chain.utilisation // => 1.6
 * ```
 */
export const motorSwitching: Solver<MotorSwitchingInput, MotorSwitching, MotorSwitchingRefusal, MotorSwitchingCaution> =
  /* @__PURE__ */ solver<MotorSwitchingInput, MotorSwitching, MotorSwitchingRefusal, MotorSwitchingCaution>(
    "motorSwitching",
    "Switches, limits and emergency stop of a motor",
    solve,
    () => ({
      input: motorSwitchingFields(),
      output: motorSwitchingOutput(),
      example: {
        supplyVoltage: "12 V",
        runningCurrent: "2 A",
        stallCurrent: "9 A",
        inductance: "1 mH",
        currentLimit: "14 A",
        switches: [
          { type: "emergency-stop", contactResistance: "20 mohm", ratedCurrent: "6 A", ratedVoltage: "24 V", category: "dc-3" },
          { type: "relay", contactResistance: "10 mohm", ratedCurrent: "20 A", ratedVoltage: "28 V", coilCurrent: "80 mA" },
          { type: "reversing-switch", contactResistance: "15 mohm", contacts: 2, ratedCurrent: "20 A", ratedVoltage: "28 V" },
          { type: "limit-switch", contactResistance: "30 mohm", ratedCurrent: "16 A", ratedVoltage: "24 V", diodeDrop: "0.8 V" },
          { type: "limit-switch", contactResistance: "40 mohm", ratedCurrent: "16 A", ratedVoltage: "24 V", diodeDrop: "0.8 V" },
        ],
        driver: { inputCapacitance: 1e-3, voltageLimit: "40 V", returnedEnergy: "0.3 J", standbyCurrent: "5 mA" },
        emergencyStop: "opens-supply",
        whenOpened: "brakes",
        holdsUnpowered: true,
        moving: { tipSpeed: "0.4 m/s", reactionDuration: "1 s", stoppingDuration: "0.3 s" },
      },
      formulae: motorSwitchingFormulae(),
      sources: [MACHINE_WIRING, EMERGENCY_STOP, CONTACT_CATEGORIES, CONTROL_CONTACTS],
      check: motorSwitchingFaults,
      cautions: motorSwitchingCautions,
    }),
  )
