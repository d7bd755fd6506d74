// Words people read: plain trade English in every text of the descriptions, the messages, the comments that show on hover, the
// pages and the examples.
import { readdirSync, readFileSync } from "node:fs"
import { join } from "node:path"
import ts from "typescript"
import { expect, it } from "vitest"
import { root } from "../helpers/packed.js"

interface Banned {
  readonly word: RegExp
  readonly instead: string
  /** Places where it is the trade's own word. */
  readonly but?: readonly string[]
}

/** Words that are not to be read anywhere, each with what to write in its place. */
const banned: readonly Banned[] = [
  { word: /reckon/i, instead: "calculate" },
  { word: /\bgreatest\b/i, instead: "maximum, highest or largest" },
  { word: /(?<!\bat )\bleast\b(?! squares)/i, instead: "minimum, lowest or smallest" },
  { word: /\bnought\b/i, instead: "0 or zero" },
  { word: /\b(rods?|arms?|pins?|actuators?|when) drawn in\b|\brun out\b/i, instead: "retracted, extended" },
  { word: /\btimes in hand\b/i, instead: "safety factor" },
  { word: /\bfrom memory\b/i, instead: "not verified against the document" },
  // the end of a strap or of a bungee's rail is an anchor in the trade
  { word: /\banchors?\b/i, instead: "fixed pivot, moving pivot", but: ["src/worn/load/strap-pressure", "docs/inputs.md"] },
  { word: /\b(maker|supplier)'s sheets?\b/i, instead: "datasheet" },
  {
    word: /\brule free\b|\bfree capacity\b|\ball in order\b|\bgo on for ever\b|\bbearable as planned\b|\bfree to go\b/i,
    instead: "words that give no permission",
  },
  { word: /\bmost threatening\b/i, instead: "most critical" },
  { word: /\bsmall swings\b|\broots fall together\b|\bother root\b/i, instead: "stable, at maximum power, second (unstable) voltage" },
  {
    word: /\bwall folds at\b|\bthickness borne\b|\bsqueeze (on|from|as)\b/i,
    instead: "local buckling stress, bearing thickness, clamp force",
  },
  { word: /\bof the (first|second) column\b|\bfirst column\b/i, instead: "first, second datasheet voltage" },
  { word: /\bbeaten by at most\b|\bboxes looked at\b/i, instead: "gap to proven optimum, search boxes" },
  { word: /\bleft over(?! a sheave)\b|\bof it heat\b|\bmotions left before\b/i, instead: "a label that makes sense alone" },
]

const strip = (text: string) => text.replace(/\{[^{}]*\}|`[^`]*`/g, "…")

const faultsOf = (file: string, texts: readonly string[]) =>
  banned.flatMap(({ word, instead, but = [] }) =>
    but.some((place) => file.startsWith(place))
      ? []
      : texts.filter((text) => word.test(strip(text))).map((text) => `${file}: "${text.slice(0, 120)}": ${instead}`),
  )

const filesIn = (folder: string, ends: RegExp): string[] =>
  readdirSync(join(root, folder), { recursive: true })
    .map((file) => `${folder}/${String(file)}`)
    .filter((file) => ends.test(file))

/** Texts of a program that people read: what is said in words, and comments that show on hover. */
function textsOf(file: string): string[] {
  const text = readFileSync(join(root, file), "utf8")
  // most files have none of the words, not even in a name
  if (!banned.some(({ word }) => word.test(text))) return []
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.ES2022, true)
  const found: string[] = []
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) return
    for (const range of ts.getLeadingCommentRanges(text, node.getFullStart()) ?? []) found.push(text.slice(range.pos, range.end))
    if (ts.isPropertyAssignment(node)) {
      const name = node.name.getText()
      // what documents are called is theirs
      if (["title", "where", "edition"].includes(name) && /\/(sources|data)[^/]*\.ts$/.test(file)) return
      if (["label", "help", "meaning"].includes(name) && ts.isStringLiteralLike(node.initializer)) found.push(node.initializer.text)
    }
    if (ts.isStringLiteralLike(node) || ts.isTemplateHead(node) || ts.isTemplateMiddleOrTemplateTail(node))
      if (node.text.includes(" ")) found.push(node.text)
    ts.forEachChild(node, visit)
  }
  visit(source)
  return [...new Set(found)]
}

it.each(["src", "examples"])("texts of %s say what the trade says", (folder) => {
  const files = filesIn(folder, /\.(ts|mjs)$/)
  expect(files.length).toBeGreaterThan(5)
  expect(files.flatMap((file) => faultsOf(file, textsOf(file)))).toEqual([])
})

it("pages and documents say what the trade says", () => {
  const pages = ["README.md", "DEVELOPERS.md", "CHANGELOG.md", ...filesIn("docs", /\.md$/), ...filesIn("shared/rigs", /\.json$/)]
  // the glossary says what else a thing is called
  const lines = pages
    .filter((file) => file !== "docs/glossary.md")
    .map((file) => [file, readFileSync(join(root, file), "utf8").split("\n")] as const)
  expect(lines.flatMap(([file, texts]) => faultsOf(file, texts))).toEqual([])
})

it("finds a word that is not the trade's, and no name in code", () => {
  expect(
    faultsOf("src/wire/a.ts", ["the greatest of them", "at least one", "by least squares", "no more than {least voltage}"]),
  ).toHaveLength(1)
  expect(faultsOf("src/wire/a.ts", ["the least voltage", "slips its anchor"])).toHaveLength(2)
})
