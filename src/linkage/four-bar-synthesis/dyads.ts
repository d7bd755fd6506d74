// Links from a fixed pivot to a pin on the coupler that keep their length through all poses.
import type { Point } from "../hinge/geometry.js"
import type { Si } from "./types.js"

/** A link that keeps its length through all poses. */
export interface Dyad {
  readonly pivot: Point
  /** Pin, in the coupler's axes. */
  readonly pin: Point
  /** Places of the pin at the poses. */
  readonly places: readonly Point[]
  readonly length: number
  /** Directions from the fixed pivot to the pin at the poses, rad. */
  readonly directions: readonly number[]
}

type Region = Si["fixedPivotRegion"]
/** A pose in plain SI: place of the coupler's origin, m, and direction of its x axis, rad. */
export interface CouplerPose extends Point {
  readonly angle: number
}

/** Values a step apart from one end of a range on, both ends included where the step meets them. */
function along(from: number, to: number, step: number): number[] {
  return Array.from({ length: countAlong(from, to, step) }, (_, i) => from + i * step)
}

/** How many values {@link along} gives; a step that ends a rounding beyond the range still counts. */
export function countAlong(from: number, to: number, step: number): number {
  return Math.floor((to - from) / step + 1e-9) + 1
}

/** Most pins that can lie on one line through the region. */
export function mostPinsOnLine(region: Region, step: number): number {
  return Math.floor(Math.hypot(region.right - region.left, region.top - region.bottom) / step) + 1
}

/** A place on the frame, seen from the coupler in a pose. */
function seenFrom({ x, y, angle }: CouplerPose, p: Point): Point {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
  return { x: (p.x - x) * cos + (p.y - y) * sin, y: (p.y - y) * cos - (p.x - x) * sin }
}

/** A point of the coupler, on the frame. */
export function placeOf({ x, y, angle }: CouplerPose, p: Point): Point {
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
  return { x: x + p.x * cos - p.y * sin, y: y + p.x * sin + p.y * cos }
}

const isIn = ({ left, right, bottom, top }: Region, p: Point) => p.x >= left && p.x <= right && p.y >= bottom && p.y <= top

/** Flatness of a triangle below which its corners lie on a line and have no circle of use. */
const FLAT = 1e-9

/** Middle of the circle through three points; null where they lie on a line. */
function circleCentre(p: Point, q: Point, r: Point): Point | null {
  const [ax, ay, bx, by] = [q.x - p.x, q.y - p.y, r.x - p.x, r.y - p.y]
  const [a2, b2] = [ax ** 2 + ay ** 2, bx ** 2 + by ** 2]
  const twice = 2 * (ax * by - ay * bx)
  if (!(Math.abs(twice) > FLAT * Math.max(a2, b2))) return null
  return { x: p.x + (by * a2 - ay * b2) / twice, y: p.y + (ax * b2 - bx * a2) / twice }
}

/**
 * The pin of a coupler (its circle point, in the coupler's axes) that keeps its distance from a fixed pivot through three
 * poses; null where there is none.
 */
export function circlePoint(poses: readonly CouplerPose[], fixedPivot: Point): Point | null {
  const [p, q, r] = poses.map((pose) => seenFrom(pose, fixedPivot))
  return p && q && r ? circleCentre(p, q, r) : null
}

/** The fixed pivot (centre point) from which a pin of the coupler keeps its distance through three poses; null where there is none. */
export function centrePoint(poses: readonly CouplerPose[], pin: Point): Point | null {
  const [p, q, r] = poses.map((pose) => placeOf(pose, pin))
  return p && q && r ? circleCentre(p, q, r) : null
}

/** Pins that are equally far from the fixed pivot in all poses: one with three poses, a row along a line with two. */
function pinsFor(si: Si, pivot: Point): Point[] {
  if (si.poses.length === 3) {
    const pin = circlePoint(si.poses, pivot)
    return pin ? [pin] : []
  }
  const [p, q] = si.poses.map((pose) => seenFrom(pose, pivot)) as [Point, Point]
  const apart = Math.hypot(q.x - p.x, q.y - p.y)
  // a fixed pivot that is the pole of both poses leaves nothing for its link to do
  if (!(apart > FLAT * si.step)) return []
  const normal = { x: (p.y - q.y) / apart, y: (q.x - p.x) / apart }
  const { left, right, bottom, top } = si.movingPivotRegion
  const middle = { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 }
  const toCentre = ((left + right) / 2 - middle.x) * normal.x + ((bottom + top) / 2 - middle.y) * normal.y
  const most = mostPinsOnLine(si.movingPivotRegion, si.step)
  return Array.from({ length: 2 * most + 1 }, (_, i) => toCentre + (i - most) * si.step).map((s) => ({
    x: middle.x + s * normal.x,
    y: middle.y + s * normal.y,
  }))
}

/** All links whose fixed pivot is one of those tried, whose pin lies in its region and whose length is allowed. */
export function dyadsOf(si: Si): Dyad[] {
  const { left, right, bottom, top } = si.fixedPivotRegion
  const { low, high } = si.linkLengths
  return along(left, right, si.step).flatMap((x) =>
    along(bottom, top, si.step).flatMap((y) =>
      pinsFor(si, { x, y }).flatMap((pin) => {
        if (!isIn(si.movingPivotRegion, pin)) return []
        const places = si.poses.map((pose) => placeOf(pose, pin))
        const [first] = places as [Point]
        const length = Math.hypot(first.x - x, first.y - y)
        if (length < low || length > high) return []
        return [{ pivot: { x, y }, pin, places, length, directions: places.map((p) => Math.atan2(p.y - y, p.x - x)) }]
      }),
    ),
  )
}
