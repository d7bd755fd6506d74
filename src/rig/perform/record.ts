// What a performance leaves behind: traces over time, peaks, and where the energy went.
import type { Dense } from "../../numeric/ode/types.js"
import { asks } from "./machine.js"
import { evaluate, kineticAt, noPowers, type Play, type Powers, powersAt, rateOf, travelOf } from "./play.js"

/** Where a step is looked at and what each place weighs: the stages of the stiff method, whose states are exact there (Radau, order 5). */
const ROOT = Math.sqrt(6)
const NODES = [
  [(4 - ROOT) / 10, (16 - ROOT) / 36],
  [(4 + ROOT) / 10, (16 + ROOT) / 36],
  [1, 1 / 9],
] as const

interface Peak {
  effort: number
  current: number
}

/** Keeps traces and totals. */
export class Recorder {
  readonly times: number[] = []
  readonly travel: number[][]
  readonly rate: number[][]
  readonly current: number[][]
  readonly voltage: number[][]
  readonly effort: number[][]
  readonly buses: number[][]
  readonly sourceAmps: number[][]
  readonly charge: number[][]
  readonly peaks: readonly Peak[]
  readonly lowest: { volts: number; time: number }[]
  readonly peakSource: number[]
  readonly totals: Powers = noPowers()
  /** First time at which each motion's line was slack, and by how much; −1 where none was. */
  readonly slack: { time: number; effort: number }[]
  stops = 0
  motion = 0
  private readonly powers: Powers = noPowers()
  private readonly state: Float64Array

  constructor(private readonly play: Play) {
    const { actors, feeder, size } = play
    const columns = (n: number) => Array.from({ length: n }, (): number[] => [])
    const [m, b, s] = [actors.length, feeder?.model.names.length ?? 0, feeder?.sources.length ?? 0]
    this.travel = columns(m)
    this.rate = columns(m)
    this.current = columns(m)
    this.voltage = columns(m)
    this.effort = columns(m)
    this.buses = columns(b)
    this.sourceAmps = columns(s)
    this.charge = columns(s)
    this.peaks = actors.map(() => ({ effort: 0, current: 0 }))
    this.lowest = Array.from({ length: b }, () => ({ volts: Number.POSITIVE_INFINITY, time: 0 }))
    this.peakSource = new Array<number>(s).fill(0)
    this.slack = actors.map(() => ({ time: -1, effort: 0 }))
    this.state = new Float64Array(size)
  }

  /** Notes the state at the start of a stretch: what changed at once shows as two places at one time. */
  begin(t: number, y: Float64Array): void {
    this.place(t, y)
  }

  struck(energy: number): void {
    this.stops += energy
  }

  /** Takes one accepted step. */
  step(ta: number, tb: number, at: Dense): void {
    const { state, powers, totals, play } = this
    const width = tb - ta
    for (const [share, weight] of NODES) {
      const t = share === 1 ? tb : ta + share * width
      at(t, state)
      evaluate(play, t, state)
      powersAt(play, state, powers)
      for (const key of Object.keys(totals) as (keyof Powers)[]) totals[key] += weight * width * powers[key]
      this.look(t, state)
      this.keep(t, state)
    }
  }

  close(t: number, y: Float64Array): void {
    this.place(t, y)
    this.motion = kineticAt(this.play, t, y)
  }

  private place(t: number, y: Float64Array): void {
    evaluate(this.play, t, y)
    this.look(t, y)
    this.keep(t, y)
  }

  private efforts(y: Float64Array, visit: (index: number, effort: number, tightness: number) => void): void {
    const { play } = this
    for (const actor of play.actors) {
      const { machine, motor, mode, index } = actor
      if (mode === 0) {
        visit(index, motor.winding === 0 ? 0 : stalledEffort(actor), Number.POSITIVE_INFINITY)
        continue
      }
      asks(machine, motor.line, rateOf(y, actor), mode, mode * (play.memo.a[index] as number))
      visit(index, Number.isFinite(machine.output) ? mode * machine.output : 0, machine.tightness)
    }
  }

  private look(t: number, y: Float64Array): void {
    const { play, peaks, lowest, peakSource, slack } = this
    this.efforts(y, (i, effort, tightness) => {
      const peak = peaks[i] as Peak
      peak.effort = Math.max(peak.effort, Math.abs(effort))
      const { motor, machine } = play.actors[i] as Play["actors"][number]
      peak.current = Math.max(peak.current, machine.motion.drives * motor.drawn)
      const one = slack[i] as { time: number; effort: number }
      if (tightness < -1e-9) {
        if (one.time < 0) one.time = t
        one.effort = Math.max(one.effort, -tightness)
      }
    })
    const { feeder } = play
    if (!feeder) return
    for (let b = 0; b < lowest.length; b++) {
      const volts = feeder.dark[b] === 1 ? 0 : (feeder.state.volts[b] as number)
      const low = lowest[b] as { volts: number; time: number }
      if (volts < low.volts) [low.volts, low.time] = [volts, t]
    }
    for (let s = 0; s < peakSource.length; s++) peakSource[s] = Math.max(peakSource[s] as number, feeder.state.sourceAmps[s] as number)
  }

  private keep(t: number, y: Float64Array): void {
    const { play } = this
    this.times.push(t)
    for (const actor of play.actors) {
      const { index, motor, machine, mode } = actor
      this.travel[index]?.push(travelOf(y, actor) / machine.motion.span)
      this.rate[index]?.push(mode === 0 ? 0 : rateOf(y, actor))
      this.current[index]?.push(machine.motion.drives * motor.drawn)
      this.voltage[index]?.push(motor.volts)
    }
    this.efforts(y, (i, effort) => this.effort[i]?.push(effort))
    const { feeder, actors } = play
    if (!feeder) return
    for (let b = 0; b < this.buses.length; b++) this.buses[b]?.push(feeder.dark[b] === 1 ? 0 : (feeder.state.volts[b] as number))
    for (let s = 0; s < this.sourceAmps.length; s++) {
      this.sourceAmps[s]?.push(feeder.state.sourceAmps[s] as number)
      this.charge[s]?.push(Math.max(0, y[2 * actors.length + s] as number))
    }
  }
}

/** Effort with which a motor that stands still presses, at its output and towards growing travel. */
function stalledEffort({ motor }: Play["actors"][number]): number {
  const { line, winding } = motor
  return Math.sign(winding) * Math.max(0, Math.abs(winding) - line.frictionCurrent) * line.effortConstant
}
