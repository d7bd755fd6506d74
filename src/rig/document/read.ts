import { InputError, type Issue, issue } from "../../solver/index.js"
import { assess } from "../assess/index.js"
import type { RigDocument } from "./document.js"
import * as z from "./zod.js"

/** Version of the document's form that this release reads and writes. */
export const RIG_VERSION = 1

/** One step of the migration path: makes a document of the next version. */
export type Migration = (document: Readonly<Record<string, unknown>>) => Record<string, unknown>

// migrations[n] takes version n to n + 1; there is no older form yet
const migrations: Readonly<Record<number, Migration>> = {}

/** Brings a document from its version to another, step by step; throws InputError where a step is missing or the document is newer. */
export function migrate(
  document: Readonly<Record<string, unknown>>,
  target: number,
  steps: Readonly<Record<number, Migration>>,
): Readonly<Record<string, unknown>> {
  const version = document.version as number
  if (version > target)
    throw new InputError("readRig", [
      issue("too-large", ["version"], String(version), `at most ${target}: this document was written for a newer release`),
    ])
  if (version === target) return document
  const step = steps[version]
  if (!step)
    throw new InputError("readRig", [issue("too-small", ["version"], String(version), `a version that can be brought to ${target}`)])
  return migrate({ ...step(document), version: version + 1 }, target, steps)
}

// what any version of a rig document has: enough to choose the migration
const envelope = z.looseObject({ version: z.int().check(z.minimum(1)), name: z.string() })

/**
 * Reads a rig document from JSON text or data: checks its outer form, brings it to the present version step by
 * step, then checks every field. The document itself comes back unchanged: what was written `'1 1/2 in'` stays so.
 *
 * @param source - JSON text, or the parsed document
 * @throws InputError naming every fault, a version newer than this release among them
 */
export function readRig(source: unknown): RigDocument {
  let data = source
  if (typeof source === "string") {
    try {
      data = JSON.parse(source) as unknown
    } catch (error) {
      throw new InputError("readRig", [issue("wrong-type", [], "text that is not JSON", `JSON (${(error as Error).message})`)])
    }
  }
  const outer = envelope.safeParse(data)
  if (!outer.success) {
    const wanted = (key: unknown) =>
      key === "version"
        ? `a whole version number from 1 to ${RIG_VERSION}`
        : key === "name"
          ? "a name, as text"
          : "an object with version and name"
    throw new InputError(
      "readRig",
      outer.error.issues.map((one): Issue => {
        const path = one.path as (string | number)[]
        const value = path.length ? (data as Record<string, unknown>)[path[0] as string] : data
        return issue(
          value === undefined ? "missing" : "wrong-type",
          path,
          value === undefined ? "nothing" : typeof value === "object" ? "something else" : String(value),
          wanted(path[0]),
        )
      }),
    )
  }
  const document = migrate(data as Record<string, unknown>, RIG_VERSION, migrations)
  assess.read(document)
  return document as unknown as RigDocument
}

/** A rig document as JSON text, ready to keep; {@link readRig} gives the same document back. */
export function writeRig(rig: RigDocument): string {
  assess.read(rig)
  return `${JSON.stringify(rig, null, 2)}\n`
}
