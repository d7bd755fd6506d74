// Writes what the descriptions say into comments and pages, or says where one says otherwise.
import { existsSync, readFileSync, writeFileSync } from "node:fs"
import { join, relative } from "node:path"
import { pages } from "./pages.js"
import { differences, mended } from "./places.js"

/** Runs the generator: `--check` only compares. Answers the exit code. */
export function main(root: string, modules: Readonly<Record<string, Readonly<Record<string, unknown>>>>, check: boolean): number {
  const found = differences(root, modules)
  const stale = Object.entries(pages(modules)).filter(([path, text]) => {
    const file = join(root, path)
    return !existsSync(file) || readFileSync(file, "utf8") !== text
  })
  if (check) {
    for (const { file, line, about } of found)
      console.error(`${relative(root, file)}:${line}: the comment is not what ${about} is described as`)
    for (const [path] of stale) console.error(`${path}:1: the page is not what the descriptions say`)
    if (found.length + stale.length === 0) return 0
    console.error("npm run fix writes comments and pages from the descriptions")
    return 1
  }
  for (const file of new Set(found.map((difference) => difference.file)))
    writeFileSync(
      file,
      mended(
        readFileSync(file, "utf8"),
        found.filter((difference) => difference.file === file),
      ),
    )
  for (const [path, text] of stale) writeFileSync(join(root, path), text)
  if (found.length) console.log(`${found.length} comments written from the descriptions`)
  for (const [path] of stale) console.log(`${path} written`)
  return 0
}
