/** A bar's middle line, m. */
export interface BarSi {
  readonly x1: number
  readonly y1: number
  readonly x2: number
  readonly y2: number
}

/** Where the moving part's axes stand, m and rad. */
export interface PoseSi {
  readonly x: number
  readonly y: number
  readonly angle: number
}

/** A part that moves through poses against fixed bars. */
export interface Moved {
  readonly movingBars: readonly BarSi[]
  readonly fixedBars: readonly BarSi[]
  readonly poses: readonly PoseSi[]
}

/** Nearest points of two bars, the first on the moving one. */
export interface Nearest {
  readonly distance: number
  readonly ax: number
  readonly ay: number
  readonly bx: number
  readonly by: number
}

/** Nearest point of a bar to a point, as a pair. */
function nearestOnBar(px: number, py: number, b: BarSi): readonly [number, number] {
  const [dx, dy] = [b.x2 - b.x1, b.y2 - b.y1]
  const square = dx * dx + dy * dy
  const t = square > 0 ? Math.min(1, Math.max(0, ((px - b.x1) * dx + (py - b.y1) * dy) / square)) : 0
  return [b.x1 + t * dx, b.y1 + t * dy]
}

/** Crossing of two bars, or null. */
function crossing(a: BarSi, b: BarSi): readonly [number, number] | null {
  const [ux, uy, vx, vy] = [a.x2 - a.x1, a.y2 - a.y1, b.x2 - b.x1, b.y2 - b.y1]
  const cross = ux * vy - uy * vx
  if (cross === 0) return null
  const [wx, wy] = [b.x1 - a.x1, b.y1 - a.y1]
  const [s, t] = [(wx * vy - wy * vx) / cross, (wx * uy - wy * ux) / cross]
  return s >= 0 && s <= 1 && t >= 0 && t <= 1 ? [a.x1 + s * ux, a.y1 + s * uy] : null
}

/** Shortest way between two bars' middles: at a crossing none, else from an end of one to the other. */
export function barDistance(a: BarSi, b: BarSi): Nearest {
  const meet = crossing(a, b)
  if (meet) return { distance: 0, ax: meet[0], ay: meet[1], bx: meet[0], by: meet[1] }
  let best: Nearest | null = null
  for (const [px, py, other, flip] of [
    [a.x1, a.y1, b, false],
    [a.x2, a.y2, b, false],
    [b.x1, b.y1, a, true],
    [b.x2, b.y2, a, true],
  ] as const) {
    const [qx, qy] = nearestOnBar(px, py, other)
    const distance = Math.hypot(qx - px, qy - py)
    if (best === null || distance < best.distance)
      best = flip ? { distance, ax: qx, ay: qy, bx: px, by: py } : { distance, ax: px, ay: py, bx: qx, by: qy }
  }
  return best as Nearest
}

function placed(bar: BarSi, pose: PoseSi): BarSi {
  const [c, s] = [Math.cos(pose.angle), Math.sin(pose.angle)]
  return {
    x1: pose.x + c * bar.x1 - s * bar.y1,
    y1: pose.y + s * bar.x1 + c * bar.y1,
    x2: pose.x + c * bar.x2 - s * bar.y2,
    y2: pose.y + s * bar.x2 + c * bar.y2,
  }
}

function poseAt(poses: readonly PoseSi[], at: number): PoseSi {
  const leg = Math.min(Math.floor(at), poses.length - 2)
  const [p, q] = [poses[leg] as PoseSi, poses[leg + 1] as PoseSi]
  const f = at - leg
  return { x: p.x + f * (q.x - p.x), y: p.y + f * (q.y - p.y), angle: p.angle + f * (q.angle - p.angle) }
}

/** Nearest approach of the moving part in the pose at `at`. */
export function nearestAt(si: Moved, at: number): Nearest {
  const pose = poseAt(si.poses, at)
  let best: Nearest | null = null
  for (const bar of si.movingBars) {
    const there = placed(bar, pose)
    for (const other of si.fixedBars) {
      const one = barDistance(there, other)
      if (best === null || one.distance < best.distance) best = one
    }
  }
  return best as Nearest
}

/** A place on a bar: how far the other part is at most and at least in the motion, m. */
export interface ClosingPlace {
  readonly open: number
  readonly closed: number
}

/** Places looked at on all bars together and moments in the whole motion, at least. */
const PLACES = 200
const MOMENTS = 240

/** Square of the distance from a point to the nearest of some bars. */
function squareTo(bars: readonly BarSi[], px: number, py: number): number {
  let least = Number.POSITIVE_INFINITY
  for (const b of bars) {
    const [dx, dy] = [b.x2 - b.x1, b.y2 - b.y1]
    const [ex, ey] = [px - b.x1, py - b.y1]
    const square = dx * dx + dy * dy
    const t = square > 0 ? Math.min(1, Math.max(0, (ex * dx + ey * dy) / square)) : 0
    const [rx, ry] = [ex - t * dx, ey - t * dy]
    least = Math.min(least, rx * rx + ry * ry)
  }
  return least
}

/**
 * Places along the bars of both parts, which move no faster than `fastest` along each leg, where the other part comes nearer and goes farther by more than `still`, each with how far
 * that is, stretched both ways by half the way to the next place and moment, so that none between them is overlooked.
 */
export function closingPlaces(si: Moved, fastest: readonly number[], still: number): ClosingPlace[] {
  const steps = Math.ceil(MOMENTS / fastest.length)
  const moments = Array.from({ length: fastest.length * steps + 1 }, (_, k) => poseAt(si.poses, k / steps))
  const between = Math.max(...fastest) / steps / 2
  const moved = moments.map((pose) => si.movingBars.map((bar) => placed(bar, pose)))
  const each = Math.max(3, Math.ceil(PLACES / (si.movingBars.length + si.fixedBars.length)))
  const found: ClosingPlace[] = []
  // `own` is the bar at each moment, `others` the bars it is held against then
  const look = (own: (moment: number) => BarSi, others: (moment: number) => readonly BarSi[]) => {
    const bar = own(0)
    const slack = Math.hypot(bar.x2 - bar.x1, bar.y2 - bar.y1) / (each - 1) / 2 + between
    for (let k = 0; k < each; k++) {
      const f = k / (each - 1)
      let [open, closed] = [0, Number.POSITIVE_INFINITY]
      for (let m = 0; m < moments.length; m++) {
        const b = own(m)
        const d = squareTo(others(m), b.x1 + f * (b.x2 - b.x1), b.y1 + f * (b.y2 - b.y1))
        open = Math.max(open, d)
        closed = Math.min(closed, d)
      }
      const [most, least] = [Math.sqrt(open), Math.sqrt(closed)]
      if (most - least > still) found.push({ open: most + slack, closed: least - slack })
    }
  }
  const there = (m: number) => moved[m] as BarSi[]
  for (const bar of si.fixedBars) look(() => bar, there)
  si.movingBars.forEach((_, i) => {
    look(
      (m) => there(m)[i] as BarSi,
      () => si.fixedBars,
    )
  })
  return found
}
