// A motion's time and peaks alone: fast enough for those who try thousands.
import { gaussFive, integralOf, integralOver, type Piece, type Piecewise, pieceAt, piecewise, valueAt } from "../../numeric/index.js"
import type { EffortCurve } from "./effort-curve.js"
import { fedTable } from "./fed.js"
import { atEffort, firstStop, formChanges, type Ride, ridePoint, type Stop, stopBefore, tabledPoint } from "./ride.js"

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

/** Places at which a quick ride is looked at for what stops it. */
export const QUICK_LOOKS = 48

/** A ride calculated fast, or what stops it. */
export type QuickRide = { readonly quick: QuickMove; readonly stop: null } | { readonly quick: null; readonly stop: Stop }

/** Calculates a ride from its table. */
export function quickRide(one: Ride): QuickRide {
  const { motion, curve } = one
  const stop = firstStop(one, QUICK_LOOKS)
  if (stop) return { quick: null, stop }
  const tables = curve?.table ?? null
  const fed = fedTable(one)
  const quick = tables && fed ? fromTables(one, tables, fed) : null
  if (quick) return { quick, stop: null }
  const seen = peaks()
  for (const effort of curve ? [curve.maxEffort, curve.minEffort] : [0, 0]) seen.note(atEffort(one, effort))
  const perRate = (x: number, out: Float64Array) => {
    const point = tabledPoint(one, x)
    if (point.trouble !== "none") return -1
    seen.note(point)
    out[0] = 1 / point.rate
    return point.form
  }
  const { pieces, failed } = piecewise(perRate, 0, motion.span, { nodes: 16, relative: [LET_GO], floor: [0], splits: formChanges(one) })
  if (failed !== null) return { quick: null, stop: stopBefore(one, failed, motion.span / QUICK_LOOKS) }
  const duration = pieces.reduce((sum, piece) => sum + integralOver(piece, 1, 0), 0)
  return { quick: { duration, peakEffort: curve?.maxEffort ?? 0, minEffort: curve?.minEffort ?? 0, ...seen.met() }, stop: null }
}

/** Last coefficients of the time that are let go. */
const LET_GO = 1e-10

/** Keeps the largest and the smallest that is met on a ride. */
function peaks() {
  let [peakCurrent, minCurrent, minVoltage] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY]
  return {
    note({ current, voltage }: { readonly current: number; readonly voltage: number }) {
      peakCurrent = Math.max(peakCurrent, current)
      minCurrent = Math.min(minCurrent, current)
      minVoltage = Math.min(minVoltage, voltage)
    },
    met: () => ({ peakCurrent, minCurrent, minVoltage }),
  }
}

/** A ride from the table of its effort and that of its feed: the nodes of the first are asked of the second. */
function fromTables(one: Ride, efforts: Piecewise, fed: Piecewise): QuickMove | null {
  const { maxEffort, minEffort } = one.curve as EffortCurve
  const seen = peaks()
  const at = { current: 0, voltage: 0 }
  let met = fed.pieces[0] as Piece
  const perRate = (effort: number) => {
    if (effort < met.a || effort > met.b) met = pieceAt(fed, effort)
    at.current = valueAt(met, fed.size, 1, effort)
    at.voltage = valueAt(met, fed.size, 2, effort)
    seen.note(at)
    return 1 / valueAt(met, fed.size, 0, effort)
  }
  for (const effort of [maxEffort, minEffort]) perRate(effort)
  let duration = 0
  for (const piece of efforts.pieces) {
    const whole = integralOf(piece, efforts.size, 0, perRate, LET_GO)
    if (whole !== null) {
      duration += whole
      continue
    }
    // the feed changes form inside the piece, or the drive nearly stalls there
    const { pieces, failed, rest } = piecewise(
      (x, out) => {
        out[0] = perRate(valueAt(piece, efforts.size, 0, x))
        return fed.pieces.indexOf(met)
      },
      piece.a,
      piece.b,
      { nodes: 16, relative: [LET_GO], floor: [0] },
    )
    if (failed !== null || rest > 1) return null
    duration += pieces.reduce((sum, part) => sum + integralOver(part, 1, 0), 0)
  }
  return { duration, peakEffort: maxEffort, minEffort, ...seen.met() }
}

/** The same from fifteen places and both ends, kinks left where they are: no table. */
export function roughRide(one: Ride): QuickMove | null {
  const { span } = one.motion
  let [peakEffort, peakCurrent, stops] = [Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY, false]
  let [minEffort, minCurrent, minVoltage] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY]
  const perRate = (x: number) => {
    const { trouble, effort, current, voltage, rate } = ridePoint(one, x)
    if (trouble !== "none") stops = true
    peakEffort = Math.max(peakEffort, effort)
    minEffort = Math.min(minEffort, effort)
    peakCurrent = Math.max(peakCurrent, current)
    minCurrent = Math.min(minCurrent, current)
    minVoltage = Math.min(minVoltage, voltage)
    return 1 / rate
  }
  perRate(0)
  perRate(span)
  const width = span / 3
  let duration = 0
  for (let p = 0; p < 3 && !stops; p++)
    for (const [x, weight] of gaussFive) duration += ((weight * width) / 2) * perRate(width * (p + 0.5 + x / 2))
  return stops ? null : { duration, peakEffort, peakCurrent, minEffort, minCurrent, minVoltage }
}

/** Seconds that a motion takes, where nothing stops it; null where something does. */
export function seconds(one: Ride): number | null {
  if (one.curve) return quickRide(one).quick?.duration ?? null
  const { rate, trouble } = atEffort(one, 0)
  return trouble === "none" ? one.motion.span / rate : null
}
