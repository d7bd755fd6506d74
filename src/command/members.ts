// What a rig's document may name by its type: drives, elements of a transmission, mechanisms, sources, loads.
import { assessRig } from "../rig/index.js"
import type { AnyField, AnyFields } from "../solver/index.js"
import { starters } from "../starters/index.js"

type Variant = Extract<AnyField, { kind: "variant" }>

/** Where each family of members stands in a document. */
const families = [
  { family: "drives", place: "motions[].drive" },
  { family: "elements of a transmission", place: "motions[].transmission[]" },
  { family: "mechanisms", place: "motions[].mechanisms[]" },
  { family: "sources", place: "power.sources[]" },
  { family: "loads", place: "power.loads[]" },
] as const

/** A type that a document may name. */
export interface Member {
  readonly family: string
  readonly type: string
  readonly label: string
  readonly place: string
  readonly fields: AnyFields
  /** One from a starter rig; null where none has it. */
  readonly example: object | null
}

/** The description at a place of the document. */
function fieldAt(place: string): AnyField {
  const steps = place.replaceAll("[]", "").split(".")
  let fields = assessRig.input as unknown as AnyFields
  let field: AnyField | undefined
  for (const step of steps) {
    field = fields[step]
    if (field?.kind === "list") field = field.of
    if (field?.kind === "group") fields = field.fields
  }
  if (!field) throw new TypeError(`no field at ${place}`)
  return field
}

/** Every part of a document with a type, wherever it stands. */
function typed(value: unknown): readonly (object & { readonly type: string })[] {
  if (typeof value !== "object" || value === null) return []
  const inside = Object.values(value).flatMap(typed)
  return "type" in value && typeof value.type === "string" ? [value as object & { readonly type: string }, ...inside] : inside
}

/** All members, family by family. */
export function members(): readonly Member[] {
  const shown = Object.values(starters).flatMap(({ rig }) => typed([rig.motions, rig.power]))
  return families.flatMap(({ family, place }) =>
    Object.entries((fieldAt(place) as Variant).of).map(([type, { label, fields }]) => ({
      family,
      type,
      label,
      place,
      fields,
      example: shown.find((one) => one.type === type) ?? null,
    })),
  )
}

/** Labels of the fields that name members: a page tells of each member by itself. */
export const memberFields = (): ReadonlySet<string> => new Set(families.map(({ place }) => fieldAt(place).label))
