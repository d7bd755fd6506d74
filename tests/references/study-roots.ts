// Published roots, found by `solveFor` on a solver made of each equation.
import { solveFor } from "../../src/study/index.js"
import type { LaterCheck } from "../helpers/references.js"
import { curve } from "../study/made.js"

const found = async (f: (x: number) => number, [from, to]: readonly [number, number], count?: number, spacing?: "logarithmic") => {
  const among = { from, to, ...(count && { count }), ...(spacing && { spacing }) }
  const { hits } = await solveFor(curve(f), { x: 1 }, { vary: "x", among, target: { output: "y", equals: 0 } })
  return hits.map((hit) => hit.value)
}

/** J₀ by its integral over a period, which the trapezium rule takes to all digits. */
function besselJ0(x: number): number {
  const points = 64
  return Array.from({ length: points }, (_, i) => Math.cos(x * Math.sin((2 * Math.PI * i) / points))).reduce((a, b) => a + b, 0) / points
}

const chebyshev10 = (x: number): number => {
  let [before, here] = [1, x]
  for (let i = 2; i <= 10; i++) [before, here] = [here, 2 * x * here - before]
  return here
}

/** Solutions in the order of the row. */
const inOrder = (solutions: readonly (readonly number[])[], published: unknown): readonly (readonly number[])[] => {
  const order = published as readonly (readonly number[])[]
  const far = (one: readonly number[], other: readonly number[]) => Math.hypot(...one.map((x, i) => x - (other[i] as number)))
  const sorted = order.map((want) => [...solutions].sort((a, b) => far(a, want) - far(b, want))[0] as readonly number[])
  return new Set(sorted).size === solutions.length ? sorted : solutions
}

export const roots: Readonly<Record<string, LaterCheck>> = {
  "root-bessel-j0": async ({ interval }) => ({ roots: await found(besselJ0, interval) }),
  // x = cos(πy/2) put into the other
  "root-boggs": async (_, row) => {
    const xOf = (y: number) => Math.cos((Math.PI * y) / 2)
    const ys = await found((y) => xOf(y) ** 2 - y + 1, [0.5, 2.5])
    return {
      solutions: inOrder(
        ys.map((y) => [xOf(y), y]),
        row.expected.solutions,
      ),
    }
  },
  // the first four are one number a, the last 6 − 5a
  "root-brown-almost-linear": async (_, row) => {
    const as = await found((a) => a ** 4 * (6 - 5 * a) - 1, [-2, 2])
    const pairs = inOrder(
      as.map((a) => [a, 6 - 5 * a]),
      (row.expected.a as number[]).map((a, i) => [a, (row.expected.last as number[])[i] as number]),
    )
    return { a: pairs.map(([a]) => a), last: pairs.map(([, last]) => last) }
  },
  "root-cantilever-beam": async ({ interval }) => ({ roots: await found((x) => Math.cos(x) * Math.cosh(x) + 1, interval) }),
  "root-chebyshev-10": async () => ({ roots: await found(chebyshev10, [-1, 1]) }),
  "root-clamped-beam": async ({ interval }) => ({ roots: await found((x) => Math.cos(x) * Math.cosh(x) - 1, interval) }),
  "root-cos-x": async ({ interval }) => ({ roots: await found((x) => Math.cos(x) - x, interval) }),
  "root-cot-x": async ({ interval }) => ({ roots: await found((x) => x * Math.sin(x) - Math.cos(x), interval) }),
  // y = 11 − x² put into the other
  "root-himmelblau": async ({ box }, row) => {
    const xs = await found((x) => x + (11 - x ** 2) ** 2 - 7, box)
    return {
      solutions: inOrder(
        xs.map((x) => [x, 11 - x ** 2]),
        row.expected.solutions,
      ),
    }
  },
  "root-kepler": async ({ eccentricity: e, mean_anomaly_deg: degrees }) => {
    const [angle] = await found((x) => x - e * Math.sin(x) - (degrees * Math.PI) / 180, [0, Math.PI])
    return { E_deg: ((angle as number) * 180) / Math.PI }
  },
  "root-kepler-hard": async ({ eccentricity: e, mean_anomaly_rad: mean }) => {
    const [angle] = await found((x) => x - e * Math.sin(x) - mean, [0, Math.PI])
    return { E_rad: angle }
  },
  "root-leonardo": async ({ interval }) => ({ roots: await found((x) => x ** 3 + 2 * x ** 2 + 10 * x - 20, interval) }),
  "root-omega": async ({ interval }) => ({ roots: await found((x) => x * Math.exp(x) - 1, interval) }),
  // y = 1e-4/x put into the other, below the solution with x and y exchanged
  "root-powell-badly-scaled": async () => {
    const [x] = await found((u) => Math.exp(-u) + Math.exp(-1e-4 / u) - 1.0001, [1e-6, 1e-2], 201, "logarithmic")
    return { x, y: 1e-4 / (x as number) }
  },
  // with the poles in: their changes of sign are no roots
  "root-tan-x": async ({ interval: [, to] }) => ({ roots: await found((x) => Math.tan(x) - x, [0.5, to], 801) }),
  "root-wallis": async ({ interval }) => ({ roots: await found((x) => x ** 3 - 2 * x - 5, interval) }),
  "root-wilkinson-perturbed": async ({ perturbation }) => {
    const f = (x: number) => Array.from({ length: 20 }, (_, k) => x - k - 1).reduce((a, b) => a * b, 1) + perturbation * x ** 19
    return { real: await found(f, [0.5, 21.5], 2001) }
  },
}

/** Values of rows that no value of an input is. */
export const rootsWithout: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  "root-wilkinson-perturbed": { pairs: "complex roots are no values that an input can be given" },
}
