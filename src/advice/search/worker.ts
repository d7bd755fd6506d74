import { members } from "./members.js"
import { type Engine, engineOf, type SearchPart, type SearchTask, scan } from "./scan.js"

let last: { readonly plan: string; readonly engine: Engine } | null = null

/**
 * Works off one share of a search in the thread it is called in. This file is what a pool of worker
 * threads loads: `alula/advice/search-worker`.
 *
 * @param task - what `search` hands to `pool.run`
 */
export default function searchWorker(task: SearchTask): SearchPart {
  // what was found out about one plan serves all its shares that come here
  const plan = JSON.stringify(task.plan)
  if (last?.plan !== plan) last = { plan, engine: engineOf(members, task.plan) }
  const steps = scan(members, last.engine, task)
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}
