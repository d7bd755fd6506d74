import fc from "fast-check"
import { all, create } from "mathjs"
import { describe, expect, it } from "vitest"
import { interpolate, solveLinear } from "../../src/numeric/index.js"
import { between } from "./numbers.js"

const math = create(all as NonNullable<typeof all>)
const residual = (a: readonly (readonly number[])[], x: readonly number[], b: readonly number[]) =>
  Math.max(...a.map((row, i) => Math.abs(row.reduce((sum, v, j) => sum + v * (x[j] as number), 0) - (b[i] as number))))

describe("solveLinear", () => {
  const system = fc
    .integer({ min: 1, max: 8 })
    .chain((n) =>
      fc.tuple(
        fc.array(fc.array(between(-5, 5), { minLength: n, maxLength: n }), { minLength: n, maxLength: n }),
        fc.array(between(-5, 5), { minLength: n, maxLength: n }),
      ),
    )

  it("agrees with mathjs on random systems, as far as their condition allows", () => {
    let [solved, least] = [0, 0]
    fc.assert(
      fc.property(system, ([a, b]) => {
        const x = solveLinear(a, b)
        const inverse = (() => {
          try {
            return math.inv(a as number[][])
          } catch {
            return null
          }
        })()
        if (x === null || inverse === null) return
        const condition = (math.norm(a as number[][], "inf") as number) * (math.norm(inverse, "inf") as number)
        const other = (math.lusolve(a as number[][], b) as unknown as number[][]).flat()
        const size = Math.max(...other.map(Math.abs))
        const off = Math.max(...x.map((v, i) => Math.abs(v - (other[i] as number))))
        expect(off).toBeLessThanOrEqual(1e-14 * condition * size + 1e-300)
        expect(residual(a, x, b)).toBeLessThanOrEqual(1e-12 * Math.max(1, size))
        solved++
        least = Math.max(least, condition)
      }),
      { numRuns: 1000 },
    )
    expect(solved).toBeGreaterThan(900)
    expect(least, "badly conditioned systems were among them").toBeGreaterThan(100)
  })
  it("refuses singular systems: a row that is the sum of others, a column of nothing, not a number", () => {
    let refused = 0
    fc.assert(
      fc.property(system, ([a, b]) => {
        // whole numbers, so that the sum of rows is exact
        const rows = a.slice(0, -1).map((row) => row.map(Math.round))
        const sum = b.map((_, j) => rows.reduce((s, row) => s + (row[j] as number), 0))
        // rounding may leave a last pivot a little above the limit: then the size of the answer gives it away
        const x = solveLinear([...rows, sum], b)
        if (x !== null) expect(Math.max(...x.map(Math.abs))).toBeGreaterThan(1e12 * Math.max(...b.map(Math.abs)))
        else refused++
        expect(
          solveLinear(
            a.map((row) => row.map((v, j) => (j === 0 ? 0 : v))),
            b,
          ),
        ).toBeNull()
      }),
      { numRuns: 5000 },
    )
    expect(refused).toBeGreaterThan(4500)
    expect(solveLinear([[Number.NaN]], [1])).toBeNull()
  })
  it("swaps rows where the first pivot is nothing", () => {
    expect(
      solveLinear(
        [
          [0, 1],
          [1, 0],
        ],
        [2, 3],
      ),
    ).toEqual([3, 2])
  })
  it("holds to a Hilbert matrix of six, condition 1.5e7", () => {
    const n = 6
    const hilbert = Array.from({ length: n }, (_, i) => Array.from({ length: n }, (_, j) => 1 / (i + j + 1)))
    const x = solveLinear(
      hilbert,
      hilbert.map((row) => row.reduce((s, v) => s + v, 0)),
    ) as number[]
    for (const v of x) expect(v).toBeCloseTo(1, 8)
  })
  it("leaves its arguments as they were, and solves no equations by no unknowns", () => {
    const a = [
      [0, 2],
      [3, 4],
    ]
    const b = [1, 2]
    solveLinear(a, b)
    expect([a, b]).toEqual([
      [
        [0, 2],
        [3, 4],
      ],
      [1, 2],
    ])
    expect(solveLinear([], [])).toEqual([])
  })
})

describe("interpolate", () => {
  const table = [
    [0, 1],
    [1, 3],
    [4, 0],
  ] as const
  it("gives the table's own values at its own places, straight lines between", () => {
    for (const [x, y] of table) expect(interpolate(table, x)).toBe(y)
    expect(interpolate(table, 0.5)).toBe(2)
    expect(interpolate(table, 2.5)).toBe(1.5)
  })
  it("holds the ends outside the table", () => {
    expect(interpolate(table, -7)).toBe(1)
    expect(interpolate(table, 4.0001)).toBe(0)
    expect(interpolate([[2, 5]], 3)).toBe(5)
  })
  it("stays between its neighbours and agrees with a plain search, for random tables", () => {
    fc.assert(
      fc.property(fc.uniqueArray(between(-10, 10), { minLength: 2, maxLength: 30 }), between(-12, 12), (xs, x) => {
        const sorted = [...xs].sort((a, b) => a - b).map((v) => [v, Math.sin(v)] as const)
        const k = sorted.findIndex(([v]) => v > x)
        const y = interpolate(sorted, x)
        if (k <= 0) {
          expect(y).toBe((k === 0 ? sorted[0] : sorted.at(-1))![1])
          return
        }
        const [[x0, y0], [x1, y1]] = [sorted[k - 1]!, sorted[k]!]
        const t = (x - x0) / (x1 - x0)
        expect(Math.abs(y - ((1 - t) * y0 + t * y1))).toBeLessThanOrEqual(1e-14)
      }),
    )
  })
})
