import { type Caution, caution, type SiOf } from "../solver/index.js"
import { takeItOff } from "./care.js"
import { loadGuidance } from "./data-load.js"
import type { WearSchedule, WearScheduleInput } from "./wear-schedule.js"
import { backEffort } from "./wear-strain.js"

/** What goes with an answer of wearSchedule. */
export function wearScheduleCautions(si: SiOf<WearScheduleInput>, out: WearSchedule): Caution[] {
  const hours = (seconds: number) => `${(seconds / 3600).toFixed(1)} h`
  // rounded down: a load or a time that is still bearable
  const atMost = (value: number) => (Math.floor(value * 10) / 10).toFixed(1)
  const found: Caution[] = [takeItOff]
  if (out.first)
    found.push(
      caution(
        "not-bearable",
        "warning",
        `The strain reaches its limit after ${atMost(out.first.after / 3600)} h, in '${out.first.during}': take the rig off for the rests listed, share it between wearers${out.heaviest ? `, or bring it down to ${atMost(out.heaviest.load)} kg` : ""}.`,
        "E. Kamon 1981 (work period one third of the time to exhaustion)",
      ),
    )
  if (out.heaviest === null)
    found.push(
      caution(
        "no-load-is-bearable",
        "warning",
        `By the stricter of the published limits this plan is too much even without a rig: put in breaks with the rig off, shorten it or slow it down.${out.heaviestLenient ? ` The more lenient one bears ${atMost(out.heaviestLenient.load)} kg; it is no recommendation.` : ""}`,
        "E. Kamon 1981 against NIOSH lifting criteria, Waters and others 1993",
      ),
    )
  if (out.resting.total > out.worn)
    found.push(
      caution(
        "more-rest-than-wear",
        "warning",
        "The rests come to more than the time worn: this is no schedule but a sign that the rig is too heavy for the wearer.",
        "E. Kamon 1981 (work period one third of the time to exhaustion)",
      ),
    )
  if (out.meanShare > out.shareLimit)
    found.push(
      caution(
        "over-share",
        "warning",
        `On average ${(100 * out.meanShare).toFixed(0)} % of the aerobic capacity for ${hours(out.worn)}; ${(100 * out.shareLimit).toFixed(0)} % is published for so long. The stricter of this and the strain counts.`,
        "NIOSH lifting criteria, Waters and others 1993 (from memory)",
      ),
    )
  if (out.parts.some((p) => p.allowance !== null && p.capacityShare < 0.3))
    found.push(
      caution(
        "gentle-work-extrapolated",
        "caution",
        "Below 30 % of the capacity the time to exhaustion is extrapolated; skin, joints and patience give out before breath does. Take the rig off every hour all the same.",
        "E. Kamon 1981, equation 2.6.1 in Johnson 1991; hourly pause: common practice, no source",
      ),
    )
  const effort = backEffort(si, si.load)
  if (effort === null)
    found.push(
      caution(
        "back-left-out",
        "caution",
        "No moment was given, so the back is left out: only breath is reckoned. Take `backMomentLeaning` from carriedLoad.",
        "common practice, no source",
      ),
    )
  else if (effort < 0.15)
    found.push(
      caution(
        "back-extrapolated",
        "caution",
        "The back holds less than 15 % of its strength, where holding times are extrapolated.",
        "Frey Law and Avin 2010 (from memory)",
      ),
    )
  if (si.load > (loadGuidance[1] as (typeof loadGuidance)[number]).share * si.bodyMass)
    found.push(
      caution(
        "over-15-percent",
        "warning",
        "The rig is more than 15 % of body mass, above textbook advice for adults whatever the schedule says.",
        "S. J. Hall, Basic Biomechanics, 2012, chapter 9",
      ),
    )
  found.push(
    caution(
      "recovery-assumed",
      "note",
      "How fast strain fades is taken from a model of muscle fatigue (time constant about 22 min for the trunk) and the fitness from untrained adults: rehearse, ask the wearer, and prefer more rest. Heat, cold, drink and blisters are not counted.",
      "three-compartment fatigue model, Frey Law and others 2012 (from memory)",
    ),
  )
  return found
}
