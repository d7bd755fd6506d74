// Where the slider of a slider-crank stands, how fast the crank moves it, and where it turns back.

/** Crank, rod and slide line of a slider-crank, and the side its slider is on (1 `open`, −1 `crossed`). */
export interface SliderCrankGeometry {
  readonly crank: number
  readonly coupler: number
  readonly offset: number
  readonly side: 1 | -1
}
const riseAt = (g: SliderCrankGeometry, angle: number) => g.crank * Math.sin(angle) - g.offset
/** Slider past the crank pin; no number where the rod does not reach. */
export const sliderRunAt = (g: SliderCrankGeometry, angle: number) => {
  const rise = riseAt(g, angle)
  return g.side * Math.sqrt((g.coupler - rise) * (g.coupler + rise))
}

/** Place of the slider along its line at a crank angle (rad), m. */
export const sliderPositionAt = (g: SliderCrankGeometry, angle: number): number => g.crank * Math.cos(angle) + sliderRunAt(g, angle)

/** Slider travel for a crank angle, m/rad: the slope of its place, infinite where the rod stands square to the slide. */
export const sliderLeverAt = (g: SliderCrankGeometry, angle: number): number =>
  -g.crank * Math.sin(angle) - (g.crank * Math.cos(angle) * riseAt(g, angle)) / sliderRunAt(g, angle)

/** Crank angles (rad, within half a turn) that its slider cannot pass: where it turns back, and where the rod stands square to the slide. */
export function sliderLimits(g: SliderCrankGeometry): number[] {
  const { crank: a, coupler: b, offset: c, side } = g
  const found: number[] = []
  // crank and rod in line, stretched or folded: the slider is their sum or difference away from the crank pivot
  for (const [reach, along] of [
    [a + b, 1],
    [Math.abs(b - a), b > a ? -1 : 1],
  ] as const) {
    if (!(reach > Math.abs(c))) continue
    for (const x of [1, -1].map((sign) => sign * Math.sqrt((reach - c) * (reach + c)))) {
      const angle = Math.atan2(along * c, along * x)
      if (Math.sign(x - a * Math.cos(angle)) === side) found.push(angle)
    }
  }
  for (const height of [(c + b) / a, (c - b) / a]) if (Math.abs(height) <= 1) found.push(Math.asin(height), Math.PI - Math.asin(height))
  return found
}
