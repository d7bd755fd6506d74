// A motion out and back, fast.
import type { RigSi } from "../whole/faults.js"
import type { Members } from "../whole/fields.js"
import type { Way } from "./motion-model.js"
import { QUICK_LOOKS, type QuickMove, quickRide, roughRide } from "./quick.js"
import { feedOf, motionIndex, rideOf, situation, untabled } from "./situation.js"
import { slowestStand } from "./slowest.js"

export type { QuickMove } from "./quick.js"

/** Both ways of the motion asked about, the others standing where it is slowest; null where something stops either. */
export function quickMoveOf(
  members: Members,
  rig: RigSi & { readonly motion: string | null },
  rough: boolean,
): { readonly out: QuickMove; readonly back: QuickMove } | null {
  const index = motionIndex(rig)
  const at = situation(members, rig, QUICK_LOOKS, slowestStand(members, rig, index).stand)
  if (!at.motions[index]) return null
  const feed = feedOf(at, index)
  const one = (way: Way) => (rough ? roughRide(untabled(at, index, way, feed)) : quickRide(rideOf(at, index, way, feed)).quick)
  const out = one(1)
  const back = out && one(-1)
  return out && back ? { out, back } : null
}
