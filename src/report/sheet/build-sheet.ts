import type { Judgement } from "../../rig/check/assess.js"
import { assessRig, type Rig, type RigDrive, type RigMechanism, type RigTransmission, type Typed } from "../../rig/index.js"
import { PORTABLE_CELLS } from "../../rig/sources.js"
import { citation, commonPractice, isNoSolution } from "../../solver/index.js"
import type { ReportKit } from "../report.js"
import type { SheetContent } from "./content.js"
import { platesOf } from "./drilling.js"
import { firstPowerOf } from "./first-power.js"
import { bendsOf, cutsOf, needsOf, partsOf } from "./lists.js"
import { sheetMarkdown } from "./markdown.js"
import { sheetPage } from "./page.js"
import { drillingTemplate, formingTemplate, type SheetTemplate } from "./templates.js"
import { circuitsOf } from "./wiring.js"

/** A rig's build sheet. */
export interface BuildSheet {
  /** What it tells, as data for other tools: JSON keeps it whole. */
  readonly content: SheetContent
  /** Drilling and bend templates at true scale, page by page. */
  readonly templates: readonly SheetTemplate[]
  readonly markdown: string
  /** One self-contained page to print at 100 %, on A4 or Letter: no script, nothing loaded. */
  readonly html: string
}

const cautionsFor = (cells: boolean): SheetContent["cautions"] => [
  {
    message:
      "Goggles when drilling and cutting, no loose sleeves or hair. Work that can hurt somebody is for people who are qualified for it; local codes come first.",
    source: citation(commonPractice),
  },
  {
    message: "Before power is on, fingers, hair and children are clear of everything that moves, and a second person holds the switch.",
    source: citation(commonPractice),
  },
  ...(cells
    ? [
        {
          message:
            "Cells feed a short circuit with hundreds of amperes: rings and watches off, tools insulated, never two ends bare at once, the fuse as near to the cells as it can sit.",
          source: citation(PORTABLE_CELLS),
        },
      ]
    : []),
]

/**
 * What carries a rig to the bench: what to buy, what to cut, templates at true scale to drill and to bend by, every wire with
 * its polarity and fuse, and the first power-up step by step with the readings to expect, from the same power tree that the
 * assessment stands on.
 *
 * @param rig - a rig document of version 2
 * @throws InputError naming every fault of the document
 * @example
 * ```ts
 * import { assessRig } from 'alula/rig'
 * import { buildSheet } from 'alula/report'
 * const sheet = buildSheet(assessRig.example)
 * sheet.content.circuits[0].fuse // => 5
 * sheet.templates[0].name // => 'frame plate, wing of wings'
 * ```
 */
export function buildSheet(rig: Rig): BuildSheet
/**
 * The build sheet of a rig that names members of one's own.
 *
 * @param rig - a rig document of version 2
 * @param kit - verbs over these members, from `rigWith`
 * @throws InputError naming every fault of the document
 */
export function buildSheet<D extends Typed = RigDrive, T extends Typed = RigTransmission, M extends Typed = RigMechanism>(
  rig: NoInfer<Rig<D, T, M>>,
  kit: ReportKit<D, T, M>,
): BuildSheet
export function buildSheet(rig: object, kit: object = { assess: assessRig }): BuildSheet {
  const { assess } = kit as ReportKit<Typed, Typed, Typed>
  const trace: Partial<Judgement> = {}
  const assessment = assess.si(assess.read(rig), trace)
  const { judged, findings } = trace
  if (isNoSolution(assessment) || !judged || !findings) throw new TypeError("buildSheet: the kit is not one that rigWith made")
  const parts = partsOf(judged.rig)
  const plates = platesOf(judged)
  const bends = bendsOf(judged.rig)
  const content: SheetContent = {
    name: judged.rig.name,
    note: judged.rig.note,
    summary: assessment.summary,
    hazards: findings
      .filter((f) => f.severity === "safety" && f.verdict === "falls short")
      .map((f) => `${f.subject}, ${f.title}: ${f.sentence}`),
    cautions: cautionsFor(judged.rig.power?.sources.some((s) => s.type === "cells") ?? false),
    parts,
    price: parts.reduce((sum, p) => sum + p.count * (p.price ?? 0), 0),
    needs: needsOf(judged.rig),
    cuts: cutsOf(judged),
    plates,
    bends,
    circuits: circuitsOf(judged.rig),
    firstPower: firstPowerOf(judged),
  }
  const templates = [...plates.map(drillingTemplate), ...bends.map(formingTemplate)]
  return { content, templates, markdown: sheetMarkdown(content), html: sheetPage(content, templates) }
}
