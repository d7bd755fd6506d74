// What a solver says of one input, as a study needs it: an answer, or the code of its refusal.
import { isNoSolution } from "../solver/index.js"
import type { AnySolver } from "./place.js"

/** An input that has no answer. */
export class Refused {
  /**
   * @param code - the solver's own code, or `inconsistent` where the input's fields do not go together
   * @param message - why, in words
   */
  constructor(
    readonly code: string,
    readonly message: string,
  ) {}
}

/** Asks the kernel; an input whose fields do not go together never reaches it. */
export function answer(solver: AnySolver, si: object): object {
  const [fault] = solver.check(si)
  if (fault) return new Refused("inconsistent", fault.message)
  const out = solver.si(si)
  return isNoSolution(out) ? new Refused(out.noSolution, out.message) : out
}
