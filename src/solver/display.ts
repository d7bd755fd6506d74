import { plainText } from "../drawing/index.js"
import { formatNumber, formatQuantity } from "../quantity/index.js"
import type { Caution } from "./caution.js"
import type { AnyOutField, AnyOutFields } from "./fields.js"
import { citation } from "./source.js"

const FIELDS: unique symbol = Symbol("fields")
const INSPECT = Symbol.for("nodejs.util.inspect.custom")

/** A number as shown by its description: as people read it, or to so many digits. */
export function displayNumber(
  field: { readonly kind: string; readonly unit?: string | undefined },
  value: number,
  digits?: number,
): string {
  return field.kind === "number" ? formatNumber(value, digits) : formatQuantity(field.kind as never, value, field.unit, digits)
}

function displayValue(field: AnyOutField, value: unknown): string {
  if (value === null || value === undefined) return "—"
  if (typeof value === "number") return displayNumber(field as { kind: string }, value)
  if (typeof value === "boolean") return value ? "yes" : "no"
  return plainText(String(value))
}

function linesOf(fields: AnyOutFields, values: Readonly<Record<string, unknown>>, indent: string): string[] {
  const entries = Object.entries(fields)
  const width = Math.max(0, ...entries.filter(([, f]) => f.kind !== "group" && f.kind !== "list").map(([, f]) => f.label.length))
  return entries.flatMap(([key, field]) => {
    const value = values[key]
    if (field.kind === "group")
      return value === null || value === undefined
        ? []
        : [`${indent}${field.label}`, ...linesOf(field.fields, value as Record<string, unknown>, `${indent}  `)]
    if (field.kind === "list") return listLines(field.label, field.of, (value ?? []) as readonly unknown[], indent)
    return [`${indent}${field.label.padEnd(width)}  ${displayValue(field, value)}`]
  })
}

function listLines(label: string, of: AnyOutField, list: readonly unknown[], indent: string): string[] {
  if (of.kind === "group" || of.kind === "list")
    return [
      `${indent}${label} (${list.length})`,
      ...list
        .slice(0, 12)
        .flatMap((item, i) =>
          of.kind === "group"
            ? [`${indent}  ${i + 1}.`, ...linesOf(of.fields, item as Record<string, unknown>, `${indent}     `)]
            : listLines(`${i + 1}.`, of.of, item as readonly unknown[], `${indent}  `),
        ),
      ...(list.length > 12 ? [`${indent}  … ${list.length - 12} more`] : []),
    ]
  const shown = list.length > 8 ? [...list.slice(0, 3), "…", list[list.length - 1]] : list
  return [`${indent}${label}  ${shown.map((v) => (v === "…" ? v : displayValue(of, v))).join(", ") || "none"}`]
}

/**
 * The lines a maker reads: each value of a result with its unit, then its cautions. Console output
 * in Node shows the same.
 */
export function display(result: object): string {
  const fields = fieldsOf(result)
  if (!fields) throw new TypeError("display() takes a result of one of Alula's solvers")
  const lines = linesOf(fields, result as Record<string, unknown>, "")
  const cautions = (result as { readonly cautions?: readonly Caution[] }).cautions ?? []
  return [...lines, ...cautions.map((c) => `${c.severity}: ${c.message} [${citation(c.source)}]`)].join("\n")
}

/** The output descriptions a result carries, or undefined for any other object. */
export function fieldsOf(result: object): AnyOutFields | undefined {
  return frozen((result as { readonly [FIELDS]?: AnyOutFields })[FIELDS])
}

function freezeDeep(value: unknown): void {
  if (typeof value !== "object" || value === null) return
  // a part that came frozen is walked all the same: freezing reaches one level only
  Object.freeze(value)
  for (const part of Object.values(value)) freezeDeep(part)
}

const handedOut = new WeakSet<object>()

/** A part of a description as it is handed out: frozen all through, when it is first asked for. */
export function frozen<Part extends object | undefined>(part: Part): Part {
  if (part === undefined || handedOut.has(part)) return part
  freezeDeep(part)
  handedOut.add(part)
  return part
}

/** Seals a result: remembers its descriptions (out of sight of JSON) and freezes it, all through. */
export function seal<T extends object>(fields: AnyOutFields, result: T): T {
  Object.defineProperty(result, FIELDS, { value: fields })
  Object.defineProperty(result, INSPECT, { value: () => display(result) })
  freezeDeep(result)
  return result
}
