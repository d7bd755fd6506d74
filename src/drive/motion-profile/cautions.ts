// Hazards of a moving arm, and where a planned move ends to be the real one.

import { type Caution, caution, commonPractice, type SiOf } from "../../solver/index.js"
import { ISO_10218, ISO_13854 } from "../sources.js"
import type { MotionProfile, MotionProfileCaution, MotionProfileInput } from "./types.js"

/** Speed that machinery is held to while people are within its reach, m/s. */
const REDUCED = 0.25

export function cautions(_: SiOf<MotionProfileInput>, out: MotionProfile): Caution<MotionProfileCaution>[] {
  const found: Caution<MotionProfileCaution>[] = [
    caution(
      "pinch",
      "warning",
      "A moving arm crushes and shears at its hinge and its stops with {peakTorque moment} and the energy of its motion: leave gaps that no finger, hand or head fits, keep a switch within reach of wearer and helper, and have it checked by a qualified person under the local rules.",
      ISO_13854,
      { peakTorque: out.peakTorque },
    ),
  ]
  if (out.tipSpeed !== null && out.tipSpeed > REDUCED)
    found.push(
      caution(
        "strike",
        "warning",
        "The tip moves at up to {tipSpeed speed}: machinery is held to 0.25 m/s where people are within reach, and faces of children may be at its height. Slow it down, soften and round the tip, and keep its reach clear.",
        ISO_10218,
        { tipSpeed: out.tipSpeed },
      ),
    )
  if (Math.min(out.out.cruiseTorque, out.back.cruiseTorque) < 0)
    found.push(
      caution(
        "load-drives",
        "warning",
        "One way the load moves by itself and the drive has to hold it back: without power, brake or locking gears it falls. Check what holds it, and whether the supply accepts what comes back.",
        commonPractice,
      ),
    )
  if (out.peakJerk === null)
    found.push(
      caution(
        "sudden-start",
        "note",
        "With straight ramps the acceleration comes and goes at once: a springy arm swings past by up to as much again, so count on nearly twice the inertia's part of the torque in its root, or round the ramps.",
        commonPractice,
      ),
    )
  return found
}
