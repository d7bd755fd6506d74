import type { SiOf, Source } from "../../solver/index.js"
import { safeWindow } from "../forming-window.js"
import { type Heated, heated, propertiesOf, rootInTime, type Variant } from "../heating-time/heating.js"
import { INCROPERA } from "../sources.js"
import type { CoolingTimeInput } from "./types.js"

type Si = SiOf<CoolingTimeInput>
/** Carried in the open, or held in the jig. */
export type Stage = "air" | "jig"

/** Film coefficients in the jig, radiation included, W/(m²·K). */
export const coolingFilms: Readonly<Record<Si["cooling"], { readonly value: number; readonly source: Source }>> = {
  // free convection in gases, 2 to 25
  "still-air": { value: 10, source: INCROPERA },
  // at the low end of forced gases, 25 to 250
  fan: { value: 30, source: INCROPERA },
  // inside free convection in liquids, 50 to 1000
  water: { value: 500, source: INCROPERA },
}
/** Air that moves a little past a part carried to the jig, W/(m²·K): working time must not come out long. */
const CARRIED = 15

/** A cooling problem: temperatures that decide, and the part at either stage. */
export interface Cooling {
  readonly formed: number
  readonly formable: number
  readonly release: number
  readonly film: number
  readonly faces: number
  part(stage: Stage, variant: Variant): Heated
}

/** Puts the problem together from an input. */
export function cooling(si: Si): Cooling {
  const window = safeWindow(si.material)
  const formed = si.formingTemperature ?? window.aim
  const film = si.filmCoefficient ?? coolingFilms[si.cooling].value
  const given = { conductivity: si.conductivity, density: si.density, specificHeat: si.specificHeat }
  return {
    formed,
    formable: window.low,
    release: si.releaseTemperature ?? window.release,
    film,
    faces: si.faces,
    part: (stage, variant) =>
      heated(
        { ...si, faces: stage === "air" ? 2 : si.faces },
        propertiesOf(si.material, given, formed - si.ambientTemperature, variant),
        stage === "air" ? CARRIED : film,
        0,
        formed,
        si.ambientTemperature,
        formed,
      ),
  }
}

/** When, where and how well a temperature was found. */
export interface Cooled {
  readonly time: number
  readonly spot: number
  readonly iterations: number
  readonly residual: number
}

/** First time at which the warmest spot of the plastic (or its coldest surface) is down to a temperature; null where it never is. */
function coolingTime(part: Heated, room: number, target: number, warmest: boolean): Cooled | null {
  const drive = part.drive(room)
  const spots = warmest ? part.plastic : part.surfaces
  const pick = warmest ? Math.max : Math.min
  const at = (time: number) => {
    const all = part.response.at(time, drive)
    return spots.map((s) => all[s] as number)
  }
  const { crossing } = part.response
  const slowest = part.response.series(crossing * 10, 0, drive).rates[0] as number
  const f = (log: number) => pick(...at(Math.exp(log))) - target
  const found = rootInTime(f, Math.log(crossing * 1e-12), Math.log(Math.max(crossing, 60 / slowest)), crossing)
  if (!found) return null
  const time = Math.exp(found.x)
  const values = at(time)
  return {
    time,
    spot: spots[values.indexOf(pick(...values))] as number,
    iterations: found.iterations,
    residual: Math.abs(found.residual),
  }
}

/** Time at one stage: working in the open, or held in the jig; null where it never cools so far. */
export function stageTime(si: Si, stage: Stage, variant: Variant): Cooled | null {
  const all = cooling(si)
  return coolingTime(all.part(stage, variant), si.ambientTemperature, stage === "air" ? all.formable : all.release, stage === "jig")
}
