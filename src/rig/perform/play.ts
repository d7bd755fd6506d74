// A performance at an instant: what every motion is told to do, what feeds it, and how fast its state changes.

import { standardGravity } from "../../linkage/index.js"
import { openCircuitVoltage } from "../../pack/index.js"
import type { Triple } from "../mechanisms/mechanism.js"
import type { MotionModel } from "../run/motion-model.js"
import type { Situation } from "../run/situation.js"
import { type Feeder, feed, feederOf, type Motor, motorOf, type SupplyPower, supplyPower } from "./feed.js"
import {
  accelerates,
  asks,
  inertialPower,
  kineticOf,
  liftingPower,
  type Machine,
  machineOf,
  type Pull,
  type Sense,
  stand,
} from "./machine.js"
import type { StageSi } from "./types.js"

/** What a motion does: 1 out, −1 back, 0 stands still, held by friction, its gears or a stop. */
export type Mode = Sense | 0

/** A motion as it is driven; written by the run. */
export interface Actor {
  readonly index: number
  readonly machine: Machine
  readonly motor: Motor
  /** Travels between which it can go. */
  readonly low: number
  readonly high: number
  /** Places on its travel where a ratio jumps. */
  readonly kinks: readonly number[]
  mode: Mode
  /** Where its machine stands, while it stands still. */
  stoodAt: number
  /** Where its controller sends it, whether it drives it there, which way, and since when. */
  target: number
  on: boolean
  dir: Sense
  since: number
}

/** A controller that starts anew below its voltage. */
export interface Watched {
  readonly name: string
  readonly bus: number
  readonly source: number
  readonly least: number
  /** Until when it starts anew; −1 while it works. */
  until: number
}

/** What was found at the state looked at last; `t` and `moved` are NaN where something has changed since. */
interface Memo {
  /** Time and state that the supply was looked at, and the motions. */
  t: number
  readonly y: Float64Array
  moved: number
  readonly dy: Float64Array
  readonly a: Float64Array
  /** Bus at which the supply finds no state; −1 where it has one. */
  failed: number
}

/** All that a performance is asked about. */
export interface Play {
  readonly at: Situation
  readonly stage: StageSi
  readonly actors: readonly Actor[]
  readonly feeder: Feeder | null
  readonly watched: readonly Watched[]
  /** Since when each guard carries more than its limit, and until when it is off; −1. */
  readonly over: Float64Array
  readonly offUntil: Float64Array
  /** What is held at its limit, as it was told last. */
  readonly held: Uint8Array
  /** Numbers of the state: two of each motion, one of each source. */
  readonly size: number
  readonly memo: Memo
  evaluations: number
}

/** Error from its place at which a servo gives all it has, rad; common practice, no source. */
const SERVO_BAND = (3 * Math.PI) / 180
/** Effort that a servo at rest leaves unanswered, a share of its stall torque, and rate below which it comes to rest, of its own without load. */
const SERVO_STICKS = 2e-3
export const SERVO_RESTS = 1e-4
/** Share of the voltage with which a ramped drive begins, and comes to its place; common practice, no source. */
const CREEP = 0.3

/** A performance of a rig put together. */
export function playOf(at: Situation, stage: StageSi, ends: readonly { readonly low: number; readonly high: number }[]): Play {
  const { rig, motions } = at
  const { power } = rig
  const names = power?.buses.map((b) => b.name) ?? []
  const actors = motions.map((motion, index): Actor => {
    const machine = machineOf(motion)
    const end = ends[index] as { low: number; high: number }
    return {
      index,
      machine,
      motor: motorOf(motion, names.indexOf(rig.motions[index]?.bus ?? "")),
      ...end,
      kinks: kinksOf(motion),
      mode: 0,
      stoodAt: Number.NaN,
      target: 0,
      on: motion.drive.control === "position-servo",
      dir: 1,
      since: 0,
    }
  })
  const feeder = power
    ? feederOf(
        power,
        actors.map((a) => a.motor),
      )
    : null
  const watched = (power?.loads ?? []).flatMap((load): Watched[] =>
    load.type === "controller" && load.resetVoltage > 0
      ? [
          {
            name: load.name,
            bus: names.indexOf(load.bus),
            source: feeder?.model.sourceOf[names.indexOf(load.bus)] ?? -1,
            least: load.resetVoltage,
            until: -1,
          },
        ]
      : [],
  )
  const size = 2 * actors.length + (power?.sources.length ?? 0)
  return {
    at,
    stage,
    actors,
    feeder,
    watched,
    over: new Float64Array(feeder?.guards.length ?? 0).fill(-1),
    offUntil: new Float64Array(names.length).fill(-1),
    held: new Uint8Array(names.length),
    size,
    memo: {
      t: Number.NaN,
      y: new Float64Array(size),
      moved: Number.NaN,
      dy: new Float64Array(size),
      a: new Float64Array(actors.length),
      failed: -1,
    },
    evaluations: 0,
  }
}

/** Travels at which a ratio of the common chain jumps; those of own chains are looked for between. */
function kinksOf({ chain, parts, span }: MotionModel): number[] {
  const found: number[] = []
  const walk = (list: MotionModel["chain"], before: (x: number) => number) => {
    let input = before
    for (const element of list) {
      const here = input
      for (const kink of element.kinks) {
        // every element's output grows or falls all along
        let [low, high] = [0, span]
        const rises = here(span) > here(0)
        const beyond = (x: number) => (rises ? here(x) >= kink : here(x) <= kink)
        if (beyond(0) || !beyond(span)) continue
        for (let k = 0; k < 60; k++) {
          const mid = (low + high) / 2
          if (beyond(mid)) high = mid
          else low = mid
        }
        found.push(high)
      }
      input = (x) => element.out(here(x))
    }
    return input
  }
  const common = walk(chain, (x) => x)
  for (const part of parts) walk(part.own, common)
  return found
}

/** What acts on all of it at a time: gravity as the wearer leans, the steps, a gust. */
export function pullAt({ at: { around }, stage: { steps, gust } }: Play, t: number): Pull {
  if (!steps && !gust) return around
  const [f, l, u] = around.lift
  const shaken = steps ? shakeOf(steps) * Math.sin(2 * Math.PI * steps.stepRate * t) : 0
  const lift: Triple = [f, l, u + shaken]
  let wind = around.wind
  if (gust && t > gust.at && t < gust.at + gust.duration) {
    const share = (1 - Math.cos((2 * Math.PI * (t - gust.at)) / gust.duration)) / 2
    const pressure = (AIR / 2) * (gust.windSpeed * share) ** 2
    wind = [-pressure * Math.cos(gust.from), -pressure * Math.sin(gust.from), 0]
  }
  return { lift, wind }
}

/** Density of air at 15 °C, kg/m³ (standard atmosphere). */
const AIR = 1.225

/** Acceleration of the body up and down, m/s²: the first harmonic of a walking person's force on the ground (CCIP-016, table 4.3). */
const shakeOf = ({ stepRate, shake }: NonNullable<StageSi["steps"]>) =>
  standardGravity * (shake ?? Math.min(0.56, 0.41 * (stepRate - 0.95)))

/** Whether a controller commands a motion: it hangs on the same source, or on none that is named. */
export const commands = ({ feeder }: Play, { source }: Watched, { motor }: Actor): boolean =>
  motor.bus < 0 || feeder?.model.sourceOf[motor.bus] === source

/** Share of its bus voltage that a motion's driver puts on the motor; null: its circuit is open. */
export function dutyOf(play: Play, actor: Actor, t: number, x: number): number | null {
  const { stage, watched } = play
  const { machine, target, on, dir, since } = actor
  if (!on || watched.some((one) => one.until >= 0 && commands(play, one, actor))) return null
  const { drive } = machine.motion
  if (drive.control === "position-servo") return Math.max(-1, Math.min(1, (target - x) / SERVO_BAND))
  if (drive.control !== "ramp" || stage.rampTime === 0) return dir
  // ramped down as it was ramped up: the way that this takes goes with the square of the share
  const left = Math.sqrt(Math.max(0, (2 * dir * (target - x)) / (machine.fastest * stage.rampTime)))
  return dir * Math.max(CREEP, Math.min(1, CREEP + (t - since) / stage.rampTime, left))
}

export const travelOf = (y: Float64Array, { index, machine }: Actor) => (y[2 * index] as number) * machine.motion.span
export const rateOf = (y: Float64Array, { index, machine }: Actor) => (y[2 * index + 1] as number) * machine.fastest

/** Effort of one motor towards growing travel, with what its winding carries. */
export const effortOf = ({ line, winding }: Motor) => line.backEmfConstant * winding

/** Puts supply and motors to a state at a time. */
export function fed(play: Play, t: number, y: Float64Array): Memo {
  const { memo, actors, feeder } = play
  if (memo.t === t) {
    let same = true
    for (let i = 0; i < y.length && same; i++) same = memo.y[i] === y[i]
    if (same) return memo
  }
  play.evaluations++
  memo.t = t
  memo.moved = Number.NaN
  memo.y.set(y)
  const offset = 2 * actors.length
  for (const actor of actors) {
    actor.motor.rate = actor.mode === 0 ? 0 : rateOf(y, actor)
    actor.motor.duty = dutyOf(play, actor, t, travelOf(y, actor))
  }
  memo.failed = -1
  if (!feeder) {
    for (const { motor } of actors) lone(motor)
    return memo
  }
  const { sources } = feeder.power
  for (let s = 0; s < sources.length; s++) {
    const source = sources[s] as (typeof sources)[number]
    const one = feeder.sources[s]
    if (one && source.type === "cells")
      one.openVoltage = source.series * openCircuitVoltage(source.chemistry, Math.max(0, Math.min(1, y[offset + s] as number)))
  }
  memo.failed = feed(feeder)
  if (memo.failed >= 0) for (const { motor } of actors) if (motor.bus >= 0) [motor.volts, motor.winding, motor.drawn] = [0, 0, 0]
  return memo
}

/** The same with the slopes of everything that moves and empties. */
export function evaluate(play: Play, t: number, y: Float64Array): Memo {
  const memo = fed(play, t, y)
  if (memo.moved === t) return memo
  const { actors, feeder } = play
  memo.moved = t
  memo.dy.fill(0)
  if (feeder && memo.failed < 0) {
    const { sources } = feeder.power
    for (let s = 0; s < sources.length; s++) {
      const source = sources[s] as (typeof sources)[number]
      const full =
        source.type === "cells" ? source.parallel * source.cellCapacity : source.type === "bank" ? source.energy / source.voltage : 0
      if (full > 0) memo.dy[2 * actors.length + s] = -(feeder.state.sourceAmps[s] as number) / full
    }
  }
  const pull = pullAt(play, t)
  for (const actor of actors) {
    const { index, machine, mode, motor } = actor
    memo.a[index] = 0
    if (mode === 0) continue
    const v = rateOf(y, actor)
    stand(machine, travelOf(y, actor), pull)
    const a = accelerates(machine, motor.line, v, mode, effortOf(motor))
    // gears that jam stop it at once
    const slowed = a ?? (-mode * machine.fastest) / JAMS
    memo.a[index] = slowed
    memo.dy[2 * index] = v / machine.motion.span
    memo.dy[2 * index + 1] = slowed / machine.fastest
  }
  return memo
}

/** Time in which what jams comes from full speed to rest, s. */
const JAMS = 1e-3

/** A motor on its rated voltage, since nothing feeds it. */
function lone(motor: Motor): void {
  const { motion, line, duty, rate } = motor
  const { drive } = motion
  motor.volts = drive.ratedVoltage
  const free = duty === null ? 0 : (duty * motor.volts - line.backEmfConstant * rate) / line.windingResistance
  const limit = drive.currentLimit
  motor.winding = limit !== null && Math.abs(free) > limit ? Math.sign(free) * limit : free
  motor.drawn = duty === null ? drive.standbyCurrent : line.circuitCurrent + duty * motor.winding
}

/**
 * By how much a motion that stands still is short of moving out, or back: the effort of its motor against what friction, gears
 * and load hold it with, as a share of its stall effort. Above 0 it moves.
 */
export function breaks(play: Play, actor: Actor, t: number, y: Float64Array, way: Sense): number {
  const { machine, motor, low, high } = actor
  const x = travelOf(y, actor)
  const { drive, span } = machine.motion
  if (way === 1 ? x >= high - 1e-12 * span : x <= low + 1e-12 * span) return -1
  const steady = !play.stage.steps && !play.stage.gust
  if (!steady || actor.stoodAt !== x) stand(machine, x, pullAt(play, t))
  actor.stoodAt = x
  asks(machine, motor.line, 0, way, 0)
  const { backEmfConstant, windingResistance } = drive
  const scale = (backEmfConstant * drive.ratedVoltage) / windingResistance
  let margin = way * effortOf(motor) - machine.motor
  // without power it holds what its datasheet says, friction not counted twice
  if (motor.duty === null) margin = Math.min(margin, -machine.output - drive.holdingEffort)
  // its dead band: what comes to rest there stays
  if (drive.control === "position-servo") margin -= SERVO_STICKS * scale
  return Math.max(-1, margin / scale)
}

/** Powers at the state looked at last, W. */
export interface Powers extends SupplyPower {
  drivers: number
  winding: number
  drive: number
  friction: number
  lifting: number
  kinetic: number
}

export const noPowers = (): Powers => ({
  source: 0,
  inside: 0,
  wires: 0,
  converters: 0,
  loads: 0,
  drivers: 0,
  winding: 0,
  drive: 0,
  friction: 0,
  lifting: 0,
  kinetic: 0,
})

/** Where the power goes at the state looked at last. */
export function powersAt(play: Play, y: Float64Array, out: Powers): void {
  const { actors, feeder, memo } = play
  if (feeder && memo.failed < 0) supplyPower(feeder, out)
  else [out.source, out.inside, out.wires, out.converters, out.loads] = [0, 0, 0, 0, 0]
  ;[out.drivers, out.winding, out.drive, out.friction, out.lifting, out.kinetic] = [0, 0, 0, 0, 0, 0]
  for (const actor of actors) {
    const { motor, machine, mode, index } = actor
    const { drives } = machine.motion
    const { line, winding, volts, drawn } = motor
    const v = mode === 0 ? 0 : rateOf(y, actor)
    const heat = winding * winding * line.windingResistance
    const turned = line.backEmfConstant * winding * v
    if (motor.bus < 0) out.source += drives * volts * drawn
    out.winding += drives * heat
    out.drivers += drives * (volts * drawn - heat - turned)
    if (mode === 0) continue
    const a = memo.a[index] as number
    const lifting = liftingPower(machine, v)
    const kinetic = inertialPower(machine, v, a)
    const own = drives * machine.inertia * a * v
    out.lifting += lifting
    out.kinetic += kinetic + own
    if (accelerates(machine, line, v, mode, effortOf(motor)) === null) {
      out.drive += drives * turned - own - lifting - kinetic
      continue
    }
    asks(machine, line, v, mode, mode * a)
    out.drive += drives * (machine.motor - machine.output) * mode * v
    out.friction += drives * machine.output * mode * v - lifting - kinetic
  }
}

/** Energy of motion of everything at a state. */
export function kineticAt(play: Play, t: number, y: Float64Array): number {
  const pull = pullAt(play, t)
  let sum = 0
  for (const actor of play.actors) {
    if (actor.mode === 0) continue
    stand(actor.machine, travelOf(y, actor), pull)
    sum += kineticOf(actor.machine, rateOf(y, actor))
  }
  return sum
}
