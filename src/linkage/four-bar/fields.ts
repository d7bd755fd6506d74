import type { Length } from "../../quantity/index.js"
import type { Fields } from "../../solver/index.js"

/** The four links of a four-bar linkage. */
export interface FourBarLinks {
  /** Distance between the two fixed pivots. [d; 0.01 mm to 100 m] */
  ground: Length
  /** Driven link, pin to pin. [a; 0.01 mm to 100 m] */
  input: Length
  /** Floating link, pin to pin. [b; 0.01 mm to 100 m] */
  coupler: Length
  /** Output link, pin to pin. [c; 0.01 mm to 100 m] */
  output: Length
}

/** Descriptions of the four links. */
export const linkFields: Fields<FourBarLinks> = {
  ground: {
    kind: "length",
    symbol: "d",
    label: "ground, between the fixed pivots",
    min: "0.01 mm",
    max: "100 m",
    typical: ["30 mm", "120 mm"],
  },
  input: { kind: "length", symbol: "a", label: "input link", min: "0.01 mm", max: "100 m", typical: ["20 mm", "100 mm"] },
  coupler: { kind: "length", symbol: "b", label: "coupler", min: "0.01 mm", max: "100 m", typical: ["30 mm", "120 mm"] },
  output: { kind: "length", symbol: "c", label: "output link", min: "0.01 mm", max: "100 m", typical: ["30 mm", "120 mm"] },
}
