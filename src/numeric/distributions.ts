// Quantiles of the distributions that spreads and confidence intervals are made of.
import { brent } from "./roots.js"

function ratio(top: readonly number[], bottom: readonly number[], x: number): number {
  const value = (coefficients: readonly number[]) => coefficients.reduceRight((sum, c) => sum * x + c, 0)
  return value(top) / value(bottom)
}

const CENTRE = [
  [
    3.387132872796366608, 133.14166789178437745, 1971.5909503065514427, 13731.693765509461125, 45921.953931549871457, 67265.770927008700853,
    33430.575583588128105, 2509.0809287301226727,
  ],
  [
    1, 42.313330701600911252, 687.1870074920579083, 5394.1960214247511077, 21213.794301586595867, 39307.89580009271061,
    28729.085735721942674, 5226.495278852854561,
  ],
] as const
const SIDE = [
  [
    1.42343711074968357734, 4.6303378461565452959, 5.7694972214606914055, 3.64784832476320460504, 1.27045825245236838258,
    0.24178072517745061177, 0.0227238449892691845833, 7.7454501427834140764e-4,
  ],
  [
    1, 2.05319162663775882187, 1.6763848301838038494, 0.68976733498510000455, 0.14810397642748007459, 0.0151986665636164571966,
    5.475938084995344946e-4, 1.05075007164441684324e-9,
  ],
] as const
const TAIL = [
  [
    6.6579046435011037772, 5.4637849111641143699, 1.7848265399172913358, 0.29656057182850489123, 0.026532189526576123093,
    0.0012426609473880784386, 2.71155556874348757815e-5, 2.01033439929228813265e-7,
  ],
  [
    1, 0.59983220655588793769, 0.13692988092273580531, 0.0148753612908506148525, 7.868691311456132591e-4, 1.8463183175100546818e-5,
    1.4215117583164458887e-7, 2.04426310338993978564e-15,
  ],
] as const

/** Quantile of the standard normal distribution (M. J. Wichura, Algorithm AS 241, Appl. Statist. 37, 1988, 477–484, PPND16). */
export function normalQuantile(p: number): number {
  const q = p - 0.5
  if (Math.abs(q) <= 0.425) return q * ratio(CENTRE[0], CENTRE[1], 0.180625 - q * q)
  const r = Math.sqrt(-Math.log(q < 0 ? p : 1 - p))
  const size = r <= 5 ? ratio(SIDE[0], SIDE[1], r - 1.6) : ratio(TAIL[0], TAIL[1], r - 5)
  return q < 0 ? -size : size
}

/** Share of the standard normal distribution below z (M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, 1964, 26.2.11 and 26.2.14). */
export function normalShare(z: number): number {
  const size = Math.abs(z)
  if (size > 38) return z > 0 ? 1 : 0
  const density = Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI)
  if (size < 3) {
    let [term, sum] = [size, size]
    for (let k = 3; term > sum * 1e-17; k += 2) {
      term *= (size * size) / k
      sum += term
    }
    return 0.5 + (z < 0 ? -1 : 1) * density * sum
  }
  let fraction = size
  for (let k = 60; k >= 1; k--) fraction = size + k / fraction
  return z > 0 ? 1 - density / fraction : density / fraction
}

/** How a value is spread: all in one unit. */
export type Distribution =
  | { readonly type: "normal"; readonly mean: number; readonly deviation: number }
  | { readonly type: "uniform"; readonly low: number; readonly high: number }
  | { readonly type: "triangular"; readonly low: number; readonly mode: number; readonly high: number }
  /** The logarithm is normal: half lie below the median, two thirds within a factor of it. */
  | { readonly type: "lognormal"; readonly median: number; readonly factor: number }

/** The value below which the share `p` lies. */
export function quantile(spread: Distribution, p: number): number {
  switch (spread.type) {
    case "normal":
      return spread.mean + spread.deviation * normalQuantile(p)
    case "uniform":
      return spread.low + (spread.high - spread.low) * p
    case "triangular": {
      const { low, mode, high } = spread
      const width = high - low
      if (width === 0) return low
      return p * width <= mode - low ? low + Math.sqrt(p * width * (mode - low)) : high - Math.sqrt((1 - p) * width * (high - mode))
    }
    case "lognormal":
      return spread.median * Math.exp(Math.log(spread.factor) * normalQuantile(p))
  }
}

// Lanczos approximation, g = 7, nine terms (P. Godfrey's coefficients)
const LANCZOS = [
  0.99999999999980993, 676.5203681218851, -1259.1392167224028, 771.32342877765313, -176.61502916214059, 12.507343278686905,
  -0.13857109526572012, 9.9843695780195716e-6, 1.5056327351493116e-7,
]

/** Natural logarithm of the gamma function, x ≥ 0.5. */
function logGamma(x: number): number {
  const t = x + 6.5
  const sum = LANCZOS.reduce((s, c, i) => (i === 0 ? c : s + c / (x - 1 + i)), 0)
  return 0.5 * Math.log(2 * Math.PI) + (x - 0.5) * Math.log(t) - t + Math.log(sum)
}

/** Regularised incomplete beta function I_x(a, b), a and b ≥ 0.5 (continued fraction, NIST Digital Library of Mathematical Functions, 8.17.22). */
export function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0
  if (x >= 1) return 1
  // converges fast on this side of the mean only
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(1 - x, b, a)
  const front = Math.exp(a * Math.log(x) + b * Math.log1p(-x) + logGamma(a + b) - logGamma(a) - logGamma(b)) / a
  const tiny = 1e-300
  let [c, d] = [1, 1 / Math.max(1 - ((a + b) * x) / (a + 1), tiny)]
  let value = d
  for (let m = 1; m <= 10000; m++) {
    const even = (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m))
    const odd = (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1))
    for (const term of [even, odd]) {
      d = 1 / (1 + term * d || tiny)
      c = 1 + term / c || tiny
      value *= c * d
    }
    if (Math.abs(c * d - 1) < 1e-16 * 4) break
  }
  return front * value
}

function betaQuantile(p: number, a: number, b: number): number {
  const found = brent((x) => incompleteBeta(x, a, b) - p, 0, 1, 1e-15)
  return found === null ? Number.NaN : found.x
}

/** Quantile of Student's t, for p above a half. */
export function studentQuantile(p: number, freedom: number): number {
  const x = betaQuantile(2 * (1 - p), freedom / 2, 0.5)
  return Math.sqrt((freedom * (1 - x)) / x)
}

/** Two-sided confidence interval of a share of which `count` of `trials` were seen (C. J. Clopper, E. S. Pearson, Biometrika 26, 1934, 404–413). */
export function shareInterval(count: number, trials: number, confidence = 0.95): { readonly low: number; readonly high: number } {
  const tail = (1 - confidence) / 2
  return {
    low: count === 0 ? 0 : betaQuantile(tail, count, trials - count + 1),
    high: count === trials ? 1 : betaQuantile(1 - tail, count + 1, trials - count),
  }
}

/**
 * Which of `trials` sorted values hold the quantile `p` between them, whatever the distribution (S. S. Wilks, Ann. Math. Statist. 12,
 * 1941, 91–96): ranks from 0, null where there are too few values for that confidence.
 */
export function quantileRanks(p: number, trials: number, confidence = 0.95): { readonly low: number | null; readonly high: number | null } {
  const tail = (1 - confidence) / 2
  /** Chance that more than k − 1 of the values lie below the quantile: that the one of rank k, counted from 1, does. */
  const below = (k: number) => (k <= 0 ? 1 : k > trials ? 0 : incompleteBeta(p, k, trials - k + 1))
  // the last rank that is surely below, the first that is surely not
  const at = (sure: (k: number) => boolean, from: number, to: number): number => {
    let [yes, no] = [from, to]
    while (Math.abs(yes - no) > 1) {
      const middle = (yes + no) >> 1
      if (sure(middle)) yes = middle
      else no = middle
    }
    return yes
  }
  const low = at((k) => below(k) >= 1 - tail, 0, trials + 1)
  const high = at((k) => below(k) <= tail, trials + 1, 0)
  return { low: low === 0 ? null : low - 1, high: high === trials + 1 ? null : high - 1 }
}
