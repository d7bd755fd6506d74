import { goldenMinimum } from "../../numeric/index.js"
import { jointLimits } from "./data-reach.js"

export type Vector = readonly [x: number, y: number, z: number]

const times = (a: Vector, k: number): Vector => [a[0] * k, a[1] * k, a[2] * k]
const plus = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]]
const dot = (a: Vector, b: Vector) => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
const cross = (a: Vector, b: Vector): Vector => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
export const lengthOf = (a: Vector): number => Math.hypot(...a)

/**
 * How far inside its limit the upper arm (unit direction, x forwards, z up) stands: it goes 45° behind the shoulders below
 * the horizontal, and less and less above, to none straight up (joined by a straight line; common practice).
 */
export function behindSlack(direction: Vector): number {
  return direction[0] + Math.sin(jointLimits.behind) * Math.min(1, 1 - direction[2])
}

/**
 * How far inside its limit the elbow bends: forwards, up, down or to the side, never backwards (stricter than people are
 * behind the neck and the back). `fore` is the unit direction of the forearm.
 */
export function bendSlack(upper: Vector, fore: Vector): number {
  return fore[0] - dot(fore, upper) * upper[0]
}

/** An arm's pose: where the elbow goes. */
export interface ArmPose {
  readonly elbow: Vector
  /** Unit direction of the upper arm. */
  readonly direction: Vector
  /** Lesser slack of {@link behindSlack} and {@link bendSlack}; negative where no way of holding the elbow is within both. */
  readonly slack: number
}

/**
 * Holds the hand at `hand` (from the shoulder) with bones `upper` and `fore`: among all turns of the elbow about the line
 * from shoulder to hand, the lowest elbow within the limits. The distance must be within the bones' reach.
 */
export function holdArm(hand: Vector, upper: number, fore: number): ArmPose {
  const distance = lengthOf(hand)
  const n = times(hand, 1 / distance)
  const along = (upper ** 2 - fore ** 2 + distance ** 2) / (2 * distance)
  const off = Math.sqrt(Math.max(0, upper ** 2 - along ** 2))
  // straight up or down every elbow is as low as another: hold it outwards
  const hang: Vector = Math.hypot(n[0], n[1]) > 1e-9 ? [0, 0, -1] : [0, 1, 0]
  const square = plus(hang, times(n, -dot(hang, n)))
  const down = times(square, 1 / lengthOf(square))
  const side = cross(n, down)
  const poseAt = (turn: number): ArmPose => {
    const elbow = plus(times(n, along), plus(times(down, off * Math.cos(turn)), times(side, off * Math.sin(turn))))
    const direction = times(elbow, 1 / upper)
    const forearm = times(plus(hand, times(elbow, -1)), 1 / fore)
    // a straight arm bends nowhere: rounding is not held against it
    return { elbow, direction, slack: Math.min(behindSlack(direction), bendSlack(direction, forearm) + 1e-9) }
  }
  const steps = 180
  const step = Math.PI / steps
  let best = poseAt(0)
  if (best.slack >= 0) return best
  let bestTurn = 0
  for (let k = 1; k <= steps; k++)
    for (const way of [1, -1]) {
      const pose = poseAt(way * k * step)
      if (pose.slack >= 0) return edgeOf(poseAt, way * (k - 1) * step, way * k * step)
      if (pose.slack > best.slack) [best, bestTurn] = [pose, way * k * step]
    }
  // a sliver of allowed turns may lie between two steps
  return poseAt(goldenMinimum((turn) => -poseAt(turn).slack, bestTurn - step, bestTurn + step, 1e-14))
}

/** Where the limits begin to be kept, between a turn beyond them and one within: the pose on the inner side. */
function edgeOf(poseAt: (turn: number) => ArmPose, beyond: number, within: number): ArmPose {
  let [out, inside] = [beyond, within]
  for (let i = 0; i < 40; i++) {
    const middle = (out + inside) / 2
    if (poseAt(middle).slack >= 0) inside = middle
    else out = middle
  }
  return poseAt(inside)
}
