import { element, label, type Point, pathThrough, svg } from "../../drawing/index.js"
import { hingePinAt } from "../../linkage/index.js"
import type { SiOf } from "../../solver/index.js"
import type { RigDocument } from "../document/document.js"
import { armModel } from "./arms.js"

/** The arms with the actuator retracted, half-way and extended, laid over one another, as one SVG picture in the plane of motion. */
export function posePicture(rig: SiOf<RigDocument>): string {
  const arms = rig.hinged
  if (!arms) return ""
  const arm = armModel(arms)
  const tip = Math.max(...arms.masses.map((m) => m.radius))
  const strokes = [0, 0.5, 1].map((part) => part * arms.actuator.stroke)
  const sides = arms.count > 1 ? [1, -1] : [1]
  const [width, height] = [560, 420]
  const reach = tip + Math.abs(arms.hinge.x)
  const scale = Math.min((width / 2 - 24) / reach, (height / 2 - 24) / tip)
  const centre = { x: sides.length > 1 ? width / 2 : width / 4, y: height / 2 }
  const at = (p: Point, side: number): Point => ({ x: centre.x + side * p.x * scale, y: centre.y - (p.y - arms.hinge.y) * scale })
  const poses = strokes.flatMap((stroke, i) => {
    const angle = arm.angleAt(stroke)
    if (angle === null) return []
    const opacity = [0.35, 0.6, 1][i]
    const end = { x: arms.hinge.x + tip * Math.cos(angle), y: arms.hinge.y + tip * Math.sin(angle) }
    const pin = hingePinAt(arm.geometry, angle)
    return sides.map((side) =>
      element(
        "g",
        { opacity },
        element("path", {
          d: pathThrough([at(arms.hinge, side), at(end, side)]),
          stroke: "#1d3557",
          "stroke-width": 5,
          "stroke-linecap": "round",
        }),
        element("path", { d: pathThrough([at(arms.hinge, side), at(pin, side)]), stroke: "#1d3557", "stroke-width": 3 }),
        element("path", {
          d: pathThrough([at(arms.fixedPivot, side), at(pin, side)]),
          stroke: "#b5541c",
          "stroke-width": 3,
          "stroke-dasharray": "9 3",
        }),
        ...arms.masses.map((m) => {
          const place = at(
            { x: arms.hinge.x + m.radius * Math.cos(angle + m.angle), y: arms.hinge.y + m.radius * Math.sin(angle + m.angle) },
            side,
          )
          return element("circle", { cx: place.x, cy: place.y, r: 3 + 14 * Math.sqrt(m.mass / 2), fill: "none", stroke: "#555" })
        }),
      ),
    )
  })
  const marks = sides.flatMap((side) =>
    [arms.hinge, arms.fixedPivot].map((p) =>
      element("circle", { cx: at(p, side).x, cy: at(p, side).y, r: 5, fill: "#fff", stroke: "#1d3557", "stroke-width": 2 }),
    ),
  )
  const metre = 0.5 * scale
  const bar = [
    element("path", { d: `M16 ${height - 16}h${metre.toFixed(1)}`, stroke: "#222", "stroke-width": 2 }),
    label(16, height - 22, "500 mm", { "font-size": 12, "font-family": "system-ui, sans-serif" }),
  ]
  return svg(
    {
      title: `Poses of ${rig.name}`,
      description: "Arms with the actuator retracted, half-way and extended; dashed lines are actuators, rings are masses",
      width,
      height,
    },
    ...poses,
    ...marks,
    ...bar,
  )
}
