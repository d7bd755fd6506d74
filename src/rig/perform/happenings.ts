// What a run meets on its way, and what it ends with.
import type { Recorder } from "./record.js"
import type { EventType } from "./types.js"

/** One event as the run meets it; its words are found afterwards. */
export interface Happening {
  readonly time: number
  readonly type: EventType
  readonly subject: string
  readonly speed?: number
  readonly energy?: number
  readonly voltage?: number
  readonly current?: number
  readonly place?: number
  /** Until when something is off, s; infinite for good. */
  readonly until?: number
  readonly least?: number
  /** Source whose motions stop with it. */
  readonly source?: string
}

/** A step as it was played. */
export interface Played {
  readonly index: number
  readonly begin: number
  readonly from: number
  readonly to: number
  arrived: number | null
  /** Place when the next step of the same motion began, or at the end. */
  reached: number
  end: number | null
}

/** What a run ends with. */
export interface Ran {
  readonly happenings: readonly Happening[]
  readonly played: readonly Played[]
  readonly record: Recorder
  readonly calls: number
  readonly end: number
  /** Why it was not followed to its end; null where it was. */
  readonly stopped: string | null
}

/** A thing to do at a time. */
export interface Cue {
  readonly at: number
  readonly index: number
  readonly to: number
}
