import { readdirSync, readFileSync } from "node:fs"
import { drives } from "../../src/rig/drives/index.js"
import { assessRig, type Rig, readRig } from "../../src/rig/index.js"
import { mechanisms } from "../../src/rig/mechanisms/index.js"
import { transmissions } from "../../src/rig/transmissions/index.js"
import type { RigSi } from "../../src/rig/whole/faults.js"
import type { Members } from "../../src/rig/whole/fields.js"
import type { AnyFields } from "../../src/solver/index.js"
import { readInput } from "../../src/solver/read.js"

const folder = new URL("../../shared/rigs/", import.meta.url)

/** A document as it lies in its file, of either version. */
export interface Written {
  readonly version: 1 | 2
  readonly name: string
  readonly [section: string]: unknown
}

/** A demo rig of shared/rigs by its file name without ending. */
export function demo(name: string): Written {
  return JSON.parse(readFileSync(new URL(`${name}.json`, folder), "utf8")) as Written
}

const names = readdirSync(folder)
  .filter((f) => f.endsWith(".json"))
  .map((f) => f.slice(0, -5))
const version = (name: string) => demo(name).version

/** Names of all demo rigs written in version 1. */
export const demoNames: readonly string[] = names.filter((name) => version(name) === 1)

/** Names of all demo rigs written in version 2. */
export const creatureNames: readonly string[] = names.filter((name) => version(name) === 2)

/** A demo rig, brought to version 2. */
export const creature = (name: string): Rig => readRig(demo(name))

/** Our own members. */
export const members: Members = { drives, transmissions, mechanisms } as unknown as Members

/** A document read into SI. */
export function siOf(document: Written | Rig): RigSi {
  const read = readInput(assessRig.input as unknown as AnyFields, readRig(document), [])
  if (!read.ok) throw new Error(`${document.name} is no rig`)
  return read.si as unknown as RigSi
}

/** A demo rig by its name, brought to version 2 and read into SI. */
export const rigSi = (name: string): RigSi => siOf(demo(name))
