// Faults between fields.
import { type Issue, inconsistent } from "../../solver/index.js"
import type { Si } from "./types.js"

export function motorSwitchingFaults(si: Si): Issue[] {
  const { supplyVoltage, runningCurrent, stallCurrent, currentLimit, driver, switches } = si
  const faults: Issue[] = []
  if (stallCurrent < runningCurrent)
    faults.push(
      inconsistent(["stallCurrent"], "{stallCurrent current}", "at least the running current, {runningCurrent current}", {
        stallCurrent,
        runningCurrent,
      }),
    )
  if (currentLimit !== null && currentLimit < runningCurrent)
    faults.push(
      inconsistent(["currentLimit"], "{currentLimit current}", "at least the running current, {runningCurrent current}", {
        currentLimit,
        runningCurrent,
      }),
    )
  if (driver !== null && driver.voltageLimit < supplyVoltage)
    faults.push(
      inconsistent(["driver", "voltageLimit"], "{driver.voltageLimit voltage}", "at least the supply, {supplyVoltage voltage}", {
        "driver.voltageLimit": driver.voltageLimit,
        supplyVoltage,
      }),
    )
  if (si.emergencyStop === "opens-supply" && !switches.some((s) => s.type === "emergency-stop" || s.type === "relay"))
    faults.push(
      inconsistent(["emergencyStop"], "a stop that opens the supply", "an emergency stop or a relay among the switches that opens it"),
    )
  return faults
}
