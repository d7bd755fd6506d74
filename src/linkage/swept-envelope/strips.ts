import type { Point } from "../hinge/geometry.js"
import { convexOutline, segmentBetween } from "../outline.js"
import type { Model } from "../planar/model.js"
import type { Pose } from "../planar/solve.js"

/** A point of a pose. */
export const pointAt = (pose: Pose, i: number): Point => ({ x: pose.q[2 * i] as number, y: pose.q[2 * i + 1] as number })
/** Points that belong to a bar. */
export const moving = (model: Model) => [...new Set(model.bodies.flat())]

/** How far a point can stray from the straight line between poses: a third more than the sagitta of a parabola through three poses. */
export function stray(model: Model, poses: readonly Pose[]): number {
  let most = 0
  for (const i of moving(model))
    for (let k = 1; k + 1 < poses.length; k++) {
      const [a, b, c] = [k - 1, k, k + 1].map((j) => pointAt(poses[j] as Pose, i)) as [Point, Point, Point]
      most = Math.max(most, Math.hypot(a.x - 2 * b.x + c.x, a.y - 2 * b.y + c.y) / 6)
    }
  return most
}

/** Convex pieces that hold everything each body sweeps from one pose to the next, but for what its points stray. */
export function sweptPieces(model: Model, poses: readonly Pose[]): Point[][] {
  return poses
    .slice(1)
    .flatMap((pose, k) =>
      model.bodies.map((members) => convexOutline(members.flatMap((i) => [pointAt(poses[k] as Pose, i), pointAt(pose, i)]))),
    )
}

/** Lowest and highest place swept in each strip. */
export function profileOf(pieces: readonly (readonly Point[])[], radius: number, left: number, right: number, strips: number) {
  const width = (right - left) / strips
  return Array.from({ length: strips }, (_, s) => {
    const [from, to] = [left + s * width, left + (s + 1) * width]
    let [bottom, top] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
    for (const piece of pieces)
      for (const [i, a] of piece.entries()) {
        const reach = segmentBetween(a, piece[(i + 1) % piece.length] as Point, from - radius, to + radius)
        if (!reach) continue
        bottom = Math.min(bottom, reach.low - radius)
        top = Math.max(top, reach.high + radius)
      }
    return top < bottom ? { from, to, bottom: null, top: null } : { from, to, bottom, top }
  })
}
