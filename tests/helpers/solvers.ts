import type { Solver } from "../../src/solver/index.js"

/** Any solver, its types forgotten: what the shared suites walk. */
export type AnySolver = Solver<Record<string, unknown>, Record<string, unknown>>

const modules: Record<string, Record<string, unknown>> = import.meta.glob("../../src/*/index.ts", { eager: true })
const domains = ["linkage", "drive", "pack", "converter", "wire", "frame", "thermoform", "worn", "rig", "advice"]

/** Every exported solver with its `module.name`, found by walking the public modules. */
export const solvers: readonly { readonly id: string; readonly solver: AnySolver }[] = Object.entries(modules).flatMap(
  ([path, exports]) => {
    const domain = path.split("/").at(-2) as string
    if (!domains.includes(domain)) return []
    return Object.entries(exports)
      .filter(([, value]) => typeof value === "function" && "~standard" in value)
      .map(([name, value]) => ({ id: `${domain}.${name}`, solver: value as AnySolver }))
  },
)
