import { readdirSync, readFileSync } from "node:fs"
import { join } from "node:path"
import ts from "typescript"
import { root } from "./packed.js"

/** One place in the sources where a caution, a refusal or a fault between fields is made. */
export interface Site {
  readonly place: string
  readonly makes: "caution" | "refuse" | "inconsistent"
  /** Its code, or for a fault its path with `*` for what is not written out; null where it is not a literal. */
  readonly name: string | null
  /** Numbers put into the text by hand instead of by name. */
  readonly pasted: string | null
}

const makers = ["caution", "refuse", "inconsistent"] as const

function pathOf(node: ts.Expression | undefined): string | null {
  if (!node || !ts.isArrayLiteralExpression(node)) return null
  return node.elements.map((e) => (ts.isStringLiteralLike(e) || ts.isNumericLiteral(e) ? e.text : "*")).join(".")
}

/** A template literal with something pasted into it, anywhere in the expression of a text. */
function pastedIn(node: ts.Expression | undefined): string | null {
  if (!node) return null
  if (ts.isTemplateExpression(node)) return node.getText().slice(0, 80)
  if (ts.isParenthesizedExpression(node)) return pastedIn(node.expression)
  if (ts.isConditionalExpression(node)) return pastedIn(node.whenTrue) ?? pastedIn(node.whenFalse)
  if (ts.isBinaryExpression(node)) return pastedIn(node.left) ?? pastedIn(node.right)
  if (ts.isAsExpression(node)) return pastedIn(node.expression)
  return null
}

/** Every caution, refusal and fault between fields that the sources of a module make. */
export function sitesOf(module: string): readonly Site[] {
  const folder = join(root, "src", module)
  return readdirSync(folder, { recursive: true })
    .map(String)
    .filter((file) => file.endsWith(".ts"))
    .flatMap((file) => {
      const source = ts.createSourceFile(file, readFileSync(join(folder, file), "utf8"), ts.ScriptTarget.ES2022, true)
      const sites: Site[] = []
      const visit = (node: ts.Node): void => {
        if (ts.isCallExpression(node) && ts.isIdentifier(node.expression)) {
          const makes = makers.find((maker) => maker === (node.expression as ts.Identifier).text)
          if (makes) {
            const [first, second, third] = node.arguments
            const texts = makes === "caution" ? [third] : makes === "refuse" ? [second] : [second, third]
            sites.push({
              place: `${module}/${file}:${source.getLineAndCharacterOfPosition(node.getStart()).line + 1}`,
              makes,
              name: makes === "inconsistent" ? pathOf(first) : first && ts.isStringLiteralLike(first) ? first.text : null,
              pasted: texts.map(pastedIn).find(Boolean) ?? null,
            })
          }
        }
        ts.forEachChild(node, visit)
      }
      visit(source)
      return sites
    })
}
