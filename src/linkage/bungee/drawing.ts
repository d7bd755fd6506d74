// The picture of an elastic cord: its force over its length, out and back.
import { lineChart } from "../../drawing/index.js"
import type { Si } from "./types.js"

/**
 * Draws the force of an elastic cord over its length, stretching and letting back, as one SVG picture.
 *
 * @param si - input of bungee in SI, as its `read` gives it
 */
export function drawBungee(si: Si): string {
  const readings = [{ elongation: 0, force: 0 }, ...si.readings]
  const line = (share: number) =>
    readings.map(({ elongation, force }) => ({ x: 1000 * si.slackLength * (1 + elongation), y: si.cords * force * share }))
  return lineChart({
    title: "Force of the elastic cord",
    x: "length, mm",
    y: "force, N",
    series: [
      { label: "loading", points: line(1) },
      ...(si.lossShare === null ? [] : [{ label: "unloading, mean", points: line(1 - si.lossShare) }]),
    ],
  })
}
