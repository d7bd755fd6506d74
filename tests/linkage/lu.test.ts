import * as math from "mathjs"
import { describe, expect, it } from "vitest"
import { factor, rankOf, solveFactored, solveTransposed } from "../../src/linkage/lu.js"
import { lehmer } from "./random.js"

describe("triangular factors", () => {
  it("solve A and its transpose and know the sign of the determinant, as mathjs does", () => {
    const random = lehmer(9)
    for (let n = 1; n <= 12; n++)
      for (let k = 0; k < 20; k++) {
        const a = Array.from({ length: n }, () => Array.from({ length: n }, () => random.real(-1, 1)))
        const b = Array.from({ length: n }, () => random.real(-1, 1))
        const determinant = math.det(a)
        if (Math.abs(determinant) < 1e-6) continue
        const factors = factor(Float64Array.from(a.flat()), n)
        const [x, y] = [solveFactored(factors, b), solveTransposed(factors, b)]
        const [p, q] = [math.lusolve(a, b), math.lusolve(math.transpose(a), b)] as [number[][], number[][]]
        expect(factors.sign).toBe(Math.sign(determinant))
        for (let i = 0; i < n; i++) {
          expect(x[i]).toBeCloseTo(p[i]?.[0] as number, 7)
          expect(y[i]).toBeCloseTo(q[i]?.[0] as number, 7)
        }
      }
  })

  it("count ranks of made-up matrices", () => {
    const random = lehmer(31)
    for (let k = 0; k < 100; k++) {
      const [rows, columns, rank] = [3 + (k % 5), 3 + (k % 7), 1 + (k % 3)]
      const make = (m: number, n: number) => Array.from({ length: m }, () => Array.from({ length: n }, () => random.real(-1, 1)))
      const product = math.multiply(make(rows, rank), make(rank, columns)) as number[][]
      expect(rankOf(Float64Array.from(product.flat()), rows, columns)).toBe(Math.min(rank, rows, columns))
      // a row's scale changes nothing of what depends on what
      const scaled = product.map((row, i) => row.map((v) => v * 10 ** (i % 2 ? 11 : -11)))
      expect(rankOf(Float64Array.from(scaled.flat()), rows, columns)).toBe(Math.min(rank, rows, columns))
    }
    // as many as a large mechanism has, neighbours a factor of 10²² apart
    const many = Array.from({ length: 40 }, (_, i) => Array.from({ length: 40 }, () => random.real(-1, 1) * 10 ** (i % 2 ? 11 : -11)))
    expect(rankOf(Float64Array.from(many.flat()), 40, 40)).toBe(40)
    expect(rankOf(new Float64Array(6), 2, 3)).toBe(0)
    expect(factor(new Float64Array(4), 2).sign).toBe(0)
  })
})
