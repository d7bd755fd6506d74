// Hazards of the linkage found, and what the search does not look at.

import { type Caution, caution } from "../../solver/index.js"
import { LEAST_TRANSMISSION, pinchCaution, transmissionCaution } from "../hazards.js"
import { nortonSynthesis } from "../sources.js"
import type { FourBarSynthesis, FourBarSynthesisCaution, Si } from "./types.js"

export function synthesisCautions(_: Si, out: FourBarSynthesis): Caution<FourBarSynthesisCaution>[] {
  const { minTransmissionAngle } = out
  return [
    pinchCaution("The links of a four-bar"),
    ...(minTransmissionAngle < LEAST_TRANSMISSION ? [transmissionCaution("minTransmissionAngle", minTransmissionAngle)] : []),
    caution(
      "path-between-poses",
      "note",
      "Between the poses the coupler follows its own path, and links may cross the wearer or one another: sweep the linkage through planarLinkage and sweptEnvelope, and try it in cardboard, before cutting parts.",
      nortonSynthesis,
    ),
  ]
}
