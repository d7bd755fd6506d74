// Test problems of the literature, written from their published forms; shared/references/ode.json holds where they end.
import type { OdeProblem } from "../../src/numeric/ode/index.js"

type Slopes = (y: readonly number[], t: number) => readonly number[]

/** A problem whose slopes are returned as a list. */
export const problem = (size: number, slopes: Slopes, events?: OdeProblem["events"]): OdeProblem => ({
  size,
  slope: (t, y, dy) => {
    slopes(Array.from(y), t).forEach((value, i) => {
      dy[i] = value
    })
  },
  ...(events && { events }),
})

type Two = readonly [number, number]
type Three = readonly [number, number, number]
type Four = readonly [number, number, number, number]
const two = (f: (y: Two, t: number) => readonly number[]) => problem(2, (y, t) => f(y as unknown as Two, t))
const three = (f: (y: Three) => readonly number[]) => problem(3, (y) => f(y as unknown as Three))
const four = (f: (y: Four) => readonly number[]) => problem(4, (y) => f(y as unknown as Four))

export const vanDerPol = (eps: number) => two(([x, v]) => [v, ((1 - x * x) * v - x) / eps])
/** The form x'' − μ(1 − x²)x' + x = 0. */
export const limitCycle = (mu: number) => two(([x, v]) => [v, mu * (1 - x * x) * v - x])
export const oscillator = (w = 1) => two(([x, v]) => [v, -w * w * x])
export const pendulum = (rate2: number) => two(([a, w]) => [w, -rate2 * Math.sin(a)])
export const lorenz = three(([x, y, z]) => [10 * (y - x), x * (28 - z) - y, x * y - (8 / 3) * z])
export const lotkaVolterra = two(([a, b]) => [(2 / 3) * a - (4 / 3) * a * b, a * b - b])
export const robertson = three(([a, b, c]) => {
  const [first, last] = [-0.04 * a + 1e4 * b * c, 3e7 * b * b]
  return [first, -first - last, last]
})

/** The restricted problem of three bodies in the turning frame. */
export const arenstorf = (mu: number) =>
  four(([x, y, u, v]) => {
    const [earth, moon] = [Math.hypot(x + mu, y) ** 3, Math.hypot(x - 1 + mu, y) ** 3]
    return [
      u,
      v,
      x + 2 * v - ((1 - mu) * (x + mu)) / earth - (mu * (x - 1 + mu)) / moon,
      y - 2 * u - ((1 - mu) * y) / earth - (mu * y) / moon,
    ]
  })
export const jacobiConstant = (mu: number, [x, y, u, v]: Four) =>
  x * x + y * y + (2 * (1 - mu)) / Math.hypot(x + mu, y) + (2 * mu) / Math.hypot(x - 1 + mu, y) - u * u - v * v

/** Two point masses of 1 kg on rods of 1 m, by Lagrange's equations: angles, then rates. */
export const doublePendulum = (g: number) =>
  four(([a, b, p, q]) => {
    const [s, c] = [Math.sin(a - b), Math.cos(a - b)]
    const below = 2 - c * c
    return [
      p,
      q,
      (-2 * g * Math.sin(a) - q * q * s - c * (p * p * s - g * Math.sin(b))) / below,
      (2 * (p * p * s - g * Math.sin(b)) - c * (-2 * g * Math.sin(a) - q * q * s)) / below,
    ]
  })

export const hires = problem(8, (y) => {
  const [a, b, c, d, e, f, g, h] = y as unknown as readonly [number, number, number, number, number, number, number, number]
  return [
    -1.71 * a + 0.43 * b + 8.32 * c + 0.0007,
    1.71 * a - 8.75 * b,
    -10.03 * c + 0.43 * d + 0.035 * e,
    8.32 * b + 1.71 * c - 1.12 * d,
    -1.745 * e + 0.43 * f + 0.43 * g,
    -280 * f * h + 0.69 * d + 1.71 * e - 0.43 * f + 0.69 * g,
    280 * f * h - 1.81 * g,
    -280 * f * h + 1.81 * g,
  ]
})

const chain = (rates: (i: number) => number) =>
  problem(10, (y) => y.map((v, i) => (i === 0 ? 0 : rates(i - 1) * (y[i - 1] as number)) - (i === 9 ? 0 : rates(i) * v)))
const heat = (nodes: number) => problem(nodes, (y) => y.map((v, i) => (y[i - 1] ?? 0) - 2 * v + (y[i + 1] ?? 0)))
const kepler = four(([x, y, u, v]) => {
  const r3 = Math.hypot(x, y) ** 3
  return [u, v, -x / r3, -y / r3]
})

const OUTER_MASSES = [0.000954786104043, 0.000285583733151, 0.0000437273164546, 0.0000517759138449, 0.00000277777777778]
const outerPlanets = problem(30, (y) => {
  const place = (body: number) => y.slice(3 * body, 3 * body + 3)
  const far = (from: readonly number[], to: readonly number[]) => Math.hypot(...from.map((v, i) => v - (to[i] as number)))
  const sun = OUTER_MASSES.map((_, body) => far(place(body), [0, 0, 0]) ** 3)
  const pulls = OUTER_MASSES.flatMap((mass, body) => {
    const here = place(body)
    return here.map((v, axis) => {
      const others = OUTER_MASSES.map((m, other) => {
        if (other === body) return 0
        const there = place(other)
        const at = there[axis] as number
        return m * ((at - v) / far(here, there) ** 3 - at / (sun[other] as number))
      })
      return 2.95912208286 * ((-(1.00000597682 + mass) * v) / (sun[body] as number) + others.reduce((a, b) => a + b, 0))
    })
  })
  return [...y.slice(15), ...pulls]
})

/** The DETEST problems by their names in the rows. */
export const detest: Readonly<Record<string, OdeProblem>> = {
  a1: problem(1, ([y]) => [-(y as number)]),
  a2: problem(1, ([y]) => [-((y as number) ** 3) / 2]),
  a4: problem(1, ([y]) => [((y as number) / 4) * (1 - (y as number) / 20)]),
  b1: two(([a, b]) => [2 * (a - a * b), -(b - a * b)]),
  b2: three(([a, b, c]) => [-a + b, a - 2 * b + c, b - c]),
  b3: three(([a, b]) => [-a, a - b * b, b * b]),
  b4: three(([a, b, c]) => {
    const r = Math.hypot(a, b)
    return [-b - (a * c) / r, a - (b * c) / r, a / r]
  }),
  b5: three(([a, b, c]) => [b * c, -a * c, -0.51 * a * b]),
  c1: chain(() => 1),
  c2: chain((i) => i + 1),
  c3: heat(10),
  c4: heat(51),
  c5: outerPlanets,
  d3: kepler,
  d4: kepler,
  d5: kepler,
  e2: limitCycle(1),
  e4: two(([, v]) => [v, 0.032 - 0.4 * v * v]),
  e5: two(([, v], t) => [v, Math.sqrt(1 + v * v) / (25 - t)]),
}
/** Those whose right side is another on even and on odd unit intervals. */
export const switched: Readonly<Record<string, (even: boolean) => OdeProblem>> = {
  f1: (even) => two(([x, v]) => [v, 0.2 * v - (Math.PI ** 2 + 0.01) * x + (even ? 1 : -1)]),
  f2: (even) => problem(1, ([y]) => [55 - (even ? 1.5 : 0.5) * (y as number)]),
}
