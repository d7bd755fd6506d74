import { theRoot } from "../../numeric/index.js"
import type { SiOf, Source } from "../../solver/index.js"
import { safeWindow } from "../forming-window.js"
import { INCROPERA, practice } from "../sources.js"
import { coreTime, type Heated, heated, type Properties, propertiesOf, STEFAN_BOLTZMANN, surfaceTime, type Variant } from "./heating.js"
import type { HeatingTimeInput } from "./types.js"

type Si = SiOf<HeatingTimeInput>

/** Film coefficients taken where none is given, W/(m²·K). */
export const films: Readonly<Record<Si["heatSource"], { readonly value: number; readonly source: Source }>> = {
  // circulating, radiation included: 10 to 40, at the low end of the 25 to 250 of forced gases
  oven: { value: 25, source: INCROPERA },
  // moved over the part, inside the 25 to 250 of forced gases
  "heat-gun": { value: 60, source: INCROPERA },
  // contact under light pressure
  "hot-plate": { value: 500, source: practice },
  // still air: 2 to 25 for free convection in gases
  radiant: { value: 8, source: INCROPERA },
  // stirred a little, inside the 50 to 1000 of free convection in liquids
  "water-bath": { value: 500, source: INCROPERA },
}
/** Film at the back of a sheet in room air, radiation included, W/(m²·K). */
const BACK = 10
const HIGHEST = 2000

/** Everything one heating problem is made of. */
export interface HeatingProblem {
  readonly target: number
  readonly limit: number
  /** Hottest that a surface left in the heat may settle at before the source counts as one that chars. */
  readonly ceiling: number
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
  const { material, heatSource, startTemperature, ambientTemperature, emissivity } = si
  const { low, high: limit, ceiling } = safeWindow(material)
  const target = si.coreTemperature ?? low
  const convection = si.filmCoefficient ?? films[heatSource].value
  const mean = (startTemperature + limit) / 2 + 273.15
  const radiation = heatSource === "radiant" ? 4 * emissivity * STEFAN_BOLTZMANN * mean ** 3 : 0
  const film = convection + radiation
  const black = emissivity * STEFAN_BOLTZMANN
  const made: { readonly variant: Variant; readonly properties: Properties; readonly heated: Heated }[] = []
  return {
    target,
    limit,
    ceiling,
    convection,
    film,
    mean,
    swings: si.shape === "tube" && si.filling === "dry-sand" && si.sandTemperature !== null && si.sandTemperature !== startTemperature,
    // radiation is taken along its tangent at the mean surface temperature
    equivalentOf: (t) =>
      heatSource === "radiant"
        ? (black * ((t + 273.15) ** 4 - mean ** 4) + radiation * mean + convection * (ambientTemperature + 273.15)) / film - 273.15
        : t,
    sourceOf: (t) =>
      heatSource === "radiant"
        ? Math.max(0, ((t + 273.15) * film - radiation * mean - convection * (ambientTemperature + 273.15)) / black + mean ** 4) ** 0.25 -
          273.15
        : t,
    part(variant) {
      const known = made.find((m) => m.variant === variant)
      if (known) return known.heated
      const properties = propertiesOf(material, si, target - startTemperature, variant)
      // ends of the spread that conduct alike share the search for their modes
      const like = made.find((m) => m.properties.conductivity === properties.conductivity)
      const back = heatSource === "hot-plate" ? BACK : heatSource === "radiant" ? film : 0
      const isSame = like?.properties.density === properties.density && like.properties.specificHeat === properties.specificHeat
      const part =
        like && isSame
          ? like.heated
          : heated(si, properties, film, back, startTemperature, ambientTemperature, si.sandTemperature ?? startTemperature, like?.heated)
      made.push({ variant, properties, heated: part })
      return part
    },
  }
}

/** How the hottest source was found: by both ends of the spread, or held down to where the plastic begins to char. */
export type LimitKind = "solved" | "scorch" | "none" | "not-sought"

/** The hottest source: its equivalent temperature, and where it was solved, the time and the variant whose surface is at the limit. */
export interface SourceLimit {
  readonly kind: LimitKind
  readonly equivalent: number | null
  readonly time: number | null
  readonly variant: Variant
}

/** Ends of the spread at which a surface may be the first to pass its limit. */
const SKINS = ["skin", "fast"] as const

/** The earliest that a surface may pass its limit, whatever the spread. */
export function earliestSurface(problem: HeatingProblem, equivalent: number): { time: number; spot: number; variant: Variant } | null {
  const met = SKINS.flatMap((variant) => {
    const passed = surfaceTime(problem.part(variant), equivalent, problem.limit, problem.swings)
    return passed ? [{ ...passed, variant }] : []
  })
  return met.length ? met.reduce((a, b) => (b.time < a.time ? b : a)) : null
}

/** Share of the source in what the heated face settles at, at the end of the spread where it is largest. */
export function settledShare(problem: HeatingProblem): number {
  const { response, surfaces } = problem.part("skin")
  return response.steady(surfaces[surfaces.length - 1] as number, { outside: 1, inside: 0, initial: [0] })
}

/**
 * The hottest source with which no surface passes its limit before the core is surely ready, slow plastic against quick surface;
 * never one under which a surface settles above the onset of charring.
 */
export function limitOf(problem: HeatingProblem): SourceLimit {
  const none = { kind: "none", equivalent: null, time: null, variant: "skin" } as const
  if (problem.swings) return { ...none, kind: "not-sought" }
  const slow = problem.part("slow")
  // the core settles at share·source + the rest: from just above that on there is an arrival
  const share = slow.response.steady(slow.plastic[0] as number, { outside: 1, inside: 0, initial: [0] })
  const { inside } = slow.drive(0)
  const least = (problem.target + 0.25 - (1 - share) * inside) / share
  const hottest = (outside: number) => {
    const met = coreTime(slow, outside, problem.target, false)
    if (!met) return { excess: Number.NEGATIVE_INFINITY, time: null, variant: "skin" as Variant }
    const at = (variant: Variant) => {
      const part = problem.part(variant)
      return part.response.at(met.time, part.drive(outside))[part.surfaces[part.surfaces.length - 1] as number] as number
    }
    const variant: Variant = at("fast") > at("skin") ? "fast" : "skin"
    return { excess: at(variant) - problem.limit, time: met.time, variant }
  }
  if (hottest(least).excess > 0) return none
  // a surface settles at share·source + the rest as well: the source that would have it settle at the onset of charring
  const part = settledShare(problem)
  const most = Math.min(problem.equivalentOf(HIGHEST), (problem.ceiling - (1 - part) * inside) / part)
  if (!(most > least)) return none
  if (hottest(most).excess < 0) return { kind: "scorch", equivalent: most, time: null, variant: "skin" }
  const found = theRoot((outside) => hottest(outside).excess, least, most, 1e-12, "hottest source")
  const { time, variant } = hottest(found.x)
  return { kind: "solved", equivalent: found.x, time, variant }
}
