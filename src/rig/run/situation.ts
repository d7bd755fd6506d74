// A rig put together: its motions, what each asks of its drives, and what feeds it.
import { allParts, type SupplyParts, supplyModel, treeOf } from "../supply/tree.js"
import { buildMotion, type RigSi } from "../whole/faults.js"
import type { Members } from "../whole/fields.js"
import { carried, type Stand } from "./carrying.js"
import { type EffortCurve, effortCurve } from "./effort-curve.js"
import {
  currentFor,
  effortAt,
  effortState,
  type MotionModel,
  motionModel,
  placedModel,
  type Stance,
  type Surroundings,
  standing,
  type Way,
} from "./motion-model.js"
import { seconds } from "./quick.js"
import { type Feed, LOOKS, type Ride, ride } from "./ride.js"

/** All motions of a rig, put together, and its supply. */
export interface Situation {
  readonly rig: RigSi
  /** Motions as they stand and are laden in these surroundings. */
  readonly motions: readonly MotionModel[]
  readonly around: Surroundings
  /** What a motion asks of its drives on a way: tabulated when first asked for, whatever feeds it. */
  readonly curve: (index: number, way: Way) => EffortCurve
  /** Motions that may run at the same time, set by set; one set of all where the programme is silent. */
  readonly together: readonly (readonly number[])[]
}

/**
 * Puts a rig together whose faults have been found; each way is looked at `looks` times for what stops it. `stand`: where the
 * motions stand that carry others or are carried.
 */
export const situation = (members: Members, rig: RigSi, looks = LOOKS, stand: Stand = null): Situation =>
  programmed(leaning(assembled(members, rig), { ...rig.posture, stand }, looks))

/** Motions put together once, for many rigs that share them: by their part of the document, which must be the same object. */
export interface KeptMotions {
  readonly models: WeakMap<RigSi["motions"][number], MotionModel>
  /** What each asks of its drives, by way, posture and looks. */
  readonly curves: WeakMap<MotionModel, Map<string, EffortCurve>>
}

/** The motions of a rig, put together. */
export const assembled = (members: Members, rig: RigSi, kept?: KeptMotions): Pick<Situation, "rig" | "motions"> => ({
  rig,
  motions: carried(
    rig,
    rig.motions.map((motion, i) => {
      const model = kept?.models.get(motion) ?? motionModel(motion, buildMotion(members, motion, ["motions", i]))
      kept?.models.set(motion, model)
      return model
    }),
  ),
})

/** They on a body that leans, whatever moves when. */
export function leaning(
  whole: Pick<Situation, "rig" | "motions">,
  stance: Stance,
  looks: number,
  curves: KeptMotions["curves"] = new WeakMap(),
): Situation {
  const around = standing(stance)
  // one that others carry or load is another one wherever they stand: its curves are never taken for those of another stand
  const at = { ...whole, motions: whole.motions.map((motion) => placedModel(motion, around)) }
  const curve = (index: number, way: Way) => {
    const motion = at.motions[index] as MotionModel
    const known = curves.get(motion) ?? new Map<string, EffortCurve>()
    curves.set(motion, known)
    const key = `${way} ${stance.leanForward} ${stance.leanLeft} ${looks}`
    const found = known.get(key) ?? effortCurve(motion, way, around, looks)
    known.set(key, found)
    return found
  }
  return { ...at, around, curve, together: [at.motions.map((_, i) => i)] }
}

/** A step of the programme that moves a motion. */
export interface MovingStep {
  /** Motion, by its place in the document. */
  readonly index: number
  readonly way: Way
  readonly begin: number
  /** Time until a step tells the same motion anew where to go, s; infinite behind the last one. */
  readonly slot: number
}

/** Steps of a programme in time; one that leaves a motion where it is moves nothing. */
export function movingSteps({ motions, programme }: RigSi): readonly MovingStep[] {
  const steps = motions.flatMap(({ name }, index) => {
    const own = programme.filter((step) => step.motion === name).sort((a, b) => a.at - b.at)
    return own.flatMap(({ at: begin, to }, k): MovingStep[] => {
      const from = own[k - 1]?.to ?? 0
      return to === from ? [] : [{ index, way: to > from ? 1 : -1, begin, slot: (own[k + 1]?.at ?? Number.POSITIVE_INFINITY) - begin }]
    })
  })
  return steps.sort((a, b) => a.begin - b.begin)
}

/**
 * What may run at the same time by the programme: a step lasts as long as its whole way takes while all else draws its most, no
 * less, and longer by what is left of the step before where that is not over; a motion that the programme does not move may run
 * at any time.
 */
export function programmed(at: Situation): Situation {
  const { rig, motions } = at
  const all = motions.map((_, i) => i)
  const silent = { ...at, together: [all] }
  if (rig.programme.length === 0) return silent
  const durations = new Map<number, number>()
  const duration = (index: number, way: Way) => {
    const key = way * (index + 1)
    const found = durations.get(key) ?? seconds(rideOf(silent, index, way, feedOf(silent, index))) ?? Number.POSITIVE_INFINITY
    durations.set(key, found)
    return found
  }
  const ends = new Map<number, number>()
  const intervals = movingSteps(rig).map(({ index, way, begin }) => {
    const end = Math.max(begin, ends.get(index) ?? 0) + duration(index, way)
    ends.set(index, end)
    return { index, begin, end }
  })
  const free = all.filter((i) => !intervals.some((one) => one.index === i))
  const sets = intervals.map(({ begin }) => [
    ...new Set([...free, ...intervals.filter((one) => one.begin <= begin && begin < one.end).map((one) => one.index)]),
  ])
  const kept = [free, ...sets].filter((set) => set.length)
  // a set that another one holds asks for no more than that
  const together = kept.filter(
    (set, k) => !kept.some((other, l) => l !== k && set.every((i) => other.includes(i)) && (other.length > set.length || l < k)),
  )
  return { ...at, together: together.length ? together : [all] }
}

/** A ride of a motion on a feed. */
export const rideOf = ({ motions, around, curve }: Situation, index: number, way: Way, feed: Feed): Ride =>
  ride(motions[index] as MotionModel, way, around, feed, curve(index, way))

/** A ride without a table of its effort: as if it carried nothing where the table is asked, itself where the motion is. */
export const untabled = ({ motions, around }: Situation, index: number, way: Way, feed: Feed): Ride =>
  ride(motions[index] as MotionModel, way, around, feed, null)

/** Maximum current of one drive of a motion, running either way; no more than its driver lets through. */
function peakCurrent({ motions, around, curve }: Situation, index: number): number {
  const motion = motions[index] as MotionModel
  const { drive, span } = motion
  const state = effortState()
  let peak = drive.standbyCurrent
  for (const way of [1, -1] as const) {
    const { table, maxEffort, minEffort } = curve(index, way)
    if (table) peak = Math.max(peak, currentFor(drive, maxEffort), currentFor(drive, minEffort))
    // one that is stopped on its way draws up to where it stops
    else
      for (let i = 0; i <= STOPPED_LOOKS; i++) {
        effortAt(motion, (span * i) / STOPPED_LOOKS, way, around, state)
        if (state.trouble === "none") peak = Math.max(peak, currentFor(drive, state.effort))
      }
  }
  return Math.min(peak, drive.currentLimit ?? Number.POSITIVE_INFINITY)
}

/** Places at which a motion that is stopped is looked at for its current. */
const STOPPED_LOOKS = 160

/** What feeds a motion: its bus while the other motions draw the most they draw, or its rated voltage where none is stated. */
export function feedOf(at: Situation, index: number, parts: SupplyParts = allParts, withOthers = true, withLoads = true): Feed {
  const { rig, motions } = at
  const named = (rig.motions[index] as RigSi["motions"][number]).bus
  if (!rig.power || named === null) return { voltage: (motions[index] as MotionModel).drive.ratedVoltage }
  // what hangs on another source neither helps nor hinders it
  const own = treeOf(rig.power, named)
  const model = supplyModel(withLoads ? own : { ...own, loads: [] }, parts)
  const others = new Float64Array(model.names.length)
  if (withOthers)
    motions.forEach((one, i) => {
      const bus = model.names.indexOf(rig.motions[i]?.bus ?? "")
      const meets = at.together.some((set) => set.includes(i) && set.includes(index))
      if (i !== index && bus >= 0)
        others[bus] = (others[bus] as number) + one.drives * (meets ? peakCurrent(at, i) : one.drive.standbyCurrent)
    })
  return { model, bus: model.names.indexOf(named), others }
}

/** Which motion an input asks about. */
export function motionIndex(rig: RigSi & { readonly motion: string | null }): number {
  return rig.motion === null ? 0 : rig.motions.findIndex((m) => m.name === rig.motion)
}
