// What a module makes when it is loaded is marked as free of side effects, so that bundlers leave out what nobody uses: they keep
// a list with a spread, a text with a place or a product of two constants, since each could call what they do not see.
import { readFileSync } from "node:fs"
import ts from "typescript"

/** Whether evaluating it may do more than make a plain value, as a bundler sees it. */
function mayDoMore(node: ts.Node): boolean {
  if (ts.isFunctionLike(node)) return false
  if (
    ts.isCallExpression(node) ||
    ts.isNewExpression(node) ||
    ts.isSpreadElement(node) ||
    ts.isSpreadAssignment(node) ||
    ts.isTemplateExpression(node) ||
    ts.isBinaryExpression(node) ||
    ts.isPropertyAccessExpression(node) ||
    ts.isElementAccessExpression(node) ||
    ts.isComputedPropertyName(node)
  )
    return true
  // a minus before a name could call its valueOf; a flag that a bundler does not know could throw
  if (ts.isPrefixUnaryExpression(node)) return !ts.isNumericLiteral(node.operand)
  if (ts.isRegularExpressionLiteral(node)) return true
  return ts.forEachChild(node, mayDoMore) ?? false
}

/** Whether an initialiser is a call that is marked already, given plain values and functions only. */
function isMarked(node: ts.Expression, text: string): boolean {
  return ts.isCallExpression(node) && /@__PURE__ \*\/\s*[\w.]+[<(]/.test(text.slice(node.pos, node.end)) && !node.arguments.some(mayDoMore)
}

const pure = (made: string) => `/* @__PURE__ */ (() => ${made})()`

/** The same declaration, what it makes in a call that is marked as pure. */
function markedPure({ name, initializer }: ts.VariableDeclaration, text: string): { pos: number; end: number; is: string } | null {
  if (!initializer) return null
  // `pos` is before the comment that marks a call already
  const { pos, end } = initializer
  const made = text.slice(pos, end)
  if (ts.isIdentifier(name))
    return mayDoMore(initializer) && !isMarked(initializer, text) ? { pos, end, is: ` ${pure(`(${made})`)}` } : null
  // names taken out of an object: each is made by itself out of all of them
  const all = name.elements.flatMap((e) => (ts.isBindingElement(e) && ts.isIdentifier(e.name) ? [e.name.text] : []))
  const whole = `all${pos}`
  const taken = `{ const ${text.slice(name.pos, end)}; return { ${all.join(", ")} } }`
  const each = all.map((one) => `${one} = ${pure(`${whole}.${one}`)}`)
  return { pos: name.pos, end, is: ` ${[`${whole} = ${pure(taken)}`, ...each].join(", ")}` }
}

/** A module whose tables are marked; nothing in `src` does anything but make them when it is loaded. */
export function withPureTables(path: string, text: string): string {
  const file = ts.createSourceFile(path, text, ts.ScriptTarget.Latest)
  const made = file.statements
    .filter(ts.isVariableStatement)
    .flatMap(({ declarationList }) => declarationList.declarations.map((declaration) => markedPure(declaration, text)))
    .filter((edit) => edit !== null)
  // from the end, so that earlier places stay where they are
  return made.reverse().reduce((marked, { pos, end, is }) => `${marked.slice(0, pos)}${is}${marked.slice(end)}`, text)
}

/** For esbuild: marks the tables of every module of `src` as it is read. */
export const pureTables = {
  name: "tables are made without side effects",
  setup(build: {
    onLoad(
      options: { filter: RegExp },
      load: (file: { readonly path: string }) => { readonly contents: string; readonly loader: "ts" } | null,
    ): void
  }): void {
    build.onLoad({ filter: /\/src\/.*\.ts$/ }, ({ path }) =>
      path.includes("/node_modules/") ? null : { contents: withPureTables(path, readFileSync(path, "utf8")), loader: "ts" },
    )
  },
}
