// A zod schema of any solver's input, for forms and servers that speak zod. It reads quantities as the solver does.
import { z } from "zod"
import { readQuantity } from "../quantity/index.js"
import { type AnyField, type AnyFields, InputError, type SiOf, type Solver } from "../solver/index.js"

type Numeric = Extract<AnyField, { symbol: string }>

/** A number or a quantity within its limits, in SI. */
function numeric(field: Numeric): z.ZodType {
  const { kind } = field
  const si = (value: unknown) => (kind === "number" ? value : readQuantity(kind, value)) as number
  let within = z.number()
  if (field.min !== undefined) within = within.gte(si(field.min))
  if (field.max !== undefined) within = within.lte(si(field.max))
  if (field.above !== undefined) within = within.gt(si(field.above))
  if (field.below !== undefined) within = within.lt(si(field.below))
  if (kind === "number") return field.whole ? within.refine(Number.isInteger, "a whole number") : within
  const read = z.unknown().transform((value, context) => {
    const number = readQuantity(kind, value)
    if (typeof number === "number") return number
    context.addIssue({ code: "custom", message: `expected ${number.expected}` })
    return z.NEVER
  })
  return read.pipe(within)
}

function withoutDefault(field: AnyField): z.ZodType {
  switch (field.kind) {
    case "choice":
      return z.enum(Object.keys(field.options) as [string, ...string[]])
    case "flag":
      return z.boolean()
    case "text":
      return z
        .string()
        .refine(
          (text) => [...text].length >= (field.min ?? 0) && [...text].length <= (field.max ?? Number.POSITIVE_INFINITY),
          `text of ${field.min ?? 0} to ${field.max ?? "any number of"} characters`,
        )
    case "list":
      return z.array(zodField(field.of)).min(field.min).max(field.max)
    case "group":
      return zodFields(field.fields)
    case "variant":
      return stripped(z.discriminatedUnion("type", members(field.of)))
    default:
      return numeric(field as Numeric)
  }
}

/** A field with its default, labelled for forms. */
function zodField(field: AnyField): z.ZodType {
  const core = withoutDefault(field)
  const filled =
    field.default === undefined ? core : field.default === null ? core.nullable().prefault(null) : core.prefault(field.default as never)
  return filled.meta({ title: field.label, ...(field.help === undefined ? {} : { description: field.help }) })
}

/** A key that is there but undefined counts as left out. */
function stripped(object: z.ZodType): z.ZodType {
  return z.preprocess((value) => {
    if (typeof value !== "object" || value === null || Array.isArray(value)) return value
    return Object.fromEntries(Object.entries(value).filter(([, part]) => part !== undefined))
  }, object)
}

const shape = (fields: AnyFields) => Object.fromEntries(Object.entries(fields).map(([key, field]) => [key, zodField(field)]))

function members(of: Extract<AnyField, { kind: "variant" }>["of"]): [z.ZodObject, ...z.ZodObject[]] {
  const all = Object.entries(of).map(([type, { label, fields }]) =>
    z.strictObject({ type: z.literal(type), ...shape(fields) }).meta({ title: label }),
  )
  return all as unknown as [z.ZodObject, ...z.ZodObject[]]
}

function zodFields(fields: AnyFields): z.ZodType {
  return stripped(z.strictObject(shape(fields)))
}

/**
 * The zod schema of a solver's input: takes what the solver takes, faults between fields included, and gives it in SI with
 * defaults filled.
 *
 * @example
 * ```ts
 * import { voltageDrop } from 'alula/wire'
 * import { zodSchema } from 'alula/zod'
 * const schema = zodSchema(voltageDrop)
 * schema.parse({ current: '4 A', length: '1.2 m', awg: 20 }).length // => 1.2
 * schema.safeParse({ current: '4 kg', length: '1.2 m', awg: 20 }).success // => false
 * ```
 */
export function zodSchema<In, Out>(solver: Solver<In, Out>): z.ZodType<SiOf<In>> {
  const fields = solver.input as unknown as AnyFields
  return zodFields(fields).superRefine((si, context) => {
    try {
      solver.read(si)
    } catch (error) {
      if (!(error instanceof InputError)) throw error
      for (const { path, message } of error.issues) context.addIssue({ code: "custom", path: [...path], message })
    }
  }) as unknown as z.ZodType<SiOf<In>>
}
