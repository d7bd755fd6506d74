import { parseArgs } from "node:util"
import { type FaultKind, kinds, mustDie } from "./fault.js"

export interface Options {
  readonly modules: readonly string[]
  readonly sample: number
  readonly seed: number
  readonly kinds: readonly FaultKind[]
  readonly all: readonly FaultKind[]
  readonly ids: readonly string[]
  readonly jobs: number
  readonly limit: number
  readonly json: string | null
  readonly list: boolean
  readonly changed: string | null
  readonly atLeast: number | null
  readonly asideRed: boolean
  readonly root: string | null
  readonly help: boolean
}

const names = Object.keys(kinds) as FaultKind[]

export const help = `Plants small faults in the sources and counts how many the tests notice.

  npm run faults -- wire converter        200 faults of each module, drawn by seed
  npm run faults -- wire/conductor.ts     one file (its module's tests)
  npm run faults -- wire --all            also every removed caution, refusal and fault between fields
  npm run faults -- wire --fault 1a2b3c4d chosen faults again, with the test that noticed each
  npm run faults -- --changed main        only files that differ from a revision

  --sample N      faults drawn for each module (200)
  --seed N        which ones (1); the same seed draws the same ones from the same sources
  --kind a,b      draw from these kinds only
  --all [a,b]     every fault of these kinds too (${mustDie.join(",")})
  --fault id,id   these faults and no others
  --list          print every fault that could be planted, and run nothing
  --at-least N    fail when less than N % are noticed in a module, or one of ${mustDie.join(", ")} survives
  --red-aside     leave out tests that fail without any fault, instead of stopping there (for work in progress)
  --jobs N        threads (2)
  --limit N       seconds that one test may take before it counts as hanging (10; never less than 20 times its own usual time)
  --json file     the whole report as JSON
  --root folder   a project laid out like this one, in place of this one

Kinds:
${names.map((name) => `  ${name.padEnd(12)} ${kinds[name]}`).join("\n")}

A fault that no answer can depend on is argued in tests/faults/equivalents.json (or equivalents-<module>.json), a list of
{ "fault": key, "reason": why no input can show it }. The report prints each survivor's key. At most 5 % of the faults tried count as equivalent.`

/** Reads the command line. */
export function optionsOf(args: readonly string[]): Options {
  // --all may stand alone
  const given = args.flatMap((arg, i) => {
    const next = args[i + 1]
    const isBare = arg === "--all" && (next === undefined || next.startsWith("-") || !next.split(",").every((k) => k in kinds))
    return isBare ? [`--all=${mustDie.join(",")}`] : [arg]
  })
  const { values, positionals } = parseArgs({
    args: given,
    allowPositionals: true,
    options: {
      sample: { type: "string", default: "200" },
      seed: { type: "string", default: "1" },
      kind: { type: "string" },
      all: { type: "string" },
      fault: { type: "string" },
      jobs: { type: "string", default: "2" },
      limit: { type: "string", default: "10" },
      json: { type: "string" },
      list: { type: "boolean", default: false },
      changed: { type: "string" },
      "red-aside": { type: "boolean", default: false },
      "at-least": { type: "string" },
      root: { type: "string" },
      help: { type: "boolean", short: "h", default: false },
    },
  })
  const number = (name: string, text: string) => {
    const value = Number(text)
    if (!Number.isFinite(value) || value < 0) throw new Error(`--${name} ${text}: a number, 0 or more`)
    return value
  }
  const kindsOf = (text: string | undefined) =>
    (text ?? "")
      .split(",")
      .filter(Boolean)
      .map((name) => {
        if (!names.includes(name as FaultKind)) throw new Error(`no kind ${name}: ${names.join(", ")}`)
        return name as FaultKind
      })
  return {
    modules: positionals,
    sample: number("sample", values.sample),
    seed: number("seed", values.seed),
    kinds: kindsOf(values.kind),
    all: kindsOf(values.all),
    ids: (values.fault ?? "").split(",").filter(Boolean),
    jobs: Math.max(1, number("jobs", values.jobs)),
    limit: number("limit", values.limit),
    json: values.json ?? null,
    list: values.list,
    changed: values.changed ?? null,
    atLeast: values["at-least"] === undefined ? null : number("at-least", values["at-least"]),
    asideRed: values["red-aside"],
    root: values.root ?? null,
    help: values.help,
  }
}
