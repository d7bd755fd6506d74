// The build sheet as Markdown; its templates are pictures of the page.
import { escapeMarkdown as text } from "../../drawing/index.js"
import type { SheetContent } from "./content.js"
import { countLine, cutRows, fuseLine, holeRows, needRows, partRows, readingRows, wireRows } from "./tables.js"
import { bendLine, COLUMNS, total } from "./words.js"

// a cell begins no line, so that a number with a point is no list
const cell = (words: string) => text(`.${words}`).slice(1)

const table = (columns: readonly string[], rows: readonly (readonly string[])[]) =>
  rows.length
    ? [
        `| ${columns.join(" | ")} |`,
        `| ${columns.map(() => "---").join(" | ")} |`,
        ...rows.map((row) => `| ${row.map(cell).join(" | ")} |`),
        "",
      ]
    : []

const section = (title: string, lines: readonly string[]) => (lines.length ? [`## ${title}`, "", ...lines] : [])

/** The sheet as Markdown. */
export function sheetMarkdown(content: SheetContent): string {
  const { name, note, summary, hazards, cautions, plates, bends, circuits, firstPower } = content
  return [
    `# Build sheet: ${text(name)}`,
    "",
    `**${text(summary)}**`,
    "",
    ...hazards.map((one) => `- ✗ ${text(one)}`),
    ...cautions.map((one) => `- ${text(one.message)} (${text(one.source)})`),
    "",
    ...(note ? [text(note), ""] : []),
    ...section(
      "To buy, as the document lists it",
      content.parts.length ? [...table(COLUMNS.parts, partRows(content)), `In all: ${total(content)}.`, ""] : [],
    ),
    ...section("What each must be able to do", table(COLUMNS.needs, needRows(content))),
    ...section("To cut", table(COLUMNS.cuts, cutRows(content))),
    ...section(
      "To drill",
      plates.flatMap((plate) => [
        `### ${text(plate.name)}`,
        "",
        `${countLine(plate)}. The template at true scale is on the page (HTML).`,
        "",
        ...table(COLUMNS.holes, holeRows(plate)),
      ]),
    ),
    ...section("To bend hot", [...bends.map((bend) => `- ${text(bend.name)}: ${text(bendLine(bend))}`), ...(bends.length ? [""] : [])]),
    ...section(
      "To connect",
      circuits.flatMap((circuit) => [`### ${text(circuit.bus)}`, "", fuseLine(circuit), "", ...table(COLUMNS.wires, wireRows(circuit))]),
    ),
    ...section(
      "First power",
      firstPower.flatMap((step, i) => [
        `### ${i + 1}. ${text(step.title)}`,
        "",
        text(step.act),
        "",
        ...table(COLUMNS.readings, readingRows(step)),
        `Switch off if ${text(step.stop)}.`,
        "",
      ]),
    ),
  ].join("\n")
}
