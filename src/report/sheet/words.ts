// Words and figures of the sheet, for page and Markdown alike.
import { formatNumber, formatQuantity } from "../../quantity/index.js"
import type { SheetBend, SheetContent, SheetReading } from "./content.js"

// a number and its unit stay on one line
/** A length that is cut or drilled: whole millimetres, tenths below 100 mm. */
export const cut = (metres: number): string => `${(metres * 1000).toFixed(metres < 0.1 ? 1 : 0)}\u00a0mm`
/** The same to a tenth, where two holes have to meet. */
export const drilled = (metres: number): string => `${(metres * 1000).toFixed(1)}\u00a0mm`

/** What a meter should show. */
export const shown = ({ quantity, value }: SheetReading): string =>
  value === null ? "none: what stops it has to be mended first" : formatQuantity(quantity, value)

export const price = (value: number | null): string => (value === null ? "not stated" : formatNumber(value))
export const mass = (kg: number): string => formatQuantity("mass", kg)
export const amperes = (value: number): string => formatQuantity("current", value)

/** What to know of a bend, in a line. */
export const bendLine = ({ material, outsideDiameter, radius, angle, jigAngle, jigRadius, heatedLength, cutLength }: SheetBend): string =>
  [
    `${material}, ⌀ ${drilled(outsideDiameter)}`,
    `bend of ${formatQuantity("angle", angle)} at ${cut(radius)} to the middle of the tube`,
    `in the jig ${formatQuantity("angle", jigAngle)} at ${cut(jigRadius)}`,
    `heat ${cut(heatedLength)} of it`,
    cutLength === null ? "" : `cut ${cut(cutLength)}`,
  ]
    .filter(Boolean)
    .join("; ")

/** Sum of what has a price. */
export const total = ({ parts, price: sum }: SheetContent): string => {
  const without = parts.filter((p) => p.price === null).length
  return `${formatNumber(sum)}${without ? `, without ${without} that ${without === 1 ? "has" : "have"} no price` : ""}`
}

export const COLUMNS = {
  parts: ["part", "how many", "mass of one", "price of one"],
  needs: ["what", "how many", "must be", "for"],
  cuts: ["piece", "how many", "length", "of", "measured"],
  holes: ["hole", "name", "outward", "upward", "from hole 1", "pin"],
  wires: ["wire", "polarity", "from", "to", "size", "length"],
  readings: ["measure at", "should read", "found"],
} as const
