import type { Asking, Judged } from "./asking.js"
import { dominates, frontOf, select } from "./front.js"
import { seeded } from "./random.js"
import { sobolPoints } from "./sobol.js"

/** A point that was tried. */
export interface Tried extends Judged {
  readonly point: Float64Array
}

/** How a global search is run. */
export interface EvolutionOptions {
  readonly dimensions: number
  /** Number of values to be made small. */
  readonly goals: number
  readonly seed: number
  /** Points tried at most. */
  readonly budget: number
  /** Points kept at a time; ten for each dimension where left out, at least 24, at most 100. */
  readonly size?: number
  /** Points to begin with, beside evenly spread ones. */
  readonly start?: readonly Float64Array[]
  /** Spread of the goal among the points kept, relative to the goal, at which to stop. */
  readonly tolerance?: number
  /** Share of the points kept that others are drawn towards: to the best one alone (0), all soon stand in the first valley found. */
  readonly leaders?: number
}

/** What a global search brought: the points that nothing tried is better than, best first for one goal. */
export interface Evolved {
  readonly front: readonly Tried[]
  readonly tried: number
  /** Whether the points kept had drawn together; otherwise the budget was spent. */
  readonly isSettled: boolean
}

/**
 * Global search in the unit cube by differential evolution with limits ahead of goals (R. Storn, K. Price, J. Global Optim. 11, 1997, 341–359; several
 * goals after S. Kukkonen, J. Lampinen, GDE3, IEEE Congr. Evol. Comput. 2005). It proves nothing: what it brings is the best it met.
 */
export function* evolution(options: EvolutionOptions): Asking<Judged, Evolved> {
  const { dimensions, goals, seed, budget, start = [], tolerance = 1e-9, leaders: share = 0.15 } = options
  const size = Math.max(4, Math.min(options.size ?? Math.min(100, Math.max(24, 10 * dimensions)), budget))
  const random = seeded(seed)
  const next = sobolPoints(dimensions, seed)
  const first = Array.from({ length: size }, (_, i) => {
    const point = new Float64Array(dimensions)
    next(point)
    return start[i] ?? point
  })
  const told = yield first
  let kept = first.map((point, i): Tried => ({ point, ...(told[i] as Judged) }))
  let tried = size
  let isSettled = false
  // beside a minimum of nothing no relative difference is small: then against what the goals differ by at first
  const floor = 1e-9 * rangeOf(kept)
  while (tried < budget && !isSettled) {
    const parents = kept
    const leaders = goals === 1 ? [...parents].sort(byGoal).slice(0, Math.max(1, Math.ceil(share * size))) : []
    const trials = parents.slice(0, budget - tried).map((parent) => child(parent, parents, leaders, random))
    const answers = yield trials
    tried += trials.length
    const joint: Tried[] = []
    parents.forEach((parent, i) => {
      const point = trials[i]
      if (!point) {
        joint.push(parent)
        return
      }
      const trial: Tried = { point, ...(answers[i] as Judged) }
      if (dominates(parent, trial)) joint.push(parent)
      else if (goals === 1 || dominates(trial, parent)) joint.push(trial)
      else joint.push(parent, trial)
    })
    kept = joint.length > size ? [...select(joint, size)] : joint
    isSettled = goals === 1 && drawnTogether(kept, tolerance, floor)
  }
  return { front: frontOf(kept), tried, isSettled }
}

function rangeOf(kept: readonly Tried[]): number {
  const goals = kept.filter(({ violation }) => violation === 0).map((one) => one.goals[0] as number)
  return goals.length > 0 ? Math.max(...goals) - Math.min(...goals) : 0
}

function drawnTogether(kept: readonly Tried[], tolerance: number, floor: number): boolean {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (const { goals, violation } of kept) {
    if (violation > 0) return false
    low = Math.min(low, goals[0] as number)
    high = Math.max(high, goals[0] as number)
  }
  return high - low <= tolerance * Math.max(Math.abs(low), Math.abs(high), floor, Number.MIN_VALUE)
}

const byGoal = (a: Tried, b: Tried) => (dominates(a, b) ? -1 : dominates(b, a) ? 1 : 0)

/** A point moved by the difference of two others, for one goal in half of the cases towards one of the best, some of its numbers left as they were. */
function child(parent: Tried, all: readonly Tried[], leaders: readonly Tried[], random: () => number): Float64Array {
  const pick = () => (all[Math.floor(random() * all.length)] as Tried).point
  const [a, b, c] = [pick(), pick(), pick()]
  const weight = 0.4 + 0.6 * random()
  const leader = random() < 0.5 ? leaders[Math.floor(random() * leaders.length)] : undefined
  const pull = random()
  const cross = random() < 0.25 ? 0.2 : 0.9
  const sure = Math.floor(random() * parent.point.length)
  return parent.point.map((old, j) => {
    if (j !== sure && random() >= cross) return old
    const from = leader ? old + pull * ((leader.point[j] as number) - old) : (a[j] as number)
    const value = from + weight * ((b[j] as number) - (c[j] as number))
    if (value >= 0 && value <= 1) return value
    // on the edge itself in half of the cases, since many a minimum lies there
    const edge = value < 0 ? 0 : 1
    return random() < 0.5 ? edge : edge + random() * (old - edge)
  })
}
