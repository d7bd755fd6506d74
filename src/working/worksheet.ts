import { sheetLines } from "./html.js"
import { givenMarkdown } from "./render.js"
import type { Working } from "./working.js"

/** A sheet for a class as Markdown: the formulae with their numbers left out, the answers apart below. */
export function worksheetMarkdown(working: Working): string {
  const { asked, answers } = sheetLines(working)
  return [
    ...givenMarkdown(working),
    "",
    ...asked.map(([meaning, line], i) => `${i + 1}. ${meaning}\n\n   \`${line}\``),
    "",
    "### Answers",
    "",
    ...answers.map((line, i) => `${i + 1}. \`${line}\``),
  ].join("\n")
}
