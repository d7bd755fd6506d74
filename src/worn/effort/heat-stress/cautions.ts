import { at, type Caution, caution, type SiOf } from "../../../solver/index.js"
import { takeItOff } from "../../care.js"
import { childHeatSource, clothingOverSource, metabolicClassSource, nioshHeatSource, wbgtSource } from "../../sources-around.js"
import { adjustmentOf, clothingAdjustments, publishedAdjustment } from "../data-heat.js"
import type { HeatStress, HeatStressCaution, HeatStressInput } from "./types.js"

/** Hazards and limits of an answer about heat. */
export function heatCautions(si: SiOf<HeatStressInput>, out: HeatStress): Caution<HeatStressCaution>[] {
  const found: Caution<HeatStressCaution>[] = [
    takeItOff,
    caution(
      "heat-can-kill",
      "warning",
      "Heat illness comes quickly inside a costume. Confusion, staggering, stopped sweating or collapse is an emergency: cool the wearer and call for help. Someone outside the costume watches, with water and shade; sweat that cannot evaporate makes every limit too high.",
      nioshHeatSource,
    ),
    caution(
      "adults-only",
      "warning",
      "These limits are for adults who are fit for work. They say nothing of a child, an older or pregnant person, or anyone with fever, medicine or too little to drink; bands once published for children were withdrawn. For a child, keep it light, short and cool, and ask a doctor.",
      childHeatSource,
    ),
  ]
  if (out.exceeded)
    found.push(
      out.workShare > 0
        ? caution(
            "too-hot",
            "warning",
            "The heat in this clothing counts as {effectiveWbgt temperature °C} WBGT, over the limit of {wbgtLimit temperature °C}: wear the rig no more than {minutes} min of each hour, resting out of it in the shade, or go at a cooler hour.",
            wbgtSource,
            { effectiveWbgt: out.effectiveWbgt, wbgtLimit: out.wbgtLimit, minutes: Math.floor(60 * out.workShare) },
          )
        : caution(
            "too-hot",
            "warning",
            "The heat in this clothing counts as {effectiveWbgt temperature °C} WBGT, over the limit of {wbgtLimit temperature °C}, and no rest in the same heat makes up for it: do not wear the rig now; go at a cooler hour.",
            wbgtSource,
            { effectiveWbgt: out.effectiveWbgt, wbgtLimit: out.wbgtLimit },
          ),
    )
  if (Math.abs(out.classLimit - out.curveLimit) > 1)
    found.push(
      caution(
        "limits-disagree",
        "note",
        "The class gives {classLimit temperature °C} and the curve {curveLimit temperature °C}; the lower counts.",
        at(nioshHeatSource, "section 8.1, against ISO 7243:2017, table A.1"),
        { classLimit: out.classLimit, curveLimit: out.curveLimit },
      ),
    )
  const published = publishedAdjustment(si.clothing, si.hooded)
  if (si.clothingAdjustment !== null && si.clothingAdjustment < published)
    found.push(
      caution(
        "own-adjustment",
        "caution",
        "The adjustment of {given.clothingAdjustment temperatureDifference K} is below the {published temperatureDifference K} published for this clothing and is not used: choose the clothing that is really worn.",
        wbgtSource,
        { "given.clothingAdjustment": si.clothingAdjustment, published },
      ),
    )
  if (adjustmentOf(si) < clothingAdjustments["vapour-barrier"].adjustment)
    found.push(
      caution(
        "costumes-are-tight",
        "caution",
        "Foam, plastic sheet and closed panels keep sweat in: a costume is nearer the vapour-tight suit (11 K, over other clothes 12 K, a closed head 1 K more) than work clothes.",
        clothingOverSource,
      ),
    )
  else
    found.push(
      caution(
        "tight-suit",
        "caution",
        "In clothing this tight WBGT is a rough guide only, and in a suit sealed all round no guide at all: plan for short spells, and watch the wearer rather than the number.",
        nioshHeatSource,
      ),
    )
  if (out.bodySurface === null)
    found.push(
      caution(
        "standard-person",
        "caution",
        "The limits in watts are for a person of 1.8 m² of skin; the same work is harder on a smaller body. Give `bodyMass` and `stature` of the smallest wearer.",
        metabolicClassSource,
      ),
    )
  if (!(out.standardMetabolicRate >= 100 && out.standardMetabolicRate <= 600))
    found.push(
      caution(
        "outside-range",
        "caution",
        "The limits were drawn for work of 100 to 600 W; beyond that they are only carried on, and hard work in heat is cut short by the heart.",
        at(nioshHeatSource, "section 8.1, range of the curves"),
      ),
    )
  if (si.acclimatized)
    found.push(
      caution(
        "acclimatized",
        "note",
        "Acclimatized means a week or more of such work in such heat, kept up; a parade once a year is not.",
        wbgtSource,
      ),
    )
  return found
}
