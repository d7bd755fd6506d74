import fc from "fast-check"
import { fromSi, type Kind, kinds, readQuantity } from "../../src/quantity/index.js"
import { eitherFaults, namesIn } from "../../src/solver/either.js"
import type { AnyField, AnyFields, AnyGroup, Either } from "../../src/solver/index.js"

type Numeric = Extract<AnyField, { symbol: string }>
/** A limit, default or example of a field in SI; a value its own kind cannot read is a fault of the definition. */
function read(field: Numeric, value: unknown): number | undefined {
  if (value === undefined || value === null) return undefined
  const si = field.kind === "number" ? value : readQuantity(field.kind, value)
  if (typeof si !== "number") throw new Error(`${field.label}: ${String(value)} is no ${field.kind}`)
  return si
}

const nextUp = (x: number) => x + Math.max(Math.abs(x) * 1e-9, 1e-12)
const nextDown = (x: number) => x - Math.max(Math.abs(x) * 1e-9, 1e-12)

/** How far random inputs go: `near` stays beside the example, `wide` covers typical ranges and limits, `corner` is limits only. */
type Reach = "near" | "wide" | "corner"

/** Numbers a field allows: around the example, over the typical range, and each limit exactly. */
function numbers(field: Numeric, example: unknown, reach: Reach): fc.Arbitrary<number> {
  const at =
    read(field, example ?? (field as { default?: unknown }).default) ?? read(field, field.typical?.[0]) ?? read(field, field.min) ?? 1
  const [min, max] = [read(field, field.min), read(field, field.max)]
  const [above, below] = [read(field, field.above), read(field, field.below)]
  const low = min ?? (above === undefined ? Number.NEGATIVE_INFINITY : nextUp(above))
  const high = max ?? (below === undefined ? Number.POSITIVE_INFINITY : nextDown(below))
  const clip = (x: number) => Math.min(high, Math.max(low, x))
  const beside = [clip(Math.min(at * 0.97, at * 1.03)), clip(Math.max(at * 0.97, at * 1.03))]
  const near = at === 0 ? [clip(-0.1), clip(0.1)] : [clip(Math.min(at * 0.8, at * 1.25)), clip(Math.max(at * 0.8, at * 1.25))]
  const typical = [
    clip(read(field, field.typical?.[0]) ?? (near[0] as number)),
    clip(read(field, field.typical?.[1]) ?? (near[1] as number)),
  ]
  const whole = field.kind === "number" && "whole" in field && field.whole
  const between = ([a, b]: number[]): fc.Arbitrary<number> =>
    whole
      ? fc.integer({ min: Math.ceil(a as number), max: Math.max(Math.ceil(a as number), Math.floor(b as number)) })
      : fc.double({ min: a as number, max: b as number, noNaN: true })
  if (reach === "near") return whole || example === undefined || example === null ? fc.constant(at) : between(beside)
  const limits = [low, high].filter(Number.isFinite)
  if (reach === "corner") return fc.constantFrom(...limits)
  return fc.oneof(
    { weight: 6, arbitrary: between(near) },
    { weight: 6, arbitrary: between(typical) },
    { weight: 2, arbitrary: fc.constant(at) },
    ...(limits.length ? [{ weight: 1, arbitrary: fc.constantFrom(...limits) }] : []),
  )
}

function valueFor(field: AnyField, example: unknown, reach: Reach): fc.Arbitrary<unknown> {
  switch (field.kind) {
    case "choice": {
      const all = fc.constantFrom(...Object.keys(field.options))
      if (reach === "near" && typeof example === "string") return fc.constant(example)
      return example === undefined || example === null
        ? all
        : fc.oneof({ weight: 2, arbitrary: fc.constant(example) }, { weight: 1, arbitrary: all })
    }
    case "flag":
      return reach === "near" && typeof example === "boolean" ? fc.constant(example) : fc.boolean()
    case "text":
      return fc.constant(example ?? "a name".padEnd(field.min ?? 0, "s").slice(0, field.max))
    case "list": {
      const items = (example ?? []) as readonly unknown[]
      if (items.length === 0) {
        const count = field.min ?? 0
        return fc.array(valueFor(field.of, undefined, reach), { minLength: count, maxLength: count })
      }
      const most = Math.min(field.max ?? items.length, items.length)
      const least = Math.min(field.min ?? 0, most)
      return fc
        .tuple(...items.map((item) => valueFor(field.of, item, reach)))
        .chain((all) =>
          fc.oneof(
            { weight: 3, arbitrary: fc.constant(all) },
            { weight: 1, arbitrary: fc.integer({ min: least, max: most }).map((n) => all.slice(0, n)) },
          ),
        )
    }
    case "group":
      return inputsWithin(field, (example ?? {}) as Record<string, unknown>, reach)
    case "variant": {
      const given = (example ?? {}) as Readonly<Record<string, unknown>>
      const member = (type: string) => {
        const { type: own, ...others } = given
        const within = inputsWithin(field.of[type] as AnyGroup, own === type ? others : {}, reach)
        return within.map((value) => ({ type, ...value }))
      }
      const all = fc.oneof(...Object.keys(field.of).map(member))
      if (typeof given.type !== "string") return all
      return reach === "near" ? member(given.type) : fc.oneof({ weight: 2, arbitrary: member(given.type) }, { weight: 1, arbitrary: all })
    }
    default:
      return numbers(field as Numeric, example, reach)
  }
}

/** Where a number is worth sweeping: over its typical range and around its value, within its limits. */
export function rangeOf(field: Numeric, value: unknown): { readonly low: number; readonly high: number; readonly whole: boolean } {
  const at = read(field, value) ?? 0
  const low = read(field, field.min) ?? read(field, field.above) ?? Number.NEGATIVE_INFINITY
  const high = read(field, field.max) ?? read(field, field.below) ?? Number.POSITIVE_INFINITY
  const near = at === 0 ? [-0.1, 0.1] : [Math.min(at * 0.6, at * 1.6), Math.max(at * 0.6, at * 1.6)]
  const clip = (x: number) => Math.min(high, Math.max(low, x))
  return {
    low: clip(Math.min(near[0] as number, read(field, field.typical?.[0]) ?? Number.POSITIVE_INFINITY)),
    high: clip(Math.max(near[1] as number, read(field, field.typical?.[1]) ?? Number.NEGATIVE_INFINITY)),
    whole: field.kind === "number" && field.whole === true,
  }
}

/** Random inputs (bare SI numbers) of a set of fields, seeded by an example: some beside it, some far and wide. */
export function inputs(
  fields: AnyFields,
  example: Readonly<Record<string, unknown>>,
  either: readonly Either[] = [],
): fc.Arbitrary<Record<string, unknown>> {
  return fc.oneof(
    { weight: 1, arbitrary: inputsWithin({ fields, either }, example, "near") },
    { weight: 2, arbitrary: inputsWithin({ fields, either }, example, "wide") },
  )
}

/** Inputs with every number at one of its limits. */
export function corners(
  fields: AnyFields,
  example: Readonly<Record<string, unknown>>,
  either: readonly Either[] = [],
): fc.Arbitrary<Record<string, unknown>> {
  return inputsWithin({ fields, either }, example, "corner")
}

type Given = Readonly<Record<string, unknown>>

function inputsWithin(
  { fields, either = [] }: Omit<AnyGroup, "label">,
  example: Given,
  reach: Reach,
): fc.Arbitrary<Record<string, unknown>> {
  const parts = Object.entries(fields).map(([key, field]) => {
    const given = example[key]
    const value = valueFor(field, given, reach)
    const isOptional = field.default !== undefined
    if (!isOptional) return value.map((v) => [key, v] as const)
    const absent = fc.constant([key, undefined] as const)
    if (reach === "near") return given === undefined || given === null ? absent : value.map((v) => [key, v] as const)
    // an optional value the example leaves out is mostly left out: alternatives exclude each other
    const shown = given === undefined || given === null ? { in: 1, out: 6 } : { in: 6, out: 1 }
    const isStructure = field.kind === "group" || field.kind === "list" || field.kind === "variant"
    if (isStructure && (given === undefined || given === null)) return absent
    return fc.oneof({ weight: shown.in, arbitrary: value.map((v) => [key, v] as const) }, { weight: shown.out, arbitrary: absent })
  })
  const drawn = fc.tuple(...parts).map((pairs) => Object.fromEntries(pairs.filter(([, v]) => v !== undefined)))
  const ruled = [...new Set(namesIn(either))]
  if (ruled.length === 0 || reach === "near") return drawn
  // what the rules ask for is given, and what they forbid left out, each way as likely as the next
  const spare = fc.record(Object.fromEntries(ruled.map((key) => [key, valueFor(fields[key] as AnyField, example[key], reach)])))
  return fc.tuple(drawn, spare, fc.array(fc.nat(11), { minLength: 12, maxLength: 12 })).map(([input, values, picks]) => {
    const mended = { ...input }
    for (const pick of picks) {
      const [fault] = eitherFaults(either, (name) => mended[name] !== undefined && mended[name] !== null)
      if (!fault) break
      const way = fault.ways[pick % fault.ways.length] as (typeof fault.ways)[number]
      for (const name of way.give) mended[name] ??= values[name]
      for (const name of way.leave) delete mended[name]
    }
    return mended
  })
}

/** The fields below a value: those of a group, or of the member of a variant that its type names. */
function fieldsBelow(field: AnyField, value: unknown): AnyFields | null {
  if (field.kind === "group") return field.fields
  if (field.kind !== "variant") return null
  return field.of[(value as { type: string }).type]?.fields ?? {}
}

/** The same input with every quantity written in some unit of its kind, picked by `pick`. */
export function inOtherUnits(
  fields: AnyFields,
  input: Readonly<Record<string, unknown>>,
  pick: (count: number) => number,
): Record<string, unknown> {
  const rewrite = (field: AnyField, value: unknown): unknown => {
    if (value === null || value === undefined) return value
    const within = fieldsBelow(field, value)
    if (within) return inOtherUnits(within, value as Record<string, unknown>, pick)
    if (field.kind === "list") return (value as readonly unknown[]).map((v) => rewrite(field.of, v))
    if (typeof value !== "number" || field.kind === "number") return value
    const units = Object.entries(kinds[field.kind as Kind].units)
    const [unit, factor] = units[pick(units.length)] as [string, readonly [number, number]]
    return `${fromSi(value, factor)} ${unit}`
  }
  return Object.fromEntries(
    Object.entries(input).map(([key, value]) => [key, fields[key] ? rewrite(fields[key] as AnyField, value) : value]),
  )
}

/** Every leaf of an input with its field and path. */
export function leaves(
  fields: AnyFields,
  input: Readonly<Record<string, unknown>>,
  path: (string | number)[] = [],
): { field: AnyField; path: (string | number)[]; value: unknown }[] {
  const below = (
    field: AnyField,
    value: unknown,
    at: (string | number)[],
  ): { field: AnyField; path: (string | number)[]; value: unknown }[] => {
    if (value === null || value === undefined) return [{ field, path: at, value }]
    const within = fieldsBelow(field, value)
    if (within) return leaves(within, value as Record<string, unknown>, at)
    if (field.kind === "list") return (value as readonly unknown[]).flatMap((v, i) => below(field.of, v, [...at, i]))
    return [{ field, path: at, value }]
  }
  return Object.entries(fields).flatMap(([key, field]) => below(field, input[key], [...path, key]))
}

/** A deep copy of `input` with the value at `path` replaced (or removed when undefined). */
export function replaced(input: unknown, path: readonly (string | number)[], value: unknown): unknown {
  const [head, ...rest] = path
  if (head === undefined) return value
  const copy: Record<string | number, unknown> | unknown[] = Array.isArray(input) ? [...input] : { ...(input as object) }
  const inner = replaced((input as Record<string | number, unknown> | undefined)?.[head], rest, value)
  if (inner === undefined && rest.length === 0 && !Array.isArray(copy)) delete (copy as Record<string | number, unknown>)[head]
  else (copy as Record<string | number, unknown>)[head] = inner
  return copy
}
