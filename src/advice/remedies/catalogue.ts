// Parts at hand: drives, converters, springs and wire, each with what it costs and weighs.
import type { Mass } from "../../quantity/index.js"
import type { RigDrive, SupplyConverter, Typed } from "../../rig/index.js"
import { type Members, rigFields } from "../../rig/whole/fields.js"
import { type AnyField, type AnyFields, type AnyGroup, InputError } from "../../solver/index.js"
import { readInput } from "../../solver/read.js"
import { expand, namesAlong, valueAt } from "./paths.js"
import type { Ladder, Row, Rung, Setting } from "./rows.js"

/** What every part of a catalogue has. */
export interface RemedyPart {
  /** Name, as it is told. */
  name: string
  /** Price of one. */
  price?: number
  /** Mass of one. */
  mass?: Mass
  /** Name of the part carried that it takes the place of, whose mass and price then change too. */
  replaces?: string | null
}

/** A drive at hand. */
export interface RemedyDrive<D extends Typed = RigDrive> extends RemedyPart {
  drive: D
}

/** A converter at hand. */
export interface RemedyConverter extends RemedyPart {
  converter: SupplyConverter
}

/** Price of wire, by its gauge. */
export interface RemedyWire {
  awg: number
  /** Price of one metre of one conductor. */
  pricePerMetre: number
}

/** Parts at hand. */
export interface RemedyCatalogue<D extends Typed = RigDrive> {
  drives?: readonly RemedyDrive<D>[]
  converters?: readonly RemedyConverter[]
  wires?: readonly RemedyWire[]
}

interface PartSi {
  readonly name: string
  readonly price: number
  readonly mass: number | null
  readonly replaces: string | null
}
interface CatalogueSi {
  readonly drives: readonly (PartSi & { readonly drive: Typed })[]
  readonly converters: readonly (PartSi & { readonly converter: object })[]
  readonly wires: readonly { readonly awg: number; readonly pricePerMetre: number }[]
}

const partFields: AnyFields = {
  name: { kind: "text", label: "name", min: 1, max: 100 },
  price: { kind: "number", symbol: "c", label: "price of one", min: 0, max: 1e6, default: 0 },
  mass: { kind: "mass", symbol: "m", label: "mass of one", min: 0, max: 60, default: null },
  replaces: { kind: "text", label: "part that it takes the place of", min: 1, max: 100, default: null },
}

const list = (label: string, fields: AnyFields): AnyField => ({
  kind: "list",
  label,
  min: 0,
  max: 200,
  default: [],
  of: { kind: "group", label, fields },
})

/** Descriptions of a catalogue, put together from those of the document. */
function fieldsOf(members: Members): AnyFields {
  const document = rigFields(members)
  const inList = (field: AnyField | undefined) => (field as { readonly of: AnyGroup }).of.fields
  const motion = inList(document.motions)
  const bus = inList((document.power as unknown as AnyGroup).fields.buses)
  const { default: _, ...converter } = bus.converter as AnyField & { default?: unknown }
  return {
    drives: list("drive at hand", { ...partFields, drive: motion.drive as AnyField }),
    converters: list("converter at hand", { ...partFields, converter: converter as AnyField }),
    wires: list("wire at hand", {
      awg: { kind: "number", symbol: "g", label: "wire gauge (AWG)", whole: true, min: -3, max: 40 },
      pricePerMetre: { kind: "number", symbol: "c_m", label: "price of a metre", min: 0, max: 1e6 },
    }),
  }
}

/** Reads a catalogue; every fault of it at once. */
export function readRemedyCatalogue(catalogue: unknown, members: Members): CatalogueSi {
  const read = readInput(fieldsOf(members), catalogue)
  if (!read.ok)
    throw new InputError(
      "remedies",
      read.issues.map((one) => ({ ...one, path: ["catalogue", ...one.path] })),
    )
  return read.si as CatalogueSi
}

/** Settings that put a part into the list of those carried, and what that costs more. */
function carried(si: unknown, part: PartSi): { readonly settings: readonly Setting[]; readonly price: number } {
  const parts = (valueAt(si, "parts") ?? []) as readonly { readonly name: string; readonly price: number; readonly count: number }[]
  const at = parts.findIndex(({ name }) => name === part.replaces)
  const old = parts[at]
  if (!old) return { settings: [], price: part.price }
  return {
    settings: [
      { path: `parts[${at}].price`, value: part.price },
      ...(part.mass === null ? [] : [{ path: `parts[${at}].mass`, value: part.mass }]),
    ],
    price: old.count * (part.price - old.price),
  }
}

/** Rows of the parts at hand. */
export function catalogueRows({ drives, converters }: CatalogueSi): readonly Row[] {
  const swap = <P extends PartSi>(
    name: string,
    at: string,
    of: string,
    parts: readonly P[],
    value: (part: P, old: object) => object | null,
  ): Row => ({
    name,
    paths: [at],
    ladders: ({ si }) =>
      expand(si, at).flatMap((path): Ladder[] => {
        const old = valueAt(si, path)
        if (typeof old !== "object" || old === null) return []
        const rungs = [...parts]
          .sort((a, b) => a.price - b.price)
          .flatMap((part): Rung[] => {
            const it = value(part, old)
            if (!it) return []
            const { settings, price } = carried(si, part)
            return [{ settings: [{ path, value: it }, ...settings], was: "the present one", becomes: part.name, price }]
          })
        const [owner = "it"] = namesAlong(si, path)
        return rungs.length ? [{ name, of: `${of} ${owner}`, work: "new part", peaked: true, rungs }] : []
      }),
  })
  return [
    swap("drive", "motions[].drive", "as the drive of", drives, ({ drive }, old) =>
      // what a drive is a drive for stays: as many of them as before
      drive.type === (old as Typed).type ? { ...drive, count: (old as { readonly count: number }).count } : null,
    ),
    swap("converter", "power.buses[].converter", "as the converter of", converters, ({ converter }) => converter),
  ]
}

/** Ladders with the prices of wire. */
export function priced(ladders: readonly Ladder[], si: unknown, { wires }: CatalogueSi): readonly Ladder[] {
  const perMetre = (awg: unknown) => wires.find((one) => one.awg === awg)?.pricePerMetre ?? null
  return ladders.map((ladder) => {
    if (ladder.name !== "wire-gauge") return ladder
    const rungs = ladder.rungs.map((rung) => {
      const [setting] = rung.settings
      const length = setting && valueAt(si, setting.path.replace(/awg$/, "length"))
      const metre = setting && perMetre(setting.value)
      // out and back; the old wire is not taken back
      return typeof length === "number" && typeof metre === "number" ? { ...rung, price: 2 * length * metre } : rung
    })
    return { ...ladder, rungs }
  })
}
