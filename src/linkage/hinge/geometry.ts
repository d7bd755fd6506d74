/** A point in the wearer's vertical plane, m: x outward, y up. */
export interface Point {
  /** X [m] */
  readonly x: number
  /** Y [m] */
  readonly y: number
}

/**
 * An arm on a hinge, moved by an actuator between a fixed pivot (base) and a pivot on the arm.
 * Plain SI numbers: metres and radians.
 */
export interface HingeGeometry {
  readonly hinge: { readonly x: number; readonly y: number }
  /** Fixed pivot of the actuator. */
  readonly fixedPivot: { readonly x: number; readonly y: number }
  /** Pivot on the arm: distance from the hinge, m, and angle from the arm, rad. */
  readonly movingPivot: { readonly radius: number; readonly angle: number }
  /** Distance by which the rod axis misses the fixed pivot, m; 0 for a rod that points at its pivot. */
  readonly axisOffset: number
}

/** The angle as it is written above −π and up to π. */
export function wrapAngle(angle: number): number {
  return angle - 2 * Math.PI * Math.ceil(angle / (2 * Math.PI) - 0.5)
}

/** Where the moving pivot is at an arm angle, m. */
export function hingePinAt(g: HingeGeometry, armAngle: number): Point {
  const angle = armAngle + g.movingPivot.angle
  return { x: g.hinge.x + g.movingPivot.radius * Math.cos(angle), y: g.hinge.y + g.movingPivot.radius * Math.sin(angle) }
}

/**
 * Length of the actuator at an arm angle, m, measured along the rod: √(q² − e²), with q the distance
 * of the pivots (m) and e the axis offset (m).
 *
 * Defined where q exceeds e; {@link hingeAngleAt} tells which lengths an arm can reach.
 */
export function hingeLengthAt(g: HingeGeometry, armAngle: number): number {
  const pin = hingePinAt(g, armAngle)
  const q = Math.hypot(pin.x - g.fixedPivot.x, pin.y - g.fixedPivot.y)
  return Math.sqrt((q - g.axisOffset) * (q + g.axisOffset))
}

/**
 * Lever arm of the actuator about the hinge by virtual work, dL/dθ, m. Positive where extension
 * turns the arm counter-clockwise (raises it); 0 at a dead point.
 *
 * With an axis offset this is not the perpendicular distance from the hinge to the rod axis.
 */
export function hingeLeverAt(g: HingeGeometry, armAngle: number): number {
  const pin = hingePinAt(g, armAngle)
  const [rx, ry] = [pin.x - g.hinge.x, pin.y - g.hinge.y]
  const [qx, qy] = [pin.x - g.fixedPivot.x, pin.y - g.fixedPivot.y]
  return (rx * qy - ry * qx) / hingeLengthAt(g, armAngle)
}

/**
 * Shortest and longest rod length at which the triangle hinge–fixed pivot–pin closes, m. At either end the
 * moving pivot lies on the line through hinge and base: a dead point.
 */
export function hingeLengthRange(g: HingeGeometry): { readonly shortest: number; readonly longest: number } {
  const distance = Math.hypot(g.fixedPivot.x - g.hinge.x, g.fixedPivot.y - g.hinge.y)
  const rod = (q: number) => Math.sqrt(Math.max(0, q - g.axisOffset) * (q + g.axisOffset))
  return { shortest: rod(Math.abs(distance - g.movingPivot.radius)), longest: rod(distance + g.movingPivot.radius) }
}

/**
 * Arm angle at an actuator length, rad, or null where the triangle cannot close. Assembly 1 has the
 * moving pivot counter-clockwise of the line hinge–fixed pivot (extension raises the arm), −1 clockwise.
 * Continuous in the length; the middle of the two branches is written between −π and π.
 */
export function hingeAngleAt(g: HingeGeometry, length: number, branch: 1 | -1): number | null {
  const [dx, dy] = [g.fixedPivot.x - g.hinge.x, g.fixedPivot.y - g.hinge.y]
  const distance = Math.hypot(dx, dy)
  const q = Math.hypot(length, g.axisOffset)
  const four = 4 * distance * g.movingPivot.radius
  // half angles keep their digits near dead points, where the cosine rule loses them
  const sin2 = ((q - (distance - g.movingPivot.radius)) * (q + (distance - g.movingPivot.radius))) / four
  const cos2 = ((distance + g.movingPivot.radius - q) * (distance + g.movingPivot.radius + q)) / four
  // rounding alone may leave a hair less than nothing at a dead point; more than that cannot close
  if (!(length >= 0 && sin2 >= -1e-12 && cos2 >= -1e-12)) return null
  const apart = 2 * Math.atan2(Math.sqrt(Math.max(0, sin2)), Math.sqrt(Math.max(0, cos2)))
  return wrapAngle(Math.atan2(dy, dx) - g.movingPivot.angle) + branch * apart
}
