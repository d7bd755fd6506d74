import { type Caution, caution, commonPractice, type SiOf } from "../../../solver/index.js"
import { takeItOff } from "../../care.js"
import { ATTWELLS, CHILD_PACKS, HALL, NASHNER, NIOSH_1981, STRUBE } from "../../sources-load.js"
import { backCompressionLimit, lightWearer, publishedShare, stability } from "../data-load.js"
import type { CarriedLoad, CarriedLoadCaution, CarriedLoadInput } from "./types.js"

const degrees = (angle: number) => (angle * Math.PI) / 180

/** What goes with an answer of carriedLoad. */
export function carriedLoadCautions(si: SiOf<CarriedLoadInput>, out: CarriedLoad): Caution<CarriedLoadCaution>[] {
  const found: Caution<CarriedLoadCaution>[] = [takeItOff]
  const source = si.bodyMass < lightWearer ? CHILD_PACKS : HALL
  if (out.massMargin < 0)
    found.push(
      caution(
        "over-limit",
        "warning",
        "The rig is {massShare ratio %} of body mass, over the limit of {shareLimit ratio %}: make it lighter or let a larger wearer carry it. Guidance for trained soldiers (30 % and more) is not one for costumes.",
        source,
        { massShare: out.massShare, shareLimit: out.shareLimit },
      ),
    )
  else
    found.push(
      caution(
        "limit-is-posture",
        "note",
        "Within the limit is no finding of fitness: it is where walking posture begins to change over minutes, not what can be worn for hours. Calculate the wear schedule too.",
        source,
      ),
    )
  if (si.shareLimit !== null && si.shareLimit > publishedShare(si.bodyMass))
    found.push(
      caution(
        "limit-raised",
        "warning",
        "The limit given, {given.shareLimit ratio %}, is above the published {shareLimit ratio %} for such a wearer: the published one is kept to.",
        source,
        { "given.shareLimit": si.shareLimit, shareLimit: out.shareLimit },
      ),
    )
  if (out.maxTrunkLean > degrees(10))
    found.push(
      caution(
        "large-lean",
        "warning",
        "Balance asks for a lean of {maxTrunkLean angle °}: the back muscles hold it all the time. Bring the rig closer to the back or put a counterweight in front.",
        commonPractice,
        { maxTrunkLean: out.maxTrunkLean },
      ),
    )
  const sway = Math.max(...out.poses.map((p) => Math.atan2(Math.abs(p.forward), p.up)))
  const roll = Math.max(...out.poses.map((p) => Math.atan2(Math.abs(p.left), p.up)))
  if (sway > stability.foreAft / 2 || roll > stability.sideToSide / 2)
    found.push(
      caution(
        "near-tipping",
        "warning",
        "Standing upright, the common centre of mass is as far off as an adult's limits of stability: a nudge, a step or a gust may tip the wearer. Bring the rig closer to the body.",
        NASHNER,
      ),
    )
  if (si.rigMass >= 16)
    found.push(
      caution(
        "sway-grows",
        "caution",
        "Loads of 16 and 20 kg raised the sway of young, trained adults by 16 to 52 %: keep clear of edges, stairs and crowds.",
        STRUBE,
      ),
    )
  if (out.maxFootShare > 0.55)
    found.push(
      caution(
        "lopsided",
        "caution",
        "One foot carries {maxFootShare ratio %} of the weight: move parts over so that both sides are alike in every pose.",
        commonPractice,
        { maxFootShare: out.maxFootShare },
      ),
    )
  if (out.backCompression > backCompressionLimit)
    found.push(
      caution(
        "back-compression",
        "warning",
        "Compression of the low back comes to {backCompression force N}, above the 3400 N at which NIOSH asks for action in lifting: do not wear it so.",
        NIOSH_1981,
        { backCompression: out.backCompression },
      ),
    )
  if (out.trunkLeanRange > degrees(5))
    found.push(
      caution(
        "pose-changes-lean",
        "caution",
        "Moving between poses changes the lean by {trunkLeanRange angle °}: move slowly, feet apart, and never on stairs.",
        commonPractice,
        { trunkLeanRange: out.trunkLeanRange },
      ),
    )
  if (si.bodyMass < lightWearer)
    found.push(
      caution(
        "small-wearer",
        "warning",
        "Below {light mass} (a line of common practice) a wearer counts as a child or a very light adult: no more than {shareLimit ratio %} of body mass counts here, and lean and moments come from measurements of adults. A child should not wear a rig that was worked out for an adult.",
        CHILD_PACKS,
        { light: lightWearer, shareLimit: out.shareLimit },
      ),
    )
  found.push(
    caution(
      "lean-is-balance",
      "note",
      "The lean follows from balance of rigid bodies; people also bend knees and shift hips, and published measurements agree on no law of lean for such loads.",
      ATTWELLS,
    ),
  )
  return found
}
