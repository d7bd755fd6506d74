// Currents, voltages and ratings of the switches in a motor's path.
import { type NoSolution, refuse, tried } from "../../solver/index.js"
import { motorSwitchingFaults } from "./check.js"
import { type ContactRating, contactCategories } from "./data.js"
import { motorSwitchingFields } from "./fields.js"
import type { MotorSwitching, MotorSwitchingRefusal, Si } from "./types.js"

type SwitchSi = Si["switches"][number]

/** Resistance of a switch's closed contacts in the motor's path. */
export const closed = (s: SwitchSi): number => s.contacts * s.contactResistance
const ratingOf = (s: SwitchSi): ContactRating => contactCategories[s.category]
/** Current that it may make and break. */
export const switchable = (s: SwitchSi): number => ratingOf(s).switches * s.ratedCurrent
/** Time constant that its rating is tried with. */
export function triedWith(s: SwitchSi): number {
  const { timeConstant, perWatt } = ratingOf(s)
  return perWatt === undefined ? timeConstant : Math.min(timeConstant, perWatt * s.ratedVoltage * s.ratedCurrent)
}
/** Limit switches with a diode, and what the diode takes more than the contact that it stands in for. */
export const bridged = (si: Si): readonly (readonly [drop: number, resistance: number])[] =>
  si.switches.flatMap((s) => (s.type === "limit-switch" && s.diodeDrop !== null ? [[s.diodeDrop, closed(s)] as const] : []))
export const reversesAtSpeed = (si: Si): boolean => si.switches.some((s) => s.type === "reversing-switch" && s.reversesAtSpeed)
/** Current of all coils and of a driver that waits. */
export const standbyCurrent = (si: Si): number =>
  si.switches.reduce((sum, s) => sum + (s.type === "relay" ? s.coilCurrent : 0), si.driver?.standbyCurrent ?? 0)

export function solve(si: Si): MotorSwitching | NoSolution<MotorSwitchingRefusal> {
  return tried(kernel(si), si, motorSwitchingFields(), kernel, motorSwitchingFaults)
}

function kernel(si: Si): MotorSwitching | NoSolution<MotorSwitchingRefusal> {
  const { supplyVoltage, runningCurrent, stallCurrent, inductance, driver, moving, switches } = si
  const resistance = switches.reduce((sum, s) => sum + closed(s), 0)
  const drop = runningCurrent * resistance
  const diodes = bridged(si)
  const endDrop = diodes.length === 0 ? null : drop + Math.max(...diodes.map(([volts, ohms]) => volts - runningCurrent * ohms))
  const needed = 1.001 * Math.max(drop, endDrop ?? 0)
  // closed, and with each diode in place of its switch, the drop stays within the supply up to this current
  const carried = [[0, 0] as const, ...diodes].map(([volts, ohms]) => (supplyVoltage / 1.001 - volts) / (resistance - ohms))
  if (supplyVoltage < needed)
    return refuse(
      "insufficient-voltage",
      "The closed switches, or a limit switch's diode, take the whole supply: {needed voltage} would be needed before the motor gets any, {shortBy voltage} more. Take contacts of less resistance, or a higher supply.",
      needed - supplyVoltage,
      { needed },
      { supplyVoltage: needed, runningCurrent: (1 - 1e-9) * Math.min(...carried) },
    )
  const limit = si.currentLimit ?? Number.POSITIVE_INFINITY
  const startCurrent = Math.min(limit, stallCurrent)
  // supply and the turning motor in a row drive it; the turning motor lacks what the running current takes
  const reversingCurrent = reversesAtSpeed(si) ? Math.min(limit, 2 * stallCurrent - runningCurrent) : null
  const switchedCurrent = Math.max(startCurrent, reversingCurrent ?? 0)
  const timeConstant = inductance === null ? null : (inductance * stallCurrent) / supplyVoltage
  const fieldEnergy = inductance === null ? null : (inductance * switchedCurrent ** 2) / 2
  const over = (of: (s: SwitchSi) => number) => Math.max(...switches.map(of))
  return {
    resistance,
    drop,
    motorVoltage: supplyVoltage - drop,
    endDrop,
    heat: drop * runningCurrent,
    startCurrent,
    reversingCurrent,
    switchedCurrent,
    brakingCurrent: si.whenOpened === "brakes" ? stallCurrent - runningCurrent : null,
    timeConstant,
    fieldEnergy,
    utilisation: over((s) => switchedCurrent / switchable(s)),
    carryingUtilisation: over((s) => runningCurrent / s.ratedCurrent),
    voltageUtilisation: over((s) => supplyVoltage / s.ratedVoltage),
    arcUtilisation: timeConstant === null ? null : over((s) => timeConstant / triedWith(s)),
    standbyPower: supplyVoltage * standbyCurrent(si),
    pumpedVoltage:
      driver === null ? null : Math.sqrt(supplyVoltage ** 2 + (2 * ((fieldEnergy ?? 0) + driver.returnedEnergy)) / driver.inputCapacitance),
    runOn: moving === null ? null : moving.tipSpeed * (moving.reactionDuration + moving.stoppingDuration / 2),
  }
}
