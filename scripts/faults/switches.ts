import ts from "typescript"
import type { Edit, Fault, Watch } from "./fault.js"

type Form = Edit["form"] | "watch" | "eager"
type Switched = Omit<Edit, "form"> & { readonly form: Form; readonly n: number }

/** The text of a file with every fault in it behind a switch: `$n` is the number of the fault that is on. */
export function switched(text: string, faults: readonly Fault[]): string {
  return rendered(text, faults, [], withSwitches)
}

/**
 * The text of a file that notes in `$h` which faults would make a difference where it runs: those whose place is
 * reached, and where that can be told, whose value would be another one. Constants note who reads them.
 */
export function marked(text: string, faults: readonly Fault[], watches: readonly Watch[]): string {
  return rendered(text, faults, watches, withMarks)
}

type Wrap = (inner: string, of: (...forms: Form[]) => readonly Switched[]) => string

function rendered(text: string, faults: readonly Fault[], watches: readonly Watch[], wrap: Wrap): string {
  const edits = faults.flatMap((fault) => fault.edits.map((edit): Switched => ({ ...edit, n: fault.n })))
  edits.push(...watches.map((watch): Switched => ({ ...watch, form: "watch", text: "" })))
  edits.push(...definitionsIn(text))
  // outer before inner
  edits.sort((a, b) => a.start - b.start || b.end - a.end)
  return render(text, 0, text.length, edits, wrap)
}

/** Whether a function makes a solver's description, which is data though it is made when first asked for. */
export function isDefinition(node: ts.Node): boolean {
  if (!ts.isArrowFunction(node) || node.parameters.length > 0) return false
  return ts.isCallExpression(node.parent) && node.parent.expression.getText() === "solver"
}

/** The descriptions of solvers in a file: made when the module loads, so that what is planted in them is traced as other data is. */
function definitionsIn(text: string): Switched[] {
  const found: Switched[] = []
  const file = ts.createSourceFile("planted.ts", text, ts.ScriptTarget.Latest, true)
  const visit = (node: ts.Node): void => {
    if (isDefinition(node)) found.push({ start: node.getStart(file), end: node.end, form: "eager", text: "", n: 0 })
    ts.forEachChild(node, visit)
  }
  visit(file)
  return found
}

function render(text: string, start: number, end: number, edits: readonly Switched[], wrap: Wrap): string {
  let out = ""
  let at = start
  for (let i = 0; i < edits.length; ) {
    const first = edits[i] as Switched
    const within = edits.slice(i).filter((e) => e.start < first.end)
    const here = within.filter((e) => e.start === first.start && e.end === first.end)
    const inner = render(
      text,
      first.start,
      first.end,
      within.filter((e) => !here.includes(e)),
      wrap,
    )
    out += text.slice(at, first.start) + wrap(inner, (...forms) => here.filter((e) => forms.includes(e.form)))
    at = first.end
    i += within.length
  }
  return out + text.slice(at, end)
}

const eager = (inner: string) => `(($make) => { const $made = $make(); return () => $made })(${inner})`

const withSwitches: Wrap = (inner, of) => {
  if (of("eager").length) return eager(inner)
  const statements = of("statement")
  if (statements.length) return `if (${statements.map((e) => `$n !== ${e.n}`).join(" && ")}) { ${inner} }`
  const values = of("expression", "effect", "shorthand")
  const [element] = of("element")
  const choices = values.map((e) => `$n === ${e.n} ? (${e.text}) : `).join("")
  const out = values.length ? placed(inner, `(${choices}(${inner}))`, of) : inner
  return element ? `...($n === ${element.n} ? [] : [${out}])` : out
}

const withMarks: Wrap = (inner, of) => {
  if (of("eager").length) return eager(inner)
  const noted = (edits: readonly Switched[]) => edits.map((e) => `$h[${e.n}] = 1`)
  const statements = of("statement")
  if (statements.length) return `{ ${noted(statements).join("; ")}; ${inner} }`
  const values = of("expression", "effect", "shorthand")
  const [told, untold] = [values.filter((e) => e.isPure), values.filter((e) => !e.isPure)]
  let out = inner
  if (told.length) {
    // what is marked already is not reckoned again
    const compared = told.map((e) => `$h[${e.n}] || Object.is($v, (${e.text})) || ($h[${e.n}] = 1)`)
    out = `(($v) => (${compared.join(", ")}, $v))(${out})`
  }
  const plain = noted([...untold, ...of("element")])
  if (plain.length) out = `(${plain.join(", ")}, (${out}))`
  if (values.length) out = placed(inner, out, of)
  const [watch] = of("watch")
  return watch ? `$env.watch(${watch.n}, () => (${out}))` : out
}

function placed(inner: string, out: string, of: Parameters<Wrap>[1]): string {
  if (of("shorthand").length) return `${inner}: ${out}`
  // a line that began with a bracket would go on with the one before it
  return of("effect").length ? `void ${out}` : out
}
