/**
 * 95 % confidence interval of a share, by the score method.
 *
 * E. B. Wilson, Probable inference, the law of succession, and statistical inference, J. Am. Stat. Assoc. 22 (1927), 209-212.
 */
export function interval(hits: number, of: number): readonly [low: number, high: number] {
  if (of === 0) return [0, 1]
  const z = 1.959963984540054
  // the two ends multiply to share²: dividing keeps the digits that a difference would lose near 0
  const low = (share: number) =>
    share ** 2 / (share + z ** 2 / (2 * of) + z * Math.sqrt((share * (1 - share)) / of + z ** 2 / (4 * of ** 2)))
  return [low(hits / of), 1 - low((of - hits) / of)]
}

/** `count` of `items`, each as likely as any other, the same ones for the same seed. */
export function sample<T>(items: readonly T[], count: number, seed: number): T[] {
  const rest = [...items]
  let state = seed >>> 0
  const random = () => {
    // a 32-bit mixer: enough to pick with
    state = (state + 0x6d2b79f5) >>> 0
    let t = Math.imul(state ^ (state >>> 15), state | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32
  }
  const most = Math.min(count, rest.length)
  for (let i = 0; i < most; i++) {
    const j = i + Math.floor(random() * (rest.length - i))
    ;[rest[i], rest[j]] = [rest[j] as T, rest[i] as T]
  }
  return rest.slice(0, most)
}
