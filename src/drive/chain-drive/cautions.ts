// Hazards of a chain, and where it runs badly.
import { at, type Caution, caution, commonPractice, type SiOf } from "../../solver/index.js"
import { CHAIN_FACTORS, ISO_10823, ISO_12100 } from "../sources.js"
import type { ChainDrive, ChainDriveCaution, ChainDriveInput } from "./types.js"

const LITTLE_WRAP = (120 * Math.PI) / 180
const [SMOOTH_TEETH, LEAST_TEETH] = [17, 11]
/** Breaking force over working tension at low speed. */
export const LEAST_FACTOR = 7

export function cautions(si: SiOf<ChainDriveInput>, out: ChainDrive): Caution<ChainDriveCaution>[] {
  const found: Caution<ChainDriveCaution>[] = [
    caution(
      "drawn-in",
      "warning",
      "Chains draw in and cut off fingers and draw in hair, cords and cloth where they run onto a sprocket, by hand as well: cover the whole run, keep a switch within reach of wearer and helper, and have machinery near people checked by a qualified person under the local rules.",
      at(ISO_12100, "clause 6.3"),
    ),
  ]
  if (si.torque !== 0)
    found.push(
      caution(
        "back-driven",
        "warning",
        "A chain holds nothing: the load turns the driving shaft back when power goes, and falls when the chain comes off or breaks. Where anybody can be under it, put a brake or a latch on the driven side.",
        commonPractice,
      ),
    )
  if (si.breakingForce === null)
    found.push(
      caution(
        "strength-not-judged",
        "note",
        "Without its breaking force the chain's strength is not judged: it needs seven times the working tension of {workingTension force}, and more at speed.",
        CHAIN_FACTORS,
        { workingTension: out.workingTension },
      ),
    )
  else if (out.safetyFactor !== null && out.safetyFactor < LEAST_FACTOR)
    found.push(
      caution(
        "thin-chain",
        "warning",
        "The chain has a safety factor of {safetyFactor}, and 7 is the minimum at low speed: wear and jolts take the rest. Use a stronger chain or larger sprockets, and keep people clear of what it carries.",
        CHAIN_FACTORS,
        { safetyFactor: out.safetyFactor },
      ),
    )
  const teeth = Math.min(si.drivingTeeth, si.drivenTeeth)
  if (teeth < LEAST_TEETH)
    found.push(
      caution(
        "few-teeth",
        "caution",
        "Fewer than 11 teeth on a sprocket: the chain jerks with every tooth ({speedRipple ratio %} at the driving one), rattles and wears fast. Use more teeth with a finer pitch.",
        ISO_10823,
        { speedRipple: out.speedRipple },
      ),
    )
  else if (teeth < SMOOTH_TEETH)
    found.push(
      caution(
        "few-teeth",
        "note",
        "From 17 teeth on a chain runs smoothly; here its speed rises and falls by {speedRipple ratio %} at the driving sprocket. That is good enough for slow moves only.",
        ISO_10823,
        { speedRipple: out.speedRipple },
      ),
    )
  if (out.smallWrap < LITTLE_WRAP)
    found.push(
      caution(
        "little-wrap",
        "caution",
        "The chain lies on the smaller sprocket over less than 120°: too few teeth carry it, and it climbs off when worn. Move the shafts apart, or press an idler on the slack strand from outside.",
        ISO_10823,
      ),
    )
  return found
}
