import { readdirSync, readFileSync, writeFileSync } from "node:fs"
import { join } from "node:path"
import { gzipSync } from "node:zlib"
import { build, transform } from "esbuild"
import { describe, expect, it } from "vitest"
import { manifest, root, run, tarball, userProject } from "../helpers/packed.js"

const targets = manifest.exports as Readonly<Record<string, { readonly node: string; readonly default: string }>>
const subpaths = Object.keys(manifest.exports).filter((path) => !path.endsWith(".json"))

/** External packages a subpath pulls in when loaded, followed through every static import. */
async function externals(subpath: string): Promise<string[]> {
  const { metafile } = await build({
    stdin: { contents: `import * as it from "alula${subpath.slice(1)}"; console.log(it)`, resolveDir: root },
    bundle: true,
    write: false,
    metafile: true,
    format: "esm",
    platform: "node",
    external: ["mathjs", "unitsnet-js", "zod", "zod/*"],
  })
  return [...new Set(Object.values(metafile.inputs).flatMap((input) => input.imports.filter((i) => i.external).map((i) => i.path)))]
}

/** gzip bytes of a bundle that uses one solver. */
async function bundledSize(path: string, solver: string): Promise<number> {
  const { outputFiles, warnings } = await build({
    stdin: { contents: `import { ${solver} } from "${path}"; console.log(${solver})`, resolveDir: root },
    logLevel: "silent",
    bundle: true,
    write: false,
    minify: true,
    format: "esm",
    platform: "neutral",
  })
  expect(warnings, "what a user's bundler warns of").toEqual([])
  return gzipSync(outputFiles[0]!.contents, { level: 9 }).length
}

describe("the packed files", () => {
  it("please publint", () => {
    expect(run("npx", ["publint", "run", tarball(), "--strict"])).toMatch(/All good/)
  }, 120_000)
  it("have the right types for every entry (are-the-types-wrong, ESM-only)", () => {
    // attw ends with an error code, which throws here, on any problem
    expect(run("npx", ["attw", tarball(), "--profile", "esm-only", "--exclude-entrypoints", "./schema/rig.json"])).toContain("alula v")
  }, 120_000)
  it("type-check in a user's project: units at compile time, results, refusals", () => {
    const folder = userProject()
    writeFileSync(
      join(folder, "use.ts"),
      `import { type VoltageDrop, voltageDrop } from "alula/wire"
import { move, type Rig } from "alula/rig"
import { InputError, NoSolutionError } from "alula/solver"
import { voltageDrop as sameDrop } from "alula"
const good: VoltageDrop = voltageDrop({ current: "4 A", length: "1 1/2 in", awg: 20, sourceVoltage: 12 })
const volts: number = good.drop
// @ts-expect-error a mass is no length
voltageDrop({ current: 4, length: "4 kg", awg: 20 })
// @ts-expect-error no such metal
voltageDrop({ current: 4, length: 1, awg: 20, material: "cheese" })
// @ts-expect-error no such key
voltageDrop({ current: 4, length: 1, awg: 20, wdith: 3 })
// @ts-expect-error results are read only
good.drop = 3
const tried = sameDrop.attempt({})
if (!tried.ok && tried.error instanceof InputError) tried.error.issues[0]?.path
if (!tried.ok && tried.error instanceof NoSolutionError) tried.error.nearest.force
const rig: Rig = move.example
export { rig, volts }
`,
    )
    for (const moduleResolution of ["NodeNext", "Bundler"]) {
      const module = moduleResolution === "NodeNext" ? "NodeNext" : "ESNext"
      run(
        join(root, "node_modules/.bin/tsc"),
        ["--noEmit", "--strict", "--target", "ES2022", "--module", module, "--moduleResolution", moduleResolution, "use.ts"],
        folder,
      )
    }
  }, 120_000)
  it.each(subpaths)("%s offers node what it offers bundlers", async (subpath) => {
    const { node, default: bundlers } = targets[subpath]!
    const [a, b] = await Promise.all([node, bundlers].map(async (file) => Object.keys(await import(join(root, file)))))
    expect(a!.sort()).toEqual(b!.sort())
    expect(a).not.toEqual([])
  })
  it("load by import and by require, without any package but the dependency", () => {
    const folder = userProject()
    writeFileSync(
      join(folder, "use.mjs"),
      `import { voltageDrop } from "alula/wire"; console.log(voltageDrop({ current: 1, length: 1, awg: 20 }).drop.toFixed(4))`,
    )
    writeFileSync(
      join(folder, "use.cjs"),
      `const { voltageDrop } = require("alula/wire"); console.log(voltageDrop({ current: 1, length: 1, awg: 20 }).drop.toFixed(4))`,
    )
    expect(run("node", ["use.mjs"], folder).trim()).toBe("0.0666")
    expect(run("node", ["--no-warnings", "use.cjs"], folder).trim()).toBe("0.0666")
  })
})

describe("the command", () => {
  it("runs from the packed files, and from a document to its answer", () => {
    const folder = userProject()
    const { bin, version } = JSON.parse(readFileSync(join(folder, "node_modules/alula/package.json"), "utf8")) as {
      bin: { alula: string }
      version: string
    }
    const file = join("node_modules/alula", bin.alula)
    expect(readFileSync(join(folder, file), "utf8").split("\n")[0]).toBe("#!/usr/bin/env node")
    expect(run("node", [file, "--version"], folder)).toBe(`${version}\n`)
    run("node", [file, "new", "tail"], folder)
    expect(run("node", [file, "check", "tail.jsonc"], folder)).toContain("Every check made is met")
  })
})

describe("what a user's program must carry", () => {
  // mathjs whole costs 0.7 s and 190 kB, unitsnet-js 0.15 s and 171 kB: the parts used are bundled, nothing is loaded from outside
  it.each(subpaths)("%s loads nothing from outside, but zod whole where zod schemas are made", async (subpath) => {
    expect(await externals(subpath)).toEqual(subpath === "./zod" ? ["zod"] : [])
  })
  // what is bundled from outside does things when it is loaded; of our own modules none does
  it("a module of which nothing is used leaves nothing behind", async () => {
    const bundled = ["working/mathjs.js", "rig/document/zod.js"]
    const files = readdirSync(join(root, "dist"), { recursive: true }).map(String)
    const left: Record<string, string> = {}
    for (const file of files.filter((f) => f.endsWith(".js") && !f.startsWith("node/") && !bundled.includes(f))) {
      const text = readFileSync(join(root, "dist", file), "utf8").replace(/^export (\{[^}]*\}|\*)( from "[^"]*")?;$/gm, "")
      const { code } = await transform(text, { treeShaking: true, format: "esm", minify: true })
      const kept = code.replace(/import(\{[^}]*\}from|(\*as )?\w+ from)?"[^"]*";?/g, "").trim()
      if (kept) left[file] = kept.slice(0, 100)
    }
    expect(files.length).toBeGreaterThan(400)
    expect(left).toEqual({})
  })
  // 13.4 kB. Of the 5.2 it has grown by: alternatives and variants told, read and written into schemas 1.8 kB, reading what people
  // type (words, fractions, feet and inches) 0.7, words of the trade that were probably meant 0.7, faults certain between fields
  // 0.6, the schema's patterns and annotations 0.8, templates with their values and sources as data 0.6, lists
  // printed as tables 0.2. Units are 2.2 of it:
  // carrying only those that a solver needs is what would bring it down
  it("one bundled solver stays under 13.4 kB gzip", async () => {
    expect(await bundledSize("alula/linkage", "grashof")).toBeLessThan(13.4 * 1024)
  })
  // what each part adds, kB: the reader with its faults 2.9, units with their words 2.9, JSON Schema 1.4, rules between fields and
  // faults certain of them 1.5, near words 0.6, printing 1.2; of wire's own, the heating that tells whether the run burns or hurts
  // 2.2, sizes and metals 2.4, sources 1
  it("voltageDrop stays under 17.8 kB gzip", async () => {
    expect(await bundledSize("alula/wire", "voltageDrop")).toBeLessThan(17.8 * 1024)
  })
  it.each([
    ["linkage", "grashof"],
    ["wire", "voltageDrop"],
    ["worn", "overturning"],
  ])("taken from the root, %s.%s is no larger than from its own path", async (domain, name) => {
    expect(await bundledSize("alula", name)).toBeLessThan((await bundledSize(`alula/${domain}`, name)) + 1024)
  })
})
