// The placement problem and the closed forms of its motion.

import type { Point } from "../geometry.js"
import type { Envelope } from "./envelope.js"
import type { Region } from "./region.js"

/** Parts of body and frame about a hinge at the origin, and what the rod must keep from them. */
export interface KeepOut {
  readonly polygons: readonly (readonly Point[])[]
  /** Half the width of the actuator, m. */
  readonly halfWidth: number
}

/** The placement problem about a hinge at the origin, plain SI. */
export interface PlaceProblem {
  /** Length retracted and extended. */
  readonly retractedLength: number
  readonly extendedLength: number
  /** Largest moment of the loads at an arm angle, whatever the lean. */
  readonly loads: Envelope
  readonly fixedPivotRegion: Region
  readonly movingPivotRegion: Region
  /** Where the clockwise end of the swing may lie. */
  readonly lowFrom: number
  readonly lowTo: number
  readonly maxSwing: number
  readonly minLever: number
  readonly maxLever: number
  /** Sine of the minimum transmission angle. */
  readonly minTransmissionSine: number
  /** Length to keep from either dead point. */
  readonly minDeadPointMargin: number
  /** Branches allowed: 1 raises by extending, −1 by retracting. */
  readonly branches: readonly (1 | -1)[]
  /** Either pivot may end up this much off, along its line to the hinge and across it. */
  readonly pivotError: number
  /** Retracted and extended length may each be this much off. */
  readonly lengthError: number
  /** What the rod must keep clear of. */
  readonly keepOut: KeepOut | null
}

/** A placement, in the numbers that decide its motion, force and room. */
export interface Placement {
  /** Hinge to base, m. */
  readonly distance: number
  /** Hinge to moving pivot, m. */
  readonly radius: number
  /** Direction of the base less that of the moving pivot at arm angle 0, in the turn that puts the low end where it is asked for. */
  readonly apart: number
  readonly branch: 1 | -1
  /** Swing at the worst build, rad. */
  readonly swing: number
  /** Direction of the base from the hinge, rad. */
  readonly baseAngle: number
  /** Direction of the moving pivot from the hinge at arm angle 0, rad. */
  readonly pinAngle: number
}

/** What decides the forces of a placement. */
export type Motion = Pick<Placement, "distance" | "radius" | "apart" | "branch">

/** Angle at the hinge between base and moving pivot at length L; falls with u = D + r and with |v| = |D − r|. */
export const hingeAngle = (u: number, v: number, length: number) =>
  2 * Math.atan2(Math.sqrt(length * length - v * v), Math.sqrt(u * u - length * length))

/** Size of the lever arm at length L (Heron's formula over L/2); rises with u and falls with |v|. */
export const leverArm = (u: number, v: number, length: number) =>
  Math.sqrt((u * u - length * length) * (length * length - v * v)) / (2 * length)

/** Swing between two lengths; falls with u and rises with |v|. */
export const swingBetween = (u: number, v: number, from: number, to: number) => hingeAngle(u, v, to) - hingeAngle(u, v, from)

/** Angle by which an error across its line to the hinge turns a pivot at a distance. */
export const turnOf = (error: number, distance: number) => (error === 0 ? 0 : Math.asin(Math.min(1, error / distance)))

/** Length at the clockwise end of the swing. */
export const lowLength = (p: PlaceProblem, branch: 1 | -1) => (branch === 1 ? p.retractedLength : p.extendedLength)
