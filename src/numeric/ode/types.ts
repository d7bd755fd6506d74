/** A system y' = f(t, y), with events where something about it changes. */
export interface OdeProblem {
  readonly size: number
  /** Writes dy/dt into `dy`. It may keep neither array. */
  readonly slope: (t: number, y: Float64Array, dy: Float64Array) => void
  readonly events?: OdeEvents
}

/** Functions of time and state: where one changes its sign, the run stops. */
export interface OdeEvents {
  readonly count: number
  /** Writes one number for each event into `g`. Smooth between events, or a crossing may be missed. */
  readonly values: (t: number, y: Float64Array, g: Float64Array) => void
  /** Which crossings count: 1 those that rise in the sense of the run, -1 those that fall, 0 both. Left out: both. */
  readonly directions?: readonly (-1 | 0 | 1)[]
}

export interface OdeOptions {
  /** Error allowed in one step, against the size of a component: 1e-8 when left out, 1e-14 to 0.1. */
  readonly relative?: number
  /** Error allowed in one step on top of that, for all components or for each: 1e-10 when left out. */
  readonly absolute?: number | Float64Array
  readonly firstStep?: number
  readonly maxStep?: number
  /** Slopes that may be asked for before the run stops: a million when left out. The step in hand is finished. */
  readonly maxCalls?: number
  /**
   * `auto` when left out: starts explicit, and changes whenever stability, not accuracy, sets the step. Until then, within the 15
   * steps that it takes to be sure, states between explicit steps are less sure than their ends: say `stiff` where it is known.
   */
  readonly method?: "explicit" | "stiff" | "auto"
}

export interface OdeStop {
  readonly kind: "end" | "event" | "too-many-calls" | "step-too-small" | "not-a-number"
  /** The event that was first; of several at once, the first of the list. */
  readonly event: number | null
}

/** Where a run stopped and what it took. */
export interface OdeStretch {
  readonly t: number
  /** State at `t`; at an event that at or just after the crossing, never before it. */
  readonly y: Float64Array
  readonly stop: OdeStop
  /** Every event that crosses at `t`, within rounding: the run stands behind all of them, and none of them will be told again. */
  readonly crossed: readonly number[]
  /** Slopes asked for. */
  readonly calls: number
  /** Steps taken, and those of them by the stiff method. */
  readonly steps: number
  readonly stiffSteps: number
}

/** State at any time of the step just taken. */
export type Dense = (t: number, out: Float64Array) => void

/** What both methods offer to the run that drives them. All arrays are made once. */
export interface Stepper {
  /** The state and the slope that the last attempt led to. */
  readonly next: Float64Array
  readonly nextSlope: Float64Array
  /**
   * Tries a step of `h`.
   *
   * @returns its error against what is allowed (accepted up to 1), Infinity where it has none, NaN where a slope is no number
   */
  attempt(t: number, y: Float64Array, slope: Float64Array, h: number): number
  /** What the next step should be, against the one tried. */
  readonly growth: number
  /** Writes the state at `share` (0 to 1) of the step just tried. False where a slope on the way is no number. */
  dense(share: number, out: Float64Array): boolean
  /** Takes the step just tried. */
  accept(): void
  /** Whether the other method would do better from here, after the step just taken. */
  readonly tired: boolean
  /** Begins anew: nothing is known of the steps before. */
  restart(): void
}

export interface Setting {
  readonly size: number
  readonly slope: (t: number, y: Float64Array, dy: Float64Array) => void
  readonly relative: number
  readonly absolute: Float64Array
}

export const allFinite = (list: Float64Array): boolean => {
  let sum = 0
  // 0 · x is NaN for anything that is not finite
  for (let i = 0; i < list.length; i++) sum += 0 * (list[i] as number)
  return sum === 0
}
