// `solveFor` on a number: the range is looked through at a stated step, and what lies between two tries is settled.
import { Refused } from "../answer.js"
import type { Runner, Told } from "../run.js"
import { leastNear, shrunk, type Tries, type Try } from "./between.js"
import { meets, offOf, type ReadTarget } from "./target.js"
import type { MetStretch, RefusedStretch, SolvedFor, SolveHit, SolveJump, StretchEdge } from "./types.js"

/** What is looked through. */
export interface Look {
  readonly inputs: readonly string[]
  readonly grid: readonly number[]
  /** The base with a value put in. */
  readonly inputAt: (x: number) => object
  /** The target's value in a result. */
  readonly toldOf: (out: object) => Told
}

/** A try as an answer or a refusal makes it. */
function tryOf(x: number, told: Told, refused: Refused | null, target: ReadTarget): Try {
  const isNumeric = target.output !== null && target.relation !== "is"
  if (refused) return { x, told: null, off: null, meets: false, refused }
  if (isNumeric && told === null) return { x, told, off: null, meets: false, refused: NO_VALUE }
  return { x, told, off: offOf(target, told), meets: meets(target, told), refused: null }
}

const NO_VALUE = new Refused("no-value", "The result has no such value there.")

/** Looks a range through. */
export async function solveContinuous(
  runner: Runner,
  base: object,
  { inputs, grid, inputAt, toldOf }: Look,
  target: ReadTarget,
): Promise<SolvedFor<number>> {
  const outputs = target.output === null ? [] : [target.output]
  const part = await runner.points({ solver: runner.solver.name, base, inputs, columns: [grid], outputs })
  const tried = grid.map((x, i) => {
    const code = part.refused[i] ?? null
    return tryOf(x, part.outputs[0]?.[i] ?? null, code === null ? null : new Refused(code, part.reasons[code] ?? code), target)
  })
  const tries: Tries = {
    at: (x) => {
      const out = runner.one(inputAt(x))
      return out instanceof Refused ? tryOf(x, null, out, target) : tryOf(x, toldOf(out), null, target)
    },
    rest: () => runner.rest(),
  }

  // where an answer meets a refusal, the last of each; then the places where the result turns round
  const line = await withTurns(tries, await withEdges(tries, tried), target)
  const isEquals = target.relation === "equals"
  const found: Roots = isEquals ? await rootsIn(tries, line) : { hits: [], jumps: [], stretches: await stretchesIn(tries, line), gaps: [] }
  const { hits, stretches, jumps, gaps } = found
  const answered = line.filter((one) => one.off !== null)
  const steps = grid.slice(1).map((x, i) => x - (grid[i] as number))
  return {
    hits,
    stretches,
    nearMisses: isEquals ? missesIn(line, hits) : [],
    jumps,
    refusals: refusalsIn([...line, ...gaps].sort((a, b) => a.x - b.x)),
    nearest:
      hits.length || stretches.length || !answered.length
        ? null
        : hitOf(answered.reduce((best, one) => (sizeOf(one) < sizeOf(best) ? one : best))),
    looked: { low: grid[0] as number, high: grid.at(-1) as number, step: Math.max(...steps) },
    evaluations: runner.asked,
  }
}

const sizeOf = (one: Try): number => Math.abs(one.off as number)
const hitOf = ({ x, told, off }: Try): SolveHit<number> => ({ value: x, output: told, off })

/** What a try is, as far as refusals go. */
const codeOf = (one: Try): string | null => one.refused?.code ?? null

/** Where an answer and a refusal, or two refusals of different codes, stand beside each other, the last of each is looked for. */
async function withEdges(tries: Tries, line: readonly Try[]): Promise<Try[]> {
  const out: Try[] = []
  for (const [i, one] of line.entries()) {
    out.push(one)
    const next = line[i + 1]
    let from = one
    // another refusal may lie between
    for (let more = 0; next && more < 8 && codeOf(from) !== codeOf(next); more++) {
      const code = codeOf(from)
      const [a, b] = await shrunk(tries, from, next, (middle) => codeOf(middle) === code)
      out.push(...[a, b].filter((found) => found.x !== from.x && found.x !== next.x))
      from = b
      await tries.rest()
    }
  }
  return out
}

/** Share of what the neighbours are off by, below which a result's digits are not good for a sign. */
const NOISE = 1e-12

/** A try that is the value itself, as far as its digits tell beside its neighbours. */
function snapped(one: Try, beside: readonly Try[]): Try {
  if (one.off === null || one.off === 0) return one
  const noise = Math.max(...beside.map((other) => NOISE * Math.abs(other.off ?? 0)), 4 * Number.EPSILON * Math.abs(one.told as number))
  return Math.abs(one.off) <= noise ? { ...one, off: 0 } : one
}

/** The neighbours of a try that were answered. */
const besideOf = (line: readonly Try[], i: number): Try[] =>
  [line[i - 1], line[i + 1]].filter((other) => other && other.off !== null) as Try[]

/** Where the result comes nearest to the value asked for, between tries on the same side of it. */
async function withTurns(tries: Tries, line: readonly Try[], target: ReadTarget): Promise<Try[]> {
  if (target.relation === "is" || target.relation === "answers") return [...line]
  const isEquals = target.relation === "equals"
  const told = isEquals ? line.map((one, i) => snapped(one, besideOf(line, i))) : line
  const out: Try[] = [...told]
  for (const [i, one] of told.entries()) {
    if (one.off === null || one.off === 0) continue
    const side = Math.sign(one.off)
    const beside = besideOf(told, i)
    // a turn lies beside the try that is nearest among its neighbours, all on one side; a level stretch has none
    if (beside.some((other) => Math.sign(other.off as number) !== side || sizeOf(other) < sizeOf(one))) continue
    if (beside.every((other) => other.off === one.off)) continue
    const from = beside.find((other) => other.x < one.x) ?? one
    const to = beside.find((other) => other.x > one.x) ?? one
    const turn = await leastNear(tries, from, to, side)
    if (turn) out.push(isEquals ? snapped(turn, beside) : turn)
    await tries.rest()
  }
  return out.sort((a, b) => a.x - b.x).filter((one, i, all) => i === 0 || one.x !== (all[i - 1] as Try).x)
}

interface Roots {
  readonly hits: SolveHit<number>[]
  readonly jumps: SolveJump[]
  readonly stretches: MetStretch[]
  /** Refusals met on the way. */
  readonly gaps: Try[]
}

/** Roots, leaps over the value, and stretches at it. */
async function rootsIn(tries: Tries, line: readonly Try[]): Promise<Roots> {
  const roots: Roots = { hits: [], jumps: [], stretches: [], gaps: [] }
  for (let i = 0; i < line.length; i++) {
    const one = line[i] as Try
    if (one.off === 0) {
      let end = i
      while (line[end + 1]?.off === 0) end++
      if (end > i) roots.stretches.push(await levelStretch(tries, line, i, end))
      else if (isCrossed(line[i - 1], line[i + 1])) roots.hits.push(hitOf(one))
      i = end
      continue
    }
    await crossing(tries, one, line[i + 1], roots)
    await tries.rest()
  }
  return roots
}

const isOther = (one: Try, next: Try | undefined): next is Try =>
  next !== undefined && one.off !== null && next.off !== null && Math.sign(one.off) * Math.sign(next.off) < 0

/** What lies between two neighbours on either side of the value; where a refusal does, what lies beyond it too. */
async function crossing(tries: Tries, one: Try, next: Try | undefined, roots: Roots, deep = 0): Promise<void> {
  if (!isOther(one, next)) return
  const side = Math.sign(one.off as number)
  const [a, b] = await shrunk(tries, one, next, (middle) => middle.off !== null && Math.sign(middle.off) === side)
  if (b.refused) {
    const [beyond, gap] = await shrunk(tries, next, b, (middle) => !middle.refused)
    roots.gaps.push(b, gap)
    if (deep < 8) await crossing(tries, beyond, next, roots, deep + 1)
  } else if (isRoot(tries, one, next, a, b)) roots.hits.push(hitOf(sizeOf(a) < sizeOf(b) ? a : b))
  else roots.jumps.push({ low: a.x, high: b.x, below: a.told as number, above: b.told as number })
}

/** A try at the value itself is a root where the result crosses there, or ends there. */
const isCrossed = (before: Try | undefined, after: Try | undefined): boolean =>
  !(before && after && before.off !== null && after.off !== null && Math.sign(before.off) === Math.sign(after.off))

/** How much farther apart than the last two tries those two are that a root is told from a leap by. */
const WIDER = 1e4
/** Share of a result, or of its change over a step, that is no leap worth telling. */
const LEVEL = 1e-9

/** The result closes on the value as the tries close on each other, however steeply; over a leap or a pole it does not. */
function isRoot(tries: Tries, from: Try, to: Try, a: Try, b: Try): boolean {
  if (b.off === 0) return true
  const gapOf = (one: Try, other: Try) => Math.abs((other.off as number) - (one.off as number))
  const gap = gapOf(a, b)
  const size = Math.max(Math.abs(a.told as number), Math.abs(b.told as number), gapOf(from, to))
  if (gap <= LEVEL * size) return true
  const width = Math.min(WIDER * (b.x - a.x), (to.x - from.x) / 4)
  const [before, after] = [tries.at(Math.max(from.x, a.x - width)), tries.at(Math.min(to.x, b.x + width))]
  return before.off !== null && after.off !== null && gap <= 0.7 * gapOf(before, after)
}

/** A stretch over which the result is the value itself. */
async function levelStretch(tries: Tries, line: readonly Try[], from: number, to: number): Promise<MetStretch> {
  const isLevel = (one: Try) => one.off === 0
  const low = await endOf(tries, line[from] as Try, line[from - 1], isLevel)
  const high = await endOf(tries, line[to] as Try, line[to + 1], isLevel)
  return { low: low.x, high: high.x, lowEdge: low.edge, highEdge: high.edge }
}

/** Where what holds at one try and not at its neighbour ends. */
async function endOf(
  tries: Tries,
  inside: Try,
  outside: Try | undefined,
  holds: (one: Try) => boolean,
): Promise<{ x: number; edge: StretchEdge }> {
  if (!outside) return { x: inside.x, edge: "range" }
  const [a, b] = await shrunk(tries, inside, outside, holds)
  await tries.rest()
  return { x: a.x, edge: b.refused ? "refusal" : "target" }
}

/** Stretches that meet a limit, a word or a flag. */
async function stretchesIn(tries: Tries, line: readonly Try[]): Promise<MetStretch[]> {
  const out: MetStretch[] = []
  for (let i = 0; i < line.length; i++) {
    if (!line[i]?.meets) continue
    let end = i
    while (line[end + 1]?.meets) end++
    const holds = (one: Try) => one.meets
    const low = await endOf(tries, line[i] as Try, line[i - 1], holds)
    const high = await endOf(tries, line[end] as Try, line[end + 1], holds)
    out.push({ low: low.x, high: high.x, lowEdge: low.edge, highEdge: high.edge })
    i = end
  }
  return out
}

/** Turns that come near the value without crossing it, within a hundredth of what the result spans; nearest first. */
function missesIn(line: readonly Try[], hits: readonly SolveHit<number>[]): SolveHit<number>[] {
  const told = line.flatMap((one) => (one.off === null ? [] : [one.off]))
  const near = (Math.max(...told) - Math.min(...told)) / 100
  return line
    .filter((one, i) => {
      const [before, after] = [line[i - 1], line[i + 1]]
      if (one.off === null || !before || !after || before.off === null || after.off === null) return false
      if (sizeOf(one) > near || hits.some((hit) => hit.value === one.x)) return false
      const side = Math.sign(before.off)
      return (
        side !== 0 && side === Math.sign(after.off) && side * one.off >= 0 && sizeOf(one) < sizeOf(before) && sizeOf(one) < sizeOf(after)
      )
    })
    .sort((a, b) => sizeOf(a) - sizeOf(b))
    .map(hitOf)
}

function refusalsIn(line: readonly Try[]): RefusedStretch<number>[] {
  const out: RefusedStretch<number>[] = []
  line.forEach((one, i) => {
    if (!one.refused) return
    const last = out.at(-1)
    const { code, message } = one.refused
    if (line[i - 1]?.refused?.code === code && last) out[out.length - 1] = { ...last, to: one.x }
    else out.push({ from: one.x, to: one.x, code, message })
  })
  return out
}
