// What checks of the power tree ask of it: the worst over the conditions, who feeds whom, and whether all that draws is known.
import { chemistries } from "../../pack/index.js"
import type { Source } from "../../solver/index.js"
import type { RigSi } from "../whole/faults.js"
import { blocked, type Found, lacking } from "./check.js"
import type { Judged, Supplied } from "./conditions.js"
import type { Measured, NotMade } from "./finding.js"

export type Power = NonNullable<RigSi["power"]>
export type BusSi = Power["buses"][number]

/** The datasheet of a thing, as the source of a limit. */
export const sheet = (of: string): Source => ({ title: `the ${of}'s datasheet`, verified: "practice" })

/** The worst of a number over the conditions, with the condition's name. */
export function over(rig: Judged, of: (supply: Supplied) => number, most = true) {
  let [value, condition] = [most ? Number.NEGATIVE_INFINITY : Number.POSITIVE_INFINITY, ""]
  for (const supply of rig.supplies ?? []) {
    const here = of(supply)
    if (most ? here > value : here < value) [value, condition] = [here, supply.condition]
  }
  return { value, condition: `everything at once, ${condition}` }
}

/** Where the supply gives up with everything that may run at once, and under what; null where it stands. */
export function givesUp(rig: Judged): { readonly bus: string; readonly condition: string } | null {
  for (const { condition, model, state } of rig.supplies ?? []) {
    const tripped = state.limits.findIndex((l) => l === "source-current" || l === "output-current")
    const at = state.failed >= 0 ? state.failed : tripped
    if (at >= 0) return { bus: model.names[at] as string, condition }
  }
  return null
}

/** Why no sum of currents can be judged: the supply has no state, or a motion is on no bus and its current in no sum. */
export function unsummed(rig: Judged): NotMade | null {
  const failed = givesUp(rig)
  if (failed && (rig.supplies ?? []).some(({ state }) => state.failed >= 0))
    return blocked("The supply cannot carry everything at once: see there first.", "supply-carries", failed.bus)
  const loose = rig.rig.motions.findIndex((motion) => motion.bus === null)
  return loose === -1
    ? null
    : lacking(
        `motions[${loose}].bus`,
        `Nothing says which bus feeds ${rig.rig.motions[loose]?.name}: its current is in no sum of currents.`,
      )
}

/** A finding for each bus that a question concerns. */
export function onBuses(rig: Judged, find: (bus: BusSi, index: number, power: Power) => Measured | NotMade | null): Found[] {
  const { power } = rig.rig
  if (!power) return []
  const why = unsummed(rig)
  return power.buses.flatMap((bus, i): Found[] => {
    const result = why ?? find(bus, i, power)
    return result ? [{ subject: bus.name, result }] : []
  })
}

/** Lowest and highest voltage of a source over its charge. */
export function rangeOf(source: Power["sources"][number]): { readonly low: number; readonly high: number } {
  if (source.type !== "cells") return { low: source.voltage, high: source.voltage }
  const { cellCutOffVoltage, cellFullVoltage } = chemistries[source.chemistry]
  return { low: source.series * cellCutOffVoltage, high: source.series * cellFullVoltage }
}

/** Source that a bus branches from without a converter between; null behind one. */
export function directSource(power: Power, bus: BusSi): Power["sources"][number] | null {
  let from = bus.from
  for (let round = 0; round <= power.buses.length; round++) {
    const source = power.sources.find((s) => s.name === from)
    if (source) return source
    const above = power.buses.find((b) => b.name === from)
    if (!above || above.converter) return null
    from = above.from
  }
  return null
}

/** Source that a bus hangs on in the end, by name. */
export function sourceNameOf(power: Power, bus: string | null): string | null {
  let from = bus
  for (let round = 0; round <= power.buses.length; round++) {
    const one = power.buses.find((b) => b.name === from)
    if (!one) return from
    from = one.from
  }
  return null
}
