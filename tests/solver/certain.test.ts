// Faults between fields are told beside faulty fields where they stand whatever those are set right to, and only there.
import { describe, expect, it } from "vitest"
import type { Length } from "../../src/quantity/index.js"
import { type AnyField, type Fields, InputError, inconsistent, type Solver, solver } from "../../src/solver/index.js"

interface RodInput {
  low: Length
  high: Length
  name: string
  marks?: readonly { place: Length }[]
}

const rod: Solver<RodInput, { readonly length: number }> = solver<RodInput, { readonly length: number }>(
  "rod",
  "A rod between two places",
  ({ low, high }) => ({ length: high - low }),
  () => ({
    input: {
      low: { kind: "length", symbol: "l", label: "low end", min: 5, max: 50 },
      high: { kind: "length", symbol: "h", label: "high end", min: 0, max: 100 },
      name: { kind: "text", label: "name", min: 1, max: 20 },
      marks: {
        kind: "list",
        label: "marks",
        min: 0,
        max: 4,
        default: [],
        of: { kind: "group", label: "mark", fields: { place: { kind: "length", symbol: "m", label: "place", min: 0, max: 100 } } },
      },
    },
    output: { length: { kind: "length", symbol: "L", label: "length" } },
    example: { low: 5, high: 8, name: "rod" },
    formulae: [{ symbol: "L", meaning: "length", is: "h - l" }],
    sources: [],
    check: ({ low, high, marks }) => [
      ...(low < high ? [] : [inconsistent(["high"], `${high} m`, "more than low")]),
      ...marks.flatMap(({ place }, i) => (place <= high ? [] : [inconsistent(["marks", i, "place"], `${place} m`, "no more than high")])),
    ],
  }),
)

const told = (input: unknown): string[] => {
  const outcome = rod.attempt(input)
  return !outcome.ok && outcome.error instanceof InputError ? outcome.error.issues.map((i) => i.path.join(".")) : []
}

describe("faults between fields beside faulty fields", () => {
  it("are told where the faulty field has no part in them", () => {
    expect(told({ low: 9, high: 8, name: "" }).sort()).toEqual(["high", "name"])
    expect(told({ low: 9, high: 8, name: 3 }).sort()).toEqual(["high", "name"])
  })
  it("are told where no value of the faulty field would mend them", () => {
    // low is 5 m or more whatever it is set to
    expect(told({ low: "rope", high: 3, name: "rod" }).sort()).toEqual(["high", "low"])
    expect(told({ high: 3, name: "rod" }).sort()).toEqual(["high", "low"])
  })
  it("are not told where one would", () => {
    expect(told({ low: "rope", high: 8, name: "rod" })).toEqual(["low"])
    expect(told({ low: 9, high: "rope", name: "rod" })).toEqual(["high"])
  })
  it("are not told of a place inside what was set right: nothing was said of it", () => {
    expect(told({ low: 5, high: 8, name: "rod", marks: "many" })).toEqual(["marks"])
    expect(told({ low: 5, high: 8, name: "rod", marks: [{ place: 9 }, { place: "far" }] }).sort()).toEqual([
      "marks.0.place",
      "marks.1.place",
    ])
  })
})

describe("a faulty place that is deep", () => {
  // a list of groups of lists of groups …, each with two of the next
  const nest = (depth: number): AnyField =>
    depth === 0
      ? { kind: "length", symbol: "d", label: "depth", min: 0, max: 9 }
      : {
          kind: "group",
          label: `level ${depth}`,
          fields: {
            first: { kind: "list", label: "first", min: 1, max: 3, of: nest(depth - 1) },
            second: { kind: "list", label: "second", min: 1, max: 3, of: nest(depth - 1) },
          },
        }
  interface Deep {
    tree: { first: readonly unknown[] }
    free: Length
  }
  const deep = solver<Deep, { readonly all: number }>(
    "deep",
    "A deep input",
    () => ({ all: 1 }),
    () => ({
      // the depth is what is tried here, not its type
      input: { tree: nest(7), free: { kind: "length", symbol: "f", label: "free", min: 0, max: 9 } } as unknown as Fields<Deep>,
      output: { all: { kind: "number", symbol: "a", label: "all" } },
      example: { tree: { first: [] }, free: 1 },
      formulae: [],
      sources: [],
      check: ({ free }) => (free > 3 ? [inconsistent(["free"], `${free} m`, "3 m or less")] : []),
    }),
  )
  it("is answered in no more than a second, faults beside it included", () => {
    const begin = performance.now()
    const outcome = deep.attempt({ free: 5 })
    expect(performance.now() - begin).toBeLessThan(1000)
    const paths = !outcome.ok && outcome.error instanceof InputError ? outcome.error.issues.map((i) => i.path.join(".")) : []
    expect(paths.sort()).toEqual(["free", "tree"])
  })
})
