import { type Caution, caution, type SiOf } from "../../../solver/index.js"
import { takeItOff } from "../../care.js"
import { CCIP_016, FLEXIBLE_PACK } from "../../sources-load.js"
import type { WalkingLoad, WalkingLoadCaution, WalkingLoadInput } from "./types.js"

/** A tenth more than the trunk itself is shaken: stiff mounts stay below it. */
const noticeable = 1.1

/** What goes with an answer of walkingLoad. */
export function walkingLoadCautions(si: SiOf<WalkingLoadInput>, out: WalkingLoad): Caution<WalkingLoadCaution>[] {
  const found: Caution<WalkingLoadCaution>[] = [takeItOff]
  if (out.amplification > noticeable)
    found.push(
      caution(
        "bounces-harder",
        "warning",
        "The springy part swings with the steps: they shake the load {amplification} times as hard as if it were fixed to the trunk. Make it stiffer, fix the load, or walk slower; packs on springs eased slow walking and made fast walking harder.",
        FLEXIBLE_PACK,
        { amplification: out.amplification },
      ),
    )
  if (out.minForce < 0)
    found.push(
      caution(
        "snatches",
        "warning",
        "Steps throw the load up: straps go slack and snatch when it falls back, harder than the {peakForce force N} worked out here. Tie it down to the trunk from below, or stiffen what holds it.",
        CCIP_016,
        { peakForce: out.peakForce },
      ),
    )
  if (out.travelUtilisation !== null && out.travelUtilisation > 1)
    found.push(
      caution(
        "hits-stops",
        "warning",
        "The load moves up to {travel length mm} and has {given.freeTravel length mm}: it strikes wearer or frame, harder than the peak worked out here. Leave more room, pad the stop or stiffen what holds it.",
        undefined,
        { travel: out.travel as number, "given.freeTravel": si.freeTravel as number },
      ),
    )
  found.push(
    caution(
      "walking-only",
      "note",
      "Walking on the level by adults, four harmonics at their design values, all peaks at once. Running, stairs, kerbs, jumps and a stumble pull harder, two to three times the weight and more: judge straps, joints and releases for those as well.",
      CCIP_016,
    ),
  )
  return found
}
