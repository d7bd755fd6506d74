import { existsSync, readdirSync, statSync } from "node:fs"
import { dirname, join, relative, resolve } from "node:path"
import ts from "typescript"

/** The sources and tests that belong to one run. */
export interface Project {
  readonly root: string
  readonly program: ts.Program
  /** Files that faults are planted in. */
  readonly planted: readonly string[]
  /** Sources whose behaviour no planted fault can change, because they import none of the planted files. */
  readonly stable: ReadonlySet<string>
}

/** Every `.ts` file below a folder, or the file itself. */
export function filesOf(path: string): string[] {
  if (!existsSync(path)) return []
  if (statSync(path).isFile()) return [path]
  return readdirSync(path, { recursive: true })
    .map((name) => join(path, String(name)))
    .filter((name) => name.endsWith(".ts") && !name.endsWith(".d.ts"))
    .sort()
}

/** Reads the sources with the project's own options. */
export function projectOf(root: string, planted: readonly string[]): Project {
  const sources = filesOf(join(root, "src"))
  const config = ts.readConfigFile(join(root, "tsconfig.json"), ts.sys.readFile).config as object | undefined
  const { options } = ts.parseJsonConfigFileContent(config ?? {}, ts.sys, root)
  const program = ts.createProgram(sources, { ...options, noEmit: true })
  const imports = new Map(sources.map((path) => [path, importsOf(program, path).filter((to) => sources.includes(to))]))
  const changed = new Set(planted)
  for (let before = -1; before !== changed.size; ) {
    before = changed.size
    for (const [path, to] of imports) if (to.some((target) => changed.has(target))) changed.add(path)
  }
  return { root, program, planted, stable: new Set(sources.filter((path) => !changed.has(path))) }
}

/** Files that a file imports values from, by its relative imports. */
function importsOf(program: ts.Program, path: string): string[] {
  const file = program.getSourceFile(path)
  return (file?.statements ?? []).flatMap((statement) => {
    const isImport = ts.isImportDeclaration(statement) && statement.importClause?.phaseModifier !== ts.SyntaxKind.TypeKeyword
    const isExport = ts.isExportDeclaration(statement) && !statement.isTypeOnly
    if (!isImport && !isExport) return []
    const target = (statement.moduleSpecifier as ts.StringLiteral | undefined)?.text
    return target?.startsWith(".") ? [resolve(dirname(path), target.replace(/\.js$/, ".ts"))] : []
  })
}

/** Names that a source exports as values. */
export function exportsOf(program: ts.Program, path: string): string[] {
  const checker = program.getTypeChecker()
  const file = program.getSourceFile(path)
  const symbol = file && checker.getSymbolAtLocation(file)
  if (!symbol) return []
  return checker.getExportsOfModule(symbol).flatMap((one) => {
    const target = one.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(one) : one
    return target.flags & ts.SymbolFlags.Value ? [one.name] : []
  })
}

/** The test files of a module: its own, its published values, and the suites that walk every solver. */
export function testsOf(root: string, module: string): string[] {
  const isTest = (path: string) => path.endsWith(".test.ts")
  const references = join(root, "tests/references")
  return [
    ...filesOf(join(root, "tests", module)),
    ...filesOf(references).filter((path) => relative(references, path).startsWith(module)),
    ...filesOf(join(root, "tests/laws")),
  ].filter(isTest)
}
