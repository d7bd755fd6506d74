import { type Caution, caution, commonPractice, type SiOf } from "../../../solver/index.js"
import { notClearance } from "../../not-clearance.js"
import { functionalBaseSource, huntSource, mechanics, pedestrianWindSource, swaySource } from "../../sources-around.js"
import { heavyRigSway, overturnFactor, usableFoot } from "../data-balance.js"
import { pedestrianWind } from "../data-wind.js"
import { gustCautions } from "../wind-cautions.js"
import type { Overturning, OverturningCaution, OverturningInput } from "./types.js"

/** Hazards and limits of an answer about wind on a standing wearer. */
export function tipCautions(si: SiOf<OverturningInput>, out: Overturning): Caution<OverturningCaution>[] {
  const found: Caution<OverturningCaution>[] = [
    notClearance(
      "the moment that one steady gust needs to bring a standing adult over the edge of the feet",
      "a step at the wrong moment, slopes, kerbs, wet ground, a crowd's push, a gust from another side, fatigue, age, alcohol or a wearer who is a child: the data is of adults, and a small wearer's smaller weight and feet hold less",
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
  if (out.foldWindSpeed === 0)
    found.push(
      caution(
        "never-open",
        "warning",
        "Walking at {given.walkingSpeed speed m/s} alone uses up what this stance can hold: do not walk with the panels open.",
        mechanics,
        { "given.walkingSpeed": si.walkingSpeed },
      ),
    )
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
