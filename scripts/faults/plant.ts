import { relative } from "node:path"
import ts from "typescript"
import { type Edit, type Fault, type FaultKind, idOf, type Watch } from "./fault.js"
import { isDefinition } from "./switches.js"
import { type Types, typesOf } from "./types.js"

/** What a rule proposes: the edits, and what reports show. */
export interface Proposal {
  readonly kind: FaultKind
  /** The node whose text is `before` and whose line is reported. */
  readonly at: ts.Node
  readonly after: string
  readonly edits: readonly Edit[]
  readonly before?: string
}

/** Where in a file a rule looks. */
export interface Place {
  readonly file: ts.SourceFile
  readonly types: Types
  /** Inside a function, or in data that is made when the module loads. */
  readonly isInFunction: boolean
  /** The description of an input field whose property this is. */
  readonly text: (node: ts.Node) => string
}

/** A rule: what can be planted at a node. */
export type Rule = (node: ts.Node, place: Place) => readonly Proposal[]

/** Every constant of some files whose value is made when the module loads, numbered from `first`. */
export function watchesIn(program: ts.Program, paths: readonly string[], root: string, first: number): Watch[] {
  const found: Watch[] = []
  for (const path of paths) {
    const file = program.getSourceFile(path) as ts.SourceFile
    for (const statement of file.statements) {
      if (!ts.isVariableStatement(statement)) continue
      for (const { name, initializer } of statement.declarationList.declarations) {
        if (!ts.isIdentifier(name) || !initializer || ts.isFunctionLike(initializer)) continue
        found.push({ n: first + found.length, file: relative(root, path), start: initializer.getStart(file), end: initializer.end })
      }
    }
  }
  return found
}

/** Properties of a definition that no answer depends on, or that say how exact it is. */
const leftAlone = ["typical", "example", "within", "sources", "source"]

/** Every fault that can be planted in some files, numbered from `first`. */
export function plant(program: ts.Program, paths: readonly string[], root: string, rules: readonly Rule[], first = 1): Fault[] {
  const types = typesOf(program.getTypeChecker())
  const faults: Fault[] = []
  for (const path of paths) {
    const file = program.getSourceFile(path)
    if (!file) throw new Error(`${path} is not part of the program`)
    const name = relative(root, path)
    const seen = new Map<string, number>()
    const text = (node: ts.Node) => file.text.slice(node.getStart(file), node.end)
    const add = (proposal: Proposal) => {
      const before = oneLine(proposal.before ?? text(proposal.at))
      const after = oneLine(proposal.after)
      const alike = [name, definitionOf(proposal.at), proposal.kind, `${before} -> ${after}`].join(" | ")
      const count = (seen.get(alike) ?? 0) + 1
      seen.set(alike, count)
      const key = `${alike} | ${count}`
      const line = file.getLineAndCharacterOfPosition(proposal.at.getStart(file)).line + 1
      faults.push({
        n: first + faults.length,
        id: idOf(key),
        key,
        file: name,
        line,
        kind: proposal.kind,
        before,
        after,
        edits: proposal.edits,
      })
    }
    const visit = (node: ts.Node, isInFunction: boolean): void => {
      if (ts.isTypeNode(node) || ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) return
      if (ts.isInterfaceDeclaration(node) || ts.isTypeAliasDeclaration(node)) return
      if (ts.isPropertyAssignment(node) && leftAlone.includes(text(node.name))) return
      const inner = isInFunction || (ts.isFunctionLike(node) && !isDefinition(node))
      for (const rule of rules) for (const proposal of rule(node, { file, types, isInFunction: inner, text })) add(proposal)
      ts.forEachChild(node, (child) => visit(child, inner))
    }
    visit(file, false)
  }
  return faults
}

const oneLine = (text: string) => text.replace(/\s+/g, " ").trim()

/** The names a node stands under: `metals.copper.density`, `solve.worst`. */
function definitionOf(node: ts.Node): string {
  const names: string[] = []
  for (let at: ts.Node | undefined = node; at; at = at.parent) {
    const name = (at as { name?: ts.Node }).name
    const isNaming = ts.isFunctionLike(at) || ts.isVariableDeclaration(at) || ts.isPropertyAssignment(at) || ts.isClassLike(at)
    if (isNaming && name && !ts.isBindingName(name)) names.unshift(name.getText())
    else if (isNaming && name && ts.isIdentifier(name)) names.unshift(name.text)
  }
  return names.join(".") || "(file)"
}
