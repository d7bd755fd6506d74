import { describe, expect, it } from "vitest"
import type { AnySolver } from "./solvers.js"

type Input = Readonly<Record<string, unknown>>

/** A caution, the solver it belongs to, and changes of the solver's example with which it is and is not shown. */
export type CautionRow = readonly [code: string, solver: unknown, shown: Input, notShown: Input]

/** One test for each row: the caution stands on its side of its limit, and not on the other. */
export function cautionTests(rows: readonly CautionRow[]): void {
  describe("each caution stands on its side of its limit, and not on the other", () => {
    it.each(rows)("%s", (code, solver, shown, notShown) => {
      const { example } = solver as AnySolver
      const codes = (input: Input) => (solver as AnySolver)({ ...example, ...input }).cautions.map((c) => c.code)
      expect(codes(shown)).toContain(code)
      expect(codes(notShown)).not.toContain(code)
    })
  })
}
