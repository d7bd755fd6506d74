// The chain folded, half-way and spread, for poseSvg and poseText.
import type { SiOf } from "../../solver/index.js"
import type { PosePicture } from "../pose-picture.js"
import { cornersAt, placeAt } from "./kernel.js"
import type { FoldingChainInput } from "./types.js"

/** The chain at the position asked for, with the folded and the spread one faint and the path of its tip dotted. */
export function foldingChainPicture(si: SiOf<FoldingChainInput>): PosePicture {
  const outlines = (position: number, style: "part" | "earlier", name: string) => {
    const corners = cornersAt(si, placeAt(si, position))
    return si.segments.map((_, i) => ({
      label: `segment ${i + 1} ${name}`,
      points: corners.slice(4 * i, 4 * i + 4),
      closed: true,
      style,
    }))
  }
  const path = Array.from({ length: 61 }, (_, k) => placeAt(si, k / 60).joints.at(-1) as { x: number; y: number })
  return {
    title: "Folding chain",
    description: "The chain as asked for in full, folded and spread faint; dotted: path of the tip",
    lines: [
      ...outlines(0, "earlier", "folded"),
      ...outlines(1, "earlier", "spread"),
      ...outlines(si.position, "part", "as asked for"),
      { label: "path of the tip", points: path, style: "path" as const },
    ],
    pivots: [{ x: 0, y: 0 }],
  }
}
