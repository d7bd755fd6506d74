/** How much a caution matters: a note on validity, a caution, or a warning that someone can be hurt. */
export type Severity = "note" | "caution" | "warning"

/** A hazard or a limit of validity that goes with a result. */
export interface Caution {
  readonly code: string
  readonly severity: Severity
  readonly message: string
  /** Where the statement comes from, or `common practice, no source`. */
  readonly source: string
}

/** Makes a {@link Caution}. */
export function caution(code: string, severity: Severity, message: string, source = "common practice, no source"): Caution {
  return { code, severity, message, source }
}
