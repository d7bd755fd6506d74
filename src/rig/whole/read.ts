// A document from text or data: its outer form, its version, then every field.
import { InputError, issue, type Solver } from "../../solver/index.js"
import { withoutComments } from "./comments.js"
import type { Rig, Typed } from "./document.js"
import { fromVersion1 } from "./migrate.js"

type AnyRig = Rig<Typed, Typed, Typed>

const refuseAt = (path: string, received: string, expected: string): never => {
  throw new InputError("readRig", [issue(received === "nothing" ? "missing" : "wrong-type", path ? [path] : [], received, expected)])
}

function parsed(source: unknown): Readonly<Record<string, unknown>> {
  let data = source
  if (typeof source === "string")
    try {
      data = JSON.parse(withoutComments(source)) as unknown
    } catch (error) {
      return refuseAt("", "text that is not JSON", `JSON (${(error as Error).message})`)
    }
  if (typeof data !== "object" || data === null || Array.isArray(data))
    return refuseAt("", "something else", "a document with version and name")
  return data as Readonly<Record<string, unknown>>
}

/** Reads a document, brings it to version 2 and checks it; the document itself comes back as it was written. */
export function readDocument(source: unknown, assess: { read: Solver<AnyRig, object>["read"] }): AnyRig {
  const data = parsed(source)
  const { version } = data
  if (version === undefined) return refuseAt("version", "nothing", "the version of the document's form: 2")
  if (version !== 1 && version !== 2)
    return refuseAt("version", String(version), "2, or 1 to be brought to 2; a later one was written for a later release")
  const document = version === 1 ? brought(data) : data
  assess.read(document)
  return document as unknown as AnyRig
}

/** A document of version 1 in the form of version 2; its note says what was left out. */
export function brought(data: Readonly<Record<string, unknown>>): Record<string, unknown> {
  const { rig, left } = fromVersion1(data)
  const note = typeof rig.note === "string" ? rig.note : ""
  if (!left.length) return rig
  return {
    ...rig,
    note: `${note}${note ? " " : ""}Brought from version 1 without its ${left.join(", ")}: say these anew as motions and checks of this version.`,
  }
}
