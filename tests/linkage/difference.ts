/** Derivative at 0 by the five-point central difference (error in the fourth power of the step). */
export function derivative(f: (t: number) => readonly number[], h: number): number[] {
  const [a, b, c, d] = [-2 * h, -h, h, 2 * h].map(f) as [readonly number[], readonly number[], readonly number[], readonly number[]]
  return a.map((_, i) => ((a[i] as number) - (d[i] as number) + 8 * ((c[i] as number) - (b[i] as number))) / (12 * h))
}
