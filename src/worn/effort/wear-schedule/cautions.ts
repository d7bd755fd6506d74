import { type Caution, caution, commonPractice, type SiOf } from "../../../solver/index.js"
import { takeItOff } from "../../care.js"
import { lightWearer } from "../../load/data-load.js"
import { CHILD_PACKS, FREY_LAW_2010, FREY_LAW_2012, HALL, KAMON, NIOSH_1993, PASSMORE } from "../../sources-load.js"
import { backEffort } from "./strain.js"
import type { WearSchedule, WearScheduleCaution, WearScheduleInput } from "./types.js"

/** What goes with an answer of wearSchedule. */
export function wearScheduleCautions(si: SiOf<WearScheduleInput>, out: WearSchedule): Caution<WearScheduleCaution>[] {
  const found: Caution<WearScheduleCaution>[] = [takeItOff]
  if (out.firstLimit && out.maxRig.low)
    found.push(
      caution(
        "not-bearable",
        "warning",
        "The strain reaches its limit after {firstLimit.time time}, in '{firstLimit.during}': take the rig off for the rests listed, share it between wearers, or bring it below {maxRig.low.rigMass mass}.",
        KAMON,
        {
          "firstLimit.time": out.firstLimit.time,
          "firstLimit.during": out.firstLimit.during,
          "maxRig.low.rigMass": out.maxRig.low.rigMass,
        },
      ),
    )
  else if (out.firstLimit)
    found.push(
      caution(
        "not-bearable",
        "warning",
        "The strain reaches its limit after {firstLimit.time time}, in '{firstLimit.during}': take the rig off for the rests listed, or share it between wearers.",
        KAMON,
        { "firstLimit.time": out.firstLimit.time, "firstLimit.during": out.firstLimit.during },
      ),
    )
  if (out.maxRig.low === null)
    found.push(
      caution(
        "no-load-is-bearable",
        "warning",
        "By the stricter of the published limits this plan is too much even without a rig: put in breaks with the rig off, shorten it or slow it down. What the more lenient limit says is the spread between sources, no recommendation.",
        NIOSH_1993,
      ),
    )
  if (out.resting.total > out.wornDuration)
    found.push(
      caution(
        "more-rest-than-wear",
        "warning",
        "The rests come to more than the time worn: this is no schedule but a sign that the rig is too heavy for the wearer.",
        KAMON,
      ),
    )
  if (out.meanShare > out.shareLimit)
    found.push(
      caution(
        "over-share",
        "warning",
        "On average {meanShare ratio %} of the aerobic capacity for {wornDuration time h}; {shareLimit ratio %} is published as acceptable for so long. The stricter of this and the strain counts.",
        NIOSH_1993,
        { meanShare: out.meanShare, wornDuration: out.wornDuration, shareLimit: out.shareLimit },
      ),
    )
  if (out.plan.some((p) => p.maxDuration !== null && p.capacityShare < 0.3))
    found.push(
      caution(
        "gentle-work-extrapolated",
        "caution",
        "Below 30 % of the capacity the time to exhaustion is extrapolated; skin, joints and patience give out before breath does. Take the rig off every hour all the same.",
        KAMON,
      ),
    )
  const effort = backEffort(si, si.rigMass)
  if (effort === null)
    found.push(
      caution(
        "back-left-out",
        "caution",
        "No moment was given, so the back is left out: only breath is counted. Take `backMomentLeaning` from carriedLoad.",
        commonPractice,
      ),
    )
  else if (effort < 0.15)
    found.push(
      caution(
        "back-extrapolated",
        "caution",
        "The back holds less than 15 % of its strength, where holding times are extrapolated.",
        FREY_LAW_2010,
      ),
    )
  if (si.rigMass > out.massAtLimit)
    found.push(
      caution(
        "over-published-share",
        "warning",
        "The rig weighs {given.rigMass mass}, above {massAtLimit mass}, the published share of body mass for this wearer: make it lighter, whatever the schedule says.",
        si.bodyMass < lightWearer ? CHILD_PACKS : HALL,
        { "given.rigMass": si.rigMass, massAtLimit: out.massAtLimit },
      ),
    )
  if (si.bodyMass < lightWearer)
    found.push(
      caution(
        "small-wearer",
        "warning",
        "Below {light mass} (a line of common practice) a wearer counts as a child or a very light adult: the equations read up to 27 % low for light walkers, and every figure here comes from adults. No schedule for a child follows from it.",
        PASSMORE,
        { light: lightWearer },
      ),
    )
  found.push(
    caution(
      "recovery-assumed",
      "note",
      "How fast strain fades is taken from a model of muscle fatigue (time constant about 22 min for the trunk) and the fitness from untrained adults: rehearse, ask the wearer, and prefer more rest. Heat, cold, drink and blisters are not counted.",
      FREY_LAW_2012,
    ),
  )
  return found
}
