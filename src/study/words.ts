// Numbers of a study in words: with the unit of their own kind, or plain.
import { formatQuantity, type Kind, readableUnit } from "../quantity/index.js"
import { fill } from "../solver/index.js"

type AnyKind = Kind | "number" | "flag"

/** How a difference of a kind is told: 1 °C more is no 274 K more. */
export const differenceOf = (kind: AnyKind): AnyKind => (kind === "temperature" ? "temperatureDifference" : kind)

/** A place of a template for a value of a kind. */
export const place = (name: string, kind: AnyKind, unit?: string): string =>
  kind === "number" || kind === "flag" ? `{${name}}` : unit ? `{${name} ${kind} ${unit}}` : `{${name} ${kind}}`

/** A value in words. */
export function told(kind: AnyKind, value: number): string {
  if (kind === "flag") return value ? "yes" : "no"
  return fill(place("value", kind), { value })
}

/** A label as it stands within a sentence: "Raise time" is "raise time", "LED voltage" stays. */
export const inSentence = (label: string): string => (/^[A-ZÄÖÜ][a-z]/.test(label) ? label.charAt(0).toLowerCase() + label.slice(1) : label)

/** A label as it opens a sentence. */
export const opening = (label: string): string => label.charAt(0).toUpperCase() + label.slice(1)

/** A handy step beside a value, a power of ten in the unit it is read in: 1 mm for 120 mm. */
export function handyStep(
  kind: AnyKind,
  value: number,
  factor: (kind: Kind, unit: string) => number,
): { readonly step: number; readonly unit: string | undefined } {
  const own = differenceOf(kind)
  if (own === "number" || own === "flag") return { step: 10 ** Math.floor(Math.log10(Math.abs(value) / 20 || 0.01)), unit: undefined }
  const unit = own === "ratio" ? "%" : readableUnit(own, value)
  const size = factor(own, unit)
  const step = 10 ** Math.floor(Math.log10(Math.abs(value) / size / 20 || 0.01)) * size
  return { step, unit: own === "ratio" ? "%" : readableUnit(own, step) }
}

/** A chance in per cent; beside never and always with the figures that tell it from them. */
export function chanceText(share: number): string {
  const isClose = (share > 0 && share < 0.01) || (share > 0.99 && share < 1)
  return formatQuantity("ratio", share, "%", isClose ? 3 : undefined)
}
