// Boxes of placements: what is left of one by the limits, and what no placement in it goes below.

import { mostRoom } from "./keep-out.js"
import { hingeAngle, leverArm, lowLength, type PlaceProblem, swingBetween, turnOf } from "./model.js"
import { type Arc, arcOf, partsOf, type RegionPart } from "./region.js"

/**
 * A box in u = D + r, v = D − r, the angle w between the pivots' directions and, where the rod must keep clear of something, the
 * direction a of the base. Lever arm and angle at the hinge are monotone in u and |v|, so that their ranges over the box are
 * exact; without anything to keep clear of only w counts of both directions, and a dimension is left out without loss.
 */
export interface Box {
  readonly u0: number
  readonly u1: number
  readonly v0: number
  readonly v1: number
  readonly w0: number
  readonly w1: number
  readonly a0: number
  readonly a1: number
  readonly base: RegionPart
  readonly pin: RegionPart
  readonly branch: 1 | -1
}

/** Angles this close are told apart by nothing but rounding of acos near 1. */
export const ROUNDING = 1e-7
export const TURN = 2 * Math.PI

/** Poses at which forces are bounded, and at which a rod is looked for in what it must keep clear of. */
const POSES = 9
/** Halvings of their distance about the pose that bounds most. */
const CLOSER = 3
const LOOKS = 5

const least = (v0: number, v1: number) => (v0 > 0 ? v0 : v1 < 0 ? -v1 : 0)
const most = (v0: number, v1: number) => Math.max(-v0, v1)

/** What u, v and the moving pivot's distance r are off by in a build with both pivots as far off along their lines as they may be. */
interface Corner {
  readonly du: number
  readonly dv: number
  readonly dr: number
}

/** The corners that builds may lie in; each a build like any other, no placement's worst is better than at any of them. */
function cornersOff({ pivotError: e }: PlaceProblem): readonly Corner[] {
  if (e === 0) return [{ du: 0, dv: 0, dr: 0 }]
  return [
    { du: -2 * e, dv: 0, dr: -e },
    { du: 0, dv: 2 * e, dr: -e },
    { du: 0, dv: -2 * e, dr: e },
    { du: 2 * e, dv: 0, dr: e },
  ]
}

/** A swing that no placement of the box exceeds at its worst build. */
export function swingBound(p: PlaceProblem, { u0, v0, v1 }: Pick<Box, "u0" | "v0" | "v1">, corners = cornersOff(p)): number {
  const [from, to] = [p.retractedLength + p.lengthError, p.extendedLength - p.lengthError]
  if (!(to > from)) return 0
  let bound = Number.POSITIVE_INFINITY
  for (const { du, dv } of corners) bound = Math.min(bound, swingBetween(u0 + du, most(v0 + dv, v1 + dv), from, to))
  return bound
}

/** What bounds and cuts the boxes of a problem. */
export function boxesOf(p: PlaceProblem, swing: number) {
  const { pivotError, lengthError, keepOut, loads } = p
  const corners = cornersOff(p)
  const shortest = p.retractedLength - lengthError
  const longest = p.extendedLength + lengthError
  const lengths = Array.from({ length: POSES }, (_, i) => shortest + ((longest - shortest) * i) / (POSES - 1))
  const [baseArc, pinArc]: [Arc, Arc] = [
    { from: 0, to: 0 },
    { from: 0, to: 0 },
  ]

  /** Whether the rods of all placements of the box come too near to what they must keep clear of. */
  const isBlocked = (box: Box, d0: number, d1: number, r0: number, r1: number): boolean => {
    if (keepOut === null) return false
    const needed = keepOut.halfWidth + 2 * Math.SQRT2 * pivotError
    const [distance, radius] = [(d0 + d1) / 2, (r0 + r1) / 2]
    const [angle, halfAngle] = [(box.a0 + box.a1) / 2, (box.a1 - box.a0) / 2]
    const base = { x: distance * Math.cos(angle), y: distance * Math.sin(angle) }
    const baseOff = (d1 - d0) / 2 + d1 * halfAngle
    // ranges of the first and the last angle that any build of a placement comes to
    let [s0, s1, e0, e1] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, 0, 0]
    for (const { du, dv } of corners) {
      const [near, wide] = [least(box.v0 + dv, box.v1 + dv), most(box.v0 + dv, box.v1 + dv)]
      s0 = Math.min(s0, hingeAngle(box.u1 + du, wide, shortest))
      s1 = Math.min(s1, hingeAngle(box.u0 + du, near, shortest))
      e0 = Math.max(e0, hingeAngle(box.u1 + du, wide, longest))
      e1 = Math.max(e1, hingeAngle(box.u0 + du, near, longest))
    }
    const [wideTurn, leastTurn] = [turnOf(pivotError, d0) + turnOf(pivotError, r0), turnOf(pivotError, d1) + turnOf(pivotError, r1)]
    ;[s0, s1, e0, e1] = [s0 - wideTurn, s1 - leastTurn, e0 + leastTurn, e1 + wideTurn]
    const room = (share: number) => {
      const [p0, p1] = [s0 + share * (e0 - s0), s1 + share * (e1 - s1)]
      const turned = angle + (box.branch * (p0 + p1)) / 2
      const pin = { x: radius * Math.cos(turned), y: radius * Math.sin(turned) }
      return mostRoom(keepOut, base, baseOff, pin, (r1 - r0) / 2 + r1 * (halfAngle + (p1 - p0) / 2)) - needed
    }
    let [tightest, at] = [Number.POSITIVE_INFINITY, 0]
    for (let i = 0; i < LOOKS; i++) {
      const here = room(i / (LOOKS - 1))
      if (here < 0) return true
      if (here < tightest) [tightest, at] = [here, i / (LOOKS - 1)]
    }
    // the rod may come nearest between two looks
    for (let step = 0.5 / (LOOKS - 1), k = 0; k < CLOSER && tightest < r1 * step * (e1 - s0); k++, step /= 2)
      for (const share of [at - step, at + step]) {
        const here = share >= 0 && share <= 1 ? room(share) : Number.POSITIVE_INFINITY
        if (here < 0) return true
        if (here < tightest) [tightest, at] = [here, share]
      }
    return false
  }

  /** The box cut down to what region, clearance and angles allow; null where nothing is left. */
  const contract = (box: Box): Box | null => {
    const { base, pin, branch } = box
    const d0 = Math.max((box.u0 + box.v0) / 2, base.near)
    const d1 = Math.min((box.u1 + box.v1) / 2, base.far)
    const r0 = Math.max((box.u0 - box.v1) / 2, pin.near)
    const r1 = Math.min((box.u1 - box.v0) / 2, pin.far)
    const spare = 1e-12 * p.extendedLength
    if (d0 > d1 + spare || r0 > r1 + spare) return null
    const u0 = Math.max(box.u0, d0 + r0 - spare)
    const u1 = Math.min(box.u1, d1 + r1 + spare)
    const v0 = Math.max(box.v0, d0 - r1 - spare)
    const v1 = Math.min(box.v1, d1 - r0 + spare)
    if (u0 > u1 || v0 > v1) return null
    if (swingBound(p, { u0, v0, v1 }, corners) < swing - ROUNDING) return null
    const [a, b] = branch === 1 ? [shortest, p.retractedLength + lengthError] : [p.extendedLength - lengthError, longest]
    let [lowest, highest] = [Number.POSITIVE_INFINITY, 0]
    for (const { du, dv, dr } of corners) {
      const [near, wide] = [least(v0 + dv, v1 + dv), most(v0 + dv, v1 + dv)]
      if (swingBetween(u1 + du, near, shortest, longest) > p.maxSwing + ROUNDING) return null
      const widest = (1 + 1e-9) * Math.min(leverArm(u1 + du, near, shortest), leverArm(u1 + du, near, longest))
      if (widest < p.minLever || widest < p.minTransmissionSine * (r0 + dr)) return null
      if (p.maxLever < Number.POSITIVE_INFINITY) {
        const top = Math.min(longest, Math.max(shortest, Math.sqrt((u0 + du) * wide)))
        if (leverArm(u0 + du, wide, top) * (1 - 1e-9) > p.maxLever) return null
      }
      lowest = Math.min(lowest, hingeAngle(u0 + du, near, a))
      highest = Math.max(highest, hingeAngle(u1 + du, wide, b))
    }
    arcOf(base, d0, Math.max(d0, d1), baseArc)
    arcOf(pin, r0, Math.max(r0, r1), pinArc)
    if (baseArc.from > baseArc.to + ROUNDING || pinArc.from > pinArc.to + ROUNDING) return null
    // the low end of every build lies where it may: w + φ retracted, or w − φ extended
    const turn = turnOf(pivotError, d1) + turnOf(pivotError, r1)
    let w0 = Math.max(box.w0, (branch === 1 ? p.lowFrom + turn - lowest : p.lowFrom + turn + highest) - ROUNDING)
    let w1 = Math.min(box.w1, (branch === 1 ? p.lowTo - turn - highest : p.lowTo - turn + lowest) + ROUNDING)
    if (w0 > w1) return null
    // whole turns by which that range and the one of the regions may meet
    const from = Math.max(baseArc.from, box.a0) - pinArc.to - ROUNDING
    const to = Math.min(baseArc.to, box.a1) - pinArc.from + ROUNDING
    const first = Math.ceil((w0 - to) / TURN)
    const last = Math.floor((w1 - from) / TURN)
    if (first > last) return null
    w0 = Math.max(w0, from + first * TURN)
    w1 = Math.min(w1, to + last * TURN)
    let [a0, a1] = [Math.max(box.a0, baseArc.from - ROUNDING), Math.min(box.a1, baseArc.to + ROUNDING)]
    if (first === last) {
      a0 = Math.max(a0, w0 - first * TURN + pinArc.from - ROUNDING)
      a1 = Math.min(a1, w1 - first * TURN + pinArc.to + ROUNDING)
    }
    if (a0 > a1) return null
    const left = { u0, u1, v0, v1, w0: Math.min(w0, w1), w1: Math.max(w0, w1), a0, a1, base, pin, branch }
    return isBlocked(left, d0, Math.max(d0, d1), r0, Math.max(r0, r1)) ? null : left
  }

  const cutDown = (boxes: readonly Box[]) => boxes.flatMap((box) => contract(box) ?? [])

  /** A force that no placement of a contracted box goes below at its worst build. */
  const forceBound = ({ u0, u1, v0, v1, w0, w1, base, pin, branch }: Box): number => {
    const turn =
      pivotError === 0 ? 0 : turnOf(pivotError, Math.min((u1 + v1) / 2, base.far)) + turnOf(pivotError, Math.min((u1 - v0) / 2, pin.far))
    const at = (length: number, { du, dv }: Corner) => {
      const lever = leverArm(u1 + du, least(v0 + dv, v1 + dv), length)
      const p0 = hingeAngle(u1 + du, most(v0 + dv, v1 + dv), length)
      const p1 = hingeAngle(u0 + du, least(v0 + dv, v1 + dv), length)
      const from = (branch === 1 ? w0 + p0 : w0 - p1) - 1e-9
      const to = (branch === 1 ? w1 + p1 : w1 - p0) + 1e-9
      // some build turns the arm to the worst angle that all placements of the box have in common
      const moment = to - from > 2 * turn ? loads.least(from + turn, to - turn) : loads.reached(to - turn, from + turn)
      return moment / lever
    }
    let [bound, pose, corner] = [0, shortest, corners[0] as Corner]
    for (const off of corners)
      for (const length of lengths) {
        const force = at(length, off)
        if (force > bound) [bound, pose, corner] = [force, length, off]
      }
    // a peak between two poses would leave a gap that no smaller box closes
    for (let step = (longest - shortest) / (POSES - 1) / 2, k = 0; k < CLOSER; k++, step /= 2)
      for (const length of [pose - step, pose + step]) {
        const force = length >= shortest && length <= longest ? at(length, corner) : 0
        if (force > bound) [bound, pose] = [force, length]
      }
    return bound * (1 - 1e-9)
  }

  const split = (box: Box): readonly Box[] => {
    const [u, v, w, a] = [(box.u0 + box.u1) / 2, (box.v0 + box.v1) / 2, (box.w0 + box.w1) / 2, (box.a0 + box.a1) / 2]
    const [near, wide] = [least(box.v0, box.v1), most(box.v0, box.v1)]
    const swingAt = (x: number, y: number) => swingBetween(x, y, p.retractedLength, p.extendedLength)
    // how much each side of the box blurs the lever arm where it is smallest, and the angle
    const blur = (x: number, y: number) => Math.abs(Math.log(x / y))
    const blurU = Math.max(
      blur(leverArm(box.u1, wide, p.extendedLength), leverArm(box.u0, wide, p.extendedLength)),
      swingAt(box.u0, wide) - swingAt(box.u1, wide),
    )
    const blurV = Math.max(
      blur(leverArm(u, near, p.retractedLength), leverArm(u, wide, p.retractedLength)),
      swingAt(u, wide) - swingAt(u, near),
      (box.v1 - box.v0) / p.extendedLength,
    )
    const blurW = box.w1 - box.w0
    const blurA = keepOut === null ? 0 : box.a1 - box.a0
    if (blurA > blurU && blurA > blurV && blurA > blurW)
      return cutDown([
        { ...box, a1: a },
        { ...box, a0: a },
      ])
    if (blurW >= blurU && blurW >= blurV)
      return cutDown([
        { ...box, w1: w },
        { ...box, w0: w },
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
  }

  return { cutDown, forceBound, split }
}

/** Boxes that hold every allowed placement: one for each pair of region parts and each branch. */
export function startBoxes(p: PlaceProblem): Box[] {
  const off = 2 * p.pivotError + p.lengthError
  const free = { low: p.extendedLength + p.minDeadPointMargin + off, wide: p.retractedLength - p.minDeadPointMargin - off }
  return partsOf(p.fixedPivotRegion).flatMap((base) =>
    partsOf(p.movingPivotRegion).flatMap((pin) =>
      p.branches.flatMap((branch): Box[] => {
        const box = {
          u0: Math.max(free.low, base.near + pin.near),
          u1: base.far + pin.far,
          v0: Math.max(-free.wide, base.near - pin.far),
          v1: Math.min(free.wide, base.far - pin.near),
        }
        if (!(box.u0 <= box.u1 && box.v0 <= box.v1)) return []
        const reach = [hingeAngle(box.u1, most(box.v0, box.v1), lowLength(p, branch)), Math.PI] as const
        const turned = branch === 1 ? [p.lowFrom - reach[1], p.lowTo - reach[0]] : [p.lowFrom + reach[0], p.lowTo + reach[1]]
        return [{ ...box, w0: (turned[0] as number) - 1e-6, w1: (turned[1] as number) + 1e-6, a0: -TURN, a1: TURN, base, pin, branch }]
      }),
    ),
  )
}
