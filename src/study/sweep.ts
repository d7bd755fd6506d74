import { type AnyOutFields, type Issue, issue, type Solver } from "../solver/index.js"
import { shown } from "../solver/issue.js"
import { type Axes, columnsOf, readAxes } from "./axes.js"
import { type Output, outputAt, type PlainPath, plainOutputs } from "./outputs.js"
import type { PathTo } from "./paths.js"
import { type AnySolver, type Found, readBase, studyError } from "./place.js"
import { Runner, type StudyOptions, type Told } from "./run.js"
import { csvOf, type SweepTable, siUnit, type TableColumn } from "./table.js"

/** How a sweep is run, and what of the results it keeps. */
export interface SweepOptions<O extends string> extends StudyOptions {
  /** Values of the result to keep, by path; left out, every single one outside its lists. */
  readonly outputs?: readonly O[]
}

function readOutputs(solver: AnySolver, asked: unknown): Found<readonly Output[]> {
  if (asked === undefined) return { ok: true, value: plainOutputs(solver.output as AnyOutFields) }
  if (!Array.isArray(asked) || asked.length === 0)
    return { ok: false, issues: [issue("wrong-type", ["outputs"], shown(asked), "a list of paths of the result")] }
  const read = asked.map((path, i) => outputAt(solver, path, ["outputs", i]))
  const issues = read.flatMap((one) => (one.ok ? [] : one.issues))
  if (issues.length) return { ok: false, issues }
  return { ok: true, value: read.flatMap((one) => (one.ok ? [one.value] : [])) }
}

/**
 * What if: solves for every combination of the values given to one input or several, and keeps the results as columns.
 *
 * A point that the solver refuses stays in the table with the code of its refusal, `inconsistent` where its fields do not go
 * together. Each point is asked of the bare kernel, within the limits of every field; the base's cautions are not asked for.
 *
 * @param solver - any solver
 * @param base - a valid input: what is not changed
 * @param axes - inputs by path (`wires.0.length`), each with a list of values or a range; the last one changes first
 * @param options - values of the result to keep, a signal to stop, whom to tell of progress, a pool
 * @throws InputError naming every fault of the base and the axes (the promise is rejected with it)
 * @example
 * ```ts
 * import { sweep } from 'alula/study'
 * import { voltageDrop } from 'alula/wire'
 * const run = { current: '4 A', length: '3 m', awg: 20, sourceVoltage: '12 V' } as const
 * const table = await sweep(voltageDrop, run, { awg: [18, 20, 22], length: { from: '1 m', to: '3 m', count: 3 } })
 * table.count // => 9
 * table.inputs.length.length // => 9
 * table.outputs.drop.every((drop) => drop !== null) // => true
 * ```
 */
export async function sweep<In, Out, P extends PathTo<In>, O extends PathTo<Out> = PlainPath<Out>>(
  solver: Solver<In, Out>,
  base: NoInfer<In>,
  axes: Axes<In, P>,
  options: SweepOptions<O> = {},
): Promise<SweepTable<In, Out, P, O>> {
  const any = solver as unknown as AnySolver
  const issues: Issue[] = []
  const si = readBase(any, base)
  const outputs = readOutputs(any, options.outputs)
  const read = si.ok ? readAxes(any, si.value, axes, ["axes"]) : null
  for (const part of [si, read, outputs]) if (part && !part.ok) issues.push(...part.issues)
  if (!si.ok || !read?.ok || !outputs.ok) throw studyError("sweep", solver, issues)

  const runner = new Runner(any, options)
  const columns = columnsOf(read.value)
  const part = await runner.points({
    solver: solver.name,
    base: si.value,
    inputs: read.value.map(({ place }) => place.path),
    columns,
    outputs: outputs.value.map(({ path }) => path),
  })
  runner.report(true)
  const told: TableColumn[] = [
    ...read.value.map(({ place: { path, field } }, i) => ({
      path,
      label: field.label,
      role: "input" as const,
      kind: field.kind,
      unit: siUnit(field.kind),
      values: columns[i] as readonly Told[],
    })),
    ...outputs.value.map(({ path, label, kind }, i) => ({
      path,
      label,
      role: "output" as const,
      kind,
      unit: siUnit(kind),
      values: part.outputs[i] as readonly Told[],
    })),
  ]
  const byPath = (role: TableColumn["role"]) => Object.fromEntries(told.filter((c) => c.role === role).map((c) => [c.path, c.values]))
  const table = {
    solver: solver.name,
    count: part.refused.length,
    inputs: byPath("input"),
    outputs: byPath("output"),
    refused: part.refused,
    reasons: part.reasons,
    columns: told,
  }
  // out of sight of JSON: the columns say the same again
  Object.defineProperty(table, "columns", { enumerable: false })
  Object.defineProperty(table, "csv", { value: () => csvOf(told, part.refused) })
  return Object.freeze(table) as unknown as SweepTable<In, Out, P, O>
}
