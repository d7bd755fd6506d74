import { plainText } from "../drawing/index.js"
import type { Issue, IssueCode } from "./errors.js"
import { fill, type Values, type ValuesFor } from "./message.js"
import { nearestWord } from "./near.js"

/** Where a fault is, from the input's root. */
export type Path = readonly (string | number)[]

/** A value as a fault names it. */
export function shown(value: unknown): string {
  if (value === undefined) return "nothing"
  if (typeof value === "string") return `'${plainText(value.length > 40 ? `${value.slice(0, 39)}…` : value)}'`
  if (typeof value === "number" || typeof value === "boolean" || value === null) return String(value)
  return Array.isArray(value) ? "a list" : typeof value === "object" ? "an object" : `a ${typeof value}`
}

/** Text of a path: `wires[0].length`. */
export function pathText(path: Path): string {
  return plainText(path.map((part, i) => (typeof part === "number" ? `[${part}]` : i ? `.${part}` : part)).join("")) || "input"
}

/** Makes an issue, its message put together from its parts. */
export function issue(code: IssueCode, path: Path, received: string, expected: string): Issue {
  return { code, path, received, expected, message: `${pathText(path)}: expected ${expected}, received ${received}` }
}

/** The fault of a name that is none of those known, with the one probably meant. */
export function unknownKey(path: Path, key: string, known: readonly string[]): Issue {
  const meant = nearestWord(key, known)
  return issue("unknown-key", path, `'${plainText(key)}'`, meant ? `a known name (did you mean '${meant}'?)` : `one of ${known.join(", ")}`)
}

/**
 * A cross-field fault: the values are each allowed but do not go together. Both texts are templates (see {@link fill})
 * over `values`, whose names are paths in the input.
 */
export function inconsistent<const Received extends string, const Expected extends string>(
  path: Path,
  received: Received,
  expected: Expected,
  ...rest: string extends Received
    ? [values?: Values]
    : keyof ValuesFor<`${Received} ${Expected}`> extends never
      ? []
      : [values: ValuesFor<`${Received} ${Expected}`>]
): Issue {
  const values: Values = rest[0] ?? {}
  return { ...issue("inconsistent", path, fill(received, values), fill(expected, values)), values }
}
