import { brent } from "../numeric/index.js"

/** A force across a beam, N, positive downwards, at a distance from its start, m. */
export interface BeamForce {
  readonly force: number
  readonly at: number
}
/** A load per length, N/m, running straight from one value to another. */
export interface BeamSpread {
  readonly from: number
  readonly to: number
  readonly start: number
  readonly end: number
}
/** A moment, N·m, positive where it turns what lies beyond it downwards. */
export interface BeamCouple {
  readonly moment: number
  readonly at: number
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
  readonly spreads: readonly BeamSpread[]
  readonly couples: readonly BeamCouple[]
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
  /** Largest magnitudes over the whole beam, with their signs. */
  greatest(what: keyof BeamState): BeamExtreme
}

/**
 * Solves a beam in closed form: EI·v'''' = w, the loads added up as singularity functions
 * (W. H. Macaulay, 1919), the constants from the supports.
 */
export function beamCurve(problem: BeamProblem): BeamCurve {
  const { length, span, stiffness, forces, spreads, couples } = problem
  let [load, turning] = [0, 0]
  for (const { force, at } of forces) {
    load += force
    turning += force * at
  }
  for (const { from, to, start, end } of spreads) {
    const reach = end - start
    load += ((from + to) / 2) * reach
    turning += ((from + to) / 2) * reach * start + (from / 6 + to / 3) * reach ** 2
  }
  for (const { moment } of couples) turning += moment

  const reactionEnd = span === null ? null : turning / span
  const reactionStart = load - (reactionEnd ?? 0)
  const points = span === null ? forces : [...forces, { force: -(reactionEnd as number), at: span }]

  /** EI times the derivatives 0 to 3 of the particular solution. */
  const particular = (x: number, side: 1 | -1): [number, number, number, number] => {
    let [p0, p1, p2, p3] = [0, 0, 0, 0]
    for (const { force, at } of points) {
      const d = x - at
      if (d < 0 || (d === 0 && side < 0)) continue
      p3 += force
      p2 += force * d
      p1 += (force * d ** 2) / 2
      p0 += (force * d ** 3) / 6
    }
    for (const { moment, at } of couples) {
      const d = x - at
      if (d < 0 || (d === 0 && side < 0)) continue
      p2 -= moment
      p1 -= moment * d
      p0 -= (moment * d ** 2) / 2
    }
    for (const { from, to, start, end } of spreads) {
      const rise = (to - from) / (end - start)
      for (const [at, value, sign] of [
        [start, from, 1],
        [end, to, -1],
      ] as const) {
        const d = x - at
        if (d <= 0) continue
        p3 += sign * (value * d + (rise * d ** 2) / 2)
        p2 += sign * ((value * d ** 2) / 2 + (rise * d ** 3) / 6)
        p1 += sign * ((value * d ** 3) / 6 + (rise * d ** 4) / 24)
        p0 += sign * ((value * d ** 4) / 24 + (rise * d ** 5) / 120)
      }
    }
    return [p0, p1, p2, p3]
  }

  const c3 = -reactionStart
  const c2 = span === null ? turning : 0
  const c1 = span === null ? 0 : -(particular(span, -1)[0] + (c3 * span ** 3) / 6) / span
  const at = (x: number, side: 1 | -1 = x >= length ? -1 : 1): BeamState => {
    const [p0, p1, p2, p3] = particular(x, side)
    return {
      shear: -(c3 + p3),
      moment: -(c2 + c3 * x + p2),
      slope: (c1 + c2 * x + (c3 * x ** 2) / 2 + p1) / stiffness,
      deflection: (c1 * x + (c2 * x ** 2) / 2 + (c3 * x ** 3) / 6 + p0) / stiffness,
    }
  }

  const places = [0, length, ...(span === null ? [] : [span]), ...points.map((p) => p.at), ...couples.map((c) => c.at)]
  for (const s of spreads) places.push(s.start, s.end)
  const breaks = [...new Set(places)].sort((a, b) => a - b)

  const intensity = (x: number) =>
    spreads.reduce(
      (sum, { from, to, start, end }) => (x < start || x > end ? sum : sum + from + ((to - from) * (x - start)) / (end - start)),
      0,
    )
  /** What a quantity turns with: it is greatest at a break or where this passes through zero. */
  const turnsWith: Record<keyof BeamState, (x: number, side: 1 | -1) => number> = {
    shear: intensity,
    moment: (x, side) => at(x, side).shear,
    slope: (x, side) => at(x, side).moment,
    deflection: (x, side) => at(x, side).slope,
  }
  const greatest = (what: keyof BeamState): BeamExtreme => {
    let best: BeamExtreme = { at: 0, value: at(0, 1)[what], iterations: 0, residual: 0 }
    const offer = (x: number, side: 1 | -1, iterations = 0, residual = 0) => {
      const value = at(x, side)[what]
      // strictly larger beyond rounding, so that symmetry gives one answer: the first
      if (Math.abs(value) > Math.abs(best.value) * (1 + 1e-12)) best = { at: x, value, iterations, residual }
    }
    const turn = turnsWith[what]
    breaks.slice(1).forEach((to, i) => {
      const from = breaks[i] as number
      offer(from, 1)
      offer(to, -1)
      // between breaks every quantity is a polynomial of degree 5 or less: 16 stretches part its turning points
      let [x0, y0] = [from, turn(from, 1)]
      for (let k = 1; k <= 16; k++) {
        const isLast = k === 16
        const x1 = isLast ? to : from + ((to - from) * k) / 16
        const y1 = turn(x1, isLast ? -1 : 1)
        if (y0 * y1 < 0) {
          const root = brent((x) => turn(x, x >= to ? -1 : 1), x0, x1, 1e-15 * length)
          if (root) offer(root.x, 1, root.iterations, root.residual)
        } else if (!isLast) offer(x1, 1)
        ;[x0, y0] = [x1, y1]
      }
    })
    return best
  }
  return { reactionStart, reactionEnd, at, greatest }
}
