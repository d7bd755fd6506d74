import { type Caution, caution } from "../solver/index.js"

/** How a member is handled while it carries its load. */
export type Motion = "still" | "walking" | "sudden" | "stumble"

/**
 * Largest vertical force while walking against the force standing still: 1 plus the four harmonics
 * at their worst together. Harmonic frequencies are multiples of the step rate (Hz); design values
 * of M. R. Willford and P. Young, CCIP-016, 2006, table 4.3, from memory; valid for 1 to 2.8 steps
 * a second.
 */
export function walkingFactor(stepRate: number): number {
  const first = Math.min(0.56, 0.41 * (stepRate - 0.95))
  return 1 + first + (0.069 + 0.0056 * 2 * stepRate) + (0.033 + 0.0064 * 3 * stepRate) + (0.013 + 0.0065 * 4 * stepRate)
}

/**
 * Factor on a weight that falls onto a springy member: 1 + √(1 + 2·h/δ), with δ the deflection the
 * weight causes at rest (m) and h the height it falls (m); 2 for a load put on suddenly. (J. M. Gere,
 * B. J. Goodno, Mechanics of Materials, 7th ed., 2009, section 2.8.)
 */
export function dropFactor(dropHeight: number, staticDeflection: number): number {
  return 1 + Math.sqrt(1 + (2 * dropHeight) / staticDeflection)
}

/** A way of handling: the factor on every load and its source. */
export interface MotionData {
  readonly label: string
  readonly factor: number
  readonly source: string
}

/** Load factors of handling. */
export const motions: Readonly<Record<Motion, MotionData>> = {
  still: { label: "held still", factor: 1, source: "loads as given" },
  walking: {
    label: "walking, up to 2.4 steps a second",
    factor: walkingFactor(2.4),
    source: "CCIP-016, 2006, table 4.3, all four harmonics together, from memory",
  },
  sudden: { label: "picked up or put on suddenly", factor: 2, source: "Mechanics of Materials, Gere and Goodno, 2009, section 2.8" },
  stumble: { label: "stumble, kerb or rough handling", factor: 3, source: "common practice, no source" },
}

/** Says what counting loads as held still leaves out. */
export function motionCautions(motion: Motion): Caution[] {
  return motion === "still"
    ? [
        caution(
          "standing-still",
          "note",
          `Loads count as held still; walking multiplies them by about ${motions.walking.factor.toFixed(1)}, a stumble by ${motions.stumble.factor} or so.`,
          motions.walking.source,
        ),
      ]
    : []
}
