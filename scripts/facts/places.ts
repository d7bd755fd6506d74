// Where the facts of each solver stand in the sources, by the compiler's own view of them.
import { join, relative } from "node:path"
import ts from "typescript"
import type { AnyField, AnyOutField } from "../../src/solver/index.js"
import { partsOf, solverBlock } from "./block.js"
import { propertyComment, solverComment } from "./comment.js"
import { isSolver } from "./pages.js"
import { type Facts, inputFacts, resultFacts, tailOf } from "./tail.js"

/** A comment that differs from what the descriptions say. */
export interface Difference {
  readonly file: string
  readonly line: number
  /** Solver and field it is about. */
  readonly about: string
  readonly from: number
  readonly to: number
  readonly text: string
}

type Exports = Readonly<Record<string, unknown>>
type AnyDescribed = AnyField | AnyOutField

interface Statement {
  readonly about: string
  readonly facts: Facts
}

/**
 * What a property's descriptions say together: several solvers may share an interface, and where they differ each is named.
 * The symbol is that of the solvers of its own folder: the rig puts prefixes before those of the fields it takes over.
 */
function agreed(said: readonly Statement[], folder: string): Facts {
  const own = said.filter(({ about }) => about.startsWith(folder))
  const all = (part: keyof Facts, among: readonly Statement[]) => [...new Set(among.map(({ facts }) => facts[part]))]
  const symbols = all("symbol", own.length ? own : said)
  return {
    label: all("label", own.length ? own : said).join(" or ") as string,
    symbol: symbols.length === 1 ? symbols[0] : undefined,
    value: all("value", said).join(" or ") || undefined,
    given: all("given", said).filter(Boolean).join(" or ") || undefined,
  }
}

/** The doc comment of a node, where it has one. */
function docOf(node: ts.Node): ts.JSDoc | undefined {
  return ts.getJSDocCommentsAndTags(node).findLast((part): part is ts.JSDoc => ts.isJSDoc(part) && part.parent === node)
}

/** Lists every comment that is not as the descriptions of `modules` (exports by folder of `src`) have it. */
export function differences(root: string, modules: Readonly<Record<string, Exports>>): Difference[] {
  const config = ts.readConfigFile(join(root, "tsconfig.json"), ts.sys.readFile).config as { compilerOptions: object }
  const { options } = ts.convertCompilerOptionsFromJson(config.compilerOptions, root)
  const indexOf = (name: string) => join(root, "src", name, "index.ts")
  const program = ts.createProgram(Object.keys(modules).map(indexOf), { ...options, incremental: false })
  const checker = program.getTypeChecker()
  const sources = join(root, "src/")
  const shared = join(root, "src/solver/")
  const found: Difference[] = []
  const described = new Map<ts.PropertySignature, Statement[]>()

  const put = (node: ts.Node, about: string, comment: (old: string | undefined, indent: string) => string) => {
    const file = node.getSourceFile()
    const doc = docOf(node)
    const start = doc?.pos ?? node.getStart(file)
    const ahead = file.text.slice(file.text.lastIndexOf("\n", start - 1) + 1, start)
    const indent = /^\s*/.exec(ahead)?.[0] ?? ""
    const old = doc && file.text.slice(doc.pos, doc.end)
    const wanted = comment(old, indent)
    if (old === wanted) return
    const line = file.getLineAndCharacterOfPosition(start).line + 1
    // behind something on its line it would be taken for a comment of that, and written again
    const apart = ahead.trim() === "" ? "" : `\n${indent}`
    const range = doc ? { to: doc.end, text: wanted } : { to: start, text: `${apart}${wanted}\n${indent}` }
    found.push({ file: file.fileName, line, about, from: start, ...range })
  }

  /** The type whose properties a field's parts describe. */
  const inner = (type: ts.Type): ts.Type => {
    const own = checker.getNonNullableType(type)
    return checker.isArrayType(own) ? inner(checker.getTypeArguments(own as ts.TypeReference)[0] as ts.Type) : own
  }

  /** The member of a union that the word in `type` stands for. */
  const memberOf = (type: ts.Type, word: string | undefined): ts.Type => {
    if (word === undefined || !type.isUnion()) return type
    const isMeant = (member: ts.Type) => {
      const told = checker.getPropertyOfType(member, "type")
      const literal = told && checker.getTypeOfSymbol(told)
      return literal?.isStringLiteral() && literal.value === word
    }
    return type.types.find(isMeant) ?? type
  }

  function walk<F extends AnyDescribed>(type: ts.Type, fields: Readonly<Record<string, F>>, facts: (field: F) => Facts, path: string) {
    for (const [key, field] of Object.entries(fields)) {
      const property = checker.getPropertyOfType(type, key)
      const about = `${path}.${key}`
      // the compiler does not see it: what a function returns is not compared key by key
      if (!property) throw new Error(`${about} is described, and its type has no such property`)
      for (const node of property.declarations ?? []) {
        if (!ts.isPropertySignature(node) || !node.getSourceFile().fileName.startsWith(sources)) continue
        // what the floor of solvers declares for all of them is described alike by none
        if (node.getSourceFile().fileName.startsWith(shared)) continue
        const said = described.get(node) ?? []
        described.set(node, said)
        said.push({ about, facts: facts(field) })
      }
      const own = inner(checker.getTypeOfSymbol(property))
      for (const part of partsOf(field)) walk(memberOf(own, part.word), part.fields, facts, about)
    }
  }

  for (const [name, exports] of Object.entries(modules)) {
    const file = program.getSourceFile(indexOf(name))
    const module = file && checker.getSymbolAtLocation(file)
    if (!module) continue
    for (const exported of checker.getExportsOfModule(module)) {
      const value = exports[exported.name]
      if (!isSolver(value)) continue
      const symbol = exported.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(exported) : exported
      const [input, result] = checker.getTypeArguments(checker.getTypeOfSymbol(symbol) as ts.TypeReference)
      const statement = symbol.valueDeclaration?.parent.parent
      if (!input || !result || !statement) throw new Error(`${name}.${exported.name} is no Solver<Input, Result>`)
      const id = `${name}.${exported.name}`
      put(statement, id, (old) => solverComment(old ?? `/** ${value.title}. */`, solverBlock(value)))
      walk(input, value.input, inputFacts, id)
      walk(result, value.output, resultFacts, id)
    }
  }
  for (const [node, said] of described) {
    const folder = relative(sources, node.getSourceFile().fileName).split("/")[0]
    const facts = agreed(said, `${folder}.`)
    put(node, (said[0] as Statement).about, (old, indent) => propertyComment(old, facts.label, tailOf(facts), indent))
  }
  return found
}

/** A file's text with the wanted comments put in. */
export function mended(text: string, wanted: readonly Difference[]): string {
  return [...wanted]
    .sort((a, b) => b.from - a.from)
    .reduce((all, { from, to, text: part }) => all.slice(0, from) + part + all.slice(to), text)
}
