import type { Angle, Current, Moment, Ratio, Time, Voltage } from "../quantity/index.js"
import {
  at,
  type Caution,
  caution,
  commonPractice,
  type Issue,
  inconsistent,
  type NoSolution,
  refuse,
  type SiOf,
  type Solver,
  solver,
  tried,
} from "../solver/index.js"
import { holdingShare, SIXTY, servoNoLoadSpeed, servoSheetFields, servoStallCurrent, servoStallTorque } from "./servo-sheet.js"
import { HUGHES, ISO_13854 } from "./sources.js"

/** Input of {@link hobbyServo}: one or two voltages of its datasheet, and how it is used. */
export interface HobbyServoInput {
  /** First voltage of the datasheet. [V_1; 1 to 60 V] */
  firstVoltage: Voltage
  /** Stall torque at that voltage. [T_1; 0.01 mN m to 1000 N m] */
  firstStallTorque: Moment
  /** Time for 60° without load at that voltage. [t_1; 1 ms to 60 s] */
  firstTime: Time
  /** Second, higher voltage of the datasheet. [V_2; 1 to 60 V; optional] */
  secondVoltage?: Voltage | null
  /** Stall torque at that voltage. [T_2; 0.01 mN m to 1000 N m; optional] */
  secondStallTorque?: Moment | null
  /** Time for 60° without load at that voltage. [t_2; 1 ms to 60 s; optional] */
  secondTime?: Time | null
  /** Stall current at the first voltage. [I_s1; 0.1 mA to 200 A; optional] */
  stallCurrent?: Current | null
  /** Current at rest without load. [I_i; 0 to 10 A; default 10 mA] */
  idleCurrent?: Current
  /** Voltage at the servo's own plug in use. [V_s; 0.5 to 60 V] */
  terminalVoltage: Voltage
  /** Torque at the horn [T; 0 to 1000 N m] */
  torque: Moment
  /** Angle to move, for the time it takes. [theta; 0 to 100 rev; optional] */
  angle?: Angle | null
  /** Share of the stall torque that may be held for long. [y; 0.01 to 1; default 0.3] */
  holdingShare?: Ratio
}

/** Result of {@link hobbyServo}. */
export interface HobbyServo {
  /** Stall torque at this voltage. [T_s; N m] */
  readonly stallTorque: number
  /** Speed without load at this voltage. [w_0; rad/s] */
  readonly noLoadSpeed: number
  /** Speed against the torque. [w; rad/s] */
  readonly speed: number
  /** Time for 60° against the torque. [t_60; s] */
  readonly sixtyTime: number
  /** Time for the angle, where one was given; starting and stopping left out. [t; s] */
  readonly moveDuration: number | null
  /** Torque against stall [x; as a fraction] */
  readonly torqueUtilisation: number
  /** Torque that may be held for long. [T_h; N m] */
  readonly holdingTorque: number
  /** Whether the torque is within that. [yes or no] */
  readonly holds: boolean
  /** Stall current at this voltage. [I_s; A] */
  readonly stallCurrent: number | null
  /** Current while moving against the torque. [I_m; A] */
  readonly movingCurrent: number | null
  /** Mean supply current while holding the torque still. [I_h; A] */
  readonly holdingCurrent: number | null
  /** Heat while holding. [P_h; W] */
  readonly holdingHeat: number | null
}

/** Reasons for which {@link hobbyServo} refuses. */
export type HobbyServoRefusal = "insufficient-torque" | "insufficient-voltage"

/** Hazards and limits of validity that go with an answer of {@link hobbyServo}. */
export type HobbyServoCaution = "cannot-hold" | "datasheet-torque" | "extrapolated" | "over-voltage" | "pinch" | "supply-for-stall"

type Si = SiOf<HobbyServoInput>

/** Share of the stall torque that a hobby servo is usually let hold for long; common practice. */
const HOLD_SHARE = 0.3
/** Share of the stall torque that is offered where it stalls: at stall itself it does not move. */
const BELOW_STALL = 0.999

function kernel(si: Si): HobbyServo | NoSolution<HobbyServoRefusal> {
  const { terminalVoltage, torque, firstVoltage, idleCurrent } = si
  const stallTorque = servoStallTorque(si, terminalVoltage)
  const noLoadSpeed = servoNoLoadSpeed(si, terminalVoltage)
  if (!(stallTorque > 1e-9 * si.firstStallTorque && noLoadSpeed > (1e-9 * SIXTY) / si.firstTime))
    return refuse(
      "insufficient-voltage",
      "Extrapolated from the datasheet's two voltages, the servo has no torque or speed left at {terminalVoltage voltage}, which is {shortBy voltage} below the first of them.",
      firstVoltage - terminalVoltage,
      { terminalVoltage },
      { terminalVoltage: firstVoltage },
    )
  if (!(torque < stallTorque))
    return refuse(
      "insufficient-torque",
      "The servo stalls: it has {stallTorque moment} at {terminalVoltage voltage} and the horn needs {torque moment}. Lower the torque by {shortBy moment}, or take a stronger servo.",
      torque - stallTorque * BELOW_STALL,
      { torque, stallTorque, terminalVoltage },
      { torque: stallTorque * BELOW_STALL, terminalVoltage: si.secondVoltage ?? firstVoltage },
    )
  const torqueUtilisation = torque / stallTorque
  const speed = noLoadSpeed * (1 - torqueUtilisation)
  const stallCurrent =
    si.stallCurrent === null ? null : servoStallCurrent({ firstVoltage, stallCurrent: si.stallCurrent, idleCurrent }, terminalVoltage)
  // held still, its winding's current is the torque's share of stall, for as much of the time
  const holdingCurrent = stallCurrent === null ? null : idleCurrent + (stallCurrent - idleCurrent) * torqueUtilisation ** 2
  return {
    stallTorque,
    noLoadSpeed,
    speed,
    sixtyTime: SIXTY / speed,
    moveDuration: si.angle === null ? null : si.angle / speed,
    torqueUtilisation,
    holdingTorque: si.holdingShare * stallTorque,
    holds: torqueUtilisation <= si.holdingShare,
    stallCurrent,
    movingCurrent: stallCurrent === null ? null : idleCurrent + (stallCurrent - idleCurrent) * torqueUtilisation,
    holdingCurrent,
    holdingHeat: holdingCurrent === null ? null : holdingCurrent * terminalVoltage,
  }
}

function check(si: Si): Issue[] {
  const faults: Issue[] = []
  const { firstVoltage, firstStallTorque, firstTime, secondVoltage, secondStallTorque, secondTime, stallCurrent, idleCurrent } = si
  if (secondVoltage !== null && !(secondVoltage > firstVoltage * 1.01))
    faults.push(
      inconsistent(["secondVoltage"], "{secondVoltage voltage}", "more than the first voltage, {firstVoltage voltage}", {
        secondVoltage,
        firstVoltage,
      }),
    )
  // a servo gains torque and speed with voltage: columns that say otherwise are mixed up, and extrapolate to nothing
  if (secondStallTorque !== null && !(secondStallTorque >= firstStallTorque))
    faults.push(
      inconsistent(["secondStallTorque"], "{secondStallTorque moment}", "at least the {firstStallTorque moment} at the first voltage", {
        secondStallTorque,
        firstStallTorque,
      }),
    )
  if (secondTime !== null && !(secondTime <= firstTime))
    faults.push(
      inconsistent(["secondTime"], "{secondTime time}", "at most the {firstTime time} at the first voltage", { secondTime, firstTime }),
    )
  if (stallCurrent !== null && !(stallCurrent > idleCurrent))
    faults.push(
      inconsistent(["stallCurrent"], "{stallCurrent current}", "more than the current at rest of {idleCurrent current}", {
        stallCurrent,
        idleCurrent,
      }),
    )
  return faults
}

const solve = (si: Si): HobbyServo | NoSolution<HobbyServoRefusal> => tried(kernel(si), si, hobbyServo.input, kernel, check)

function cautions(si: Si, out: HobbyServo): Caution<HobbyServoCaution>[] {
  const found: Caution<HobbyServoCaution>[] = []
  const highest = si.secondVoltage ?? si.firstVoltage
  if (si.terminalVoltage > highest * 1.001)
    found.push(
      caution(
        "over-voltage",
        "warning",
        "{given.terminalVoltage voltage} is more than the datasheet goes to ({highest voltage}): circuit and motor may fail, and a failed servo can jerk to its end. Use a regulator.",
        commonPractice,
        { "given.terminalVoltage": si.terminalVoltage, highest },
      ),
    )
  if (si.terminalVoltage < si.firstVoltage * 0.999)
    found.push(
      caution(
        "extrapolated",
        "note",
        "{given.terminalVoltage voltage} is below the datasheet's {given.firstVoltage voltage}: torque and speed are extrapolated, and the circuit may reset.",
        commonPractice,
        { "given.terminalVoltage": si.terminalVoltage, "given.firstVoltage": si.firstVoltage },
      ),
    )
  if (!out.holds || out.torqueUtilisation > HOLD_SHARE)
    found.push(
      caution(
        "cannot-hold",
        "caution",
        "{given.torque moment} is {torqueUtilisation ratio %} of its stall torque, more than it should hold for long (usually up to 30 %): it hums, heats and drifts. Use a bigger servo, a shorter horn, a spring, or a latch.",
        commonPractice,
        { "given.torque": si.torque, torqueUtilisation: out.torqueUtilisation },
      ),
    )
  if (out.stallCurrent !== null)
    found.push(
      caution(
        "supply-for-stall",
        "caution",
        "One servo takes up to {stallCurrent current}, and several may stall or start at once: the supply has to stand the sum of their stall currents for a moment, or the electronics restart.",
        commonPractice,
        { stallCurrent: out.stallCurrent },
      ),
    )
  found.push(
    caution("datasheet-torque", "note", "Torques on hobby datasheets are seldom measured to a standard: design with half of them."),
    caution(
      "pinch",
      "warning",
      "A horn and its linkage pinch with up to {stallTorque moment}, and a servo may start without warning when its signal is lost: keep fingers, hair and cloth out, and have anything near faces checked by a qualified person under the local rules.",
      ISO_13854,
      { stallTorque: out.stallTorque },
    ),
  )
  return found
}

/**
 * Torque, speed and current of a hobby servo at a voltage and a torque at its horn.
 *
 * Formula: stall torque T_s and free speed w₀ = 60°/t on the straight line between the datasheet's two voltages; beside them,
 * and with one of them, no more than in proportion to voltage from the nearer one. Speed w = w₀·(1 − T/T_s); stall current
 * I_s = I_i + (I_s1 − I_i)·V/V₁; moving, I = I_i + (I_s − I_i)·x, and holding still, where the drive chops the voltage,
 * I = I_i + (I_s − I_i)·x² with x = T/T_s. T is the torque at the horn, I_i the current at rest, which its circuit draws
 * beside the winding. Held for long: a share of T_s.
 *
 * Valid for steady moving within the sheet's voltages; inertia, gear play and the controller's dead band are
 * left out. The share of 0.3 is common practice, no source.
 *
 * **Inputs**
 * - `firstVoltage`: first datasheet voltage [V_1; 1 to 60 V]
 * - `firstStallTorque`: stall torque at the first voltage [T_1; 0.01 mN m to 1000 N m]
 * - `firstTime`: time for 60° at the first voltage [t_1; 1 ms to 60 s]
 * - `secondVoltage`: second datasheet voltage [V_2; 1 to 60 V; optional]
 * - `secondStallTorque`: stall torque at the second voltage [T_2; 0.01 mN m to 1000 N m; optional]
 * - `secondTime`: time for 60° at the second voltage [t_2; 1 ms to 60 s; optional]
 * - `stallCurrent`: stall current at the first voltage [I_s1; 0.1 mA to 200 A; optional]
 * - `idleCurrent`: current at rest [I_i; 0 to 10 A; default 10 mA]
 * - `terminalVoltage`: voltage at the servo [V_s; 0.5 to 60 V]
 * - `torque`: torque at the horn [T; 0 to 1000 N m]
 * - `angle`: angle to move [theta; 0 to 100 rev; optional]
 * - `holdingShare`: share of stall held for long [y; 0.01 to 1; default 0.3]
 * - `secondVoltage`, `secondStallTorque` and `secondTime` only together
 *
 * **Results**
 *
 * `stallTorque`: stall torque [T_s; N m]; `noLoadSpeed`: no-load speed at this voltage [w_0; rad/s]; `speed`: speed
 * [w; rad/s]; `sixtyTime`: time for 60° [t_60; s]; `moveDuration`: time for the angle [t; s]; `torqueUtilisation`:
 * torque against stall [x; as a fraction]; `holdingTorque`: torque held for long [T_h; N m]; `holds`: within the
 * holding torque [yes or no]; `stallCurrent`: stall current [I_s; A]; `movingCurrent`: current moving [I_m; A];
 * `holdingCurrent`: current holding [I_h; A]; `holdingHeat`: heat holding [P_h; W].
 *
 * **Symbols of the working**
 *
 * w_1: no-load speed at the first voltage [rad/s].
 *
 * **Sources**
 * - A. Hughes, B. Drury: Electric Motors and Drives, 5th, 2019, chapters 3 and 4 (not verified against the document)
 *
 * @function
 * @throws InputError naming every fault of the input
 * @throws NoSolutionError `insufficient-torque` or `insufficient-voltage`
 * @example
 * ```ts
 * import { hobbyServo } from 'alula/drive'
 * const flap = hobbyServo({
 *   firstVoltage: '4.8 V', firstStallTorque: '9 kgf cm', firstTime: '0.2 s',
 *   secondVoltage: '6 V', secondStallTorque: '11 kgf cm', secondTime: '0.16 s',
 *   stallCurrent: '2 A', terminalVoltage: '5.4 V', torque: '3 kgf cm', angle: '90 deg',
 * })
 * flap.stallTorque // => 0.9807
 * flap.moveDuration // => 0.3810
 * flap.holds // => true
 * ```
 */
export const hobbyServo: Solver<HobbyServoInput, HobbyServo, HobbyServoRefusal, HobbyServoCaution> = /* @__PURE__ */ solver<
  HobbyServoInput,
  HobbyServo,
  HobbyServoRefusal,
  HobbyServoCaution
>("hobbyServo", "What a hobby servo does at a voltage and a torque", solve, () => ({
  input: {
    ...servoSheetFields,
    terminalVoltage: { kind: "voltage", symbol: "V_s", label: "voltage at the servo", min: 0.5, max: 60, typical: [4.8, 7.4] },
    torque: { kind: "moment", symbol: "T", label: "torque at the horn", min: 0, max: 1000, typical: [0, 0.6] },
    angle: {
      kind: "angle",
      symbol: "theta",
      label: "angle to move",
      min: 0,
      max: "100 rev",
      typical: ["20 deg", "180 deg"],
      default: null,
    },
    holdingShare,
  },
  output: {
    stallTorque: { kind: "moment", symbol: "T_s", label: "stall torque" },
    noLoadSpeed: { kind: "angularSpeed", symbol: "w_0", label: "no-load speed at this voltage" },
    speed: { kind: "angularSpeed", symbol: "w", label: "speed" },
    sixtyTime: { kind: "time", symbol: "t_60", label: "time for 60°" },
    moveDuration: { kind: "time", symbol: "t", label: "time for the angle" },
    torqueUtilisation: { kind: "ratio", symbol: "x", label: "torque against stall", unit: "%" },
    holdingTorque: { kind: "moment", symbol: "T_h", label: "torque held for long" },
    holds: { kind: "flag", label: "within the holding torque" },
    stallCurrent: { kind: "current", symbol: "I_s", label: "stall current" },
    movingCurrent: { kind: "current", symbol: "I_m", label: "current moving" },
    holdingCurrent: { kind: "current", symbol: "I_h", label: "current holding" },
    holdingHeat: { kind: "power", symbol: "P_h", label: "heat holding" },
  },
  example: {
    firstVoltage: "4.8 V",
    firstStallTorque: "9 kgf cm",
    firstTime: "0.2 s",
    secondVoltage: "6 V",
    secondStallTorque: "11 kgf cm",
    secondTime: "0.16 s",
    stallCurrent: "2 A",
    terminalVoltage: "5.4 V",
    torque: "3 kgf cm",
    angle: "90 deg",
  },
  formulae: [
    { symbol: "w_1", kind: "angularSpeed", meaning: "no-load speed at the first voltage", is: "pi / 3 / t_1" },
    { symbol: "T_s", meaning: "stall torque in proportion to the voltage", is: "T_1 * V_s / V_1", when: "not has_secondVoltage" },
    { symbol: "w_0", meaning: "no-load speed in proportion to the voltage", is: "w_1 * V_s / V_1", when: "not has_secondVoltage" },
    {
      symbol: "T_s",
      meaning: "stall torque on the line of the two voltages",
      is: "T_1 + (T_2 - T_1) * (V_s - V_1) / (V_2 - V_1)",
      when: "has_secondVoltage",
    },
    {
      symbol: "w_0",
      meaning: "no-load speed on the line of the two voltages",
      is: "w_1 + (pi / 3 / t_2 - w_1) * (V_s - V_1) / (V_2 - V_1)",
      when: "has_secondVoltage",
    },
    {
      symbol: "T_s",
      meaning: "stall torque, at most in proportion",
      is: "min(T_s, T_1 * V_s / V_1)",
      when: "has_secondVoltage and V_s < V_1",
    },
    {
      symbol: "w_0",
      meaning: "no-load speed, at most in proportion",
      is: "min(w_0, w_1 * V_s / V_1)",
      when: "has_secondVoltage and V_s < V_1",
    },
    {
      symbol: "T_s",
      meaning: "stall torque, at most in proportion",
      is: "min(T_s, T_2 * V_s / V_2)",
      when: "has_secondVoltage and V_s > V_2",
    },
    {
      symbol: "w_0",
      meaning: "no-load speed, at most in proportion",
      is: "min(w_0, pi / 3 / t_2 * V_s / V_2)",
      when: "has_secondVoltage and V_s > V_2",
    },
    { symbol: "x", meaning: "torque against stall", is: "T / T_s" },
    { symbol: "w", meaning: "speed", is: "w_0 * (1 - x)" },
    { symbol: "t_60", meaning: "time for 60°", is: "pi / 3 / w" },
    { symbol: "t", meaning: "time for the angle", is: "theta / w", when: "has_angle" },
    { symbol: "T_h", meaning: "torque held for long", is: "y * T_s" },
    { symbol: "I_s", meaning: "stall current", is: "I_i + (I_s1 - I_i) * V_s / V_1", when: "has_stallCurrent" },
    { symbol: "I_m", meaning: "current moving", is: "I_i + (I_s - I_i) * x", when: "has_stallCurrent" },
    { symbol: "I_h", meaning: "current holding, chopped", is: "I_i + (I_s - I_i) * x^2", when: "has_stallCurrent" },
    { symbol: "P_h", meaning: "heat holding", is: "I_h * V_s", when: "has_stallCurrent" },
  ],
  sources: [at(HUGHES, "chapters 3 and 4")],
  either: [{ together: ["secondVoltage", "secondStallTorque", "secondTime"] }],
  check,
  cautions,
}))
