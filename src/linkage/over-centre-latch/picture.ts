// The latch on both stops, for poseSvg and poseText.
import type { SiOf } from "../../solver/index.js"
import type { PosePicture } from "../pose-picture.js"
import type { OverCentreLatchInput } from "./types.js"

/** Lever, handle and spring; the fixed end lies to the right of the pivot, so the dead centre points left. */
export function overCentreLatchPicture(si: SiOf<OverCentreLatchInput>, angle = si.counterStop): PosePicture {
  const fixedEnd = { x: si.fixedPivotDistance, y: 0 }
  const place = (radius: number, past: number) => ({ x: -radius * Math.cos(past), y: -radius * Math.sin(past) })
  const lever = (past: number, style: "part" | "earlier", label: string) => ({
    label,
    style,
    points: [{ x: 0, y: 0 }, place(si.movingPivotRadius, past), place(si.handleRadius, past)],
  })
  return {
    title: "Over-centre latch",
    description: "Lever where asked for in full, on its stops faint; waves: the spring from its fixed end to the pin",
    lines: [
      lever(-si.clockwiseStop, "earlier", "on the clockwise stop"),
      lever(si.counterStop, "earlier", "on the counter-clockwise stop"),
      { label: "spring", style: "element", points: [fixedEnd, place(si.movingPivotRadius, angle)] },
      lever(angle, "part", "lever"),
    ],
    pivots: [{ x: 0, y: 0 }, fixedEnd],
  }
}
