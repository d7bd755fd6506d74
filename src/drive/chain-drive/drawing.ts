// The picture of a chain on its sprockets.
import type { SiOf } from "../../solver/index.js"
import { drawTwoWheels } from "../two-wheels.js"
import { kernel } from "./kernel.js"
import type { ChainDriveInput } from "./types.js"

/**
 * Draws the pitch circles of both sprockets and the chain as one SVG picture: driving sprocket left, the tight strand below, at the
 * distance at which the whole links fit.
 *
 * @param si - input of chainDrive in SI, as its `read` gives it
 */
export function drawChainDrive(si: SiOf<ChainDriveInput>, width = 560): string {
  const out = kernel(si)
  return drawTwoWheels(
    {
      title: "Chain drive",
      driving: "driving sprocket",
      radii: [out.drivingDiameter / 2, out.drivenDiameter / 2],
      distance: out.fittingDistance,
      crossed: false,
      tight: out.workingTension,
      slack: out.centrifugalTension,
    },
    width,
  )
}
