import { at, type Caution, caution, type Issue, inconsistent, type SiOf } from "../../solver/index.js"
import { conditionCautions, marginCautions } from "../condition.js"
import { columnEnds, END_CONSTANTS } from "../data-columns.js"
import { motionCautions } from "../data-loads.js"
import { frameMaterials } from "../data-materials.js"
import { sectionFaults } from "../section.js"
import { SHIGLEY } from "../sources.js"
import type { Column, ColumnCaution, ColumnInput } from "./types.js"

export function cautions(si: SiOf<ColumnInput>, out: Column): Caution<ColumnCaution>[] {
  const found: Caution<ColumnCaution>[] = [
    ...marginCautions(out.safetyFactor),
    ...conditionCautions(si),
    ...(si.load === null ? [] : motionCautions(si.handling)),
  ]
  found.push(
    caution(
      "straight-and-central",
      "note",
      "Holds for a straight member pushed along its very middle; a bend, a dent or a push off the middle lowers the load it carries, so keep a wide margin.",
      at(SHIGLEY, "sections 4-12 to 4-15"),
    ),
  )
  if (out.transitionSlenderness === null)
    found.push(
      caution(
        "euler-only",
        "caution",
        "No strength is known, so a short member may fail below Euler's load shown here. Give its strength, or name the material.",
        at(SHIGLEY, "section 4-13"),
      ),
    )
  const { theory, design, recommended } = columnEnds[si.ends]
  if (si.endConstant === null && theory > design)
    found.push(
      caution(
        "counted-as-turning",
        "note",
        "Clamped ends are counted as free to turn (end constant {endConstant}), because no real clamp is rigid. {recommended} is published for well-made clamps and well-known loads, {theory} for perfect ones: give endConstant to use another.",
        END_CONSTANTS,
        { endConstant: out.endConstant, recommended, theory },
      ),
    )
  if (si.endConstant !== null && si.endConstant > theory)
    found.push(
      caution(
        "beyond-theory",
        "warning",
        "The end constant of {endConstant} is above the {theory} that even perfect ends of this kind reach: it buckles below the load shown. Name the ends as they are held.",
        END_CONSTANTS,
        { endConstant: out.endConstant, theory },
      ),
    )
  else if (si.endConstant !== null && si.endConstant > design)
    found.push(
      caution(
        "stiff-ends",
        "caution",
        "The end constant of {endConstant} is above the conservative {design} for these ends: real clamps turn a little. Up to {recommended} is published where clamps are well made and the load is well known.",
        END_CONSTANTS,
        { endConstant: out.endConstant, design, recommended },
      ),
    )
  if (si.material !== null && frameMaterials[si.material].brittle)
    found.push(
      caution(
        "brittle-column",
        "warning",
        "Johnson's curve is meant for ductile metals; a brittle member snaps when it buckles and drops what it holds. Keep people from beneath it.",
        at(SHIGLEY, "section 4-13"),
      ),
    )
  return found
}

export function check(si: SiOf<ColumnInput>): Issue[] {
  const faults = [...sectionFaults(si.section, ["section"])]
  if (si.section.secondMoment !== null && si.section.area === null)
    faults.push(inconsistent(["section", "area"], "nothing", "the area beside the second moment"))
  return faults
}
