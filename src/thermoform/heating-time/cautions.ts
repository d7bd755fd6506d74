// What an answer warns of, and where it stops being valid.

import { at, type Caution, caution } from "../../solver/index.js"
import { contactTemperature } from "../closed-forms.js"
import { plastics } from "../data.js"
import { heatingCautions, safeWindow, windowCautions } from "../forming-window.js"
import { CARSLAW, CRAWFORD, FORMING_TABLE, practice } from "../sources.js"
import { drySand, propertiesOf } from "./heating.js"
import { films } from "./problem.js"
import type { HeatingTime, HeatingTimeCaution, Si } from "./types.js"

/** Temperature of the bore just after hot sand meets it. */
function boreContact(si: Si): number {
  const { conductivity, density, specificHeat } = propertiesOf(si.material, si, 1e9, "usual")
  const effusivity = (k: number, rho: number, c: number) => Math.sqrt(k * rho * c)
  return contactTemperature(
    effusivity(drySand.conductivity, drySand.density, drySand.specificHeat),
    si.sandTemperature ?? si.startTemperature,
    effusivity(conductivity, density, specificHeat),
    si.startTemperature,
  )
}

/** What an answer warns of. */
export function cautions(si: Si, out: HeatingTime): Caution<HeatingTimeCaution>[] {
  const found: Caution<HeatingTimeCaution>[] = heatingCautions(si.material, si.heatSource === "water-bath")
  const { ceiling } = safeWindow(si.material)
  if (out.equivalentTemperature > ceiling)
    found.unshift(
      caution(
        "source-chars",
        "warning",
        "The source would bring a surface left in it to {equivalentTemperature temperature °C}, past the {ceiling temperature °C} where this plastic begins to char or its surface is spoilt: a few moments too long, a thin edge or a fold is enough. Use a cooler source.",
        plastics[si.material].scorch?.sources[0] ?? FORMING_TABLE,
        { equivalentTemperature: out.equivalentTemperature, ceiling },
      ),
    )
  if (out.overheatsFirst && out.minSurfaceLimitTime !== null)
    found.unshift(
      caution(
        "surface-first",
        "warning",
        "A surface may pass {surfaceTemperatureLimit temperature °C} after {minSurfaceLimitTime time}, before the core is surely ready at {timeRange.high time}: it blisters, scorches or fumes. Use the advised, cooler source for longer.",
        practice,
        {
          surfaceTemperatureLimit: out.surfaceTemperatureLimit,
          minSurfaceLimitTime: out.minSurfaceLimitTime,
          "timeRange.high": out.timeRange.high,
        },
      ),
    )
  else if (out.minSurfaceLimitTime !== null)
    found.push(
      caution(
        "take-out-in-time",
        "caution",
        "Take it out between {timeRange.high time} and {minSurfaceLimitTime time}: after that a surface may pass {surfaceTemperatureLimit temperature °C}. At the advised source no time is too long.",
        practice,
        {
          "timeRange.high": out.timeRange.high,
          minSurfaceLimitTime: out.minSurfaceLimitTime,
          surfaceTemperatureLimit: out.surfaceTemperatureLimit,
        },
      ),
    )
  if (si.filling === "dry-sand")
    found.push(
      caution(
        "hot-sand",
        "warning",
        "Only bone-dry sand: damp sand makes steam that can blow the plugs and the sand out. Hot sand runs into gloves and shoes and burns deeply; plug both ends, and let it cool in the pipe before emptying.",
        practice,
      ),
    )
  if (si.sandTemperature !== null && si.sandTemperature > out.surfaceTemperatureLimit)
    found.push(
      caution(
        "sand-above-limit",
        "warning",
        "Sand at {given.sandTemperature temperature °C} is above the plastic's limit of {surfaceTemperatureLimit temperature °C}; only the cold wall keeps the bore near {bore temperature °C} at first.",
        at(CARSLAW, "2.15"),
        { "given.sandTemperature": si.sandTemperature, surfaceTemperatureLimit: out.surfaceTemperatureLimit, bore: boreContact(si) },
      ),
    )
  if (out.advisedSourceTemperature === null)
    found.push(
      caution(
        "no-safe-source",
        "caution",
        "No single source temperature is surely hot enough and surely not too hot with this uncertainty: measure the temperature better, heat both faces, or use thinner stock.",
        practice,
      ),
    )
  if (si.heatSource === "radiant" || si.heatSource === "heat-gun")
    found.push(
      caution(
        "uneven",
        "caution",
        "A radiant heater or a heat gun heats unevenly and goes on heating past the limit: judge by the hottest spot with a surface thermometer, keep moving, stop at the surface limit even where the times say longer.",
      ),
    )
  found.push(
    si.filmCoefficient === null
      ? caution(
          "film-estimate",
          "note",
          "Heat transfer is a typical figure, {filmCoefficient heatTransferCoefficient}, and properties are those at room temperature: times may be off by a third. Time a scrap of the same stock.",
          films[si.heatSource].source,
          { filmCoefficient: out.filmCoefficient },
        )
      : caution(
          "film-estimate",
          "note",
          "Properties are those at room temperature: times may be off by a third. Time a scrap of the same stock.",
          CRAWFORD,
        ),
  )
  found.push(...windowCautions(si.material))
  return found
}
