import { type Root, theRoot } from "../../numeric/index.js"

/** A force across a beam, N, positive downwards, at a distance from its start, m. */
export interface BeamForce {
  readonly force: number
  readonly position: number
}
/** A load per length, N/m, running straight from one value to another. */
export interface BeamSpread {
  readonly startLoad: number
  readonly endLoad: number
  readonly start: number
  readonly end: number
}
/** A moment, N·m, positive where it turns what lies beyond it downwards. */
export interface BeamCouple {
  readonly moment: number
  readonly position: number
}

/** A straight beam of one section with its loads, SI. */
export interface BeamProblem {
  /** Length, m. */
  readonly length: number
  /** Distance from the first support to the second, m; null for a beam clamped at its start and free at its end. */
  readonly span: number | null
  /** Bending stiffness E·I, N·m². */
  readonly stiffness: number
  readonly forces: readonly BeamForce[]
  readonly distributedLoads: readonly BeamSpread[]
  readonly couples: readonly BeamCouple[]
  /** How far down the two supports stand, m; level where left out. */
  readonly settled?: readonly [start: number, end: number]
}

/** State of a beam at one place: shear force N, bending moment N·m (positive: sagging), slope rad and deflection m (positive: down). */
export interface BeamState {
  readonly shear: number
  readonly moment: number
  readonly slope: number
  readonly deflection: number
}

/** An extreme of a beam: where it is and how it was found. */
export interface BeamExtreme {
  readonly at: number
  readonly value: number
  readonly iterations: number
  readonly residual: number
}

/** A solved beam. */
export interface BeamCurve {
  /** Force the first support pushes up with, N. */
  readonly reactionStart: number
  /** Force the second support pushes up with, N; null where clamped. */
  readonly reactionEnd: number | null
  /** State at a place, just right of it where `side` is 1 and just left of it where it is -1. */
  at(x: number, side?: 1 | -1): BeamState
  /** Largest magnitude over the whole beam, with its sign; of positive or of negative values alone where a sense is given. */
  greatest(what: keyof BeamState, sense?: 1 | -1): BeamExtreme
}

/** Derivatives of the deflection by number; the load is the fourth. */
type Order = 0 | 1 | 2 | 3 | 4
const orders = { deflection: 0, slope: 1, moment: 2, shear: 3 } as const

const factorials = [1, 1, 2, 6, 24, 120] as const
/** dⁿ/n!, 0 for negative n: a singularity function inside its reach. */
const power = (d: number, n: number): number => (n < 0 ? 0 : d ** n / (factorials[n] as number))

/**
 * A load from `startLoad` on, rising by `rise`, integrated `n` times up to a place `d` beyond its start and `e` beyond its end. Factored
 * by its reach: as a difference of two singularity functions a short load on a long beam would lose its digits.
 */
function spread(from: number, rise: number, d: number, e: number, n: number): number {
  if (n === 0) return e > 0 ? 0 : from + rise * d
  let [even, tilted] = [0, 0]
  for (let k = 0; k < n; k++) {
    const term = d ** (n - 1 - k) * e ** k
    even += term
    tilted += (k + 1) * term
  }
  const covered = d - e
  return (covered * from * even) / (factorials[n] as number) + (covered ** 2 * rise * tilted) / (factorials[n + 1] as number)
}

/**
 * Solves a beam in closed form: EI·v'''' = w, the loads added up as singularity functions
 * (W. H. Macaulay, 1919), the constants from the supports.
 */
export function beamCurve(problem: BeamProblem): BeamCurve {
  const { length, span, stiffness, forces, distributedLoads, couples, settled = [0, 0] } = problem
  let [load, turning] = [0, 0]
  for (const { force, position } of forces) {
    load += force
    turning += force * position
  }
  for (const { startLoad, endLoad, start, end } of distributedLoads) {
    const reach = end - start
    load += ((startLoad + endLoad) / 2) * reach
    turning += ((startLoad + endLoad) / 2) * reach * start + (startLoad / 6 + endLoad / 3) * reach ** 2
  }
  for (const { moment } of couples) turning += moment

  const reactionEnd = span === null ? null : turning / span
  const reactionStart = load - (reactionEnd ?? 0)
  const points = span === null ? forces : [...forces, { force: -(reactionEnd as number), position: span }]

  const c3 = -reactionStart
  const c2 = span === null ? turning : 0
  const c0 = stiffness * settled[0]
  let c1 = 0

  /** E·I times the `order`-th derivative of the deflection: 0 deflection, 1 slope, 2 −moment, 3 −shear, 4 load. */
  const derivative = (order: Order, x: number, side: 1 | -1): number => {
    const n = 3 - order
    let sum = 0
    if (n >= 0) {
      for (const { force, position } of points) {
        const d = x - position
        if (d > 0 || (d === 0 && side > 0)) sum += force * power(d, n)
      }
      if (n >= 1)
        for (const { moment, position: at } of couples) {
          const d = x - at
          if (d > 0 || (d === 0 && side > 0)) sum -= moment * power(d, n - 1)
        }
    }
    for (const { startLoad, endLoad, start, end } of distributedLoads) {
      const rise = (endLoad - startLoad) / (end - start)
      const [d, e] = [x - start, x - end]
      if (d > 0) sum += spread(startLoad, rise, d, Math.max(e, 0), n + 1)
    }
    if (order === 3) return c3 + sum
    if (order === 2) return c2 + c3 * x + sum
    if (order === 1) return c1 + c2 * x + c3 * power(x, 2) + sum
    if (order === 0) return c0 + c1 * x + c2 * power(x, 2) + c3 * power(x, 3) + sum
    return sum
  }
  if (span !== null) c1 = (stiffness * settled[1] - derivative(0, span, -1)) / span

  const value = (what: keyof BeamState, x: number, side: 1 | -1): number => {
    const bent = derivative(orders[what], x, side)
    return what === "shear" || what === "moment" ? -bent : bent / stiffness
  }
  const at = (x: number, side: 1 | -1 = x >= length ? -1 : 1): BeamState => ({
    shear: value("shear", x, side),
    moment: value("moment", x, side),
    slope: value("slope", x, side),
    deflection: value("deflection", x, side),
  })

  const places = [0, length, ...points.map((p) => p.position), ...couples.map((c) => c.position)]
  for (const s of distributedLoads) places.push(s.start, s.end)
  const breaks = [...new Set(places)].sort((a, b) => a - b)

  /**
   * Where a derivative passes through zero inside a stretch without breaks. Between two turning points, which are the zeros of the
   * next derivative, it can do so once only; the load is straight there.
   */
  const zeros = (order: Order, from: number, to: number): Root[] => {
    const splits = order === 4 ? [] : zeros((order + 1) as Order, from, to)
    const found: Root[] = [...splits]
    let [x0, y0] = [from, derivative(order, from, 1)]
    for (const x1 of [...splits.map((s) => s.x), to]) {
      const side = x1 === to ? -1 : 1
      const y1 = derivative(order, x1, side)
      // by signs: a product of tiny loads would underflow and lose the root
      if (y0 !== 0 && y1 !== 0 && y0 > 0 !== y1 > 0) {
        found.push(theRoot((x) => derivative(order, x, x >= to ? -1 : 1), x0, x1, 1e-15 * length, "turning point of a beam"))
      }
      ;[x0, y0] = [x1, y1]
    }
    return found.sort((a, b) => a.x - b.x)
  }

  const greatest = (what: keyof BeamState, sense?: 1 | -1): BeamExtreme => {
    let best: BeamExtreme = { at: 0, value: value(what, 0, 1), iterations: 0, residual: 0 }
    const size = (x: number) => (sense === undefined ? Math.abs(x) : sense * x)
    const offer = (x: number, side: 1 | -1, iterations = 0, residual = 0) => {
      const here = value(what, x, side)
      // strictly larger beyond rounding, so that symmetry gives one answer: the first
      if (size(here) > size(best.value) + 1e-12 * Math.abs(best.value)) best = { at: x, value: here, iterations, residual }
    }
    const rate = (orders[what] + 1) as Order
    breaks.slice(1).forEach((to, i) => {
      const from = breaks[i] as number
      offer(from, 1)
      for (const { x, iterations } of zeros(rate, from, to)) {
        const left = derivative(rate, x, 1)
        // zeros of the higher derivatives are offered too, in case a turning point lies exactly there
        const turns = Math.abs(left) * length <= 1e-9 * Math.abs(derivative(orders[what], x, 1))
        offer(x, 1, turns ? iterations : 0, turns ? left / (rate === 1 ? stiffness : 1) : 0)
      }
      offer(to, -1)
    })
    return best
  }
  return { reactionStart, reactionEnd, at, greatest }
}
