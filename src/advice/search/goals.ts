// What choices are compared by: exact for one rig, and what no rig of a block comes below.

import { checks } from "../../rig/check/assess.js"
import { carriedMass } from "../../rig/check/carried.js"
import type { Judged } from "../../rig/check/conditions.js"
import { RIDDEN } from "../../rig/check/paths.js"
import type { RigSi } from "../../rig/whole/faults.js"
import type { Judge } from "./judge.js"
import { starves } from "./monotone.js"
import type { Axis, Block, Pick, Plan, PlanGoal, Put } from "./plan.js"

/** Goals as they are compared, each to be made small: hours stand with a minus. */
export type Values = readonly number[]

// sums and quadratures: rounded, so that the order of adding cannot tell equal ones apart
const steps: Readonly<Record<PlanGoal["type"], number>> = { price: 1e-6, mass: 1e-9, duration: 1e-6, hours: 1e-2 }
const rounded = (type: PlanGoal["type"], value: number) => (Number.isFinite(value) ? Math.round(value / steps[type]) * steps[type] : value)

/** Time out and back at its worst, of all motions or of one; null where something stops them. */
export function cycleOf(at: Judged, motion: string | null): number | null {
  let sum = 0
  for (const [i, model] of at.motions.entries()) {
    if (motion !== null && model.name !== motion) continue
    const runs = at.runs[i] ?? []
    const times = new Map<string, number>()
    for (const run of runs) {
      if (!run.quick) return null
      times.set(run.condition, (times.get(run.condition) ?? 0) + run.quick.duration)
    }
    sum += Math.max(...times.values())
  }
  return sum
}

/** Time on one charge of the source that is empty first; infinite where none runs down, null where it is not known. */
export function hoursOf(at: Judged): number | null {
  const check = checks.find(({ id }) => id === "day-energy")
  let least = Number.POSITIVE_INFINITY
  for (const { result } of check?.find(at) ?? []) {
    if ("verdict" in result || result.value === null || result.limit === null) return null
    const { hours } = at.rig.day
    const lasts =
      result.kind === "energy" ? ((hours ?? 0) * result.limit) / result.value : result.relation === "at-least" ? result.value : 0
    least = Math.min(least, lasts)
  }
  return least
}

/** Fields of a mechanism that say where it is held and what holds it, and nothing of what it weighs. */
const weightless = ["fixedPivot", "movingPivot", "hinge", "hingeFriction", "mount", "springs", "transmission", "pinch"]

/** Whether a field may change the mass of what moves. */
const weighs = (tokens: readonly string[]) => tokens[2] === "mechanisms" && !weightless.includes(tokens[4] ?? "")

const partsOf = (rig: RigSi, of: "price" | "mass") => rig.parts.reduce((sum, part) => sum + part.count * part[of], 0)

/** The goals of a plan. */
export class Goals {
  readonly #plan: Plan
  /** Parts of the document that are not exchanged, by their place in its list, and what is written into them, by axis and member. */
  readonly #kept: ReadonlyMap<number, RigSi["parts"][number]>
  readonly #listed: readonly (readonly (readonly Put[])[])[]
  /** Axes that change what moves, how fast, and how long it lasts. */
  readonly #moving: readonly number[]
  readonly #timing: readonly number[]
  readonly #lasting: readonly number[]
  readonly #known = new Map<string, number>()

  constructor(private readonly judge: Judge) {
    const { plan } = judge
    this.#plan = plan
    const taken = new Set(plan.axes.map((axis) => axis.row?.index))
    this.#kept = new Map(plan.rig.parts.flatMap((part, i) => (taken.has(i) ? [] : [[i, part] as const])))
    this.#listed = plan.axes.map((axis) => axis.members.map(({ puts }) => puts.filter(({ keys }) => keys[0] === "parts")))
    const touchedBy = (id: string) => judge.questions.find((one) => one.id === id && one.check)?.touched ?? []
    this.#timing = touchedBy("duration-out")
    this.#lasting = touchedBy("day-energy")
    this.#moving = plan.axes.flatMap((_, a) => (judge.space.leaves[a]?.some(({ tokens }) => weighs(tokens)) ? [a] : []))
  }

  /** What a rig comes to; null where a goal has no value. */
  of(rig: RigSi, at: Judged = this.judge.judgedOf(rig)): Values | null {
    const values = this.#plan.goals.map(({ type, motion }): number | null => {
      if (type === "price") return rounded(type, partsOf(rig, "price"))
      if (type === "mass") return rounded(type, carriedMass(at) ?? 0)
      const value = type === "duration" ? cycleOf(at, motion) : hoursOf(at)
      return value === null ? null : rounded(type, type === "hours" ? -value : value)
    })
    return values.every((value) => value !== null) ? values : null
  }

  /** What no rig of a block comes below. */
  least(block: Block): Values {
    return this.#plan.goals.map(({ type, motion }) => {
      if (type === "price" || type === "mass") return this.leastSum(type, block)
      const touched = type === "duration" ? this.#timing : this.#lasting
      return this.#leastFound(type, motion, touched, block)
    })
  }

  /** Lowest price or mass of all parts of a block. */
  leastSum(of: "price" | "mass", block: Block): number {
    const sum = this.#plan.axes.reduce(
      (total, { row, members }, a) => {
        if (!row) return total
        let least = Number.POSITIVE_INFINITY
        for (const m of block[a] as readonly number[]) {
          const member = members[m] as Axis["members"][number]
          least = Math.min(least, this.judge.leastCount(a, member.per, block) * member[of])
        }
        return total + least
      },
      this.#leastFixed(of, block),
    )
    return rounded(of, of === "mass" ? sum + this.#movingMass(block) : sum)
  }

  /** What parts cost or weigh at least that are not exchanged: their own figures may be what is changed. */
  #leastFixed(of: "price" | "mass", block: Block): number {
    const lows = new Map<string, number>()
    this.#listed.forEach((members, a) => {
      const puts = (block[a] as readonly number[]).flatMap((m) => members[m] as readonly Put[])
      for (const { keys, value } of puts) {
        const key = keys.slice(1).join(".")
        lows.set(key, Math.min(lows.get(key) ?? Number.POSITIVE_INFINITY, value as number))
      }
    })
    return [...this.#kept].reduce(
      (sum, [i, part]) => sum + (lows.get(`${i}.count`) ?? part.count) * (lows.get(`${i}.${of}`) ?? part[of]),
      0,
    )
  }

  /** Mass of what moves, which is no part: known once all that changes it is. */
  #movingMass(block: Block): number {
    if (!this.#moving.every((a) => (block[a] as readonly number[]).length === 1)) return 0
    const pick = this.#pickOf(this.#moving, block)
    return this.#once(`moving ${pick.join(" ")}`, () => {
      const rig = this.judge.rigOf(pick)
      if (!this.judge.isSound(rig)) return 0
      const parts = rig.parts.length ? rig.parts : NO_PARTS
      const whole = parts === rig.parts ? rig : { ...rig, parts }
      return (carriedMass(this.judge.judgedOf(whole)) ?? 0) - partsOf(whole, "mass")
    })
  }

  #pickOf(axes: readonly number[], block: Block): Pick {
    return block.map((members, a) => (axes.includes(a) ? (members[0] as number) : -1))
  }

  #once(key: string, make: () => number): number {
    const found = this.#known.get(key) ?? make()
    this.#known.set(key, found)
    return found
  }

  #leastFound(type: "duration" | "hours", motion: string | null, touched: readonly number[], block: Block): number {
    const unknown = Number.NEGATIVE_INFINITY
    const isOne = touched.every((a) => (block[a] as readonly number[]).length === 1)
    const corner = isOne || type === "hours" ? null : this.judge.corner(RIDDEN, starves, touched, block)
    if (!isOne && !corner) return unknown
    const pick = this.#pickOf(touched, block)
    return this.#once(`${type} ${motion} ${corner?.key ?? pick.join(" ")}`, () => {
      const rig = corner ? corner.make() : this.judge.rigOf(pick)
      if (!this.judge.isSound(rig)) return unknown
      const at = this.judge.judgedOf(rig)
      const value = type === "duration" ? cycleOf(at, motion) : hoursOf(at)
      return value === null ? unknown : rounded(type, type === "hours" ? -value : value)
    })
  }

  /** A limit of the goals that nothing of a block keeps, or null. */
  broken(block: Block): { readonly id: string; readonly title: string } | null {
    const { budget } = this.#plan.rig
    for (const of of ["price", "mass"] as const) {
      const limit = budget?.[of] ?? null
      if (limit !== null && this.leastSum(of, block) > limit * ROUNDING) return { id: of, title: titles[of] }
    }
    const { duration, hours } = this.#plan.keep
    const timed = this.#plan.goals.find((goal) => goal.type === "duration")?.motion ?? null
    if (duration !== null && this.#leastFound("duration", timed, this.#timing, block) > duration * ROUNDING)
      return { id: "keep.duration", title: titles.duration }
    if (hours !== null && -this.#leastFound("hours", null, this.#lasting, block) * ROUNDING < hours)
      return { id: "keep.hours", title: titles.hours }
    return null
  }
}

/** A limit is kept by what only rounding takes beyond it. */
const ROUNDING = 1 + 1e-9

const NO_PARTS: RigSi["parts"] = [{ name: "none", mass: 0, count: 1, price: 0, forward: 0, left: 0, height: 1 }]

const titles = {
  price: "price of all parts",
  mass: "mass of the whole rig",
  duration: "time out and back",
  hours: "time on one charge",
} as const
