// What becomes of a motion that loses its power: how it runs down from where it lets go, and the caution that goes with it.
import { type Caution, caution, commonPractice } from "../../solver/index.js"
import {
  coordinatesAt,
  effortAt,
  effortState,
  type MotionModel,
  type MovedPart,
  placedParts,
  type Surroundings,
  slopesAt,
  type Way,
} from "./motion-model.js"

/** The caution about a motion that its drive does not hold, by the effort that one drive has to hold (N or N·m). */
export function fallsUnpowered({ drive }: MotionModel, held: number): Caution<"falls-unpowered"> {
  const values = { held, holds: drive.holdingEffort }
  return drive.travel === "length"
    ? caution(
        "falls-unpowered",
        "warning",
        "Without power each rod must hold up to {held force}, friction not counted, and its stated holding force is {holds force}: what it moves may come down by itself, or run away on the way back. Keep people clear of it.",
        commonPractice,
        values,
      )
    : caution(
        "falls-unpowered",
        "warning",
        "Without power each shaft must hold up to {held moment}, friction not counted, and its stated holding torque is {holds moment}: what it moves may come down by itself, or run away on the way back. Keep people clear of it.",
        commonPractice,
        values,
      )
}

/** The worst fall of one part of a motion: its fastest tip, and all that moves then. */
export interface Fall {
  readonly way: Way
  /** Travel of the drive where it lets go, and where its tip is fastest. */
  readonly from: number
  readonly to: number
  readonly part: MovedPart
  readonly tipSpeed: number
  /** Energy of motion of everything that falls with it, J. */
  readonly energy: number
  readonly armLength: number
  readonly armMass: number
  /** Moment about its hinge with which it presses where it comes to rest, N·m. */
  readonly weightMoment: number
}

/** Steps in which a fall is followed. */
const STEPS = 120

/** How a motion runs down: the fastest fall of each part that moves, none where it stays. */
export interface Falls {
  readonly falls: readonly Fall[]
  /** Whether something drives it along though nothing in it has a mass: how fast it runs is not known. */
  readonly massless: boolean
}

/**
 * The fastest fall of each part of a motion let go anywhere at rest: what drives it along is summed over the travel as energy of
 * motion, with the friction of mechanisms and transmission, and the drive's own friction not counted.
 */
export function worstFalls(motion: MotionModel, around: Surroundings): Falls {
  const state = effortState()
  const { span, drives, parts } = motion
  const placed = placedParts(motion, around)
  const worst = new Map<MovedPart, Fall>()
  let massless = false
  for (const way of [-1, 1] as const) {
    // energy gained since the start of the way; the lowest so far is where letting go gives the most
    let [gained, least, leastAt, before] = [0, 0, 0, Number.NaN]
    for (let k = 0; k <= STEPS; k++) {
      const s = (span * k) / STEPS
      const travel = way === 1 ? s : span - s
      effortAt(motion, travel, way, around, state)
      if (state.trouble !== "none") {
        ;[gained, least, leastAt, before] = [0, 0, s + span / STEPS, Number.NaN]
        continue
      }
      if (!Number.isNaN(before)) gained -= (((before + state.effort) / 2) * span) / STEPS
      before = state.effort
      if (gained < least) [least, leastAt] = [gained, s]
      const each = gained - least
      if (!(each > 0)) continue
      if (!(state.inertia > 0)) {
        massless = true
        continue
      }
      const rate = Math.sqrt((2 * each) / state.inertia)
      const { effort } = state
      const q = coordinatesAt(motion, travel)
      const slopes = slopesAt(motion, travel)
      for (const [i, part] of parts.entries()) {
        const pose = (placed[i] as MovedPart).mechanism.pose(q[i] as number)
        const perTravel = Math.abs(slopes[i] as number) * Math.hypot(...pose.tipRate)
        const tipSpeed = rate * perTravel
        if (!Number.isFinite(tipSpeed) || tipSpeed <= (worst.get(part)?.tipSpeed ?? 0)) continue
        const hinge = pose.pins[0]?.at ?? pose.centre
        const armLength = Math.hypot(pose.tip[0] - hinge[0], pose.tip[1] - hinge[1], pose.tip[2] - hinge[2])
        worst.set(part, {
          way,
          from: way === 1 ? leastAt : span - leastAt,
          to: travel,
          part,
          tipSpeed,
          energy: each * drives,
          armLength,
          armMass: pose.mass,
          weightMoment: (Math.max(0, -effort) * drives * armLength) / perTravel,
        })
      }
    }
  }
  return { falls: [...worst.values()], massless }
}
