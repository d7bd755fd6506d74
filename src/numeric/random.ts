// Numbers that look random and are the same for one seed on every machine.

/** A well-mixed whole number of 32 bits from another (two rounds of multiply and shift: C. Wellons, "Hash prospector", lowbias32). */
export function mixed(value: number): number {
  let x = value | 0
  x = Math.imul(x ^ (x >>> 16), 0x7feb352d)
  x = Math.imul(x ^ (x >>> 15), 0x846ca68b)
  return (x ^ (x >>> 16)) >>> 0
}

/** Numbers evenly spread over 0 to 1, ends left out, by a seed. */
export function seeded(seed: number): () => number {
  let count = mixed(seed)
  return () => {
    count = (count + 0x9e3779b9) | 0
    return (mixed(count) + 0.5) / 4294967296
  }
}
