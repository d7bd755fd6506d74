// Checks of each motion: does it pass, in time, within its drive's ratings, and does it stay where it is without power.
import { formatQuantity, type Kind } from "../../quantity/index.js"
import { commonPractice } from "../../solver/index.js"
import { holdingEffort } from "../run/holding.js"
import { coordinatesAt, type MotionModel, standing } from "../run/motion-model.js"
import { stopped as refusalOf } from "../run/stopped.js"
import { MOTORS } from "../sources.js"
import { blocked, type Found, lacking, poseless, type RigCheck } from "./check.js"
import { type Judged, posturesOf, type Run } from "./conditions.js"
import type { Measured, NotMade } from "./finding.js"
import { RIDDEN, STOOD } from "./paths.js"
import { apartEnough, slowEnough } from "./slow.js"

export const wayWord = (run: Run) => (run.way === 1 ? "out" : "back")
export const conditionOf = (run: Run) => `${wayWord(run)}, ${run.condition}`
export const effortKind = (motion: MotionModel): Kind => (motion.drive.travel === "length" ? "force" : "moment")

/** A finding for each motion; one that is stopped tells nothing more than that. */
export function onMotions(
  rig: Judged,
  find: (motion: MotionModel, index: number, runs: readonly Run[]) => Measured | NotMade | null,
): Found[] {
  return rig.motions.flatMap((motion, i): Found[] => {
    const runs = rig.runs[i] as readonly Run[]
    const result = runs.some((run) => run.stop)
      ? blocked(`${motion.name} is stopped on its way: see there first.`, "passes", motion.name)
      : find(motion, i, runs)
    return result ? [{ subject: motion.name, result }] : []
  })
}

/** The same where what is found stands on times, currents or efforts without inertia: no promise where that is not small. */
export const onSlowMotions: typeof onMotions = (rig, find) =>
  onMotions(rig, (motion, i, runs) => apartEnough(rig, i, slowEnough(motion, runs, find(motion, i, runs))))

export const worstBy = (runs: readonly Run[], of: (run: Run) => number) => runs.reduce((a, b) => (of(b) > of(a) ? b : a))

const duration = (id: string, title: string, way: 1 | -1): RigCheck => ({
  id,
  title,
  severity: "wish",
  reads: [...RIDDEN, "motions[].wanted.duration", ...(way === 1 ? [] : ["motions[].wanted.backDuration"])],
  worsens: { "motions[].wanted.duration": "down", ...(way === 1 ? {} : { "motions[].wanted.backDuration": "down" as const }) },
  find: (rig) =>
    onSlowMotions(rig, (motion, i, runs) => {
      const { wanted } = rig.rig.motions[i] as Judged["rig"]["motions"][number]
      const limit = way === 1 ? wanted.duration : (wanted.backDuration ?? wanted.duration)
      if (limit === null) return lacking(`motions[${i}].wanted.duration`, `Nothing says how long ${motion.name} may take.`)
      const worst = worstBy(
        runs.filter((run) => run.way === way),
        (run) => run.quick?.duration ?? 0,
      )
      const value = worst.quick?.duration ?? Number.NaN
      return {
        relation: "at-most",
        kind: "time",
        value,
        limit,
        sentence: `${motion.name} takes ${formatQuantity("time", value, "s")} ${wayWord(worst)}; ${formatQuantity("time", limit, "s")} are wanted.`,
        condition: conditionOf(worst),
        source: commonPractice,
      }
    }),
})

/** Share by which walking adds to a weight at the shoulders; common practice, no source. */
export const WALKING_BOUNCE = 0.43

const walking = new WeakMap<MotionModel, ReturnType<typeof holdingEffort>>()

/** What one drive has to hold without power however the wearer leans, and walking: the harder of both ends of a step. */
export function heldWalking({ rig }: Judged, motion: MotionModel): ReturnType<typeof holdingEffort> {
  const known = walking.get(motion)
  if (known) return known
  const stands = posturesOf(rig).map(({ posture }) => holdingEffort(motion, standing(posture, 1 + WALKING_BOUNCE)))
  const found = stands.reduce((a, b) => (a.trouble || (a.effort >= b.effort && !b.trouble) ? a : b))
  walking.set(motion, found)
  return found
}

/** Checks of motions. */
export const motionChecks: readonly RigCheck[] = [
  {
    id: "passes",
    title: "passes its whole travel",
    severity: "function",
    reads: [...RIDDEN],
    worsens: {},
    find: (rig) =>
      rig.motions.map((motion, i) => {
        const stopped = (rig.runs[i] as readonly Run[]).find((run) => run.stop)
        const sentence = stopped
          ? refusalOf(stopped.ride, stopped.stop?.travel ?? 0).message
          : `${motion.name} passes its whole travel, out and back.`
        return {
          subject: motion.name,
          result: {
            relation: "rule",
            kind: "number",
            value: null,
            limit: null,
            permitted: !stopped,
            sentence,
            condition: stopped ? conditionOf(stopped) : "both ways, under every condition",
            source: MOTORS,
          },
        }
      }),
  },
  duration("duration-out", "time out", 1),
  duration("duration-back", "time back", -1),
  {
    id: "rated-effort",
    title: "effort against the drive's rating",
    severity: "function",
    reads: [...RIDDEN],
    worsens: { "motions[].drive.ratedTorque": "down" },
    find: (rig) =>
      onSlowMotions(rig, (motion, i, runs) => {
        const limit = motion.drive.ratedEffort
        if (limit === null) return lacking(`motions[${i}].drive`, `${motion.name}'s drive states no effort that it may give for long.`)
        // a load that helps bears on gears and screw as one that resists
        const size = (run: Run) => Math.max(run.quick?.peakEffort ?? 0, -(run.quick?.minEffort ?? 0))
        const worst = worstBy(runs, size)
        const value = size(worst)
        const kind = effortKind(motion)
        return {
          relation: "at-most",
          kind,
          value,
          limit,
          sentence: `Each drive of ${motion.name} works against, or is driven by, up to ${formatQuantity(kind, value)}; it is rated for ${formatQuantity(kind, limit)}.`,
          condition: conditionOf(worst),
          source: { title: "the drive's datasheet", verified: "practice" },
        }
      }),
  },
  {
    id: "driver-current",
    title: "current against its driver's limit",
    severity: "function",
    reads: [...RIDDEN],
    worsens: {},
    find: (rig) =>
      onSlowMotions(rig, (motion, _i, runs) => {
        const limit = motion.drive.currentLimit
        if (limit === null) return null
        const worst = worstBy(runs, (run) => run.quick?.peakCurrent ?? 0)
        const value = worst.quick?.peakCurrent ?? Number.NaN
        return {
          relation: "at-most",
          kind: "current",
          value,
          limit,
          sentence: `Each drive of ${motion.name} draws up to ${formatQuantity("current", value)}; its driver gives ${formatQuantity("current", limit)}.`,
          condition: conditionOf(worst),
          source: { title: "the driver's datasheet", verified: "practice" },
        }
      }),
  },
  {
    id: "swing",
    title: "swing",
    severity: "wish",
    reads: [...RIDDEN, "motions[].wanted.swing"],
    worsens: { "motions[].wanted.swing": "up" },
    find: (rig) =>
      rig.motions.flatMap((motion, i): Found[] => {
        const wanted = rig.rig.motions[i]?.wanted.swing ?? null
        const first = motion.parts[0]
        if (wanted === null || !first || first.mechanism.shows !== "angle") return []
        if ((rig.runs[i] as readonly Run[]).some((run) => run.stop))
          return [
            { subject: motion.name, result: blocked(`${motion.name} is stopped on its way: see there first.`, "passes", motion.name) },
          ]
        const at = (travel: number) => first.mechanism.pose(coordinatesAt(motion, travel)[0] as number).shown
        const value = Math.abs(at(motion.span) - at(0))
        return [
          {
            subject: motion.name,
            result: {
              relation: "at-least",
              kind: "angle",
              value,
              limit: wanted,
              sentence: `${motion.name} swings ${formatQuantity("angle", value)}; ${formatQuantity("angle", wanted)} are wanted.`,
              condition: "over the drive's whole travel",
              source: commonPractice,
            },
          },
        ]
      }),
  },
  {
    id: "span",
    title: "length out",
    severity: "wish",
    reads: [...RIDDEN, "motions[].wanted.span"],
    worsens: { "motions[].wanted.span": "up" },
    find: (rig) =>
      rig.motions.flatMap((motion, i): Found[] => {
        const wanted = rig.rig.motions[i]?.wanted.span ?? null
        const first = motion.parts[0]
        if (wanted === null || !first || first.mechanism.shows !== "length") return []
        if ((rig.runs[i] as readonly Run[]).some((run) => run.stop))
          return [
            { subject: motion.name, result: blocked(`${motion.name} is stopped on its way: see there first.`, "passes", motion.name) },
          ]
        const value = first.mechanism.pose(coordinatesAt(motion, motion.span)[0] as number).shown
        return [
          {
            subject: motion.name,
            result: {
              relation: "at-least",
              kind: "length",
              value,
              limit: wanted,
              sentence: `${motion.name} reaches ${formatQuantity("length", value)}; ${formatQuantity("length", wanted)} are wanted.`,
              condition: "at the end of the drive's travel",
              source: commonPractice,
            },
          },
        ]
      }),
  },
  {
    id: "holds-unpowered",
    title: "stays where it is without power",
    severity: "safety",
    reads: [...STOOD, "motions[].wanted.holds"],
    worsens: { "motions[].drive.holdingForce": "down", "motions[].drive.holdingTorque": "down" },
    find: (rig) =>
      rig.motions.map((motion, i): Found => {
        const { effort, travel, trouble } = heldWalking(rig, motion)
        const kind = effortKind(motion)
        if (trouble)
          return {
            subject: motion.name,
            result: poseless(motion.name),
          }
        const { holdingEffort: limit } = motion.drive
        const place = formatQuantity(motion.drive.travel === "length" ? "length" : "angle", travel)
        const stays = effort <= limit
        const wanted = rig.rig.motions[i]?.wanted.holds ?? false
        const sentence = stays
          ? `Without power each drive of ${motion.name} has to hold ${formatQuantity(kind, effort)}, walking counted and friction not, and holds it.`
          : `Without power ${motion.name} comes down by itself: each drive has to hold up to ${formatQuantity(kind, effort)} at ${place} of its travel, walking counted and friction not, and ${limit > 0 ? `holds ${formatQuantity(kind, limit)}` : "its datasheet promises nothing"}. Keep people clear of it${wanted ? ", and take a drive that locks itself, a brake or a counterweight" : ", or let it down gently"}.`
        return {
          subject: motion.name,
          result: Number.isFinite(limit)
            ? {
                relation: "at-most",
                kind,
                value: effort,
                limit,
                sentence,
                condition: `at ${place} of its drive's travel`,
                source: commonPractice,
              }
            : {
                relation: "rule",
                kind,
                value: effort,
                limit: null,
                permitted: true,
                sentence,
                condition: "over the whole travel",
                source: commonPractice,
              },
        }
      }),
  },
]
