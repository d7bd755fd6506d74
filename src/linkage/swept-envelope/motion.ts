import { type NoSolution, refuse } from "../../solver/index.js"
import type { MechanismSi } from "../planar/data.js"
import type { Model } from "../planar/model.js"
import { mechanismMotion } from "../planar/motion.js"
import type { Pose } from "../planar/solve.js"
import { stray } from "./strips.js"
import type { SweptEnvelopeRefusal } from "./types.js"

/** Poses of a motion close enough together for what lies between them to be known. */
export interface SweptMotion {
  readonly model: Model
  readonly poses: readonly Pose[]
  /** How far a point can stray from the straight line between two poses, m. */
  readonly allowance: number
  /** Poses calculated for one that was asked for. */
  readonly every: number
}

/** What the kernel found on its way, for the formulae. */
export interface SweptTrace {
  readonly moved: SweptMotion
  /** Rate of each driver. */
  readonly rates: readonly number[]
}

/** Poses at least, and at most. */
const FEWEST = 32
const MOST = 2048
/** Where poses are close, half the distance leaves a quarter of the stray; up to this much counts as close. */
const RESOLVED = 0.3
/** Stray beside the size of the mechanism that no outline shows. */
const NEGLIGIBLE = 1e-6

/** Halves the steps between the poses asked for until the stray falls as it does on a smooth path. */
export function sweptMotion(si: MechanismSi & { readonly steps: number }): SweptMotion | NoSolution<SweptEnvelopeRefusal> {
  const asked = 2 * si.steps
  let before: number | null = null
  for (let every = 1; ; every *= 2) {
    const count = asked * every
    if (2 * count < FEWEST) continue
    const moved = mechanismMotion(si, count)
    if ("noSolution" in moved) return moved
    const allowance = stray(moved.model, moved.poses)
    const negligible = NEGLIGIBLE * moved.model.size
    if (before !== null && (allowance <= RESOLVED * before || allowance <= negligible)) return { ...moved, allowance, every }
    if (before !== null && 2 * count > MOST)
      return refuse(
        "unresolved",
        "With {poses} poses the path between them is uncertain by {shortBy length} more than a smooth one would be: somewhere the motion turns too sharply, or it goes round too often. Keep the drivers away from dead points, or ask for less of the motion.",
        // no more than two figures of it mean anything
        Number((allowance - Math.max(negligible, RESOLVED * before)).toPrecision(2)),
        { poses: count },
      )
    before = allowance
  }
}
