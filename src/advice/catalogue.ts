import { type Chemistry, chemistries } from "../pack/index.js"
import type { Area, Charge, Current, LinearDensity, Mass, Resistance } from "../quantity/index.js"
import type { HelperSpring, HingedArms, RigActuator, RigConverter } from "../rig/document/document.js"
import { rigFields } from "../rig/document/fields.js"
import * as z from "../rig/document/zod.js"
import { type AnyField, type AnyFields, type Fields, InputError, type Issue, issue, optionsFrom, type SiOf } from "../solver/index.js"
import { shown, unknownKey } from "../solver/issue.js"
import { readInput } from "../solver/read.js"

/** What every part of a catalogue has. */
export interface CataloguePart {
  /** Name, unlike that of any other part in its list. */
  name: string
  /** Mass of one. */
  mass?: Mass
  /** Price of one, in the catalogue's currency. */
  price?: number
}

/** A linear actuator on offer. */
export interface CatalogueActuator extends CataloguePart, RigActuator {}

/** A place for the actuator, with the mass and price of its bracket. */
export interface CataloguePlacement extends CataloguePart, Pick<HingedArms, "fixedPivot" | "movingPivot"> {}

/** A helper spring on offer, and where it goes. */
export interface CatalogueSpring extends CataloguePart, HelperSpring {}

/** A cell on offer; its mass and price with its share of holder and welds. */
export interface CatalogueCell extends CataloguePart {
  chemistry: Chemistry
  /** Rated charge. */
  capacity: Charge
  /** Direct-current resistance over minutes, not the 1 kHz figure. */
  resistance: Resistance
  /** Maximum current its maker allows; `null` where none is stated (and none is then held to). */
  current?: Current | null
}

/** A voltage converter on offer. */
export interface CatalogueConverter extends CataloguePart, RigConverter {}

/** A wire on offer, one conductor. Give the size as `awg` or as `area`, not both. */
export interface CatalogueWire {
  /** Name, unlike that of any other wire. */
  name: string
  awg?: number | null
  area?: Area | null
  /** Mass of one conductor by its length, insulation included. */
  linearDensity: LinearDensity
  /** Price of one metre of one conductor. */
  pricePerMetre: number
  /** Maximum current its maker allows, where that is less than it bears in the air round it. */
  current?: Current | null
}

/** Parts to choose from: one JSON document. */
export interface Catalogue {
  /** Version of the catalogue's form: 1. */
  version: number
  name: string
  note?: string
  /** What prices are in, as a reader should see it. */
  currency?: string
  actuators: readonly CatalogueActuator[]
  /** Places for the actuator; empty: the rig's own. */
  placements?: readonly CataloguePlacement[]
  /** Helper springs; doing without is always tried. */
  springs?: readonly CatalogueSpring[]
  cells: readonly CatalogueCell[]
  /** Converters; doing without is always tried. */
  converters?: readonly CatalogueConverter[]
  wires: readonly CatalogueWire[]
}

const hinged = rigFields.hinged.fields
const price = (label: string) => ({ kind: "number", symbol: "c", label, min: 0, max: 1e7 }) as const

const partFields: Fields<CataloguePart> = {
  name: { kind: "text", label: "name", min: 1, max: 100 },
  mass: { kind: "mass", symbol: "m", label: "mass of one", min: 0, max: 100, default: 0 },
  price: { ...price("price of one"), default: 0 },
}
const actuatorFields: Fields<CatalogueActuator> = { ...partFields, ...hinged.actuator.fields }
/** Descriptions of a place for the actuator. */
export const placementFields: Fields<CataloguePlacement> = {
  ...partFields,
  fixedPivot: hinged.fixedPivot,
  movingPivot: hinged.movingPivot,
}
const springFields: Fields<CatalogueSpring> = { ...partFields, ...hinged.spring.fields }
const cellFields: Fields<CatalogueCell> = {
  ...partFields,
  chemistry: { kind: "choice", label: "chemistry", options: optionsFrom(chemistries, (key) => chemistries[key].label) },
  capacity: { kind: "charge", symbol: "Q_c", label: "rated charge", min: "1 mAh", max: "200 Ah" },
  resistance: { kind: "resistance", symbol: "R_c", label: "direct-current resistance", min: 0, max: 10 },
  current: { kind: "current", symbol: "I_c", label: "maximum current", min: "0.1 mA", max: 1000, default: null },
}
const converterFields: Fields<CatalogueConverter> = { ...partFields, ...rigFields.converter.fields }
const wireFields: Fields<CatalogueWire> = {
  name: { kind: "text", label: "name", min: 1, max: 100 },
  awg: rigFields.wiring.fields.source.fields.awg,
  area: rigFields.wiring.fields.source.fields.area,
  linearDensity: { kind: "linearDensity", symbol: "mu", label: "mass by length", min: 0, max: 50 },
  pricePerMetre: price("price of a metre"),
  current: { kind: "current", symbol: "I_w", label: "maximum current", min: "0.1 mA", max: 1000, default: null },
}

/** A fault of our own, carried through zod. */
interface Carried {
  readonly fault: Pick<Issue, "code" | "received" | "expected">
}

const carry = (fault: Carried["fault"]): { code: "custom"; params: Record<string, unknown> } => ({ code: "custom", params: { fault } })

/** One value by its description: quantities go through the reader every solver uses. */
function leaf(field: AnyField): z.ZodMiniType<unknown> {
  return z.pipe(
    z.unknown(),
    z.transform((input, context) => {
      const read = readInput({ it: field }, input === undefined ? {} : { it: input })
      if (read.ok) return (read.si as { it: unknown }).it
      for (const { code, received, expected } of read.issues) context.issues.push({ ...carry({ code, received, expected }), input })
      return z.NEVER
    }),
  )
}

function fieldSchema(field: AnyField): z.ZodMiniType<unknown> {
  if (field.kind === "group") return objectOf(field.fields)
  if (field.kind === "list") return listOf(fieldSchema(field.of), field.min ?? 0, field.max ?? 1000)
  // a default is given as a user would give it, so it goes through the same reading
  return field.default === undefined ? leaf(field) : z.prefault(leaf(field), field.default)
}

function objectOf(fields: AnyFields): z.ZodMiniType<unknown> {
  return z.strictObject(Object.fromEntries(Object.entries(fields).map(([key, field]) => [key, fieldSchema(field)])))
}

function listOf(of: z.ZodMiniType<unknown>, min: number, max = 1000): z.ZodMiniType<unknown[]> {
  return z.array(of).check(z.minLength(min), z.maxLength(max))
}

type Clash<T> = (part: SiOf<T>) => readonly [key: string, received: string, expected: string] | null

/** A list of parts, each held to its description, to what goes together in it, and to a name of its own. */
function parts<T extends { name: string }>(fields: Fields<T>, min: number, clash: Clash<T> = () => null): z.ZodMiniType<unknown[]> {
  const part = objectOf(fields as unknown as AnyFields).check((context) => {
    const found = clash(context.value as SiOf<T>)
    if (!found) return
    const [key, received, expected] = found
    context.issues.push({ ...carry({ code: "inconsistent", received, expected }), input: context.value, path: [key] })
  })
  // names are compared even where a part has other faults
  const named = z.check<unknown[]>(
    (context) => {
      if (!Array.isArray(context.value)) return
      const names = context.value.map((one) => (typeof one === "object" && one !== null && "name" in one ? one.name : undefined))
      for (const [i, name] of names.entries())
        if (typeof name === "string" && names.indexOf(name) < i)
          context.issues.push({
            ...carry({ code: "inconsistent", received: `'${name}' again`, expected: "a name of its own" }),
            input: name,
            path: [i, "name"],
          })
    },
    { when: () => true },
  )
  return listOf(part, min).check(named)
}

const makeSchema = () =>
  z.strictObject({
    version: z.literal(1),
    name: z.string(),
    note: z._default(z.string(), ""),
    currency: z._default(z.string(), ""),
    actuators: parts<CatalogueActuator>(actuatorFields, 1, (one) =>
      !(one.ratedSpeed < one.noLoadSpeed)
        ? ["ratedSpeed", `${one.ratedSpeed} m/s`, "less than the speed without load"]
        : !(one.ratedCurrent > one.noLoadCurrent)
          ? ["ratedCurrent", `${one.ratedCurrent} A`, "more than the current without load"]
          : null,
    ),
    placements: z._default(parts<CataloguePlacement>(placementFields, 0), []),
    springs: z._default(parts<CatalogueSpring>(springFields, 0), []),
    cells: parts<CatalogueCell>(cellFields, 1),
    converters: z._default(
      parts<CatalogueConverter>(converterFields, 0, ({ minInputVoltage, maxInputVoltage, efficiency }) =>
        !(minInputVoltage < maxInputVoltage)
          ? ["maxInputVoltage", `${maxInputVoltage} V`, "more than the minimum input voltage"]
          : efficiency.some((point, i) => i > 0 && !(point.outputCurrent > (efficiency[i - 1]?.outputCurrent ?? 0)))
            ? ["efficiency", "loads out of order", "loads that rise from point to point"]
            : null,
      ),
      [],
    ),
    wires: parts<CatalogueWire>(wireFields, 1, ({ awg, area }) =>
      (awg === null) === (area === null)
        ? ["area", awg === null ? "neither awg nor area" : "both awg and area", "one of awg and area"]
        : null,
    ),
  })

let made: ReturnType<typeof makeSchema> | undefined
/** The catalogue's schema, made when first wanted: most programs that load the rig never read a catalogue. */
function schema(): ReturnType<typeof makeSchema> {
  made ??= makeSchema()
  return made
}

/** The value at a path of what was given. */
function at(value: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (inner, key) => (typeof inner === "object" && inner !== null ? (inner as Record<PropertyKey, unknown>)[key] : undefined),
    value,
  )
}

/** Names an object of the catalogue may have. */
function knownAt(path: readonly PropertyKey[]): readonly string[] {
  const lists: Readonly<Record<string, AnyFields>> = {
    actuators: actuatorFields as unknown as AnyFields,
    placements: placementFields as unknown as AnyFields,
    springs: springFields as unknown as AnyFields,
    cells: cellFields as unknown as AnyFields,
    converters: converterFields as unknown as AnyFields,
    wires: wireFields as unknown as AnyFields,
  }
  const [list, , ...rest] = path
  if (list === undefined) return Object.keys(schema().shape)
  let fields = lists[String(list)] ?? {}
  for (const key of rest) {
    if (typeof key === "number") continue
    const field = fields[String(key)]
    const inner = field?.kind === "list" ? field.of : field
    fields = inner?.kind === "group" ? inner.fields : {}
  }
  return Object.keys(fields)
}

/** A zod issue as one or more of ours. */
function translate(found: z.core.$ZodIssue, given: unknown): Issue[] {
  const path = found.path.map((key) => (typeof key === "number" ? key : String(key)))
  const value = at(given, found.path)
  const received = shown(value)
  const one = (code: Issue["code"], expected: string, got = received) => [issue(code, path, got, expected)]
  switch (found.code) {
    case "custom": {
      const { fault } = found.params as unknown as Carried
      return one(fault.code, fault.expected, fault.received)
    }
    case "unrecognized_keys":
      return found.keys.map((key) => unknownKey([...path, key], key, knownAt(found.path)))
    case "too_small":
      return one("too-few", `at least ${found.minimum} entries`, `${(value as unknown[]).length} entries`)
    case "too_big":
      return one("too-many", `at most ${found.maximum} entries`, `${(value as unknown[]).length} entries`)
    case "invalid_value":
      return one(value === undefined ? "missing" : "not-a-choice", `one of ${found.values.join(", ")}`)
    default: {
      const words: Readonly<Record<string, string>> = { object: "an object with named fields", array: "a list", string: "text" }
      const expected = (found.code === "invalid_type" && words[found.expected]) || "a value of the catalogue's form"
      return one(value === undefined ? "missing" : "wrong-type", expected)
    }
  }
}

/** Faults of a catalogue, or the catalogue in SI. */
export function parseCatalogue(given: unknown): { readonly si: SiOf<Catalogue> } | { readonly issues: readonly Issue[] } {
  const parsed = schema().safeParse(given)
  return parsed.success
    ? { si: parsed.data as unknown as SiOf<Catalogue> }
    : { issues: parsed.error.issues.flatMap((found) => translate(found, given)) }
}

/**
 * Reads a parts catalogue: every quantity a plain SI number, every default filled.
 *
 * @param catalogue - the catalogue's JSON
 * @throws InputError naming every fault with its path
 * @example
 * ```ts
 * import { readCatalogue } from 'alula/advice'
 * const parts = readCatalogue({
 *   version: 1,
 *   name: 'shelf in the van (invented)',
 *   actuators: [{
 *     name: 'short and slow', mass: '0.4 kg', price: 30, retractedLength: '155 mm', stroke: '100 mm', ratedVoltage: '12 V',
 *     noLoadSpeed: '11.6 mm/s', noLoadCurrent: '0.35 A', ratedForce: '75 N', ratedSpeed: '9.5 mm/s', ratedCurrent: '0.8 A',
 *   }],
 *   cells: [{ name: 'plain', chemistry: 'nmc', capacity: '2.6 Ah', resistance: '60 mohm', mass: '48 g', price: 4 }],
 *   wires: [{ name: 'thin', awg: 20, linearDensity: '8 g/m', pricePerMetre: 0.5 }],
 * })
 * parts.cells[0].capacity // => 9360
 * parts.actuators[0].holdingForce // => 0
 * ```
 */
export function readCatalogue(catalogue: unknown): SiOf<Catalogue> {
  const read = parseCatalogue(catalogue)
  if ("si" in read) return read.si
  throw new InputError("readCatalogue", read.issues)
}
