/** Repeatable random numbers (Lehmer, 16807 mod 2³¹ − 1). */
export function lehmer(seed: number): { real(low: number, high: number): number; sign(): 1 | -1 } {
  let state = seed
  const next = () => {
    state = (state * 16807) % 2147483647
    return state / 2147483647
  }
  return { real: (low, high) => low + (high - low) * next(), sign: () => (next() < 0.5 ? -1 : 1) }
}

/** Distance between two angles, modulo a whole turn. */
export const apart = (a: number, b: number): number => Math.abs(Math.sin((a - b) / 2)) * 2
