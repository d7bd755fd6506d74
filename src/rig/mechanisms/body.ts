// A rigid body that moves in the plane of a mechanism: what its masses ask, wherever the mechanism has it.
import type { MechanismState, Triple } from "./mechanism.js"
import { type MassSpread, pointSpread, spreadSum } from "./spread.js"

/** A body, by its masses about one of its points. */
export interface PlaneBody {
  /** Mass, first moments along and across the body, kg and kg·m, and inertia about the point, kg·m². */
  readonly mass: number
  readonly along: number
  readonly across: number
  readonly inertia: number
  /** Σ m·(u² − v²) and Σ m·u·v, u along the body and v across it, kg·m²; left out, all of its inertia lies along it. */
  readonly skew?: number
  readonly product?: number
}

/** A body of masses, each at a distance and angle from the point. */
export function bodyOf(masses: readonly { readonly mass: number; readonly radius: number; readonly angle: number }[]): PlaneBody {
  let [mass, along, across, inertia, skew, product] = [0, 0, 0, 0, 0, 0]
  for (const m of masses) {
    const square = m.mass * m.radius ** 2
    mass += m.mass
    along += m.mass * m.radius * Math.cos(m.angle)
    across += m.mass * m.radius * Math.sin(m.angle)
    inertia += square
    skew += square * Math.cos(2 * m.angle)
    product += (square * Math.sin(2 * m.angle)) / 2
  }
  return { mass, along, across, inertia, skew, product }
}

/** An even rod, about one of its ends. */
export const rodBody = (mass: number, length: number): PlaneBody => ({
  mass,
  along: (mass * length) / 2,
  across: 0,
  inertia: (mass * length ** 2) / 3,
})

/**
 * Adds to a state what a body asks that stands at an angle (rad): its point moves by (vx, vy) and it turns by `rate` for 1 of q;
 * (ax, ay) and `bend` are the slopes of those.
 */
export function addBody(
  state: MechanismState,
  body: PlaneBody,
  angle: number,
  vx: number,
  vy: number,
  ax: number,
  ay: number,
  rate: number,
  bend: number,
): void {
  const [c, s] = [Math.cos(angle), Math.sin(angle)]
  // first moment as it stands, and turned by a quarter: what a turn moves it by
  const sx = body.along * c - body.across * s
  const sy = body.along * s + body.across * c
  state.massX += body.mass * vx - rate * sy
  state.massY += body.mass * vy + rate * sx
  const turned = vy * sx - vx * sy
  state.inertia += body.mass * (vx * vx + vy * vy) + 2 * rate * turned + body.inertia * rate * rate
  state.inertiaSlope +=
    2 *
    (body.mass * (vx * ax + vy * ay) + bend * turned + rate * (ay * sx - ax * sy - rate * (vx * sx + vy * sy)) + body.inertia * rate * bend)
}

/** Share of an effort's own parts that rounding may leave of it. */
const ROUNDING = 1e-12

/**
 * Effort beyond what holds a mechanism at rest, of the state that it has there. Nothing where it is no more than rounding: at a
 * dead centre, where no effort goes through, a last digit would be told as tonnes at the pins.
 */
export function effortBeyond(effort: number, { springs, massX, massY, massZ }: MechanismState, down: Triple): number {
  const [x, y, z] = [down[0] * massX, down[1] * massY, down[2] * massZ]
  const beyond = effort - (springs - x - y - z)
  const size = Math.abs(effort) + Math.abs(springs) + Math.abs(x) + Math.abs(y) + Math.abs(z)
  return Math.abs(beyond) > ROUNDING * size ? beyond : 0
}

/** Moment of a body's weight about its point, counter-clockwise. */
export function weightMoment(body: PlaneBody, angle: number, down: Triple): number {
  const [c, s] = [Math.cos(angle), Math.sin(angle)]
  return (body.along * c - body.across * s) * down[1] - (body.along * s + body.across * c) * down[0]
}

/** All bodies' mass, their common centre and how they are spread, each body's point at (x, y) and standing at its angle. */
export function massCentre(
  placed: readonly { readonly body: PlaneBody; readonly x: number; readonly y: number; readonly angle: number }[],
): { readonly mass: number; readonly centre: Triple; readonly spread: MassSpread } {
  let [mass, sx, sy] = [0, 0, 0]
  let spread = pointSpread(0, [0, 0, 0])
  for (const { body, x, y, angle } of placed) {
    const [c, s] = [Math.cos(angle), Math.sin(angle)]
    const { skew = body.inertia, product = 0 } = body
    const [fx, fy] = [body.along * c - body.across * s, body.along * s + body.across * c]
    const [uu, vv] = [(body.inertia + skew) / 2, (body.inertia - skew) / 2]
    mass += body.mass
    sx += body.mass * x + fx
    sy += body.mass * y + fy
    spread = spreadSum(spread, {
      xx: body.mass * x * x + 2 * x * fx + uu * c * c - 2 * product * c * s + vv * s * s,
      yy: body.mass * y * y + 2 * y * fy + uu * s * s + 2 * product * c * s + vv * c * c,
      zz: 0,
      xy: body.mass * x * y + x * fy + y * fx + (uu - vv) * c * s + product * (c * c - s * s),
      xz: 0,
      yz: 0,
    })
  }
  return { mass, centre: mass > 0 ? [sx / mass, sy / mass, 0] : [0, 0, 0], spread }
}
