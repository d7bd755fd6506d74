// Hazards of a belt, and what it does not promise.
import { at, type Caution, caution, commonPractice, type SiOf } from "../../solver/index.js"
import { ISO_12100, TIMING_BELTS } from "../sources.js"
import type { BeltDrive, BeltDriveCaution, BeltDriveInput } from "./types.js"

/** Wrap below which a belt on friction is better led round an idler. */
const LITTLE_WRAP = (120 * Math.PI) / 180

export function cautions(si: SiOf<BeltDriveInput>, out: BeltDrive): Caution<BeltDriveCaution>[] {
  const found: Caution<BeltDriveCaution>[] = [
    caution(
      "drawn-in",
      "warning",
      "Belts draw in hair, cords, cloth and fingers where they run onto a pulley: cover both places, tie nothing loose near them, keep a switch within reach of wearer and helper, and have machinery near people checked by a qualified person under the local rules.",
      at(ISO_12100, "clause 6.3"),
    ),
    caution(
      "strength-not-judged",
      "note",
      "Whether the belt bears its tension and the shafts and bearings their force is not judged: compare them with the maker's ratings.",
    ),
  ]
  if (si.torque !== 0)
    found.push(
      caution(
        "back-driven",
        "warning",
        "A belt holds nothing: the load turns the driving shaft back when power goes, and falls when the belt slips or breaks. Where anybody can be under it, put a brake or a latch on the driven side.",
        commonPractice,
      ),
    )
  if (out.utilisation > 0.7)
    found.push(
      caution(
        "near-slip",
        "caution",
        "It works at {utilisation ratio %} of what its pretension carries: starts and jolts ask for more, and a belt stretches and slackens in use. Tighten it, and check it again after the first hours.",
        commonPractice,
        { utilisation: out.utilisation },
      ),
    )
  if (out.teethInMesh === null && Math.min(out.drivingWrap, out.drivenWrap) < LITTLE_WRAP)
    found.push(
      caution(
        "little-wrap",
        "caution",
        "The smaller pulley is wrapped by less than 120°: friction has little to hold by. Move the shafts apart, or press an idler on the slack strand from outside.",
        commonPractice,
      ),
    )
  if (out.teethInMesh !== null && out.teethInMesh < 6)
    found.push(
      caution(
        "few-teeth-in-mesh",
        "caution",
        "Only {teethInMesh} teeth mesh on the smaller pulley: below six they are overloaded and climb over more readily. Use a larger pulley, or more distance.",
        TIMING_BELTS,
        { teethInMesh: out.teethInMesh },
      ),
    )
  return found
}
