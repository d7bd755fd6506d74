// The picture of a gas spring: its force over the compression, in and out.
import { lineChart } from "../../drawing/index.js"
import { solve } from "./kernel.js"
import type { Si } from "./types.js"

const STEPS = 40

/**
 * Draws the force of a gas spring over its stroke, compressing and extending, as one SVG picture.
 *
 * @param si - input of gasSpring in SI, as its `read` gives it
 */
export function drawGasSpring(si: Si): string {
  const along = Array.from({ length: STEPS + 1 }, (_, k) => (si.stroke * k) / STEPS)
  const line = (key: "extendingForce" | "compressingForce") =>
    along.map((compression) => ({ x: 1000 * compression, y: solve({ ...si, compression })[key] }))
  return lineChart({
    title: "Force of the gas spring",
    x: "pushed in, mm",
    y: "force, N",
    series: [
      { label: "compressing", points: line("compressingForce") },
      { label: "extending", points: line("extendingForce") },
    ],
  })
}
