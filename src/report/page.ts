// The report as one page: the answer and one picture first, then checks by subject, cautions, details folded.
import { escapeXml as text } from "../drawing/index.js"
import type { Picture } from "../figure/pose.js"
import type { RigFinding } from "../rig/check/assess.js"
import type { MotionAnswer, ReportCaution, ReportContent, SubjectChecks, WayAnswer } from "./content.js"
import { style } from "./style.js"
import {
  against,
  capital,
  changeHeading,
  defaultsLine,
  inTime,
  lack,
  lots,
  many,
  marks,
  metLine,
  share,
  states,
  time,
  wanted,
} from "./words.js"

const tones = {
  "falls short": "short",
  marginal: "near",
  "not enough data": "open",
  "cannot be judged": "open",
  meets: "fine",
} as const satisfies Readonly<Record<RigFinding["verdict"], string>>

/** Share of a limit as a short bar and in figures. */
function used({ utilisation }: RigFinding): string {
  const shown = share(utilisation)
  if (!shown) return ""
  return `<span class="use"><i style="inline-size:${Math.round(100 * Math.min(1, Math.max(0, utilisation ?? 0)))}%"></i></span>${shown}`
}

function row(f: RigFinding): string {
  const tone = tones[f.verdict]
  const small = [f.condition && `Condition: ${f.condition}`, f.source && `limit from ${f.source}`].filter(Boolean).join("; ")
  return `<tr><td class="v ${tone}">${marks[f.verdict]} ${f.verdict}</td><th scope="row">${text(capital(f.title))}</th><td class="n">${text(f.shownValue)}</td><td class="n">${text(f.shownLimit)}</td><td class="n ${tone}">${used(f)}</td><td class="why">${text(capital(f.sentence))} <small>${text(small)}${small ? "." : ""}</small>${f.change === null ? "" : `<br><b>Change</b>: ${text(f.change)}`}</td></tr>`
}

const table = (findings: readonly RigFinding[], caption: string) =>
  `<table class="checks"><caption hidden>${text(caption)}</caption><thead><tr><th scope="col">verdict</th><th scope="col">check</th><th scope="col">found</th><th scope="col">must be</th><th scope="col">of its limit</th><th scope="col">finding</th></tr></thead><tbody>${findings.map(row).join("\n")}</tbody></table>`

const fold = (summary: string, inside: string) => `<details><summary>${text(summary)}</summary>${inside}</details>`

function openItem(f: RigFinding, all: readonly SubjectChecks[]): string {
  const why = lack(f, all)
  return `<li><b>${text(capital(f.title))}</b>${against(f) ? ` (<span class="n">${text(against(f))}</span>)` : ""}: ${text(capital(f.sentence))}${why ? ` <small>${why.word}: ${f.missing ? `<code>${text(why.what)}</code>` : text(why.what)}</small>` : ""}</li>`
}

function subjectOf({ subject, findings }: SubjectChecks, all: readonly SubjectChecks[]): string {
  const { pressing, notMade, met } = lots(findings)
  const open = notMade.map((f) => openItem(f, all))
  const folds = [
    { line: `? ${many(open.length, "check was", "checks were")} not made`, inside: `<ul>${open.join("")}</ul>`, is: open.length > 0 },
    { line: `✓ ${metLine(met)}`, inside: met.length ? table(met, `${subject}: met`) : "", is: met.length > 0 },
  ].filter((one) => one.is)
  const name = text(capital(subject))
  if (pressing.length)
    return `<section><h3>${name}</h3>${table(pressing, `${subject}: falls short or comes close`)}${folds.map((one) => fold(one.line, one.inside)).join("")}</section>`
  // nothing of it presses: one line says so
  return `<details><summary><h3>${name}</h3> ${text(folds.map((one) => one.line).join("; "))}</summary>${folds.map((one) => one.inside).join("")}</details>`
}

const hazard = (f: RigFinding) =>
  `<li><b class="${tones[f.verdict]}">${marks[f.verdict]} ${text(capital(f.subject))}, ${text(f.title)}</b>${against(f) ? ` (<span class="n">${text(against(f))}</span>)` : ""}: ${text(capital(f.sentence))}</li>`

function cautionOf({ severity, message, source, raisedBy }: ReportCaution): string {
  const by = raisedBy.map(({ title, subject }) => `${title} (${subject})`).join(", ")
  return `<li><b>${capital(severity)}</b>: ${text(message)} <small>${text([by && `Raised by ${by}`, source].filter(Boolean).join("; "))}.</small></li>`
}

function timeCell(way: WayAnswer): string {
  const fits = inTime(way)
  const tone = fits === null ? "" : fits ? " fine" : " short"
  const mark = fits === null ? "" : fits ? "✓ " : "✗ "
  return `<td class="n${tone}">${mark}${time(way)}</td><td class="n">${wanted(way)}</td>`
}

const motionRow = ({ name, out, back }: MotionAnswer) =>
  `<tr><th scope="row">${text(capital(name))}</th>${timeCell(out)}${timeCell(back)}</tr>`

/** Remedies told; the checks tell the rest, each with its own. */
const TOLD = 6

/** What to change: the list, and what nothing mends. */
function changesOf({ changes, unmended }: ReportContent): string {
  if (changes === null || !(changes.length || unmended.length)) return ""
  const list = changes.slice(0, TOLD).map((one) => `<li>${text(one)}</li>`)
  const open = unmended.map((one) => `<li><b>${text(capital(one.subject))}, ${text(one.title)}</b>: ${text(one.text)}</li>`)
  return `<h2>What to change</h2>
${list.length ? `<p class="quiet">Each was tried on the whole assessment as it is told, and makes no verdict worse; one at a time unless it says otherwise.</p><ol>${list.join("\n")}</ol>` : ""}${open.length ? fold(many(open.length, "finding that nothing tried mends", "findings that nothing tried mends"), `<ul>${open.join("\n")}</ul>`) : ""}`
}

/** The report as one page: no script, nothing loaded. */
export function pageOf(content: ReportContent, picture: Picture | null): string {
  const { name, motions, first, hazards, hazardsUnknown, subjects, cautions } = content
  const { mark, tone } = states[content.state]
  const [standing, ...raised] = cautions
  const loud = raised.filter((c) => c.severity === "warning")
  const rest = raised.filter((c) => c.severity !== "warning")
  // told once: what falls short first is not told again under it
  const further = hazards.filter((f) => f !== first)
  const shown = further.slice(0, 4)
  const left = further.length - shown.length
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>${text(name)}</title><style>${style}</style></head>
<body><main><h1>${text(name)}</h1>
<div class="first"><div>
<p class="answer ${tone}">${mark} ${text(content.answer)}</p>
<table class="times"><caption hidden>Times, the worst of all conditions</caption><thead><tr><th scope="col">motion</th><th scope="col">out</th><th scope="col">wanted</th><th scope="col">back</th><th scope="col">wanted</th></tr></thead><tbody>${motions.map(motionRow).join("")}</tbody></table>
${first ? `<h2>What falls short first${first.severity === "safety" ? ", and could hurt somebody" : ""}</h2><ul>${hazard(first)}</ul>${content.changes?.length ? "" : first.change === null ? "" : `<p>${text(first.change)}</p>`}` : ""}
${content.changes?.[0] ? `<h2>${changeHeading(content.counts.fallsShort)}</h2><p>${text(content.changes[0])}</p>` : ""}
<h2>What ${first?.severity === "safety" ? "else " : ""}could hurt somebody</h2><ul>${shown.map(hazard).join("")}${left ? `<li>${many(left, "more safety check", "more safety checks")} below.</li>` : ""}${loud.length ? `<li>${many(loud.length, "warning that goes", "warnings that go")} with the checks, below.</li>` : ""}${hazardsUnknown ? `<li><b class="open">? ${many(hazardsUnknown, "safety check", "safety checks")} could not be made</b>: what is not checked is not known to be safe.</li>` : ""}</ul>
${standing ? `<p class="quiet">${text(standing.message)} ${defaultsLine(content.defaults)}</p>` : ""}
</div>${picture ? `<figure>${picture.svg}<figcaption>${text(picture.caption)}</figcaption></figure>` : ""}</div>
${content.note ? `<p class="quiet">${text(content.note)}</p>` : ""}
${changesOf(content)}
<h2>Checks</h2>
<p class="quiet">Lines with a triangle unfold; on paper only what is unfolded is printed.</p>
${subjects.map((one) => subjectOf(one, subjects)).join("\n")}
<h2>Cautions</h2>
${cautions.length > 1 ? "" : '<p class="quiet">None but the one above.</p>'}${loud.length ? fold(many(loud.length, "warning", "warnings"), `<ul>${loud.map(cautionOf).join("\n")}</ul>`) : ""}
${rest.length ? fold(many(rest.length, "further caution", "further cautions"), `<ul>${rest.map(cautionOf).join("\n")}</ul>`) : ""}
</main></body></html>
`
}
