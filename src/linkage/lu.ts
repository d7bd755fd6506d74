/** Triangular factors of a square matrix, rows exchanged as pivots ask. */
export interface Factors {
  readonly size: number
  readonly lu: Float64Array
  readonly order: Int32Array
  /** Sign of the determinant, 0 where a pivot vanished. */
  readonly sign: number
  /** Smallest pivot over largest, a cheap measure of how near to singular the matrix is. */
  readonly pivotRatio: number
}

/** Factors a row-major square matrix by elimination with partial pivoting (the matrix is overwritten). */
export function factor(a: Float64Array, size: number): Factors {
  const order = new Int32Array(size)
  let [sign, least, most] = [1, Number.POSITIVE_INFINITY, 0]
  for (let k = 0; k < size; k++) order[k] = k
  for (let k = 0; k < size; k++) {
    let pivot = k
    for (let i = k + 1; i < size; i++) if (Math.abs(a[i * size + k] as number) > Math.abs(a[pivot * size + k] as number)) pivot = i
    if (pivot !== k) {
      sign = -sign
      const kept = order[k] as number
      order[k] = order[pivot] as number
      order[pivot] = kept
      for (let j = 0; j < size; j++) {
        const value = a[k * size + j] as number
        a[k * size + j] = a[pivot * size + j] as number
        a[pivot * size + j] = value
      }
    }
    const top = a[k * size + k] as number
    least = Math.min(least, Math.abs(top))
    most = Math.max(most, Math.abs(top))
    if (top < 0) sign = -sign
    if (top === 0) return { size, lu: a, order, sign: 0, pivotRatio: 0 }
    for (let i = k + 1; i < size; i++) {
      const ratio = (a[i * size + k] as number) / top
      a[i * size + k] = ratio
      if (ratio !== 0)
        for (let j = k + 1; j < size; j++) a[i * size + j] = (a[i * size + j] as number) - ratio * (a[k * size + j] as number)
    }
  }
  return { size, lu: a, order, sign, pivotRatio: most > 0 ? least / most : 0 }
}

/** Solves A·x = b from the factors. */
export function solveFactored({ size, lu, order }: Factors, b: ArrayLike<number>): Float64Array {
  const x = new Float64Array(size)
  for (let i = 0; i < size; i++) {
    let sum = b[order[i] as number] as number
    for (let j = 0; j < i; j++) sum -= (lu[i * size + j] as number) * (x[j] as number)
    x[i] = sum
  }
  for (let i = size - 1; i >= 0; i--) {
    let sum = x[i] as number
    for (let j = i + 1; j < size; j++) sum -= (lu[i * size + j] as number) * (x[j] as number)
    x[i] = sum / (lu[i * size + i] as number)
  }
  return x
}

/** Solves Aᵀ·x = b from the factors of A. */
export function solveTransposed({ size, lu, order }: Factors, b: ArrayLike<number>): Float64Array {
  const y = Float64Array.from(b)
  for (let i = 0; i < size; i++) {
    let sum = y[i] as number
    for (let j = 0; j < i; j++) sum -= (lu[j * size + i] as number) * (y[j] as number)
    y[i] = sum / (lu[i * size + i] as number)
  }
  for (let i = size - 1; i >= 0; i--) {
    let sum = y[i] as number
    for (let j = i + 1; j < size; j++) sum -= (lu[j * size + i] as number) * (y[j] as number)
    y[i] = sum
  }
  const x = new Float64Array(size)
  for (let i = 0; i < size; i++) x[order[i] as number] = y[i] as number
  return x
}

/**
 * Rank of a row-major rectangular matrix by elimination with complete pivoting (the matrix is overwritten). Every row counts as
 * one constraint, however its equation is scaled: it is brought to a largest entry of one first.
 */
export function rankOf(a: Float64Array, rows: number, columns: number, relative = 1e-9): number {
  for (let i = 0; i < rows; i++) {
    const row = a.subarray(i * columns, (i + 1) * columns)
    const most = row.reduce((so, v) => Math.max(so, Math.abs(v)), 0)
    if (most > 0) for (let j = 0; j < columns; j++) row[j] = (row[j] as number) / most
  }
  let first = 0
  for (let k = 0; k < Math.min(rows, columns); k++) {
    let [row, column, most] = [k, k, 0]
    for (let i = k; i < rows; i++)
      for (let j = k; j < columns; j++) {
        const size = Math.abs(a[i * columns + j] as number)
        if (size > most) [row, column, most] = [i, j, size]
      }
    if (k === 0) first = most
    if (!(most > relative * first)) return k
    for (let j = 0; j < columns; j++) {
      const value = a[k * columns + j] as number
      a[k * columns + j] = a[row * columns + j] as number
      a[row * columns + j] = value
    }
    for (let i = 0; i < rows; i++) {
      const value = a[i * columns + k] as number
      a[i * columns + k] = a[i * columns + column] as number
      a[i * columns + column] = value
    }
    for (let i = k + 1; i < rows; i++) {
      const ratio = (a[i * columns + k] as number) / (a[k * columns + k] as number)
      for (let j = k; j < columns; j++) a[i * columns + j] = (a[i * columns + j] as number) - ratio * (a[k * columns + j] as number)
    }
  }
  return Math.min(rows, columns)
}
