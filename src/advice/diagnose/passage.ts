// One motion of a built rig on one way, the others standing still: how far it gets, how long it takes, and what a meter shows.
import { gaussFive } from "../../numeric/index.js"
import { effortAt, effortState, type MotionModel, rateFor, type Surroundings, type Way } from "../../rig/run/motion-model.js"
import { atEffort, type Feed, type Ride, ride, ridePoint, travelOf } from "../../rig/run/ride.js"
import { settle } from "../../rig/supply/settle.js"
import { type SupplyModel, type SupplyState, supplyModel, supplyState } from "../../rig/supply/tree.js"
import type { Built, Moving, Power } from "./built.js"

/** What meters show over the tree, by the place of bus and source. */
export interface Shown {
  readonly volts: Float64Array
  readonly inputVolts: Float64Array
  readonly runAmps: Float64Array
  readonly outAmps: Float64Array
  readonly sourceAmps: Float64Array
  readonly sourceVolts: Float64Array
  /** Current of all drives of the motion, A. */
  drives: number
  /** Heat in its drives' windings, W. */
  winding: number
}

/** One way of one motion. */
export interface Passage {
  /** Share of its way that it makes; 1 where it comes through. */
  readonly reached: number
  /** Whether it stops because its supply gives up on the way. */
  readonly off: boolean
  /** Whether its drives have a voltage: what stands and is fed hums. */
  readonly fed: boolean
  /** Whether a source or converter comes to its limit on the way. */
  readonly limited: boolean
  /** Seconds until it is through, or blocked; infinite where it stalls. */
  readonly time: number
  /** Mean while it moves; where it does not move, what stands stalled. */
  readonly moving: Shown
  /** Switched on and not moving, where it stands last. */
  stalled(): Shown
}

const PANELS = 2
/** Places on the way, as shares of it, with their weights; the ends are looked at, without one. */
const places: readonly (readonly [number, number])[] = [
  [0, 0],
  ...Array.from({ length: PANELS }, (_, p) =>
    gaussFive.map(([x, weight]) => [(p + 0.5 + x / 2) / PANELS, weight / 2 / PANELS] as const),
  ).flat(),
  [1, 0],
]

/** Efforts of a motion at those places. */
interface Efforts {
  readonly around: Surroundings
  readonly values: Float64Array
  readonly stops: boolean
}
const efforts = [new WeakMap<MotionModel, Efforts>(), new WeakMap<MotionModel, Efforts>()] as const

/** What a motion asks at the places of a way: whatever feeds it, so that a fault of the supply asks it once. */
function effortsOf(model: MotionModel, way: Way, around: Surroundings): Efforts {
  const kept = efforts[way === 1 ? 0 : 1]
  const found = kept.get(model)
  if (found && found.around === around) return found
  const state = effortState()
  let stops = false
  const values = Float64Array.from(places, ([share]) => {
    effortAt(model, model.span * (way === 1 ? share : 1 - share), way, around, state)
    if (state.trouble !== "none") stops = true
    return state.effort
  })
  const made = { around, values, stops }
  kept.set(model, made)
  return made
}

const models = new WeakMap<Power, SupplyModel>()
export function treeModel(power: Power): SupplyModel {
  const found = models.get(power)
  if (found) return found
  const made = supplyModel(power)
  models.set(power, made)
  return made
}

export const emptyShown = (model: SupplyModel | null): Shown => ({
  volts: new Float64Array(model?.names.length ?? 0),
  inputVolts: new Float64Array(model?.names.length ?? 0),
  runAmps: new Float64Array(model?.names.length ?? 0),
  outAmps: new Float64Array(model?.names.length ?? 0),
  sourceAmps: new Float64Array(model?.sources.length ?? 0),
  sourceVolts: new Float64Array(model?.sources.length ?? 0),
  drives: 0,
  winding: 0,
})

/** Adds what the tree shows now, `weight` times. */
function add(shown: Shown, model: SupplyModel, state: SupplyState, weight: number): void {
  for (let i = 0; i < model.names.length; i++) {
    shown.volts[i] = (shown.volts[i] as number) + weight * Math.max(0, state.volts[i] as number)
    shown.inputVolts[i] = (shown.inputVolts[i] as number) + weight * Math.max(0, state.inputVolts[i] as number)
    shown.runAmps[i] = (shown.runAmps[i] as number) + weight * (state.runAmps[i] as number)
    shown.outAmps[i] = (shown.outAmps[i] as number) + weight * (state.outAmps[i] as number)
  }
  model.sources.forEach((source, s) => {
    const amps = state.sourceAmps[s] as number
    shown.sourceAmps[s] = (shown.sourceAmps[s] as number) + weight * amps
    shown.sourceVolts[s] = (shown.sourceVolts[s] as number) + weight * (source.openVoltage - source.resistance * amps)
  })
}

/** Buses that get nothing: cut off, behind one that is, or on a source that gives nothing. */
function deadBuses(built: Built, model: SupplyModel): readonly boolean[] {
  const dead = model.names.map(
    (name, i) => built.dead.includes(name) || built.dead.includes(model.sources[model.sourceOf[i] as number]?.name ?? ""),
  )
  for (const i of model.order) if ((model.above[i] as number) >= 0 && dead[model.above[i] as number]) dead[i] = true
  return dead
}

/** What stands at rest with power on: every drive and load draws what it draws standing still. */
export function atRest(built: Built): Shown {
  const { power, motions } = built
  if (!power) return emptyShown(null)
  const model = treeModel(power)
  const drawn = standby(built, model)
  const dead = deadBuses(built, model)
  const state = supplyState(model)
  settle(model, drawn, state)
  const shown = emptyShown(model)
  if (state.failed >= 0) open(shown, model)
  else add(shown, model, state, 1)
  for (const one of motions) shown.drives += one.model.drives * one.model.drive.standbyCurrent
  return cutOff(built, shown, model, dead)
}

/** Sources at their open voltage, nothing behind them. */
function open(shown: Shown, model: SupplyModel): void {
  model.sources.forEach((source, s) => {
    shown.sourceVolts[s] = source.openVoltage
  })
}

/** Zero wherever nothing arrives. */
function cutOff(built: Built, shown: Shown, model: SupplyModel, dead: readonly boolean[]): Shown {
  if (!built.dead.length) return shown
  dead.forEach((gone, i) => {
    if (!gone) return
    for (const list of [shown.volts, shown.inputVolts, shown.runAmps, shown.outAmps]) list[i] = 0
  })
  model.sources.forEach(({ name }, s) => {
    if (built.dead.includes(name)) shown.sourceVolts[s] = 0
    const feeding = model.names.some((_, i) => model.sourceOf[i] === s && !dead[i])
    if (!feeding) shown.sourceAmps[s] = 0
  })
  return shown
}

/** Current at each bus of drives that stand still. */
function standby({ motions }: Built, model: SupplyModel, but = -1): Float64Array {
  const drawn = new Float64Array(model.names.length)
  motions.forEach(({ si, model: one }, i) => {
    const bus = model.names.indexOf(si.bus ?? "")
    if (i !== but && bus >= 0) drawn[bus] = (drawn[bus] as number) + one.drives * one.drive.standbyCurrent
  })
  return drawn
}

function feedOf(built: Built, index: number): Feed {
  const one = built.motions[index] as Moving
  const { power } = built
  if (!power || one.si.bus === null) return { voltage: one.model.drive.ratedVoltage }
  const model = treeModel(power)
  return { model, bus: model.names.indexOf(one.si.bus), others: standby(built, model, index) }
}

/** A motion of a built rig on one way. */
export function passage(built: Built, index: number, way: Way): Passage {
  const one = built.motions[index] as Moving
  const good = sidePassage(built, index, way, one.model)
  if (!one.weak) return good
  const weak = sidePassage(built, index, way, one.weak)
  // each side has half of the drives: a meter in the common line shows the mean of both
  const both = (a: Shown, b: Shown): Shown => {
    const mean = (x: Float64Array, y: Float64Array) => x.map((v, i) => (v + (y[i] as number)) / 2)
    return {
      volts: mean(a.volts, b.volts),
      inputVolts: mean(a.inputVolts, b.inputVolts),
      runAmps: mean(a.runAmps, b.runAmps),
      outAmps: mean(a.outAmps, b.outAmps),
      sourceAmps: mean(a.sourceAmps, b.sourceAmps),
      sourceVolts: mean(a.sourceVolts, b.sourceVolts),
      drives: (a.drives + b.drives) / 2,
      winding: (a.winding + b.winding) / 2,
    }
  }
  return {
    reached: Math.min(good.reached, weak.reached),
    off: good.off || weak.off,
    fed: good.fed,
    limited: good.limited || weak.limited,
    time: Math.max(good.time, weak.time),
    moving: both(good.moving, weak.moving),
    stalled: () => both(good.stalled(), weak.stalled()),
  }
}

/** Seconds by which the weak side of a motion is behind the other one. */
export function sideDifference(built: Built, index: number, way: Way): number {
  const one = built.motions[index] as Moving
  if (!one.weak) return 0
  return sidePassage(built, index, way, one.weak).time - sidePassage(built, index, way, one.model).time
}

function sidePassage(built: Built, index: number, way: Way, motion: MotionModel): Passage {
  const one = built.motions[index] as Moving
  const feed = feedOf(built, index)
  const ridden = ride(motion, way, built.around, feed, null)
  const tree = "model" in feed ? feed.model : null
  const dead = tree ? deadBuses(built, tree) : []
  const finish = (shown: Shown) => (tree ? cutOff(built, shown, tree, dead) : shown)
  const gone = "model" in feed && dead[feed.bus] === true
  // what is lost at the start of a way is missing at its end
  const way1 = Math.max(0, 1 - one.lost / motion.span)
  if (gone || one.cut || one.wrongWay !== "none") {
    const idle = () => (gone || one.cut ? { ...atRest(built), drives: 0 } : finish(stalledAt(ridden, tree)))
    return { reached: 0, off: false, fed: !gone && !one.cut, limited: false, time: Number.POSITIVE_INFINITY, moving: idle(), stalled: idle }
  }
  const table = effortsOf(motion, way, built.around)
  let [time, stops, limited] = [0, table.stops, false]
  const shown = emptyShown(tree)
  if (!stops)
    for (let k = 0; k < places.length; k++) {
      const [, weight] = places[k] as readonly [number, number]
      const point = atEffort(ridden, table.values[k] as number)
      if (point.limitedBy !== "none") limited = true
      if (point.trouble !== "none") {
        stops = true
        break
      }
      time += note(ridden, tree, shown, (weight * motion.span) / point.rate)
    }
  const stopped = stops ? stopOf(ridden) : { share: 1, off: false }
  const share = Math.min(stopped.share, one.blocked, way1)
  if (share >= 1 && !stops) return whole(ridden, tree, shown, time, limited, finish)
  // again over the part that it makes; close to a stall it only creeps
  const part = emptyShown(tree)
  const stalls = stops && stopped.share <= Math.min(one.blocked, way1)
  const upTo = stalls ? 0.97 * share : share
  time = 0
  if (upTo > 1e-3)
    for (const [at, weight] of places) {
      if (weight === 0) continue
      const point = ridePoint(ridden, travelOf(ridden, at * upTo * motion.span))
      if (point.trouble === "none") time += note(ridden, tree, part, (weight * upTo * motion.span) / point.rate)
    }
  const last = () => {
    if (stopped.off && stalls) return finish(offShown(built))
    ridePoint(ridden, travelOf(ridden, share * motion.span))
    return finish(stalledAt(ridden, tree))
  }
  const free = one.lost > 0 ? one.lost / Math.max(1e-9, atEffort(ridden, 0).rate) : 0
  return {
    reached: share,
    off: stalls && stopped.off,
    fed: !(stalls && stopped.off),
    limited,
    time: stalls ? Number.POSITIVE_INFINITY : time + free,
    moving: time > 0 ? finish(scaled(part, time)) : last(),
    stalled: last,
  }
}

function whole(
  ridden: Ride,
  tree: SupplyModel | null,
  shown: Shown,
  time: number,
  limited: boolean,
  finish: (shown: Shown) => Shown,
): Passage {
  return {
    reached: 1,
    off: false,
    fed: true,
    limited,
    time,
    moving: finish(scaled(shown, time)),
    // at its end a stop holds it
    stalled: () => finish(stalledAt(ridden, tree)),
  }
}

/** Adds the state of a ride for some seconds. */
function note(one: Ride, tree: SupplyModel | null, shown: Shown, seconds: number): number {
  if (seconds === 0) return 0
  const { motion, point, line } = one
  if (tree && one.supply) add(shown, tree, one.supply, seconds)
  shown.drives += seconds * motion.drives * point.current
  shown.winding += seconds * motion.drives * (point.current - line.circuitCurrent) ** 2 * line.windingResistance
  return seconds
}

function scaled(shown: Shown, by: number): Shown {
  for (const list of [shown.volts, shown.inputVolts, shown.runAmps, shown.outAmps, shown.sourceAmps, shown.sourceVolts])
    for (let i = 0; i < list.length; i++) list[i] = (list[i] as number) / by
  shown.drives /= by
  shown.winding /= by
  return shown
}

/** What everything shows after the supply has switched off. */
function offShown(built: Built): Shown {
  const model = built.power && treeModel(built.power)
  return emptyShown(model)
}

const LOOKS = 32
const HALVINGS = 8

/** The first place that stops a ride, as a share of its way. */
function stopOf(one: Ride): { readonly share: number; readonly off: boolean } {
  const { span } = one.motion
  const isOff = (trouble: string) => trouble === "insufficient-power" || trouble === "no-supply"
  for (let i = 0; i <= LOOKS; i++) {
    const s = (span * i) / LOOKS
    const { trouble } = ridePoint(one, travelOf(one, s))
    if (trouble === "none") continue
    if (i === 0) return { share: 0, off: isOff(trouble) }
    let [passes, stops, why] = [s - span / LOOKS, s, trouble]
    for (let k = 0; k < HALVINGS; k++) {
      const mid = (passes + stops) / 2
      const found = ridePoint(one, travelOf(one, mid)).trouble
      if (found === "none") passes = mid
      else [stops, why] = [mid, found]
    }
    return { share: stops / span, off: isOff(why) }
  }
  return { share: 1, off: false }
}

/** A drive switched on that does not turn: its winding alone sets the current, up to what the driver and the supply give. */
function stalledAt(one: Ride, tree: SupplyModel | null): Shown {
  const { motion, feed, supply, drawn, line } = one
  const { drive, drives } = motion
  const shown = emptyShown(tree)
  const most = drive.currentLimit ?? Number.POSITIVE_INFINITY
  const at = (volts: number) => Math.min(most, line.circuitCurrent + Math.max(0, volts) / line.windingResistance)
  if (!("model" in feed) || !tree || !supply) {
    shown.drives = drives * at(drive.ratedVoltage)
    shown.winding = shown.drives * drive.ratedVoltage
    return shown
  }
  const volts = (amps: number) => {
    drawn.set(feed.others)
    drawn[feed.bus] = (drawn[feed.bus] as number) + drives * amps
    settle(tree, drawn, supply)
    return supply.failed >= 0 ? 0 : (supply.volts[feed.bus] as number)
  }
  let [low, high] = [0, at(volts(0))]
  for (let k = 0; k < 30 && high - low > 1e-6 * high; k++) {
    const amps = (low + high) / 2
    if (at(volts(amps)) > amps) low = amps
    else high = amps
  }
  volts(low)
  if (supply.failed >= 0) open(shown, tree)
  else add(shown, tree, supply, 1)
  shown.drives = drives * low
  shown.winding = drives * (low - line.circuitCurrent) ** 2 * line.windingResistance
  return shown
}

/** Rate of a drive without a load at a voltage: what a row of the table compares itself with. */
export const freeRate = ({ drive }: MotionModel): number => rateFor(drive.ratedVoltage, drive.frictionCurrent + drive.circuitCurrent, drive)
