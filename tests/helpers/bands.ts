import { endsOf } from "../../scripts/facts/tail.js"
import type { AnyOutField, AnyOutFields, OutQuantity } from "../../src/solver/index.js"

type Values = Readonly<Record<string, unknown>>

/** A number of a result, or null where it has none, with what describes it. */
interface Scalar {
  /** Its name, or `name.low` and `name.high` for the ends of a band. */
  readonly key: string
  readonly field: OutQuantity
  readonly value: unknown
}

/** The outermost numbers of a result and both ends of its outermost bands. */
export function scalarsOf(fields: AnyOutFields, out: Values): Scalar[] {
  return Object.entries(fields).flatMap(([key, field]): Scalar[] => {
    const ends = endsOf(field)
    if (!ends) return [{ key, field: field as OutQuantity, value: out[key] }]
    const band = out[key] as Values | null
    return ends.map((end, i) => {
      const side = i === 0 ? "low" : "high"
      return { key: `${key}.${side}`, field: end, value: band?.[side] }
    })
  })
}

/** Bands of a result whose low end lies above the high one, wherever they stand in it, by their paths. */
export function crossedBands(fields: AnyOutFields, out: Values, path = ""): string[] {
  const within = (field: AnyOutField, value: unknown, at: string): string[] => {
    if (value === null || value === undefined) return []
    if (field.kind === "list") return (value as readonly unknown[]).flatMap((one, i) => within(field.of, one, `${at}.${i}`))
    if (field.kind !== "group") return []
    const { low, high } = value as { readonly low: number; readonly high: number }
    if (endsOf(field) && !(low <= high + 1e-12 * Math.abs(high))) return [`${at}: from ${low} to ${high}`]
    return crossedBands(field.fields, value as Values, `${at}.`)
  }
  return Object.entries(fields).flatMap(([key, field]) => within(field, out[key], `${path}${key}`))
}
