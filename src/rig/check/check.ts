// One check of a rig: what it asks, and what it found about each subject.
import { commonPractice, type Result, type Solver } from "../../solver/index.js"
import type { Judged } from "./conditions.js"
import type { CheckSeverity, Measured, NotMade } from "./finding.js"

/** What a check found about one subject. */
export interface Found {
  /** Name of the motion, bus, source or load it is about. */
  readonly subject: string
  readonly result: Measured | NotMade
}

/** A check. */
export interface RigCheck {
  readonly id: string
  readonly title: string
  readonly severity: CheckSeverity
  /** Paths of the document that it reads, each with all below it; `[]` stands for every entry of a list. */
  readonly reads: readonly string[]
  /** Paths along which its verdict, where it is made, never gets better, up or down: only where that is so for any rig. */
  readonly worsens: Readonly<Record<string, "up" | "down">>
  find(rig: Judged): readonly Found[]
}

/** Whether one of two paths lies on the way to the other; an index of a list matches `[]`. */
function meets(a: string, b: string): boolean {
  const [x, y] = [stepsOf(a), stepsOf(b)]
  for (let i = 0; i < Math.min(x.length, y.length); i++) if (x[i] !== y[i]) return false
  return true
}

const stepsOf = (path: string): readonly string[] => path.replace(/\[\d*\]/g, ".[]").split(".")

/** Whether a check reads something at, above or below one of these paths of the document. */
export const readsAny = (check: Pick<RigCheck, "reads">, paths: readonly string[]): boolean =>
  paths.some((path) => check.reads.some((read) => meets(read, path)))

/** A check that cannot be made for want of a field of the document. */
export const lacking = (path: string, sentence = `${path} is not in the document.`): NotMade => ({
  verdict: "not enough data",
  missing: path,
  because: null,
  sentence,
})

/** A check that hangs on something that failed before it: another check, about a subject. */
export const blocked = (sentence: string, check: string, subject: string): NotMade => ({
  verdict: "cannot be judged",
  missing: null,
  because: `${check}: ${subject}`,
  sentence,
})

/** A check that asks for poses that a motion has not. */
export const poseless = (motion: string): NotMade =>
  blocked(`${motion} cannot be posed over its whole travel: see there first.`, "passes", motion)

/** Asks a domain solver through its own kernel; what it refuses falls short in its own words. */
export function asked<In, Out extends object>(
  solver: Solver<In, Out>,
  input: NoInfer<In>,
  condition: string,
  make: (out: Result<Out>) => Measured | NotMade,
): Measured | NotMade {
  const outcome = solver.attempt(input)
  if (outcome.ok) {
    const made = make(outcome.value)
    if ("verdict" in made) return made
    return { ...made, cautions: [...(made.cautions ?? []), ...outcome.value.cautions] }
  }
  const { error } = outcome
  if ("issues" in error) return { verdict: "cannot be judged", missing: null, because: null, sentence: error.message }
  return {
    relation: "rule",
    kind: "number",
    value: null,
    limit: null,
    permitted: false,
    sentence: error.message,
    condition,
    source: commonPractice,
  }
}
