import { refuse, type Solver, solver } from "../../src/solver/index.js"

/** Input of a made-up solver: a list of plain numbers. */
export interface Numbers {
  x: readonly number[]
}
/** Its result. */
export interface Value {
  readonly f: number
  readonly g: number
}

/**
 * A solver of any function of several numbers, for published test functions. Where the function gives null it refuses.
 *
 * @param f - its value, or its values `f` and `g`
 * @param start - the example
 */
export function made(
  f: (x: readonly number[]) => number | readonly [number, number] | null,
  start: readonly number[],
  name = "made",
): Solver<Numbers, Value> {
  return solver<Numbers, Value>(
    name,
    "A function",
    ({ x }) => {
      const value = f(x)
      if (value === null) return refuse("no-value", "There is no value here.", 1)
      return typeof value === "number" ? { f: value, g: 0 } : { f: value[0], g: value[1] }
    },
    () => ({
      input: {
        x: {
          kind: "list",
          label: "number",
          of: { kind: "number", symbol: "x", label: "x", min: -1e12, max: 1e12 },
          min: 1,
          max: 200,
        },
      },
      output: { f: { kind: "number", symbol: "f", label: "value" }, g: { kind: "number", symbol: "g", label: "other value" } },
      example: { x: start },
      formulae: [],
      sources: [],
    }),
  )
}

/** Paths of the numbers of a made-up solver, each with what `of` gives for it. */
export function each<T>(count: number, of: (i: number) => T): Record<`x.${number}`, T> {
  return Object.fromEntries(Array.from({ length: count }, (_, i) => [`x.${i}`, of(i)]))
}
