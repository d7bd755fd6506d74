import {
  at,
  type Caution,
  caution,
  commonPractice,
  inconsistent,
  type NoSolution,
  refuse,
  type Solver,
  solver,
  tried,
} from "../../solver/index.js"
import { HUGHES, IEC_60028, IEC_60034, ISO_12100, ISO_13854, SHIGLEY } from "../sources.js"
import { type ActuatorRating, actuatorConstants, actuatorCurrent, actuatorSpeed, warmedConstants } from "./constants.js"
import type { LinearActuator, LinearActuatorCaution, LinearActuatorInput, LinearActuatorRefusal, Si } from "./types.js"

export type { LinearActuator, LinearActuatorCaution, LinearActuatorInput, LinearActuatorRefusal } from "./types.js"

/** Current that a force takes, A: against the motion it adds F/kF; helping, the screw's friction decides the sign. */
function currentFor(constants: ReturnType<typeof actuatorConstants>, force: number): number {
  if (force >= 0) return actuatorCurrent(constants, force)
  const screwEfficiency = constants.forceConstant / constants.backEmfConstant
  return actuatorCurrent(constants, -force * (1 - 2 * screwEfficiency))
}

/** A higher voltage is offered only as far as it is not warned of. */
const FURTHEST = 1.1

function kernel(si: Si): LinearActuator | NoSolution<LinearActuatorRefusal> {
  const { terminalVoltage, force, stroke } = si
  const constants = warmedConstants(actuatorConstants(si as ActuatorRating), si.windingTemperature, si.datasheetTemperature)
  const { windingResistance, forceConstant, backEmfConstant, frictionCurrent } = constants
  const screwEfficiency = forceConstant / backEmfConstant
  const current = currentFor(constants, force)
  const speed = actuatorSpeed(constants, terminalVoltage, current)
  const stallCurrent = terminalVoltage / windingResistance
  const stallForce = (stallCurrent - frictionCurrent) * forceConstant
  if (!(speed > 0)) {
    const needed = current * windingResistance
    const enough = needed * 1.001
    return refuse(
      "insufficient-force",
      "The actuator stalls: {needed voltage} at its leads would just balance the load and there are {terminalVoltage voltage}; it moves against at most {moves force}. Lower the force, or lengthen its lever arm.",
      enough - terminalVoltage,
      { force, terminalVoltage, stallForce, stallCurrent },
      {
        ...(enough <= FURTHEST * si.ratedVoltage ? { terminalVoltage: enough } : {}),
        ...(stallForce > 0 ? { force: stallForce * 0.999 } : {}),
      },
      { needed, moves: Math.max(0, stallForce) },
    )
  }
  // by how much the load overcomes the screw's own friction when it pushes back
  const backDrive = 2 * screwEfficiency - 1
  const drivenBack = (Math.abs(force) * backDrive) / forceConstant - frictionCurrent
  const electricalPower = terminalVoltage * current
  const mechanicalPower = force * speed
  const windingHeat = current * current * windingResistance
  return {
    speed,
    current,
    electricalPower,
    mechanicalPower,
    windingHeat,
    frictionHeat: electricalPower - windingHeat - mechanicalPower,
    efficiency: force > 0 ? mechanicalPower / electricalPower : null,
    strokeDuration: stroke === null ? null : stroke / speed,
    stallForce,
    stallCurrent,
    windingResistance,
    forceConstant,
    backEmfConstant,
    frictionCurrent,
    screwEfficiency,
    selfLocking: si.holdingForce !== null && Math.abs(force) <= si.holdingForce,
    holdingForce: si.holdingForce,
    backDriveForce: backDrive > 0 ? (frictionCurrent * forceConstant) / backDrive : null,
    shortedBackDriveSpeed: drivenBack > 0 ? (drivenBack * windingResistance) / backEmfConstant : 0,
  }
}

function check(si: Si) {
  const faults = []
  if (!(si.ratedSpeed < si.noLoadSpeed))
    faults.push(
      inconsistent(["ratedSpeed"], "{ratedSpeed speed}", "less than the no-load speed of {noLoadSpeed speed}", {
        ratedSpeed: si.ratedSpeed,
        noLoadSpeed: si.noLoadSpeed,
      }),
    )
  if (!(si.ratedCurrent > si.noLoadCurrent))
    faults.push(
      inconsistent(["ratedCurrent"], "{ratedCurrent current}", "more than the no-load current of {noLoadCurrent current}", {
        ratedCurrent: si.ratedCurrent,
        noLoadCurrent: si.noLoadCurrent,
      }),
    )
  if (faults.length) return faults
  const { forceConstant, backEmfConstant, windingResistance } = actuatorConstants(si as ActuatorRating)
  if (![forceConstant, backEmfConstant, windingResistance].every((x) => x > 1e-12 && x < 1e15))
    faults.push(inconsistent(["ratedSpeed"], "two points too close together", "points that differ enough to tell the constants"))
  else if (forceConstant > backEmfConstant)
    faults.push(
      inconsistent(
        ["ratedForce"],
        "{times} times the work its current can do",
        "a rated force that the rated current can give (check the units of force, speed and current)",
        { times: forceConstant / backEmfConstant },
      ),
    )
  return faults
}

const solve = (si: Si): LinearActuator | NoSolution<LinearActuatorRefusal> => tried(kernel(si), si, linearActuator.input, kernel, check)

function cautions(si: Si, out: LinearActuator): Caution<LinearActuatorCaution>[] {
  const given = { "given.force": si.force }
  const found: Caution<LinearActuatorCaution>[] = [
    caution(
      "pinch",
      "warning",
      "The rod and what it moves crush and shear, with up to {stallForce force} before it stalls: keep gaps that no finger, hand or head fits, guard the rest, keep a switch and a way to free somebody within reach, and have it checked by a qualified person under the local rules.",
      ISO_13854,
      { stallForce: out.stallForce },
    ),
  ]
  if (Math.abs(si.force) > si.ratedForce)
    found.push(
      caution(
        "over-force",
        "warning",
        "{given.force force} is above the rated force of {given.ratedForce force}: screw, nut and end stops are not made for it. Take a stronger actuator or a longer lever arm.",
        commonPractice,
        { ...given, "given.ratedForce": si.ratedForce },
      ),
    )
  if (Math.abs(out.current) > si.ratedCurrent)
    found.push(
      caution(
        "over-current",
        "caution",
        "{current current} is above the rated {given.ratedCurrent current}: the winding may only carry it for short runs (see dutyCycle).",
        at(IEC_60034, "clause 4.2 (duty types)"),
        { current: out.current, "given.ratedCurrent": si.ratedCurrent },
      ),
    )
  if (si.terminalVoltage > FURTHEST * si.ratedVoltage)
    found.push(
      caution(
        "over-voltage",
        "warning",
        "{given.terminalVoltage voltage} on an actuator rated for {given.ratedVoltage voltage}: speed, heat, brush wear and the blow at the end stops grow beyond what the datasheet covers. Ask the maker, or limit the voltage.",
        commonPractice,
        { "given.terminalVoltage": si.terminalVoltage, "given.ratedVoltage": si.ratedVoltage },
      ),
    )
  if (out.shortedBackDriveSpeed > 0)
    found.push(
      caution(
        "back-driven",
        "warning",
        "By its two datasheet points, loads above about {backDriveForce force} drive the rod back without power, and this one is {given.force force}: unless the maker states a brake that holds it, a raised part can come down on somebody. Fit a brake, a latch or a counterbalance, and keep people clear.",
        at(ISO_12100, "clause 6.2.11 (interruption of power)"),
        { ...given, backDriveForce: out.backDriveForce as number },
      ),
    )
  if (out.current < 0)
    found.push(
      caution(
        "runs-away",
        "warning",
        "The load drives the motor faster than the supply would: {current current}, flowing back into the supply, which a battery's protection circuit or a converter may not accept. Brake or counterbalance the load.",
        commonPractice,
        { current: out.current },
      ),
    )
  if (si.holdingForce === null)
    found.push(
      caution(
        "holding-unknown",
        "warning",
        "No holding force is given, and speed and current cannot tell it: count on the part coming down without power. Ask the maker what it holds unpowered, and fit a brake, a latch or a counterbalance wherever anybody can be beneath.",
        at(SHIGLEY, "section 8-2 (self-locking depends on friction)"),
      ),
    )
  else if (Math.abs(si.force) > si.holdingForce)
    found.push(
      caution(
        "falls-unpowered",
        "warning",
        "{given.force force} is above the {holdingForce force} that the maker states it holds without power: it can come down by itself. Fit a brake, a latch or a counterbalance, and keep people clear.",
        at(ISO_12100, "clause 6.2.11 (interruption of power)"),
        { ...given, holdingForce: si.holdingForce },
      ),
    )
  return found
}

/**
 * What a brushed linear actuator does at a voltage and a force, from the two points of its datasheet.
 *
 * Formula: with D = v₀·I₁ − v₁·I₀ the constants are kV = V_r·(I₁ − I₀)/D (V·s/m), R = V_r·(v₀ − v₁)/D (Ω)
 * and kF = F₁/(I₁ − I₀) (N/A), where V_r is the datasheet's voltage (V), v₀ and I₀ speed (m/s) and current
 * (A) without load, and F₁, v₁, I₁ the rated force (N), speed and current. Then I = I₀ + F/kF,
 * v = (V − I·R′)/kV, with R′ = R·(1 + α·(T − 20 °C))/(1 + α·(T₀ − 20 °C)), α = 0.00393/K for copper, T the
 * winding temperature in use and T₀ on the datasheet (°C). It stalls at V/R′.
 * Screw and gears lift with efficiency η = kF/kV, because an ampere gives the same number of newtons as a
 * metre per second gives volts, less friction. With the same friction both ways a helping load (F below 0)
 * takes I = I₀ + |F|·(1 − 2η)/kF. Above η = 0.5 a load of more than I₀·kF/(2η − 1) is estimated to drive it back, with
 * shorted leads at the speed (|F|·(2η − 1)/kF − I₀)·R′/kV. That it holds is never concluded from this: only the maker's
 * `holdingForce` says so.
 *
 * Valid for permanent-magnet brushed motors in steady motion; friction is taken as constant, the start and
 * the magnets' weakening with heat are left out.
 *
 * **Inputs**
 * - `ratedVoltage`: rated voltage [V_r; 10 mV to 1000 V]
 * - `noLoadSpeed`: no-load speed [v_0; 0.01 mm/s to 10 m/s]
 * - `noLoadCurrent`: no-load current [I_0; 0 to 1000 A]
 * - `ratedForce`: rated force [F_1; 1 mN to 1000 kN]
 * - `ratedSpeed`: rated speed [v_1; 0.01 mm/s to 10 m/s]
 * - `ratedCurrent`: rated current [I_1; 0.1 mA to 1000 A]
 * - `terminalVoltage`: voltage at the actuator [V_a; 10 mV to 1000 V]
 * - `force`: force against the motion [F; −1000 to 1000 kN]
 * - `stroke`: stroke [S; 1 mm to 10 m; optional]
 * - `holdingForce`: stated holding force, unpowered [F_m; 0 to 1000 kN; optional]
 * - `windingTemperature`: winding temperature [T; −50 to 200 °C; default 20 °C]
 * - `datasheetTemperature`: winding temperature of the datasheet [T_0; −50 to 200 °C; default 20 °C]
 *
 * **Results**
 *
 * `speed`: speed [v; m/s]; `current`: current [I; A]; `electricalPower`: power taken [P_e; W]; `mechanicalPower`:
 * power given to the load [P_m; W]; `windingHeat`: heat in the winding [P_w; W]; `frictionHeat`: heat in screw and
 * gears [P_f; W]; `efficiency`: efficiency [eta; as a fraction]; `strokeDuration`: time for the stroke [t; s];
 * `stallForce`: stall force [F_s; N]; `stallCurrent`: stall current [I_s; A]; `windingResistance`: winding resistance
 * [R_w; Ω]; `forceConstant`: force per ampere [k_F; N/A]; `backEmfConstant`: volts per speed [k_V; V s/m];
 * `frictionCurrent`: friction current [I_f; A]; `screwEfficiency`: efficiency of screw and gears [eta_s; as a
 * fraction]; `selfLocking`: holds this load unpowered, as the maker states [yes or no]; `holdingForce`: stated holding
 * force, unpowered [F_h; N]; `backDriveForce`: back-drive force, estimated [F_b; N]; `shortedBackDriveSpeed`:
 * back-drive speed, leads shorted, estimated [v_b; m/s].
 *
 * **Symbols of the working**
 *
 * helps: 1 where the load helps the motion, else 0; lifts: 1 where work is given to the load, else 0; free: 1 where a
 * load is estimated to drive it back, else 0; R_20: winding resistance on the datasheet [Ω].
 *
 * **Sources**
 * - A. Hughes, B. Drury: Electric Motors and Drives, 5th, 2019, chapter 3 (not verified against the document)
 * - R. G. Budynas, J. K. Nisbett: Shigley's Mechanical Engineering Design, 10th, 2015, section 8-2 (not verified
 *   against the document)
 * - IEC: IEC 60028, International standard of resistance for copper, 1925, clause 1 (not verified against the
 *   document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `insufficient-force` where the voltage cannot move the force
 * @example
 * ```ts
 * import { linearActuator } from 'alula/drive'
 * const arm = linearActuator({
 *   ratedVoltage: '12 V', noLoadSpeed: '12 mm/s', noLoadCurrent: '0.8 A',
 *   ratedForce: '500 N', ratedSpeed: '9 mm/s', ratedCurrent: '3 A',
 *   terminalVoltage: '11 V', force: '300 N', stroke: '100 mm',
 * })
 * arm.speed // => 0.009109
 * arm.current // => 2.12
 * arm.strokeDuration // => 10.98
 * arm.selfLocking // => false
 * ```
 */
export const linearActuator: Solver<LinearActuatorInput, LinearActuator, LinearActuatorRefusal, LinearActuatorCaution> =
  /* @__PURE__ */ solver<LinearActuatorInput, LinearActuator, LinearActuatorRefusal, LinearActuatorCaution>(
    "linearActuator",
    "How fast a linear actuator moves a force, and what it draws",
    solve,
    () => ({
      input: {
        ratedVoltage: { kind: "voltage", symbol: "V_r", label: "rated voltage", min: "10 mV", max: 1000, typical: [6, 24] },
        noLoadSpeed: { kind: "speed", symbol: "v_0", label: "no-load speed", min: "0.01 mm/s", max: 10, typical: ["4 mm/s", "60 mm/s"] },
        noLoadCurrent: { kind: "current", symbol: "I_0", label: "no-load current", min: 0, max: 1000, typical: [0.1, 1.2] },
        ratedForce: { kind: "force", symbol: "F_1", label: "rated force", min: "1 mN", max: "1000 kN", typical: [50, 1500] },
        ratedSpeed: { kind: "speed", symbol: "v_1", label: "rated speed", min: "0.01 mm/s", max: 10, typical: ["3 mm/s", "50 mm/s"] },
        ratedCurrent: { kind: "current", symbol: "I_1", label: "rated current", min: "0.1 mA", max: 1000, typical: [1, 6] },
        terminalVoltage: { kind: "voltage", symbol: "V_a", label: "voltage at the actuator", min: "10 mV", max: 1000, typical: [6, 24] },
        force: { kind: "force", symbol: "F", label: "force against the motion", min: "-1000 kN", max: "1000 kN", typical: [-300, 600] },
        stroke: { kind: "length", symbol: "S", label: "stroke", min: "1 mm", max: 10, typical: ["30 mm", "300 mm"], default: null },
        holdingForce: {
          kind: "force",
          symbol: "F_m",
          label: "stated holding force, unpowered",
          min: 0,
          max: "1000 kN",
          typical: [100, 3000],
          default: null,
        },
        windingTemperature: {
          kind: "temperature",
          symbol: "T",
          label: "winding temperature",
          min: -50,
          max: 200,
          typical: [0, 100],
          default: 20,
        },
        datasheetTemperature: {
          kind: "temperature",
          symbol: "T_0",
          label: "winding temperature of the datasheet",
          min: -50,
          max: 200,
          typical: [15, 30],
          default: 20,
        },
      },
      output: {
        speed: { kind: "speed", symbol: "v", label: "speed" },
        current: { kind: "current", symbol: "I", label: "current" },
        electricalPower: { kind: "power", symbol: "P_e", label: "power taken" },
        mechanicalPower: { kind: "power", symbol: "P_m", label: "power given to the load" },
        windingHeat: { kind: "power", symbol: "P_w", label: "heat in the winding" },
        frictionHeat: { kind: "power", symbol: "P_f", label: "heat in screw and gears" },
        efficiency: { kind: "ratio", symbol: "eta", label: "efficiency", unit: "%" },
        strokeDuration: { kind: "time", symbol: "t", label: "time for the stroke" },
        stallForce: { kind: "force", symbol: "F_s", label: "stall force" },
        stallCurrent: { kind: "current", symbol: "I_s", label: "stall current" },
        windingResistance: { kind: "resistance", symbol: "R_w", label: "winding resistance" },
        forceConstant: { kind: "forceConstant", symbol: "k_F", label: "force per ampere" },
        backEmfConstant: { kind: "speedVoltageConstant", symbol: "k_V", label: "volts per speed" },
        frictionCurrent: { kind: "current", symbol: "I_f", label: "friction current" },
        screwEfficiency: { kind: "ratio", symbol: "eta_s", label: "efficiency of screw and gears", unit: "%" },
        selfLocking: { kind: "flag", label: "holds this load unpowered, as the maker states" },
        holdingForce: { kind: "force", symbol: "F_h", label: "stated holding force, unpowered" },
        backDriveForce: { kind: "force", symbol: "F_b", label: "back-drive force, estimated" },
        shortedBackDriveSpeed: { kind: "speed", symbol: "v_b", label: "back-drive speed, leads shorted, estimated" },
      },
      example: {
        ratedVoltage: "12 V",
        noLoadSpeed: "12 mm/s",
        noLoadCurrent: "0.8 A",
        ratedForce: "500 N",
        ratedSpeed: "9 mm/s",
        ratedCurrent: "3 A",
        terminalVoltage: "11 V",
        force: "300 N",
        stroke: "100 mm",
      },
      formulae: [
        { symbol: "helps", kind: "number", meaning: "1 where the load helps the motion, else 0", given: (si) => (si.force < 0 ? 1 : 0) },
        {
          symbol: "lifts",
          kind: "number",
          meaning: "1 where work is given to the load, else 0",
          given: (_, out) => (out.efficiency === null ? 0 : 1),
        },
        {
          symbol: "free",
          kind: "number",
          meaning: "1 where a load is estimated to drive it back, else 0",
          given: (_, out) => (out.backDriveForce === null ? 0 : 1),
        },
        { symbol: "k_V", meaning: "volts for each speed, from both points", is: "V_r * (I_1 - I_0) / (v_0 * I_1 - v_1 * I_0)" },
        {
          symbol: "R_20",
          kind: "resistance",
          meaning: "winding resistance on the datasheet",
          is: "V_r * (v_0 - v_1) / (v_0 * I_1 - v_1 * I_0)",
        },
        { symbol: "k_F", meaning: "force for each ampere", is: "F_1 / (I_1 - I_0)" },
        { symbol: "I_f", meaning: "current that friction takes", is: "I_0" },
        {
          symbol: "R_w",
          meaning: "winding resistance in use",
          is: "R_20 * (1 + 0.00393 / K * (T - 293.15 K)) / (1 + 0.00393 / K * (T_0 - 293.15 K))",
          source: IEC_60028,
        },
        { symbol: "eta_s", meaning: "efficiency of screw and gears", is: "k_F / k_V" },
        { symbol: "I", meaning: "current against a load", is: "I_0 + F / k_F", when: "helps == 0" },
        { symbol: "I", meaning: "current with a helping load", is: "I_0 - F * (1 - 2 * eta_s) / k_F", when: "helps == 1" },
        { symbol: "v", meaning: "speed", is: "(V_a - I * R_w) / k_V" },
        { symbol: "P_e", meaning: "power taken", is: "V_a * I" },
        { symbol: "P_m", meaning: "power given to the load", is: "F * v" },
        { symbol: "P_w", meaning: "heat in the winding", is: "I^2 * R_w" },
        { symbol: "P_f", meaning: "heat in screw and gears", is: "P_e - P_w - P_m" },
        { symbol: "eta", meaning: "efficiency", is: "P_m / P_e", when: "lifts == 1" },
        { symbol: "t", meaning: "time for the stroke", is: "S / v", when: "has_stroke" },
        { symbol: "I_s", meaning: "current at standstill", is: "V_a / R_w" },
        { symbol: "F_s", meaning: "force at standstill", is: "k_F * (I_s - I_0)" },
        { symbol: "F_h", meaning: "holding force as stated", is: "F_m", when: "has_holdingForce" },
        { symbol: "F_b", meaning: "force that drives it back, estimated", is: "I_0 * k_F / (2 * eta_s - 1)", when: "free == 1" },
        {
          symbol: "v_b",
          meaning: "speed driven back with shorted leads",
          is: "max(abs(F) * max(2 * eta_s - 1, 0) / k_F - I_0, 0 A) * R_w / k_V",
        },
      ],
      sources: [at(HUGHES, "chapter 3"), at(SHIGLEY, "section 8-2"), IEC_60028],
      check,
      cautions,
    }),
  )
