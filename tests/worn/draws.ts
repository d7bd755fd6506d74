import fc from "fast-check"

const MOST = 2 ** 31 - 1

/** A number anywhere from min to max, evenly, both ends among them. */
export const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: MOST }).map((k) => Math.min(max, min + (max - min) * (k / MOST)))

/** A number from min to max, even over the orders of magnitude. */
export const log = (min: number, max: number): fc.Arbitrary<number> =>
  between(Math.log(min), Math.log(max)).map((x) => Math.min(max, Math.max(min, Math.exp(x))))
