import type { Point } from "../drawing/index.js"

/** A plane curve by stations: distance along it and heading, from which its points follow. */
export interface Path {
  readonly along: readonly number[]
  /** Heading, rad, counted on without jumps. */
  readonly heading: readonly number[]
}

/** Natural cubic through (t, v): value, first and second derivative at any t. */
function spline(t: readonly number[], v: readonly number[]): (x: number) => [number, number, number] {
  const n = t.length
  const h = t.slice(1).map((x, i) => x - (t[i] as number))
  const slope = h.map((d, i) => ((v[i + 1] as number) - (v[i] as number)) / d)
  // second derivatives, zero at both ends, by elimination of the tridiagonal system
  const m = new Array<number>(n).fill(0)
  const c = new Array<number>(n).fill(0)
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
    return [
      (mi * p ** 3 + mj * q ** 3) / (6 * d) + ((v[i] as number) / d - (mi * d) / 6) * p + ((v[i + 1] as number) / d - (mj * d) / 6) * q,
      (mj * q * q - mi * p * p) / (2 * d) + (slope[i] as number) - ((mj - mi) * d) / 6,
      (mi * p + mj * q) / d,
    ]
  }
}

/** A smooth path through points (natural cubic on the chord length), with the least radius met on it. */
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
  const speed = (u: number) => Math.hypot(x(u)[1], y(u)[1])
  for (let i = 0; i <= stations; i++) {
    const u = (end * i) / stations
    const [, dx, ddx] = x(u)
    const [, dy, ddy] = y(u)
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

/** An arc with straight ends: stations close enough that chords stay within `error` of it. */
export function arcPath(radius: number, angle: number, straight: number, error: number): Path {
  const count = Math.min(4000, Math.max(8, 2 * Math.ceil(angle / Math.sqrt((8 * error) / radius) / 2)))
  const path = Array.from({ length: count + 1 }, (_, i) => ({ s: straight + (radius * angle * i) / count, h: (angle * i) / count }))
  const all = straight > 0 ? [{ s: 0, h: 0 }, ...path, { s: 2 * straight + radius * angle, h: angle }] : path
  return { along: all.map((p) => p.s), heading: all.map((p) => p.h) }
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
