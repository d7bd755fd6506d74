import type { Either } from "./either.js"
import { isNoSolution, type NoSolution } from "./errors.js"
import type { AnyFields } from "./fields.js"
import { readInput } from "./read.js"

/**
 * An answer as it is, a refusal with only those of its nearest values that were tried: each alone, put in the place of the
 * input's own, lies within its field's limits, goes with the rest of the input and is answered.
 */
export function tried<Si extends object, Out, Code extends string>(
  outcome: Out | NoSolution<Code>,
  si: Si,
  fields: object,
  kernel: (si: Si) => Out | NoSolution,
  check: (si: Si) => readonly unknown[] = () => [],
  either: readonly Either[] = [],
): Out | NoSolution<Code> {
  if (!isNoSolution(outcome)) return outcome
  const works = ([name, value]: [string, number]) => {
    const read = readInput(fields as AnyFields, { ...si, [name]: value }, either)
    return read.ok && check(read.si as Si).length === 0 && !isNoSolution(kernel(read.si as Si))
  }
  return { ...outcome, nearest: Object.fromEntries(Object.entries(outcome.nearest).filter(works)) }
}
