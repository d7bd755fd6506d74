import { type Issue, inconsistent, type NoSolution, refuse } from "../../solver/index.js"
import { lineHeatLength } from "../closed-forms.js"
import { plastics } from "../data.js"
import { lineRule } from "../tables.js"
import { NO_CORNER, SQUARE } from "../tube-bend/legs.js"
import type { LineBend, LineBendRefusal, Si } from "./types.js"

/** Film on a warm sheet in still air, radiation included, W/(m²·K). */
export const STILL_AIR = 10

/** Radius of the place that legs are measured to; null where it hangs on no corner. */
const cornerRadius = ({ legMeasure, insideRadius, thickness }: Si): number | null =>
  legMeasure === "outside" ? insideRadius + thickness : legMeasure === "inside" ? insideRadius : null

/** From where the bend begins to where legs are measured, m; null where there is no such place. */
function reach(si: Si): number | null {
  const corner = cornerRadius(si)
  if (corner !== null) return si.angle < NO_CORNER ? corner * Math.tan(si.angle / 2) : null
  if (si.legMeasure === "straight") return 0
  return si.angle >= SQUARE ? si.insideRadius + si.thickness : null
}

/** Inside radius and angle at which a leg of this length has next to nothing flat left. */
function roomFor(si: Si, leg: number): Record<string, number> {
  const room = leg * 0.999
  const corner = cornerRadius(si)
  const add = si.legMeasure === "inside" ? 0 : si.thickness
  if (corner === null) return { insideRadius: room - add }
  return { insideRadius: room / Math.tan(si.angle / 2) - add, angle: 2 * Math.atan(room / corner) }
}

export function kernel(si: Si): LineBend | NoSolution<LineBendRefusal> {
  const { material, thickness, insideRadius, angle, legA, legB, neutralShare } = si
  const { radius: multiple, border } = lineRule(material)
  const bendLength = (insideRadius + neutralShare * thickness) * angle
  const half = angle < NO_CORNER ? Math.tan(angle / 2) : null
  const outsideSetback = half === null ? null : (insideRadius + thickness) * half
  const needed = reach(si)
  const flat = (leg: number | null) => (leg === null || needed === null ? null : leg - needed)
  const [straightA, straightB] = [flat(legA), flat(legB)]
  for (const name of ["legA", "legB"] as const) {
    const [leg, left] = [si[name], flat(si[name])]
    if (leg !== null && left !== null && needed !== null && left < 0)
      return refuse(
        "does-not-fit",
        "The bend itself reaches {shortBy length} past the edge of {leg}: that leg needs at least {needed length}. Lengthen it, bend tighter or bend less.",
        -left,
        { [name]: leg, needed },
        { [name]: needed, ...roomFor(si, Math.min(legA ?? leg, legB ?? leg)) },
        { leg: name === "legA" ? "leg A" : "leg B" },
      )
  }
  const minRadius = multiple * thickness
  return {
    minRadius,
    wideEnough: insideRadius >= minRadius,
    outerStrain: ((1 - neutralShare) * thickness) / (insideRadius + neutralShare * thickness),
    bendLength,
    softWidth: bendLength + 2 * thickness,
    spreadLength: lineHeatLength(plastics[material].conductivity.value, thickness, STILL_AIR),
    outsideSetback,
    insideSetback: half === null ? null : insideRadius * half,
    deduction: outsideSetback === null ? null : 2 * outsideSetback - bendLength,
    straightA,
    straightB,
    flatLength: straightA === null || straightB === null ? null : straightA + bendLength + straightB,
    heaterLine: straightA === null ? null : straightA + bendLength / 2,
    minBorder: border === null ? null : border * thickness,
  }
}

export function check({ legA, legMeasure, angle }: Si): Issue[] {
  if (legA === null) return []
  if ((legMeasure === "outside" || legMeasure === "inside") && angle >= NO_CORNER)
    return [
      inconsistent(
        ["legA"],
        "legs to the mould line of a bend of {angle angle °}",
        "legs to the back of the bend, or to where it begins, from 175° on: the mould line lies too far away, and at 180° there is none",
        { angle },
      ),
    ]
  if (legMeasure === "bend" && angle < SQUARE)
    return [
      inconsistent(
        ["legMeasure"],
        "the back of a bend of {angle angle °}",
        "a mould line, or where the bend begins, below 90°: the other leg reaches past its back",
        { angle },
      ),
    ]
  return []
}
