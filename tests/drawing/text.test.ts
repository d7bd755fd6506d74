// Names that came from outside: shown as they are, whatever they hold, in Markdown as in pictures.
import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { escapeMarkdown, escapeXml, plainText } from "../../src/drawing/index.js"
import type { FirstEdition } from "../../src/report/index.js"
import { report } from "../../src/report/index.js"
import { display, InputError, solver } from "../../src/solver/index.js"
import { voltageDrop } from "../../src/wire/index.js"
import { demo } from "../helpers/rigs.js"

// a general Markdown library (typedoc brings it) reads what we write
const library = "markdown-it"
const { default: MarkdownIt } = (await import(/* @vite-ignore */ library)) as {
  readonly default: new (options: { html: boolean }) => { render(text: string): string }
}
const markdown = new MarkdownIt({ html: true })

const forbidden = new RegExp(
  `[${["\\u0000-\\u0008", "\\u000b-\\u001f", "\\u007f-\\u009f", "\\u061c", "\\u200e\\u200f", "\\u202a-\\u202e", "\\u2066-\\u2069"].join("")}]`,
)
const hostile = [
  "<script>alert(1)</script>",
  "<img src=x onerror=alert(1)>",
  "[moth](javascript:alert(1))",
  "![moth](http://moth.invalid/a.png)",
  "**wing** _tail_ ~~jaw~~ `code`",
  "a | b | c",
  "# heading #",
  "- entry",
  "1. entry",
  "=== ---",
  "&lt;b&gt; &copy;",
  "back\\slash",
  "\u001b[31mred\u0007",
  "pack\u202eA 5\u2066",
  "two\r\n\nlines",
]
const html = (text: string) => text.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;").replace(/"/g, "&quot;")
/** A text as Markdown shows it: its spaces run together at both ends. */
const read = (text: string) => html(plainText(text).trim())

describe("a text in Markdown", () => {
  it.each(hostile)("%j reads as it is, in a heading, an entry and a table", (text) => {
    expect(markdown.render(`# ${escapeMarkdown(text)}`)).toBe(`<h1>${read(text)}</h1>\n`)
    expect(markdown.render(`- **x**: ${escapeMarkdown(text)}`)).toContain(`<strong>x</strong>: ${read(text)}</li>`)
    const table = markdown.render(`| a | b |\n| --- | --- |\n| ${escapeMarkdown(text)} | end |`)
    expect(table.match(/<td>/g)).toHaveLength(2)
    expect(table).toContain(`<td>${read(text)}</td>`)
    expect(markdown.render(escapeMarkdown(text))).toBe(`<p>${read(text)}</p>\n`)
  })
  it("any text does", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 40 }), (text) => {
        // the library runs spaces of other kinds together at the ends
        fc.pre(/^[^\s\ufeff]/.test(text) && /[^\s\ufeff]$/.test(text) && !/[\u00a0\u1680\u2000-\u200b\u3000]/.test(text))
        expect(markdown.render(`# ${escapeMarkdown(text)}`)).toBe(`<h1>${read(text)}</h1>\n`)
      }),
      { numRuns: 300 },
    )
  })
})

describe("hostile names in a rig", () => {
  /** The rig with every name in it made hostile. */
  const renamed = (value: unknown, text: string): unknown => {
    if (Array.isArray(value)) return value.map((part) => renamed(part, text))
    if (typeof value !== "object" || value === null) return value
    return Object.fromEntries(
      Object.entries(value).map(([key, part]) => [key, typeof part === "string" && /^(name|note)$/.test(key) ? text : renamed(part, text)]),
    )
  }
  it.each(hostile)("%j: harmless in both reports", (text) => {
    const rig = renamed(demo("lantern-moth-cells"), text) as FirstEdition
    const made = report(rig)
    expect(made.html).not.toMatch(forbidden)
    expect(made.markdown).not.toMatch(forbidden)
    expect(made.html).not.toMatch(/<script|<img|<a /)
    expect(made.html).toContain(`<h1>${escapeXml(text)}</h1>`)
    const shown = markdown.render(made.markdown)
    expect(shown).not.toMatch(/<script|<img|<a /)
    expect(shown).toContain(`<h1>${read(text)}</h1>`)
    // every row has the columns of its table's head, whatever the names hold
    const cells = shown
      .split("<tr>")
      .slice(1)
      .map((row) => row.match(/<t[hd][ >]/g)?.length)
    const written = made.markdown.split("\n").filter((line) => line.startsWith("| ") && !line.startsWith("| ---"))
    expect(cells.length).toBe(written.length)
    expect(cells.every((n) => n === 5 || n === 7)).toBe(true)
  })
})

describe("hostile words in what a terminal shows", () => {
  it("are plain in a fault, by value and by key", () => {
    const refused = voltageDrop.attempt({ current: "\u001b[2J4 kg", length: 1, awg: 20, "le\u202eft": 1 })
    expect(refused.ok).toBe(false)
    if (!refused.ok && refused.error instanceof InputError) {
      expect(refused.error.issues.length).toBe(2)
      for (const issue of refused.error.issues) expect(issue.message).not.toMatch(forbidden)
    }
  })
  it("are plain in a printed result, which keeps them as they are", () => {
    const said = solver<{ name: string }, { readonly name: string }>(
      "said",
      "says a name",
      (si) => ({ name: si.name }),
      () => ({
        input: { name: { kind: "text", label: "name", min: 0, max: 100 } },
        output: { name: { kind: "text", label: "name" } },
        example: { name: "moth" },
        formulae: [],
        sources: [],
      }),
    )({ name: "mo\u001b[31mth\u202e" })
    expect(said.name).toBe("mo\u001b[31mth\u202e")
    expect(display(said)).not.toMatch(forbidden)
  })
})
