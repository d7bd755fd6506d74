// A performance played: from one change to the next, each located where it happens.
import { integrate } from "../../numeric/ode/index.js"
import { guarded } from "./feed.js"
import type { Cue, Happening, Played, Ran } from "./happenings.js"
import { acrossKink, kineticOf, type Sense, stand, tipPerRate } from "./machine.js"
import { type Actor, breaks, commands, evaluate, fed, type Play, pullAt, rateOf, travelOf } from "./play.js"
import { Recorder } from "./record.js"
import type { EventType } from "./types.js"
import { eventsOf, longestStep, nextTime, type Place, placeAhead, voltsAt } from "./watch.js"

/** How exactly a run is followed. */
export interface Exactness {
  readonly relative: number
  readonly absolute: number
}
export const EXACT: Exactness = { relative: 1e-8, absolute: 1e-9 }
const MOST_CALLS = 100_000
const MOST_CHANGES = 5000
/** What comes back from a stop slower than this, against its own speed without load, stays there. */
const STAYS = 1e-3

/** Plays cues on a rig until everything rests, or the time is over. */
export function runPlay(play: Play, cues: readonly Cue[], turnBack: boolean, limit: number, open: boolean, exact: Exactness = EXACT): Ran {
  return new Run(play, [...cues], turnBack, limit, open, exact).all()
}

class Run {
  private t = 0
  private readonly y: Float64Array
  private calls = 0
  private readonly happenings: Happening[] = []
  private readonly played: Played[] = []
  private readonly record: Recorder
  /** Since when each motion stands still though it is driven, or −1. */
  private readonly stalled: number[]
  private readonly slipped: boolean[]
  private readonly current: (Played | null)[]
  private readonly empty = new Set<number>()
  private stopped: string | null = null

  constructor(
    private readonly play: Play,
    private readonly cues: Cue[],
    private turnBack: boolean,
    private limit: number,
    private readonly open: boolean,
    private readonly exact: Exactness,
  ) {
    const { actors, size, feeder } = play
    this.y = new Float64Array(size)
    feeder?.power.sources.forEach((source, s) => {
      this.y[2 * actors.length + s] = source.type === "cells" ? source.stateOfCharge : 1
    })
    this.record = new Recorder(play)
    this.stalled = actors.map(() => -1)
    this.slipped = actors.map(() => false)
    this.current = actors.map(() => null)
    cues.sort((a, b) => a.at - b.at)
  }

  all(): Ran {
    const { play } = this
    this.emptied()
    for (let change = 0; ; change++) {
      if (change > MOST_CHANGES || this.calls > MOST_CALLS) {
        this.stopped = "changes"
        break
      }
      this.due()
      if (!this.resolve()) break
      if (this.t >= this.limit || this.rests()) break
      this.stretch()
      if (this.stopped) break
    }
    for (const actor of play.actors) this.closeStep(actor, null)
    this.record.close(this.t, this.y)
    return {
      happenings: [...this.happenings].sort((a, b) => a.time - b.time),
      played: this.played,
      record: this.record,
      calls: this.calls,
      end: this.t,
      stopped: this.stopped,
    }
  }

  private tell(type: EventType, subject: string, more: Partial<Happening> = {}): void {
    this.happenings.push({ time: this.t, type, subject, ...more })
    this.play.memo.t = Number.NaN
  }

  private closeStep(actor: Actor, end: number | null): void {
    const step = this.current[actor.index]
    if (!step) return
    step.reached = travelOf(this.y, actor) / actor.machine.motion.span
    step.end = end
    const since = this.stalled[actor.index] as number
    if (step.arrived === null && since >= 0 && actor.mode === 0)
      this.happenings.push({ time: since, type: "stops-short", subject: actor.machine.motion.name, place: step.reached })
    this.current[actor.index] = null
  }

  /** Cues whose time has come, timers that are over. */
  private due(): void {
    const { play, t } = this
    while (this.cues[0] && this.cues[0].at <= t) {
      const cue = this.cues.shift() as Cue
      this.send(play.actors[cue.index] as Actor, cue.to)
    }
    play.offUntil.forEach((until, bus) => {
      if (until < 0 || until > t || !play.feeder) return
      play.offUntil[bus] = -1
      play.feeder.off[bus] = 0
      this.tell("tries-again", play.feeder.model.names[bus] as string)
    })
    play.over.forEach((since, g) => {
      const guard = play.feeder?.guards[g]
      if (!guard || since < 0 || since + guard.onTime > t) return
      play.over[g] = -1
      this.switchOff(
        guard.source >= 0 ? guard.source : -1,
        guard.bus,
        guard.action === "latch" ? Number.POSITIVE_INFINITY : guard.offTime,
        "switches-off",
        guard.name,
      )
    })
  }

  private switchOff(source: number, bus: number, offTime: number, type: EventType, name: string): void {
    const { play, t } = this
    const { feeder } = play
    if (!feeder) return
    const { model } = feeder
    for (let i = 0; i < model.names.length; i++) {
      const own = source >= 0 ? model.sourceOf[i] === source && model.above[i] === -1 : i === bus
      if (!own) continue
      feeder.off[i] = 1
      play.offUntil[i] = t + offTime
    }
    this.tell(type, name, { until: t + offTime })
  }

  /** Sends a motion to a place. */
  private send(actor: Actor, to: number): void {
    const { machine, index } = actor
    const { span, drive } = machine.motion
    const x = travelOf(this.y, actor)
    this.closeStep(actor, this.t)
    const target = to * span
    const there = Math.abs(target - x) <= 1e-9 * span && actor.mode === 0
    const step: Played = { index, begin: this.t, from: x / span, to, arrived: there ? this.t : null, reached: to, end: null }
    this.played.push(step)
    this.current[index] = step
    actor.target = target
    actor.dir = target >= x ? 1 : -1
    actor.since = this.t
    actor.on = drive.control === "position-servo" || !there
    this.stalled[index] = -1
    this.slipped[index] = false
    this.play.memo.t = Number.NaN
    if (!there) this.tell("starts", machine.motion.name, { place: x / span })
  }

  /** Settles what changes at once: supplies that give up, controllers that start anew, motions that break loose. */
  private resolve(): boolean {
    const { play, y } = this
    const { feeder, actors, watched } = play
    for (let round = 0; round < 400; round++) {
      // what was let go at this instant may have lost its power since
      if (round > 0) for (const actor of actors) if (actor.mode !== 0 && rateOf(y, actor) === 0) this.stick(actor)
      const { failed } = fed(play, this.t, y)
      if (feeder && failed >= 0) {
        const bus = feeder.power.buses[failed]
        this.switchOff(
          -1,
          failed,
          bus?.limitAction === "latch" ? Number.POSITIVE_INFINITY : Math.max(bus?.offTime ?? 0, 1e-3),
          "collapses",
          feeder.model.names[failed] as string,
        )
        continue
      }
      if (feeder && this.guards()) continue
      const reset = watched.find((one) => one.until < 0 && voltsAt(this.play, one.bus) < one.least)
      if (reset) {
        const volts = voltsAt(this.play, reset.bus)
        reset.until = this.t + play.stage.restartTime
        this.tell("restarts", reset.name, { voltage: volts, least: reset.least, source: feeder?.power.sources[reset.source]?.name ?? "" })
        continue
      }
      const again = watched.find((one) => one.until >= 0 && one.until <= this.t)
      if (again) {
        // while all else rests its voltage stays as it is until something is to be done
        const idle = actors.every((a) => a.mode === 0) && play.over.every((since) => since < 0)
        const wait = idle ? nextTime(play, this.t, Math.min(this.limit, this.cues[0]?.at ?? Number.POSITIVE_INFINITY)) - this.t : 0
        if (voltsAt(this.play, again.bus) < again.least) again.until = this.t + Math.max(play.stage.restartTime, wait)
        else {
          again.until = -1
          for (const actor of actors) if (commands(play, again, actor)) actor.since = this.t
          this.tell("works-again", again.name)
        }
        continue
      }
      this.holders()
      for (const actor of actors) {
        if (actor.mode !== 0) continue
        for (const way of [1, -1] as const)
          if (breaks(play, actor, this.t, y, way) > 1e-12) {
            this.letGo(actor, way)
            break
          }
        this.stall(actor)
      }
      return true
    }
    this.stopped = "changes"
    return false
  }

  /** What stood still moves: by its drive, or though nothing drives it. */
  private letGo(actor: Actor, way: Sense): void {
    actor.mode = way
    actor.stoodAt = Number.NaN
    this.stalled[actor.index] = -1
    this.play.memo.t = Number.NaN
    // a load that swings to and fro is told once
    if (actor.motor.duty !== null || this.slipped[actor.index]) return
    this.slipped[actor.index] = true
    this.tell("slips", actor.machine.motion.name, { place: travelOf(this.y, actor) / actor.machine.motion.span })
  }

  /** Keeps watch over what gives too much; whether something was switched. */
  private guards(): boolean {
    const { play } = this
    const { feeder } = play
    if (!feeder) return false
    for (let g = 0; g < feeder.guards.length; g++) {
      const guard = feeder.guards[g] as NonNullable<(typeof feeder.guards)[number]>
      if (guard.action === "hold") continue
      const amps = guarded(feeder, guard)
      const since = play.over[g] as number
      if (since < 0 && amps > guard.limit) {
        play.over[g] = this.t
        this.tell("overload", guard.name, { current: amps })
        if (guard.onTime === 0) {
          this.due()
          return true
        }
      } else if (since >= 0 && amps <= guard.limit) play.over[g] = -1
    }
    return false
  }

  /** Tells what comes to its limit and holds it. */
  private holders(): void {
    const { feeder, held } = this.play
    if (!feeder) return
    for (const { bus, name } of feeder.holders) {
      if (held[bus] === feeder.held[bus]) continue
      held[bus] = feeder.held[bus] as number
      if (held[bus] === 1) this.tell("limited", name, { current: feeder.state.outAmps[bus] ?? 0, voltage: voltsAt(this.play, bus) })
    }
  }

  /** Notes a driven motion that stands still short of its place. */
  private stall(actor: Actor): void {
    const step = this.current[actor.index]
    const stands = actor.mode === 0 && step && step.arrived === null && actor.motor.duty !== null
    if (!stands) this.stalled[actor.index] = -1
    else if ((this.stalled[actor.index] as number) < 0) this.stalled[actor.index] = this.t
  }

  /** Whether nothing moves and nothing is to come. */
  private rests(): boolean {
    const { play, t } = this
    if (!this.open) return false
    if (this.cues.length || play.actors.some((a) => a.mode !== 0) || play.watched.some((w) => w.until >= 0)) return false
    if ([...play.offUntil].some((until) => until >= 0 && until < Number.POSITIVE_INFINITY) || [...play.over].some((since) => since >= 0))
      return false
    const { gust, steps } = play.stage
    if (gust && t < gust.at + gust.duration) return false
    const stuck = this.current.some((step) => step && step.arrived === null)
    // steps may shake loose what stands still on its way
    if (steps && stuck) return false
    if (stuck && play.actors.some((a) => a.on && a.machine.motion.drive.control === "ramp" && t < a.since + play.stage.rampTime))
      return false
    if (this.turnBack) {
      this.turnBack = false
      for (const actor of play.actors) this.cues.push({ at: t, index: actor.index, to: 0 })
      this.limit += t
      return false
    }
    return true
  }

  /** Integrates up to the next change. */
  private stretch(): void {
    const { play, y } = this
    const { actors } = play
    const places = actors.map((actor) => placeAhead(actor, travelOf(y, actor), this.current[actor.index]?.arrived === null))
    const { count, values } = eventsOf(play, places)
    play.memo.t = Number.NaN
    this.record.begin(this.t, y)
    const moving = actors.some((a) => a.mode !== 0)
    const out = integrate(
      {
        size: play.size,
        slope: (t, state, dy) => dy.set(evaluate(play, t, state).dy),
        events: { count, values, directions: new Array<-1>(count).fill(-1) },
      },
      this.t,
      y,
      nextTime(play, this.t, Math.min(this.limit, this.cues[0]?.at ?? Number.POSITIVE_INFINITY)),
      {
        relative: this.exact.relative,
        absolute: this.exact.absolute,
        maxStep: longestStep(play, this.t),
        maxCalls: Math.max(1, MOST_CALLS - this.calls),
        method: moving ? "stiff" : "explicit",
      },
      (ta, tb, at) => this.record.step(ta, tb, at),
    )
    this.calls += out.calls
    this.t = out.t
    y.set(out.y)
    play.memo.t = Number.NaN
    if (out.stop.kind !== "end" && out.stop.kind !== "event") {
      this.stopped = out.stop.kind
      return
    }
    this.emptied()
    for (const event of out.crossed) {
      const actor = actors[event >> 1]
      if (!actor || event >= 2 * actors.length) continue
      if (actor.mode === 0) {
        this.letGo(actor, event % 2 === 0 ? 1 : -1)
      } else if (event % 2 === 0) this.halt(actor)
      else this.arriveAt(actor, places[actor.index] as Place)
    }
    // a rate that came to zero beside another event
    for (const actor of actors) if (actor.mode !== 0 && actor.mode * rateOf(y, actor) < 0) this.halt(actor)
  }

  private emptied(): void {
    const { play, y } = this
    play.feeder?.power.sources.forEach((source, s) => {
      const k = 2 * play.actors.length + s
      if (source.type === "mains-supply" || (y[k] as number) > 0 || this.empty.has(s)) return
      this.empty.add(s)
      this.switchOff(s, -1, Number.POSITIVE_INFINITY, "empty", source.name)
    })
  }

  private halt(actor: Actor): void {
    stand(actor.machine, travelOf(this.y, actor), pullAt(this.play, this.t))
    this.record.struck(kineticOf(actor.machine, rateOf(this.y, actor)))
    this.stick(actor)
  }

  private stick(actor: Actor): void {
    actor.mode = 0
    actor.stoodAt = Number.NaN
    this.y[2 * actor.index + 1] = 0
    this.play.memo.t = Number.NaN
  }

  private arrive(actor: Actor): void {
    const step = this.current[actor.index]
    if (!step || step.arrived !== null) return
    step.arrived = this.t
    if (actor.machine.motion.drive.control !== "position-servo") actor.on = false
    this.tell("arrives", actor.machine.motion.name, { place: travelOf(this.y, actor) / actor.machine.motion.span })
  }

  private arriveAt(actor: Actor, { at, what }: Place): void {
    const { play, y } = this
    const { machine, index } = actor
    const { span, name } = machine.motion
    const v = rateOf(y, actor)
    const x = travelOf(y, actor)
    if (what === "target") {
      this.arrive(actor)
      return
    }
    const pull = pullAt(play, this.t)
    if (what === "kink") {
      const beside = actor.mode * 1e-9 * span
      const faster = acrossKink(machine, at - beside, at + beside, pull)
      y[2 * index] = (at + beside) / span
      y[2 * index + 1] = (v * faster) / machine.fastest
      play.memo.t = Number.NaN
      return
    }
    y[2 * index] = at / span
    stand(machine, at, pull)
    const energy = kineticOf(machine, v)
    const speed = Math.abs(v) * tipPerRate(machine, x, pull)
    const { restitution } = play.stage
    const back = -restitution * v
    const stays = Math.abs(back) < STAYS * machine.fastest
    const lost = stays ? energy : energy * (1 - restitution * restitution)
    this.record.struck(lost)
    if (Math.abs(actor.target - at) <= 1e-9 * span) this.arrive(actor)
    this.tell("strikes", name, { speed, energy, place: at / span })
    if (stays) {
      y[2 * index + 1] = 0
      this.halt(actor)
    } else {
      y[2 * index + 1] = back / machine.fastest
      actor.mode = -actor.mode as Sense
    }
  }
}
