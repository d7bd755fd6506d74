import { type Caution, caution, commonPractice, type SiOf } from "../../../solver/index.js"
import { lightWearer } from "../../load/data-load.js"
import { notClearance } from "../../not-clearance.js"
import { functionalBaseSource, huntSource, mechanics, pedestrianWindSource, pendulumSource, swaySource } from "../../sources-around.js"
import { heavyRigSway, overturnFactor, usableFoot } from "../data-balance.js"
import { pedestrianWind } from "../data-wind.js"
import { gustCautions } from "../wind-cautions.js"
import { groundOf, pushHeightOf, pushOf } from "./kernel.js"
import type { Overturning, OverturningCaution, OverturningInput } from "./types.js"

/** Hazards and limits of an answer about wind on a standing wearer. */
export function tipCautions(si: SiOf<OverturningInput>, out: Overturning): Caution<OverturningCaution>[] {
  const found: Caution<OverturningCaution>[] = [
    notClearance(
      "the moments that one steady gust and one push need to bring a standing adult over the edge of the feet",
      "a step at the wrong moment, ground, kerbs and pushes that were not given, wet or loose ground, a gust from another side, fatigue, age, alcohol or a wearer who is a child: the data is of adults, and a small wearer's smaller weight and feet hold less",
      functionalBaseSource,
    ),
    ...gustCautions(out.gustSpeed),
  ]
  if (out.windMoment > 0)
    found.push(
      caution(
        "shares-added",
        "note",
        "That the wind's share on the body ({bodyUtilisation ratio %} of the published limit) and the rig's share of the stance add up is a rule of our own, on the safe side of taking the worse of the two: no test of people with panels in the wind backs it.",
        commonPractice,
        { bodyUtilisation: out.bodyUtilisation },
      ),
    )
  if (out.fold)
    found.push(
      caution(
        "fold-now",
        "warning",
        "At a mean wind of {given.windSpeed speed m/s} the panels should be folded (from {foldWindSpeed speed m/s}): a gust can tip or turn the wearer, and a wearer who falls with a rig on can be hurt badly.",
        pedestrianWindSource,
        { "given.windSpeed": si.windSpeed, foldWindSpeed: out.foldWindSpeed },
      ),
    )
  if (out.foldWindSpeed === 0 && out.pushMoment === 0)
    found.push(
      caution(
        "never-open",
        "warning",
        "Walking at {given.walkingSpeed speed m/s} alone uses up what this stance can hold: do not walk with the panels open.",
        mechanics,
        { "given.walkingSpeed": si.walkingSpeed },
      ),
    )
  else if (out.foldWindSpeed === 0)
    found.push(
      caution(
        "never-open",
        "warning",
        "Walking at {given.walkingSpeed speed m/s} and the push together use up what this stance can hold: do not open the panels where people can come that near.",
        mechanics,
        { "given.walkingSpeed": si.walkingSpeed },
      ),
    )
  found.push(...groundAndPush(si, out))
  if (out.gustSpeed > pedestrianWind.tested)
    found.push(
      caution(
        "beyond-tests",
        "note",
        "Nobody was tested standing or walking in more than {tested speed m/s}: what is said of the body in gusts of {gustSpeed speed m/s} is carried on from there.",
        huntSource,
        { tested: pedestrianWind.tested, gustSpeed: out.gustSpeed },
      ),
    )
  if (si.edgeDistance === null && si.windFrom !== "side" && si.stagger === 0)
    found.push(
      caution(
        "stance",
        "note",
        "With the feet side by side, wind from the front or from behind has the shortest edge: one foot well ahead of the other helps most.",
        mechanics,
      ),
    )
  if (si.usableShare > usableFoot)
    found.push(
      caution(
        "usable-share",
        "caution",
        "Young adults use about 60 % of the foot's length without stepping, older people less; a larger share is not supported, and the wind to fold at keeps to 60 %.",
        functionalBaseSource,
      ),
    )
  if (si.rigMass >= heavyRigSway.from)
    found.push(
      caution(
        "loaded-sway",
        "caution",
        "With packs of 16 to 20.5 kg standing cadets swayed 16 to 52 % faster: under such a rig less of the stance is left for the wind.",
        swaySource,
      ),
    )
  if (si.safetyFactor < overturnFactor)
    found.push(
      caution(
        "safety-factor",
        "caution",
        "A factor of 1.5 against overturning is common practice; less leaves nothing for what the estimate misses, and the wind to fold at keeps to 1.5.",
      ),
    )
  return found
}

/** What push, slope and unseen drop add. */
function groundAndPush(si: SiOf<OverturningInput>, out: Overturning): Caution<OverturningCaution>[] {
  const found: Caution<OverturningCaution>[] = []
  const pushHeight = pushHeightOf(si)
  const pushed = si.pushForce > 0 || (si.bumpMass ?? 0) * (si.bumpSpeed ?? 0) > 0
  const { pushForceLimit } = out
  if (pushForceLimit === null)
    found.push(
      caution(
        "low-push",
        "caution",
        "The ground rises so steeply towards the side tipped over that a push at a height of {pushHeight length m} is not counted as tipping the wearer. It can still take the feet away, and one higher up tips: keep people at a distance, and ask for a push at the shoulders as well.",
        mechanics,
        { pushHeight },
      ),
    )
  else if (!pushed)
    found.push(
      caution(
        "no-push",
        "note",
        "No push is counted. In this wind the stance holds {pushForceLimit force N} at a height of {pushHeight length m}, counted without a step: keep helpers between the wearer and a crowd.",
        mechanics,
        { pushForceLimit, pushHeight },
      ),
    )
  else if (pushOf(si, out.centreHeight) > pushForceLimit)
    found.push(
      caution(
        "push-over",
        "warning",
        "The push at a height of {pushHeight length m} is more than this stance holds in this wind, {pushForceLimit force N} steady: the wearer has to take a step, or falls with the rig. Keep people at a distance, put helpers on that side, or take a wider stance.",
        pendulumSource,
        { pushHeight, pushForceLimit },
      ),
    )
  if (si.slope > 0)
    found.push(
      caution(
        "slope",
        "caution",
        "The wearer is counted as standing plumb on firm, dry ground that slopes by {given.slope angle °}. Shoes that slip, ankles that bend no further and steps taken downhill are not counted: walk such a stretch with the panels folded and a helper on the lower side.",
        commonPractice,
        { "given.slope": si.slope },
      ),
    )
  if (groundOf(si).slope < 0)
    found.push(
      caution(
        "ground-helps",
        "note",
        "The ground rises towards the side tipped over and helps there; it takes the same from the opposite side. Ask for wind and push from that side as well.",
        mechanics,
      ),
    )
  if (si.stepHeight !== null && si.stepHeight > 0)
    found.push(
      caution(
        "unseen-drop",
        "caution",
        "A drop of {given.stepHeight length mm} under the feet is counted as a slow tilt that the wearer does not see and does nothing about; a foot that comes down hard on it, or catches, does more. Walk the route first, mark kerbs and cables, and send a helper ahead where the rig hides the feet.",
        commonPractice,
        { "given.stepHeight": si.stepHeight },
      ),
    )
  if (si.bodyMass < lightWearer)
    found.push(
      caution(
        "light-wearer",
        "caution",
        "At {given.bodyMass mass kg} the wearer is a child or a very light adult: none of the shares and limits was measured on children, and the same push or gust moves a light wearer further. Leave open panels to a heavier wearer, or keep a helper within reach.",
        commonPractice,
        { "given.bodyMass": si.bodyMass },
      ),
    )
  return found
}
