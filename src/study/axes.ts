// Values that an input is given one after another: a list, or a range of so many.
import { type Issue, issue, type Path } from "../solver/index.js"
import { shown } from "../solver/issue.js"
import type { PathTo, ValueAt } from "./paths.js"
import { type AnySolver, type Found, type Place, placeAt, readAt, ruleFaults, withValue } from "./place.js"
import { numberPlace } from "./places.js"

/** How the values between two ends lie: by equal differences, or by equal ratios. */
export type Spacing = "even" | "logarithmic"

/** So many values from one end to the other, both included. */
export interface Span<V> {
  readonly from: V
  readonly to: V
  /** How many, 2 to 100 000; 21 where it is left out. Of whole numbers each is taken once. */
  readonly count?: number
  readonly spacing?: Spacing
}

/** Values of one input: a list, or for a number a range of so many. */
export type Axis<V> = readonly V[] | ([number] extends [V] ? Span<V> : never)

/** Inputs by path, each with its values. */
export type Axes<In, P extends PathTo<In>> = { readonly [K in P]: Axis<ValueAt<In, K>> }

/** An axis read: its place, and its values in SI. */
export interface ReadAxis {
  readonly place: Place
  readonly values: readonly unknown[]
}

const COUNT = 21
const MOST_VALUES = 100_000
/** Most points that one study asks. */
export const MOST_POINTS = 1_000_000

/** Values from one end to the other; whole ones each once. */
export function spaced(from: number, to: number, count: number, spacing: Spacing, whole: boolean): number[] {
  const between = (t: number) => (spacing === "even" ? from + (to - from) * t : from * (to / from) ** t)
  // the ends as they are given: rounding may not carry them over a limit
  const all = Array.from({ length: count }, (_, i) => (i === 0 ? from : i === count - 1 ? to : between(i / (count - 1))))
  return whole ? [...new Set(all.map(Math.round))] : all
}

/** Whether a value is a whole number between two. */
export const isWholeWithin = (value: unknown, low: number, high: number): value is number =>
  typeof value === "number" && Number.isInteger(value) && value >= low && value <= high

function readSpan(place: Place, span: Readonly<Record<string, unknown>>, where: Path): Found<readonly number[]> {
  const issues: Issue[] = []
  if (!("symbol" in place.field))
    return { ok: false, issues: [issue("wrong-type", where, "a range", `a list of values for ${place.path}`)] }
  const { whole } = numberPlace({ path: place.path, keys: place.keys, label: "" }, place.field, null)
  const known = ["from", "to", "count", "spacing"]
  for (const key of Object.keys(span))
    if (!known.includes(key)) issues.push(issue("unknown-key", [...where, key], shown(key), `one of ${known.join(", ")}`))
  const [from, to] = (["from", "to"] as const).map((end) => {
    const read = readAt(place, span[end], [...where, end])
    if (!read.ok) issues.push(...read.issues)
    else if (typeof read.value === "number") return read.value
    else issues.push(issue("wrong-type", [...where, end], shown(read.value), "a value"))
    return Number.NaN
  }) as [number, number]
  const { count = whole ? Math.min(MOST_VALUES, Math.abs(to - from) + 1) : COUNT, spacing = "even" } = span
  if (!issues.length && from === to) issues.push(issue("inconsistent", where, "two equal ends", "two ends that differ"))
  if (!isWholeWithin(count, 2, MOST_VALUES) && !issues.length)
    issues.push(issue("wrong-type", [...where, "count"], shown(count), `a whole number from 2 to ${MOST_VALUES}`))
  if (spacing !== "even" && spacing !== "logarithmic")
    issues.push(issue("not-a-choice", [...where, "spacing"], shown(spacing), "one of even, logarithmic"))
  else if (spacing === "logarithmic" && !issues.length && !(from > 0 && to > 0))
    issues.push(issue("inconsistent", [...where, "spacing"], "a logarithmic range through zero or below", "both ends above zero"))
  if (issues.length) return { ok: false, issues }
  return { ok: true, value: spaced(from, to, count as number, spacing as Spacing, whole) }
}

/** Whether a value is given is the base's to say: rules between fields hang on it. */
const given = (value: unknown, where: Path): readonly Issue[] => (value === null ? [issue("wrong-type", where, "null", "a value")] : [])

function readList(place: Place, list: readonly unknown[], where: Path): Found<readonly unknown[]> {
  if (list.length === 0) return { ok: false, issues: [issue("too-few", where, "0 entries", "at least 1 entry")] }
  if (list.length > MOST_VALUES)
    return { ok: false, issues: [issue("too-many", where, `${list.length} entries`, `at most ${MOST_VALUES} entries`)] }
  const read = list.map((value, i) => readAt(place, value, [...where, i]))
  const issues = read.flatMap((one, i) => (one.ok ? given(one.value, [...where, i]) : one.issues))
  return issues.length ? { ok: false, issues } : { ok: true, value: read.map((one) => (one.ok ? one.value : null)) }
}

/** A place that holds a single value, or the fault of one that holds several. */
export function leafAt(solver: AnySolver, si: object, path: unknown, where: Path): Found<Place> {
  const found = placeAt(solver, si, path, where)
  if (!found.ok) return found
  const { kind } = found.value.field
  if (kind === "group" || kind === "list" || kind === "variant")
    return { ok: false, issues: [issue("wrong-type", where, shown(path), `a path of a single value, not of a ${kind}`)] }
  return found
}

/** Axes read: every place, every value, and whether the first of each go together with the base by its rules. */
export function readAxes(solver: AnySolver, si: object, axes: unknown, where: Path): Found<readonly ReadAxis[]> {
  if (typeof axes !== "object" || axes === null || Array.isArray(axes))
    return { ok: false, issues: [issue("wrong-type", where, shown(axes), "inputs by path, each with its values")] }
  const entries = Object.entries(axes).filter(([, axis]) => axis !== undefined)
  if (entries.length === 0) return { ok: false, issues: [issue("too-few", where, "no input", "at least one input with its values")] }
  const issues: Issue[] = []
  const read: ReadAxis[] = []
  for (const [path, axis] of entries as [string, unknown][]) {
    const at = [...where, path]
    const place = leafAt(solver, si, path, at)
    if (!place.ok) {
      issues.push(...place.issues)
      continue
    }
    const values = Array.isArray(axis)
      ? readList(place.value, axis, at)
      : typeof axis === "object" && axis !== null
        ? readSpan(place.value, axis as Readonly<Record<string, unknown>>, at)
        : ({ ok: false, issues: [issue("wrong-type", at, shown(axis), "a list of values, or a range with from and to")] } as const)
    if (values.ok) read.push({ place: place.value, values: values.value })
    else issues.push(...values.issues)
  }
  if (issues.length) return { ok: false, issues }
  const points = read.reduce((product, axis) => product * axis.values.length, 1)
  if (points > MOST_POINTS) issues.push(issue("too-many", where, `${points} points`, `at most ${MOST_POINTS} points`))
  const first = read.reduce((input, { place, values }) => withValue(input, place.keys, values[0]), si)
  issues.push(...ruleFaults(solver, first, where))
  return issues.length ? { ok: false, issues } : { ok: true, value: read }
}

/** Every combination of axes as columns, the last axis changing first. */
export function columnsOf(axes: readonly ReadAxis[]): readonly (readonly unknown[])[] {
  const total = axes.reduce((product, axis) => product * axis.values.length, 1)
  let block = total
  return axes.map(({ values }) => {
    block /= values.length
    const each = block
    return Array.from({ length: total }, (_, i) => values[Math.floor(i / each) % values.length])
  })
}
