import { answered, globalMinimum, type Judged, leastSquares } from "../../src/numeric/index.js"
import type { Check } from "../helpers/references.js"
import { functions, hartmann, type Limited, limited, residuals } from "../numeric/published.js"

type Range = readonly [number, number]

/** Minimum by the searches that `optimize` runs. */
function minimum(box: readonly Range[], judge: (x: number[]) => Judged, budget: number, picks: readonly boolean[] = []) {
  const place = (u: Float64Array) => Array.from(u, (v, j) => (box[j] as Range)[0] + v * ((box[j] as Range)[1] - (box[j] as Range)[0]))
  const { best } = answered(globalMinimum({ dimensions: box.length, seed: 1, budget, picks }), (u) => judge(place(u)))
  return { x: place(best.point), value: best.goals[0] as number, violation: best.violation }
}

const plain =
  (dimensions: number, budget = 20_000): Check =>
  ({ box }, { id }) => {
    const ranges = Array.from({ length: dimensions }, (_, j) => (Array.isArray(box[0]) ? box[j] : box) as Range)
    const f = functions[id] as (x: ArrayLike<number>) => number
    return { f_min: minimum(ranges, (x) => ({ goals: [f(x)], violation: 0 }), budget).value }
  }

const judged = (problem: Limited, x: readonly number[]): Judged => ({
  goals: [problem.value(x)],
  violation: problem.limits(x).reduce((sum, g) => sum + Math.max(0, g), 0),
})

const held =
  (budget: number): Check =>
  (_, { id }) => {
    const problem = limited[id] as Limited
    const found = minimum(problem.box, (x) => judged(problem, x), budget)
    return { f_min: found.value, feasible: found.violation === 0 }
  }

const fitted: Check = ({ start }, { id }) => {
  const residual = residuals[id] as (x: ArrayLike<number>) => readonly number[]
  const found = answered(leastSquares({ start, maxSteps: 500 }), (x) => residual(x))
  return { f_min: found?.squares }
}

export const searchChecks: Readonly<Record<string, Check>> = {
  "opt-ackley": plain(3),
  "opt-beale": plain(2),
  "opt-branin-normalised": plain(2),
  "opt-easom": plain(2),
  "opt-eggholder": plain(2),
  "opt-goldstein-price": plain(2),
  "opt-hartmann-3": ({ A, P, alpha }) => ({
    f_min: minimum(
      [
        [0, 1],
        [0, 1],
        [0, 1],
      ],
      (x) => ({ goals: [hartmann(A, P, alpha)(x)], violation: 0 }),
      20_000,
    ).value,
  }),
  "opt-hartmann-6": plain(6),
  "opt-himmelblau": plain(2),
  "opt-levy-13": plain(2),
  "opt-mccormick": plain(2),
  "opt-rosenbrock": plain(5, 60_000),
  "opt-schwefel": plain(2),
  "opt-shekel-5": plain(4),
  "opt-shekel-7": plain(4),
  "opt-shekel-10": plain(4),
  "opt-shubert": plain(2),
  "opt-six-hump-camel": plain(2),
  "opt-g04": held(60_000),
  "opt-g06": held(20_000),
  "opt-three-bar-truss": held(20_000),
  "opt-spring-best": held(60_000),
  "opt-welded-beam": held(60_000),
  "opt-pressure-vessel-continuous": held(60_000),
  // plate comes in sixteenths of an inch: the number in the box picks one
  "opt-pressure-vessel-discrete": (_, { id }) => {
    const problem = limited[id] as Limited
    const stock = (x: readonly number[]) => x.map((v, j) => (j < 2 ? Math.round(v / 0.0625) * 0.0625 : v))
    const found = minimum(problem.box, (x) => judged(problem, stock(x)), 60_000, [true, true])
    return { f_min: found.value, feasible: found.violation === 0 }
  },
  "opt-gear-train": ({ ratio, teeth: [low, high] }) => {
    const whole = (v: number) => Math.min(high, Math.floor(v))
    const box = Array.from({ length: 4 }, (): Range => [low, high + 1])
    const value = (x: readonly number[]) =>
      (ratio - (whole(x[0] as number) * whole(x[1] as number)) / (whole(x[2] as number) * whole(x[3] as number))) ** 2
    const found = minimum(box, (x) => ({ goals: [value(x)], violation: 0 }), 100_000, [true, true, true, true])
    const [a, b, c, d] = found.x.map(whole) as [number, number, number, number]
    return { f_min: found.value, numerator: a * b, denominator: c * d }
  },
  ...Object.fromEntries(Object.keys(residuals).map((id) => [id, fitted])),
}

const flat = "a minimum is flat: its place is known to half the figures of its value only"
export const searchWithout = Object.fromEntries(Object.keys(searchChecks).map((id) => [id, { x_min: flat, x: flat }]))
