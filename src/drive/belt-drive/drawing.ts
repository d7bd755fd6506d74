// The picture of a belt on its pulleys.
import { isNoSolution, type SiOf } from "../../solver/index.js"
import { drawTwoWheels } from "../two-wheels.js"
import { kernel, runOf } from "./kernel.js"
import type { BeltDriveInput } from "./types.js"

/**
 * Draws both pulleys and the belt as one SVG picture: driving pulley left, the tight strand below.
 *
 * @param si - input of beltDrive in SI, as its `read` gives it
 * @returns null where the belt slips or its teeth climb over
 */
export function drawBeltDrive(si: SiOf<BeltDriveInput>, width = 560): string | null {
  const out = kernel(si)
  if (isNoSolution(out)) return null
  const { r1, r2, crossed } = runOf(si)
  return drawTwoWheels(
    {
      title: "Belt drive",
      driving: "driving pulley",
      radii: [r1, r2],
      distance: si.centreDistance,
      crossed,
      tight: out.tightTension,
      slack: out.slackTension,
    },
    width,
  )
}
