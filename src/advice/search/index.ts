import { formatNumber, formatQuantity } from "../../quantity/index.js"
import type { Rig } from "../../rig/index.js"
import { PORTABLE_CELLS } from "../../rig/sources.js"
import { seal } from "../../solver/display.js"
import { type Caution, caution, NoSolutionError, type OutFields, refuse } from "../../solver/index.js"
import { Pace } from "../../study/pace.js"
import { type Choice, choiceFields, choicesOf, Misjudged } from "./choice.js"
import { members } from "./members.js"
import { type Pick, type Plan, sizeOf } from "./plan.js"
import { readPlan } from "./read.js"
import type { SearchRequest } from "./request.js"
import { runPlan, type SearchOptions, wholeOf } from "./run.js"
import type { Counts, Tally } from "./scan.js"

/** What one check ruled out. */
export interface Rejection {
  /** Name of the check; `fits` where parts do not go together, `keep.…` for a limit of the search's own. */
  readonly check: string
  readonly title: string
  /** Combinations that it ruled out; each counts under the first check that did. */
  readonly combinations: number
  /** Parts that came nearest to its limit, and what was found of them. */
  readonly nearest: string
  readonly why: string
}

/** Result of {@link search}. */
export interface Search {
  /** One sentence on what was found. */
  readonly why: string
  /** Choices that no other beats in all goals at once, cheapest first; equals side by side. */
  readonly front: readonly Choice[]
  /** What stood in the way of the rest, that which took most first. */
  readonly ruledOut: readonly Rejection[]
  /** All combinations of what may be changed, ranges at the values tried first. */
  readonly combinations: number
  /** Those ruled out by a check on the parts that it reads, or at the best corner of a block. */
  readonly byCheck: number
  /** Those left out because a bound proves them dominated. */
  readonly byBound: number
  /** Those assessed whole. */
  readonly assessed: number
  readonly cautions: readonly Caution[]
}

const outFields: OutFields<Omit<Search, "front" | "cautions"> & { front: readonly Omit<Choice, "rig">[] }> = {
  why: { kind: "text", label: "why" },
  front: { kind: "list", label: "choices that no other beats", of: { kind: "group", label: "choice", fields: choiceFields } },
  ruledOut: {
    kind: "list",
    label: "what stood in the way",
    of: {
      kind: "group",
      label: "check",
      fields: {
        check: { kind: "text", label: "check" },
        title: { kind: "text", label: "what" },
        combinations: { kind: "number", label: "combinations" },
        nearest: { kind: "text", label: "nearest" },
        why: { kind: "text", label: "finding" },
      },
    },
  },
  combinations: { kind: "number", label: "combinations" },
  byCheck: { kind: "number", label: "ruled out by a check in blocks" },
  byBound: { kind: "number", label: "proved dominated" },
  assessed: { kind: "number", label: "assessed whole" },
}

const namesOf = (plan: Plan, pick: Pick) =>
  plan.axes
    .flatMap(({ family, keys, members: tried }, a) => {
      const name = tried[pick[a] as number]?.name
      if (name === undefined) return []
      return family === null ? `${keys[0]?.at(-1)} ${name}` : name === "none" ? `no ${family}` : name
    })
    .join(", ")

function rejectionsOf(plan: Plan, ruledOut: Readonly<Record<string, Tally>>): Rejection[] {
  return Object.entries(ruledOut)
    .map(
      ([check, { title, combinations, closest }]): Rejection => ({
        check,
        title,
        combinations,
        nearest: closest ? namesOf(plan, closest.pick) : "",
        why: closest?.sentence ?? "",
      }),
    )
    .toSorted((a, b) => b.combinations - a.combinations || (a.check < b.check ? -1 : 1))
}

/** No choice holds: says what stood in the way most, and which parts came nearest. */
function noChoice(plan: Plan, ruledOut: Readonly<Record<string, Tally>>, counts: Counts): NoSolutionError {
  const [first] = rejectionsOf(plan, ruledOut)
  const tallies = Object.values(ruledOut).filter(({ closest }) => closest && closest.utilisation > 1)
  const nearest = tallies.reduce<Tally | null>(
    (a, b) => (a && (a.closest?.utilisation ?? 0) <= (b.closest?.utilisation ?? 0) ? a : b),
    null,
  )
  const parts = nearest?.closest ? namesOf(plan, nearest.closest.pick) : (first?.nearest ?? "")
  const near = nearest && parts ? " Nearest: {parts}, {beyond ratio %} beyond the limit." : parts ? " Nearest: {parts}." : ""
  const finding = nearest?.closest?.sentence ?? first?.why ?? ""
  const beyond = (nearest?.closest?.utilisation ?? 2) - 1
  const combinations = sizeOf(wholeOf(plan))
  return new NoSolutionError(
    "search",
    refuse(
      "no-candidate",
      `None of {combinations} combinations holds the whole assessment; most, {most} of them, are ruled out by: {title}.${near}${finding ? " {finding}" : ""}`,
      beyond,
      { combinations, assessed: counts.assessed },
      {},
      {
        most: first?.combinations ?? 0,
        title: first?.title ?? "",
        beyond,
        parts,
        finding,
      },
    ),
  )
}

function sentence(front: readonly Choice[], combinations: number, currency: string): string {
  const [cheapest] = front
  if (!cheapest) return ""
  const price = `${formatNumber(cheapest.price)}${currency ? ` ${currency}` : ""}`
  const parts = cheapest.parts.map(({ name }) => name).join(", ")
  return `${front.length} of ${combinations} combinations hold the whole assessment and are not beaten by another; the cheapest comes to ${price} and ${formatQuantity("mass", cheapest.mass)}${parts ? ` (${parts})` : ""}.`
}

function cautionsOf(plan: Plan, front: readonly Choice[]): Caution[] {
  const found: Caution[] = [
    caution(
      "catalogue-figures",
      "warning",
      "Every choice holds the assessment by the catalogue's own figures: check each part against its maker's datasheet before buying, and try the rig slowly and with a helper first.",
    ),
  ]
  const unmade = Math.max(...front.map((choice) => choice.unmade.length))
  if (unmade)
    found.push(
      caution(
        "not-everything-checked",
        "caution",
        "Up to {unmade} checks of a choice could not be made, for want of data in the document: what is not checked is not known to be safe.",
        undefined,
        { unmade },
      ),
    )
  if (plan.rig.power?.sources.some((source) => source.type === "cells"))
    found.push(
      caution(
        "cells",
        "warning",
        "Cells feed a short circuit with hundreds of amperes: fuse at the pack, protection circuit, no damaged cells, no charging below 0 °C or unattended.",
        PORTABLE_CELLS,
      ),
    )
  return found
}

/**
 * How many combinations a search has, before it is begun; the number of values tried in ranges is counted.
 *
 * @throws InputError naming every fault of rig and request
 */
export function searchSize(rig: Rig, request: SearchRequest): number {
  return sizeOf(wholeOf(readPlan(rig, request)))
}

/**
 * The best parts and numbers for a rig: every choice that holds the **whole** assessment, with its own parts, prices and masses,
 * and that no other beats in all goals at once.
 *
 * `vary` names what may be changed by its path in the document: a place where parts of a catalogue's family are tried, a number
 * that may be one of several, or a number that may lie anywhere in a range. A part takes all fields of its place with it, so that
 * none inherits another's figures; what belongs to the place stays (the count of drives, the length of a run). Its mass and price
 * stand in the rig's list of parts.
 *
 * A choice is offered only if `assessRig` finds nothing that falls short of it, and every check of it was made but for those that
 * the document itself lacks data for (they are told) and those named in `keep.unmade`.
 *
 * Exact on what is exchanged: each combination is ruled out by a check on the parts which that check reads, by the best corner of a
 * sorted block along fields that are known to worsen it one way only, left out because a bound proves it dominated, or assessed
 * whole. Numbers in ranges are tried at even steps, then moved as long as a goal gets better and the assessment holds: found, with
 * a proven limit and the gap to it where there is one. Prices are compared to 10⁻⁶, masses to 10⁻⁹ kg, times to 1 µs, hours
 * to 10 ms; equal choices all stay. Counts and answer do not depend on a pool.
 *
 * Sources: branch and bound after A. H. Land, A. G. Doig, Econometrica 28 (1960) 497; Pareto dominance as in M. Ehrgott,
 * Multicriteria Optimization, 2nd edition, 2005, chapter 2.
 *
 * @param rig - a rig document
 * @param request - the catalogue, what may be changed, the goals, what must be kept to
 * @param options - signal, progress and worker threads
 * @throws InputError naming every fault of rig and request (as the promise's rejection)
 * @throws NoSolutionError where no choice holds, with what came nearest
 */
export async function search(rig: Rig, request: SearchRequest, options: SearchOptions = {}): Promise<Search> {
  if (options.signal?.aborted) throw options.signal.reason
  const { currency, ...asked } = readPlan(rig, request)
  let plan: Plan = asked
  for (;;) {
    try {
      return await searched(plan, currency, options)
    } catch (error) {
      // every choice is assessed whole in the end: a check that reads more than it declares is taken to read everything, and once again
      if (!(error instanceof Misjudged) || error.checks.every((id) => plan.wary.includes(id))) throw error
      plan = { ...plan, wary: [...plan.wary, ...error.checks] }
    }
  }
}

async function searched(plan: Plan, currency: string, options: SearchOptions): Promise<Search> {
  const { front: found, counts, ruledOut, engine } = await runPlan(plan, options)
  if (!found.length) throw noChoice(plan, ruledOut, counts)
  const pace = new Pace<never>(options.signal, undefined, () => undefined as never)
  const steps = choicesOf(members, engine, found)
  let step = steps.next()
  while (!step.done) {
    await pace.rest()
    step = steps.next()
  }
  const front = step.value
  const combinations = sizeOf(wholeOf(plan))
  const result: Search = {
    why: sentence(front, combinations, currency),
    front,
    ruledOut: rejectionsOf(plan, ruledOut),
    combinations,
    ...counts,
    cautions: cautionsOf(plan, front),
  }
  return seal(outFields as never, result)
}
