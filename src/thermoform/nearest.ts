import { isNoSolution, type NoSolution } from "../solver/index.js"

/** What a solver's own reading says of an input: in its limits and together, or not. */
interface Reader {
  readonly "~standard": { validate(value: unknown): { readonly value: unknown } | { readonly issues: unknown } }
}

/**
 * Of the values put forward, those that work: within the fields' limits and, put in alone for the input's own, answered.
 *
 * @param solve - the kernel, told not to put forward values in turn
 */
export function tried<Si extends object>(
  reader: Reader,
  solve: (si: Si) => object | NoSolution,
  si: Si,
  candidates: Readonly<Record<string, number>>,
): Record<string, number> {
  const works = ([key, value]: [string, number]) => {
    if (!Number.isFinite(value)) return false
    const read = reader["~standard"].validate({ ...si, [key]: value })
    return "value" in read && !isNoSolution(solve(read.value as Si))
  }
  return Object.fromEntries(Object.entries(candidates).filter(works))
}
