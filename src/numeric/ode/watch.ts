import type { OdeEvents } from "./types.js"

/** Where a step is looked at: close to its ends, so that a turn beside them shows, and evenly between. */
const NODES = [0, 0.002, 0.125, 0.25, 0.375, 0.5, 0.625, 0.75, 0.875, 0.998, 1]

/** Looks through steps for events. */
export interface Watch {
  /** Takes the values at the start of a run. False where one is no number. */
  start(t: number, y: Float64Array): boolean
  /**
   * Time at or just after the first crossing of the step from `ta` to `tb`, whose states `at` gives.
   *
   * @returns Infinity where none crosses, NaN where an event or a state is no number
   */
  look(ta: number, tb: number, at: (t: number, out: Float64Array) => boolean): number
  /** The events that crossed at the time last returned. */
  readonly crossed: number[]
  /** Takes the step last looked through, in which nothing crossed that counts. */
  pass(): void
}

/**
 * A crossing is a change of sign between two looks, or a turn of the value between them whose far side, searched for, lies beyond
 * zero. Not seen: a value that leaves zero and comes back between two looks without a turn of its samples, as one that follows
 * time alone in a pulse shorter than a tenth of a step. It is located between two neighbouring doubles of time.
 */
export function watchOf(events: OdeEvents, size: number): Watch {
  const { count, values, directions } = events
  const g = NODES.map(() => new Float64Array(count))
  const at0 = new Float64Array(count)
  const probe = new Float64Array(count)
  const y = new Float64Array(size)
  // sign of each event where the step begins: 0 while it has none of its own yet
  const signs = new Int8Array(count)
  const ends = new Int8Array(count)
  const found = new Float64Array(count)
  const crossed: number[] = []
  let first = true
  let [from, to] = [0, 0]
  let state: (t: number, out: Float64Array) => boolean = () => false
  const timeOf = (node: number) => (node === NODES.length - 1 ? to : from + (NODES[node] as number) * (to - from))
  const valueAt = (event: number, t: number): number => {
    if (!state(t, y)) return Number.NaN
    values(t, y, probe)
    return probe[event] as number
  }

  /** First double of time at which `event`, of sign `sign` at `a`, has no longer that sign; it has not at `b`. */
  const locate = (event: number, sign: number, a: number, b: number, va: number, vb: number): number => {
    let [lo, hi, low, high, moved] = [a, b, va, vb, 0]
    for (let round = 0; round < 200; round++) {
      // false position, halved on the side that stays (Illinois), every third time the middle: then the bracket closes
      let t = round % 3 === 2 ? lo + (hi - lo) / 2 : hi - ((hi - lo) * high) / (high - low)
      const finest = Number.EPSILON * Math.max(Math.abs(lo), Math.abs(hi))
      if (Math.abs(hi - lo) <= finest) return hi
      // never at an end: one step of the finest inside it
      const inside = Math.min(Math.abs(hi - lo) / 2, finest) * Math.sign(hi - lo)
      if (!((t - lo) * Math.sign(hi - lo) > 0)) t = lo + inside
      if (!((hi - t) * Math.sign(hi - lo) > 0)) t = hi - inside
      if (t === lo || t === hi) return hi
      const v = valueAt(event, t)
      if (Number.isNaN(v)) return Number.NaN
      if (v * sign > 0) {
        lo = t
        low = v
        if (moved < 0) high /= 2
        moved = -1
      } else {
        hi = t
        high = v
        if (moved > 0) low /= 2
        moved = 1
      }
    }
    return hi
  }

  /** Time between `a` and `b` at which `event` lies beyond zero against `sign`, by golden section; NaN where it turns before. */
  const dip = (event: number, sign: number, a: number, b: number): number => {
    const ratio = (Math.sqrt(5) - 1) / 2
    let [left, right] = [a, b]
    let [c, d] = [right - ratio * (right - left), left + ratio * (right - left)]
    let [vc, vd] = [sign * valueAt(event, c), sign * valueAt(event, d)]
    for (let round = 0; round < 24; round++) {
      if (vc < 0) return c
      if (vd < 0) return d
      if (vc < vd) {
        right = d
        d = c
        vd = vc
        c = right - ratio * (right - left)
        vc = sign * valueAt(event, c)
      } else {
        left = c
        c = d
        vc = vd
        d = left + ratio * (right - left)
        vd = sign * valueAt(event, d)
      }
    }
    return Number.NaN
  }

  const value = (node: number, event: number) => g[node]?.[event] as number
  /** Time of the first crossing of one event that counts, Infinity where there is none. Leaves its sign at the end. */
  const firstOf = (event: number): number => {
    const wanted = directions?.[event] ?? 0
    let sign = signs[event] as number
    let noise = 0
    if (first || sign === 0) {
      for (let node = 0; node < NODES.length; node++) noise = Math.max(noise, Math.abs(value(node, event)))
      noise *= 64 * Number.EPSILON
      // a state put on the surface may lie beside it by rounding; where one direction counts its sign is taken as it is
      if (wanted === 0 && Math.abs(value(0, event)) <= noise) sign = 0
    }
    for (let node = 1; node < NODES.length; node++) {
      const v = value(node, event)
      if (sign === 0) {
        if (Math.abs(v) > noise) sign = Math.sign(v)
        continue
      }
      if (v * sign > 0) {
        const held = node > 1 ? value(node - 1, event) * sign : 0
        const turns = held > 0 && value(node - 2, event) * sign > held && v * sign >= held
        const low = turns ? dip(event, sign, timeOf(node - 2), timeOf(node)) : Number.NaN
        if (Number.isNaN(low)) continue
        const beyond = valueAt(event, low)
        if (wanted !== sign) return locate(event, sign, timeOf(node - 2), low, value(node - 2, event), beyond)
        return locate(event, -sign, low, timeOf(node), beyond, v)
      }
      if (wanted !== sign) return locate(event, sign, timeOf(node - 1), timeOf(node), value(node - 1, event), v)
      sign = Math.sign(v)
    }
    ends[event] = sign
    return Number.POSITIVE_INFINITY
  }

  return {
    start(t, at) {
      values(t, at, at0)
      for (let i = 0; i < count; i++) {
        signs[i] = Math.sign(at0[i] as number)
        if (Number.isNaN(at0[i] as number)) return false
      }
      first = true
      return true
    },
    look(ta, tb, at) {
      ;[from, to, state] = [ta, tb, at]
      for (let node = 0; node < NODES.length; node++) {
        const values0 = g[node] as Float64Array
        if (node === 0) {
          values0.set(at0)
          continue
        }
        if (!state(timeOf(node), y)) return Number.NaN
        values(timeOf(node), y, values0)
        for (let i = 0; i < count; i++) if (Number.isNaN(values0[i] as number)) return Number.NaN
      }
      let [earliest, sooner] = [Number.POSITIVE_INFINITY, Math.sign(tb - ta)]
      for (let i = 0; i < count; i++) {
        const t = firstOf(i)
        if (Number.isNaN(t)) return t
        found[i] = t
        if (t !== Number.POSITIVE_INFINITY && (earliest === Number.POSITIVE_INFINITY || (t - earliest) * sooner < 0)) earliest = t
      }
      crossed.length = 0
      if (earliest === Number.POSITIVE_INFINITY) return earliest
      // those within rounding of it are at the same instant: the state is taken behind all of them
      const same = 64 * Number.EPSILON * Math.abs(tb - ta) + 4 * Number.EPSILON * Math.max(Math.abs(ta), Math.abs(tb))
      let last = earliest
      for (let i = 0; i < count; i++) {
        const t = found[i] as number
        if (!(Math.abs(t - earliest) <= same)) continue
        crossed.push(i)
        if ((t - last) * sooner > 0) last = t
      }
      return last
    },
    crossed,
    pass() {
      signs.set(ends)
      at0.set(g[NODES.length - 1] as Float64Array)
      first = false
    },
  }
}
