// A command line read and carried out.
import { parseArgs } from "node:util"
import { buildSheet, report } from "../report/index.js"
import type { Rig } from "../rig/index.js"
import { nearestWord } from "../solver/near.js"
import { type StarterKind, starters, starterText } from "../starters/index.js"
import { check } from "./check.js"
import { BadInput, type Desk, EXIT } from "./desk.js"
import { ask, diagnose, type NextLine } from "./diagnose.js"
import { explain } from "./explain.js"
import { documentOf, isSame, lineReader, named, readingsOf, stemOf, writeWhole } from "./files.js"
import { type CommandName, help, helpOn, helps } from "./help.js"
import { perform } from "./perform.js"
import { why } from "./why.js"

const options = {
  json: { type: "boolean", default: false },
  help: { type: "boolean", short: "h", default: false },
  version: { type: "boolean", default: false },
  all: { type: "boolean", default: false },
  force: { type: "boolean", default: false },
  format: { type: "string" },
  output: { type: "string", short: "o" },
  motion: { type: "string" },
} as const

type Option = keyof typeof options
/** Options that each command takes beside --json and --help. */
const own: Readonly<Record<CommandName, readonly Option[]>> = {
  new: ["force"],
  check: ["all"],
  report: ["format", "output"],
  sheet: ["format", "output"],
  why: ["motion"],
  perform: [],
  diagnose: [],
  explain: [],
}
const takes: Readonly<Record<CommandName, { readonly what: string; readonly min: number; readonly max: number }>> = {
  new: { what: "a kind of creature, then a file if you like", min: 1, max: 2 },
  check: { what: "one file", min: 1, max: 1 },
  report: { what: "one file", min: 1, max: 1 },
  sheet: { what: "one file", min: 1, max: 1 },
  why: { what: "one file", min: 1, max: 1 },
  perform: { what: "one file", min: 1, max: 1 },
  diagnose: { what: "a file, then a file of readings if you have one", min: 1, max: 2 },
  explain: { what: "the name of a solver or type, or nothing", min: 0, max: 1 },
}

function parsed(args: readonly string[]) {
  try {
    return parseArgs({ args: [...args], options, allowPositionals: true, strict: true })
  } catch (error) {
    throw new BadInput([(error as Error).message.replace(/\. To specify .*/s, "."), "alula --help tells the commands and options"])
  }
}

const isCommand = (word: string): word is CommandName => Object.hasOwn(helps, word)

/** Makes something long, telling whoever watches that it goes on. */
function told<T>(desk: Desk, what: string, make: () => T): T {
  if (!desk.watched) return make()
  desk.err(`${what} …`)
  try {
    return make()
  } finally {
    // back to the line's start, and nothing left on it
    desk.err(`\r${" ".repeat(what.length + 2)}\r`)
  }
}

type Format = "html" | "markdown" | "json"
const endings: Readonly<Record<string, Format>> = { html: "html", htm: "html", md: "markdown", markdown: "markdown", json: "json" }
const endingOf: Readonly<Record<Format, string>> = { html: "html", markdown: "md", json: "json" }

function formatOf(format: string | undefined, output: string | undefined, json: boolean): Format {
  if (format !== undefined && !["html", "markdown", "json"].includes(format))
    throw new BadInput([`--format: expected html, markdown or json, received "${format}"`])
  if (json && format !== undefined && format !== "json") throw new BadInput([`--json: expected without --format ${format}`])
  if (json) return "json"
  if (format !== undefined) return format as Format
  if (output === undefined || output === "-") return "html"
  const byEnding = endings[/\.(\w+)$/.exec(output)?.[1]?.toLowerCase() ?? ""]
  if (!byEnding)
    throw new BadInput([`--output: expected a name that ends in .html, .md or .json, or --format beside it, received "${output}"`])
  return byEnding
}

interface Written {
  readonly html: string
  readonly markdown: string
  readonly content: object
}

/** Writes what a verb made of a document: to a file, or to standard output. */
function write(
  desk: Desk,
  file: string,
  kind: "report" | "sheet",
  make: (rig: Rig) => Written,
  values: ReturnType<typeof parsed>["values"],
): number {
  if (values.output !== undefined && isSame(values.output, file))
    throw new BadInput([`--output: expected another file than the document itself, received "${values.output}"`])
  const format = formatOf(values.format, values.output, values.json)
  const rig = documentOf(file)
  const made = told(desk, `${kind} of ${rig.name}`, () => make(rig))
  const text = format === "json" ? `${JSON.stringify(made.content, null, 2)}\n` : made[format]
  const output = values.output ?? (values.json || file === "-" ? "-" : `${stemOf(file)}-${kind}.${endingOf[format]}`)
  if (output === "-") desk.out(text)
  else {
    writeWhole(output, text, true)
    desk.err(`${output}\n`)
  }
  return EXIT.ok
}

function begin(desk: Desk, kind: string, file: string | undefined, force: boolean, json: boolean): number {
  if (!Object.hasOwn(starters, kind)) {
    const kinds = Object.keys(starters)
    const meant = nearestWord(kind, kinds)
    throw new BadInput([`new: expected ${kinds.join(", ")}${meant ? ` (did you mean ${meant}?)` : ""}, received "${kind}"`])
  }
  const starter = starters[kind as StarterKind]
  const text = json ? `${JSON.stringify(starter.rig, null, 2)}\n` : starterText(starter)
  const output = file ?? (json ? "-" : `${kind}.jsonc`)
  if (output === "-") desk.out(text)
  else {
    writeWhole(output, text, force)
    desk.err(`${output}: ${starter.about}. Edit it, then: alula check ${output}\n`)
  }
  return EXIT.ok
}

function carriedOut(desk: Desk, args: readonly string[], version: string, nextLine: NextLine): number {
  const { values, positionals } = parsed(args)
  const [name, ...rest] = positionals
  if (values.version) {
    desk.out(`${version}\n`)
    return EXIT.ok
  }
  if (name === undefined || name === "help") {
    const [on] = rest
    const text = on !== undefined && isCommand(on) ? helpOn(on) : help
    if (name === undefined && !values.help) {
      desk.err(text)
      return EXIT.bad
    }
    desk.out(text)
    return EXIT.ok
  }
  if (!isCommand(name)) {
    const meant = nearestWord(name, Object.keys(helps))
    throw new BadInput([
      `alula: there is no command "${name}"${meant ? `; did you mean ${meant}?` : ""}`,
      "alula --help tells the commands and options",
    ])
  }
  if (values.help) {
    desk.out(helpOn(name))
    return EXIT.ok
  }
  for (const option of ["all", "force", "format", "output", "motion"] as const)
    if (values[option] && !own[name].includes(option))
      throw new BadInput([`${name}: it takes no --${option}`, `alula ${name} --help tells its options`])
  const { what, min, max } = takes[name]
  if (rest.length < min || rest.length > max)
    throw new BadInput([
      `${name}: expected ${what}, received ${rest.length ? rest.map((r) => `"${r}"`).join(" ") : "nothing"}`,
      `alula ${name} --help tells more`,
    ])
  const [first = "", second] = rest
  const { json } = values
  switch (name) {
    case "new":
      return begin(desk, first, second, values.force, json)
    case "explain":
      return explain(desk, rest[0], { json })
    case "report":
      return write(desk, first, "report", (rig) => report(rig), values)
    case "sheet":
      return write(desk, first, "sheet", (rig) => buildSheet(rig), values)
    case "check": {
      const rig = documentOf(first)
      return told(desk, `checking ${named(first)}`, () => check(desk, rig, { json, all: values.all }))
    }
    case "perform": {
      const rig = documentOf(first)
      return told(desk, `playing ${named(first)}`, () => perform(desk, rig, { json }))
    }
    case "diagnose": {
      if (second === undefined && (json || first === "-"))
        throw new BadInput([
          `diagnose: expected a file of readings behind the document, as ${json ? "--json asks nothing" : "standard input is the document"}`,
        ])
      if (first === "-" && second === "-") throw new BadInput(["diagnose: expected one of both from standard input, received both"])
      const rig = documentOf(first)
      if (second === undefined) return ask(desk, rig, nextLine)
      const readings = readingsOf(second, rig)
      return told(desk, `diagnosing ${named(first)}`, () => diagnose(desk, rig, readings, { json }))
    }
    case "why": {
      const rig = documentOf(first)
      return told(desk, `trying changes on ${named(first)}`, () => why(desk, rig, { json, motion: values.motion }))
    }
  }
}

/** Carries a command line out and gives its exit code; what is wrong with the input is told, never thrown. */
export function run(desk: Desk, args: readonly string[], version: string, nextLine: NextLine = lineReader()): number {
  try {
    return carriedOut(desk, args, version, nextLine)
  } catch (error) {
    if (!(error instanceof BadInput)) throw error
    if (args.includes("--json") && error.faults.length) desk.out(`${JSON.stringify({ faults: error.faults }, null, 2)}\n`)
    desk.err(`${error.lines.join("\n")}\n`)
    return EXIT.bad
  }
}
