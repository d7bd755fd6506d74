// explain: a page on any solver, from its descriptions.
import * as converter from "../converter/index.js"
import * as drive from "../drive/index.js"
import * as frame from "../frame/index.js"
import * as linkage from "../linkage/index.js"
import * as pack from "../pack/index.js"
import * as rig from "../rig/index.js"
import { type AnyField, type AnyFields, type AnyOutField, type AnyOutFields, citation, display, type Solver } from "../solver/index.js"
import { nearestWord } from "../solver/near.js"
import * as thermoform from "../thermoform/index.js"
import * as wire from "../wire/index.js"
import * as worn from "../worn/index.js"
import { BadInput, columnsOf, type Desk, EXIT, looks, wrapped } from "./desk.js"
import { inputFacts, resultFacts } from "./field-text.js"

type AnySolver = Solver<object, object>
const subjects: Readonly<Record<string, Readonly<Record<string, unknown>>>> = {
  linkage,
  drive,
  pack,
  converter,
  wire,
  frame,
  thermoform,
  worn,
  rig,
}

const isSolver = (one: unknown): one is AnySolver => typeof one === "function" && "title" in one && "formulae" in one && "example" in one

/** Every solver by name, with the subject it is found under. */
const solvers = (): readonly { readonly subject: string; readonly name: string; readonly solver: AnySolver }[] =>
  Object.entries(subjects).flatMap(([subject, module]) =>
    Object.entries(module).flatMap(([name, solver]) => (isSolver(solver) ? [{ subject, name, solver }] : [])),
  )

interface FactsRow {
  readonly name: string
  readonly label: string
  readonly symbol: string | undefined
  readonly value: string | undefined
  readonly given: string | undefined
}

function inputRows(fields: AnyFields, before = ""): FactsRow[] {
  return Object.entries(fields).flatMap(([name, field]) => {
    const path = `${before}${name}`
    return [{ name: path, ...inputFacts(field) }, ...insideOf(field, path)]
  })
}

function insideOf(field: AnyField, path: string): FactsRow[] {
  if (field.kind === "group") return inputRows(field.fields, `${path}.`)
  if (field.kind === "list") return insideOf(field.of, `${path}[]`)
  if (field.kind === "variant") return Object.entries(field.of).flatMap(([type, member]) => inputRows(member.fields, `${path} (${type}).`))
  return []
}

function resultRows(fields: AnyOutFields, before = ""): FactsRow[] {
  return Object.entries(fields).flatMap(([name, field]) => {
    const path = `${before}${name}`
    const of: AnyOutField = field.kind === "list" ? field.of : field
    const inside = of.kind === "group" ? resultRows(of.fields, `${path}${field.kind === "list" ? "[]" : ""}.`) : []
    return [{ name: path, ...resultFacts(field) }, ...inside]
  })
}

const factsOf = ({ name, label, symbol, value, given }: FactsRow) => [name, symbol ?? "", label, [value, given].filter(Boolean).join("; ")]

function formulaLines({ formulae }: AnySolver): { readonly text: string; readonly meaning: string }[] {
  return formulae.map((step) => {
    const { meaning } = step
    if ("is" in step) return { text: `${step.symbol} = ${step.is}${step.when ? `   where ${step.when}` : ""}`, meaning }
    if ("left" in step) return { text: `${step.left} = ${step.right}`, meaning }
    if ("solved" in step) return { text: `${step.solved}: found by iteration`, meaning }
    return { text: `${step.symbol}: from a table or the input`, meaning }
  })
}

/** What a page shows at the most of a long list of fields. */
const MOST_ROWS = 120

function page(desk: Desk, subject: string, name: string, solver: AnySolver): string {
  const title = (text: string) => ["", looks(desk, "bold", text)]
  const rows = (all: readonly FactsRow[]) => [
    ...columnsOf(all.slice(0, MOST_ROWS).map(factsOf), "  "),
    ...(all.length > MOST_ROWS ? [`  … ${all.length - MOST_ROWS} more; --json lists them all`] : []),
  ]
  const answer = solver.attempt(solver.example)
  const shown = answer.ok ? display(answer.value).split("\n") : [answer.error.message]
  return [
    looks(desk, "bold", `${name} (alula/${subject})`),
    wrapped(`${solver.title}.`, desk.columns, ""),
    ...title("Takes"),
    ...rows(inputRows(solver.input as unknown as AnyFields)),
    ...title("Answers"),
    ...rows(resultRows(solver.output as unknown as AnyOutFields)),
    ...title("Formulae"),
    ...formulaLines(solver).flatMap(({ text, meaning }) => [`  ${text}`, `      ${wrapped(meaning, desk.columns, "      ")}`]),
    ...title("Sources"),
    ...solver.sources.map((source) => `  ${wrapped(citation(source), desk.columns, "    ")}`),
    ...title("Example"),
    ...JSON.stringify(solver.example, null, 2)
      .split("\n")
      .map((line) => `  ${line}`),
    ...title("Its answer"),
    ...shown.map((line) =>
      desk.columns === null ? `  ${line}` : `  ${line.length > desk.columns ? wrapped(line.trimEnd(), desk.columns, "    ") : line}`,
    ),
    "",
  ].join("\n")
}

function data(subject: string, name: string, solver: AnySolver): object {
  const answer = solver.attempt(solver.example)
  return {
    name,
    subject,
    title: solver.title,
    inputs: inputRows(solver.input as unknown as AnyFields),
    results: resultRows(solver.output as unknown as AnyOutFields),
    formulae: formulaLines(solver),
    sources: solver.sources.map(citation),
    example: solver.example,
    answer: answer.ok ? answer.value : null,
  }
}

/** A page on one solver, or the list of all. */
export function explain(desk: Desk, name: string | undefined, { json }: { readonly json: boolean }): number {
  const all = solvers()
  if (name === undefined) {
    const list = all.map(({ subject, name: one, solver }) => ({ name: one, subject, title: solver.title }))
    if (json) desk.out(`${JSON.stringify(list, null, 2)}\n`)
    else
      desk.out(
        `${Object.keys(subjects)
          .map((subject) =>
            [
              looks(desk, "bold", subject),
              ...columnsOf(
                list.filter((one) => one.subject === subject).map((one) => [one.name, one.title]),
                "  ",
              ),
              "",
            ].join("\n"),
          )
          .join("\n")}`,
      )
    return EXIT.ok
  }
  const bare = name.replace(/^.*\./, "")
  const found = all.find((one) => one.name === bare && (bare === name || `${one.subject}.${one.name}` === name))
  if (!found) {
    const meant = nearestWord(
      bare,
      all.map((one) => one.name),
    )
    throw new BadInput([`explain: there is no solver "${name}"${meant ? `; did you mean ${meant}?` : "; alula explain lists them all"}`])
  }
  desk.out(
    json
      ? `${JSON.stringify(data(found.subject, found.name, found.solver), null, 2)}\n`
      : page(desk, found.subject, found.name, found.solver),
  )
  return EXIT.ok
}
