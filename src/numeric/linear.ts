/**
 * Solves A·x = b for a small dense square A by Gaussian elimination with partial pivoting.
 *
 * @param singular - pivot, against the largest entry of A, at or below which A counts as singular
 * @returns x, or null where A is singular to working precision
 */
export function solveLinear(a: readonly (readonly number[])[], b: readonly number[], singular = 1e-14): number[] | null {
  const n = b.length
  const m = a.map((row, i) => [...row, b[i] as number])
  const scale = Math.max(...m.map((row) => Math.max(...row.slice(0, n).map(Math.abs))), 0)
  for (let k = 0; k < n; k++) {
    let pivot = k
    for (let i = k + 1; i < n; i++) if (Math.abs(m[i]?.[k] as number) > Math.abs(m[pivot]?.[k] as number)) pivot = i
    const top = m[pivot] as number[]
    if (!(Math.abs(top[k] as number) > scale * singular)) return null
    m[pivot] = m[k] as number[]
    m[k] = top
    for (let i = k + 1; i < n; i++) {
      const row = m[i] as number[]
      const factor = (row[k] as number) / (top[k] as number)
      if (factor === 0) continue
      for (let j = k; j <= n; j++) row[j] = (row[j] as number) - factor * (top[j] as number)
    }
  }
  const x = new Array<number>(n).fill(0)
  for (let i = n - 1; i >= 0; i--) {
    const row = m[i] as number[]
    let sum = row[n] as number
    for (let j = i + 1; j < n; j++) sum -= (row[j] as number) * (x[j] as number)
    x[i] = sum / (row[i] as number)
  }
  return x
}
