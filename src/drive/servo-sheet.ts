// What a hobby servo's datasheet prints, and what it says of the voltages between and beside its own.
import type { Current, Moment, Time, Voltage } from "../quantity/index.js"
import type { Fields, SiOf } from "../solver/index.js"

interface Printed {
  firstVoltage: Voltage
  firstStallTorque: Moment
  firstTime: Time
  secondVoltage?: Voltage | null
  secondStallTorque?: Moment | null
  secondTime?: Time | null
  stallCurrent?: Current | null
  idleCurrent?: Current
}

export const servoSheetFields = {
  firstVoltage: { kind: "voltage", symbol: "V_1", label: "first datasheet voltage", min: 1, max: 60, typical: [4.8, 6] },
  firstStallTorque: {
    kind: "moment",
    symbol: "T_1",
    label: "stall torque at the first voltage",
    min: 1e-5,
    max: 1000,
    typical: [0.1, 3],
  },
  firstTime: { kind: "time", symbol: "t_1", label: "time for 60° at the first voltage", min: "1 ms", max: 60, typical: [0.08, 0.3] },
  secondVoltage: {
    kind: "voltage",
    symbol: "V_2",
    label: "second datasheet voltage",
    min: 1,
    max: 60,
    typical: [6.5, 8.4],
    default: null,
  },
  secondStallTorque: {
    kind: "moment",
    symbol: "T_2",
    label: "stall torque at the second voltage",
    min: 1e-5,
    max: 1000,
    typical: [0.2, 4],
    default: null,
  },
  secondTime: {
    kind: "time",
    symbol: "t_2",
    label: "time for 60° at the second voltage",
    min: "1 ms",
    max: 60,
    typical: [0.06, 0.2],
    default: null,
  },
  stallCurrent: {
    kind: "current",
    symbol: "I_s1",
    label: "stall current at the first voltage",
    min: "0.1 mA",
    max: 200,
    typical: [0.5, 4],
    default: null,
  },
  idleCurrent: { kind: "current", symbol: "I_i", label: "current at rest", min: 0, max: 10, typical: [0.003, 0.02], default: "10 mA" },
} as const satisfies Fields<Printed>

export const holdingShare = {
  kind: "ratio",
  symbol: "y",
  label: "share of stall held for long",
  min: 0.01,
  max: 1,
  typical: [0.2, 0.5],
  default: 0.3,
} as const

/** One or two columns of a servo's datasheet, SI. */
export type ServoSheet = Pick<
  SiOf<Printed>,
  "firstVoltage" | "firstStallTorque" | "firstTime" | "secondVoltage" | "secondStallTorque" | "secondTime"
>

/** Angle that servos are timed over, rad. */
export const SIXTY = Math.PI / 3

/**
 * A value that a datasheet prints at its voltages: one column is scaled in proportion, two give a straight line. Beside the
 * two it is never more than in proportion to the nearer one, as the winding's current is: on the line alone, torque or speed
 * would be left where there is no voltage, or take more power than that current brings.
 */
function between({ firstVoltage, secondVoltage }: ServoSheet, voltage: number, first: number, second: number | null): number {
  if (second === null || secondVoltage === null) return (first * voltage) / firstVoltage
  const line = first + ((second - first) * (voltage - firstVoltage)) / (secondVoltage - firstVoltage)
  if (voltage < firstVoltage) return Math.min(line, (first * voltage) / firstVoltage)
  return voltage > secondVoltage ? Math.min(line, (second * voltage) / secondVoltage) : line
}

/** Current of a servo stalled at a voltage, A: its circuit draws the same at any, its winding in proportion. */
export function servoStallCurrent(
  {
    firstVoltage,
    stallCurrent,
    idleCurrent,
  }: { readonly firstVoltage: number; readonly stallCurrent: number; readonly idleCurrent: number },
  voltage: number,
): number {
  return idleCurrent + ((stallCurrent - idleCurrent) * voltage) / firstVoltage
}

/**
 * Stall torque of a servo at a voltage, N·m: on the straight line through its datasheet's voltages, or in proportion to its
 * only one; beside them, whichever of the two is less.
 */
export function servoStallTorque(sheet: ServoSheet, voltage: number): number {
  return between(sheet, voltage, sheet.firstStallTorque, sheet.secondStallTorque)
}

/** Speed of a servo without load at a voltage, rad/s, by the same rule. */
export function servoNoLoadSpeed(sheet: ServoSheet, voltage: number): number {
  return between(sheet, voltage, SIXTY / sheet.firstTime, sheet.secondTime === null ? null : SIXTY / sheet.secondTime)
}
