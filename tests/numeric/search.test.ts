import fc from "fast-check"
import { all, create } from "mathjs"
import { describe, expect, it } from "vitest"
import {
  answered,
  covariance,
  dominates,
  evolution,
  frontOf,
  globalMinimum,
  type Judged,
  leastSquares,
  simplex,
  singularValues,
} from "../../src/numeric/index.js"
import { referenceRows } from "../helpers/references.js"
import { between } from "./numbers.js"
import { functions } from "./published.js"

const math = create(all as NonNullable<typeof all>)
const goal = (value: number): Judged => ({ goals: [value], violation: 0 })

describe("the test functions themselves", () => {
  it.each(referenceRows("study").filter(({ id, expected }) => id in functions && "x_min" in expected))(
    "$id is worth what is printed at the printed place",
    ({ id, expected, tolerance }) => {
      const f = functions[id] as (x: ArrayLike<number>) => number
      const { x_min, f_min } = expected as { x_min: number[][]; f_min: number }
      for (const x of x_min)
        expect(Math.abs(f(x) - f_min)).toBeLessThanOrEqual((tolerance?.value ?? 0) * (tolerance?.kind === "relative" ? Math.abs(f_min) : 1))
    },
  )
  it("Ackley's function away from its minimum (opt-ackley-values)", () => {
    const { inputs, expected } = referenceRows("study").find(({ id }) => id === "opt-ackley-values")!
    const values = (inputs.points as number[][]).map(functions["opt-ackley"] as (x: number[]) => number)
    values.forEach((v, i) => {
      expect(v).toBeCloseTo((expected.values as number[])[i] as number, 8)
    })
  })
})

describe("local search", () => {
  it("ends on the edge where the function falls towards it, and beside a limit it may not pass", () => {
    const slope = answered(simplex({ start: Float64Array.of(0.5, 0.5) }), (x) => goal((x[0] as number) - (x[1] as number)))
    expect([...slope.best.point]).toEqual([0, 1])
    const limited = answered(simplex({ start: Float64Array.of(0.9) }), (x) => ({
      goals: [x[0] as number],
      violation: Math.max(0, 0.25 - (x[0] as number)),
    }))
    expect(limited.best.violation).toBe(0)
    expect(limited.best.point[0]).toBeCloseTo(0.25, 8)
  })
  it("has nothing to do without unknowns, and keeps to its budget", () => {
    expect(answered(simplex({ start: new Float64Array(0) }), () => goal(3)).tried).toBe(1)
    let calls = 0
    answered(simplex({ start: Float64Array.of(0.2, 0.4, 0.6), budget: 100 }), (x) => {
      calls++
      return goal(functions["opt-rosenbrock"]!(x))
    })
    expect(calls).toBeLessThan(110)
  })
})

describe("global search", () => {
  it("brings nothing better than brute force over a fine grid of a rugged function, and nothing worse", () => {
    const f = (x: ArrayLike<number>) => Math.sin(30 * (x[0] as number)) * Math.cos(25 * (x[1] as number)) + (x[0] as number)
    const { best } = answered(globalMinimum({ dimensions: 2, seed: 4, budget: 20_000 }), (x) => goal(f(x)))
    let grid = Number.POSITIVE_INFINITY
    for (let i = 0; i <= 600; i++) for (let j = 0; j <= 600; j++) grid = Math.min(grid, f([i / 600, j / 600]))
    expect(best.goals[0]).toBeLessThanOrEqual(grid)
    expect(best.goals[0]).toBeGreaterThan(grid - 0.01)
  })
  it("is the same for one seed, keeps to its budget and says what it counted", () => {
    const run = (seed: number) => {
      let calls = 0
      const found = answered(globalMinimum({ dimensions: 3, seed, budget: 3000 }), (x) => {
        calls++
        return goal(functions["opt-rosenbrock"]!(Array.from(x, (v) => 4 * v - 2)))
      })
      expect(found.tried).toBe(calls)
      expect(calls).toBeLessThan(3000 + 2000)
      return found
    }
    expect(run(3)).toEqual(run(3))
  })
  it("leaves numbers that only pick to the global part", () => {
    const seen = new Set<number>()
    answered(globalMinimum({ dimensions: 2, seed: 1, budget: 2000, picks: [true, false] }), (x) => {
      // the upper edge itself belongs to the last one
      const pick = Math.min(2, Math.floor((x[0] as number) * 3))
      seen.add(pick)
      return goal([5, 1, 9][pick]! + (x[1] as number))
    })
    expect(seen.size).toBe(3)
  })
})

describe("fronts", () => {
  const judged = fc.record({
    goals: fc.array(fc.integer({ min: 0, max: 6 }), { minLength: 2, maxLength: 2 }),
    violation: fc.constantFrom(0, 0, 1),
  })
  it("hold exactly what nothing else is better than, by brute force", () => {
    fc.assert(
      fc.property(fc.array(judged, { minLength: 1, maxLength: 30 }), (list) => {
        const front = frontOf(list)
        const key = (one: Judged) => JSON.stringify(one)
        const wanted = new Set(list.filter((one) => !list.some((other) => dominates(other, one))).map(key))
        expect(new Set(front.map(key))).toEqual(wanted)
        expect(front.length).toBe(wanted.size)
      }),
    )
  })
  it("of two goals are spread from end to end", () => {
    const { front } = answered(evolution({ dimensions: 1, goals: 2, seed: 1, budget: 2000 }), (x) => {
      const v = 4 * (x[0] as number) - 1
      return { goals: [v * v, (v - 2) ** 2], violation: 0 }
    })
    const first = front.map(({ goals }) => goals[0] as number).sort((a, b) => a - b)
    expect(first[0]).toBeLessThan(1e-3)
    expect(first.at(-1)).toBeGreaterThan(3.99)
    expect(Math.max(...first.slice(1).map((v, i) => Math.sqrt(v) - Math.sqrt(first[i] as number)))).toBeLessThan(0.2)
  })
})

describe("least squares", () => {
  const line = (xs: readonly number[], ys: readonly number[]) => (p: ArrayLike<number>) =>
    xs.map((x, i) => (p[0] as number) + (p[1] as number) * x - (ys[i] as number))
  it("of a line agree with the normal equations solved by mathjs, covariance too", () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(between(-5, 5), between(-5, 5)), { minLength: 4, maxLength: 12 }), (data) => {
        const [xs, ys] = [data.map(([x]) => x), data.map(([, y]) => y)]
        if (Math.max(...xs) - Math.min(...xs) < 0.5) return
        const a = xs.map((x) => [1, x])
        const inverse = math.inv(math.multiply(math.transpose(a), a) as number[][]) as number[][]
        const wanted = math.multiply(inverse, math.multiply(math.transpose(a), ys) as number[]) as unknown as number[]
        const found = answered(leastSquares({ start: [1, 1] }), line(xs, ys))!
        const told = covariance(found.slopes, [1, 1]).matrix!
        for (const i of [0, 1]) {
          expect(found.x[i]).toBeCloseTo(wanted[i] as number, 6)
          for (const j of [0, 1]) expect(told[i]?.[j]).toBeCloseTo(inverse[i]?.[j] as number, 6)
        }
      }),
      { numRuns: 25 },
    )
  })
  it("stop at a bound, beside a place without answer, and say nothing where the start has none", () => {
    const bounded = answered(leastSquares({ start: [0.5], low: [0], high: [1] }), (p) => [(p[0] as number) - 3])!
    expect(bounded.x).toEqual([1])
    expect(bounded.isSettled).toBe(true)
    const hole = answered(leastSquares({ start: [1] }), (p) => ((p[0] as number) > 2 ? null : [(p[0] as number) - 3]))!
    expect(hole.x[0]).toBeLessThanOrEqual(2)
    expect(hole.x[0]).toBeGreaterThan(1.9)
    expect(answered(leastSquares({ start: [1] }), () => null)).toBeNull()
  })
  it("name the direction that residuals do not show", () => {
    // only the sum is seen: one more here is one less there
    const found = answered(leastSquares({ start: [1, 2] }), (p) => [1, 2, 3].map((k) => k * ((p[0] as number) + (p[1] as number)) - k))!
    const { unseen, rank, matrix } = covariance(found.slopes, [1, 1])
    expect(matrix).toBeNull()
    expect(rank).toBe(1)
    expect(Math.abs(unseen[0]?.[0] as number)).toBeCloseTo(Math.SQRT1_2, 6)
    expect((unseen[0]?.[0] as number) + (unseen[0]?.[1] as number)).toBeCloseTo(0, 6)
    // fewer residuals than unknowns
    expect(covariance([[1, 0, 0]], [1, 1, 1]).rank).toBe(1)
  })
  it("singular values agree with the eigenvalues that mathjs gives of AᵀA", () => {
    const tall = fc.array(fc.array(between(-3, 3), { minLength: 3, maxLength: 3 }), { minLength: 3, maxLength: 6 })
    fc.assert(
      fc.property(tall, (a) => {
        const { values, vectors } = singularValues(a)
        const squares = (math.eigs(math.multiply(math.transpose(a), a) as number[][]).values as number[]).map(Number).sort((p, q) => q - p)
        values.forEach((v, i) => {
          expect(Math.abs(v * v - (squares[i] as number))).toBeLessThan(1e-9 * Math.max(1, squares[0] as number))
        })
        const identity = vectors.map((p) => vectors.map((q) => p.reduce((s, v, k) => s + v * (q[k] as number), 0)))
        identity.forEach((row, i) => {
          row.forEach((v, j) => {
            expect(v).toBeCloseTo(i === j ? 1 : 0, 10)
          })
        })
      }),
      { numRuns: 25 },
    )
  })
})
