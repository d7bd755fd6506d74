// What of a document belongs to the place and stays when the part in it is exchanged, and what a place counts.
import type { RigSi } from "../../rig/whole/faults.js"
import type { AnyField, Path } from "../../solver/index.js"
import { valueAt } from "../../study/place.js"

/** A path with every number of an entry left out: `motions[].drive`. */
export const patternOf = (keys: Path): string => keys.map((key, i) => (typeof key === "number" ? "[]" : i ? `.${key}` : key)).join("")

/** Fields that belong to a place: what is exchanged there takes all others with it, so that no part inherits another's figures. */
const stays: Readonly<Record<string, readonly string[]>> = {
  "motions[].drive": ["count"],
  "motions[].mechanisms[]": ["name", "count", "mirrored", "reversed", "mount", "transmission", "pinch"],
  "motions[].spar": ["length", "tipMass", "sagLimit", "stepRate", "duration", "handling", "materialTemperature"],
  "power.sources[]": ["name", "series", "parallel", "stateOfCharge", "temperature", "extraResistance"],
  "power.buses[].run": ["length", "contacts", "contactResistance", "temperature", "ambientTemperature", "dropLimit"],
}

/**
 * Fields that stay where a whole part is exchanged; null where a part only writes the fields that its family names: into a bus,
 * or into a mechanism that stays what it is.
 */
export function staysAt(keys: Path, field: AnyField, names: readonly string[]): readonly string[] | null {
  const pattern = patternOf(keys)
  if (pattern === "motions[].mechanisms[]" && !names.includes("type")) return null
  return stays[pattern] ?? ("default" in field && field.default === null ? [] : null)
}

/** Fields of the document that say how many parts a place takes. */
export function countedBy(keys: Path, per: "piece" | "metre"): readonly Path[] {
  if (per === "metre") return [[...keys, "length"]]
  const pattern = patternOf(keys)
  if (pattern === "motions[].drive") return [[...keys, "count"]]
  if (pattern === "power.sources[]")
    return [
      [...keys, "series"],
      [...keys, "parallel"],
    ]
  return []
}

/** How many pieces, or metres of one conductor, a place takes. */
export function countAt(rig: RigSi, keys: Path, per: "piece" | "metre"): number {
  const counted = countedBy(keys, per).map((path) => valueAt(rig, path))
  const product = counted.reduce<number>((n, value) => (typeof value === "number" ? n * value : n), 1)
  // out and back
  return per === "metre" ? 2 * product : product
}
