import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { type AnyFields, InputError, NoSolutionError } from "../../src/solver/index.js"
import { corners } from "../helpers/arbitrary.js"
import { type AnySolver, solvers } from "../helpers/solvers.js"

/** Corners tried for each solver. */
const RUNS = 40

/** Every number of a value that is none, with its place. */
function endless(value: unknown, path = ""): readonly string[] {
  if (typeof value === "number") return Number.isFinite(value) ? [] : [`${path} = ${value}`]
  if (typeof value !== "object" || value === null) return []
  return Object.entries(value).flatMap(([key, part]) => endless(part, `${path}.${key}`))
}

// what the reader lets through a kernel must stand: no range so wide that numbers overflow or vanish
describe("at the corners of the declared ranges a solver answers in finite numbers or refuses", () => {
  const met = { answered: 0, refused: 0 }
  it.each(solvers)("$id", ({ solver }: { id: string; solver: AnySolver }) => {
    fc.assert(
      fc.property(corners(solver.input as unknown as AnyFields, solver.example, solver.either), (input) => {
        const outcome = solver.attempt(input)
        if (outcome.ok) {
          met.answered++
          expect(endless(outcome.value)).toEqual([])
        } else if (!(outcome.error instanceof InputError)) {
          met.refused++
          expect(outcome.error).toBeInstanceOf(NoSolutionError)
          expect(endless(outcome.error.toJSON())).toEqual([])
        }
      }),
      { numRuns: RUNS, endOnFailure: true },
    )
  })
  it("in many cases of either sort", () => {
    expect(met.answered).toBeGreaterThan(solvers.length)
    expect(met.refused).toBeGreaterThan(50)
  })
})
