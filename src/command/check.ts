// check: whether the rig does what is wanted, short.
import { formatQuantity } from "../quantity/index.js"
import { type ReportContent, report } from "../report/index.js"
import { lack } from "../report/words.js"
import type { Rig, RigFinding } from "../rig/index.js"
import { columnsOf, type Desk, EXIT, type Look, looks, wrapped } from "./desk.js"

const lots = [
  { title: "Falls short", mark: "✗", look: "red", of: ["falls short"] },
  { title: "Close to its limit", mark: "△", look: "yellow", of: ["marginal"] },
  { title: "Not judged", mark: "?", look: "yellow", of: ["not enough data", "cannot be judged"] },
  { title: "Met", mark: "✓", look: "green", of: ["meets"] },
] as const satisfies readonly {
  readonly title: string
  readonly mark: string
  readonly look: Look
  readonly of: readonly RigFinding["verdict"][]
}[]

const seconds = (duration: number | null) => (duration === null ? "stopped" : formatQuantity("time", duration))
const limit = (wanted: number | null) => (wanted === null ? "not said" : `≤ ${formatQuantity("time", wanted)}`)

const cautionsOf = (n: number) => (n === 1 ? "1 caution goes with these checks:" : `${n} cautions go with these checks:`)

function findingLines(desk: Desk, f: RigFinding, subjects: ReportContent["subjects"], mark: string, look: Look): string[] {
  const number = f.shownValue ? ` (${f.shownValue}${f.shownLimit ? `, must be ${f.shownLimit}` : ""})` : ""
  const lacks = lack(f, subjects)
  const said = `${f.sentence}${lacks ? ` ${lacks.word}: ${lacks.what}.` : ""}${f.change ? ` ${f.change}` : ""}`
  const head = `  ${looks(desk, look, mark)} ${f.subject}: ${f.title}${number}`
  // in a pipe one finding is one line
  return desk.columns === null ? [`${head}: ${wrapped(said, null, "")}`] : [head, `      ${wrapped(said, desk.columns, "      ")}`]
}

/** Tells a rig's assessment; `all` lists what is met too. */
export function check(desk: Desk, rig: Rig, { json, all }: { readonly json: boolean; readonly all: boolean }): number {
  const { content } = report(rig)
  const findings = content.subjects.flatMap((subject) => subject.findings)
  const { fallsShort, unknown } = content.counts
  const code = fallsShort || unknown ? EXIT.short : EXIT.ok
  if (json) {
    desk.out(`${JSON.stringify(content, null, 2)}\n`)
    return code
  }
  const times = content.motions.map(({ name, out, back }) => [
    name,
    seconds(out.duration),
    limit(out.wanted),
    seconds(back.duration),
    limit(back.wanted),
  ])
  const [standing] = content.cautions
  const lines = [
    looks(desk, "bold", wrapped(content.name, desk.columns, "")),
    wrapped(content.answer, desk.columns, ""),
    "",
    ...columnsOf([["motion", "out", "wanted", "back", "wanted"], ...times]),
    "",
    ...lots.flatMap(({ title, mark, look, of }) => {
      const these = findings.filter((f) => (of as readonly string[]).includes(f.verdict))
      if (!these.length) return []
      if (mark === "✓" && !all) return [`${title} (${these.length})`, ""]
      return [`${title} (${these.length})`, ...these.flatMap((f) => findingLines(desk, f, content.subjects, mark, look)), ""]
    }),
    ...(content.cautions.length > 1
      ? [wrapped(`${cautionsOf(content.cautions.length - 1)} alula report tells each with what raised it.`, desk.columns, ""), ""]
      : []),
    ...(standing ? [looks(desk, "quiet", wrapped(standing.message, desk.columns, ""))] : []),
  ]
  desk.out(`${lines.join("\n")}\n`)
  return code
}
