import { createHash } from "node:crypto"

/** What kind of slip a fault imitates. */
export const kinds = {
  sign: "plus for minus, or a minus lost",
  comparison: "a comparison turned round",
  edge: "the edge of a comparison: < for <=",
  constant: "a constant 3 % too large",
  term: "a term or a factor dropped",
  argument: "two arguments, or two values of an object, swapped",
  function: "cos for sin, max for min and the like",
  cell: "a cell of a table 3 % too large",
  limit: "a limit of a field 3 % too large (one more where it counts things)",
  default: "a field's default 3 % too large (one more where it counts things)",
  severity: "a caution of another severity",
  caution: "a caution never given",
  refusal: "a refusal never given",
  between: "a fault between fields never found",
} as const

export type FaultKind = keyof typeof kinds

/** Kinds of which none may survive: what they take away is what keeps people from harm and nonsense. */
export const mustDie: readonly FaultKind[] = ["caution", "refusal", "between"]

/** One change of the text of a file, behind a switch. */
export interface Edit {
  readonly start: number
  readonly end: number
  /**
   * How the switch is written there: round an expression (`effect`: one that is a statement by itself; `shorthand`: a
   * property without a value), before a statement, or round an element of a list that then goes.
   */
  readonly form: "expression" | "effect" | "shorthand" | "statement" | "element"
  /** What stands there when the fault is on (not used for `statement` and `element`). */
  readonly text: string
  /** `text` changes nothing by being reckoned, so that a dry run may reckon it too and see whether it makes a difference. */
  readonly isPure?: boolean
}

/** A constant of a file, made when the module loads; numbered after the faults, so that what is made there is traced to its readers. */
export interface Watch {
  readonly n: number
  readonly file: string
  readonly start: number
  readonly end: number
}

/** A planted fault. */
export interface Fault {
  /** Switch number, given anew at each run. */
  readonly n: number
  /** Short name that stays while the text it is planted in stays. */
  readonly id: string
  /** What `id` is made from: file, definition, kind, before and after, and which of several alike. */
  readonly key: string
  readonly file: string
  readonly line: number
  readonly kind: FaultKind
  readonly before: string
  readonly after: string
  readonly edits: readonly Edit[]
}

/** The id of a key. */
export function idOf(key: string): string {
  return createHash("sha256").update(key).digest("hex").slice(0, 8)
}
