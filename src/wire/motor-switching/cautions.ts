// Hazards of the switches in a motor's path.
import { type Caution, caution, commonPractice } from "../../solver/index.js"
import { touchCaution } from "../conductor.js"
import { CONTACT_CATEGORIES, EMERGENCY_STOP, MACHINE_WIRING } from "../sources.js"
import { bridged } from "./kernel.js"
import type { MotorSwitching, MotorSwitchingCaution, Si } from "./types.js"

export function motorSwitchingCautions(si: Si, out: MotorSwitching): Caution<MotorSwitchingCaution>[] {
  return [...stopping(si, out), ...ofContacts(si, out), ...touchCaution("given.supplyVoltage", si.supplyVoltage), ...ofLimits(si, out)]
}

/** What happens, and what does not, when somebody wants it stopped. */
function stopping(si: Si, out: MotorSwitching): Caution<MotorSwitchingCaution>[] {
  const found: Caution<MotorSwitchingCaution>[] = [
    caution(
      "welded-contact",
      "note",
      "A single contact can weld shut and then opens nothing: try every stop before each use, fuse the supply, and where people can be hurt let a qualified person decide under the local rules how many contacts it takes.",
      MACHINE_WIRING,
    ),
  ]
  if (si.emergencyStop === "none")
    found.push(
      caution(
        "no-emergency-stop",
        "warning",
        "Nothing stops the motor at once: put a latching emergency stop, red on yellow, where wearer and helper reach it, that opens the motor's supply itself.",
        EMERGENCY_STOP,
      ),
    )
  if (si.emergencyStop === "signal-only")
    found.push(
      caution(
        "stop-by-signal",
        "warning",
        "The stop only tells a controller to stop: a hung controller or a failed driver goes on. An emergency stop takes the power away itself, at once or after a braked stop, and stays off until it is unlatched and started anew.",
        EMERGENCY_STOP,
      ),
    )
  if (!si.holdsUnpowered)
    found.push(
      si.whenOpened === "coasts"
        ? caution(
            "stop-lets-go",
            "warning",
            "With a switch open nothing holds the load: stopping lets it run on, fall or swing. Give it a brake, a latch or a gear that locks before anybody may be under it, and try the stop at every pose.",
            EMERGENCY_STOP,
          )
        : caution(
            "brake-does-not-hold",
            "warning",
            "With its leads joined the motor brakes by its own current, which slows a load and holds nothing still: it creeps down. Nothing may hang over people on that alone; use a brake, a latch or a gear that locks.",
            EMERGENCY_STOP,
          ),
    )
  if (si.switches.some((s) => s.type === "relay" && s.latching))
    found.push(
      caution(
        "latching-relay",
        "warning",
        "A latching relay stays closed when its coil loses power: a broken wire, a flat controller battery or an opened coil leaves the motor running. Use a relay that falls open without power.",
        MACHINE_WIRING,
      ),
    )
  if (out.runOn !== null)
    found.push(
      caution(
        "runs-on",
        "caution",
        "From the need to stop until it stands the fastest point goes on by {runOn length}: keep that far from people, or make it slower.",
        EMERGENCY_STOP,
        { runOn: out.runOn },
      ),
    )
  if (si.driver !== null && (out.pumpedVoltage as number) > si.driver.voltageLimit)
    found.push(
      caution(
        "pumps-up",
        "warning",
        "Opened ahead of the driver, a switch leaves it what the motor sends back: its supply rises to {pumpedVoltage voltage}, above the {given.driver.voltageLimit voltage} that it bears, and a burnt driver can leave the motor on. Put a clamp or more capacitance across the driver's supply, or let the motor stop before the switch opens.",
        commonPractice,
        { pumpedVoltage: out.pumpedVoltage as number, "given.driver.voltageLimit": si.driver.voltageLimit },
      ),
    )
  return found
}

/** Ratings of the contacts against what they carry and switch. */
function ofContacts(si: Si, out: MotorSwitching): Caution<MotorSwitchingCaution>[] {
  const found: Caution<MotorSwitchingCaution>[] = []
  if (out.utilisation > 1)
    found.push(
      caution(
        "over-rating",
        "warning",
        "A contact may have to make or break {switchedCurrent current}, {utilisation ratio %} of what its category allows: it burns or welds shut. Take one of category DC-3 or with a larger rating, limit the current, or let a driver do the switching.",
        CONTACT_CATEGORIES,
        { switchedCurrent: out.switchedCurrent, utilisation: out.utilisation },
      ),
    )
  if (out.carryingUtilisation > 1)
    found.push(
      caution(
        "over-current",
        "warning",
        "A contact carries {given.runningCurrent current} for long, {carryingUtilisation ratio %} of its rated current: it overheats. Take a larger one.",
        CONTACT_CATEGORIES,
        { "given.runningCurrent": si.runningCurrent, carryingUtilisation: out.carryingUtilisation },
      ),
    )
  if (out.voltageUtilisation > 1)
    found.push(
      caution(
        "over-voltage",
        "warning",
        "The supply of {given.supplyVoltage voltage} is above the direct voltage that a contact is rated for: its arc may not go out, which can set it on fire. A rating for mains says nothing about direct voltage.",
        CONTACT_CATEGORIES,
        { "given.supplyVoltage": si.supplyVoltage },
      ),
    )
  if (out.arcUtilisation !== null && out.arcUtilisation > 1)
    found.push(
      caution(
        "arc-outlasts-rating",
        "caution",
        "The motor's current dies away with {timeConstant time}, slower than a contact's category is tried with ({arcUtilisation ratio %} of it): its arc lasts longer and wears it sooner. Take a contact rated for motors or magnets, or a suppressor that its maker names.",
        CONTACT_CATEGORIES,
        { timeConstant: out.timeConstant as number, arcUtilisation: out.arcUtilisation },
      ),
    )
  if (si.driver !== null)
    found.push(
      caution(
        "closes-on-capacitor",
        "caution",
        "Closing a switch fills the driver's empty {given.driver.inputCapacitance capacitance} with a surge that only wires and source hold down: it is not in the currents here and can weld a contact, the stop's too. Fill it through a resistor first or take a contact rated for such a surge, and try after each start that the stop still opens.",
        commonPractice,
        { "given.driver.inputCapacitance": si.driver.inputCapacitance },
      ),
    )
  if (out.reversingCurrent !== null)
    found.push(
      caution(
        "reverses-at-speed",
        "caution",
        "Turned over while the motor runs, the reversing switch lets {reversingCurrent current} flow, up to twice the stall current, and jerks everything behind it. Pause in the middle until it stands, or interlock it.",
        commonPractice,
        { reversingCurrent: out.reversingCurrent },
      ),
    )
  return found
}

/** What limit switches leave open. */
function ofLimits(si: Si, out: MotorSwitching): Caution<MotorSwitchingCaution>[] {
  const limits = si.switches.filter((s) => s.type === "limit-switch")
  if (limits.length === 0) return []
  const found: Caution<MotorSwitchingCaution>[] = [
    caution(
      "limit-not-safe",
      "caution",
      "A limit switch fails unseen: a bent lever or a welded contact lets the motor run into its end. Have a mechanical stop behind it that takes the stalled drive, use a contact that opens at the end so that a broken wire stops the motor, and never count on it alone to keep people from harm.",
      MACHINE_WIRING,
    ),
  ]
  if (bridged(si).length > 0)
    found.push(
      caution(
        "limit-diodes",
        "note",
        "Coming back from an end the diode across the limit switch carries the whole motor current, {startCurrent current} as it starts, until the switch closes: rate it for that, put it the way round that only lets the motor back, and try both ends.",
        commonPractice,
        { startCurrent: out.startCurrent },
      ),
    )
  if (bridged(si).length < limits.length)
    found.push(
      caution(
        "stuck-at-end",
        "note",
        "A limit switch without a diode across it opens both ways: the motor cannot come back from that end by reversing. Put a diode across it that lets the motor back, or let a controller read the switch and keep it out of the motor's path.",
        commonPractice,
      ),
    )
  return found
}
