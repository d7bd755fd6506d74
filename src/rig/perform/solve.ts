// A rig performed: put together, played through its programme, and told.

import { integralOver, integralTo } from "../../numeric/index.js"
import { isNoSolution, type NoSolution, refuse } from "../../solver/index.js"
import { effortAt, effortState, type MotionModel, type Surroundings } from "../run/motion-model.js"
import { firstStop } from "../run/ride.js"
import { feedOf, rideOf, type Situation, situation } from "../run/situation.js"
import { solveRide } from "../run/solve-ride.js"
import type { Members } from "../whole/fields.js"
import { sentences } from "./events.js"
import type { Played, Ran } from "./happenings.js"
import { type Play, playOf } from "./play.js"
import { EXACT, type Exactness, runPlay } from "./run.js"
import type { Perform, PerformEnergy, PerformRefusal, PerformSi, PlayedStep, StageSi } from "./types.js"

/** Places at which a motion's way is looked at for its ends. */
const LOOKS = 320
/** What is waited for a motion behind its last step: this many times what it takes without inertia, and this much more, s. */
const PATIENCE = 2
const GRACE = 5
/** The same where nothing says how long it takes, s. */
const UNKNOWN = 20

/** Travels between which a motion can be posed at all, from its start on. */
function endsOf(motion: MotionModel, around: Surroundings): { readonly low: number; readonly high: number } | string {
  const { span } = motion
  const state = effortState()
  const poses = (x: number) => {
    effortAt(motion, x, 1, around, state)
    return state.trouble !== "cannot-close" && state.trouble !== "dead-point"
  }
  const nudge = 1e-9 * span
  const low = poses(0) ? 0 : nudge
  if (low > 0 && !poses(low)) return state.at
  for (let i = 1; i <= LOOKS; i++) {
    const x = (span * i) / LOOKS
    if (poses(x)) continue
    if (i === LOOKS && poses(span - nudge)) return { low, high: span - nudge }
    let [good, bad] = [Math.max(low, (span * (i - 1)) / LOOKS), x]
    for (let k = 0; k < 60; k++) {
      const mid = (good + bad) / 2
      if (poses(mid)) good = mid
      else bad = mid
    }
    return { low, high: good }
  }
  return { low, high: span }
}

/** Times that motions take without inertia, while all else that may draws its most. */
class Slowly {
  private readonly known = new Map<string, ReturnType<typeof solveRide> | null>()
  constructor(private readonly at: Situation) {}

  private ride(index: number, way: 1 | -1) {
    const key = `${index} ${way}`
    const found = this.known.get(key)
    if (found !== undefined) return found
    const one = rideOf(this.at, index, way, feedOf(this.at, index))
    const solved = firstStop(one) ? null : solveRide(one, 1)
    const made = solved?.stop ? null : solved
    this.known.set(key, made)
    return made
  }

  /** Time between two travels, shares of the whole; null where it is stopped somewhere. */
  time(index: number, from: number, to: number): number | null {
    if (from === to) return 0
    const solved = this.ride(index, to > from ? 1 : -1)
    if (!solved) return null
    const { span } = this.at.motions[index] as MotionModel
    const { pieces, size } = solved.perTravel
    const upTo = (x: number) =>
      pieces.reduce(
        (sum, piece) => sum + (x >= piece.b ? integralOver(piece, size, 0) : x > piece.a ? integralTo(piece, size, 0, x) : 0),
        0,
      )
    return Math.abs(upTo(to * span) - upTo(from * span))
  }
}

/** A rig put together and played. */
export interface Playing {
  readonly at: Situation
  readonly play: Play
  readonly ran: Ran
  readonly slowly: Slowly
}

/** Plays a rig. */
export function played(members: Members, rig: PerformSi, exact: Exactness = EXACT): NoSolution<PerformRefusal> | Playing {
  const at = situation(members, rig)
  const ends: { readonly low: number; readonly high: number }[] = []
  for (const motion of at.motions) {
    const found = endsOf(motion, at.around)
    if (typeof found !== "string") ends.push(found)
    else
      return refuse(
        "cannot-close",
        "{motion} cannot stand where it is to start: {part} does not close there. Move the pivots or its start.",
        1,
        {},
        {},
        { motion: motion.name, part: found },
      )
  }
  const play = playOf(at, rig.stage, ends)
  const slowly = new Slowly(at)
  const patience =
    Math.max(
      ...at.motions.map((_, i) =>
        Math.max(
          ...(
            [
              [0, 1],
              [1, 0],
            ] as const
          ).map(([a, b]) => slowly.time(i, a, b) ?? UNKNOWN),
        ),
      ),
    ) *
      PATIENCE +
    GRACE
  const { programme } = rig
  const silent = programme.length === 0
  const cues = silent
    ? rig.motions.map((_, index) => ({ at: 0, index, to: 1 }))
    : programme.map((step) => ({ at: step.at, index: rig.motions.findIndex((m) => m.name === step.motion), to: step.to }))
  const last = Math.max(0, ...cues.map((cue) => cue.at))
  const { duration } = rig.stage
  const ran = runPlay(play, cues, silent, duration ?? last + patience, duration === null, exact)
  return { at, play, ran, slowly }
}

/** A rig performed, or why it could not be followed. */
export function solvePerform(members: Members, rig: PerformSi, exact: Exactness = EXACT): Perform | NoSolution<PerformRefusal> {
  const one = played(members, rig, exact)
  if (isNoSolution(one)) return one
  const { at, play, ran, slowly } = one
  const { record, end } = ran
  if (ran.stopped !== null)
    return refuse(
      "not-followed",
      "By {time time s} this took all the steps that one performance may take: {shortBy time s} are left. Follow a shorter time, above all where the wearer walks; or something chatters there, such as a brown-out that its own restart brings on, or a part without mass.",
      Math.max(Number.MIN_VALUE, (rig.stage.duration ?? end + 1) - end),
      { time: end },
    )
  const rod = (i: number) => at.motions[i]?.drive.travel === "length"
  const stage: StageSi = rig.stage
  return {
    duration: end,
    times: record.times,
    motions: at.motions.map(({ name }, i) => ({
      name,
      travel: record.travel[i] as number[],
      speed: rod(i) ? (record.rate[i] as number[]) : null,
      turning: rod(i) ? null : (record.rate[i] as number[]),
      current: record.current[i] as number[],
      voltage: record.voltage[i] as number[],
      force: rod(i) ? (record.effort[i] as number[]) : null,
      torque: rod(i) ? null : (record.effort[i] as number[]),
      peakForce: rod(i) ? (record.peaks[i]?.effort ?? 0) : null,
      peakTorque: rod(i) ? null : (record.peaks[i]?.effort ?? 0),
      peakCurrent: record.peaks[i]?.current ?? 0,
    })),
    buses: (rig.power?.buses ?? []).map(({ name }, i) => ({
      name,
      voltage: record.buses[i] as number[],
      minVoltage: record.lowest[i]?.volts ?? 0,
      minTime: record.lowest[i]?.time ?? 0,
    })),
    sources: (rig.power?.sources ?? []).map(({ name, type }, i) => ({
      name,
      current: record.sourceAmps[i] as number[],
      peakCurrent: record.peakSource[i] ?? 0,
      charge: type === "mains-supply" ? null : (record.charge[i] as number[]),
    })),
    events: sentences(play, ran, stage),
    steps: ran.played.map((step) => stepOf(at, slowly, step, rig.programme.length > 0)),
    energy: energyOf(ran),
    evaluations: ran.calls,
  }
}

function stepOf(at: Situation, slowly: Slowly, step: Played, programmed: boolean): PlayedStep {
  const slot = step.end === null || !programmed ? null : step.end - step.begin
  const duration = step.arrived === null ? null : step.arrived - step.begin
  return {
    motion: (at.motions[step.index] as MotionModel).name,
    begin: step.begin,
    from: step.from,
    to: step.to,
    duration,
    slot,
    reached: step.reached,
    quasiStatic: slowly.time(step.index, step.from, step.to),
  }
}

function energyOf({ record }: Ran): PerformEnergy {
  const { source, inside, wires, converters, loads, drivers, winding, drive, friction, lifting } = record.totals
  const { stops, motion } = record
  const parts = [inside, wires, converters, loads, drivers, winding, drive, friction, lifting, stops, motion]
  const largest = Math.max(Math.abs(source), ...parts.map(Math.abs))
  return {
    source,
    insideSource: inside,
    wires,
    converters,
    loads,
    drivers,
    winding,
    drive,
    friction,
    lifting,
    stops,
    motion,
    residual: largest > 0 ? (source - parts.reduce((a, b) => a + b, 0)) / largest : 0,
  }
}
