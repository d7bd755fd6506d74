// Published figures of small wire cables.

/** How a wire cable is laid: strands by wires a strand, and the steel. */
export type CableConstruction =
  | "1x7-galvanised"
  | "1x19-galvanised"
  | "7x7-galvanised"
  | "7x19-galvanised"
  | "1x19-stainless"
  | "7x7-stainless"
  | "7x19-stainless"

/** Elastic stretch by construction: per cent, for pounds-force over square inches of the diameter (CABLE_STRETCH). */
export const cableConstructions: Readonly<Record<CableConstruction, { readonly label: string; readonly stretchFactor: number }>> = {
  "1x7-galvanised": { label: "1×7, galvanised steel", stretchFactor: 6.61e-6 },
  "1x19-galvanised": { label: "1×19, galvanised steel", stretchFactor: 6.98e-6 },
  "7x7-galvanised": { label: "7×7, galvanised steel", stretchFactor: 1.07e-5 },
  "7x19-galvanised": { label: "7×19, galvanised steel", stretchFactor: 1.4e-5 },
  "1x19-stainless": { label: "1×19, stainless steel", stretchFactor: 7.79e-6 },
  "7x7-stainless": { label: "7×7, stainless steel", stretchFactor: 1.2e-5 },
  "7x19-stainless": { label: "7×19, stainless steel", stretchFactor: 1.62e-5 },
}

/** Ratio at which the published bending life ends, at a ninth of that at 30 (SHEAVE_FATIGUE). */
export const LIFE_ENDS = 12
