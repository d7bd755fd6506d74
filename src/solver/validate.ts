import * as z from "zod/mini"
import { type Kind, readQuantity } from "../quantity/index.js"
import type { Issue, IssueCode } from "./errors.js"
import type { AnyField, AnyFields } from "./fields.js"

type Schema = z.ZodMiniType<unknown, unknown>
type Fault = Omit<Issue, "path" | "message">

/** A validated input in SI, or every fault of it. */
export type Read = { readonly ok: true; readonly si: unknown } | { readonly ok: false; readonly issues: readonly Issue[] }

function shown(value: unknown): string {
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

/** A cross-field fault: the values are each allowed but do not go together. */
export function inconsistent(path: readonly (string | number)[], received: string, expected: string): Issue {
  return issue("inconsistent", path, received, expected)
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

function readField(field: AnyField, value: unknown): { readonly value: unknown } | Fault {
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
    case "list":
    case "group":
      return { value }
    default: {
      const read = readQuantity(field.kind, value)
      if (typeof read !== "number") return { code: read.code, received, expected: read.expected }
      return numberFault(field as Extract<AnyField, { symbol: string }>, read, received) ?? { value: read }
    }
  }
}

function leaf(field: AnyField): Schema {
  return z.transform((value, context) => {
    const read = value === undefined ? { code: "missing" as const, received: "nothing", expected: field.label } : readField(field, value)
    if ("value" in read) return read.value
    context.issues.push({ code: "custom", input: value, params: read, message: read.expected })
    return value
  }) as Schema
}

function schemaOf(field: AnyField): Schema {
  if (field.kind === "group") return objectOf(field.fields)
  if (field.kind !== "list") return leaf(field)
  const items = z.array(schemaOf(field.of))
  const { min = 0, max = Number.POSITIVE_INFINITY } = field
  return z.pipe(
    items,
    z.transform((list: unknown[], context) => {
      const code = !(list.length >= min) ? "too-few" : !(list.length <= max) ? "too-many" : null
      if (code) {
        const expected = code === "too-few" ? `at least ${min} entries` : `at most ${max} entries`
        context.issues.push({
          code: "custom",
          input: list,
          params: { code, received: `${list.length} entries`, expected },
          message: expected,
        })
      }
      return list
    }),
  ) as unknown as Schema
}

/** The zod/mini schema of a set of fields; unknown keys are faults, defaults are filled. */
function objectOf(fields: AnyFields): Schema {
  const shape: Record<string, Schema> = {}
  for (const [key, field] of Object.entries(fields)) {
    const schema = schemaOf(field)
    if (!("default" in field)) {
      shape[key] = schema
      continue
    }
    const fallback = field.default
    const present = fallback === null ? (z.nullable(schema as never) as unknown as Schema) : schema
    // the default is given as a user would give it, so it goes through the same reading
    shape[key] = z.pipe(
      z.transform((value) => (value === undefined ? fallback : value)),
      present as never,
    ) as unknown as Schema
  }
  // a key set to undefined counts as left out
  return z.pipe(
    z.transform((value) =>
      typeof value === "object" && value !== null && !Array.isArray(value)
        ? Object.fromEntries(Object.entries(withMissing(fields, value)))
        : value,
    ),
    z.strictObject(shape) as never,
  ) as unknown as Schema
}

function withMissing(fields: AnyFields, value: object): object {
  const all: Record<string, unknown> = { ...value }
  for (const key of Object.keys(fields)) if (!Object.hasOwn(all, key)) all[key] = undefined
  return all
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

function fieldsAt(fields: AnyFields, path: readonly (string | number)[]): AnyFields {
  let here: AnyField = { kind: "group", label: "", fields }
  for (const part of path) {
    if (here.kind === "list") here = here.of
    else if (here.kind === "group" && here.fields[part]) here = here.fields[part]
  }
  return here.kind === "group" ? here.fields : here.kind === "list" && here.of.kind === "group" ? here.of.fields : {}
}

function issuesOf(fields: AnyFields, found: readonly z.core.$ZodIssue[], root: unknown): readonly Issue[] {
  return found.flatMap((one): Issue[] => {
    const path = one.path as (string | number)[]
    if (one.code === "unrecognized_keys") {
      const known = Object.keys(fieldsAt(fields, path))
      return one.keys.map((key) => {
        const meant = nearestWord(key, known)
        return issue(
          "unknown-key",
          [...path, key],
          `'${key}'`,
          meant ? `a known name (did you mean '${meant}'?)` : `one of ${known.join(", ")}`,
        )
      })
    }
    if (one.code === "custom") {
      const fault = one.params as Fault
      return [issue(fault.code, path, fault.received, fault.expected)]
    }
    let value = root
    for (const part of path) value = (value as Record<string | number, unknown> | null | undefined)?.[part]
    const expected = one.code === "invalid_type" ? (one.expected === "array" ? "a list" : "an object with named fields") : "a valid value"
    return [issue(value === undefined ? "missing" : "wrong-type", path, shown(value), expected)]
  })
}

/** Builds the reader of an input: validates, converts to SI and fills defaults. */
export function reader(fields: AnyFields): (input: unknown) => Read {
  let schema: Schema | undefined
  return (input) => {
    schema ??= objectOf(fields)
    const read = z.safeParse(schema, input)
    return read.success ? { ok: true, si: read.data } : { ok: false, issues: issuesOf(fields, read.error.issues, input) }
  }
}
