/** A matrix as U·diag(values)·Vᵀ: what is needed of it for least squares. */
export interface SingularValues {
  /** Largest first. */
  readonly values: readonly number[]
  /** Directions in the space of the columns, in the order of the values. */
  readonly vectors: readonly (readonly number[])[]
}

/** Singular values of a matrix with at least as many rows as columns, by one-sided Jacobi rotations (M. R. Hestenes, J. SIAM 6, 1958, 51–90). */
export function singularValues(a: readonly (readonly number[])[]): SingularValues {
  const n = a[0]?.length ?? 0
  const columns = Array.from({ length: n }, (_, j) => a.map((row) => row[j] as number))
  const v = columns.map((_, j) => columns.map((_, k): number => (j === k ? 1 : 0)))
  const dot = (x: readonly number[], y: readonly number[]) => x.reduce((sum, value, i) => sum + value * (y[i] as number), 0)
  const rotate = (x: number[], y: number[], cos: number, sin: number) => {
    for (let i = 0; i < x.length; i++) {
      const [p, q] = [x[i] as number, y[i] as number]
      x[i] = cos * p - sin * q
      y[i] = sin * p + cos * q
    }
  }
  for (let sweep = 0; sweep < 60; sweep++) {
    let isDone = true
    for (let j = 0; j < n; j++) {
      for (let k = j + 1; k < n; k++) {
        const [x, y] = [columns[j] as number[], columns[k] as number[]]
        const [alpha, beta, gamma] = [dot(x, x), dot(y, y), dot(x, y)]
        if (gamma === 0 || Math.abs(gamma) <= 1e-15 * Math.sqrt(alpha * beta)) continue
        isDone = false
        const zeta = (beta - alpha) / (2 * gamma)
        const t = (zeta < 0 ? -1 : 1) / (Math.abs(zeta) + Math.sqrt(1 + zeta * zeta))
        const cos = 1 / Math.sqrt(1 + t * t)
        rotate(x, y, cos, cos * t)
        rotate(v[j] as number[], v[k] as number[], cos, cos * t)
      }
    }
    if (isDone) break
  }
  const sizes = columns.map((x) => Math.sqrt(dot(x, x)))
  const order = sizes.map((_, j) => j).sort((i, j) => (sizes[j] as number) - (sizes[i] as number))
  return { values: order.map((j) => sizes[j] as number), vectors: order.map((j) => v[j] as number[]) }
}
