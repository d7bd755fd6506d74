// The seam between a drive and what it moves: one element of a chain of gears, screws, drums and cables.
import type { AnyFields, Either, Fields, Issue, NoSolution, Nullable, SiOf, Transmits } from "../../solver/index.js"
import type { Travel } from "../drives/drive.js"

/**
 * One element, SI. Travels are counted from the start of the motion, where input and output stand at 0. Forward is the way
 * in which the drive's coordinate grows; an element that turns that round has a negative ratio.
 */
export interface Transmission {
  readonly takes: Travel
  readonly gives: Travel
  /** Travel of its output at a travel of its input. */
  out(travel: number): number
  /** Slope of that, d out / d in: m/m, m/rad, rad/m or rad/rad. */
  ratio(travel: number): number
  /** Share of the drive's effort that gets through while the drive moves the load. */
  readonly forward: number
  /** Share of the load's effort that comes back while the load helps; 0 where the element locks itself. */
  readonly backward: number
  /** Share of a helping load's effort that has to be put in as well where the element locks itself; 0 where it does not lock. */
  readonly unlocking: number
  /** Whether it locks itself with half of the friction given: half can be left in service, and no less is counted on to hold. */
  readonly selfLocking: boolean
  /** Effort at its input that is lost whatever the load, N or N·m. */
  readonly drag: number
  /** A line only pulls, a buffer only pushes. Forward is the way it pulls, or pushes. */
  readonly transmits: Transmits
  /** Play at its output, m or rad. */
  readonly backlash: number
  /** Stretch or twist at its output for an effort of 1 there, m/N, rad/(N·m) …; 0 where it counts as stiff. */
  readonly compliance: number
  /** Inertia at its input, kg or kg·m². */
  readonly inertia: number
  /** Effort at its output that it may not pass, or at which it breaks; null where the document says nothing. */
  readonly strength: number | null
  /** How many times its effort that strength has to be: 1 where its maker allows that much, more where it breaks there. Left out, 1. */
  readonly safetyFactor?: number
  /** Input travels at which its ratio changes form (a drum's next layer). */
  readonly kinks: readonly number[]
  /** Input travels between which it can be posed at all; forward travel is positive. */
  readonly low: number
  readonly high: number
}

/** One kind of element: what a document says of it, and the element made from that. */
export interface TransmissionMember<D extends { readonly type: string }> {
  /** Never there: carries the type of its document part to the lists that name it. */
  readonly document?: D
  readonly type: D["type"]
  readonly label: string
  readonly fields: Fields<Omit<D, "type">>
  readonly either?: readonly Either<Nullable<D>>[]
  /** Faults between fields that are each within their limits; paths begin at the element. */
  check?(si: SiOf<D>): readonly Issue[]
  /** The element, or why it cannot be. */
  build(si: SiOf<D>): Transmission | NoSolution
}

/** A member whatever its document part. */
export interface AnyTransmissionMember {
  readonly type: string
  readonly label: string
  readonly fields: AnyFields
  readonly either?: readonly Either[]
  check?(si: never): readonly Issue[]
  build(si: never): Transmission | NoSolution
}

/** An element that neither locks, drags, gives nor ends: each member says where its own differs. */
export const rigid = {
  unlocking: 0,
  selfLocking: false,
  drag: 0,
  backlash: 0,
  compliance: 0,
  inertia: 0,
  strength: null,
  kinks: [],
  low: Number.NEGATIVE_INFINITY,
  high: Number.POSITIVE_INFINITY,
} as const
