// Writes the licences of what is bundled into the package, read off the bundler's own list of inputs.
import { readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs"

const metafile = "dist/metafile-esm.json"
const { inputs } = JSON.parse(readFileSync(metafile, "utf8"))
rmSync(metafile)

const bundled = new Set(Object.keys(inputs).flatMap((path) => /node_modules\/((?:@[^/]+\/)?[^/]+)\//.exec(path)?.[1] ?? []))

// a package that names the licence and leaves its text out: ours is the same one
const mit = readFileSync("LICENSE", "utf8")
  .replace(/^[\s\S]*?(?=Permission is hereby granted)/, "")
  .trim()

const notices = [...bundled].sort().map((name) => {
  const folder = `node_modules/${name}`
  const { version, license, author } = JSON.parse(readFileSync(`${folder}/package.json`, "utf8"))
  const texts = readdirSync(folder).filter((file) => /^(licen[cs]e|notice|copying)/i.test(file))
  const found = texts.map((file) => readFileSync(`${folder}/${file}`, "utf8").trim())
  if (found.length === 0) {
    if (license !== "MIT" || !author) throw new Error(`${name} is bundled and carries no licence text`)
    found.push(`Copyright (c) ${author.name ?? author}\n\n${mit}`)
  }
  return [`## ${name} ${version} (${license})`, ...found].join("\n\n")
})

writeFileSync("dist/THIRD-PARTY-NOTICES.md", `# Third-party notices\n\nBundled into this package:\n\n${notices.join("\n\n")}\n`)
