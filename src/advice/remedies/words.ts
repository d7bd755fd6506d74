// A change told as a maker would: what instead of what, what it buys, about what it costs.
import { formatNumber } from "../../quantity/index.js"
import type { RigFinding } from "../../rig/check/assess.js"
import type { Judged } from "../../rig/check/conditions.js"
import { type ChangedMotion, changedMotions, timeWords } from "../compare/index.js"
import type { FindingPair } from "../compare/verdicts.js"
import type { Ladder, Rung } from "./rows.js"

/** A change in words. */
export const changeWords = ({ becomes, was }: Rung, { of }: Ladder): string => `${becomes} instead of ${was} ${of}`

export const capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1)

/** How a finding came to stand, in words. */
function mendedWords({ before, after }: FindingPair): string {
  if (!before) return ""
  const subject = `${before.title} (${before.subject})`
  if (!after) return `${subject} is no longer asked`
  const close = after.verdict === "marginal" ? ", close to its limit" : ""
  if (!after.shownValue || !after.shownLimit) return `${subject} is met${close}`
  const was = before.shownValue && before.shownValue !== after.shownValue ? `, was ${before.shownValue}` : ""
  return `${subject} ${after.shownValue}${was}, must be ${after.shownLimit}${close}`
}

const isTime = ({ before }: FindingPair) => before?.id === "duration-out" || before?.id === "duration-back"

/** Seconds that motions gain or lose, in words. */
function secondsWords(motions: readonly ChangedMotion[]): string {
  const told = motions.flatMap(({ name, out, back }) => {
    const words = [timeWords(out, "out"), timeWords(back, "back")].filter(Boolean)
    return words.length ? [`${name} ${words.join(" and ")}`] : []
  })
  return told.length > 3 ? `${told.slice(0, 3).join(", ")} and others` : told.join(", ")
}

/** Told in full; the rest is counted. */
const TOLD = 3

/** What a change buys, in words, and what only then can be seen. */
export function buysWords(mended: readonly FindingPair[], shown: readonly FindingPair[], before: Judged, after: Judged): string {
  const seconds = secondsWords(changedMotions(before, after))
  // a time is told by its seconds
  const rest = mended.filter((pair) => !(isTime(pair) && seconds)).map(mendedWords)
  const more = rest.length > TOLD ? [`${rest.length - TOLD} more ${rest.length - TOLD === 1 ? "check" : "checks"} met`] : []
  const then = shown.flatMap(({ after: one }) => (one ? [`${one.title} (${one.subject})`] : []))
  const open = then.length ? [`what could not be judged before then falls short: ${then.join(", ")}`] : []
  return [seconds, ...rest.slice(0, TOLD), ...more, ...open].filter(Boolean).join("; ")
}

/** What a change costs elsewhere, in words. */
export const costsWords = (worse: readonly FindingPair[]): string =>
  worse
    .flatMap(({ before, after }) => {
      if (!after) return []
      const was = before?.shownValue && before.shownValue !== after.shownValue ? `, was ${before.shownValue}` : ""
      const value = after.shownValue && after.shownLimit ? `: ${after.shownValue}${was}, must be ${after.shownLimit}` : ""
      return [`; but then ${after.title} (${after.subject}) comes close to its limit${value}`]
    })
    .join("")

/** What a part costs, in words. */
export const priceWords = (price: number | null): string =>
  price === null ? "" : price < 0 ? `, about ${formatNumber(-price, 2)} cheaper` : `, about ${formatNumber(price, 2)}`

/** A finding's value against its limit. */
export const against = ({ shownValue, shownLimit, sentence }: RigFinding): string =>
  shownValue && shownLimit ? `${shownValue}, must be ${shownLimit}` : sentence

/** A remedy in a sentence. */
export const remedyWords = (changes: readonly string[], buys: string, price: number | null): string =>
  `${capital(changes.join(", and "))}: ${buys}${priceWords(price)}.`
