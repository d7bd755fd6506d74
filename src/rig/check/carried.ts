// What the wearer carries: all parts and moving masses, where their centre is, what room they take and how fast they strike.
import type { Triple } from "../mechanisms/mechanism.js"
import { ownParts } from "../run/carrying.js"
import { coordinatesAt, type MotionModel, type MovedPart, slopesAt } from "../run/motion-model.js"
import { ridePoint } from "../run/ride.js"
import type { RigSi } from "../whole/faults.js"
import type { Judged, Run } from "./conditions.js"

/** A point of a mechanism's own frame in the wearer's axes: forward, left, up. */
export function inBody({ frame: { at, x, y, z } }: MovedPart, p: Triple): Triple {
  const of = (i: 0 | 1 | 2) => at[i] + x[i] * p[0] + y[i] * p[1] + z[i] * p[2]
  return [of(0), of(1), of(2)]
}

/** Centre of mass of everything carried, in one pose. */
export interface CarriedPose {
  readonly name: string
  readonly forward: number
  readonly left: number
  readonly up: number
}

/** Mass of everything carried, kg; null where no part is listed. */
export function carriedMass({ rig, motions }: Judged): number | null {
  if (!rig.parts.length) return null
  let mass = rig.parts.reduce((sum, p) => sum + p.count * p.mass, 0)
  for (const motion of motions) {
    const q = coordinatesAt(motion, 0)
    ownParts(motion, 0).forEach((part, i) => {
      mass += part.count * part.mechanism.pose(q[i] as number).mass
    })
  }
  return mass
}

/** Which ends of their travel the motions stand at. */
const ends = [
  { name: "all motions in", at: 0 },
  { name: "all motions out", at: 1 },
] as const

/** Name of the first motion that has no pose at an end of its travel; null where all have. */
export function unposed({ motions }: Judged): string | null {
  const lacksPose = (motion: MotionModel) =>
    ends.some(({ at }) => {
      const q = coordinatesAt(motion, at * motion.span)
      return ownParts(motion, at).some((part, i) => part.mechanism.pose(q[i] as number).centre.some(Number.isNaN))
    })
  return motions.find(lacksPose)?.name ?? null
}

/** Centre of mass with every motion at the start of its travel, and at its end. */
export function carriedPoses(rig: Judged): readonly CarriedPose[] {
  return ends.map(({ name, at }) => {
    let [mass, forward, left, up] = [0, 0, 0, 0]
    const add = (m: number, f: number, l: number, u: number) => {
      mass += m
      forward += m * f
      left += m * l
      up += m * u
    }
    for (const p of rig.rig.parts) add(p.count * p.mass, p.forward, p.left, p.height)
    for (const motion of rig.motions) {
      const q = coordinatesAt(motion, at * motion.span)
      ownParts(motion, at).forEach((part, i) => {
        const pose = part.mechanism.pose(q[i] as number)
        const [f, l, u] = inBody(part, pose.centre)
        add(part.count * pose.mass, f, l, u)
      })
    }
    return { name, forward: forward / mass, left: left / mass, up: up / mass }
  })
}

/** Room that wearer and rig take, every motion at one end. */
export interface Room {
  readonly width: number
  readonly forward: number
  readonly backward: number
  readonly height: number
}

/** Room taken with every motion at the start of its travel, and at its end; the narrower first. */
export function roomsOf(rig: Judged, stature: number, venue: NonNullable<RigSi["venue"]>): readonly [Room, Room] {
  const [first, second] = ends.map(({ at }): Room => {
    let [half, forward, backward, height] = [venue.bodyWidth / 2, venue.front, venue.back, stature]
    for (const motion of rig.motions) {
      const q = coordinatesAt(motion, at * motion.span)
      ownParts(motion, at).forEach((part, i) => {
        const pose = part.mechanism.pose(q[i] as number)
        for (const p of [pose.tip, ...pose.parts.flatMap((one) => one.points)]) {
          const [f, l, u] = inBody(part, p)
          half = Math.max(half, Math.abs(l))
          forward = Math.max(forward, f)
          backward = Math.max(backward, -f)
          height = Math.max(height, u)
        }
      })
    }
    return { width: 2 * half, forward, backward, height }
  }) as [Room, Room]
  return first.width <= second.width ? [first, second] : [second, first]
}

/** The fastest blow of a motion's tips, and the most that its drives can push a tip with. */
export interface Strike {
  readonly part: MovedPart
  readonly condition: string
  /** Speed of the tip, m/s, and the arm behind it. */
  readonly tipSpeed: number
  readonly armLength: number
  readonly armMass: number
  /** Moment about its hinge that the drives can press with, N·m. */
  readonly driveMoment: number
}

/** The fastest blow of a motion over its runs; null where nothing of it moves. */
export function strikeOf(runs: readonly Run[]): Strike | null {
  let found: Strike | null = null
  for (const run of runs) {
    if (run.stop) continue
    const { motion } = run.ride
    for (let k = 0; k <= 40; k++) {
      const travel = (motion.span * k) / 40
      const { rate, voltage } = ridePoint(run.ride, travel)
      const { line } = run.ride
      const stall = Math.max(0, voltage / line.windingResistance - line.frictionCurrent)
      const effort = Math.min(stall, motion.drive.currentLimit ?? stall) * line.effortConstant * motion.drives
      const q = coordinatesAt(motion, travel)
      const slopes = slopesAt(motion, travel)
      motion.parts.forEach((part, i) => {
        const pose = part.mechanism.pose(q[i] as number)
        const perTravel = Math.abs(slopes[i] as number) * Math.hypot(...pose.tipRate)
        if (!(perTravel > 0) || !Number.isFinite(perTravel)) return
        const tipSpeed = rate * perTravel
        const hinge = pose.pins[0]?.at ?? pose.centre
        const armLength = Math.hypot(pose.tip[0] - hinge[0], pose.tip[1] - hinge[1], pose.tip[2] - hinge[2])
        // one part that is caught takes what all drives give
        const driveMoment = (effort / perTravel) * armLength
        const worst = { tipSpeed: Math.max(found?.tipSpeed ?? 0, tipSpeed), driveMoment: Math.max(found?.driveMoment ?? 0, driveMoment) }
        const isFastest = !found || tipSpeed > found.tipSpeed
        found =
          isFastest || !found
            ? { part, condition: `${run.way === 1 ? "out" : "back"}, ${run.condition}`, armLength, armMass: pose.mass, ...worst }
            : { ...found, ...worst }
      })
    }
  }
  return found
}
