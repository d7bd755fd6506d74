import type { Asking, Judged } from "./asking.js"
import { evolution, type Tried } from "./evolution.js"
import { dominates } from "./front.js"
import { seeded } from "./random.js"
import { simplex } from "./simplex.js"

/** How {@link globalMinimum} is run. */
export interface GlobalOptions {
  readonly dimensions: number
  readonly seed: number
  /** Points tried at most. */
  readonly budget: number
  readonly start?: readonly Float64Array[]
  /** Which numbers only pick one of several values: the local search leaves them alone. */
  readonly picks?: readonly boolean[]
}

/** The best point of several searches that know nothing of one another. */
export interface GlobalMinimum {
  readonly best: Tried
  readonly tried: number
  readonly runs: number
  /** How many of the runs ended there. */
  readonly agreeing: number
}

/** How near two goals are to be called the same, and how many runs must end there. */
const SAME = 1e-4
const ENOUGH = 3
/** A run goes on until its points differ by this much: enough to know which valley it is in. */
const ROUGH = 1e-3
/** Share of the budget for finding the valley; what is left goes into its lowest point. */
const EXPLORE = 0.6
/** Fewest points that a search begins with. */
const LEAST = 4
/** Size of the cloud round the best point in which it is found to all figures. */
const NEAR = 1e-3

/**
 * Minimum in the unit cube: evolution and then a local search, again and again with more points each time, until three runs have ended at the best
 * one or the budget is spent; then the best one to all figures. A minimum met again and again is likely the lowest one; it is not proved to be.
 */
export function* globalMinimum({ dimensions, seed, budget, start = [], picks = [] }: GlobalOptions): Asking<Judged, GlobalMinimum> {
  const ends: Tried[] = []
  let [tried, runs] = [0, 0]
  let size = Math.min(100, Math.max(30, 12 * dimensions))
  // what the first search leaves goes into the best point; a search of fewer points than four is none
  const explore = Math.max(LEAST, Math.floor(EXPLORE * budget))
  for (;;) {
    const run = yield* evolution({
      dimensions,
      goals: 1,
      seed: seed + runs * 7919,
      budget: explore - tried,
      size,
      start: runs === 0 ? start : [],
      tolerance: ROUGH,
    })
    tried += run.tried
    const polished = yield* polish(run.front[0] as Tried, picks, explore - tried)
    tried += polished.tried
    ends.push(polished.best)
    runs++
    size = Math.min(200, Math.ceil(size * 1.5))
    const best = ends.reduce((b, one) => (dominates(one, b) ? one : b))
    const agreeing = ends.filter((one) => isSame(one, best)).length
    if (agreeing < ENOUGH && explore - tried >= LEAST) continue
    if (budget - tried < LEAST) return { best, tried, runs, agreeing }
    const refined = yield* refine(best, picks, seed, budget - tried)
    return { best: dominates(refined.best, best) ? refined.best : best, tried: tried + refined.tried, runs, agreeing }
  }
}

const isSame = (a: Judged, b: Judged) =>
  a.violation === b.violation &&
  Math.abs((a.goals[0] as number) - (b.goals[0] as number)) <= SAME * Math.max(Math.abs(b.goals[0] as number), 1e-8)

/** Evolution of a small cloud round the best point: along a limit, where a simplex stands still, it goes on. */
function* refine(
  from: Tried,
  picks: readonly boolean[],
  seed: number,
  budget: number,
): Asking<Judged, { readonly best: Tried; readonly tried: number }> {
  const dimensions = from.point.length
  const random = seeded(seed)
  const size = Math.min(100, Math.max(24, 8 * dimensions))
  const start = Array.from({ length: size }, (_, i) =>
    from.point.map((v, j) => (i === 0 || picks[j] ? v : Math.min(1, Math.max(0, v + NEAR * (2 * random() - 1))))),
  )
  const run = yield* evolution({
    dimensions,
    goals: 1,
    seed,
    budget,
    size,
    start,
    tolerance: 1e-13,
    leaders: 0,
  })
  return { best: run.front[0] as Tried, tried: run.tried }
}

/** The local search among the numbers that do not pick. */
function* polish(from: Tried, picks: readonly boolean[], most: number): Asking<Judged, { readonly best: Tried; readonly tried: number }> {
  const free = [...from.point.keys()].filter((j) => !picks[j])
  if (free.length === 0 || most < 1) return { best: from, tried: 0 }
  const whole = (part: Float64Array) => {
    const point = Float64Array.from(from.point)
    free.forEach((j, i) => {
      point[j] = part[i] as number
    })
    return point
  }
  const search = simplex({
    start: Float64Array.from(free, (j) => from.point[j] as number),
    step: 1e-3,
    budget: Math.min(600 * free.length, most),
  })
  let step = search.next()
  while (!step.done) step = search.next(yield step.value.map(whole))
  const { best, tried } = step.value
  return { best: { ...best, point: whole(best.point) }, tried }
}
