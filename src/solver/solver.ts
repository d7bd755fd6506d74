import type { Caution } from "./caution.js"
import { certainFaults } from "./certain.js"
import { frozen, seal } from "./display.js"
import type { Either } from "./either.js"
import { InputError, type Issue, isNoSolution, type NoSolution, NoSolutionError } from "./errors.js"
import type { AnyFields, AnyOutFields, Fields, Nullable, OutFields, SiOf } from "./fields.js"
import type { Step } from "./formulae.js"
import type { JsonSchema } from "./json.js"
import { objectSchema, withSchemaAddress } from "./json-schema.js"
import { readInput } from "./read.js"
import type { Source } from "./source.js"

/** What a public call returns: the values and the cautions that go with them. */
export type Result<Out, Hazard extends string = string> = Out & { readonly cautions: readonly Caution<Hazard>[] }

/** Outcome of {@link Solver.attempt}: the answer, or the error that would have been thrown. */
export type Attempt<Out, Refusal extends string = string, Hazard extends string = string> =
  | { readonly ok: true; readonly value: Result<Out, Hazard> }
  | { readonly ok: false; readonly error: InputError | NoSolutionError<Refusal> }

/**
 * The kernel: pure, plain SI numbers in, values or a refusal out; never throws. What it found on the way and its cautions or
 * formulae need again, it writes into `trace` where one is given.
 */
export type Kernel<In, Out, Refusal extends string = string, Trace = object> = (
  si: SiOf<In>,
  trace?: Partial<Trace>,
) => Out | NoSolution<Refusal>

/** What describes a solver: made when it is first asked for, since most callers only call. */
export interface Definition<In, Out, Hazard extends string = string, Trace = object> {
  readonly input: Fields<In>
  readonly output: OutFields<Out>
  /** One valid input: starting point of forms, docs and laws. */
  readonly example: In
  readonly formulae: readonly Step<SiOf<In>, Out, Trace>[]
  readonly sources: readonly Source[]
  /** Which fields stand for one another. */
  readonly either?: readonly Either<Nullable<In>>[]
  /** Faults between fields that are each within their own limits. */
  check?(si: SiOf<In>): readonly Issue[]
  /** Hazards and limits of validity of an answer. */
  cautions?(si: SiOf<In>, out: Out, trace: Partial<Trace>): readonly Caution<Hazard>[]
}

/**
 * A solver: call it with quantities in any unit; it answers in SI numbers that print with units.
 *
 * @typeParam In - input, quantities in any unit
 * @typeParam Out - values of the result
 * @typeParam Refusal - reasons for which physics can refuse
 * @typeParam Hazard - codes of the cautions an answer can carry
 */
export interface Solver<In, Out, Refusal extends string = string, Hazard extends string = string> {
  // no doc comment here: without one, a hover at a call shows the comment of the solver itself
  (input: In): Result<Out, Hazard>
  /** The question it answers, in a few words. */
  readonly title: string
  /** The pure kernel on SI numbers: no validation, no formatting, no throwing. */
  si(input: SiOf<In>, trace?: object): Out | NoSolution<Refusal>
  /** Solves without throwing. */
  attempt(input: unknown): Attempt<Out, Refusal, Hazard>
  /** Reads an input into SI with defaults filled; throws InputError. */
  read(input: unknown): SiOf<In>
  /** Faults between the fields of an input in SI, each of them within its own limits; none where they go together. */
  check(input: SiOf<In>): readonly Issue[]
  readonly input: Fields<In>
  /** Which fields stand for one another. */
  readonly either: readonly Either<Nullable<In>>[]
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

/**
 * Makes a solver.
 *
 * @param name - name it is exported under
 * @param title - the question it answers, in a few words
 * @param solve - the kernel
 * @param rest - its description: called once, when first needed, so that loading a module costs little
 */
export function solver<In, Out extends object, Refusal extends string = string, Hazard extends string = string, Trace = object>(
  name: string,
  title: string,
  solve: Kernel<In, Out, Refusal, Trace>,
  rest: () => Definition<In, Out, Hazard, Trace>,
): Solver<In, Out, Refusal, Hazard> {
  let made: (Definition<In, Out, Hazard, Trace> & Pick<Solver<In, Out>, "either">) | undefined
  const definition = () => {
    made ??= { either: [], ...rest() }
    return made
  }

  const readAll = (value: unknown): { ok: true; si: SiOf<In> } | { ok: false; issues: readonly Issue[] } => {
    const { input, either, check } = definition()
    const described = input as unknown as AnyFields
    const fields = readInput(described, value, either)
    if (!fields.ok)
      return {
        ok: false,
        issues: check ? [...fields.issues, ...certainFaults(described, either, fields.partly, fields.open, check)] : fields.issues,
      }
    const si = fields.si as SiOf<In>
    const issues = check?.(si) ?? []
    return issues.length ? { ok: false, issues } : { ok: true, si }
  }

  const attempt = (value: unknown): Attempt<Out, Refusal, Hazard> => {
    const read = readAll(value)
    if (!read.ok) return { ok: false, error: new InputError(name, read.issues) }
    const trace: Partial<Trace> = {}
    const out = solve(read.si, trace)
    if (isNoSolution(out)) return { ok: false, error: new NoSolutionError(name, out as NoSolution<Refusal>) }
    const { cautions, output } = definition()
    const result = { ...out, cautions: cautions?.(read.si, out, trace) ?? [] }
    return { ok: true, value: seal(output as unknown as AnyOutFields, result) as Result<Out, Hazard> }
  }

  const call = (value: In): Result<Out, Hazard> => {
    const outcome = attempt(value)
    if (outcome.ok) return outcome.value
    throw outcome.error
  }

  const plain = {
    title,
    si: solve,
    attempt,
    read: (value: unknown): SiOf<In> => {
      const outcome = readAll(value)
      if (outcome.ok) return outcome.si
      throw new InputError(name, outcome.issues)
    },
    check: (si: SiOf<In>) => definition().check?.(si) ?? [],
    jsonSchema: () => {
      const { input, either } = definition()
      return {
        $schema: "https://json-schema.org/draft/2020-12/schema",
        title: name,
        description: title,
        ...withSchemaAddress(objectSchema(input as unknown as AnyFields, either)),
      }
    },
    "~standard": {
      version: 1 as const,
      vendor: "alula" as const,
      validate: (value: unknown) => {
        const outcome = readAll(value)
        return outcome.ok ? { value: outcome.si } : { issues: outcome.issues }
      },
    },
  }
  Object.defineProperty(call, "name", { value: name })
  // defined as getters: to assign them would call them. Frozen: who pushed into a default's list would change what is solved
  for (const part of ["input", "either", "output", "example", "formulae", "sources"] as const)
    Object.defineProperty(call, part, { get: () => frozen(definition()[part] as object), enumerable: true })
  return Object.freeze(Object.assign(call, plain)) as unknown as Solver<In, Out, Refusal, Hazard>
}
