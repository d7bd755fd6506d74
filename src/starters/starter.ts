// What a starter rig is: a whole document, and where each of its numbers comes from.
import type { Rig } from "../rig/index.js"

/** Kinds of creature that a starter rig is kept for. */
export type StarterKind = "wings" | "tail" | "fan" | "jaw" | "collar" | "skirt"

/** A rig to begin with. */
export interface Starter {
  /** What it is, in a line. */
  readonly about: string
  /** The document, of version 2. */
  readonly rig: Rig
  /** Where its numbers come from, by path in the document; each holds for all below it. */
  readonly notes: Readonly<Record<string, string>>
  /** Checks that fall short on purpose, by check and subject (`contact: wings`), each with why. */
  readonly onPurpose: Readonly<Record<string, string>>
}
