// Placements at hand: whether one keeps every limit at its worst build, what it is worth, and better ones near it.

import { type Box, startBoxes, swingBound, TURN } from "./box.js"
import { buildOf, leastLevers, leastSwing, lowEnds, mostLever, mostSwing } from "./build.js"
import { forcesOf } from "./force.js"
import { staysClear } from "./keep-out.js"
import { hingeAngle, lowLength, type Placement, type PlaceProblem } from "./model.js"
import { type Arc, arcOf, type RegionPart } from "./region.js"

/** What to seek, and what must hold besides. */
export interface PlaceGoal {
  readonly objective: "min-force" | "max-swing"
  /** Swing to reach at least. */
  readonly swing: number
  /** Force not to exceed (for the most swing). */
  readonly force: number
  readonly gap: number
  readonly budget: number
  /** Force low enough to end the search for the minimum one. */
  readonly enough?: number
}

/** A placement and its force, or its swing with the sign turned. */
export interface Hit {
  readonly found: Placement
  readonly value: number
}

/** A placement that may be turned as a whole, its base between two directions. */
interface Turnable {
  readonly placement: Placement
  readonly from: number
  readonly to: number
}

type Sides = Pick<Box, "base" | "pin" | "branch">

/** Whether a point at a distance and direction lies in the quadrant of a region's part, as far as its arc tells. */
function isWithin(part: RegionPart, distance: number, angle: number): boolean {
  const { from, to } = arcOf(part, distance, distance, { from: 0, to: 0 })
  const off = angle - (from + to) / 2
  return Math.abs(off - TURN * Math.round(off / TURN)) <= (to - from) / 2 + 1e-9
}

/** Directions of the base looked at where the rod must keep clear of something. */
const DIRECTIONS = 5

/** What can be tried of a goal. */
export function localSearch(p: PlaceProblem, goal: PlaceGoal) {
  const { extendedLength, pivotError, lengthError } = p
  const seeksForce = goal.objective === "min-force"
  const { isWorse, worst } = forcesOf(p)
  const off = 2 * pivotError + lengthError
  const shortestSum = extendedLength + p.minDeadPointMargin + off
  const widestDifference = p.retractedLength - p.minDeadPointMargin - off
  const [baseArc, pinArc]: [Arc, Arc] = [
    { from: 0, to: 0 },
    { from: 0, to: 0 },
  ]

  /** Swing of a placement that keeps every limit but those of force, region, room and low end; null where it does not. */
  const keptSwing = (distance: number, radius: number): number | null => {
    const [u, size] = [distance + radius, Math.abs(distance - radius)]
    if (!(u >= shortestSum && size <= widestDifference)) return null
    if (!(swingBound(p, { u0: u, v0: size, v1: size }) >= goal.swing)) return null
    const build = buildOf(p, distance, radius)
    const { swing } = leastSwing(build)
    if (!(swing >= goal.swing) || (p.maxSwing < Number.POSITIVE_INFINITY && mostSwing(build) > p.maxSwing)) return null
    const { lever, sine } = leastLevers(build)
    if (!(lever >= p.minLever && sine >= p.minTransmissionSine)) return null
    return p.maxLever < Number.POSITIVE_INFINITY && mostLever(build) > p.maxLever ? null : swing
  }

  /** How far the low ends of all builds lie from the angle between the pivots' directions. */
  const lowOff = (distance: number, radius: number, branch: 1 | -1) => lowEnds(buildOf(p, distance, radius), { apart: 0, branch })

  const clears = (placement: Placement) =>
    p.keepOut === null || staysClear(p.keepOut, buildOf(p, placement.distance, placement.radius), pivotError, placement)

  /** The placement turned as a whole, within what regions and box leave, until the rod keeps clear; null where it does not. */
  const cleared = ({ placement, from, to }: Turnable): Placement | null => {
    if (p.keepOut === null) return placement
    for (let i = 0; i < DIRECTIONS; i++) {
      // from the middle outwards
      const share = 0.5 + ((i % 2 === 0 ? 1 : -1) * Math.ceil(i / 2)) / (DIRECTIONS - 1)
      const baseAngle = from + share * (to - from)
      const turned = { ...placement, baseAngle, pinAngle: placement.pinAngle + baseAngle - placement.baseAngle }
      if (clears(turned)) return turned
    }
    return null
  }

  /** The placement at u, v with its pivots' directions as near as regions and low end allow to `w` apart, if it is allowed at all. */
  const placed = (u: number, v: number, w: number, { base, pin, branch, a0, a1 }: Sides & Partial<Box>): Turnable | null => {
    const [distance, radius] = [(u + v) / 2, (u - v) / 2]
    if (!(distance >= base.near && distance <= base.far && radius >= pin.near && radius <= pin.far)) return null
    const swing = keptSwing(distance, radius)
    if (swing === null) return null
    arcOf(base, distance, distance, baseArc)
    arcOf(pin, radius, radius, pinArc)
    if (!(baseArc.from <= baseArc.to && pinArc.from <= pinArc.to)) return null
    const [lowest, highest] = lowOff(distance, radius, branch)
    const [from, to] = [baseArc.from - pinArc.to, baseArc.to - pinArc.from]
    const around = TURN * Math.round((w - (from + to) / 2) / TURN)
    const apart = Math.min(p.lowTo - highest, Math.max(p.lowFrom - lowest, Math.min(to + around, Math.max(from + around, w))))
    const difference = apart - around
    // sums of angles round: what is a hair outside is put back by whoever places the pivots
    if (!(difference >= from - 1e-12 && difference <= to + 1e-12 && apart + lowest >= p.lowFrom - 1e-12)) return null
    // both pivots may still turn together
    const [first, last] = [Math.max(baseArc.from, pinArc.from + difference), Math.min(baseArc.to, pinArc.to + difference)]
    const baseAngle = (first + last) / 2
    const placement = { distance, radius, apart, swing, branch, baseAngle, pinAngle: baseAngle - difference }
    const [near, far] = [Math.max(first, a0 ?? first), Math.min(last, a1 ?? last)]
    return near <= far ? { placement, from: near, to: far } : { placement, from: first, to: last }
  }

  /** The placement with both pivots given, if it is allowed. */
  const pinned = (distance: number, baseAngle: number, radius: number, pinAngle: number, branch: 1 | -1): Placement | null => {
    const swing = keptSwing(distance, radius)
    if (swing === null) return null
    const [lowest, highest] = lowOff(distance, radius, branch)
    const stands = baseAngle - pinAngle
    const apart = stands + TURN * Math.round(((p.lowFrom + p.lowTo - lowest - highest) / 2 - stands) / TURN)
    if (!(apart + lowest >= p.lowFrom && apart + highest <= p.lowTo)) return null
    return { distance, radius, apart, swing, branch, baseAngle, pinAngle }
  }

  /** Force or swing (its sign turned), exact where it is below `best`. */
  const worth = (found: Placement, best: number): number => {
    if (seeksForce) return isWorse(found, best) ? Number.POSITIVE_INFINITY : worst(found)
    if (!(-found.swing < best) || isWorse(found, goal.force)) return Number.POSITIVE_INFINITY
    return worst(found) > goal.force ? Number.POSITIVE_INFINITY : -found.swing
  }

  /** u at which the swing is just the one wanted, between limits; the force falls with u up to there. */
  const atSwing = (u0: number, u1: number, v: number): number | null => {
    const spare = (u: number) => leastSwing(buildOf(p, (u + v) / 2, (u - v) / 2)).swing - goal.swing
    const over0 = spare(u0)
    if (!(over0 >= 0)) return null
    if (spare(u1) >= 0) return u1
    // regula falsi, halved where one end stays (Illinois)
    let [low, high] = [u0, u1]
    let [over, under] = [over0, spare(u1)]
    for (let i = 0, side = 0; i < 40 && high - low > 1e-13 * high; i++) {
      const between = (low * under - high * over) / (under - over)
      const u = between > low && between < high ? between : (low + high) / 2
      const left = spare(u)
      if (left >= 0) {
        low = u
        over = left
        if (side === 1) under /= 2
        side = 1
      } else {
        high = u
        under = left
        if (side === -1) over /= 2
        side = -1
      }
      if (left >= 0 && left < 1e-12) break
    }
    return low
  }

  const tried = (u: number, v: number, w: number, box: Sides & Partial<Box>, best: number): Hit | null => {
    const at = placed(u, v, w, box)
    if (at === null) return null
    const value = worth(at.placement, best)
    if (!(value < best)) return null
    const found = cleared(at)
    return found && { found, value }
  }

  /** Smallest u below an allowed one at which everything is still kept: the swing rises as u falls. */
  const atLimits = (u0: number, allowed: number, v: number, w: number, box: Sides): number | null => {
    const isAllowed = (u: number) => {
      const at = placed(u, v, w, box)
      return at !== null && !isWorse(at.placement, goal.force)
    }
    if (!isAllowed(allowed)) return null
    let [low, high] = [u0, allowed]
    for (let i = 0; i < 20; i++) {
      const middle = (low + high) / 2
      if (isAllowed(middle)) high = middle
      else low = middle
    }
    return high
  }

  /**
   * On the way from a placement that is allowed to the middle of a box, pivots moved in straight lines (the
   * regions are convex), the last point that is allowed and better. Finds what lies in the narrow corner
   * where several limits meet, which the middle of a box hits by luck only.
   */
  const towards = (from: Placement, box: Box, best: number): Hit | null => {
    const { base, pin, branch } = box
    if (branch !== from.branch) return null
    const [u, v] = [(box.u0 + box.u1) / 2, (box.v0 + box.v1) / 2]
    const distance = Math.min(base.far, Math.max(base.near, (u + v) / 2))
    const radius = Math.min(pin.far, Math.max(pin.near, (u - v) / 2))
    arcOf(base, distance, distance, baseArc)
    arcOf(pin, radius, radius, pinArc)
    const difference = (box.w0 + box.w1) / 2
    const middle = (baseArc.from + baseArc.to - pinArc.from - pinArc.to) / 2
    const needed = difference + TURN * Math.round((middle - difference) / TURN)
    // both arcs turned by the same share of what is needed
    const room = Math.max(1e-300, baseArc.to - baseArc.from + pinArc.to - pinArc.from)
    const share = Math.min(0.5, Math.max(-0.5, (needed - middle) / room))
    const baseAngle = (baseArc.from + baseArc.to) / 2 + share * (baseArc.to - baseArc.from)
    const pinAngle = (pinArc.from + pinArc.to) / 2 - share * (pinArc.to - pinArc.from)
    let hit: Hit | null = null
    const polar = (a: number, angleA: number, b: number, angleB: number, part: number) => {
      const x = (1 - part) * a * Math.cos(angleA) + part * b * Math.cos(angleB)
      const y = (1 - part) * a * Math.sin(angleA) + part * b * Math.sin(angleB)
      return { size: Math.hypot(x, y), angle: Math.atan2(y, x) }
    }
    let [low, high] = [0, 1]
    for (let i = 0, part = 1; i < 14; i++, part = (low + high) / 2) {
      const b = polar(from.distance, from.baseAngle, distance, baseAngle, part)
      const r = polar(from.radius, from.pinAngle, radius, pinAngle, part)
      const found = pinned(b.size, b.angle, r.size, r.angle, branch)
      const limit: number = hit?.value ?? best
      const value = found === null ? Number.POSITIVE_INFINITY : worth(found, limit)
      const isBetter = found !== null && value < limit && clears(found)
      if (isBetter) hit = { found, value }
      if (isBetter) low = part
      else high = part
      if (i === 0 && low === 1) break
    }
    return hit
  }

  const farthest = (box: Sides) => box.base.far + box.pin.far

  /** Pattern search from a placement, with u also taken to where swing or force is just kept. */
  const improve = (from: Hit, box: Sides): Hit => {
    let best = from
    const step = [0.05 * extendedLength, 0.05 * extendedLength, 0.2]
    for (let round = 0; round < 60 && (step[0] as number) > 1e-7 * extendedLength; round++) {
      const { distance, radius, apart } = best.found
      const at = [distance + radius, distance - radius, apart] as [number, number, number]
      let better: Hit | null = null
      const level = seeksForce ? atSwing(shortestSum, farthest(box), at[1]) : null
      for (let axis = 0; axis < 3; axis++)
        for (const way of [1, -1]) {
          const next: [number, number, number] = [...at]
          next[axis] = (next[axis] as number) + way * (step[axis] as number)
          const u = seeksForce
            ? axis === 1
              ? atSwing(shortestSum, farthest(box), next[1])
              : axis === 2
                ? level
                : null
            : atLimits(shortestSum, axis === 0 ? at[0] : next[0], next[1], next[2], box)
          for (const point of u === null ? [next] : [next, [u, next[1], next[2]] as const]) {
            const hit = tried(point[0], point[1], point[2], box, (better ?? best).value)
            if (hit) better = hit
          }
        }
      if (better) best = better
      else for (let axis = 0; axis < 3; axis++) step[axis] = (step[axis] as number) / 2
    }
    return best
  }

  /** A placement known beforehand, climbed from in whichever parts of the regions it lies. */
  const begin = (start: Placement): Hit => {
    const known = { found: start, value: worth(start, Number.POSITIVE_INFINITY) }
    const sides = startBoxes(p).find(
      ({ base, pin, branch }) =>
        branch === start.branch && isWithin(base, start.distance, start.baseAngle) && isWithin(pin, start.radius, start.pinAngle),
    )
    return sides ? improve(known, sides) : known
  }

  return { tried, atSwing, towards, improve, begin }
}

/** Arm angle at the clockwise end of the swing, as drawn. */
export const lowAngleOf = (p: PlaceProblem, { distance, radius, apart, branch }: Placement) =>
  apart + branch * hingeAngle(distance + radius, distance - radius, lowLength(p, branch))
