import type { Figure } from "./data.js"

/** Smallest field bends of plastic conduit by outer diameter, m. */
export interface ConduitBend {
  readonly size: string
  readonly diameter: number
  /** With a one-shot bender, to the centreline. */
  readonly oneShot: number
  /** Other bends. */
  readonly other: number
}

const INCH = 0.0254
const bend = (size: string, diameter: number, oneShot: number, other: number): ConduitBend => ({
  size,
  diameter: diameter * INCH,
  oneShot: oneShot * INCH,
  other: other * INCH,
})

/** NEC (NFPA 70), chapter 9, table 2, to which 352.24 refers PVC conduit; from secondary copies, the last sizes from memory. */
export const conduitBends: readonly ConduitBend[] = [
  bend("1/2", 0.84, 4, 4),
  bend("3/4", 1.05, 4.5, 5),
  bend("1", 1.315, 5.75, 6),
  bend("2", 2.375, 9.5, 12),
  bend("2-1/2", 2.875, 10.5, 15),
  bend("3", 3.5, 13, 18),
  bend("3-1/2", 4, 15, 21),
  bend("4", 4.5, 16, 24),
  bend("5", 5.563, 24, 30),
  bend("6", 6.625, 30, 36),
]

/** Hot-sand bending of small PVC pipe (Practical Sailor, Using heat to bend PVC pipe, quoted; common practice). */
export const sandBending: {
  readonly sand: number
  readonly pipe: number
  readonly leastRadius: number
  readonly soak: number
  readonly hold: number
} = {
  /** Temperature of the sand, °C (450 °F). */
  sand: (450 - 32) / 1.8,
  /** Temperature of the pipe, °C (200 °F). */
  pipe: (200 - 32) / 1.8,
  /** Least centreline radius in outer diameters. */
  leastRadius: 5,
  /** s. */
  soak: 120,
  /** s. */
  hold: 1800,
}

/** Largest bend of an empty pipe without support inside, rad (30°; pipe maker's guidance reproduced by U.S. Plastic Corp.). */
export const unsupportedBend: number = Math.PI / 6

/** Part of the angle that is lost when a bend is let go. */
export const springbacks: Readonly<Record<"heated" | "cold", Figure>> = {
  heated: {
    value: 0.03,
    low: 0,
    high: 0.05,
    source: "common practice, no source: almost none when held until set; try one bend and measure",
  },
  cold: {
    value: 0.5,
    low: 0.42,
    high: 0.58,
    source: "B. Bamford, Bending conduit/tubing using hand benders, Albany Technical College, 2012 (60° relaxes to 30°)",
  },
}
