import { type StudyPool, type StudySignal, untilStopped } from "../../study/run.js"
import { familySizes, type SearchPlan } from "./goals.js"
import type { Reason } from "./limits.js"
import { addFound, type Found, isNearer, type SearchPart, type SearchTask, scan, type Tally } from "./scan.js"

/** What tells a search to stop: an `AbortSignal`, or anything of its shape. */
export type CancelSignal = StudySignal

/**
 * Worker threads that have loaded `alula/advice/search-worker`: most pool libraries fit as they are. One that does not know
 * signals may go on with at most eight tasks after a stop.
 */
export type SearchPool = StudyPool

/** How far a search is. */
export interface SearchProgress {
  /** Combinations dealt with, of how many. */
  readonly considered: number
  readonly combinations: number
  /** Combinations whose raise time was calculated in full. */
  readonly evaluated: number
  /** Size of the front so far. */
  readonly found: number
}

/** How a search is run; none of it changes the answer. */
export interface SearchOptions {
  /** Stops the search; the promise is then rejected with the signal's reason. */
  readonly signal?: CancelSignal
  /** Called now and then (at most ten times a second), and once at the end. */
  readonly onProgress?: (progress: SearchProgress) => void
  /** Spreads the search over threads. */
  readonly pool?: SearchPool
}

// timers are everywhere this runs, but not in the language's own types
declare function setTimeout(call: () => void, milliseconds: number): unknown

/** Milliseconds worked at a stretch, and between two reports. */
const STRETCH = 25
const REPORT = 100

/**
 * Shares of a search, in rounds. They depend on the catalogue alone, never on the number of threads, so
 * that counts and answer are the same on one thread as on many; a round knows what all before it found.
 */
function roundsOf(plan: SearchPlan): readonly (readonly number[])[] {
  const shares = Math.min(64, familySizes(plan).mechanical)
  const rounds: number[][] = []
  for (let next = 0; next < shares; ) {
    // small ones first: what they find spares the later ones much
    const size = Math.min(rounds.length < 2 ? 1 : 8, shares - next)
    rounds.push(Array.from({ length: size }, (_, i) => next + i))
    next += size
  }
  return rounds
}

/** Runs a search on a valid plan and gathers what its shares bring. */
export async function runPlan(plan: SearchPlan, options: SearchOptions): Promise<SearchPart> {
  const { signal, onProgress, pool } = options
  const sizes = familySizes(plan)
  const combinations = sizes.mechanical * sizes.supply * sizes.wire
  const front: Found[] = []
  const rejected: Partial<Record<Reason, Tally>> = {}
  const sums = { considered: 0, evaluated: 0, pruned: 0 }
  let reported = Date.now()
  let rested = Date.now()

  const report = (considered: number, evaluated: number, found: number, isLast = false): void => {
    if (!onProgress || (!isLast && Date.now() - reported < REPORT)) return
    reported = Date.now()
    onProgress({ considered, combinations, evaluated, found })
  }
  const gather = (part: SearchPart): void => {
    sums.considered += part.considered
    sums.evaluated += part.evaluated
    sums.pruned += part.pruned
    for (const found of part.front) if (!front.includes(found)) addUnlessKnown(front, found)
    for (const [reason, tally] of Object.entries(part.rejected) as [Reason, Tally][]) rejected[reason] = joined(rejected[reason], tally)
  }
  const here = async (task: SearchTask): Promise<SearchPart> => {
    const steps = scan(task)
    for (;;) {
      const step = steps.next()
      if (step.done) return step.value
      if (Date.now() - rested < STRETCH) continue
      report(sums.considered + step.value.considered, sums.evaluated + step.value.evaluated, step.value.found)
      await new Promise<void>((resolve) => setTimeout(resolve, 0))
      rested = Date.now()
      if (signal?.aborted) throw signal.reason
    }
  }

  const shares = roundsOf(plan)
  const stride = shares.flat().length
  for (const round of shares) {
    if (signal?.aborted) throw signal.reason
    const tasks = round.map((first): SearchTask => ({ plan, first, stride, front: [...front] }))
    if (pool) {
      const running = tasks.map((task) => pool.run(task, signal ? { signal } : undefined))
      for (const part of await untilStopped(Promise.all(running), signal)) gather(part as SearchPart)
      report(sums.considered, sums.evaluated, front.length)
    } else for (const task of tasks) gather(await here(task))
  }
  report(sums.considered, sums.evaluated, front.length, true)
  return { front, rejected, ...sums }
}

/** Adds a find that another share may have brought already. */
function addUnlessKnown(front: Found[], found: Found): void {
  const isSame = (one: Found) => one.mechanical === found.mechanical && one.supply === found.supply && one.wire === found.wire
  if (!front.some(isSame)) addFound(front, found)
}

function joined(before: Tally | undefined, tally: Tally): Tally {
  if (!before) return tally
  return {
    combinations: before.combinations + tally.combinations,
    members: [...new Set([...before.members, ...tally.members])],
    closest: tally.closest && isNearer(tally.closest, before.closest) ? tally.closest : before.closest,
  }
}
