// Parts to choose from: each says what it is, what it weighs and costs, and what it writes into a rig's document.
import type { Mass } from "../quantity/index.js"
import { type AnyFields, type Fields, InputError, type Issue, issue, type SiOf } from "../solver/index.js"
import { shown } from "../solver/issue.js"
import { readInput } from "../solver/read.js"

/** One part on offer. */
export interface CataloguePart {
  /** What it may be exchanged for: parts of one family stand in one place. */
  family: string
  /** Name, unlike that of any other part of its family. */
  name: string
  /** Mass of one, or of one metre. */
  mass: Mass
  /** Price of one, or of one metre, in the catalogue's currency; `null` where none is known. */
  price?: number | null
  /** What mass and price are of: one piece, or one metre of one conductor. */
  per?: "piece" | "metre"
  /** What it writes at its place in the document: fields as the document has them. */
  writes: Readonly<Record<string, unknown>>
}

/** Parts to choose from: one JSON document. */
export interface Catalogue {
  /** Version of the catalogue's form: 2. */
  version: 2
  name: string
  note?: string
  /** What prices are in, as a reader should see it. */
  currency?: string
  parts: readonly CataloguePart[]
}

type Listed = Omit<CataloguePart, "writes">

const partFields: Fields<Listed> = {
  family: { kind: "text", label: "family", min: 1, max: 100 },
  name: { kind: "text", label: "name", min: 1, max: 100 },
  mass: { kind: "mass", symbol: "m", label: "mass of one", min: 0, max: 60 },
  price: { kind: "number", symbol: "c", label: "price of one", min: 0, max: 1e6, default: null },
  per: { kind: "choice", label: "what mass and price are of", options: { piece: "one piece", metre: "one metre" }, default: "piece" },
}

const fields = {
  version: { kind: "number", symbol: "n_cat", label: "version of the catalogue's form", whole: true, min: 2, max: 2 },
  name: { kind: "text", label: "name", min: 1, max: 100 },
  note: { kind: "text", label: "note", min: 0, max: 5000, default: "" },
  currency: { kind: "text", label: "currency", min: 0, max: 20, default: "" },
  parts: { kind: "list", label: "parts", min: 1, max: 3000, of: { kind: "group", label: "part", fields: partFields } },
} as unknown as AnyFields

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value)

/** Faults of a catalogue, or the catalogue with masses in kg; what parts write is read where a place for it is known. */
export function parseCatalogue(given: unknown): { readonly si: SiOf<Catalogue> } | { readonly issues: readonly Issue[] } {
  const rows: readonly unknown[] = isObject(given) && Array.isArray(given.parts) ? given.parts : []
  const bare = rows.map((row) => {
    if (!isObject(row)) return row
    const { writes: _, ...rest } = row
    return rest
  })
  const read = readInput(fields, isObject(given) && Array.isArray(given.parts) ? { ...given, parts: bare } : given)
  const issues: Issue[] = read.ok ? [] : [...read.issues]
  rows.forEach((row, i) => {
    if (!isObject(row)) return
    if (!isObject(row.writes))
      issues.push(
        issue(
          row.writes === undefined ? "missing" : "wrong-type",
          ["parts", i, "writes"],
          shown(row.writes),
          "fields that it writes into the document",
        ),
      )
    const first = rows.findIndex((other) => isObject(other) && other.family === row.family && other.name === row.name)
    if (typeof row.name === "string" && first < i)
      issues.push(issue("inconsistent", ["parts", i, "name"], `'${row.name}' again`, "a name of its own in its family"))
  })
  if (issues.length || !read.ok) return { issues }
  const si = read.si as SiOf<Omit<Catalogue, "parts">> & { readonly parts: readonly SiOf<Listed>[] }
  const parts = si.parts.map((part, i) => ({ ...part, writes: (rows[i] as CataloguePart).writes }))
  return { si: { ...si, parts } as unknown as SiOf<Catalogue> }
}

/**
 * Reads a parts catalogue: masses in kg, every default filled. What each part writes into a document is left as it is written,
 * and is read where a search has a place for it.
 *
 * @param catalogue - the catalogue's JSON
 * @throws InputError naming every fault with its path
 * @example
 * ```ts
 * import { readCatalogue } from 'alula/advice'
 * const shelf = readCatalogue({
 *   version: 2,
 *   name: 'shelf in the van (invented)',
 *   currency: 'moons',
 *   parts: [
 *     { family: 'fuse', name: 'five', mass: '2 g', price: 1, writes: { fuseRating: '5 A' } },
 *     { family: 'wire', name: 'thin', mass: '8 g', price: 0.5, per: 'metre', writes: { awg: 20 } },
 *   ],
 * })
 * shelf.parts[1].mass // => 0.008
 * shelf.parts[0].per // => 'piece'
 * ```
 */
export function readCatalogue(catalogue: unknown): SiOf<Catalogue> {
  const read = parseCatalogue(catalogue)
  if ("si" in read) return read.si
  throw new InputError("readCatalogue", read.issues)
}
