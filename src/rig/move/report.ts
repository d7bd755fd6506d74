import { textChart } from "../../drawing/index.js"
import { formatQuantity } from "../../quantity/index.js"
import { citation } from "../../solver/index.js"
import type { RigDocument } from "../document/document.js"
import { moveTime } from "./move-time/index.js"
import type { Move } from "./summary.js"

const degrees = (angle: number) => (angle * 180) / Math.PI
const angleLine = (move: Move) => move.curve.map((p) => ({ x: p.time, y: degrees(p.angle) }))

function waterfallLines(move: Move): string[] {
  const width = Math.max(...move.waterfall.map((s) => s.label.length))
  return move.waterfall.map((s, i) => {
    const size = Math.abs(s.added).toFixed(2)
    const sign = i === 0 || Number(size) === 0 ? " " : s.added > 0 ? "+" : "−"
    return `  ${s.label.padEnd(width)}  ${sign}${size.padStart(6)} s  ${s.time.toFixed(2).padStart(7)} s`
  })
}

/** The move's answer as plain text for a terminal: how far, how hard, how long, what limits it. */
export function moveText(rig: RigDocument): string {
  const move = moveTime(rig)
  const { raise } = move
  const rows: readonly (readonly [string, string])[] = [
    ["how far", `${formatQuantity("angle", move.swing, "°", 3)} of swing`],
    [
      "how hard",
      `${formatQuantity("force", raise.peakForce, "N", 3)} at each rod, worst at ${formatQuantity("angle", raise.peakForceAngle, "°", 3)}`,
    ],
    [
      "how long",
      `${move.raiseTime.toFixed(1)} s up, ${move.lowerTime.toFixed(1)} s down${move.stageMargin === null ? "" : move.stageMargin >= 0 ? `, ${move.stageMargin.toFixed(1)} s left of the stage time` : `, ${(-move.stageMargin).toFixed(1)} s more than the stage time`}`,
    ],
    ["what limits", move.limit],
    [
      "current",
      `${formatQuantity("current", raise.peakCurrent, "A", 3)} at the actuators, ${formatQuantity("current", raise.peakSourceCurrent, "A", 3)} from the source`,
    ],
    ["voltage", `${formatQuantity("voltage", raise.leastVoltage, "V", 3)} left at the actuators at worst`],
    ["energy", `${formatQuantity("energy", raise.energy.source + move.lower.energy.source, "J", 3)} from the source for once up and down`],
  ]
  return [
    rig.name,
    "=".repeat(rig.name.length),
    ...rows.map(([name, value]) => `${name.padEnd(12)} ${value}`),
    "",
    move.why,
    "",
    "Where the seconds go, raising",
    ...waterfallLines(raise),
    "",
    textChart(
      [
        { label: "up", points: angleLine(raise) },
        { label: "down", points: angleLine(move.lower) },
      ],
      { x: "s", y: "angle, °" },
    ),
    "",
    ...move.cautions.map((c) => `${c.severity}: ${c.message} [${citation(c.source)}]`),
  ].join("\n")
}
