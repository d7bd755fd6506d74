// Which remedy comes first: what mends what is severe, then little work, money and distance from what is there.
import type { RigFinding } from "../../rig/check/assess.js"
import type { CheckSeverity } from "../../rig/check/finding.js"
import type { FindingPair } from "../compare/verdicts.js"
import type { Trial } from "./bench.js"
import type { Part } from "./pairs.js"
import { works } from "./rows.js"

/** What is ranked: a change, or two together. */
export interface Rival {
  readonly parts: readonly Part[]
  readonly trial: Trial
  readonly mended: readonly FindingPair[]
}

const severities: readonly CheckSeverity[] = ["safety", "function", "wish"]

/** How many of each severity are mended, and not shown anew: those that fell short first, then those close to their limit. */
function weights({ trial, mended }: Rival): readonly number[] {
  const { shown } = trial
  const of = (list: readonly FindingPair[], verdict: RigFinding["verdict"], severity: CheckSeverity, side: "before" | "after") =>
    list.filter((pair) => pair[side]?.verdict === verdict && pair[side]?.severity === severity).length
  // what falls short and then only comes close is mended less
  const half = (severity: CheckSeverity) =>
    mended.filter(({ before, after }) => before?.verdict === "falls short" && before.severity === severity && after?.verdict === "marginal")
      .length
  return [
    ...severities.map((one) => of(mended, "falls short", one, "before") - of(shown, "falls short", one, "after")),
    ...severities.map((one) => -half(one)),
    ...severities.map((one) => of(mended, "marginal", one, "before")),
  ]
}

const work = ({ parts }: Rival) => parts.reduce((sum, { ladder }) => sum + works.indexOf(ladder.work), 0)
const price = ({ parts }: Rival) =>
  parts.reduce<number | null>((sum, { rung }) => (sum === null || rung.price == null ? null : sum + rung.price), 0)
const distance = ({ parts }: Rival) => parts.reduce((sum, { index }) => sum + index, 0)

const mendsShort = ({ mended }: Rival) => mended.some(({ before }) => before?.verdict === "falls short")

function byWeight(a: readonly number[], b: readonly number[]): number {
  for (const [i, one] of a.entries()) if (one !== b[i]) return (b[i] as number) - one
  return 0
}

function byPrice(a: Rival, b: Rival): number {
  const [x, y] = [price(a), price(b)]
  return x === null || y === null ? 0 : x - y
}

/** Remedies by what they mend, singles before pairs. */
function byUse(rivals: readonly Rival[]): readonly Rival[] {
  return rivals
    .map((rival) => ({ rival, weight: weights(rival) }))
    .sort(
      (a, b) =>
        Number(mendsShort(b.rival)) - Number(mendsShort(a.rival)) ||
        a.rival.parts.length - b.rival.parts.length ||
        byWeight(a.weight, b.weight) ||
        work(a.rival) - work(b.rival) ||
        byPrice(a.rival, b.rival) ||
        distance(a.rival) - distance(b.rival),
    )
    .map(({ rival }) => rival)
}

/** Remedies in their order: the most useful, then the most useful of those that mend something else, and at last what else would do. */
export function ranked(rivals: readonly Rival[]): readonly Rival[] {
  const list = byUse(rivals)
  const covered = new Set<RigFinding | null>()
  const first: Rival[] = []
  for (const verdict of ["falls short", "marginal"] as const)
    for (const rival of list) {
      const fresh = rival.mended.filter(({ before }) => before?.verdict === verdict && !covered.has(before))
      if (!fresh.length || first.includes(rival)) continue
      first.push(rival)
      for (const { before } of rival.mended) covered.add(before)
    }
  return [...first, ...list.filter((rival) => !first.includes(rival))]
}
