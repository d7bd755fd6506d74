// Hazards of a quadrant on cables.
import { type Caution, caution } from "../../solver/index.js"
import { fallsCaution, pinchCaution } from "../hazards.js"
import { storedEnergySource } from "../sources.js"
import type { CableQuadrant, CableQuadrantCaution, Si } from "./types.js"

/** Arc left on a rim below which building errors can use it up, rad: ten degrees. */
const LITTLE = (10 * Math.PI) / 180

export function quadrantCautions(si: Si, out: CableQuadrant) {
  const left = Math.min(out.wrapLeft, out.rimLeft ?? Number.POSITIVE_INFINITY)
  return [
    pinchCaution("Quadrant, cables and stops"),
    fallsCaution("The arm"),
    caution(
      "stored-energy",
      "warning",
      "Cables and spring hold up to {storedEnergy energy} with or without power: a cable that snaps or slips its end fitting whips, and the arm is thrown the other way. Let the tension off before working on it, cover the cables, and keep faces and hands out of their line.",
      storedEnergySource,
      { storedEnergy: out.storedEnergy },
    ),
    ...(left < LITTLE
      ? [
          caution(
            "little-wrap",
            "caution",
            "Only {left angle °} of arc are left on a rim at the end of the travel: a little overrun takes the cable off it or bends it at its end fitting. Leave more, and set a stop before it.",
            undefined,
            { left },
          ),
        ]
      : []),
    ...(si.returnedBy.type === "cable"
      ? [
          caution(
            "retension",
            "note",
            "Cables settle and sheaths shorten in the first hours of use, and pretension goes with them: fit an adjuster, set it again after the first hour, and check it before every use. Pretension also loads the pivot all the time.",
          ),
        ]
      : []),
  ] satisfies Caution<CableQuadrantCaution>[]
}
