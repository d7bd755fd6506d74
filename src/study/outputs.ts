// Values of a result by path, as the solver's descriptions know them before anything is solved.
import type { Kind } from "../quantity/index.js"
import { type AnyOutField, type AnyOutFields, issue, type Path } from "../solver/index.js"
import { shown, unknownKey } from "../solver/issue.js"
import type { PathTo } from "./paths.js"
import { type AnySolver, type Found, isEntry } from "./place.js"

/** Paths of a result outside its lists. */
export type PlainPath<Out> = Exclude<PathTo<Out>, `${string}.${number}` | `${string}.${number}.${string}`>

/** A value of a result, described. */
export interface Output {
  readonly path: string
  readonly kind: Kind | "number" | "flag" | "text"
  readonly label: string
  readonly unit: string | null
}

const output = (path: string, field: Exclude<AnyOutField, { readonly kind: "list" | "group" }>, label: string): Output => ({
  path,
  kind: field.kind,
  label,
  unit: "unit" in field ? (field.unit ?? null) : null,
})

/** The description at a path of a result. */
export function outputAt(solver: AnySolver, path: unknown, where: Path): Found<Output> {
  const fault = (expected: string) => ({ ok: false, issues: [issue("unknown-key", where, shown(path), expected)] }) as const
  if (typeof path !== "string" || path === "") return fault("a path of the result, such as 'drop'")
  let fields: AnyOutFields | null = solver.output as AnyOutFields
  let field: AnyOutField | undefined
  let label = ""
  for (const name of path.split(".")) {
    if (field?.kind === "list") {
      if (!isEntry(name)) return fault(`an entry of ${field.label}, counted from 0`)
      label += ` ${Number(name) + 1}`
      field = field.of
      continue
    }
    if (field) fields = field.kind === "group" ? field.fields : null
    if (!fields) return fault("nothing behind a single value")
    if (!Object.hasOwn(fields, name)) return { ok: false, issues: [unknownKey(where, name, Object.keys(fields))] }
    field = fields[name] as AnyOutField
    label = label ? `${label}, ${field.label}` : field.label
  }
  if (!field || field.kind === "group" || field.kind === "list") return fault("a path of a single value")
  return { ok: true, value: output(path, field, label) }
}

/** Every single value of a result outside its lists. */
export function plainOutputs(fields: AnyOutFields, path = "", label = ""): Output[] {
  return Object.entries(fields).flatMap(([key, field]) => {
    const at = path ? `${path}.${key}` : key
    const name = label ? `${label}, ${field.label}` : field.label
    if (field.kind === "list") return []
    return field.kind === "group" ? plainOutputs(field.fields, at, name) : [output(at, field, name)]
  })
}
