import { sweptPicture } from "../figure/pose.js"
import type { Judgement } from "../rig/check/assess.js"
import { assessRig, type Rig, type RigDrive, type RigKit, type RigMechanism, type RigTransmission, type Typed } from "../rig/index.js"
import { brought } from "../rig/whole/read.js"
import { type AnyFields, isNoSolution, type SiOf } from "../solver/index.js"
import { contentOf, type ReportContent, type ReportRemedies } from "./content.js"
import { defaultsOf } from "./defaults.js"
import { markdownOf } from "./markdown.js"
import { pageOf } from "./page.js"

/** A rig's report. */
export interface Report {
  /** What it tells, as data for other tools: JSON keeps it whole. */
  readonly content: ReportContent
  readonly markdown: string
  /** One self-contained page: no script, nothing loaded. */
  readonly html: string
}

/** What a report needs of a kit that {@link rigWith} made. */
export type ReportKit<D extends Typed, T extends Typed, M extends Typed> = Pick<RigKit<D, T, M>, "assess">

/** What a report may take beside the rig. */
export interface ReportOptions<D extends Typed, T extends Typed, M extends Typed> {
  /** The verb of a kit that {@link rigWith} made; left out, that over our own members. */
  readonly assess?: RigKit<D, T, M>["assess"]
  /** What to change, as `remedies` of `alula/advice` found it for this very rig. */
  readonly remedies?: ReportRemedies
}

/** A document of version 1: it has no motions, so that one of version 2 with members nobody knows is not taken for it. */
export interface FirstEdition {
  readonly version: 1
  readonly name: string
  readonly motions?: never
  readonly [section: string]: unknown
}

type AnyAssess = RigKit<Typed, Typed, Typed>["assess"]

/**
 * The answer of a rig, as a page, as Markdown and as data: whether it works, how long each motion takes against what was
 * wanted, what falls short first and what could hurt somebody, one picture, then every check by what it is about with its value
 * against its limit, and every caution with the checks that raised it.
 *
 * @param rig - a rig document
 * @throws InputError naming every fault of the document
 * @example
 * ```ts
 * import { assessRig } from 'alula/rig'
 * import { report } from 'alula/report'
 * const { content, html } = report(assessRig.example)
 * content.motions[0].name // => 'wings'
 * html.includes('<script') // => false
 * ```
 */
export function report(rig: Rig): Report
/**
 * The answer of a document of version 1, which is brought to version 2 first.
 *
 * @param rig - a rig document of version 1
 * @throws InputError naming every fault of the document
 */
export function report(rig: FirstEdition): Report
/**
 * The answer of a rig with what to change on it, or of one that names members of one's own.
 *
 * @param rig - a rig document
 * @param options - what to change, as `remedies` found it; verbs over these members, from `rigWith`
 * @throws InputError naming every fault of the document
 */
export function report<D extends Typed = RigDrive, T extends Typed = RigTransmission, M extends Typed = RigMechanism>(
  rig: NoInfer<Rig<D, T, M>>,
  options: ReportOptions<D, T, M>,
): Report
export function report(rig: object, options: object = {}): Report {
  const { assess = assessRig as unknown as AnyAssess, remedies = null } = options as {
    readonly assess?: AnyAssess
    readonly remedies?: ReportRemedies | null
  }
  const document = "version" in rig && rig.version === 1 ? brought(rig as Readonly<Record<string, unknown>>) : rig
  const si: SiOf<Rig<Typed, Typed, Typed>> = assess.read(document)
  const trace: Partial<Judgement> = {}
  const assessment = assess.si(si, trace)
  const { findings, raised, judged } = trace
  if (isNoSolution(assessment) || !findings || !raised || !judged) throw new TypeError("report: the kit is not one that rigWith made")
  const defaults = defaultsOf(assess.input as unknown as AnyFields, document as Readonly<Record<string, unknown>>)
  const content = contentOf(assessment, { findings, raised, judged }, defaults, remedies)
  const [first] = judged.motions
  const picture = first ? sweptPicture(first, judged.rig.wearer?.stature ?? null) : null
  return { content, markdown: markdownOf(content), html: pageOf(content, picture) }
}
