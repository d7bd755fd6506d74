// What to change on a rig: single changes, then pairs, each tried on the whole assessment.
import { assessment, checks, type Judgement, type RigAssessment, type RigFinding } from "../../rig/check/assess.js"
import { type RigCheck, readsAny } from "../../rig/check/check.js"
import type { Run } from "../../rig/check/conditions.js"
import type { CheckVerdict } from "../../rig/check/finding.js"
import { assessRig, type Rig, type RigDrive, type RigMechanism, type RigTransmission, type Typed } from "../../rig/index.js"
import { membersOf } from "../../rig/whole/kit-members.js"
import { type AssessingKit, changedMotions, judgementOf } from "../compare/index.js"
import type { FindingPair } from "../compare/verdicts.js"
import { Bench, isGraded } from "./bench.js"
import { catalogueRows, priced, type RemedyCatalogue, readRemedyCatalogue } from "./catalogue.js"
import { compromisesOf } from "./compromises.js"
import { hunt, type Try } from "./hunt.js"
import { readOptions } from "./options.js"
import { jointly, pairsFor } from "./pairs.js"
import { withValue } from "./paths.js"
import { type Rival, ranked } from "./rank.js"
import type { Ladder, RowRig, Setting, Work } from "./rows.js"
import { type AllowedPath, laddersOf } from "./table.js"
import { against, buysWords, capital, changeWords, costsWords, remedyWords } from "./words.js"

/** One thing that a remedy changes. */
export interface RemedyChange {
  /** Row of the table of adjustables, such as `wire-gauge`. */
  readonly name: string
  /** Values of the document, as they are to stand there. */
  readonly settings: readonly Setting[]
  readonly was: string
  readonly becomes: string
  /** What is changed: `for the wire to wings`. */
  readonly of: string
  readonly work: Work
}

/** A finding that a remedy mends. */
export interface MendedFinding {
  readonly id: string
  readonly subject: string
  readonly title: string
  readonly before: CheckVerdict
  readonly after: CheckVerdict
}

/** A change, or two together, that mends something and makes no verdict worse. */
export interface Remedy {
  /** What to change, what it buys and about what it costs, in a sentence. */
  readonly text: string
  readonly changes: readonly RemedyChange[]
  readonly mends: readonly MendedFinding[]
  /** Checks that could not be made before it, and fall short when they are. */
  readonly shows: readonly Pick<MendedFinding, "id" | "subject" | "title">[]
  /** Seconds that each way of a motion takes less (positive) or more; null where it was or is stopped. */
  readonly seconds: readonly { readonly motion: string; readonly out: number | null; readonly back: number | null }[]
  /** Price beyond what was there, in the catalogue's currency; null where nobody said. */
  readonly price: number | null
}

/** A change that mends what falls short, and brings something else that was met close to its limit; never a safety check. */
export interface Compromise extends Remedy {
  /** What it brings close to its limit. */
  readonly costs: readonly MendedFinding[]
}

/** A finding that nothing mends which was tried. */
export interface Unmended {
  readonly id: string
  readonly subject: string
  readonly title: string
  /** What came nearest, and what it still lacks, in a sentence. */
  readonly text: string
}

/** What to change on a rig. */
export interface Remedies {
  /** The rig assessed, with what to change in each finding that falls short or is close to its limit. */
  readonly assessment: RigAssessment
  /** What to change, the first thing first. */
  readonly remedies: readonly Remedy[]
  /** What else would do, at a cost that each of them tells, the most useful first. */
  readonly compromises: readonly Compromise[]
  readonly unmended: readonly Unmended[]
  /** Assessments made to find them. */
  readonly tried: number
  /** Whether all that the document lets change was tried. */
  readonly complete: boolean
}

/** What remedies may be looked for in, and how far. */
export interface RemediesOptions {
  /** Parts at hand, with what they cost. */
  readonly catalogue?: RemedyCatalogue
  /**
   * What may be changed: paths such as `power.buses[0].run`, or patterns such as `motions[].mechanisms[].fixedPivot`, each with
   * all below it, numbers within limits where they are given (SI); left out, everything.
   */
  readonly allowed?: readonly (string | AllowedPath)[]
  /** Assessments that may be made. [whole 1 to 300; default 300] */
  readonly tries?: number
}

/** Share of them that singles may take, so that some are left for pairs. */
const SINGLES = 0.7

const isTarget = ({ verdict }: RigFinding) => verdict === "falls short" || verdict === "marginal"

/** Puts the settings of a remedy into a document. */
export function withChanges<R extends object>(rig: R, changes: readonly Pick<RemedyChange, "settings">[]): R {
  return changes.flatMap(({ settings }) => settings).reduce((document, { path, value }) => withValue(document, path, value), rig)
}

/** Time out and back of a motion, s, the worst of all conditions. */
function cycleOf(runs: readonly Run[]): number | null {
  const way = (w: Run["way"]) => Math.max(...runs.filter((run) => run.way === w).map((run) => run.quick?.duration ?? 0))
  return runs.some((run) => run.quick === null) ? null : way(1) + way(-1)
}

interface Found {
  readonly rivals: readonly Rival[]
  readonly compromises: readonly Rival[]
  readonly near: readonly Try[]
  readonly complete: boolean
}

/** Whether a check reads anything that a ladder changes. */
const reads = (check: RigCheck, { rungs }: Ladder): boolean =>
  rungs.some(({ settings }) =>
    readsAny(
      check,
      settings.map(({ path }) => path),
    ),
  )

function search(bench: Bench, ladders: readonly Ladder[], most: number): Found {
  const targets = bench.base.findings.filter(isTarget)
  const targetChecks = checks.filter(({ id }) => targets.some((one) => one.id === id))
  const asked = ladders.filter((ladder) => targetChecks.some((check) => reads(check, ladder)))
  const graded = targets.filter((one) => one.verdict === "falls short").every(isGraded)
  const sound: Try[] = []
  const near: Try[] = []
  let complete = true
  for (const ladder of asked) {
    if (bench.tried >= SINGLES * most) {
      complete = false
      break
    }
    const found = hunt(bench, ladder, targetChecks, graded)
    sound.push(...found.sound)
    near.push(...found.near)
  }
  const singles = ranked(sound.map((one) => ({ parts: [one], trial: one.trial, mended: one.mended })))
  const rivals: Rival[] = [...singles]
  // what no single change mends, the most urgent first
  for (const finding of targets.filter((one) => one.verdict === "falls short")) {
    if (sound.some((one) => one.mended.some(({ before }) => before === finding))) continue
    rivals.push(...pairsFor(bench, finding, near, asked, targetChecks, reads))
  }
  const [first, ...others] = singles.flatMap(({ trial }) => sound.filter((one) => one.trial === trial))
  if (first && others.length) rivals.push(...jointly(bench, first, others, targetChecks))
  return { rivals: ranked(rivals), compromises: compromisesOf(near, sound), near, complete: complete && bench.left > 0 }
}

const brief = ({ before, after }: FindingPair) => {
  const { id, subject, title } = (before ?? after) as RigFinding
  return { id, subject, title }
}

const verdictsOf = (pair: FindingPair): MendedFinding => ({
  ...brief(pair),
  before: (pair.before as RigFinding).verdict,
  after: pair.after?.verdict ?? "meets",
})

function remedyOf({ parts, trial, mended: all }: Rival, base: Judgement): Remedy {
  // told in the order of the assessment, the most urgent first
  const mended = [...all].sort((a, b) => base.findings.indexOf(a.before as RigFinding) - base.findings.indexOf(b.before as RigFinding))
  const prices = parts.map(({ rung }) => rung.price ?? null)
  const price = prices.every((one) => one !== null) ? prices.reduce<number>((sum, one) => sum + (one ?? 0), 0) : null
  const motions = changedMotions(base.judged, trial.judged)
  const gained = ({ before, after }: { readonly before: number | null; readonly after: number | null }) =>
    before === null || after === null ? null : before - after
  return {
    text: remedyWords(
      parts.map(({ rung, ladder }) => changeWords(rung, ladder)),
      `${buysWords(mended, trial.shown, base.judged, trial.judged)}${costsWords(trial.worse)}`,
      price,
    ),
    changes: parts.map(({ rung, ladder }) => ({
      name: ladder.name,
      settings: rung.settings,
      was: rung.was,
      becomes: rung.becomes,
      of: ladder.of,
      work: ladder.work,
    })),
    mends: mended.map(verdictsOf),
    shows: trial.shown.map(brief),
    seconds: motions.map(({ name, out, back }) => ({ motion: name, out: gained(out), back: gained(back) })),
    price,
  }
}

const compromiseOf = (rival: Rival, base: Judgement): Compromise => ({
  ...remedyOf(rival, base),
  costs: rival.trial.worse.map(verdictsOf),
})

/** What came nearest to mending a finding, and what it still lacks. */
function unmendedOf(finding: RigFinding, near: readonly Try[], complete: boolean): Unmended {
  const { id, subject, title } = finding
  const common = { id, subject, title }
  const tried = complete ? "Of what was tried nothing" : "Of what could be tried in so many assessments nothing"
  const breaks = near.find((one) => one.mended.some(({ before }) => before === finding))
  if (breaks) {
    const [worse] = breaks.trial.worse
    const other = worse?.after ?? worse?.before
    return {
      ...common,
      text: `${tried} mends it without harm elsewhere. ${capital(changeWords(breaks.rung, breaks.ladder))} would, but then ${other?.title} of ${other?.subject} ${other?.verdict === "falls short" ? "falls short" : other?.verdict === "marginal" ? "comes close to its limit" : "can no longer be judged"}${other ? `: ${against(other)}` : ""}.`,
    }
  }
  const gains = near.flatMap((one) =>
    one.gains.filter(({ pair }) => pair.before === finding).map(({ gain, pair }) => ({ one, gain, pair })),
  )
  const nearest = gains.reduce<(typeof gains)[number] | null>((a, b) => (a && a.gain >= b.gain ? a : b), null)
  const after = nearest?.pair.after
  if (nearest && after?.missing)
    return {
      ...common,
      text: `${capital(changeWords(nearest.one.rung, nearest.one.ladder))} brings it as far as can be told: ${after.missing} has to be stated before it can be judged.`,
    }
  if (nearest && after)
    return { ...common, text: `${tried} mends it. Nearest: ${changeWords(nearest.one.rung, nearest.one.ladder)}, ${against(after)}.` }
  return { ...common, text: `${tried} brings it nearer to its limit: it takes another part or another build than this document describes.` }
}

/** The assessment with what to change in its findings. */
function filled(whole: RigAssessment, texts: ReadonlyMap<string, string>): RigAssessment {
  const findings = whole.findings.map((one) => ({ ...one, change: texts.get(`${one.id}|${one.subject}`) ?? null }))
  return { ...whole, findings }
}

const isIn = (rivals: readonly Rival[], { trial }: Try) => rivals.some((rival) => rival.trial === trial)

type AnyAssess = AssessingKit<Typed, Typed, Typed>["assess"]

/**
 * What to change on a rig: for what falls short or is close to its limit, single changes and then pairs, over everything that
 * the document lets change, each tried on the whole assessment as it is told.
 *
 * Offered is only what mends something and makes no other verdict worse; the first mends what is most severe, with little work
 * and money. Sizes that are sold are stepped by what is sold, others by a share or an amount. What mends
 * something and brings another check close to its limit is a compromise, told with that cost and never one that touches
 * safety. Where nothing mends a finding, what came nearest is told with what it still lacks. A change is advice by calculation, not a clearance: try it slowly and with a
 * helper first.
 *
 * @param rig - a rig document
 * @param options - parts at hand, what may be changed, how many assessments may be made
 * @throws InputError naming every fault of the document, the catalogue or the options
 * @example
 * ```ts
 * import { remedies } from 'alula/advice'
 * import { assessRig } from 'alula/rig'
 * const thin = structuredClone(assessRig.example)
 * thin.power.buses[0].run.awg = 30
 * const [first] = remedies(thin, { allowed: ['power.buses[].run.awg'] }).remedies
 * first.changes[0].name // => 'wire-gauge'
 * ```
 */
export function remedies(rig: Rig, options?: RemediesOptions): Remedies
/**
 * What to change on a rig that names members of one's own.
 *
 * @param rig - a rig document
 * @param options - parts at hand, what may be changed, how many assessments may be made
 * @param kit - verbs over these members, from `rigWith`
 * @throws InputError naming every fault of the document, the catalogue or the options
 */
export function remedies<D extends Typed = RigDrive, T extends Typed = RigTransmission, M extends Typed = RigMechanism>(
  rig: NoInfer<Rig<D, T, M>>,
  options: RemediesOptions,
  kit: AssessingKit<D, T, M>,
): Remedies
export function remedies(rig: object, options: RemediesOptions = {}, kit: object = { assess: assessRig }): Remedies {
  const assess = (kit as { readonly assess: AnyAssess }).assess
  const members = membersOf(assess)
  if (!members) throw new TypeError("remedies: the kit is not one that rigWith made")
  const parts = options.catalogue === undefined ? null : readRemedyCatalogue(options.catalogue, members)
  const base = judgementOf(assess, rig)
  const si = base.judged.rig
  const { allowed, tries } = readOptions(options, si)
  const bench = new Bench(assess, members, rig, base, tries)
  const rowRig: RowRig = { si, cycle: (index) => cycleOf(base.judged.runs[index] ?? []) }
  const found = laddersOf(rowRig, parts ? catalogueRows(parts) : [], allowed, (settings) => bench.read(settings))
  const ladders = parts ? priced(found, si, parts) : found
  const { rivals, compromises, near, complete } = search(bench, ladders, tries)
  // one whose cost can be borne is told before others
  const nearest = [...near].sort((a, b) => Number(isIn(compromises, b)) - Number(isIn(compromises, a)))
  const list = rivals.map((rival) => remedyOf(rival, base))
  const targets = base.findings.filter(isTarget)
  const mended = (finding: RigFinding) => rivals.findIndex((rival) => rival.mended.some(({ before }) => before === finding))
  const unmended = targets.filter((one) => mended(one) < 0).map((one) => unmendedOf(one, nearest, complete))
  const texts = new Map<string, string>()
  for (const one of targets) {
    const key = `${one.id}|${one.subject}`
    const text = list[mended(one)]?.text ?? unmended.find(({ id, subject }) => id === one.id && subject === one.subject)?.text
    if (text) texts.set(key, text)
  }
  return {
    assessment: filled(assessment(base.findings), texts),
    remedies: list,
    compromises: compromises.map((rival) => compromiseOf(rival, base)),
    unmended,
    tried: bench.tried,
    complete,
  }
}
