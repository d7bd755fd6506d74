import { existsSync, readdirSync, readFileSync } from "node:fs"
import { join } from "node:path"
import type { Fault } from "./fault.js"

/** A fault that no input can show, with the argument why. */
export interface Equivalent {
  readonly fault: string
  readonly reason: string
}

/** Share of the faults tried that may count as equivalent. */
export const MOST = 0.05

/** Reads the arguments: every `equivalents*.json` of a folder. */
export function equivalentsIn(folder: string): Equivalent[] {
  if (!existsSync(folder)) return []
  const names = readdirSync(folder).filter((name) => /^equivalents.*\.json$/.test(name))
  return names.flatMap((name) => {
    const list = JSON.parse(readFileSync(join(folder, name), "utf8")) as Equivalent[]
    for (const { fault, reason } of list) {
      if (typeof fault !== "string" || typeof reason !== "string" || reason.trim().length < 20)
        throw new Error(`${name}: every entry has a fault and a reason in a sentence: ${JSON.stringify({ fault, reason })}`)
    }
    return list
  })
}

/** Entries that argue about a fault no longer there, of the files that were read. */
export function stale(list: readonly Equivalent[], faults: readonly Fault[], files: readonly string[]): string[] {
  const keys = new Set(faults.map((fault) => fault.key))
  return list.map((one) => one.fault).filter((key) => files.includes(key.split(" | ")[0] as string) && !keys.has(key))
}
