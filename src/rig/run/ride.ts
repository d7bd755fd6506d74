// One motion on one way: force sets the current, the supply sets the voltage, the motor sets the rate; the time is ∫dx/rate.

import { goldenMinimum, pieceAt } from "../../numeric/index.js"
import type { DriveLine } from "../drives/drive.js"
import { settle } from "../supply/settle.js"
import { type Limit, type SupplyModel, type SupplyState, supplyState } from "../supply/tree.js"
import { type EffortCurve, effortIn, inertiaIn } from "./effort-curve.js"
import {
  currentFor,
  type EffortState,
  effortAt,
  effortState,
  type MotionModel,
  rateFor,
  type Surroundings,
  type Trouble,
  type Way,
} from "./motion-model.js"

/** What feeds a motion: a voltage that nothing pulls down, or its bus in the tree while the others draw theirs. */
export type Feed =
  | { readonly voltage: number }
  | {
      readonly model: SupplyModel
      readonly bus: number
      /** Current that others draw at each bus, A. */
      readonly others: Float64Array
    }

/** A motion on one way, ready to be asked at any travel. */
export interface Ride {
  readonly motion: MotionModel
  readonly way: Way
  readonly around: Surroundings
  readonly feed: Feed
  /** What it asks of one drive along its travel; null: nothing, which tells how long the drive alone takes. */
  readonly curve: EffortCurve | null
  readonly effort: EffortState
  readonly supply: SupplyState | null
  readonly drawn: Float64Array
  /** Line of its drive at the voltage looked at. */
  readonly line: DriveLine
  readonly point: RidePoint
}

/** State at one travel; written anew by every call of {@link ridePoint}. */
export interface RidePoint {
  travel: number
  /** Effort against the motion at one drive. */
  effort: number
  /** Current of one drive, A. */
  current: number
  /** Voltage at the drive, V. */
  voltage: number
  /** Rate of the drive, m/s or rad/s. */
  rate: number
  limitedBy: Limit
  form: number
  trouble: Trouble
}

export function ride(motion: MotionModel, way: Way, around: Surroundings, feed: Feed, curve: EffortCurve | null): Ride {
  const tree = "model" in feed ? feed.model : null
  const { effortConstant, backEmfConstant, windingResistance, frictionCurrent, circuitCurrent } = motion.drive
  return {
    motion,
    way,
    around,
    feed,
    curve,
    effort: effortState(),
    supply: tree && supplyState(tree),
    drawn: new Float64Array(tree ? tree.names.length : 0),
    line: { effortConstant, backEmfConstant, windingResistance, frictionCurrent, circuitCurrent },
    point: { travel: 0, effort: 0, current: 0, voltage: 0, rate: 0, limitedBy: "none", form: 0, trouble: "none" },
  }
}

/** Settles the supply for a current of each drive. */
function feeds({ feed, motion, drawn, supply }: Ride, current: number): void {
  if (!("model" in feed) || !supply) return
  drawn.set(feed.others)
  drawn[feed.bus] = (drawn[feed.bus] as number) + motion.drives * current
  settle(feed.model, drawn, supply)
}

/** Current of one drive on its line at a voltage. */
function atVoltage({ motion, line, effort }: Ride, voltage: number): number {
  const { drive } = motion
  if (!(voltage > drive.minVoltage)) return currentFor(drive, 0, drive)
  drive.lineAt?.(voltage, line)
  return currentFor(drive, effort.effort, line)
}

/** The state of a motion at a travel of its drive. */
export function ridePoint(one: Ride, travel: number): RidePoint {
  const { motion, effort, point } = one
  point.travel = travel
  point.limitedBy = "none"
  point.trouble = "none"
  effortAt(motion, travel, one.way, one.around, effort)
  point.trouble = effort.trouble
  if (effort.trouble !== "none") {
    point.rate = Number.NaN
    return point
  }
  return driven(one)
}

/** The same from the table of its effort, which nothing of the motion itself stops. */
export function tabledPoint(one: Ride, travel: number): RidePoint {
  const { curve, effort, point } = one
  point.travel = travel
  effort.trouble = "none"
  if (curve) {
    const { table } = curve
    if (!table) throw new RangeError("A motion that stops has no table of its effort: what stops it is told before.")
    effort.effort = effortIn(table, travel)
    effort.inertia = inertiaIn(table, travel)
    effort.form = pieceAt(table, travel).form
  } else {
    effort.effort = 0
    effort.inertia = one.motion.drive.inertia
    effort.form = 0
  }
  return driven(one)
}

/** The state of a ride at an effort of one drive, wherever that is asked. */
export function atEffort(one: Ride, effort: number): RidePoint {
  one.effort.effort = effort
  return driven(one)
}

/** The state of a motion at the effort that its record holds. */
function driven(one: Ride): RidePoint {
  const { motion, feed, effort, point, supply } = one
  const { drive } = motion
  point.limitedBy = "none"
  point.trouble = "none"
  point.effort = effort.effort
  const { line } = one
  let form = effort.form
  point.current = currentFor(drive, effort.effort, line)
  if ("voltage" in feed) {
    point.voltage = feed.voltage
    if (drive.lineAt) point.current = atVoltage(one, feed.voltage)
  } else {
    const { model, bus } = feed
    const state = supply as SupplyState
    feeds(one, point.current)
    let settled = drive.lineAt === null
    // the line follows the voltage and the voltage the current: each round is a small share of the one before
    for (let round = 0; round < 200 && !settled && state.failed < 0; round++) {
      const before = point.current
      point.current = atVoltage(one, state.volts[bus] as number)
      feeds(one, point.current)
      settled = Math.abs(point.current - before) <= 1e-14 * (Math.abs(before) + Math.abs(point.current))
    }
    if (state.failed < 0 && !settled) {
      // current and voltage never agree: the drive pulls its own supply down
      point.trouble = "insufficient-power"
      point.rate = Number.NaN
      return point
    }
    if (state.failed >= 0) {
      point.trouble = state.limits[state.failed] === "no-input" ? "no-supply" : "insufficient-power"
      point.limitedBy = state.limits[state.failed] as Limit
      point.rate = Number.NaN
      return point
    }
    point.voltage = state.volts[bus] as number
    point.limitedBy = state.limits[bus] as Limit
    for (let i = 0; i < model.breaks.length; i++) {
      const list = model.breaks[i] as readonly number[]
      for (let k = 0; k < list.length; k++) if ((state.outAmps[i] as number) > (list[k] as number)) form = (form * 3 + i + k + 1) % 1000003
      form = (form * 7 + limitNumber[state.limits[i] as Limit]) % 1000003
    }
  }
  const { current } = point
  point.form = form * 2 + (current > 0 ? 1 : 0)
  const limit = drive.currentLimit
  point.rate = point.voltage > drive.minVoltage ? rateFor(point.voltage, current, line) : 0
  if (!(point.rate > 0) || (limit !== null && current > limit)) {
    point.trouble = point.limitedBy === "source-current" || point.voltage <= 0 ? "insufficient-power" : "insufficient-effort"
    point.rate = limit !== null && current > limit ? Math.min(0, point.rate) : point.rate
  }
  return point
}

const limitNumber: Readonly<Record<Limit, number>> = {
  none: 0,
  "input-current": 1,
  "output-current": 2,
  "source-power": 3,
  "input-voltage": 4,
  "source-current": 5,
  "no-input": 6,
  "too-much-power": 6,
}

/** Places at which a motion is looked at before it is integrated. */
export const LOOKS = 160

/** Travel on the way: 0 at its own start. */
export const travelOf = ({ motion, way }: Ride, s: number) => (way === 1 ? s : motion.span - s)

/** What stops a motion, and at which travel. */
export interface Stop {
  readonly travel: number
  readonly trouble: Trouble
}

/** The first place that stops a motion between two travels along its way, of which it passes the first and not the second. */
export function stopBetween(one: Ride, passes: number, stops: number): Stop {
  let [low, high] = [passes, stops]
  for (let k = 0; k < 60 && high - low > 1e-13 * one.motion.span; k++) {
    const mid = (low + high) / 2
    if (ridePoint(one, travelOf(one, mid)).trouble === "none") low = mid
    else high = mid
  }
  return { travel: travelOf(one, high), trouble: ridePoint(one, travelOf(one, high)).trouble }
}

/** The first place that stops a motion, as seen on its way; null where it passes. */
export function firstStop(one: Ride, looks = LOOKS): Stop | null {
  const { curve, motion } = one
  if (curve === null) return atEffort(one, 0).trouble === "none" ? null : { travel: travelOf(one, 0), trouble: one.point.trouble }
  // more effort asks for more current, and more help too where gears lock: what passes both ends passes all between
  const passes = (effort: number) => atEffort(one, effort).trouble === "none"
  if (curve.table && passes(curve.maxEffort) && passes(curve.minEffort)) return null
  const seen = stopSeen(one, looks)
  return seen || curve.stopsAt === null ? seen : stopBefore(one, curve.stopsAt, motion.span / looks)
}

/** The first place that stops a motion at or before a travel that does, looked for one width back along its way. */
export function stopBefore(one: Ride, travel: number, width: number): Stop {
  const along = one.way === 1 ? travel : one.motion.span - travel
  return stopBetween(one, Math.max(0, along - width), along)
}

/** The first place that stops a motion, looked for along its way. */
function stopSeen(one: Ride, looks: number): Stop | null {
  const { span } = one.motion
  const { point, effort } = one
  const width = span / looks
  const lines = hasLines(one.motion)
  // between two looks it may stop as well: where it is slower than on both sides, or a line less tight
  const rate = (s: number) => (ridePoint(one, travelOf(one, s)).trouble === "none" ? point.rate : Number.NEGATIVE_INFINITY)
  const tightness = (s: number) => {
    effortAt(one.motion, travelOf(one, s), one.way, one.around, effort)
    return effort.tightness
  }
  let [rateTwo, rateOne, tightTwo, tightOne] = [
    Number.NEGATIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
  ]
  for (let i = 0; i <= looks; i++) {
    const s = width * i
    if (ridePoint(one, travelOf(one, s)).trouble !== "none")
      return i === 0 ? { travel: travelOf(one, 0), trouble: point.trouble } : stopBetween(one, s - width, s)
    const [rateHere, tightHere] = [point.rate, effort.tightness]
    const lows: number[] = []
    if (rateOne < rateTwo && rateOne <= rateHere) lows.push(goldenMinimum(rate, s - 2 * width, s))
    if (lines && tightOne < tightTwo && tightOne <= tightHere) lows.push(goldenMinimum(tightness, s - 2 * width, s))
    for (const low of lows) if (ridePoint(one, travelOf(one, low)).trouble !== "none") return stopBetween(one, s - 2 * width, low)
    ;[rateTwo, rateOne, tightTwo, tightOne] = [rateOne, rateHere, tightOne, tightHere]
  }
  return null
}

const hasLines = ({ chain, parts }: MotionModel) =>
  chain.some((e) => e.transmits !== "both-ways") || parts.some((p) => p.own.some((e) => e.transmits !== "both-ways"))

/** The largest effort that a drive gives at a travel on its feed, and the largest current that its bus carries there. */
export function mostAt(one: Ride, travel: number): { readonly effort: number; readonly current: number } {
  const { feed, supply, motion } = one
  const { effort: needed, current } = ridePoint(one, travel)
  const largest = (from: number, holds: (x: number) => boolean) => {
    let [low, high] = [0, from]
    for (let k = 0; k < 60; k++) {
      const mid = (low + high) / 2
      if (holds(mid)) low = mid
      else high = mid
    }
    return low
  }
  const most = largest(Math.max(0, needed), (e) => atEffort(one, e).trouble === "none")
  const carried =
    "model" in feed && supply
      ? largest(motion.drives * Math.max(0, current), (amps) => {
          feeds(one, amps / motion.drives)
          return supply.failed < 0 && (supply.volts[feed.bus] as number) > 0
        })
      : Number.POSITIVE_INFINITY
  ridePoint(one, travel)
  return { effort: most, current: carried }
}

/** Places where the table of a ride's effort changes form. */
export function formChanges({ curve }: Ride): number[] {
  const pieces = curve?.table?.pieces ?? []
  return pieces.flatMap((piece, i) => (i > 0 && piece.form !== pieces[i - 1]?.form ? [piece.a] : []))
}
