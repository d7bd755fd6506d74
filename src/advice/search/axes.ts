// Reads what may be changed into axes: each with its members, and what each of them writes into the document.
import { formatNumber, formatQuantity } from "../../quantity/index.js"
import type { RigSi } from "../../rig/whole/faults.js"
import { type AnyField, type AnyFields, type AnyGroup, type Issue, issue, type Path, type SiOf } from "../../solver/index.js"
import { shown, unknownKey } from "../../solver/issue.js"
import { readInput } from "../../solver/read.js"
import { type AnySolver, type Place, placeAt, readAt } from "../../study/place.js"
import type { Catalogue } from "../catalogue.js"
import { staysAt } from "./places.js"
import type { Axis, Member, Put, Row } from "./plan.js"

/** A catalogue that was read. */
export type CatalogueSi = SiOf<Catalogue>
type PartSi = CatalogueSi["parts"][number]

/** What all that may be changed hangs on while it is read. */
interface Reading {
  readonly solver: AnySolver
  readonly rig: RigSi
  readonly catalogue: CatalogueSi
  readonly issues: Issue[]
}

const keysOf = {
  family: ["at", "family", "part", "count", "without"],
  values: ["at", "values"],
  from: ["at", "from", "to", "steps"],
} as const

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value)

/** The places that `at` names. */
function placesOf({ solver, rig, issues }: Reading, at: unknown, path: Path): Place[] {
  const list = Array.isArray(at) ? at : [at]
  return list.flatMap((one: unknown, i): Place[] => {
    const where = Array.isArray(at) ? [...path, i] : path
    const found = placeAt(solver, rig, typeof one === "string" ? one.replace(/\[(\d{1,6})\]/g, ".$1") : one, where)
    if (found.ok) return [found.value]
    issues.push(...found.issues)
    return []
  })
}

/** Fields of a group, or of the variant that a value names. */
function groupOf(field: AnyField, value: unknown): AnyGroup["fields"] | null {
  if (field.kind === "group") return field.fields
  if (field.kind === "variant" && isObject(value) && typeof value.type === "string")
    return (field.of[value.type]?.fields ?? null) as AnyFields | null
  return null
}

/** What a part puts in place of the whole that stands there. */
function wholePuts(place: Place, writes: Readonly<Record<string, unknown>>, stays: readonly string[], where: Path, issues: Issue[]): Put[] {
  const before = isObject(place.value) ? place.value : {}
  const fields = groupOf(place.field, writes)
  const kept = Object.fromEntries(Object.entries(before).filter(([key]) => stays.includes(key) && fields && Object.hasOwn(fields, key)))
  const read = readAt(place, { ...kept, ...writes }, where)
  if (read.ok) return [{ keys: place.keys, value: read.value }]
  issues.push(...read.issues)
  return []
}

/** What a part puts into some fields of a place; those that others of its family write and it does not go back to their defaults. */
function fieldPuts(place: Place, names: readonly string[], writes: Readonly<Record<string, unknown>>, where: Path, issues: Issue[]): Put[] {
  const fields = groupOf(place.field, place.value)
  if (!fields) {
    issues.push(issue("wrong-type", where, "fields", "a place with fields in it"))
    return []
  }
  return names.flatMap((name): Put[] => {
    const field = fields[name]
    if (!field) {
      issues.push(unknownKey([...where, name], name, Object.keys(fields)))
      return []
    }
    const read = readInput({ [name]: field }, Object.hasOwn(writes, name) ? { [name]: writes[name] } : {})
    if (read.ok) return [{ keys: [...place.keys, name], value: (read.si as Readonly<Record<string, unknown>>)[name] }]
    issues.push(...read.issues.map(({ code, path, received, expected }) => issue(code, [...where, ...path], received, expected)))
    return []
  })
}

const partPlace = {
  forward: { kind: "length", symbol: "f_part", label: "ahead of the hips", min: -2, max: 2 },
  left: { kind: "length", symbol: "l_part", label: "left of the middle", min: -3, max: 3, default: 0 },
  height: { kind: "length", symbol: "h_part", label: "above the ground", min: 0, max: 4 },
} as unknown as AnyFields

const countField = {
  count: { kind: "number", symbol: "n_part", label: "how many", whole: true, min: 1, max: 10000, default: null },
} as unknown as AnyFields

/** How parts of a family stand in the list of parts. */
function rowOf({ rig, issues }: Reading, { part, count }: Readonly<Record<string, unknown>>, path: Path): Row | null {
  const read = readInput(countField, count === undefined ? {} : { count })
  if (!read.ok) issues.push(...read.issues.map((one) => issue(one.code, [...path, "count"], one.received, one.expected)))
  const counted = read.ok ? (read.si as { readonly count: number | null }).count : null
  if (typeof part === "string") {
    const index = rig.parts.findIndex((one) => one.name === part)
    const row = rig.parts[index]
    if (row) return { index, place: { forward: row.forward, left: row.left, height: row.height }, count: counted }
    issues.push(issue("inconsistent", [...path, "part"], shown(part), `one of the rig's parts: ${rig.parts.map((p) => p.name).join(", ")}`))
    return null
  }
  const placed = readInput(partPlace, part)
  if (placed.ok) return { index: -1, place: placed.si as Row["place"], count: counted }
  issues.push(...placed.issues.map((one) => issue(one.code, [...path, "part", ...one.path], one.received, one.expected)))
  return null
}

function familyAxis(reading: Reading, given: Readonly<Record<string, unknown>>, path: Path): Axis | null {
  const { catalogue, issues } = reading
  const places = placesOf(reading, given.at, [...path, "at"])
  const row = rowOf(reading, given, path)
  const list = catalogue.parts.map((part, i) => ({ part, i })).filter(({ part }) => part.family === given.family)
  if (!list.length) {
    const families = [...new Set(catalogue.parts.map((part) => part.family))]
    issues.push(
      issue("too-few", [...path, "family"], `${shown(given.family)}, of which the catalogue has none`, `one of ${families.join(", ")}`),
    )
  }
  const names = [...new Set(list.flatMap(({ part }) => Object.keys(part.writes)))]
  const putsOf = (writes: Readonly<Record<string, unknown>>, where: Path) =>
    places.flatMap((place) => {
      const stays = staysAt(place.keys, place.field, names)
      return stays ? wholePuts(place, writes, stays, where, issues) : fieldPuts(place, names, writes, where, issues)
    })
  const memberOf = ({ part, i }: { readonly part: PartSi; readonly i: number }): Member => ({
    name: part.name,
    puts: putsOf(part.writes as Readonly<Record<string, unknown>>, ["catalogue", "parts", i, "writes"]),
    mass: part.mass,
    price: part.price ?? 0,
    per: part.per,
    value: null,
  })
  const members = list.map(memberOf)
  if (given.without === true) members.push({ ...NOTHING, puts: places.flatMap((place) => nothingAt(place, names, path, issues)) })
  else if (given.without !== undefined && given.without !== false)
    issues.push(issue("wrong-type", [...path, "without"], shown(given.without), "true or false"))
  if (places.length === 0 || !row) return null
  return { at: places.map((p) => p.path), keys: places.map((p) => p.keys), family: given.family as string, row, range: null, members }
}

const NOTHING: Omit<Member, "puts"> = { name: "none", mass: 0, price: 0, per: "piece", value: null }

/** A place with nothing in it. */
function nothingAt(place: Place, names: readonly string[], path: Path, issues: Issue[]): Put[] {
  if (!staysAt(place.keys, place.field, names)) return fieldPuts(place, names, {}, [...path, "without"], issues)
  if ("default" in place.field && place.field.default === null) return [{ keys: place.keys, value: null }]
  issues.push(issue("inconsistent", [...path, "without"], "true", `false: ${place.path} may not be left out`))
  return []
}

/** Values tried over a range where nothing else is said. */
const STEPS = 3

function numberAxis(reading: Reading, given: Readonly<Record<string, unknown>>, path: Path): Axis | null {
  const { issues } = reading
  const places = placesOf(reading, given.at, [...path, "at"])
  const [first] = places
  if (!first) return null
  const read = (value: unknown, where: Path): number[] =>
    places.slice(0, 1).flatMap((place) => {
      const found = readAt(place, value, where)
      if (found.ok && typeof found.value === "number") return [found.value]
      issues.push(...(found.ok ? [issue("wrong-type", [...path, "at"], shown(given.at), "the place of a number")] : found.issues))
      return []
    })
  const isRange = given.values === undefined
  const steps = given.steps ?? STEPS
  let values: number[] = []
  let range: Axis["range"] = null
  if (isRange) {
    const ends = [...read(given.from, [...path, "from"]), ...read(given.to, [...path, "to"])]
    const [low, high] = [Math.min(...ends), Math.max(...ends)]
    if (typeof steps !== "number" || !Number.isInteger(steps) || steps < 2 || steps > 200)
      issues.push(issue("not-whole", [...path, "steps"], shown(steps), "a whole number from 2 to 200"))
    else if (ends.length === 2 && !(low < high))
      issues.push(issue("inconsistent", [...path, "to"], shown(given.to), "another value than from"))
    else if (ends.length === 2) {
      values = Array.from({ length: steps }, (_, i) => low + ((high - low) * i) / (steps - 1))
      range = [low, high]
    }
    if (first.field.kind === "number" && "whole" in first.field && first.field.whole)
      issues.push(issue("inconsistent", path, "a range", `a list of values: ${first.path} is a whole number`))
  } else if (Array.isArray(given.values) && given.values.length)
    values = given.values.flatMap((value: unknown, i) => read(value, [...path, "values", i]))
  else issues.push(issue("wrong-type", [...path, "values"], shown(given.values), "a list of at least one value"))
  values.forEach((value, i) => {
    if (values.indexOf(value) < i) issues.push(issue("inconsistent", [...path, "values", i], `${value} again`, "each value once"))
  })
  const kind = first.field.kind
  const shows = (value: number) => (kind === "number" ? formatNumber(value) : formatQuantity(kind as "length", value))
  const members = values
    .toSorted((a, b) => a - b)
    .map((value): Member => ({ ...NOTHING, name: shows(value), value, puts: places.map((place) => ({ keys: place.keys, value })) }))
  return { at: places.map((p) => p.path), keys: places.map((p) => p.keys), family: null, row: null, range, members }
}

/** Axes of what may be changed; faults go into `issues`. */
export function readVary(solver: AnySolver, rig: RigSi, catalogue: CatalogueSi, vary: readonly unknown[], issues: Issue[]): Axis[] {
  const reading: Reading = { solver, rig, catalogue, issues }
  return vary.flatMap((given, i): Axis[] => {
    const path = ["vary", i]
    if (!isObject(given)) {
      issues.push(issue("wrong-type", path, shown(given), "an object with a place and what is tried there"))
      return []
    }
    const kinds = (["family", "values", "from"] as const).filter((key) => given[key] !== undefined)
    const [kind] = kinds
    if (kinds.length !== 1 || !kind) {
      issues.push(issue("inconsistent", path, kinds.length ? kinds.join(" and ") : "nothing to try", "one of family, values, from with to"))
      return []
    }
    for (const key of Object.keys(given))
      if (!(keysOf[kind] as readonly string[]).includes(key)) issues.push(unknownKey([...path, key], key, keysOf[kind]))
    const axis = kind === "family" ? familyAxis(reading, given, path) : numberAxis(reading, given, path)
    return axis ? [axis] : []
  })
}
