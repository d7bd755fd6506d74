import { describe, expect, it } from "vitest"
import { atLeast, atMost, verdictOf } from "../../src/rig/assess/finding.js"

/** Margins by hand: what is left of what there is; a tenth of it is marginal (common practice). */
describe("margin of a check", () => {
  it("a value that must reach its limit", () => {
    const margin = (value: number, limit: number) => atLeast(value, limit, "number", "").margin
    expect(margin(4, 3)).toBe(0.25)
    expect(margin(3, 3)).toBe(0)
    expect(margin(1.5, 3)).toBe(-0.5)
    expect(margin(0, 3)).toBe(-1)
    expect(margin(4, 0)).toBe(1)
    expect(margin(0, 0)).toBe(1)
    // the least number there is: a quotient by it would have no end
    expect(margin(10, 5e-324)).toBe(1)
    expect(margin(5e-324, 10)).toBe(-1)
  })
  it("a value that must stay under its limit", () => {
    const margin = (value: number, limit: number) => atMost(value, limit, "number", "").margin
    expect(margin(3, 4)).toBe(0.25)
    expect(margin(4, 4)).toBe(0)
    expect(margin(6, 4)).toBe(-0.5)
    expect(margin(0, 0)).toBe(1)
    expect(margin(1, 0)).toBe(-1)
  })
  it("both call the same use of a capacity marginal: more than nine tenths", () => {
    for (const [demand, verdict] of [
      [89, "meets"],
      [91, "marginal"],
      [100, "marginal"],
      [101, "falls short"],
    ] as const) {
      expect(verdictOf(atMost(demand, 100, "number", "")), String(demand)).toBe(verdict)
      expect(verdictOf(atLeast(100, demand, "number", "")), String(demand)).toBe(verdict)
    }
  })
})
