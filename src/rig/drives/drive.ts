// The seam between what moves a motion and the rest of the rig: one record for every drive.
import type { AnyFields, Either, Fields, Issue, NoSolution, Nullable, SiOf } from "../../solver/index.js"

/** How a coordinate is measured: metres of a rod or line, radians of a shaft. */
export type Travel = "length" | "angle"

/** Constants of a drive's straight line, at its own output. */
export interface DriveLine {
  /** Effort for each ampere beyond the friction current, N/A or N·m/A. */
  effortConstant: number
  /** Back electromotive force for a rate of 1, V·s/m or V·s/rad. */
  backEmfConstant: number
  windingResistance: number
  frictionCurrent: number
  /** Current that its circuit draws beside the winding, A; 0 where all that it draws goes through the winding. */
  circuitCurrent: number
}

/**
 * One drive, SI. Its coordinate is that of its own output: m of a rod, rad of a shaft; efforts are N or N·m there.
 * The winding's current is `frictionCurrent` + effort / `effortConstant`, rate is (V − that · `windingResistance`) /
 * `backEmfConstant`; the drive draws `circuitCurrent` more.
 * An effort that helps takes |effort| · `backwardEfficiency` / the larger of both constants off the friction current: it gives
 * back no more than it is given. Where the gears lock it adds |effort| · `unlocking` / `effortConstant` instead.
 */
export interface Drive extends Readonly<DriveLine> {
  readonly travel: Travel
  /** Ends of its travel, low before high, in its own coordinate; it starts at `low`. */
  readonly low: number
  readonly high: number
  /**
   * Writes its line at a terminal voltage (V) into `line`, for a drive whose datasheet gives it another line at each; null
   * where one holds at all. The constants of the record itself are those at `ratedVoltage`.
   */
  readonly lineAt: ((voltage: number, line: DriveLine) => void) | null
  /** Terminal voltage at or below which its datasheet leaves it no effort or no speed, V; 0 where the line itself tells. */
  readonly minVoltage: number
  /** Inertia at its output, kg or kg·m². */
  readonly inertia: number
  /** Current that its driver lets through, A; null where nothing limits it. */
  readonly currentLimit: number | null
  /** Share of a helping effort that reaches the motor through its gears; 0 where they lock. */
  readonly backwardEfficiency: number
  /** What a helping effort asks where the gears lock and have to be driven with it, against what it asks against the motion; 0 where they do not lock. */
  readonly unlocking: number
  /** Effort at its output that it holds without power; 0 where it lets go, infinite where its gears lock and nothing says what they stand. */
  readonly holdingEffort: number
  /** Voltage of its datasheet, V, and effort that the sheet allows for long; null where the sheet prints none. */
  readonly ratedVoltage: number
  readonly ratedEffort: number | null
  readonly control: "on-off" | "ramp" | "position-servo"
  /** Current that it draws while it stands still with power on, A. */
  readonly standbyCurrent: number
}

/** One kind of drive: what a document says of it, and the record made from that. */
export interface DriveMember<D extends { readonly type: string }> {
  /** Never there: carries the type of its document part to the lists that name it. */
  readonly document?: D
  readonly type: D["type"]
  readonly label: string
  readonly fields: Fields<Omit<D, "type">>
  readonly either?: readonly Either<Nullable<D>>[]
  /** Faults between fields that are each within their limits; paths begin at the drive. */
  check?(si: SiOf<D>): readonly Issue[]
  /** The record, or why it cannot be. */
  build(si: SiOf<D>): Drive | NoSolution
}

/** A member whatever its document part: what the rig keeps in its lists. */
export interface AnyDriveMember {
  readonly type: string
  readonly label: string
  readonly fields: AnyFields
  readonly either?: readonly Either[]
  check?(si: never): readonly Issue[]
  build(si: never): Drive | NoSolution
}

/**
 * What a helping effort asks of a drive known by its datasheet alone: where less than half of the motor's work reaches the
 * output, the gears lock and the motor has to drive them with the load, the same friction taken both ways.
 */
export const unlockingBySheet = (effortConstant: number, backEmfConstant: number): number =>
  Math.max(0, 1 - (2 * effortConstant) / backEmfConstant)
