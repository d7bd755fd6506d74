import type { Point } from "./hinge.js"
import { segmentBetween } from "./outline.js"
import type { Model } from "./planar-model.js"
import type { Pose } from "./planar-solve.js"

/** A point of a pose. */
export const pointAt = (pose: Pose, i: number): Point => ({ x: pose.q[2 * i] as number, y: pose.q[2 * i + 1] as number })
/** Points that belong to a bar. */
export const moving = (model: Model) => [...new Set(model.bodies.flat())]

/** How far a point can stray from the straight line between poses, from second differences. */
export function stray(model: Model, poses: readonly Pose[]): number {
  let most = 0
  for (const i of moving(model))
    for (let k = 1; k + 1 < poses.length; k++) {
      const [a, b, c] = [k - 1, k, k + 1].map((j) => pointAt(poses[j] as Pose, i)) as [Point, Point, Point]
      most = Math.max(most, Math.hypot(a.x - 2 * b.x + c.x, a.y - 2 * b.y + c.y) / 8)
    }
  return most
}

/** Lowest and highest place swept in each strip. */
export function profileOf(model: Model, poses: readonly Pose[], radius: number, left: number, right: number, strips: number) {
  const width = (right - left) / strips
  return Array.from({ length: strips }, (_, s) => {
    const [from, to] = [left + s * width, left + (s + 1) * width]
    let [bottom, top] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
    for (const pose of poses)
      for (const members of model.bodies)
        for (const [i, a] of members.entries())
          for (const b of members.slice(i + 1)) {
            const reach = segmentBetween(pointAt(pose, a), pointAt(pose, b), from - radius, to + radius)
            if (!reach) continue
            bottom = Math.min(bottom, reach.low - radius)
            top = Math.max(top, reach.high + radius)
          }
    return top < bottom ? { from, to, bottom: null, top: null } : { from, to, bottom, top }
  })
}
