// The cam at the turn asked for, for poseSvg and poseText.
import type { SiOf } from "../../solver/index.js"
import type { Point } from "../hinge/geometry.js"
import type { PosePicture } from "../pose-picture.js"
import { shapeAt } from "./kernel.js"
import type { CamDriveInput } from "./types.js"

/** Outline of the rise, from the place of the roller's centre inward along the push; turned back by the cam's own turn. */
function outline(si: SiOf<CamDriveInput>): Point[] {
  return Array.from({ length: 181 }, (_, k) => {
    const angle = (si.riseAngle * k) / 180
    const { height, pressureAngle } = shapeAt(si, angle)
    const [x, y] = [si.offset + si.rollerRadius * Math.sin(pressureAngle), height - si.rollerRadius * Math.cos(pressureAngle)]
    const back = si.camAngle - angle
    return { x: x * Math.cos(back) - y * Math.sin(back), y: x * Math.sin(back) + y * Math.cos(back) }
  })
}

/** The rising part of the cam with its roller and slide. */
export function camDrivePicture(si: SiOf<CamDriveInput>): PosePicture {
  const { height } = shapeAt(si, si.camAngle)
  const centre = { x: si.offset, y: height }
  const around = (r: number) =>
    Array.from({ length: 33 }, (_, k) => ({
      x: centre.x + r * Math.cos((k * Math.PI) / 16),
      y: centre.y + r * Math.sin((k * Math.PI) / 16),
    }))
  return {
    title: "Cam and follower",
    description: "Rise of the cam, roller and slide at the turn asked for; the slide runs upward",
    lines: [
      { label: "cam", style: "part", points: outline(si) },
      { label: "roller", style: "element", points: around(si.rollerRadius) },
      { label: "slide", style: "path", points: [centre, { x: si.offset, y: height + si.lift }] },
    ],
    pivots: [{ x: 0, y: 0 }],
  }
}
