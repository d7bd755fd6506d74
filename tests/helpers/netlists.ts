import { readdirSync, readFileSync } from "node:fs"

/** A netlist's twin in shared/netlists: the solver's input and what ngspice printed. */
export interface StoredNetlist {
  readonly file: string
  readonly solver: string
  readonly about: string
  readonly tool: string
  readonly input: unknown
  /** Voltages by node, or by `node,node`, V. */
  readonly results: Readonly<Record<string, number>>
}

/** The stored netlists of one solver. */
export function netlistsOf(solver: string): readonly StoredNetlist[] {
  const folder = new URL("../../shared/netlists/", import.meta.url)
  return readdirSync(folder)
    .filter((f) => f.endsWith(".json"))
    .map((file) => ({ ...(JSON.parse(readFileSync(new URL(file, folder), "utf8")) as StoredNetlist), file }))
    .filter((s) => s.solver === solver)
}
