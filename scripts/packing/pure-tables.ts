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

/** A module with each table it makes in a call that is marked as pure; nothing in `src` does anything else when it is loaded. */
export function withPureTables(path: string, text: string): string {
  const file = ts.createSourceFile(path, text, ts.ScriptTarget.Latest)
  const made = file.statements
    .filter(ts.isVariableStatement)
    .flatMap(({ declarationList }) => declarationList.declarations)
    .flatMap(({ name, initializer }) =>
      ts.isIdentifier(name) && initializer && mayDoMore(initializer) && !isMarked(initializer, text) ? [initializer] : [],
    )
  let marked = text
  // from the end, so that earlier places stay where they are; `pos` is before the comment that marks a call already
  for (const { pos, end } of made.reverse())
    marked = `${marked.slice(0, pos)} /* @__PURE__ */ (() => (${marked.slice(pos, end)}))()${marked.slice(end)}`
  return marked
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
