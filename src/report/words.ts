// Words and figures that page and Markdown share.
import { formatQuantity } from "../quantity/index.js"
import type { RigFinding } from "../rig/check/assess.js"
import type { ReportState, SubjectChecks, WayAnswer } from "./content.js"
import type { Defaults } from "./defaults.js"

/** Mark before a verdict, told apart without its colour. */
export const marks: Readonly<Record<RigFinding["verdict"], string>> = {
  "falls short": "✗",
  marginal: "△",
  "not enough data": "?",
  "cannot be judged": "?",
  meets: "✓",
}

/** Mark and tone of the answer. */
export const states: Readonly<Record<ReportState, { readonly mark: string; readonly tone: "short" | "near" | "open" | "fine" }>> = {
  "does-not-work": { mark: "✗", tone: "short" },
  "could-hurt": { mark: "✗", tone: "short" },
  "misses-wishes": { mark: "△", tone: "near" },
  "not-all-judged": { mark: "?", tone: "open" },
  "close-to-limits": { mark: "△", tone: "near" },
  meets: { mark: "✓", tone: "fine" },
}

/** Share of a limit that is used; nothing where a share means nothing. */
export const share = (utilisation: number | null): string =>
  utilisation === null || !Number.isFinite(utilisation) ? "" : formatQuantity("ratio", utilisation, "%")

/** Time of one way. */
export const time = ({ duration, certain }: WayAnswer): string =>
  duration === null ? "stopped" : `${certain ? "" : "about "}${formatQuantity("time", duration)}`

/** Time wanted of one way, with how the time must stand to it. */
export const wanted = ({ wanted: limit }: WayAnswer): string => (limit === null ? "not said" : `≤ ${formatQuantity("time", limit)}`)

/** Whether a way's time is what was wanted; null where nothing was wanted, or where a time within it is no promise. */
export const inTime = ({ duration, wanted: limit, certain }: WayAnswer): boolean | null =>
  duration === null ? false : limit === null ? null : duration > limit ? false : certain ? true : null

/** Value and what it must be, as one reads it. */
export const against = ({ shownValue, shownLimit }: RigFinding): string =>
  shownValue && shownLimit ? `${shownValue}, must be ${shownLimit}` : shownValue

/** What is missing for a check that was not made, or what has to be mended before it. */
export function lack(
  { missing, because }: RigFinding,
  subjects: readonly SubjectChecks[],
): { readonly word: string; readonly what: string } | null {
  if (missing) return { word: "Missing", what: missing }
  if (!because) return null
  const first = subjects.flatMap((one) => one.findings).find((f) => `${f.id}: ${f.subject}` === because)
  return { word: "Mend first", what: first ? `${first.title} (${first.subject})` : because }
}

/** Findings of one subject in three lots. */
export function lots(findings: readonly RigFinding[]): {
  readonly pressing: readonly RigFinding[]
  readonly notMade: readonly RigFinding[]
  readonly met: readonly RigFinding[]
} {
  const of = (...verdicts: RigFinding["verdict"][]) => findings.filter((f) => verdicts.includes(f.verdict))
  return { pressing: of("falls short", "marginal"), notMade: of("not enough data", "cannot be judged"), met: of("meets") }
}

/** What was met, in a line: how many, and the most that any uses of its limit. */
export function metLine(met: readonly RigFinding[]): string {
  const most = met.reduce((a, f) => Math.max(a, f.utilisation ?? 0), 0)
  return `${met.length} met${most > 0 ? `, at most ${share(most)} of a limit used` : ""}`
}

/** How much rests on what nobody said. */
export const defaultsLine = ({ taken, of }: Defaults): string =>
  `${taken} of the ${of} values behind this answer were not stated: the usual ones stand in for them.`

/** What the first change is told under: something to mend, or something that could be better. */
export const changeHeading = (fallsShort: number): string => (fallsShort ? "What to change first" : "What could be better")

/** A count with its word. */
export const many = (n: number, one: string, more: string): string => `${n} ${n === 1 ? one : more}`

/** A sentence begins with a capital, a motion's name among them. */
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)
