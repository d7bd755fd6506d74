import type { MathNode } from "mathjs"
import { escapeXml } from "../drawing/index.js"
import { nameOf } from "./line.js"
import { isGreek, isUnitName, partsOf } from "./tex.js"
import { asWritten } from "./units.js"

const LETTERS: Readonly<Record<string, string>> = {
  alpha: "α",
  beta: "β",
  gamma: "γ",
  delta: "δ",
  epsilon: "ε",
  zeta: "ζ",
  eta: "η",
  theta: "θ",
  iota: "ι",
  kappa: "κ",
  lambda: "λ",
  mu: "μ",
  nu: "ν",
  xi: "ξ",
  pi: "π",
  rho: "ρ",
  sigma: "σ",
  tau: "τ",
  phi: "φ",
  chi: "χ",
  psi: "ψ",
  omega: "ω",
  Gamma: "Γ",
  Delta: "Δ",
  Theta: "Θ",
  Lambda: "Λ",
  Xi: "Ξ",
  Pi: "Π",
  Sigma: "Σ",
  Phi: "Φ",
  Psi: "Ψ",
  Omega: "Ω",
}
const letter = (name: string) => (isGreek(name) ? (LETTERS[name] as string) : name)

/** A symbol as a variable: its name italic, what stands below it upright. */
export function symbolMathml(symbol: string): string {
  const [name, below] = partsOf(symbol)
  const variable = `<mi mathvariant="italic">${escapeXml(letter(name))}</mi>`
  return below === ""
    ? variable
    : `<msub>${variable}<mi mathvariant="normal">${escapeXml(below.split("_").map(letter).join(", "))}</mi></msub>`
}

/** What stands in the place of a symbol: a number and its unit, both upright. */
const upright = (text: string) => `<mtext>${escapeXml(text)}</mtext>`
const op = (sign: string) => `<mo>${escapeXml(sign)}</mo>`
const row = (...parts: readonly string[]) => `<mrow>${parts.join("")}</mrow>`

const SIGNS: Readonly<Record<string, string>> = {
  "*": "⋅",
  ".*": "⋅",
  "-": "−",
  "<=": "≤",
  ">=": "≥",
  "==": "=",
  "!=": "≠",
  and: "and",
  or: "or",
}

type Part = MathNode & {
  readonly op: string
  readonly args: readonly MathNode[]
  readonly content: MathNode
  readonly items: readonly MathNode[]
  readonly fn: MathNode
  readonly object: MathNode
  readonly value: number
}
const bare = (node: MathNode): MathNode => (node.type === "ParenthesisNode" ? bare((node as Part).content) : node)

/**
 * MathML of a formula.
 *
 * @param operands - what stands in the place of a symbol or a unit; without, symbols are variables and units are upright
 */
export function mathmlOf(node: MathNode, symbols: { has(name: string): boolean }, operands: Readonly<Record<string, string>> = {}): string {
  const of = (part: MathNode): string => {
    const { op: sign, args, content, items, fn, object } = part as Part
    if (part.type === "ConstantNode") return `<mn>${escapeXml(String((part as Part).value))}</mn>`
    if (part.type === "SymbolNode") {
      const name = nameOf(part)
      if (Object.hasOwn(operands, name)) return upright(operands[name] as string)
      return isUnitName(name, symbols) ? `<mi mathvariant="normal">${escapeXml(asWritten(name))}</mi>` : symbolMathml(name)
    }
    if (part.type === "ParenthesisNode") return row(op("("), of(content), op(")"))
    if (part.type === "ArrayNode") return row(op("["), items.map(of).join(op(",")), op("]"))
    if (part.type === "OperatorNode") {
      const [first, second] = args as readonly [MathNode, MathNode | undefined]
      if (second === undefined) return row(op(SIGNS[sign] ?? sign), of(first))
      if (sign === "/" || sign === "./") return `<mfrac>${row(of(bare(first)))}${row(of(bare(second)))}</mfrac>`
      if (sign === "^" || sign === ".^") return `<msup>${row(of(first))}${row(of(bare(second)))}</msup>`
      return row(args.map(of).join(op(SIGNS[sign] ?? sign)))
    }
    if (part.type === "FunctionNode") {
      const name = nameOf(fn)
      if (name === "sqrt") return `<msqrt>${of(args[0] as MathNode)}</msqrt>`
      if (name === "abs") return row(op("|"), of(args[0] as MathNode), op("|"))
      return row(`<mi mathvariant="normal">${escapeXml(name)}</mi>`, op("("), args.map(of).join(op(",")), op(")"))
    }
    if (part.type === "AccessorNode") return row(of(object), upright(part.toString().slice(object.toString().length)))
    // a condition or a function of its own, in its own words
    return upright(part.toString())
  }
  return of(node)
}
