// A search as plain data: a rig, the axes along which it is changed, and what is wanted of it.
import type { RigSi } from "../../rig/whole/faults.js"
import type { Path } from "../../solver/index.js"

/** A value put into the document at a place. */
export interface Put {
  readonly keys: Path
  readonly value: unknown
}

/** One of the things that an axis can be. */
export interface Member {
  /** Name of the part, or the value as it is shown. */
  readonly name: string
  readonly puts: readonly Put[]
  /** Mass and price of one, or of one metre. */
  readonly mass: number
  readonly price: number
  readonly per: "piece" | "metre"
  /** Number that an axis of numbers takes. */
  readonly value: number | null
}

/** How the part of an axis stands in the document's list of parts. */
export interface Row {
  /** Row that it stands in for; −1 where it is added. */
  readonly index: number
  readonly place: { readonly forward: number; readonly left: number; readonly height: number }
  /** How many are bought, whatever the document has. */
  readonly count: number | null
}

/** Something that is changed: one of its members at a time. */
export interface Axis {
  /** Paths as they were given. */
  readonly at: readonly string[]
  readonly keys: readonly Path[]
  /** Family of the catalogue; null where it is a number. */
  readonly family: string | null
  readonly row: Row | null
  /** Ends of the range that a number may lie in; null where only its values are tried. */
  readonly range: readonly [low: number, high: number] | null
  readonly members: readonly Member[]
}

/** A goal: what is counted, of which motion (null for all). */
export interface PlanGoal {
  readonly type: "price" | "mass" | "duration" | "hours"
  readonly motion: string | null
}

/** Limits of the goals that are not the document's own. */
export interface PlanKeep {
  readonly duration: number | null
  readonly hours: number | null
  readonly unmade: readonly string[]
}

/** A search, ready to be worked off anywhere. */
export interface Plan {
  readonly rig: RigSi
  readonly axes: readonly Axis[]
  readonly goals: readonly PlanGoal[]
  readonly keep: PlanKeep
  /** Paths that some axis writes: what is missing elsewhere, the document itself lacks, and no choice could bring. */
  readonly written: readonly string[]
  /** Checks that are taken to read everything: their declaration was found wanting. */
  readonly wary: readonly string[]
}

/** One member of each axis. */
export type Pick = readonly number[]
/** Members of each axis that are still open. */
export type Block = readonly (readonly number[])[]

/** How many combinations a block holds. */
export const sizeOf = (block: Block): number => block.reduce((n, members) => n * members.length, 1)

/** Whether what a check lacks is what the document itself lacks: no axis writes it. */
export const isDocuments = ({ written }: Plan, missing: string): boolean =>
  !written.some((path) => missing === path || missing.startsWith(`${path}.`))
