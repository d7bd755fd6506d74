// diagnose: what is wrong with what was built, from readings asked one by one or out of a file.

import { askables } from "../advice/diagnose/ask.js"
import { type Diagnosis, diagnosis, type RigReading } from "../advice/index.js"
import type { Rig } from "../rig/index.js"
import { InputError } from "../solver/index.js"
import { columnsOf, type Desk, EXIT, looks, wrapped } from "./desk.js"

/** Next line that somebody types or a pipe gives; null at its end. */
export type NextLine = () => string | null

type Result = ReturnType<typeof diagnosis>

const codeOf = ({ outcome }: Diagnosis) => (outcome === "as-planned" ? EXIT.ok : EXIT.short)
const share = (part: number) => (part < 0.01 ? "–" : `${Math.round(100 * part)} %`)

function told(desk: Desk, name: string, found: Result): void {
  const likely = found.candidates.filter((one) => one.faults.length && one.plausibility >= 0.01).slice(0, 6)
  const lines = [
    looks(desk, "bold", wrapped(name, desk.columns, "")),
    wrapped(found.verdict, desk.columns, ""),
    "",
    ...(likely.length
      ? [
          "What fits",
          ...likely.map((one) => `  ${share(one.plausibility).padStart(5)}  ${wrapped(one.explanation, desk.columns, " ".repeat(9))}`),
          "",
        ]
      : []),
    ...columnsOf([
      ["reading", "read", "planned", "best explanation"],
      ...found.departures.map((one) => [one.reading, one.read, one.planned, one.explained]),
    ]),
    "",
    ...found.cautions.map((one) => looks(desk, "quiet", wrapped(`${one.severity}: ${one.message}`, desk.columns, ""))),
  ]
  desk.out(`${lines.join("\n")}\n`)
}

/** Diagnoses readings; 1 where something is wrong, 3 where the plan itself stops on its way. */
export function diagnose(desk: Desk, rig: Rig, readings: readonly RigReading[], { json }: { readonly json: boolean }): number {
  const outcome = diagnosis.attempt({ rig, readings })
  if (!outcome.ok) {
    if (outcome.error instanceof InputError) throw outcome.error
    if (json) desk.out(`${JSON.stringify({ refused: outcome.error.toJSON() }, null, 2)}\n`)
    else desk.out(`${wrapped(outcome.error.message.replace(/^diagnosis: /, ""), desk.columns, "")}\n`)
    return EXIT.refused
  }
  if (json) desk.out(`${JSON.stringify(outcome.value, null, 2)}\n`)
  else told(desk, rig.name, outcome.value)
  return codeOf(outcome.value)
}

const WHICH = "Number of a reading, empty to end: "

/** Asks for readings one by one, on standard error; the answer goes to standard output. */
export function ask(desk: Desk, rig: Rig, next: NextLine): number {
  const list = askables(rig)
  const say = (text: string) => desk.err(`${wrapped(text, desk.columns, "  ")}\n`)
  desk.err(`${columnsOf(list.map((one, i) => [String(i + 1).padStart(3), one.label, one.tool ?? "seen, heard or felt"])).join("\n")}\n`)
  const readings: RigReading[] = []
  for (;;) {
    desk.err(WHICH)
    const line = next()?.trim()
    if (!line) break
    const one = /^\d+$/.test(line) ? list[Number(line) - 1] : undefined
    if (!one) {
      say(`Expected a number from 1 to ${list.length}, received "${line}".`)
      continue
    }
    let value = ""
    if (one.example !== null) {
      say(`${one.label}: ${one.how}`)
      desk.err(`Value with its unit, as ${one.example}: `)
      const typed = next()?.trim()
      if (typed === undefined) break
      value = typed
    }
    const outcome = diagnosis.attempt({ rig, readings: [...readings, one.with(value)] })
    if (!outcome.ok) {
      if (!(outcome.error instanceof InputError)) {
        say(outcome.error.message.replace(/^diagnosis: /, ""))
        return EXIT.refused
      }
      for (const { message } of outcome.error.issues) say(message.replace(/^readings\[\d+\]\.?/, ""))
      continue
    }
    readings.push(one.with(value))
    const { next: wanted, outcome: found } = outcome.value
    const number = wanted ? list.findIndex(({ label }) => label === wanted.label) + 1 : 0
    say(`So far: ${so[found]}.${wanted ? ` Read next${number ? ` number ${number}` : ""}: ${wanted.label}; ${wanted.how}.` : ""}`)
  }
  desk.err("\n")
  if (!readings.length) {
    say("Nothing was read.")
    return EXIT.bad
  }
  return diagnose(desk, rig, readings, { json: false })
}

const so: Readonly<Record<Diagnosis["outcome"], string>> = {
  "as-planned": "nothing need be wrong",
  "one-fault": "one fault explains it",
  "two-faults": "two faults explain it",
  unexplained: "not explained by one fault",
}
