import { type SearchPart, type SearchTask, scan } from "./scan.js"

/**
 * Works off one share of a search in the thread it is called in. This file is what a pool of worker
 * threads loads: `alula/advice/search-worker`.
 *
 * @param task - what `search` hands to `pool.run`
 */
export default function searchWorker(task: SearchTask): SearchPart {
  const steps = scan(task)
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}
