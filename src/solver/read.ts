// Reads an input by its field descriptions: each set of fields is compiled once into a reader that does no more for a
// good value than compare it with its limits. A whole input is first read without any account of where the reading is; only
// when something in it is not plain is it read again, to tell every fault with its place.
import { formatQuantity, type Kind, readQuantity } from "../quantity/index.js"
import { type Either, type EitherFault, eitherFaults, eitherHolds } from "./either.js"
import type { Issue, IssueCode } from "./errors.js"
import type { AnyField, AnyFields, AnyGroup } from "./fields.js"
import { issue, type Path, shown, unknownKey } from "./issue.js"
import { nearestWord } from "./near.js"

/** A validated input in SI, or every fault of it. */
export type Read = { readonly ok: true; readonly si: unknown } | { readonly ok: false; readonly issues: readonly Issue[] }

type Numeric = Extract<AnyField, { symbol: string }>

/** What has to be set right before more can be said: a faulty field, or fields that cannot be given as they are. */
export type Open =
  | { readonly path: Path; readonly field: AnyField }
  | { readonly path: Path; readonly fields: AnyFields; readonly ways: EitherFault["ways"] }

/** Faults found so far, and where the reading is. */
class Reading {
  readonly issues: Issue[] = []
  readonly open: Open[] = []
  readonly path: (string | number)[] = []
}

/** What cannot be read, while no account is kept. */
const UNREAD: unique symbol = Symbol("unread")

/** Reads a value into SI. Faults go into `reading`; without one, what cannot be read is {@link UNREAD}. */
type Reader = (value: unknown, reading: Reading | null) => unknown

function fault(reading: Reading | null, code: IssueCode, value: unknown, expected: string): typeof UNREAD | undefined {
  if (reading === null) return UNREAD
  reading.issues.push(issue(code, [...reading.path], shown(value), expected))
  return undefined
}

/** A limit of a field in SI. */
export function limitOf(field: Numeric, name: "min" | "max" | "above" | "below"): number | undefined {
  const limit: unknown = field[name]
  if (limit === undefined) return undefined
  return field.kind === "number" ? (limit as number) : (readQuantity(field.kind, limit) as number)
}

/** A limit as the description writes it, a bare number with its unit. */
function shownLimit(kind: Kind | "number", limit: unknown): string {
  return typeof limit === "number" && kind !== "number" ? formatQuantity(kind, limit, undefined, 6) : String(limit)
}

/** The limits of a field in words: `at least 100 mm, at most 3 m`. */
export function limitsText(field: Numeric): string {
  const words = { min: "at least", above: "more than", max: "at most", below: "less than" } as const
  return (Object.keys(words) as (keyof typeof words)[])
    .filter((name) => field[name] !== undefined)
    .map((name) => `${words[name]} ${shownLimit(field.kind, field[name])}`)
    .join(", ")
}

function compileNumber(field: Numeric): Reader {
  const { kind } = field
  const [min, max, above, below] = (["min", "max", "above", "below"] as const).map((name) => limitOf(field, name))
  const low = min ?? Number.NEGATIVE_INFINITY
  const high = max ?? Number.POSITIVE_INFINITY
  const over = above ?? Number.NEGATIVE_INFINITY
  const under = below ?? Number.POSITIVE_INFINITY
  const isWhole = kind === "number" && field.whole === true
  const checked = (si: number, value: unknown, reading: Reading | null): unknown => {
    // each test is the acceptance, negated, so that nothing slips through
    if (!(si >= low)) return fault(reading, "too-small", value, `at least ${shownLimit(kind, field.min)}`)
    if (!(si > over)) return fault(reading, "too-small", value, `more than ${shownLimit(kind, field.above)}`)
    if (!(si <= high)) return fault(reading, "too-large", value, `at most ${shownLimit(kind, field.max)}`)
    if (!(si < under)) return fault(reading, "too-large", value, `less than ${shownLimit(kind, field.below)}`)
    if (isWhole && !Number.isInteger(si)) return fault(reading, "not-whole", value, "a whole number")
    return si
  }
  if (kind === "number")
    return (value, reading) => {
      if (typeof value !== "number") return fault(reading, "wrong-type", value, "a number")
      if (!Number.isFinite(value)) return fault(reading, "not-finite", value, "a finite number")
      return checked(value, value, reading)
    }
  return (value, reading) => {
    if (typeof value === "number" && value >= low && value <= high && value > over && value < under && Number.isFinite(value)) return value
    const si = readQuantity(kind, value)
    return typeof si === "number" ? checked(si, value, reading) : fault(reading, si.code, value, si.expected)
  }
}

function compileChoice(options: Readonly<Record<string, string>>): Reader {
  const words = Object.keys(options)
  const known = new Set(words)
  return (value, reading) => {
    if (typeof value === "string" && known.has(value)) return value
    const meant = typeof value === "string" ? nearestWord(value, words) : null
    return fault(reading, "not-a-choice", value, `one of ${words.join(", ")}${meant ? ` (did you mean '${meant}'?)` : ""}`)
  }
}

function compileList(of: AnyField, min: number, max: number): Reader {
  const read = readerOf(of)
  return (value, reading) => {
    if (!Array.isArray(value)) return fault(reading, "wrong-type", value, "a list")
    const entries = (count: number) => `${count} ${count === 1 ? "entry" : "entries"}`
    const { length } = value
    const isEnough = length >= min
    const isWithin = length <= max
    if (reading === null && !(isEnough && isWithin)) return UNREAD
    const count = (code: "too-few" | "too-many", expected: string) =>
      reading?.issues.push(issue(code, [...reading.path], entries(length), expected))
    if (!isEnough) count("too-few", `at least ${entries(min)}`)
    if (!isWithin) {
      count("too-many", `at most ${entries(max)}`)
      return undefined
    }
    const items: unknown[] = []
    // by index: the holes of a sparse list are read too
    for (let i = 0; i < length; i++) {
      reading?.path.push(i)
      const item = read(value[i], reading)
      reading?.path.pop()
      if (item === UNREAD) return UNREAD
      items.push(item)
    }
    return isEnough ? items : undefined
  }
}

/** The name that tells the members of a variant apart. */
const TYPE = "type"

function compileGroup(fields: AnyFields, either: readonly Either[] = [], type?: string, elsewhere?: (key: string) => string): Reader {
  const { bitOf, holds } = eitherHolds(either)
  const entries = Object.entries(fields).map(([key, field]) => ({ key, readPart: readerOf(field), bit: bitOf(key) }))
  const known = new Set([...(type === undefined ? [] : [TYPE]), ...entries.map(({ key }) => key)])
  return (value, reading) => {
    if (typeof value !== "object" || value === null || Array.isArray(value))
      return fault(reading, value === undefined ? "missing" : "wrong-type", value, "an object with named fields")
    const given = value as Readonly<Record<string, unknown>>
    const read: Record<string, unknown> = type === undefined ? {} : { type }
    if (reading === null) {
      let bits = 0
      for (const { key, readPart, bit } of entries) {
        const part = Object.hasOwn(given, key) ? given[key] : undefined
        const si = readPart(part, null)
        if (si === UNREAD) return UNREAD
        read[key] = si
        if (part !== undefined && part !== null) bits |= bit
      }
      for (const key in given) if (!known.has(key) && given[key] !== undefined) return UNREAD
      return holds(bits) ? read : UNREAD
    }
    const { path, issues, open } = reading
    for (const { key, readPart } of entries) {
      path.push(key)
      const part = given[key]
      // what is not the input's own, such as `constructor`, was not given
      read[key] = readPart(part !== undefined && Object.hasOwn(given, key) ? part : undefined, reading)
      path.pop()
    }
    if (either.length) {
      // told from what was given, faulty or not
      const isGiven = (name: string) => Object.hasOwn(given, name) && given[name] !== undefined && given[name] !== null
      for (const { name, received, expected, ways } of eitherFaults(either, isGiven)) {
        issues.push(issue("inconsistent", [...path, name], received, expected))
        open.push({ path: [...path], fields, ways })
      }
    }
    for (const key of Object.keys(given)) {
      if (known.has(key) || given[key] === undefined) continue
      // editors put the address of the schema into a document
      if (key === "$schema" && path.length === 0 && typeof given[key] === "string") continue
      issues.push(
        elsewhere?.(key) ? issue("unknown-key", [...path, key], `'${key}'`, elsewhere(key)) : unknownKey([...path, key], key, [...known]),
      )
    }
    return read
  }
}

function compileVariant(of: Readonly<Record<string, AnyGroup>>): Reader {
  const words = Object.keys(of)
  const readType = compileChoice(Object.fromEntries(words.map((word) => [word, word])))
  const members = new Map(
    words.map((word) => {
      const { fields, either } = of[word] as AnyGroup
      const elsewhere = (key: string) => {
        const others = words.filter((other) => Object.hasOwn((of[other] as AnyGroup).fields, key))
        return others.length ? `no ${key} with type '${word}' (it goes with ${others.map((other) => `'${other}'`).join(", ")})` : ""
      }
      return [word, compileGroup(fields, either, word, elsewhere)] as const
    }),
  )
  return (value, reading) => {
    if (typeof value !== "object" || value === null || Array.isArray(value))
      return fault(reading, "wrong-type", value, "an object with a type")
    const given = Object.hasOwn(value, TYPE) ? (value as { readonly type?: unknown }).type : undefined
    reading?.path.push(TYPE)
    const type = given === undefined ? fault(reading, "missing", given, `one of ${words.join(", ")}`) : readType(given, reading)
    reading?.path.pop()
    if (type === UNREAD) return UNREAD
    // which fields belong here is told by the type alone
    return members.get(type as string)?.(value, reading)
  }
}

function compileText(min: number, max: number): Reader {
  const characters = (count: number) => `${count} ${count === 1 ? "character" : "characters"}`
  return (value, reading) => {
    if (typeof value !== "string") return fault(reading, "wrong-type", value, "text")
    // in code points, as a JSON Schema counts; a text longer than twice the limit need not be counted
    const length = value.length > 2 * max ? value.length : [...value].length
    if (!(length >= min)) return fault(reading, "too-small", value, `text of at least ${characters(min)}`)
    if (!(length <= max)) return fault(reading, "too-large", value, `text of at most ${characters(max)}`)
    return value
  }
}

function compileValue(field: AnyField): Reader {
  switch (field.kind) {
    case "group":
      return readerOfFields(field.fields, field.either)
    case "variant":
      return compileVariant(field.of)
    case "list":
      return compileList(field.of, field.min, field.max)
    case "choice":
      return compileChoice(field.options)
    case "flag":
      return (value, reading) => (typeof value === "boolean" ? value : fault(reading, "wrong-type", value, "true or false"))
    case "text":
      return compileText(field.min, field.max)
    default:
      return compileNumber(field as Numeric)
  }
}

const ofField = new WeakMap<AnyField, Reader>()

/** The reader of a field, its default filled in. */
function readerOf(field: AnyField): Reader {
  const known = ofField.get(field)
  if (known) return known
  const read = compileValue(field)
  const { default: given } = field
  let filled: unknown
  const whole: Reader = (value, reading) => {
    if (value === undefined) {
      if (given === undefined) {
        reading?.open.push({ path: [...reading.path], field })
        return fault(reading, "missing", undefined, field.label)
      }
      // the default is given as a user would give it, so it goes through the same reading: once, where it is no list or group
      if (given === null) return null
      if (typeof given === "object") return read(given, reading)
      if (filled === undefined) {
        const usual = read(given, reading)
        if (usual === UNREAD) return UNREAD
        filled = usual
      }
      return filled
    }
    if (value === null && given === null) return null
    const si = read(value, reading)
    if (si === undefined) reading?.open.push({ path: [...reading.path], field })
    return si
  }
  ofField.set(field, whole)
  return whole
}

const ofFields = new WeakMap<AnyFields, { readonly either: readonly Either[] | undefined; readonly read: Reader }>()

function readerOfFields(fields: AnyFields, either: readonly Either[] | undefined): Reader {
  const known = ofFields.get(fields)
  if (known && known.either === either) return known.read
  const read = compileGroup(fields, either)
  ofFields.set(fields, { either, read })
  return read
}

/** Reads an input: validates, converts to SI and fills defaults. What is faulty is undefined in the SI that comes with the faults. */
export function readInput(
  fields: AnyFields,
  input: unknown,
  either?: readonly Either[],
): Read & { readonly partly: unknown; readonly open: readonly Open[] } {
  const read = readerOfFields(fields, either)
  try {
    const si = read(input, null)
    if (si !== UNREAD) return { ok: true, si, partly: si, open: [] }
  } catch {
    // a getter or a proxy threw: it is told below, with its place
  }
  const reading = new Reading()
  let si: unknown
  try {
    si = read(input, reading)
  } catch (error) {
    // a getter or a proxy of the caller's threw while it was read
    const why = error instanceof Error ? error.message : String(error)
    fault(reading, "wrong-type", undefined, `a value that can be read (reading it failed: ${why.slice(0, 80)})`)
  }
  const { issues, open } = reading
  return issues.length ? { ok: false, issues, partly: si, open } : { ok: true, si, partly: si, open }
}
