// Faults between fields.
import { type Issue, inconsistent } from "../../solver/index.js"
import type { Si } from "./types.js"

export function controllerSupplyFaults(si: Si): Issue[] {
  const { sourceVoltage, sourceResistance, motorCurrent, controllerCurrent, supplyWindow, resetVoltage, feed, signal } = si
  const faults: Issue[] = []
  if (sourceVoltage.high < sourceVoltage.low)
    faults.push(
      inconsistent(
        ["sourceVoltage", "high"],
        "{sourceVoltage.high voltage}",
        "at least that at the lowest charge, {sourceVoltage.low voltage}",
        { "sourceVoltage.high": sourceVoltage.high, "sourceVoltage.low": sourceVoltage.low },
      ),
    )
  const most = sourceVoltage.low / sourceResistance
  if (motorCurrent + controllerCurrent >= most)
    faults.push(
      inconsistent(
        ["motorCurrent"],
        "{total current} with the controller's",
        "less than the {most current} that the source gives into a short circuit: take what the motors draw on this supply",
        { total: motorCurrent + controllerCurrent, most },
      ),
    )
  if (!(supplyWindow.low < supplyWindow.high))
    faults.push(
      inconsistent(["supplyWindow", "low"], "{supplyWindow.low voltage}", "less than the highest, {supplyWindow.high voltage}", {
        "supplyWindow.low": supplyWindow.low,
        "supplyWindow.high": supplyWindow.high,
      }),
    )
  if (resetVoltage > supplyWindow.high)
    faults.push(
      inconsistent(["resetVoltage"], "{resetVoltage voltage}", "at most the highest supply, {supplyWindow.high voltage}", {
        resetVoltage,
        "supplyWindow.high": supplyWindow.high,
      }),
    )
  if (feed.type !== "direct" && feed.outputVoltage <= resetVoltage)
    faults.push(
      inconsistent(
        ["feed", "outputVoltage"],
        "{feed.outputVoltage voltage}",
        "more than the {resetVoltage voltage} at which the controller resets",
        {
          "feed.outputVoltage": feed.outputVoltage,
          resetVoltage,
        },
      ),
    )
  if (signal !== null && !(signal.lowThreshold < signal.highThreshold))
    faults.push(
      inconsistent(
        ["signal", "lowThreshold"],
        "{signal.lowThreshold voltage}",
        "less than what is read as high, {signal.highThreshold voltage}",
        {
          "signal.lowThreshold": signal.lowThreshold,
          "signal.highThreshold": signal.highThreshold,
        },
      ),
    )
  return faults
}
