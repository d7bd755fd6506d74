import { integrate, theRoot } from "../numeric/index.js"
import type { SiOf, Step } from "../solver/index.js"
import { areaOf, type ConductorDescription, resistance20, temperatureFactor } from "./conductor.js"
import { bladeFuse, type ConductorMetal, type Metal, metals, preeceConstants } from "./data.js"
import { heatAtRise, heatAtSurface, steadyRise } from "./heat.js"
import { heatPath, type Laid, type LaidWire, startOf } from "./laid.js"
import { ADIABATIC, SHORT_FAULT } from "./sources.js"

/*
 * The one rule for "this wire bears this current for this long, here". For good: the conductor settles at its insulation's
 * rating or below. For a short fault, up to 5 s: it stays at or below the short-time limit, heated by I²·r, cooled by what a
 * steady surface would shed. The heat the insulation itself stores is left out, so a real wire is never hotter than this.
 * Against skin: its surface stays at or below what skin bears for hours. Every solver that judges a wire asks here.
 */

/** The temperature past which no insulation of small wires lasts, °C: from here on it burns off. */
export const BURNS_OFF = 300

/** Surface that skin bears for hours, whatever it is made of, °C (ISO 13732-1, contact of 8 h and longer). */
export const TOUCH_LIMIT = 43

/** Longest time that counts as a short fault, s (IEC 60364-4-43, clause 434.5.2). */
export const SHORT = 5

/** Short-time limit of PVC insulation, °C (IEC 60364-4-43, table 43A). */
export const SHORT_LIMIT = 160

/** Field of the conductor temperature that a short fault may reach. */
export const shortLimitField = {
  kind: "temperature",
  symbol: "T_f",
  label: "conductor temperature limit in a short fault",
  min: 70,
  max: 350,
  typical: [140, 250],
  default: SHORT_LIMIT,
} as const

/** Field of what a wire's own datasheet lets it carry. */
export const ampacityField = {
  kind: "current",
  symbol: "I_w",
  label: "ampacity by the wire's datasheet",
  min: "0.1 mA",
  max: 1000,
  typical: [2, 30],
  default: null,
} as const

/** Conductor temperature a short fault may reach, °C: never less than insulation bears for good. */
export const shortLimit = (si: { readonly insulationRating: number; readonly faultTemperatureLimit: number }): number =>
  Math.max(si.faultTemperatureLimit, si.insulationRating)

/** How a wire is laid where a solver does not ask: the kindest usual place, alone in still air, with PVC insulation. */
export const aloneInAir: SiOf<Laid> = {
  arrangement: "free-air",
  wires: 1,
  ambientTemperature: 25,
  skinTemperature: 35,
  insulationThickness: 0.4e-3,
  insulationConductivity: 0.17,
  bundleConductivity: 0.15,
  emissivity: 0.9,
  paddingThickness: 0.01,
  paddingConductivity: 0.04,
  paddingSurface: 8,
  insulationRating: 80,
}

/** A wire of which only the size is known, laid as {@link aloneInAir}. */
export const inAir = ({ awg, area, material, stranding }: SiOf<ConductorDescription>): LaidWire => ({
  awg,
  area,
  material,
  stranding,
  ...aloneInAir,
})

/** Adiabatic constant of a metal, A·√s/m²: K = √(Q·(β + 20 °C)/ρ₂₀). */
export function adiabaticConstant(metal: Pick<ConductorMetal, "heatCapacity" | "beta" | "resistivity">): number {
  return Math.sqrt((metal.heatCapacity * (metal.beta + 20)) / metal.resistivity)
}

/** Adiabatic factor of a conductor, A·√s/m²: K·√ln((β + T_f)/(β + T_i)). */
export function adiabaticFactor(metal: Metal, initial: number, final: number): number {
  const { beta } = metals[metal]
  return adiabaticConstant(metals[metal]) * Math.sqrt(Math.log((beta + final) / (beta + initial)))
}

/** Seconds a current takes from one conductor temperature to another with no heat lost: never more than {@link timeTo} says. */
export function adiabaticTime(wire: SiOf<ConductorDescription>, current: number, from: number, to: number): number {
  if (!(from < to)) return 0
  return ((adiabaticFactor(wire.material, from, to) * areaOf(wire)) / current) ** 2
}

/** Fusing current of a bare round wire in still air by Preece's law, A: C·(d/inch)^1.5. */
export function fusingCurrent(diameter: number, constant: number): number {
  return constant * (diameter / 0.0254) ** 1.5
}

/** Current that melts the bare wire in still air in the end, A. */
export const meltingCurrent = (si: SiOf<ConductorDescription>): number =>
  fusingCurrent(Math.sqrt((4 * areaOf(si)) / Math.PI), preeceConstants[si.material])

/** Heat of one metre of the conductor for each A², Ω/m, at its temperature. */
const heatPerSquare = (wire: LaidWire, temperature: number) => resistance20(wire) * temperatureFactor(wire.material, temperature)

/** Current that holds the conductor at a temperature for good, A. */
export const currentAt = (wire: LaidWire, temperature: number): number =>
  Math.sqrt(heatAtRise(heatPath(wire), temperature - startOf(wire)) / heatPerSquare(wire, temperature))

/** Current the wire bears for good here, A: its conductor settles at the insulation's rating. */
export const ratedCurrentOf = (wire: LaidWire): number => currentAt(wire, wire.insulationRating)

/** Current for good at which the outer surface is as hot as skin bears for hours, A; nothing where the surroundings are. */
export function touchCurrentOf(wire: LaidWire): number {
  const path = heatPath(wire)
  const rise = TOUCH_LIMIT - path.ambient
  const heat = heatAtSurface(path, rise)
  return Math.sqrt(heat / heatPerSquare(wire, TOUCH_LIMIT + heat * path.inner))
}

/** What becomes of a wire here at a current for good. */
export interface Verdict {
  /** Current it bears for good, A, and whether it bears this one. */
  readonly most: number
  readonly bears: boolean
  /** Rises of surface and conductor over the surroundings, K; null where its insulation burns off. */
  readonly steady: NonNullable<ReturnType<typeof steadyRise>> | null
}

/** The verdict on a wire at a current for good: by its insulation's rating, and whether it burns. */
export function judge(wire: LaidWire, current: number): Verdict {
  const most = ratedCurrentOf(wire)
  const steady = steadyOf(wire, current)
  return { most, bears: current <= most, steady: steady !== null && startOf(wire) + steady.conductor <= BURNS_OFF ? steady : null }
}

/** Where a wire settles, or null where it finds no balance below 1000 K over its surroundings. */
export function steadyOf(wire: LaidWire, current: number): NonNullable<ReturnType<typeof steadyRise>> | null {
  return steadyRise(heatPath(wire), { base: current ** 2 * resistance20(wire), alpha: metals[wire.material].coefficient })
}

/** Seconds a current takes to heat the conductor from one temperature to another here; infinite where it never does. */
export function timeTo(wire: LaidWire, current: number, from: number, to: number): number {
  const first = Math.max(from, startOf(wire))
  if (!(first < to)) return 0
  const path = heatPath(wire)
  const gain = (t: number) => current ** 2 * heatPerSquare(wire, t) - heatAtRise(path, t - path.ambient)
  // what is shed rises faster than what is made, so the balance is passed once at most
  if (!(gain(to) > 0)) return Number.POSITIVE_INFINITY
  const stored = metals[wire.material].heatCapacity * areaOf(wire)
  return integrate((t) => stored / gain(t), first, to, 1e-9).value
}

/** Whether the wire bears the current for that long here, from a temperature on. */
export function withstands(wire: LaidWire, current: number, seconds: number, limit: number, from: number = wire.insulationRating): boolean {
  const most = seconds <= SHORT ? limit : wire.insulationRating
  return current <= currentAt(wire, most) || timeTo(wire, current, from, most) >= seconds
}

/** Largest current the wire bears for a short fault of that long here, A. */
export function shortCurrent(wire: LaidWire, seconds: number, limit: number, from: number = wire.insulationRating): number {
  const first = Math.max(from, startOf(wire))
  const low = currentAt(wire, limit)
  // at the limit already there is no time left to heat up in: only what holds it there for good is borne
  if (!(first < limit)) return low
  // heated as if at its coolest and cooled as if at its hottest, it would need longer than it has
  const stored = (metals[wire.material].heatCapacity * areaOf(wire) * (limit - first)) / seconds
  const high = Math.sqrt((stored + heatAtRise(heatPath(wire), limit - startOf(wire))) / heatPerSquare(wire, first))
  const surplus = (current: number) => 1 / timeTo(wire, current, first, limit) - 1 / seconds
  return theRoot(surplus, low, high, 1e-12 * high, "current that heats a wire to its limit in time").x
}

/** Largest blade fuse of which a wire bears for good what it may carry for minutes, A; `bound` where its datasheet allows less. */
export const longFuse = (wire: LaidWire, bound = Number.POSITIVE_INFINITY): number =>
  Math.min(ratedCurrentOf(wire), meltingCurrent(wire), bound) / bladeFuse.longMultiple

/** Whether a blade fuse guards a wire: what it may carry for minutes, and twice its rating for as long as it may take. */
export function guards(
  fuse: number,
  wire: LaidWire,
  limit: number,
  from?: number,
  bound?: number,
): { readonly long: boolean; readonly overload: boolean } {
  return {
    long: fuse <= longFuse(wire, bound),
    overload: withstands(wire, bladeFuse.overload.multiple * fuse, bladeFuse.overload.longest, limit, from),
  }
}

/** Largest blade fuse that guards a wire, A; `bound` where its datasheet allows less. */
export function largestFuse(wire: LaidWire, limit: number, from?: number, bound?: number): number {
  const long = longFuse(wire, bound)
  if (guards(long * (1 - 1e-12), wire, limit, from).overload) return long
  return Math.min(long, shortCurrent(wire, bladeFuse.overload.longest, limit, from) / bladeFuse.overload.multiple)
}

/** Steps that read a metal's constants for short faults. */
export const adiabaticSteps: readonly Step<{ readonly material: Metal }, unknown>[] = [
  {
    symbol: "Q",
    kind: "number",
    meaning: "heat capacity by volume, J/(K·m³)",
    given: (si) => metals[si.material].heatCapacity,
    source: ADIABATIC,
  },
  {
    symbol: "beta",
    kind: "number",
    meaning: "reciprocal temperature coefficient at 0 °C, °C",
    given: (si) => metals[si.material].beta,
    source: ADIABATIC,
  },
]

/** What the rule rests on. */
export const withstandSources = [SHORT_FAULT, ADIABATIC] as const
