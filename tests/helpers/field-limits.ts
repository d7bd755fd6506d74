import type { AnyFields } from "../../src/solver/index.js"

/** Limits and defaults of fields, one line a field: `voltage: above 0, max 1000`. */
export function limitsOf(fields: AnyFields, path = ""): string[] {
  return Object.entries(fields).flatMap(([name, field]) => {
    const at = path ? `${path}.${name}` : name
    const limits = (["min", "above", "max", "below", "default"] as const).flatMap((key) => {
      const value = (field as unknown as Record<string, unknown>)[key]
      return value === undefined ? [] : [`${key} ${typeof value === "object" ? JSON.stringify(value) : String(value)}`]
    })
    const own = limits.length ? [`${at}: ${limits.join(", ")}`] : []
    if (field.kind === "group") return [...own, ...limitsOf(field.fields, at)]
    if (field.kind === "variant") return [...own, ...Object.entries(field.of).flatMap(([type, m]) => limitsOf(m.fields, `${at}(${type})`))]
    if (field.kind === "list" && field.of.kind === "variant") return [...own, ...limitsOf({ [at]: field.of })]
    if (field.kind === "list" && field.of.kind === "group") return [...own, ...limitsOf(field.of.fields, at)]
    return own
  })
}
