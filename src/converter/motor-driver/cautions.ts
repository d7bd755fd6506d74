// Hazards and limits of a motor driver.
import { type Caution, caution, commonPractice } from "../../solver/index.js"
import { heatCautions, touchCautions } from "../hazards.js"
import { IEC_60204 } from "../sources.js"
import type { MotorDriver, MotorDriverCaution, Si } from "./types.js"

export function motorDriverCautions(si: Si, out: MotorDriver): Caution<MotorDriverCaution>[] {
  const found: Caution<MotorDriverCaution>[] = [
    ...touchCautions(si.supplyVoltage),
    ...heatCautions(out.heat),
    caution(
      "enable-is-no-stop",
      "warning",
      "Disabling the driver by a signal is no emergency stop: a failed bridge, a hung controller or a broken wire leaves the motor running. Put a switch or contact that opens the motor's supply within reach of wearer and helper, and have it checked by a qualified person under the local rules.",
      IEC_60204,
    ),
    si.whenDisabled === "coasts"
      ? caution(
          "coasts",
          "warning",
          "Disabled, or without power, the motor coasts: it runs on, and what it held up comes down. Nothing may hang over people on such a driver alone; use a brake, a latch or a gear that locks.",
          IEC_60204,
        )
      : caution(
          "brake-does-not-hold",
          "warning",
          "Disabled, the motor brakes by its own current, which slows it and holds nothing still: a load creeps down, and falls free when the driver loses its supply. Nothing may hang over people on such a driver alone; use a brake, a latch or a gear that locks.",
          IEC_60204,
        ),
  ]
  if (out.utilisation !== null && out.utilisation > 1)
    found.push(
      caution(
        "over-rating",
        "warning",
        "{given.current current} is more than the {given.ratedCurrent current} that the driver carries for long: it overheats, switches off, and starts again by itself when cool. Take a larger driver, or cool it as its datasheet asks.",
        commonPractice,
        { "given.current": si.current, "given.ratedCurrent": si.ratedCurrent as number },
      ),
    )
  if (si.currentLimit === null)
    found.push(
      caution(
        "limit-unknown",
        "note",
        "No current limit is given: look up at which current the driver limits or switches off, and whether it comes back by itself. The current printed in a title is often its peak, not what it carries for long.",
      ),
    )
  else if (out.startCurrent !== null && Math.max(out.startCurrent, out.reversingCurrent ?? 0) > si.currentLimit)
    found.push(
      caution(
        "limits-at-stall",
        "caution",
        "The motor would take {startCurrent current} from standstill and {reversingCurrent current} on reversing at speed, the driver gives {given.currentLimit current}: it starts weaker, or the driver switches off. Ramp it up, let it stop before it reverses, and see what a stuck arm does.",
        commonPractice,
        { startCurrent: out.startCurrent, reversingCurrent: out.reversingCurrent as number, "given.currentLimit": si.currentLimit },
      ),
    )
  if (out.chipTemperature !== null && out.chipTemperature > si.chipTemperatureLimit)
    found.push(
      caution(
        "overheating",
        "warning",
        "The chip would reach {chipTemperature temperature °C} and switches off at {given.chipTemperatureLimit temperature °C}: the motor stops in mid move and may start again by itself. Give it a larger copper area or heat sink, or less current.",
        commonPractice,
        { chipTemperature: out.chipTemperature, "given.chipTemperatureLimit": si.chipTemperatureLimit },
      ),
    )
  if (out.brakingCurrent !== null && out.brakingCurrent > 0)
    found.push(
      caution(
        "returns-current",
        "caution",
        "A motor that is slowed or driven by its load sends current back: up to {brakingCurrent current} circulate as it is braked, and what goes into a supply that cannot take it raises its voltage. Put a clamp or enough capacitance at the driver.",
        commonPractice,
        { brakingCurrent: out.brakingCurrent },
      ),
    )
  return found
}
