import { readdirSync, readFileSync } from "node:fs"
import type { RigDocument } from "../../src/rig/index.js"

const folder = new URL("../../shared/rigs/", import.meta.url)

/** A demo rig of shared/rigs by its file name without ending. */
export function demo(name: string): RigDocument {
  return JSON.parse(readFileSync(new URL(`${name}.json`, folder), "utf8")) as RigDocument
}

/** Names of all demo rigs. */
export const demoNames: readonly string[] = readdirSync(folder)
  .filter((f) => f.endsWith(".json"))
  .map((f) => f.slice(0, -5))

/** The cells rig on a stiff 12 V supply: no resistance anywhere. */
export function stiffRig(): RigDocument {
  return {
    ...demo("lantern-moth-cells"),
    pack: null,
    bank: { voltage: "12 V", currentLimit: "20 A", resistance: 0, energy: "100 Wh" },
    wiring: { source: { length: 0, awg: 10 }, switchResistance: 0 },
  }
}
