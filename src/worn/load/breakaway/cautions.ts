import { type Caution, caution, commonPractice, type SiOf } from "../../../solver/index.js"
import { takeItOff, throat } from "../../care.js"
import { CCIP_016, CHILDREN_CORDS, EN_71_1, MACIAS, NECK_FORCE, SKIN_FRICTION } from "../../sources-load.js"
import { walkingPeak } from "../data-load.js"
import { arteryForce, youngStature } from "../data-straps.js"
import type { Breakaway, BreakawayCaution, BreakawayInput } from "./types.js"

/** What goes with an answer of breakaway. */
export function breakawayCautions(si: SiOf<BreakawayInput>, out: Breakaway): Caution<BreakawayCaution>[] {
  const neck = si.place === "neck"
  const found: Caution<BreakawayCaution>[] = [takeItOff, throat]
  if (neck && (si.stature === null || si.stature <= youngStature))
    found.push(
      caution(
        "young-wearer",
        "warning",
        "Children up to {young length cm} may have no cord or band at hood and neck at all, by the rule for their clothes, however weak its breakaway; no free ends at the neck up to 14 years. Stage costumes are outside that rule, children's necks are not: fasten to the shoulders of the garment. Ask the event's safety officer.",
        CHILDREN_CORDS,
        { young: youngStature },
      ),
    )
  if (out.pullUtilisation !== null && out.pullUtilisation > 1)
    found.push(
      caution(
        "over-pull",
        "warning",
        "It takes up to {pull.high force N} to part the band, over the {pullLimit force N} of the rule for toys: use a breakaway that opens at {requiredPartingTension force N} or less, one on each side, or none of the band. Clasps sold as safety clasps open near 100 N.",
        EN_71_1,
        { "pull.high": out.pull.high, pullLimit: out.pullLimit as number, requiredPartingTension: out.requiredPartingTension as number },
      ),
    )
  if (neck && out.pull.high > arteryForce)
    found.push(
      caution(
        "artery-force",
        "warning",
        "Both arteries of the neck were found closed at {artery force N}, and its veins close at less: this band may hold {pull.high force N} before it lets go. Do not wear it.",
        NECK_FORCE,
        { artery: arteryForce, "pull.high": out.pull.high },
      ),
    )
  if (out.pressureUtilisation > 1)
    found.push(
      caution(
        "over-pressure",
        "warning",
        "The band presses with {pressure pressure kPa}, over the limit of {pressureLimit pressure kPa}: slacken it, widen it or hang the load elsewhere.",
        neck ? MACIAS : commonPractice,
        { pressure: out.pressure, pressureLimit: out.pressureLimit },
      ),
    )
  if (out.tensionRatio > 1)
    found.push(
      caution(
        "friction-holds",
        "caution",
        "The breakaway lies {wrapAngle angle °} of the body behind the side that is pulled: friction keeps part of the pull from it, so that the wearer takes {tensionRatio} times as much before it opens. Put one on each side, or where the pull comes from.",
        SKIN_FRICTION,
        { wrapAngle: out.wrapAngle, tensionRatio: out.tensionRatio },
      ),
    )
  if (out.wornUtilisation * walkingPeak > 1)
    found.push(
      caution(
        "parts-while-walking",
        "caution",
        "Steps raise what hangs on a band to {peak} times its weight, and {wornUtilisation ratio %} of what opens this breakaway hangs on it at rest: what it carries may drop. Hang the load from something that need not part.",
        CCIP_016,
        { peak: walkingPeak, wornUtilisation: out.wornUtilisation },
      ),
    )
  if (!neck)
    found.push(
      caution(
        "no-pull-limit",
        "note",
        "No published pull was found at which a band at shoulder or waist has to part. Up to {pull.high force N} drags the wearer before this one does: compare it with the push that tips a wearer over, and fit a quick release as well.",
        undefined,
        { "pull.high": out.pull.high },
      ),
    )
  found.push(
    caution(
      "try-it",
      "note",
      "Cloth grips skin anywhere from 0.3 to 0.9 of its pressure, and wet skin harder. Pull the finished band off a padded form with a spring balance from every side, dry, wet and after wear, and replace a breakaway that has stiffened.",
      SKIN_FRICTION,
    ),
  )
  return found
}
