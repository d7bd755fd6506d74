// Hazards and limits of a pull cable.
import { type Caution, caution, commonPractice, type SiOf } from "../../solver/index.js"
import { ISO_12100, ROPE_WORKING_LOAD, SHEAVE_FATIGUE } from "../sources.js"
import { LIFE_ENDS } from "./data.js"
import type { Cable, CableCaution, CableInput } from "./types.js"

/** Breaking force over working load that the tables of wire rope use. */
export const USUAL_FACTOR = 5
/** Share of the pull that is lost above which a route wants changing. */
const POOR = 0.5

export function cautions(si: SiOf<CableInput>, out: Cable): Caution<CableCaution>[] {
  const found: Caution<CableCaution>[] = [
    caution(
      "stored-energy",
      "warning",
      "Taut, the cable and its sheath hold up to {storedEnergy energy}, besides what the load holds: where it snaps or slips its clamp, the ends whip. Keep faces and hands out of its line, cover it, and slacken it before working on it. Have a rig near people checked by a qualified person under the local rules.",
      ISO_12100,
      { storedEnergy: out.storedEnergy },
    ),
    caution(
      "pull-only",
      "note",
      "A single cable cannot push: a return spring or a second cable has to bring the far end back, and of its {given.force force} only {payingOutForce force} reach the drive.",
      commonPractice,
      { "given.force": si.force, payingOutForce: out.payingOutForce },
    ),
  ]
  if (si.route.type === "pulleys")
    found.push(
      caution(
        "pinch",
        "warning",
        "Where the cable runs onto a pulley it draws in fingers, hair and cloth with {pullingForce force}: guard every pulley within reach, children's reach included.",
        ISO_12100,
        { pullingForce: out.pullingForce },
      ),
    )
  else {
    found.push(
      caution(
        "sheath-stops",
        "caution",
        "The sheath's ends are pushed with as much as the cable pulls, {pullingForce force} at the drive: seat both in firm stops, or the sheath moves instead of the far end.",
        commonPractice,
        { pullingForce: out.pullingForce },
      ),
    )
    if (out.sheathShortening === null)
      found.push(
        caution(
          "sheath-rigid",
          "note",
          "The sheath is taken as rigid. Most shorten under load by more than the cable stretches: measure how far yours does under a known pull, and give its stiffness.",
        ),
      )
  }
  if (out.safetyFactor < USUAL_FACTOR)
    found.push(
      caution(
        "thin-margin",
        "warning",
        "The safety factor of the cable is {safetyFactor}, below the {usual} that tables of wire rope use; over a person, and where shocks come, more is usual. Take a stronger cable or lose less in bends.",
        ROPE_WORKING_LOAD,
        { safetyFactor: out.safetyFactor, usual: USUAL_FACTOR },
      ),
    )
  if (out.bendUtilisation !== null && out.bendUtilisation > 1)
    found.push(
      caution(
        "over-bent",
        "warning",
        "The tightest bend has a radius of {minRadius length}, and the cable allows no less than {given.minBendRadius length}: it kinks, drags and breaks early. Route it wider.",
        commonPractice,
        { minRadius: out.minRadius, "given.minBendRadius": si.minBendRadius as number },
      ),
    )
  if (out.bendRatio < LIFE_ENDS)
    found.push(
      caution(
        "tight-bend",
        "caution",
        "The tightest bend is {bendRatio} cable diameters across. Published bending life of wire rope ends at {ends}, a ninth of that at 30: strands break there unseen. Use larger pulleys or wider bends, inspect the cable often, and renew it early.",
        SHEAVE_FATIGUE,
        { bendRatio: out.bendRatio, ends: LIFE_ENDS },
      ),
    )
  if (out.efficiency < POOR)
    found.push(
      caution(
        "large-loss",
        "caution",
        "Of the drive's pull only {efficiency ratio} arrives, and it gets worse with dirt and wear: take bends out, or a lined sheath or better pulleys. On the way back the far end may stick.",
        commonPractice,
        { efficiency: out.efficiency },
      ),
    )
  return found
}
