// Decides checks of a search: each on the axes that it reads, once per members of those, or at the best corner of a sorted block.
import { checks } from "../../rig/check/assess.js"
import type { RigCheck } from "../../rig/check/check.js"
import { type Judged, judged } from "../../rig/check/conditions.js"
import { type Measured, type NotMade, utilisationOf, verdictOf } from "../../rig/check/finding.js"
import { POSED, RIDDEN, SUPPLIED } from "../../rig/check/paths.js"
import { coordinatesAt } from "../../rig/run/motion-model.js"
import type { KeptMotions } from "../../rig/run/situation.js"
import { type RigSi, rigFaults } from "../../rig/whole/faults.js"
import type { Members } from "../../rig/whole/fields.js"
import type { Path } from "../../solver/index.js"
import { drawsSteadily, shortensOf, whateverFeeds } from "./monotone.js"
import { countAt } from "./places.js"
import { type Axis, type Block, isDocuments, type Pick, type Plan } from "./plan.js"
import { type Leaf, meets, type PartRow, Space } from "./space.js"

/** How a question came out for some members: whether they may be chosen, and what speaks most against them. */
export interface Decision {
  readonly holds: boolean
  /** Whether something falls short, not only was not made. */
  readonly short: boolean
  readonly sentence: string
  /** Share of the limit that is used; 0 where none is told. */
  readonly utilisation: number
}

/** Something that rules out choices: parts that do not go together, or a check. */
export interface Question {
  readonly id: string
  readonly title: string
  /** Axes that it hangs on. */
  readonly touched: readonly number[]
  /** The check that is asked, of the whole rig or of its motions alone; null where parts are asked whether they go together. */
  readonly check: RigCheck | null
  readonly unfed: boolean
  decide(rig: RigSi): Decision
}

const holding: Decision = { holds: true, short: false, sentence: "", utilisation: 0 }

const split = (pattern: string): string[] => pattern.replaceAll("[]", ".[]").split(".")
const under = (tokens: readonly string[], root: readonly string[]) => root.every((token, i) => tokens[i] === token)
const touches = (leaf: readonly string[], read: readonly string[]) => under(leaf, read) || under(read, leaf)

/** Whether what a check found rules a choice out, by the plan. */
export function rulesOut(plan: Plan, id: string, result: Measured | NotMade): boolean {
  if (!("verdict" in result)) return verdictOf(result) === "falls short"
  // what hangs on another check is ruled out by that one
  if (result.because !== null || plan.keep.unmade.includes(id)) return false
  return result.missing === null || !isDocuments(plan, result.missing)
}

/** What rigs are kept of while a search runs, of those looked at last. */
const KEPT = 256

function kept<K, V>(map: Map<K, V>, key: K, make: () => V): V {
  const found = map.get(key) ?? make()
  map.delete(key)
  map.set(key, found)
  for (const [old] of map) {
    if (map.size <= KEPT) break
    map.delete(old)
  }
  return found
}

/** What feeds a motion, as paths that a check reads. */
const FEEDING = [...SUPPLIED, "day.reserve", "day.coldest", "programme"] as const

function decisionOf(plan: Plan, check: RigCheck, at: Judged): Decision {
  const failed = check.find(at).flatMap(({ result }) => (rulesOut(plan, check.id, result) ? [result] : []))
  const [first] = failed
  if (!first) return holding
  const share = (result: Measured | NotMade) => ("verdict" in result ? 0 : (utilisationOf(result) ?? 0))
  const worst = failed.reduce((a, b) => (share(b) > share(a) ? b : a), first)
  return { holds: false, short: failed.some((result) => !("verdict" in result)), sentence: worst.sentence, utilisation: share(worst) }
}

/** Whether every mechanism closes where its drive's travel begins and ends. */
function closes({ motions }: Judged): Decision {
  for (const motion of motions)
    for (const travel of [0, motion.span])
      if (
        !coordinatesAt(motion, travel).every((q, i) => Number.isFinite(q) && motion.parts[i]?.mechanism.pose(q).tip.every(Number.isFinite))
      )
        return {
          holds: false,
          short: true,
          sentence: `${motion.name} does not close at the ${travel === 0 ? "start" : "end"} of its drive's travel.`,
          utilisation: 0,
        }
  return holding
}

/** Answers the questions of a plan. */
export class Judge {
  readonly space: Space
  readonly questions: readonly Question[]
  readonly kept: KeptMotions = { models: new WeakMap(), curves: new WeakMap() }
  readonly #known: Map<string, Decision | null>[]
  readonly #sound = new WeakMap<object, boolean>()
  readonly #rigs = new Map<string, RigSi>()
  readonly #judged = new Map<RigSi, Judged>()
  readonly #bare = new WeakMap<RigSi["motions"][number], RigSi["motions"][number]>()

  constructor(
    readonly members: Members,
    readonly plan: Plan,
  ) {
    this.space = new Space(plan)
    const isSteady = drawsSteadily(plan)
    this.shortensOf = (check) => (isSteady ? shortensOf(check) : check.worsens)
    const { axes, rig } = plan
    const changing = (root: Path) => axes.flatMap((axis, a) => (axis.keys.some((keys) => meets(keys, root)) ? [a] : []))
    const common = { check: null, unfed: false }
    const together = (touched: readonly number[], alone: (rig: RigSi) => RigSi): Question[] => {
      const decide = (whole: RigSi) => {
        const [fault] = rigFaults(this.members, alone({ ...whole, programme: [] }))
        return fault ? { holds: false, short: true, sentence: fault.message, utilisation: 0 } : holding
      }
      return touched.length ? [{ id: "fits", title: "parts that go together", touched, ...common, decide }] : []
    }
    this.questions = [
      ...rig.motions.flatMap((_, i) =>
        together(changing(["motions", i]), (whole) => ({ ...whole, power: null, motions: [whole.motions[i] as RigSi["motions"][number]] })),
      ),
      ...together(changing(["power"]), (whole) => ({ ...whole, motions: [] })),
      {
        id: "passes",
        title: "passes its whole travel",
        touched: this.#touchedBy("passes", POSED),
        ...common,
        decide: (whole: RigSi) => closes(this.judgedOf(whole)),
      },
      ...whateverFeeds.map((check): Question => {
        const reads = check.reads.filter((path) => !(FEEDING as readonly string[]).includes(path))
        const decide = (whole: RigSi) => {
          const decision = decisionOf(this.plan, check, this.judgedOf(this.#unfed(whole)))
          return decision.short ? decision : holding
        }
        return { id: check.id, title: check.title, touched: this.#touchedBy(check.id, reads), check: null, unfed: true, decide }
      }),
      ...checks.map((check): Question => {
        const decide = (whole: RigSi) => decisionOf(this.plan, check, this.judgedOf(whole))
        return { id: check.id, title: check.title, touched: this.#touchedBy(check.id, check.reads), check, unfed: false, decide }
      }),
    ].sort((a, b) => this.#width(a) - this.#width(b))
    this.#known = this.questions.map(() => new Map())
    const riding = this.#touchedBy("passes", RIDDEN)
    this.#still = axes.flatMap((_, a) => (riding.includes(a) ? [] : [a]))
  }

  /** Axes on which no ride hangs: rigs that differ on them alone share their rides. */
  readonly #still: readonly number[]

  /** A rig whose motions run on their rated voltage. */
  #unfed(rig: RigSi): RigSi {
    const motions = rig.motions.map((motion) => {
      const bare = this.#bare.get(motion) ?? { ...motion, bus: null }
      this.#bare.set(motion, bare)
      return bare
    })
    return this.#rigAt(`unfed ${motions.map((motion) => this.#numberOf(motion)).join(" ")}`, () => ({ ...rig, power: null, motions }))
  }

  readonly #numbers = new WeakMap<object, number>()
  #next = 0

  #numberOf(part: object): number {
    const number = this.#numbers.get(part) ?? this.#next++
    this.#numbers.set(part, number)
    return number
  }

  #width({ touched }: Question): number {
    return touched.reduce((n, a) => n * (this.plan.axes[a] as Axis).members.length, 1)
  }

  #touchedBy(id: string, reads: readonly string[]): number[] {
    const { axes, wary } = this.plan
    const all = axes.map((_, a) => a)
    if (wary.includes(id)) return all
    const read = reads.map(split)
    const counted = read.some((tokens) => tokens[0] === "parts")
    const rows = counted ? all.filter((a) => (axes[a] as Axis).row) : []
    const counting = rows.flatMap((a) => this.space.counting[a] as readonly number[])
    return all.filter(
      (a) =>
        rows.includes(a) ||
        counting.includes(a) ||
        (this.space.leaves[a] as readonly Leaf[]).some((leaf) => read.some((tokens) => touches(leaf.tokens, tokens))),
    )
  }

  /** Whether parts of a rig go together; told anew only where they are others. */
  isSound(rig: RigSi): boolean {
    const known = (part: object, faults: () => number): boolean => {
      const found = this.#sound.get(part) ?? faults() === 0
      this.#sound.set(part, found)
      return found
    }
    const bare = { ...rig, programme: [], power: null, motions: [] }
    return (
      (!rig.power || known(rig.power, () => rigFaults(this.members, { ...bare, power: rig.power }).length)) &&
      rig.motions.every((motion) => known(motion, () => rigFaults(this.members, { ...bare, motions: [motion] }).length))
    )
  }

  /** A rig under all its conditions, kept while it is asked about. */
  judgedOf(rig: RigSi): Judged {
    return kept(this.#judged, rig, () => judged(this.members, rig, this.kept))
  }

  /** The rig of some members; what is −1 is not asked about. */
  rigOf(pick: Pick): RigSi {
    return this.#rigAt(pick.join(" "), () => this.space.rigOf(pick))
  }

  #rigAt(key: string, make: () => RigSi): RigSi {
    return kept(this.#rigs, key, make)
  }

  #decide(question: Question, pick: Pick): Decision | null {
    const rig = this.rigOf(pick)
    if (question.id === "fits") return question.decide(rig)
    if (!this.isSound(rig)) return null
    if (question.check && this.#still.some((a) => (pick[a] as number) >= 0)) this.#shareRides(rig, pick)
    return question.decide(rig)
  }

  /** The rig of some members under all its conditions, its rides shared with others where they can be. */
  judgedAt(pick: Pick): Judged {
    const rig = this.rigOf(pick)
    if (this.#still.length) this.#shareRides(rig, pick)
    return this.judgedOf(rig)
  }

  /** Lends a rig the rides of one that differs from it only where no ride hangs. */
  #shareRides(rig: RigSi, pick: Pick): void {
    if (this.#judged.has(rig)) return
    const riding = this.judgedOf(this.rigOf(pick.map((m, a) => (this.#still.includes(a) ? -1 : m))))
    const lent: Judged = Object.create(riding, { rig: { value: rig, enumerable: true } }) as Judged
    kept(this.#judged, rig, () => lent)
  }

  /** A question about a block: null where it cannot be decided for the whole of it. */
  ask(index: number, block: Block): Decision | null {
    const question = this.questions[index] as Question
    const { touched } = question
    const known = this.#known[index] as Map<string, Decision | null>
    const isOne = touched.every((a) => (block[a] as readonly number[]).length === 1)
    if (isOne) {
      const key = touched.map((a) => block[a]?.[0]).join(" ")
      const found = known.get(key)
      if (found !== undefined) return found
      const pick = block.map((members, a) => (touched.includes(a) ? (members[0] as number) : -1))
      const decision = this.#decide(question, pick)
      known.set(key, decision)
      return decision
    }
    const corner = question.check && this.#cornerOf(question, block)
    if (!corner) return null
    const found = known.get(corner.key)
    if (found !== undefined) return found
    const rig = this.#rigAt(corner.key, corner.make)
    // where even the best that a block could be does not hold, none of it does; that it holds says nothing
    const decision = this.isSound(rig) ? question.decide(rig) : null
    const proven = decision?.short ? decision : null
    known.set(corner.key, proven)
    return proven
  }

  /** Ways along which what a check found short stays short, on every rig of the plan. */
  readonly shortensOf: (check: RigCheck) => RigCheck["worsens"]

  /** The best that a block could be for a check, field by field, where every field that differs is declared to worsen it one way. */
  #cornerOf(question: Question, block: Block): { readonly key: string; readonly make: () => RigSi } | null {
    const { check } = question
    return check && this.corner(check.reads, this.shortensOf(check), question.touched, block)
  }

  /** {@link RigCheck.reads} and `worsens` of any check brought to a block. */
  corner(
    reads: RigCheck["reads"],
    worsens: RigCheck["worsens"],
    touched: readonly number[],
    block: Block,
  ): { readonly key: string; readonly make: () => RigSi } | null {
    const read = reads.map(split)
    const towards = (tokens: readonly string[]) => Object.entries(worsens).find(([pattern]) => split(pattern).join() === tokens.join())?.[1]
    const pick = block.map((members, a) => (touched.includes(a) ? (members[0] as number) : -1))
    const puts: { readonly keys: Leaf["keys"]; readonly value: number }[] = []
    for (const a of touched) {
      const members = block[a] as readonly number[]
      if (members.length === 1) continue
      for (const { keys, tokens, values } of this.space.leaves[a] as readonly Leaf[]) {
        const own = members.map((m) => values[m])
        if (own.every((value) => value === own[0]) || !read.some((one) => touches(tokens, one))) continue
        const way = towards(tokens)
        if (!way || !own.every((value) => typeof value === "number")) return null
        puts.push({ keys, value: way === "up" ? Math.min(...own) : Math.max(...own) })
      }
    }
    const rows = new Map<number, PartRow>()
    if (read.some((tokens) => tokens[0] === "parts"))
      for (const a of touched) {
        const axis = this.plan.axes[a] as Axis
        const open = [a, ...(this.space.counting[a] as readonly number[])].some((b) => (block[b] as readonly number[]).length > 1)
        if (!axis.row || !open) continue
        const counts = read.filter((tokens) => tokens[0] === "parts")
        const fields = (["count", "mass", "price"] as const).filter((field) =>
          counts.some((tokens) => touches(["parts", "[]", field], tokens)),
        )
        if (!fields.every((field) => towards(["parts", "[]", field]) === "up")) return null
        rows.set(a, this.leastRow(a, block))
      }
    const key = `${pick.join(" ")} | ${puts.map(({ keys, value }) => `${keys.join(".")} ${value}`).join(", ")} | ${[...rows].map(([a, row]) => `${a} ${row.count} ${row.mass} ${row.price}`).join(", ")}`
    const make = () => this.space.rigOf(pick, rows, puts)
    return { key, make }
  }

  /** The lowest number of pieces, or metres, that an axis takes in a block. */
  leastCount(a: number, per: "piece" | "metre", block: Block): number {
    const axis = this.plan.axes[a] as Axis
    const counting = this.space.counting[a] as readonly number[]
    if (!counting.length) return axis.row?.count ?? this.#countOf(axis, per, this.rigOf(block.map(() => -1)))
    const key = `${a} ${per} ${counting.map((b) => (block[b] as readonly number[]).join(",")).join(";")}`
    const found = this.#counts.get(key) ?? Math.min(...picksOf(counting, block).map((pick) => this.#countOf(axis, per, this.rigOf(pick))))
    this.#counts.set(key, found)
    return found
  }

  readonly #counts = new Map<string, number>()

  #countOf(axis: Axis, per: "piece" | "metre", rig: RigSi): number {
    return axis.keys.reduce((n, keys) => n + countAt(rig, keys, per), 0)
  }

  /** The lowest count, mass and price of an axis's parts in a block. */
  leastRow(a: number, block: Block): PartRow {
    const { members } = this.plan.axes[a] as Axis
    const rows = (block[a] as readonly number[]).map((m): PartRow => {
      const { per, mass, price } = members[m] as Axis["members"][number]
      const n = this.leastCount(a, per, block)
      return per === "piece" ? { count: n, mass, price } : { count: 1, mass: n * mass, price: n * price }
    })
    return {
      count: Math.min(...rows.map((row) => row.count)),
      mass: Math.min(...rows.map((row) => row.mass)),
      price: Math.min(...rows.map((row) => row.price)),
    }
  }
}

/** Every combination of some axes of a block, all others left as the document has them. */
export function picksOf(axes: readonly number[], block: Block): readonly Pick[] {
  let picks: number[][] = [block.map(() => -1)]
  for (const a of axes)
    picks = picks.flatMap((pick) => (block[a] as readonly number[]).map((m) => pick.map((old, b) => (b === a ? m : old))))
  return picks
}
