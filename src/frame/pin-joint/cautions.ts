// Hazards of a pin joint, and faults between its fields.
import { at, type Caution, caution, commonPractice, type Issue, inconsistent } from "../../solver/index.js"
import { marginCautions, materialCautions } from "../condition.js"
import { motionCautions } from "../data-loads.js"
import { frameMaterials } from "../data-materials.js"
import { sectionFaults } from "../section.js"
import { EN_1993, SHIGLEY, VIDOSIC } from "../sources.js"
import { CARBON_TUBE } from "../sources-materials.js"
import { throughHole } from "../through-hole.js"
import { pinOf, replaceable } from "./parts.js"
import type { PinJoint, PinJointCaution, Si } from "./types.js"

/** Width of the member over the widest hole that is offered. */
export const WIDEST = 3

export function cautions(si: Si, out: PinJoint): Caution<PinJointCaution>[] {
  const found: Caution<PinJointCaution>[] = [...marginCautions(out.safetyFactor), ...materialCautions(si), ...motionCautions(si.handling)]
  if (si.material !== null && frameMaterials[si.material].splits)
    found.push(
      caution(
        "fibres-split",
        "warning",
        "This tube is strong along its fibres only: holes split it and clamps crush it, at loads not known here. Bond it into a sleeve, and test a sample to breaking away from people.",
        at(CARBON_TUBE, "minimum properties: shear 41 N/mm² against 1650 N/mm² along the fibres"),
      ),
    )
  if (out.bearingSafetyFactor === null)
    found.push(
      caution(
        "member-unknown",
        "caution",
        "Only the pin is judged: no strength is known for what it goes through. A safety factor of 3 or more is usual above people.",
        VIDOSIC,
      ),
    )
  if (si.tube !== null && out.pinDiameter > throughHole(si.tube, out.pinDiameter, si.hole).width / WIDEST)
    found.push(
      caution(
        "wide-hole",
        "caution",
        "The hole of {pinDiameter length} takes more than a third of the member's width: what is left is only roughly known.",
        commonPractice,
        { pinDiameter: out.pinDiameter },
      ),
    )
  const { yield: pinYield } = pinOf(si)
  if (out.pinBendingStress === null) {
    found.push(
      si.shearPlanes === 2
        ? caution(
            "pin-bending-unjudged",
            "note",
            "Bending of the pin is not judged without the thickness of its cheeks: with wide gaps or thick plates it governs. Give cheekThickness and gap.",
            at(EN_1993, "clause 3.13.2"),
          )
        : caution(
            "pin-bending-unjudged",
            "note",
            "Bending of the pin is judged only between two cheeks. A pin that is held on one side only, or passes many plates, bends as well: hold it on both sides, and keep gaps closed and plates thin.",
            at(EN_1993, "clause 3.13.2"),
          ),
    )
  } else if (out.pinBendingStress > replaceable * pinYield)
    found.push(
      caution(
        "pin-stays-bent",
        "caution",
        "The bending stress of {pinBendingStress pressure} is above {limit pressure}, 0.8 of the pin's yield: it may stay bent, bind and no longer come out. Close the gaps or take a thicker or stronger pin.",
        at(EN_1993, "table 3.10 (replaceable pins)"),
        { pinBendingStress: out.pinBendingStress, limit: replaceable * pinYield },
      ),
    )
  if (si.edgeDistance === null)
    found.push(
      caution(
        "edge-distance",
        "note",
        "Tearing out is not judged without an edge distance; at least 1.2 hole diameters is the rule for steel, 2 and more is wise.",
        at(EN_1993, "table 3.3; the 2 is common practice"),
      ),
    )
  else if (si.edgeDistance < 1.2 * out.pinDiameter)
    found.push(
      caution(
        "near-the-edge",
        "warning",
        "The hole lies {given.edgeDistance length} from the end, less than 1.2 of its diameter of {pinDiameter length}: it may tear out below the load shown. Move it in.",
        at(EN_1993, "table 3.3"),
        { "given.edgeDistance": si.edgeDistance, pinDiameter: out.pinDiameter },
      ),
    )
  if (si.tighteningTorque !== null)
    found.push(
      caution(
        "clamp-force-scatter",
        "note",
        "The clamp force from a torque scatters by a third or so either way with the state of the thread.",
        at(SHIGLEY, "table 8-15 (nut factor 0.2)"),
      ),
    )
  return found
}

export function check(si: Si): Issue[] {
  const faults: Issue[] = []
  if (si.tube !== null) faults.push(...sectionFaults(si.tube, ["tube"]))
  if (si.clampWidth !== null && (si.tube === null || si.tube.width !== null || (si.tube.outsideDiameter !== null && si.tube.wall === null)))
    faults.push(inconsistent(["clampWidth"], "a clamp", "a clamp only on a round tube with a wall"))
  if (si.cheekThickness !== null && si.shearPlanes !== 2)
    faults.push(inconsistent(["cheekThickness"], "{shearPlanes} shear planes", "2: one beside each cheek", { shearPlanes: si.shearPlanes }))
  if (si.gap > 0 && si.cheekThickness === null)
    faults.push(inconsistent(["gap"], "{gap length} without the cheeks", "cheekThickness beside it", { gap: si.gap }))
  if (faults.length === 0 && si.edgeDistance !== null) {
    const { diameter } = pinOf(si)
    if (!(si.edgeDistance > 0.51 * diameter))
      faults.push(
        inconsistent(["edgeDistance"], "{edgeDistance length}", "more than half the hole of {hole length}", {
          edgeDistance: si.edgeDistance,
          hole: diameter,
        }),
      )
  }
  return faults
}
