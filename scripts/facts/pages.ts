// The pages under docs/ that follow from the descriptions: the glossary, and what each solver takes.
import type { AnyField, AnyOutField } from "../../src/solver/index.js"
import { type Described, inputLines, partsOf } from "./block.js"
import { glossary, type Word } from "./glossary.js"

type Modules = Readonly<Record<string, Readonly<Record<string, unknown>>>>
type AnyDescribed = AnyField | AnyOutField

export const isSolver = (value: unknown): value is Described => typeof value === "function" && "~standard" in value

const HEAD = "Written by `npm run fix` from the descriptions in the code; `npm run check` fails when it is out of date."

function namesIn<F extends AnyDescribed>(fields: Readonly<Record<string, F>>): string[] {
  return Object.entries(fields).flatMap(([key, field]) => [key, ...partsOf(field).flatMap((part) => namesIn(part.fields))])
}

const capital = (word: string): string => word.charAt(0).toUpperCase() + word.slice(1)

/** Whether a field's name bears a word: is it, or begins or ends with it. */
function bears(name: string, { word, form }: Word): boolean {
  if (name === word) return true
  if (form === "start") return name.startsWith(word) && /^[A-Z]/.test(name.slice(word.length))
  return name.endsWith(capital(word))
}

const PLACES = 6

/** Where a word is used: the solvers that have a field of that name. */
function placesOf(word: Word, names: ReadonlyMap<string, ReadonlySet<string>>): string {
  const places = [...names].filter(([, all]) => [...all].some((name) => bears(name, word))).map(([id]) => `\`${id}\``)
  if (places.length > PLACES) return `${places.slice(0, PLACES).join(", ")} and ${places.length - PLACES} more`
  return places.join(", ")
}

/** The glossary: word, meaning, what else the trade calls it, where it is used. */
function glossaryPage(modules: Modules): string {
  const names = new Map(
    solversOf(modules).map(({ id, solver }) => [id, new Set([...namesIn(solver.input), ...namesIn(solver.output)])] as const),
  )
  // a word that no field bears is no word of ours
  const row = (word: Word): string[] => {
    const places = placesOf(word, names)
    if (places === "") return []
    const shown = word.form === "start" ? `${word.word}…` : word.form === "end" ? `…${capital(word.word)}` : word.word
    return [`| \`${shown}\` | ${word.meaning} | ${word.also ?? ""} | ${places} |`]
  }
  return [
    "# Glossary",
    "",
    HEAD,
    "",
    "One thing has one word, wherever it is given or answered. Names end in the kind of thing they are (`holdingForce`,",
    "`ambientTemperature`), words of a choice are written with hyphens, flags are verbs or adjectives.",
    ...Object.entries(glossary).flatMap(([subject, words]) => [
      "",
      `## ${subject}`,
      "",
      "| word | what it is | also called | used in |",
      "| --- | --- | --- | --- |",
      ...words.flatMap(row),
    ]),
    "",
  ].join("\n")
}

/** Every solver with its `module.name`. */
function solversOf(modules: Modules): { readonly id: string; readonly solver: Described }[] {
  return Object.entries(modules).flatMap(([module, exports]) =>
    Object.entries(exports)
      .filter((entry): entry is [string, Described] => isSolver(entry[1]))
      .map(([name, solver]) => ({ id: `${module}.${name}`, solver })),
  )
}

/** What each solver takes. */
function inputsPage(modules: Modules): string {
  return [
    "# What each solver takes",
    "",
    HEAD,
    "",
    "In brackets: symbol in the formulae; limits; default. `optional` can be left out and is then not there.",
    ...Object.keys(modules).flatMap((module) => {
      const own = solversOf({ [module]: modules[module] ?? {} })
      return own.length === 0
        ? []
        : [
            "",
            `## alula/${module}`,
            ...own.flatMap(({ id, solver }) => ["", `### ${id}`, "", `${solver.title}.`, "", ...inputLines(solver)]),
          ]
    }),
    "",
  ].join("\n")
}

/** Pages by their path under the root. */
export function pages(modules: Modules): Readonly<Record<string, string>> {
  return { "docs/glossary.md": glossaryPage(modules), "docs/inputs.md": inputsPage(modules) }
}
