// Hazards of a motor behind gears: the motor's, the gears', and those of the two together.
import { type Caution, caution, commonPractice, type SiOf } from "../../solver/index.js"
import { cautions as motorCautions } from "../dc-motor/index.js"
import { cautions as gearCautions } from "../gear-train/cautions.js"
import type { Gearmotor, GearmotorCaution, GearmotorInput } from "./types.js"

export function cautions(si: SiOf<GearmotorInput>, out: Gearmotor): Caution<GearmotorCaution>[] {
  const found: Caution<GearmotorCaution>[] = [
    ...motorCautions(si, out),
    // whether a load drives it back is told here, the motor's friction counted
    ...gearCautions(si, out).filter((c) => c.code !== "drawn-in" && c.code !== "back-driven"),
  ]
  if (out.backDriveTorque !== null && Math.abs(si.torque) > out.backDriveTorque)
    found.push(
      caution(
        "back-driven",
        "warning",
        "Without power a load above {backDriveTorque moment} turns it back; with the leads joined this one would still come down at {shortedBackDriveSpeed angularSpeed rpm}. Use a brake, a latch or a counterbalance, and keep people clear of what falls.",
        commonPractice,
        { backDriveTorque: out.backDriveTorque, shortedBackDriveSpeed: out.shortedBackDriveSpeed },
      ),
    )
  // less torque than the drag alone asks: the load pulls
  if (out.motorTorque < si.dragTorque)
    found.push(
      caution(
        "runs-away",
        "warning",
        "The load pulls the motor along at {speed angularSpeed rpm}, faster than it runs unloaded ({noLoadSpeed angularSpeed rpm}): the motor no longer sets the pace. Use a brake, a worm or a counterbalance.",
        commonPractice,
        { speed: out.speed, noLoadSpeed: out.noLoadSpeed },
      ),
    )
  if (out.current < 0)
    found.push(
      caution(
        "returns-current",
        "caution",
        "The load drives the motor as a generator, and it sends {current current} back: cells take that, most converters and power banks do not, and the voltage then rises until something gives. Let the driver brake, or keep the load lighter.",
        commonPractice,
        { current: out.current },
      ),
    )
  return found
}
