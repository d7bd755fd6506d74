import { kinds, LONGEST, quantityPattern } from "../quantity/index.js"
import type { AnyField, AnyFields } from "./fields.js"
import { limitOf } from "./read.js"

/** A JSON Schema (draft 2020-12) as plain data. */
export type JsonSchema = { readonly [key: string]: unknown }

function numeric(field: Extract<AnyField, { symbol: string }>): JsonSchema {
  const limits: Record<string, unknown> = {}
  const names = { min: "minimum", max: "maximum", above: "exclusiveMinimum", below: "exclusiveMaximum" } as const
  for (const key of Object.keys(names) as (keyof typeof names)[]) {
    const limit = limitOf(field, key)
    if (limit !== undefined) limits[names[key]] = limit
  }
  if (field.kind === "number") return { type: field.whole ? "integer" : "number", ...limits }
  return {
    anyOf: [
      { type: "number", ...limits, description: `in ${kinds[field.kind].si || "1"}` },
      // the limits of a text stand in whatever unit it is written in: only the reader compares them
      { type: "string", pattern: quantityPattern(field.kind), maxLength: LONGEST },
    ],
  }
}

/** What a form shows of a field: label, help, default, unit, place and section. */
function annotations(field: AnyField, order: number): JsonSchema {
  const { label, help, section, default: given, unit } = field as AnyField & { readonly unit?: string }
  return Object.fromEntries(
    Object.entries({ title: label, description: help, default: given, unit, section, order }).filter(([, value]) => value !== undefined),
  )
}

function core(field: AnyField): JsonSchema {
  switch (field.kind) {
    case "choice":
      return { oneOf: Object.entries(field.options).map(([word, title]) => ({ const: word, title })) }
    case "flag":
      return { type: "boolean" }
    case "text":
      return { type: "string" }
    case "list":
      return {
        type: "array",
        items: { ...core(field.of), title: field.of.label },
        ...(field.min === undefined ? {} : { minItems: field.min }),
        ...(field.max === undefined ? {} : { maxItems: field.max }),
      }
    case "group":
      return objectSchema(field.fields)
    default:
      return numeric(field as Extract<AnyField, { symbol: string }>)
  }
}

function schemaFor(field: AnyField, order: number): JsonSchema {
  const described = annotations(field, order)
  return field.default === null ? { anyOf: [core(field), { type: "null" }], ...described } : { ...core(field), ...described }
}

/** JSON Schema of a set of fields. */
export function objectSchema(fields: AnyFields): JsonSchema {
  const entries = Object.entries(fields)
  return {
    type: "object",
    properties: Object.fromEntries(entries.map(([key, field], order) => [key, schemaFor(field, order)])),
    required: entries.filter(([, field]) => field.default === undefined).map(([key]) => key),
    additionalProperties: false,
  }
}

/** The same, a document's own `$schema` allowed beside its fields. */
export function withSchemaAddress(schema: JsonSchema): JsonSchema {
  return { ...schema, properties: { ...(schema.properties as object), $schema: { type: "string" } } }
}
