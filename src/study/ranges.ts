// What a search may choose from: a range of a number, or values of any place, in any unit.
import { type Issue, issue, type Path } from "../solver/index.js"
import { shown, unknownKey } from "../solver/issue.js"
import { leafAt } from "./axes.js"
import type { PathTo, ValueAt } from "./paths.js"
import { type AnySolver, type Found, type Place, readAt } from "./place.js"
import { numberPlace } from "./places.js"

/** Any value of a range, or one of a list of them. Of a number of whole steps, the range holds the whole ones. */
export type Allowed<Value> = { readonly from: Value; readonly to: Value } | readonly Value[]

/** What may be chosen, by path of the input. */
export type AllowedValues<In> = { readonly [P in PathTo<In>]?: Allowed<ValueAt<In, P>> }

/** A place and what may be put there, in SI. */
export interface ChoicePlaceOf extends Place {
  /** The values, where they can be counted. */
  readonly values: readonly unknown[] | null
  /** Ends of a range. */
  readonly low: number
  readonly high: number
  /** Whether only the whole numbers of the range are meant. */
  readonly whole: boolean
}

/** Whole numbers of a range are listed up to this many. */
const COUNTED = 10_000

const none = <T>(...issues: readonly Issue[]): Found<T> => ({ ok: false, issues })

function readChoice(solver: AnySolver, si: object, path: string, choice: unknown, where: Path): Found<ChoicePlaceOf> {
  const found = leafAt(solver, si, path, where)
  if (!found.ok) return found
  const place = found.value
  const issues: Issue[] = []
  const read = (value: unknown, at: Path): unknown => {
    const one = readAt(place, value, at)
    // whether a value is given is the base's to say: rules between fields hang on it
    if (one.ok && one.value !== null) return one.value
    issues.push(...(one.ok ? [issue("wrong-type", at, "null", "a value")] : one.issues))
    return 0
  }
  if (Array.isArray(choice)) {
    if (choice.length === 0) return none(issue("too-few", where, "none", "at least 1 value"))
    const values = (choice as readonly unknown[]).map((value, i) => read(value, [...where, i]))
    return issues.length > 0
      ? none(...issues)
      : { ok: true, value: { ...place, values: [...new Set(values)], low: 0, high: 0, whole: false } }
  }
  if (typeof choice !== "object" || choice === null)
    return none(issue("wrong-type", where, shown(choice), "a range { from, to } or a list of values"))
  const given = choice as Readonly<Record<string, unknown>>
  for (const name of Object.keys(given)) if (name !== "from" && name !== "to") issues.push(unknownKey(where, name, ["from", "to"]))
  const { field } = place
  if (!("symbol" in field)) return none(...issues, issue("wrong-type", where, "a range", "a list of values, since this is no number"))
  const [low, high] = (["from", "to"] as const).map((name) => {
    if (given[name] === undefined) issues.push(issue("missing", [...where, name], "nothing", "a value"))
    return given[name] === undefined ? 0 : (read(given[name], [...where, name]) as number)
  }) as [number, number]
  if (issues.length === 0 && low > high)
    issues.push(issue("inconsistent", where, `from ${shown(given.from)}`, `no more than to ${shown(given.to)}`))
  if (issues.length > 0) return none(...issues)
  const { whole } = numberPlace({ path, keys: place.keys, label: field.label }, field, place.value as number | null)
  const isListed = low === high || (whole && high - low < COUNTED)
  const values = isListed
    ? Array.from({ length: whole ? Math.floor(high) - Math.ceil(low) + 1 : 1 }, (_, i) => (whole ? Math.ceil(low) + i : low))
    : null
  return { ok: true, value: { ...place, values, low, high, whole } }
}

/** Choices by path. */
export function readChoices(solver: AnySolver, si: object, vary: unknown, where: Path): Found<readonly ChoicePlaceOf[]> {
  if (typeof vary !== "object" || vary === null || Array.isArray(vary) || Object.values(vary).every((one) => one === undefined))
    return none(issue("wrong-type", where, shown(vary), "at least one range or list of values by path of the input"))
  const read = Object.entries(vary)
    .filter(([, choice]) => choice !== undefined)
    .map(([path, choice]) => readChoice(solver, si, path, choice, [...where, path]))
  const issues = read.flatMap((one) => (one.ok ? [] : one.issues))
  return issues.length > 0 ? none(...issues) : { ok: true, value: read.flatMap((one) => (one.ok ? [one.value] : [])) }
}

/** The values at a point of the unit cube: one number for each place. */
export function chosenAt(places: readonly ChoicePlaceOf[], point: ArrayLike<number>): unknown[] {
  return places.map(({ values, low, high, whole }, j) => {
    const share = point[j] as number
    if (values) return values[Math.min(values.length - 1, Math.floor(share * values.length))]
    // each whole number as much of the range as any other
    if (whole) return Math.min(high, low + Math.floor(share * (high - low + 1)))
    return share === 1 ? high : low + (high - low) * share
  })
}

/** The point of the unit cube at which the base's own values lie; null where one of them may not be chosen. */
export function pointOf(places: readonly ChoicePlaceOf[]): Float64Array | null {
  const shares = places.map(({ values, low, high, whole, value }) => {
    if (values) {
      const at = values.indexOf(value)
      return at < 0 ? Number.NaN : (at + 0.5) / values.length
    }
    if (typeof value !== "number") return Number.NaN
    return whole ? (value - low + 0.5) / (high - low + 1) : (value - low) / (high - low)
  })
  return shares.every((share) => share >= 0 && share <= 1) ? Float64Array.from(shares) : null
}
