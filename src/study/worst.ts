// The most extreme results over a box of inputs.
import { type Judged, simplex, sobolPoints } from "../numeric/index.js"
import type { Bench } from "./bench.js"
import type { SpreadPlace } from "./spread.js"

/** The most extreme case found. It is not proved that there is none beyond it. */
export interface Extreme {
  readonly value: number
  /** The input it is found at, in SI by path. */
  readonly at: Readonly<Record<string, number>>
}

/** Both ends of a value over the box. */
export interface Worst {
  readonly low: Extreme
  readonly high: Extreme
}

/** Inputs of which every corner is tried; of more, the corners nearest to the extremes of the samples. */
const ALL_CORNERS = 8
/** Points that a search from the best corner may try, for each input. */
const STEPS = 24
/** Points within the box that are tried as well, for extremes that lie at no corner. */
const INSIDE = 31

/** Extremes of each value over the box: its corners, points within it, then a local search from the most extreme of them; null where nothing answers. */
export async function worstOf(bench: Bench, places: readonly SpreadPlace[], width: number): Promise<readonly (Worst | null)[]> {
  const n = places.length
  const rowOf = (point: ArrayLike<number>) =>
    places.map(({ box: [low, high], whole }, j) => {
      const value = low + (high - low) * (point[j] as number)
      return whole ? Math.round(value) : value
    })
  const corners =
    n <= ALL_CORNERS
      ? Array.from({ length: 2 ** n }, (_, bits) => Float64Array.from({ length: n }, (_, j) => (bits >> j) & 1))
      : // each input alone at both ends, the others at one end all: who falls or rises with each is then known
        [0, 1].flatMap((end) => [
          new Float64Array(n).fill(end),
          ...Array.from({ length: n }, (_, j) => new Float64Array(n).fill(end).map((v, k) => (k === j ? 1 - v : v))),
        ])
  const next = sobolPoints(n, 1)
  const inside = Array.from({ length: INSIDE }, () => {
    const point = new Float64Array(n)
    next(point)
    return point
  })
  const starts = [...corners, new Float64Array(n).fill(0.5), ...inside]
  const asked = await bench.try(starts.map(rowOf))
  const result: (Worst | null)[] = []
  for (let k = 0; k < width; k++) {
    const ends: (Extreme | null)[] = []
    for (const sign of [1, -1]) ends.push(await extreme(sign, k))
    const [low, high] = ends as [Extreme | null, Extreme | null]
    result.push(low && high ? { low, high } : null)
  }
  return result

  async function extreme(sign: number, k: number): Promise<Extreme | null> {
    const value = (i: number) => asked.values[i * width + k] as number
    let best = -1
    for (let i = 0; i < starts.length; i++) if (!Number.isNaN(value(i)) && (best < 0 || sign * value(i) < sign * value(best))) best = i
    let start: Float64Array = starts[best] ?? new Float64Array(n).fill(0.5)
    if (best >= 0 && n > ALL_CORNERS) {
      start = steepest(sign, value)
      const turned = await bench.try([rowOf(start)])
      if (!(sign * (turned.values[k] as number) < sign * value(best))) start = starts[best] as Float64Array
    }
    const judge = (values: Float64Array): Judged => {
      const own = values[k] as number
      return Number.isNaN(own) ? { goals: [0], violation: 1 } : { goals: [sign * own], violation: 0 }
    }
    const { best: found } = await bench.ask(simplex({ start, step: 0.25, budget: STEPS * n, tolerance: 1e-4 }), rowOf, judge)
    if (found.violation > 0) return null
    const at = Object.fromEntries(places.map(({ path }, j) => [path, rowOf(found.point)[j] as number]))
    return { value: sign * (found.goals[0] as number), at }
  }

  /** Every input at the end to which its own change pulls. */
  function steepest(sign: number, value: (i: number) => number): Float64Array {
    return Float64Array.from({ length: n }, (_, j) => {
      const change = value(1 + j) - value(0) - (value(n + 2 + j) - value(n + 1))
      return sign * change < 0 ? 1 : 0
    })
  }
}
