import { kinds } from "../quantity/index.js"
import type { AnyField, AnyFields } from "./fields.js"

/** A JSON Schema (draft 2020-12) as plain data. */
export type JsonSchema = { readonly [key: string]: unknown }

const escapeRegExp = (text: string) => text.replace(/[.*+?^${}()|[\]\\/]/g, "\\$&")

/** A unit, or the same written with other signs (`mm²`, `Ω`, `°C`, `N·m`, `W/(m·K)`). */
const unitPattern = (unit: string) =>
  escapeRegExp(unit)
    .replace(/^(.*)\\\/(\w+)\\\/K$/, "$1\\/($2\\/K|\\($2 K\\))")
    .replace(/ohm/g, "(ohm|Ω)")
    .replace(/deg/g, "(deg|°)")
    .replace(/u/g, "[uµμ]") // micro sign and Greek mu
    .replace(/2/g, "[2²]")
    .replace(/3/g, "[3³]")
    .replace(/4/g, "[4⁴]")
    .replace(/ /g, "[ ·]")

function numeric(field: Extract<AnyField, { symbol: string }>): JsonSchema {
  const limits: Record<string, unknown> = {}
  const names = { min: "minimum", max: "maximum", above: "exclusiveMinimum", below: "exclusiveMaximum" } as const
  for (const key of Object.keys(names) as (keyof typeof names)[]) {
    const limit = field[key]
    // a limit written with a unit is stated in the description only: the bare number is SI
    if (typeof limit === "number") limits[names[key]] = limit
  }
  if (field.kind === "number") return { type: field.whole ? "integer" : "number", ...limits }
  const units = Object.keys(kinds[field.kind].units)
  const number = "[+-]?(\\d+\\.?\\d*|\\.\\d+)([eE][+-]?\\d+)?((\\s+\\d+)?\\s*/\\s*\\d+)?(?!\\d)"
  return {
    anyOf: [
      { type: "number", ...limits, description: `in ${kinds[field.kind].si || "1"}` },
      { type: "string", pattern: `^\\s*${number}\\s*(${units.map(unitPattern).join("|")})\\s*$` },
    ],
  }
}

function schemaFor(field: AnyField): JsonSchema {
  const described = { description: field.label, ...(field.default === undefined ? {} : { default: field.default }) }
  const core = ((): JsonSchema => {
    switch (field.kind) {
      case "choice":
        return { enum: Object.keys(field.options) }
      case "flag":
        return { type: "boolean" }
      case "text":
        return { type: "string" }
      case "list":
        return {
          type: "array",
          items: schemaFor(field.of),
          ...(field.min === undefined ? {} : { minItems: field.min }),
          ...(field.max === undefined ? {} : { maxItems: field.max }),
        }
      case "group":
        return objectSchema(field.fields)
      default:
        return numeric(field as Extract<AnyField, { symbol: string }>)
    }
  })()
  return field.default === null ? { anyOf: [core, { type: "null" }], ...described } : { ...core, ...described }
}

/** JSON Schema of a set of fields. */
export function objectSchema(fields: AnyFields): JsonSchema {
  const entries = Object.entries(fields)
  return {
    type: "object",
    properties: Object.fromEntries(entries.map(([key, field]) => [key, schemaFor(field)])),
    required: entries.filter(([, field]) => field.default === undefined).map(([key]) => key),
    additionalProperties: false,
  }
}
