/** Highest value of a function found by a scan, and by a second one as fine about the best place of the first. */
export function highest(f: (x: number) => number, from: number, to: number, steps: number): number {
  const scan = (a: number, b: number) => {
    let best = { x: a, value: Number.NEGATIVE_INFINITY }
    for (let i = 0; i <= steps; i++) {
      const x = a + ((b - a) * i) / steps
      const value = f(x)
      if (value > best.value) best = { x, value }
    }
    return best
  }
  const first = scan(from, to)
  const step = (to - from) / steps
  return scan(Math.max(from, first.x - step), Math.min(to, first.x + step)).value
}
