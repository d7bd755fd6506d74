import { type AnyField, type AnyFields, type Either, namesIn, type Solver } from "../../solver/index.js"

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

/** The fields of a solver's input as part of a document, with the rules between them. */
export interface Embedded {
  readonly fields: AnyFields
  readonly either: readonly Either[]
}

/**
 * A solver's own input descriptions as a section of the rig document, less what the rig knows from
 * elsewhere; symbols get the section's prefix so that sections do not mix. A rule about what is left out goes with it.
 */
export function embed<In, Out>(solver: Solver<In, Out>, prefix: string, ...left: readonly (keyof In & string)[]): Embedded {
  const known: readonly string[] = left
  const kept = Object.entries(solver.input as AnyFields).filter(([key]) => !known.includes(key))
  return {
    fields: renamedAll(Object.fromEntries(kept), prefix),
    either: solver.either.filter((rule) => !namesIn([rule]).some((name) => known.includes(name))),
  }
}
