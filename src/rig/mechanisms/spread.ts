// How masses are spread about a point: what a motion that carries them feels besides their weight.
import type { Triple } from "./triple.js"

/** Σ m·x², Σ m·y² … of masses about the origin of a frame, kg·m². */
export interface MassSpread {
  readonly xx: number
  readonly yy: number
  readonly zz: number
  readonly xy: number
  readonly xz: number
  readonly yz: number
}

/** MassSpread of one mass at a place. */
export const pointSpread = (mass: number, [x, y, z]: Triple): MassSpread => ({
  xx: mass * x * x,
  yy: mass * y * y,
  zz: mass * z * z,
  xy: mass * x * y,
  xz: mass * x * z,
  yz: mass * y * z,
})

/** Two spreads about the same point together, the second so many times. */
export const spreadSum = (a: MassSpread, b: MassSpread, times = 1): MassSpread => ({
  xx: a.xx + times * b.xx,
  yy: a.yy + times * b.yy,
  zz: a.zz + times * b.zz,
  xy: a.xy + times * b.xy,
  xz: a.xz + times * b.xz,
  yz: a.yz + times * b.yz,
})

/** A spread times a direction: Σ m·r·(r·v). */
export const spreadAlong = (s: MassSpread, v: Triple): Triple => [
  s.xx * v[0] + s.xy * v[1] + s.xz * v[2],
  s.xy * v[0] + s.yy * v[1] + s.yz * v[2],
  s.xz * v[0] + s.yz * v[1] + s.zz * v[2],
]
