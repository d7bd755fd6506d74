import { existsSync, readdirSync } from "node:fs"
import { join } from "node:path"
import { describe, expect, it } from "vitest"
import { root, run } from "../helpers/packed.js"
import { markdownSamples, runSample, sourceSamples } from "../helpers/samples.js"
import { solvers } from "../helpers/solvers.js"

const load = (specifier: string) =>
  specifier.startsWith("alula") ? import(join(root, "dist", specifier.slice(6) || ".", "index.js")) : import(specifier)

describe("samples in the reference pages", () => {
  const samples = sourceSamples()
  it.each(samples)("$place", async (sample) => {
    expect(await runSample(sample, load), "no value is compared").toBeGreaterThan(0)
  })
  it.each(solvers)("$id has one", ({ id }) => {
    const [domain, name] = id.split(".") as [string, string]
    const own = samples.filter((s) => s.place.startsWith(`${domain}/`) && new RegExp(`\\b${name}\\b`).test(s.code))
    expect(own.length).toBeGreaterThan(0)
  })
})

describe("README", () => {
  it.each(markdownSamples("README.md", "ts"))("$place", async (sample) => {
    expect(await runSample(sample, load)).toBeGreaterThan(0)
  })
  it("shows a session as Node's REPL really prints it", () => {
    const [session] = markdownSamples("README.md", "console")
    const lines = session!.code.trimEnd().split("\n")
    const typed = lines.filter((l) => l.startsWith("> ")).map((l) => l.slice(2))
    // the REPL itself, fed the same lines; colours and prompts taken off
    const script = `const { PassThrough } = require('node:stream'); const input = new PassThrough(); let text = ''
      const output = new PassThrough(); output.on('data', (d) => { text += d })
      const server = require('node:repl').start({ prompt: '', input, output, terminal: false, useColors: false })
      server.on('exit', () => { process.stdout.write(text); process.exit(0) })
      input.end(${JSON.stringify(`${typed.join("\n")}\n`)})`
    const printed = run("node", ["-e", script])
      .split("\n")
      .filter((l) => l !== "undefined")
    expect(printed.join("\n").trimEnd()).toBe(
      lines
        .filter((l) => !l.startsWith("> "))
        .join("\n")
        .trimEnd(),
    )
  })
})

describe("examples run", () => {
  const files = readdirSync(join(root, "examples")).filter((f) => f.endsWith(".mjs"))
  it.each(files)("%s", (file) => {
    const printed = run("node", [join("examples", file)])
    expect(printed.length).toBeGreaterThan(200)
    expect(printed).not.toMatch(/NaN|undefined|\[object/)
  })
  it("write the pages they speak of", () => {
    expect(existsSync(join(root, "out/lantern-moth.html"))).toBe(true)
  })
})
