// All faults at once: what is already certain between fields, though some fields are faulty themselves.
import { readQuantity } from "../quantity/index.js"
import type { Issue } from "./errors.js"
import type { AnyField, AnyFields } from "./fields.js"
import type { Path } from "./issue.js"
import { limitOf } from "./read.js"

/** The field at a path, or undefined where the path leads to no field. */
function fieldAt(fields: AnyFields, path: Path): AnyField | undefined {
  let field: AnyField | undefined
  let within: AnyFields | undefined = fields
  for (const part of path) {
    if (typeof part === "number") field = field?.kind === "list" ? field.of : undefined
    else field = within && Object.hasOwn(within, part) ? within[part] : undefined
    within = field?.kind === "group" ? field.fields : undefined
  }
  return field
}

/** Values a field could have had: its limits, a usual value, each of its words. */
function trials(field: AnyField): readonly unknown[] {
  switch (field.kind) {
    case "choice":
      return Object.keys(field.options)
    case "flag":
      return [true, false]
    case "text":
      return ["a", "b"]
    case "list":
    case "group":
      return []
    default: {
      const numeric = field as Extract<AnyField, { symbol: string }>
      const si = (value: unknown) => (numeric.kind === "number" ? value : readQuantity(numeric.kind, value))
      const usual = (numeric.typical ?? []).map(si)
      const limits = (["min", "above", "max", "below"] as const).map((name) => limitOf(numeric, name))
      // with one end open nothing is certain
      if ((limits[0] ?? limits[1]) === undefined || (limits[2] ?? limits[3]) === undefined) return []
      return [...usual, ...limits, ...(field.default === null ? [null] : [])].filter((v) => typeof v === "number" || v === null)
    }
  }
}

function placed(value: unknown, path: Path, put: unknown): unknown {
  const [head, ...rest] = path
  if (head === undefined) return put
  const copy: Record<string | number, unknown> | unknown[] = Array.isArray(value) ? [...value] : { ...(value as object) }
  ;(copy as Record<string | number, unknown>)[head] = placed((value as Record<string | number, unknown>)[head], rest, put)
  return copy
}

/**
 * Faults between fields that stand whatever the faulty fields are set right to: found by trying values for each and
 * keeping the faults that never change.
 */
export function certainFaults(
  fields: AnyFields,
  partly: unknown,
  found: readonly Issue[],
  check: (si: never) => readonly Issue[],
): readonly Issue[] {
  const faulty = found.filter(({ code }) => code !== "unknown-key")
  const values = faulty.map(({ path }) => {
    const field = fieldAt(fields, path)
    return field ? trials(field) : []
  })
  if (typeof partly !== "object" || partly === null || values.some((v) => v.length === 0)) return []
  const runs = Math.max(2, ...values.map((v) => Math.min(8, v.length)))
  let standing: readonly Issue[] | null = null
  for (let run = 0; run < runs; run++) {
    const si = faulty.reduce<unknown>((so, { path }, i) => {
      const of = values[i] as readonly unknown[]
      return placed(so, path, of[run % of.length])
    }, partly)
    const now = check(si as never)
    standing = standing === null ? now : standing.filter((one) => now.some(({ message }) => message === one.message))
    if (standing.length === 0) return []
  }
  return standing ?? []
}
