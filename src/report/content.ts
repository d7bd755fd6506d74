// What a report tells, as data: the page, the Markdown and other tools read the same.

import type { RigFinding } from "../rig/check/assess.js"
import { assessCautions, type Judgement } from "../rig/check/assess.js"
import type { Run } from "../rig/check/conditions.js"
import type { RigAssessment } from "../rig/index.js"
import { citation, type Severity } from "../solver/index.js"
import type { Defaults } from "./defaults.js"

/** How a rig came out, in a word. */
export type ReportState = "does-not-work" | "could-hurt" | "misses-wishes" | "not-all-judged" | "close-to-limits" | "meets"

/** One way of a motion: its worst time over all conditions. */
export interface WayAnswer {
  /** Time, s; null where something stops it. */
  readonly duration: number | null
  /** Time wanted, s; null where nothing was said. */
  readonly wanted: number | null
  /** When it is worst. */
  readonly condition: string
  /** Whether inertia, which the time is found without, is small; else the time is no promise. */
  readonly certain: boolean
}

/** What a motion does. */
export interface MotionAnswer {
  readonly name: string
  readonly out: WayAnswer
  readonly back: WayAnswer
}

/** Checks of one motion, bus, source, load, the wearer or the rig, most urgent first. */
export interface SubjectChecks {
  readonly subject: string
  readonly findings: readonly RigFinding[]
}

/** A caution, and which checks raised it. */
export interface ReportCaution {
  readonly severity: Severity
  readonly message: string
  readonly source: string
  readonly raisedBy: readonly { readonly title: string; readonly subject: string }[]
}

/** What to change, as a report takes it from `remedies` of `alula/advice`. */
export interface ReportRemedies {
  readonly assessment: Pick<RigAssessment, "findings">
  /** What to change, the first thing first, each in a sentence. */
  readonly remedies: readonly { readonly text: string }[]
  /** What nothing mends that was tried, each in a sentence. */
  readonly unmended: readonly { readonly title: string; readonly subject: string; readonly text: string }[]
}

/** A rig's answer. */
export interface ReportContent {
  readonly name: string
  readonly note: string
  readonly state: ReportState
  /** The answer in a sentence. */
  readonly answer: string
  readonly counts: { readonly fallsShort: number; readonly marginal: number; readonly unknown: number; readonly meets: number }
  /** Numbers and choices that the document left to their defaults. */
  readonly defaults: Defaults
  readonly motions: readonly MotionAnswer[]
  /** What falls short first; null where nothing does. */
  readonly first: RigFinding | null
  /** Safety checks that fall short or come close, most urgent first. */
  readonly hazards: readonly RigFinding[]
  /** Safety checks that could not be made. */
  readonly hazardsUnknown: number
  /** What to change, the first thing first, in sentences; null where nobody looked for it. */
  readonly changes: readonly string[] | null
  /** What nothing mends that was tried. */
  readonly unmended: ReportRemedies["unmended"]
  readonly subjects: readonly SubjectChecks[]
  readonly cautions: readonly ReportCaution[]
}

const many = (n: number, one: string, more: string) => `${n} ${n === 1 ? one : more}`

/** The state of a rig and its answer in a sentence. */
function stateOf({ fallsShort, marginal, unknown, findings }: RigAssessment): { readonly state: ReportState; readonly answer: string } {
  const short = (severity: RigFinding["severity"]) => findings.filter((f) => f.verdict === "falls short" && f.severity === severity).length
  const open = unknown ? ` ${many(unknown, "check", "checks")} could not be made.` : ""
  const [safety, works, wishes] = [short("safety"), short("function"), short("wish")]
  if (works) return { state: "does-not-work", answer: `Does not work yet: ${many(fallsShort, "check falls", "checks fall")} short.${open}` }
  if (safety)
    return {
      state: "could-hurt",
      answer: `Moves, but could hurt somebody: ${many(safety, "safety check falls", "safety checks fall")} short${wishes ? `, and ${many(wishes, "wish is", "wishes are")} missed` : ""}.${open}`,
    }
  if (wishes) return { state: "misses-wishes", answer: `Works, but ${many(wishes, "wish is", "wishes are")} missed.${open}` }
  if (unknown) return { state: "not-all-judged", answer: `Nothing falls short of what could be judged.${open}` }
  const close = findings.filter((f) => f.verdict === "marginal").map((f) => `${f.title} (${f.subject})`)
  const met = "Works, by calculation. Every check made is met"
  if (marginal) return { state: "close-to-limits", answer: `${met}; close to their limits: ${close.join(", ")}.` }
  return { state: "meets", answer: `${met}.` }
}

/** The worst time of one way; a way that is stopped has none. */
function wayOf(runs: readonly Run[], way: Run["way"], wanted: number | null, certain: boolean): WayAnswer {
  const own = runs.filter((run) => run.way === way)
  const halted = own.find((run) => run.stop)
  if (halted) return { duration: null, wanted, condition: halted.condition, certain }
  const [first, ...rest] = own
  const worst = rest.reduce((a, b) => ((b.quick?.duration ?? 0) > (a?.quick?.duration ?? 0) ? b : a), first)
  return { duration: worst?.quick?.duration ?? null, wanted, condition: worst?.condition ?? "", certain }
}

/** Findings with what to change, of the same rig. */
function withChanges(findings: readonly RigFinding[], { assessment }: ReportRemedies): readonly RigFinding[] {
  const told = assessment.findings
  const same = told.length === findings.length && findings.every((f, i) => told[i]?.id === f.id && told[i]?.sentence === f.sentence)
  if (!same) throw new TypeError("report: the remedies are those of another rig")
  return findings.map((f, i) => ({ ...f, change: told[i]?.change ?? null }))
}

/** The answer of a rig that was judged. */
export function contentOf(
  assessment: RigAssessment,
  { findings: judgedFindings, raised, judged }: Judgement,
  defaults: Defaults,
  remedies: ReportRemedies | null,
): ReportContent {
  const { rig } = judged
  const findings = remedies ? withChanges(judgedFindings, remedies) : judgedFindings
  const { fallsShort, marginal, unknown, meets } = assessment
  const subjects = new Map<string, RigFinding[]>()
  for (const f of findings) {
    const list = subjects.get(f.subject)
    if (list) list.push(f)
    else subjects.set(f.subject, [f])
  }
  const safety = findings.filter((f) => f.severity === "safety")
  const [first] = findings
  return {
    name: rig.name,
    note: rig.note,
    ...stateOf(assessment),
    counts: { fallsShort, marginal, unknown, meets },
    defaults,
    motions: judged.motions.map(({ name }, i) => {
      const wanted = rig.motions[i]?.wanted
      const runs = judged.runs[i] ?? []
      const certain = findings.some((f) => f.id === "inertia" && f.subject === name && f.verdict !== "cannot be judged")
      return {
        name,
        out: wayOf(runs, 1, wanted?.duration ?? null, certain),
        back: wayOf(runs, -1, wanted?.backDuration ?? wanted?.duration ?? null, certain),
      }
    }),
    first: first?.verdict === "falls short" ? first : null,
    hazards: safety.filter((f) => f.verdict === "falls short" || f.verdict === "marginal"),
    changes: remedies?.remedies.map(({ text }) => text) ?? null,
    unmended: remedies ? remedies.unmended.map(({ title, subject, text }) => ({ title, subject, text })) : [],
    hazardsUnknown: safety.filter((f) => f.verdict === "not enough data" || f.verdict === "cannot be judged").length,
    subjects: [...subjects].map(([subject, list]) => ({ subject, findings: list })),
    cautions: [
      ...assessCautions(assessment).map((caution) => ({ caution, by: [] as readonly RigFinding[] })),
      ...[...raised].sort((a, b) => bySeverity.indexOf(b.caution.severity) - bySeverity.indexOf(a.caution.severity)),
    ].map(({ caution, by }) => ({
      severity: caution.severity,
      message: caution.message,
      source: citation(caution.source),
      raisedBy: by.map(({ title, subject }) => ({ title, subject })),
    })),
  }
}

const bySeverity: readonly Severity[] = ["note", "caution", "warning"]
