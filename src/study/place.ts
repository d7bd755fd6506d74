// Where a value of an input lies: found by its path along the solver's own descriptions, read in any unit, put into an input.
import { type AnyField, type AnyFields, type AnyGroup, type Either, InputError, type Issue, issue, type Path } from "../solver/index.js"
import { shown, unknownKey } from "../solver/issue.js"
import { readInput } from "../solver/read.js"

/** A solver as a study walks it, its types put aside. */
export interface AnySolver {
  readonly name: string
  readonly input: object
  readonly either: readonly object[]
  readonly output: object
  readonly example: unknown
  si(input: object): object
  read(input: unknown): object
  check(input: object): readonly Issue[]
}

/** A place of an input, and what the input says there. */
export interface Place {
  /** Names joined by points: `wires.0.length`. */
  readonly path: string
  readonly keys: Path
  readonly field: AnyField
  /** What the input has there, in SI; null where nothing is given. */
  readonly value: unknown
}

/** Something read, or its faults. */
export type Found<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly issues: readonly Issue[] }

const none = (...issues: readonly Issue[]): { readonly ok: false; readonly issues: readonly Issue[] } => ({ ok: false, issues })

/** The error of a study whose arguments are faulty: every fault, each with its place in the arguments. */
export function studyError(verb: string, solver: { readonly name: string }, issues: readonly Issue[]): InputError {
  return new InputError(`${verb}(${solver.name})`, issues)
}

/** A fault told at another place: `where` in front of its own path. */
const moved = (where: Path, { code, path, received, expected, values }: Issue): Issue => ({
  ...issue(code, [...where, ...path], received, expected),
  ...(values && { values }),
})

/** A study's base read into SI; its faults are told under `base`. */
export function readBase(solver: AnySolver, base: unknown): Found<object> {
  try {
    return { ok: true, value: solver.read(base) }
  } catch (error) {
    if (error instanceof InputError) return none(...error.issues.map((fault) => moved(["base"], fault)))
    throw error
  }
}

/** The members of a group or of a variant's own type, with the rules between them. */
function groupAt(field: AnyField, value: unknown): Pick<AnyGroup, "fields" | "either"> | null {
  if (field.kind === "group") return field
  if (field.kind === "variant") return field.of[(value as { readonly type: string }).type] ?? null
  return null
}

/** Whether a name is an entry's number as it is written: `00` would lie beside the list's own entries when it is put in. */
export const isEntry = (name: string): boolean => /^(?:0|[1-9]\d*)$/.test(name)

/**
 * The place at a path of an input that was read.
 *
 * @param where - where the path itself was written, for the fault of one that leads nowhere
 */
export function placeAt(solver: AnySolver, si: object, path: unknown, where: Path): Found<Place> {
  if (typeof path !== "string" || path === "")
    return none(issue("wrong-type", where, shown(path), "a path of the input, such as 'run.length'"))
  let fields: AnyFields | null = solver.input as AnyFields
  let field: AnyField | undefined
  let value: unknown = si
  const keys: (string | number)[] = []
  for (const name of path.split(".")) {
    if (field && (value === null || value === undefined))
      return none(issue("inconsistent", where, shown(path), `a value inside ${keys.join(".")}, which the base does not give`))
    if (field?.kind === "list") {
      const count = (value as readonly unknown[]).length
      if (!isEntry(name) || !(Number(name) < count))
        return none(issue("unknown-key", where, shown(path), `an entry of ${keys.join(".")}, which has ${count}, counted from 0`))
      keys.push(Number(name))
      field = field.of
      value = (value as readonly unknown[])[Number(name)]
    } else {
      fields = field ? (groupAt(field, value)?.fields ?? null) : fields
      if (!fields) return none(issue("unknown-key", where, shown(path), `nothing behind ${keys.join(".")}`))
      if (!Object.hasOwn(fields, name)) return none({ ...unknownKey(where, name, Object.keys(fields)) })
      keys.push(name)
      field = fields[name]
      value = (value as Readonly<Record<string, unknown>>)[name]
    }
  }
  return { ok: true, value: { path, keys, field: field as AnyField, value: value ?? null } }
}

/** Each field as the one field of a set, so that its reader is compiled once and not for every value. */
const alone = new WeakMap<AnyField, AnyFields>()

/** A value read as the field of a place reads it: in any unit, within its limits. */
export function readAt(place: Place, value: unknown, where: Path): Found<unknown> {
  const fields = alone.get(place.field) ?? { value: place.field }
  alone.set(place.field, fields)
  const read = readInput(fields, { value })
  if (read.ok) return { ok: true, value: (read.si as { readonly value: unknown }).value }
  return none(...read.issues.map((fault) => moved(where, { ...fault, path: fault.path.slice(1) })))
}

/** What lies at keys of an input or a result; undefined where nothing does. */
export function valueAt(from: unknown, keys: Path): unknown {
  let value = from
  for (const key of keys) {
    if (value === null || value === undefined) return undefined
    value = (value as Readonly<Record<string | number, unknown>>)[key]
  }
  return value
}

/** The input with another value at a place: what lies beside it is shared, what it lies in is new. */
export function withValue<T extends object>(si: T, keys: Path, value: unknown, depth = 0): T {
  const key = keys[depth] as string | number
  const put =
    depth === keys.length - 1 ? value : withValue((si as Readonly<Record<string | number, object>>)[key] as object, keys, value, depth + 1)
  if (Array.isArray(si)) {
    const copy = si.slice()
    copy[key as number] = put
    return copy as unknown as T
  }
  return { ...si, [key]: put }
}

/** Faults of the rules between fields (which may be given together) in an input with values put in. */
export function ruleFaults(solver: AnySolver, si: object, where: Path): readonly Issue[] {
  const read = readInput(solver.input as AnyFields, si, solver.either as readonly Either[])
  return read.ok ? [] : read.issues.map((fault) => moved(where, fault))
}
