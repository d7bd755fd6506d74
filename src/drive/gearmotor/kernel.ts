// A brushed motor behind gears: the motor's own kernel at the torque that the gears ask of it.
import { isNoSolution, type NoSolution, refuse, type SiOf } from "../../solver/index.js"
import { motorConstants } from "../dc-motor/constants.js"
import { dcMotor } from "../dc-motor/index.js"
import { solve as trainOf } from "../gear-train/kernel.js"
import type { GearTrain } from "../gear-train/types.js"
import { windingFactor } from "../linear-actuator/constants.js"
import type { Gearmotor, GearmotorInput, GearmotorRefusal } from "./types.js"

type Si = SiOf<GearmotorInput>

/** The gears with their torque, rotor and load. */
const gearsOf = (si: Si, torque: number, inputSpeed: number | null = null): GearTrain =>
  trainOf({
    stages: si.stages,
    torque,
    dragTorque: si.dragTorque,
    inputSpeed,
    inputInertia: si.rotorInertia,
    loadInertia: si.loadInertia,
    tipRadius: null,
  })

/** Torque at the motor shaft for each unit of acceleration of the output, the motor driving through every loss. */
export function accelerationTorque(si: Si, gears: GearTrain): number {
  let [turns, passed] = [1, 1]
  let sum = si.rotorInertia
  gears.stages.forEach((stage, k) => {
    turns *= stage.ratio
    passed *= stage.efficiency
    sum += (si.stages[k]?.inertia as number) / (turns ** 2 * passed)
  })
  return gears.ratio * (sum + si.loadInertia / (gears.ratio ** 2 * gears.efficiency))
}

interface Motor {
  readonly torqueConstant: number
  readonly backEmfConstant: number
  readonly windingResistance: number
  readonly stallCurrent: number
  /** Torque at the motor shaft at standstill; below zero where friction takes more than there is. */
  readonly standstill: number
}
function motorOf(si: Si): Motor {
  const { torqueConstant, backEmfConstant, windingResistance: resistance } = motorConstants(si)
  const windingResistance = resistance * windingFactor(si.windingTemperature, si.datasheetTemperature)
  const stallCurrent = si.terminalVoltage / windingResistance
  return {
    torqueConstant,
    backEmfConstant,
    windingResistance,
    stallCurrent,
    standstill: torqueConstant * (stallCurrent - si.noLoadCurrent),
  }
}

/** Why it does not move, told at the output shaft. */
function stands(si: Si, gears: GearTrain, motor: Motor, refused: NoSolution): NoSolution<GearmotorRefusal> {
  const { terminalVoltage, torque, dragTorque } = si
  // the motor alone tells its own friction first; with gears the load and their drag count as well
  const shortBy = motor.windingResistance * (si.noLoadCurrent + gears.inputTorque / motor.torqueConstant) - terminalVoltage
  const spare = motor.standstill - dragTorque
  const higher: Record<string, number> =
    refused.nearest.terminalVoltage === undefined ? {} : { terminalVoltage: refused.nearest.terminalVoltage }
  if (!(spare > 0))
    return refuse(
      "insufficient-voltage",
      "At {terminalVoltage voltage} the motor does not overcome the friction in itself and in the gears: it needs {shortBy voltage} more for this load.",
      shortBy,
      { terminalVoltage },
      higher,
    )
  if (torque < 0)
    return refuse(
      "jammed",
      "The gears lock under this load and have to be driven to let it down: that takes {motorTorque moment} at the motor, which {terminalVoltage voltage} do not give; it would need {shortBy voltage} more. Take weight off, or gear it down further.",
      shortBy,
      { torque, terminalVoltage, motorTorque: gears.inputTorque },
      { torque: (0.999 * torque * spare) / (gears.inputTorque - dragTorque), ...higher },
    )
  const stallTorque = spare * gears.ratio * gears.efficiency
  return refuse(
    "insufficient-torque",
    "The motor stalls: at {terminalVoltage voltage} it moves at most {stallTorque moment} at the output, and {torque moment} were asked for; it would need {shortBy voltage} more. Lower the torque, or gear it down further.",
    shortBy,
    { torque, terminalVoltage, stallTorque },
    { torque: stallTorque * 0.999, ...higher },
  )
}

export function kernel(si: Si): Gearmotor | NoSolution<GearmotorRefusal> {
  const gears = gearsOf(si, si.torque)
  const { ratio, efficiency: gearEfficiency } = gears
  const own = motorOf(si)
  const { torqueConstant, backEmfConstant, windingResistance, stallCurrent } = own
  const { stages: _, dragTorque: __, rotorInertia: ___, loadInertia: ____, ...sheet } = si
  const motor = dcMotor.si({ ...sheet, torque: gears.inputTorque })
  if (isNoSolution(motor)) return stands(si, gears, own, motor)
  const { inputPower, outputPower, outputSpeed } = gearsOf(si, si.torque, motor.speed) as GearTrain & {
    readonly inputPower: number
    readonly outputPower: number
    readonly outputSpeed: number
  }
  const ownFriction = torqueConstant * si.noLoadCurrent
  // with all friction at the motor shaft as a current
  const dragCurrent = si.noLoadCurrent + si.dragTorque / torqueConstant
  const { backwardEfficiency } = gears
  const left = backwardEfficiency === null ? 0 : (Math.abs(si.torque) * backwardEfficiency) / ratio - si.dragTorque - ownFriction
  const perAcceleration = accelerationTorque(si, gears)
  const best = Math.max(0, Math.sqrt(dragCurrent * stallCurrent) - dragCurrent)
  const maxEfficiency =
    stallCurrent > dragCurrent ? gearEfficiency * (torqueConstant / backEmfConstant) * (1 - Math.sqrt(dragCurrent / stallCurrent)) ** 2 : 0
  return {
    transmits: gears.transmits,
    ratio,
    speed: outputSpeed,
    motorSpeed: motor.speed,
    motorTorque: gears.inputTorque,
    returnTorque: gears.returnTorque,
    current: motor.current,
    electricalPower: motor.electricalPower,
    mechanicalPower: outputPower,
    windingHeat: motor.windingHeat,
    motorFrictionHeat: motor.electricalPower - motor.windingHeat - inputPower,
    gearHeat: inputPower - outputPower,
    efficiency: si.torque >= 0 && motor.electricalPower > 0 ? outputPower / motor.electricalPower : null,
    gearEfficiency,
    torqueConstant,
    backEmfConstant,
    windingResistance,
    noLoadSpeed: Math.max(0, si.terminalVoltage - dragCurrent * windingResistance) / backEmfConstant / ratio,
    stallTorque: Math.max(0, own.standstill - si.dragTorque) * ratio * gearEfficiency,
    stallCurrent,
    maxEfficiencyTorque: torqueConstant * best * ratio * gearEfficiency,
    maxEfficiency,
    backDriveTorque: backwardEfficiency === null ? null : ((si.dragTorque + ownFriction) * ratio) / backwardEfficiency,
    shortedBackDriveSpeed: ((Math.max(0, left) / torqueConstant) * windingResistance) / backEmfConstant / ratio,
    locksAtFriction: gears.locksAtFriction,
    selfLocking: gears.selfLocking,
    inertiaAtOutput: gears.inertiaAtOutput,
    rotorShare: gears.inertiaAtInput > 0 ? si.rotorInertia / gears.inertiaAtInput : 0,
    startAcceleration: si.torque >= 0 && perAcceleration > 0 ? (own.standstill - gears.inputTorque) / perAcceleration : null,
    timeConstant: (windingResistance * gears.inertiaAtInput) / (torqueConstant * backEmfConstant),
    stages: gears.stages,
  }
}
