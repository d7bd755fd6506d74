// explain: a page on any solver, and on any type that a rig's document names, from their descriptions.
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
import { type Member, memberFields, members } from "./members.js"

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

/** Rows of an input; variants of the labels in `apart` are told on pages of their own. */
function inputRows(fields: AnyFields, apart: ReadonlySet<string>, before = ""): FactsRow[] {
  return Object.entries(fields).flatMap(([name, field]) => {
    const path = `${before}${name}`
    return [{ name: path, ...inputFacts(field) }, ...insideOf(field, apart, path)]
  })
}

function insideOf(field: AnyField, apart: ReadonlySet<string>, path: string): FactsRow[] {
  if (field.kind === "group") return inputRows(field.fields, apart, `${path}.`)
  if (field.kind === "list") {
    const { of } = field
    const isApart = of.kind === "variant" && apart.has(of.label)
    return [...(isApart ? [{ name: `${path}[]`, ...inputFacts(of) }] : []), ...insideOf(of, apart, `${path}[]`)]
  }
  if (field.kind !== "variant" || apart.has(field.label)) return []
  return Object.entries(field.of).flatMap(([type, member]) => inputRows(member.fields, apart, `${path} (${type}).`))
}

/** Fields of a rig's document in the order in which it is written. */
function inOrder(fields: AnyFields): AnyFields {
  const first = ["version", "name", "note", "motions", "power", "programme", "day"]
  return Object.fromEntries([...first, ...Object.keys(fields)].flatMap((key) => (fields[key] ? [[key, fields[key]]] : [])))
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

function takes(desk: Desk, fields: AnyFields): string[] {
  const apart = memberFields()
  const rows = inputRows(inOrder(fields), apart)
  const types = rows.some(({ value }) => value?.startsWith("by its type"))
  return [
    ...columnsOf(rows.map(factsOf), "  "),
    ...(types && rows.some(({ label }) => apart.has(label))
      ? [
          "",
          `  ${wrapped("Each type has a page of its own: alula explain hinge, alula explain gearmotor …; alula explain lists them.", desk.columns, "  ")}`,
        ]
      : []),
  ]
}

function memberPage(desk: Desk, { type, label, place, fields, example }: Member): string {
  const title = (text: string) => ["", looks(desk, "bold", text)]
  return [
    looks(desk, "bold", `${type} (${place} of a rig's document)`),
    wrapped(`${label[0]?.toUpperCase()}${label.slice(1)}.`, desk.columns, ""),
    ...title("Takes"),
    ...takes(desk, fields),
    ...(example
      ? [
          ...title("Example, from a starter rig"),
          ...JSON.stringify(example, null, 2)
            .split("\n")
            .map((line) => `  ${line}`),
        ]
      : []),
    "",
  ].join("\n")
}

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
    ...takes(desk, solver.input as unknown as AnyFields),
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
    inputs: inputRows(solver.input as unknown as AnyFields, new Set()),
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
  const types = members()
  if (name === undefined) {
    const list = [
      ...all.map(({ subject, name: one, solver }) => ({ name: one, subject, title: solver.title })),
      ...types.map(({ family, type, label }) => ({ name: `rig.${type}`, subject: family, title: label })),
    ]
    if (json) desk.out(`${JSON.stringify(list, null, 2)}\n`)
    else
      desk.out(
        `${[...new Set(list.map(({ subject }) => subject))]
          .map((subject) =>
            [
              looks(desk, "bold", subject in subjects ? subject : `${subject} of a rig's document`),
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
  const member = found ? undefined : types.find(({ type }) => type === bare && (bare === name || name === `rig.${bare}`))
  if (member) {
    const { family, type, label, place, fields, example } = member
    const inputs = () => inputRows(fields, memberFields())
    desk.out(
      json
        ? `${JSON.stringify({ name: type, subject: family, title: label, place, inputs: inputs(), example }, null, 2)}\n`
        : memberPage(desk, member),
    )
    return EXIT.ok
  }
  if (!found) {
    const meant = nearestWord(bare, [...all.map((one) => one.name), ...types.map(({ type }) => type)])
    throw new BadInput([
      `explain: there is no solver or type "${name}"${meant ? `; did you mean ${meant}?` : "; alula explain lists them all"}`,
    ])
  }
  desk.out(
    json
      ? `${JSON.stringify(data(found.subject, found.name, found.solver), null, 2)}\n`
      : page(desk, found.subject, found.name, found.solver),
  )
  return EXIT.ok
}
