import { mixed } from "./random.js"
import { directionNumbers } from "./sobol-table.js"

const BITS = 32
let table: readonly Uint32Array[] | undefined

/** The direction numbers of every dimension, as fractions of 2³². */
function directions(): readonly Uint32Array[] {
  table ??= [Uint32Array.from({ length: BITS }, (_, bit) => 2 ** (BITS - 1 - bit)), ...directionNumbers.trim().split("\n").map(spread)]
  return table
}

/** Direction numbers of one dimension from its line, by the recurrence of its polynomial. */
function spread(line: string): Uint32Array {
  const [degree, inner, ...first] = line.split(" ").map(Number) as [number, number, ...number[]]
  const v = new Uint32Array(BITS)
  first.forEach((m, i) => {
    v[i] = m * 2 ** (BITS - 1 - i)
  })
  for (let i = degree; i < BITS; i++) {
    const back = v[i - degree] as number
    let next = back ^ (back >>> degree)
    for (let k = 1; k < degree; k++) if ((inner >>> (degree - 1 - k)) & 1) next ^= v[i - k] as number
    v[i] = next
  }
  return v
}

/** Dimensions with published direction numbers; those beyond are filled with seeded random numbers, which are right but no better than random. */
export const SOBOL_DIMENSIONS = 64

function reversed(x: number): number {
  x = ((x >>> 1) & 0x55555555) | ((x & 0x55555555) << 1)
  x = ((x >>> 2) & 0x33333333) | ((x & 0x33333333) << 2)
  x = ((x >>> 4) & 0x0f0f0f0f) | ((x & 0x0f0f0f0f) << 4)
  x = ((x >>> 8) & 0x00ff00ff) | ((x & 0x00ff00ff) << 8)
  return (x >>> 16) | (x << 16)
}

/**
 * A digit-wise scramble in which each binary digit is turned over or not by the digits before it (nested uniform scrambling,
 * A. B. Owen 1995, by the hash of B. Burley, "Practical hash-based Owen scrambling", J. Comput. Graph. Techn. 9(4), 2020): points
 * stay as evenly spread as they were, and each of them lies anywhere alike.
 */
function scrambled(value: number, seed: number): number {
  let x = reversed(value)
  x = (x + seed) | 0
  x ^= Math.imul(x, 0x6c50b47c)
  x ^= Math.imul(x, 0xb82f1e52)
  x ^= Math.imul(x, 0xc7afe638)
  x ^= Math.imul(x, 0x8d22f6e6)
  return reversed(x) >>> 0
}

/**
 * Sobol points in the unit cube, in Gray-code order, from the one numbered `from` on.
 *
 * @param dimensions - how many numbers a point has
 * @param seed - of the scramble; null for the points as published, of which the first is the origin
 * @returns a function that writes the next point; scrambled, no number is ever 0 or 1
 */
export function sobolPoints(dimensions: number, seed: number | null, from = 0): (out: Float64Array) => void {
  const v = directions()
  const exact = Math.min(dimensions, SOBOL_DIMENSIONS)
  const seeds = Uint32Array.from({ length: dimensions }, (_, j) => mixed((seed ?? 0) + Math.imul(j + 1, 0x9e3779b9)))
  const state = new Uint32Array(exact)
  const gray = from ^ (from >>> 1)
  for (let bit = 0; bit < BITS; bit++)
    if ((gray >>> bit) & 1) for (let j = 0; j < exact; j++) state[j] = ((state[j] as number) ^ ((v[j] as Uint32Array)[bit] as number)) >>> 0
  let index = from
  return (out) => {
    for (let j = 0; j < exact; j++) {
      const x = state[j] as number
      out[j] = seed === null ? x / 4294967296 : (scrambled(x, seeds[j] as number) + 0.5) / 4294967296
    }
    for (let j = exact; j < dimensions; j++) out[j] = (mixed(mixed(index) ^ (seeds[j] as number)) + 0.5) / 4294967296
    index++
    const bit = 31 - Math.clz32(index & -index)
    for (let j = 0; j < exact; j++) state[j] = ((state[j] as number) ^ ((v[j] as Uint32Array)[bit] as number)) >>> 0
  }
}
