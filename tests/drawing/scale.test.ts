import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { extent, linearScale, ticks } from "../../src/drawing/index.js"

const range = fc
  .tuple(fc.double({ min: -1e6, max: 1e6, noNaN: true }), fc.integer({ min: -6, max: 6 }), fc.integer({ min: 1, max: 999 }))
  .map(([low, power, digits]) => [low, low + digits * 10 ** power] as const)
  .filter(([low, high]) => high - low > 1e-9 * Math.abs(low))

describe("ticks", () => {
  it("are round, rising, inside the range and neither few nor many", () => {
    fc.assert(
      fc.property(range, ([low, high]) => {
        const values = ticks(low, high)
        const span = high - low
        expect(values.length).toBeGreaterThanOrEqual(2)
        expect(values.length).toBeLessThanOrEqual(7)
        const step = (values[1] as number) - (values[0] as number)
        const mantissa = step / 10 ** Math.floor(Math.log10(step * (1 + 1e-9)))
        expect([1, 2, 5, 10].some((m) => Math.abs(mantissa - m) < 1e-3)).toBe(true)
        for (const [i, v] of values.entries()) {
          expect(v).toBeGreaterThanOrEqual(low - 1e-6 * span)
          expect(v).toBeLessThanOrEqual(high + 1e-6 * span)
          if (i) expect(v).toBeGreaterThan(values[i - 1] as number)
        }
      }),
      { numRuns: 1000 },
    )
  })
  it("are written without the dust of binary sums", () => {
    expect(ticks(0, 1)).toEqual([0, 0.2, 0.4, 0.6, 0.8, 1])
    expect(ticks(-0.3, 0.3, 6)).toEqual([-0.3, -0.2, -0.1, 0, 0.1, 0.2, 0.3].map((v) => v))
    expect(ticks(0, 12)).toEqual([0, 5, 10])
    expect(ticks(1000, 5000)).toEqual([1000, 2000, 3000, 4000, 5000])
  })
  it("come to something for a range of one value", () => {
    for (const v of [0, 5, -3]) expect(ticks(v, v).every(Number.isFinite)).toBe(true)
  })
})

describe("linearScale", () => {
  it("maps ends to ends, downwards too, and goes on outside", () => {
    const y = linearScale([0, 10], [100, 0])
    expect([0, 5, 10, 20].map(y)).toEqual([100, 50, 0, -100])
  })
  it("maps a range of one value to the start, never to no number", () => {
    expect(linearScale([3, 3], [7, 9])(3)).toBe(7)
  })
})

describe("extent", () => {
  it("is least and greatest, widened where equal, 0 to 1 of nothing", () => {
    expect(extent([3, -1, 2])).toEqual([-1, 3])
    expect(extent([4])).toEqual([3.5, 4.5])
    expect(extent([])).toEqual([0, 1])
    expect(extent([Number.NaN])).toEqual([0, 1])
  })
})
