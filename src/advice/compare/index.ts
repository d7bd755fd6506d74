// Two rigs side by side: what changed in verdicts, seconds, grams and price.
import { formatNumber, formatQuantity } from "../../quantity/index.js"
import type { Judgement, RigFinding } from "../../rig/check/assess.js"
import { carriedMass } from "../../rig/check/carried.js"
import type { Judged, Run } from "../../rig/check/conditions.js"
import type { CheckSeverity, CheckVerdict } from "../../rig/check/finding.js"
import { assessRig, type Rig, type RigDrive, type RigKit, type RigMechanism, type RigTransmission, type Typed } from "../../rig/index.js"
import { type FindingPair, isBetter, isWorse, pairsOf } from "./verdicts.js"

/** A check whose verdict is another one. */
export interface ChangedVerdict {
  readonly id: string
  readonly subject: string
  readonly title: string
  readonly severity: CheckSeverity
  /** Verdict of the first rig; null where it has no such check. */
  readonly before: CheckVerdict | null
  /** Verdict of the second rig; null where it has no such check. */
  readonly after: CheckVerdict | null
  readonly change: "better" | "worse" | "other"
  /** Sentence of the second rig's finding, or of the first's where the second has none. */
  readonly sentence: string
}

/** A number of both rigs; null where it is not known. */
export interface ChangedNumber {
  readonly before: number | null
  readonly after: number | null
}

/** Times of a motion, each the worst of all conditions, s; null where it is stopped or one rig has no such motion. */
export interface ChangedMotion {
  readonly name: string
  readonly out: ChangedNumber
  readonly back: ChangedNumber
}

/** What changed between two rigs. */
export interface Comparison {
  /** What changed, in sentences. */
  readonly lines: readonly string[]
  readonly verdicts: readonly ChangedVerdict[]
  readonly motions: readonly ChangedMotion[]
  /** Mass of all that is carried, kg. */
  readonly mass: ChangedNumber
  /** Price of all parts listed. */
  readonly price: ChangedNumber
}

/** The worst time of one way over all conditions, s; null where something stops it. */
function worstTime(runs: readonly Run[], way: Run["way"]): number | null {
  const own = runs.filter((run) => run.way === way)
  return own.some((run) => run.quick === null) ? null : Math.max(...own.map((run) => run.quick?.duration ?? 0))
}

const priceOf = ({ rig }: Judged) => (rig.parts.length ? rig.parts.reduce((sum, p) => sum + p.count * p.price, 0) : null)

/** Times of each motion in both. */
export function changedMotions(before: Judged, after: Judged): readonly ChangedMotion[] {
  const names = [...new Set([...before.rig.motions, ...after.rig.motions].map(({ name }) => name))]
  const time = ({ rig, runs }: Judged, name: string, way: Run["way"]) => {
    const own = runs[rig.motions.findIndex((one) => one.name === name)]
    return own ? worstTime(own, way) : null
  }
  return names.map((name) => ({
    name,
    out: { before: time(before, name, 1), after: time(after, name, 1) },
    back: { before: time(before, name, -1), after: time(after, name, -1) },
  }))
}

/** Times that differ by less are told as the same: s, or a tenth where a motion is quick, and a share. */
const [SAME, TENTH, SAME_SHARE] = [0.05, 0.1, 0.005]

/** How a time changed, in words; nothing where it did not. */
export function timeWords({ before, after }: ChangedNumber, way: "out" | "back"): string {
  if (before === null && after === null) return ""
  if (before === null) return `${formatQuantity("time", after ?? 0, "s")} ${way} (was stopped)`
  if (after === null) return `stopped on its way ${way}`
  const gain = before - after
  if (Math.abs(gain) < Math.max(Math.min(SAME, TENTH * before), SAME_SHARE * before)) return ""
  return `${formatQuantity("time", Math.abs(gain), "s", 2)} ${gain > 0 ? "quicker" : "slower"} ${way}`
}

function verdictChange(pair: FindingPair): ChangedVerdict["change"] {
  return isBetter(pair) ? "better" : isWorse(pair) ? "worse" : "other"
}

function changedVerdicts(before: readonly RigFinding[], after: readonly RigFinding[]): readonly ChangedVerdict[] {
  return pairsOf(before, after).flatMap((pair): ChangedVerdict[] => {
    const one = pair.after ?? pair.before
    if (!one || pair.before?.verdict === pair.after?.verdict) return []
    const { id, subject, title, severity, sentence } = one
    return [
      {
        id,
        subject,
        title,
        severity,
        before: pair.before?.verdict ?? null,
        after: pair.after?.verdict ?? null,
        change: verdictChange(pair),
        sentence,
      },
    ]
  })
}

const said = (verdict: CheckVerdict | null) => verdict ?? "not asked"

function linesOf({ verdicts, motions, mass, price }: Omit<Comparison, "lines">): readonly string[] {
  const told = (change: ChangedVerdict["change"], word: string) =>
    verdicts
      .filter((one) => one.change === change)
      .map(
        ({ title, subject, before, after, sentence }) =>
          `${word}: ${title} of ${subject}, ${said(before)} before, ${said(after)} now. ${sentence}`,
      )
  const times = motions.flatMap(({ name, out, back }) =>
    [timeWords(out, "out"), timeWords(back, "back")].filter(Boolean).map((words) => `${name}: ${words}.`),
  )
  const difference = ({ before, after }: ChangedNumber) => (before === null || after === null ? 0 : after - before)
  const [grams, money] = [difference(mass), difference(price)]
  return [
    ...told("worse", "Worse"),
    ...told("better", "Better"),
    ...told("other", "Changed"),
    ...times,
    ...(Math.abs(grams) >= 0.0005 ? [`${formatQuantity("mass", Math.abs(grams))} ${grams > 0 ? "heavier" : "lighter"}.`] : []),
    ...(Math.abs(money) >= 0.005 ? [`${formatNumber(Math.abs(money))} ${money > 0 ? "dearer" : "cheaper"} by the parts listed.`] : []),
  ]
}

/** Two judgements side by side. */
export function comparisonOf(before: Judgement, after: Judgement): Comparison {
  const found = {
    verdicts: changedVerdicts(before.findings, after.findings),
    motions: changedMotions(before.judged, after.judged),
    mass: { before: carriedMass(before.judged), after: carriedMass(after.judged) },
    price: { before: priceOf(before.judged), after: priceOf(after.judged) },
  }
  const lines = linesOf(found)
  return { lines: lines.length ? lines : ["Nothing that was judged has changed."], ...found }
}

/** What a comparison needs of a kit that {@link rigWith} made. */
export type AssessingKit<D extends Typed, T extends Typed, M extends Typed> = Pick<RigKit<D, T, M>, "assess">

type AnyAssess = RigKit<Typed, Typed, Typed>["assess"]

/** All that a kit finds about a document. */
export function judgementOf(assess: AnyAssess, document: unknown): Judgement {
  const trace: Partial<Judgement> = {}
  assess.si(assess.read(document), trace)
  const { findings, raised, judged } = trace
  if (!findings || !raised || !judged) throw new TypeError("the kit is not one that rigWith made")
  return { findings, raised, judged }
}

/**
 * Two rigs side by side: which verdicts are better or worse, how many seconds each motion gains or loses, what it weighs and
 * costs more or less; in sentences and as data.
 *
 * @param a - a rig document
 * @param b - the same rig with something changed
 * @throws InputError naming every fault of a document
 * @example
 * ```ts
 * import { compare } from 'alula/advice'
 * import { assessRig } from 'alula/rig'
 * const moth = assessRig.example
 * compare(moth, { ...moth, name: 'the same' }).verdicts // => []
 * ```
 */
export function compare(a: Rig, b: Rig): Comparison
/**
 * Two rigs side by side that name members of one's own.
 *
 * @param a - a rig document
 * @param b - the same rig with something changed
 * @param kit - verbs over these members, from `rigWith`
 * @throws InputError naming every fault of a document
 */
export function compare<D extends Typed = RigDrive, T extends Typed = RigTransmission, M extends Typed = RigMechanism>(
  a: NoInfer<Rig<D, T, M>>,
  b: NoInfer<Rig<D, T, M>>,
  kit: AssessingKit<D, T, M>,
): Comparison
export function compare(a: object, b: object, kit: object = { assess: assessRig }): Comparison {
  const { assess } = kit as { readonly assess: AnyAssess }
  return comparisonOf(judgementOf(assess, a), judgementOf(assess, b))
}
