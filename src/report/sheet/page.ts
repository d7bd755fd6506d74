// The build sheet as one page to print: A4 or Letter, each template on a page of its own.
import { escapeXml as text } from "../../drawing/index.js"
import type { SheetContent, SheetStep } from "./content.js"
import { countLine, cutRows, fuseLine, holeRows, needRows, partRows, readingRows, wireRows } from "./tables.js"
import type { SheetTemplate } from "./templates.js"
import { bendLine, COLUMNS, total } from "./words.js"

const style = `:root{color-scheme:light dark;--paper:#fcfbf8;--ink:#20262c;--quiet:#56606a;--line:#d9d5cc;--short:#9c1f17}
@media (prefers-color-scheme:dark){:root{--paper:#15181b;--ink:#ebe7df;--quiet:#aab3bb;--line:#3a4046;--short:#ff9a8d}}
*{box-sizing:border-box}body{font:1rem/1.45 system-ui,sans-serif;margin:0;color:var(--ink);background:var(--paper)}
main{max-width:60rem;margin:0 auto;padding:1rem 1.2rem 3rem}h1{font-size:1.5rem;line-height:1.2}h2{font-size:1.15rem;margin:1.6rem 0 .4rem}h3{font-size:1rem;margin:1.2rem 0 .3rem}
table{border-collapse:collapse;width:100%}th,td{text-align:start;vertical-align:top;padding:.3rem .8rem .3rem 0;border-block-start:1px solid var(--line);font-weight:400;overflow-wrap:break-word}
thead th{color:var(--quiet);font-size:.85em;border-block-start:0}.wide{overflow-x:auto}.bad{color:var(--short);font-weight:600}.quiet{color:var(--quiet)}
.readings td:last-child{border-block-end:1px solid var(--ink);min-inline-size:5rem}.template{background:#fff;color:#000;overflow-x:auto}.template svg{display:block}
@media print{:root{color-scheme:light;--paper:#fff;--ink:#000;--quiet:#444;--line:#bbb;--short:#9c1f17}@page{margin:12mm}html{font-size:9.5pt}main{max-width:none;padding:0}
h2,h3{break-after:avoid}tr,li{break-inside:avoid}.step{break-inside:avoid}.new{break-before:page}.templates>h2{display:none}.template{break-before:page;break-inside:avoid;overflow:visible}.template h3{margin:0 0 2mm;font-size:9pt;line-height:4mm}}`

const table = (columns: readonly string[], rows: readonly (readonly string[])[], caption: string, css = "") =>
  rows.length
    ? `<div class="wide"><table${css}><caption hidden>${text(caption)}</caption><thead><tr>${columns.map((c) => `<th scope="col">${c}</th>`).join("")}</tr></thead><tbody>${rows.map((row) => `<tr>${row.map((cell) => `<td>${text(cell)}</td>`).join("")}</tr>`).join("\n")}</tbody></table></div>`
    : ""

const section = (title: string, inside: string, css = "") => (inside ? `<section${css}><h2>${title}</h2>${inside}</section>` : "")

const stepOf = (step: SheetStep, i: number) =>
  `<div class="step"><h3>${i + 1}. ${text(step.title)}</h3><p>${text(step.act)}</p>${table(COLUMNS.readings, readingRows(step), `${step.title}: readings`, ' class="readings"')}<p><b>Switch off if</b> ${text(step.stop)}.</p></div>`

const templateOf = ({ name, pages }: SheetTemplate) =>
  pages
    .map(
      (page, i) =>
        `<div class="template"><h3>${text(name)}${pages.length > 1 ? `, sheet ${i + 1} of ${pages.length}` : ""}</h3>${page}</div>`,
    )
    .join("\n")

/** The sheet as one page: no script, nothing loaded. */
export function sheetPage(content: SheetContent, templates: readonly SheetTemplate[]): string {
  const { name, note, summary, hazards, cautions, plates, bends, circuits, firstPower } = content
  return `<!doctype html>
<html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1"><title>Build sheet: ${text(name)}</title><style>${style}</style></head>
<body><main><h1>Build sheet: ${text(name)}</h1>
<p><b>${text(summary)}</b></p>
<ul>${hazards.map((one) => `<li class="bad">✗ ${text(one)}</li>`).join("")}${cautions.map((one) => `<li>${text(one.message)} <small class="quiet">${text(one.source)}.</small></li>`).join("")}</ul>
${note ? `<p class="quiet">${text(note)}</p>` : ""}
${section("To buy, as the document lists it", content.parts.length ? `${table(COLUMNS.parts, partRows(content), "Parts")}<p>In all: ${text(total(content))}.</p>` : "")}
${section("What each must be able to do", table(COLUMNS.needs, needRows(content), "What to buy by what it must do"))}
${section("To cut", table(COLUMNS.cuts, cutRows(content), "Pieces to cut"))}
${section("To drill", plates.map((plate) => `<h3>${text(plate.name)}</h3><p>${countLine(plate)}.</p>${table(COLUMNS.holes, holeRows(plate), `${plate.name}: holes`)}`).join("\n"))}
${section("To bend hot", bends.length ? `<ul>${bends.map((bend) => `<li><b>${text(bend.name)}</b>: ${text(bendLine(bend))}</li>`).join("")}</ul>` : "")}
${section("To connect", circuits.map((circuit) => `<h3>${text(circuit.bus)}</h3><p>${text(fuseLine(circuit))}</p>${table(COLUMNS.wires, wireRows(circuit), `${circuit.bus}: wires`)}`).join("\n"), ' class="new"')}
${section("First power", firstPower.map(stepOf).join("\n"), ' class="new"')}
${section("Templates at true scale", templates.map(templateOf).join("\n"), ' class="templates"')}
</main></body></html>
`
}
