// Every check of a rig, worst first.
import { formatNumber, formatQuantity, type Kind } from "../../quantity/index.js"
import { type Caution, caution, citation, commonPractice, type OutFields } from "../../solver/index.js"
import type { KeptMotions } from "../run/situation.js"
import type { RigSi } from "../whole/faults.js"
import type { Members } from "../whole/fields.js"
import { type RigCheck, readsAny } from "./check.js"
import { aroundChecks, budgetChecks } from "./checks-around.js"
import { bodyChecks } from "./checks-body.js"
import { dayChecks } from "./checks-day.js"
import { driveChecks } from "./checks-drive.js"
import { formingChecks, frameChecks } from "./checks-frame.js"
import { gapChecks } from "./checks-gaps.js"
import { motionChecks } from "./checks-motion.js"
import { programmeChecks } from "./checks-programme.js"
import { runChecks } from "./checks-runs.js"
import { sourceChecks } from "./checks-sources.js"
import { startChecks } from "./checks-start.js"
import { togetherChecks } from "./checks-together.js"
import { unpoweredChecks } from "./checks-unpowered.js"
import { type Judged, judged } from "./conditions.js"
import {
  type CheckSeverity,
  type CheckVerdict,
  type Measured,
  mostUrgent,
  type Relation,
  told,
  utilisationOf,
  verdictOf,
} from "./finding.js"
import { RIDDEN } from "./paths.js"

/** One finding of an assessment. */
export interface RigFinding {
  /** Name of the check. [text] */
  readonly id: string
  /** Motion, bus, source or load that it is about. [text] */
  readonly subject: string
  /** What [text] */
  readonly title: string
  /** Verdict [text] */
  readonly verdict: CheckVerdict
  /** What falling short costs: safety, function or a wish. [text] */
  readonly severity: CheckSeverity
  /** How the value must stand to its limit; null where the check was not made. [text] */
  readonly relation: Relation | null
  /** Value (SI) [number] */
  readonly value: number | null
  /** Limit (SI) [number] */
  readonly limit: number | null
  /** Share of the limit that is used; null where a share means nothing. [number] */
  readonly utilisation: number | null
  /** Value as a maker reads it. [text] */
  readonly shownValue: string
  /** Limit as a maker reads it, with how the value must stand to it. [text] */
  readonly shownLimit: string
  /** What was found, in a sentence. [text] */
  readonly sentence: string
  /** When it is worst. [text] */
  readonly condition: string
  /** Field of the document that is missing. [text] */
  readonly missing: string | null
  /** Check and subject that failed before it, and has to be mended first; null where it hangs on none. [text] */
  readonly because: string | null
  /** What to change; filled in by who looks for it. [text] */
  readonly change: string | null
  /** Where the limit comes from. [text] */
  readonly source: string
}

/** A rig assessed. */
export interface RigAssessment {
  /** One sentence on the whole. [text] */
  readonly summary: string
  /** Fall short [n_short] */
  readonly fallsShort: number
  /** Marginal [n_marginal] */
  readonly marginal: number
  /** Lack data or cannot be judged [n_unknown] */
  readonly unknown: number
  /** Meet [n_meets] */
  readonly meets: number
  /** Findings, most urgent first. [list] */
  readonly findings: readonly RigFinding[]
}

/** Every check, in the order of the trade. */
export const checks: readonly RigCheck[] = [
  ...motionChecks,
  ...programmeChecks,
  ...driveChecks,
  ...startChecks,
  ...togetherChecks,
  ...unpoweredChecks,
  ...frameChecks,
  ...formingChecks,
  ...sourceChecks,
  ...runChecks,
  ...dayChecks,
  ...bodyChecks,
  ...aroundChecks,
  ...gapChecks,
  ...budgetChecks,
]

const sign: Readonly<Record<Relation, string>> = { "at-most": "≤ ", "at-least": "≥ ", within: "", outside: "", rule: "" }
const plain = (value: number, kind: Kind | "number") =>
  kind === "number" ? formatNumber(value) : formatQuantity(kind, value, kind === "ratio" ? "%" : undefined)

function shownLimit({ relation, kind, limit, halfWidth = 0 }: Measured): string {
  if (limit === null) return ""
  if (relation === "within") return `${plain(limit - halfWidth, kind)} to ${plain(limit + halfWidth, kind)}`
  if (relation === "outside") return `not ${plain(limit - halfWidth, kind)} to ${plain(limit + halfWidth, kind)}`
  return `${sign[relation]}${plain(limit, kind)}`
}

/** A caution, and the findings that raised it. */
export interface Raised {
  readonly caution: Caution
  readonly by: readonly RigFinding[]
}

/** Findings of a rig, the cautions that its solvers raised, and all that was looked at. */
export interface Judgement {
  readonly findings: readonly RigFinding[]
  readonly raised: readonly Raised[]
  readonly judged: Judged
}

/** What one check found, each finding with the cautions that go with it. */
function found(check: RigCheck, at: Judged): readonly (readonly [RigFinding, readonly Caution[]])[] {
  return check.find(at).map(({ subject, result: made }) => {
    const result = "verdict" in made ? made : told(made)
    const measured = "verdict" in result ? result.measured : result
    const finding: RigFinding = {
      id: check.id,
      subject,
      title: check.title,
      verdict: "verdict" in result ? result.verdict : verdictOf(result),
      severity: check.severity,
      relation: measured?.relation ?? null,
      value: measured?.value ?? null,
      limit: measured?.limit ?? null,
      utilisation: measured ? utilisationOf(measured) : null,
      shownValue: measured && measured.value !== null ? plain(measured.value, measured.kind) : "",
      shownLimit: measured ? shownLimit(measured) : "",
      sentence: result.sentence,
      condition: measured?.condition ?? "",
      missing: "verdict" in result ? result.missing : null,
      because: "verdict" in result ? result.because : null,
      change: null,
      source: measured ? citation(measured.source) : "",
    }
    return [finding, measured?.cautions ?? []]
  })
}

/** Findings of one check. */
export const foundBy = (check: RigCheck, at: Judged): readonly RigFinding[] => found(check, at).map(([finding]) => finding)

function judgement(findings: readonly (readonly [RigFinding, readonly Caution[]])[], at: Judged): Judgement {
  // one hazard has many texts: merged by what they say, not by their code
  const raised = new Map<string, { readonly caution: Caution; readonly by: RigFinding[] }>()
  for (const [finding, cautions] of findings)
    for (const c of cautions) {
      const known = raised.get(c.message)
      if (known) known.by.push(finding)
      else raised.set(c.message, { caution: c, by: [finding] })
    }
  return { findings: findings.map(([finding]) => finding).sort(mostUrgent), raised: [...raised.values()], judged: at }
}

/** Findings of a rig, most urgent first, with the cautions that its solvers raised; of every check, or only of those given. */
export function findingsOf(members: Members, rig: RigSi, only: readonly RigCheck[] = checks, kept?: KeptMotions): Judgement {
  const at = judged(members, rig, kept)
  return judgement(
    only.flatMap((check) => found(check, at)),
    at,
  )
}

/** A rig under its conditions after a change; where no motion and no supply hangs on that, those stay as they were. */
export const judgedAfter = (members: Members, before: Judged, rig: RigSi, changed: readonly string[]): Judged =>
  readsAny({ reads: RIDDEN }, changed) ? judged(members, rig) : (Object.create(before, { rig: { value: rig, enumerable: true } }) as Judged)

/**
 * Findings of a rig of which only the paths given have changed since it was judged, such as `motions[0].drive`: checks that read
 * none of them keep what they found.
 */
export function findingsAfter(members: Members, before: Judgement, rig: RigSi, changed: readonly string[]): Judgement {
  const at = judgedAfter(members, before.judged, rig, changed)
  return judgement(
    checks.flatMap((check) =>
      readsAny(check, changed)
        ? found(check, at)
        : before.findings
            .filter(({ id }) => id === check.id)
            .map((kept) => [kept, before.raised.filter(({ by }) => by.includes(kept)).map(({ caution: one }) => one)] as const),
    ),
    at,
  )
}

/** Cautions that go with every assessment. */
export function assessCautions(out: RigAssessment): Caution[] {
  const found: Caution[] = [
    caution(
      "guidance-not-permission",
      "warning",
      "An assessment by calculation, not a clearance: try the rig slowly and with a helper first, keep to local codes and the event's rules, let qualified people judge what can hurt somebody, and take it off at pain, numbness, dizziness or breathlessness.",
    ),
  ]
  if (out.unknown)
    found.push(
      caution(
        "not-everything-checked",
        "caution",
        "{unknown} of the checks could not be made: what is not checked is not known to be safe.",
        commonPractice,
        {
          unknown: out.unknown,
        },
      ),
    )
  return found
}

const many = (n: number, one: string, more: string) => `${n} ${n === 1 ? one : more}`

/** The answer of an assessment. */
export function assessment(findings: readonly RigFinding[]): RigAssessment {
  const count = (...verdicts: CheckVerdict[]) => findings.filter((f) => verdicts.includes(f.verdict)).length
  const short = count("falls short")
  const marginal = count("marginal")
  const unknown = count("not enough data", "cannot be judged")
  const [first] = findings
  return {
    summary: short
      ? `${many(short, "check falls", "checks fall")} short, first ${first?.title} of ${first?.subject}.`
      : unknown
        ? `Nothing falls short of what could be judged; ${many(unknown, "check", "checks")} could not be made.`
        : marginal
          ? `Nothing falls short; ${many(marginal, "check is", "checks are")} marginal.`
          : "Every check made is met.",
    fallsShort: short,
    marginal,
    unknown,
    meets: count("meets"),
    findings,
  }
}

/** Descriptions of an assessment. */
export const assessmentOutput: OutFields<RigAssessment> = {
  summary: { kind: "text", label: "summary" },
  fallsShort: { kind: "number", symbol: "n_short", label: "fall short" },
  marginal: { kind: "number", symbol: "n_marginal", label: "marginal" },
  unknown: { kind: "number", symbol: "n_unknown", label: "lack data or cannot be judged" },
  meets: { kind: "number", symbol: "n_meets", label: "meet" },
  findings: {
    kind: "list",
    label: "findings, most urgent first",
    of: {
      kind: "group",
      label: "finding",
      fields: {
        id: { kind: "text", label: "check" },
        subject: { kind: "text", label: "about" },
        title: { kind: "text", label: "what" },
        verdict: { kind: "text", label: "verdict" },
        severity: { kind: "text", label: "severity" },
        relation: { kind: "text", label: "relation" },
        value: { kind: "number", label: "value (SI)" },
        limit: { kind: "number", label: "limit (SI)" },
        utilisation: { kind: "number", label: "share of the limit used" },
        shownValue: { kind: "text", label: "value" },
        shownLimit: { kind: "text", label: "limit" },
        sentence: { kind: "text", label: "finding" },
        condition: { kind: "text", label: "when" },
        missing: { kind: "text", label: "missing" },
        because: { kind: "text", label: "mend first" },
        change: { kind: "text", label: "change" },
        source: { kind: "text", label: "source of the limit" },
      },
    },
  },
}
