/** Shares of a model's variance that its inputs account for. */
export interface VarianceIndices {
  readonly mean: number
  readonly variance: number
  /** Of each input: the share that would go if it alone were known. */
  readonly first: readonly number[]
  /** Of each input: the share that would stay if all others were known. */
  readonly total: readonly number[]
  /** Rows that entered: those for which every answer is a number. */
  readonly rows: number
}

/**
 * Variance-based indices of a model from its answers at two independent sets of points and at mixtures of them: first order after
 * A. Saltelli et al., Comput. Phys. Commun. 181, 2010, 259–270, table 2 (b), total order after M. J. W. Jansen, ibid. 117, 1999, 35–43. They are
 * estimates: small ones may come out a little below nothing, and are told so.
 *
 * @param a - answers at the points of the first set
 * @param b - answers at those of the second
 * @param mixed - of each input, answers at the points of the first set with that input taken from the second; NaN where there is no answer
 * @param from - first row to enter
 * @param to - the one after the last
 */
export function varianceIndices(
  a: Float64Array,
  b: Float64Array,
  mixed: readonly Float64Array[],
  from = 0,
  to = a.length,
): VarianceIndices {
  let [rows, sum] = [0, 0]
  const good = new Uint8Array(to)
  for (let i = from; i < to; i++) {
    if (Number.isNaN(a[i]) || Number.isNaN(b[i]) || mixed.some((m) => Number.isNaN(m[i]))) continue
    good[i] = 1
    rows++
    sum += (a[i] as number) + (b[i] as number)
  }
  const mean = sum / (2 * rows)
  let squares = 0
  const first = new Array<number>(mixed.length).fill(0)
  const total = new Array<number>(mixed.length).fill(0)
  for (let i = from; i < to; i++) {
    if (!good[i]) continue
    const [ya, yb] = [(a[i] as number) - mean, (b[i] as number) - mean]
    squares += ya * ya + yb * yb
    for (let j = 0; j < mixed.length; j++) {
      const ym = ((mixed[j] as Float64Array)[i] as number) - mean
      first[j] = (first[j] as number) + yb * (ym - ya)
      total[j] = (total[j] as number) + (ya - ym) * (ya - ym)
    }
  }
  const variance = squares / (2 * rows)
  return {
    mean,
    variance,
    rows,
    first: first.map((s) => s / rows / variance),
    total: total.map((s) => s / (2 * rows) / variance),
  }
}
