import {
  at,
  type Caution,
  caution,
  commonPractice,
  type NoSolution,
  refuse,
  type SiOf,
  type Solver,
  solver,
  tried,
} from "../../solver/index.js"
import { windingFactor } from "../linear-actuator/constants.js"
import { GEARMOTOR_SHEET, HUGHES, IEC_60028, IEC_60085, ISO_12100 } from "../sources.js"
import { type DcMotorInput, motorConstants, sheetFaults, sheetRules } from "./constants.js"
import { motorSheetFields } from "./fields.js"

/** Result of {@link dcMotor}. */
export interface DcMotor {
  /** Speed [n; rad/s] */
  readonly speed: number
  /** Current [I; A] */
  readonly current: number
  /** Power at the shaft [P_m; W] */
  readonly mechanicalPower: number
  /** Power taken [P_e; W] */
  readonly electricalPower: number
  /** Heat in the winding [P_w; W] */
  readonly windingHeat: number
  /** Heat by friction, in the iron and in gears. [P_f; W] */
  readonly frictionHeat: number
  /** Power at the shaft against power taken; null at rest or without power. [eta; as a fraction] */
  readonly efficiency: number | null
  /** Torque for each ampere beyond the no-load current. [k_T; N m/A] */
  readonly torqueConstant: number
  /** Back-emf for each radian per second. [k_E; V s/rad] */
  readonly backEmfConstant: number
  /** Winding resistance in use. [R_w; Ω] */
  readonly windingResistance: number
  /** Speed without load at this voltage. [n_f; rad/s] */
  readonly noLoadSpeed: number
  /** Torque at standstill. [T_st; N m] */
  readonly stallTorque: number
  /** Current at standstill. [I_st; A] */
  readonly stallCurrent: number
  /** Torque of best efficiency [T_b; N m] */
  readonly maxEfficiencyTorque: number
  /** Best efficiency [eta_b; as a fraction] */
  readonly maxEfficiency: number
  /** Maximum power at the shaft, at half the stall torque. [P_b; W] */
  readonly maxPower: number
}

/** Reasons for which {@link dcMotor} refuses. */
export type DcMotorRefusal = "insufficient-torque" | "insufficient-voltage"

/** Hazards and limits of validity that go with an answer of {@link dcMotor}. */
export type DcMotorCaution = "datasheet-rounding" | "drawn-in" | "extrapolated" | "heavy-load" | "over-voltage" | "overheating"

type Si = SiOf<DcMotorInput>

/** A higher voltage is offered only as far as the datasheet goes. */
const FURTHEST = 1.1

function kernel(si: Si): DcMotor | NoSolution<DcMotorRefusal> {
  const { terminalVoltage, torque, noLoadCurrent } = si
  const { torqueConstant, backEmfConstant, windingResistance: resistance } = motorConstants(si)
  const windingResistance = resistance * windingFactor(si.windingTemperature, si.datasheetTemperature)
  const stallCurrent = terminalVoltage / windingResistance
  const frictionVoltage = noLoadCurrent * windingResistance
  const stallTorque = (torqueConstant * (terminalVoltage - frictionVoltage)) / windingResistance
  // driven by its load it can send back no more than it is given: what its datasheet's torque lacks is lost, not gained
  const current = noLoadCurrent + torque / (torque < 0 ? Math.max(torqueConstant, backEmfConstant) : torqueConstant)
  const neededVoltage = current * windingResistance
  const enough = neededVoltage * 1.001
  const higher: Record<string, number> = si.ratedVoltage === null || enough <= FURTHEST * si.ratedVoltage ? { terminalVoltage: enough } : {}
  // a load that helps (only a gear train hands one on) can overcome the friction itself
  if (torque >= 0 && !(terminalVoltage >= frictionVoltage))
    return refuse(
      "insufficient-voltage",
      "{terminalVoltage voltage} drive at most {stallCurrent current}, which does not overcome the friction current of {given.noLoadCurrent current}: it needs {shortBy voltage} more.",
      frictionVoltage - terminalVoltage,
      { terminalVoltage, stallCurrent },
      higher,
      { "given.noLoadCurrent": noLoadCurrent },
    )
  if (!(terminalVoltage >= neededVoltage))
    return refuse(
      "insufficient-torque",
      "The motor stalls: at {terminalVoltage voltage} it holds at most {stallTorque moment} and {torque moment} were asked for; it would need {shortBy voltage} more. Lower the torque, or gear it down.",
      neededVoltage - terminalVoltage,
      { torque, terminalVoltage, stallTorque, stallCurrent },
      { torque: stallTorque * 0.999, ...higher },
    )
  const speed = (terminalVoltage - neededVoltage) / backEmfConstant
  const electricalPower = terminalVoltage * current
  const mechanicalPower = torque * speed
  const windingHeat = current ** 2 * windingResistance
  const maxEfficiencyTorque = torqueConstant * (Math.sqrt(noLoadCurrent * stallCurrent) - noLoadCurrent)
  return {
    speed,
    current,
    mechanicalPower,
    electricalPower,
    windingHeat,
    frictionHeat: electricalPower - windingHeat - mechanicalPower,
    efficiency: electricalPower > 0 ? mechanicalPower / electricalPower : null,
    torqueConstant,
    backEmfConstant,
    windingResistance,
    noLoadSpeed: (terminalVoltage - frictionVoltage) / backEmfConstant,
    stallTorque,
    stallCurrent,
    maxEfficiencyTorque,
    maxEfficiency: (torqueConstant / backEmfConstant) * (1 - Math.sqrt(noLoadCurrent / stallCurrent)) ** 2,
    maxPower: (stallTorque / 4) * ((terminalVoltage - frictionVoltage) / backEmfConstant),
  }
}

const solve = (si: Si): DcMotor | NoSolution<DcMotorRefusal> => tried(kernel(si), si, dcMotor.input, kernel, sheetFaults, dcMotor.either)

/** Hazards of a brushed motor, alone or behind gears. */
export function cautions(
  si: Omit<Si, "torque">,
  out: Pick<DcMotor, "stallTorque" | "current" | "stallCurrent" | "torqueConstant" | "backEmfConstant">,
): Caution<DcMotorCaution>[] {
  const found: Caution<DcMotorCaution>[] = [
    caution(
      "drawn-in",
      "warning",
      "A turning shaft, wheel or gear draws in hair, cloth and fingers, and stalls only at {stallTorque moment}: cover it, keep a switch within reach of wearer and helper, and have machinery near people checked by a qualified person under the local rules.",
      at(ISO_12100, "clause 6.3"),
      { stallTorque: out.stallTorque },
    ),
  ]
  if (si.ratedVoltage !== null && si.terminalVoltage > FURTHEST * si.ratedVoltage)
    found.push(
      caution(
        "over-voltage",
        "warning",
        "{given.terminalVoltage voltage} on a motor whose datasheet is for {given.ratedVoltage voltage}: speed, heat, sparking and brush wear grow beyond what the datasheet covers, and a stalled motor burns out sooner. Ask the maker, or limit the voltage.",
        commonPractice,
        { "given.terminalVoltage": si.terminalVoltage, "given.ratedVoltage": si.ratedVoltage },
      ),
    )
  if (si.windingTemperature > 125)
    found.push(
      caution(
        "overheating",
        "warning",
        "At {given.windingTemperature temperature} the insulation, glue and magnets of many small motors give way (above about 125 °C), and the case burns skin. Let it cool, and cover it.",
        at(IEC_60085, "thermal classes 105, 120 and 130"),
        { "given.windingTemperature": si.windingTemperature },
      ),
    )
  if (out.current > 0.25 * out.stallCurrent)
    found.push(
      caution(
        "heavy-load",
        "caution",
        "{current current} is more than a quarter of the stall current of {stallCurrent current}: more heat is made than most small motors can lose. Keep such runs short, or gear down.",
        commonPractice,
        { current: out.current, stallCurrent: out.stallCurrent },
      ),
    )
  if (si.loadSpeed === 0)
    found.push(
      caution(
        "extrapolated",
        "note",
        "Stall values on datasheets are often extrapolated from lighter loads; geared motors draw up to a quarter less current at part load than the straight line says.",
        GEARMOTOR_SHEET,
      ),
    )
  if (out.torqueConstant > out.backEmfConstant)
    found.push(
      caution(
        "datasheet-rounding",
        "note",
        "The datasheet's points give slightly more torque than their current can: rounding; trust speeds and torques to a few per cent.",
      ),
    )
  return found
}

/**
 * Speed, current, heat and efficiency of a brushed motor (gears included) at a voltage and a torque.
 *
 * Formula: from the no-load point (n₀, I₀) and a loaded one (T₁, n₁, I₁; n₁ = 0 for stall) at V_r, with D = n₀·I₁ −
 * n₁·I₀: k_E = V_r·(I₁ − I₀)/D, R = V_r·(n₀ − n₁)/D, k_T = T₁/(I₁ − I₀); or k_E and R as printed, with k_T = k_E (the
 * same number in SI). Then I = I₀ + T/k_T, n = (V − I·R′)/k_E, R′ = R·(1 + α·(T_w − 20))/(1 + α·(T_s − 20)), α =
 * 0.00393/K, T_w and T_s the winding temperature in use and on the sheet. Stall I_s = V/R′, T_s = k_T·(I_s − I₀); best
 * efficiency k_T/k_E·(1 − √(I₀/I_s))² at T = k_T·(√(I₀·I_s) − I₀); maximum power at half the stall torque.
 *
 * Valid for permanent-magnet brushed motors at steady speed, I₀ taken as constant. Some sheets' no-load speed is V/k_E,
 * friction left out: then give constants instead. Torques in kgf·cm, kgf·mm, ozf·in and N·m are all read.
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
 * - `torque`: torque [T; 0 to 1000000 N m]
 * - `windingTemperature`: winding temperature [T_w; −50 to 200 °C; default 20 °C]
 * - `datasheetTemperature`: winding temperature of the datasheet [T_s; −50 to 200 °C; default 20 °C]
 * - exactly one of `backEmfConstant` with `windingResistance` and `ratedVoltage` with `noLoadSpeed` with `loadTorque`
 *   with `loadSpeed` with `loadCurrent`
 *
 * **Results**
 *
 * `speed`: speed [n; rad/s]; `current`: current [I; A]; `mechanicalPower`: power at the shaft [P_m; W];
 * `electricalPower`: power taken [P_e; W]; `windingHeat`: heat in the winding [P_w; W]; `frictionHeat`: heat by
 * friction [P_f; W]; `efficiency`: efficiency [eta; as a fraction]; `torqueConstant`: torque constant [k_T; N m/A];
 * `backEmfConstant`: back-emf constant [k_E; V s/rad]; `windingResistance`: winding resistance [R_w; Ω];
 * `noLoadSpeed`: no-load speed at this voltage [n_f; rad/s]; `stallTorque`: stall torque [T_st; N m]; `stallCurrent`:
 * stall current [I_st; A]; `maxEfficiencyTorque`: torque of best efficiency [T_b; N m]; `maxEfficiency`: best
 * efficiency [eta_b; as a fraction]; `maxPower`: maximum power at the shaft [P_b; W].
 *
 * **Symbols of the working**
 *
 * R_20: resistance from both points [Ω]; draws: 1 where power is taken.
 *
 * **Sources**
 * - A. Hughes, B. Drury: Electric Motors and Drives, 5th, 2019, chapter 3 (not verified against the document)
 * - IEC: IEC 60028, International standard of resistance for copper, 1925, clause 1 (not verified against the
 *   document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `insufficient-torque` or `insufficient-voltage`
 * @example
 * ```ts
 * import { dcMotor } from 'alula/drive'
 * const motor = dcMotor({
 *   ratedVoltage: '12 V', noLoadSpeed: '100 rpm', noLoadCurrent: '0.2 A',
 *   loadTorque: '34 kgf cm', loadSpeed: '0 rpm', loadCurrent: '5.5 A',
 *   terminalVoltage: '11 V', torque: '8 kgf cm',
 * })
 * motor.current // => 1.447
 * motor.speed // => 7.102
 * motor.stallTorque // => 3.046
 * ```
 */
export const dcMotor: Solver<DcMotorInput, DcMotor, DcMotorRefusal, DcMotorCaution> = /* @__PURE__ */ solver<
  DcMotorInput,
  DcMotor,
  DcMotorRefusal,
  DcMotorCaution
>("dcMotor", "What a brushed motor does at a voltage and a torque", solve, () => ({
  input: {
    ...motorSheetFields,
    terminalVoltage: { kind: "voltage", symbol: "V_m", label: "voltage at the motor", min: "10 mV", max: 1000, typical: [3, 24] },
    torque: { kind: "moment", symbol: "T", label: "torque", min: 0, max: 1e6, typical: [0, 2] },
    windingTemperature: {
      kind: "temperature",
      symbol: "T_w",
      label: "winding temperature",
      min: -50,
      max: 200,
      typical: [0, 110],
      default: 20,
    },
    datasheetTemperature: {
      kind: "temperature",
      symbol: "T_s",
      label: "winding temperature of the datasheet",
      min: -50,
      max: 200,
      typical: [15, 30],
      default: 20,
    },
  },
  output: {
    speed: { kind: "angularSpeed", symbol: "n", label: "speed", unit: "rpm" },
    current: { kind: "current", symbol: "I", label: "current" },
    mechanicalPower: { kind: "power", symbol: "P_m", label: "power at the shaft" },
    electricalPower: { kind: "power", symbol: "P_e", label: "power taken" },
    windingHeat: { kind: "power", symbol: "P_w", label: "heat in the winding" },
    frictionHeat: { kind: "power", symbol: "P_f", label: "heat by friction" },
    efficiency: { kind: "ratio", symbol: "eta", label: "efficiency", unit: "%" },
    torqueConstant: { kind: "torqueConstant", symbol: "k_T", label: "torque constant" },
    backEmfConstant: { kind: "backEmfConstant", symbol: "k_E", label: "back-emf constant" },
    windingResistance: { kind: "resistance", symbol: "R_w", label: "winding resistance" },
    noLoadSpeed: { kind: "angularSpeed", symbol: "n_f", label: "no-load speed at this voltage", unit: "rpm" },
    stallTorque: { kind: "moment", symbol: "T_st", label: "stall torque" },
    stallCurrent: { kind: "current", symbol: "I_st", label: "stall current" },
    maxEfficiencyTorque: { kind: "moment", symbol: "T_b", label: "torque of best efficiency" },
    maxEfficiency: { kind: "ratio", symbol: "eta_b", label: "best efficiency", unit: "%" },
    maxPower: { kind: "power", symbol: "P_b", label: "maximum power at the shaft" },
  },
  example: {
    ratedVoltage: "12 V",
    noLoadSpeed: "100 rpm",
    noLoadCurrent: "0.2 A",
    loadTorque: "34 kgf cm",
    loadSpeed: "0 rpm",
    loadCurrent: "5.5 A",
    terminalVoltage: "11 V",
    torque: "8 kgf cm",
  },
  formulae: [
    {
      symbol: "k_E",
      meaning: "back-emf constant from both points",
      is: "V_r * (I_1 - I_0) / (n_0 * I_1 - n_1 * I_0)",
      when: "has_ratedVoltage",
    },
    {
      symbol: "R_20",
      kind: "resistance",
      meaning: "resistance from both points",
      is: "V_r * (n_0 - n_1) / (n_0 * I_1 - n_1 * I_0)",
      when: "has_ratedVoltage",
    },
    { symbol: "k_T", meaning: "torque for each ampere", is: "T_1 / (I_1 - I_0)", when: "has_ratedVoltage" },
    { symbol: "k_E", meaning: "back-emf constant as printed", is: "k_0", when: "has_backEmfConstant" },
    { symbol: "R_20", kind: "resistance", meaning: "resistance as printed", is: "R_0", when: "has_backEmfConstant" },
    { symbol: "k_T", meaning: "torque constant, the same number", is: "k_0", when: "has_backEmfConstant" },
    {
      symbol: "R_w",
      meaning: "winding resistance in use",
      is: "R_20 * (1 + 0.00393 / K * (T_w - 293.15 K)) / (1 + 0.00393 / K * (T_s - 293.15 K))",
      source: IEC_60028,
    },
    { symbol: "I", meaning: "current", is: "I_0 + T / k_T" },
    { symbol: "n", meaning: "speed", is: "(V_m - I * R_w) / k_E" },
    { symbol: "P_m", meaning: "power at the shaft", is: "T * n" },
    { symbol: "P_e", meaning: "power taken", is: "V_m * I" },
    { symbol: "P_w", meaning: "heat in the winding", is: "I^2 * R_w" },
    { symbol: "P_f", meaning: "heat by friction", is: "P_e - P_w - P_m" },
    { symbol: "draws", kind: "number", meaning: "1 where power is taken", given: (_, out) => (out.efficiency === null ? 0 : 1) },
    { symbol: "eta", meaning: "efficiency", is: "P_m / P_e", when: "draws == 1" },
    { symbol: "I_st", meaning: "current at standstill", is: "V_m / R_w" },
    { symbol: "T_st", meaning: "torque at standstill", is: "k_T * (I_st - I_0)" },
    { symbol: "n_f", meaning: "no-load speed at this voltage", is: "(V_m - I_0 * R_w) / k_E" },
    { symbol: "T_b", meaning: "torque of best efficiency", is: "k_T * (sqrt(I_0 * I_st) - I_0)" },
    { symbol: "eta_b", meaning: "best efficiency", is: "k_T / k_E * (1 - sqrt(I_0 / I_st))^2" },
    { symbol: "P_b", meaning: "maximum power, at half the stall torque", is: "T_st / 2 * n_f / 2" },
  ],
  sources: [at(HUGHES, "chapter 3"), IEC_60028],
  either: sheetRules,
  check: sheetFaults,
  cautions,
}))
