import { type CouplerPose, centrePoint, circlePoint } from "../../src/linkage/index.js"
import type { Check, RowInputs } from "../helpers/references.js"

const DEG = Math.PI / 180
interface Point {
  readonly x: number
  readonly y: number
}
const apart = (a: Point, b: Point) => Math.hypot(a.x - b.x, a.y - b.y)
const placed = ({ x, y, angle }: CouplerPose, p: Point): Point => ({
  x: x + p.x * Math.cos(angle) - p.y * Math.sin(angle),
  y: y + p.x * Math.sin(angle) + p.y * Math.cos(angle),
})
const point = (pair: unknown): Point => {
  const [x, y] = pair as [number, number]
  return { x, y }
}

/** Three poses, in the row's own unit of length. */
function posesOf(n: RowInputs): [CouplerPose, CouplerPose, CouplerPose] {
  const list = (key: string): number[] => n[`positions_${key}`] ?? n[`positions_${key}_mm`]
  const [x, y, angle] = [list("x"), list("y"), list("deg")]
  return x.map((_, i) => ({ x: x[i], y: y[i], angle: (angle[i] as number) * DEG })) as [CouplerPose, CouplerPose, CouplerPose]
}

/** Pins for two fixed pivots, and the links they make. */
function byPivots(n: RowInputs, a: Point, b: Point) {
  const poses = posesOf(n)
  const [pinA, pinB] = [circlePoint(poses, a) as Point, circlePoint(poses, b) as Point]
  const [placeA, placeB] = [placed(poses[0], pinA), placed(poses[0], pinB)]
  return { pinA, pinB, placeA, placeB, linkA: apart(a, placeA), linkB: apart(b, placeB), coupler: apart(pinA, pinB) }
}

/** Fixed pivots for two pins, and the links they make. */
function byPins(poses: readonly CouplerPose[], a: Point, b: Point) {
  const [pivotA, pivotB] = [centrePoint(poses, a) as Point, centrePoint(poses, b) as Point]
  const first = poses[0] as CouplerPose
  return {
    pivotA,
    pivotB,
    linkA: apart(pivotA, placed(first, a)),
    linkB: apart(pivotB, placed(first, b)),
    ground: apart(pivotA, pivotB),
    coupler: apart(a, b),
  }
}

/** Checks of the rows on guidance through three positions. */
export const synthesisChecks: Readonly<Record<string, Check>> = {
  "synthesis-norton-fixed-pivots": (n) => {
    const out = byPivots(n, point(n.ground_a), point(n.ground_b))
    return {
      link_a: out.linkA,
      link_b: out.linkB,
      coupler: out.coupler,
      pin_a_x: out.placeA.x,
      pin_a_y: out.placeA.y,
      pin_b_x: out.placeB.x,
      pin_b_y: out.placeB.y,
    }
  },
  "synthesis-three-position-fixed-ground": (n) => {
    const out = byPivots(n, point(n.ground_a_mm), point(n.ground_b_mm))
    return {
      moving_a_x_mm: out.pinA.x,
      moving_a_y_mm: out.pinA.y,
      link_a_mm: out.linkA,
      moving_b_x_mm: out.pinB.x,
      moving_b_y_mm: out.pinB.y,
      link_b_mm: out.linkB,
    }
  },
  "synthesis-three-position-two-dyads": (n) => {
    const out = byPins(posesOf(n), point(n.moving_a_body_mm), point(n.moving_b_body_mm))
    return {
      ground_a_x_mm: out.pivotA.x,
      ground_a_y_mm: out.pivotA.y,
      link_a_mm: out.linkA,
      ground_b_x_mm: out.pivotB.x,
      ground_b_y_mm: out.pivotB.y,
      link_b_mm: out.linkB,
      coupler_mm: out.coupler,
    }
  },
  "three-position-synthesis": (n) => {
    const poses = [1, 2, 3].map((i) => ({ x: n[`pose${i}_x_mm`], y: n[`pose${i}_y_mm`], angle: n[`pose${i}_angle_deg`] * DEG }))
    const out = byPins(poses, { x: n.moving_pivot1_x_mm, y: n.moving_pivot1_y_mm }, { x: n.moving_pivot2_x_mm, y: n.moving_pivot2_y_mm })
    return {
      fixed_pivot1_x_mm: out.pivotA.x,
      fixed_pivot1_y_mm: out.pivotA.y,
      link1_mm: out.linkA,
      fixed_pivot2_x_mm: out.pivotB.x,
      fixed_pivot2_y_mm: out.pivotB.y,
      link2_mm: out.linkB,
      ground_mm: out.ground,
      coupler_mm: out.coupler,
    }
  },
}
