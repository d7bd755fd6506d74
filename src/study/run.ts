// How a study is run: point by point on the kernel, in this thread or spread over a pool; stopped, and told of, on the way.
import { answer, Refused } from "./answer.js"
import { Pace, type StudyPool, type StudySignal } from "./pace.js"
import type { AnySolver } from "./place.js"

/** How far a study is: points answered or refused, of how many are known to be asked. */
export interface StudyProgress {
  readonly done: number
  readonly of: number
}

/** How a study is run; none of it changes the answer. */
export interface StudyOptions {
  /** Stops the study; the promise is then rejected with the signal's reason. */
  readonly signal?: StudySignal
  /** Called now and then (at most ten times a second), and once at the end. */
  readonly onProgress?: (progress: StudyProgress) => void
  /** Spreads the points over threads. */
  readonly pool?: StudyPool
}

/** A value of a result: a number in SI, a word, a flag; null where there is none. */
export type Told = number | string | boolean | null

/** Points to be asked of a solver, as plain data: a base in SI, and for each input changed its value at every point. */
export interface PointsTask {
  /** Name that the solver is exported under. */
  readonly solver: string
  readonly base: object
  readonly inputs: readonly string[]
  readonly columns: readonly (readonly unknown[])[]
  readonly outputs: readonly string[]
}

/** What a solver said at points: a column for each output, and the code of each refusal. */
export interface PointsPart {
  readonly outputs: readonly (readonly Told[])[]
  readonly refused: readonly (string | null)[]
  /** The message of the first refusal of each code. */
  readonly reasons: Readonly<Record<string, string>>
}

interface Growing {
  readonly outputs: Told[][]
  readonly refused: (string | null)[]
  readonly reasons: Record<string, string>
}

/** Where values are put in: a column's number at the end of a path, or what lies behind a name. */
interface Branch {
  readonly key: string
  readonly column: number
  readonly below: Branch[]
}

function branchesOf(paths: readonly string[]): Branch[] {
  const root: Branch[] = []
  paths.forEach((path, column) => {
    let level = root
    const keys = path.split(".")
    keys.forEach((key, depth) => {
      const isLast = depth === keys.length - 1
      let branch = level.find((b) => b.key === key)
      if (!branch) {
        branch = { key, column: isLast ? column : -1, below: [] }
        level.push(branch)
      }
      level = branch.below
    })
  })
  return root
}

/** The input of a point: what is changed is new, all else shared. */
function withRow(si: object, branches: readonly Branch[], columns: readonly (readonly unknown[])[], row: number): object {
  const from = si as Readonly<Record<string, object>>
  const copy = (Array.isArray(si) ? si.slice() : { ...si }) as Record<string, unknown>
  for (const { key, column, below } of branches)
    copy[key] = column >= 0 ? (columns[column] as readonly unknown[])[row] : withRow(from[key] as object, below, columns, row)
  return copy
}

const toldAt = (out: object, keys: readonly string[]): Told => {
  let value: unknown = out
  for (const key of keys) {
    if (value === null || value === undefined) return null
    value = (value as Readonly<Record<string, unknown>>)[key]
  }
  return (value ?? null) as Told
}

/** Asks points one after another, from where it stopped; true when all are asked. */
function asking(solver: AnySolver, task: PointsTask): { readonly part: Growing; readonly total: number; next(count: number): number } {
  const branches = branchesOf(task.inputs)
  const keys = task.outputs.map((path) => path.split("."))
  const total = task.columns[0]?.length ?? 0
  const part: Growing = { outputs: keys.map(() => []), refused: [], reasons: {} }
  return {
    part,
    total,
    next(count) {
      const end = Math.min(total, part.refused.length + count)
      for (let row = part.refused.length; row < end; row++) {
        const out = answer(solver, withRow(task.base, branches, task.columns, row))
        if (out instanceof Refused) {
          part.refused.push(out.code)
          part.reasons[out.code] ??= out.message
          for (const column of part.outputs) column.push(null)
        } else {
          part.refused.push(null)
          for (let i = 0; i < keys.length; i++) (part.outputs[i] as Told[]).push(toldAt(out, keys[i] as string[]))
        }
      }
      return end
    },
  }
}

/** Asks all points of a task in the thread it is called in: the pure form of what a pool is handed. */
export function answerPoints(solver: AnySolver, task: PointsTask): PointsPart {
  const points = asking(solver, task)
  points.next(points.total)
  return points.part
}

/**
 * What a worker of a pool exports: it answers the tasks of studies by the solvers given, known by their names. A worker's whole
 * file: `import * as wire from "alula/wire"; import { studyWorker } from "alula/study"; export default studyWorker(wire)`.
 *
 * @param solvers - solvers by the name they are exported under; whatever else is among them is passed over
 * @returns the worker's function; it throws a RangeError at a task for a solver that it was not given
 */
export function studyWorker(solvers: Readonly<Record<string, unknown>>): (task: PointsTask) => PointsPart {
  return (task) => {
    const solver = Object.hasOwn(solvers, task.solver) ? solvers[task.solver] : undefined
    if (typeof solver !== "function" || !("~standard" in solver))
      throw new RangeError(`This worker was not given the solver ${task.solver}.`)
    return answerPoints(solver as unknown as AnySolver, task)
  }
}

/** Most tasks that a set of points is cut into. */
const SHARES = 64

/** Keeps a study's account: points asked here or over a pool, progress told, a stop heard. */
export class Runner {
  #done = 0
  #known = 0
  readonly #pace: Pace<StudyProgress>

  constructor(
    readonly solver: AnySolver,
    private readonly options: StudyOptions,
  ) {
    this.#pace = new Pace(options.signal, options.onProgress, () => ({ done: this.#done, of: this.#known }))
  }

  /** Points asked so far. */
  get asked(): number {
    return this.#done
  }

  /** Tells how far it is; at the end always. */
  report(isLast = false): void {
    this.#pace.report(isLast)
  }

  /** Lets others run where it has worked for a while. */
  rest(): Promise<void> {
    return this.#pace.rest()
  }

  /** Asks many points at once, spread over the pool where there is one. */
  async points(task: PointsTask): Promise<PointsPart> {
    const total = task.columns[0]?.length ?? 0
    this.#known += total
    const { pool } = this.options
    if (pool && total > 1) return this.#spread(pool, task, total)
    const points = asking(this.solver, task)
    // as many at a time as take a few milliseconds: one where the kernel is slow
    let [count, at] = [1, 0]
    while (at < total) {
      const began = Date.now()
      const next = points.next(count)
      this.#done += next - at
      at = next
      const spent = Date.now() - began
      if (spent < 2 && count < 4096) count *= 2
      else if (spent > 10 && count > 1) count = Math.ceil(count / 2)
      await this.rest()
    }
    return points.part
  }

  async #spread(pool: StudyPool, task: PointsTask, total: number): Promise<PointsPart> {
    const size = Math.ceil(total / Math.min(SHARES, total))
    const tasks: PointsTask[] = []
    for (let from = 0; from < total; from += size)
      tasks.push({ ...task, columns: task.columns.map((column) => column.slice(from, from + size)) })
    const parts = await this.#pace.spread<PointsPart>(pool, tasks, (part) => {
      this.#done += part.refused.length
    })
    return {
      outputs: task.outputs.map((_, i) => parts.flatMap((part) => part.outputs[i] as readonly Told[])),
      refused: parts.flatMap((part) => part.refused),
      reasons: Object.assign({}, ...parts.map((part) => part.reasons).reverse()) as Record<string, string>,
    }
  }

  /** Asks one point here. */
  one(input: object): object {
    this.#done++
    this.#known++
    return answer(this.solver, input)
  }
}
