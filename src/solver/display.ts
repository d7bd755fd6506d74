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
  const width = Math.max(0, ...entries.filter(([, f]) => isPlain(f)).map(([, f]) => f.label.length))
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

const isPlain = ({ kind }: AnyOutField) => kind !== "group" && kind !== "list"
/** Columns that a table of entries may take; wider ones are told entry by entry. */
const WIDEST = 110

function listLines(label: string, of: AnyOutField, list: readonly unknown[], indent: string): string[] {
  if (isPlain(of)) {
    const shown = list.length > 8 ? [...list.slice(0, 3), "…", list[list.length - 1]] : list
    return [`${indent}${label}  ${shown.map((v) => (v === "…" ? v : displayValue(of, v))).join(", ") || "none"}`]
  }
  const inner = `${indent}  `
  const columns = of.kind === "group" ? Object.entries(of.fields) : []
  const rows = [
    columns.map(([, field]) => field.label),
    ...list.map((item) => columns.map(([key, field]) => displayValue(field, (item as Record<string, unknown>)[key]))),
  ]
  const widths = columns.map((_, i) => Math.max(...rows.map((row) => (row[i] as string).length)))
  const isTable = list.length && columns.every(([, field]) => isPlain(field)) && widths.reduce((sum, width) => sum + width + 2, 0) < WIDEST
  const blocks =
    isTable && columns.length
      ? rows.map((row) => [
          `${inner}${row.map((cell, i) => (columns[i]?.[1].kind === "text" ? cell.padEnd(widths[i] as number) : cell.padStart(widths[i] as number))).join("  ")}`.trimEnd(),
        ])
      : [
          [],
          ...list.map((item, i) =>
            of.kind === "group"
              ? [`${inner}${i + 1}.`, ...linesOf(of.fields, item as Record<string, unknown>, `${inner}   `)]
              : listLines(`${i + 1}.`, (of as { readonly of: AnyOutField }).of, item as readonly unknown[], inner),
          ),
        ]
  // what is long: its beginning and its end
  if (list.length > 12) blocks.splice(9, list.length - 9, [`${inner}… ${list.length - 9} more, then`])
  return [`${indent}${label} (${list.length})`, ...blocks.flat()]
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
  const told = ["warning", "caution", "note"].flatMap((severity) => cautions.filter((c) => c.severity === severity))
  return [...lines, ...(told.length ? [""] : []), ...told.map((c) => `${c.severity}: ${c.message} [${citation(c.source)}]`)].join("\n")
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
