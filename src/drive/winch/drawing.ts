// The picture of a winch: torque at the drum over the line paid out.
import { lineChart } from "../../drawing/index.js"
import { isNoSolution, type SiOf } from "../../solver/index.js"
import { coilOf, kernel, lengthOf } from "./kernel.js"
import type { WinchInput, WinchLayer } from "./types.js"

/**
 * Draws the torque at the drum over the line paid out as one SVG picture: winding in, holding, paying out, in steps layer by layer.
 *
 * @param si - input of winch in SI, as its `read` gives it
 * @returns null where the winch stalls or the line does not fit
 */
export function drawWinch(si: SiOf<WinchInput>): string | null {
  const out = kernel(si)
  if (isNoSolution(out)) return null
  const coil = coilOf(si)
  const steps = (value: (layer: WinchLayer) => number) =>
    [...out.layers].reverse().flatMap((layer) =>
      [lengthOf(coil, layer.layer), lengthOf(coil, layer.layer - 1)].map((left) => ({
        x: Math.min(si.travel, Math.max(0, si.lineLength - left)),
        y: value(layer),
      })),
    )
  return lineChart({
    title: "Torque at the drum",
    x: "line paid out, m",
    y: "torque, N·m",
    series: [
      { label: "winding in", points: steps((layer) => layer.raiseTorque) },
      { label: "to hold", points: steps((layer) => layer.holdingTorque) },
      { label: "held back, paying out", points: steps((layer) => -layer.lowerTorque) },
    ],
  })
}
