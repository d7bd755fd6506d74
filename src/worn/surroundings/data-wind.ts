import { interpolate } from "../../numeric/index.js"
import type { Band } from "../../solver/index.js"

/** Single drag coefficients, broadside, by source (Matthews 2002 fig. 5.13(b); Munson 2009 figs 9.19–9.20; a NASA teaching table, not verified). */
export const dragCoefficients = {
  squarePlate: 1.17,
  longPlate: 1.98,
  nasaPlate: 1.28,
  bowlOpen: 1.42,
  bowlConvex: 0.38,
  troughOpen: 2.3,
  troughConvex: 1.2,
  munsonBowlOpen: 1.42,
  munsonThinPlate2d: 1.9,
  munsonSquareRod2d: 2.2,
} as const

/** Cylinder across the wind, against diameter/length (Matthews 2002, fig. 5.13(b)). */
const poleDrag = [
  [0, 1.2],
  [1 / 40, 0.98],
  [1 / 10, 0.82],
  [1, 0.63],
] as const

/** Rectangular plate broadside, against short/long side (White 2011, table 7.3, not verified; 2.0 for the endless plate). */
const whitePlate = [
  [0, 2],
  [1 / 20, 1.5],
  [1 / 10, 1.3],
  [1 / 5, 1.2],
  [1, 1.18],
] as const

/** Drag coefficient of a rectangular plate broadside by White's table; `ratio` is long side over short side. */
export function whitePlateDrag(ratio: number): number {
  return interpolate(whitePlate, 1 / ratio)
}

/** Drag coefficient of a rectangular plate broadside by Çengel's formula, given for side ratios below 30. */
export function cengelPlateDrag(ratio: number): number {
  return 1.1 + 0.02 * (ratio + 1 / ratio)
}

/** Drag coefficient of a cylinder across the wind; `ratio` is length over diameter, 1 and more. */
export function poleDragCoefficient(ratio: number): number {
  return interpolate(poleDrag, Math.min(1, 1 / ratio))
}

/** Shapes of a panel in the wind. */
export type PanelShape = "flat" | "trough" | "bowl" | "pole"

/** Lowest and highest published drag coefficient of a shape with sides `long` and `short`; open shapes span both ways of facing. */
export function dragSpread(shape: PanelShape, long: number, short: number): Band {
  const ratio = Math.max(long, short) / Math.min(long, short)
  switch (shape) {
    case "trough":
      return { low: dragCoefficients.troughConvex, high: dragCoefficients.troughOpen }
    case "bowl":
      return { low: dragCoefficients.bowlConvex, high: dragCoefficients.bowlOpen }
    case "pole": {
      const one = poleDragCoefficient(ratio)
      return { low: one, high: one }
    }
    case "flat": {
      const white = whitePlateDrag(ratio)
      // from the end of the formula's range on only the table and the endless plate speak
      if (ratio >= 30) return { low: Math.min(white, dragCoefficients.longPlate), high: 2 }
      const all = [white, cengelPlateDrag(ratio), dragCoefficients.nasaPlate]
      return { low: Math.min(...all), high: Math.max(...all) }
    }
  }
}

/** Limits of mean wind speed of the Beaufort forces 0 to 12, m/s, each from `low` to `high` as printed. */
export const beaufortScale: readonly { readonly force: number; readonly low: number; readonly high: number | null }[] = [
  { force: 0, low: 0, high: 0.2 },
  { force: 1, low: 0.3, high: 1.5 },
  { force: 2, low: 1.6, high: 3.3 },
  { force: 3, low: 3.4, high: 5.4 },
  { force: 4, low: 5.5, high: 7.9 },
  { force: 5, low: 8, high: 10.7 },
  { force: 6, low: 10.8, high: 13.8 },
  { force: 7, low: 13.9, high: 17.1 },
  { force: 8, low: 17.2, high: 20.7 },
  { force: 9, low: 20.8, high: 24.4 },
  { force: 10, low: 24.5, high: 28.4 },
  { force: 11, low: 28.5, high: 32.6 },
  { force: 12, low: 32.7, high: null },
]

/**
 * Beaufort force of a mean wind speed (m/s); a speed between two printed bands counts as the stronger.
 *
 * @example
 * ```ts
 * import { beaufortForce } from 'alula/worn'
 * beaufortForce(5.4) // => 3
 * ```
 */
export function beaufortForce(wind: number): number {
  return beaufortScale.find(({ high }) => high === null || wind <= high)?.force ?? 12
}

/**
 * Mean wind speed that stands for a Beaufort force, m/s: 0.836·B^1.5 (WMO code 1100).
 *
 * @example
 * ```ts
 * import { beaufortSpeed } from 'alula/worn'
 * beaufortSpeed(6) // => 12.29
 * ```
 */
export function beaufortSpeed(force: number): number {
  return 0.836 * force ** 1.5
}

/** Largest 3 s gust over a ten-minute mean wind, over land (WMO/TD-No. 1555, table 1.1). */
export const gustOverLand = 1.66

/** Wind speeds felt by people on foot, m/s (Penwarden 1973; Lawson 1990; Murakami 1986; Melbourne 3 s gust). For people without a panel. */
export const pedestrianWind = {
  discomfort: 5,
  unpleasant: 10,
  dangerous: 20,
  lawson: { sitting: 4, standing: 6, walking: 8, businessWalking: 10 },
  /** Gust from which frail people lose their balance, and from which anybody may. */
  unbalancingGust: 15,
  melbourneGust: 20,
  /** Highest wind anybody was tested in (Hunt, Poulton and Mumford 1976). */
  tested: 12.5,
  melbourneExceedance: 0.001,
} as const
