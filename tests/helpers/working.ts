import { describe, expect, it } from "vitest"
import type { AnyOutFields } from "../../src/solver/index.js"
import { workingOfSi } from "../../src/working/index.js"
import { scalarsOf } from "./bands.js"
import type { AnySolver } from "./solvers.js"

/** Forgets a solver's types. */
export const any = (solver: unknown): AnySolver => solver as AnySolver

/** A case: its name, the solver, and an input far from the solver's own example. */
export type WorkingCase = readonly [name: string, solver: AnySolver, input: Record<string, unknown>]

/** Holds the working to the kernel in cases that random inputs about the example seldom reach. */
export function workingTests(cases: readonly WorkingCase[]): void {
  describe("the working agrees with the kernel away from the examples", () => {
    it.each(cases)("%s", (_, solver, input) => {
      const si = solver.read(input)
      const out = solver(input)
      const { values, steps } = workingOfSi(solver, si)
      for (const step of steps)
        if (step.kind === "equation") {
          const promised = solver.formulae.find((s) => "left" in s && `${s.left} = ${s.right}` === step.formula) as { within?: number }
          expect(step.value as number, `${step.formula}: ${step.numbers}`).toBeLessThan(promised.within ?? 1e-9)
        }
      for (const { key, field, value } of scalarsOf(solver.output as unknown as AnyOutFields, out)) {
        if (typeof value !== "number" || ["iterations", "residual", "errorEstimate", "evaluations"].includes(key)) continue
        if (key.includes(".") && !field.symbol) continue
        const reckoned = values[field.symbol as string] as number
        expect(Math.abs(value - reckoned), `${key}: ${value} against ${reckoned}`).toBeLessThanOrEqual(
          1e-9 * Math.abs(value) + 1e-9 * (field.kind === "temperature" ? 1 : 0),
        )
      }
    })
  })
}
