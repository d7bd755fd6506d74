// A fact stands in one place: a default changed there shows everywhere, on a copy of the sources.
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from "node:fs"
import { tmpdir } from "node:os"
import { join } from "node:path"
import { build } from "esbuild"
import { afterAll, beforeAll, describe, expect, it } from "vitest"
import { differences, mended } from "../../scripts/facts/places.js"
import { zodSchema } from "../../src/zod/index.js"
import { languageService } from "../helpers/hover.js"
import { root, run } from "../helpers/packed.js"
import type { AnySolver } from "../helpers/solvers.js"

const copy = mkdtempSync(join(tmpdir(), "alula-once-"))
const before = /(label: "insulation rating"[^}]*default: )80\b/
let solver: AnySolver

async function wireOf(folder: string): Promise<Record<string, unknown>> {
  const outfile = join(folder, `wire-${Date.now()}.mjs`)
  await build({ entryPoints: [join(folder, "src/wire/index.ts")], outfile, bundle: true, format: "esm", logLevel: "error" })
  return (await import(/* @vite-ignore */ outfile)) as Record<string, unknown>
}

beforeAll(async () => {
  for (const part of ["quantity", "numeric", "drawing", "solver", "wire"])
    cpSync(join(root, "src", part), join(copy, "src", part), { recursive: true })
  cpSync(join(root, "tsconfig.json"), join(copy, "tsconfig.json"))
  symlinkSync(join(root, "node_modules"), join(copy, "node_modules"))
  const described = readdirSync(join(copy, "src/wire"), { recursive: true })
    .map((file) => join(copy, "src/wire", String(file)))
    .filter((file) => file.endsWith(".ts") && before.test(readFileSync(file, "utf8")))
  expect(described, "the default of the insulation rating stands in one description").toHaveLength(1)
  const [file] = described as [string]
  writeFileSync(file, readFileSync(file, "utf8").replace(before, "$195"))
  // properties on one line, which take a comment each
  const [inline, flat] = [join(copy, "src/wire/resettable-fuse/types.ts"), "readonly drop: { readonly low: number; readonly high: number }"]
  const banded = readFileSync(inline, "utf8")
  expect(banded).toContain("readonly drop: Band")
  writeFileSync(inline, banded.replace("readonly drop: Band", flat))
  const wire = await wireOf(copy)
  const found = differences(copy, { wire })
  for (const path of new Set(found.map((difference) => difference.file)))
    writeFileSync(
      path,
      mended(
        readFileSync(path, "utf8"),
        found.filter((difference) => difference.file === path),
      ),
    )
  expect(differences(copy, { wire }), "the generator has nothing left to write").toEqual([])
  solver = wire.wireHeating as AnySolver
}, 60_000)
afterAll(() => rmSync(copy, { recursive: true, force: true }))

const field = () =>
  Object.entries(solver.input as unknown as Record<string, { label: string }>).find(([, f]) => f.label === "insulation rating")
const key = () => (field() as [string, unknown])[0]

describe("a default changed in its description alone shows", () => {
  it("in the hover at a call and at the property", () => {
    const file = join(copy, "call.ts")
    const text = `import { wireHeating } from "./src/wire/index.js"\nwireHeating({ ${key()}: 90 })`
    const hover = languageService(copy, { [file]: text })
    expect(hover(file, text.indexOf("wireHeating({"))).toMatch(/insulation rating \[.*; default 95 °C\]/)
    expect(hover(file, text.indexOf(`${key()}:`))).toMatch(/; default 95 °C\]$/)
  })
  it("on the reference page", () => {
    const options = ["--entryPoints", "src/wire/index.ts", "--skipErrorChecking", "--logLevel", "Error", "--out", "pages"]
    run("node", [join(root, "node_modules/typedoc/bin/typedoc"), ...options], copy)
    const page = readFileSync(join(copy, "pages/functions/wireHeating.html"), "utf8")
    expect(page).toMatch(/insulation rating \[[^\]]*; default 95 °C\]/)
    expect(page).not.toContain("default 80 °C")
  }, 60_000)
  it("in the JSON Schema and so in the data of forms", () => {
    const { properties } = solver.jsonSchema() as { properties: Record<string, { default: unknown; title: string }> }
    expect(properties[key()]).toMatchObject({ title: "insulation rating", default: 95 })
  })
  it("in the input as read, by the solver and by zod", () => {
    const given = { ...solver.example, [key()]: undefined }
    expect(solver.read(given)[key()]).toBe(95)
    expect((zodSchema(solver).parse(given) as Record<string, unknown>)[key()]).toBe(95)
  })
  it("in a message", () => {
    const refused = solver.attempt({ ...solver.example, current: 500, [key()]: undefined })
    expect(refused.ok).toBe(false)
    if (!refused.ok) expect(refused.error.message).toContain("(95 °C insulation)")
  })
})
