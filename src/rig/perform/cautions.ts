// Hazards that go with a performance, and where its model ends.
import { type Caution, caution, commonPractice } from "../../solver/index.js"
import { MACHINERY_SAFETY, MOTION, PORTABLE_CELLS, REDUCED_SPEED } from "../sources.js"
import { buildMotion } from "../whole/faults.js"
import type { Members } from "../whole/fields.js"
import { QUICKEST_START } from "./machine.js"
import type { Perform, PerformCaution, PerformSi } from "./types.js"

/** Speed above which a tip that strikes its stop is told, m/s: the reduced speed at which people may be near a machine. */
export const REDUCED = 0.25
/** By how much a step may differ from its time without inertia before that is told; common practice, no source. */
const AS_SLOW = 0.05

export function performCautions(members: Members, rig: PerformSi, out: Perform): Caution<PerformCaution>[] {
  const found: Caution<PerformCaution>[] = [
    caution(
      "pinch",
      "warning",
      "Arms, lines and drives close with the force shown: keep fingers, hair and children clear, and fit a switch in reach that stops them.",
      MACHINERY_SAFETY,
    ),
  ]
  const hardest = out.events.filter((e) => e.type === "strikes").reduce((a, e) => Math.max(a, e.speed ?? 0), 0)
  if (hardest > REDUCED)
    found.push(
      caution(
        "strikes",
        "warning",
        "A tip comes to its stop at up to {speed speed}; people may be near at no more than {limit speed}. Slow it down before its end, cushion the stop, and keep people out of its way.",
        REDUCED_SPEED,
        { speed: hardest, limit: REDUCED },
      ),
    )
  const unknown = rig.motions.filter((motion) => {
    const { drive } = buildMotion(members, motion, [])
    return drive !== null && drive.inertia < (QUICKEST_START * drive.backEmfConstant ** 2) / drive.windingResistance
  }).length
  if (unknown)
    found.push(
      caution(
        "inertia-unknown",
        "caution",
        "{unknown} of the motions have drives without an inertia, or with too little for any motor: they are followed with what brings a motor to speed in {start time ms}. Starts take longer and blows at the stops are harder: give their inertia, or measure how long they take to speed.",
        commonPractice,
        { unknown, start: QUICKEST_START },
      ),
    )
  if (out.events.some((e) => e.type === "slack"))
    found.push(
      caution(
        "slack",
        "caution",
        "A line goes slack: it is calculated as if it still pushed, so that what hangs on it may lag behind and come back with a jerk. Slow the motion down, or add a spring.",
        MOTION,
      ),
    )
  const apart = out.steps.reduce(
    (most, { duration, quasiStatic }) => (duration && quasiStatic ? Math.max(most, Math.abs(duration / quasiStatic - 1)) : most),
    0,
  )
  if (apart > AS_SLOW)
    found.push(
      caution(
        "not-as-slow",
        "note",
        "A step takes a time {apart ratio %} off the one found without inertia and with all else drawing its most: that one is no longer good for it.",
        MOTION,
        { apart },
      ),
    )
  if (rig.power === null || rig.motions.some((m) => m.bus === null))
    found.push(
      caution(
        "no-supply-stated",
        "caution",
        "No supply is named for some of the motions: they run at their rated voltage, which a real supply seldom holds.",
        commonPractice,
      ),
    )
  if (rig.power?.sources.some((s) => s.type !== "mains-supply"))
    found.push(
      caution(
        "cells",
        "warning",
        "Cells feed a short circuit with hundreds of amperes: fuse at the pack, protection circuit, no damaged cells, no charging below 0 °C or unattended.",
        PORTABLE_CELLS,
      ),
    )
  return found
}
