// What is asked of a search: what may be exchanged, what is wanted of it, what must be kept to.
import type { Length, Mass, Time } from "../../quantity/index.js"
import type { Catalogue } from "../catalogue.js"

/** Where a part sits that the document does not list yet. */
export interface PartPlace {
  /** Ahead of the hips; negative behind. */
  forward: Length
  /** Left of the middle. */
  left?: Length
  /** Above the ground, wearer standing. */
  height: Length
}

/** A place where parts of one family may be exchanged. */
export interface VaryFamily {
  /** Path of what is exchanged, such as `motions[0].drive`; several where the same part goes into each of them. */
  at: string | readonly string[]
  /** Family of the catalogue that is tried there. */
  family: string
  /** Row of the document's `parts` that it stands in for, by name, or where it sits if none of them is it. */
  part: string | PartPlace
  /** How many are bought; left out, as many as the document has there (drives, cells) and one otherwise. */
  count?: number
  /** Whether doing without is tried too, such as a helper spring or a converter. */
  without?: boolean
}

/** A number of the document that may be one of several. */
export interface VaryValues {
  at: string | readonly string[]
  values: readonly (number | string)[]
}

/** A number of the document that may lie anywhere in a range: tried at even steps, then moved on from the best of them. */
export interface VaryRange {
  at: string | readonly string[]
  from: number | string
  to: number | string
  /** How many values are tried evenly over the range, both ends among them; 3 where nothing is said. */
  steps?: number
}

/** Something that may be changed. */
export type Vary = VaryFamily | VaryValues | VaryRange

/**
 * What is made small (`price`, `mass`, `duration`: time out and back, worst case) or large (`hours` on one charge). Of a duration all
 * motions are added, or the one named counts.
 */
export type SearchGoal = "price" | "mass" | "duration" | "hours" | { readonly duration: string }

/** What every choice must keep to, beside the whole assessment. */
export interface SearchKeep {
  /** Maximum price and mass of all parts; they go into the document's budget. */
  price?: number
  mass?: Mass
  /** Maximum time out and back, as the goal counts it. */
  duration?: Time
  /** Minimum time on one charge. */
  hours?: Time
  /** Checks, by name, that need not be made. What the document itself lacks data for is told and does not rule a choice out. */
  unmade?: readonly string[]
}

/** A search: the catalogue, what may be exchanged from it, and what is wanted. */
export interface SearchRequest {
  catalogue: Catalogue
  vary: readonly Vary[]
  /** What choices are compared by; price and mass where nothing is said. */
  goals?: readonly SearchGoal[]
  keep?: SearchKeep
}
