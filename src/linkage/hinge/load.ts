import { type HingeGeometry, hingePinAt, type Point } from "./geometry.js"

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
  /** Weight over weight at rest: above 1 as a step lands, below 1 as the body drops; 1 where left out. */
  readonly loadFactor?: number
  /** Force square to the arm at a distance from the hinge (N, m); positive pushes it down, clockwise. */
  readonly gust?: { readonly force: number; readonly radius: number }
  /** Load that a moment across the hinge puts on the two bearings together, N. */
  readonly bearingLoad?: number
}

/** Weight over weight at rest at its largest and, as it swings above so below, at its smallest, down to nothing. */
export const weightFactors = (loadFactor: number): readonly number[] => (loadFactor > 1 ? [loadFactor, Math.max(0, 2 - loadFactor)] : [1])

/** Force of a gust square to the arm, N; 0 without one. */
export const gustOf = (loads: HingeLoads): number => loads.gust?.force ?? 0

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
  const rx = spring.radius * Math.cos(armAngle + spring.angle)
  const ry = spring.radius * Math.sin(armAngle + spring.angle)
  const dx = spring.fixedPivot.x - hinge.x - rx
  const dy = spring.fixedPivot.y - hinge.y - ry
  const length = Math.sqrt(dx * dx + dy * dy)
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
  const pin = hingePinAt(g, armAngle)
  const qx = pin.x - g.fixedPivot.x
  const qy = pin.y - g.fixedPivot.y
  const length = Math.sqrt(qx * qx + qy * qy - g.axisOffset * g.axisOffset)
  const lever = ((pin.x - g.hinge.x) * qy - (pin.y - g.hinge.y) * qx) / length
  const factor = loads.loadFactor ?? 1
  const gravityMoment = factor * gravityMomentAt(loads.masses, armAngle, loads.frameTilt)
  let mass = 0
  for (const w of loads.masses) mass += w.mass
  const weight = standardGravity * factor * mass
  let wx = -weight * Math.sin(loads.frameTilt)
  let wy = -weight * Math.cos(loads.frameTilt)
  let springMoment = 0
  for (const spring of loads.springs) {
    const at = springAt(g.hinge, spring, armAngle)
    springMoment += at.moment
    wx += at.x
    wy += at.y
  }
  const gust = gustOf(loads)
  if (gust !== 0) {
    wx += gust * Math.sin(armAngle)
    wy -= gust * Math.cos(armAngle)
  }
  const force = (gravityMoment + gust * (loads.gust?.radius ?? 0) - springMoment) / lever
  // an actuator pinned at both ends pushes along the line of its pins; the rod's thrust is that force's share along the rod
  const ux = qx / length
  const uy = qy / length
  const rx = force * ux + wx
  const ry = force * uy + wy
  // lever·x = ±ρ·√(|reaction(x)|² + c²) is a quadratic in the extra force x that overcomes friction; the loads of two bearings
  // under a force and a moment across it never add to more than that root
  const rho = loads.frictionRadius
  const across = loads.bearingLoad ?? 0
  const left = lever * lever - rho * rho * (ux * ux + uy * uy)
  const half = rho * rho * (ux * rx + uy * ry)
  const root = rho === 0 ? 0 : Math.sqrt(Math.max(0, half * half + rho * rho * left * (rx * rx + ry * ry + across * across)))
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
