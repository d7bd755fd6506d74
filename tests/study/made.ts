// Solvers made for the tests of studies: what they answer can be told by reading.
import type { Length, Mass } from "../../src/quantity/index.js"
import { inconsistent, refuse, type Solver, solver } from "../../src/solver/index.js"

interface Stairs {
  /** Where. */
  x: Length
  a: number
  n?: number
  word?: string
  spare?: Length | null
}
interface StairsOut {
  readonly y: number
  readonly said: string
}
/** y = a·x up to 1.5, refused from there, its fields not going together below −2. */
export const stairs: Solver<Stairs, StairsOut> = solver<Stairs, StairsOut>(
  "stairs",
  "A line with an end",
  ({ x, a, word }) =>
    x > 1.5 ? refuse("too-steep", "too steep at {x}", x - 1.5, { x }) : { y: a * x, said: word ? `${word} "quoted"` : "nothing" },
  () => ({
    input: {
      x: { kind: "length", symbol: "x", label: "where", min: -5, max: 5 },
      a: { kind: "number", symbol: "a", label: "slope", above: 0, max: 100 },
      n: { kind: "number", symbol: "n", label: "count", whole: true, min: 1, max: 50, default: 3 },
      word: { kind: "text", label: "word", min: 0, max: 50, default: "" },
      spare: { kind: "length", symbol: "s", label: "spare", min: 0, max: 5, default: null },
    },
    output: { y: { kind: "length", symbol: "y", label: "height" }, said: { kind: "text", label: "said" } },
    example: { x: 1, a: 2 },
    formulae: [],
    sources: [],
    check: ({ x }) => (x < -2 ? [inconsistent(["x"], "{x length}", "-2 m or more", { x })] : []),
  }),
)

interface Cone {
  at: { height: Length; side?: "left" | "right" }
  rings: readonly { mass: Mass }[]
}
interface ConeOut {
  readonly sum: number
  readonly each: readonly number[]
}
/** The sum of a height and of masses. */
export const cone: Solver<Cone, ConeOut> = solver<Cone, ConeOut>(
  "cone",
  "A sum",
  ({ at, rings }) => ({ sum: at.height + rings.reduce((sum, { mass }) => sum + mass, 0), each: rings.map(({ mass }) => mass) }),
  () => ({
    input: {
      at: {
        kind: "group",
        label: "at",
        fields: {
          height: { kind: "length", symbol: "h", label: "height", min: 0, max: 9 },
          side: { kind: "choice", label: "side", options: { left: "left", right: "right" }, default: "left" },
        },
      },
      rings: {
        kind: "list",
        label: "ring",
        min: 1,
        max: 9,
        of: { kind: "group", label: "ring", fields: { mass: { kind: "mass", symbol: "m", label: "mass", min: 0, max: 9 } } },
      },
    },
    output: {
      sum: { kind: "number", symbol: "S", label: "sum" },
      each: { kind: "list", label: "each", of: { kind: "mass", label: "mass" } },
    },
    example: { at: { height: 1 }, rings: [{ mass: 5 }, { mass: 2 }] },
    formulae: [],
    sources: [],
  }),
)

/** Any function of a number, refused where it has no value. */
export const curve = (f: (x: number) => number): Solver<{ x: number }, { readonly y: number }> =>
  solver<{ x: number }, { readonly y: number }>(
    "curve",
    "A curve",
    ({ x }) => {
      const y = f(x)
      return Number.isNaN(y) ? refuse("undefined-there", "no value at {x}", 1, { x }) : { y }
    },
    () => ({
      input: { x: { kind: "number", symbol: "x", label: "x", min: -1000, max: 1000 } },
      output: { y: { kind: "number", symbol: "y", label: "y" } },
      example: { x: 1 },
      formulae: [],
      sources: [],
    }),
  )
