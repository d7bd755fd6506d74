// The picture of a cable: its tension over the angle turned, from the far end to the drive.
import { lineChart } from "../../drawing/index.js"
import { isNoSolution, type SiOf } from "../../solver/index.js"
import { bendsOf, kernel } from "./kernel.js"
import type { CableInput } from "./types.js"

const STEPS = 12

/**
 * Draws the tension of a cable along its bends, pulling and paying out, as one SVG picture.
 *
 * @param si - input of cable in SI, as its `read` gives it
 * @returns null where the cable breaks
 */
export function drawCable(si: SiOf<CableInput>): string | null {
  const out = kernel(si)
  if (isNoSolution(out)) return null
  const bends = bendsOf(si)
  const line = (key: "pulling" | "payingOut") => [
    { x: 0, y: si.force },
    ...bends.flatMap(({ angle, ratio }, k) => {
      const { turned, [key]: from } = out.spans[k] as (typeof out.spans)[number]
      const growth = key === "pulling" ? ratio : 1 / ratio
      return Array.from({ length: STEPS }, (_, i) => ({
        x: ((turned + (angle * (i + 1)) / STEPS) * 180) / Math.PI,
        y: from * growth ** ((i + 1) / STEPS),
      }))
    }),
  ]
  return lineChart({
    title: "Tension along the cable, from the far end to the drive",
    x: "angle turned, °",
    y: "tension, N",
    series: [
      { label: "pulling", points: line("pulling") },
      { label: "paying out", points: line("payingOut") },
    ],
  })
}
