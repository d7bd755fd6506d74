// What remedies may be looked for in, and how far: read at the door.
import { type AnyFields, InputError, issue } from "../../solver/index.js"
import { readInput } from "../../solver/read.js"
import { expand, valueAt } from "./paths.js"
import type { AllowedPath } from "./table.js"

/** Assessments that are made at most. */
const TRIES = 300

const limit = (label: string) => ({ kind: "number", symbol: "x", label, min: -1e12, max: 1e12, default: null }) as const

const optionFields: AnyFields = {
  allowed: {
    kind: "list",
    label: "what may be changed",
    min: 0,
    max: 200,
    default: null,
    of: {
      kind: "group",
      label: "path",
      fields: {
        path: { kind: "text", label: "path in the document", min: 1, max: 200 },
        min: limit("smallest value that is tried, SI"),
        max: limit("largest value that is tried, SI"),
      },
    },
  },
  tries: { kind: "number", symbol: "n", label: "assessments that may be made", whole: true, min: 1, max: TRIES, default: TRIES },
}

interface OptionsSi {
  readonly allowed: readonly { readonly path: string; readonly min: number | null; readonly max: number | null }[] | null
  readonly tries: number
}

/** Reads the options against a document in SI; every fault at once. */
export function readOptions(options: object, si: unknown): { readonly allowed: readonly AllowedPath[] | null; readonly tries: number } {
  const { catalogue: _, allowed, ...rest } = options as { readonly catalogue?: unknown; readonly allowed?: unknown }
  const list = Array.isArray(allowed) ? allowed.map((path: unknown) => (typeof path === "string" ? { path } : path)) : allowed
  const read = readInput(optionFields, { ...rest, ...(allowed === undefined ? {} : { allowed: list }) })
  if (!read.ok) throw new InputError("remedies", read.issues)
  const { allowed: paths, tries } = read.si as OptionsSi
  const faults = (paths ?? []).flatMap(({ path, min, max }, i) => [
    ...(expand(si, path).some((at) => (valueAt(si, at) ?? null) !== null)
      ? []
      : [issue("inconsistent", ["allowed", i], `"${path}"`, "a path of this document, such as motions[0].drive")]),
    ...(min !== null && max !== null && min > max ? [issue("inconsistent", ["allowed", i, "max"], `${max}`, "no less than min")] : []),
  ])
  if (faults.length) throw new InputError("remedies", faults)
  return {
    allowed: paths?.map(({ path, min, max }) => ({ path, ...(min === null ? {} : { min }), ...(max === null ? {} : { max }) })) ?? null,
    tries,
  }
}
