// Pictures of a mechanism in one or more poses, as SVG and as plain text: what every solver's own picture is drawn by.
import { element, extent, label, linearScale, pathThrough, plainText, svg } from "../drawing/index.js"
import type { Point } from "./hinge/geometry.js"

/** A part of a mechanism in one pose: a link, an outline, a cable, a path. */
export interface PoseLine {
  readonly label: string
  readonly points: readonly Point[]
  /** Whether the last point is joined to the first. */
  readonly closed?: boolean
  /** `part` is a rigid link, `path` what a point goes along, `element` a spring or cable, `earlier` a part in another pose. */
  readonly style: "part" | "path" | "element" | "earlier"
}

/** A mechanism drawn in a plane, lengths in m. */
export interface PosePicture {
  readonly title: string
  readonly description: string
  readonly lines: readonly PoseLine[]
  /** Pivots fixed to the frame. */
  readonly pivots: readonly Point[]
}

const styles = {
  part: { stroke: "#1d3557", "stroke-width": 4, "stroke-dasharray": undefined, opacity: 1 },
  path: { stroke: "#2a7f62", "stroke-width": 1.5, "stroke-dasharray": "2 3", opacity: 1 },
  element: { stroke: "#b5541c", "stroke-width": 3, "stroke-dasharray": "9 3", opacity: 1 },
  earlier: { stroke: "#1d3557", "stroke-width": 3, "stroke-dasharray": undefined, opacity: 0.4 },
} as const

const allPoints = ({ lines, pivots }: PosePicture) => [...lines.flatMap((line) => line.points), ...pivots]

/** Scales that fit the picture into a frame, the same along both axes, up being up. */
function fitted(points: readonly Point[], width: number, height: number): (p: Point) => Point {
  const [xs, ys] = [extent(points.map((p) => p.x)), extent(points.map((p) => p.y))]
  const scale = Math.min(width / (xs[1] - xs[0]), height / (ys[1] - ys[0]))
  const [midX, midY] = [(xs[0] + xs[1]) / 2, (ys[0] + ys[1]) / 2]
  const x = linearScale([midX, midX + 1], [width / 2, width / 2 + scale])
  const y = linearScale([midY, midY + 1], [height / 2, height / 2 - scale])
  return (p) => ({ x: x(p.x), y: y(p.y) })
}

/** The picture as one SVG, true to scale. */
export function poseSvg(picture: PosePicture): string {
  const [width, height, edge, head] = [560, 420, 24, 28]
  const place = fitted(allPoints(picture), width - 2 * edge, height - head - 2 * edge)
  const at = (p: Point) => {
    const { x, y } = place(p)
    return { x: x + edge, y: y + edge + head }
  }
  const text = { "font-family": "system-ui, sans-serif", fill: "#222" }
  return svg(
    { title: picture.title, description: picture.description, width, height },
    label(12, 20, picture.title, { ...text, "font-size": 14, "font-weight": 600 }),
    ...picture.lines.map((line) =>
      element(
        "path",
        {
          d: pathThrough(line.points.map(at), line.closed),
          fill: "none",
          "stroke-linecap": "round",
          "stroke-linejoin": "round",
          ...styles[line.style],
        },
        element("title", {}, plainText(line.label).replace(/[&<>]/g, " ")),
      ),
    ),
    ...picture.pivots.map((p) => element("circle", { cx: at(p).x, cy: at(p).y, r: 5, fill: "#fff", stroke: "#1d3557", "stroke-width": 2 })),
  )
}

const marks = { part: "█", path: "·", element: "~", earlier: "░" } as const
/** A character is about twice as high as it is wide. */
const ASPECT = 2

/** The picture in plain text, for a terminal: parts as blocks, earlier poses grey, paths dotted, springs and cables as waves, pivots `O`. */
export function poseText(picture: PosePicture, columns = 72, rows = 22): string {
  const place = fitted(allPoints(picture), columns - 1, (rows - 1) * ASPECT)
  const cells = Array.from({ length: rows }, () => new Array<string>(columns).fill(" "))
  const put = (p: Point, mark: string) => {
    const { x, y } = place(p)
    const row = cells[Math.round(y / ASPECT)]
    if (row) row[Math.round(x)] = mark
  }
  const order = ["path", "earlier", "element", "part"] as const
  for (const style of order)
    for (const { points, closed } of picture.lines.filter((line) => line.style === style)) {
      const ends = closed ? [...points, ...points.slice(0, 1)] : points
      ends.forEach((to, i) => {
        const from = ends[Math.max(0, i - 1)] ?? to
        const steps = 2 * columns
        for (let k = 0; k <= steps; k++)
          put({ x: from.x + ((to.x - from.x) * k) / steps, y: from.y + ((to.y - from.y) * k) / steps }, marks[style])
      })
    }
  for (const p of picture.pivots) put(p, "O")
  return [plainText(picture.title), ...cells.map((row) => row.join("").trimEnd()), plainText(picture.description)].join("\n")
}
