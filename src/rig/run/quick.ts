// A motion's time and peaks at Gauss points between its kinks: fast enough for those who try thousands.
import { kinks, type Ride, ridePoint } from "./ride.js"

/** A motion calculated fast. */
export interface QuickMove {
  readonly duration: number
  /** Maximum effort at one drive, N or N·m, and of its current, A. */
  readonly peakEffort: number
  readonly peakCurrent: number
  readonly minVoltage: number
}

// Gauss–Legendre: Abramowitz and Stegun, Handbook of Mathematical Functions, 1964, table 25.4
const FIVE = [
  [-0.906179845938664, 0.236926885056189],
  [-0.538469310105683, 0.478628670499366],
  [0, 0.568888888888889],
  [0.538469310105683, 0.478628670499366],
  [0.906179845938664, 0.236926885056189],
] as const
const EIGHT = [
  [-0.9602898564975363, 0.1012285362903763],
  [-0.7966664774136267, 0.2223810344533745],
  [-0.525532409916329, 0.3137066458778873],
  [-0.1834346424956498, 0.362683783378362],
  [0.1834346424956498, 0.362683783378362],
  [0.525532409916329, 0.3137066458778873],
  [0.7966664774136267, 0.2223810344533745],
  [0.9602898564975363, 0.1012285362903763],
] as const

/** Calculates a ride; null where something stops it at a place looked at. `rough` leaves the kinks where they are. */
export function quickRide(one: Ride, rough = false): QuickMove | null {
  const { span } = one.motion
  const splits = [0, ...(rough ? [] : kinks(one, 24)), span]
  const table = rough ? FIVE : EIGHT
  const panels = rough ? 3 : 4
  let [duration, peakEffort, peakCurrent, minVoltage] = [0, Number.NEGATIVE_INFINITY, 0, Number.POSITIVE_INFINITY]
  const look = (x: number, weight: number) => {
    const point = ridePoint(one, x)
    if (point.trouble !== "none") return false
    duration += weight / point.rate
    if (point.effort > peakEffort) peakEffort = point.effort
    if (point.current > peakCurrent) peakCurrent = point.current
    if (point.voltage < minVoltage) minVoltage = point.voltage
    return true
  }
  if (!look(0, 0) || !look(span, 0)) return null
  for (let i = 1; i < splits.length; i++) {
    const [a, b] = [splits[i - 1] as number, splits[i] as number]
    const width = (b - a) / panels
    if (!(width > 0)) continue
    for (let p = 0; p < panels; p++)
      for (const [x, weight] of table) if (!look(a + width * (p + 0.5 + x / 2), (weight * width) / 2)) return null
  }
  return { duration, peakEffort, peakCurrent, minVoltage }
}
