// Voltage, losses and currents of a motor behind its bridge.
import { type NoSolution, refuse, tried } from "../../solver/index.js"
import { motorDriverFaults } from "./check.js"
import { motorDriverFields } from "./fields.js"
import type { MotorDriver, MotorDriverRefusal, Si } from "./types.js"

/** What the motor's path takes: volts whatever the current, and ohms. */
const pathOf = ({ bridge }: Si) =>
  bridge.type === "bipolar" ? { volts: bridge.totalDrop, ohms: 0 } : { volts: 0, ohms: 2 * bridge.switchResistance * bridge.warmFactor }

export function solve(si: Si): MotorDriver | NoSolution<MotorDriverRefusal> {
  return tried(kernel(si), si, motorDriverFields(), kernel, motorDriverFaults)
}

function kernel(si: Si): MotorDriver | NoSolution<MotorDriverRefusal> {
  const { supplyVoltage, current, supplyWindow, switching, windingResistance, ambientTemperature, thermalResistance } = si
  const duty = switching?.duty ?? 1
  const { volts, ohms } = pathOf(si)
  const drop = volts + ohms * current
  const needed = Math.max(supplyWindow?.low ?? 0, (1.001 * drop) / duty)
  if (supplyWindow !== null && supplyVoltage > supplyWindow.high)
    return refuse(
      "input-too-high",
      "The driver bears {given.supplyWindow.high voltage} at most and would get {shortBy voltage} more: it is destroyed, and can leave the motor running. Take a driver for the fully charged supply, with room for what a braked motor returns.",
      supplyVoltage - supplyWindow.high,
      {},
      { supplyVoltage: supplyWindow.high },
      { "given.supplyWindow.high": supplyWindow.high },
    )
  if (supplyVoltage < needed)
    return refuse(
      "insufficient-voltage",
      "The driver needs {needed voltage} of supply to work and pass this current, {shortBy voltage} more than it gets: it cuts out, or the motor stands still. Take a higher supply, or a driver that drops less.",
      needed - supplyVoltage,
      { needed },
      { supplyVoltage: needed },
    )
  const conductionLoss = drop * current
  const switchingLoss =
    switching === null
      ? 0
      : (supplyVoltage * current * switching.riseTime + 2 * switching.diodeDrop * current * switching.deadTime) * switching.frequency
  const standbyPower = supplyVoltage * si.standbyCurrent
  const heat = conductionLoss + switchingLoss + standbyPower
  const motorVoltage = duty * supplyVoltage - drop
  const motorPower = motorVoltage * current
  const at = (voltage: number) => (windingResistance === null ? null : Math.max(0, voltage - volts) / (windingResistance + ohms))
  // what the motor makes by turning
  const backEmf = windingResistance === null ? 0 : Math.max(0, motorVoltage - current * windingResistance)
  return {
    motorVoltage,
    drop,
    conductionLoss,
    switchingLoss,
    heat,
    motorPower,
    supplyCurrent: (motorPower + heat) / supplyVoltage,
    efficiency: motorPower / (motorPower + heat),
    standbyPower,
    chipTemperature: thermalResistance === null ? null : ambientTemperature + thermalResistance * heat,
    utilisation: si.ratedCurrent === null ? null : current / si.ratedCurrent,
    startCurrent: at(supplyVoltage),
    brakingCurrent: at(backEmf),
    reversingCurrent: at(supplyVoltage + backEmf),
  }
}
