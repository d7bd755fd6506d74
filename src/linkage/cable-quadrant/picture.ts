// The quadrant at both ends of its travel, for poseSvg and poseText.
import type { SiOf } from "../../solver/index.js"
import type { PosePicture } from "../pose-picture.js"
import type { CableQuadrantInput } from "./types.js"

const STEPS = 24

/** Arm, rims and both cables; `angle` is that of the arm, its end if left out. The cables leave their rims away from the arm. */
export function cableQuadrantPicture(si: SiOf<CableQuadrantInput>, angle = si.startAngle + si.travel): PosePicture {
  const { radius: r1, returnedBy: back } = si
  const reach = si.tipRadius ?? Math.max(2 * Math.max(r1, back.radius), ...si.masses.map((m) => m.radius))
  const place = (radius: number, at: number) => ({ x: radius * Math.cos(at), y: radius * Math.sin(at) })
  const arc = (radius: number, from: number, to: number) =>
    Array.from({ length: STEPS + 1 }, (_, k) => place(radius, from + ((to - from) * k) / STEPS))
  const arm = (at: number) => [{ x: 0, y: 0 }, place(reach, at + si.frameTilt)]
  const away = 2.5 * Math.max(r1, back.radius)
  const turned = angle - si.startAngle
  // over the top the opening cable pulls counter-clockwise; below, spring or second cable the other way
  const upper = [...arc(r1, Math.PI / 2 - Math.max(0, si.wrap - turned), Math.PI / 2), { x: -away, y: r1 }]
  const wound = back.type === "cable" ? back.wrap + turned : turned
  const lower = [...arc(back.radius, -Math.PI / 2 + wound, -Math.PI / 2), { x: -away, y: -back.radius }]
  return {
    title: "Quadrant on cables",
    description: "Arm where asked for in full, at both ends faint; the opening cable above, spring or second cable below",
    lines: [
      { label: "start", style: "earlier", points: arm(si.startAngle) },
      { label: "end", style: "earlier", points: arm(si.startAngle + si.travel) },
      { label: "opening cable", style: "element", points: upper },
      { label: back.type === "cable" ? "second cable" : "return spring", style: "element", points: lower },
      { label: "arm", style: "part", points: arm(angle) },
    ],
    pivots: [{ x: 0, y: 0 }],
  }
}
