/** Round tick values that cover a range: steps of 1, 2 or 5 times a power of ten. */
export function ticks(low: number, high: number, about = 5): number[] {
  const span = high - low || Math.abs(high) || 1
  const raw = span / about
  const power = 10 ** Math.floor(Math.log10(raw))
  const step = ([1, 2, 5, 10].find((m) => m * power >= raw) ?? 10) * power
  const first = Math.ceil(low / step - 1e-9)
  const last = Math.floor(high / step + 1e-9)
  // multiples of a decimal step, written without the dust of repeated addition
  return Array.from({ length: last - first + 1 }, (_, i) => Number(((first + i) * step).toPrecision(12)))
}

/** A straight-line map from a range of values to a range of positions. */
export function linearScale(from: readonly [number, number], to: readonly [number, number]): (value: number) => number {
  const span = from[1] - from[0] || 1
  return (value) => to[0] + ((value - from[0]) / span) * (to[1] - to[0])
}

/** Minimum and maximum of some numbers, widened where they are equal. */
export function extent(values: readonly number[]): readonly [number, number] {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
  for (const v of values) {
    low = Math.min(low, v)
    high = Math.max(high, v)
  }
  if (!(low <= high)) return [0, 1]
  return low === high ? [low - 0.5, high + 0.5] : [low, high]
}
