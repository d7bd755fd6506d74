// Pictures of any solver's result, found by its own descriptions: every list of numbers that belong together.
import { type AnyOutField, type AnyOutFields, fieldsOf } from "../solver/index.js"
import { type Column, curves, type Figure } from "./figure.js"

const FEWEST = 4
const isNumber = (field: AnyOutField) => !["list", "group", "text", "flag"].includes(field.kind)
const column = (field: AnyOutField, values: readonly unknown[]): Column => ({
  label: field.label,
  kind: field.kind,
  unit: "unit" in field ? (field.unit ?? null) : null,
  values: values.map((value) => (typeof value === "number" && Number.isFinite(value) ? value : null)),
})

/** Whether numbers only grow or only fall, so that others can be drawn over them. */
function goesOneWay({ values }: Column): boolean {
  const steps = values.slice(1).map((value, i) => (value === null || values[i] === null ? Number.NaN : value - (values[i] as number)))
  return steps.every((step) => step > 0) || steps.every((step) => step < 0)
}

/** Columns over the one that they go by: a time where there is one, else the first that goes one way. */
function drawn(title: string, columns: readonly Column[]): Figure[] {
  const fit = columns.filter(goesOneWay)
  const over = fit.find(({ kind }) => kind === "time") ?? fit[0]
  return over
    ? curves(
        title,
        over,
        columns.filter((one) => one !== over),
      )
    : []
}

function within(fields: AnyOutFields, values: Readonly<Record<string, unknown>>, title: string): Figure[] {
  const entries = Object.entries(fields)
  const lists = entries.flatMap(([key, field]) => {
    const list = values[key]
    return field.kind === "list" && Array.isArray(list) && list.length >= FEWEST ? [{ field, list }] : []
  })
  const tables = lists.flatMap(({ field, list }) => {
    const { of } = field
    if (of.kind !== "group") return []
    const columns = Object.entries(of.fields).flatMap(([key, one]) =>
      isNumber(one)
        ? [
            column(
              one,
              list.map((row) => (row as Readonly<Record<string, unknown>> | null)?.[key] ?? null),
            ),
          ]
        : [],
    )
    return drawn(title ? `${title}: ${field.label}` : field.label, columns)
  })
  // lists of plain numbers that are equally long are columns of one table
  const plain = lists.filter(({ field }) => isNumber(field.of))
  const [first] = plain
  const together = plain.filter(({ list }) => list.length === first?.list.length)
  const columns = together.map(({ field, list }) => column({ ...field.of, label: field.label } as AnyOutField, list))
  const groups = entries.flatMap(([key, field]) =>
    field.kind === "group" && values[key] ? within(field.fields, values[key] as Readonly<Record<string, unknown>>, field.label) : [],
  )
  return [...tables, ...(columns.length > 1 ? drawn(title || "values", columns) : []), ...groups]
}

/**
 * Every curve that a result holds, as pictures: its lists of numbers, drawn over the time, or over the first of them that only
 * grows or only falls, one picture for each kind. None where a result holds no list.
 *
 * @param result - what a solver returned
 * @throws TypeError where it is no such result
 * @example
 * ```ts
 * import { hingeActuator } from 'alula/linkage'
 * import { resultFigures } from 'alula/figure'
 * const pictures = resultFigures(hingeActuator(hingeActuator.example))
 * pictures.length > 0 // => true
 * pictures[0].svg.startsWith('<svg') // => true
 * ```
 */
export function resultFigures(result: object): readonly Figure[] {
  const fields = fieldsOf(result)
  if (!fields) throw new TypeError("resultFigures() takes a result of one of Alula's solvers")
  return within(fields, result as Readonly<Record<string, unknown>>, "")
}
