import { at, type Caution, caution, type SiOf } from "../../../solver/index.js"
import { takeItOff } from "../../care.js"
import { ISO_11228_1, NIOSH_1994, TEAM_LIFTS } from "../../sources-load.js"
import { referenceMasses, teamShares } from "../data-lift.js"
import type { LiftLimit, LiftLimitCaution, LiftLimitInput } from "./types.js"

/** What an answer warns of. */
export function cautions(si: SiOf<LiftLimitInput>, out: LiftLimit): Caution<LiftLimitCaution>[] {
  const found: Caution<LiftLimitCaution>[] = [
    takeItOff,
    caution(
      "lifting-only",
      "warning",
      "This is about lifting the rig to put it on or down, with two hands, standing, slowly and on a firm floor. It says nothing about wearing it: use carriedLoad and wearSchedule for that. It does not cover carrying, pushing, one hand, kneeling or unsteady loads.",
      at(NIOSH_1994, "section 1.2"),
    ),
    caution(
      "adults-only",
      "warning",
      "The limits are for adults at work; none is known for children, who should not lift a rig.",
      ISO_11228_1,
    ),
  ]
  if (out.liftingIndex > 1)
    found.push(
      caution(
        "over-limit",
        "warning",
        "Lifting index {liftingIndex}: above 1 the risk to the back rises. Put the rig on from a stand at hip height, hold it closer, or lift it in parts.",
        at(NIOSH_1994, "section 1.4"),
        { liftingIndex: out.liftingIndex },
      ),
    )
  if (si.rigMass > out.referenceMass)
    found.push(
      caution(
        "over-reference",
        "warning",
        "{given.rigMass mass} is above the reference mass of {referenceMass mass} for {lifter}: nobody should lift it alone.",
        ISO_11228_1,
        { "given.rigMass": si.rigMass, referenceMass: out.referenceMass, lifter: referenceMasses[si.lifter].label },
      ),
    )
  const teamLimit = teamShares.length * teamShares[2] * out.recommendedMass
  if (out.peopleCount === null)
    found.push(
      caution(
        "too-heavy-for-three",
        "warning",
        "Even three people together manage no more than {teamLimit mass}: shared lifts are never shared evenly, and more hands get in each other's way. Lift it in parts, use a hoist or a stand on wheels, or start from a better height and reach.",
        TEAM_LIFTS,
        { teamLimit },
      ),
    )
  else if (out.peopleCount > 1)
    found.push(
      caution(
        "lift-together",
        "caution",
        "It takes {peopleCount} people, alike in strength and height, on level ground, with a good hold each and one who calls: two together manage two thirds of what they manage singly, three half. On steps or slopes the lower ones bear most of it: use a stand or lift it in parts.",
        TEAM_LIFTS,
        { peopleCount: out.peopleCount },
      ),
    )
  if (si.startReach < 0.25 || (si.endReach !== null && si.endReach < 0.25))
    found.push(
      caution("reach-under-25cm", "note", "Reaches under 25 cm count as 25 cm: the body is in the way.", at(NIOSH_1994, "section 1.3.1")),
    )
  return found
}
