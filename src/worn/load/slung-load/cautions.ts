import { type Caution, caution, commonPractice, type SiOf } from "../../../solver/index.js"
import { takeItOff } from "../../care.js"
import { CHILD_PACKS, ONE_HAND_BAG, SHOULDER_BAGS } from "../../sources-load.js"
import { lightWearer } from "../data-load.js"
import { slungShares, strapPressureLimit } from "../data-straps.js"
import type { SlungLoad, SlungLoadCaution, SlungLoadInput } from "./types.js"

/** What goes with an answer of slungLoad. */
export function slungLoadCautions(si: SiOf<SlungLoadInput>, out: SlungLoad): Caution<SlungLoadCaution>[] {
  const small = si.bodyMass < lightWearer
  const found: Caution<SlungLoadCaution>[] = [takeItOff]
  if (out.shareUtilisation > 1)
    found.push(
      caution(
        "over-limit",
        "warning",
        "One side carries {massShare ratio %} of body mass, over the {shareLimit ratio %} that counts here: at most {maxMass mass kg}. Hang the load from both shoulders and the hips, or make it lighter.",
        small ? SHOULDER_BAGS : ONE_HAND_BAG,
        { massShare: out.massShare, shareLimit: out.shareLimit, maxMass: out.maxMass },
      ),
    )
  else if (out.massShare > slungShares.complaints)
    found.push(
      caution(
        "complaints",
        "caution",
        "Women whose shoulders hurt carried bags of about 4 % of body mass on one shoulder; this is {massShare ratio %}. For more than a short walk use both shoulders.",
        SHOULDER_BAGS,
        { massShare: out.massShare },
      ),
    )
  if (small)
    found.push(
      caution(
        "small-wearer",
        "warning",
        "Below {light mass} (a line of common practice) a wearer counts as a child or a very light adult. No limit for one shoulder of a child was found: children's loads go on both shoulders, and the figure here is only the lower one of adults.",
        CHILD_PACKS,
        { light: lightWearer },
      ),
    )
  if (out.pressureUtilisation > 1)
    found.push(
      caution(
        "over-pressure",
        "warning",
        "Up to {pressure pressure kPa} under the strap, over the limit of {pressureLimit pressure kPa}: widen or pad it, or make the load lighter.",
        commonPractice,
        { pressure: out.pressure, pressureLimit: out.pressureLimit },
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
  if (!out.strapStays && si.strapAngle < si.shoulderSlope)
    found.push(
      caution(
        "slides-off",
        "caution",
        "The strap slides down the shoulder: it needs a friction of {requiredFriction} and has {given.shoulderFriction}. Lead it across the body, face it with rubber or hold it by a strap over the chest; a hunched shoulder that holds it tires.",
        undefined,
        { requiredFriction: out.requiredFriction, "given.shoulderFriction": si.shoulderFriction },
      ),
    )
  if (!out.strapStays && si.strapAngle > si.shoulderSlope)
    found.push(
      caution(
        "slides-to-neck",
        "warning",
        "The strap creeps up to the neck: it needs a friction of {requiredFriction} and has {given.shoulderFriction}. Lead it more steeply or fasten it to the garment, so that nothing presses on the side of the neck.",
        undefined,
        { requiredFriction: out.requiredFriction, "given.shoulderFriction": si.shoulderFriction },
      ),
    )
  if (out.maxFootShare > 0.55)
    found.push(
      caution(
        "lopsided",
        "caution",
        "Upright, one foot carries {maxFootShare ratio %} of the weight: the wearer bends to the other side to stand evenly. Bring the load closer to the body or hang its like on the other side.",
        commonPractice,
        { maxFootShare: out.maxFootShare },
      ),
    )
  found.push(
    caution(
      "change-sides",
      "note",
      "Worked out upright and standing still: steps pull half as hard again and more, and people lean, hunch and tire. Change sides often, and hold to the smallest wearer.",
      ONE_HAND_BAG,
    ),
  )
  return found
}
