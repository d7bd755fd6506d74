// What a figure is, and curves drawn from columns of numbers in the units a maker reads.
import { lineChart } from "../drawing/index.js"
import { inUnit, type Kind, kinds, readableUnit } from "../quantity/index.js"

/** A picture of a result. */
export interface Figure {
  readonly title: string
  /** One SVG element: its words take the colour of the text around it. */
  readonly svg: string
  /** What it shows, for those who do not see it. */
  readonly alternative: string
}

/** Numbers of one kind, one after another; null where there is none. */
export interface Column {
  readonly label: string
  readonly kind: string
  readonly unit?: string | null
  readonly values: readonly (number | null)[]
}

const isKind = (kind: string): kind is Kind => Object.hasOwn(kinds, kind)

/** Columns of one kind in one unit: that of the largest of them. */
export function inOneUnit(columns: readonly Column[]): { readonly unit: string; readonly values: readonly (readonly number[])[] } {
  const [first] = columns
  const kind = first?.kind ?? "number"
  const raw = columns.map(({ values }) => values.map((value) => value ?? Number.NaN))
  if (!isKind(kind)) return { unit: "", values: raw }
  const largest = raw.flat().reduce((most, value) => (Math.abs(value) > Math.abs(most) ? value : most), 0)
  const unit = kind === "ratio" ? "%" : (first?.unit ?? readableUnit(kind, largest))
  return { unit, values: raw.map((list) => list.map((value) => inUnit(kind, value, unit as never))) }
}

export const named = (label: string, unit: string): string => (unit ? `${label} (${unit})` : label)

const figures = (value: number) => String(Number(value.toPrecision(3)))

/** One picture for each kind among the columns, all over the same first one. */
export function curves(title: string, over: Column, columns: readonly Column[]): Figure[] {
  const x = inOneUnit([over])
  const across = x.values[0] ?? []
  const byKind = new Map<string, Column[]>()
  for (const column of columns) {
    if (column.values.filter((value) => value !== null && Number.isFinite(value)).length < 2) continue
    const key = `${column.kind} ${column.unit ?? ""}`
    byKind.set(key, [...(byKind.get(key) ?? []), column])
  }
  return [...byKind.values()].flatMap((group) => {
    // more lines than four cannot be told apart
    const parts = Array.from({ length: Math.ceil(group.length / 4) }, (_, i) => group.slice(4 * i, 4 * i + 4))
    return parts.map((part): Figure => {
      const { unit, values } = inOneUnit(part)
      const one = part.length === 1 ? `${title}: ${(part[0] as Column).label}` : title
      const series = part.map(({ label }, i) => ({
        label,
        points: across.map((at, k) => ({ x: at, y: (values[i] as readonly number[])[k] as number })),
      }))
      const told = part.map(({ label }, i) => {
        const list = (values[i] as readonly number[]).filter(Number.isFinite)
        return `${label} from ${figures(list[0] as number)} to ${figures(list.at(-1) as number)}${unit ? ` ${unit}` : ""}, between ${figures(Math.min(...list))} and ${figures(Math.max(...list))}`
      })
      const axis = part.length === 1 ? named((part[0] as Column).label, unit) : unit || "value"
      return {
        title: one,
        svg: lineChart({ title: one, x: named(over.label, x.unit), y: axis, series }),
        alternative: `Over ${over.label}: ${told.join("; ")}.`,
      }
    })
  })
}
