// What `solveFor` is asked, and what it tells.
import type { Axes, Axis } from "../axes.js"
import type { PathTo, ValueAt } from "../paths.js"

import type { SiAt } from "../table.js"

/** A row of a series, such as one tube of a rack: inputs by path, each with its value. */
export type SeriesRow<In, P extends PathTo<In> = PathTo<In>> = { readonly [K in P]?: ValueAt<In, K> }

/** What the result has to be: a value, at most or at least one, a word or a flag; or that it is answered at all. */
export type SolveTarget<Out> =
  | TargetNumber<Out>
  | { readonly output: PathTo<Out, "word">; readonly is: string }
  | { readonly output: PathTo<Out, "flag">; readonly is: boolean }
  | { readonly answers: true }

type TargetNumber<Out> = { readonly output: PathTo<Out, "number"> } & (
  | { readonly equals: number | string }
  | { readonly atMost: number | string }
  | { readonly atLeast: number | string }
)

/** What is varied and what is to be reached. */
export interface WantedOfInput<In, Out, P extends PathTo<In>> {
  /** The input to vary, by path. */
  readonly vary: P
  readonly target: SolveTarget<Out>
  /**
   * Values to try: a range to look through, or a list of those that can be had. Left out: of a number its usual range, of a
   * whole number and of a choice every one.
   */
  readonly among?: Axis<ValueAt<In, P>>
}

/** Several inputs in every combination: cells in series and in parallel. */
export interface WantedOfAxes<In, Out, P extends PathTo<In>> {
  readonly varyAll: Axes<In, P>
  readonly target: SolveTarget<Out>
}

/** Several inputs together, row by row: the tubes of a rack. */
export interface WantedOfRows<In, Out, P extends PathTo<In>> {
  readonly rows: readonly SeriesRow<In, P>[]
  readonly target: SolveTarget<Out>
}

/** A value that was tried and meets the target. */
export interface SolveHit<V> {
  /** In SI; of several inputs, each by its path. */
  readonly value: V
  /** What the result has there, in SI. */
  readonly output: number | string | boolean | null
  /** How far the result is from a value asked for; null where none was asked for. */
  readonly off: number | null
}

/** Why a stretch ends where it does: the target is met no longer, the solver refuses, or the range ends. */
export type StretchEdge = "target" | "refusal" | "range"

/** A stretch of a number over which the target is met; both ends were tried and meet it. */
export interface MetStretch {
  readonly low: number
  readonly high: number
  readonly lowEdge: StretchEdge
  readonly highEdge: StretchEdge
}

/** A place where the result leaps over the value asked for without taking it. */
export interface SolveJump {
  /** The two values nearest to the leap that were tried, and what the result is at them. */
  readonly low: number
  readonly high: number
  readonly below: number
  readonly above: number
}

/** A stretch, or values of a series, that the solver refuses. */
export interface RefusedStretch<V> {
  readonly from: V
  readonly to: V
  /** The solver's code; `inconsistent` where the input's fields do not go together, `no-value` where the result has none. */
  readonly code: string
  readonly message: string
}

/** What {@link solveFor} found. */
export interface SolvedFor<V> {
  /** Values that meet the target: of a number each place where the result takes the value, of a series each entry, in order. */
  readonly hits: readonly SolveHit<V>[]
  /** Of a number, stretches over which it is met. */
  readonly stretches: readonly MetStretch[]
  /** Places where the result turns round without crossing the value asked for, or touches it: nearest first. */
  readonly nearMisses: readonly SolveHit<V>[]
  readonly jumps: readonly SolveJump[]
  readonly refusals: readonly RefusedStretch<V>[]
  /** The answered try that comes nearest, where nothing meets the target; null otherwise, and where nothing is answered. */
  readonly nearest: SolveHit<V> | null
  /** What was looked through: the range and the widest step between two tries; null for a series, whose every entry was tried. */
  readonly looked: { readonly low: number; readonly high: number; readonly step: number } | null
  /** Points asked of the solver. */
  readonly evaluations: number
}

/** The type of a value found. */
export type Varied<In, P extends PathTo<In>> = SiAt<In, P>

/** The type of several values found together. */
export type VariedRow<In, P extends PathTo<In>> = { readonly [K in P]: SiAt<In, K> }
