import { lusolve } from "mathjs"

export type Matrix = number[][]

/** A square of zeros. */
export const zeros = (size: number): Matrix => Array.from({ length: size }, () => new Array<number>(size).fill(0))

/** Stiffness of a cubic beam element of length h and E·I = 1; freedoms deflection and slope at each end. */
export const elementStiffness = (h: number): Matrix =>
  [
    [12, 6 * h, -12, 6 * h],
    [6 * h, 4 * h * h, -6 * h, 2 * h * h],
    [-12, -6 * h, 12, -6 * h],
    [6 * h, 2 * h * h, -6 * h, 4 * h * h],
  ].map((row) => row.map((x) => x / h ** 3))

/** Geometric stiffness of the same element under a unit push. */
export const elementPush = (h: number): Matrix =>
  [
    [36, 3 * h, -36, 3 * h],
    [3 * h, 4 * h * h, -3 * h, -h * h],
    [-36, -3 * h, 36, -3 * h],
    [3 * h, -h * h, -3 * h, 4 * h * h],
  ].map((row) => row.map((x) => x / (30 * h)))

/** Consistent mass of the same element, 1 kg/m. */
export const elementMass = (h: number): Matrix =>
  [
    [156, 22 * h, 54, -13 * h],
    [22 * h, 4 * h * h, 13 * h, -3 * h * h],
    [54, 13 * h, 156, -22 * h],
    [-13 * h, -3 * h * h, -22 * h, 4 * h * h],
  ].map((row) => row.map((x) => (x * h) / 420))

/** Puts elements between nodes together. */
export function assemble(nodes: readonly number[], element: (h: number) => Matrix): Matrix {
  const whole = zeros(2 * nodes.length)
  nodes.slice(1).forEach((to, n) => {
    element(to - nodes[n]!).forEach((row, i) => {
      row.forEach((x, j) => {
        whole[2 * n + i]![2 * n + j]! += x
      })
    })
  })
  return whole
}

/** n equal elements over a unit length. */
export const evenNodes = (n: number): number[] => Array.from({ length: n + 1 }, (_, i) => i / n)

/** A matrix without the rows and columns of held freedoms. */
export const without = (matrix: Matrix, held: readonly number[]): Matrix => {
  const keep = (_: unknown, i: number) => !held.includes(i)
  return matrix.filter(keep).map((row) => row.filter(keep))
}

/** Solves a symmetric system by elimination, scaled so that elements of very different length do not lose digits. */
export function solveScaled(matrix: Matrix, load: readonly number[]): number[] {
  const scale = matrix.map((row, i) => 1 / Math.sqrt(row[i]!))
  const scaled = matrix.map((row, i) => row.map((x, j) => x * scale[i]! * scale[j]!))
  const solved = lusolve(
    scaled,
    load.map((x, i) => x * scale[i]!),
  ) as number[][]
  return solved.map((row, i) => row[0]! * scale[i]!)
}

/** Least λ of a·v = λ·b·v by inverse iteration and Rayleigh's quotient. */
export function leastEigenvalue(a: Matrix, b: Matrix): number {
  const times = (m: Matrix, v: readonly number[]) => m.map((row) => row.reduce((s, x, j) => s + x * v[j]!, 0))
  const dot = (u: readonly number[], v: readonly number[]) => u.reduce((s, x, i) => s + x * v[i]!, 0)
  let v = a.map((_, i) => (i % 2 ? 1 : 1 + i / a.length))
  for (let step = 0; step < 40; step++) {
    const next = solveScaled(a, times(b, v))
    const norm = Math.hypot(...next)
    v = next.map((x) => x / norm)
  }
  return dot(v, times(a, v)) / dot(v, times(b, v))
}
