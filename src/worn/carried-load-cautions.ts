import { type Caution, caution, type SiOf } from "../solver/index.js"
import { takeItOff } from "./care.js"
import type { CarriedLoad, CarriedLoadInput } from "./carried-load.js"
import { backCompressionLimit, stability } from "./data-load.js"

const degrees = (rad: number) => ((rad * 180) / Math.PI).toFixed(0)

/** What goes with an answer of carriedLoad. */
export function carriedLoadCautions(si: SiOf<CarriedLoadInput>, out: CarriedLoad): Caution[] {
  const found: Caution[] = [takeItOff]
  if (out.margin < 0)
    found.push(
      caution(
        "over-limit",
        "warning",
        `The rig is ${(100 * out.share).toFixed(0)} % of body mass, over the limit of ${(100 * si.limit).toFixed(0)} %: make it lighter or let a larger wearer carry it. Guidance for trained soldiers (30 % and more) is not one for costumes.`,
        "S. J. Hall, Basic Biomechanics, 2012, chapter 9 (15 %); other guidance is listed in the result",
      ),
    )
  else
    found.push(
      caution(
        "limit-is-posture",
        "note",
        "The limit is where walking posture begins to change over minutes, not what is bearable for hours: reckon the schedule too.",
        "S. J. Hall, Basic Biomechanics, 2012, chapter 9",
      ),
    )
  if (out.lean > (10 * Math.PI) / 180)
    found.push(
      caution(
        "large-lean",
        "warning",
        `Balance asks for a lean of ${degrees(out.lean)}°: the back muscles hold it all the time. Bring the rig closer to the back or put a counterweight in front.`,
      ),
    )
  const sway = Math.max(...out.poses.map((p) => Math.atan2(Math.abs(p.forward), p.height)))
  const roll = Math.max(...out.poses.map((p) => Math.atan2(Math.abs(p.left), p.height)))
  if (sway > stability.foreAft / 2 || roll > stability.sideToSide / 2)
    found.push(
      caution(
        "near-tipping",
        "warning",
        "Standing upright, the common centre of mass is as far off as an adult's limits of stability: a nudge, a step or a gust may tip the wearer. Sway grows with the load.",
        "limits of stability after Nashner (12.5° fore and aft, 16° side to side, in all); sway +16 to +52 % with 16 to 20 kg, Strube and others 2017",
      ),
    )
  if (out.footShare > 0.55)
    found.push(
      caution(
        "lopsided",
        "caution",
        `One foot carries ${(100 * out.footShare).toFixed(0)} % of the weight: move parts over so that both sides are alike in every pose.`,
      ),
    )
  if (out.backCompression > backCompressionLimit)
    found.push(
      caution(
        "back-compression",
        "warning",
        `Compression of the low back comes to ${out.backCompression.toFixed(0)} N, above the 3400 N at which NIOSH asks for action in lifting: do not wear it so.`,
        "NIOSH, Work Practices Guide for Manual Lifting, 1981 (from memory)",
      ),
    )
  if (out.leanRange > (5 * Math.PI) / 180)
    found.push(
      caution(
        "pose-changes-lean",
        "caution",
        `Moving between poses changes the lean by ${degrees(out.leanRange)}°: move slowly, feet apart, and never on stairs.`,
      ),
    )
  if (si.bodyMass < 45)
    found.push(
      caution(
        "small-wearer",
        "warning",
        "Body mass of a child or a very light adult: professional bodies advise no more than 10 % of body mass, and the segment tables are of adults.",
        "American Academy of Pediatrics and American Occupational Therapy Association guidance, 2018",
      ),
    )
  found.push(
    caution(
      "lean-is-balance",
      "note",
      "The lean follows from balance of rigid bodies; people also bend knees and shift hips, and published measurements agree on no law of lean for such loads.",
      "Strube and others 2017; Attwells and others 2006",
    ),
  )
  return found
}
