import { type AnyField, NoSolutionError } from "../../src/solver/index.js"
import { type leaves, rangeOf, replaced } from "./arbitrary.js"
import type { AnySolver } from "./solvers.js"

type Numbers = ReadonlyMap<string, number>

/** Output fields that report on the calculation itself, not on the problem. */
export const bookkeeping = ["iterations", "residual", "errorEstimate", "evaluations"]

/** Numbers of a result by path. Entries of lists are left out: a list is ordered or cut anew at every point. */
function numbersIn(value: unknown, path = "", found = new Map<string, number>()): Numbers {
  if (typeof value === "number") found.set(path, value)
  else if (typeof value === "object" && value !== null && !Array.isArray(value))
    for (const [key, part] of Object.entries(value)) if (!bookkeeping.includes(key)) numbersIn(part, path ? `${path}.${key}` : key, found)
  return found
}

/** Outcome of one point: its numbers, a refusal as the number 0 under its own name, null where the input is not valid. */
function outcomeAt(solver: AnySolver, input: unknown): Numbers | null {
  const outcome = solver.attempt(input)
  if (outcome.ok) return numbersIn({ ...outcome.value, answered: 1 })
  return outcome.error instanceof NoSolutionError ? new Map([["answered", 0]]) : null
}

const median = (values: readonly number[]) => {
  const sorted = [...values].sort((x, y) => x - y)
  const half = sorted.length / 2
  return ((sorted[Math.ceil(half) - 1] as number) + (sorted[Math.floor(half)] as number)) / 2
}

/** Points that lie far from two neighbours on either side which agree among themselves. */
export function spikesIn(values: readonly (number | null | undefined)[]): number[] {
  const scale = Math.max(0, ...values.map((v) => Math.abs(v ?? 0)))
  return values.flatMap((value, i) => {
    const around = [values[i - 2], values[i - 1], values[i + 1], values[i + 2]].filter((v) => v !== null && v !== undefined)
    if (value === null || value === undefined || around.length < 4) return []
    const spread = Math.max(...around) - Math.min(...around)
    return Math.abs(value - median(around)) > 3 * spread + 1e-6 * scale + 1e-9 ? [i] : []
  })
}

/** Whether a point is torn off on both sides: a narrow hill, pole or band is not, a random jump is. */
function isTorn(at: (x: number) => number | undefined, x: number, value: number, usual: number, step: number): boolean {
  const tears = (side: number) =>
    [1e-7, 1e-5, 1e-3].some((share) => {
      const beside = at(x + side * share * step)
      return beside !== undefined && Math.abs(beside - value) > 0.5 * Math.abs(value - usual)
    })
  return tears(-1) && tears(1)
}

/** Sweeps one number of an input in fine steps and names every point that stands alone. */
export function loneSpikes(solver: AnySolver, input: object, leaf: ReturnType<typeof leaves>[number], points: number): string[] {
  const { low, high, whole } = rangeOf(leaf.field as Extract<AnyField, { symbol: string }>, leaf.value)
  const count = whole ? Math.min(points, Math.floor(high - low) + 1) : points
  if (!(high > low) || count < 5) return []
  const step = whole ? 1 : (high - low) / count
  // an odd offset keeps the sweep off round numbers, where tables have their steps
  const xs = Array.from({ length: count }, (_, i) => (whole ? Math.ceil(low) + i : low + step * (i + 0.37)))
  const seen = new Map<number, Numbers | null>()
  const outcome = (x: number) => {
    const known = seen.get(x)
    if (known !== undefined) return known
    const found = outcomeAt(solver, replaced(input, leaf.path, x))
    seen.set(x, found)
    return found
  }
  const outcomes = xs.map(outcome)
  const paths = [...new Set(outcomes.flatMap((o) => [...(o?.keys() ?? [])]))]
  return paths.flatMap((path) => {
    const values = outcomes.map((o) => o?.get(path))
    return spikesIn(values)
      .filter((i) => {
        if (whole) return true
        const around = [i - 2, i - 1, i + 1, i + 2].map((k) => values[k] as number)
        return isTorn((x) => outcome(x)?.get(path), xs[i] as number, values[i] as number, median(around), step)
      })
      .map((i) => `${leaf.path.join(".")} = ${xs[i]}: ${path} is ${values[i]} beside ${values[i - 1]}`)
  })
}
