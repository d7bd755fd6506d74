import { type BoundedSearch, branchAndBound, type Certified } from "../../../numeric/index.js"
import { hingeAngle, leastCosine, lengthsOf, leverArm, type Placement, type PlaceProblem, POSES, peakForce, swingOf } from "./model.js"
import { type Arc, arcOf, partsOf, type RegionPart } from "./region.js"

/**
 * A box in u = D + r, v = D − r and the low end t of the swing. Both lever arm and angles are monotone in
 * u and |v|, so that their ranges over the box are exact; with the arms' directions only in one difference,
 * two dimensions of the four are left out without loss.
 */
interface Box {
  readonly u0: number
  readonly u1: number
  readonly v0: number
  readonly v1: number
  readonly t0: number
  readonly t1: number
  readonly base: RegionPart
  readonly pin: RegionPart
  readonly branch: 1 | -1
}

/** Angles this close are told apart by nothing but rounding of acos near 1. */
const ROUNDING = 1e-7
const TURN = 2 * Math.PI

type Sides = Pick<Box, "base" | "pin" | "branch">

/** Whether a point at a distance and direction lies in the quadrant of a region's part, as far as its arc tells. */
function isWithin(part: RegionPart, distance: number, angle: number): boolean {
  const { from, to } = arcOf(part, distance, distance, { from: 0, to: 0 })
  const off = angle - (from + to) / 2
  return Math.abs(off - TURN * Math.round(off / TURN)) <= (to - from) / 2 + 1e-9
}

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

/** Searches one goal; values are forces, or swings with their sign turned. */
export function searchPlacement(p: PlaceProblem, goal: PlaceGoal, start: Placement | null = null): Certified<Placement> {
  const { retractedLength, extendedLength, amplitude, phase, tiltEitherWay } = p
  const lengths = lengthsOf(p)
  const seeksForce = goal.objective === "min-force"
  const [baseArc, pinArc]: [Arc, Arc] = [
    { from: 0, to: 0 },
    { from: 0, to: 0 },
  ]

  /** The box cut down to what region, clearance and angles allow; null where nothing is left. */
  const contract = (box: Box): Box | null => {
    const { base, pin, branch } = box
    const d0 = Math.max((box.u0 + box.v0) / 2, base.near)
    const d1 = Math.min((box.u1 + box.v1) / 2, base.far)
    const r0 = Math.max((box.u0 - box.v1) / 2, pin.near)
    const r1 = Math.min((box.u1 - box.v0) / 2, pin.far)
    const spare = 1e-12 * extendedLength
    if (d0 > d1 + spare || r0 > r1 + spare) return null
    const u0 = Math.max(box.u0, d0 + r0 - spare)
    const u1 = Math.min(box.u1, d1 + r1 + spare)
    const v0 = Math.max(box.v0, d0 - r1 - spare)
    const v1 = Math.min(box.v1, d1 - r0 + spare)
    if (u0 > u1 || v0 > v1) return null
    const least = v0 > 0 ? v0 : v1 < 0 ? -v1 : 0
    const most = Math.max(-v0, v1)
    if (swingOf(p, u0, most) < goal.swing - ROUNDING || swingOf(p, u1, least) > p.maxSwing + ROUNDING) return null
    const widest = (1 + 1e-9) * Math.min(leverArm(u1, least, retractedLength), leverArm(u1, least, extendedLength))
    if (widest < p.minLever || widest < p.minTransmissionSine * r0) return null
    if (p.maxLever < Number.POSITIVE_INFINITY) {
      const top = Math.min(extendedLength, Math.max(retractedLength, Math.sqrt(u0 * most)))
      if (leverArm(u0, most, top) * (1 - 1e-9) > p.maxLever) return null
    }
    arcOf(base, d0, Math.max(d0, d1), baseArc)
    arcOf(pin, r0, Math.max(r0, r1), pinArc)
    if (baseArc.from > baseArc.to + ROUNDING || pinArc.from > pinArc.to + ROUNDING) return null
    // arm angle at the low end = base direction − pin direction ± angle at the hinge there
    const end = branch === 1 ? retractedLength : extendedLength
    const [p0, p1] = [hingeAngle(u1, most, end), hingeAngle(u0, least, end)]
    const from = baseArc.from - pinArc.to + (branch === 1 ? p0 : -p1) - ROUNDING
    const to = baseArc.to - pinArc.from + (branch === 1 ? p1 : -p0) + ROUNDING
    // whole turns by which the two ranges may meet
    const first = Math.ceil((box.t0 - to) / TURN)
    const last = Math.floor((box.t1 - from) / TURN)
    if (first > last) return null
    const t0 = Math.max(box.t0, from + first * TURN)
    const t1 = Math.min(box.t1, to + last * TURN)
    return { u0, u1, v0, v1, t0: Math.min(t0, t1), t1: Math.max(t0, t1), base, pin, branch }
  }

  const cutDown = (boxes: readonly Box[]) => boxes.flatMap((box) => contract(box) ?? [])

  /** A force that no placement of a contracted box goes below. */
  const forceBound = ({ u0, u1, v0, v1, t0, t1, branch }: Box): number => {
    const least = v0 > 0 ? v0 : v1 < 0 ? -v1 : 0
    const most = Math.max(-v0, v1)
    const end = branch === 1 ? retractedLength : extendedLength
    const [reference0, reference1] = [hingeAngle(u1, least, end), hingeAngle(u0, most, end)]
    let bound = 0
    for (let i = 0; i < POSES; i += 4) {
      const length = lengths[i] as number
      const from = t0 + phase + branch * (hingeAngle(u1, least, length) - reference0)
      const to = t1 + phase + branch * (hingeAngle(u0, most, length) - reference1)
      const force = leastCosine(from - 1e-9, to + 1e-9, tiltEitherWay) / leverArm(u1, least, length)
      if (force > bound) bound = force
    }
    return amplitude * bound * (1 - 1e-9)
  }

  /** Swing of a placement that keeps every limit but those of force, region and low end; null where it does not. */
  const keptSwing = (u: number, size: number, radius: number): number | null => {
    if (!(u >= extendedLength + p.minDeadPointMargin && size <= retractedLength - p.minDeadPointMargin)) return null
    const swing = swingOf(p, u, size)
    if (!(swing >= goal.swing && swing <= p.maxSwing)) return null
    const lever = Math.min(leverArm(u, size, retractedLength), leverArm(u, size, extendedLength))
    if (!(lever >= p.minLever && lever >= p.minTransmissionSine * radius)) return null
    return leverArm(u, size, Math.min(extendedLength, Math.max(retractedLength, Math.sqrt(u * size)))) > p.maxLever ? null : swing
  }

  /** The placement at u, v with its low end as near as the regions allow to `t`, if it is allowed at all. */
  const placed = (u: number, v: number, t: number, base: RegionPart, pin: RegionPart, branch: 1 | -1): Placement | null => {
    const [distance, radius] = [(u + v) / 2, (u - v) / 2]
    if (!(distance >= base.near && distance <= base.far && radius >= pin.near && radius <= pin.far)) return null
    const size = Math.abs(v)
    const swing = keptSwing(u, size, radius)
    if (swing === null) return null
    arcOf(base, distance, distance, baseArc)
    arcOf(pin, radius, radius, pinArc)
    if (!(baseArc.from <= baseArc.to && pinArc.from <= pinArc.to)) return null
    const turned = branch * hingeAngle(u, size, branch === 1 ? retractedLength : extendedLength)
    const from = baseArc.from - pinArc.to + turned
    const to = baseArc.to - pinArc.from + turned
    const middle = (from + to) / 2
    const around = TURN * Math.round((t - middle) / TURN)
    const low = Math.min(p.lowTo, Math.max(p.lowFrom, Math.min(to + around, Math.max(from + around, t))))
    const difference = low - turned - around
    // sums of angles round: what is a hair outside is put back by whoever places the pivots
    if (!(difference >= baseArc.from - pinArc.to - 1e-12 && difference <= baseArc.to - pinArc.from + 1e-12)) return null
    // both pivots may still turn together: stand in the middle of what the regions leave
    const baseAngle = (Math.max(baseArc.from, pinArc.from + difference) + Math.min(baseArc.to, pinArc.to + difference)) / 2
    return { distance, radius, low, swing, branch, baseAngle, pinAngle: baseAngle - difference }
  }

  /** The placement with both pivots given, if it is allowed. */
  const pinned = (distance: number, baseAngle: number, radius: number, pinAngle: number, branch: 1 | -1): Placement | null => {
    const [u, size] = [distance + radius, Math.abs(distance - radius)]
    const swing = keptSwing(u, size, radius)
    if (swing === null) return null
    const stands = baseAngle - pinAngle + branch * hingeAngle(u, size, branch === 1 ? retractedLength : extendedLength)
    const low = stands + TURN * Math.round(((p.lowFrom + p.lowTo) / 2 - stands) / TURN)
    return low >= p.lowFrom && low <= p.lowTo ? { distance, radius, low, swing, branch, baseAngle, pinAngle } : null
  }

  const worth = (found: Placement, best: number): number => {
    const rough = peakForce(p, found, lengths, false).force
    if (seeksForce) return rough < best ? peakForce(p, found, lengths, true).force : rough
    if (rough > goal.force) return Number.POSITIVE_INFINITY
    return peakForce(p, found, lengths, true).force > goal.force ? Number.POSITIVE_INFINITY : -found.swing
  }

  /** u at which the swing is just the one wanted, between limits; the force falls with u up to there. */
  const atSwing = (u0: number, u1: number, v: number): number | null => {
    const size = Math.abs(v)
    if (!(swingOf(p, u0, size) >= goal.swing)) return null
    if (swingOf(p, u1, size) >= goal.swing) return u1
    let [low, high] = [u0, u1]
    for (let i = 0; i < 48 && high - low > 1e-14 * high; i++) {
      const middle = (low + high) / 2
      if (swingOf(p, middle, size) >= goal.swing) low = middle
      else high = middle
    }
    return low
  }

  const tried = (u: number, v: number, t: number, box: Sides, best: number) => {
    const found = placed(u, v, t, box.base, box.pin, box.branch)
    if (found === null) return null
    const value = worth(found, best)
    return value < best ? { found, value } : null
  }

  /** Smallest u below an allowed one at which everything is still kept: the swing rises as u falls. */
  const atLimits = (u0: number, allowed: number, v: number, t: number, box: Sides): number | null => {
    const isAllowed = (u: number) => {
      const found = placed(u, v, t, box.base, box.pin, box.branch)
      return found !== null && peakForce(p, found, lengths, false).force <= goal.force
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
  const towards = (from: Placement, box: Box, best: number) => {
    const { base, pin, branch } = box
    if (branch !== from.branch) return null
    const [u, v] = [(box.u0 + box.u1) / 2, (box.v0 + box.v1) / 2]
    const distance = Math.min(base.far, Math.max(base.near, (u + v) / 2))
    const radius = Math.min(pin.far, Math.max(pin.near, (u - v) / 2))
    arcOf(base, distance, distance, baseArc)
    arcOf(pin, radius, radius, pinArc)
    const end = branch === 1 ? retractedLength : extendedLength
    const difference = (box.t0 + box.t1) / 2 - branch * hingeAngle(u, Math.abs(v), end)
    const middle = (baseArc.from + baseArc.to - pinArc.from - pinArc.to) / 2
    const needed = difference + TURN * Math.round((middle - difference) / TURN)
    // both arcs turned by the same share of what is needed
    const room = Math.max(1e-300, baseArc.to - baseArc.from + pinArc.to - pinArc.from)
    const share = Math.min(0.5, Math.max(-0.5, (needed - middle) / room))
    const baseAngle = (baseArc.from + baseArc.to) / 2 + share * (baseArc.to - baseArc.from)
    const pinAngle = (pinArc.from + pinArc.to) / 2 - share * (pinArc.to - pinArc.from)
    let hit: { readonly found: Placement; readonly value: number } | null = null
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
      const value = found === null ? Number.POSITIVE_INFINITY : worth(found, best)
      if (found !== null && value < (hit?.value ?? best)) hit = { found, value }
      if (value < Number.POSITIVE_INFINITY) low = part
      else high = part
      if (i === 0 && low === 1) break
    }
    return hit
  }

  const farthest = (box: Sides) => box.base.far + box.pin.far

  /** Pattern search from a placement, with u also taken to where swing or force is just kept. */
  const improve = (from: { found: Placement; value: number }, box: Sides): { found: Placement; value: number } => {
    let best = from
    const step = [0.05 * extendedLength, 0.05 * extendedLength, 0.2]
    for (let round = 0; round < 60 && (step[0] as number) > 1e-7 * extendedLength; round++) {
      const { distance, radius, low } = best.found
      const at = [distance + radius, distance - radius, low] as [number, number, number]
      let better: typeof best | null = null
      for (let axis = 0; axis < 3; axis++)
        for (const way of [1, -1]) {
          const next: [number, number, number] = [...at]
          next[axis] = (next[axis] as number) + way * (step[axis] as number)
          const nearest = extendedLength + p.minDeadPointMargin
          const u = seeksForce
            ? axis === 0
              ? null
              : atSwing(nearest, farthest(box), next[1])
            : atLimits(nearest, axis === 0 ? at[0] : next[0], next[1], next[2], box)
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

  /** The placement known beforehand, climbed from in whichever parts of the regions it lies. */
  const begin = (): { readonly found: Placement; readonly value: number } | null => {
    if (start === null) return null
    const known = { found: start, value: worth(start, Number.POSITIVE_INFINITY) }
    const sides = startBoxes(p).filter(
      ({ base, pin, branch }) =>
        branch === start.branch && isWithin(base, start.distance, start.baseAngle) && isWithin(pin, start.radius, start.pinAngle),
    )[0]
    return sides ? improve(known, sides) : known
  }

  let improvements = 0
  let looked = 0
  const known = begin()
  let latest = known?.found ?? null
  const search: BoundedSearch<Box, Placement> = {
    boxes: cutDown(startBoxes(p)),
    bound: (box) => {
      const force = forceBound(box)
      if (seeksForce) return force
      if (force > goal.force) return null
      return -swingOf(p, box.u0, Math.max(-box.v0, box.v1)) - 1e-9
    },
    sample: (box, best) => {
      const [v, t] = [(box.v0 + box.v1) / 2, (box.t0 + box.t1) / 2]
      let hit = tried((box.u0 + box.u1) / 2, v, t, box, best)
      const u = seeksForce ? atSwing(box.u0, box.u1, v) : box.u1
      if (u !== null) hit = tried(u, v, t, box, hit?.value ?? best) ?? hit
      looked++
      if (hit === null && latest !== null && ((!seeksForce && looked < 300) || looked % 16 === 0)) hit = towards(latest, box, best)
      if (hit && improvements < (seeksForce ? 40 : 8) && !(hit.value > best - 1e-3 * Math.abs(best))) {
        improvements++
        hit = improve(hit, box)
      }
      if (hit) latest = hit.found
      return hit
    },
    isSmall: ({ u0, u1, v0, v1, t0, t1 }) => u1 - u0 + v1 - v0 <= 1e-9 * extendedLength && t1 - t0 <= 1e-9,
    split: (box) => {
      const [u, v, t] = [(box.u0 + box.u1) / 2, (box.v0 + box.v1) / 2, (box.t0 + box.t1) / 2]
      const most = Math.max(-box.v0, box.v1)
      // how much each side of the box blurs the lever arm where it is smallest, and the angle
      const blur = (a: number, b: number) => Math.abs(Math.log(a / b))
      const blurU = Math.max(
        blur(leverArm(box.u1, most, extendedLength), leverArm(box.u0, most, extendedLength)),
        swingOf(p, box.u0, most) - swingOf(p, box.u1, most),
      )
      const least = box.v0 > 0 ? box.v0 : box.v1 < 0 ? -box.v1 : 0
      const blurV = Math.max(
        blur(leverArm(u, least, retractedLength), leverArm(u, most, retractedLength)),
        swingOf(p, u, most) - swingOf(p, u, least),
        (box.v1 - box.v0) / extendedLength,
      )
      const blurT = box.t1 - box.t0
      if (blurT >= blurU && blurT >= blurV)
        return cutDown([
          { ...box, t1: t },
          { ...box, t0: t },
        ])
      return cutDown(
        blurU >= blurV
          ? [
              { ...box, u1: u },
              { ...box, u0: u },
            ]
          : [
              { ...box, v1: v },
              { ...box, v0: v },
            ],
      )
    },
    gap: goal.gap,
    budget: goal.budget,
    start: known,
    ...(goal.enough === undefined ? {} : { target: goal.enough }),
  }
  return branchAndBound(search)
}

/** Boxes that hold every allowed placement: one for each pair of region parts and each branch. */
function startBoxes(p: PlaceProblem): Box[] {
  const free = { low: p.extendedLength + p.minDeadPointMargin, wide: p.retractedLength - p.minDeadPointMargin }
  return partsOf(p.fixedPivotRegion).flatMap((base) =>
    partsOf(p.movingPivotRegion).flatMap((pin) =>
      p.branches.flatMap((branch): Box[] => {
        const box = {
          u0: Math.max(free.low, base.near + pin.near),
          u1: base.far + pin.far,
          v0: Math.max(-free.wide, base.near - pin.far),
          v1: Math.min(free.wide, base.far - pin.near),
          t0: p.lowFrom,
          t1: p.lowTo,
        }
        return box.u0 <= box.u1 && box.v0 <= box.v1 ? [{ ...box, base, pin, branch }] : []
      }),
    ),
  )
}
