// One quantity between two ends: its type in a result, and its description.
import type { Kind } from "../quantity/index.js"
import type { OutQuantity } from "./fields.js"

/**
 * One quantity between two ends, as far as figures of a material, a datasheet or a travel leave it open: `low` is never
 * above `high`.
 *
 * @typeParam End - a number in SI, or what stands at each end
 */
export interface Band<End = number> {
  /** At its low end. */
  readonly low: End
  /** At its high end. */
  readonly high: End
}

/** A band whose ends are both known, or null. */
export const bandOf = (low: number | null, high: number | null): Band | null => (low === null || high === null ? null : { low, high })

/** The band that spans these values. */
export const bandAcross = (values: readonly number[]): Band => ({ low: Math.min(...values), high: Math.max(...values) })

/** What {@link bandField} may be told beside a band's kind and label. */
export interface BandWords {
  /** Symbols of low and high end in the formulae. */
  readonly symbols?: readonly [low: string, high: string]
  /** Labels of the ends, where they say more than minimum and maximum. */
  readonly labels?: readonly [low: string, high: string]
  readonly unit?: string
}

/** The description of a {@link Band} of numbers. */
export interface BandField {
  readonly kind: "group"
  readonly label: string
  readonly fields: { readonly low: OutQuantity; readonly high: OutQuantity }
}

/** Describes a {@link Band} of numbers. */
export function bandField(kind: Kind | "number", label: string, { symbols, labels, unit }: BandWords = {}): BandField {
  const end = (i: 0 | 1): OutQuantity => ({
    kind,
    label: labels ? labels[i] : `${label}, ${i === 0 ? "minimum" : "maximum"}`,
    ...(symbols && { symbol: symbols[i] }),
    ...(unit !== undefined && { unit }),
  })
  return { kind: "group", label, fields: { low: end(0), high: end(1) } }
}
