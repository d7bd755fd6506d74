import { type Caution, caution, commonPractice } from "../../solver/index.js"
import { sizeCautions, solidCautions, touchCaution } from "../conductor.js"
import { burnsCaution, raisedLimit } from "../overload.js"
import { BLADE } from "../sources.js"
import { TOUCH_LIMIT } from "../withstand.js"
import type { ConductorSize, ConductorSizeCaution, Si } from "./types.js"

/** What an answer warns of. */
export function cautions(si: Si, out: ConductorSize): Caution<ConductorSizeCaution>[] {
  const found: Caution<ConductorSizeCaution>[] = [
    ...sizeCautions(si, out.conductorTemperature),
    ...solidCautions({ area: out.awg === null ? out.area : null, stranding: si.stranding }),
  ]
  if (si.fuseRating === null)
    found.push(
      caution(
        "unfused-wire",
        "warning",
        "No fuse was named: this wire bears the current meant, not a short. Put a fuse at the source and size the wire for 135 % of it; have a qualified person check the build.",
        BLADE,
      ),
    )
  if (out.surfaceTemperature > TOUCH_LIMIT) found.push(burnsCaution("surfaceTemperature", out.surfaceTemperature))
  if (out.area < 0.2e-6)
    found.push(
      caution(
        "thin-wire",
        "note",
        "Wire of {area area mm²}, thinner than 0.2 mm², breaks easily where it flexes or is pulled: a moving wire wants more for strength alone.",
        commonPractice,
        { area: out.area },
      ),
    )
  return [
    ...found,
    ...raisedLimit(si.fuseRating === null ? 0 : si.faultTemperatureLimit),
    ...touchCaution("given.sourceVoltage", si.sourceVoltage),
  ]
}
