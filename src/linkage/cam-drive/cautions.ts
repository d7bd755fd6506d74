// Hazards and limits of a cam, and faults between its fields.

import { type Caution, caution, type Issue, inconsistent } from "../../solver/index.js"
import { fallsCaution, pinchCaution } from "../hazards.js"
import { camLaws, storedEnergySource } from "../sources.js"
import type { CamDrive, CamDriveCaution, Si } from "./types.js"

/** Pressure angle that usual practice keeps a sliding follower below, rad. */
const USUAL_PRESSURE = Math.PI / 6

export function camCautions(si: Si, { rise }: CamDrive) {
  const { maxPressureAngle, minContact } = rise
  const limit = Math.min(si.pressureLimit, USUAL_PRESSURE)
  return [
    pinchCaution("Cam, roller and guide"),
    ...(maxPressureAngle > limit
      ? [
          caution(
            "large-pressure-angle",
            "caution",
            "The pressure angle comes to {rise.maxPressureAngle angle °}, above {limit angle °}: the follower is pushed sideways more than up, wears its guide and can jam. A larger prime radius, a longer rise or a smaller lift brings it down.",
            camLaws,
            { "rise.maxPressureAngle": maxPressureAngle, limit },
          ),
        ]
      : []),
    ...(minContact < 0
      ? [
          caution(
            "follower-lifts",
            "warning",
            "At this speed the follower leaves the cam: {rise.minContact force} are missing to hold it down, and it strikes on its way back. Turn the cam more slowly or fit a stronger return spring.",
            camLaws,
            { "rise.minContact": minContact },
          ),
        ]
      : []),
    ...(si.preload > 0 || si.springRate > 0
      ? [
          caution(
            "stored-energy",
            "warning",
            "The return spring drives follower and cam back by itself when the cam is let go, with or without power: keep fingers out, and relax the spring before taking anything apart.",
            storedEnergySource,
          ),
        ]
      : []),
    ...(si.load > 0 || si.followerMass > 0 ? [fallsCaution("What the follower carries")] : []),
    ...(si.law === "uniform" || si.law === "parabolic" || si.law === "harmonic"
      ? [
          caution(
            "jolts",
            "note",
            "This law begins and ends its rise with a jolt: take it for slow movements alone, or a cycloidal or polynomial rise.",
            camLaws,
          ),
        ]
      : []),
  ] satisfies Caution<CamDriveCaution>[]
}

/** Share of the prime radius by which the slide line may miss the cam centre: farther out the cam has no outward bend to speak of. */
const MOST_OFFSET = 0.9

export function camFaults(si: Si): Issue[] {
  const found: Issue[] = []
  if (si.camAngle > si.riseAngle)
    found.push(
      inconsistent(["camAngle"], "{camAngle angle °}", "at most {riseAngle angle °}, where the rise ends", {
        camAngle: si.camAngle,
        riseAngle: si.riseAngle,
      }),
    )
  const most = MOST_OFFSET * si.primeRadius
  if (Math.abs(si.offset) >= most)
    found.push(
      inconsistent(["offset"], "{offset length}", "less than {most length}, nine tenths of the prime radius, to either side", {
        offset: si.offset,
        most,
      }),
    )
  if (si.rollerRadius >= si.primeRadius)
    found.push(
      inconsistent(["rollerRadius"], "{rollerRadius length}", "less than {primeRadius length}, the prime radius", {
        rollerRadius: si.rollerRadius,
        primeRadius: si.primeRadius,
      }),
    )
  return found
}
