import { fill, type Values, type ValuesFor } from "./message.js"
import { commonPractice, type Source } from "./source.js"

/** How much a caution matters: a note on validity, a caution, or a warning that someone can be hurt. */
export type Severity = "note" | "caution" | "warning"

/**
 * A hazard or a limit of validity that goes with a result.
 *
 * @typeParam Code - the hazards the solver can name
 */
export interface Caution<Code extends string = string> {
  readonly code: Code
  readonly severity: Severity
  /** The sentence, its numbers filled in. */
  readonly message: string
  /** The numbers (SI) and words of the message, by name: of the result, or `given.…` of the input. */
  readonly values: Values
  readonly source: Source
}

/**
 * Makes a {@link Caution} from a template and the values it names (see {@link fill}). A name is a path in the result
 * (`drop`, `legs.0.length`) or, after `given.`, in the input; any other name is a number of the caution's own.
 */
export function caution<const Template extends string, const Code extends string>(
  code: Code,
  severity: Severity,
  template: Template,
  source: Source = commonPractice,
  ...rest: keyof ValuesFor<Template> extends never ? [] : [values: ValuesFor<Template>]
): Caution<Code> {
  const values: Values = rest[0] ?? {}
  return { code, severity, message: fill(template, values), values, source }
}
