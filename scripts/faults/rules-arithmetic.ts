import ts from "typescript"
import type { Edit, FaultKind } from "./fault.js"
import type { Place, Proposal, Rule } from "./plant.js"

const K = ts.SyntaxKind

function replace(kind: FaultKind, node: ts.Node, after: string, { file }: Place): Proposal {
  const form = ts.isExpressionStatement(node.parent) ? "effect" : "expression"
  const edit: Edit = { start: node.getStart(file), end: node.end, form, text: after, isPure: isPure(node) }
  return { kind, at: node, after, edits: [edit] }
}

const withOperator = (node: ts.BinaryExpression, operator: string, { text }: Place) => `${text(node.left)} ${operator} ${text(node.right)}`

/** Plus for minus, a minus lost. */
export const sign: Rule = (node, place) => {
  const swapped: Partial<Record<ts.SyntaxKind, string>> = {
    [K.PlusToken]: "-",
    [K.MinusToken]: "+",
    [K.PlusEqualsToken]: "-=",
    [K.MinusEqualsToken]: "+=",
  }
  if (ts.isPrefixUnaryExpression(node) && node.operator === K.MinusToken && !isInField(node))
    return [replace("sign", node, place.text(node.operand), place)]
  if (!ts.isBinaryExpression(node)) return []
  const other = swapped[node.operatorToken.kind]
  if (!other || !place.types.isNumber(node.left) || !place.types.isNumber(node.right) || isInForHeader(node)) return []
  return [replace("sign", node, withOperator(node, other, place), place)]
}

/** A comparison of numbers at its edge and turned round; an equality of words or numbers turned round. */
export const comparison: Rule = (node, place) => {
  if (!ts.isBinaryExpression(node)) return []
  const { left, right, operatorToken } = node
  const orders: Partial<Record<ts.SyntaxKind, [edge: string, round: string]>> = {
    [K.LessThanToken]: ["<=", ">="],
    [K.LessThanEqualsToken]: ["<", ">"],
    [K.GreaterThanToken]: [">=", "<="],
    [K.GreaterThanEqualsToken]: [">", "<"],
  }
  const order = orders[operatorToken.kind]
  const isHeader = isInForHeader(node)
  if (order && place.types.isNumber(left) && place.types.isNumber(right) && !isHeader)
    return [
      replace("edge", node, withOperator(node, order[0], place), place),
      replace("comparison", node, withOperator(node, order[1], place), place),
    ]
  const equal = operatorToken.kind === K.EqualsEqualsEqualsToken
  if (!equal && operatorToken.kind !== K.ExclamationEqualsEqualsToken) return []
  const isPlain = (n: ts.Node) => place.types.isNumber(n) || place.types.isString(n)
  if (!isPlain(left) || !isPlain(right)) return []
  return [replace("comparison", node, withOperator(node, equal ? "!==" : "===", place), place)]
}

/** Each term of a sum and each factor of a product left out once. */
export const term: Rule = (node, place) => {
  if (!ts.isBinaryExpression(node)) return []
  const { left, right, operatorToken } = node
  if (!place.types.isNumber(left) || !place.types.isNumber(right)) return []
  const kind = operatorToken.kind
  const isSum = kind === K.PlusToken
  const isProduct = kind === K.AsteriskToken
  if (!isSum && !isProduct && kind !== K.MinusToken && kind !== K.SlashToken) return []
  const found = [replace("term", node, place.text(left), place)]
  const family = isSum || kind === K.MinusToken ? [K.PlusToken, K.MinusToken] : [K.AsteriskToken, K.SlashToken]
  // the first of a chain is the left of its innermost link
  const isChained = ts.isBinaryExpression(left) && family.includes(left.operatorToken.kind)
  if ((isSum || isProduct) && !isChained) found.push(replace("term", node, place.text(right), place))
  return found
}

const counted = ["at", "slice", "splice", "toFixed", "toPrecision", "padStart", "padEnd", "repeat", "fill", "substring", "charAt", "flat"]

/** A number 3 % too large. Indices, counts and tolerances (1e-6 and less) stay: 3 % there is no slip anyone could see. */
export const constant: Rule = (node, place) => {
  if (!ts.isNumericLiteral(node) || Number(node.text) === 0) return []
  const { parent } = node
  if (ts.isPropertyAssignment(parent) && parent.name === node) return []
  if (ts.isElementAccessExpression(parent) && parent.argumentExpression === node) return []
  if (isInForHeader(node) || isInIndex(node)) return []
  if (ts.isCallExpression(parent) && ts.isPropertyAccessExpression(parent.expression) && counted.includes(parent.expression.name.text))
    return []
  if (ts.isPropertyAssignment(parent) && place.text(parent.name) === "length") return []
  if (isInField(node)) return []
  const isTolerance = /^1e-(?:[6-9]|\d\d)$/.test(place.text(node))
  const data = !place.isInFunction && isInTable(node)
  if (isTolerance && !data) return []
  const value = Number(place.text(node).replaceAll("_", ""))
  return [replace(data ? "cell" : "constant", node, String(Number((value * 1.03).toPrecision(12))), place)]
}

/** Two numbers or two like things in each other's place, in a call or in an object. */
export const argument: Rule = (node, place) => {
  const { text, types, file } = place
  if (ts.isCallExpression(node)) {
    const callee = text(node.expression)
    if (/^Math\.(min|max|hypot)$|^(caution|refuse|inconsistent|issue|fill|solver|at)$|\.(push|with|slice)$/.test(callee)) return []
    return node.arguments.slice(1).flatMap((b, i) => {
      const a = node.arguments[i] as ts.Expression
      if (ts.isSpreadElement(a) || ts.isSpreadElement(b) || text(a) === text(b) || !types.areAlike(a, b)) return []
      const pure = isPure(a) && isPure(b)
      const edits = [
        { start: a.getStart(file), end: a.end, form: "expression", text: text(b), isPure: pure },
        { start: b.getStart(file), end: b.end, form: "expression", text: text(a), isPure: pure },
      ] as const
      return [{ kind: "argument", at: node, before: `${text(a)}, ${text(b)}`, after: `${text(b)}, ${text(a)}`, edits } as const]
    })
  }
  if (!ts.isObjectLiteralExpression(node) || !place.isInFunction) return []
  return node.properties.slice(1).flatMap((b, i) => {
    const a = node.properties[i] as ts.ObjectLiteralElementLike
    const [x, y] = [valueIn(a), valueIn(b)]
    if (!x || !y || text(x) === text(y) || !types.isNumber(x) || !types.isNumber(y)) return []
    const edit = (from: ts.ObjectLiteralElementLike, value: ts.Expression, other: ts.Expression): Edit => ({
      start: value.getStart(file),
      end: value.end,
      form: ts.isShorthandPropertyAssignment(from) ? "shorthand" : "expression",
      text: text(other),
      isPure: isPure(value) && isPure(other),
    })
    const before = `${text(a)}, ${text(b)}`
    const after = `${text(a.name as ts.Node)}: ${text(y)}, ${text(b.name as ts.Node)}: ${text(x)}`
    return [{ kind: "argument", at: a, before, after, edits: [edit(a, x, y), edit(b, y, x)] } as const]
  })
}

const twins: Readonly<Record<string, string>> = {
  sin: "cos",
  cos: "sin",
  asin: "acos",
  acos: "asin",
  tan: "atan",
  max: "min",
  min: "max",
  floor: "ceil",
  ceil: "floor",
  sinh: "cosh",
  cosh: "sinh",
}

/** cos for sin, max for min. */
export const twin: Rule = (node, place) => {
  if (!ts.isCallExpression(node) || !isMath(node.expression)) return []
  const other = twins[node.expression.name.text]
  if (!other) return []
  const values = place.file.text.slice(node.expression.end, node.end)
  return [{ ...replace("function", node, `Math.${other}${values}`, place), at: node.expression, after: `Math.${other}` }]
}

function isMath(node: ts.Node): node is ts.PropertyAccessExpression {
  return ts.isPropertyAccessExpression(node) && ts.isIdentifier(node.expression) && node.expression.text === "Math"
}

/** Reckoning it changes nothing. */
function isPure(node: ts.Node): boolean {
  if (ts.isTypeNode(node) || ts.isToken(node)) return true
  if (ts.isCallExpression(node)) return isMath(node.expression) && node.arguments.every(isPure)
  if (ts.isBinaryExpression(node)) {
    const { kind } = node.operatorToken
    if (kind >= K.FirstAssignment && kind <= K.LastAssignment) return false
  }
  if (ts.isPrefixUnaryExpression(node) && (node.operator === K.PlusPlusToken || node.operator === K.MinusMinusToken)) return false
  const isPlain =
    ts.isBinaryExpression(node) ||
    ts.isPrefixUnaryExpression(node) ||
    ts.isParenthesizedExpression(node) ||
    ts.isPropertyAccessExpression(node) ||
    ts.isElementAccessExpression(node) ||
    ts.isConditionalExpression(node) ||
    ts.isAsExpression(node) ||
    ts.isNonNullExpression(node) ||
    ts.isIdentifier(node)
  return isPlain && ts.forEachChild(node, (child) => (isPure(child) ? undefined : true)) !== true
}

function valueIn(property: ts.ObjectLiteralElementLike): ts.Expression | null {
  if (ts.isPropertyAssignment(property)) return property.initializer
  return ts.isShorthandPropertyAssignment(property) ? property.name : null
}

function isWithin(node: ts.Node, test: (parent: ts.Node, child: ts.Node) => boolean): boolean {
  for (let at = node; at.parent && !ts.isFunctionLike(at) && !ts.isBlock(at); at = at.parent) if (test(at.parent, at)) return true
  return false
}
/** How often a loop turns is counted, not measured. */
const isInForHeader = (node: ts.Node) => isWithin(node, (parent, child) => ts.isForStatement(parent) && parent.statement !== child)
const isInIndex = (node: ts.Node) =>
  isWithin(node, (parent, child) => ts.isElementAccessExpression(parent) && parent.argumentExpression === child)
const isInTable = (node: ts.Node) => isWithin(node, (parent) => ts.isObjectLiteralExpression(parent) || ts.isArrayLiteralExpression(parent))

/** Numbers of a field's description are limits, not constants: see rules-fields. */
const isInField = (node: ts.Node) => isWithin(node, (parent) => ts.isObjectLiteralExpression(parent) && isField(parent))

/** The description of a field: it has a kind and a label. */
export function isField(node: ts.ObjectLiteralExpression): boolean {
  const names = node.properties.map((p) => (p.name && ts.isIdentifier(p.name) ? p.name.text : ""))
  return names.includes("kind") && names.includes("label")
}
