import type { Caution } from "./caution.js"
import { certainFaults } from "./certain.js"
import { seal } from "./display.js"
import { InputError, type Issue, isNoSolution, type NoSolution, NoSolutionError } from "./errors.js"
import type { AnyFields, AnyOutFields, Fields, OutFields, SiOf } from "./fields.js"
import type { Step } from "./formulae.js"
import { type JsonSchema, objectSchema, withSchemaAddress } from "./json-schema.js"
import { readInput } from "./read.js"
import type { Source } from "./source.js"

/** What a public call returns: the values and the cautions that go with them. */
export type Result<Out> = Out & { readonly cautions: readonly Caution[] }

/** Outcome of {@link Solver.attempt}: the answer, or the error that would have been thrown. */
export type Attempt<Out> =
  | { readonly ok: true; readonly value: Result<Out> }
  | { readonly ok: false; readonly error: InputError | NoSolutionError }

/** The definition a solver is made from. */
export interface Definition<In, Out> {
  /** Name it is exported under. */
  readonly name: string
  /** The question it answers, in a few words. */
  readonly title: string
  readonly input: Fields<In>
  readonly output: OutFields<Out>
  /** One valid input: starting point of forms, docs and laws. */
  readonly example: In
  readonly formulae: readonly Step<SiOf<In>, Out>[]
  readonly sources: readonly Source[]
  /** Faults between fields that are each within their own limits. */
  check?(si: SiOf<In>): readonly Issue[]
  /** The kernel: pure, plain SI numbers in, values or a refusal out; never throws. */
  solve(si: SiOf<In>): Out | NoSolution
  /** Hazards and limits of validity of an answer. */
  cautions?(si: SiOf<In>, out: Out): readonly Caution[]
}

/**
 * A solver: call it with quantities in any unit; it answers in SI numbers that print with units.
 *
 * @typeParam In - input, quantities in any unit
 * @typeParam Out - values of the result
 */
export interface Solver<In, Out> {
  /**
   * Solves.
   *
   * @throws InputError naming every fault of the input
   * @throws NoSolutionError where physics refuses, with the reason, where and by how much
   */
  (input: In): Result<Out>
  readonly title: string
  /** The pure kernel on SI numbers: no validation, no formatting, no throwing. */
  si(input: SiOf<In>): Out | NoSolution
  /** Solves without throwing. */
  attempt(input: unknown): Attempt<Out>
  /** Reads an input into SI with defaults filled; throws InputError. */
  read(input: unknown): SiOf<In>
  readonly input: Fields<In>
  readonly output: OutFields<Out>
  readonly example: In
  readonly formulae: readonly Step<SiOf<In>, Out>[]
  readonly sources: readonly Source[]
  /** JSON Schema (draft 2020-12) of the input. */
  jsonSchema(): JsonSchema
  /** Standard Schema v1: validates an input into SI. */
  readonly "~standard": {
    readonly version: 1
    readonly vendor: "alula"
    /** The input in SI, or its faults. */
    validate(
      value: unknown,
    ):
      | { readonly value: SiOf<In> }
      | { readonly issues: readonly { readonly message: string; readonly path: readonly (string | number)[] }[] }
    readonly types?: { readonly input: In; readonly output: SiOf<In> } | undefined
  }
}

/** Makes a solver from its definition. */
export function solver<In, Out extends object>(definition: Definition<In, Out>): Solver<In, Out> {
  const { name, title, input, output, example, formulae, sources, check, solve, cautions } = definition
  const readAll = (value: unknown): { ok: true; si: SiOf<In> } | { ok: false; issues: readonly Issue[] } => {
    const described = input as unknown as AnyFields
    const fields = readInput(described, value)
    if (!fields.ok)
      return {
        ok: false,
        issues: check ? [...fields.issues, ...certainFaults(described, fields.partly, fields.issues, check)] : fields.issues,
      }
    const si = fields.si as SiOf<In>
    const issues = check?.(si) ?? []
    return issues.length ? { ok: false, issues } : { ok: true, si }
  }

  const attempt = (value: unknown): Attempt<Out> => {
    const read = readAll(value)
    if (!read.ok) return { ok: false, error: new InputError(name, read.issues) }
    const out = solve(read.si)
    if (isNoSolution(out)) return { ok: false, error: new NoSolutionError(name, out) }
    const result = { ...out, cautions: cautions?.(read.si, out) ?? [] }
    return { ok: true, value: seal(output as unknown as AnyOutFields, result) }
  }

  const call = (value: In): Result<Out> => {
    const outcome = attempt(value)
    if (outcome.ok) return outcome.value
    throw outcome.error
  }

  const read = (value: unknown): SiOf<In> => {
    const outcome = readAll(value)
    if (outcome.ok) return outcome.si
    throw new InputError(name, outcome.issues)
  }

  Object.defineProperty(call, "name", { value: name })
  return Object.freeze(
    Object.assign(call, {
      title,
      si: solve,
      attempt,
      read,
      input,
      output,
      example,
      formulae,
      sources,
      jsonSchema: () => ({
        $schema: "https://json-schema.org/draft/2020-12/schema",
        title: name,
        description: title,
        ...withSchemaAddress(objectSchema(input as unknown as AnyFields)),
      }),
      "~standard": {
        version: 1 as const,
        vendor: "alula" as const,
        validate: (value: unknown) => {
          const outcome = readAll(value)
          return outcome.ok ? { value: outcome.si } : { issues: outcome.issues }
        },
      },
    }),
  ) as Solver<In, Out>
}
