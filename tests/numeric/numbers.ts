import fc from "fast-check"

/** Numbers spread evenly from `min` to `max`. */
export const between = (min: number, max: number): fc.Arbitrary<number> => fc.nat(1_000_000).map((k) => min + ((max - min) * k) / 1_000_000)
