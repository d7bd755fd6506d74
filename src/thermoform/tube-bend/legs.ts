// Where a bender measures the legs of a bend to, and whether they come out clear of each other.

import type { Si } from "./types.js"

/** From here on the corner of two legs runs away; from 180° on there is none, rad. */
export const NO_CORNER: number = (175 * Math.PI) / 180
/** From here on no other leg reaches past the back of the bend, rad. */
export const SQUARE: number = (Math.PI / 2) * (1 - 1e-12)

/** Corners that legs are measured to: how far outside the centreline they lie, in radii of the tube. */
const corners = { backs: 1, centrelines: 0, insides: -1 } as const
export const isCorner = (measure: Si["legMeasure"]): measure is keyof typeof corners => measure in corners

/** What a corner lies beyond the centreline's, along the radius, m; 0 where legs are measured to none. */
const beyond = ({ legMeasure, outsideDiameter }: Si) => (isCorner(legMeasure) ? (corners[legMeasure] * outsideDiameter) / 2 : 0)

/** From the tangent point, along a leg, to a square line on the back of the bend, m; null where the other leg reaches further. */
export const takeUp = ({ radius, outsideDiameter, angle }: Si): number | null => (angle >= SQUARE ? radius + outsideDiameter / 2 : null)

/** From the tangent point, along a leg, to where it is measured, m; null where there is no such place. */
export function reach(si: Si): number | null {
  if (isCorner(si.legMeasure)) return si.angle < NO_CORNER ? (si.radius + beyond(si)) * Math.tan(si.angle / 2) : null
  return si.legMeasure === "bend" ? takeUp(si) : 0
}

/** Centreline radius that leaves a leg of this length no straight, m. */
export function radiusFor(si: Si, leg: number): number {
  if (isCorner(si.legMeasure)) return leg / Math.tan(si.angle / 2) - beyond(si)
  return si.legMeasure === "bend" ? leg - si.outsideDiameter / 2 : Number.POSITIVE_INFINITY
}

/** Angle that leaves a leg of this length no straight, rad; null where the reach does not hang on it. */
export const angleFor = (si: Si, leg: number): number | null =>
  isCorner(si.legMeasure) ? 2 * Math.atan(leg / (si.radius + beyond(si))) : null

interface Xy {
  readonly x: number
  readonly y: number
}
function toLine(p: Xy, a: Xy, b: Xy): number {
  const long = (b.x - a.x) ** 2 + (b.y - a.y) ** 2
  const share = long === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - a.x) * (b.x - a.x) + (p.y - a.y) * (b.y - a.y)) / long))
  return Math.hypot(p.x - a.x - share * (b.x - a.x), p.y - a.y - share * (b.y - a.y))
}

/** Whether a bend past 180° brings its straights so close together that they cannot lie in one plane. */
export function legsMeet({ radius, angle, outsideDiameter }: Si, straightA: number, straightB: number): boolean {
  if (!(angle > Math.PI)) return false
  const crossing = radius * Math.abs(Math.tan(angle / 2))
  if (straightA > crossing && straightB > crossing) return true
  const [begin, from] = [
    { x: -straightA, y: 0 },
    { x: 0, y: 0 },
  ]
  const to = { x: radius * Math.sin(angle), y: radius * (1 - Math.cos(angle)) }
  const end = { x: to.x + straightB * Math.cos(angle), y: to.y + straightB * Math.sin(angle) }
  const gap = Math.min(toLine(begin, to, end), toLine(from, to, end), toLine(to, begin, from), toLine(end, begin, from))
  return gap < outsideDiameter
}
