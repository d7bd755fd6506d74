import { z } from "zod"
import { type Kind, kinds, plainUnit } from "../../src/quantity/index.js"
import type { AnyField, AnyFields, Either } from "../../src/solver/index.js"

/** A number at the start of a text and what follows it; read by trying, not by one expression. */
function leadingNumber(text: string): { readonly value: number; readonly rest: string } | null {
  const decimal = /^[+-]?(\d+(\.\d*)?|\.\d+)(e[+-]?\d+)?/i.exec(text)?.[0]
  if (decimal === undefined) return null
  const after = text.slice(decimal.length)
  const mixed = /^\s+(\d+)\s*\/\s*(\d+)/.exec(after)
  if (mixed) {
    const part = Number(mixed[1]) / Number(mixed[2])
    return { value: decimal.startsWith("-") ? Number(decimal) - part : Number(decimal) + part, rest: after.slice(mixed[0].length) }
  }
  const over = /^\s*\/\s*(\d+)/.exec(after)
  if (over) return { value: Number(decimal) / Number(over[1]), rest: after.slice(over[0].length) }
  return { value: Number(decimal), rest: after }
}

/** A quantity as zod reads it: a finite number, a text with a unit of the kind, or an object with the kind's reading. */
function quantity(kind: Kind): z.ZodType<number> {
  const units = kinds[kind].units as Readonly<Record<string, readonly [num: number, den: number, add?: number]>>
  const reading = kinds[kind].net
  const text = z
    .string()
    .transform((given) => leadingNumber(given.trim()))
    .refine((read) => read !== null && Number.isFinite(read.value))
    .transform((read) => ({ value: read?.value ?? 0, factor: new Map(Object.entries(units)).get(plainUnit((read?.rest ?? "").trim())) }))
    .refine((read) => read.factor !== undefined)
    .transform(({ value, factor: [num, den, add = 0] = [1, 1] }) => (value * num) / den + add)
  const object =
    reading === null
      ? z.never()
      : z
          .looseObject({ [reading]: z.number() })
          .refine((o) => kind !== "temperatureDifference" || !("SolarTemperatures" in o))
          .transform((o) => o[reading] as number)
  return z.union([z.number(), text, object])
}

function limited(field: Extract<AnyField, { symbol: string }>): z.ZodType<number> {
  const { kind } = field
  const plain = kind === "number" ? z.number() : quantity(kind)
  const read = (limit: unknown) => plain.parse(limit)
  let bounds = z.number()
  if (field.min !== undefined) bounds = bounds.gte(read(field.min))
  if (field.max !== undefined) bounds = bounds.lte(read(field.max))
  if (field.above !== undefined) bounds = bounds.gt(read(field.above))
  if (field.below !== undefined) bounds = bounds.lt(read(field.below))
  if (field.kind === "number" && field.whole) bounds = bounds.refine((n) => n % 1 === 0)
  return plain.pipe(bounds)
}

function zodOf(field: AnyField): z.ZodType {
  const core = ((): z.ZodType => {
    switch (field.kind) {
      case "choice":
        return z.enum(Object.keys(field.options) as [string, ...string[]])
      case "flag":
        return z.boolean()
      case "text":
        return z.string().refine((t) => Array.from(t).length >= (field.min ?? 0) && Array.from(t).length <= (field.max ?? 1e9))
      case "list":
        return z
          .array(zodOf(field.of))
          .min(field.min ?? 0)
          .max(field.max ?? Number.MAX_SAFE_INTEGER)
      case "group":
        return zodOfFields(field.fields, field.either)
      case "variant":
        return z.preprocess(
          withoutUndefined,
          z.looseObject({ type: z.enum(Object.keys(field.of) as [string, ...string[]]) }).transform((value, context) => {
            const { fields, either } = field.of[value.type] as { fields: AnyFields; either?: readonly Either[] }
            const { type, ...others } = value
            const read = zodOfFields(fields, either).safeParse(others)
            if (read.success) return { type, ...(read.data as object) }
            for (const issue of read.error.issues) context.issues.push({ ...issue, input: value } as never)
            return z.NEVER
          }),
        )
      default:
        return limited(field as Extract<AnyField, { symbol: string }>)
    }
  })()
  if (field.default === undefined) return core
  return field.default === null ? core.nullable().prefault(null) : core.prefault(field.default as never)
}

const withoutUndefined = (value: unknown): unknown =>
  typeof value === "object" && value !== null && !Array.isArray(value)
    ? Object.fromEntries(Object.entries(value).filter(([, v]) => v !== undefined))
    : value

/** Places at which rules are broken, told by counting: a second reading of what a rule says. */
export function brokenRules(rules: readonly Either[], input: unknown): readonly string[] {
  if (typeof input !== "object" || input === null || Array.isArray(input)) return []
  const has = (name: string) => Object.hasOwn(input, name) && (input as Record<string, unknown>)[name] != null
  const all = (one: string | readonly string[]) => [one].flat()
  const found = new Set<string>()
  const gaps = (names: readonly string[]) => {
    if (names.some(has)) for (const name of names) if (!has(name)) found.add(name)
  }
  for (const rule of rules) {
    if ("together" in rule) gaps(rule.together)
    else if ("given" in rule) {
      if (has(rule.given) && !rule.needs.some((one) => all(one).every(has))) found.add(rule.given)
    } else {
      const [most, least] = "exactlyOne" in rule ? [1, 1] : "atMostOne" in rule ? [1, 0] : [99, 1]
      const of = "exactlyOne" in rule ? rule.exactlyOne : "atMostOne" in rule ? rule.atMostOne : rule.atLeastOne
      const begun = of.map(all).filter((names) => names.some(has))
      if (begun.length < least) found.add(of.map(all)[0]?.[0] as string)
      else if (begun.length > most) found.add(begun[1]?.find(has) as string)
      else begun.forEach(gaps)
    }
  }
  return [...found]
}

/** The schema that zod makes of field descriptions: a second reading of what they say. */
export function zodOfFields(fields: AnyFields, either: readonly Either[] = []): z.ZodType {
  const object = z.strictObject(Object.fromEntries(Object.entries(fields).map(([key, field]) => [key, zodOf(field)])))
  if (either.length === 0) return z.preprocess(withoutUndefined, object)
  // rules are judged by what was given, so before anything is read
  return z.unknown().transform((given, context) => {
    const read = object.safeParse(withoutUndefined(given))
    const broken = brokenRules(either, given)
    for (const name of broken) context.addIssue({ code: "custom", path: [name] })
    if (!read.success) for (const issue of read.error.issues) context.issues.push({ ...issue, input: given } as never)
    return read.success && broken.length === 0 ? read.data : z.NEVER
  })
}
