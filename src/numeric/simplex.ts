import type { Asking, Judged } from "./asking.js"
import type { Tried } from "./evolution.js"
import { dominates } from "./front.js"

/** How a local search is run. */
export interface SimplexOptions {
  readonly start: Float64Array
  /** First step along each axis, in shares of the unit cube. */
  readonly step?: number
  readonly budget?: number
  /** Size of the simplex at which to stop. */
  readonly tolerance?: number
}

/**
 * Local minimum in the unit cube without derivatives, by a simplex that walks downhill (J. A. Nelder, R. Mead, Computer J. 7, 1965, 308–313; steps by
 * number of dimensions after F. Gao, L. Han, Comput. Optim. Appl. 51, 2012, 259–277). Points beyond an edge are moved onto it. It begins anew
 * where it ended until that brings nothing more.
 */
export function* simplex({
  start,
  step = 0.05,
  budget = 2000,
  tolerance = 1e-12,
}: SimplexOptions): Asking<Judged, { readonly best: Tried; readonly tried: number }> {
  const n = start.length
  const first = (yield [start])[0] as Judged
  let best: Tried = { point: start, ...first }
  let tried = 1
  if (n === 0 || tried + n > budget) return { best, tried }
  const [expand, contract, shrink] = [1 + 2 / Math.max(n, 2), 0.75 - 1 / (2 * Math.max(n, 2)), 1 - 1 / Math.max(n, 2)]
  let width = step
  for (;;) {
    const before = best
    const corners = Array.from({ length: n }, (_, j) =>
      best.point.map((v, k) => (k === j ? (v + width <= 1 ? v + width : Math.max(0, v - width)) : v)),
    )
    const told = yield corners
    tried += n
    let all: Tried[] = [best, ...corners.map((point, i): Tried => ({ point, ...(told[i] as Judged) }))]
    // a step asks for two points, or for one and then all corners but the best
    while (tried + Math.max(2, n + 2) <= budget) {
      all.sort((a, b) => (dominates(a, b) ? -1 : dominates(b, a) ? 1 : 0))
      const [top, worst, second] = [all[0] as Tried, all[n] as Tried, all[n - 1] as Tried]
      const size = Math.max(...all.map(({ point }) => point.reduce((m, v, j) => Math.max(m, Math.abs(v - (top.point[j] as number))), 0)))
      if (size <= tolerance) break
      const middle = top.point.map((_, j) => all.slice(0, n).reduce((sum, { point }) => sum + (point[j] as number) / n, 0))
      const along = (t: number) => middle.map((m, j) => Math.min(1, Math.max(0, m + t * (m - (worst.point[j] as number)))))
      const ask = (t: number) => along(t)
      const mirrored: Tried = yield* tryAt(ask(1))
      tried++
      if (dominates(mirrored, top)) {
        const far = yield* tryAt(ask(expand))
        tried++
        all[n] = dominates(far, mirrored) ? far : mirrored
      } else if (dominates(mirrored, second)) all[n] = mirrored
      else {
        const outside = dominates(mirrored, worst)
        const near = yield* tryAt(ask(outside ? contract : -contract))
        tried++
        if (dominates(near, outside ? mirrored : worst)) all[n] = near
        else {
          const points = all
            .slice(1)
            .map(({ point }) => point.map((v, j) => (top.point[j] as number) + shrink * (v - (top.point[j] as number))))
          const answers = yield points
          tried += n
          all = [top, ...points.map((point, i): Tried => ({ point, ...(answers[i] as Judged) }))]
        }
      }
    }
    best = all.reduce((b, one) => (dominates(one, b) ? one : b), best)
    const gained = (before.goals[0] as number) - (best.goals[0] as number)
    const isBetter = best.violation < before.violation || gained > 1e-12 * Math.abs(best.goals[0] as number)
    if (!isBetter || tried + n > budget) return { best, tried }
    width = Math.max(width / 4, 1e-4)
  }
}

function* tryAt(point: Float64Array): Asking<Judged, Tried> {
  const answer = (yield [point])[0] as Judged
  return { point, ...answer }
}
