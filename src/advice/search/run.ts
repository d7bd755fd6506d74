// Runs a search: its shares one after another here, or spread over a pool; the shares are the same either way, and so is the answer.
import { Pace, type StudyPool, type StudySignal } from "../../study/pace.js"
import { members } from "./members.js"
import { type Axis, type Block, type Plan, sizeOf } from "./plan.js"
import { addFound, type Engine, engineOf, type Found, isNearer, type SearchPart, type SearchTask, scan, type Tally } from "./scan.js"

/** How far a search is. */
export interface SearchProgress {
  /** Combinations decided, of how many; the first report comes before any is. */
  readonly decided: number
  readonly combinations: number
  /** Combinations assessed whole. */
  readonly assessed: number
  /** Size of the front so far. */
  readonly found: number
}

/** How a search is run; none of it changes the answer. */
export interface SearchOptions {
  /** Stops the search; the promise is then rejected with the signal's reason. */
  readonly signal?: StudySignal
  /** Called at the start with the size of the task, then now and then (at most ten times a second), and once at the end. */
  readonly onProgress?: (progress: SearchProgress) => void
  /** Spreads the search over threads that have loaded `alula/advice/search-worker`. */
  readonly pool?: StudyPool
}

/** Most shares of a search, and most of them that do not know of each other. */
const SHARES = 24
const ROUND = 8

/** The whole of a plan. */
export const wholeOf = (plan: Plan): Block => plan.axes.map((axis) => axis.members.map((_, m) => m))

/** Blocks that together are the whole, told apart on the axes that decide most; they depend on the plan alone, never on threads. */
function sharesOf({ judge: { plan }, goals, order }: Engine): Block[] {
  let blocks: Block[] = [wholeOf(plan)]
  for (const a of order) {
    if (blocks.length * (plan.axes[a] as Axis).members.length > SHARES) break
    blocks = blocks.flatMap((block) => (block[a] as readonly number[]).map((m) => block.map((own, b) => (b === a ? [m] : own))))
  }
  const promise = new Map(blocks.map((block) => [block, goals.leastSum("price", block)]))
  return blocks.sort((a, b) => (promise.get(a) as number) - (promise.get(b) as number))
}

/** Runs a search on a valid plan and gathers what its shares bring. */
export async function runPlan(plan: Plan, { signal, onProgress, pool }: SearchOptions): Promise<SearchPart & { readonly engine: Engine }> {
  const combinations = sizeOf(wholeOf(plan))
  const front: Found[] = []
  const ruledOut: Record<string, Tally> = {}
  const counts = { byCheck: 0, byBound: 0, assessed: 0 }
  let running = { byCheck: 0, byBound: 0, assessed: 0, found: 0 }
  const pace = new Pace<SearchProgress>(signal, onProgress, () => {
    const assessed = counts.assessed + running.assessed
    const decided = counts.byCheck + counts.byBound + running.byCheck + running.byBound + assessed
    return { decided, combinations, assessed, found: Math.max(front.length, running.found) }
  })
  pace.report(true)
  const gather = (part: SearchPart): void => {
    counts.byCheck += part.counts.byCheck
    counts.byBound += part.counts.byBound
    counts.assessed += part.counts.assessed
    running = { byCheck: 0, byBound: 0, assessed: 0, found: 0 }
    for (const found of part.front) addFound(front, found)
    for (const [id, tally] of Object.entries(part.ruledOut)) ruledOut[id] = joined(ruledOut[id], tally)
  }
  const engine = engineOf(members, plan)
  const here = async (task: SearchTask): Promise<SearchPart> => {
    const steps = scan(members, engine, task)
    for (;;) {
      const step = steps.next()
      if (step.done) return step.value
      running = { ...step.value }
      await pace.rest()
    }
  }
  const shares = sharesOf(engine)
  for (let next = 0, size = 1; next < shares.length; next += size, size = Math.min(ROUND, 2 * size)) {
    // small rounds first: what they find spares the later ones much
    const tasks = shares.slice(next, next + size).map((block): SearchTask => ({ plan, block, front: [...front] }))
    const parts: SearchPart[] = []
    if (pool) parts.push(...(await pace.spread<SearchPart>(pool, tasks, () => undefined)))
    else for (const task of tasks) parts.push(await here(task))
    for (const part of parts) gather(part)
  }
  pace.report(true)
  return { front, counts, ruledOut, engine }
}

function joined(tally: Tally | undefined, other: Tally): Tally {
  if (!tally) return other
  const nearer = other.closest && isNearer(other.closest, tally.closest) ? other.closest : tally.closest
  return { title: tally.title, combinations: tally.combinations + other.combinations, closest: nearer }
}
