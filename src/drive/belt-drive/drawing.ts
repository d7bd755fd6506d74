// The picture of a belt on its pulleys, to scale, the strands labelled with their pulls.
import { element, label, pathThrough, svg } from "../../drawing/index.js"
import { formatQuantity } from "../../quantity/index.js"
import { isNoSolution, type SiOf } from "../../solver/index.js"
import { kernel, runOf } from "./kernel.js"
import type { BeltDriveInput } from "./types.js"

const INK = "#1d3557"
const BELT = "#b5541c"
const text = { "font-family": "system-ui, sans-serif", "font-size": 12, fill: "#222", "text-anchor": "middle" } as const

/**
 * Draws both pulleys and the belt as one SVG picture: driving pulley left, the tight strand below.
 *
 * @param si - input of beltDrive in SI, as its `read` gives it
 * @returns null where the belt slips or its teeth climb over
 */
export function drawBeltDrive(si: SiOf<BeltDriveInput>, width = 560): string | null {
  const out = kernel(si)
  if (isNoSolution(out)) return null
  const { r1, r2, lean, crossed } = runOf(si)
  const scale = (width - 60) / (si.centreDistance + r1 + r2)
  const height = 2 * Math.max(r1, r2) * scale + 96
  const centre = { x: 30 + r1 * scale, y: height / 2 }
  // where a strand touches: square to it, above the line of the shafts or below
  const touch = (away: number, r: number, ahead: number, side: number) => ({
    x: centre.x + (away + ahead * r * Math.sin(lean)) * scale,
    y: centre.y - side * r * Math.cos(lean) * scale,
  })
  const strand = (side: number) =>
    element("path", {
      d: pathThrough([touch(0, r1, crossed ? 1 : -1, side), touch(si.centreDistance, r2, -1, crossed ? -side : side)]),
      fill: "none",
      stroke: BELT,
      "stroke-width": side < 0 ? 3 : 1.5,
    })
  const pulley = (away: number, r: number) => {
    const at = { cx: centre.x + away * scale, cy: centre.y }
    return (
      element("circle", { ...at, r: r * scale, fill: "none", stroke: INK, "stroke-width": 2 }) +
      element("circle", { ...at, r: 2.5, fill: INK })
    )
  }
  const [tight, slack] = [out.tightTension, out.slackTension].map((force) => formatQuantity("force", force)) as [string, string]
  return svg(
    { title: "Belt drive", description: `driving pulley left; tight strand ${tight}, slack strand ${slack}`, width, height },
    pulley(0, r1),
    pulley(si.centreDistance, r2),
    strand(1),
    strand(-1),
    label(width / 2, 20, `slack strand ${slack}`, text),
    label(width / 2, height - 10, `tight strand ${tight}`, text),
  )
}
