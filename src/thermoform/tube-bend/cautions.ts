import { type Caution, caution } from "../../solver/index.js"
import { plastics } from "../data.js"
import { heatingCautions } from "../forming-window.js"
import { PIPE_BENDING, practice, SAND_BENDING } from "../sources.js"
import { springbacks, unsupportedBend } from "../tables.js"
import { legsMeet } from "./legs.js"
import type { Si, TubeBend, TubeBendCaution } from "./types.js"

/** What an answer warns of. */
export function cautions(si: Si, out: TubeBend): Caution<TubeBendCaution>[] {
  const { coldStrain, shrinkage } = plastics[si.material]
  const found: Caution<TubeBendCaution>[] = []
  if (si.hot) found.push(...heatingCautions(si.material, si.material === "low-temp-polyester"))
  if (si.hot && !out.wideEnough)
    found.push(
      caution(
        "tight-radius",
        "caution",
        "{given.radius length} is tighter than the {least length} to plan with: the wall wrinkles, flattens or thins past what is calculated here.",
        SAND_BENDING,
        { "given.radius": si.radius, least: si.support === "empty" ? out.minRadiusEmpty : out.minRadiusFilled },
      ),
    )
  if (si.hot && si.support === "empty" && si.angle > unsupportedBend)
    found.push(
      caution(
        "needs-support",
        "caution",
        "Bends of more than 30° need support inside, such as dry sand or a bending spring, or the tube flattens.",
        PIPE_BENDING,
      ),
    )
  if (!si.hot)
    found.push(
      out.minRadiusCold === null
        ? caution("cold-bend", "warning", "No maker's figure for a cold bend was found for this plastic: bend it hot.")
        : caution(
            "cold-bend",
            "warning",
            "Bent cold below {minRadiusCold length} radius the plastic stays under stress and may crack or burst without warning, in cold weather or years later.",
            coldStrain?.sources[0] ?? practice,
            { minRadiusCold: out.minRadiusCold },
          ),
    )
  if (si.hot && si.support === "filled")
    found.push(
      caution(
        "hot-sand",
        "warning",
        "Only bone-dry sand, both ends plugged: damp sand makes steam that can blow a plug out, and hot sand burns through gloves.",
      ),
    )
  if (legsMeet(si, out.straightA ?? 0, out.straightB ?? 0))
    found.push(
      caution(
        "legs-meet",
        "caution",
        "Past 180° the legs come together again, and these would have to pass through each other: set the loop sideways by at least a diameter, shorten a leg or bend less.",
        practice,
      ),
    )
  if (out.setback === null && out.takeUp !== null)
    found.push(
      caution(
        "no-corner",
        "note",
        "From 175° on the corner of the legs lies too far away to measure to, and from 180° on there is none. Measure each leg to the back of the bend, {takeUp length} from where it begins, or to where the bend begins.",
        practice,
        { takeUp: out.takeUp },
      ),
    )
  found.push(
    caution(
      "try-one",
      "note",
      "Springback and thinning vary with heat and hold time: bend one of the same stock, measure its angle, and put that in as springback.",
      springbacks[si.hot ? "heated" : "cold"].sources[0] ?? practice,
    ),
  )
  if (si.hot && !(shrinkage.high < 0.01))
    found.push(
      caution(
        "shrinks",
        "note",
        "This plastic shrinks along its length when heated: cut longer and trim.",
        shrinkage.sources[0] ?? practice,
      ),
    )
  return found
}
