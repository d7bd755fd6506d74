// A hobby servo by its datasheet, as a drive.
import { hobbyServo, servoNoLoadSpeed, servoStallTorque } from "../../drive/index.js"
import { holdingShare, servoSheetFields } from "../../drive/servo-sheet.js"
import type { Angle, Current, Moment, MomentOfInertia, Ratio, Time, Voltage } from "../../quantity/index.js"
import { type Issue, inconsistent, type SiOf } from "../../solver/index.js"
import { domainFaults } from "../domain-faults.js"
import type { Drive, DriveLine, DriveMember } from "./drive.js"

/** A hobby servo: one or two voltages of its datasheet, and the angles between which it is sent. */
export interface HobbyServoDrive {
  type: "hobby-servo"
  /** Angle of the horn at the start, counted in the way it turns when it moves off. [theta_0; −10 to 10 rev] */
  fromAngle: Angle
  /** Angle of the horn at the end [theta_1; −10 to 10 rev] */
  toAngle: Angle
  /** First datasheet voltage [V_1; 1 to 60 V] */
  firstVoltage: Voltage
  /** Stall torque at the first voltage [T_1; 0.01 mN m to 1000 N m] */
  firstStallTorque: Moment
  /** Time for 60° at the first voltage [t_1; 1 ms to 60 s] */
  firstTime: Time
  /** Second datasheet voltage [V_2; 1 to 60 V; optional] */
  secondVoltage?: Voltage | null
  /** Stall torque at the second voltage [T_2; 0.01 mN m to 1000 N m; optional] */
  secondStallTorque?: Moment | null
  /** Time for 60° at the second voltage [t_2; 1 ms to 60 s; optional] */
  secondTime?: Time | null
  /** What it draws stalled at the first voltage; without it nothing can be said of its currents. [I_s1; 0.1 mA to 200 A] */
  stallCurrent: Current
  /** Current at rest [I_i; 0 to 10 A; default 10 mA] */
  idleCurrent?: Current
  /** Share of stall held for long [y; 0.01 to 1; default 0.3] */
  holdingShare?: Ratio
  /** Torque it holds without power; 0 where it lets go. [T_hold; 0 to 1000 N m; default 0] */
  holdingTorque?: Moment
  /** Share of a helping torque that reaches its motor. [eta_g; 0 to 100 %; default 0] */
  backwardEfficiency?: Ratio
  /** Moment of inertia of motor and gears, felt at the horn. [J_s; 0 to 1 kg m²; default 0] */
  inertia?: MomentOfInertia
}

type Si = SiOf<HobbyServoDrive>

/**
 * Its straight line at a voltage. What it draws at rest is its circuit's, whatever the voltage; what it draws beyond that is
 * its winding's, whose current at stall goes with the voltage.
 */
function writeLine(si: Si, voltage: number, line: DriveLine): void {
  line.circuitCurrent = si.idleCurrent
  line.frictionCurrent = 0
  line.windingResistance = si.firstVoltage / (si.stallCurrent - si.idleCurrent)
  line.effortConstant = (servoStallTorque(si, voltage) * line.windingResistance) / voltage
  line.backEmfConstant = voltage / servoNoLoadSpeed(si, voltage)
}

const emptyLine = (): DriveLine => ({
  effortConstant: 0,
  backEmfConstant: 0,
  windingResistance: 0,
  frictionCurrent: 0,
  circuitCurrent: 0,
})

/** Voltage at which a straight line through the datasheet's two values comes to nothing. */
const vanishesAt = (si: Si, first: number, second: number): number =>
  si.secondVoltage === null || !(second > first) ? 0 : si.firstVoltage - (first * (si.secondVoltage - si.firstVoltage)) / (second - first)

function build(si: Si): Drive {
  const line = emptyLine()
  const ratedVoltage = si.secondVoltage ?? si.firstVoltage
  writeLine(si, ratedVoltage, line)
  return {
    ...line,
    travel: "angle",
    low: si.fromAngle,
    high: si.toAngle,
    lineAt: (voltage, into) => writeLine(si, voltage, into),
    minVoltage: Math.max(
      0,
      vanishesAt(si, si.firstStallTorque, si.secondStallTorque ?? 0),
      vanishesAt(si, 1 / si.firstTime, si.secondTime === null ? 0 : 1 / si.secondTime),
    ),
    inertia: si.inertia,
    currentLimit: null,
    backwardEfficiency: si.backwardEfficiency,
    unlocking: 0,
    holdingEffort: si.holdingTorque,
    ratedVoltage,
    // heat goes with the torque it holds, whatever its voltage
    ratedEffort: si.holdingShare * si.firstStallTorque,
    control: "position-servo",
    standbyCurrent: si.idleCurrent,
  }
}

/** Torque constant over back-emf constant up to which a datasheet counts as printed to two or three figures, as for motors. */
const ROUNDING = 1.05

/** Voltages at which torque and speed ask most of the stall current: the columns, and between them where one rises and one falls against the voltage. */
function hardestVoltages({ firstVoltage, firstStallTorque, firstTime, secondVoltage, secondStallTorque, secondTime }: Si): number[] {
  if (secondVoltage === null || secondStallTorque === null || secondTime === null) return [firstVoltage]
  // torque and speed for a volt, against those at the first datasheet voltage: straight over one over the voltage
  const torque = (secondStallTorque * firstVoltage) / (firstStallTorque * secondVoltage) - 1
  const speed = (firstTime * firstVoltage) / (secondTime * secondVoltage) - 1
  const share = -(torque + speed) / (2 * torque * speed)
  const between = 1 / (1 / firstVoltage + share * (1 / secondVoltage - 1 / firstVoltage))
  return [firstVoltage, ...(torque * speed < 0 && share > 0 && share < 1 ? [between] : []), secondVoltage]
}

/** Voltages at which torque and speed of the datasheet take more power than its stall current can bring. */
function powerFaults(si: Si): Issue[] {
  const line = emptyLine()
  return hardestVoltages(si).flatMap((voltage) => {
    writeLine(si, voltage, line)
    const times = line.effortConstant / line.backEmfConstant
    return times <= ROUNDING
      ? []
      : [
          inconsistent(
            ["stallCurrent"],
            "{stallCurrent current}, with torque and speed at {voltage voltage} that take {times} times the power it brings",
            "the stall current of this servo, measured if its datasheet is wrong: too small a one hides what fuse and wires must carry",
            { stallCurrent: si.stallCurrent, voltage, times },
          ),
        ]
  })
}

const { default: _, ...stallCurrent } = servoSheetFields.stallCurrent
const angle = { kind: "angle", min: "-10 rev", max: "10 rev" } as const

/** A hobby servo. */
export const hobbyServoDrive: DriveMember<HobbyServoDrive> = {
  type: "hobby-servo",
  label: "hobby servo",
  fields: {
    fromAngle: { ...angle, symbol: "theta_0", label: "angle of the horn at the start" },
    toAngle: { ...angle, symbol: "theta_1", label: "angle of the horn at the end" },
    ...servoSheetFields,
    stallCurrent,
    holdingShare,
    holdingTorque: { kind: "moment", symbol: "T_hold", label: "torque held without power", min: 0, max: 1000, default: 0 },
    backwardEfficiency: { kind: "ratio", symbol: "eta_g", label: "efficiency, load driving", min: 0, max: 1, default: 0, unit: "%" },
    inertia: { kind: "momentOfInertia", symbol: "J_s", label: "inertia felt at the horn", min: 0, max: 1, default: 0 },
  },
  either: [{ together: ["secondVoltage", "secondStallTorque", "secondTime"] }],
  check(si) {
    const { firstVoltage, firstStallTorque, firstTime, secondVoltage, secondStallTorque, secondTime, fromAngle, toAngle } = si
    const printed = { firstVoltage, firstStallTorque, firstTime, secondVoltage, secondStallTorque, secondTime }
    const { stallCurrent, idleCurrent } = si
    const asked = { ...printed, stallCurrent, idleCurrent, terminalVoltage: firstVoltage, torque: 0 }
    const sheet = domainFaults(hobbyServo, asked)
    const turns = toAngle - fromAngle
    return [
      ...sheet,
      ...(sheet.length ? [] : powerFaults(si)),
      ...(turns > 1e-4
        ? []
        : [
            inconsistent(
              ["toAngle"],
              "{toAngle angle °}",
              "more than the angle at the start, {fromAngle angle °}: both are counted in the way it turns",
              {
                toAngle,
                fromAngle,
              },
            ),
          ]),
    ]
  },
  build,
}
