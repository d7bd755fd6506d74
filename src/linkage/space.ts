// Vectors on the body: forward, left, up.

/** A place or direction in body axes. */
export interface BodyVector {
  /** Forward [N or N m or number] */
  readonly forward: number
  /** Left [N or N m or number] */
  readonly left: number
  /** Up [N or N m or number] */
  readonly up: number
}

export const plus = (a: BodyVector, b: BodyVector, share = 1): BodyVector => ({
  forward: a.forward + share * b.forward,
  left: a.left + share * b.left,
  up: a.up + share * b.up,
})
export const scaled = (a: BodyVector, share: number): BodyVector => ({
  forward: share * a.forward,
  left: share * a.left,
  up: share * a.up,
})
export const dot = (a: BodyVector, b: BodyVector): number => a.forward * b.forward + a.left * b.left + a.up * b.up
export const cross = (a: BodyVector, b: BodyVector): BodyVector => ({
  forward: a.left * b.up - a.up * b.left,
  left: a.up * b.forward - a.forward * b.up,
  up: a.forward * b.left - a.left * b.forward,
})
export const size = (a: BodyVector): number => Math.hypot(a.forward, a.left, a.up)

/** A vector turned about a unit axis (Rodrigues). */
export function turnedAbout(axis: BodyVector, angle: number, v: BodyVector): BodyVector {
  const along = scaled(v, Math.cos(angle))
  const round = plus(along, cross(axis, v), Math.sin(angle))
  return plus(round, axis, dot(axis, v) * 2 * Math.sin(angle / 2) ** 2)
}
