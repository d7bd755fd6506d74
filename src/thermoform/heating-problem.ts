import { brent } from "../numeric/index.js"
import type { SiOf } from "../solver/index.js"
import { safeWindow } from "./forming-window.js"
import type { HeatThroughInput } from "./heat-through.js"
import { coreTime, type Heated, heated, propertiesOf, STEFAN_BOLTZMANN, type Variant } from "./heating.js"

type Si = SiOf<HeatThroughInput>

/** Film coefficients taken where none is given, W/(m²·K). */
export const films: Readonly<Record<Si["source"], { readonly value: number; readonly source: string }>> = {
  oven: {
    value: 25,
    source: "circulating oven, radiation included; range 10 to 40; Incropera et al., table 1.1 gives 25 to 250 for forced gases",
  },
  heatGun: { value: 60, source: "moved over the part; inside the 25 to 250 of Incropera et al., table 1.1; common practice, no source" },
  hotPlate: { value: 500, source: "contact under light pressure; common practice, no source" },
  radiant: { value: 8, source: "still air; Incropera et al., table 1.1 gives 2 to 25 for free convection in gases" },
}
/** Film at the back of a sheet in room air, radiation included, W/(m²·K). */
const BACK = 10
const HIGHEST = 2000

/** Everything one heating problem is made of. */
export interface HeatingProblem {
  readonly target: number
  readonly limit: number
  readonly convection: number
  readonly film: number
  readonly mean: number
  readonly swings: boolean
  equivalentOf(source: number): number
  sourceOf(equivalent: number): number
  part(variant: Variant): Heated
}

/** Puts the problem together from an input. */
export function heatingProblem(si: Si): HeatingProblem {
  const { plastic, source, start, room, emissivity } = si
  const { from, to: limit } = safeWindow(plastic)
  const target = si.coreTemperature ?? from
  const convection = si.film ?? films[source].value
  const mean = (start + limit) / 2 + 273.15
  const radiation = source === "radiant" ? 4 * emissivity * STEFAN_BOLTZMANN * mean ** 3 : 0
  const film = convection + radiation
  const black = emissivity * STEFAN_BOLTZMANN
  const made: Partial<Record<Variant, Heated>> = {}
  return {
    target,
    limit,
    convection,
    film,
    mean,
    swings: si.form === "tube" && si.filling === "drySand" && si.sandTemperature !== null && si.sandTemperature !== start,
    // radiation is taken along its tangent at the mean surface temperature
    equivalentOf: (t) =>
      source === "radiant"
        ? (black * ((t + 273.15) ** 4 - mean ** 4) + radiation * mean + convection * (room + 273.15)) / film - 273.15
        : t,
    sourceOf: (t) =>
      source === "radiant"
        ? Math.max(0, ((t + 273.15) * film - radiation * mean - convection * (room + 273.15)) / black + mean ** 4) ** 0.25 - 273.15
        : t,
    part(variant) {
      const known = made[variant]
      if (known) return known
      const back = source === "hotPlate" ? BACK : source === "radiant" ? film : 0
      const fresh = heated(si, propertiesOf(plastic, si, target - start, variant), film, back, start, room, si.sandTemperature ?? start)
      made[variant] = fresh
      return fresh
    },
  }
}

/** The equivalent temperature at which the surface meets its limit as the core arrives. */
export function limitOf(problem: HeatingProblem): { kind: string; equivalent: number | null; time: number | null } {
  if (problem.swings) return { kind: "not-sought", equivalent: null, time: null }
  const part = problem.part("usual")
  const surface = part.surfaces[part.surfaces.length - 1] as number
  // the core settles at share·source + the rest: from just above that on there is an arrival
  const unit = { outside: 1, inside: 0, initial: [0] }
  const share = part.response.steady(part.plastic[0] as number, unit)
  const { inside } = part.drive(0)
  const least = (problem.target + 0.25 - (1 - share) * inside) / share
  const excess = (outside: number) => {
    const met = coreTime(part, outside, problem.target, false)
    return met ? (part.response.at(met.time, part.drive(outside))[surface] as number) - problem.limit : Number.NEGATIVE_INFINITY
  }
  if (excess(least) > 0) return { kind: "none", equivalent: null, time: null }
  const most = problem.equivalentOf(HIGHEST)
  if (!(most > least) || excess(most) < 0) return { kind: "beyond", equivalent: null, time: null }
  const found = brent(excess, least, most, 1e-12)
  if (!found) return { kind: "none", equivalent: null, time: null }
  return { kind: "solved", equivalent: found.x, time: coreTime(part, found.x, problem.target, false)?.time ?? null }
}
