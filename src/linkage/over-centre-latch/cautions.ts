// Hazards of an over-centre latch.

import { type Caution, caution } from "../../solver/index.js"
import { pinchCaution } from "../hazards.js"
import { snapOver, storedEnergySource } from "../sources.js"
import type { OverCentreLatch, OverCentreLatchCaution, Si } from "./types.js"

/** Angle past the snap-over point below which play and shaking can trip a latch, rad: three degrees. */
const LEAST_PAST = (3 * Math.PI) / 180

export function latchCautions(_: Si, out: OverCentreLatch) {
  const { snapAngle, storedEnergy, clockwise, counter } = out
  const past = Math.min(counter.angle - snapAngle, snapAngle - clockwise.angle)
  return [
    pinchCaution("Lever, stops and spring"),
    caution(
      "snaps-over",
      "warning",
      "Past {snapAngle angle °} from its dead centre the lever goes over by itself and strikes its stop with {clockwise.releasedEnergy energy} clockwise or {counter.releasedEnergy energy} counter-clockwise: keep fingers, hair and faces out of its sweep, cushion the stops, and let nothing that can hurt hang on the latch alone.",
      snapOver,
      { snapAngle, "clockwise.releasedEnergy": clockwise.releasedEnergy, "counter.releasedEnergy": counter.releasedEnergy },
    ),
    caution(
      "stored-energy",
      "warning",
      "The spring stores up to {storedEnergy energy} with or without power: fit and remove it with the lever on a stop, tether both its ends, and wear eye protection.",
      storedEnergySource,
      { storedEnergy },
    ),
    ...(past < LEAST_PAST
      ? [
          caution(
            "trips-by-little",
            "caution",
            "A stop lies only {past angle °} past the snap-over point: play, wear and shaking can use that up and the latch opens by itself. Set the stop farther over, or add a second catch.",
            undefined,
            { past },
          ),
        ]
      : []),
  ] satisfies Caution<OverCentreLatchCaution>[]
}
