/**
 * Lower triangular L with L·Lᵀ = a, for a symmetric positive definite matrix.
 *
 * @returns L, or null where `a` is not positive definite to working precision
 */
export function cholesky(a: readonly (readonly number[])[]): number[][] | null {
  const n = a.length
  const l = a.map(() => new Array<number>(n).fill(0))
  for (let i = 0; i < n; i++) {
    const row = l[i] as number[]
    for (let j = 0; j <= i; j++) {
      const other = l[j] as number[]
      let rest = a[i]?.[j] as number
      for (let k = 0; k < j; k++) rest -= (row[k] as number) * (other[k] as number)
      if (i > j) row[j] = rest / (other[j] as number)
      else if (rest > Math.abs(a[i]?.[i] as number) * n * Number.EPSILON) row[i] = Math.sqrt(rest)
      else return null
    }
  }
  return l
}
