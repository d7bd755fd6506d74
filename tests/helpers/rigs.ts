import { readdirSync, readFileSync } from "node:fs"
import { drives } from "../../src/rig/drives/index.js"
import { assessRig, type Rig, type RigDocument, rigWith } from "../../src/rig/index.js"
import { mechanisms } from "../../src/rig/mechanisms/index.js"
import { transmissions } from "../../src/rig/transmissions/index.js"
import type { RigSi } from "../../src/rig/whole/faults.js"
import type { Members } from "../../src/rig/whole/fields.js"
import type { AnyFields } from "../../src/solver/index.js"
import { readInput } from "../../src/solver/read.js"

const folder = new URL("../../shared/rigs/", import.meta.url)

/** A demo rig of shared/rigs by its file name without ending. */
export function demo(name: string): RigDocument {
  return JSON.parse(readFileSync(new URL(`${name}.json`, folder), "utf8")) as RigDocument
}

const names = readdirSync(folder)
  .filter((f) => f.endsWith(".json"))
  .map((f) => f.slice(0, -5))
const version = (name: string) => (demo(name) as { readonly version: number }).version

/** Names of all demo rigs written in version 1. */
export const demoNames: readonly string[] = names.filter((name) => version(name) === 1)

/** Names of all demo rigs written in version 2. */
export const creatureNames: readonly string[] = names.filter((name) => version(name) === 2)

/** A demo rig of version 2. */
export const creature = (name: string): Rig => demo(name) as unknown as Rig

/** The cells rig on a stiff 12 V supply: no resistance anywhere. */
export function stiffRig(): RigDocument {
  return {
    ...demo("lantern-moth-cells"),
    pack: null,
    bank: { voltage: "12 V", currentLimit: "20 A", resistance: 0, energy: "100 Wh" },
    wiring: { source: { length: 0, awg: 10 }, switchResistance: 0 },
  }
}

/** Our own members. */
export const members: Members = { drives, transmissions, mechanisms } as unknown as Members

/** A document read into SI. */
export function siOf(document: RigDocument | Rig): RigSi {
  const read = readInput(assessRig.input as unknown as AnyFields, rigWith().read(document), [])
  if (!read.ok) throw new Error(`${document.name} is no rig`)
  return read.si as unknown as RigSi
}

/** A demo rig by its name, brought to version 2 and read into SI. */
export const rigSi = (name: string): RigSi => siOf(demo(name))
