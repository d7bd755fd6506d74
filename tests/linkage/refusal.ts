import { expect } from "vitest"
import { type Attempt, type NoSolution, NoSolutionError } from "../../src/solver/index.js"

/** The refusal of an attempt that must be refused. */
export function refusalOf(outcome: Attempt<object>): NoSolution {
  expect(outcome.ok).toBe(false)
  if (outcome.ok || !(outcome.error instanceof NoSolutionError)) throw new Error("expected a refusal")
  return outcome.error
}
