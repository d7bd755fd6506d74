// A motion out and back, fast.
import type { RigSi } from "../whole/faults.js"
import type { Members } from "../whole/fields.js"
import { QUICK_LOOKS, type QuickMove, quickRide, roughRide } from "./quick.js"
import type { Ride } from "./ride.js"
import { feedOf, motionIndex, rideOf, situation } from "./situation.js"

export type { QuickMove } from "./quick.js"

/** Both ways of the motion asked about; null where something stops either. */
export function quickMoveOf(
  members: Members,
  rig: RigSi & { readonly motion: string | null },
  rough: boolean,
): { readonly out: QuickMove; readonly back: QuickMove } | null {
  const at = situation(members, rig, QUICK_LOOKS)
  const index = motionIndex(rig)
  if (!at.motions[index]) return null
  const feed = feedOf(at, index)
  const one = rough ? roughRide : (ride: Ride) => quickRide(ride).quick
  const out = one(rideOf(at, index, 1, feed))
  const back = out && one(rideOf(at, index, -1, feed))
  return out && back ? { out, back } : null
}
