import { extent, linearScale, ticks } from "./scale.js"
import { element, label, type Point, pathThrough, svg } from "./svg.js"
import { escapeXml } from "./text.js"

/** One line of a chart. */
export interface Series {
  readonly label: string
  /** A point that is no number breaks the line. */
  readonly points: readonly Point[]
}

/** What a line chart shows. */
export interface LineChart {
  readonly title: string
  /** Axis labels, unit included. */
  readonly x: string
  readonly y: string
  readonly series: readonly Series[]
  readonly width?: number
  readonly height?: number
}

// strokes differ in dash as well as shade, so that print and colour-blind readers can tell them apart; words and axes take the
// colour of the text around the picture, and the strokes stand out on light and on dark (3:1 and more on white and on #15181b)
const strokes = [
  { stroke: "#3d7bb8", dash: undefined },
  { stroke: "#c2571a", dash: "7 3" },
  { stroke: "#2b8a63", dash: "2 3" },
  { stroke: "#8d66b8", dash: "9 3 2 3" },
] as const

const text = { "font-family": "system-ui, sans-serif", "font-size": 12, fill: "currentColor" }
const heading = { ...text, "font-size": 14, "font-weight": 600 }
const faint = { stroke: "currentColor", "stroke-opacity": 0.18 }

/** The stretches of a line between the places where it has no value. */
function unbroken(points: readonly Point[]): Point[][] {
  const runs: Point[][] = []
  let open = false
  for (const point of points) {
    const isThere = Number.isFinite(point.x) && Number.isFinite(point.y)
    if (isThere && open) (runs.at(-1) as Point[]).push(point)
    else if (isThere) runs.push([point])
    open = isThere
  }
  return runs
}

/** A line chart as one SVG picture; a line breaks where it has no value. */
export function lineChart(chart: LineChart): string {
  const { title, series, width = 560, height = 300 } = chart
  const [left, right, top, bottom] = [56, width - 14, 46, height - 44]
  const points = series.flatMap((s) => unbroken(s.points).flat())
  const [xs, ys] = [extent(points.map((p) => p.x)), extent([...points.map((p) => p.y), ...(points.every((p) => p.y >= 0) ? [0] : [])])]
  const x = linearScale(xs, [left, right])
  const y = linearScale(ys, [bottom, top])
  const grid = [
    ...ticks(...ys).map(
      (v) =>
        element("path", { d: `M${left} ${y(v).toFixed(1)}H${right}`, ...faint }) +
        label(left - 6, y(v) + 4, String(v), { ...text, "text-anchor": "end" }),
    ),
    ...ticks(...xs).map(
      (v) =>
        element("path", { d: `M${x(v).toFixed(1)} ${top}V${bottom}`, ...faint }) +
        label(x(v), bottom + 16, String(v), { ...text, "text-anchor": "middle" }),
    ),
    element("path", { d: `M${left} ${top}V${bottom}H${right}`, fill: "none", stroke: "currentColor", "stroke-opacity": 0.6 }),
    label((left + right) / 2, height - 8, chart.x, { ...text, "text-anchor": "middle" }),
    element("text", { ...text, "text-anchor": "middle", transform: `translate(14 ${(top + bottom) / 2}) rotate(-90)` }, escapeXml(chart.y)),
  ]
  const lines = series.map((s, i) => {
    const style = strokes[i % strokes.length] as (typeof strokes)[number]
    return element("path", {
      d: unbroken(s.points)
        .map((run) => pathThrough(run.map((p) => ({ x: x(p.x), y: y(p.y) }))))
        .join(""),
      fill: "none",
      stroke: style.stroke,
      "stroke-width": 2,
      "stroke-dasharray": style.dash,
    })
  })
  const legend = series.map((s, i) => {
    const style = strokes[i % strokes.length] as (typeof strokes)[number]
    const at = left + (i * (right - left)) / Math.max(series.length, 3)
    const sample = element("path", {
      d: `M${at.toFixed(1)} 34h26`,
      stroke: style.stroke,
      "stroke-width": 2,
      "stroke-dasharray": style.dash,
    })
    return sample + label(at + 32, 38, s.label, text)
  })
  return svg(
    { title, description: `${chart.y} over ${chart.x}: ${series.map((s) => s.label).join(", ")}`, width, height },
    label(left, 16, title, heading),
    ...grid,
    ...lines,
    ...(series.length > 1 ? legend : []),
  )
}

/** One bar of a step chart: from where the last one ended, by `added`. */
export interface Step {
  readonly label: string
  readonly total: number
  readonly added: number
}

/** Bars that start where the one before ended: how a total is made up, as one SVG picture; `show` gives a value its text. */
export function stepChart(title: string, steps: readonly Step[], show: (value: number) => string, width = 560): string {
  const row = 34
  const height = steps.length * row + 64
  const [left, right] = [12, width - 70]
  const most = Math.max(...steps.map((s) => Math.max(s.total, s.total - s.added)), 1e-12)
  const x = linearScale([0, most], [left, right])
  const bars = steps.map((s, i) => {
    const [from, to] = [x(s.total - s.added), x(s.total)]
    const top = 30 + i * row
    const sign = i === 0 || s.added === 0 ? "" : s.added > 0 ? "+" : "−"
    return [
      label(left, top + 11, s.label, text),
      element("rect", {
        x: Math.min(from, to),
        y: top + 15,
        width: Math.max(1.5, Math.abs(to - from)),
        height: 11,
        fill: i === 0 ? "#7f93a8" : s.added >= 0 ? "#c2571a" : "#2b8a63",
      }),
      label(Math.max(from, to) + 6, top + 25, `${sign}${show(Math.abs(s.added))}`, text),
    ].join("")
  })
  const last = steps[steps.length - 1]
  return svg(
    { title, description: steps.map((s) => `${s.label}: ${show(s.total)}`).join("; "), width, height },
    label(left, 16, title, heading),
    ...bars,
    label(left, height - 8, `${show(last?.total ?? 0)} in all`, { ...text, "font-weight": 600 }),
  )
}
