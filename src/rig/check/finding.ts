// What a check is: a value against a limit, how much of it is used, and a verdict that its solver's own word always beats.
import type { Kind } from "../../quantity/index.js"
import type { Caution, Source } from "../../solver/index.js"

/** How a value must stand to its limit. */
export type Relation = "at-most" | "at-least" | "within" | "outside" | "rule"
/** What falling short costs. */
export type CheckSeverity = "safety" | "function" | "wish"
/** How a check came out. */
export type CheckVerdict = "meets" | "marginal" | "falls short" | "not enough data" | "cannot be judged"

/** What a check measured, before its verdict. */
export interface Measured {
  readonly relation: Relation
  /** Kind of value and limit. */
  readonly kind: Kind | "number"
  readonly value: number | null
  /** Limit that the value is held to; middle of a band. */
  readonly limit: number | null
  /** Half the width of a band. */
  readonly halfWidth?: number
  /** Where the scale begins: 0, the ambient for temperatures. */
  readonly reference?: number
  /** The solver's own verdict where it has one: what it does not permit never meets. */
  readonly permitted?: boolean
  readonly sentence: string
  /** When it is worst: which way, at what charge and temperature. */
  readonly condition: string
  readonly source: Source
  readonly cautions?: readonly Caution[]
}

/** A check that was not made, and why. */
export interface NotMade {
  readonly verdict: "not enough data" | "cannot be judged"
  /** Path of the field that is missing, in the document. */
  readonly missing: string | null
  /** Check and subject that failed before it; null where it hangs on none. */
  readonly because: string | null
  readonly sentence: string
  /** What was measured all the same, of no use as a promise. */
  readonly measured?: Measured
}

/** Share of the limit that is used; null where a share means nothing and the comparison alone decides. */
export function utilisationOf({ relation, value, limit, halfWidth = 0, reference = 0 }: Measured): number | null {
  if (value === null || limit === null || relation === "rule") return null
  if (relation === "at-most") return limit > reference ? (value - reference) / (limit - reference) : null
  if (relation === "at-least") return value > reference ? (limit - reference) / (value - reference) : null
  const distance = Math.abs(value - limit)
  if (relation === "within") return halfWidth > 0 ? distance / halfWidth : null
  return distance > 0 ? halfWidth / distance : null
}

/** Whether a value keeps its limit, whatever share of it is used. */
function keeps({ relation, value, limit, halfWidth = 0, permitted }: Measured): boolean {
  if (permitted === false) return false
  if (relation === "rule") return permitted === true
  if (value === null || limit === null || Number.isNaN(value)) return false
  if (relation === "at-most") return value <= limit
  if (relation === "at-least") return value >= limit
  const distance = Math.abs(value - limit)
  return relation === "within" ? distance <= halfWidth : distance >= halfWidth
}

/** What a finding tells: where a solver's own word goes against a number that keeps its limit, the word decides and no number is shown beside it. */
export function told(measured: Measured): Measured {
  const { permitted, ...number } = measured
  return permitted === false && measured.relation !== "rule" && keeps(number)
    ? { ...measured, relation: "rule", value: null, limit: null }
    : measured
}

/** Share from which on a limit kept is marginal; common practice, no source. */
const MARGINAL = 0.9

/** The verdict of what was measured. */
export function verdictOf(measured: Measured): CheckVerdict {
  if (!keeps(measured)) return "falls short"
  const utilisation = utilisationOf(measured)
  return utilisation !== null && utilisation > MARGINAL ? "marginal" : "meets"
}

/** Of several results about one subject the one that counts: what falls short before what could not be judged, then the larger share. */
export function worstOf<R extends Measured | NotMade>(results: readonly R[]): R | null {
  const rank = (result: R) => ("verdict" in result ? 1 : verdictOf(result) === "falls short" ? 2 : 0)
  const share = (result: R) => ("verdict" in result ? 0 : (utilisationOf(result) ?? 0))
  const size = (result: R) => ("verdict" in result ? 0 : (result.value ?? 0))
  const order = (a: R, b: R) => rank(a) - rank(b) || share(a) - share(b) || size(a) - size(b)
  return results.reduce<R | null>((a, b) => (a && order(a, b) >= 0 ? a : b), null)
}

const byVerdict: readonly CheckVerdict[] = ["falls short", "marginal", "not enough data", "cannot be judged", "meets"]
const bySeverity: readonly CheckSeverity[] = ["safety", "function", "wish"]

/** Order of findings: by verdict, then severity, then the share used. */
export function mostUrgent(
  a: { readonly verdict: CheckVerdict; readonly severity: CheckSeverity; readonly utilisation: number | null },
  b: { readonly verdict: CheckVerdict; readonly severity: CheckSeverity; readonly utilisation: number | null },
): number {
  return (
    byVerdict.indexOf(a.verdict) - byVerdict.indexOf(b.verdict) ||
    bySeverity.indexOf(a.severity) - bySeverity.indexOf(b.severity) ||
    (b.utilisation ?? 0) - (a.utilisation ?? 0)
  )
}
