import type { Asking } from "./asking.js"
import { solveLinear } from "./linear.js"
import { singularValues } from "./singular.js"

/** A problem of smallest squares. */
export interface LeastSquaresOptions {
  readonly start: readonly number[]
  readonly low?: readonly number[]
  readonly high?: readonly number[]
  /** Size of each unknown, by which steps are measured; of the start where left out, 1 where that is zero. */
  readonly scale?: readonly number[]
  readonly maxSteps?: number
}

/** What a search for the smallest squares found. */
export interface LeastSquares {
  readonly x: readonly number[]
  readonly residuals: readonly number[]
  /** Sum of squared residuals. */
  readonly squares: number
  /** Slopes of the residuals: one row a residual. */
  readonly slopes: readonly (readonly number[])[]
  readonly steps: number
  readonly evaluations: number
  /** Whether no step brings anything more; otherwise the steps were spent. */
  readonly isSettled: boolean
}

const sumOf = (r: readonly number[]) => r.reduce((sum, v) => sum + v * v, 0)

/**
 * Least squares within bounds (D. W. Marquardt, J. SIAM 11, 1963, 431–441; damping scaled as in J. J. Moré, Lecture Notes in Mathematics 630,
 * 1978, 105–116), slopes by central differences. An answer of null, where there is none, makes a step too long.
 *
 * @returns null where there is no answer at the start
 */
export function* leastSquares(options: LeastSquaresOptions): Asking<readonly number[] | null, LeastSquares | null> {
  const { start, maxSteps = 200 } = options
  const n = start.length
  const low = options.low ?? start.map(() => Number.NEGATIVE_INFINITY)
  const high = options.high ?? start.map(() => Number.POSITIVE_INFINITY)
  const scale = start.map((v, j) => options.scale?.[j] ?? (Math.abs(v) || 1))
  const inside = (v: number, j: number) => Math.min(high[j] as number, Math.max(low[j] as number, v))
  let x = start.map(inside)
  const first = (yield [Float64Array.from(x)])[0]
  if (!first) return null
  let residuals = first
  let squares = sumOf(residuals)
  let evaluations = 1
  let [damping, steps, isSettled] = [1e-3, 0, false]
  let slopes = yield* slopesAt(x, residuals, scale, low, high)
  evaluations += 2 * n
  const norms = x.map(() => 0)
  while (steps < maxSteps && !isSettled) {
    steps++
    const columns = x.map((_, j) => slopes.map((row) => row[j] as number))
    columns.forEach((c, j) => {
      norms[j] = Math.max(norms[j] as number, Math.sqrt(sumOf(c)))
    })
    const gradient = columns.map((c) => c.reduce((sum, v, i) => sum + v * (residuals[i] as number), 0))
    // an unknown held at its bound by its slope stays there in this step
    const isHeld = x.map(
      (v, j) => (v <= (low[j] as number) && (gradient[j] as number) > 0) || (v >= (high[j] as number) && (gradient[j] as number) < 0),
    )
    const free = x.map((_, j) => j).filter((j) => !isHeld[j] && (norms[j] as number) > 0)
    if (free.length === 0) {
      isSettled = true
      break
    }
    let isTaken = false
    for (let attempt = 0; attempt < 40 && !isTaken; attempt++) {
      const matrix = free.map((j) =>
        free.map((k) => {
          const product = (columns[j] as number[]).reduce((sum, v, i) => sum + v * (columns[k]?.[i] as number), 0)
          const size = (norms[j] as number) * (norms[k] as number)
          return product / size + (j === k ? damping : 0)
        }),
      )
      const step = solveLinear(
        matrix,
        free.map((j) => -(gradient[j] as number) / (norms[j] as number)),
        1e-300,
      )
      const to = [...x]
      free.forEach((j, i) => {
        to[j] = inside((x[j] as number) + ((step?.[i] ?? 0) as number) / (norms[j] as number), j)
      })
      const length = Math.max(...to.map((v, j) => Math.abs(v - (x[j] as number)) / Math.max(Math.abs(x[j] as number), scale[j] as number)))
      if (length < 1e-14) {
        isSettled = true
        break
      }
      const answer = (yield [Float64Array.from(to)])[0]
      evaluations++
      const after = answer ? sumOf(answer) : Number.NaN
      if (answer && after < squares) {
        isTaken = true
        isSettled = squares - after <= 1e-15 * squares
        x = to
        residuals = answer
        squares = after
        damping = Math.max(damping / 9, 1e-14)
      } else damping = Math.min(damping * 5, 1e12)
    }
    if (!isTaken) isSettled = true
    if (isTaken) {
      slopes = yield* slopesAt(x, residuals, scale, low, high)
      evaluations += 2 * n
    }
  }
  return { x, residuals, squares, slopes, steps, evaluations, isSettled }
}

/** Slopes by central differences, one-sided at a bound or beside a place without an answer. */
function* slopesAt(
  x: readonly number[],
  here: readonly number[],
  scale: readonly number[],
  low: readonly number[],
  high: readonly number[],
): Asking<readonly number[] | null, readonly (readonly number[])[]> {
  const steps = x.map((v, j) => 6e-6 * Math.max(Math.abs(v), (scale[j] as number) * 1e-3))
  const points = x.flatMap((v, j) => {
    const h = steps[j] as number
    const at = (value: number) => Float64Array.from(x.map((w, k) => (k === j ? value : w)))
    return [at(Math.min(v + h, high[j] as number)), at(Math.max(v - h, low[j] as number))]
  })
  const answers = yield points
  return here.map((own, i) =>
    x.map((v, j) => {
      const up = answers[2 * j]
      const down = answers[2 * j + 1]
      const [a, b] = [up ? (up[i] as number) : own, down ? (down[i] as number) : own]
      const [p, q] = [up ? (points[2 * j]?.[j] as number) : v, down ? (points[2 * j + 1]?.[j] as number) : v]
      return p === q ? 0 : (a - b) / (p - q)
    }),
  )
}

/** What least squares tell of the unknowns: how sure each is, and which combinations the residuals do not show. */
export interface Covariance {
  /** Covariances for residuals of variance 1; null where a combination of the unknowns is not seen. */
  readonly matrix: readonly (readonly number[])[] | null
  /** Directions (shares of each unknown's `scale`, of length 1) along which the residuals do not change. */
  readonly unseen: readonly (readonly number[])[]
  readonly rank: number
}

/**
 * Covariance of the unknowns from the slopes of the residuals, by singular values of the scaled slopes.
 *
 * @param scale - size of each unknown: a direction counts as unseen against these
 * @param limit - singular value, against the largest one, at or below which a direction is not seen
 */
export function covariance(slopes: readonly (readonly number[])[], scale: readonly number[], limit = 1e-6): Covariance {
  const n = scale.length
  const scaled = slopes.map((row) => row.map((v, j) => v * (scale[j] as number)))
  while (scaled.length < n) scaled.push(new Array<number>(n).fill(0))
  const { values, vectors } = singularValues(scaled)
  const largest = values[0] ?? 0
  const isSeen = values.map((value) => value > largest * limit)
  const unseen = vectors.filter((_, i) => !isSeen[i])
  const rank = n - unseen.length
  if (rank < n) return { matrix: null, unseen, rank }
  const matrix = scale.map((sj, j) =>
    scale.map((sk, k) =>
      values.reduce((sum, value, i) => sum + (((vectors[i]?.[j] as number) * (vectors[i]?.[k] as number)) / value ** 2) * sj * sk, 0),
    ),
  )
  return { matrix, unseen, rank }
}
