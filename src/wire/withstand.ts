import { integrate, theRoot } from "../numeric/index.js"
import type { SiOf, Step } from "../solver/index.js"
import { areaOf, type ConductorDescription, resistance20, temperatureFactor } from "./conductor.js"
import { bladeFuse, type ConductorMetal, type Metal, metals, preeceConstants } from "./data.js"
import { heatAtRise, steadyRise } from "./heat.js"
import { heatPath, type Laid, type LaidWire, startOf } from "./laid.js"
import { ADIABATIC, SHORT_FAULT } from "./sources.js"

/*
 * The one rule for "this wire bears this current for this long, here". For good: the conductor settles at its insulation's
 * rating or below. For a short fault, up to 5 s: it stays at or below the short-time limit, heated by I²·r, cooled by what a
 * steady surface would shed. The heat the insulation itself stores is left out, so a real wire is never hotter than this.
 */

/** Longest time that counts as a short fault, s (IEC 60364-4-43, clause 434.5.2). */
export const SHORT = 5

/** Short-time limit of PVC insulation, °C (IEC 60364-4-43, table 43A). */
export const SHORT_LIMIT = 160

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

/** Whether a blade fuse guards a wire: what it may carry for minutes, and twice its rating for as long as it may take. */
export function guards(fuse: number, wire: LaidWire, limit: number, from?: number): { readonly long: boolean; readonly overload: boolean } {
  return {
    long: bladeFuse.longMultiple * fuse <= Math.min(ratedCurrentOf(wire), meltingCurrent(wire)),
    overload: withstands(wire, bladeFuse.overload.multiple * fuse, bladeFuse.overload.longest, limit, from),
  }
}

/** Largest blade fuse that guards a wire, A. */
export function largestFuse(wire: LaidWire, limit: number, from?: number): number {
  const long = Math.min(ratedCurrentOf(wire), meltingCurrent(wire)) / bladeFuse.longMultiple
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
