import type { Point } from "../drawing/index.js"

/** A plane curve by stations: distance along it and heading, from which its points follow. */
export interface Path {
  readonly along: readonly number[]
  /** Heading, rad, counted on without jumps. */
  readonly heading: readonly number[]
}

/** First and second derivative, at any t, of the cubic spline through (t, v) with given second derivatives at its ends. */
function spline(t: readonly number[], v: readonly number[], first: number, last: number): (x: number) => [number, number] {
  const n = t.length
  const h = t.slice(1).map((x, i) => x - (t[i] as number))
  const slope = h.map((d, i) => ((v[i + 1] as number) - (v[i] as number)) / d)
  // second derivatives at the inner points, by elimination of their tridiagonal system
  const m = new Array<number>(n).fill(0)
  const c = new Array<number>(n).fill(0)
  m[0] = first
  m[n - 1] = last
  for (let i = 1; i < n - 1; i++) {
    const [a, b] = [h[i - 1] as number, h[i] as number]
    const pivot = 2 * (a + b) - a * (c[i - 1] as number)
    c[i] = b / pivot
    m[i] = (6 * ((slope[i] as number) - (slope[i - 1] as number)) - a * (m[i - 1] as number)) / pivot
  }
  for (let i = n - 2; i > 0; i--) m[i] = (m[i] as number) - (c[i] as number) * (m[i + 1] as number)
  return (x) => {
    let i = 0
    while (i < n - 2 && x > (t[i + 1] as number)) i++
    const d = h[i] as number
    const [p, q] = [(t[i + 1] as number) - x, x - (t[i] as number)]
    const [mi, mj] = [m[i] as number, m[i + 1] as number]
    return [(mj * q * q - mi * p * p) / (2 * d) + (slope[i] as number) - ((mj - mi) * d) / 6, (mi * p + mj * q) / d]
  }
}

/**
 * Second derivative at the end `a`, over the chord length, of the circle through three points: a curve that bends up to its end
 * goes on bending there, where a natural spline would end straight.
 */
function endBend(a: Point, b: Point, c: Point): Point {
  const [ux, uy, wx, wy] = [b.x - a.x, b.y - a.y, c.x - a.x, c.y - a.y]
  const cross = ux * wy - uy * wx
  const [u2, w2] = [ux * ux + uy * uy, wx * wx + wy * wy]
  // from the end to the circle's middle
  const [x, y] = [(wy * u2 - uy * w2) / (2 * cross), (ux * w2 - wx * u2) / (2 * cross)]
  const radius = Math.hypot(x, y)
  const half = Math.sqrt(u2) / (2 * radius)
  // three points in line, or as good as: it runs straight
  if (!(half > 1e-9)) return { x: 0, y: 0 }
  const perChord = Math.asin(Math.min(1, half)) / half
  return { x: (x / radius ** 2) * perChord ** 2, y: (y / radius ** 2) * perChord ** 2 }
}

/** A smooth path through points (cubic spline on the chord length), with the minimum radius met on it. */
export function pathThroughPoints(points: readonly Point[], stations: number): Path & { readonly leastRadius: number } {
  const t = [0]
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1] as Point, points[i] as Point]
    t.push((t[i - 1] as number) + Math.hypot(b.x - a.x, b.y - a.y))
  }
  const [p, q, r] = points.slice(0, 3) as [Point, Point, Point]
  const [u, v, w] = points.slice(-3) as [Point, Point, Point]
  const [first, last] = [endBend(p, q, r), endBend(w, v, u)]
  const through = (key: "x" | "y") =>
    spline(
      t,
      points.map((one) => one[key]),
      first[key],
      last[key],
    )
  const [x, y] = [through("x"), through("y")]
  const end = t[t.length - 1] as number
  const along = [0]
  const heading: number[] = []
  let sharpest = 0
  const speed = (u: number) => Math.hypot(x(u)[0], y(u)[0])
  for (let i = 0; i <= stations; i++) {
    const u = (end * i) / stations
    const [dx, ddx] = x(u)
    const [dy, ddy] = y(u)
    const raw = Math.atan2(dy, dx)
    const last = heading[i - 1]
    heading.push(last === undefined ? raw : raw + 2 * Math.PI * Math.round((last - raw) / (2 * Math.PI)))
    sharpest = Math.max(sharpest, Math.abs(dx * ddy - dy * ddx) / Math.hypot(dx, dy) ** 3)
    if (i > 0) {
      const from = (end * (i - 1)) / stations
      along.push((along[i - 1] as number) + ((u - from) / 6) * (speed(from) + 4 * speed((u + from) / 2) + speed(u)))
    }
  }
  return { along, heading, leastRadius: sharpest > 0 ? 1 / sharpest : Number.POSITIVE_INFINITY }
}

/** An arc: stations close enough that chords stay within `error` of it. */
export function arcPath(radius: number, angle: number, error: number): Path {
  const count = Math.min(4000, Math.max(8, 2 * Math.ceil(angle / Math.sqrt((8 * error) / radius) / 2)))
  const parts = Array.from({ length: count + 1 }, (_, i) => i / count)
  return { along: parts.map((p) => p * radius * angle), heading: parts.map((p) => p * angle) }
}

/** Adds a straight run at both ends. */
export function withRuns({ along, heading }: Path, straight: number): Path {
  if (!(straight > 0)) return { along, heading }
  const last = along.length - 1
  return {
    along: [0, ...along.map((s) => s + straight), (along[last] as number) + 2 * straight],
    heading: [heading[0] as number, ...heading, heading[last] as number],
  }
}

/** The same path bent further by a factor, its length kept. */
export function overbent({ along, heading }: Path, factor: number): Path {
  const first = heading[0] as number
  return { along, heading: heading.map((h) => first + (h - first) * factor) }
}

/** Points of a path: each step is taken as an arc between the headings of its ends. */
export function pointsOf({ along, heading }: Path, start: Point = { x: 0, y: 0 }, turn = 0): Point[] {
  const points = [start]
  for (let i = 1; i < along.length; i++) {
    const [a, b] = [(heading[i - 1] as number) + turn, (heading[i] as number) + turn]
    const half = (b - a) / 2
    const chord = ((along[i] as number) - (along[i - 1] as number)) * (Math.abs(half) < 1e-6 ? 1 - half ** 2 / 6 : Math.sin(half) / half)
    const last = points[i - 1] as Point
    points.push({ x: last.x + chord * Math.cos((a + b) / 2), y: last.y + chord * Math.sin((a + b) / 2) })
  }
  return points
}

/** Points moved square to the path, to its left by `distance`. */
export function offset(points: readonly Point[], heading: readonly number[], distance: number, turn = 0): Point[] {
  return points.map((p, i) => {
    const h = (heading[i] as number) + turn
    return { x: p.x - distance * Math.sin(h), y: p.y + distance * Math.cos(h) }
  })
}
