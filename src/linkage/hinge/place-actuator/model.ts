import { goldenMinimum } from "../../../numeric/index.js"
import type { Region } from "./region.js"

/** The placement problem about a hinge at the origin, plain SI. */
export interface PlaceProblem {
  /** Length retracted and extended. */
  readonly retractedLength: number
  readonly extendedLength: number
  /** Moment of the weights is `amplitude`·cos(arm angle + `phase`), clockwise. */
  readonly amplitude: number
  readonly phase: number
  /** The wearer leans up to this much either way. */
  readonly tiltEitherWay: number
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
}

/** A placement, in the three numbers that decide its motion and force. */
export interface Placement {
  /** Hinge to base, m. */
  readonly distance: number
  /** Hinge to moving pivot, m. */
  readonly radius: number
  /** Arm angle at the clockwise end of the swing, rad. */
  readonly low: number
  readonly swing: number
  readonly branch: 1 | -1
  /** Direction of the base from the hinge, rad. */
  readonly baseAngle: number
  /** Direction of the moving pivot from the hinge at arm angle 0, rad. */
  readonly pinAngle: number
}

export const POSES = 33

/** Angle at the hinge between base and moving pivot at length L. */
export const hingeAngle = (u: number, v: number, length: number) =>
  2 * Math.atan2(Math.sqrt(length * length - v * v), Math.sqrt(u * u - length * length))

/** Size of the lever arm at length L (Heron's formula over L/2). */
export const leverArm = (u: number, v: number, length: number) =>
  Math.sqrt((u * u - length * length) * (length * length - v * v)) / (2 * length)

/** Swing over the stroke; falls with u and rises with |v|. */
export const swingOf = (p: PlaceProblem, u: number, v: number) => hingeAngle(u, v, p.extendedLength) - hingeAngle(u, v, p.retractedLength)

/** Distance of an angle from the nearest multiple of π: the load is largest where it is 0. */
const offLevel = (angle: number) => Math.abs(angle - Math.PI * Math.round(angle / Math.PI))

/** |cos| at the worst lean. */
export const worstCosine = (angle: number, lean: number) => Math.cos(Math.max(0, offLevel(angle) - lean))

/** Minimum worst-lean |cos| over a range of angles. */
export function leastCosine(from: number, to: number, lean: number): number {
  // the farthest from level in the range: square to it where the range holds an odd multiple of π/2
  const square = Math.floor(to / Math.PI - 0.5) > Math.floor(from / Math.PI - 0.5) || to - from >= Math.PI
  const off = square ? Math.PI / 2 : Math.max(offLevel(from), offLevel(to))
  return Math.cos(Math.max(0, Math.min(Math.PI / 2, off + 1e-9) - lean))
}

/** Lengths over the stroke at which forces are looked at. */
export const lengthsOf = (p: PlaceProblem) =>
  Array.from({ length: POSES }, (_, i) => p.retractedLength + ((p.extendedLength - p.retractedLength) * i) / (POSES - 1))

/** Largest force over the stroke at the worst lean and the length where it is needed; found at `lengths`, then refined where asked. */
export function peakForce(
  p: PlaceProblem,
  found: Pick<Placement, "distance" | "radius" | "low" | "branch">,
  lengths: readonly number[],
  refine: boolean,
): { readonly force: number; readonly length: number } {
  const { distance, radius, low, branch } = found
  const [u, v] = [distance + radius, Math.abs(distance - radius)]
  const reference = hingeAngle(u, v, branch === 1 ? p.retractedLength : p.extendedLength)
  const at = (length: number) =>
    (p.amplitude * worstCosine(low + p.phase + branch * (hingeAngle(u, v, length) - reference), p.tiltEitherWay)) / leverArm(u, v, length)
  const forces = lengths.map(at)
  const force = Math.max(...forces)
  let peak = { force, length: lengths[forces.indexOf(force)] as number }
  if (!refine) return peak
  // the load may rise, fall through nothing and rise again: every hump that could hold the peak is climbed
  forces.forEach((here, i) => {
    const [before, after] = [forces[i - 1] ?? 0, forces[i + 1] ?? 0]
    if (here < before || here < after || here < 0.9 * force) return
    const from = lengths[Math.max(0, i - 1)] as number
    const to = lengths[Math.min(lengths.length - 1, i + 1)] as number
    const length = goldenMinimum((l) => -at(l), from, to, 1e-9 * to)
    if (at(length) > peak.force) peak = { force: at(length), length }
  })
  return peak
}

/** Largest force of a placement over its stroke and the length where it is needed. */
export function placementPeak(p: PlaceProblem, found: Placement): { readonly force: number; readonly length: number } {
  return peakForce(p, found, lengthsOf(p), true)
}
