import { factor, factorComplex, solveComplex, solveFactored } from "./factored.js"
import { allFinite, type Setting, type Stepper } from "./types.js"

const ROOT = Math.sqrt(6)
/** Where the three stages stand. */
const AT = [(4 - ROOT) / 10, (4 + ROOT) / 10, 1] as const
const ESTIMATE = [(-13 - 7 * ROOT) / 3, (-13 + 7 * ROOT) / 3, -1 / 3] as const
/** Eigenvalues of the inverse of the method's matrix: one real, one pair. */
const REAL = 3 + Math.cbrt(9) - Math.cbrt(3)
const PAIR_RE = 3 + (Math.cbrt(3) - Math.cbrt(9)) / 2
const PAIR_IM = -(3 ** (5 / 6) + 3 ** (7 / 6)) / 2
/** From what the eigenvalues see to the stages, and back. */
const T = [
  [0.09443876248897524, -0.1412552950209542, 0.03002919410514742],
  [0.2502131229653333, 0.20412935229379994, -0.3829421127572619],
  [1, 1, 0],
] as const
const BACK = [
  [4.178718591551904, 0.32768282076106237, 0.5233764454994495],
  [-4.178718591551904, -0.32768282076106237, 0.47662355450055044],
  [0.5028726349457868, -2.571926949855605, 0.5960392048282249],
] as const
/** Powers of the share of a step, by stages: the polynomial through all of them. */
const POWERS = [
  [(13 + 7 * ROOT) / 3, (13 - 7 * ROOT) / 3, 1 / 3],
  [(-23 - 22 * ROOT) / 3, (-23 + 22 * ROOT) / 3, -8 / 3],
  [(10 + 15 * ROOT) / 3, (10 - 15 * ROOT) / 3, 10 / 3],
] as const
const MOST_ROUNDS = 7
/** The largest value in a step of the polynomial that is zero at its start and at the three stages. */
const LARGEST_BETWEEN = 0.01825

/**
 * Radau IIA of order 5 with its collocation polynomial (order 3) between, as worked by E. Hairer and G. Wanner, Solving Ordinary
 * Differential Equations II, 2nd ed. 1996, IV.8: simplified Newton rounds on one real and one complex system, their estimate of the
 * error and control of the step, and their stricter allowance inside. The slope's derivatives are differences, kept while the rounds
 * close fast. What the polynomial is off by between the stages counts as error too. It is no longer needed where h times the largest rate stays within a half of what the explicit pair bears, ten steps
 * on end.
 */
export function radau({ size: n, slope, relative: asked, absolute: askedAbsolute }: Setting): Stepper {
  const relative = 0.1 * asked ** (2 / 3)
  const absolute = askedAbsolute.map((a) => (a / asked) * relative)
  const enough = Math.max((10 * Number.EPSILON) / relative, Math.min(0.03, Math.sqrt(relative)))
  const three = () => [new Float64Array(n), new Float64Array(n), new Float64Array(n)] as const
  const [z, w, f] = [three(), three(), three()]
  let [powers, before] = [three(), three()]
  const [next, nextSlope, point, scale] = [new Float64Array(n), new Float64Array(n), new Float64Array(n), new Float64Array(n)]
  const [right, pairRe, pairIm, ze] = [new Float64Array(n), new Float64Array(n), new Float64Array(n), new Float64Array(n)]
  const [jacobian, real, re, im] = Array.from({ length: 4 }, () => new Float64Array(n * n)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ]
  const [pivots, pairPivots] = [new Int32Array(n), new Int32Array(n)]

  let start: Float64Array = point
  let [stepBefore, step, factoredFor, growth, calm] = [0, 0, 0, 1, 0]
  // what the control remembers: closing of the rounds, the last accepted step and its error, how the last attempt ended
  let [closing, stepAccepted, errorAccepted, theta] = [1, 0, 0, 0]
  let [fresh, wanted, first, rejected] = [false, true, true, false]
  let error = 0

  const differences = (t: number, y: Float64Array, dy: Float64Array, h: number): boolean => {
    point.set(y)
    for (let j = 0; j < n; j++) {
      const at = y[j] as number
      const size = Math.sqrt(Number.EPSILON * Math.max(1e-5, Math.abs(at)))
      // first the way the state is going; the other way where there is nothing
      let known = false
      for (let side = 0; side < 2 && !known; side++) {
        point[j] = at + (h * (dy[j] as number) < 0 === (side === 0) ? -size : size)
        slope(t, point, right)
        known = allFinite(right)
      }
      if (!known) return false
      const width = (point[j] as number) - at
      for (let i = 0; i < n; i++) jacobian[i * n + j] = ((right[i] as number) - (dy[i] as number)) / width
      point[j] = at
    }
    ;[fresh, wanted, factoredFor] = [true, false, 0]
    return true
  }

  const factors = (h: number): boolean => {
    if (factoredFor === h) return true
    for (let i = 0; i < n * n; i++) {
      const entry = -(jacobian[i] as number)
      const diagonal = i % (n + 1) === 0
      real[i] = diagonal ? REAL / h + entry : entry
      re[i] = diagonal ? PAIR_RE / h + entry : entry
      im[i] = diagonal ? PAIR_IM / h : 0
    }
    factoredFor = factor(real, n, pivots) && factorComplex(re, im, n, pairPivots) ? h : 0
    return factoredFor === h
  }

  const stagesFrom = (source: readonly Float64Array[], matrix: readonly (readonly number[])[], target: readonly Float64Array[]) => {
    for (let r = 0; r < 3; r++) {
      const row = matrix[r] as readonly number[]
      const out = target[r] as Float64Array
      for (let i = 0; i < n; i++)
        out[i] =
          (row[0] as number) * (source[0]?.[i] as number) +
          (row[1] as number) * (source[1]?.[i] as number) +
          (row[2] as number) * (source[2]?.[i] as number)
    }
  }

  /** Stages as the step before would go on. */
  const predict = (h: number) => {
    for (let s = 0; s < 3; s++) {
      const x = 1 + (h * (AT[s] as number)) / stepBefore
      const out = z[s] as Float64Array
      if (stepBefore === 0) out.fill(0)
      else
        for (let i = 0; i < n; i++)
          out[i] = (x - 1) * (before[0][i] as number) + (x * x - 1) * (before[1][i] as number) + (x * x * x - 1) * (before[2][i] as number)
    }
    stagesFrom(z, BACK, w)
  }

  /** Newton rounds on the stages. The rounds taken, 0 where they do not close, NaN where a slope is no number. */
  const close = (t: number, y: Float64Array, h: number): number => {
    let last = 0
    theta = 0
    let factorOfRest = Math.max(closing, Number.EPSILON) ** 0.8
    for (let round = 1; round <= MOST_ROUNDS; round++) {
      for (let s = 0; s < 3; s++) {
        for (let i = 0; i < n; i++) point[i] = (y[i] as number) + (z[s]?.[i] as number)
        slope(t + h * (AT[s] as number), point, f[s] as Float64Array)
        if (!allFinite(f[s] as Float64Array)) return Number.NaN
      }
      const [rate, rateRe, rateIm] = [REAL / h, PAIR_RE / h, PAIR_IM / h]
      for (let i = 0; i < n; i++) {
        const f0 = f[0][i] as number
        const f1 = f[1][i] as number
        const f2 = f[2][i] as number
        const w1 = w[1][i] as number
        const w2 = w[2][i] as number
        right[i] = BACK[0][0] * f0 + BACK[0][1] * f1 + BACK[0][2] * f2 - rate * (w[0][i] as number)
        pairRe[i] = BACK[1][0] * f0 + BACK[1][1] * f1 + BACK[1][2] * f2 - (rateRe * w1 - rateIm * w2)
        pairIm[i] = BACK[2][0] * f0 + BACK[2][1] * f1 + BACK[2][2] * f2 - (rateRe * w2 + rateIm * w1)
      }
      solveFactored(real, n, pivots, right)
      solveComplex(re, im, n, pairPivots, pairRe, pairIm)
      let sum = 0
      for (let i = 0; i < n; i++) {
        const allowed = scale[i] as number
        sum += ((right[i] as number) / allowed) ** 2 + ((pairRe[i] as number) / allowed) ** 2 + ((pairIm[i] as number) / allowed) ** 2
      }
      const moved = Math.sqrt(sum / Math.max(3 * n, 1))
      if (!Number.isFinite(moved)) return 0
      if (round > 1) {
        theta = moved / last
        if (theta >= 0.99) return 0
        factorOfRest = theta / (1 - theta)
        if (factorOfRest * moved * theta ** (MOST_ROUNDS - 1 - round) > enough && round < MOST_ROUNDS) return 0
      }
      last = Math.max(moved, Number.EPSILON)
      for (let i = 0; i < n; i++) {
        w[0][i] = (w[0][i] as number) + (right[i] as number)
        w[1][i] = (w[1][i] as number) + (pairRe[i] as number)
        w[2][i] = (w[2][i] as number) + (pairIm[i] as number)
      }
      stagesFrom(w, T, z)
      if (factorOfRest * moved <= enough) {
        closing = factorOfRest
        return round
      }
    }
    return 0
  }

  const normOf = (list: Float64Array): number => {
    let sum = 0
    for (let i = 0; i < n; i++) sum += ((list[i] as number) / (scale[i] as number)) ** 2
    return Math.max(Math.sqrt(sum / Math.max(n, 1)), 1e-10)
  }

  const estimate = (t: number, y: Float64Array, dy: Float64Array, h: number): number => {
    for (let i = 0; i < n; i++) {
      let sum = 0
      for (let s = 0; s < 3; s++) sum += (ESTIMATE[s] as number) * (z[s]?.[i] as number)
      ze[i] = sum / h
      right[i] = (dy[i] as number) + (ze[i] as number)
    }
    solveFactored(real, n, pivots, right)
    const found = normOf(right)
    if (!(found >= 1) || !(first || rejected)) return found
    for (let i = 0; i < n; i++) point[i] = (y[i] as number) + (right[i] as number)
    slope(t, point, right)
    if (!allFinite(right)) return found
    for (let i = 0; i < n; i++) right[i] = (right[i] as number) + (ze[i] as number)
    solveFactored(real, n, pivots, right)
    return normOf(right)
  }

  /**
   * Error between the stages: how far the polynomial misses a state of the step before. The estimate above sees nothing of it where
   * the system is so stiff that a step ends right whatever its size.
   */
  const betweenStages = (h: number): number => {
    if (stepBefore === 0) return 0
    // of the step before its start, or a stage nearer by where that was the longer one
    const old = Math.abs(stepBefore) > Math.abs(h) ? (AT[1] as number) : 0
    const x = ((old - 1) * stepBefore) / h
    const lever = x * (x - AT[0]) * (x - AT[1]) * (x - 1)
    for (let i = 0; i < n; i++) {
      const [p, q, r] = [before[0][i] as number, before[1][i] as number, before[2][i] as number]
      const was = (old - 1) * p + (old * old - 1) * q + (old * old * old - 1) * r
      const told = x * ((powers[0][i] as number) + x * ((powers[1][i] as number) + x * (powers[2][i] as number)))
      ze[i] = (LARGEST_BETWEEN * (told - was)) / lever
    }
    return normOf(ze)
  }

  /** The largest rate at which the linear system turns or decays, by powers of the differences. */
  const largestRate = (): number => {
    let logs = 0
    for (let i = 0; i < n; i++) right[i] = (scale[i] as number) * (i % 2 === 0 ? 1 : -0.5)
    let size = normOf(right)
    for (let round = 0; round < 10; round++) {
      for (let i = 0; i < n; i++) {
        let sum = 0
        for (let j = 0; j < n; j++) sum += (jacobian[i * n + j] as number) * (right[j] as number)
        ze[i] = sum / size
      }
      right.set(ze)
      size = normOf(right)
      // of a pair that turns one round alone says little: their mean does
      if (round >= 2) logs += Math.log(size)
    }
    return Math.exp(logs / 8)
  }

  const failed = (share: number, answer: number): number => {
    ;[growth, rejected, wanted] = [share, true, !fresh]
    return answer
  }

  return {
    next,
    nextSlope,
    attempt(t, y, dy, h) {
      ;[start, step] = [y, h]
      if (wanted && !differences(t, y, dy, h)) return failed(0.25, Number.NaN)
      if (!factors(h)) return failed(0.5, Number.POSITIVE_INFINITY)
      for (let i = 0; i < n; i++) scale[i] = (absolute[i] as number) + relative * Math.abs(y[i] as number)
      predict(h)
      const rounds = close(t, y, h)
      if (Number.isNaN(rounds)) return failed(0.25, Number.NaN)
      if (rounds === 0) return failed(0.5, Number.POSITIVE_INFINITY)
      stagesFrom(z, POWERS, powers)
      error = Math.max(estimate(t, y, dy, h), betweenStages(h))
      const safe = Math.min(0.9, (0.9 * (1 + 2 * MOST_ROUNDS)) / (rounds + 2 * MOST_ROUNDS))
      growth = Math.min(8, Math.max(0.2, safe * error ** -0.25))
      if (!(error <= 1)) {
        ;[rejected, wanted] = [true, !fresh && theta > 1e-3]
        if (first) growth = 0.1
        return error
      }
      for (let i = 0; i < n; i++) next[i] = (y[i] as number) + (z[2][i] as number)
      slope(t + h, next, nextSlope)
      if (!allFinite(next) || !allFinite(nextSlope)) return failed(0.25, Number.NaN)
      return error
    },
    get growth() {
      return growth
    },
    dense(share, out) {
      const [p, q, r] = powers
      for (let i = 0; i < n; i++)
        out[i] = (start[i] as number) + share * ((p[i] as number) + share * ((q[i] as number) + share * (r[i] as number)))
      return true
    },
    accept() {
      // the control of Gustafsson, with the error of the step before
      if (!first) {
        const told = (step / stepAccepted) * (errorAccepted / error ** 2) ** 0.25 * 0.9
        growth = Math.min(growth, Math.min(8, Math.max(0.2, told)))
      }
      if (rejected) growth = Math.min(growth, 1)
      ;[stepAccepted, errorAccepted] = [step, Math.max(1e-2, error)]
      ;[first, rejected, fresh] = [false, false, false]
      wanted = theta > 1e-3
      // a step of nearly the same size keeps its factors
      if (!wanted && growth >= 1 && growth <= 1.2) growth = 1
      ;[powers, before, stepBefore] = [before, powers, step]
      calm = Math.abs(step) * largestRate() < 3 ? calm + 1 : 0
    },
    get tired() {
      return calm >= 10
    },
    restart() {
      ;[fresh, wanted, first, rejected, calm, closing, stepBefore, factoredFor] = [false, true, true, false, 0, 1, 0, 0]
    },
  }
}
