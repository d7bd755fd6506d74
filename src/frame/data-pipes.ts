/** Nominal sizes of Schedule 40 pipe, inches: `1-1/4` is one and a quarter. */
export type PipeSize = "1/8" | "3/8" | "1/2" | "3/4" | "1" | "1-1/4" | "1-1/2" | "2" | "2-1/2" | "3" | "4"

/** One size of Schedule 40 pipe: the wall printed is the minimum one allowed. */
export interface Pipe {
  readonly label: string
  /** Mean outside diameter, m. */
  readonly outsideDiameter: number
  /** Permitted deviation of the mean outside diameter either way, m; PVC pipe only. */
  readonly diameterTolerance: number | null
  /** Minimum wall, m. */
  readonly wall: number
  /** Permitted excess of the wall, m; PVC pipe only. */
  readonly wallTolerance: number | null
}

const inch = 0.0254
const pipe = (label: string, od: number, wall: number, odTolerance: number | null, wallTolerance: number | null): Pipe => ({
  label: `Schedule 40, nominal ${label} in`,
  outsideDiameter: od * inch,
  diameterTolerance: odTolerance === null ? null : odTolerance * inch,
  wall: wall * inch,
  wallTolerance: wallTolerance === null ? null : wallTolerance * inch,
})

/**
 * Schedule 40 pipe: outside diameters and walls of ASME B36.10M, which ASTM D1785 takes over as minimum walls; tolerances of
 * PVC pipe from ASTM D1785. Tolerances of 3/4, 1 and 1-1/2 in agree with a maker's chart, the others are not verified.
 */
export const pipes: Readonly<Record<PipeSize, Pipe>> = {
  "1/8": pipe("1/8", 0.405, 0.068, null, null),
  "3/8": pipe("3/8", 0.675, 0.091, null, null),
  "1/2": pipe("1/2", 0.84, 0.109, 0.004, 0.02),
  "3/4": pipe("3/4", 1.05, 0.113, 0.004, 0.02),
  "1": pipe("1", 1.315, 0.133, 0.005, 0.02),
  "1-1/4": pipe("1-1/4", 1.66, 0.14, 0.005, 0.02),
  "1-1/2": pipe("1-1/2", 1.9, 0.145, 0.006, 0.02),
  "2": pipe("2", 2.375, 0.154, 0.006, 0.02),
  "2-1/2": pipe("2-1/2", 2.875, 0.203, 0.007, 0.024),
  "3": pipe("3", 3.5, 0.216, 0.008, 0.026),
  "4": pipe("4", 4.5, 0.237, 0.009, 0.028),
}

/** Wall that weights correspond to: the minimum wall plus half its tolerance, m. */
export function meanWall(size: PipeSize): number {
  const { wall, wallTolerance } = pipes[size]
  return wall + (wallTolerance ?? 0) / 2
}
