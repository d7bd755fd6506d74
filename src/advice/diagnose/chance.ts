// Chances of a sum of squares, and the noise that tools and good parts leave in readings.
import { cholesky, normalShare } from "../../numeric/index.js"
import type { Built } from "./built.js"
import { meters, type NumberType } from "./meters.js"
import { type Asked, type Showing, showing, type Taken } from "./predict.js"
import type { Straying } from "./straying.js"

/**
 * Share of sums of `dof` squared standard normal deviates that come out above `sum`: the upper incomplete gamma function by its
 * recurrence from dof 1 or 2.
 */
export function beyond(sum: number, dof: number): number {
  if (dof <= 0) return 1
  const x = Math.max(0, sum) / 2
  let [a, share, term] =
    dof % 2
      ? [0.5, 2 * (1 - normalShare(Math.sqrt(2 * x))), 2 * Math.sqrt(x / Math.PI) * Math.exp(-x)]
      : [1, Math.exp(-x), x * Math.exp(-x)]
  while (2 * a < dof) {
    share += term
    a += 1
    term *= x / a
  }
  return Math.min(1, Math.max(0, share))
}

/** Readings' noise about one state of the rig. */
export interface Noise {
  /** Lower triangle of their covariance. */
  readonly root: readonly (readonly number[])[]
  readonly logDet: number
  /** Standard deviation of each alone. */
  readonly deviations: readonly number[]
}

/** Noise of tools, with the gain that readings of one tool share, and of good parts that stray. */
export function noiseAbout(built: Built, taken: Taken, strayings: readonly Straying[], planned: Asked): Noise {
  const { list, sigmas, values } = taken
  const base = showing(built, list, planned).values
  const numbers = values.map((v) => v !== null)
  const columns: number[][] = []
  for (const { stray, by } of strayings) {
    const strayed = showing(stray(built), list, planned).values
    const column = list.map((_, i) => {
      const moved = (strayed[i] as number) - (base[i] as number)
      return numbers[i] && Number.isFinite(moved) ? by * moved : 0
    })
    if (column.some((c) => c !== 0)) columns.push(column)
  }
  for (const tool of ["voltmeter", "ammeter", "scale"] as const) {
    const column = list.map((one, i) => {
      const meter = meters[one.type as NumberType]
      return numbers[i] && meter?.gainOf === tool ? meter.gain * (values[i] as number) : 0
    })
    if (column.some((c) => c !== 0)) columns.push(column)
  }
  const matrix = list.map((_, i) =>
    list.map((_, j) => columns.reduce((sum, c) => sum + (c[i] as number) * (c[j] as number), i === j ? (sigmas[i] as number) ** 2 : 0)),
  )
  const root = cholesky(matrix)
  if (!root) throw new RangeError("A covariance that is none: every reading has an uncertainty of its own.")
  return {
    root,
    logDet: root.reduce((sum, row, i) => sum + 2 * Math.log(row[i] as number), 0),
    deviations: matrix.map((row, i) => Math.sqrt(row[i] as number)),
  }
}

/** By how much what could not even be read is off: farther than anything that could. */
const UNREADABLE = 1000

/** Differences between readings and what is shown, in standard deviations, with what they have in common taken out. */
export function whitened({ values }: Taken, shows: Showing, { root, deviations }: Noise): Float64Array {
  const z = new Float64Array(values.length)
  for (let i = 0; i < z.length; i++) {
    const value = values[i] ?? null
    const shown = shows.values[i] as number
    let rest = value === null ? 0 : Number.isFinite(shown) ? value - shown : UNREADABLE * (deviations[i] as number)
    const row = root[i] as readonly number[]
    for (let k = 0; k < i; k++) rest -= (row[k] as number) * (z[k] as number)
    z[i] = rest / (row[i] as number)
  }
  return z
}
