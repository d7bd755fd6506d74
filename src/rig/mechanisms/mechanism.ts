// The seam between what is moved and the rest of the rig: one interface for every mechanism.
import type { AnyFields, Either, Fields, Issue, NoSolution, Nullable, SiOf } from "../../solver/index.js"
import type { Travel } from "../drives/drive.js"
import type { Moving } from "./moving.js"
import type { MassSpread } from "./spread.js"
import type { Triple } from "./triple.js"

export type { Triple } from "./triple.js"

/**
 * What a mechanism asks at one place of its coordinate q (m or rad); efforts are N or N·m at q. The caller owns it and it is
 * written anew at every call, so that nothing is allocated in the inner loop.
 */
export interface MechanismState {
  /** Effort towards growing q that holds it against its springs: dU/dq of what they store. */
  springs: number
  /** Σ m·∂r/∂q of its masses, kg·m or kg: times the upward pull it resists, the effort of weight; times an acceleration of the body, that of steps. */
  massX: number
  massY: number
  massZ: number
  /** Σ A·n·(n·∂r/∂q) of its panels: effort towards growing q that holds it against a wind pressure of 1 Pa along x, y or z. */
  windX: number
  windY: number
  windZ: number
  /** Friction against the motion: `dry` + `share` · |effort|. */
  frictionDry: number
  frictionShare: number
  /** Inertia at q, kg or kg·m², and its slope d/dq. */
  inertia: number
  inertiaSlope: number
  /** Which form its equations have here: a spring taut or slack, a side of friction. A change is where the range is split. */
  form: number
}

/** A new state, all zero. */
export const emptyState = (): MechanismState => ({
  springs: 0,
  massX: 0,
  massY: 0,
  massZ: 0,
  windX: 0,
  windY: 0,
  windZ: 0,
  frictionDry: 0,
  frictionShare: 0,
  inertia: 0,
  inertiaSlope: 0,
  form: 0,
})

/** Where its parts are at one place, in its own frame, m. */
export interface MechanismPose {
  /** Lines and outlines of its parts, to draw and to keep clear of things. */
  readonly parts: readonly { readonly name: string; readonly points: readonly Triple[]; readonly closed: boolean }[]
  /** Place of each pivot or pin by name. */
  readonly pins: readonly { readonly name: string; readonly at: Triple }[]
  /** The moving point farthest out, and ∂r/∂q of it. */
  readonly tip: Triple
  readonly tipRate: Triple
  /** Its moving masses together, kg, and their common centre. */
  readonly mass: number
  readonly centre: Triple
  /** How they are spread about its own origin; left out, they count as one point at their centre where something carries them. */
  readonly spread?: MassSpread
  /** What a maker calls its travel here: an arm's angle (rad), a span (m). */
  readonly shown: number
}

/** A force on the frame or at a pin. */
export interface Reaction {
  readonly name: string
  /** Force of the mechanism on what holds it, in its own frame, N. */
  readonly force: Triple
}

/** One mechanism, SI. */
export interface Mechanism {
  readonly travel: Travel
  /** Coordinate at which it stands while its drive is at the start, in the document `startLength` or `startAngle`; null: the drive's own coordinate. */
  readonly start: number | null
  /** Coordinates between which it can be posed; infinite where it turns for ever. */
  readonly low: number
  readonly high: number
  /** Coordinates at which its lever vanishes: it may start or end there, never pass. */
  readonly deadPoints: readonly number[]
  /** What it asks at q; q lies within low and high. */
  at(q: number, state: MechanismState): void
  /** Where its parts are at q. */
  pose(q: number): MechanismPose
  /** Forces on its pins with an effort at q, at rest, `down` the direction and size of gravity in its frame (m/s²). */
  reactions(q: number, effort: number, down: Triple): readonly Reaction[]
  /** How the part goes that other motions may be mounted on; left out, nothing can be. */
  carries?(q: number): Moving
  /** Kind of quantity that `shown` is. */
  readonly shows: "angle" | "length"
}

/** One kind of mechanism: what a document says of it, and the mechanism made from that. */
export interface MechanismMember<D extends { readonly type: string }> {
  /** Never there: carries the type of its document part to the lists that name it. */
  readonly document?: D
  readonly type: D["type"]
  readonly label: string
  readonly fields: Fields<Omit<D, "type">>
  readonly either?: readonly Either<Nullable<D>>[]
  /** Faults between fields that are each within their limits; paths begin at the mechanism. */
  check?(si: SiOf<D>): readonly Issue[]
  /** The mechanism, or why it cannot be. */
  build(si: SiOf<D>): Mechanism | NoSolution
}

/** A member whatever its document part. */
export interface AnyMechanismMember {
  readonly type: string
  readonly label: string
  readonly fields: AnyFields
  readonly either?: readonly Either[]
  check?(si: never): readonly Issue[]
  build(si: never): Mechanism | NoSolution
}
