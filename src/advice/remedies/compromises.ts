// Changes that mend what falls short at a cost: something else that was met then comes close to its limit.
import type { FindingPair } from "../compare/verdicts.js"
import { covers, type Try } from "./hunt.js"
import { type Rival, ranked } from "./rank.js"

/** What may come close to its limit for something else: nothing that keeps somebody safe. */
const bearable = ({ before, after }: FindingPair) =>
  before?.verdict === "meets" && after?.verdict === "marginal" && after.severity !== "safety"

/** Of the changes that break something, those whose cost can be borne: of each ladder the nearest of its kind. */
export function compromisesOf(near: readonly Try[], sound: readonly Try[]): readonly Rival[] {
  const found: Try[] = []
  for (const one of [...near].sort((a, b) => a.index - b.index)) {
    const { ladder, mended, trial } = one
    if (!mended.some(({ before }) => before?.verdict === "falls short")) continue
    if ([...found, ...sound].some((other) => other.ladder === ladder && covers(other.mended, mended))) continue
    const { worse, shown } = trial
    if (worse.length && worse.every(bearable) && !shown.length) found.push(one)
  }
  return ranked(found.map((one) => ({ parts: [one], trial: one.trial, mended: one.mended })))
}
