// The largest moment that loads the arm at an angle, whichever load works, and its limits over a range of angles.

import { type HingeMass, type HingeSpring, springTension, standardGravity } from "../load.js"

/** Everything that may load the arm: any of the sets of masses, times any of the factors, with a gust from either side, at any lean. */
export interface ArmLoads {
  readonly hinge: { readonly x: number; readonly y: number }
  readonly massSets: readonly (readonly HingeMass[])[]
  /** Weight over weight at rest, at its largest and smallest. */
  readonly factors: readonly number[]
  /** Moment of the gust, from either side, N·m. */
  readonly gustMoment: number
  readonly springs: readonly HingeSpring[]
  readonly frameTilt: number
  readonly tiltEitherWay: number
}

/** Which of the loads is the worst at an angle. */
export interface WorstLoad {
  readonly size: number
  /** Index of the set of masses. */
  readonly set: number
  readonly factor: number
  /** 1 pushes the arm down (clockwise), −1 up. */
  readonly gust: 1 | -1
  /** Lean of the frame, rad. */
  readonly lean: number
}

/** Size of the moment that holds the arm against its worst load. */
export interface Envelope {
  at(angle: number): number
  worst(angle: number): WorstLoad
  /** No angle of the range has less. */
  least(from: number, to: number): number
  /** No angle of the range has more. */
  most(from: number, to: number): number
  /** Some angle of the range has that much; all but the most there is. */
  reached(from: number, to: number): number
}

const TURN = 2 * Math.PI
const CELLS = 1024
const STEP = TURN / CELLS
/** Widest range, in cells, that is judged by its own two ends. */
const NARROW = 8

/** A spring as seen from the hinge. */
interface Pull {
  readonly spring: HingeSpring
  /** Hinge to fixed end and its direction, seen from the arm's zero. */
  readonly distance: number
  readonly direction: number
}

/** Bound of the second derivative of a spring's moment over a range of its angle, N·m/rad². */
function bend({ spring, distance: d }: Pull, from: number, to: number): number {
  const s = spring.radius
  // shortest where the moving end comes nearest to the fixed one
  const away = (angle: number) => Math.abs(angle - TURN * Math.round(angle / TURN))
  const off = Math.floor(to / TURN) >= Math.ceil(from / TURN) ? 0 : Math.min(away(from), away(to))
  const z = Math.sqrt(Math.max(0, d * d + s * s - 2 * d * s * Math.cos(off)))
  const c = Math.abs(spring.preload - spring.stiffness * spring.freeLength)
  if (c === 0 || d * s === 0) return spring.stiffness * d * s
  const m = Math.min(d, s)
  // of d·s·sin ψ·(k + c/z), with |dz/dψ| at most m and |d²z/dψ²| at most (d·s + m²)/z
  return d * s * (spring.stiffness + c * (1 / z + (2 * m) / z ** 2 + (3 * m * m + d * s) / z ** 3))
}

/** Whether a spring that only pulls goes slack or taut between two angles. */
function snaps({ spring, distance: d, direction }: Pull, from: number, to: number): boolean {
  if (!spring.pullsOnly) return false
  const cos = (d * d + spring.radius ** 2 - spring.freeLength ** 2) / (2 * d * spring.radius)
  if (!(Math.abs(cos) <= 1)) return false
  const pad = 1e-9
  return [Math.acos(cos), -Math.acos(cos)].some((off) => {
    const angle = direction + off
    return Math.floor((to + pad - angle) / TURN) > Math.floor((from - pad - angle) / TURN)
  })
}

/** Table of the largest (or smallest) entry of every stretch of 2^k entries. */
function pyramid(entries: Float64Array, pick: (a: number, b: number) => number): Float64Array[] {
  const levels = [entries]
  for (let k = 1; 1 << k <= CELLS; k++) {
    const below = levels[k - 1] as Float64Array
    const half = 1 << (k - 1)
    const level = new Float64Array(Math.max(0, entries.length - (1 << k) + 1))
    for (let i = 0; i < level.length; i++) level[i] = pick(below[i] as number, below[i + half] as number)
    levels.push(level)
  }
  return levels
}

/** Tabulates the loads once round the hinge. */
export function envelopeOf({ hinge, massSets, factors, gustMoment, springs, frameTilt, tiltEitherWay }: ArmLoads): Envelope {
  const sets = massSets.map((masses) => {
    let [x, y] = [0, 0]
    for (const { mass, radius, angle } of masses) {
      x += mass * radius * Math.cos(angle)
      y += mass * radius * Math.sin(angle)
    }
    return { amplitude: standardGravity * Math.hypot(x, y), phase: Math.atan2(y, x) + frameTilt }
  })
  const pulled = springs.map((spring): Pull => {
    const [x, y] = [spring.fixedPivot.x - hinge.x, spring.fixedPivot.y - hinge.y]
    return { spring, distance: Math.hypot(x, y), direction: Math.atan2(y, x) - spring.angle }
  })
  /** Moment of the springs, as springAt has it, without an object for each. */
  const tense = (angle: number) => {
    let moment = 0
    for (const { spring, distance: d, direction } of pulled) {
      const [s, turned] = [spring.radius, angle - direction]
      const length = Math.sqrt(Math.max(0, d * d + s * s - 2 * d * s * Math.cos(turned)))
      if (length > 0) moment -= (springTension(spring, length) / length) * d * s * Math.sin(turned)
    }
    return moment
  }
  const cases = sets.flatMap(({ amplitude, phase }, set) =>
    factors.map((factor) => ({ amplitude: factor * amplitude, phase, set, factor })),
  )
  const count = 2 * cases.length
  const heaviest = Math.max(...cases.map(({ amplitude }) => amplitude))

  /** Moments clockwise at most, and counter-clockwise at most, of every case at an angle. */
  const moments = (angle: number, spring: number, into: Float64Array) => {
    for (let i = 0; i < cases.length; i++) {
      const { amplitude, phase } = cases[i] as (typeof cases)[number]
      const stands = angle + phase
      const off = Math.abs(stands - TURN * Math.round(stands / TURN))
      into[2 * i] = amplitude * Math.cos(Math.max(0, off - tiltEitherWay)) + gustMoment - spring
      into[2 * i + 1] = amplitude * Math.cos(Math.max(0, Math.PI - off - tiltEitherWay)) + gustMoment + spring
    }
  }
  const [a, b] = [new Float64Array(count), new Float64Array(count)]
  const largest = (of: Float64Array) => {
    let most = 0
    for (let i = 0; i < count; i++) if ((of[i] as number) > most) most = of[i] as number
    return most
  }
  const at = (angle: number) => {
    moments(angle, springs.length ? tense(angle) : 0, a)
    return largest(a)
  }
  /** No angle between two has less than this, given every case's moments there and how much they may bend. */
  const sag = (bent: number) => {
    let most = 0
    for (let i = 0; i < count; i++) {
      const low = Math.min(a[i] as number, b[i] as number) - bent
      if (low > most) most = low
    }
    return most
  }
  const low = new Float64Array(2 * CELLS)
  const high = new Float64Array(2 * CELLS)
  const nodes = new Float64Array(2 * CELLS)
  /** How much the moments may bend in a cell; none where a spring snaps there. */
  const bends = new Float64Array(2 * CELLS)
  const rounding = 1e-12 * (heaviest + gustMoment)
  for (let i = 0; i < CELLS; i++) {
    const [from, to] = [i * STEP, (i + 1) * STEP]
    let curvature = heaviest
    let jump = 0
    let snapping = false
    for (const one of pulled) {
      curvature += bend(one, from - one.direction, to - one.direction)
      if (!snaps(one, from, to)) continue
      snapping = true
      // slack it has none; taut no more than this, within a cell of its free length
      const m = Math.min(one.distance, one.spring.radius)
      jump += 2 * m * (one.spring.preload + one.spring.stiffness * m * STEP)
    }
    const bent = (curvature * STEP * STEP) / 8 + rounding
    moments(from, springs.length ? tense(from) : 0, a)
    nodes[i] = largest(a)
    moments(to, springs.length ? tense(to) : 0, b)
    // between its ends a snapping spring adds or leaves out at most its jump
    low[i] = Math.max(0, sag(bent) - jump)
    high[i] = Math.max(largest(a), largest(b)) + bent + jump
    bends[i] = snapping ? Number.POSITIVE_INFINITY : curvature
  }
  for (const table of [low, high, nodes, bends]) table.copyWithin(CELLS, 0, CELLS)
  const lows = pyramid(low, Math.min)
  const highs = pyramid(high, Math.max)
  const tops = pyramid(nodes, Math.max)

  const over = (levels: readonly Float64Array[], first: number, last: number, pick: (x: number, y: number) => number) => {
    const wide = Math.min(last - first + 1, CELLS)
    const k = 31 - Math.clz32(wide)
    const start = first - CELLS * Math.floor(first / CELLS)
    const level = levels[k] as Float64Array
    return pick(level[start] as number, level[start + wide - (1 << k)] as number)
  }
  /** Bend of the moments over a narrow range; none where a spring snaps in it. */
  const bendOver = (from: number, to: number) => {
    let most = 0
    for (let i = Math.floor(from / STEP); i <= Math.floor(to / STEP); i++) {
      const here = bends[i - CELLS * Math.floor(i / CELLS)] as number
      if (here > most) most = here
    }
    return most
  }
  const ends = (from: number, to: number) => {
    moments(from, springs.length ? tense(from) : 0, a)
    moments(to, springs.length ? tense(to) : 0, b)
  }
  /** No more than this in a narrow range. */
  const highest = (from: number, to: number) => {
    const bent = bendOver(from, to)
    if (bent === Number.POSITIVE_INFINITY) return over(highs, Math.floor(from / STEP), Math.floor(to / STEP), Math.max)
    ends(from, to)
    return Math.max(largest(a), largest(b)) + (bent * (to - from) ** 2) / 8 + rounding
  }
  return {
    at,
    worst: (angle) => {
      const spring = springs.length ? tense(angle) : 0
      moments(angle, spring, a)
      let best = 0
      for (let i = 1; i < count; i++) if ((a[i] as number) > (a[best] as number)) best = i
      const { phase, set, factor } = cases[best >> 1] as (typeof cases)[number]
      const down = best % 2 === 0
      // leaning as far as helps towards level
      const stands = angle + phase - (down ? 0 : Math.PI)
      const off = stands - TURN * Math.round(stands / TURN)
      const lean = frameTilt - Math.sign(off) * Math.min(Math.abs(off), tiltEitherWay)
      return { size: Math.max(0, a[best] as number), set, factor, gust: down ? 1 : -1, lean }
    },
    least: (from, to) => {
      if (to - from < NARROW * STEP) {
        const bent = bendOver(from, to)
        if (bent < Number.POSITIVE_INFINITY) {
          ends(from, to)
          return Math.max(0, sag((bent * (to - from) ** 2) / 8 + rounding))
        }
      }
      return over(lows, Math.floor(from / STEP), Math.floor(to / STEP), Math.min)
    },
    most: (from, to) => {
      if (to - from < NARROW * STEP && bendOver(from, to) < Number.POSITIVE_INFINITY) return highest(from, to)
      // whole cells from the table, the two that the range ends in by their own ends
      const [first, last] = [Math.ceil(from / STEP), Math.floor(to / STEP)]
      const inner = first < last ? over(highs, first, last - 1, Math.max) : 0
      return Math.max(inner, highest(from, Math.min(to, first * STEP)), highest(Math.max(from, last * STEP), to))
    },
    reached: (from, to) => {
      const ended = Math.max(at(from), at(to))
      const [first, last] = [Math.ceil(from / STEP), Math.floor(to / STEP)]
      return first > last ? ended : Math.max(ended, over(tops, first, last, Math.max))
    },
  }
}
