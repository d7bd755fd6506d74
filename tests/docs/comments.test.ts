import { join } from "node:path"
import ts from "typescript"
import { describe, expect, it } from "vitest"
import { root, run } from "../helpers/packed.js"
import { solvers } from "../helpers/solvers.js"

const domains = [...new Set(solvers.map(({ id }) => id.split(".")[0] as string))]
const indexOf = (domain: string) => join(root, "src", domain, "index.ts")
const config = ts.readConfigFile(join(root, "tsconfig.json"), ts.sys.readFile).config as { compilerOptions: object }
const program = ts.createProgram(domains.map(indexOf), ts.convertCompilerOptionsFromJson(config.compilerOptions, root).options)
const checker = program.getTypeChecker()

/** The exported symbol of a solver, followed to where it is declared. */
function symbolOf(domain: string, name: string): ts.Symbol {
  const module = checker.getSymbolAtLocation(program.getSourceFile(indexOf(domain)) as ts.SourceFile) as ts.Symbol
  const found = checker.getExportsOfModule(module).find((s) => s.name === name) as ts.Symbol
  return found.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(found) : found
}

const commentOf = (symbol: ts.Symbol) => ts.displayPartsToString(symbol.getDocumentationComment(checker))

/** The input and the result that a solver's declaration names. */
function typesOf(symbol: ts.Symbol): { readonly input: ts.Type; readonly result: ts.Type } {
  const declaration = symbol.valueDeclaration as ts.VariableDeclaration
  const [input, result] = (declaration.type as ts.TypeReferenceNode).typeArguments as unknown as [ts.TypeNode, ts.TypeNode]
  return { input: checker.getTypeFromTypeNode(input), result: checker.getTypeFromTypeNode(result) }
}

/** Whether a symbol is declared in this project's sources. */
const isOurs = (symbol: ts.Symbol | undefined) =>
  symbol?.declarations?.some((d) => d.getSourceFile().fileName.startsWith(join(root, "src"))) ?? false

/** Properties without a comment, in an interface and in those its properties lead to. */
function uncommented(type: ts.Type, path: string, seen = new Set<ts.Type>()): string[] {
  if (seen.has(type)) return []
  seen.add(type)
  return type.getProperties().flatMap((property) => {
    const own = commentOf(property).trim() ? [] : [`${path}.${property.name}`]
    const declared = checker.getTypeOfSymbol(property)
    const parts = (declared.isUnion() ? declared.types : [declared]).map((part) =>
      checker.isArrayType(part) ? (checker.getTypeArguments(part as ts.TypeReference)[0] as ts.Type) : part,
    )
    const below = parts.filter((part) => {
      // a quantity's object form is not a group of fields
      const symbol = part.getSymbol()
      return symbol && isOurs(symbol) && symbol.flags & ts.SymbolFlags.Interface && !part.isUnion()
    })
    return [...own, ...below.flatMap((part) => uncommented(part, `${path}.${property.name}`, seen))]
  })
}

describe.each(solvers)("the page of $id", ({ id }) => {
  const [domain, name] = id.split(".") as [string, string]
  const symbol = symbolOf(domain, name)
  const comment = commentOf(symbol)
  const tags = symbol.getJsDocTags(checker)
  const tag = (wanted: string) => tags.filter((t) => t.name === wanted).map((t) => ts.displayPartsToString(t.text).trim())

  it("is a function's, says what it throws, and has one example", () => {
    expect(tag("function")).toHaveLength(1)
    expect(tag("throws").join(" ")).toContain("InputError")
    expect(tag("example")).toHaveLength(1)
    expect(tag("example")[0]).toContain(`from 'alula/${domain}'`)
  })
  it("opens with a sentence, gives its formula and names its sources", () => {
    expect(comment.trim()).toMatch(/^[A-Z][^\n]{15,}/)
    expect(comment, "no formula").toMatch(/[=·√∫]/)
    expect(comment, "no sources").toContain("**Sources**")
    expect(comment, "sources written by hand").not.toMatch(/^Sources?: /m)
  })
  it("finds a comment on every property of its input and of its result, however deep", () => {
    const { input, result } = typesOf(symbol)
    expect(input.getProperties().length).toBeGreaterThan(0)
    expect([...uncommented(input, "input"), ...uncommented(result, "result")]).toEqual([])
  })
})

describe("the reference pages", () => {
  it("are made without an error or a warning", () => {
    // typedoc ends with an error code, which throws here, on any warning
    run("npx", ["typedoc", "--emit", "none"])
  }, 300_000)
})
