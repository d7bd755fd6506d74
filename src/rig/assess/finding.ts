import type { Kind } from "../../quantity/index.js"
import {
  type Caution,
  InputError,
  isNoSolution,
  type NoSolution,
  type NoSolutionError,
  type Result,
  type Solver,
} from "../../solver/index.js"

import type { MoveTime } from "../move/move-time/index.js"
import type { Situation } from "./situation.js"

/** How a check came out. */
export type Verdict = "meets" | "marginal" | "falls short" | "not enough data"

/** What a check found, before it is given its name. */
export interface Found {
  readonly value: number | null
  readonly limit: number | null
  /** Kind of value and limit, `number` where plain. */
  readonly kind: Kind | "number"
  /** How much is left, as a share of what there is (`atMost`: the limit, `atLeast`: the value); negative where it falls short. Null where data is missing. */
  readonly margin: number | null
  readonly why: string
  /** Where the limit comes from. */
  readonly source: string
  /** Path of the field that is missing, or null. */
  readonly missing: string | null
  readonly cautions: readonly Caution[]
}

const practice = "common practice, no source"

/** A value that must not exceed its limit. */
export function atMost(
  value: number,
  limit: number,
  kind: Kind | "number",
  why: string,
  source: string = practice,
  cautions: readonly Caution[] = [],
): Found {
  const margin = limit > 0 ? 1 - value / limit : value <= limit ? 1 : -1
  return { value, limit, kind, margin, why, source, missing: null, cautions }
}

/** A value that must reach its limit. */
export function atLeast(
  value: number,
  limit: number,
  kind: Kind | "number",
  why: string,
  source: string = practice,
  cautions: readonly Caution[] = [],
): Found {
  // as a share of the value itself: a demand of next to nothing leaves all of it, and not more than any number can say
  const margin = value >= limit ? (value > 0 ? 1 - Math.max(limit, 0) / value : 1) : value / limit - 1
  return { value, limit, kind, margin, why, source, missing: null, cautions }
}

/** A value judged by a margin of its own, where a share of the limit means nothing (temperatures, signed gaps). */
export function byMargin(
  value: number,
  limit: number,
  kind: Kind | "number",
  margin: number,
  why: string,
  source: string = practice,
  cautions: readonly Caution[] = [],
): Found {
  return { value, limit, kind, margin, why, source, missing: null, cautions }
}

/** A check that cannot be made for want of a field. */
export function lacking(path: string, why = `${path} is not in the document`): Found {
  return { value: null, limit: null, kind: "number", margin: null, why, source: practice, missing: path, cautions: [] }
}

/** A check that fails because a solver refuses: physically impossible as described. */
export function refused(reason: NoSolution | NoSolutionError): Found {
  return {
    value: null,
    limit: null,
    kind: "number",
    margin: -1,
    why: reason.message,
    source: "refusal of the solver",
    missing: null,
    cautions: [],
  }
}

/** Verdict of a finding: within a tenth of the limit is marginal (common practice, no source). */
export function verdictOf(found: Found): Verdict {
  if (found.missing !== null || found.margin === null) return "not enough data"
  if (!(found.margin >= 0)) return "falls short"
  return found.margin < 0.1 ? "marginal" : "meets"
}

/**
 * Runs a domain solver on plain SI values and makes a finding of its answer; a refusal falls short, values
 * that do not go together are missing data.
 */
export function findBy<In, Out extends object>(
  solver: Solver<In, Out>,
  section: string,
  input: NoInfer<In>,
  make: (out: Result<Out>) => Found,
): Found {
  const outcome = solver.attempt(input)
  if (outcome.ok) {
    const found = make(outcome.value)
    return { ...found, cautions: [...found.cautions, ...outcome.value.cautions] }
  }
  if (!(outcome.error instanceof InputError)) return refused(outcome.error)
  const [first] = outcome.error.issues
  return lacking([section, ...(first?.path ?? [])].join("."), first?.message ?? outcome.error.message)
}

/** A finding on the rig's move: its refusal, or what it lacks, where there is no move. */
export function onMove(situation: Situation, make: (move: MoveTime) => Found): Found {
  const move = situation.move()
  if (move === null) return lacking(situation.moveLacks as string)
  return isNoSolution(move) ? refused(move) : make(move)
}

/** The worst of a move's two directions: a spring that helps the raise is what the lowering works against. */
export function peaksOf({ raise, lower }: MoveTime): {
  readonly current: number
  readonly sourceCurrent: number
  readonly force: number
  readonly forceAngle: number
} {
  const { peakForce, peakForceAngle } = lower.peakForce > raise.peakForce ? lower : raise
  return {
    current: Math.max(raise.peakCurrent, lower.peakCurrent),
    sourceCurrent: Math.max(raise.peakSourceCurrent, lower.peakSourceCurrent),
    force: peakForce,
    forceAngle: peakForceAngle,
  }
}

/** Of findings on like things the one that speaks for all: what fails, then what cannot be told, then the smallest margin; with every caution. */
export function worstOf(found: readonly [Found, ...Found[]]): Found {
  const rank = (f: Found) => (f.margin === null ? 0 : f.margin < 0 ? f.margin : Number.MIN_VALUE + f.margin)
  const worst = found.reduce((a, b) => (rank(b) < rank(a) ? b : a))
  const cautions = [...worst.cautions]
  for (const { cautions: more } of found) for (const c of more) if (!cautions.some((d) => d.code === c.code)) cautions.push(c)
  return { ...worst, cautions }
}
