import { integrateVector } from "../numeric/index.js"
import { constantPowerCurrent } from "./pack-under-load.js"

/** Open-circuit voltage against state of charge in straight lines, rising. */
export type Curve = readonly (readonly [stateOfCharge: number, voltage: number])[]

/** A load of a pattern, SI; `rest` draws nothing. */
export interface Load {
  readonly draws: "current" | "power" | "resistance" | "rest"
  readonly value: number
  /** Time it lasts in each round of the pattern, s. */
  readonly duration: number
}

/** A source being emptied: curve (V of the whole pack), capacity (C), resistance (Ω), minimum voltage (V). */
export interface Discharge {
  readonly curve: Curve
  readonly capacity: number
  readonly resistance: number
  readonly cutOff: number
  readonly start: number
  readonly loads: readonly Load[]
}

/** What one load took all told. */
export interface LoadShare {
  readonly duration: number
  readonly charge: number
  readonly energy: number
}

/** How a discharge went. */
export interface Discharged {
  readonly time: number
  readonly endStateOfCharge: number
  readonly energy: number
  readonly heat: number
  readonly peakCurrent: number
  readonly startCurrent: number
  readonly endCurrent: number
  readonly endVoltage: number
  readonly ends: "cut-off" | "collapse" | "depleted"
  readonly rounds: number
  readonly shares: readonly LoadShare[]
  readonly history: readonly { readonly time: number; readonly stateOfCharge: number; readonly voltage: number; readonly current: number }[]
  readonly iterations: number
  readonly errorEstimate: number
}

/** Rounds are followed one by one up to this many pieces; beyond, the pattern's mean is integrated. */
const MOST_PIECES = 20000

/** Current of a load at an open-circuit voltage, A. */
export function loadCurrent(load: Load, emf: number, resistance: number): number {
  switch (load.draws) {
    case "current":
      return load.value
    case "power":
      return constantPowerCurrent(emf, resistance, load.value)
    case "resistance":
      return emf / (resistance + load.value)
    default:
      return 0
  }
}

/** Open-circuit voltage at which a load pulls the terminals to the cut-off, or collapses. */
export function thresholdOf(load: Load, resistance: number, cutOff: number): { readonly emf: number; readonly collapses: boolean } {
  switch (load.draws) {
    case "current":
      return { emf: load.value > 0 ? cutOff + load.value * resistance : 0, collapses: false }
    case "power": {
      if (load.value === 0) return { emf: 0, collapses: false }
      const turn = Math.sqrt(load.value * resistance)
      return turn > cutOff ? { emf: 2 * turn, collapses: true } : { emf: cutOff + (load.value * resistance) / cutOff, collapses: false }
    }
    case "resistance":
      return { emf: (cutOff * (resistance + load.value)) / load.value, collapses: false }
    default:
      return { emf: 0, collapses: false }
  }
}

const GAUSS: readonly (readonly [x: number, w: number])[] = [
  [0, 128 / 225],
  [0.5384693101056831, 0.47862867049936647],
  [-0.5384693101056831, 0.47862867049936647],
  [0.906179845938664, 0.23692688505618908],
  [-0.906179845938664, 0.23692688505618908],
]

/** Time per coulomb of full capacity to go from emf a down to b (a > b) along a straight line of slope k: ∫ds/I. */
function timeFor(load: Load, a: number, b: number, span: number, resistance: number): number {
  switch (load.draws) {
    case "current":
      return span / load.value
    case "resistance":
      // logarithmic mean of the two voltages
      return a - b < 1e-6 * a
        ? (span * 2 * (resistance + load.value)) / (a + b)
        : (span * (resistance + load.value) * Math.log1p((a - b) / b)) / (a - b)
    default: {
      const c = 4 * resistance * load.value
      if (a - b > 1e-3 * a) {
        const primitive = (e: number) => {
          const w = Math.sqrt(Math.max(0, e * e - c))
          return e * e + e * w - (c > 0 ? c * Math.log(e + w) : 0)
        }
        return (span * (primitive(a) - primitive(b))) / (4 * load.value * (a - b))
      }
      let sum = 0
      for (const [x, w] of GAUSS) {
        const e = (a + b) / 2 + ((a - b) / 2) * x
        sum += w * (e + Math.sqrt(Math.max(0, e * e - c)))
      }
      return (span * sum) / (4 * load.value)
    }
  }
}

/** State of charge at which the curve reaches an emf; 0 where it never falls so low. */
export function chargeAt(curve: Curve, emf: number): number {
  let i = curve.length - 1
  while (i > 0 && (curve[i - 1] as readonly [number, number])[1] >= emf) i--
  if (i === 0) return (curve[0] as readonly [number, number])[0]
  const [s0, v0] = curve[i - 1] as readonly [number, number]
  const [s1, v1] = curve[i] as readonly [number, number]
  return emf >= v1 ? s1 : s0 + ((s1 - s0) * (emf - v0)) / (v1 - v0)
}

/** Energy that reaches a load, J, of what the cells gave up. */
function givenTo(load: Load, time: number, charge: number, fromCells: number, resistance: number): number {
  if (load.draws === "power") return load.value * time
  if (load.draws === "current") return fromCells - charge * load.value * resistance
  return (fromCells * load.value) / (load.value + resistance)
}

/** State of charge after a time within one straight piece of the curve, by Newton's method on the exact time. */
function chargeAfter(
  load: Load,
  time: number,
  start: number,
  emf: (stateOfCharge: number) => number,
  floor: number,
  capacity: number,
  resistance: number,
): number {
  let next = start - (time * loadCurrent(load, emf(start), resistance)) / capacity
  if (load.draws === "current") return next
  next = Math.max(floor, next)
  let step = Number.POSITIVE_INFINITY
  for (let k = 0; k < 30 && Math.abs(step) > 1e-15; k++) {
    const error = capacity * timeFor(load, emf(start), emf(next), start - next, resistance) - time
    step = (error * loadCurrent(load, emf(next), resistance)) / capacity
    next = Math.min(start, Math.max(floor, next + step))
  }
  // rounding may keep the last steps above 1e-15; more than this would be no state of charge at all
  if (!(Math.abs(step) <= 1e-9)) throw new RangeError("No state of charge found after a piece of a discharge.")
  return next
}

/** Current with which a load meets its end: beyond collapse a power load has none, so the maximum-power current stands for it. */
function endingCurrent(load: Load, emf: number, resistance: number): number {
  const collapsed = load.draws === "power" && emf * emf < 4 * load.value * resistance
  return collapsed ? emf / (2 * resistance) : loadCurrent(load, emf, resistance)
}

/** Empties a source through a repeated pattern of loads. The caller has made sure that every load can run at the start. */
export function discharge(problem: Discharge): Discharged {
  const { curve, capacity, resistance, cutOff, start, loads } = problem
  const first = emfAt(curve, start)
  const roundTime = loads.reduce((sum, load) => sum + load.duration, 0)
  const roundCharge = loads.reduce((sum, load) => sum + load.duration * loadCurrent(load, first, resistance), 0)
  const pieces = ((capacity * start) / roundCharge) * loads.length
  return loads.length > 1 && pieces > MOST_PIECES
    ? byMean(problem, roundTime)
    : roundByRound({ curve, capacity, resistance, cutOff, start, loads })
}

/** Open-circuit voltage at a state of charge. */
export function emfAt(curve: Curve, stateOfCharge: number): number {
  let i = curve.length - 1
  while (i > 1 && (curve[i - 1] as readonly [number, number])[0] >= stateOfCharge) i--
  const [s0, v0] = curve[i - 1] as readonly [number, number]
  const [s1, v1] = curve[i] as readonly [number, number]
  return v0 + ((v1 - v0) * (stateOfCharge - s0)) / (s1 - s0)
}

function roundByRound({ curve, capacity, resistance, cutOff, start, loads }: Discharge): Discharged {
  const thresholds = loads.map((load) => thresholdOf(load, resistance, cutOff))
  const shares = loads.map(() => ({ duration: 0, charge: 0, energy: 0 }))
  const history: { time: number; stateOfCharge: number; voltage: number; current: number }[] = []
  // a single load never changes, so its duration is no event
  const single = loads.length === 1
  let i = curve.length - 1
  while (i > 1 && (curve[i - 1] as readonly [number, number])[0] >= start) i--
  let [s, emf] = [start, emfAt(curve, start)]
  let [time, heat, energy, peakCurrent, rounds, iterations] = [0, 0, 0, 0, 0, 0]
  let which = 0
  let left = single ? Number.POSITIVE_INFINITY : (loads[0] as Load).duration
  let ends: Discharged["ends"] = "depleted"
  const startCurrent = Math.max(...loads.map((load) => loadCurrent(load, emf, resistance)))
  const note = (current: number) => history.push({ time, stateOfCharge: s, voltage: emf - current * resistance, current })
  note(loadCurrent(loads[0] as Load, emf, resistance))
  let endCurrent = 0
  for (;;) {
    const load = loads[which] as Load
    const threshold = thresholds[which] as { emf: number; collapses: boolean }
    const share = shares[which] as { duration: number; charge: number; energy: number }
    endCurrent = endingCurrent(load, emf, resistance)
    if (emf <= threshold.emf) {
      ends = threshold.collapses ? "collapse" : "cut-off"
      break
    }
    iterations++
    peakCurrent = Math.max(peakCurrent, endCurrent)
    let took = left
    if (endCurrent > 0) {
      const [low, lowEmf] = curve[i - 1] as readonly [number, number]
      const [high, highEmf] = curve[i] as readonly [number, number]
      const slope = (highEmf - lowEmf) / (high - low)
      const stops = threshold.emf > lowEmf
      const floorEmf = stops ? threshold.emf : lowEmf
      const floor = stops ? low + (threshold.emf - lowEmf) / slope : low
      const toFloor = capacity * timeFor(load, emf, floorEmf, Math.max(0, s - floor), resistance)
      const reached = toFloor <= left
      took = reached ? toFloor : left
      const next = reached ? floor : chargeAfter(load, took, s, (x) => lowEmf + slope * (x - low), floor, capacity, resistance)
      const nextEmf = reached ? floorEmf : lowEmf + slope * (next - low)
      const charge = capacity * (s - next)
      const fromCells = (charge * (emf + nextEmf)) / 2
      const given = givenTo(load, took, charge, fromCells, resistance)
      share.charge += charge
      share.energy += given
      energy += given
      heat += fromCells - given
      s = next
      emf = nextEmf
      endCurrent = loadCurrent(load, emf, resistance)
      peakCurrent = Math.max(peakCurrent, endCurrent)
      if (reached) {
        time += took
        share.duration += took
        left -= took
        note(endCurrent)
        if (stops) {
          ends = threshold.collapses ? "collapse" : "cut-off"
          break
        }
        if (i === 1) break
        i--
        if (left > 0) continue
        took = 0
      }
    }
    time += took
    share.duration += took
    note(endCurrent)
    which = (which + 1) % loads.length
    if (which === 0) rounds++
    left = (loads[which] as Load).duration
  }
  return {
    time,
    endStateOfCharge: s,
    energy,
    heat,
    peakCurrent,
    startCurrent,
    endCurrent,
    endVoltage: emf - endCurrent * resistance,
    ends,
    rounds: single ? time / (loads[0] as Load).duration : rounds,
    shares,
    history: thinned(history),
    iterations,
    errorEstimate: 0,
  }
}

/** Many short rounds: the charge is followed by the pattern's mean current at each voltage. Off by at most about one round. */
function byMean({ curve, capacity, resistance, cutOff, start, loads }: Discharge, roundTime: number): Discharged {
  const thresholds = loads.map((load) => thresholdOf(load, resistance, cutOff))
  const worst = thresholds.reduce((a, b) => (b.emf > a.emf ? b : a))
  const heaviest = loads[thresholds.indexOf(worst)] as Load
  const bottom = (curve[0] as readonly [number, number])[0]
  const end = Math.min(start, Math.max(bottom, chargeAt(curve, worst.emf)))
  const knots = [end, ...curve.map(([s]) => s).filter((s) => s > end && s < start), start]
  const size = 1 + 2 * loads.length
  const sums = new Float64Array(size)
  let iterations = 0
  const history: { time: number; stateOfCharge: number; voltage: number; current: number }[] = []
  const note = (s: number) => {
    const emf = emfAt(curve, s)
    const current = loadCurrent(heaviest, emf, resistance)
    history.push({ time: sums[0] as number, stateOfCharge: s, voltage: emf - current * resistance, current })
  }
  note(start)
  for (let k = knots.length - 1; k > 0; k--) {
    const part = integrateVector(
      (s, out) => {
        const emf = emfAt(curve, s)
        let charge = 0
        loads.forEach((load, j) => {
          const current = loadCurrent(load, emf, resistance)
          charge += (current * load.duration) / roundTime
          out[1 + 2 * j] = (current * load.duration) / roundTime
          out[2 + 2 * j] = (current * (emf - current * resistance) * load.duration) / roundTime
        })
        out[0] = capacity / charge
        for (let j = 1; j < size; j++) out[j] = ((out[j] as number) * capacity) / charge
      },
      knots[k - 1] as number,
      knots[k] as number,
      size,
    )
    for (let j = 0; j < size; j++) sums[j] = (sums[j] as number) + (part.value[j] as number)
    iterations++
    note(knots[k - 1] as number)
  }
  const time = sums[0] as number
  const shares = loads.map((load, j) => ({
    duration: (time * load.duration) / roundTime,
    charge: sums[1 + 2 * j] as number,
    energy: sums[2 + 2 * j] as number,
  }))
  const energy = shares.reduce((sum, share) => sum + share.energy, 0)
  let fromCells = 0
  for (let k = 1; k < knots.length; k++) {
    const [a, b] = [knots[k - 1] as number, knots[k] as number]
    fromCells += (capacity * (b - a) * (emfAt(curve, a) + emfAt(curve, b))) / 2
  }
  const [startEmf, endEmf] = [emfAt(curve, start), emfAt(curve, end)]
  const peak = (emf: number) => Math.max(...loads.map((load) => loadCurrent(load, emf, resistance)))
  const endCurrent = loadCurrent(heaviest, endEmf, resistance)
  return {
    time,
    endStateOfCharge: end,
    energy,
    heat: fromCells - energy,
    peakCurrent: Math.max(peak(startEmf), peak(endEmf)),
    startCurrent: peak(startEmf),
    endCurrent,
    endVoltage: endEmf - endCurrent * resistance,
    ends: end > bottom ? (worst.collapses ? "collapse" : "cut-off") : "depleted",
    rounds: time / roundTime,
    shares,
    history: thinned(history),
    iterations,
    errorEstimate: roundTime,
  }
}

/** At most 65 points of a history, ends kept. */
function thinned<T>(points: readonly T[]): readonly T[] {
  if (points.length <= 65) return points
  return Array.from({ length: 65 }, (_, i) => points[Math.round((i * (points.length - 1)) / 64)] as T)
}
