import { expect } from "vitest"
import type { AnySolver } from "./solvers.js"

/** Expects a refusal with this reason whose nearest values work: each by itself, put in place of the input's own. */
export function expectNearestWorks(solver: AnySolver, input: Readonly<Record<string, unknown>>, reason: string): void {
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
