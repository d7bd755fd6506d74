import type { AnyField, AnyFields } from "../solver/index.js"

function renamed(field: AnyField, prefix: string): AnyField {
  if (field.kind === "group") return { ...field, fields: renamedAll(field.fields, prefix) }
  if (field.kind === "list") return { ...field, of: renamed(field.of, prefix) }
  if (field.kind === "variant") {
    const members = Object.entries(field.of).map(([type, member]) => [type, { ...member, fields: renamedAll(member.fields, prefix) }])
    return { ...field, of: Object.fromEntries(members) }
  }
  return "symbol" in field ? { ...field, symbol: `${prefix}_${field.symbol}` } : field
}

function renamedAll(fields: AnyFields, prefix: string): AnyFields {
  return Object.fromEntries(Object.entries(fields).map(([key, field]) => [key, renamed(field, prefix)]))
}

/**
 * A solver's own input descriptions as a section of the rig document, less what the rig knows from
 * elsewhere; symbols get the section's prefix so that sections do not mix.
 */
export function embed(solver: { readonly input: object }, prefix: string, ...known: readonly string[]): AnyFields {
  const fields = solver.input as AnyFields
  const kept = Object.entries(fields).filter(([key]) => !known.includes(key))
  return renamedAll(Object.fromEntries(kept), prefix)
}
