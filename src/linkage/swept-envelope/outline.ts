import type { Point } from "../hinge/geometry.js"

/** A corner of an outline and the part of it that it belongs to. */
export interface OutlineCorner {
  /** Number of the part: parts that nothing joins are drawn apart. [number] */
  readonly part: number
  /** Coordinate x. [m] */
  readonly x: number
  /** Coordinate y. [m] */
  readonly y: number
}

/** Distance from a point to a convex piece (corners counter-clockwise, or two ends), 0 inside. */
function distanceTo(piece: readonly Point[], x: number, y: number): number {
  let [least, inside] = [Number.POSITIVE_INFINITY, piece.length > 2]
  for (let i = 0; i < piece.length; i++) {
    const [a, b] = [piece[i] as Point, piece[(i + 1) % piece.length] as Point]
    const [ex, ey, px, py] = [b.x - a.x, b.y - a.y, x - a.x, y - a.y]
    if (ex * py - ey * px < 0) inside = false
    const squared = ex * ex + ey * ey
    const t = squared > 0 ? Math.min(1, Math.max(0, (px * ex + py * ey) / squared)) : 0
    const [gx, gy] = [px - t * ex, py - t * ey]
    least = Math.min(least, gx * gx + gy * gy)
  }
  return inside ? 0 : Math.sqrt(least)
}

/** Edges of a cell (0 below, 1 right, 2 above, 3 left) that the outline enters and leaves by, parts on its left. */
const crossings: readonly (readonly (readonly [number, number])[])[] = [
  [],
  [[0, 3]],
  [[1, 0]],
  [[1, 3]],
  [[2, 1]],
  [
    [0, 1],
    [2, 3],
  ],
  [[2, 0]],
  [[2, 3]],
  [[3, 2]],
  [[0, 2]],
  [
    [3, 0],
    [1, 2],
  ],
  [[1, 2]],
  [[3, 1]],
  [[0, 1]],
  [[3, 0]],
  [],
]

/**
 * Outline of convex pieces grown by a radius, traced on a square grid (W. E. Lorensen, H. E. Cline, 1987, in the plane).
 * Grown by √2 grid cells more, so that every grid cell which a piece touches lies inside; holes are filled in.
 *
 * @param pieces - convex pieces
 * @param radius - how far parts stand out around them, m
 * @param cell - side of a grid cell, m
 */
export function tracedOutline(pieces: readonly (readonly Point[])[], radius: number, cell: number): OutlineCorner[] {
  const grown = radius + Math.SQRT2 * cell
  const pad = grown + 2 * cell
  const all = pieces.flat()
  const low = all.reduce((m, p) => ({ x: Math.min(m.x, p.x), y: Math.min(m.y, p.y) }), all[0] as Point)
  const high = all.reduce((m, p) => ({ x: Math.max(m.x, p.x), y: Math.max(m.y, p.y) }), all[0] as Point)
  const [x0, y0] = [low.x - pad, low.y - pad]
  const [nx, ny] = [Math.ceil((high.x + pad - x0) / cell) + 1, Math.ceil((high.y + pad - y0) / cell) + 1]
  const field = new Float64Array(nx * ny).fill(2 * cell)
  for (const piece of pieces) {
    const [xs, ys] = [piece.map((p) => p.x), piece.map((p) => p.y)]
    const [i0, i1] = [Math.min(...xs) - pad, Math.max(...xs) + pad].map((x) => (x - x0) / cell) as [number, number]
    const [j0, j1] = [Math.min(...ys) - pad, Math.max(...ys) + pad].map((y) => (y - y0) / cell) as [number, number]
    for (let j = Math.max(0, Math.floor(j0)); j <= Math.min(ny - 1, Math.ceil(j1)); j++)
      for (let i = Math.max(0, Math.floor(i0)); i <= Math.min(nx - 1, Math.ceil(i1)); i++) {
        const k = j * nx + i
        // two cells inside no crossing is near: its exact depth does not matter
        if ((field[k] as number) > -2 * cell)
          field[k] = Math.min(field[k] as number, distanceTo(piece, x0 + i * cell, y0 + j * cell) - grown)
      }
  }
  return loops(field, nx, ny, (i, j) => ({ x: x0 + i * cell, y: y0 + j * cell }))
}

/** Closed lines along which a field on a grid changes sign, those that run round parts rather than holes. */
function loops(field: Float64Array, nx: number, ny: number, at: (i: number, j: number) => Point): OutlineCorner[] {
  const value = (i: number, j: number) => field[j * nx + i] as number
  /** Numbers of the four edges of a cell, shared with its neighbours. */
  const edgeKey = (i: number, j: number, edge: number) =>
    edge === 0 ? 2 * (j * nx + i) : edge === 1 ? 2 * (j * nx + i + 1) + 1 : edge === 2 ? 2 * ((j + 1) * nx + i) : 2 * (j * nx + i) + 1
  const place = (key: number): Point => {
    const k = key >> 1
    const [i, j] = [k % nx, Math.floor(k / nx)]
    const [di, dj] = key % 2 ? [0, 1] : [1, 0]
    const [a, b] = [value(i, j), value(i + di, j + dj)]
    const t = a / (a - b)
    return at(i + di * t, j + dj * t)
  }
  const next = new Map<number, number>()
  for (let j = 0; j + 1 < ny; j++)
    for (let i = 0; i + 1 < nx; i++) {
      const inside = [value(i, j), value(i + 1, j), value(i + 1, j + 1), value(i, j + 1)].map((v) => v <= 0)
      const kind = inside.reduce((sum, v, bit) => sum + (v ? 1 << bit : 0), 0)
      for (const [from, to] of crossings[kind] as (typeof crossings)[number]) next.set(edgeKey(i, j, from), edgeKey(i, j, to))
    }
  const corners: OutlineCorner[] = []
  let part = 0
  for (const start of next.keys()) {
    const loop: Point[] = []
    for (let key = start; next.has(key); ) {
      loop.push(place(key))
      const following = next.get(key) as number
      next.delete(key)
      key = following
    }
    const area = loop.reduce((sum, p, i) => {
      const q = loop[(i + 1) % loop.length] as Point
      return sum + p.x * q.y - q.x * p.y
    }, 0)
    if (!(area > 0)) continue
    corners.push(...loop.map((p) => ({ part, ...p })))
    part++
  }
  return corners
}

/** The corner after each corner of an outline, within its part. */
export function nextCorners(outline: readonly OutlineCorner[]): OutlineCorner[] {
  const first = new Map<number, OutlineCorner>()
  for (const corner of outline) if (!first.has(corner.part)) first.set(corner.part, corner)
  return outline.map((corner, i) => {
    const following = outline[i + 1]
    return following && following.part === corner.part ? following : (first.get(corner.part) as OutlineCorner)
  })
}
