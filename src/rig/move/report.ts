import { plainText, textChart } from "../../drawing/index.js"
import { formatQuantity } from "../../quantity/index.js"
import { citation } from "../../solver/index.js"
import type { RigDocument } from "../document/document.js"
import { moveTime } from "./move-time/index.js"
import type { Move } from "./summary.js"

const degrees = (angle: number) => (angle * 180) / Math.PI
const seconds = (time: number) => formatQuantity("time", time, "s")
const angleLine = (move: Move) => move.curve.map((p) => ({ x: p.time, y: degrees(p.angle) }))

function waterfallLines(move: Move): string[] {
  const width = Math.max(...move.waterfall.map((s) => s.label.length))
  return move.waterfall.map((s, i) => {
    const sign = i === 0 || s.added === 0 ? " " : s.added > 0 ? "+" : "−"
    return `  ${s.label.padEnd(width)}  ${sign}${seconds(Math.abs(s.added)).padStart(8)}  ${seconds(s.time).padStart(8)}`
  })
}

/** The move's answer as plain text for a terminal: how far, how hard, how long, what limits it. */
export function moveText(rig: RigDocument): string {
  const move = moveTime(rig)
  const { raise } = move
  const name = plainText(rig.name)
  const rows: readonly (readonly [string, string])[] = [
    ["how far", `${formatQuantity("angle", move.swing, "°")} of swing`],
    [
      "how hard",
      `${formatQuantity("force", raise.peakForce, "N")} at each rod, worst at ${formatQuantity("angle", raise.peakForceAngle, "°")}`,
    ],
    [
      "how long",
      `${seconds(move.raiseTime)} up, ${seconds(move.lowerTime)} down${move.stageMargin === null ? "" : move.stageMargin >= 0 ? `, ${seconds(move.stageMargin)} left of the stage time` : `, ${seconds(-move.stageMargin)} more than the stage time`}`,
    ],
    ["what limits", move.limit],
    [
      "current",
      `${formatQuantity("current", raise.peakCurrent, "A")} at the actuators, ${formatQuantity("current", raise.peakSourceCurrent, "A")} from the source`,
    ],
    ["voltage", `${formatQuantity("voltage", raise.minVoltage, "V")} left at the actuators at worst`],
    ["energy", `${formatQuantity("energy", raise.energy.source + move.lower.energy.source, "J")} from the source for once up and down`],
  ]
  return [
    name,
    "=".repeat(name.length),
    ...rows.map(([what, value]) => `${what.padEnd(12)} ${value}`),
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
