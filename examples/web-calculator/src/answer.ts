// An answer as a maker reads it: values with their units, then cautions.
import type { AnyOutField, AnyOutFields, Caution, NoSolutionError } from "alula/solver"
import { citation, displayNumber } from "alula/solver"
import { el } from "./dom.js"

const shown = (field: AnyOutField, value: unknown): string => {
  if (value === null || value === undefined) return "—"
  if (typeof value === "number") return displayNumber(field as { kind: string }, value)
  if (typeof value === "boolean") return value ? "yes" : "no"
  return String(value)
}

const isSingle = (field: AnyOutField) => field.kind !== "group" && field.kind !== "list"
/** Rows of a list shown at once. */
const ROWS = 12

function table(fields: AnyOutFields, values: Readonly<Record<string, unknown>>): HTMLElement[] {
  const singles = Object.entries(fields).filter(([, field]) => isSingle(field))
  const rows = singles.map(([key, field]) => el("tr", {}, el("th", { scope: "row" }, field.label), el("td", {}, shown(field, values[key]))))
  const parts = Object.entries(fields).flatMap(([key, field]) => {
    const value = values[key]
    if (field.kind === "group") return value === null || value === undefined ? [] : [part(field.label, table(field.fields, value as never))]
    return field.kind === "list" ? [listOf(field.label, field.of, (value ?? []) as readonly unknown[])] : []
  })
  return [...(rows.length ? [el("table", { class: "values" }, el("tbody", {}, ...rows))] : []), ...parts]
}

const part = (title: string, holds: readonly HTMLElement[]) =>
  el("details", { class: "part", open: holds.length <= 2 }, el("summary", {}, title), ...holds)

function listOf(label: string, of: AnyOutField, list: readonly unknown[]): HTMLElement {
  const title = `${label} (${list.length})`
  if (list.length === 0) return el("p", {}, `${label}: none`)
  if (of.kind !== "group") {
    const texts = list.slice(0, ROWS).map((value) => (isSingle(of) ? shown(of, value) : JSON.stringify(value)))
    return part(title, [el("p", { class: "run" }, texts.join(", ") + (list.length > ROWS ? `, … ${list.length - ROWS} more` : ""))])
  }
  const columns = Object.entries(of.fields).filter(([, field]) => isSingle(field))
  const every = Math.max(1, Math.ceil(list.length / ROWS))
  const picked = list.map((value, i) => [value, i] as const).filter(([, i]) => i % every === 0 || i === list.length - 1)
  const head = el("tr", {}, el("th", { scope: "col" }, "no."), ...columns.map(([, field]) => el("th", { scope: "col" }, field.label)))
  const body = picked.map(([value, i]) =>
    el(
      "tr",
      {},
      el("th", { scope: "row" }, String(i + 1)),
      ...columns.map(([key, field]) => el("td", {}, shown(field, (value as Record<string, unknown>)[key]))),
    ),
  )
  const note = picked.length < list.length ? el("p", { class: "hint" }, `Every ${every} of ${list.length} shown.`) : null
  return part(title, [
    el(
      "div",
      { class: "wide", tabindex: 0, role: "region", "aria-label": label },
      el("table", {}, el("thead", {}, head), el("tbody", {}, ...body)),
    ),
    ...(note ? [note] : []),
  ])
}

const words: Readonly<Record<string, string>> = { warning: "Warning", caution: "Caution", note: "Note" }

/** Cautions, those by which people can be hurt first. */
export function cautionList(cautions: readonly Caution[]): HTMLElement | null {
  if (cautions.length === 0) return null
  const order = ["warning", "caution", "note"]
  const sorted = [...cautions].sort((a, b) => order.indexOf(a.severity) - order.indexOf(b.severity))
  return el(
    "ul",
    { class: "cautions" },
    ...sorted.map((c) =>
      el(
        "li",
        { class: c.severity },
        el("strong", {}, `${words[c.severity]}: `),
        c.message,
        el("span", { class: "source" }, ` ${citation(c.source)}`),
      ),
    ),
  )
}

/** The values of a result. */
export const answerTable = (output: AnyOutFields, result: object): readonly HTMLElement[] =>
  table(output, result as Readonly<Record<string, unknown>>)

/** A refusal: why, and the nearest values that were tried and answer, each with a button. */
export function refusal(
  error: NoSolutionError,
  labelOf: (name: string) => string,
  show: (name: string, value: number) => string,
  take: (name: string, value: number) => void,
): HTMLElement {
  const nearest = Object.entries(error.nearest)
  return el(
    "div",
    { class: "refusal" },
    el("p", {}, error.message.replace(/^[^:]+: /, "")),
    ...(nearest.length ? [el("p", {}, "Nearest that answers, each tried alone:")] : []),
    ...nearest.map(([name, value]) =>
      el("button", { type: "button", class: "small", click: () => take(name, value) }, `${labelOf(name)}: ${show(name, value)}`),
    ),
  )
}
