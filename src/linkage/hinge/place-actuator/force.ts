// The largest force over the stroke, as drawn and at the worst build.

import { branchAndBound, goldenMinimum } from "../../../numeric/index.js"
import { type Build, buildOf, cornersOf } from "./build.js"
import { hingeAngle, leverArm, type Motion, type PlaceProblem, turnOf } from "./model.js"

/** Lengths over the stroke at which forces are looked at. */
export const POSES = 33

/** A pose of a build and the force that it needs. */
export interface Peak {
  readonly force: number
  readonly length: number
  readonly distance: number
  readonly radius: number
  /** Arm angle there, rad. */
  readonly angle: number
}

/** Arm angle of a motion with its pivots at these distances. */
export const angleAt = ({ apart, branch }: Motion, distance: number, radius: number, length: number) =>
  apart + branch * hingeAngle(distance + radius, distance - radius, length)

/** Forces over a stroke at even lengths, every pose turned by up to `turn`, and how to climb to the largest one. */
function strokeOf(
  { loads }: PlaceProblem,
  { apart, branch }: Motion,
  [distance, radius]: readonly [number, number],
  [from, to]: readonly [number, number],
  turn: number,
) {
  const [u, v] = [distance + radius, distance - radius]
  const at = (length: number) => {
    const angle = apart + branch * hingeAngle(u, v, length)
    return (turn === 0 ? loads.at(angle) : loads.reached(angle - turn, angle + turn)) / leverArm(u, v, length)
  }
  const lengthOf = (i: number) => from + ((to - from) * i) / (POSES - 1)
  const forces = Array.from({ length: POSES }, (_, i) => at(lengthOf(i)))
  const force = Math.max(...forces)
  return {
    force,
    /** The load may rise, fall through nothing and rise again: every hump that could hold the peak is climbed. */
    peak: (over: number, tolerance: number) => {
      let peak = { force, length: lengthOf(forces.indexOf(force)) }
      forces.forEach((here, i) => {
        if (here < (forces[i - 1] ?? 0) || here < (forces[i + 1] ?? 0) || here < over) return
        const length = goldenMinimum((l) => -at(l), lengthOf(Math.max(0, i - 1)), lengthOf(Math.min(POSES - 1, i + 1)), tolerance)
        const climbed = at(length)
        if (climbed > peak.force) peak = { force: climbed, length }
      })
      return peak
    },
  }
}

/** Largest force of a motion as drawn. */
export function drawnPeak(p: PlaceProblem, motion: Motion): Peak {
  const { distance, radius } = motion
  const stroke = strokeOf(p, motion, [distance, radius], [p.retractedLength, p.extendedLength], 0)
  const { force, length } = stroke.peak(0.9 * stroke.force, 1e-9 * p.extendedLength)
  return { force, length, distance, radius, angle: angleAt(motion, distance, radius, length) }
}

/**
 * All but the largest force of all builds: the worst one has its pivots in a corner unless the load turns over just there.
 * `isWorse` ends it as soon as a pose needs more than a force; it begins with the pose that was the worst of the last motion.
 */
export function forcesOf(p: PlaceProblem): {
  readonly isWorse: (motion: Motion, limit: number) => boolean
  readonly worst: (motion: Motion) => number
} {
  const { loads } = p
  const [from, to] = [p.retractedLength - p.lengthError, p.extendedLength + p.lengthError]
  const corners = p.pivotError === 0 ? 1 : 4
  let last = 0
  return {
    isWorse: ({ distance, radius, apart, branch }, limit) => {
      const turn = turnOf(p.pivotError, distance) + turnOf(p.pivotError, radius)
      for (let k = 0; k < corners * POSES; k++) {
        const i = (k + last) % (corners * POSES)
        const corner = i % corners
        const off = (way: number) => (way === 0 ? -p.pivotError : p.pivotError)
        const [d, r] = [distance + off(corner & 1), radius + off(corner >> 1)]
        const length = from + ((to - from) * Math.floor(i / corners)) / (POSES - 1)
        const angle = apart + branch * hingeAngle(d + r, d - r, length)
        const moment = turn === 0 ? loads.at(angle) : loads.reached(angle - turn, angle + turn)
        if (!(moment > limit * leverArm(d + r, d - r, length))) continue
        last = i
        return true
      }
      return false
    },
    worst: (motion) => {
      const build = buildOf(p, motion.distance, motion.radius)
      const strokes = cornersOf(build).map((corner) => strokeOf(p, motion, corner, [from, to], build.turn))
      const over = 0.95 * Math.max(...strokes.map(({ force }) => force))
      // the force is flat about its peak: a length this rough leaves nothing of it out
      return Math.max(...strokes.map((stroke) => stroke.peak(over, 1e-5 * to).force))
    },
  }
}

interface Cell {
  readonly d: readonly [number, number]
  readonly r: readonly [number, number]
  readonly l: readonly [number, number]
}

const middle = ([from, to]: readonly [number, number]) => (from + to) / 2
const halves = ([from, to]: readonly [number, number]): readonly (readonly [number, number])[] => [
  [from, (from + to) / 2],
  [(from + to) / 2, to],
]

/** The strokes of the corners, and the edges at both ends of the stroke. */
function linesOf(build: Build): Cell[] {
  const { distances, radii } = build
  const ends = [build.retracted[0], build.extended[1]] as const
  const at = (x: number) => [x, x] as const
  const strokes = cornersOf(build).map(([d, r]) => ({ d: at(d), r: at(r), l: ends }))
  if (distances[0] === distances[1]) return strokes
  const edges = ends.flatMap((l) => [
    ...distances.map((d) => ({ d: at(d), r: radii, l: at(l) })),
    ...radii.map((r) => ({ d: distances, r: at(r), l: at(l) })),
  ])
  return [...strokes, ...edges]
}

/** How close to the worst force the certified one comes. */
const SHARP = 1e-5

/**
 * The largest force of any build, with a bound that none exceeds, by branch and bound. It lies on one of twelve lines: at a fixed
 * arm angle the force goes as |1/D − e^(iφ)/r|, convex in 1/D and 1/r, so that it only grows on the way to a corner or to an end
 * of the stroke; at an end, with φ fixed, it goes as 1/(D·r), which only grows on the way to an edge. At a fixed length the
 * reciprocal of the lever arm is convex in D² and r², so that a part of a line has its largest at an end.
 */
export function worstPeak(p: PlaceProblem, motion: Motion): { readonly peak: Peak; readonly bound: number } {
  const build: Build = buildOf(p, motion.distance, motion.radius)
  const { loads } = p
  const { branch, apart } = motion
  const attained = (distance: number, radius: number, length: number): Peak => {
    const angle = angleAt(motion, distance, radius, length)
    const force = loads.reached(angle - build.turn, angle + build.turn) / leverArm(distance + radius, distance - radius, length)
    return { force, length, distance, radius, angle }
  }
  const corners = cornersOf(build).map((corner) => {
    const stroke = strokeOf(p, motion, corner, [build.retracted[0], build.extended[1]], build.turn)
    const { length } = stroke.peak(0.9 * stroke.force, 1e-9 * p.extendedLength)
    return attained(corner[0], corner[1], length)
  })
  const known = corners.reduce((a, b) => (b.force > a.force ? b : a))
  const search = branchAndBound<Cell, Peak>({
    boxes: linesOf(build),
    bound: ({ d, r, l }) => {
      let lever = Number.POSITIVE_INFINITY
      for (const x of d) for (const y of r) for (const z of l) lever = Math.min(lever, leverArm(x + y, x - y, z))
      const [low, high] = [Math.max(0, d[0] - r[1], r[0] - d[1]), Math.max(d[1] - r[0], r[1] - d[0])]
      const angles = [hingeAngle(d[1] + r[1], high, l[0]), hingeAngle(d[0] + r[0], low, l[1])] as const
      const from = apart + (branch === 1 ? angles[0] : -angles[1]) - build.turn
      const to = apart + (branch === 1 ? angles[1] : -angles[0]) + build.turn
      return -loads.most(from, to) / lever
    },
    sample: ({ d, r, l }, best) => {
      const found = attained(middle(d), middle(r), middle(l))
      return -found.force < best ? { found, value: -found.force } : null
    },
    split: (cell) => {
      // halved where the lever arm and the angle change most
      const change = (key: keyof Cell) => {
        const at = (x: number, y: number, z: number) => hingeAngle(x + y, x - y, z)
        const [x, y, z] = [middle(cell.d), middle(cell.r), middle(cell.l)]
        const ends = cell[key]
        const [from, to] =
          key === "d"
            ? [at(ends[0], y, z), at(ends[1], y, z)]
            : key === "r"
              ? [at(x, ends[0], z), at(x, ends[1], z)]
              : [at(x, y, ends[0]), at(x, y, ends[1])]
        return Math.abs(to - from)
      }
      const sizes = (["d", "r", "l"] as const).map((key) => ({ key, size: change(key) }))
      const { key } = sizes.reduce((a, b) => (b.size > a.size ? b : a))
      return halves(cell[key]).map((half) => ({ ...cell, [key]: half }))
    },
    gap: SHARP,
    budget: 4000,
    start: { found: known, value: -known.force },
  })
  const found = search.best?.found ?? known
  const angle = build.turn === 0 ? found.angle : heaviestAngle(p, found.angle - build.turn, found.angle + build.turn)
  const force = loads.at(angle) / leverArm(found.distance + found.radius, found.distance - found.radius, found.length)
  return { peak: { ...found, angle, force }, bound: Math.max(force, -search.bound) }
}

/** Looks that leave one hump of the loads between them over a turn as narrow as tolerances make it. */
const ANGLES = 17

/** Arm angle of the largest moment in a range. */
function heaviestAngle({ loads }: PlaceProblem, from: number, to: number): number {
  const at = (i: number) => from + ((to - from) * i) / (ANGLES - 1)
  let best = 0
  for (let i = 1; i < ANGLES; i++) if (loads.at(at(i)) > loads.at(at(best))) best = i
  const climbed = goldenMinimum((angle) => -loads.at(angle), at(Math.max(0, best - 1)), at(Math.min(ANGLES - 1, best + 1)), 1e-9)
  return loads.at(climbed) > loads.at(at(best)) ? climbed : at(best)
}
