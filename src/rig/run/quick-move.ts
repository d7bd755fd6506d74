// A motion out and back, fast.
import type { RigSi } from "../whole/faults.js"
import type { Members } from "../whole/fields.js"
import { feedOf, motionIndex, situation } from "./move.js"
import { type QuickMove, quickRide } from "./quick.js"
import { ride } from "./ride.js"

export type { QuickMove } from "./quick.js"

/** Both ways of the motion asked about; null where something stops either. */
export function quickMoveOf(
  members: Members,
  rig: RigSi & { readonly motion: string | null },
  rough: boolean,
): { readonly out: QuickMove; readonly back: QuickMove } | null {
  const at = situation(members, rig)
  const index = motionIndex(rig)
  const motion = at.motions[index]
  if (!motion) return null
  const feed = feedOf(at, index)
  const out = quickRide(ride(motion, 1, at.around, feed), rough)
  const back = out && quickRide(ride(motion, -1, at.around, feed), rough)
  return out && back ? { out, back } : null
}
