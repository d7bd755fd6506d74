// A performance in time: where every motion is, and the volts of every bus.
import type { Perform } from "../rig/index.js"
import { type Column, curves, type Figure } from "./figure.js"

/**
 * What a rig does in time: the way of each motion, the voltage of each bus, the current of each source, all over the time.
 *
 * @param performance - what `perform` returned
 * @example
 * ```ts
 * import { perform } from 'alula/rig'
 * import { stageFigures } from 'alula/figure'
 * stageFigures(perform(perform.example)).length > 1 // => true
 * ```
 */
export function stageFigures({ times, motions, buses, sources }: Perform): readonly Figure[] {
  const over: Column = { label: "time", kind: "time", unit: "s", values: times }
  return [
    ...curves(
      "way of each motion",
      over,
      motions.map(({ name, travel }) => ({ label: name, kind: "ratio", values: travel })),
    ),
    ...curves(
      "voltage of each bus",
      over,
      buses.map(({ name, voltage }) => ({ label: name, kind: "voltage", unit: "V", values: voltage })),
    ),
    ...curves(
      "current of each source",
      over,
      sources.map(({ name, current }) => ({ label: name, kind: "current", unit: "A", values: current })),
    ),
  ]
}
