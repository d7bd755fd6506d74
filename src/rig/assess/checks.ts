import type { Found } from "./finding.js"
import type { Situation } from "./situation.js"

/** One check of the assessment. */
export interface Check {
  readonly id: string
  readonly title: string
  /** Whether the rig has what the check is about. */
  applies(situation: Situation): boolean
  find(situation: Situation): Found
}

/** Checks that every wearable has. */
export const always = (): boolean => true
