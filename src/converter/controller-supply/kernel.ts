// What controller and receiver get while the motors start.
import type { ControllerSupply, Si } from "./types.js"

/** Motors' supply at a motor current; the converter takes constant power, and the higher of both balances is the stable one. */
function busAt(si: Si, open: number, motors: number): { bus: number; controller: number } {
  const { sourceResistance: r, controllerCurrent, feed } = si
  const stiff = open - r * motors
  if (feed.type !== "switching") {
    const bus = Math.max(0, stiff - r * controllerCurrent)
    return { bus, controller: feed.type === "direct" ? bus : Math.min(feed.outputVoltage, Math.max(0, bus - feed.dropout)) }
  }
  const power = (feed.outputVoltage * controllerCurrent) / feed.efficiency
  const under = stiff ** 2 - 4 * r * power
  const bus = under < 0 ? 0 : (stiff + Math.sqrt(under)) / 2
  // switched off it takes nothing, and the supply recovers to what the motors leave
  return bus >= feed.minInputVoltage ? { bus, controller: feed.outputVoltage } : { bus: stiff, controller: 0 }
}

/** Supply that the controller needs so as not to reset, and the current that its feed then takes. */
export function needOf({ feed, resetVoltage, controllerCurrent }: Si): { voltage: number; current: number } {
  if (feed.type === "direct") return { voltage: resetVoltage, current: controllerCurrent }
  if (feed.type === "linear") return { voltage: resetVoltage + feed.dropout, current: controllerCurrent }
  const voltage = feed.minInputVoltage
  return { voltage, current: (feed.outputVoltage * controllerCurrent) / feed.efficiency / voltage }
}

export function solve(si: Si): ControllerSupply {
  const { sourceVoltage, sourceResistance, motorCurrent, supplyWindow, signal, feed, resetVoltage } = si
  const [rest, dip] = [busAt(si, sourceVoltage.low, 0), busAt(si, sourceVoltage.low, motorCurrent)]
  const controllerMaxVoltage = feed.type === "direct" ? sourceVoltage.high : feed.outputVoltage
  const need = needOf(si)
  const groundShift = signal === null ? null : motorCurrent * signal.groundResistance
  return {
    restVoltage: rest.bus,
    dipVoltage: dip.bus,
    controllerRestVoltage: rest.controller,
    controllerDipVoltage: dip.controller,
    controllerMaxVoltage,
    resetMargin: dip.controller - resetVoltage,
    lowMargin: dip.controller - supplyWindow.low,
    highMargin: supplyWindow.high - controllerMaxVoltage,
    maxMotorCurrent: (sourceVoltage.low - need.voltage) / sourceResistance - need.current,
    groundShift,
    signalHighMargin: signal === null ? null : signal.highOutput - signal.highThreshold - (groundShift as number),
    signalLowMargin: signal === null ? null : signal.lowThreshold - signal.lowOutput - (groundShift as number),
  }
}
