// Where the slider of a slider-crank stands, how fast the crank moves it, and where it turns back.

/** Crank, rod and slide line of a slider-crank, and the side its slider is on (1 `open`, −1 `crossed`). */
export interface SliderCrankGeometry {
  readonly crank: number
  readonly coupler: number
  readonly offset: number
  readonly side: 1 | -1
}

/** Share of its size by which rounding may leave the square of a run below nothing. */
const ROUNDING = 1e-12

const riseAt = (g: SliderCrankGeometry, angle: number) => g.crank * Math.sin(angle) - g.offset

/** Slider past the crank pin; no number where the rod does not reach. */
function runAt(g: SliderCrankGeometry, angle: number): number {
  const rise = riseAt(g, angle)
  const square = (g.coupler - rise) * (g.coupler + rise)
  const isHair = square < 0 && square > -ROUNDING * g.coupler * (g.crank + Math.abs(g.offset))
  return g.side * Math.sqrt(isHair ? 0 : square)
}

/** Angle of the rod; measured so that it runs on smoothly through half a turn. */
function couplerAngleAt(g: SliderCrankGeometry, angle: number, run: number): number {
  const lean = Math.atan2(riseAt(g, angle), Math.abs(run))
  return g.side > 0 ? Math.PI - lean : lean
}

/**
 * Where rod and slider are at a crank angle (rad) that the rod reaches, how far they go for a turn of the crank, and the slopes of
 * that: beyond measure where the rod stands square to the slide.
 */
export function sliderAt(g: SliderCrankGeometry, angle: number) {
  const [c2, s2] = [g.crank * Math.cos(angle), g.crank * Math.sin(angle)]
  const run = runAt(g, angle)
  const couplerAngle = couplerAngleAt(g, angle, run)
  const cosine = g.coupler * Math.cos(couplerAngle)
  const sine = g.coupler * Math.sin(couplerAngle)
  const couplerRate = c2 / cosine
  const couplerBend = (sine * couplerRate ** 2 - s2) / cosine
  return {
    couplerAngle,
    position: c2 + run,
    run,
    couplerRate,
    couplerBend,
    lever: -s2 + c2 * Math.tan(couplerAngle),
    leverSlope: couplerBend * sine + couplerRate ** 2 * cosine - c2,
  }
}

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
