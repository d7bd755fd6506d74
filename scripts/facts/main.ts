// Writes what the descriptions say into the comments, or says where a comment says otherwise.
import { readFileSync, writeFileSync } from "node:fs"
import { relative } from "node:path"
import { differences, mended } from "./places.js"

/** Runs the generator: `--check` only compares. Answers the exit code. */
export function main(root: string, modules: Readonly<Record<string, Readonly<Record<string, unknown>>>>, check: boolean): number {
  const found = differences(root, modules)
  if (check) {
    for (const { file, line, about } of found)
      console.error(`${relative(root, file)}:${line}: the comment is not what ${about} is described as`)
    if (found.length) console.error(`${found.length} comments differ from the descriptions: npm run fix writes them`)
    return found.length ? 1 : 0
  }
  for (const file of new Set(found.map((difference) => difference.file)))
    writeFileSync(
      file,
      mended(
        readFileSync(file, "utf8"),
        found.filter((difference) => difference.file === file),
      ),
    )
  if (found.length) console.log(`${found.length} comments written from the descriptions`)
  return 0
}
