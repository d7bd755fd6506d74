import { wrapAngle } from "../../hinge/geometry.js"
import { standardGravity } from "../../hinge/load.js"

/** A fan of tethered vanes, plain SI. The first vane is driven, each next one hangs on a thread. */
export interface FanGeometry {
  readonly vanes: number
  /** Distance between neighbouring pivots, m, and the direction from the first to the last, rad. */
  readonly pitch: number
  readonly pitchAngle: number
  /** Distance of the threads' ends from the pivots, m. */
  readonly attachRadius: number
  /** Arm angle at which each vane rests on its stop: the first, and how much lower each next one, rad. */
  readonly foldedAngle: number
  readonly foldedStep: number
}

/** Steps of the driver's sweep. */
export const FAN_STEPS = 512

/** Where a thread fails to let the fan move. */
export interface FanJam {
  readonly vane: number
  readonly shortBy: number
}

/** Angle of a vane behind its leader, drawn along by its thread or at rest on its stop; or how far the thread is too short. */
export function followerAngle(g: FanGeometry, vane: number, thread: number, leader: number): number | FanJam {
  const { pitch, pitchAngle, attachRadius: rho } = g
  const rest = restAngle(g, vane)
  // the leader's end of the thread, seen from this vane's pivot
  const x = rho * Math.cos(leader) - pitch * Math.cos(pitchAngle)
  const y = rho * Math.sin(leader) - pitch * Math.sin(pitchAngle)
  const d = Math.hypot(x, y)
  const short = Math.abs(d - rho) - thread
  // at its full reach the thread lies along the vane and has no lever arm left to move it
  if (short > -1e-6 * rho) return { vane, shortBy: short + 1e-6 * rho }
  if (d + rho <= thread + 1e-6 * rho) return rest
  // half angles of the triangle pivot–thread end–thread end
  const sin2 = ((thread - (d - rho)) * (thread + (d - rho))) / (4 * rho * d)
  const half = Math.asin(Math.sqrt(Math.min(1, Math.max(0, sin2))))
  const towards = leader + wrapAngle(Math.atan2(y, x) - leader)
  if (rest > towards + 2 * half) return { vane, shortBy: distanceAt(g, leader, rest) - thread }
  return Math.max(rest, towards - 2 * half)
}

/** Angle at which a vane rests on its stop; beyond it its thread is taut. */
export const restAngle = (g: FanGeometry, vane: number): number => g.foldedAngle - vane * g.foldedStep

/** Angles of all vanes with the first one at `driver`, or the vane whose thread is too short for it. */
export function fanAngles(g: FanGeometry, threads: readonly number[], driver: number): { angles: number[]; taut: boolean[] } | FanJam {
  const angles = [driver]
  const taut: boolean[] = []
  for (let i = 1; i < g.vanes; i++) {
    const angle = followerAngle(g, i, threads[i - 1] as number, angles[i - 1] as number)
    if (typeof angle !== "number") return angle
    angles.push(angle)
    taut.push(angle > restAngle(g, i))
  }
  return { angles, taut }
}

/** Turn of a vane on a taut thread for a turn of its leader, and how that changes as the leader turns on. */
export function followerRate(g: FanGeometry, leader: number, follower: number): { readonly ratio: number; readonly slope: number } {
  const { attachRadius: rho, pitch, pitchAngle } = g
  const both = rho * Math.sin(leader - follower)
  const lead = both + pitch * Math.sin(leader - pitchAngle)
  const own = both + pitch * Math.sin(follower - pitchAngle)
  const ratio = lead / own
  const change = rho * Math.cos(leader - follower) * (1 - ratio)
  const leadChange = change + pitch * Math.cos(leader - pitchAngle)
  const ownChange = change + pitch * Math.cos(follower - pitchAngle) * ratio
  return { ratio, slope: (leadChange - ratio * ownChange) / own }
}

/** Distance of the thread ends of two neighbouring vanes at their angles, m. */
export function distanceAt({ pitch, pitchAngle, attachRadius }: FanGeometry, leader: number, follower: number): number {
  return Math.hypot(
    attachRadius * (Math.cos(leader) - Math.cos(follower)) - pitch * Math.cos(pitchAngle),
    attachRadius * (Math.sin(leader) - Math.sin(follower)) - pitch * Math.sin(pitchAngle),
  )
}

/** Thread lengths at which the fan opens evenly, m. */
export function evenThreads(g: FanGeometry, openAngle: number, step: number): number[] {
  return Array.from({ length: g.vanes - 1 }, (_, i) => distanceAt(g, openAngle - i * step, openAngle - (i + 1) * step))
}

/**
 * Gap between the facing edges of two neighbouring vanes where they are `width` wide, at a distance from
 * their pivots, m; negative where they overlap. Measured square to the line midway between the vanes.
 */
export function vaneGap(g: FanGeometry, leader: number, follower: number, distance: number, width: number): number {
  const half = (leader - follower) / 2
  return 2 * distance * Math.sin(half) - width * Math.cos(half) + g.pitch * Math.sin((leader + follower) / 2 - g.pitchAngle)
}

/** Tensions of the threads and the moment the driven vane needs, by the balance of each vane from the last to the first. */
export function fanForces(
  g: FanGeometry,
  { angles, taut }: { readonly angles: readonly number[]; readonly taut: readonly boolean[] },
  vane: { readonly mass: number; readonly centre: number; readonly returnMoment: number },
  lean: number,
): { readonly tensions: number[]; readonly driverMoment: number } {
  const loadAt = (i: number) =>
    standardGravity * vane.mass * vane.centre * Math.cos((angles[i] as number) + lean) + (i === 0 ? 0 : vane.returnMoment)
  const tensions: number[] = new Array(angles.length - 1).fill(0)
  // moment by which the thread behind a vane holds it back
  let drag = 0
  for (let i = angles.length - 1; i >= 1; i--) {
    const [leader, follower] = [angles[i - 1] as number, angles[i] as number]
    if (!taut[i - 1]) {
      drag = 0
      continue
    }
    const length = distanceAt(g, leader, follower)
    const { own, lead } = threadLevers(g, leader, follower, length)
    const tension = (loadAt(i) + drag) / own
    tensions[i - 1] = tension
    drag = tension * lead
  }
  return { tensions, driverMoment: loadAt(0) + drag }
}

/** Lever arms of a thread about the pivots of the vane it pulls (`own`) and of the one that pulls it (`lead`), m. */
export function threadLevers(
  { pitch, pitchAngle, attachRadius }: FanGeometry,
  leader: number,
  follower: number,
  length: number,
): { readonly own: number; readonly lead: number } {
  const both = (attachRadius * Math.sin(leader - follower)) / length
  const skew = pitch / length
  return {
    own: attachRadius * (both + skew * Math.sin(follower - pitchAngle)),
    lead: attachRadius * (both + skew * Math.sin(leader - pitchAngle)),
  }
}
