// Two changes together: where none alone mends a finding, or where two mend more than either.

import type { RigFinding } from "../../rig/check/assess.js"
import { checks } from "../../rig/check/assess.js"
import type { RigCheck } from "../../rig/check/check.js"
import type { FindingPair } from "../compare/verdicts.js"
import type { Bench, Trial } from "./bench.js"
import type { Try } from "./hunt.js"
import type { Ladder } from "./rows.js"

/** A rung as a part of a pair. */
export type Part = Pick<Try, "ladder" | "index" | "rung">

/** Two changes tried together. */
export interface PairTry {
  readonly parts: readonly [Part, Part]
  readonly trial: Trial
  readonly mended: readonly FindingPair[]
}

/** Parts of a pair that are tried with one another for one finding, and changes that are tried against what a change breaks. */
const [PARTS, AGAINST] = [6, 8]

const sameAs = (finding: RigFinding) => (pair: FindingPair) => pair.before === finding
const touches = (a: Part, b: Part) => {
  const paths = new Set(a.rung.settings.map(({ path }) => path))
  return b.rung.settings.some(({ path }) => paths.has(path))
}

function together(bench: Bench, parts: readonly [Part, Part], targets: readonly RigCheck[]): PairTry | null {
  if (touches(...parts)) return null
  const trial = bench.try([...parts[0].rung.settings, ...parts[1].rung.settings])
  return trial && { parts, trial, mended: trial.mendedBy(targets) }
}

/** The same pair with its parts moved back as far as it still mends the finding and breaks nothing. */
function eased(bench: Bench, pair: PairTry, finding: RigFinding, targets: readonly RigCheck[]): PairTry {
  let best = pair
  for (const side of [0, 1] as const) {
    let [low, high] = [-1, best.parts[side].index]
    while (high - low > 1 && bench.left > 0) {
      const middle = (low + high) >> 1
      const part = partOf(bench, best.parts[side].ladder, middle)
      const parts = part && ([side === 0 ? part : best.parts[0], side === 1 ? part : best.parts[1]] as const)
      const found = parts && together(bench, parts, targets)
      if (found && isSound(found, finding)) {
        best = found
        high = middle
      } else low = middle
    }
  }
  return best
}

/** A rung of a ladder, where the document can be built so. */
function partOf(bench: Bench, ladder: Ladder, index: number): Part | null {
  const rung = ladder.rungs[index]
  return rung && bench.read(rung.settings) !== null ? { ladder, index, rung } : null
}

const isSound = ({ mended, trial }: PairTry, finding: RigFinding) => mended.some(sameAs(finding)) && trial.worse.length === 0

/** Pairs that mend a finding which no change alone mends. */
export function pairsFor(
  bench: Bench,
  finding: RigFinding,
  near: readonly Try[],
  ladders: readonly Ladder[],
  targets: readonly RigCheck[],
  reads: (check: RigCheck, ladder: Ladder) => boolean,
): readonly PairTry[] {
  const gainOf = (one: Try) => one.gains.find(({ pair }) => pair.before === finding)?.gain ?? 0
  // of each ladder the rung that comes nearest
  const best = new Map<Ladder, Try>()
  for (const one of near) {
    const known = best.get(one.ladder)
    if (gainOf(one) > 0 && (!known || gainOf(one) > gainOf(known))) best.set(one.ladder, one)
  }
  const parts = [...best.values()].sort((a, b) => gainOf(b) - gainOf(a)).slice(0, PARTS)
  const found: PairTry[] = []
  const add = (a: Part, b: Part) => {
    const pair = together(bench, [a, b], targets)
    if (pair && isSound(pair, finding)) found.push(eased(bench, pair, finding, targets))
  }
  for (const [i, a] of parts.entries()) for (const b of parts.slice(i + 1)) if (found.length < 3 && bench.left > 0) add(a, b)
  // what mends it and breaks something else, with what that something hangs on
  for (const a of near.filter((one) => one.mended.some(sameAs(finding))).slice(0, 2)) {
    const broken = new Set(a.trial.worse.map(({ after, before }) => after?.id ?? before?.id))
    const checksOf = checks.filter(({ id }) => broken.has(id))
    const against = ladders.filter((ladder) => ladder !== a.ladder && checksOf.some((check) => reads(check, ladder))).slice(0, AGAINST)
    for (const ladder of against) {
      const b = partOf(bench, ladder, ladder.peaked ? ladder.rungs.length >> 1 : ladder.rungs.length - 1)
      if (b && found.length < 3 && bench.left > 0) add(a, b)
    }
  }
  return found
}

/** The first remedy with each of the others, where both together mend more than either. */
export function jointly(bench: Bench, first: Try, others: readonly Try[], targets: readonly RigCheck[]): readonly PairTry[] {
  const found: PairTry[] = []
  for (const other of others) {
    if (found.length >= 2 || bench.left <= 0) break
    if (other.mended.every(({ before }) => first.mended.some(sameAs(before as RigFinding)))) continue
    const pair = together(bench, [first, other], targets)
    if (pair && pair.mended.length > Math.max(first.mended.length, other.mended.length) && pair.trial.worse.length === 0) found.push(pair)
  }
  return found
}
