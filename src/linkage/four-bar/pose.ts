import { type Point, wrapAngle } from "../hinge/geometry.js"

/** Which way a linkage is put together: `open` has the output pin left of the line from input pin to output pivot. */
export type Assembly = "open" | "crossed"

/** Pose of a four-bar linkage; input pivot at (0, 0), output pivot at (ground, 0). */
export interface FourBarPose {
  /** Input pin, m. */
  readonly inputPin: Point
  /** Output pin, m. */
  readonly outputPin: Point
  /** Distance from the input pin to the output pivot, m. */
  readonly diagonal: number
  /** Coupler angle, from input pin to output pin, rad. */
  readonly couplerAngle: number
  /** Output angle at its pivot, rad. */
  readonly outputAngle: number
  /** Transmission angle, the acute one between coupler and output, rad. */
  readonly transmissionAngle: number
}

/** Relative width within which a length that should be zero is rounding. */
export const ROUNDING = 1e-12

/** The longest of four links, by its name, cut to what the three others together reach. */
export function longestWithin(links: Readonly<Record<string, number>>): Record<string, number> {
  const [name, length] = Object.entries(links).reduce((most, link) => (link[1] > most[1] ? link : most))
  return { [name]: (Object.values(links).reduce((sum, link) => sum + link, 0) - length) * (1 - 1e-9) }
}

/**
 * Angle between two sides of a triangle by the one opposite it, 0 to π; rounding just beyond a triangle in one line is forgiven,
 * null further out. By half the angle: an arc cosine loses half of its digits where the sides come into line.
 */
export function triangleAngle(side: number, other: number, opposite: number): number | null {
  const apart = Math.abs(side - other)
  const sineSquared = ((opposite - apart) / (4 * side)) * ((opposite + apart) / other)
  const cosineSquared = ((side + other - opposite) / (4 * side)) * ((side + other + opposite) / other)
  if (!(sineSquared >= -ROUNDING / 2 && cosineSquared >= -ROUNDING / 2)) return null
  return 2 * Math.atan2(Math.sqrt(Math.max(0, sineSquared)), Math.sqrt(Math.max(0, cosineSquared)))
}

/** From input pin to output pivot; by half the angle where both may meet, so that what is left keeps its digits. */
function diagonalAt(ground: number, input: number, angle: number) {
  const cosine = Math.cos(angle)
  const dx = cosine > 0.5 ? ground - input + 2 * input * Math.sin(angle / 2) ** 2 : ground - input * cosine
  const dy = -input * Math.sin(angle)
  return { dx, dy, length: Math.hypot(dx, dy) }
}

/**
 * Pose of a four-bar linkage for an input angle, by intersecting two circles; no argument is clamped
 * beyond rounding.
 *
 * @returns the pose, or by how much (m) coupler and output are too short or too unequal to meet; 0
 * where input pin and output pivot coincide, which leaves the output free
 */
export function fourBarPose(ground: number, input: number, coupler: number, output: number, angle: number, branch: Assembly) {
  const f = diagonalAt(ground, input, angle).length
  const gap = Math.max(f - coupler - output, Math.abs(coupler - output) - f)
  const size = ground + input + coupler + output
  if (gap > ROUNDING * size) return gap
  if (f <= ROUNDING * size) return 0
  return closedPose(ground, input, coupler, output, angle, branch)
}

/** The pose where coupler and output are known to meet, input pin and output pivot apart. */
export function closedPose(ground: number, input: number, coupler: number, output: number, angle: number, branch: Assembly): FourBarPose {
  const [ax, ay] = [input * Math.cos(angle), input * Math.sin(angle)]
  const { dx, dy, length: f } = diagonalAt(ground, input, angle)
  const product = (coupler + output + f) * (coupler + output - f) * (f + coupler - output) * (f - coupler + output)
  const height = ((branch === "open" ? 1 : -1) * Math.sqrt(Math.max(0, product))) / (2 * f)
  const along = (f + ((coupler - output) / f) * (coupler + output)) / 2
  const [rx, ry] = [(along * dx - height * dy) / f, (height * dx + along * dy) / f]
  return {
    inputPin: { x: ax, y: ay },
    outputPin: { x: ax + rx, y: ay + ry },
    diagonal: f,
    couplerAngle: Math.atan2(ry, rx),
    outputAngle: Math.atan2(ry - dy, rx - dx),
    transmissionAngle: Math.atan2(Math.abs(height) * f, Math.abs(coupler ** 2 + output ** 2 - f ** 2) / 2),
  }
}

/**
 * Turn of coupler and output for a turn of the input, and the slopes of both: the loop equation differentiated twice, resolved
 * along the output and along the coupler. Angles of input, coupler and output from the line of the fixed pivots.
 */
export function fourBarRates(input: number, coupler: number, output: number, t2: number, t3: number, t4: number) {
  const sine = Math.sin(t4 - t3)
  const k3 = (input * Math.sin(t4 - t2)) / (coupler * -sine)
  const k4 = (input * Math.sin(t2 - t3)) / (output * sine)
  const turn = Math.cos(t3 - t4)
  return {
    sine,
    couplerRate: k3,
    outputRate: k4,
    couplerBend: (input * Math.cos(t2 - t4) + coupler * k3 ** 2 * turn - output * k4 ** 2) / (coupler * sine),
    outputBend: (input * Math.cos(t2 - t3) + coupler * k3 ** 2 - output * k4 ** 2 * turn) / (output * sine),
  }
}

/** Input angles between 0 and π at which coupler and output come into line, null where that never happens. */
export function fourBarToggles(ground: number, input: number, coupler: number, output: number) {
  const at = (reach: number) => triangleAngle(ground, input, reach)
  return { extended: at(coupler + output), folded: at(Math.abs(coupler - output)) }
}

/**
 * Input angle at which links that close somewhere can be assembled, nearest to the one asked for.
 * Clear of the dead point by a ten-thousandth of a turn where there is room.
 */
export function nearestClosing(ground: number, input: number, coupler: number, output: number, angle: number): number {
  const { extended, folded } = fourBarToggles(ground, input, coupler, output)
  const low = folded ?? 0
  const high = extended ?? Math.PI
  const off = Math.min(2e-4 * Math.PI, (high - low) / 2)
  const asked = wrapAngle(angle)
  const inside = Math.min(high - (extended === null ? 0 : off), Math.max(low + (folded === null ? 0 : off), Math.abs(asked)))
  return asked < 0 ? -inside : inside
}
