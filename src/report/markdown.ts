// The report as Markdown: everything, in the page's order.
import { escapeMarkdown as text } from "../drawing/index.js"
import type { RigFinding } from "../rig/check/assess.js"
import type { ReportContent } from "./content.js"
import { against, capital, changeHeading, defaultsLine, lack, lots, many, marks, metLine, share, states, time, wanted } from "./words.js"

const row = (f: RigFinding) =>
  `| ${marks[f.verdict]} ${f.verdict} | ${text(f.title)} | ${text(f.shownValue)} | ${text(f.shownLimit)} | ${share(f.utilisation)} | ${text(capital(f.sentence))}${f.change === null ? "" : ` Change: ${text(f.change)}`} | ${text([f.condition, f.source].filter(Boolean).join("; "))} |`

const table = (findings: readonly RigFinding[]) => [
  "| verdict | check | found | must be | of its limit | finding | condition; limit from |",
  "| --- | --- | ---: | ---: | ---: | --- | --- |",
  ...findings.map(row),
  "",
]

const bullet = (f: RigFinding) =>
  `- ${marks[f.verdict]} ${text(capital(f.subject))}, ${text(f.title)}${against(f) ? ` (${text(against(f))})` : ""}: ${text(capital(f.sentence))}`

/** The report as Markdown. */
export function markdownOf(content: ReportContent): string {
  const { motions, first, hazards, hazardsUnknown, subjects, cautions, changes, unmended } = content
  const [standing] = cautions
  return [
    `# ${text(content.name)}`,
    "",
    `**${states[content.state].mark} ${text(content.answer)}**`,
    "",
    "| motion | out | wanted | back | wanted |",
    "| --- | ---: | ---: | ---: | ---: |",
    ...motions.map((m) => `| ${text(m.name)} | ${time(m.out)} | ${wanted(m.out)} | ${time(m.back)} | ${wanted(m.back)} |`),
    "",
    ...(first ? [`## What falls short first${first.severity === "safety" ? ", and could hurt somebody" : ""}`, "", bullet(first), ""] : []),
    ...(changes?.[0] ? [`## ${changeHeading(content.counts.fallsShort)}`, "", text(changes[0]), ""] : []),
    `## What ${first?.severity === "safety" ? "else " : ""}could hurt somebody`,
    "",
    // told once: what falls short first stands above
    ...hazards.filter((f) => f !== first).map(bullet),
    ...(hazardsUnknown
      ? [`- ? ${many(hazardsUnknown, "safety check", "safety checks")} could not be made: what is not checked is not known to be safe.`]
      : []),
    ...(standing ? [`- ${text(standing.message)}`] : []),
    "",
    defaultsLine(content.defaults),
    "",
    ...(content.note ? [text(content.note), ""] : []),
    ...(changes?.length || unmended.length
      ? [
          "## What to change",
          "",
          ...(changes ?? []).map((one, i) => `${i + 1}. ${text(one)}`),
          ...unmended.map((one) => `- ${text(capital(one.subject))}, ${text(one.title)}: ${text(one.text)}`),
          "",
        ]
      : []),
    "## Checks",
    "",
    ...subjects.flatMap(({ subject, findings }) => {
      const { pressing, notMade, met } = lots(findings)
      return [
        `### ${text(capital(subject))}`,
        "",
        ...(pressing.length ? table(pressing) : []),
        ...notMade.map((f) => {
          const why = lack(f, subjects)
          return `- ? ${text(f.title)}: ${text(capital(f.sentence))}${why ? ` (${why.word}: ${text(why.what)})` : ""}`
        }),
        ...(notMade.length ? [""] : []),
        ...(met.length ? [`${metLine(met)}:`, "", ...table(met)] : []),
      ]
    }),
    "## Cautions",
    "",
    ...cautions.map((c) => {
      const by = c.raisedBy.map(({ title, subject }) => `${title} (${subject})`).join(", ")
      return `- **${c.severity}**: ${text(c.message)} (${text([by && `raised by ${by}`, c.source].filter(Boolean).join("; "))})`
    }),
    "",
  ].join("\n")
}
