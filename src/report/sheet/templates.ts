// Templates at true scale: one unit of the drawing is one millimetre on paper, on pages that fit both A4 and Letter.
import { element, label, pathThrough, svg, svgNumber } from "../../drawing/index.js"
import { bendTemplatePages } from "../../thermoform/index.js"
import type { SheetBend, SheetPlate } from "./content.js"

/** Size of a page's drawing, mm: what A4 and Letter both leave between their margins. */
export const PAGE = { width: 180, height: 240 } as const
/** Height kept at the foot of every page for the scale, mm. */
const FOOT = 62
const MARGIN = 14
const OVERLAP = 10
/** Lengths of the scale's two bars, mm. */
const BAR = { across: 100, along: 50 } as const
const MOST_PAGES = 30

/** A template: its pages as SVG pictures, in order by rows. */
export interface SheetTemplate {
  readonly name: string
  readonly pages: readonly string[]
}

const line = (d: string, width: number, more: Readonly<Record<string, string>> = {}) =>
  element("path", { d, fill: "none", stroke: "#000", "stroke-width": width, ...more })
const word = (x: number, y: number, text: string, size = 4, more: Readonly<Record<string, string>> = {}) =>
  label(x, y, text, { "font-size": size, "font-family": "sans-serif", ...more })

/** Two bars to measure, across and along the page: printers stretch each way by itself. */
function scale(name: string): string[] {
  const [x, y] = [MARGIN, PAGE.height - 6]
  const across = Array.from({ length: BAR.across / 10 + 1 }, (_, i) => `M${x + 10 * i} ${y}v${i % 5 ? -2 : -4}`).join("")
  const along = Array.from({ length: BAR.along / 10 + 1 }, (_, i) => `M${x} ${y - 10 * i}h${i % 5 ? 2 : 4}`).join("")
  return [
    line(`M${x} ${y}h${BAR.across}`, 0.4, { class: "across" }),
    line(`M${x} ${y}v${-BAR.along}`, 0.4, { class: "along" }),
    line(across + along, 0.25),
    word(x + 8, y - BAR.along + 4, "Print at 100 %, not fitted to the page.", 4),
    word(x + 8, y - BAR.along + 10, `Measure before drilling: this line is ${BAR.along} mm long, the one below ${BAR.across} mm.`, 4),
    word(x + 8, y - BAR.along + 16, name, 4),
  ]
}

/** Pages of a drawing of any size; neighbours overlap by a strip with crosses to lay over each other. */
function pages(name: string, description: string, width: number, height: number, content: readonly string[]): readonly string[] {
  const room = PAGE.height - FOOT
  const count = (size: number, page: number) => Math.max(1, Math.ceil((size - OVERLAP) / (page - OVERLAP)))
  const [columns, rows] = [count(width, PAGE.width), count(height, room)]
  if (columns * rows > MOST_PAGES) return []
  const [stepX, stepY] = [PAGE.width - OVERLAP, room - OVERLAP]
  const cross = (x: number, y: number) => line(`M${svgNumber(x - 3)} ${svgNumber(y)}h6M${svgNumber(x)} ${svgNumber(y - 3)}v6`, 0.2)
  const crosses: string[] = []
  for (let c = 1; c < columns; c++)
    for (let r = 0; r < rows; r++) for (const part of [0.25, 0.75]) crosses.push(cross(c * stepX + OVERLAP / 2, r * stepY + part * room))
  for (let r = 1; r < rows; r++)
    for (let c = 0; c < columns; c++)
      for (const part of [0.25, 0.75]) crosses.push(cross(c * stepX + part * PAGE.width, r * stepY + OVERLAP / 2))
  return Array.from({ length: rows * columns }, (_, i) => {
    const [row, column] = [Math.floor(i / columns), i % columns]
    const title = rows * columns === 1 ? name : `${name}, sheet ${i + 1} of ${rows * columns} (row ${row + 1}, column ${column + 1})`
    const edge = `M0.1 0.1h${PAGE.width - 0.2}v${room - 0.2}h${0.2 - PAGE.width}Z`
    return svg(
      { title, description, width: PAGE.width, height: PAGE.height, physical: { width: `${PAGE.width}mm`, height: `${PAGE.height}mm` } },
      element(
        "svg",
        { x: 0, y: 0, width: PAGE.width, height: room, viewBox: `0 0 ${PAGE.width} ${room}`, overflow: "hidden" },
        element("g", { transform: `translate(${svgNumber(-column * stepX)} ${svgNumber(-row * stepY)})` }, ...content, ...crosses),
      ),
      line(edge, 0.2, { stroke: "#999" }),
      ...scale(title),
    )
  })
}

const millimetres = (metres: number) => (metres * 1000).toFixed(1)

/** Drilling template of a plate: a cross at each hole, its pin's outline where the pin is known. */
export function drillingTemplate({ name, holes }: SheetPlate): SheetTemplate {
  const xs = holes.map((h) => h.x * 1000)
  const ys = holes.map((h) => h.y * 1000)
  const [left, top] = [Math.min(...xs), Math.max(...ys)]
  const places = holes.map((hole, i) => ({
    ...hole,
    px: (xs[i] as number) - left + MARGIN + 8,
    py: top - (ys[i] as number) + MARGIN + 8,
  }))
  const width = Math.max(...xs) - left + 2 * MARGIN + 50
  const height = top - Math.min(...ys) + 2 * MARGIN + 20
  const [first] = places
  const drawn = places.flatMap(({ px, py, pin, name: hole }, i) => [
    line(`M${svgNumber(px - 7)} ${svgNumber(py)}h14M${svgNumber(px)} ${svgNumber(py - 7)}v14`, 0.2, { class: "hole" }),
    ...(pin === null ? [] : [element("circle", { cx: px, cy: py, r: pin * 500, fill: "none", stroke: "#000", "stroke-width": 0.35 })]),
    word(px + 4, py - 3, `${i + 1} ${hole}${pin === null ? "" : ` ⌀ ${millimetres(pin)}`}`, 3.5),
  ])
  const across = first
    ? places.slice(1).map(({ px, py }) =>
        line(
          pathThrough([
            { x: first.px, y: first.py },
            { x: px, y: py },
          ]),
          0.15,
          { "stroke-dasharray": "4 2" },
        ),
      )
    : []
  const list = places
    .slice(1)
    .map(({ name: hole, x, y }, i) => `hole ${i + 2} (${hole}) is ${millimetres(Math.hypot(x, y))} mm from hole 1`)
    .join("; ")
  return {
    name,
    pages: pages(name, `Drilling template at true scale: ${list}. x runs outward, y upward.`, width, height, [...across, ...drawn]),
  }
}

/** Bend template of a part formed hot, its legs 60 mm long. */
export function formingTemplate({ name, outsideDiameter, radius, angle, springback }: SheetBend): SheetTemplate {
  return { name, pages: bendTemplatePages({ shape: "arc", outsideDiameter, radius, angle, springback }, name, PAGE) }
}
