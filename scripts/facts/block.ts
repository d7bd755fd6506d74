// The list of symbols and of sources in a solver's comment.
import { type AnyField, type AnyOutField, citation, type Either, type Source, type Step } from "../../src/solver/index.js"
import { BLOCK, wrapped } from "./comment.js"
import { type Facts, inputFacts, resultFacts, stepTail, tailOf } from "./tail.js"

/** A solver as the generator reads it. */
export interface Described {
  readonly title: string
  readonly input: Readonly<Record<string, AnyField>>
  readonly output: Readonly<Record<string, AnyOutField>>
  readonly either: readonly Either[]
  readonly formulae: readonly Step[]
  readonly sources: readonly Source[]
}

type Fields<F> = Readonly<Record<string, F>>

/** A set of fields inside a field: a group's, a list entry's, one for each word of a variant. */
export interface Part<F> {
  /** The word in `type` that stands for it, in a variant. */
  readonly word?: string
  readonly label: string
  readonly fields: Fields<F>
  readonly either?: readonly Either[]
}

/** The sets of fields inside a field. */
export function partsOf<F extends AnyField | AnyOutField>(field: F): readonly Part<F>[] {
  if (field.kind === "group") return [field as unknown as Part<F>]
  if (field.kind === "list") return partsOf(field.of as unknown as F)
  return field.kind === "variant" ? Object.entries(field.of).map(([word, part]) => ({ ...(part as unknown as Part<F>), word })) : []
}

const quoted = (words: readonly (string | readonly string[])[], last: string): string =>
  words
    .map((word) => (typeof word === "string" ? `\`${word}\`` : word.map((part) => `\`${part}\``).join(" with ")))
    .join(", ")
    .replace(/, (?=[^,]*$)/, ` ${last} `)

/** A rule between fields that stand for one another. */
function ruleText(rule: Either): string {
  if ("together" in rule) return `${quoted(rule.together, "and")} only together`
  if ("given" in rule) return `\`${rule.given}\` only beside ${quoted(rule.needs, "or")}`
  if ("exactlyOne" in rule) return `exactly one of ${quoted(rule.exactlyOne, "and")}`
  return "atMostOne" in rule ? `at most one of ${quoted(rule.atMostOne, "and")}` : `at least one of ${quoted(rule.atLeastOne, "and")}`
}

interface Line {
  readonly depth: number
  readonly text: string
}

function linesOf<F extends AnyField | AnyOutField>(part: Part<F>, facts: (field: F) => Facts, depth = 0): Line[] {
  const lines = Object.entries(part.fields).flatMap(([key, field]): Line[] => [
    { depth, text: `\`${key}\`: ${field.label} ${tailOf(facts(field))}` },
    ...partsOf(field).flatMap((inner) => {
      if (inner.word === undefined) return linesOf(inner, facts, depth + 1)
      return [{ depth: depth + 1, text: `\`${inner.word}\`: ${inner.label}` }, ...linesOf(inner, facts, depth + 2)]
    }),
  ])
  return [...lines, ...(part.either ?? []).map((rule) => ({ depth, text: ruleText(rule) }))]
}

/** A whole rig has more fields than a hover can show: only the outermost are listed then. */
const MOST = 60
const WIDTH = 116

/** A line for each input, those of a group under it. */
function inputs(whole: Part<AnyField>): string[] {
  const all = linesOf(whole, inputFacts)
  const shown = all.length > MOST ? all.filter(({ depth }) => depth === 0) : all
  return shown.flatMap(({ depth, text }) => {
    const indent = "  ".repeat(depth)
    return wrapped(`- ${text}`, WIDTH - indent.length, "  ").map((line) => indent + line)
  })
}

/** The outermost results in one paragraph. */
const results = (whole: Part<AnyOutField>): string[] =>
  wrapped(
    `${linesOf(whole, resultFacts)
      .filter(({ depth }) => depth === 0)
      .map(({ text }) => text)
      .join("; ")}.`,
    WIDTH,
  )

function symbolsOf<F extends AnyField | AnyOutField>(fields: Fields<F>): string[] {
  return Object.values(fields).flatMap((field) => {
    const inner = partsOf(field).flatMap((part) => symbolsOf(part.fields))
    return "symbol" in field && field.symbol ? [field.symbol] : inner
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

/** What a solver takes, a line for each input. */
export const inputLines = ({ input, either }: Described): string[] => inputs({ label: "", fields: input, either })

/** What the description says of a solver, in the lines of its comment. */
export function solverBlock(solver: Described): string[] {
  const symbols = between(solver)
  const sources = [...new Set(solver.sources.map(citation))]
  return [
    BLOCK,
    ...inputLines(solver),
    "",
    "**Results**",
    "",
    ...results({ label: "", fields: solver.output }),
    ...(symbols.length ? ["", "**Symbols of the working**", "", ...wrapped(`${symbols.join("; ")}.`, WIDTH)] : []),
    "",
    "**Sources**",
    ...sources.flatMap((source) => wrapped(`- ${source}`, WIDTH, "  ")),
  ]
}
