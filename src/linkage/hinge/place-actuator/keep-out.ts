// Parts of body and frame that the rod must not come near.

import type { Point } from "../geometry.js"
import { type Build, hingeAngles } from "./build.js"
import type { KeepOut, Placement } from "./model.js"

/** Square of a point's distance from a line between two others. */
function fromLine(x: number, y: number, a: Point, b: Point): number {
  const dx = b.x - a.x
  const dy = b.y - a.y
  const square = dx * dx + dy * dy
  const along = (x - a.x) * dx + (y - a.y) * dy
  const share = along <= 0 ? 0 : along >= square ? 1 : along / square
  const ex = x - a.x - share * dx
  const ey = y - a.y - share * dy
  return ex * ex + ey * ey
}

/** Whether the level line from a point outwards crosses an edge. */
const isPassed = (x: number, y: number, a: Point, b: Point) => a.y > y !== b.y > y && x < a.x + ((y - a.y) * (b.x - a.x)) / (b.y - a.y)

/** How deep a point lies in the polygons; negative outside, its distance from them. */
export function depthIn(polygons: readonly (readonly Point[])[], x: number, y: number): number {
  let deepest = Number.NEGATIVE_INFINITY
  for (const polygon of polygons) {
    let square = Number.POSITIVE_INFINITY
    let inside = false
    let a = polygon[polygon.length - 1] as Point
    for (const b of polygon) {
      square = Math.min(square, fromLine(x, y, a, b))
      if (isPassed(x, y, a, b)) inside = !inside
      a = b
    }
    deepest = Math.max(deepest, inside ? Math.sqrt(square) : -Math.sqrt(square))
  }
  return deepest
}

/** Twice the area of a triangle, positive counter-clockwise. */
const side = (a: Point, b: Point, c: Point) => (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)

const cross = (a: Point, b: Point, c: Point, d: Point) => side(a, b, c) * side(a, b, d) < 0 && side(c, d, a) * side(c, d, b) < 0

/** Distance of a rod's line from the polygons; 0 where it meets one. */
export function rodDistance(polygons: readonly (readonly Point[])[], from: Point, to: Point): number {
  let square = Number.POSITIVE_INFINITY
  for (const polygon of polygons) {
    let inside = false
    let a = polygon[polygon.length - 1] as Point
    for (const b of polygon) {
      if (cross(a, b, from, to)) return 0
      if (isPassed(from.x, from.y, a, b)) inside = !inside
      square = Math.min(square, fromLine(a.x, a.y, from, to), fromLine(from.x, from.y, a, b), fromLine(to.x, to.y, a, b))
      a = b
    }
    if (inside) return 0
  }
  return Math.sqrt(square)
}

const polar = (size: number, angle: number): Point => ({ x: size * Math.cos(angle), y: size * Math.sin(angle) })

/** How far a pivot may be off its place. */
export const offPlace = (error: number, distance: number) => {
  if (error === 0) return 0
  const turn = Math.asin(Math.min(1, error / distance))
  return Math.sqrt(error * error + distance * (distance + error) * (2 - 2 * Math.cos(turn)))
}

/** Whether the rod keeps clear over the whole stroke of every build: by steps no longer than what is left between rod and polygons. */
export function staysClear(k: KeepOut, build: Build, pivotError: number, { distance, radius, branch, baseAngle }: Placement): boolean {
  const needed = k.halfWidth + offPlace(pivotError, distance) + offPlace(pivotError, radius)
  const base = polar(distance, baseAngle)
  const from = hingeAngles(build, build.retracted[0])[0] - build.turn
  const to = hingeAngles(build, build.extended[1])[1] + build.turn
  const fine = 1e-6 * (distance + radius)
  const clear = (low: number, high: number): boolean => {
    const half = (high - low) / 2
    const left = rodDistance(k.polygons, base, polar(radius, baseAngle + branch * (low + half))) - needed
    if (left < 0) return false
    if (left >= radius * half) return true
    return radius * half > fine && clear(low, low + half) && clear(low + half, high)
  }
  return clear(from, to)
}

/** Smallest distance that the rod's line keeps with its pivots as drawn, over the motion of all builds; to a millionth of its reach. */
export function clearanceOf(k: KeepOut, build: Build, { distance, radius, branch, baseAngle }: Placement): number {
  const base = polar(distance, baseAngle)
  const at = (angle: number) => rodDistance(k.polygons, base, polar(radius, baseAngle + branch * angle))
  const from = hingeAngles(build, build.retracted[0])[0] - build.turn
  const to = hingeAngles(build, build.extended[1])[1] + build.turn
  const fine = 1e-6 * (distance + radius)
  let nearest = Math.min(at(from), at(to))
  const look = (low: number, high: number) => {
    const half = (high - low) / 2
    const here = at(low + half)
    nearest = Math.min(nearest, here)
    if (here - radius * half >= nearest - fine || radius * half < fine) return
    look(low, low + half)
    look(low + half, high)
  }
  look(from, to)
  return nearest
}

/** Shares of the rod's line at which its depth in the polygons is looked at. */
const SHARES = [0, 0.25, 0.5, 0.75, 1] as const

/**
 * The most that a rod can keep from the polygons whatever its ends are, each somewhere within a circle; negative where it lies in one
 * for all of them. A point of its line cannot be farther off than the circles are wide, and as they shrink this is the rod's distance.
 */
export function mostRoom(k: KeepOut, base: Point, baseOff: number, pin: Point, pinOff: number): number {
  let room = rodDistance(k.polygons, base, pin) + Math.max(baseOff, pinOff)
  for (const share of SHARES) {
    const off = (1 - share) * baseOff + share * pinOff
    room = Math.min(room, off - depthIn(k.polygons, base.x + share * (pin.x - base.x), base.y + share * (pin.y - base.y)))
  }
  return room
}
