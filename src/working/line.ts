import type { MathNode } from "mathjs"
import { formatNumber, type Kind } from "../quantity/index.js"
import { math } from "./mathjs.js"
import { asWritten, lineUnit, mathOffset } from "./units.js"

/** Figures of an answer: one more than people read. */
export const DIGITS = 4
/** Entries of a list that a line still holds. */
const MOST_ENTRIES = 40
/** Figures that any number has here: more would be its rounding. */
const MOST_DIGITS = 15

/** What a symbol stands for in a line. */
export interface Operand {
  readonly kind: Kind | "number"
  readonly value: Answer
}

type Answer = number | readonly number[]

/** A line that a pocket calculator follows: every number in SI units, with the figures that the answer needs. */
export interface Line {
  /** The formula, of its conditions only the branch that is followed. */
  readonly taken: string
  /** What stands for each symbol and unit in it. */
  readonly operands: Readonly<Record<string, string>>
  /** The formula with these in their places. */
  readonly numbers: string
  /** What each side comes to, in the units of the line. */
  readonly answers: readonly Answer[]
}

const inLine = ({ kind, value }: Operand): Operand => ({
  kind,
  value: typeof value === "number" ? value + mathOffset(kind) : value.map((v) => v + mathOffset(kind)),
})

/** A value in the one system of units of a line. */
export function inSi(operand: Operand, digits = DIGITS): string {
  const { kind, value } = inLine(operand)
  const unit = lineUnit(kind)
  return `${figures(value, digits)}${unit === "" ? "" : ` ${unit}`}`
}

const figures = (value: Answer, digits: number): string =>
  typeof value === "number"
    ? formatNumber(value, digits)
    : `[${value
        .slice(0, MOST_ENTRIES)
        .map((v) => formatNumber(v, digits))
        .join(", ")}${value.length > MOST_ENTRIES ? ", …" : ""}]`

const rounded = (value: Answer, digits: number): unknown =>
  typeof value === "number" ? Number(formatNumber(value, digits)) : math.matrix(value.map((v) => Number(formatNumber(v, digits))))

/** The same formula with each condition decided: what is not followed is left out. */
export function decided(node: MathNode, scope: ReadonlyMap<string, unknown>): MathNode {
  const own = paramsIn(node)
  return node.transform((part: MathNode) => {
    let here = part as MathNode & { condition?: MathNode; trueExpr?: MathNode; falseExpr?: MathNode }
    // a condition on the parameter of a function of its own is decided for each entry
    while (here.type === "ConditionalNode" && here.condition && isKnown(here.condition, scope, own))
      here = (here.condition.evaluate(new Map(scope) as never) ? here.trueExpr : here.falseExpr) as typeof here
    return here
  })
}

/** What the functions in a formula call their parameters. */
function paramsIn(node: MathNode): ReadonlySet<string> {
  const own = new Set<string>()
  node.traverse((part) => {
    if (part.type === "FunctionAssignmentNode") for (const p of (part as unknown as { params: string[] }).params) own.add(p)
  })
  return own
}

const isKnown = (node: MathNode, scope: ReadonlyMap<string, unknown>, own: ReadonlySet<string>): boolean =>
  node
    .filter((part, path) => part.type === "SymbolNode" && path !== "fn")
    .every((part) => {
      const name = nameOf(part)
      if (own.has(name)) return false
      return scope.has(name) || name in math || math.Unit.isValuelessUnit(name)
    })

export const nameOf = (node: MathNode): string => (node as unknown as { name: string }).name

/** Symbols of a formula and units named in it, by name; not its functions, nor what they call their parameters. */
function namesIn(node: MathNode, known: ReadonlyMap<string, Operand>): { symbols: string[]; units: string[] } {
  const own = paramsIn(node)
  const found = { symbols: new Set<string>(), units: new Set<string>() }
  node.traverse((part, path) => {
    if (part.type !== "SymbolNode" || path === "fn") return
    const name = nameOf(part)
    if (own.has(name)) return
    if (known.has(name)) found.symbols.add(name)
    else if (!(name in math) || name === "min" || name === "h") {
      if (math.Unit.isValuelessUnit(name)) found.units.add(name)
    }
  })
  return { symbols: [...found.symbols], units: [...found.units] }
}

/** Units that formulae spell out where a symbol has their letter. */
const SPELLED: Readonly<Record<string, string>> = {
  ampere: "A",
  volt: "V",
  meter: "m",
  second: "s",
  watt: "W",
  newton: "N",
  kelvin: "K",
  joule: "J",
}

/** A unit that a formula names: its size in SI, and how that reads. */
function unitInSi(name: string): { size: number; text: string } {
  const si = math.unit(1, name).toSI()
  const size = si.toNumeric() as number
  if (size === 1) return { size, text: SPELLED[name] ?? asWritten(name) }
  return { size, text: `(${formatNumber(size, 15)} ${asWritten(si.formatUnits())})` }
}

const inPlace = (text: string): string => (/^[\d.]+$/.test(text) ? text : `(${text})`)

/** Text of a formula with every name in `operands` replaced. */
export function put(node: MathNode, operands: Readonly<Record<string, string>>): string {
  return node
    .transform((part: MathNode, path: string) => {
      const name = part.type === "SymbolNode" && path !== "fn" ? nameOf(part) : ""
      return name !== "" && Object.hasOwn(operands, name) ? new math.SymbolNode(`\uE000${name}\uE001`) : part
    })
    .toString()
    .replace(/\uE000(.*?)\uE001/g, (_, name: string) => operands[name] ?? name)
}

/** Text of an answer, for comparing: a number of four figures, or a list of them. */
const asFigures = (value: unknown): string => {
  if (math.isMatrix(value)) return (value.toArray() as unknown[]).map(asFigures).join()
  return typeof value === "number" ? formatNumber(value, DIGITS) : String(value)
}

const plainly = (value: unknown): Answer => (math.isMatrix(value) ? (value.toArray() as number[]) : Number(value))

/** The sides of an equation, or the one of a formula: a function of its own may have an equals sign in it too. */
export function sidesOf(text: string): readonly string[] {
  let depth = 0
  for (let i = 0; i < text.length; i++) {
    if (text[i] === "(") depth++
    else if (text[i] === ")") depth--
    else if (depth === 0 && text.startsWith(" = ", i)) return [text.slice(0, i), text.slice(i + 3)]
  }
  return [text]
}

/**
 * The line of one or more formulae (the sides of an equation): as few figures as bring a pocket calculator to the answers, from four.
 *
 * @param answers - what each comes to, in the units of a line
 */
export function lineOf(
  formulae: readonly MathNode[],
  scope: ReadonlyMap<string, unknown>,
  known: ReadonlyMap<string, Operand>,
  answers: readonly Answer[],
): Line {
  const nodes = formulae.map((node) => decided(node, scope))
  const names = nodes.map((node) => namesIn(node, known))
  const symbols = [...new Set(names.flatMap((n) => n.symbols))]
  const units = new Map([...new Set(names.flatMap((n) => n.units))].map((name) => [name, unitInSi(name)]))
  const wanted = answers.map((answer) => asFigures(typeof answer === "number" ? answer : math.matrix([...answer])))
  let digits = DIGITS
  let found: unknown[]
  for (; ; digits++) {
    const plain = new Map(scope)
    for (const name of symbols) plain.set(name, rounded(inLine(known.get(name) as Operand).value, digits))
    for (const [name, { size }] of units) plain.set(name, size)
    found = nodes.map((node) => node.evaluate(new Map(plain) as never) as unknown)
    if (digits === MOST_DIGITS || found.every((value, i) => asFigures(value) === wanted[i])) break
  }
  const operands: Record<string, string> = {}
  for (const name of symbols) operands[name] = inPlace(inSi(known.get(name) as Operand, digits))
  for (const [name, { text }] of units) operands[name] = text
  return {
    taken: nodes.map(String).join(" = "),
    operands,
    numbers: nodes.map((node) => put(node, operands)).join(" = "),
    // what is nothing but rounding no line can bring out: there stands what the line comes to
    answers: found.map((value, i) => (asFigures(value) === wanted[i] ? (answers[i] as Answer) : plainly(value))),
  }
}
