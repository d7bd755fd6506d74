// Findings of a rig before and after a change, each beside its like: what is better, what is worse.
import type { RigFinding } from "../../rig/check/assess.js"

/** A finding before and after; null on the side where nothing of its kind was found. */
export interface FindingPair {
  readonly before: RigFinding | null
  readonly after: RigFinding | null
}

/** What a finding is worth: a check that hangs on something else that fails is worth no more than that. */
export function worth(finding: RigFinding | null): number {
  // what is no longer asked is no trouble
  if (finding === null) return 3
  const { verdict, because, value } = finding
  if (verdict === "falls short") return 0
  if (verdict === "marginal") return 2
  if (verdict === "meets") return 3
  return because !== null && value === null ? 0 : 1
}

/** Whether a check was not made because another one fails before it. */
export const hangs = (finding: RigFinding | null): boolean =>
  finding !== null && finding.verdict !== "falls short" && finding.verdict !== "marginal" && worth(finding) === 0

/** Each finding beside its like: by check and subject, those that changed their subject in the order found. */
export function pairsOf(before: readonly RigFinding[], after: readonly RigFinding[]): readonly FindingPair[] {
  const open = [...after]
  const take = (fits: (finding: RigFinding) => boolean): RigFinding | null => {
    const at = open.findIndex(fits)
    return at < 0 ? null : (open.splice(at, 1)[0] ?? null)
  }
  const exact = before.map((one) => ({ before: one, after: take(({ id, subject }) => id === one.id && subject === one.subject) }))
  const paired = exact.map((pair) => (pair.after ? pair : { ...pair, after: take(({ id }) => id === pair.before.id) }))
  return [...paired, ...open.map((one) => ({ before: null, after: one }))]
}

export const isBetter = ({ before, after }: FindingPair): boolean => worth(after) > worth(before)
export const isWorse = ({ before, after }: FindingPair): boolean => worth(after) < worth(before)

/** What fell short or came close and now does less so, its own verdict told again. */
export const isMended = ({ before, after }: FindingPair): boolean =>
  before !== null &&
  (before.verdict === "falls short"
    ? after === null || after.verdict === "meets" || after.verdict === "marginal"
    : before.verdict === "marginal" && (after === null || after.verdict === "meets"))

/** What could not be judged for something that failed before it, and now falls short. */
export const isShown = ({ before, after }: FindingPair): boolean => hangs(before) && after?.verdict === "falls short"
