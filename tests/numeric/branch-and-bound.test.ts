import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { branchAndBound } from "../../src/numeric/index.js"

type Span = readonly [number, number]

/** Minimum of a Lipschitz function on [0, 1] by halving spans. */
const minimise = (
  f: (x: number) => number,
  lipschitz: number,
  gap: number,
  budget = 20000,
  allowed: (span: Span) => boolean = () => true,
) =>
  branchAndBound<Span, number>({
    boxes: [[0, 1]],
    // a hair lower, for the rounding of the bound itself
    bound: ([a, b]) => (allowed([a, b]) ? f((a + b) / 2) - (lipschitz * (b - a)) / 2 - 1e-12 : null),
    sample: ([a, b]) => (allowed([(a + b) / 2, (a + b) / 2]) ? { found: (a + b) / 2, value: f((a + b) / 2) } : null),
    split: ([a, b]) => [
      [a, (a + b) / 2],
      [(a + b) / 2, b],
    ],
    gap,
    budget,
  })

describe("branchAndBound", () => {
  it("encloses the minimum of random waves, checked on 20001 points", () => {
    const number = fc.double({ min: -3, max: 3, noNaN: true })
    fc.assert(
      fc.property(number, number, number, fc.double({ min: 1, max: 20, noNaN: true }), (a, b, c, w) => {
        const f = (x: number) => 12 + a * Math.sin(w * x) + b * Math.cos(3 * x + c) + c * x
        const lipschitz = Math.abs(a) * w + 3 * Math.abs(b) + Math.abs(c)
        const found = minimise(f, lipschitz, 1e-3)
        const scan = Math.min(...Array.from({ length: 20001 }, (_, i) => f(i / 20000)))
        expect(found.isClosed).toBe(true)
        expect(found.bound).toBeLessThanOrEqual(scan)
        expect(found.best?.value as number).toBeLessThanOrEqual(scan * 1.001 + 1e-9)
        expect(found.bound).toBeGreaterThanOrEqual((found.best?.value as number) * (1 - 1e-3) - 1e-12)
      }),
    )
  })

  it("says that nothing is allowed by closing without a best", () => {
    const none = minimise(
      (x) => x,
      1,
      0.01,
      100,
      () => false,
    )
    expect(none.best).toBeNull()
    expect(none.isClosed).toBe(true)
    expect(none.bound).toBe(Number.POSITIVE_INFINITY)
  })

  it("stops at the budget with a bound that still holds", () => {
    const found = minimise((x) => 2 + Math.sin(40 * x), 40, 1e-9, 50)
    expect(found.isClosed).toBe(false)
    expect(found.explored).toBeLessThanOrEqual(52)
    expect(found.bound).toBeLessThanOrEqual(1)
    expect(found.best?.value as number).toBeGreaterThanOrEqual(1)
  })

  it("starts from a known point and never does worse", () => {
    const f = (x: number) => (x - 0.3) ** 2 + 1
    const found = branchAndBound<Span, number>({
      boxes: [[0, 1]],
      bound: () => 0,
      sample: () => null,
      split: () => [],
      gap: 0.01,
      budget: 10,
      start: { found: 0.3, value: f(0.3) },
    })
    expect(found.best).toEqual({ found: 0.3, value: 1 })
    // the one box was split into nothing: none is left that could hold better
    expect(found.bound).toBe(1)
  })
})
