// Hazards and limits of a folding chain, and faults between its fields.

import { type Caution, caution, type Issue, inconsistent } from "../../solver/index.js"
import { fallsCaution, pinchCaution } from "../hazards.js"
import { equilibrium, reachSource, storedEnergySource } from "../sources.js"
import type { FoldingChain, FoldingChainCaution, Si } from "./types.js"

export function chainCautions(si: Si, out: FoldingChain) {
  const { maxReach, maxEffort } = out
  const sideMoment = Math.max(...out.joints.map((joint) => joint.sideMoment))
  const [first, ...others] = out.poses.map((pose) => pose.effort)
  const reverses = others.some((effort) => effort * (first as number) < 0)
  return [
    pinchCaution("Segments that fold onto one another"),
    caution(
      "tip-sweeps",
      "warning",
      "Parts of the chain sweep out to {maxReach length} from its first joint, at a child's face as easily as at a shoulder: round and pad every edge and tip, let it move slowly, and let nobody stand within that reach while it moves.",
      reachSource,
      { maxReach },
    ),
    ...(maxEffort > 0 ? [fallsCaution("The chain")] : []),
    ...(reverses
      ? [
          caution(
            "effort-reverses",
            "caution",
            "The moment at the driver changes sign on the way: past that place the chain runs ahead of its driver through all play there is, and strikes. A brake, a self-locking drive or a spring that loads it one way keeps it in hand.",
            storedEnergySource,
          ),
        ]
      : []),
    ...(si.segments.some((s) => s.startsAt > 0 || s.endsAt < 1)
      ? [
          caution(
            "joints-in-turn",
            "note",
            "Joints begin or stop on the way: there the driver picks up or drops a part of the chain at once. Drive slowly past such places, or let the shares overlap.",
          ),
        ]
      : []),
    ...(sideMoment > 0
      ? [
          caution(
            "hinge-bends",
            "caution",
            "The plane of folding is not upright, so the hinges must bear up to {sideMoment moment} across their pins: two bearings well apart on each pin, and a check of segments and hinges in bending.",
            equilibrium,
            { sideMoment },
          ),
        ]
      : []),
  ] satisfies Caution<FoldingChainCaution>[]
}

export function chainFaults(si: Si): Issue[] {
  const frictionRadius = (si.pinFriction * si.pinDiameter) / 2
  return si.segments.flatMap((s, i) => {
    const [at, from, to] = [`segments.${i}`, s.startsAt, s.endsAt]
    const found: Issue[] = []
    if (to <= from) {
      const [received, expected]: string[] = [`{${at}.endsAt ratio %}`, `more than {${at}.startsAt ratio %}, where it begins`]
      found.push(
        inconsistent(["segments", i, "endsAt"], received as string, expected as string, { [`${at}.endsAt`]: to, [`${at}.startsAt`]: from }),
      )
    }
    if (s.driveRadius > 0 && s.driveRadius <= frictionRadius) {
      const received: string = `{${at}.driveRadius length}`
      found.push(
        inconsistent(
          ["segments", i, "driveRadius"],
          received,
          "more than {frictionRadius length}, the friction radius of the pin: within it no force turns the joint" as string,
          { [`${at}.driveRadius`]: s.driveRadius, frictionRadius },
        ),
      )
    }
    return found
  })
}
