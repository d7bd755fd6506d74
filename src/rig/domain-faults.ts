import { InputError, type Issue, type Solver } from "../solver/index.js"

/** Faults that a domain's solver finds in a part of the rig: it is asked itself, so that what it refuses is stated once. */
export function domainFaults<In, Out>(solver: Solver<In, Out>, input: In): readonly Issue[] {
  const outcome = solver.attempt(input)
  return !outcome.ok && outcome.error instanceof InputError ? outcome.error.issues : []
}
