// The form of a datasheet row.
import type { Source } from "../solver/index.js"

/** Figures of one published sheet or table, in SI: Pa, kg/m³, °C, J/m for impact, fractions for per cent. */
export interface Datasheet {
  readonly label: string
  readonly source: Source
  readonly figures: Readonly<Record<string, number>>
}
