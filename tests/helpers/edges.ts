import type { IssueCode, Severity } from "../../src/solver/index.js"
import type { AnySolver } from "./solvers.js"

/** A change of the solver's example, key by key; `undefined` takes a key out. */
export type Change = Readonly<Record<string, unknown>>

interface Row {
  readonly solver: unknown
  /** Why the two inputs must lie further apart than one step in one place. */
  readonly apart?: string
}

/**
 * A caution at its threshold: shown with one change of the example, not shown with the other. `notShown: null` says that it goes
 * with every answer of the solver: then it must stand by the plain example as well.
 */
export interface CautionRow extends Row {
  readonly code: string
  readonly severity: Severity
  readonly shown: Change
  readonly notShown: Change | null
}

/** A refusal at its threshold: refused with one change of the example, answered with the other. */
export interface RefusalRow extends Row {
  readonly code: string
  readonly refused: Change
  readonly answered: Change
  /** Why no nearest value can be named for this refusal. */
  readonly noNearest?: string
}

/** A fault between fields at its threshold. */
export interface FaultRow extends Row {
  /** Where the fault is reported, from the input's root: `wires.0.length`. */
  readonly path: string
  readonly faulty: Change
  readonly sound: Change
  readonly code?: IssueCode
}

/**
 * A second computation of a number in a message: from the input in SI, and the result where there is one. Keys are
 * `solver.code.name`; for refusals also `solver.code.shortBy` and `solver.code.at.name`.
 */
// biome-ignore lint/suspicious/noExplicitAny: each computation knows the solver its key names
export type Numbers = Readonly<Record<string, (si: any, out: any) => number>>

/** What a module says about its own edges: `tests/<module>/edges*.ts` export one of these as `edges`. */
export interface Edges {
  readonly cautions: readonly CautionRow[]
  readonly refusals: readonly RefusalRow[]
  readonly faults: readonly FaultRow[]
  readonly numbers: Numbers
}

const files: Record<string, { readonly edges: Edges }> = import.meta.glob(["../*/edges*.ts", "!../helpers/*", "!../laws/*"], {
  eager: true,
})

/** The edges of every module that has some, parts of one module put together. */
export const allEdges: ReadonlyMap<string, Edges> = (() => {
  const found = new Map<string, Edges>()
  for (const [path, { edges }] of Object.entries(files)) {
    const module = path.split("/").at(-2) as string
    const so = found.get(module)
    found.set(
      module,
      so
        ? {
            cautions: [...so.cautions, ...edges.cautions],
            refusals: [...so.refusals, ...edges.refusals],
            faults: [...so.faults, ...edges.faults],
            numbers: { ...so.numbers, ...edges.numbers },
          }
        : edges,
    )
  }
  return found
})()

/** The example of a solver with a change made. */
export function changed(solver: unknown, change: Change): Record<string, unknown> {
  const merged = { ...(solver as AnySolver).example, ...change }
  return Object.fromEntries(Object.entries(merged).filter(([, value]) => value !== undefined))
}
