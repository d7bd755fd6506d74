// One share of a search, worked off by branch and bound: the most promising block first.
import { findingsOf, type RigFinding } from "../../rig/check/assess.js"
import type { Members } from "../../rig/whole/fields.js"
import { Goals, type Values } from "./goals.js"
import { Judge } from "./judge.js"
import { type Axis, type Block, isDocuments, type Pick, type Plan, sizeOf } from "./plan.js"

/** A choice found, by the numbers of its members. */
export interface Found {
  readonly pick: Pick
  readonly values: Values
}

/** The combination that comes nearest to a limit of those that do not keep it. */
export interface Miss {
  /** Its members; −1 on axes that the limit does not hang on. */
  readonly pick: Pick
  readonly sentence: string
  readonly utilisation: number
}

/** What one question ruled out. */
export interface Tally {
  readonly title: string
  combinations: number
  closest: Miss | null
}

/** A share of a search that can be worked off anywhere. */
export interface SearchTask {
  readonly plan: Plan
  readonly block: Block
  /** What was already found. */
  readonly front: readonly Found[]
}

/** How combinations were decided. */
export interface Counts {
  /** Ruled out by a check on the parts that it reads, or at the best corner of a block. */
  byCheck: number
  /** Left out because a bound proves them dominated. */
  byBound: number
  /** Assessed whole. */
  assessed: number
}

/** What came of a task. */
export interface SearchPart {
  readonly front: readonly Found[]
  readonly counts: Counts
  readonly ruledOut: Readonly<Record<string, Tally>>
}

/** How far a running task is. */
export interface ScanState extends Counts {
  found: number
}

/** Whether a choice with at least these values is dominated: no better in any and worse in one. */
export function isDominated(front: readonly Found[], least: Values): boolean {
  return front.some(({ values }) => {
    let worse = false
    for (const [k, value] of values.entries()) {
      const own = least[k] as number
      if (value > own) return false
      if (value < own) worse = true
    }
    return worse
  })
}

/** Adds a choice that nothing in the front dominates, and takes out what it dominates; equals stay together. */
export function addFound(front: Found[], found: Found): void {
  const isSame = (one: Found) => one.pick.every((m, a) => m === found.pick[a])
  if (isDominated(front, found.values) || front.some(isSame)) return
  const kept = front.filter((one) => !isDominated([found], one.values))
  front.length = 0
  front.push(...kept, found)
}

/** Whether a miss comes nearer than the nearest so far; one without a share of its limit never does but where there is none. */
export function isNearer(miss: Miss, than: Miss | null): boolean {
  if (!than) return true
  return miss.utilisation > 0 && (than.utilisation === 0 || miss.utilisation < than.utilisation)
}

/** Checks that fall short or were not made in a whole assessment, against what the plan puts up with. */
export function failuresOf(plan: Plan, findings: readonly RigFinding[]): readonly RigFinding[] {
  return findings.filter(({ id, verdict, because, missing }) => {
    if (verdict === "falls short") return true
    if (verdict !== "not enough data" && verdict !== "cannot be judged") return false
    if (because !== null || plan.keep.unmade.includes(id)) return false
    return missing === null || !isDocuments(plan, missing)
  })
}

interface Node {
  readonly block: Block
  /** Sum of what its goals come to at least, each in units of the whole search's span. */
  readonly promise: number
  readonly serial: number
}

const before = (a: Node, b: Node) => a.promise < b.promise || (a.promise === b.promise && a.serial > b.serial)

function push(heap: Node[], node: Node): void {
  let at = heap.length
  heap.push(node)
  while (at > 0) {
    const up = (at - 1) >> 1
    const parent = heap[up] as Node
    if (!before(node, parent)) break
    heap[at] = parent
    at = up
  }
  heap[at] = node
}

function pop(heap: Node[]): Node {
  const top = heap[0] as Node
  const last = heap.pop() as Node
  const size = heap.length
  if (!size) return top
  let at = 0
  for (;;) {
    let down = 2 * at + 1
    if (down >= size) break
    if (down + 1 < size && before(heap[down + 1] as Node, heap[down] as Node)) down++
    if (!before(heap[down] as Node, last)) break
    heap[at] = heap[down] as Node
    at = down
  }
  heap[at] = last
  return top
}

/** All that a plan's tasks share in one thread: made once, kept as long as the same plan is worked on. */
export interface Engine {
  readonly judge: Judge
  readonly goals: Goals
  /** Axes in the order in which they are told apart: those that decide most checks first. */
  readonly order: readonly number[]
  /** Axes whose members are sorted for some check, so that half of them is a block. */
  readonly sorted: readonly boolean[]
}

/** Puts together what a plan's tasks share. */
export function engineOf(members: Members, plan: Plan): Engine {
  const judge = new Judge(members, plan)
  return { judge, goals: new Goals(judge), order: orderOf(judge), sorted: sortedOf(judge) }
}

function orderOf({ questions, plan }: Judge): number[] {
  const order: number[] = []
  const rest = new Set(plan.axes.map((_, a) => a))
  const width = (a: number) => (plan.axes[a] as Axis).members.length
  while (rest.size) {
    // the axis that leaves fewest still open of some question, then the one with fewest members
    const gain = (a: number) =>
      questions.reduce((sum, { touched }) => {
        if (!touched.includes(a)) return sum
        const open = touched.filter((b) => rest.has(b))
        return sum + 1 / open.reduce((n, b) => n * width(b), 1)
      }, 0)
    const next = [...rest].reduce((a, b) => (gain(b) > gain(a) || (gain(b) === gain(a) && width(b) < width(a)) ? b : a))
    order.push(next)
    rest.delete(next)
  }
  return order
}

function sortedOf(judge: Judge): boolean[] {
  const { axes } = judge.plan
  const whole = axes.map((axis) => axis.members.map((_, m) => m))
  return axes.map((_, a) =>
    judge.questions.some(({ check, touched }) => {
      if (!check || !touched.includes(a)) return false
      return (
        judge.corner(
          check.reads,
          judge.shortensOf(check),
          [a],
          whole.map((members, b) => (b === a ? members : members.slice(0, 1))),
        ) !== null
      )
    }),
  )
}

/** Works off a task in small steps; each yield is a chance to rest, to report or to stop. */
export function* scan(members: Members, { judge, goals, order, sorted }: Engine, task: SearchTask): Generator<ScanState, SearchPart> {
  const { plan } = judge
  const front = [...task.front]
  const ruledOut: Record<string, Tally> = {}
  const state: ScanState = { byCheck: 0, byBound: 0, assessed: 0, found: front.length }
  const ruleOut = (id: string, title: string, combinations: number, miss: Miss | null) => {
    ruledOut[id] ??= { title, combinations: 0, closest: null }
    const tally = ruledOut[id] as Tally
    tally.combinations += combinations
    if (miss && isNearer(miss, tally.closest)) tally.closest = miss
  }
  const start = goals.least(task.block)
  const spans = start.map((least) => Math.max(Math.abs(least), 1e-9))
  const promiseOf = (block: Block) =>
    plan.goals.reduce((sum, { type }, k) => {
      if (type !== "price" && type !== "mass") return sum
      return sum + (goals.leastSum(type, block) - (start[k] as number)) / (spans[k] as number)
    }, 0)
  const heap: Node[] = []
  let serial = 0
  const admit = (block: Block) => push(heap, { block, promise: promiseOf(block), serial: serial++ })
  admit(task.block)

  /** Whether a block is ruled out by a question that can be decided for all of it. */
  const isRuledOut = (block: Block, size: number): boolean => {
    const broken = goals.broken(block)
    if (broken) {
      ruleOut(broken.id, broken.title, size, null)
      return true
    }
    for (const [q, { id, title, touched }] of judge.questions.entries()) {
      const decision = judge.ask(q, block)
      if (!decision || decision.holds) continue
      // what was found at the best corner of a block is found of no part there is
      const isOne = touched.every((a) => (block[a] as readonly number[]).length === 1)
      const pick = block.map((one, a) => (touched.includes(a) ? (one[0] as number) : -1))
      ruleOut(id, title, size, isOne ? { pick, sentence: decision.sentence, utilisation: decision.utilisation } : null)
      return true
    }
    return false
  }

  while (heap.length) {
    const { block } = pop(heap)
    const size = sizeOf(block)
    yield state
    if (isDominated(front, goals.least(block))) {
      state.byBound += size
      continue
    }
    if (isRuledOut(block, size)) {
      state.byCheck += size
      continue
    }
    const axis = order.find((a) => (block[a] as readonly number[]).length > 1)
    if (axis !== undefined) {
      const open = block[axis] as readonly number[]
      const half = Math.ceil(open.length / 2)
      const parts = sorted[axis] && open.length > 2 ? [open.slice(0, half), open.slice(half)] : open.map((m) => [m])
      for (const part of parts) admit(block.map((own, a) => (a === axis ? part : own)))
      continue
    }
    // one rig: every check that could be decided before holds; what could not is asked now
    state.assessed++
    const pick = block.map((one) => one[0] as number)
    const rig = judge.rigOf(pick)
    const isOpen = judge.questions.some((_, q) => judge.ask(q, block) === null)
    const findings = !judge.isSound(rig) ? null : isOpen ? findingsOf(members, rig, undefined, judge.kept).findings : []
    const [failure] = findings ? failuresOf(plan, findings) : []
    const values = findings && !failure ? goals.of(rig, judge.judgedAt(pick)) : null
    if (values) addFound(front, { pick, values })
    else {
      const why = failure ?? { id: "fits", title: "parts that go together", sentence: "", utilisation: 0 }
      ruleOut(why.id, why.title, 1, { pick, sentence: why.sentence, utilisation: why.utilisation ?? 0 })
    }
    state.found = front.length
  }
  const { byCheck, byBound, assessed } = state
  return { front, counts: { byCheck, byBound, assessed }, ruledOut }
}
