// A function of one variable as Chebyshev polynomials, piece by piece, from values inside each piece alone.

/** Writes the components of a vector function at x into `out` and tells the form of its equations there; negative where it has none. */
export type Formed = (x: number, out: Float64Array) => number

/** One piece: a polynomial of each component on [a, b]. */
export interface Piece {
  readonly a: number
  readonly b: number
  readonly form: number
  /** Coefficients of the first polynomial of each component, one after another. */
  readonly coefficients: Float64Array
  /** Values at the nodes, node by node. */
  readonly values: Float64Array
}

/** A function fitted piece by piece. */
export interface Piecewise {
  readonly size: number
  readonly pieces: readonly Piece[]
  /** The largest last coefficients left, each against its component's tolerance: 1 or less where all were met. */
  readonly rest: number
  readonly evaluations: number
  /** A place at which the function was asked and has no value; null where it has one everywhere. */
  readonly failed: number | null
}

interface Nodes {
  readonly at: Float64Array
  /** Cosines k·(i + ½)·π/n, row by row of k. */
  readonly cosines: Float64Array
  /** Fejér's first rule: J. Waldvogel, BIT Numerical Mathematics 46, 2006. */
  readonly weights: Float64Array
}

const known = new Map<number, Nodes>()

function nodesOf(n: number): Nodes {
  const found = known.get(n)
  if (found) return found
  const at = new Float64Array(n)
  const cosines = new Float64Array(n * n)
  const weights = new Float64Array(n)
  for (let i = 0; i < n; i++) {
    // from the low end up
    at[i] = -Math.cos(((i + 0.5) * Math.PI) / n)
    for (let k = 0; k < n; k++) cosines[k * n + i] = Math.cos((k * (n - i - 0.5) * Math.PI) / n)
    let sum = 1
    for (let k = 2; k < n; k += 2) sum += (2 * (cosines[k * n + i] as number)) / (1 - k * k)
    weights[i] = (2 * sum) / n
  }
  const nodes = { at, cosines, weights }
  known.set(n, nodes)
  return nodes
}

/** How a function is fitted. */
export interface PiecewiseOptions {
  /** Nodes of a piece. */
  readonly nodes: number
  /** Last coefficients that are let go, of each component, against its scale. */
  readonly relative: readonly number[]
  /** Scale of each component: no less than this, and no less than the largest value met. */
  readonly floor: readonly number[]
  /** Places where the form is known to change: there the range is split at once. */
  readonly splits?: readonly number[]
  readonly most?: number
}

/**
 * Fits a function over [a, b]: pieces of one form each, halved until the last three coefficients of every component are small.
 * Where two nodes side by side differ in form, the change is located and the piece is split there.
 */
export function piecewise(
  f: Formed,
  a: number,
  b: number,
  { nodes, relative, floor, splits = [], most = 20000 }: PiecewiseOptions,
): Piecewise {
  const size = relative.length
  const { at, cosines } = nodesOf(nodes)
  const out = new Float64Array(size)
  const scale = Float64Array.from(floor)
  const forms = new Float64Array(nodes)
  const pieces: Piece[] = []
  let [evaluations, rest] = [0, 0]
  const narrow = 1e-13 * (Math.abs(a) + Math.abs(b))
  const edges = [a, ...splits.filter((x) => x > a && x < b), b]
  // the last interval first, so that pieces come out from a to b
  const open: [number, number][] = []
  for (let i = edges.length - 1; i > 0; i--) open.push([edges[i - 1] as number, edges[i] as number])
  for (let interval = open.pop(); interval; interval = open.pop()) {
    const [low, high] = interval
    const [middle, half] = [(low + high) / 2, (high - low) / 2]
    const values = new Float64Array(nodes * size)
    let change = -1
    for (let i = 0; i < nodes; i++) {
      const x = middle + half * (at[i] as number)
      const form = f(x, out)
      evaluations++
      if (form < 0) return { size, pieces, rest: Number.POSITIVE_INFINITY, evaluations, failed: x }
      forms[i] = form
      values.set(out, i * size)
      if (i > 0 && form !== forms[i - 1]) {
        change = i
        break
      }
    }
    const last = high - low <= narrow || evaluations >= most
    if (change > 0 && !last) {
      const before = forms[change - 1] as number
      let [from, to] = [middle + half * (at[change - 1] as number), middle + half * (at[change] as number)]
      while (to - from > narrow) {
        const x = (from + to) / 2
        if (x <= from || x >= to) break
        const form = f(x, out)
        evaluations++
        if (form < 0) return { size, pieces, rest: Number.POSITIVE_INFINITY, evaluations, failed: x }
        if (form === before) from = x
        else to = x
      }
      const edge = (from + to) / 2
      if (edge > low && edge < high) {
        open.push([edge, high], [low, edge])
        continue
      }
    }
    if (change > 0)
      for (let i = change; i < nodes; i++) {
        // too narrow to be split, or too much asked: taken as it is
        const x = middle + half * (at[i] as number)
        evaluations++
        if (f(x, out) < 0) return { size, pieces, rest: Number.POSITIVE_INFINITY, evaluations, failed: x }
        values.set(out, i * size)
      }
    const coefficients = new Float64Array(nodes * size)
    let worst = 0
    for (let j = 0; j < size; j++) {
      let largest = scale[j] as number
      for (let i = 0; i < nodes; i++) largest = Math.max(largest, Math.abs(values[i * size + j] as number))
      scale[j] = largest
      for (let k = nodes - 1; k >= 0; k--) {
        let sum = 0
        for (let i = 0; i < nodes; i++) sum += (values[i * size + j] as number) * (cosines[k * nodes + i] as number)
        const c = ((k === 0 ? 1 : 2) * sum) / nodes
        coefficients[j * nodes + k] = c
        if (k >= nodes - 3 && largest > 0) worst = Math.max(worst, Math.abs(c) / (largest * (relative[j] as number)))
      }
    }
    if (worst > 1 && !last) {
      open.push([middle, high], [low, middle])
      continue
    }
    rest = Math.max(rest, worst)
    pieces.push({ a: low, b: high, form: forms[0] as number, coefficients, values })
  }
  return { size, pieces, rest, evaluations, failed: null }
}

/** Value of a component of a piece at x. */
export function valueAt({ a, b, coefficients }: Piece, size: number, component: number, x: number): number {
  const n = coefficients.length / size
  const t = (2 * x - a - b) / (b - a)
  const first = component * n
  let [one, two] = [0, 0]
  for (let k = n - 1; k > 0; k--) {
    const next = 2 * t * one - two + (coefficients[first + k] as number)
    two = one
    one = next
  }
  return t * one - two + (coefficients[first] as number)
}

/** Integral of a component from the start of a piece to x. */
export function integralTo({ a, b, coefficients }: Piece, size: number, component: number, x: number): number {
  const n = coefficients.length / size
  const first = component * n
  const t = Math.min(1, Math.max(-1, (2 * x - a - b) / (b - a)))
  // ∫T_k = T_{k+1}/(2(k+1)) − T_{k−1}/(2(k−1)), from −1 on
  let sum = (coefficients[first] as number) * (t + 1) + (n > 1 ? ((coefficients[first + 1] as number) * (t * t - 1)) / 2 : 0)
  let [before, here] = [t, 2 * t * t - 1]
  for (let k = 2; k < n; k++) {
    const next = 2 * t * here - before
    const sign = k % 2 === 0 ? -1 : 1
    sum += ((coefficients[first + k] as number) / 2) * ((next - sign) / (k + 1) - (before - sign) / (k - 1))
    before = here
    here = next
  }
  return (sum * (b - a)) / 2
}

/** Places and weights of a piece's nodes: ∫ over the piece is the sum of weight times value. */
export function nodesAndWeights({ a, b, values }: Piece, size: number): readonly (readonly [x: number, weight: number])[] {
  const { at, weights } = nodesOf(values.length / size)
  return Array.from(at, (t, i) => [(a + b) / 2 + ((b - a) / 2) * t, ((weights[i] as number) * (b - a)) / 2] as const)
}

/** Integral of a component over a piece. */
export function integralOver({ a, b, values }: Piece, size: number, component: number): number {
  const { weights } = nodesOf(values.length / size)
  let sum = 0
  for (let i = 0; i < weights.length; i++) sum += (weights[i] as number) * (values[i * size + component] as number)
  return (sum * (b - a)) / 2
}

/**
 * Integral over a piece of a function of one component, from its nodes alone; null where it has no value at one of them or its
 * last three coefficients are not small against its largest value.
 */
export function integralOf(piece: Piece, size: number, component: number, f: (value: number) => number, relative: number): number | null {
  const { a, b, values } = piece
  const n = values.length / size
  const { cosines, weights } = nodesOf(n)
  const found = new Float64Array(n)
  let [sum, largest] = [0, 0]
  for (let i = 0; i < n; i++) {
    const value = f(values[i * size + component] as number)
    found[i] = value
    largest = Math.max(largest, Math.abs(value))
    sum += (weights[i] as number) * value
  }
  if (!Number.isFinite(sum)) return null
  for (let k = n - 3; k < n; k++) {
    let c = 0
    for (let i = 0; i < n; i++) c += (found[i] as number) * (cosines[k * n + i] as number)
    if (Math.abs(2 * c) > n * largest * relative) return null
  }
  return (sum * (b - a)) / 2
}

/** Piece of a fit that a place lies on. */
export function pieceAt({ pieces }: Piecewise, x: number): Piece {
  let [low, high] = [0, pieces.length - 1]
  while (low < high) {
    const mid = (low + high + 1) >> 1
    if ((pieces[mid] as Piece).a <= x) low = mid
    else high = mid - 1
  }
  return pieces[low] as Piece
}
