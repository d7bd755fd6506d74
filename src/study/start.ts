// What all studies begin with: a base that is read, and one error that names every fault of the arguments.
import type { Issue, Path } from "../solver/index.js"
import { issue } from "../solver/index.js"
import { shown } from "../solver/issue.js"
import { type AnySolver, type Found, readBase, ruleFaults, studyError, withValue } from "./place.js"

/** Reads a study's arguments: what is faulty is gathered, and told at once. */
export class Arguments {
  readonly #issues: Issue[] = []
  readonly base: object

  /** @throws InputError where the base is faulty: no path can be followed then */
  constructor(
    readonly verb: string,
    readonly solver: AnySolver,
    base: unknown,
  ) {
    const read = readBase(solver, base)
    if (!read.ok) throw studyError(verb, solver, read.issues)
    this.base = read.value
  }

  /** What was read, or a stand-in until the faults are told. */
  take<T>(read: Found<T>, otherwise: T): T {
    if (read.ok) return read.value
    this.#issues.push(...read.issues)
    return otherwise
  }

  fault(fault: Issue): void {
    this.#issues.push(fault)
  }

  /** Holds values that the base does not give to the rules of which may be given together. */
  rules(places: readonly { readonly keys: Path; readonly value: unknown }[], row: readonly unknown[], where: Path): void {
    if (this.#issues.length > 0 || places.every(({ value }) => value !== null)) return
    const si = places.reduce((whole, { keys }, j) => withValue(whole, keys, row[j]), this.base)
    this.#issues.push(...ruleFaults(this.solver, si, where))
  }

  /** A number among the options: `standard` where left out. */
  number(name: string, given: unknown, standard: number, low: number, high: number, whole = true): number {
    if (given === undefined) return standard
    const where: Path = [name]
    if (typeof given !== "number" || !Number.isFinite(given)) this.fault(issue("wrong-type", where, shown(given), "a number"))
    else if (whole && !Number.isInteger(given)) this.fault(issue("not-whole", where, shown(given), "a whole number"))
    else if (given < low) this.fault(issue("too-small", where, shown(given), `at least ${low}`))
    else if (given > high) this.fault(issue("too-large", where, shown(given), `at most ${high}`))
    else return given
    return standard
  }

  /** @throws InputError naming every fault found so far */
  done(): void {
    if (this.#issues.length > 0) throw studyError(this.verb, this.solver, this.#issues)
  }
}
