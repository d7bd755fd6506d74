// Hazards and limits of a controller's supply.
import { type Caution, caution, commonPractice } from "../../solver/index.js"
import { IEC_60204 } from "../sources.js"
import type { ControllerSupply, ControllerSupplyCaution, Si } from "./types.js"

/** Share of the reset voltage that should be left above it: tolerance, a cold battery and a slow reading. */
const WANTED = 0.1

export function controllerSupplyCautions(si: Si, out: ControllerSupply): Caution<ControllerSupplyCaution>[] {
  const found: Caution<ControllerSupplyCaution>[] = [
    caution(
      "lost-link",
      "warning",
      "A receiver that loses its link, and a controller that restarts, can hold the last command or make one up: set each output to stop on both, switch the transmitter off to see that it does, and keep a switch that cuts the motors' supply within reach of wearer and helper.",
      IEC_60204,
    ),
    caution(
      "spikes",
      "note",
      "Steady figures are compared here. Spikes from brushes and long wires come on top: put the capacitors that its datasheet asks for at the controller, and measure its supply with a scope while the motors start and stall.",
    ),
  ]
  if (out.resetMargin < 0)
    found.push(
      caution(
        "resets",
        "warning",
        "The controller is down to {controllerDipVoltage voltage} while the motors start and resets at {given.resetVoltage voltage}: what it moved stops or runs on, and may move again by itself as it comes back. Feed it from cells of its own or a converter that works down to {dipVoltage voltage}, or start the motors one after the other.",
        IEC_60204,
        { controllerDipVoltage: out.controllerDipVoltage, "given.resetVoltage": si.resetVoltage, dipVoltage: out.dipVoltage },
      ),
    )
  else if (out.resetMargin < WANTED * si.resetVoltage)
    found.push(
      caution(
        "thin-margin",
        "caution",
        "Only {resetMargin voltage} are left above the reset while the motors start; a cold or old battery and a tired contact use that up. Leave a tenth of the reset voltage at least.",
        commonPractice,
        { resetMargin: out.resetMargin },
      ),
    )
  if (out.resetMargin >= 0 && out.lowMargin < 0)
    found.push(
      caution(
        "below-window",
        "warning",
        "At {controllerDipVoltage voltage} the controller is below the {given.supplyWindow.low voltage} that it is made for, and does not reset: it can do anything, moving what it should not. Set its reset higher, or keep its supply up.",
        IEC_60204,
        { controllerDipVoltage: out.controllerDipVoltage, "given.supplyWindow.low": si.supplyWindow.low },
      ),
    )
  if (out.highMargin < 0)
    found.push(
      caution(
        "over-voltage",
        "warning",
        "Freshly charged, the controller gets {controllerMaxVoltage voltage} and bears {given.supplyWindow.high voltage}: it is destroyed, and its outputs can stay on. Put a regulator before it.",
        commonPractice,
        { controllerMaxVoltage: out.controllerMaxVoltage, "given.supplyWindow.high": si.supplyWindow.high },
      ),
    )
  if (out.groundShift !== null && Math.min(out.signalHighMargin as number, out.signalLowMargin as number) < 0)
    found.push(
      caution(
        "signal-lost",
        "warning",
        "With the ground moved by {groundShift voltage}, the signal can be read wrongly (margins {signalHighMargin voltage} for high, {signalLowMargin voltage} for low): motors may start or not stop. Give signals a ground wire that no motor current flows in, or match their levels.",
        commonPractice,
        {
          groundShift: out.groundShift,
          signalHighMargin: out.signalHighMargin as number,
          signalLowMargin: out.signalLowMargin as number,
        },
      ),
    )
  return found
}
