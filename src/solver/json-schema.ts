import { kinds, LONGEST, quantityPattern } from "../quantity/index.js"
import { type Either, eitherSchema } from "./either.js"
import type { AnyField, AnyFields, AnyGroup } from "./fields.js"
import type { JsonSchema } from "./json.js"
import { limitOf, limitsText } from "./read.js"

function numeric(field: Extract<AnyField, { symbol: string }>): JsonSchema {
  const limits: Record<string, unknown> = {}
  const names = { min: "minimum", max: "maximum", above: "exclusiveMinimum", below: "exclusiveMaximum" } as const
  for (const key of Object.keys(names) as (keyof typeof names)[]) {
    const limit = limitOf(field, key)
    if (limit !== undefined) limits[names[key]] = limit
  }
  if (field.kind === "number") return { type: field.whole ? "integer" : "number", ...limits }
  const { si, units } = kinds[field.kind]
  const [low, above] = [limitOf(field, "min"), limitOf(field, "above")]
  const hasOffset = Object.values(units).some(([, , add = 0]) => add !== 0)
  const isPositive = (above !== undefined && above >= 0) || (low !== undefined && low > 0)
  const sign = hasOffset ? "any" : isPositive ? "positive" : low === 0 ? "not-negative" : "any"
  const range = limitsText(field)
  return {
    anyOf: [
      { type: "number", ...limits, description: [`in ${si || "1"}`, range].filter(Boolean).join(", ") },
      // a limit stands in whatever unit the text is written in: the pattern holds the sign, the reader compares the rest
      {
        type: "string",
        pattern: quantityPattern(field.kind, sign),
        maxLength: LONGEST,
        description: ["with its unit", range].filter(Boolean).join(", "),
      },
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
      return { type: "string", minLength: field.min, maxLength: field.max }
    case "list":
      return {
        type: "array",
        items: { ...core(field.of), title: field.of.label },
        minItems: field.min,
        maxItems: field.max,
      }
    case "group":
      return objectSchema(field.fields, field.either)
    case "variant":
      return { type: "object", required: ["type"], oneOf: Object.entries(field.of).map(([type, member]) => memberSchema(type, member)) }
    default:
      return numeric(field as Extract<AnyField, { symbol: string }>)
  }
}

function schemaFor(field: AnyField, order: number): JsonSchema {
  const described = annotations(field, order)
  return field.default === null ? { anyOf: [core(field), { type: "null" }], ...described } : { ...core(field), ...described }
}

/** One member of a variant, its `type` a constant. */
function memberSchema(type: string, { label, fields, either }: AnyGroup): JsonSchema {
  const schema = objectSchema(fields, either)
  return {
    title: label,
    ...schema,
    properties: { type: { const: type, title: label }, ...(schema.properties as object) },
    required: ["type", ...(schema.required as readonly string[])],
  }
}

/** JSON Schema of a set of fields and of the rules between them. */
export function objectSchema(fields: AnyFields, either: readonly Either[] = []): JsonSchema {
  const entries = Object.entries(fields)
  return {
    type: "object",
    properties: Object.fromEntries(entries.map(([key, field], order) => [key, schemaFor(field, order)])),
    required: entries.filter(([, field]) => field.default === undefined).map(([key]) => key),
    additionalProperties: false,
    ...eitherSchema(either),
  }
}

/** The same, a document's own `$schema` allowed beside its fields. */
export function withSchemaAddress(schema: JsonSchema): JsonSchema {
  return { ...schema, properties: { ...(schema.properties as object), $schema: { type: "string" } } }
}
