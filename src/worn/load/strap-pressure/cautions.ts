import { type Caution, caution, commonPractice, type SiOf } from "../../../solver/index.js"
import { takeItOff, throat } from "../../care.js"
import { GOLRIZ, HOLEWIJN, LAFIANDRA, MACIAS, WETTENSCHWILER } from "../../sources-load.js"
import { childStraps, mmHg, occlusionPressure, strapPressureLimit, testedBeltTensions, testedWidths } from "../data-straps.js"
import type { StrapPressure, StrapPressureCaution, StrapPressureInput } from "./types.js"

/** What goes with an answer of strapPressure. */
export function strapPressureCautions(si: SiOf<StrapPressureInput>, out: StrapPressure): Caution<StrapPressureCaution>[] {
  const found: Caution<StrapPressureCaution>[] = [takeItOff, throat]
  if (out.utilisation > 1)
    found.push(
      caution(
        "over-limit",
        "warning",
        "Up to {maxPressure pressure kPa} under a strap, over the limit of {pressureLimit pressure kPa}: widen the straps to {suggestedWidth length mm}, shift load to the belt, bring the rig closer to the back or make it lighter.",
        commonPractice,
        { maxPressure: out.maxPressure, pressureLimit: out.pressureLimit, suggestedWidth: out.suggestedWidth },
      ),
    )
  if (out.beltUtilisation > 1)
    found.push(
      caution(
        "belt-over-limit",
        "warning",
        "The belt presses with {beltPressure pressure kPa}, over the limit of {pressureLimit pressure kPa}: widen the belt, slacken it or pad it.",
        commonPractice,
        { beltPressure: out.beltPressure, pressureLimit: out.pressureLimit },
      ),
    )
  if (si.pressureLimit > strapPressureLimit)
    found.push(
      caution(
        "limit-raised",
        "warning",
        "The limit given, {given.pressureLimit pressure kPa}, is above the {pressureLimit pressure kPa} in use for hours of wear: the lower one is kept to.",
        commonPractice,
        { "given.pressureLimit": si.pressureLimit, pressureLimit: out.pressureLimit },
      ),
    )
  found.push(
    caution(
      "limit-not-settled",
      "note",
      "The limit is an unsettled figure for adults; none is known for children. Skin blood flow stops near {occlusion pressure kPa}, children of 12 to 14 had {child pressure kPa} under a strap at 10 % of body mass. Padding and short pauses count for more than the number.",
      MACIAS,
      { occlusion: occlusionPressure, child: childStraps.right[0] * mmHg },
    ),
    caution(
      "skin-irritation",
      "note",
      "Adults' straps went past the threshold of skin irritation threefold with 10 kg on the shoulders: numbness or tingling in the arms means take it off.",
      HOLEWIJN,
    ),
    caution(
      "belt-share-not-settled",
      "note",
      "The share a hip belt takes is measured at about 30 % for one framed pack and claimed at up to 80 %: it depends on frame, hips and fit. Try it with a spring balance.",
      LAFIANDRA,
    ),
  )
  if (out.beltSlips)
    found.push(
      caution(
        "belt-slips",
        "warning",
        "The belt's tension does not hold its share by friction: it slides down and the shoulders take the rest. Tighten it, widen it or rest it on the hip bones (no credit is taken for their shape).",
      ),
    )
  if (out.upperPush <= 0)
    found.push(
      caution(
        "hangs-back",
        "caution",
        "The upper edge pulls away from the back: the shoulder straps alone keep the rig from tipping, and are tighter for it. Bring the centre of mass closer or raise the upper anchors.",
      ),
    )
  if (out.suggestedWidth > testedWidths.best + 1e-9)
    found.push(
      caution(
        "wider-than-tested",
        "caution",
        "Straps wider than 80 mm have not been compared: they ride on the neck and the arm. Take load off the shoulders instead.",
        GOLRIZ,
      ),
    )
  if (si.beltTension < testedBeltTensions.low || si.beltTension > testedBeltTensions.high)
    found.push(
      caution("belt-tension-untried", "note", "Belt tensions of 30 to 120 N were studied; others are an extrapolation.", WETTENSCHWILER),
    )
  return found
}
