// Forces on a free body, their sum and their moment, and the steps at which a mechanism is compared.
import type { Mechanism, Triple } from "../../../src/rig/mechanisms/mechanism.js"
import { type PlacedMass, stateAt } from "./second-route.js"

/** A point of the plane. */
export type V = readonly [number, number]
export const triple = ([x, y]: V): Triple => [x, y, 0]
/** Whether a cord comes taut, or a vane to its stop, within the steps of a difference. */
export const changesForm = (mechanism: Mechanism, q: number, h: number) =>
  new Set([-10, -2, 0, 2, 10].map((k) => stateAt(mechanism, q + k * h).form)).size > 1
/** Step for differences. */
export const stepOf = ({ low, high }: Mechanism) => (Number.isFinite(high - low) ? Math.min(1e-3, 2e-4 * (high - low)) : 1e-3)

/** A force on a body, and where it works. */
export interface Load {
  readonly at: readonly number[]
  readonly force: readonly number[]
}
export const total = (loads: readonly Load[], axis: number) => loads.reduce((sum, l) => sum + (l.force[axis] as number), 0)
export const turning = (loads: readonly Load[], about: V) =>
  loads.reduce(
    (sum, l) => sum + ((l.at[0] as number) - about[0]) * (l.force[1] as number) - ((l.at[1] as number) - about[1]) * (l.force[0] as number),
    0,
  )
export const sizeOf = (loads: readonly Load[]) => loads.reduce((sum, l) => sum + Math.hypot(...l.force), 0)
export const weights = (masses: readonly PlacedMass[], down: Triple): Load[] =>
  masses.map((m) => ({ at: m.at, force: down.map((g) => g * m.mass) }))
export const minus = (f: readonly number[]) => f.map((v) => -v)
