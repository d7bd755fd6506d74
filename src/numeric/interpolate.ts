/** Straight-line interpolation in a table of (x, y) sorted by x; the ends are held outside the table. */
export function interpolate(table: readonly (readonly [x: number, y: number])[], x: number): number {
  const first = table[0] as readonly [number, number]
  const last = table[table.length - 1] as readonly [number, number]
  if (x <= first[0]) return first[1]
  if (x >= last[0]) return last[1]
  let [low, high] = [0, table.length - 1]
  while (high - low > 1) {
    const mid = (low + high) >> 1
    if ((table[mid] as readonly [number, number])[0] <= x) low = mid
    else high = mid
  }
  const [x0, y0] = table[low] as readonly [number, number]
  const [x1, y1] = table[high] as readonly [number, number]
  return y0 + ((y1 - y0) * (x - x0)) / (x1 - x0)
}
