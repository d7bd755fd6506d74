import type { Kind } from "../quantity/index.js"
import type { Source } from "./source.js"

/** A formula: `symbol = is`, in mathjs syntax, over symbols of fields and of earlier steps. */
export interface Formula {
  readonly symbol: string
  readonly is: string
  readonly meaning: string
  /** Kind of the value; needed only where the symbol is not that of a result field. */
  readonly kind?: Kind | "number"
  /** Condition (mathjs syntax) under which this step applies. */
  readonly when?: string
  readonly source?: Source
}

/** A value looked up in a table, or otherwise handed to the formulae as a number. */
export interface Given<Si, Out, Trace = object> {
  readonly symbol: string
  readonly kind: Kind | "number"
  readonly meaning: string
  /** The value, from the input in SI, from the answer or from what the kernel found on its way. */
  given(si: Si, out: Out, trace: Partial<Trace>): number | readonly number[]
  readonly source?: Source
}

/** The equation an iterative answer satisfies: both sides are evaluated and must agree. */
export interface Equation {
  readonly left: string
  readonly right: string
  readonly meaning: string
  readonly when?: string
  /** Relative agreement the solver promises; 1e-9 by default. */
  readonly within?: number
  readonly source?: Source
}

/** An unknown found by iteration: taken from the solver here, and proved by an {@link Equation}. */
export interface Solved {
  /** Symbol of the result field. */
  readonly solved: string
  readonly meaning: string
  readonly when?: string
}

/** One step of a solver's working, in order. */
export type Step<Si = unknown, Out = unknown, Trace = object> = Formula | Given<Si, Out, Trace> | Equation | Solved
