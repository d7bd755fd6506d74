// One thing that can be wrong with a built rig, whatever element has it.
import type { Built } from "./built.js"

/** What the size of a fault is. */
export interface SizeOf {
  readonly label: string
  readonly kind: "number" | "ratio" | "resistance" | "voltage" | "force" | "speed" | "degrees"
  /** What is shown of a size; the size itself where left out. */
  readonly shown?: (size: number) => number
}

/** One thing that can be wrong, whatever element has it. */
export interface FaultRow {
  readonly id: string
  /** What it is called at an element. */
  readonly label: (at: string) => string
  /** What its size is, and its kind; null where it is there or not. */
  readonly size: SizeOf | null
  /** What it changes, by its path in the document. */
  readonly path: string
  /** Size that is usual: larger is less plausible, as a half-normal spread. Common practice, no source. */
  readonly usual: number
  /** Sizes tried. */
  readonly range: readonly [low: number, high: number]
  /** How often it is met among builds that do not do what was planned, against the others. Common practice, no source. */
  readonly prior: number
  /** What a maker does about it: how to make sure, and how to mend it. */
  readonly todo: (at: string) => string
  /** Every element of a rig that can have it. */
  sites(built: Built): readonly Site[]
}

/** One element, and the rig with the fault at it. */
export interface Site {
  readonly at: string
  /** The rig with a fault of a size; null where nothing of it fits together any more. */
  apply(built: Built, size: number): Built | null
  /** Range of its own, where the element bounds it. */
  readonly range?: readonly [low: number, high: number]
}

/** One fault at one element. */
export interface Fault {
  /** Its row and its element, as `contact@actuators`. */
  readonly name: string
  readonly row: FaultRow
  readonly site: Site
  readonly range: readonly [low: number, high: number]
}
