import { at, type Caution, caution, commonPractice, optionsFrom, type Source } from "../solver/index.js"
import { FOOTFALL, GERE } from "./sources.js"

/** How a member is handled while it carries its load. */
export type HandlingCase = "still" | "walking" | "sudden" | "stumble"

/**
 * Largest vertical force while walking against the force standing still: 1 plus the four harmonics
 * at their worst together. Harmonic frequencies are multiples of the step rate (Hz); design values
 * of M. R. Willford and P. Young, CCIP-016, 2006, table 4.3; valid for 1 to 2.8 steps a second.
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
  readonly source: Source
}

/** Load factors of handling. */
export const handlingCases: Readonly<Record<HandlingCase, MotionData>> = {
  still: { label: "held still", factor: 1, source: { title: "loads as given", verified: "practice" } },
  walking: {
    label: "walking, up to 2.4 steps a second",
    factor: walkingFactor(2.4),
    source: at(FOOTFALL, "table 4.3, all four harmonics at their worst together"),
  },
  sudden: { label: "picked up or put on suddenly", factor: 2, source: at(GERE, "section 2.8") },
  stumble: { label: "stumble, kerb or rough handling", factor: 3, source: commonPractice },
}

/** Field description of how a member is handled. */
export const handlingField = {
  kind: "choice",
  label: "handling",
  options: /* @__PURE__ */ optionsFrom(handlingCases, (key) => handlingCases[key].label),
  default: "still",
} as const

/** Says what counting loads as held still leaves out. */
export function motionCautions(motion: HandlingCase): Caution<"standing-still">[] {
  return motion === "still"
    ? [
        caution(
          "standing-still",
          "note",
          "Loads count as held still; walking multiplies them by about {walking}, a stumble by {stumble} or so. Choose how it is handled.",
          handlingCases.walking.source,
          { walking: handlingCases.walking.factor, stumble: handlingCases.stumble.factor },
        ),
      ]
    : []
}
