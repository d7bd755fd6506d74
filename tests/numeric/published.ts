// Test functions of the literature, written from their published forms; shared/references/study.json holds what is printed of them.
const sum = (list: Iterable<number>) => [...list].reduce((s, v) => s + v, 0)
type Point = ArrayLike<number>
const at = (x: Point, i: number) => x[i] as number
const all = (x: Point) => Array.from(x)
const square = (v: number) => v * v

const shekelA = [
  [4, 4, 4, 4],
  [1, 1, 1, 1],
  [8, 8, 8, 8],
  [6, 6, 6, 6],
  [3, 7, 3, 7],
  [2, 9, 2, 9],
  [5, 5, 3, 3],
  [8, 1, 8, 1],
  [6, 2, 6, 2],
  [7, 3.6, 7, 3.6],
]
const shekelC = [0.1, 0.2, 0.2, 0.4, 0.4, 0.6, 0.3, 0.7, 0.5, 0.5]
export const shekel = (m: number) => (x: Point) =>
  -sum(shekelA.slice(0, m).map((a, i) => 1 / (sum(a.map((v, j) => square(at(x, j) - v))) + (shekelC[i] as number))))

const hartmannA = [
  [10, 3, 17, 3.5, 1.7, 8],
  [0.05, 10, 17, 0.1, 8, 14],
  [3, 3.5, 1.7, 10, 17, 8],
  [17, 8, 0.05, 10, 0.1, 14],
]
const hartmannP = [
  [1312, 1696, 5569, 124, 8283, 5886],
  [2329, 4135, 8307, 3736, 1004, 9991],
  [2348, 1451, 3522, 2883, 3047, 6650],
  [4047, 8828, 8732, 5743, 1091, 381],
]
export const hartmann = (a: readonly (readonly number[])[], p: readonly (readonly number[])[], alpha: readonly number[]) => (x: Point) =>
  -sum(alpha.map((c, i) => c * Math.exp(-sum((a[i] as number[]).map((v, j) => v * square(at(x, j) - (p[i]?.[j] as number)))))))

export const functions: Readonly<Record<string, (x: Point) => number>> = {
  "opt-ackley": (x) => {
    const n = x.length
    return (
      -20 * Math.exp(-0.2 * Math.sqrt(sum(all(x).map(square)) / n)) -
      Math.exp(sum(all(x).map((v) => Math.cos(2 * Math.PI * v))) / n) +
      20 +
      Math.E
    )
  },
  "opt-beale": (x) => {
    const [a, b] = [at(x, 0), at(x, 1)]
    return square(1.5 - a + a * b) + square(2.25 - a + a * b * b) + square(2.625 - a + a * b ** 3)
  },
  "opt-branin-normalised": (x) => {
    const [u, v] = [15 * at(x, 0) - 5, 15 * at(x, 1)]
    const f = square(v - (5.1 / (4 * Math.PI ** 2)) * u * u + (5 / Math.PI) * u - 6) + 10 * (1 - 1 / (8 * Math.PI)) * Math.cos(u) + 10
    return (f - 54.8104) / 51.9496
  },
  "opt-easom": (x) => -Math.cos(at(x, 0)) * Math.cos(at(x, 1)) * Math.exp(-square(at(x, 0) - Math.PI) - square(at(x, 1) - Math.PI)),
  "opt-eggholder": (x) => {
    const [a, b] = [at(x, 0), at(x, 1) + 47]
    return -b * Math.sin(Math.sqrt(Math.abs(a / 2 + b))) - a * Math.sin(Math.sqrt(Math.abs(a - b)))
  },
  "opt-goldstein-price": (x) => {
    const [a, b] = [at(x, 0), at(x, 1)]
    return (
      (1 + square(a + b + 1) * (19 - 14 * a + 3 * a * a - 14 * b + 6 * a * b + 3 * b * b)) *
      (30 + square(2 * a - 3 * b) * (18 - 32 * a + 12 * a * a + 48 * b - 36 * a * b + 27 * b * b))
    )
  },
  "opt-hartmann-6": hartmann(
    hartmannA,
    hartmannP.map((row) => row.map((v) => v / 1e4)),
    [1, 1.2, 3, 3.2],
  ),
  "opt-himmelblau": (x) => square(at(x, 0) ** 2 + at(x, 1) - 11) + square(at(x, 0) + at(x, 1) ** 2 - 7),
  "opt-levy-13": (x) => {
    const [a, b] = [at(x, 0), at(x, 1)]
    return (
      square(Math.sin(3 * Math.PI * a)) +
      square(a - 1) * (1 + square(Math.sin(3 * Math.PI * b))) +
      square(b - 1) * (1 + square(Math.sin(2 * Math.PI * b)))
    )
  },
  "opt-mccormick": (x) => Math.sin(at(x, 0) + at(x, 1)) + square(at(x, 0) - at(x, 1)) - 1.5 * at(x, 0) + 2.5 * at(x, 1) + 1,
  "opt-rosenbrock": (x) =>
    sum(
      all(x)
        .slice(0, -1)
        .map((v, i) => 100 * square(at(x, i + 1) - v * v) + square(1 - v)),
    ),
  "opt-schwefel": (x) => 418.98288727 * x.length - sum(all(x).map((v) => v * Math.sin(Math.sqrt(Math.abs(v))))),
  "opt-shekel-5": shekel(5),
  "opt-shekel-7": shekel(7),
  "opt-shekel-10": shekel(10),
  "opt-shubert": (x) => all(x).reduce((p, v) => p * sum([1, 2, 3, 4, 5].map((i) => i * Math.cos((i + 1) * v + i))), 1),
  "opt-six-hump-camel": (x) => {
    const [a, b] = [at(x, 0), at(x, 1)]
    return (4 - 2.1 * a * a + a ** 4 / 3) * a * a + a * b + 4 * (b * b - 1) * b * b
  },
}

/** A problem with limits: its value, and limits that hold where they are not above zero. */
export interface Limited {
  readonly box: readonly (readonly [number, number])[]
  value(x: Point): number
  limits(x: Point): readonly number[]
}

const vessel = {
  value: (x: Point) => {
    const [s, h, r, l] = all(x) as [number, number, number, number]
    return 0.6224 * s * r * l + 1.7781 * h * r * r + 3.1661 * s * s * l + 19.84 * s * s * r
  },
  limits: (x: Point) => {
    const [s, h, r, l] = all(x) as [number, number, number, number]
    return [0.0193 * r - s, 0.00954 * r - h, (1296000 - Math.PI * r * r * l - (4 / 3) * Math.PI * r ** 3) / 1296000]
  },
}

export const limited: Readonly<Record<string, Limited>> = {
  "opt-g06": {
    box: [
      [13, 100],
      [0, 100],
    ],
    value: (x) => (at(x, 0) - 10) ** 3 + (at(x, 1) - 20) ** 3,
    limits: (x) => [100 - square(at(x, 0) - 5) - square(at(x, 1) - 5), square(at(x, 0) - 6) + square(at(x, 1) - 5) - 82.81],
  },
  "opt-g04": {
    box: [
      [78, 102],
      [33, 45],
      [27, 45],
      [27, 45],
      [27, 45],
    ],
    value: (x) => 5.3578547 * at(x, 2) ** 2 + 0.8356891 * at(x, 0) * at(x, 4) + 37.293239 * at(x, 0) - 40792.141,
    limits: (x) => {
      const [a, b, c, d, e] = all(x) as [number, number, number, number, number]
      const u = 85.334407 + 0.0056858 * b * e + 0.0006262 * a * d - 0.0022053 * c * e
      const v = 80.51249 + 0.0071317 * b * e + 0.0029955 * a * b + 0.0021813 * c * c
      const w = 9.300961 + 0.0047026 * c * e + 0.0012547 * a * c + 0.0019085 * c * d
      return [u - 92, -u, v - 110, 90 - v, w - 25, 20 - w]
    },
  },
  "opt-three-bar-truss": {
    box: [
      [0.01, 1],
      [0.01, 1],
    ],
    value: (x) => (2 * Math.SQRT2 * at(x, 0) + at(x, 1)) * 100,
    limits: (x) => {
      const [a, b] = [at(x, 0), at(x, 1)]
      const under = Math.SQRT2 * a * a + 2 * a * b
      return [((Math.SQRT2 * a + b) / under) * 2 - 2, (b / under) * 2 - 2, (1 / (Math.SQRT2 * b + a)) * 2 - 2]
    },
  },
  "opt-spring-best": {
    box: [
      [0.05, 2],
      [0.25, 1.3],
      [2, 15],
    ],
    value: (x) => (at(x, 2) + 2) * at(x, 1) * at(x, 0) ** 2,
    limits: (x) => {
      const [d, D, n] = all(x) as [number, number, number]
      return [
        1 - (D ** 3 * n) / (71785 * d ** 4),
        (4 * D * D - d * D) / (12566 * (D * d ** 3 - d ** 4)) + 1 / (5108 * d * d) - 1,
        1 - (140.45 * d) / (D * D * n),
        (D + d) / 1.5 - 1,
      ]
    },
  },
  "opt-welded-beam": {
    box: [
      [0.1, 2],
      [0.1, 10],
      [0.1, 10],
      [0.1, 2],
    ],
    value: (x) => 1.10471 * at(x, 0) ** 2 * at(x, 1) + 0.04811 * at(x, 2) * at(x, 3) * (14 + at(x, 1)),
    limits: (x) => {
      const [h, l, t, b] = all(x) as [number, number, number, number]
      const [P, L, E, G] = [6000, 14, 30e6, 12e6]
      const direct = P / (Math.SQRT2 * h * l)
      const R = Math.sqrt((l * l) / 4 + square((h + t) / 2))
      const J = 2 * Math.SQRT2 * h * l * ((l * l) / 12 + square((h + t) / 2))
      const twist = (P * (L + l / 2) * R) / J
      const shear = Math.sqrt(direct ** 2 + (direct * twist * l) / R + twist ** 2)
      const bending = (6 * P * L) / (b * t * t)
      const sag = (4 * P * L ** 3) / (E * t ** 3 * b)
      const buckling = ((4.013 * E * Math.sqrt((t * t * b ** 6) / 36)) / L ** 2) * (1 - (t / (2 * L)) * Math.sqrt(E / (4 * G)))
      return [shear / 13600 - 1, bending / 30000 - 1, h - b, sag / 0.25 - 1, 1 - buckling / 6000]
    },
  },
  "opt-pressure-vessel-continuous": {
    box: [
      [0.0625, 6.1875],
      [0.0625, 6.1875],
      [10, 200],
      [10, 200],
    ],
    ...vessel,
  },
  "opt-pressure-vessel-discrete": {
    box: [
      [0.0625, 6.1875],
      [0.0625, 6.1875],
      [10, 200],
      [10, 200],
    ],
    ...vessel,
  },
}

const bardY = [0.14, 0.18, 0.22, 0.25, 0.29, 0.32, 0.35, 0.39, 0.37, 0.58, 0.73, 0.96, 1.34, 2.1, 4.39]
const kowalikY = [0.1957, 0.1947, 0.1735, 0.16, 0.0844, 0.0627, 0.0456, 0.0342, 0.0323, 0.0235, 0.0246]
const kowalikU = [4, 2, 1, 0.5, 0.25, 0.167, 0.125, 0.1, 0.0833, 0.0714, 0.0625]
const meyerY = [34780, 28610, 23650, 19630, 16370, 13720, 11540, 9744, 8261, 7030, 6005, 5147, 4427, 3820, 3307, 2872]
const gaussianY = [0.0009, 0.0044, 0.0175, 0.054, 0.1295, 0.242, 0.3521, 0.3989, 0.3521, 0.242, 0.1295, 0.054, 0.0175, 0.0044, 0.0009]

/** Chebyshev polynomials of the first kind shifted to 0 to 1: value at x of the one of degree n. */
const shifted = (n: number, x: number) => {
  let [before, now] = [1, 2 * x - 1]
  if (n === 0) return 1
  for (let i = 2; i <= n; i++) [before, now] = [now, 2 * (2 * x - 1) * now - before]
  return now
}

/** Residuals of the least-squares problems of J. J. Moré, B. S. Garbow, K. E. Hillstrom, ACM Trans. Math. Softw. 7, 1981, 17–41. */
export const residuals: Readonly<Record<string, (x: Point) => readonly number[]>> = {
  "opt-bard": (x) =>
    bardY.map((y, i) => {
      const [u, v] = [i + 1, 15 - i]
      return y - (at(x, 0) + u / (v * at(x, 1) + Math.min(u, v) * at(x, 2)))
    }),
  "opt-brown-dennis": (x) =>
    Array.from({ length: 20 }, (_, i) => {
      const t = (i + 1) / 5
      return square(at(x, 0) + t * at(x, 1) - Math.exp(t)) + square(at(x, 2) + at(x, 3) * Math.sin(t) - Math.cos(t))
    }),
  "opt-chebyquad-8": (x) =>
    Array.from({ length: 8 }, (_, i) => {
      const n = i + 1
      return sum(all(x).map((v) => shifted(n, v))) / 8 - (n % 2 ? 0 : -1 / (n * n - 1))
    }),
  "opt-freudenstein-local": (x) => {
    const [a, b] = [at(x, 0), at(x, 1)]
    return [-13 + a + ((5 - b) * b - 2) * b, -29 + a + ((b + 1) * b - 14) * b]
  },
  "opt-gaussian": (x) => gaussianY.map((y, i) => at(x, 0) * Math.exp((-at(x, 1) * square((7 - i) / 2 - at(x, 2))) / 2) - y),
  "opt-jennrich-sampson": (x) =>
    Array.from({ length: 10 }, (_, i) => 2 + 2 * (i + 1) - (Math.exp((i + 1) * at(x, 0)) + Math.exp((i + 1) * at(x, 1)))),
  "opt-kowalik-osborne": (x) =>
    kowalikY.map((y, i) => {
      const u = kowalikU[i] as number
      return y - (at(x, 0) * (u * u + u * at(x, 1))) / (u * u + u * at(x, 2) + at(x, 3))
    }),
  "opt-meyer": (x) => meyerY.map((y, i) => at(x, 0) * Math.exp(at(x, 1) / (45 + 5 * (i + 1) + at(x, 2))) - y),
  "opt-penalty-1": (x) => [...all(x).map((v) => Math.sqrt(1e-5) * (v - 1)), sum(all(x).map(square)) - 0.25],
  "opt-watson-6": (x) => [
    ...Array.from({ length: 29 }, (_, i) => {
      const t = (i + 1) / 29
      const slope = sum(all(x).map((v, j) => (j === 0 ? 0 : j * v * t ** (j - 1))))
      return slope - square(sum(all(x).map((v, j) => v * t ** j))) - 1
    }),
    at(x, 0),
    at(x, 1) - at(x, 0) ** 2 - 1,
  ],
}
