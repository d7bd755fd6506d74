import fc from "fast-check"

/** A number anywhere from min to max. */
export const between = (min: number, max: number): fc.Arbitrary<number> => fc.double({ min, max, noNaN: true })

/** A number from min to max, even over the orders of magnitude. */
export const log = (min: number, max: number): fc.Arbitrary<number> =>
  between(Math.log(min), Math.log(max)).map((x) => Math.min(max, Math.max(min, Math.exp(x))))
