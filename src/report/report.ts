import { escapeXml, lineChart, stepChart, escapeMarkdown as text, textChart } from "../drawing/index.js"
import { chemistries, runtime } from "../pack/index.js"
import { formatQuantity } from "../quantity/index.js"
import { type Assessment, assess, type Finding } from "../rig/assess/index.js"
import { type Situation, situationOf } from "../rig/assess/situation.js"
import type { RigDocument } from "../rig/document/document.js"
import { posePicture } from "../rig/motion/picture.js"
import type { Move } from "../rig/move/summary.js"
import { citation, isNoSolution, type Result } from "../solver/index.js"
import { carriedLoad, carriedLoadSideView } from "../worn/index.js"

/** A rig's report in two forms. */
export interface Report {
  readonly markdown: string
  /** One self-contained page: no script, nothing loaded. */
  readonly html: string
}

const degrees = (angle: number) => (angle * 180) / Math.PI
const signs = { "falls short": "✗", marginal: "△", "not enough data": "?", meets: "✓" } as const
const percent = (margin: number | null) => (margin === null ? "—" : formatQuantity("ratio", margin, "%").replace("-", "−"))

/** Pictures of a rig, each with a caption; only those its document allows. */
function figures(situation: Situation): { readonly caption: string; readonly svg: string }[] {
  const { rig } = situation
  const found: { caption: string; svg: string }[] = []
  if (situation.arm())
    found.push({ caption: "Poses: actuator retracted, half-way, extended. Dashed: actuators. Rings: masses.", svg: posePicture(rig) })
  const move = situation.move()
  if (move && !isNoSolution(move)) {
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
    found.push({
      caption: move.why,
      svg: stepChart(
        "Where the seconds go, raising",
        raise.waterfall.map((s) => ({ label: s.label, total: s.time, added: s.added })),
        (time) => formatQuantity("time", time, "s"),
      ),
    })
    found.push({ caption: "How the arms move.", svg: curve("Angle against time", "angle, °", (p) => degrees(p.angle)) })
    found.push({
      caption: "What each rod has to push; negative: the load helps.",
      svg: curve("Force against the motion at one rod", "force, N", (p) => p.force),
    })
    found.push({ caption: "What arrives at the actuators.", svg: curve("Voltage at the actuators", "voltage, V", (p) => p.voltage) })
  }
  const poses = situation.poses()
  const mass = situation.mass()
  if (rig.wearer && poses && mass !== null) {
    const input = { ...rig.wearer, rigMass: mass, poses }
    if (carriedLoad.attempt(input).ok)
      found.push({
        caption: "Where the weight hangs, the lean that balances it, and the moments it makes.",
        svg: carriedLoadSideView(input),
      })
  }
  const day = packDay(situation)
  if (day) found.push({ caption: "The pack followed from full through the day's mean load to its cut-off.", svg: day })
  return found
}

/** The pack through the day as a chart, or null where the document does not allow it. */
function packDay(situation: Situation): string | null {
  const { pack, day } = situation.rig
  if (!pack || !day) return null
  const move = situation.move()
  const each = move && !isNoSolution(move) ? move.raise.energy.source + move.lower.energy.source : 0
  const power = (day.moves * each + day.standby * day.hours) / day.hours
  if (!(power > 0)) return null
  const out = runtime.attempt({
    series: pack.series,
    parallel: pack.parallel,
    chemistry: pack.chemistry,
    cellCapacity: pack.cellCapacity,
    cellResistance: pack.cellResistance,
    interconnectResistance: pack.extraResistance,
    pattern: [{ name: "the day", duration: day.hours, power }],
  })
  if (!out.ok) return null
  const points = out.value.history.map((p) => ({ x: p.time / 3600, y: p.voltage }))
  const cutOff = pack.series * chemistries[pack.chemistry].cellCutOffVoltage
  const end = Math.max(...points.map((p) => p.x), day.hours / 3600)
  return lineChart({
    title: "Pack through the day",
    x: "time, h",
    y: "voltage, V",
    series: [
      { label: "pack voltage", points },
      {
        label: "cut-off",
        points: [
          { x: 0, y: cutOff },
          { x: end, y: cutOff },
        ],
      },
    ],
  })
}

function markdownOf(rig: RigDocument, assessment: Result<Assessment>, situation: Situation): string {
  const row = (f: Finding) =>
    `| ${signs[f.verdict]} ${f.verdict} | ${text(f.title)} | ${text(f.shownValue)} | ${text(f.shownLimit)} | ${percent(f.margin)} | ${f.missing ? `missing: \`${f.missing}\`` : text(f.why)} | ${text(f.source)} |`
  const move = situation.move()
  const chart =
    move && !isNoSolution(move)
      ? [
          "## The move",
          "",
          text(move.why),
          "",
          "```text",
          textChart(
            [
              { label: "up", points: move.raise.curve.map((p) => ({ x: p.time, y: degrees(p.angle) })) },
              { label: "down", points: move.lower.curve.map((p) => ({ x: p.time, y: degrees(p.angle) })) },
            ],
            { x: "s", y: "angle, °" },
          ),
          "```",
          "",
        ]
      : []
  return [
    `# ${text(rig.name)}`,
    "",
    text(assessment.summary),
    "",
    "| verdict | what | value | limit | margin | why | limit from |",
    "| --- | --- | ---: | ---: | ---: | --- | --- |",
    ...assessment.findings.map(row),
    "",
    ...chart,
    "## Cautions",
    "",
    ...assessment.cautions.map((c) => `- **${c.severity}**: ${text(c.message)} (${text(citation(c.source))})`),
    "",
  ].join("\n")
}

const style = `:root{color-scheme:light}body{font:16px/1.5 system-ui,sans-serif;max-width:76rem;margin:0 auto;padding:1rem;color:#222;background:#fff}
h1{line-height:1.2}table{border-collapse:collapse;width:100%}th,td{text-align:left;padding:.3rem .6rem .3rem 0;vertical-align:top;border-top:1px solid #ddd}
td.n{white-space:nowrap;text-align:right}.v{white-space:nowrap;font-weight:600}.short{color:#8c1d18}.near{color:#7a4a00}.unknown{color:#444}.fine{color:#1d5b3a}
.figures{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(100%,28rem),1fr));gap:1.2rem}figure{margin:0}figcaption{font-size:.9rem;color:#444}svg{max-width:100%;height:auto}small{color:#555}
@media (max-width:40rem){table,caption,tbody,tr,th,td{display:block}caption{text-align:left}thead{position:absolute;left:-999rem}tr{border-top:2px solid #ccc;padding:.5rem 0}td{border:0;padding:0}td.n{text-align:left}td.n::before{content:attr(data-label) " "}}
@media print{body{font-size:11pt}figure,tr{break-inside:avoid}}`
const tones = { "falls short": "short", marginal: "near", "not enough data": "unknown", meets: "fine" } as const

function pageOf(rig: RigDocument, assessment: Result<Assessment>, situation: Situation): string {
  const row = (f: Finding) =>
    `<tr><td class="v ${tones[f.verdict]}">${signs[f.verdict]} ${f.verdict}</td><th scope="row">${escapeXml(f.title)}</th><td class="n" data-label="value">${escapeXml(f.shownValue)}</td><td class="n" data-label="limit">${escapeXml(f.shownLimit)}</td><td class="n" data-label="margin">${percent(f.margin)}</td><td>${f.missing ? `Missing: <code>${escapeXml(f.missing)}</code>` : escapeXml(f.why)} <small>[${escapeXml(f.source)}]</small></td></tr>`
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>${escapeXml(rig.name)}</title><style>${style}</style></head>
<body><main><h1>${escapeXml(rig.name)}</h1>${rig.note ? `<p>${escapeXml(rig.note)}</p>` : ""}
<p><strong>${escapeXml(assessment.summary)}</strong></p>
<table><caption>Checks, most critical first</caption><thead><tr><th scope="col">verdict</th><th scope="col">what</th><th scope="col">value</th><th scope="col">limit</th><th scope="col">margin</th><th scope="col">why, and where the limit comes from</th></tr></thead>
<tbody>${assessment.findings.map(row).join("\n")}</tbody></table>
<h2>Pictures</h2><div class="figures">${figures(situation)
    .map((f) => `<figure>${f.svg}<figcaption>${escapeXml(f.caption)}</figcaption></figure>`)
    .join("\n")}</div>
<h2>Cautions</h2><ul>${assessment.cautions.map((c) => `<li><strong>${c.severity}</strong>: ${escapeXml(c.message)} <small>[${escapeXml(citation(c.source))}]</small></li>`).join("\n")}</ul></main></body></html>
`
}

/**
 * The assessment of a rig as Markdown and as one self-contained HTML page with SVG pictures (poses, angle
 * against time, where the seconds go, the pack through the day): readable on a phone, printable, no script.
 *
 * @param rig - a rig document, partial ones too
 * @throws InputError naming every fault of the document
 */
export function report(rig: RigDocument): Report {
  const assessment = assess(rig)
  const situation = situationOf(assess.read(rig))
  return { markdown: markdownOf(rig, assessment, situation), html: pageOf(rig, assessment, situation) }
}
