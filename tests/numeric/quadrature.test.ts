import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { integrate, integrateVector } from "../../src/numeric/index.js"
import { between } from "./numbers.js"

describe("integrate", () => {
  const { PI, E, LN2, SQRT2, SQRT1_2 } = Math
  it.each<[name: string, f: (x: number) => number, a: number, b: number, value: number]>([
    ["a constant", () => 3, -1, 5, 18],
    ["x²² at the degree a Kronrod panel is exact for", (x) => x ** 22, -1, 1, 2 / 23],
    ["e^x", Math.exp, 0, 1, E - 1],
    ["1/(1 + x²), a quarter turn", (x) => 1 / (1 + x * x), 0, 1, PI / 4],
    ["a half circle, steep at both ends", (x) => Math.sqrt(1 - x * x), -1, 1, PI / 2],
    ["1/√x without touching 0", (x) => 1 / Math.sqrt(x), 0, 1, 2],
    ["ln x", Math.log, 0, 1, -1],
    ["a kink where no panel ends", (x) => Math.abs(x - 1 / PI), 0, 1, (1 / PI ** 2 + (1 - 1 / PI) ** 2) / 2],
    ["a step where no panel ends", (x) => (x < SQRT1_2 ? 0 : 1), 0, 1, 1 - SQRT1_2],
    ["a hundred waves", (x) => Math.sin(200 * PI * x) ** 2, 0, 1, 0.5],
    ["a narrow peak", (x) => 1 / (1e-6 + (x - 0.3) ** 2), 0, 1, 1000 * (Math.atan(700) + Math.atan(300))],
    ["1/x over ten octaves", (x) => 1 / x, 1, 1024, 10 * LN2],
    ["the Gauss integral", (x) => Math.exp(-x * x), -8, 8, Math.sqrt(PI)],
    ["backwards", (x) => x, 1, 0, -0.5],
    ["a span of nothing", (x) => x, SQRT2, SQRT2, 0],
  ])("%s", (_, f, a, b, value) => {
    const found = integrate(f, a, b)
    expect(Math.abs(found.value - value)).toBeLessThanOrEqual(1e-9 * Math.max(Math.abs(value), 1e-3))
    expect(found.evaluations % 15).toBe(0)
  })
  it("keeps within the error it states, and that within the goal, for smooth integrands", () => {
    let counted = 0
    fc.assert(
      fc.property(between(0.05, 40), between(0.1, 5), fc.constantFrom(1e-2, 1e-4, 1e-6, 1e-10), (wave, decay, relative) => {
        // 2 + sin and an exponential: positive, so that the relative goal is well defined
        const exact = 2 + (1 - Math.cos(wave)) / wave + (1 - Math.exp(-decay)) / decay
        const found = integrate((x) => 2 + Math.sin(wave * x) + Math.exp(-decay * x), 0, 1, relative)
        const off = Math.abs(found.value - exact)
        expect(off).toBeLessThanOrEqual(found.error + 1e-14 * exact)
        expect(found.error).toBeLessThanOrEqual(relative * found.value)
        if (off > 0) counted++
      }),
      { numRuns: 1000 },
    )
    expect(counted).toBeGreaterThan(100)
  })
  it("misses a kink it was not told of by no more than what lies beyond a panel's outermost point", () => {
    const beyond = (1 - 0.9914553711208126) / 2
    let seen = 0
    fc.assert(
      fc.property(between(0.1, 2), between(0, 1), (slope, kink) => {
        const exact = 2 + (slope * (kink ** 2 + (1 - kink) ** 2)) / 2
        const f = (x: number) => 2 + slope * Math.abs(x - kink)
        const off = Math.abs(integrate(f, 0, 1).value - exact)
        expect(off).toBeLessThanOrEqual(slope * beyond ** 2 + 1e-10 * exact)
        if (off <= 1e-10 * exact) seen++
        // split at the kink, nothing is left
        expect(Math.abs(integrate(f, 0, kink).value + integrate(f, kink, 1).value - exact)).toBeLessThanOrEqual(1e-14 * exact)
      }),
      { numRuns: 1000 },
    )
    expect(seen).toBeGreaterThan(750)
  })
  it("goes on where a whole panel is zero", () => {
    for (const edge of [0.1, 0.25, 0.3, Math.SQRT1_2, 0.9]) {
      const found = integrate((x) => (x < edge ? 0 : 1), 0, 1)
      expect(Math.abs(found.value - (1 - edge))).toBeLessThan(1e-9)
      expect(found.error).toBeLessThan(1e-9)
    }
    expect(integrate(() => 0, 0, 1)).toEqual({ value: 0, error: 0, evaluations: 15 })
    const { value, error } = integrateVector(
      (x, out) => {
        out[0] = x < 0.7 ? 0 : 1
        out[1] = x
      },
      0,
      1,
      2,
    )
    expect(Math.abs((value[0] as number) - 0.3) + Math.abs((value[1] as number) - 0.5)).toBeLessThan(1e-9)
    expect(error).toBeLessThan(1e-9)
  })
  it("ends at its bound of panels, and then says that the error is large", () => {
    const rough = integrate((x) => Math.sin(1 / x) / x, 1e-9, 1)
    expect(rough.evaluations).toBe(15 + 30 * 399)
    expect(rough.error).toBeGreaterThan(1e-10 * Math.abs(rough.value))
  })
  it("gives no number for an integrand that gives none", () => {
    expect(integrate(() => Number.NaN, 0, 1).value).toBeNaN()
  })
})

describe("integrateVector", () => {
  it("integrates components together, each to its own value", () => {
    const { value } = integrateVector(
      (x, out) => {
        out[0] = Math.exp(x)
        out[1] = Math.abs(x - 0.123)
        out[2] = Math.cos(30 * x)
      },
      0,
      1,
      3,
      1e-12,
    )
    expect(value[0]).toBeCloseTo(Math.E - 1, 12)
    expect(value[1]).toBeCloseTo((0.123 ** 2 + 0.877 ** 2) / 2, 10)
    expect(value[2]).toBeCloseTo(Math.sin(30) / 30, 10)
  })
  it("conserves a sum of components to rounding: the same points for all", () => {
    fc.assert(
      fc.property(between(0.1, 30), between(0, 1), (wave, kink) => {
        const { value } = integrateVector(
          (x, out) => {
            out[0] = 1 + Math.sin(wave * x) ** 2
            out[1] = Math.abs(x - kink)
            out[2] = (out[0] as number) + (out[1] as number)
          },
          0,
          1,
          3,
        )
        const [a, b, sum] = value as unknown as [number, number, number]
        expect(Math.abs(a + b - sum)).toBeLessThanOrEqual(1e-14 * sum)
      }),
    )
  })
})
