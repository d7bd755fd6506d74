import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { brent, goldenMinimum, theRoot } from "../../src/numeric/index.js"
import { between } from "./numbers.js"

describe("brent", () => {
  it.each<[name: string, f: (x: number) => number, a: number, b: number, root: number]>([
    ["√2", (x) => x * x - 2, 0, 2, Math.SQRT2],
    ["the fixed point of cos (Dottie number)", (x) => Math.cos(x) - x, 0, 1, 0.7390851332151607],
    ["1 of ln, from a wide bracket", Math.log, 1e-300, 1e6, 1],
    ["cos x · cosh x = −1, first mode of a cantilever", (x) => Math.cos(x) * Math.cosh(x) + 1, 1, 3, 1.875104068711961],
    ["ω·eω = 1 (omega constant)", (x) => x * Math.exp(x) - 1, 0, 1, 0.5671432904097838],
    ["a triple root", (x) => (x - 1) ** 3, 0, 3, 1],
    ["a step", (x) => (x < 0.3 ? -1 : 1), 0, 1, 0.3],
    ["a root at a pole-like wall", (x) => Math.tan(x), 3, 3.2, Math.PI],
    ["a bracket given the wrong way round", (x) => x - 0.25, 1, 0, 0.25],
  ])("finds %s", (name, f, a, b, root) => {
    const found = brent(f, a, b)
    expect(found?.x).toBeCloseTo(root, name === "a triple root" ? 4 : 12)
    expect(found?.residual).toBe(f(found?.x as number))
    expect(found?.iterations).toBeLessThan(200)
  })
  it("takes an end that is a root", () => {
    expect(brent((x) => x, 0, 1)).toEqual({ x: 0, residual: 0, iterations: 0 })
    expect(brent((x) => x - 1, 0, 1)).toEqual({ x: 1, residual: 0, iterations: 0 })
  })
  it("refuses ends that bracket nothing, NaN among them", () => {
    expect(brent((x) => x * x + 1, -1, 1)).toBeNull()
    expect(brent((x) => x - 5, -1, 1)).toBeNull()
    expect(brent(() => Number.NaN, -1, 1)).toBeNull()
  })
  it("brackets a crossing of random cubics to the last digits", () => {
    fc.assert(
      fc.property(between(-2, 2), between(0.1, 3), between(-3, 3), (root, steep, twist) => {
        // one real root by construction: the quadratic factor has none
        const f = (x: number) => (x - root) * ((x - twist) ** 2 + steep)
        let calls = 0
        const found = brent(
          (x) => {
            calls++
            return f(x)
          },
          -10,
          10,
        )
        expect(Math.abs((found?.x as number) - root)).toBeLessThan(1e-13)
        expect(calls).toBeLessThan(60)
      }),
    )
  })
  it("stops at its bound of iterations with nothing rather than a place that is only near", () => {
    expect(brent((x) => x ** 9 - 1e-9, -3, 5, 1e-15, 3)).toBeNull()
    const found = brent((x) => x ** 9 - 1e-9, -3, 5, 1e-15)
    expect(found?.x).toBeCloseTo(0.1, 12)
  })
})

describe("brent where all is not well", () => {
  it("brackets values so small that their product vanishes, and refuses ends of one sign as small", () => {
    expect(brent((x) => 1e-200 * (x - 0.25), 0, 1)?.x).toBeCloseTo(0.25, 12)
    expect(brent((x) => 1e-200 * (x + 0.25), 0, 1)).toBeNull()
  })
  it("does not call a place where f is no number a root", () => {
    expect(brent((x) => (x > 0.2 && x < 0.8 ? Number.NaN : x - 0.5), 0, 1)).toBeNull()
  })
})

describe("theRoot", () => {
  it("is the root where the ends bracket one", () => {
    expect(theRoot((x) => x * x - 2, 0, 2, 1e-15, "the root of two").x).toBeCloseTo(Math.SQRT2, 14)
  })
  it.each<[string, (x: number) => number]>([
    ["no change of sign", (x) => x * x + 1],
    ["no number at an end", (x) => Math.log(x) + 1],
    ["no number on the way", (x) => (x === -1 || x === 1 ? x : Number.NaN)],
  ])("throws and says what was asked for: %s", (_, f) => {
    expect(() => theRoot(f, -1, 1, 1e-15, "a place that is not there")).toThrow(new RangeError("No root found: a place that is not there."))
  })
})

describe("goldenMinimum", () => {
  it.each<[name: string, f: (x: number) => number, a: number, b: number, at: number, off: number]>([
    ["of a parabola, to the square root of rounding", (x) => (x - 0.3) ** 2, -1, 2, 0.3, 1e-9],
    ["of a parabola with a floor", (x) => 1 + (x - 0.3) ** 2, -1, 2, 0.3, 3e-8],
    ["of a kink", (x) => Math.abs(x - Math.LN2), 0, 2, Math.LN2, 1e-9],
    ["of x·ln x at 1/e", (x) => x * Math.log(x), 1e-6, 1, 1 / Math.E, 3e-8],
    ["at the left end", (x) => x, 1, 2, 1, 1e-9],
    ["at the right end", (x) => -x, 1, 2, 2, 1e-9],
    ["over a wide span", (x) => (x - 12345) ** 2, 0, 1e6, 12345, 1e-3],
  ])("finds the minimum %s", (_, f, a, b, at, off) => {
    expect(Math.abs(goldenMinimum(f, a, b) - at)).toBeLessThan(off)
  })
  it("ends on a flat function and on a span of nothing", () => {
    expect(goldenMinimum(() => 1, 0, 1)).toBeGreaterThanOrEqual(0)
    expect(goldenMinimum((x) => x * x, 2, 2)).toBe(2)
  })
})
