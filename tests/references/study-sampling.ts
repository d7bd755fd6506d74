import { quantileRanks, shareInterval, sobolPoints, studentQuantile, varianceIndices } from "../../src/numeric/index.js"
import type { Check } from "../helpers/references.js"

/** Published points in the unit cube, of which the first is the origin. */
function points(dimensions: number, count: number, from = 0): number[][] {
  const next = sobolPoints(dimensions, null, from)
  const out = new Float64Array(dimensions)
  return Array.from({ length: count }, () => {
    next(out)
    return [...out]
  })
}

const mean = (dimensions: number, counts: readonly number[], f: (x: number[]) => number) => ({
  estimate: counts.map((n) => points(dimensions, n).reduce((sum, x) => sum + f(x) / n, 0)),
})

const clopper: Check = ({ successes, trials, confidence }) => {
  const { low, high } = shareInterval(successes, trials, confidence)
  return { lower: low, upper: high }
}

const sizeFor = (enough: (n: number) => boolean) => {
  let n = 1
  while (!enough(n)) n++
  return n
}
/** Smallest number of values of which the `order`-th largest is above the quantile, surely enough. */
const oneSided = (confidence: number, content: number, order = 1) =>
  sizeFor((n) => {
    const { high } = quantileRanks(content, n, 2 * confidence - 1)
    return high !== null && high <= n - order
  })

export const samplingChecks: Readonly<Record<string, Check>> = {
  "qmc-sobol-6d": ({ dimensions, points: count }) => ({ points: points(dimensions, count) }),
  "qmc-sobol-10d-late": ({ dimensions, index }) => ({
    p100: points(dimensions, 1, index[0])[0],
    p1023: points(dimensions, 1, index[1])[0],
  }),
  "qmc-integral-exp": ({ dimensions, points: counts }) => mean(dimensions, counts, (x) => Math.exp(x.reduce((s, v) => s + v, 0))),
  "qmc-integral-g0": ({ dimensions, points: counts }) => mean(dimensions, counts, (x) => x.reduce((p, v) => p * Math.abs(4 * v - 2), 1)),
  "sens-ishigami-printed": ({ a, b }) => {
    const wide = (s: number) => Math.PI * (2 * s - 1)
    const f = (u: number, v: number, w: number) => Math.sin(wide(u)) + a * Math.sin(wide(v)) ** 2 + b * wide(w) ** 4 * Math.sin(wide(u))
    const count = 2 ** 17
    const [first, second, ...mixed] = Array.from({ length: 5 }, () => new Float64Array(count)) as [
      Float64Array,
      Float64Array,
      ...Float64Array[],
    ]
    const next = sobolPoints(6, null)
    const point = new Float64Array(6)
    for (let i = 0; i < count; i++) {
      next(point)
      const [u, v, w, p, q, r] = point as unknown as [number, number, number, number, number, number]
      first[i] = f(u, v, w)
      second[i] = f(p, q, r)
      for (const [j, value] of [f(p, v, w), f(u, q, w), f(u, v, r)].entries()) (mixed[j] as Float64Array)[i] = value
    }
    const told = varianceIndices(first, second, mixed)
    return { S1: told.first[0], S2: told.first[1], S3: told.first[2], ST1: told.total[0], ST2: told.total[1], ST3: told.total[2] }
  },
  "unc-clopper-0-20": clopper,
  "unc-clopper-1-29": clopper,
  "unc-clopper-15-148": clopper,
  "unc-clopper-81-263": clopper,
  "unc-clopper-table": ({ successes, trials }) => {
    const all = (successes as number[]).map((k) => shareInterval(k, trials))
    return { lower: all.map(({ low }) => low), upper: all.map(({ high }) => high) }
  },
  // one-sided: twice the tail of a two-sided one
  "unc-rule-of-three": ({ trials }) => ({ upper: (trials as number[]).map((n) => shareInterval(0, n, 0.9).high) }),
  "unc-t95-table": ({ dof }) => ({ t: (dof as number[]).map((n) => studentQuantile(0.975, n)) }),
  "unc-wilks-sizes": () => ({
    one_95_95: oneSided(0.95, 0.95),
    one_95_99: oneSided(0.95, 0.99),
    one_99_95: oneSided(0.99, 0.95),
    second_95_95: oneSided(0.95, 0.95, 2),
    third_95_95: oneSided(0.95, 0.95, 3),
  }),
}

const pair = "a limit on both sides at once is not given"
export const samplingWithout = { "unc-wilks-sizes": { two_95_95: pair, two_90_95: pair } }
