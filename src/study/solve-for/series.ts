// `solveFor` on values that can be counted: every one is tried.
import type { PointsPart, Runner, Told } from "../run.js"
import { meets, offOf, type ReadTarget } from "./target.js"
import type { RefusedStretch, SolvedFor, SolveHit } from "./types.js"

/** Candidates as columns, as a task of points takes them. */
export interface Candidates {
  readonly inputs: readonly string[]
  readonly columns: readonly (readonly unknown[])[]
}

/** Refusals of neighbours for one reason, told together. */
function refusalsOf<V>(part: PointsPart, told: readonly Told[], isNumeric: boolean, entryAt: (row: number) => V): RefusedStretch<V>[] {
  const found: RefusedStretch<V>[] = []
  let from = 0
  const codeOf = (row: number) => part.refused[row] ?? (isNumeric && told[row] === null ? "no-value" : null)
  part.refused.forEach((_, row) => {
    const code = codeOf(row)
    if (row === 0 || code !== codeOf(row - 1)) from = row
    if (code === null || codeOf(row + 1) === code) return
    found.push({ from: entryAt(from), to: entryAt(row), code, message: part.reasons[code] ?? "The result has no such value there." })
  })
  return found
}

/** Tries every candidate. */
export async function solveSeries<V>(
  runner: Runner,
  base: object,
  { inputs, columns }: Candidates,
  target: ReadTarget,
  entryAt: (row: number) => V,
): Promise<SolvedFor<V>> {
  const outputs = target.output === null ? [] : [target.output]
  const part = await runner.points({ solver: runner.solver.name, base, inputs, columns, outputs })
  const told = part.outputs[0] ?? part.refused.map(() => null)
  const hit = (row: number): SolveHit<V> => ({ value: entryAt(row), output: told[row] ?? null, off: offOf(target, told[row] ?? null) })
  const rows = part.refused.flatMap((code, row) => (code === null ? [row] : []))
  const hits = rows.filter((row) => meets(target, told[row] as Told)).map(hit)
  const others = rows.map(hit).filter(({ off }) => off !== null)
  const isNumeric = target.output !== null && target.relation !== "is"
  return {
    hits,
    stretches: [],
    nearMisses: [],
    jumps: [],
    refusals: refusalsOf(part, told, isNumeric, entryAt),
    nearest:
      hits.length || !others.length
        ? null
        : others.reduce((best, one) => (Math.abs(one.off as number) < Math.abs(best.off as number) ? one : best)),
    looked: null,
    evaluations: runner.asked,
  }
}
