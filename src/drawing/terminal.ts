import type { Series } from "./chart.js"
import { extent, linearScale, ticks } from "./scale.js"
import { plainText } from "./text.js"

const marks = ["●", "○", "+", "×"]

/** A small chart in plain text: one mark per series, axes with round numbers. */
export function textChart(series: readonly Series[], axes: { readonly x: string; readonly y: string }, columns = 64, rows = 14): string {
  const points = series.flatMap((s) => s.points)
  const xs = extent([...points.map((p) => p.x), 0])
  const ys = extent(points.map((p) => p.y))
  const x = linearScale(xs, [0, columns - 1])
  const y = linearScale(ys, [rows - 1, 0])
  const cells = Array.from({ length: rows }, () => new Array<string>(columns).fill(" "))
  series.forEach((s, i) => {
    for (const p of s.points) {
      const row = cells[Math.round(y(p.y))]
      if (row) row[Math.round(x(p.x))] = marks[i % marks.length] as string
    }
  })
  const labels = new Map(ticks(...ys, 4).map((v) => [Math.round(y(v)), String(v)]))
  const margin = Math.max(...[...labels.values()].map((l) => l.length), 4)
  const lines = cells.map((row, i) => `${(labels.get(i) ?? "").padStart(margin)} ┤${row.join("").trimEnd()}`)
  const below = new Array<string>(columns + 8).fill(" ")
  let free = 0
  for (const v of ticks(...xs, 6)) {
    const text = String(v)
    const at = Math.round(x(v))
    // two numbers that touch would read as one
    if (at < free) continue
    free = at + text.length + 1
    for (let k = 0; k < text.length; k++) below[at + k] = text[k] as string
  }
  const names = series.length > 1 ? [series.map((s, i) => `${marks[i % marks.length]} ${plainText(s.label)}`).join("   ")] : []
  return [
    plainText(axes.y),
    ...lines,
    `${" ".repeat(margin)} └${"─".repeat(columns)}`,
    `${" ".repeat(margin + 2)}${below.join("").trimEnd()}  ${plainText(axes.x)}`,
    ...names,
  ].join("\n")
}
