import { element, label, type Point, pathThrough, svg, svgNumber } from "../../drawing/index.js"
import { bendTemplate } from "./index.js"
import type { BendTemplateInput } from "./types.js"

const MARGIN = 12
const FOOT = 26

/** The whole drawing in millimetres, y downwards. */
interface Sheet {
  readonly width: number
  readonly height: number
  readonly description: string
  readonly content: readonly string[]
}

function sheetOf(input: BendTemplateInput, title: string): Sheet {
  const si = bendTemplate.read(input)
  const jig = bendTemplate(input)
  const all = [...jig.edge, ...jig.centreline]
  const most = (key: "x" | "y") => Math.max(...all.map((p) => p[key])) * 1000
  const width = Math.max(most("x"), 150) + 2 * MARGIN
  const height = most("y") + 2 * MARGIN + FOOT
  // millimetres, y downwards
  const place = ({ x, y }: Point): Point => ({ x: x * 1000 + MARGIN, y: most("y") - y * 1000 + MARGIN })
  const edge = jig.edge.map(place)
  const middle = jig.centreline.map(place)
  const tick = (i: number) => {
    const [e, c] = [edge[i] as Point, middle[i] as Point]
    return element("line", { x1: e.x, y1: e.y, x2: 2 * c.x - e.x, y2: 2 * c.y - e.y, stroke: "#555", "stroke-width": 0.3 })
  }
  const ends = si.straightRun > 0 ? [1, edge.length - 2] : [0, edge.length - 1]
  // which side is wood and which is tube, a little off the middle of the edge
  const sideLabel = (text: string, towardsTube: number) => {
    const i = Math.floor(edge.length / 2)
    const [e, c] = [edge[i] as Point, middle[i] as Point]
    const away = (towardsTube * 4) / Math.max(1e-9, Math.hypot(c.x - e.x, c.y - e.y))
    return label(e.x + (c.x - e.x) * away, e.y + (c.y - e.y) * away + 1, text, {
      "font-size": 3,
      "font-family": "sans-serif",
      "text-anchor": "middle",
    })
  }
  const base = height - 14
  const millimetres = (metres: number) => (metres * 1000).toFixed(1)
  const degrees = (rad: number) => ((rad * 180) / Math.PI).toFixed(1)
  return {
    width,
    height,
    description: `Jig edge for a tube of ${millimetres(si.outsideDiameter)} mm; turns ${degrees(jig.jigTurn)} degrees, minimum edge radius ${millimetres(jig.minEdgeRadius)} mm.`,
    content: [
      element("path", { d: pathThrough(edge), fill: "none", stroke: "#000", "stroke-width": 0.35 }),
      element("path", { d: pathThrough(middle), fill: "none", stroke: "#777", "stroke-width": 0.25, "stroke-dasharray": "6 2 1 2" }),
      ...ends.map(tick),
      sideLabel("jig", -1),
      sideLabel("tube", 1),
      element("line", { x1: MARGIN, y1: base, x2: MARGIN + 100, y2: base, stroke: "#000", "stroke-width": 0.5 }),
      ...[0, 50, 100].map((x) =>
        element("line", { x1: MARGIN + x, y1: base - 2, x2: MARGIN + x, y2: base + 2, stroke: "#000", "stroke-width": 0.5 }),
      ),
      label(MARGIN, base - 4, `100 mm: measure before cutting. ${title}`, { "font-size": 4, "font-family": "sans-serif" }),
      label(
        MARGIN,
        base + 7,
        `tube ${millimetres(si.outsideDiameter)} mm, jig ${degrees(jig.jigTurn)}° for ${degrees(jig.turn)}°, edge end to end ${millimetres(jig.chord)} mm`,
        { "font-size": 4, "font-family": "sans-serif" },
      ),
    ],
  }
}

const inMillimetres = (width: number, height: number) => ({ width: `${svgNumber(width)}mm`, height: `${svgNumber(height)}mm` })

/**
 * Draws a {@link bendTemplate} at true scale: one unit of the picture is a millimetre, and the picture says its physical size, so
 * that a printer or a laser cutter reproduces it. Solid: the edge to cut. Dashed: the tube's centreline. Ticks: where the bend
 * begins and ends. A bar of 100 mm checks the scale.
 *
 * @param input - as for `bendTemplate`
 * @param title - written on the template
 * @returns the SVG text
 * @throws InputError and NoSolutionError as `bendTemplate` does
 * @example
 * ```ts
 * import { bendTemplateSvg } from 'alula/thermoform'
 * const drawing = bendTemplateSvg({ shape: 'arc', outsideDiameter: '26.7 mm', radius: '250 mm', angle: '60 deg' }, 'wing rib 3')
 * drawing.startsWith('<svg') // => true
 * ```
 */
export function bendTemplateSvg(input: BendTemplateInput, title = "bend template"): string {
  const { width, height, description, content } = sheetOf(input, title)
  return svg({ title, description, width, height, physical: inMillimetres(width, height) }, ...content)
}

/** Nobody sticks more pages together than this. */
const MOST_PAGES = 400

/** Printable part of a page and the strip that neighbouring pages share, mm. */
export interface TemplatePage {
  readonly width?: number
  readonly height?: number
  readonly overlap?: number
}

/**
 * The same drawing cut into pages at true scale, row by row, for a printer that has no paper large enough: crosses in the shared
 * strips come to lie on each other when the pages are stuck together.
 *
 * @param input - as for `bendTemplate`
 * @param title - written on every page
 * @param page - printable size and overlap, mm: 190 × 277 (A4 with 10 mm margins) and 10 by default
 * @returns the SVG text of each page
 * @throws InputError and NoSolutionError as `bendTemplate` does; RangeError where the overlap leaves nothing of the page, or where it
 * would take more than 400 pages
 * @example
 * ```ts
 * import { bendTemplatePages } from 'alula/thermoform'
 * const pages = bendTemplatePages({ shape: 'arc', outsideDiameter: '26.7 mm', radius: '420 mm', angle: '75 deg' }, 'wing rib 3')
 * pages.length // => 4
 * ```
 */
export function bendTemplatePages(input: BendTemplateInput, title = "bend template", page: TemplatePage = {}): readonly string[] {
  const { width = 190, height = 277, overlap = 10 } = page
  if (!(overlap >= 0 && width > 2 * overlap && height > 2 * overlap && width < 1e5 && height < 1e5))
    throw new RangeError(`a page of ${width} × ${height} mm with ${overlap} mm overlap leaves nothing to draw on`)
  const sheet = sheetOf(input, title)
  const [stepX, stepY] = [width - overlap, height - overlap]
  const columns = Math.max(1, Math.ceil((sheet.width - overlap) / stepX))
  const rows = Math.max(1, Math.ceil((sheet.height - overlap) / stepY))
  if (!(rows * columns <= MOST_PAGES)) throw new RangeError(`${rows * columns} pages of ${width} × ${height} mm; at most ${MOST_PAGES}`)
  const cross = (x: number, y: number) =>
    element("path", {
      d: `M${svgNumber(x - 3)} ${svgNumber(y)}h6M${svgNumber(x)} ${svgNumber(y - 3)}v6`,
      stroke: "#c00",
      "stroke-width": 0.2,
    })
  // in the middle of every strip, at the quarters of a page along it
  const crosses: string[] = []
  for (let c = 1; c < columns; c++)
    for (let r = 0; r < rows; r++) for (const part of [0.25, 0.75]) crosses.push(cross(c * stepX + overlap / 2, r * stepY + part * height))
  for (let r = 1; r < rows; r++)
    for (let c = 0; c < columns; c++)
      for (const part of [0.25, 0.75]) crosses.push(cross(c * stepX + part * width, r * stepY + overlap / 2))
  return Array.from({ length: rows * columns }, (_, i) => {
    const [row, column] = [Math.floor(i / columns), i % columns]
    const name = `${title}, row ${row + 1} of ${rows}, column ${column + 1} of ${columns}`
    return svg(
      { title: name, description: sheet.description, width, height, physical: inMillimetres(width, height) },
      element("g", { transform: `translate(${svgNumber(-column * stepX)} ${svgNumber(-row * stepY)})` }, ...sheet.content, ...crosses),
      label(width / 2, height - 2, name, { "font-size": 3, "font-family": "sans-serif", "text-anchor": "middle", fill: "#777" }),
    )
  })
}
