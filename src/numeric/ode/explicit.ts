import { DENSE, ERROR_OF_ORDER_3, ERROR_OF_ORDER_5, STAGE_AT, STAGES, type Weights } from "./explicit-table.js"
import { allFinite, type Setting, type Stepper } from "./types.js"

const [NEW_STATE, LAST_STAGE] = [12, 11]
/** Stability ends at 6.4 along the real axis; steps that it sets swing from 5.2 to 6.7. */
const AT_THE_EDGE = 5

/**
 * The pair of order 8(5, 3) of Dormand and Prince, as controlled and judged by E. Hairer, S. P. Nørsett and G. Wanner, Solving
 * Ordinary Differential Equations I, II.5 and II.6 (twelve slopes a step, three more where its dense output is asked for), with
 * their sign of stiffness: h times the largest rate, seen between the last two stages, stays at the edge of stability for 15
 * steps (volume II, IV.2).
 */
export function explicitPair({ size, slope, relative, absolute }: Setting): Stepper {
  const k = STAGES.map(() => new Float64Array(size))
  const point = new Float64Array(size)
  const last = new Float64Array(size)
  const next = new Float64Array(size)
  const rows = Array.from({ length: 7 }, () => new Float64Array(size))
  let start: Float64Array = point
  let [from, step, prepared, rejected] = [0, 0, false, false]
  let [growth, stiff, notStiff] = [1, 0, 0]

  const combined = (weights: Weights, i: number): number => {
    let sum = 0
    for (let s = 0; s < weights.length; s++) {
      const pair = weights[s] as readonly [number, number]
      sum += pair[1] * (k[pair[0]]?.[i] as number)
    }
    return sum
  }
  const pointOf = (stage: number, out: Float64Array) => {
    const weights = STAGES[stage] as Weights
    for (let i = 0; i < size; i++) out[i] = (start[i] as number) + step * combined(weights, i)
  }

  const error = (): number => {
    let [five, three] = [0, 0]
    for (let i = 0; i < size; i++) {
      const allowed = (absolute[i] as number) + relative * Math.max(Math.abs(start[i] as number), Math.abs(next[i] as number))
      five += (combined(ERROR_OF_ORDER_5, i) / allowed) ** 2
      three += (combined(ERROR_OF_ORDER_3, i) / allowed) ** 2
    }
    const both = five + 0.01 * three
    return both === 0 ? 0 : (Math.abs(step) * five) / Math.sqrt(size * both)
  }

  /** Counts steps whose size stability sets. */
  const lookForStiffness = () => {
    let [slopes, states, rounding] = [0, 0, 0]
    for (let i = 0; i < size; i++) {
      slopes += ((k[NEW_STATE]?.[i] as number) - (k[LAST_STAGE]?.[i] as number)) ** 2
      states += ((next[i] as number) - (last[i] as number)) ** 2
      rounding += (1e-14 * (next[i] as number)) ** 2
    }
    if (states > rounding && Math.abs(step) * Math.sqrt(slopes / states) > AT_THE_EDGE) {
      notStiff = 0
      stiff++
    } else if (++notStiff === 6) stiff = 0
  }

  const prepare = (): boolean => {
    for (let stage = NEW_STATE + 1; stage < STAGES.length; stage++) {
      pointOf(stage, point)
      slope(from + (STAGE_AT[stage] as number) * step, point, k[stage] as Float64Array)
      if (!allFinite(k[stage] as Float64Array)) return false
    }
    for (let i = 0; i < size; i++) {
      const change = (next[i] as number) - (start[i] as number)
      const atStart = step * (k[0]?.[i] as number)
      const set = (row: number, value: number) => {
        ;(rows[row] as Float64Array)[i] = value
      }
      set(0, change)
      set(1, atStart - change)
      set(2, 2 * change - (step * (k[NEW_STATE]?.[i] as number) + atStart))
      for (let d = 0; d < 4; d++) set(3 + d, step * combined(DENSE[d] as Weights, i))
    }
    prepared = true
    return true
  }

  return {
    next,
    nextSlope: k[NEW_STATE] as Float64Array,
    attempt(t, y, dy, h) {
      ;[from, step, start, prepared] = [t, h, y, false]
      ;(k[0] as Float64Array).set(dy)
      for (let stage = 1; stage <= LAST_STAGE; stage++) {
        const at = stage === LAST_STAGE ? last : point
        pointOf(stage, at)
        slope(t + (STAGE_AT[stage] as number) * h, at, k[stage] as Float64Array)
      }
      pointOf(NEW_STATE, next)
      const found = error()
      if (!Number.isFinite(found) || !allFinite(next)) {
        ;[growth, rejected] = [0.25, true]
        return Number.NaN
      }
      growth = Math.min(rejected || found > 1 ? 1 : 6, Math.max(1 / 3, 0.9 * found ** -0.125))
      rejected = found > 1
      if (rejected) return found
      slope(t + h, next, k[NEW_STATE] as Float64Array)
      if (allFinite(k[NEW_STATE] as Float64Array)) return found
      ;[growth, rejected] = [0.25, true]
      return Number.NaN
    },
    get growth() {
      return growth
    },
    dense(share, out) {
      if (!prepared && !prepare()) return false
      for (let i = 0; i < size; i++) {
        let sum = 0
        for (let r = 6; r >= 0; r--) sum = (sum + (rows[r]?.[i] as number)) * (r % 2 === 0 ? share : 1 - share)
        out[i] = (start[i] as number) + sum
      }
      return true
    },
    accept() {
      lookForStiffness()
    },
    get tired() {
      return stiff >= 15
    },
    restart() {
      ;[stiff, notStiff, rejected] = [0, 0, false]
    },
  }
}
