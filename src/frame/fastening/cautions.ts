import { type Caution, caution, commonPractice } from "../../solver/index.js"
import { marginCautions } from "../condition.js"
import { motionCautions } from "../data-loads.js"
import { EPOXY_SHEAR, epoxyTested, SCREW_END_GRAIN, SCREW_PLYWOOD, SCREW_WITHDRAWAL } from "./data.js"
import type { Fastening, FasteningCaution, Si } from "./types.js"

/** Overlap beyond which a glued lap's middle carries little, m. */
const LONG_LAP = 0.025

function glued(joint: Extract<Si["joint"], { type: "glued" }>): Caution<FasteningCaution>[] {
  const { overlap, materialTemperature } = joint
  const found: Caution<FasteningCaution>[] = [
    caution(
      "glue-surface",
      "note",
      "Holds for surfaces roughened and free of grease, and glue that has cured in full; glues differ widely after weeks in water. Break a sample glued in the same way.",
      EPOXY_SHEAR,
    ),
    caution(
      "peel",
      "caution",
      "Only a force along the lap is judged: one that lifts an edge peels it off at a small part of this. Add a screw, a rivet or a lashing where the ends could lift.",
      commonPractice,
    ),
  ]
  if (overlap > LONG_LAP)
    found.push(
      caution(
        "long-overlap",
        "caution",
        "An overlap of {given.joint.overlap length} is long: its ends carry most of the force, and it bears less than shown. Glue over more width instead, or taper the ends.",
        commonPractice,
        { "given.joint.overlap": overlap },
      ),
    )
  if (materialTemperature > epoxyTested.high || materialTemperature < epoxyTested.low)
    found.push(
      caution(
        "glue-not-tested-there",
        "warning",
        "The strength was proven from {low temperature} to {high temperature}, and the glue is at {given.joint.materialTemperature temperature}: epoxies for room temperature go soft when warm and brittle when cold. Keep it cooler or warmer, or fasten it mechanically as well.",
        EPOXY_SHEAR,
        { ...epoxyTested, "given.joint.materialTemperature": materialTemperature },
      ),
    )
  return found
}

function screwed(joint: Extract<Si["joint"], { type: "screwed" }>): Caution<FasteningCaution>[] {
  const found: Caution<FasteningCaution>[] = [
    caution(
      "pulls-out-only",
      "note",
      "Only pulling out of solid, dry wood with a drilled hole is judged; plywood holds less than such figures say, and a screw loaded sideways or tearing through a thin part is not judged.",
      SCREW_PLYWOOD,
    ),
  ]
  if (joint.grain === "end")
    found.push(
      caution(
        "end-grain",
        "caution",
        "Along the grain a screw is counted at 60 % and holds unreliably: split wood lets go at once. Screw across the grain, or bolt through a dowel.",
        SCREW_END_GRAIN,
      ),
    )
  return found
}

export function fasteningCautions({ joint, handling }: Si, out: Fastening): Caution<FasteningCaution>[] {
  const found: Caution<FasteningCaution>[] = out.basis === "breaking" ? [...marginCautions(out.safetyFactor)] : []
  if (out.basis === "allowable" && out.safetyFactor < 1)
    found.push(
      caution(
        "above-allowable",
        "warning",
        "The force is above the {capacity force} that is published as allowable: the joint may let go. Use more or longer screws, and have anything held above people checked by a qualified person under the local rules.",
        SCREW_WITHDRAWAL,
        { capacity: out.capacity },
      ),
    )
  if (joint.type === "glued") found.push(...glued(joint))
  if (joint.type === "screwed") found.push(...screwed(joint))
  if (joint.type === "tied" || joint.type === "lashed") {
    found.push(
      caution(
        "slides",
        "note",
        "Only pulling the parts apart is judged: along a smooth tube ties and lashings slide. Notch or roughen the parts, or stop them with a screw.",
        commonPractice,
      ),
      caution(
        "nylon-ages",
        "note",
        "Holds for new nylon: sunlight, heat, frost, sharp edges and knots pulled tight many times weaken it. Look at every one before each parade and replace it each season.",
        commonPractice,
      ),
    )
  }
  if (joint.type !== "glued" && out.parts > 1)
    found.push(
      caution(
        "uneven-share",
        "caution",
        "The force is shared evenly between {parts} parts here; in truth the tightest takes most until it gives. Tighten them alike and keep a wide margin.",
        commonPractice,
        { parts: out.parts },
      ),
    )
  found.push(...motionCautions(handling))
  return found
}
