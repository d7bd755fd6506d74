import { existsSync, readdirSync } from "node:fs"
import { join } from "node:path"
import { describe, expect, it } from "vitest"
import { root, run } from "../helpers/packed.js"
import { loadSource, markdownSamples, runSample } from "../helpers/samples.js"

describe("README", () => {
  it.each(markdownSamples("README.md", "ts"))("$place", async (sample) => {
    expect(await runSample(sample, loadSource)).toBeGreaterThan(0)
  })
  it("shows a session as Node's REPL really prints it", () => {
    const [session] = markdownSamples("README.md", "console")
    const lines = session!.code.trimEnd().split("\n")
    const typed = lines.filter((l) => l.startsWith("> ")).map((l) => l.slice(2))
    // the REPL itself, given the next line at each prompt; colours and prompts taken off
    const script = `const { PassThrough } = require('node:stream'); const lines = ${JSON.stringify(typed)}; const input = new PassThrough(); let text = ''
      const output = new PassThrough()
      output.on('data', (d) => {
        text += String(d).replaceAll('\\u0001', '')
        if (String(d).includes('\\u0001')) lines.length ? input.write(lines.shift() + '\\n') : input.end()
      })
      require('node:repl').start({ prompt: '\\u0001', input, output, terminal: false, useColors: false }).on('exit', () => process.stdout.write(text))`
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
    for (const page of ["lantern-moth-bank.html", "lantern-moth-cells.md", "wing-rib-template.svg", "four-hour-parade.svg"])
      expect(existsSync(join(root, "out", page)), page).toBe(true)
  })
})
