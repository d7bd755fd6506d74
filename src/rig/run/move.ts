// A motion out and back on the rig's own supply: how long, how hard, where the seconds go, and what stops it first.
import { nodesAndWeights } from "../../numeric/index.js"
import { isNoSolution, type NoSolution, refuse, type SiOf } from "../../solver/index.js"
import { allParts, type SupplyParts } from "../supply/tree.js"
import type { RigSi } from "../whole/faults.js"
import type { Members } from "../whole/fields.js"
import type { NamedStand } from "./carrying.js"
import { COUPLING_SHARE, mostCoupled } from "./coupling.js"
import { coordinatesAt, type MotionModel, type Way } from "./motion-model.js"
import type { Move, MoveRefusal, WayMove, WayPoint, WayStep } from "./move-types.js"
import { seconds } from "./quick.js"
import { type Feed, firstStop, LOOKS, type Ride, tabledPoint } from "./ride.js"
import { assembled, feedOf, motionIndex, rideOf, type Situation, untabled } from "./situation.js"
import { slowestStand, standingSo } from "./slowest.js"
import { inertiaShare, note, type SolvedRide, solveRide } from "./solve-ride.js"
import { nearestOf, stopped } from "./stopped.js"

/** Where the seconds go, in order, and what mending each alone would save. */
function waterfall(at: Situation, index: number, way: Way, duration: number): WayStep[] {
  const { drive } = at.motions[index] as MotionModel
  const rated: Feed = { voltage: drive.ratedVoltage }
  const of = (feed: Feed) => seconds(rideOf(at, index, way, feed))
  const unloaded = (feed: Feed) => seconds(untabled(at, index, way, feed))
  const whole = feedOf(at, index)
  const fed = "model" in whole
  const only = (parts: Partial<SupplyParts>, others = false) =>
    fed ? of(feedOf(at, index, { sourceResistance: false, wires: false, limits: false, ...parts }, others, others)) : null
  const without = (parts: Partial<SupplyParts>, others = true) =>
    fed ? of(feedOf(at, index, { ...allParts, ...parts }, others, others)) : null
  const stages: readonly (readonly [string, number | null, number | null])[] = [
    ["the drive alone at its rated voltage", unloaded(rated), null],
    ["its load", of(rated), unloaded(whole)],
    ["the supply's own voltage", only({}), null],
    ["sag inside the source", only({ sourceResistance: true }), without({ sourceResistance: false })],
    ["wires and contacts", only({ sourceResistance: true, wires: true }), without({ wires: false })],
    ["what else draws at the same time", only({ sourceResistance: true, wires: true }, true), without({}, false)],
    ["limits of source and converter", fed ? duration : null, without({ limits: false })],
  ]
  const steps: WayStep[] = []
  let before = 0
  for (const [label, here, alone] of stages) {
    // a stage that would stop by itself is passed over: its seconds show in the next one
    if (here === null) continue
    steps.push({ label, duration: here, added: here - before, saved: alone === null ? null : duration - alone })
    before = here
  }
  return steps
}

/** One way as a maker reads it. */
function wayMove(at: Situation, index: number, one: Ride, solved: SolvedRide): WayMove {
  const motion = at.motions[index] as MotionModel
  const { totals, times, travels, met } = solved
  const rod = motion.drive.travel === "length"
  const first = motion.parts[0]
  const curve = travels.map((travel, i): WayPoint => {
    const { effort, current, voltage } = tabledPoint(one, travel)
    note(one, met)
    const q = coordinatesAt(motion, travel)[0] as number
    const shown = first?.mechanism.pose(q).shown ?? 0
    const isAngle = first?.mechanism.shows === "angle"
    return {
      time: times[i] as number,
      stroke: rod ? travel : null,
      turned: rod ? null : travel,
      angle: isAngle ? shown : null,
      span: isAngle ? null : shown,
      force: rod ? effort : null,
      torque: rod ? null : effort,
      current,
      voltage,
    }
  })
  const parts = [
    totals.insideSource,
    totals.wires,
    totals.converters,
    totals.loads,
    totals.others,
    totals.winding,
    totals.drive,
    totals.work,
  ]
  const largest = Math.max(totals.source, ...parts.map(Math.abs))
  return {
    duration: totals.time,
    peakForce: rod ? met.peakEffort : null,
    peakTorque: rod ? null : met.peakEffort,
    peakCurrent: motion.drives * met.peakCurrent,
    peakSourceCurrent: met.peakSourceCurrent,
    minVoltage: met.minVoltage,
    limitedShare: totals.limited / totals.time,
    limitedBy: met.limitedBy,
    inertiaShare: inertiaShare(solved),
    waterfall: waterfall(at, index, one.way, totals.time),
    energy: {
      source: totals.source,
      insideSource: totals.insideSource,
      wires: totals.wires,
      converters: totals.converters,
      loads: totals.loads,
      others: totals.others,
      winding: totals.winding,
      drive: totals.drive,
      work: totals.work,
      residual: largest > 0 ? (totals.source - parts.reduce((a, b) => a + b, 0)) / largest : 0,
    },
    curve,
  }
}

/** A motion out and back; what a refusal names as nearest was tried. */
export function solveMove(members: Members, rig: RigSi & { readonly motion: string | null }): Move | NoSolution<MoveRefusal> {
  const answer = outAndBack(members, rig)
  if (!isNoSolution(answer)) return answer
  return { ...answer, nearest: nearestOf(members, rig, motionIndex(rig), answer, (changed) => !isNoSolution(outAndBack(members, changed))) }
}

/** A motion at the slowest of all places where those stand that carry it or that it carries, or the first that stops it. */
function outAndBack(members: Members, rig: RigSi & { readonly motion: string | null }): Move | NoSolution<MoveRefusal> {
  const index = motionIndex(rig)
  return standingAt(members, rig, index, slowestStand(members, rig, index))
}

function standingAt(members: Members, rig: RigSi, index: number, { name, stand }: NamedStand): Move | NoSolution<MoveRefusal> {
  const whole = assembled(members, rig)
  const at = standingSo(whole, stand, LOOKS)
  const feed = feedOf(at, index)
  const solve = (way: Way): { one: Ride; solved: SolvedRide } | NoSolution<MoveRefusal> => {
    const one = rideOf(at, index, way, feed)
    const seen = firstStop(one)
    if (seen) return stopped(one, seen.travel, name)
    const solved = solveRide(one)
    return solved.stop ? stopped(one, solved.stop.travel, name) : { one, solved }
  }
  const outward = solve(1)
  if (isNoSolution(outward)) return outward
  const returning = solve(-1)
  if (isNoSolution(returning)) return returning
  const { share, other } = mostCoupled(whole, index)
  if (share > COUPLING_SHARE)
    return refuse(
      "coupled",
      "{motion} and {other} hang together and may move at once: up to {share ratio %} of the energy moved would be motion that one gives the other, {shortBy ratio %} more than can be left out here. Have the programme move one after the other, slow one down, or move less mass.",
      share - COUPLING_SHARE,
      { share },
      {},
      { motion: (at.motions[index] as MotionModel).name, other },
    )
  const out = wayMove(at, index, outward.one, outward.solved)
  const back = wayMove(at, index, returning.one, returning.solved)
  const later = out.waterfall.slice(1)
  const costly = later.reduce<WayStep | undefined>((a, b) => (a && a.added >= b.added ? a : b), undefined)
  const own = out.waterfall[0]
  // when nothing adds a tenth to the unloaded time, the drive itself sets the pace
  return {
    outDuration: out.duration,
    backDuration: back.duration,
    cycleDuration: out.duration + back.duration,
    limit: own && costly && costly.added > 0.1 * own.duration ? costly.label : "the drive's own pace",
    condition: name,
    out,
    back,
    errorEstimate: outward.solved.error + returning.solved.error,
    evaluations: outward.solved.evaluations + returning.solved.evaluations,
  }
}

/** Widths and rates at the nodes of a ride, for the working's own sum of dx/rate. */
export function rateGrid(
  members: Members,
  rig: SiOf<{ motion: string | null }> & RigSi,
  way: Way,
): { readonly widths: number[]; readonly rates: number[] } {
  const index = motionIndex(rig)
  const at = standingSo(assembled(members, rig), slowestStand(members, rig, index).stand, LOOKS)
  const one = rideOf(at, index, way, feedOf(at, index))
  const [widths, rates]: [number[], number[]] = [[], []]
  if (firstStop(one)) return { widths, rates }
  const { pieces, size } = solveRide(one).perTravel
  for (const piece of pieces)
    for (const [x, width] of nodesAndWeights(piece, size)) {
      widths.push(width)
      rates.push(tabledPoint(one, x).rate)
    }
  return { widths, rates }
}
