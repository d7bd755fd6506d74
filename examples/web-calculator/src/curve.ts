// A curve with its axes, as a picture that also reads as a table.
import { displayNumber } from "alula/solver"
import { el } from "./dom.js"

interface Axis {
  readonly label: string
  readonly kind: string
  readonly values: readonly (number | null)[]
}

const SVG = "http://www.w3.org/2000/svg"
const svg = (tag: string, attributes: Readonly<Record<string, string | number>>, ...holds: readonly (Node | string)[]) => {
  const made = document.createElementNS(SVG, tag)
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, String(value))
  made.append(...holds)
  return made
}

/** One result over one input; gaps where it was refused. */
export function curve(x: Axis, y: Axis, here: number | null): HTMLElement {
  const points = x.values.map((value, i) => [value, y.values[i] ?? null] as const)
  const known = points.filter((p): p is readonly [number, number] => p[0] !== null && p[1] !== null)
  if (known.length < 2) return el("p", {}, "No answer over this range: try a smaller one.")
  const [xs, ys] = [known.map((p) => p[0]), known.map((p) => p[1])]
  const [x0, x1] = [Math.min(...xs), Math.max(...xs)]
  let [y0, y1] = [Math.min(...ys), Math.max(...ys)]
  if (y1 - y0 < 1e-12 * Math.max(Math.abs(y0), Math.abs(y1), 1e-300))
    [y0, y1] = [y0 - Math.abs(y0) / 2 - 1e-12, y1 + Math.abs(y1) / 2 + 1e-12]
  const [left, right, top, bottom] = [78, 540, 16, 244]
  const px = (v: number) => left + ((v - x0) / (x1 - x0 || 1)) * (right - left)
  const py = (v: number) => bottom - ((v - y0) / (y1 - y0)) * (bottom - top)
  const runs: string[] = []
  let open = false
  for (const [a, b] of points) {
    if (a === null || b === null) {
      open = false
      continue
    }
    runs.push(`${open ? "L" : "M"}${px(a).toFixed(1)} ${py(b).toFixed(1)}`)
    open = true
  }
  const marks = [0, 0.25, 0.5, 0.75, 1]
  const title = `${y.label} over ${x.label}: from ${displayNumber(y, ys[0] as number)} at ${displayNumber(x, xs[0] as number)} to ${displayNumber(y, ys.at(-1) as number)} at ${displayNumber(x, xs.at(-1) as number)}`
  const picture = svg(
    "svg",
    { viewBox: "0 0 560 300", role: "img", "aria-label": title, class: "curve" },
    ...marks.map((m) => svg("line", { x1: left, x2: right, y1: py(y0 + m * (y1 - y0)), y2: py(y0 + m * (y1 - y0)), class: "grid" })),
    ...marks.map((m) =>
      svg("text", { x: left - 8, y: py(y0 + m * (y1 - y0)) + 4, "text-anchor": "end" }, displayNumber(y, y0 + m * (y1 - y0))),
    ),
    ...marks
      .filter((m) => m !== 0.25 && m !== 0.75)
      .map((m) =>
        svg(
          "text",
          { x: px(x0 + m * (x1 - x0)), y: bottom + 20, "text-anchor": m === 0 ? "start" : m === 1 ? "end" : "middle" },
          displayNumber(x, x0 + m * (x1 - x0)),
        ),
      ),
    svg("text", { x: (left + right) / 2, y: bottom + 42, "text-anchor": "middle", class: "axis" }, x.label),
    svg("path", { d: runs.join(""), class: "line" }),
    ...(here !== null && here >= x0 && here <= x1 ? [svg("line", { x1: px(here), x2: px(here), y1: top, y2: bottom, class: "here" })] : []),
  )
  const every = Math.max(1, Math.floor(points.length / 10))
  const rows = points
    .filter((_, i) => i % every === 0)
    .map(([a, b]) =>
      el(
        "tr",
        {},
        el("th", { scope: "row" }, a === null ? "—" : displayNumber(x, a)),
        el("td", {}, b === null ? "no answer" : displayNumber(y, b)),
      ),
    )
  return el(
    "figure",
    {},
    el("figcaption", {}, y.label),
    picture as unknown as HTMLElement,
    el(
      "details",
      {},
      el("summary", {}, "The same as a table"),
      el(
        "table",
        {},
        el("thead", {}, el("tr", {}, el("th", { scope: "col" }, x.label), el("th", { scope: "col" }, y.label))),
        el("tbody", {}, ...rows),
      ),
    ),
  )
}
