// What of a result a study asks for: values by path along the solver's own descriptions, and limits on them.
import { type Kind, readQuantity } from "../quantity/index.js"
import { type AnyOutFields, type Issue, issue, type Path } from "../solver/index.js"
import { shown, unknownKey } from "../solver/issue.js"
import { answer, Refused } from "./answer.js"
import { outputAt, plainOutputs } from "./outputs.js"
import { type AnySolver, type Found, valueAt } from "./place.js"

/** A number, or a yes or no, of a result. */
export interface Asked {
  readonly path: string
  readonly label: string
  readonly kind: Kind | "number" | "flag"
}

/** A limit that a result has to keep. */
export interface OutputLimit {
  readonly atMost?: unknown
  readonly atLeast?: unknown
}

/** A limit in SI. */
export interface Limit extends Asked {
  readonly low: number
  readonly high: number
}

const found = <T>(value: T): Found<T> => ({ ok: true, value })
const none = <T>(...issues: readonly Issue[]): Found<T> => ({ ok: false, issues })

/** The number, or the yes or no, at a path of a result. */
export function askedAt(solver: AnySolver, path: unknown, where: Path): Found<Asked> {
  const output = outputAt(solver, path, where)
  if (!output.ok) return output
  const { kind, label } = output.value
  if (kind === "text") return none(issue("wrong-type", where, shown(path), "the path of a number, or of a yes or no, of the result"))
  return found({ path: output.value.path, label, kind })
}

/** Every number of a result that lies in no list. */
export function numbersOf(solver: AnySolver): readonly Asked[] {
  return plainOutputs(solver.output as AnyOutFields).flatMap(({ path, label, kind }) =>
    kind === "text" || kind === "flag" ? [] : [{ path, label, kind }],
  )
}

/** The values asked for: a list of paths, or all numbers that lie in no list. */
export function readAsked(solver: AnySolver, outputs: unknown, where: Path): Found<readonly Asked[]> {
  if (outputs === undefined) return found(numbersOf(solver))
  if (!Array.isArray(outputs) || outputs.length === 0)
    return none(issue("wrong-type", where, shown(outputs), "a list of paths of the result"))
  const read = outputs.map((path: unknown, i) => askedAt(solver, path, [...where, i]))
  const issues = read.flatMap((one) => (one.ok ? [] : one.issues))
  return issues.length ? none(...issues) : found(read.flatMap((one) => (one.ok ? [one.value] : [])))
}

function readBound(kind: Asked["kind"], value: unknown, where: Path): Found<number> {
  if (kind === "flag")
    return typeof value === "boolean" ? found(Number(value)) : none(issue("wrong-type", where, shown(value), "true or false"))
  if (kind === "number")
    return typeof value === "number" && Number.isFinite(value) ? found(value) : none(issue("wrong-type", where, shown(value), "a number"))
  const read = readQuantity(kind, value)
  return typeof read === "number" ? found(read) : none(issue(read.code, where, shown(value), read.expected))
}

/** A limit or a reading of a value that was asked for, in SI. */
export function readValue(asked: Asked, value: unknown, where: Path): Found<number> {
  return readBound(asked.kind, value, where)
}

/** Values of a result at an input, NaN where there are none. */
export function valuesAt(solver: AnySolver, si: object, asked: readonly Asked[]): readonly number[] {
  const out = answer(solver, si)
  return asked.map(({ path }) => {
    const value = out instanceof Refused ? null : valueAt(out, path.split("."))
    return typeof value === "boolean" ? Number(value) : typeof value === "number" ? value : Number.NaN
  })
}

/** Limits by path of the result. */
export function readLimits(solver: AnySolver, limits: unknown, where: Path): Found<readonly Limit[]> {
  if (limits === undefined) return found([])
  if (typeof limits !== "object" || limits === null || Array.isArray(limits))
    return none(issue("wrong-type", where, shown(limits), "limits by path of the result"))
  const issues: Issue[] = []
  const read = Object.entries(limits).flatMap(([path, limit]: [string, unknown]): Limit[] => {
    const at = [...where, path]
    const asked = askedAt(solver, path, at)
    if (!asked.ok) {
      issues.push(...asked.issues)
      return []
    }
    if (typeof limit !== "object" || limit === null) {
      issues.push(issue("wrong-type", at, shown(limit), "an object with atMost, atLeast or both"))
      return []
    }
    const given = limit as Readonly<Record<string, unknown>>
    for (const name of Object.keys(given))
      if (name !== "atMost" && name !== "atLeast") issues.push(unknownKey(at, name, ["atMost", "atLeast"]))
    const ends = (["atLeast", "atMost"] as const).map((name) => {
      if (given[name] === undefined) return null
      const end = readBound(asked.value.kind, given[name], [...at, name])
      if (end.ok) return end.value
      issues.push(...end.issues)
      return null
    })
    const [low, high] = ends as [number | null, number | null]
    if (given.atLeast === undefined && given.atMost === undefined) issues.push(issue("missing", at, "neither", "atMost, atLeast or both"))
    if (low !== null && high !== null && low > high)
      issues.push(
        issue("inconsistent", at, `at least ${shown(given.atLeast)}`, `no more than the ${shown(given.atMost)} that it is to be at most`),
      )
    return [{ ...asked.value, low: low ?? Number.NEGATIVE_INFINITY, high: high ?? Number.POSITIVE_INFINITY }]
  })
  return issues.length ? none(...issues) : found(read)
}

/** By how much a value passes a limit, in shares of it; 0 where it keeps it, infinite where there is no value. */
export function passes({ low, high }: Limit, value: number): number {
  if (Number.isNaN(value)) return Number.POSITIVE_INFINITY
  if (value > high) return (value - high) / (Math.abs(high) || 1)
  return value < low ? (low - value) / (Math.abs(low) || 1) : 0
}
