import { type Kind, readQuantity } from "../quantity/index.js"
import type { Issue, IssueCode } from "./errors.js"
import type { AnyField, AnyFields } from "./fields.js"
import { fill, type Values, type ValuesFor } from "./message.js"

type Fault = Omit<Issue, "path" | "message">

/** A validated input in SI, or every fault of it. */
export type Read = { readonly ok: true; readonly si: unknown } | { readonly ok: false; readonly issues: readonly Issue[] }

/** A value as a fault names it. */
export function shown(value: unknown): string {
  if (value === undefined) return "nothing"
  if (typeof value === "string") return `'${value.length > 40 ? `${value.slice(0, 39)}…` : value}'`
  if (typeof value === "number" || typeof value === "boolean" || value === null) return String(value)
  return Array.isArray(value) ? "a list" : typeof value === "object" ? "an object" : `a ${typeof value}`
}

/** Text of a path: `wires[0].length`. */
export function pathText(path: readonly (string | number)[]): string {
  return path.map((part, i) => (typeof part === "number" ? `[${part}]` : i ? `.${part}` : part)).join("") || "input"
}

/** Makes an issue, its message put together from its parts. */
export function issue(code: IssueCode, path: readonly (string | number)[], received: string, expected: string): Issue {
  return { code, path, received, expected, message: `${pathText(path)}: expected ${expected}, received ${received}` }
}

/** The fault of a name that is none of those known, with the one probably meant. */
export function unknownKey(path: readonly (string | number)[], key: string, known: readonly string[]): Issue {
  const meant = nearestWord(key, known)
  return issue("unknown-key", path, `'${key}'`, meant ? `a known name (did you mean '${meant}'?)` : `one of ${known.join(", ")}`)
}

/**
 * A cross-field fault: the values are each allowed but do not go together. Both texts are templates (see {@link fill})
 * over `values`, whose names are paths in the input.
 */
export function inconsistent<const Received extends string, const Expected extends string>(
  path: readonly (string | number)[],
  received: Received,
  expected: Expected,
  ...rest: string extends Received
    ? [values?: Values]
    : keyof ValuesFor<`${Received} ${Expected}`> extends never
      ? []
      : [values: ValuesFor<`${Received} ${Expected}`>]
): Issue {
  const values: Values = rest[0] ?? {}
  return { ...issue("inconsistent", path, fill(received, values), fill(expected, values)), values }
}

function limitOf(kind: Kind | "number", limit: unknown): number | undefined {
  if (limit === undefined) return undefined
  return kind === "number" ? (limit as number) : (readQuantity(kind, limit) as number)
}

function numberFault(field: Extract<AnyField, { symbol: string }>, value: number, received: string): Fault | null {
  const { kind, min, max, above, below } = field
  const [low, high, over, under] = [min, max, above, below].map((limit) => limitOf(kind, limit))
  // each test is the acceptance, negated, so that nothing slips through
  if (low !== undefined && !(value >= low)) return { code: "too-small", received, expected: `at least ${shownLimit(min)}` }
  if (over !== undefined && !(value > over)) return { code: "too-small", received, expected: `more than ${shownLimit(above)}` }
  if (high !== undefined && !(value <= high)) return { code: "too-large", received, expected: `at most ${shownLimit(max)}` }
  if (under !== undefined && !(value < under)) return { code: "too-large", received, expected: `less than ${shownLimit(below)}` }
  if (kind === "number" && field.whole && !Number.isInteger(value)) return { code: "not-whole", received, expected: "a whole number" }
  return null
}

const shownLimit = (limit: unknown) => String(limit)

function readField(field: Exclude<AnyField, { kind: "list" | "group" }>, value: unknown): { readonly value: unknown } | Fault {
  const received = shown(value)
  switch (field.kind) {
    case "number": {
      if (typeof value !== "number") return { code: "wrong-type", received, expected: "a number" }
      if (!Number.isFinite(value)) return { code: "not-finite", received, expected: "a finite number" }
      return numberFault(field, value, received) ?? { value }
    }
    case "choice":
      if (typeof value === "string" && Object.hasOwn(field.options, value)) return { value }
      return { code: "not-a-choice", received, expected: `one of ${Object.keys(field.options).join(", ")}` }
    case "flag":
      return typeof value === "boolean" ? { value } : { code: "wrong-type", received, expected: "true or false" }
    case "text":
      return typeof value === "string" ? { value } : { code: "wrong-type", received, expected: "text" }
    default: {
      const read = readQuantity(field.kind, value)
      if (typeof read !== "number") return { code: read.code, received, expected: read.expected }
      return numberFault(field as Extract<AnyField, { symbol: string }>, read, received) ?? { value: read }
    }
  }
}

type Path = readonly (string | number)[]

/** Reads a value against its field, adding every fault found below it to `issues`. */
function readInto(field: AnyField, value: unknown, path: Path, issues: Issue[]): unknown {
  if (value === undefined) {
    if (field.default === undefined) {
      issues.push(issue("missing", path, "nothing", field.label))
      return value
    }
    // the default is given as a user would give it, so it goes through the same reading
    return field.default === null ? null : readInto(field, field.default, path, issues)
  }
  if (value === null && field.default === null) return null
  if (field.kind === "group") return readGroup(field.fields, value, path, issues)
  if (field.kind === "list") return readList(field, value, path, issues)
  const read = readField(field, value)
  if ("value" in read) return read.value
  issues.push(issue(read.code, path, read.received, read.expected))
  return value
}

function readGroup(fields: AnyFields, value: unknown, path: Path, issues: Issue[]): unknown {
  if (typeof value !== "object" || value === null || Array.isArray(value)) {
    issues.push(issue(value === undefined ? "missing" : "wrong-type", path, shown(value), "an object with named fields"))
    return value
  }
  const given = value as Readonly<Record<string, unknown>>
  const read: Record<string, unknown> = {}
  for (const key of Object.keys(fields))
    read[key] = readInto(fields[key] as AnyField, Object.hasOwn(given, key) ? given[key] : undefined, [...path, key], issues)
  for (const key of Object.keys(given)) {
    if (Object.hasOwn(fields, key) || given[key] === undefined) continue
    issues.push(unknownKey([...path, key], key, Object.keys(fields)))
  }
  return read
}

function readList(field: Extract<AnyField, { kind: "list" }>, value: unknown, path: Path, issues: Issue[]): unknown {
  if (!Array.isArray(value)) {
    issues.push(issue("wrong-type", path, shown(value), "a list"))
    return value
  }
  const { min = 0, max = Number.POSITIVE_INFINITY } = field
  const count = `${value.length} entries`
  if (!(value.length >= min)) issues.push(issue("too-few", path, count, `at least ${min} entries`))
  if (!(value.length <= max)) issues.push(issue("too-many", path, count, `at most ${max} entries`))
  // Array.from visits the holes of a sparse array too, where map() would let them through unread
  return Array.from(value, (item, i) => readInto(field.of, item, [...path, i], issues))
}

/** Words at most two edits apart, for a did-you-mean. */
function nearestWord(word: string, words: readonly string[]): string | null {
  let best: string | null = null
  let least = Math.min(3, word.length)
  for (const candidate of words) {
    let row = Array.from({ length: candidate.length + 1 }, (_, i) => i)
    for (let i = 1; i <= word.length; i++) {
      const next = [i]
      for (let j = 1; j <= candidate.length; j++)
        next[j] = Math.min(
          (row[j] as number) + 1,
          (next[j - 1] as number) + 1,
          (row[j - 1] as number) + (word[i - 1]?.toLowerCase() === candidate[j - 1]?.toLowerCase() ? 0 : 1),
        )
      row = next
    }
    const edits = row[candidate.length] as number
    if (edits < least) {
      least = edits
      best = candidate
    }
  }
  return best
}

/** Reads an input: validates, converts to SI and fills defaults. */
export function readInput(fields: AnyFields, input: unknown): Read {
  const issues: Issue[] = []
  const si = readGroup(fields, input, [], issues)
  return issues.length ? { ok: false, issues } : { ok: true, si }
}
