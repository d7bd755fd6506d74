import { escapeXml, lineChart, stepChart, textChart } from "../drawing/index.js"
import { formatQuantity } from "../quantity/index.js"
import type { Result } from "../solver/index.js"
import type { RigDocument } from "./document.js"
import type { Move } from "./move-summary.js"
import { type MoveTime, moveTime } from "./move-time.js"
import { posePicture } from "./pose-picture.js"

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
    ...move.cautions.map((c) => `${c.severity}: ${c.message} [${c.source}]`),
  ].join("\n")
}

function section(rig: RigDocument, move: Result<MoveTime>): string {
  const { raise, lower } = move
  const curve = (title: string, y: string, of: (p: Move["curve"][number]) => number) =>
    lineChart({
      title,
      x: "time, s",
      y,
      series: [
        { label: "up", points: raise.curve.map((p) => ({ x: p.time, y: of(p) })) },
        { label: "down", points: lower.curve.map((p) => ({ x: p.time, y: of(p) })) },
      ],
    })
  const figures = [
    posePicture(moveTime.read(rig)),
    stepChart(
      "Where the seconds go, raising",
      "s",
      raise.waterfall.map((s) => ({ label: s.label, total: s.time, added: s.added })),
    ),
    curve("Angle against time", "angle, °", (p) => degrees(p.angle)),
    curve("Force against the motion at one rod", "force, N", (p) => p.force),
    curve("Voltage at the actuators", "voltage, V", (p) => p.voltage),
    curve("Rod speed", "speed, mm/s", (p) => p.speed * 1000),
  ]
  return `<section><h2>${escapeXml(rig.name)}</h2><p><strong>${escapeXml(move.why)}</strong></p>
<table><tr><th scope="row">Swing</th><td>${formatQuantity("angle", move.swing)}</td></tr>
<tr><th scope="row">Up</th><td>${move.raiseTime.toFixed(1)} s</td></tr><tr><th scope="row">Down</th><td>${move.lowerTime.toFixed(1)} s</td></tr>
<tr><th scope="row">Greatest force at one rod</th><td>${formatQuantity("force", raise.peakForce)} at ${formatQuantity("angle", raise.peakForceAngle)}</td></tr>
<tr><th scope="row">Least voltage at the actuators</th><td>${formatQuantity("voltage", raise.leastVoltage)}</td></tr></table>
<div class="figures">${figures.map((f) => `<figure>${f}</figure>`).join("\n")}</div>
<h3>Cautions</h3><ul>${move.cautions.map((c) => `<li><strong>${c.severity}</strong>: ${escapeXml(c.message)} <small>[${escapeXml(c.source)}]</small></li>`).join("")}</ul></section>`
}

/** Style of the report pages: readable on a phone, printable, no script. */
export const pageStyle: string =
  "body{font:16px/1.5 system-ui,sans-serif;max-width:72rem;margin:0 auto;padding:1rem;color:#222;background:#fff}" +
  "table{border-collapse:collapse}th,td{text-align:left;padding:.2rem .8rem .2rem 0;vertical-align:top}" +
  ".figures{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(100%,28rem),1fr));gap:1rem}figure{margin:0}svg{max-width:100%;height:auto}" +
  "@media print{section{break-before:page}section:first-of-type{break-before:auto}figure{break-inside:avoid}}"

/** The moves of some rigs as one self-contained HTML page with SVG pictures of poses and curves. */
export function movePage(title: string, rigs: readonly RigDocument[]): string {
  const sections = rigs.map((rig) => section(rig, moveTime(rig)))
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>${escapeXml(title)}</title><style>${pageStyle}</style></head>
<body><h1>${escapeXml(title)}</h1>
${sections.join("\n")}
</body></html>
`
}
