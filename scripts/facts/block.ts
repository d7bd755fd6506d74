// The list of symbols and of sources in a solver's comment.
import { type AnyField, type AnyOutField, citation, type Source, type Step } from "../../src/solver/index.js"
import { BLOCK, wrapped } from "./comment.js"
import { type Facts, inputFacts, resultFacts, stepTail, tailOf } from "./tail.js"

/** A solver as the generator reads it. */
export interface Described {
  readonly title: string
  readonly input: Readonly<Record<string, AnyField>>
  readonly output: Readonly<Record<string, AnyOutField>>
  readonly formulae: readonly Step[]
  readonly sources: readonly Source[]
}

type Fields<F> = Readonly<Record<string, F>>

/** Fields of a group, or of a list's entries. */
export function partsOf<F extends AnyField | AnyOutField>(field: F): Fields<F> | undefined {
  if (field.kind === "group") return field.fields as unknown as Fields<F>
  return field.kind === "list" ? partsOf(field.of as unknown as F) : undefined
}

interface Line {
  readonly depth: number
  readonly text: string
}

function linesOf<F extends AnyField | AnyOutField>(fields: Fields<F>, facts: (field: F) => Facts, depth = 0): Line[] {
  return Object.entries(fields).flatMap(([key, field]) => {
    const parts = partsOf(field)
    return [{ depth, text: `\`${key}\`: ${field.label} ${tailOf(facts(field))}` }, ...(parts ? linesOf(parts, facts, depth + 1) : [])]
  })
}

/** A whole rig has more fields than a hover can show: only the outermost are listed then. */
const MOST = 60
const WIDTH = 116

/** A line for each input, those of a group under it. */
function inputs(fields: Fields<AnyField>): string[] {
  const all = linesOf(fields, inputFacts)
  const shown = all.length > MOST ? all.filter(({ depth }) => depth === 0) : all
  return shown.flatMap(({ depth, text }) => {
    const indent = "  ".repeat(depth)
    return wrapped(`- ${text}`, WIDTH - indent.length, "  ").map((line) => indent + line)
  })
}

/** The outermost results in one paragraph. */
const results = (fields: Fields<AnyOutField>): string[] =>
  wrapped(
    `${linesOf(fields, resultFacts)
      .filter(({ depth }) => depth === 0)
      .map(({ text }) => text)
      .join("; ")}.`,
    WIDTH,
  )

function symbolsOf<F extends AnyField | AnyOutField>(fields: Fields<F>): string[] {
  return Object.values(fields).flatMap((field) => {
    const parts = partsOf(field)
    return parts ? symbolsOf(parts) : "symbol" in field && field.symbol ? [field.symbol] : []
  })
}

/** Symbols of the working that are neither given nor answered. */
function between({ input, output, formulae }: Described): string[] {
  const known = new Set([...symbolsOf(input), ...symbolsOf(output)])
  return formulae.flatMap((step) => {
    if (!("symbol" in step) || known.has(step.symbol)) return []
    known.add(step.symbol)
    return [`${step.symbol}: ${step.meaning}${stepTail(step.kind)}`]
  })
}

/** What the description says of a solver, in the lines of its comment. */
export function solverBlock(solver: Described): string[] {
  const symbols = between(solver)
  const sources = [...new Set(solver.sources.map(citation))]
  return [
    BLOCK,
    ...inputs(solver.input),
    "",
    "**Results**",
    "",
    ...results(solver.output),
    ...(symbols.length ? ["", "**Symbols of the working**", "", ...wrapped(`${symbols.join("; ")}.`, WIDTH)] : []),
    "",
    "**Sources**",
    ...sources.flatMap((source) => wrapped(`- ${source}`, WIDTH, "  ")),
  ]
}
