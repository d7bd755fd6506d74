import { readFileSync } from "node:fs"
import { join } from "node:path"
import ts from "typescript"
import { describe, expect, it } from "vitest"
import { allEdges } from "../helpers/edges.js"
import { root } from "../helpers/packed.js"
import { solvers } from "../helpers/solvers.js"

/** Modules whose solvers export the codes of their refusals and cautions as unions. */
const modules = ["wire", "converter", "drive", "frame", "linkage", "pack", "thermoform", "worn"]
const held = solvers.filter(({ id }) => modules.includes(id.split(".")[0] as string))
const capital = (name: string) => `${name[0]?.toUpperCase()}${name.slice(1)}`

/** Asks the compiler what it knows of every solver: the codes by its type, those by its exported unions, and errors of misspelling. */
const told = (() => {
  const config = ts.readConfigFile(join(root, "tsconfig.json"), ts.sys.readFile).config as { compilerOptions: object }
  const { options } = ts.convertCompilerOptionsFromJson(config.compilerOptions, root)
  const file = join(root, "tests", "codes-of-solvers.ts")
  const exported = (module: string, name: string) =>
    new RegExp(`\\b${name}\\b`).test(readFileSync(join(root, "src", module, "index.ts"), "utf8"))
  const text = held
    .map(({ id }, i) => {
      const [module, name] = id.split(".") as [string, string]
      const union = (kind: "Refusal" | "Caution") =>
        exported(module, `${capital(name)}${kind}`) ? `import("../src/${module}/index.js").${capital(name)}${kind}` : "never"
      return `type S${i} = typeof import("../src/${module}/index.js").${name}
type A${i} = ReturnType<S${i}["attempt"]>
type R${i} = Extract<A${i}, { ok: false }>["error"] extends infer E ? E extends { noSolution: infer C } ? C : never : never
type C${i} = Extract<A${i}, { ok: true }>["value"]["cautions"][number]["code"]
type RU${i} = ${union("Refusal")}
type CU${i} = ${union("Caution")}
const r${i}: R${i} = "misspelt-code"
const c${i}: C${i} = "misspelt-code"`
    })
    .join("\n")
  const host = ts.createCompilerHost(options)
  const { getSourceFile, fileExists } = host
  host.fileExists = (name) => name === file || fileExists(name)
  host.getSourceFile = (name, target, ...rest) =>
    name === file ? ts.createSourceFile(name, text, target) : getSourceFile(name, target, ...rest)
  const program = ts.createProgram([file], { ...options, noEmit: true, noUnusedLocals: false }, host)
  const source = program.getSourceFile(file) as ts.SourceFile
  const checker = program.getTypeChecker()
  const misspelt = new Set(program.getSemanticDiagnostics(source).map((d) => text.slice(d.start).match(/^\w+/)?.[0]))
  const members = new Map<string, readonly string[] | null>()
  for (const node of source.statements)
    if (ts.isTypeAliasDeclaration(node)) {
      const type = checker.getTypeAtLocation(node.name)
      const parts = type.isUnion() ? type.types : [type]
      const isNever = (type.flags & ts.TypeFlags.Never) !== 0
      const literals = parts.flatMap((part) => (part.isStringLiteral() ? [part.value] : []))
      members.set(node.name.text, isNever ? [] : literals.length === parts.length ? literals.sort() : null)
    }
  return { members, misspelt }
})()

describe.each(held.map(({ id, solver }, i) => [id, solver, i] as const))("codes: %s", (id, solver, i) => {
  const edges = allEdges.get(id.split(".")[0] as string)
  const rows = (of: readonly { readonly solver: unknown; readonly code: string }[] | undefined) =>
    [...new Set(of?.filter((row) => row.solver === solver).map((row) => row.code))].sort()

  it("can be refused with the codes of its union, which are those of its edges", () => {
    expect(told.members.get(`R${i}`), "by its type").toEqual(rows(edges?.refusals))
    expect(told.members.get(`RU${i}`), "by its exported union").toEqual(rows(edges?.refusals))
  })

  it("carries the cautions of its union, which are those of its edges", () => {
    const warned = rows(edges?.cautions)
    expect(told.members.get(`C${i}`), "by its type").toEqual(warned)
    expect(told.members.get(`CU${i}`), "by its exported union").toEqual(warned)
  })

  it("takes no misspelt code", () => {
    expect(told.misspelt.has(`r${i}`)).toBe(true)
    expect(told.misspelt.has(`c${i}`)).toBe(true)
  })
})
