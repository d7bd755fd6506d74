import { solveLinear } from "../../numeric/index.js"

/** Solves a symmetric system scaled to a unit diagonal, so that milliohms and megohms may meet in one network. */
export function solveScaled(matrix: readonly (readonly number[])[], rhs: readonly number[]): number[] | null {
  const scale = matrix.map((row, k) => 1 / Math.sqrt(Math.abs(row[k] as number) || 1))
  const scaled = matrix.map((row, k) => row.map((r, l) => r * (scale[k] as number) * (scale[l] as number)))
  const y = solveLinear(
    scaled,
    rhs.map((b, k) => b * (scale[k] as number)),
  )
  return y?.map((v, k) => v * (scale[k] as number)) ?? null
}

/** Loops that carry a load of constant power each, what every other loop does to them reckoned in. */
export interface PowerLoops {
  readonly resistances: readonly (readonly number[])[]
  /** Voltage of each load without any of them, V. */
  readonly open: readonly number[]
  /** Power of each, W. */
  readonly powers: readonly number[]
}

/** Loop equations with the first `firm` loops, which carry no power load, taken out by elimination. */
export function withoutFirm(
  resistances: readonly (readonly number[])[],
  drive: readonly number[],
  firm: number,
): Omit<PowerLoops, "powers"> {
  const n = drive.length
  const rows = resistances.map((row, k) => [...row, drive[k] as number])
  // resistances are positive definite: no pivot is ever nought
  for (let k = 0; k < firm; k++) {
    const top = rows[k] as number[]
    for (let i = k + 1; i < n; i++) {
      const row = rows[i] as number[]
      const part = (row[k] as number) / (top[k] as number)
      if (part === 0) continue
      for (let j = k; j <= n; j++) row[j] = (row[j] as number) - part * (top[j] as number)
    }
  }
  const rest = rows.slice(firm)
  return { resistances: rest.map((row) => row.slice(firm, n)), open: rest.map((row) => row[n] as number) }
}

const dot = (a: readonly number[], b: readonly number[]) => {
  let sum = 0
  for (let k = 0; k < a.length; k++) sum += (a[k] as number) * (b[k] as number)
  return sum
}

/**
 * Solves (D − R)·y = b, D = scale·P/x², by conjugate gradients scaled to D: a thousand loads in a thousandth of the work of
 * an elimination. Null where the matrix is not positive definite.
 */
function conjugate({ resistances, powers }: PowerLoops, scale: number, x: readonly number[], b: readonly number[]): number[] | null {
  const root = x.map((v, k) => v / Math.sqrt(scale * (powers[k] as number)))
  let left = b.map((v, k) => v * (root[k] as number))
  let along = left
  let y = b.map(() => 0)
  const first = dot(left, left)
  let square = first
  for (let tries = 0; tries < 50 + 4 * b.length; tries++) {
    if (!(square > 1e-26 * first)) return y.map((v, k) => v * (root[k] as number))
    const scaled = along.map((v, k) => v * (root[k] as number))
    const image = along.map((v, k) => v - (root[k] as number) * dot(resistances[k] as readonly number[], scaled))
    const curve = dot(along, image)
    if (!(curve > 0)) return null
    const step = square / curve
    const way = along
    y = y.map((v, k) => v + step * (way[k] as number))
    left = left.map((v, k) => v - step * (image[k] as number))
    const next = dot(left, left)
    const keep = next / square
    along = left.map((v, k) => v + keep * (way[k] as number))
    square = next
  }
  return null
}

/** The same by elimination, wherever the matrix is not singular. */
const eliminated = ({ resistances, powers }: PowerLoops, scale: number, x: readonly number[], b: readonly number[]) =>
  solveScaled(
    resistances.map((row, k) => row.map((r, l) => (k === l ? (scale * (powers[k] as number)) / (x[k] as number) ** 2 : 0) - r)),
    b,
  )

/** Currents of the power loads at a scale, by Newton's method from a start or from their open voltages; null where there is no state. */
export function powerCurrents(
  load: PowerLoops,
  scale: number,
  start: readonly number[] | null = null,
): { x: readonly number[]; iterations: number } | null {
  const { resistances, open, powers } = load
  // where every load lowers every other's voltage, Newton's steps from below climb to the state and never pass it
  const oneWay = resistances.every((row) => row.every((r) => r >= 0))
  const volts = Math.max(...open)
  const over = (x: readonly number[]) =>
    open.map((v, k) => (scale * (powers[k] as number)) / (x[k] as number) + dot(resistances[k] as readonly number[], x) - v)
  const met = (x: readonly number[]) => over(x).every((v) => Math.abs(v) <= 1e-12 * volts)
  let x = start ?? open.map((v, k) => (scale * (powers[k] as number)) / v)
  if (powers.length === 0) return { x, iterations: 1 }
  let before = Number.POSITIVE_INFINITY
  for (let iterations = 1; iterations <= 100; iterations++) {
    const at = x
    const miss = over(at)
    const soft = conjugate(load, scale, at, miss)
    // below a state the matrix is positive definite
    if (soft === null && oneWay && (start === null || iterations > 1)) return null
    const change = soft ?? eliminated(load, scale, at, miss)
    if (change === null) return null
    const next = at.map((v, k) => v + (change[k] as number))
    if (next.some((v) => !(v > 0 && Number.isFinite(v)))) return null
    const size = Math.max(...next)
    const step = Math.max(...change.map(Math.abs))
    x = next
    // where the two roots nearly meet, rounding keeps the step from closing; the equations then decide
    if (step <= 1e-14 * size || (step > before / 2 && step < 1e-4 * size && met(x))) return { x, iterations }
    before = step
  }
  return met(x) ? { x, iterations: 100 } : null
}

/**
 * Largest share of the power loads that has a state. Where the two states of a constant-power
 * network meet, the slope dx/dscale grows as 1/√(limit − scale), so its inverse square runs straight into the limit.
 */
export function largestScale(load: PowerLoops): number {
  const { open, powers } = load
  const slopeAt = (scale: number, x: readonly number[]) => {
    const rise = x.map((v, k) => (powers[k] as number) / v)
    return conjugate(load, scale, x, rise) ?? eliminated(load, scale, x, rise)
  }
  let [low, high] = [0, 1]
  let state: readonly number[] = open.map(() => 0)
  let slope: readonly number[] | null = null
  /** Limit as the last two states foretell it. */
  let limit = Number.NaN
  // unloaded, each load's current grows as its power over its open voltage
  let [lastScale, lastSquare] = [0, 1 / Math.max(...open.map((v, p) => (powers[p] as number) / v)) ** 2]
  for (let tries = 0; tries < 200 && high - low > 1e-12 * high; tries++) {
    const foretold = limit > low && limit <= high ? limit - low : Number.NaN
    // the line is wrong by the square of what is left
    if (foretold <= 1e-7 * low) return limit
    // closer each time: a tenth of what is left, a hundredth, …
    const next = Number.isNaN(foretold) ? (low + high) / 2 : low + foretold * (1 - 10 ** -Math.min(4, 1 + tries / 2))
    const along = slope
    const start =
      along === null || Number.isNaN(foretold)
        ? null
        : state.map((v, k) => v + 2 * (along[k] as number) * foretold * (1 - Math.sqrt((limit - next) / foretold)))
    const found = powerCurrents(load, next, start)
    if (found === null) {
      high = next
      limit = Number.NaN
      continue
    }
    low = next
    state = found.x
    slope = slopeAt(low, state)
    const square = slope === null ? 0 : 1 / Math.max(...slope.map(Math.abs)) ** 2
    limit = low + (square * (low - lastScale)) / (lastSquare - square)
    ;[lastScale, lastSquare] = [low, square]
  }
  return low
}
