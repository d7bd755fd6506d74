import type { Point } from "./hinge/geometry.js"

const turn = (o: Point, a: Point, b: Point) => (a.x - o.x) * (b.y - o.y) - (a.y - o.y) * (b.x - o.x)

/** Convex outline of points, counter-clockwise, by the monotone chain (A. M. Andrew, 1979). */
export function convexOutline(points: readonly Point[]): Point[] {
  const sorted = [...points].sort((a, b) => a.x - b.x || a.y - b.y)
  const half = (list: readonly Point[]) => {
    const chain: Point[] = []
    for (const p of list) {
      while (chain.length > 1 && turn(chain[chain.length - 2] as Point, chain[chain.length - 1] as Point, p) <= 0) chain.pop()
      chain.push(p)
    }
    return chain.slice(0, -1)
  }
  if (sorted.length < 2) return sorted
  const outline = [...half(sorted), ...half(sorted.reverse())]
  return outline.length ? outline : [sorted[0] as Point]
}

/** Highest and lowest y of a segment between two abscissae, null where it does not get there. */
export function segmentBetween(a: Point, b: Point, left: number, right: number): { readonly low: number; readonly high: number } | null {
  const [p, q] = a.x <= b.x ? [a, b] : [b, a]
  if (q.x < left || p.x > right) return null
  const yAt = (x: number) => (q.x === p.x ? p.y : p.y + ((q.y - p.y) * (x - p.x)) / (q.x - p.x))
  const ends = q.x === p.x ? [p.y, q.y] : [yAt(Math.max(left, p.x)), yAt(Math.min(right, q.x))]
  return { low: Math.min(...ends), high: Math.max(...ends) }
}
