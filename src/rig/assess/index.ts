import { formatNumber, formatQuantity, type Kind } from "../../quantity/index.js"
import { type Caution, caution, type SiOf, type Solver, solver } from "../../solver/index.js"
import { checkParts } from "../document/check.js"
import type { RigDocument } from "../document/document.js"
import { demoRig } from "../document/example.js"
import { rigFields, rigRules } from "../document/fields.js"
import { EACH_CHECK } from "../sources.js"
import type { Check } from "./checks.js"
import { aroundChecks, budgetChecks } from "./checks-around.js"
import { bodyChecks } from "./checks-body.js"
import { formingChecks, frameChecks } from "./checks-frame.js"
import { moveChecks } from "./checks-move.js"
import { supplyChecks } from "./checks-supply.js"
import { wiringChecks } from "./checks-wiring.js"
import { type Found, type Verdict, verdictOf } from "./finding.js"
import { situationOf } from "./situation.js"

type Si = SiOf<RigDocument>

/** One check of the assessment, done. */
export interface Finding {
  /** Name of the check. [text] */
  readonly check: string
  /** What [text] */
  readonly title: string
  /** Verdict [text] */
  readonly verdict: Verdict
  /** Value and limit in SI, null where there is none to show. [number] */
  readonly value: number | null
  /** Limit (SI) [number] */
  readonly limit: number | null
  /** Value and limit as a maker reads them. [text] */
  readonly shownValue: string
  /** Limit [text] */
  readonly shownLimit: string
  /** What is left, as a share of the limit; negative where it falls short. [as a fraction] */
  readonly margin: number | null
  /** One sentence: why. [text] */
  readonly why: string
  /** Where the limit comes from. [text] */
  readonly source: string
  /** Path of the field that is missing. [text] */
  readonly missing: string | null
}

/** Result of {@link assess}. */
export interface Assessment {
  /** One sentence on the whole. [text] */
  readonly summary: string
  /** Fall short [n_short] */
  readonly fallsShort: number
  /** Marginal [n_marginal] */
  readonly marginal: number
  /** Lack data [n_unknown] */
  readonly unknown: number
  /** Meet [n_meets] */
  readonly meets: number
  /** Every check the document allows, most critical first. [list] */
  readonly findings: readonly Finding[]
}

/** Checks in the order of the trade: they come out most critical first. */
function checksOf(rig: Si): readonly Check[] {
  return [
    ...moveChecks,
    ...frameChecks,
    ...formingChecks(rig),
    ...supplyChecks,
    ...wiringChecks,
    ...bodyChecks,
    ...aroundChecks,
    ...budgetChecks,
  ]
}

/** Every check that applies to a rig, or the one named, with what it found. */
export function findings(rig: Si, only?: string): readonly { readonly check: Check; readonly found: Found }[] {
  const situation = situationOf(rig)
  return checksOf(rig)
    .filter((check) => (only === undefined || check.id === only) && check.applies(situation))
    .map((check) => ({ check, found: check.find(situation) }))
}

const order: readonly Verdict[] = ["falls short", "marginal", "not enough data", "meets"]

function shown(kind: Kind | "number", value: number | null): string {
  if (value === null) return "—"
  if (kind === "number") return formatNumber(value)
  return kind === "ratio" ? formatQuantity(kind, value, "%") : formatQuantity(kind, value)
}

const share = (some: number, of: number) => `${some} of ${of} ${of === 1 ? "check" : "checks"}`

const lacking = (count: number) => `${count} ${count === 1 ? "check lacks" : "checks lack"} data`

function solve(rig: Si): Assessment {
  const all = findings(rig).map(
    ({ check, found }): Finding => ({
      check: check.id,
      title: check.title,
      verdict: verdictOf(found),
      value: found.value,
      limit: found.limit,
      shownValue: shown(found.kind, found.value),
      shownLimit: shown(found.kind, found.limit),
      margin: found.margin,
      why: found.why,
      source: found.source,
      missing: found.missing,
    }),
  )
  const rank = (f: Finding) => order.indexOf(f.verdict)
  const sorted = [...all].sort((a, b) => rank(a) - rank(b) || (a.margin ?? 0) - (b.margin ?? 0))
  const count = (verdict: Verdict) => all.filter((f) => f.verdict === verdict).length
  const [short, marginal, unknown, meets] = order.map(count) as [number, number, number, number]
  const first = (sorted[0] as Finding | undefined)?.title ?? ""
  const summary = short
    ? `${share(short, all.length)} ${short === 1 ? "falls short" : "fall short, first"}: ${first}.`
    : marginal
      ? `No check falls short; ${share(marginal, all.length)} ${marginal === 1 ? "is close to its limit" : "are close to their limits, first"}: ${first}.`
      : unknown === all.length
        ? "Not enough data for any check."
        : `All checks with data are met (${meets} of ${all.length}).`
  return {
    summary: unknown && unknown < all.length ? `${summary} ${lacking(unknown)}.` : summary,
    fallsShort: short,
    marginal,
    unknown,
    meets,
    findings: sorted,
  }
}

function cautions(rig: Si, out: Assessment): Caution[] {
  const seen = new Map<string, Caution>()
  for (const { found } of findings(rig)) for (const c of found.cautions) if (!seen.has(c.code)) seen.set(c.code, c)
  const whole = caution(
    "guidance-not-permission",
    "warning",
    "An assessment by calculation, not a clearance: try the rig slowly and with a helper first, keep to local codes and the event's rules, let qualified people judge what can hurt somebody, and take it off at pain, numbness, dizziness or breathlessness.",
  )
  const gaps = out.unknown
    ? [caution("not-everything-checked", "caution", `${lacking(out.unknown)}: what is not checked is not known to be safe.`)]
    : []
  const weight = { warning: 0, caution: 1, note: 2 } as const
  return [whole, ...gaps, ...[...seen.values()].sort((a, b) => weight[a.severity] - weight[b.severity])]
}

// a check without data has no margin: far outside any real one
const NO_DATA = 1e9

/**
 * Every check the document allows, each with value, limit, margin, verdict and one sentence why, most
 * critical first.
 *
 * margin = 1 − value/limit where a value must not exceed its limit; where it must reach it, 1 − limit/value when it does and
 * value/limit − 1 when it does not; and a share of the span for temperatures and gaps. Verdict: `falls short` below 0, `marginal` below 0.1 (common
 * practice, no source), `meets` otherwise, `not enough data` with the path of the field that is missing. Each
 * check calls the domain solver of its trade with what the document says; where that solver refuses, the check
 * falls short with its reason. Partial documents work: only what can't be known is left out.
 *
 * Each limit's own source stands beside it in its finding; those without a published source say so.
 *
 * **Inputs**
 * - `wearer`: wearer [group; optional]
 * - `mount`: where the mechanism sits [group; optional]
 * - `parts`: parts carried, moving masses left out [list of 0 to 300; default none]
 * - `spar`: spar of one arm [group; optional]
 * - `pin`: hinge pin [group; optional]
 * - `formed`: parts formed hot [list of 0 to 60; default none]
 * - `straps`: straps [group; optional]
 * - `schedule`: the day's wearing [group; optional]
 * - `heat`: heat [group; optional]
 * - `wind`: wind on one arm [group; optional]
 * - `stance`: stance [group; optional]
 * - `venue`: where it has to go [group; optional]
 * - `reach`: switch [group; optional]
 * - `pinch`: fixed things the arm passes [group; optional]
 * - `contact`: if an arm strikes somebody [group; optional]
 * - `day`: the day on one charge [group; optional]
 * - `duty`: duty of the actuators [group; optional]
 * - `flaps`: servo-driven flaps [group; optional]
 * - `scissor`: scissor array [group; optional]
 * - `lights`: light string [group; optional]
 * - `starting`: start of the actuators [group; optional]
 * - `budget`: what may be spent [group; optional]
 * - `version`: document version [n_doc; whole 1 to 1]
 * - `name`: name of the rig [text of 1 to 100 characters]
 * - `note`: note [text of 0 to 5000 characters; default empty]
 * - `hinged`: arms on hinges [group; optional]
 * - `pack`: cell pack [group; optional]
 * - `bank`: USB battery bank [group; optional]
 * - `converter`: converter [group; optional]
 * - `wiring`: wires, switch and fuse [group; optional]
 * - `brief`: what is wanted [group; optional]
 * - at most one of `pack` and `bank`
 *
 * **Results**
 *
 * `summary`: summary [text]; `fallsShort`: fall short [n_short]; `marginal`: marginal [n_marginal]; `unknown`: lack
 * data [n_unknown]; `meets`: meet [n_meets]; `findings`: checks, most critical first [list].
 *
 * **Symbols of the working**
 *
 * mu: margin of each check (a very large number where data is missing).
 *
 * **Sources**
 * - Each check's own: see the source beside its limit, and the solver it calls
 *
 * @function
 * @throws InputError naming every fault of the document
 * @example
 * ```ts
 * import { assess } from 'alula/rig'
 * const bare = assess({ version: 1, name: 'an idea' })
 * bare.meets // => 0
 * bare.findings.every((f) => f.verdict === 'not enough data') // => true
 * ```
 */
export const assess: Solver<RigDocument, Assessment> = /* @__PURE__ */ solver<RigDocument, Assessment>(
  "assess",
  "Whether the whole wearable does what is wanted, check by check",
  solve,
  () => ({
    input: rigFields,
    either: rigRules,
    output: {
      summary: { kind: "text", label: "summary" },
      fallsShort: { kind: "number", symbol: "n_short", label: "fall short" },
      marginal: { kind: "number", symbol: "n_marginal", label: "marginal" },
      unknown: { kind: "number", symbol: "n_unknown", label: "lack data" },
      meets: { kind: "number", symbol: "n_meets", label: "meet" },
      findings: {
        kind: "list",
        label: "checks, most critical first",
        of: {
          kind: "group",
          label: "check",
          fields: {
            check: { kind: "text", label: "check" },
            title: { kind: "text", label: "what" },
            verdict: { kind: "text", label: "verdict" },
            shownValue: { kind: "text", label: "value" },
            shownLimit: { kind: "text", label: "limit" },
            margin: { kind: "ratio", label: "margin", unit: "%" },
            why: { kind: "text", label: "why" },
            source: { kind: "text", label: "limit from" },
            missing: { kind: "text", label: "missing" },
            value: { kind: "number", label: "value (SI)" },
            limit: { kind: "number", label: "limit (SI)" },
          },
        },
      },
    },
    example: demoRig,
    formulae: [
      {
        symbol: "mu",
        kind: "number",
        meaning: "margin of each check (a very large number where data is missing)",
        given: (si) => findings(si).map(({ found }) => (found.missing !== null ? NO_DATA : (found.margin ?? NO_DATA))),
      },
      { symbol: "n_short", meaning: "negative margins", is: "sum(map(mu, f(x) = x < 0 ? 1 : 0))" },
      { symbol: "n_marginal", meaning: "margins below a tenth", is: "sum(map(mu, f(x) = x >= 0 and x < 0.1 ? 1 : 0))" },
      { symbol: "n_unknown", meaning: "checks without data", is: "sum(map(mu, f(x) = x > 1e8 ? 1 : 0))" },
      { symbol: "n_meets", meaning: "margins of a tenth and more", is: "sum(map(mu, f(x) = x >= 0.1 and x < 1e8 ? 1 : 0))" },
    ],
    sources: [EACH_CHECK],
    check: checkParts,
    cautions,
  }),
)
