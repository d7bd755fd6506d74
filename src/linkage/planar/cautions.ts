import { type Caution, caution } from "../../solver/index.js"
import { fallsCaution, pinchCaution } from "../hazards.js"
import { jalon } from "../sources.js"
import type { Si } from "./input.js"
import type { PlanarLinkage, PlanarLinkageCaution } from "./output.js"

/** Hazards and limits of validity of a mechanism. */
export function planarCautions(si: Si, out: PlanarLinkage): Caution<PlanarLinkageCaution>[] {
  return [
    pinchCaution("The bars of a linkage"),
    ...(si.loads.length + si.torques.length + (si.gravity > 0 ? si.masses.length : 0) > 0
      ? [fallsCaution("A load that the drivers hold")]
      : []),
    ...(out.minConditioning < 1e-3
      ? [
          caution(
            "near-singular",
            "caution",
            "The mechanism comes close to a pose where the drivers lose hold of it (conditioning {minConditioning}, under 0.001, {minConditioningShare ratio %} of the way): forces in bars and pins grow without limit there, and small errors of length move points a lot.",
            jalon,
            { minConditioning: out.minConditioning, minConditioningShare: out.minConditioningShare },
          ),
        ]
      : []),
  ]
}
