// The picture of a stop: its force over how far it yields, with the drive's push beneath.
import { lineChart } from "../../drawing/index.js"
import { isNoSolution, type SiOf } from "../../solver/index.js"
import { kernel } from "./kernel.js"
import type { EndStopInput } from "./types.js"

/**
 * Draws the force of a stop over its way as one SVG picture; the area between the lines is the energy of motion.
 *
 * @param si - input of endStop in SI, as its `read` gives it
 * @returns null where the stop bottoms out
 */
export function drawEndStop(si: SiOf<EndStopInput>): string | null {
  const out = kernel(si)
  if (isNoSolution(out)) return null
  const { stoppingLength: x, peakForce, restForce, meanForce } = out
  const force =
    si.stop.type === "spring"
      ? [
          { x: 0, y: 0 },
          { x: 1000 * x, y: peakForce },
        ]
      : [
          { x: 0, y: meanForce },
          { x: 1000 * x, y: meanForce },
        ]
  return lineChart({
    title: "Force of the stop",
    x: "travel, mm",
    y: "force, N",
    series: [
      { label: si.stop.type === "spring" ? "stop" : "stop, mean", points: force },
      {
        label: "drive",
        points: [
          { x: 0, y: restForce },
          { x: 1000 * x, y: restForce },
        ],
      },
    ],
  })
}
