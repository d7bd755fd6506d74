// The picture of a belt or chain on its two wheels, to scale, the strands labelled with their pulls.
import { element, label, pathThrough, svg } from "../drawing/index.js"
import { formatQuantity } from "../quantity/index.js"

const INK = "#1d3557"
const BELT = "#b5541c"
const text = { "font-family": "system-ui, sans-serif", "font-size": 12, fill: "#222", "text-anchor": "middle" } as const

/** Two wheels and what runs over them. */
export interface TwoWheels {
  readonly title: string
  /** The driving wheel by name, for the description. */
  readonly driving: string
  readonly radii: readonly [driving: number, driven: number]
  readonly distance: number
  readonly crossed: boolean
  readonly tight: number
  readonly slack: number
}

/** Driving wheel left, the tight strand below. */
export function drawTwoWheels({ title, driving, radii: [r1, r2], distance, crossed, ...strands }: TwoWheels, width: number): string {
  // how far the strands lean from the line of the shafts
  const lean = Math.asin((crossed ? r1 + r2 : r2 - r1) / distance)
  const scale = (width - 60) / (distance + r1 + r2)
  const height = 2 * Math.max(r1, r2) * scale + 96
  const centre = { x: 30 + r1 * scale, y: height / 2 }
  // where a strand touches: square to it, above the line of the shafts or below
  const touch = (away: number, r: number, ahead: number, side: number) => ({
    x: centre.x + (away + ahead * r * Math.sin(lean)) * scale,
    y: centre.y - side * r * Math.cos(lean) * scale,
  })
  const strand = (side: number) =>
    element("path", {
      d: pathThrough([touch(0, r1, crossed ? 1 : -1, side), touch(distance, r2, -1, crossed ? -side : side)]),
      fill: "none",
      stroke: BELT,
      "stroke-width": side < 0 ? 3 : 1.5,
    })
  const wheel = (away: number, r: number) => {
    const at = { cx: centre.x + away * scale, cy: centre.y }
    return (
      element("circle", { ...at, r: r * scale, fill: "none", stroke: INK, "stroke-width": 2 }) +
      element("circle", { ...at, r: 2.5, fill: INK })
    )
  }
  const [tight, slack] = [formatQuantity("force", strands.tight), formatQuantity("force", strands.slack)]
  return svg(
    { title, description: `${driving} left; tight strand ${tight}, slack strand ${slack}`, width, height },
    wheel(0, r1),
    wheel(distance, r2),
    strand(1),
    strand(-1),
    label(width / 2, 20, `slack strand ${slack}`, text),
    label(width / 2, height - 10, `tight strand ${tight}`, text),
  )
}
