import { type Caution, caution, commonPractice, type SiOf } from "../../../solver/index.js"
import { notClearance } from "../../not-clearance.js"
import { crushGapSource, entrapmentSource, machinerySource, mechanics } from "../../sources-around.js"
import type { PinchGap, PinchGapCaution, PinchGapInput } from "./types.js"

/** Agreement of found and proven gap from which the answer is called coarse, m. */
const COARSE = 1e-4

/** Hazards and limits of a gap. */
export function pinchCautions(_: SiOf<PinchGapInput>, out: PinchGap): Caution<PinchGapCaution>[] {
  const found: Caution<PinchGapCaution>[] = [
    notClearance(
      "gaps between rigid bars that close, drawn in one plane",
      "shearing between bars that pass each other, drawing in of hair, fingers and cloth, bending and play of the parts, or a gap seen from another side",
      crushGapSource,
    ),
    caution(
      "adults-only",
      "warning",
      "The gaps are drawn from adults at work. A child's fingers, arms and head get into narrower ones, and a head that goes in may not come out: where children are about, keep moving parts out of their reach altogether.",
      entrapmentSource,
    ),
  ]
  if (out.crushes)
    found.push(
      caution(
        "crush",
        "warning",
        "The motion closes to {provenMinGap length mm}, less than the published minimum gap for: {partNames}. Keep people out of it, widen it, cover it, or limit the force; a quick release is needed.",
        crushGapSource,
        {
          provenMinGap: out.provenMinGap,
          partNames: out.parts
            .filter((p) => p.crushes)
            .map((p) => p.part.replaceAll("-", " "))
            .join(", "),
        },
      ),
    )
  else if (out.parts.some((p) => p.shortBy > 0))
    found.push(
      caution(
        "narrow-gap",
        "caution",
        "The gap is as narrow as {provenMinGap length mm} but does not open for a part of the body and close on it as drawn. Something can still be trapped or drawn in there, and play or another motion may make it close.",
        commonPractice,
        { provenMinGap: out.provenMinGap },
      ),
    )
  if (out.minGap <= 0)
    found.push(
      caution(
        "overlap",
        "warning",
        "The parts meet or pass each other: either they collide, or they shear past each other in two planes, which cuts worse than it crushes.",
        machinerySource,
      ),
    )
  if (out.errorEstimate > COARSE)
    found.push(
      caution(
        "coarse-proof",
        "note",
        "The smallest gap is proven only to {errorEstimate length mm}; the findings use the proven, smaller gap.",
        mechanics,
        { errorEstimate: out.errorEstimate },
      ),
    )
  return found
}
