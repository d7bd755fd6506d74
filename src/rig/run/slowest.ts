// Where the motions stand that carry a motion or that it carries, while it is slowest.
import type { RigSi } from "../whole/faults.js"
import type { Members } from "../whole/fields.js"
import { type NamedStand, rootsOf, type Stand, standName, standsOf } from "./carrying.js"
import { QUICK_LOOKS, quickRide } from "./quick.js"
import { assembled, feedOf, leaning, programmed, rideOf, type Situation } from "./situation.js"

/** Places where the others stand that count for a motion, each told once; one of no name where none do. */
export function standsFor(rig: RigSi, index: number): readonly NamedStand[] {
  const roots = rootsOf(rig)
  const counts = (i: number) => i !== index && roots[i] === roots[index]
  const named = standsOf(rig).map(({ stand }) => ({ stand, name: standName(rig, stand, counts) }))
  return named.filter(({ name }, k) => named.findIndex((one) => one.name === name) === k)
}

/** A rig put together while its motions stand somewhere. */
export const standingSo = (whole: Pick<Situation, "rig" | "motions">, stand: Stand, looks: number): Situation =>
  programmed(leaning(whole, { ...whole.rig.posture, stand }, looks))

/** The places at which a motion takes longest out and back; those that stop it come first. */
export function slowestStand(members: Members, rig: RigSi, index: number): NamedStand {
  const stands = standsFor(rig, index)
  const [first] = stands as [NamedStand]
  if (stands.length === 1) return first
  const whole = assembled(members, rig)
  const takes = ({ stand }: NamedStand) => {
    const at = standingSo(whole, stand, QUICK_LOOKS)
    const feed = feedOf(at, index)
    const seconds = ([1, -1] as const).map((way) => quickRide(rideOf(at, index, way, feed)).quick?.duration ?? Number.POSITIVE_INFINITY)
    return (seconds[0] as number) + (seconds[1] as number)
  }
  return stands.map((one) => ({ one, seconds: takes(one) })).reduce((a, b) => (b.seconds > a.seconds ? b : a)).one
}
