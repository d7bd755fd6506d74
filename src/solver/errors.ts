import { fill, type Values } from "./message.js"

/** What can be wrong with an input; the set is closed. */
export type IssueCode =
  | "missing"
  | "unknown-key"
  | "wrong-type"
  | "wrong-unit"
  | "not-a-number"
  | "not-finite"
  | "too-small"
  | "too-large"
  | "not-whole"
  | "not-a-choice"
  | "too-few"
  | "too-many"
  | "inconsistent"

/** One fault of an input, as data. */
export interface Issue {
  readonly code: IssueCode
  /** Where, from the input's root: `['wires', 0, 'length']`. */
  readonly path: readonly (string | number)[]
  readonly received: string
  readonly expected: string
  readonly message: string
  /** The numbers (SI) and words of a fault between fields, by path in the input. */
  readonly values?: Values
}

/** The input is not a valid one; `issues` lists every fault. */
export class InputError extends Error {
  override readonly name = "InputError"
  readonly solver: string
  readonly issues: readonly Issue[]

  constructor(solver: string, issues: readonly Issue[]) {
    super(
      `${solver}: ${issues.length === 1 ? "1 fault" : `${issues.length} faults`} in the input\n${issues.map((i) => `  ${i.message}`).join("\n")}`,
    )
    this.solver = solver
    this.issues = issues
  }

  /** The fault as plain data. */
  toJSON(): { name: string; solver: string; issues: readonly Issue[] } {
    return { name: this.name, solver: this.solver, issues: this.issues }
  }
}

/**
 * A well-formed problem that physics refuses, as plain data.
 *
 * @typeParam Code - the reasons the solver can give
 */
export interface NoSolution<Code extends string = string> {
  /** Reason code, such as `insufficient-force` or `cannot-close`. */
  readonly noSolution: Code
  /** One sentence: the reason and by how much it fails. */
  readonly message: string
  /** Where it fails, in SI numbers by name. */
  readonly at: Readonly<Record<string, number>>
  /** How far off, in the SI unit of the quantity that falls short. */
  readonly shortBy: number
  /** The nearest values that would work, in SI numbers by name; empty where none is known. */
  readonly nearest: Readonly<Record<string, number>>
  /** Further numbers and words of the message, by name. */
  readonly values: Values
}

/** Thrown where {@link NoSolution} is the answer. */
export class NoSolutionError<Code extends string = string> extends Error implements NoSolution<Code> {
  override readonly name = "NoSolutionError"
  readonly solver: string
  readonly noSolution: Code
  readonly at: Readonly<Record<string, number>>
  readonly shortBy: number
  readonly nearest: Readonly<Record<string, number>>
  readonly values: Values

  constructor(solver: string, reason: NoSolution<Code>) {
    super(`${solver}: ${reason.message}`)
    this.solver = solver
    this.noSolution = reason.noSolution
    this.at = reason.at
    this.shortBy = reason.shortBy
    this.nearest = reason.nearest
    this.values = reason.values
  }

  /** The refusal as plain data. */
  toJSON(): NoSolution<Code> & { name: string; solver: string } {
    const { name, solver, noSolution, message, at, shortBy, nearest, values } = this
    return { name, solver, noSolution, message, at, shortBy, nearest, values }
  }
}

/**
 * Makes a {@link NoSolution} from a template (see {@link fill}). Names in it are `shortBy`, those of `at`, `nearest.…`,
 * `given.…` (a path in the input) or those of `values`.
 */
export function refuse<const Code extends string>(
  noSolution: Code,
  template: string,
  shortBy: number,
  at: Readonly<Record<string, number>> = {},
  nearest: Readonly<Record<string, number>> = {},
  values: Values = {},
): NoSolution<Code> {
  const near = Object.fromEntries(Object.entries(nearest).map(([name, value]) => [`nearest.${name}`, value]))
  return { noSolution, message: fill(template, { ...near, ...at, shortBy, ...values }), at, shortBy, nearest, values }
}

/** Tells a refusal from an answer of `.si`. */
export function isNoSolution(value: unknown): value is NoSolution {
  return typeof value === "object" && value !== null && "noSolution" in value
}
