// What is left of a placement when every pivot and both lengths are built as badly as the tolerances allow.

import { hingeAngle, leverArm, type Motion, type PlaceProblem, swingBetween, turnOf } from "./model.js"

/** The range of distances and lengths in which an actuator may come to be built, and what it turns the arm by besides. */
export interface Build {
  readonly distances: readonly [number, number]
  readonly radii: readonly [number, number]
  readonly retracted: readonly [number, number]
  readonly extended: readonly [number, number]
  /** Turn of the arm by pivots that are off across their lines to the hinge, either way. */
  readonly turn: number
}

export const buildOf = (p: PlaceProblem, distance: number, radius: number): Build => {
  const { pivotError: e, lengthError: l, retractedLength, extendedLength } = p
  return {
    distances: [distance - e, distance + e],
    radii: [radius - e, radius + e],
    retracted: [retractedLength - l, retractedLength + l],
    extended: [extendedLength - l, extendedLength + l],
    turn: turnOf(e, distance) + turnOf(e, radius),
  }
}

/** The four builds with both pivots as far off along their lines as they may be; one where nothing may be off. */
export const cornersOf = ({ distances, radii }: Build): readonly (readonly [number, number])[] =>
  distances[0] === distances[1] ? [[distances[0], radii[0]]] : distances.flatMap((d) => radii.map((r) => [d, r] as const))

/** Smallest lever arm and smallest sine of the transmission angle: both lie at a corner and at an end of the stroke. */
export function leastLevers(build: Build): { readonly lever: number; readonly sine: number } {
  let [lever, sine] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY]
  for (let i = 0; i < 8; i++) {
    const [d, r] = [build.distances[i & 1] as number, build.radii[(i >> 1) & 1] as number]
    const here = leverArm(d + r, d - r, i < 4 ? build.retracted[0] : build.extended[1])
    if (here < lever) lever = here
    if (here < sine * r) sine = here / r
  }
  return { lever, sine }
}

/** A lever arm that no pose of any build exceeds: min(D, r) where the rod can come square to the shorter one, else at an end. */
export function mostLever(build: Build): number {
  const { distances, radii, retracted, extended } = build
  const near = Math.max(0, distances[0] - radii[1], radii[0] - distances[1])
  const far = Math.max(distances[1] - radii[0], radii[1] - distances[0])
  const squareFrom = Math.sqrt(near * (distances[0] + radii[0]))
  const squareTo = Math.sqrt(far * (distances[1] + radii[1]))
  const shorter = Math.min(distances[1], radii[1])
  if (squareTo >= retracted[0] && squareFrom <= extended[1]) return shorter
  const length = squareTo < retracted[0] ? retracted[0] : extended[1]
  // with the rod nowhere square it only grows on the way to a corner
  return Math.max(...cornersOf(build).map(([d, r]) => leverArm(d + r, d - r, length)))
}

/** Range of the angle at the hinge at a length. */
export function hingeAngles({ distances, radii }: Build, length: number): readonly [number, number] {
  const at = (d: number, r: number) => hingeAngle(d + r, d - r, length)
  const [d0, d1] = distances
  const [r0, r1] = radii
  if (d0 === d1) return [at(d0, r0), at(d0, r0)]
  const [a, b, c, d] = [at(d0, r0), at(d0, r1), at(d1, r0), at(d1, r1)]
  let high = Math.max(a, b, c, d)
  // along an edge of the box the angle is largest where the rod stands square to the other pivot's line
  for (const longer of [d0, d1]) {
    const square = Math.sqrt(Math.max(0, longer * longer - length * length))
    if (square > r0 && square < r1) high = Math.max(high, at(longer, square))
  }
  for (const longer of [r0, r1]) {
    const square = Math.sqrt(Math.max(0, longer * longer - length * length))
    if (square > d0 && square < d1) high = Math.max(high, at(square, longer))
  }
  return [Math.min(a, b, c, d), high]
}

/** Slopes of the angle at the hinge with D² and r². */
function slopesAt(d: number, r: number, length: number): readonly [number, number] {
  const [x, y, z] = [d * d, r * r, length * length]
  // cos φ = (x + y − z)/(2·√(x·y)), and 2·√(x·y)·sin φ is four times the triangle's area
  const area = 2 * length * leverArm(d + r, d - r, length)
  return [-(x - y + z) / (2 * x * area), -(y - x + z) / (2 * y * area)]
}

/** A swing that no build stays below, and the corner where it was worked out. */
export interface LeastSwing {
  readonly swing: number
  readonly distance: number
  readonly radius: number
}

/**
 * A swing that no build stays below: it is convex in D² and r², so that it nowhere lies under the tangent plane at the corner where
 * it is smallest, which touches it there unless an edge dips below its own ends.
 */
export function leastSwing({ distances, radii, retracted, extended }: Build): LeastSwing {
  const [from, to] = [retracted[1], extended[0]]
  if (!(to > from)) return { swing: 0, distance: distances[0], radius: radii[0] }
  let [least, d, r] = [Number.POSITIVE_INFINITY, 0, 0]
  for (const x of distances)
    for (const y of radii) {
      const swing = swingBetween(x + y, x - y, from, to)
      if (swing < least) [least, d, r] = [swing, x, y]
    }
  if (distances[0] === distances[1]) return { swing: least, distance: d, radius: r }
  const [start, end] = [slopesAt(d, r, from), slopesAt(d, r, to)]
  const other = ([low, high]: readonly [number, number], at: number) => (at === low ? high : low)
  const fall = (slope: number, range: readonly [number, number], at: number) => Math.min(0, slope * (other(range, at) ** 2 - at * at))
  return { swing: Math.max(0, least + fall(end[0] - start[0], distances, d) + fall(end[1] - start[1], radii, r)), distance: d, radius: r }
}

/** The most that any build swings: convex as it is, that lies at a corner. */
export const mostSwing = (build: Build): number =>
  Math.max(...cornersOf(build).map(([d, r]) => swingBetween(d + r, d - r, build.retracted[0], build.extended[1])))

/** Range of the arm angle at the clockwise end of the swing. */
export function lowEnds(build: Build, { apart, branch }: Pick<Motion, "apart" | "branch">): readonly [number, number] {
  const ends = branch === 1 ? build.retracted : build.extended
  const [first, last] = [hingeAngles(build, ends[0])[0], hingeAngles(build, ends[1])[1]]
  return branch === 1 ? [apart - build.turn + first, apart + build.turn + last] : [apart - build.turn - last, apart + build.turn - first]
}
