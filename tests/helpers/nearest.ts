import { describe, expect, it } from "vitest"
import type { AnySolver } from "./solvers.js"

type Input = Readonly<Record<string, unknown>>

/** A reason for refusing, the solver that gives it, and a change of the solver's example that is refused for it. */
export type RefusalRow = readonly [reason: string, solver: unknown, refused: Input]

/** Expects a refusal with this reason whose nearest values work: each by itself, put in place of the input's own. */
function expectNearestWorks(solver: AnySolver, input: Input, reason: string): void {
  const outcome = solver.attempt(input)
  if (outcome.ok || !("noSolution" in outcome.error)) throw new Error(`no refusal: ${outcome.ok ? "answered" : outcome.error.message}`)
  expect(outcome.error.noSolution).toBe(reason)
  const nearest = Object.entries(outcome.error.nearest)
  expect(nearest.length, "values named as nearest").toBeGreaterThan(0)
  for (const [key, value] of nearest) {
    expect(Object.keys(solver.input), key).toContain(key)
    const tried = solver.attempt({ ...input, [key]: value })
    expect(tried.ok, `${reason}: ${key} = ${value}: ${tried.ok ? "" : tried.error.message}`).toBe(true)
  }
}

/** One test for each row: what a refusal names as nearest works. */
export function nearestTests(rows: readonly RefusalRow[]): void {
  describe("what a refusal names as nearest works", () => {
    it.each(rows)("%s", (reason, solver, refused) => {
      expectNearestWorks(solver as AnySolver, { ...(solver as AnySolver).example, ...refused }, reason)
    })
  })
}
