// Choices in full: their parts, figures and rigs, and how far each may be from the best there is.
import { findingsOf } from "../../rig/check/assess.js"
import { carriedMass } from "../../rig/check/carried.js"
import type { Rig } from "../../rig/index.js"
import type { RigSi } from "../../rig/whole/faults.js"
import type { Members } from "../../rig/whole/fields.js"
import type { OutFields } from "../../solver/index.js"
import { cycleOf, hoursOf, type Values } from "./goals.js"
import type { Axis, Block, PlanGoal } from "./plan.js"
import { type Engine, type Found, failuresOf, isDominated } from "./scan.js"

/** A part chosen. */
export interface ChosenPart {
  /** Where it goes, by path in the document. */
  readonly at: string
  readonly family: string
  /** Its name in the catalogue; `none` where doing without was chosen. */
  readonly name: string
}

/** A number chosen. */
export interface ChosenValue {
  readonly at: string
  /** SI. */
  readonly value: number
}

/** How good a choice is by one goal. */
export interface GoalReached {
  readonly goal: string
  readonly value: number
  /** What no choice of these parts comes below (above, for hours) anywhere in the ranges; null where none is proven: the value was found, no more. */
  readonly bound: number | null
  /** How far value and bound are apart, as a share of the value; 0 where nothing better exists with these parts. */
  readonly gap: number | null
}

/** One choice that no other beats in all goals at once, and that the whole assessment holds. */
export interface Choice {
  /** Price of all parts of the rig, in the catalogue's currency. */
  readonly price: number
  /** Mass of everything carried, kg. */
  readonly mass: number
  /** Time out and back of all motions, each at its worst, s. */
  readonly duration: number | null
  /** Time on one charge, s; null where nothing runs down or it is not known. */
  readonly hours: number | null
  readonly parts: readonly ChosenPart[]
  readonly values: readonly ChosenValue[]
  /** Each goal reached, and how far it may be from the best. */
  readonly reached: readonly GoalReached[]
  /** Checks of it that are close to their limit. */
  readonly marginal: number
  /** Checks of it that could not be made, with what each is about. */
  readonly unmade: readonly string[]
  /** The rig with these parts, ready for every other question. */
  readonly rig: Rig
}

/** A choice, its numbers moved within their ranges. */
interface Moved extends Found {
  /** Number on each axis that has a range; null elsewhere. */
  readonly numbers: readonly (number | null)[]
}

const rigOf = ({ judge }: Engine, { pick, numbers }: Pick<Moved, "pick" | "numbers">): RigSi =>
  judge.space.rigOf(
    pick,
    undefined,
    numbers.flatMap((value, a) => (value === null ? [] : (judge.plan.axes[a] as Axis).keys.map((keys) => ({ keys, value })))),
  )

/** Rigs tried while numbers are moved, of all choices together, and how often the step is halved. */
const TRIES = 240
const HALVINGS = 3

/** Moves numbers within their ranges from where they were found, as long as some goal gets better, none worse, and the whole assessment holds. */
function* moved(members: Members, engine: Engine, front: readonly Found[]): Generator<void, Moved[]> {
  const { axes } = engine.judge.plan
  const ranged = axes.flatMap((axis, a) => (axis.range ? [a] : []))
  const start = front.map(
    (found): Moved => ({
      ...found,
      numbers: axes.map((axis, a) => (axis.range ? (axis.members[found.pick[a] as number]?.value as number) : null)),
    }),
  )
  const share = Math.floor(TRIES / Math.max(1, start.length))
  const ended: Moved[] = []
  for (const from of start) {
    let [best, tries] = [from, 0]
    for (let halving = 1; halving <= HALVINGS && tries < share; ) {
      let better = false
      for (const a of ranged)
        for (const way of [1, -1]) {
          const { range, members: tried } = axes[a] as Axis & { readonly range: readonly [number, number] }
          const step = (range[1] - range[0]) / (tried.length - 1) / 2 ** halving
          const number = (best.numbers[a] as number) + way * step
          if (number < range[0] || number > range[1] || tries >= share) continue
          tries++
          yield
          const next = { ...best, numbers: best.numbers.map((old, b) => (b === a ? number : old)) }
          const values = valuesOf(members, engine, rigOf(engine, next), best.values)
          if (!values) continue
          best = { ...next, values }
          better = true
        }
      if (!better) halving++
    }
    ended.push(best)
  }
  return ended
}

/** What a rig comes to where that is better than before and the whole assessment holds; null otherwise. */
function valuesOf(members: Members, { judge, goals }: Engine, rig: RigSi, before: Values): Values | null {
  if (!judge.isSound(rig)) return null
  const values = goals.of(rig)
  if (!values || !isDominated([{ pick: [], values }], before)) return null
  return failuresOf(judge.plan, findingsOf(members, rig, undefined, judge.kept).findings).length ? null : values
}

const nameOf = ({ type, motion }: PlanGoal) => (motion === null ? type : `${type} of ${motion}`)

function reachedOf({ judge, goals }: Engine, { pick, values }: Moved): GoalReached[] {
  const { plan } = judge
  const block: Block = plan.axes.map((axis, a) => (axis.range ? axis.members.map((_, m) => m) : [pick[a] as number]))
  const least = goals.least(block)
  return plan.goals.map((goal, k): GoalReached => {
    const sign = goal.type === "hours" ? -1 : 1
    const value = values[k] as number
    const bound = Number.isFinite(least[k]) ? Math.min(least[k] as number, value) : null
    const gap = bound === null ? null : value === bound ? 0 : Math.abs((value - bound) / value)
    return { goal: nameOf(goal), value: sign * value, bound: bound === null ? null : sign * bound, gap }
  })
}

const finite = (value: number | null) => (value !== null && Number.isFinite(value) ? value : null)

/** A choice that the whole assessment does not hold: its failing checks read more than they declare. */
export class Misjudged extends Error {
  constructor(readonly checks: readonly string[]) {
    super(`Checks that read more than they declare: ${checks.join(", ")}`)
  }
}

function choiceOf(members: Members, engine: Engine, found: Moved): Choice {
  const { plan } = engine.judge
  const rig = rigOf(engine, found)
  const { findings, judged: at } = findingsOf(members, rig, undefined, engine.judge.kept)
  const failed = failuresOf(plan, findings)
  if (failed.length) throw new Misjudged(failed.map(({ id }) => id))
  const chosen = plan.axes.map((axis, a) => ({ axis, member: axis.members[found.pick[a] as number], number: found.numbers[a] ?? null }))
  return {
    price: rig.parts.reduce((sum, part) => sum + part.count * part.price, 0),
    mass: carriedMass(at) ?? 0,
    duration: cycleOf(at, null),
    hours: plan.rig.day.hours === null ? null : finite(hoursOf(at)),
    parts: chosen.flatMap(({ axis, member }) =>
      axis.family === null
        ? []
        : axis.at.map((where): ChosenPart => ({ at: where, family: axis.family as string, name: member?.name ?? "none" })),
    ),
    values: chosen.flatMap(({ axis, member, number }) =>
      axis.family !== null ? [] : axis.at.map((where): ChosenValue => ({ at: where, value: number ?? (member?.value as number) })),
    ),
    reached: reachedOf(engine, found),
    marginal: findings.filter((one) => one.verdict === "marginal").length,
    unmade: findings
      .filter((one) => one.verdict === "not enough data" || one.verdict === "cannot be judged")
      .map((one) => `${one.title}: ${one.subject}`),
    rig: rig as unknown as Rig,
  }
}

/** The front in full, cheapest first: numbers in ranges moved on, and what that leaves beaten taken out. */
export function* choicesOf(members: Members, engine: Engine, front: readonly Found[]): Generator<void, Choice[]> {
  const isRanged = engine.judge.plan.axes.some((axis) => axis.range)
  const none = engine.judge.plan.axes.map(() => null)
  const all: readonly Moved[] = isRanged ? yield* moved(members, engine, front) : front.map((found) => ({ ...found, numbers: none }))
  const kept = all.filter((one) => !isDominated(all, one.values))
  const order = (a: Moved, b: Moved) => {
    const [one, other] = [
      [...a.values, ...a.pick],
      [...b.values, ...b.pick],
    ]
    const k = one.findIndex((value, i) => value !== other[i])
    return k < 0 ? 0 : (one[k] as number) - (other[k] as number)
  }
  const choices: Choice[] = []
  for (const found of kept.toSorted(order)) {
    yield
    choices.push(choiceOf(members, engine, found))
  }
  return choices.toSorted((a, b) => a.price - b.price || a.mass - b.mass)
}

/** Descriptions of a choice's figures; its rig is a document of its own. */
export const choiceFields: OutFields<Omit<Choice, "rig">> = {
  price: { kind: "number", label: "price" },
  mass: { kind: "mass", label: "mass" },
  duration: { kind: "time", label: "time out and back" },
  hours: { kind: "time", label: "time on one charge" },
  parts: {
    kind: "list",
    label: "parts",
    of: {
      kind: "group",
      label: "part",
      fields: { at: { kind: "text", label: "place" }, family: { kind: "text", label: "family" }, name: { kind: "text", label: "part" } },
    },
  },
  values: {
    kind: "list",
    label: "numbers",
    of: {
      kind: "group",
      label: "number",
      fields: { at: { kind: "text", label: "place" }, value: { kind: "number", label: "value (SI)" } },
    },
  },
  reached: {
    kind: "list",
    label: "goals",
    of: {
      kind: "group",
      label: "goal",
      fields: {
        goal: { kind: "text", label: "goal" },
        value: { kind: "number", label: "reached (SI)" },
        bound: { kind: "number", label: "proven limit (SI)" },
        gap: { kind: "ratio", label: "gap between them", unit: "%" },
      },
    },
  },
  marginal: { kind: "number", label: "checks close to their limit" },
  unmade: { kind: "list", label: "checks not made", of: { kind: "text", label: "check" } },
}
