// Doc comments as text: what a hand wrote, and the generated part at its end.

const WIDTH = 120

/** Words of a doc comment, its stars taken off. */
export function linesOf(comment: string): string[] {
  return comment
    .replace(/^\/\*\*/, "")
    .replace(/\*\/$/, "")
    .split("\n")
    .map((line, i) => (i === 0 ? line.trim() : line.replace(/^\s*\*? ?/, "").trimEnd()))
    .join("\n")
    .trim()
    .split("\n")
}

/** A text in lines of limited width; the lines after the first are moved in by `hang`. */
export function wrapped(text: string, width: number, hang = ""): string[] {
  const lines: string[] = []
  let line = ""
  for (const word of text.split(/\s+/).filter(Boolean)) {
    const longer = line ? `${line} ${word}` : lines.length ? `${hang}${word}` : word
    if (line && longer.length > width) {
      lines.push(line)
      line = `${hang}${word}`
    } else line = longer
  }
  return line ? [...lines, line] : lines
}

/** A doc comment from its lines. */
export function commentOf(lines: readonly string[], indent: string): string {
  const [only = ""] = lines
  if (lines.length === 1 && indent.length + only.length + 7 <= WIDTH + 20) return `/** ${only} */`
  return ["/**", ...lines.map((line) => `${indent} *${line ? ` ${line}` : ""}`), `${indent} */`].join("\n")
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

/**
 * What a hand wrote of a property's comment: whole sentences before the brackets. Words without a full stop before them
 * are the label, which the description states.
 */
export function handwritten(comment: string | undefined): string {
  if (comment === undefined) return ""
  const text = linesOf(comment)
    .map((line) => (line === "" ? "\n\n" : line))
    .join(" ")
    .replace(/ *\n\n */g, "\n\n")
    .trim()
  const before = text.replace(/\s*\[[^[\]]*\]$/, "")
  return before === text || /[.!?)`]$/.test(before) ? before : ""
}

/** A property's comment: hand-written sentences or else the label, then the tail. */
export function propertyComment(comment: string | undefined, label: string, tail: string, indent: string): string {
  const paragraphs = `${handwritten(comment) || capital(label)} ${tail}`.split("\n\n")
  const single = paragraphs.length === 1 && indent.length + (paragraphs[0] as string).length + 7 <= WIDTH + 20
  const lines = single
    ? paragraphs
    : paragraphs.flatMap((paragraph, i) => [...(i ? [""] : []), ...wrapped(paragraph, WIDTH - indent.length - 3)])
  return commentOf(lines, indent)
}

/** The first line of what is generated in a solver's comment. */
export const BLOCK = "**Inputs**"

/** A solver's comment with its generated block: after what a hand wrote, before the tags. */
export function solverComment(comment: string, block: readonly string[]): string {
  const lines = linesOf(comment)
  const tags = lines.findIndex((line) => /^@\w/.test(line))
  const text = tags < 0 ? lines : lines.slice(0, tags)
  const start = text.indexOf(BLOCK)
  const hand = (start < 0 ? text : text.slice(0, start)).join("\n").trim().split("\n")
  return commentOf([...hand, "", ...block, ...(tags < 0 ? [] : ["", ...lines.slice(tags)])], "")
}
