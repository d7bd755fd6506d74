import fc from "fast-check"

/** Numbers spread evenly from `min` to `max`, both ends included; plain doubles crowd around 0. */
export const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: 1_000_000 }).map((n) => min + ((max - min) * n) / 1_000_000)
