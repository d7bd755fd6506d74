import fc from "fast-check"
import { all, create } from "mathjs"
import { describe, expect, it } from "vitest"
import {
  cholesky,
  incompleteBeta,
  mixed,
  normalQuantile,
  quantile,
  quantileRanks,
  seeded,
  shareInterval,
  sobolPoints,
  studentQuantile,
  varianceIndices,
} from "../../src/numeric/index.js"
import { between } from "./numbers.js"

const math = create(all as NonNullable<typeof all>)
const close = (actual: number, expected: number, relative: number) =>
  expect(Math.abs(actual - expected) <= relative * Math.abs(expected), `${actual} against ${expected}`).toBe(true)
const points = (dimensions: number, seed: number | null, count: number, from = 0) => {
  const next = sobolPoints(dimensions, seed, from)
  return Array.from({ length: count }, () => {
    const out = new Float64Array(dimensions)
    next(out)
    return out
  })
}

// figures of this block: SciPy 1.17.1 (scipy.special, scipy.stats), a general-purpose library
describe("quantiles agree with a library's", () => {
  it.each([
    [1e-300, -37.0470962993612],
    [1e-12, -7.034483825301131],
    [1e-5, -4.264890793922825],
    [0.01, -2.3263478740408408],
    [0.075, -1.4395314709384563],
    [0.3, -0.5244005127080409],
    [0.6, 0.2533471031357997],
    [0.975, 1.959963984540054],
    [0.9999, 3.719016485455709],
  ])("normal at %d", (p, z) => close(normalQuantile(p), z, 2e-15))
  it.each([
    [0.1, 0.5, 0.5, 0.20483276469913345],
    [0.3, 2, 5, 0.5798250000000003],
    [0.9, 20, 3, 0.6200409384119034],
    [0.02, 1, 300, 0.9976674943320486],
    [0.5, 5000, 5001, 0.5039893230696917],
    [0.95, 95000, 5001, 0.5037624048046373],
  ])("incomplete beta at %d of %d and %d", (x, a, b, value) => close(incompleteBeta(x, a, b), value, 1e-9))
  it.each([
    [0.975, 1, 12.706204736174694],
    [0.9, 2.5, 1.7302509288071766],
    [0.995, 16, 2.9207816224251],
    [0.975, 200, 1.9718962236339088],
  ])("Student's t at %d with %d degrees of freedom", (p, freedom, t) => close(studentQuantile(p, freedom), t, 1e-9))
  it.each([
    [0.1, 2.632455532033676, 3.572281897462417],
    [0.25, 3, 4.189058073632807],
    [0.5, 3.550510257216822, 5],
    [0.9, 4.904554884989668, 6.9983278804953315],
  ])("triangular and lognormal at %d", (p, triangular, lognormal) => {
    close(quantile({ type: "triangular", low: 2, mode: 3, high: 6 }, p), triangular, 1e-14)
    close(quantile({ type: "lognormal", median: 5, factor: 1.3 }, p), lognormal, 1e-14)
  })
  it("Sobol points of dimensions up to the last one of the table", () => {
    const some = (index: number) => [10, 20, 31, 40, 63].map((j) => points(64, null, 1, index)[0]?.[j])
    expect(some(4095)).toEqual([0.569580078125, 0.225830078125, 0.087646484375, 0.200927734375, 0.553466796875])
    expect(some(777)).toEqual([0.7451171875, 0.2373046875, 0.8994140625, 0.7216796875, 0.4267578125])
  })
})

describe("spreads with nothing or little in them", () => {
  it("a triangle without width is its value, one with its mode at an end stays inside", () => {
    expect(quantile({ type: "triangular", low: 2, mode: 2, high: 2 }, 0.3)).toBe(2)
    for (const p of [1e-9, 0.5, 1 - 1e-9]) {
      for (const mode of [1, 4]) {
        const x = quantile({ type: "triangular", low: 1, mode, high: 4 }, p)
        expect(x >= 1 && x <= 4).toBe(true)
      }
    }
  })
  it("too few values hold no quantile between them", () => {
    expect(quantileRanks(0.95, 20)).toEqual({ low: expect.any(Number), high: null })
    expect(quantileRanks(0.05, 20).low).toBeNull()
  })
  it("ranks hold a quantile as often as they say, counted out by the binomial distribution", () => {
    const choose = (n: number, k: number) => math.combinations(n, k) as number
    for (const [p, n] of [
      [0.5, 12],
      [0.1, 60],
      [0.9, 100],
    ] as const) {
      const { low, high } = quantileRanks(p, n)
      // the quantile lies between ranks l and h where more than l and at most h of the values are below it
      let held = 0
      for (let k = (low ?? -1) + 1; k <= (high ?? n); k++) held += choose(n, k) * p ** k * (1 - p) ** (n - k)
      expect(held).toBeGreaterThanOrEqual(0.95)
      expect(held).toBeLessThan(0.95 + 0.05)
    }
  })
  it("a share's interval holds it as often as it says, whatever the share, counted out", () => {
    fc.assert(
      fc.property(between(0.01, 0.99), fc.integer({ min: 1, max: 40 }), (share, n) => {
        let held = 0
        for (let k = 0; k <= n; k++) {
          const { low, high } = shareInterval(k, n)
          if (share >= low && share <= high) held += (math.combinations(n, k) as number) * share ** k * (1 - share) ** (n - k)
        }
        expect(held).toBeGreaterThanOrEqual(0.95 - 1e-9)
      }),
      { numRuns: 30 },
    )
  })
})

describe("points", () => {
  it("scrambled ones hold one point in every sixteenth by sixteenth of any two of the first dimensions, and differ by seed", () => {
    // published points of dimensions 1 and 2 are a net without flaw; scrambling must keep it so
    for (const seed of [1, 2, 99]) {
      const cells = new Set(points(2, seed, 256).map((u) => Math.floor((u[0] as number) * 16) * 16 + Math.floor((u[1] as number) * 16)))
      expect(cells.size).toBe(256)
    }
    expect(points(3, 1, 4)).not.toEqual(points(3, 2, 4))
    expect(points(3, 1, 4)).toEqual(points(3, 1, 4))
  })
  it("every dimension, those beyond the table too, is spread evenly and never at an end", () => {
    const many = points(70, 5, 1024)
    for (let j = 0; j < 70; j++) {
      const values = many.map((u) => u[j] as number)
      expect(Math.min(...values) > 0 && Math.max(...values) < 1).toBe(true)
      if (j < 64) expect(new Set(values.map((v) => Math.floor(v * 1024))).size, `dimension ${j}`).toBe(1024)
      // five times the standard error of a mean of so many
      else expect(Math.abs(values.reduce((s, v) => s + v, 0) / 1024 - 0.5)).toBeLessThan((5 * 0.2887) / 32)
    }
  })
  it("may begin anywhere in the sequence", () => {
    expect(points(5, 7, 3, 1000)).toEqual(points(5, 7, 1003).slice(1000))
    expect(points(5, null, 2, 6)).toEqual(points(5, null, 8).slice(6))
  })
  it("scrambling lowers the error of a smooth integral far below that of random points", () => {
    const error = (sample: (i: number) => ArrayLike<number>) => {
      let sum = 0
      for (let i = 0; i < 4096; i++) sum += Math.exp((sample(i)[0] as number) + (sample(i)[1] as number))
      return Math.abs(sum / 4096 - (Math.E - 1) ** 2)
    }
    const random = seeded(3)
    const scrambled = points(2, 3, 4096)
    const plain = Array.from({ length: 4096 }, () => [random(), random()])
    expect(error((i) => scrambled[i] as Float64Array)).toBeLessThan(error((i) => plain[i] as number[]) / 20)
  })
  it("seeded numbers are the same for one seed, uniform by chi-square, and mixing is one to one on a sample", () => {
    const random = seeded(42)
    const counts = new Array<number>(100).fill(0)
    for (let i = 0; i < 100_000; i++) counts[Math.floor(random() * 100)]!++
    const chi = counts.reduce((s, c) => s + (c - 1000) ** 2 / 1000, 0)
    // 0.1 % points of chi-square with 99 degrees of freedom (SciPy 1.17.1)
    expect(chi > 60.6 && chi < 148.2, String(chi)).toBe(true)
    expect(new Set(Array.from({ length: 10_000 }, (_, i) => mixed(i))).size).toBe(10_000)
    expect(seeded(42)()).toBe(seeded(42)())
  })
})

describe("cholesky", () => {
  it("gives back random positive definite matrices, and refuses those with an eigenvalue below zero", () => {
    const square = fc
      .integer({ min: 1, max: 6 })
      .chain((n) => fc.array(fc.array(between(-2, 2), { minLength: n, maxLength: n }), { minLength: n, maxLength: n }))
    fc.assert(
      fc.property(square, (m) => {
        const a = (math.add(math.multiply(m, math.transpose(m)), math.identity(m.length)) as unknown as { toArray(): number[][] }).toArray()
        const l = cholesky(a) as number[][]
        const back = math.multiply(l, math.transpose(l)) as number[][]
        for (let i = 0; i < a.length; i++) for (let j = 0; j < a.length; j++) expect(back[i]?.[j]).toBeCloseTo(a[i]?.[j] as number, 10)
      }),
      { numRuns: 40 },
    )
    expect(
      cholesky([
        [1, 0.9, -0.9],
        [0.9, 1, 0.9],
        [-0.9, 0.9, 1],
      ]),
    ).toBeNull()
    expect(
      cholesky([
        [1, 1],
        [1, 1],
      ]),
    ).toBeNull()
  })
})

describe("variance-based indices", () => {
  it("leave out rows without an answer, and take only the rows asked for", () => {
    const next = sobolPoints(4, 1)
    const row = new Float64Array(4)
    const n = 512
    const [a, b, x, y] = Array.from({ length: 4 }, () => new Float64Array(n)) as [Float64Array, Float64Array, Float64Array, Float64Array]
    const f = (u: number, v: number) => 3 * u + v
    for (let i = 0; i < n; i++) {
      next(row)
      const [p, q, r, s] = [...row] as [number, number, number, number]
      a[i] = f(p, q)
      b[i] = f(r, s)
      x[i] = f(r, q)
      y[i] = f(p, s)
    }
    const half = varianceIndices(a.slice(0, 256), b.slice(0, 256), [x.slice(0, 256), y.slice(0, 256)])
    expect(varianceIndices(a, b, [x, y], 0, 256)).toEqual(half)
    for (let i = 256; i < n; i++) x[i] = Number.NaN
    expect(varianceIndices(a, b, [x, y])).toEqual(half)
    // linear: shares are those of the squared slopes
    expect(half.first[0]).toBeCloseTo(0.9, 1)
    expect(half.total[1]).toBeCloseTo(0.1, 1)
  })
})
