// The search along a ladder: which of its rungs mend something, and the nearest one that does and breaks nothing.
import type { RigCheck } from "../../rig/check/check.js"
import type { FindingPair } from "../compare/verdicts.js"
import type { Bench, Trial } from "./bench.js"
import type { Ladder, Rung } from "./rows.js"

/** A rung that was tried. */
export interface Try {
  readonly ladder: Ladder
  readonly index: number
  readonly rung: Rung
  readonly trial: Trial
  readonly mended: readonly FindingPair[]
  /** How much nearer to their limits it brings what it does not mend. */
  readonly gains: readonly { readonly pair: FindingPair; readonly gain: number }[]
}

/** What a ladder came to. */
export interface Hunted {
  /** Rungs that mend something and break nothing, each the nearest of its kind. */
  readonly sound: readonly Try[]
  /** Other rungs that bring something nearer to its limit, or mend it and break something else. */
  readonly near: readonly Try[]
}

const keyOf = ({ before }: FindingPair) => `${before?.id}|${before?.subject}`
/** Whether the first list has every finding of the second. */
export const covers = (a: readonly FindingPair[], b: readonly FindingPair[]) => {
  const keys = new Set(a.map(keyOf))
  return b.every((one) => keys.has(keyOf(one)))
}

/** Looks for what a ladder can mend. */
export function hunt(bench: Bench, ladder: Ladder, targets: readonly RigCheck[], graded: boolean): Hunted {
  const tries = new Map<number, Try | null>()
  const at = (index: number, asked = targets): Try | null => {
    const known = tries.get(index)
    if (known !== undefined) return known
    const rung = ladder.rungs[index]
    const trial = rung ? bench.try(rung.settings) : null
    const made = rung && trial ? { ladder, index, rung, trial, mended: trial.mendedBy(asked), gains: trial.gains(asked) } : null
    tries.set(index, made)
    return made
  }
  const helps = (one: Try | null): one is Try => one !== null && one.gains.length > 0
  let last = ladder.rungs.length - 1
  // the furthest that can be built
  while (last >= 0 && (ladder.peaked ? bench.read(ladder.rungs[last]?.settings ?? []) === null : at(last) === null) && bench.left > 0)
    last--
  if (last < 0) return { sound: [], near: [] }
  if (ladder.peaked) {
    const middle = last >> 1
    const found = helps(at(middle)) || helps(at(0)) || (!graded && helps(at(last)))
    if (found) for (let k = 0; k <= last; k++) at(k)
  } else if (helps(at(last))) {
    const all = at(last)?.mended ?? []
    if (all.length) {
      // the nearest that mends as much, asked of nothing else
      const asked = targets.filter(({ id }) => all.some(({ before }) => before?.id === id))
      let [low, high] = [-1, last]
      while (high - low > 1) {
        const middle = (low + high) >> 1
        if (covers(at(middle, asked)?.mended ?? [], all)) high = middle
        else low = middle
      }
    }
  }
  const helping = [...tries.values()].filter(helps)
  return sorted(helping)
}

/** Rungs that mend: the nearest of each kind that breaks nothing; what mends no more than a nearer one is no better. */
function sorted(helping: readonly Try[]): Hunted {
  const sound: Try[] = []
  for (const one of [...helping].sort((a, b) => a.index - b.index))
    if (one.mended.length && !sound.some((nearer) => covers(nearer.mended, one.mended)) && !one.trial.worse.length) sound.push(one)
  return { sound, near: helping.filter((one) => !sound.includes(one)) }
}
