// The answer to a maker: as planned, one fault, two, or none that is known; and what to do next.
import { formatNumber, formatQuantity } from "../../quantity/index.js"
import { whitened } from "./chance.js"
import { meters, type NumberType } from "./meters.js"
import { nextReading } from "./next.js"
import { faultPairs } from "./pairs.js"
import { showing } from "./predict.js"
import type { Candidate, Departure, Diagnosis, DiagnosisOutcome, NextReading } from "./types.js"
import { type Explanation, noFault, singleFaults, type Task, UNFIT } from "./weigh.js"
import { faultsText, howTo, readingText, valueText } from "./words.js"

/** Explanations of some readings, and what they come to. */
export interface Weighed {
  readonly outcome: DiagnosisOutcome
  readonly planned: Explanation
  /** Most plausible first: single faults, with pairs where no single one explains the readings. */
  readonly all: readonly Explanation[]
  /** The first of those that fit, or of all where none does. */
  readonly best: Explanation | null
}

/** How many times more likely with something wrong than with nothing: below it a healthy rig is called so. */
const ALARM = 20
/** The plan explains readings down to this chance. */
const PLANNED = 0.005
/** Numbers that must be spare before a pair is named alone, and how plausible it must be against all other pairs. */
const SPARE = 2
const ALONE = 0.8
/** Two explanations that show the same within this, in standard deviations all readings together, are one to these readings. */
const SAME = 1

/** Whether a fault has a size that shows. */
const isThere = ({ faults, sizes }: Explanation) =>
  faults.every(({ row }, i) => !row.size || Math.abs(sizes[i] as number) > 0.01 * row.usual)

export function weigh(task: Task): Weighed {
  const planned = noFault(task)
  const singles = singleFaults(task)
  // the chance that nothing is wrong is set as high as that of all faults together
  const odds = singles.reduce((sum, one) => sum + Math.exp((planned.score - one.score) / 2), 0)
  const there = singles.filter(isThere)
  if (planned.chance >= PLANNED && odds < ALARM) return { outcome: "as-planned", planned, all: there, best: planned }
  // what does not fit is no explanation, however common it is
  const single = there.filter((one) => one.chance >= UNFIT)
  if (single.length) return { outcome: "one-fault", planned, all: single, best: single[0] ?? null }
  const pairs = faultPairs(task, singles)
  const fit = pairs.filter((one) => one.chance >= UNFIT)
  const numbers = task.taken.values.filter((v) => v !== null).length
  const [first] = fit
  const alone =
    first !== undefined &&
    numbers - first.faults.filter((f) => f.row.size).length >= SPARE &&
    shareOf(fit, (one) => one === first || isSame(task, one, first)) >= ALONE
  const all = [...fit, ...there]
  return { outcome: alone ? "two-faults" : "unexplained", planned, all, best: all[0] ?? null }
}

/** Share of plausibility of some of a list. */
function shareOf(list: readonly Explanation[], which: (one: Explanation) => boolean, by: "score" | "byReadings" = "score"): number {
  const least = Math.min(...list.map((one) => one[by]))
  const weight = (one: Explanation) => Math.exp((least - one[by]) / 2)
  const all = list.reduce((sum, one) => sum + weight(one), 0)
  return list.filter(which).reduce((sum, one) => sum + weight(one), 0) / all
}

/** Whether two explanations show the same for the readings taken. */
export function isSame(task: Task, a: Explanation, b: Explanation): boolean {
  const [x, y] = [whitened(task.taken, a.shows, a.noise), whitened(task.taken, b.shows, a.noise)]
  const missed = a.shows.misses.every((m, i) => Math.abs(m - (b.shows.misses[i] as number)) < 0.5)
  return missed && Math.abs(a.misfit - b.misfit) < SAME && Math.sqrt(x.reduce((sum, v, i) => sum + (v - (y[i] as number)) ** 2, 0)) < SAME
}

const cap = (text: string) => `${text.charAt(0).toUpperCase()}${text.slice(1)}`
const percent = (share: number) => (share < 0.01 ? "under 1 %" : formatQuantity("ratio", share, "%", 2))
const todoOf = (one: Explanation) => one.faults.map((f) => f.row.todo(f.site.at)).join(" ")

/** Explanations that stand beside each other: those that fit, or all where none does. */
function standing({ outcome, all, planned }: Weighed): readonly Explanation[] {
  if (outcome === "as-planned") return [planned, ...all]
  const fit = all.filter((one) => one.chance >= UNFIT)
  return fit.length ? fit : all
}

export function answer(task: Task, weighed: Weighed): Diagnosis {
  const { outcome, planned } = weighed
  const list = standing(weighed)
  const best = weighed.best ?? planned
  const fits = (one: Explanation) => one === planned || one.chance >= UNFIT
  const candidates = list.slice(0, 12).map(
    (one): Candidate => ({
      faults: one.faults.map((f) => f.name),
      explanation: one.faults.length ? cap(faultsText(one.faults, one.sizes)) : "As planned",
      todo: todoOf(one),
      sizes: one.sizes,
      misfit: one.misfit,
      chance: one.chance,
      plausibility: fits(one) ? shareOf(list, (other) => other === one) : 0,
      byReadings: fits(one) ? shareOf(list, (other) => other === one, "byReadings") : 0,
      sameAs: list
        .filter((other) => other !== one && isSame(task, one, other))
        .slice(0, 4)
        .map((other) => faultsText(other.faults, other.sizes)),
    }),
  )
  const next = outcome === "as-planned" && !signs(task, planned).length ? null : nextOf(task, list)
  return {
    verdict: verdictOf(task, weighed, candidates, next),
    outcome,
    readings: task.taken.list.length,
    plannedMisfit: planned.misfit,
    bestMisfit: best.misfit,
    candidates,
    departures: departures(task, best),
    next,
  }
}

function nextOf(task: Task, list: readonly Explanation[]): NextReading | null {
  const worth = nextReading(task, list)
  if (!worth) return null
  const first = task.planned.motions[0]?.si.name ?? ""
  const { reading, bits, minutes, shows } = worth
  const shown = shows.map((value) => valueText(reading, value))
  return {
    type: reading.type,
    label: readingText(reading, first),
    how: howTo(reading),
    duration: minutes * 60,
    tool: meters[reading.type as NumberType].tool,
    information: bits,
    first: shown[0] as string,
    second: shown.find((text) => text !== shown[0]) ?? (shown[1] as string),
  }
}

function departures(task: Task, best: Explanation): readonly Departure[] {
  const { list, values } = task.taken
  const first = task.planned.motions[0]?.si.name ?? ""
  const planned = showing(task.planned, list, task.asked)
  return list.map((reading, i): Departure => {
    const value = values[i] ?? null
    const text = (shows: { readonly values: Float64Array; readonly misses: Float64Array }) =>
      value === null ? ((shows.misses[i] as number) > 0.5 ? "no" : "yes") : valueText(reading, shows.values[i] as number)
    const off = (value ?? 0) - (best.shows.values[i] as number)
    const alone = Number.isFinite(off) ? Math.abs(off) / (best.noise.deviations[i] as number) : Number.POSITIVE_INFINITY
    return {
      reading: readingText(reading, first),
      read: value === null ? "yes" : valueText(reading, value),
      planned: text(planned),
      explained: text(best.shows),
      apart: Math.min(99, value === null ? (best.shows.misses[i] as number) : alone),
    }
  })
}

function verdictOf(task: Task, weighed: Weighed, candidates: readonly Candidate[], next: NextReading | null): string {
  const { outcome, all } = weighed
  const [first, second] = candidates
  const measure = next ? ` Read next: ${next.label}; ${next.how}.` : ""
  const odd = signs(task, weighed.planned)
  if (outcome === "as-planned" && odd.length)
    return `${cap(odd.join("; "))}: not as planned, but too little to go by. Take times, voltages and currents.${measure}`
  if (outcome === "as-planned" || !first)
    return "What you read is what the plan says, within what tools and good parts stray: nothing need be wrong. A small fault would not show."
  const same = first.sameAs.length ? ` As good by these readings: ${first.sameAs.join("; or ")}.` : ""
  const order = [...candidates].sort((a, b) => b.byReadings - a.byReadings)[0] as Candidate
  const prior =
    order === first || first.sameAs.length
      ? ""
      : ` By the readings alone it would be: ${order.explanation}; only that the first is met more often puts it first.`
  if (outcome === "one-fault") {
    const others = first.plausibility < 0.8 && second && !same ? ` Else: ${second.explanation} (${percent(second.plausibility)}).` : ""
    return `Most plausible (${percent(first.plausibility)}): ${first.explanation}.${same} ${first.todo}${others}${prior}${measure}`
  }
  const [nearest] = all.filter((one) => one.faults.length === 1)
  const off = nearest ? ` The nearest, ${faultsText(nearest.faults, nearest.sizes)}, ${oddsText(nearest.chance)}.` : ""
  if (outcome === "two-faults")
    return `No single fault explains these readings, but two together do (${percent(first.plausibility)}): ${first.explanation}.${same} ${first.todo}${measure}`
  const pairs = candidates.filter((one) => one.faults.length === 2 && one.plausibility >= 0.01)
  if (pairs.length)
    return `Unexplained by one fault.${off} Pairs that fit: ${pairs
      .slice(0, 4)
      .map((one) => `${one.explanation} (${percent(one.plausibility)})`)
      .join("; or ")}.${slipped(task)} Replace nothing yet.${measure}`
  const worst = departures(task, nearest ?? weighed.planned).reduce((a, b) => (b.apart > a.apart ? b : a))
  return `Unexplained: no fault on the list makes these readings, alone or with another.${off} Read again what is farthest off, ${worst.reading} (read ${worst.read}, at best ${worst.explained}); compare the document with what was built; then look for what is not on the list.${slipped(task)} Replace nothing yet.${measure}`
}

/** What is seen, heard or felt that the plan does not show. */
function signs(task: Task, planned: Explanation): readonly string[] {
  const first = task.planned.motions[0]?.si.name ?? ""
  return task.taken.list.flatMap((reading, i) => ((planned.shows.misses[i] as number) > 0.5 ? [readingText(reading, first)] : []))
}

/** Readings that are ten, a hundred or a thousand times what was planned, or such a part of it: often a point or a unit that slipped. */
function slipped(task: Task): string {
  const { list, values } = task.taken
  const first = task.planned.motions[0]?.si.name ?? ""
  const { values: planned } = showing(task.planned, list, task.asked)
  const found = list.flatMap((reading, i) => {
    const powers = Math.log10((values[i] ?? 0) / (planned[i] as number))
    const whole = Math.round(powers)
    if (!Number.isFinite(powers) || whole === 0 || Math.abs(powers - whole) > 0.1) return []
    const times = whole > 0 ? `about ${formatNumber(10 ** whole)} times` : `about 1/${formatNumber(10 ** -whole)} of`
    return [`${readingText(reading, first)} is ${times} what was planned`]
  })
  return found.length ? ` ${cap(found.join("; "))}: check its decimal point and its unit.` : ""
}

/** How far off the nearest one is. */
const oddsText = (chance: number): string =>
  chance < 1e-6
    ? "is far off: it would read so less than once in a million times"
    : `would read so about once in ${formatNumber(Number((1 / chance).toPrecision(1)))} times`
