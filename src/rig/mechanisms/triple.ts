// Vectors in a mechanism's own frame.
import type { Length } from "../../quantity/index.js"
import type { GroupField } from "../../solver/index.js"

/** A point or direction of a mechanism's own frame: x outward, y up, z = x × y. */
export type Triple = readonly [x: number, y: number, z: number]

/** A point of a mechanism's own frame: x outward, y up, z = x × y. */
export interface SpacePoint {
  /** Outward. [−5 to 5 m] */
  x: Length
  /** Upward. [−5 to 5 m] */
  y: Length
  /** Square to both. [−5 to 5 m] */
  z: Length
}

/** A direction in a mechanism's own frame; only the proportions of the three numbers count. */
export interface SpaceDirection {
  /** Part outward. [−1000 to 1000] */
  x: number
  /** Part upward. [−1000 to 1000] */
  y: number
  /** Part square to both. [−1000 to 1000] */
  z: number
}

/** A described point in space. */
export const spacePoint = (label: string, symbol: string): GroupField<SpacePoint> => ({
  kind: "group",
  label,
  fields: {
    x: { kind: "length", symbol: `x_${symbol}`, label: `${label}, outward`, min: -5, max: 5, typical: ["-0.3 m", "0.9 m"] },
    y: { kind: "length", symbol: `y_${symbol}`, label: `${label}, upward`, min: -5, max: 5, typical: ["-0.4 m", "0.4 m"] },
    z: { kind: "length", symbol: `z_${symbol}`, label: `${label}, square to both`, min: -5, max: 5, typical: ["-0.3 m", "0.3 m"] },
  },
})

/** A described direction in space. */
export const spaceDirection = (label: string, symbol: string): GroupField<SpaceDirection> => ({
  kind: "group",
  label,
  fields: {
    x: { kind: "number", symbol: `x_${symbol}`, label: `${label}, part outward`, min: -1000, max: 1000, typical: [-1, 1] },
    y: { kind: "number", symbol: `y_${symbol}`, label: `${label}, part upward`, min: -1000, max: 1000, typical: [-1, 1] },
    z: { kind: "number", symbol: `z_${symbol}`, label: `${label}, part square to both`, min: -1000, max: 1000, typical: [-1, 1] },
  },
})

export const tripleOf = ({ x, y, z }: { readonly x: number; readonly y: number; readonly z: number }): Triple => [x, y, z]
export const dot = (a: Triple, b: Triple): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
export const cross = (a: Triple, b: Triple): Triple => [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
export const plus = (a: Triple, b: Triple, share = 1): Triple => [a[0] + share * b[0], a[1] + share * b[1], a[2] + share * b[2]]
export const scaled = (a: Triple, share: number): Triple => [share * a[0], share * a[1], share * a[2]]
export const size = (a: Triple): number => Math.hypot(a[0], a[1], a[2])
