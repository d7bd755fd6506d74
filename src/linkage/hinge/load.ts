import { type HingeGeometry, hingeLengthAt, hingeLeverAt, hingePinAt, type Point } from "./geometry.js"

/** Standard gravity, m/s² (exact: 3rd CGPM, 1901; NIST SP 811, 2008 edition, appendix B.8). */
export const standardGravity = 9.80665

/** A mass on the arm, plain SI. */
export interface HingeMass {
  readonly mass: number
  /** Distance from the hinge, m. */
  readonly radius: number
  /** Angle from the arm, rad. */
  readonly angle: number
}

/** A spring or cord between a fixed point and a point on the arm, plain SI. */
export interface HingeSpring {
  readonly fixedPivot: Point
  readonly radius: number
  readonly angle: number
  readonly stiffness: number
  readonly freeLength: number
  /** Tension at which a close-wound spring begins to open, N. */
  readonly preload: number
  /** Whether it can only pull, as a cord or an extension spring does. */
  readonly pullsOnly: boolean
}

/** Everything that loads the arm besides the actuator. */
export interface HingeLoads {
  readonly masses: readonly HingeMass[]
  readonly springs: readonly HingeSpring[]
  /** Angle by which the wearer leans; positive turns the frame counter-clockwise, rad. */
  readonly frameTilt: number
  /** Friction radius of the hinge pin: coefficient times half the pin's diameter, m. */
  readonly frictionRadius: number
}

/** Forces and moments at one pose. */
export interface HingeStatics {
  readonly length: number
  readonly lever: number
  /** Moment by which the weights turn the arm clockwise, N·m. */
  readonly gravityMoment: number
  /** Moment by which the springs turn the arm counter-clockwise, N·m. */
  readonly springMoment: number
  /** Actuator force that balances without friction, N; positive pushes. */
  readonly force: number
  /** Force while the actuator extends against friction, N. */
  readonly extendForce: number
  /** Force while it retracts, N. */
  readonly retractForce: number
  /** Force of the hinge on the arm at rest, N, in the wearer's frame. */
  readonly reaction: Point
  /** Whether the lever arm is inside the friction circle, so that no force moves the arm. */
  readonly locked: boolean
}

/** Gravity moment (clockwise positive) at an arm angle, N·m. */
export function gravityMomentAt(weights: readonly HingeMass[], armAngle: number, lean: number): number {
  let moment = 0
  for (const w of weights) moment += w.mass * w.radius * Math.cos(armAngle + w.angle + lean)
  return standardGravity * moment
}

/** Tension of a spring at a length between its ends, N. */
export function springTension(spring: Omit<HingeSpring, "fixedPivot" | "radius" | "angle">, length: number): number {
  if (spring.pullsOnly && length <= spring.freeLength) return 0
  return spring.preload + spring.stiffness * (length - spring.freeLength)
}

/** Length, force on the arm and moment (counter-clockwise positive) of a spring at an arm angle. */
export function springAt(
  hinge: Point,
  spring: HingeSpring,
  armAngle: number,
): { readonly length: number; readonly tension: number; readonly x: number; readonly y: number; readonly moment: number } {
  const [rx, ry] = [spring.radius * Math.cos(armAngle + spring.angle), spring.radius * Math.sin(armAngle + spring.angle)]
  const [dx, dy] = [spring.fixedPivot.x - hinge.x - rx, spring.fixedPivot.y - hinge.y - ry]
  const length = Math.hypot(dx, dy)
  const tension = springTension(spring, length)
  // ends that coincide leave no direction to pull in
  const share = length === 0 ? 0 : tension / length
  return { length, tension, x: share * dx, y: share * dy, moment: share * (rx * dy - ry * dx) }
}

/**
 * Energy stored in a spring at a length, J: the area under its tension from the free length on.
 */
export function springEnergy(spring: Omit<HingeSpring, "fixedPivot" | "radius" | "angle">, length: number): number {
  const stretch = length - spring.freeLength
  if (spring.pullsOnly && stretch <= 0) return 0
  return spring.preload * stretch + (spring.stiffness * stretch ** 2) / 2
}

/** Balance of the arm at an angle. */
export function hingeStaticsAt(g: HingeGeometry, loads: HingeLoads, armAngle: number): HingeStatics {
  const length = hingeLengthAt(g, armAngle)
  const lever = hingeLeverAt(g, armAngle)
  const gravityMoment = gravityMomentAt(loads.masses, armAngle, loads.frameTilt)
  let mass = 0
  for (const w of loads.masses) mass += w.mass
  let [wx, wy] = [-standardGravity * mass * Math.sin(loads.frameTilt), -standardGravity * mass * Math.cos(loads.frameTilt)]
  let springMoment = 0
  for (const spring of loads.springs) {
    const at = springAt(g.hinge, spring, armAngle)
    springMoment += at.moment
    wx += at.x
    wy += at.y
  }
  const force = (gravityMoment - springMoment) / lever
  // an actuator pinned at both ends pushes along the line of its pins; the rod's thrust is that force's share along the rod
  const pin = hingePinAt(g, armAngle)
  const [ux, uy] = [(pin.x - g.fixedPivot.x) / length, (pin.y - g.fixedPivot.y) / length]
  const [rx, ry] = [force * ux + wx, force * uy + wy]
  // lever·x = ±ρ·|reaction(x)| is a quadratic in the extra force x that overcomes friction
  const rho2 = loads.frictionRadius ** 2
  const left = lever ** 2 - rho2 * (ux ** 2 + uy ** 2)
  const half = rho2 * (ux * rx + uy * ry)
  const root = loads.frictionRadius * Math.sqrt(Math.max(0, (half * half) / (rho2 || 1) + left * (rx ** 2 + ry ** 2)))
  return {
    length,
    lever,
    gravityMoment,
    springMoment,
    force,
    extendForce: force + (half + root) / left,
    retractForce: force + (half - root) / left,
    reaction: { x: -rx, y: -ry },
    locked: !(left > 0),
  }
}
