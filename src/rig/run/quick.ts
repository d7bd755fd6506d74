// A motion's time and peaks alone: fast enough for those who try thousands.
import { gaussFive, integrateVector } from "../../numeric/index.js"
import { firstStop, kinks, type Ride, ridePoint } from "./ride.js"

/** A motion calculated fast. */
export interface QuickMove {
  readonly duration: number
  /** Maximum effort at one drive, N or N·m, and of its current, A. */
  readonly peakEffort: number
  readonly peakCurrent: number
  /** The same at their lowest: an effort that helps, a current that comes back. */
  readonly minEffort: number
  readonly minCurrent: number
  readonly minVoltage: number
}

/** Places at which a quick ride looks for kinks. */
const LOOKS = 48

/** Calculates a ride; null where something stops it at a place looked at. `rough` leaves the kinks where they are. */
export function quickRide(one: Ride, rough = false): QuickMove | null {
  const { span } = one.motion
  let [peakEffort, peakCurrent, stops] = [Number.NEGATIVE_INFINITY, 0, false]
  let [minEffort, minCurrent, minVoltage] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY]
  const perRate = (x: number) => {
    const point = ridePoint(one, x)
    if (point.trouble !== "none") stops = true
    if (point.effort > peakEffort) peakEffort = point.effort
    if (point.current > peakCurrent) peakCurrent = point.current
    if (point.effort < minEffort) minEffort = point.effort
    if (point.current < minCurrent) minCurrent = point.current
    if (point.voltage < minVoltage) minVoltage = point.voltage
    return 1 / point.rate
  }
  perRate(0)
  perRate(span)
  if (stops) return null
  const splits = [0, ...(rough ? [] : kinks(one, LOOKS)), span]
  let duration = 0
  for (let i = 1; i < splits.length && !stops; i++) {
    const [a, b] = [splits[i - 1] as number, splits[i] as number]
    if (b > a) duration += rough ? threePanels(perRate, a, b) : adaptive(perRate, a, b)
  }
  return stops ? null : { duration, peakEffort, peakCurrent, minEffort, minCurrent, minVoltage }
}

/** Five Gauss points in each third. */
function threePanels(f: (x: number) => number, a: number, b: number): number {
  const width = (b - a) / 3
  let sum = 0
  for (let p = 0; p < 3; p++) for (const [x, weight] of gaussFive) sum += ((weight * width) / 2) * f(a + width * (p + 0.5 + x / 2))
  return sum
}

function adaptive(f: (x: number) => number, a: number, b: number): number {
  const write = (x: number, out: Float64Array) => {
    out[0] = f(x)
  }
  return integrateVector(write, a, b, 1, 1e-10).value[0] as number
}

/** Seconds that a motion takes, where nothing stops it; null where something does. */
export function seconds(one: Ride): number | null {
  return firstStop(one, LOOKS) === null ? (quickRide(one)?.duration ?? null) : null
}
