// A part that other motions may be mounted on: where it goes, as a frame that was its mechanism's own where the part shows 0.
import { type MassSpread, pointSpread, spreadAlong } from "./spread.js"
import { cross, dot, plus, scaled, type Triple } from "./triple.js"

/** Axes of a frame in another one's. A mirrored one has a left-handed set. */
export interface Frame {
  readonly at: Triple
  readonly x: Triple
  readonly y: Triple
  readonly z: Triple
}

/**
 * Where a part is: what lay at p in its mechanism's own frame while it showed 0 (an arm straight outward, one on a skew hinge
 * before any swing) lies at `frame.at + p₁·x + p₂·y + p₃·z` now; and how that goes for 1 of q.
 */
export interface Moving {
  readonly frame: Frame
  /** Turn for 1 of q, rad along its axis, and the speed of `frame.at`; then the slopes of both. */
  readonly turn: Triple
  readonly rate: Triple
  readonly turnBend: Triple
  readonly rateBend: Triple
  /** Names of the pins whose forces the weight that it carries adds to. */
  readonly pins: readonly string[]
}

/** A direction of a frame's own in the frame around it. */
export const turnedBy = ({ x, y, z }: Frame, v: Triple): Triple => plus(plus(scaled(x, v[0]), y, v[1]), z, v[2])

/** A place of a frame's own in the frame around it. */
export const placedBy = (frame: Frame, p: Triple): Triple => plus(frame.at, turnedBy(frame, p))

/** A frame of a frame. */
export const framedBy = (outer: Frame, inner: Frame): Frame => ({
  at: placedBy(outer, inner.at),
  x: turnedBy(outer, inner.x),
  y: turnedBy(outer, inner.y),
  z: turnedBy(outer, inner.z),
})

/** A frame as it is seen from another one in the same surroundings. */
export function seenFrom(viewer: Frame, { at, x, y, z }: Frame): Frame {
  const own = (v: Triple): Triple => [dot(viewer.x, v), dot(viewer.y, v), dot(viewer.z, v)]
  return { at: own(plus(at, viewer.at, -1)), x: own(x), y: own(y), z: own(z) }
}

/** A part that turns about an axis (of size 1) by an angle; its joint, at `before` where it shows 0, is at `joint` now and moves as told. */
export function turningPart(
  axis: Triple,
  angle: number,
  before: Triple,
  turns: { readonly rate: number; readonly bend: number },
  pins: readonly string[],
  joint: { readonly at: Triple; readonly rate: Triple; readonly bend: Triple } = { at: before, rate: [0, 0, 0], bend: [0, 0, 0] },
): Moving {
  const [c, s] = [Math.cos(angle), Math.sin(angle)]
  const turned = (v: Triple): Triple => plus(plus(scaled(v, c), cross(axis, v), s), axis, dot(axis, v) * (1 - c))
  const arm = turned(before)
  const [turn, turnBend] = [scaled(axis, turns.rate), scaled(axis, turns.bend)]
  return {
    frame: { at: plus(joint.at, arm, -1), x: turned([1, 0, 0]), y: turned([0, 1, 0]), z: turned([0, 0, 1]) },
    turn,
    turnBend,
    rate: plus(joint.rate, cross(turn, arm), -1),
    rateBend: plus(joint.bend, plus(cross(turnBend, arm), cross(turn, cross(turn, arm))), -1),
    pins,
  }
}

/** Masses of any shape, about the origin of a frame. */
export interface Masses {
  readonly mass: number
  /** Σ m·r, kg·m. */
  readonly first: Triple
  readonly spread: MassSpread
}

/** Masses as a frame has them, seen in the frame around it. */
export function massesIn(frame: Frame, { mass, first, spread }: Masses): Masses {
  const moved = turnedBy(frame, first)
  // each column of the spread turned, then each row
  const columns = [spreadAlong(spread, [1, 0, 0]), spreadAlong(spread, [0, 1, 0]), spreadAlong(spread, [0, 0, 1])].map((v) =>
    turnedBy(frame, v),
  ) as [Triple, Triple, Triple]
  const row = (i: 0 | 1 | 2) => turnedBy(frame, [columns[0][i], columns[1][i], columns[2][i]])
  const [rx, ry, rz] = [row(0), row(1), row(2)]
  const { at } = frame
  const own = pointSpread(mass, at)
  return {
    mass,
    first: plus(moved, at, mass),
    spread: {
      xx: own.xx + 2 * at[0] * moved[0] + rx[0],
      yy: own.yy + 2 * at[1] * moved[1] + ry[1],
      zz: own.zz + 2 * at[2] * moved[2] + rz[2],
      xy: own.xy + at[0] * moved[1] + at[1] * moved[0] + rx[1],
      xz: own.xz + at[0] * moved[2] + at[2] * moved[0] + rx[2],
      yz: own.yz + at[1] * moved[2] + at[2] * moved[1] + ry[2],
    },
  }
}
