import ts from "typescript"
import type { Edit, FaultKind } from "./fault.js"
import type { Place, Proposal, Rule } from "./plant.js"
import { isField } from "./rules-arithmetic.js"

const limits = ["min", "max", "above", "below"]

/** A limit or a default of an input field moved by 3 %, or by one where the field counts. */
export const field: Rule = (node, place) => {
  if (!ts.isObjectLiteralExpression(node) || !isField(node)) return []
  const { text, file } = place
  const property = (name: string) =>
    node.properties.find((p) => ts.isPropertyAssignment(p) && text(p.name) === name) as ts.PropertyAssignment
  const isCount = property("whole") !== undefined || text(property("kind")?.initializer ?? node) === '"list"'
  return [...limits, "default"].flatMap((name) => {
    const value = property(name)?.initializer
    const after = value && moved(text(value), isCount)
    if (!value || !after) return []
    const kind: FaultKind = name === "default" ? "default" : "limit"
    const edit: Edit = { start: value.getStart(file), end: value.end, form: "expression", text: after }
    return [{ kind, at: value, before: `${name}: ${text(value)}`, after: `${name}: ${after}`, edits: [edit] }]
  })
}

/** `"5 mm"` → `"5.15 mm"`, `2` → `2.06`, and where things are counted `2` → `3`; null for what is no number, or is 0. */
function moved(text: string, isCount: boolean): string | null {
  const parts = /^(["']?)(-?[\d.]+(?:e[+-]?\d+)?)( .*)?\1$/i.exec(text)
  const value = Number(parts?.[2])
  if (!parts || !Number.isFinite(value) || (value === 0 && !isCount)) return null
  const next = isCount ? value + 1 : Number((value * 1.03).toPrecision(12))
  return `${parts[1]}${next}${parts[3] ?? ""}${parts[1]}`
}

/** A caution with a severity next to its own. */
export const severity: Rule = (node, place) => {
  if (!ts.isCallExpression(node) || place.text(node.expression) !== "caution") return []
  const given = node.arguments[1]
  const found: Proposal[] = []
  const look = (at: ts.Node): void => {
    const other = ts.isStringLiteral(at) ? { note: "caution", caution: "note", warning: "caution" }[at.text] : undefined
    if (other) {
      const after = JSON.stringify(other)
      found.push({ kind: "severity", at, after, edits: [{ start: at.getStart(place.file), end: at.end, form: "expression", text: after }] })
    }
    // not the words that decide between two severities
    if (ts.isConditionalExpression(at)) [at.whenTrue, at.whenFalse].forEach(look)
    else if (!ts.isBinaryExpression(at)) ts.forEachChild(at, look)
  }
  if (given) look(given)
  return found
}

const findings: readonly [type: string, kind: FaultKind][] = [
  ["Caution", "caution"],
  ["Issue", "between"],
]

/** A caution or a fault between fields that never gets onto the list. */
export const finding: Rule = (node, place) => {
  const { types, text, file } = place
  const isPush =
    ts.isCallExpression(node) && ts.isPropertyAccessExpression(node.expression) && ["push", "unshift"].includes(node.expression.name.text)
  const items = isPush ? node.arguments : ts.isArrayLiteralExpression(node) ? node.elements : []
  const found: Proposal[] = []
  for (const [type, kind] of findings) {
    for (const item of items) {
      if (ts.isSpreadElement(item) || !types.isNamed(item, type)) continue
      const edit: Edit = { start: item.getStart(file), end: item.end, form: "element", text: "" }
      found.push({ kind, at: item, before: shortened(text(item)), after: "nothing", edits: [edit] })
    }
    const callback = ts.isCallExpression(node) && ts.isPropertyAccessExpression(node.expression) ? node.arguments[0] : undefined
    const isMap = callback && ts.isArrowFunction(callback) && !ts.isBlock(callback.body) && types.isNamed(callback.body, type)
    if (!isMap || !types.isListOf(node, type)) continue
    const edit: Edit = { start: node.getStart(file), end: node.end, form: "expression", text: "[]" }
    found.push({ kind, at: node, before: shortened(text(node)), after: "[]", edits: [edit] })
  }
  return found
}

/** One of several cautions that a function chooses from: the next one comes in its place. */
export const chosen: Rule = (node, place) => {
  const { types, text, file } = place
  if (!ts.isReturnStatement(node) || !node.expression || !ts.isCallExpression(node.expression)) return []
  const fn = ts.findAncestor(node, ts.isFunctionLike)
  if (!fn || !types.returns(fn, "Caution") || isOnlyWay(node, "Caution", place)) return []
  const edit: Edit = { start: node.getStart(file), end: node.end, form: "statement", text: "" }
  return [{ kind: "caution", at: node, before: shortened(text(node)), after: "nothing", edits: [edit] }]
}

/** A refusal that never comes: the condition before it never holds. */
export const refusal: Rule = (node, place) => {
  const { types, text, file } = place
  const isRefusal = (at: ts.Node) => ts.isCallExpression(at) && types.isNamed(at, "NoSolution")
  if (ts.isConditionalExpression(node)) {
    const [yes, no] = [isRefusal(node.whenTrue), isRefusal(node.whenFalse)]
    if (yes === no) return []
    const after = text(yes ? node.whenFalse : node.whenTrue)
    const edit: Edit = { start: node.getStart(file), end: node.end, form: "expression", text: after }
    return [{ kind: "refusal", at: node, before: shortened(text(node)), after: shortened(after), edits: [edit] }]
  }
  if (!ts.isReturnStatement(node) || !node.expression || !isRefusal(node.expression)) return []
  const condition = conditionOf(node)
  if (condition) {
    const edit: Edit = { start: condition.getStart(file), end: condition.end, form: "expression", text: "false", isPure: true }
    return [{ kind: "refusal", at: node, before: `if (${text(condition)}) ${shortened(text(node))}`, after: "never", edits: [edit] }]
  }
  if (isOnlyWay(node, "NoSolution", place)) return []
  const edit: Edit = { start: node.getStart(file), end: node.end, form: "statement", text: "" }
  return [{ kind: "refusal", at: node, before: shortened(text(node)), after: "nothing", edits: [edit] }]
}

/** In a function that only ever makes such a thing, and in one way: to take that away is left to its callers. */
function isOnlyWay(node: ts.ReturnStatement, type: string, { types }: Place): boolean {
  const fn = ts.findAncestor(node, ts.isFunctionLike)
  if (!fn || !types.returns(fn, type)) return false
  let ways = 0
  const look = (at: ts.Node): void => {
    if (ts.isReturnStatement(at)) ways++
    if (at === fn || !ts.isFunctionLike(at)) ts.forEachChild(at, look)
  }
  look(fn)
  return ways === 1
}

/** The condition of the `if` that a statement ends. */
function conditionOf(node: ts.Statement): ts.Expression | null {
  const branch = ts.isBlock(node.parent) && node.parent.statements.at(-1) === node ? node.parent : node
  return ts.isIfStatement(branch.parent) && branch.parent.thenStatement === branch ? branch.parent.expression : null
}

const shortened = (text: string) => {
  const line = text.replace(/\s+/g, " ")
  return line.length > 90 ? `${line.slice(0, 87)}...` : line
}
