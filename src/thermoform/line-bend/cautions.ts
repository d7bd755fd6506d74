import { type Caution, caution } from "../../solver/index.js"
import { heatingCautions, windowCautions } from "../forming-window.js"
import { practice } from "../sources.js"
import { lineRule } from "../tables.js"
import type { LineBend, LineBendCaution, Si } from "./types.js"

/** What an answer warns of. */
export function cautions(si: Si, out: LineBend): Caution<LineBendCaution>[] {
  const { bothFrom, source, bothSource } = lineRule(si.material)
  const found: Caution<LineBendCaution>[] = heatingCautions(si.material, si.material === "low-temp-polyester")
  if (!out.wideEnough)
    found.push(
      caution(
        "tight-radius",
        "caution",
        "An inside radius of {given.insideRadius length} is tighter than the {minRadius length} to plan with: the outer face crazes, thins or tears and the inner one puckers.",
        source,
        { "given.insideRadius": si.insideRadius, minRadius: out.minRadius },
      ),
    )
  if (si.faces === 1 && si.thickness >= bothFrom)
    found.push(
      caution(
        "one-face",
        "caution",
        "From {bothFrom length} on heat both faces, or turn the sheet over again and again: from one face alone the near skin is spoilt before the far one is soft.",
        bothSource,
        { bothFrom },
      ),
    )
  if (si.heaterWidth !== null && si.heaterWidth < out.softWidth)
    found.push(
      caution(
        "narrow-heater",
        "caution",
        "The heater lays open {given.heaterWidth length}, and {softWidth length} must be soft: open the slot, move the sheet to and fro, or bend tighter, or the bend is forced into cold sheet and cracks there.",
        practice,
        { "given.heaterWidth": si.heaterWidth, softWidth: out.softWidth },
      ),
    )
  if (out.minBorder !== null && out.straightA !== null && out.straightB !== null && Math.min(out.straightA, out.straightB) < out.minBorder)
    found.push(
      caution(
        "near-edge",
        "caution",
        "A leg has less than the {minBorder length} flat beside the bend that its maker asks for: the edge warms through and warps. Bend first and trim after.",
        source,
        { minBorder: out.minBorder },
      ),
    )
  found.push(
    caution(
      "warm-beside",
      "note",
      "Heat creeps sideways: at rest the warmth beside the heated band falls to a third every {spreadLength length}. Keep film, glue, print and fingers further off than three times that.",
      practice,
      { spreadLength: out.spreadLength },
    ),
    caution(
      "bows",
      "note",
      "Heated along one line only, a long sheet bows as the line shrinks on cooling: bend one trial strip of the same sheet, and hold the bend in a jig until it has set.",
      practice,
    ),
    ...windowCautions(si.material),
  )
  return found
}
