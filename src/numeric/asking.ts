// Searches that do not call a function: they ask for points and are told what came of them, so that who runs them may pause, stop or spread the work.

/** Yields points to be tried, is given one answer for each, and ends with a result. */
export type Asking<Answer, Outcome> = Generator<readonly Float64Array[], Outcome, readonly Answer[]>

/** What came of a point of a minimisation. */
export interface Judged {
  /** Values to be made small. */
  readonly goals: readonly number[]
  /** By how much limits are passed, 0 where none is; of two points that pass some, the smaller one is better. */
  readonly violation: number
}

/** Runs a search to its end with a function at hand. */
export function answered<Answer, Outcome>(search: Asking<Answer, Outcome>, answer: (point: Float64Array) => Answer): Outcome {
  let step = search.next()
  while (!step.done) step = search.next(step.value.map(answer))
  return step.value
}
