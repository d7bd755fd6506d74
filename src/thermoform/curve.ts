import type { Point } from "../drawing/index.js"

/** A plane curve by stations: distance along it and heading, from which its points follow. */
export interface Path {
  readonly along: readonly number[]
  /** Heading, rad, counted on without jumps. */
  readonly heading: readonly number[]
}

/**
 * First and second derivative, at any t, of the cubic spline through (t, v) whose first two and last two pieces are one cubic each
 * ("not a knot"): it bends on to its ends, where a natural spline would run out straight.
 */
function spline(t: readonly number[], v: readonly number[]): (x: number) => [number, number] {
  const n = t.length
  const h = t.slice(1).map((x, i) => x - (t[i] as number))
  const slope = h.map((d, i) => ((v[i + 1] as number) - (v[i] as number)) / d)
  const [h0, h1] = [h[0] as number, h[1] as number]
  const [g0, g1] = [h[n - 2] as number, h[n - 3] as number]
  // second derivatives by elimination of the tridiagonal system of the inner points, the end ones put in from the end conditions
  const m = new Array<number>(n).fill(0)
  const c = new Array<number>(n).fill(0)
  for (let i = 1; i < n - 1; i++) {
    const [a, b] = [h[i - 1] as number, h[i] as number]
    let [lower, middle, upper] = [a, 2 * (a + b), b]
    if (n === 3) [lower, middle, upper] = [0, 3 * (a + b), 0]
    else if (i === 1) [lower, middle, upper] = [0, middle + a + (a * a) / b, b - (a * a) / b]
    else if (i === n - 2) [lower, middle, upper] = [a - (b * b) / a, middle + b + (b * b) / a, 0]
    const pivot = middle - lower * (c[i - 1] as number)
    c[i] = upper / pivot
    m[i] = (6 * ((slope[i] as number) - (slope[i - 1] as number)) - lower * (m[i - 1] as number)) / pivot
  }
  for (let i = n - 3; i > 0; i--) m[i] = (m[i] as number) - (c[i] as number) * (m[i + 1] as number)
  if (n === 3) m[0] = m[2] = m[1] as number
  else {
    m[0] = (m[1] as number) - (h0 / h1) * ((m[2] as number) - (m[1] as number))
    m[n - 1] = (m[n - 2] as number) + (g0 / g1) * ((m[n - 2] as number) - (m[n - 3] as number))
  }
  return (x) => {
    let i = 0
    while (i < n - 2 && x > (t[i + 1] as number)) i++
    const d = h[i] as number
    const [p, q] = [(t[i + 1] as number) - x, x - (t[i] as number)]
    const [mi, mj] = [m[i] as number, m[i + 1] as number]
    return [(mj * q * q - mi * p * p) / (2 * d) + (slope[i] as number) - ((mj - mi) * d) / 6, (mi * p + mj * q) / d]
  }
}

/** A smooth path through points (cubic spline on the chord length), with the least radius met on it. */
export function pathThroughPoints(points: readonly Point[], stations: number): Path & { readonly leastRadius: number } {
  const t = [0]
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1] as Point, points[i] as Point]
    t.push((t[i - 1] as number) + Math.hypot(b.x - a.x, b.y - a.y))
  }
  const [x, y] = [
    spline(
      t,
      points.map((p) => p.x),
    ),
    spline(
      t,
      points.map((p) => p.y),
    ),
  ]
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
