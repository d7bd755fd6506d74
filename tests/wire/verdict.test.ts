import { describe, expect, it } from "vitest"
import { conductorSize, fuseCoordination, harness, voltageDrop, wireHeating } from "../../src/wire/index.js"
import { currentFor, flow, inStillAir, largestFuse } from "./second.js"

const gauge = (awg: number) => ({ awg, area: null, material: "copper" as const, stranding: "solid" })
const has = (out: { readonly cautions: readonly { readonly code: string }[] }, ...codes: string[]) =>
  out.cautions.some((c) => codes.includes(c.code))

/** Pack, fuse, wire and a load of that current. */
const net = (awg: number, current: number, fuseRating: number) =>
  harness({
    sources: [{ name: "pack", positive: "p", negative: "0", sourceVoltage: 100, sourceResistance: 0 }],
    fuses: [{ name: "main", from: "p", to: "f", fuseRating }],
    wires: [{ name: "out", from: "f", to: "a", length: 0.1, awg }],
    currentLoads: [{ name: "wing", from: "a", to: "0", current }],
  })
const sized = (current: number, fuseRating: number | null) => conductorSize({ current, length: 0.05, sourceVoltage: 100, fuseRating })
const fails = (awg: number, current: number, fuseRating: number | null, rule: string) => {
  const found = sized(current, fuseRating).candidates.find((c) => c.awg === awg)
  if (!found) throw new Error(`AWG ${awg} was not looked at`)
  return found.fails.split(",").includes(rule)
}

/** Whether the wire bears the current for good, alone in still air: what each of the solvers says. */
const bearing = (awg: number, current: number) => ({
  voltageDrop: !has(voltageDrop({ current, length: 1, awg }), "wire-overloaded", "wire-burns"),
  wireHeating: wireHeating({ current, awg }).bears && !has(wireHeating({ current, awg }), "over-rating"),
  conductorSize: !fails(awg, current, null, "temperature"),
  fuseCoordination: fuseCoordination({ fuseRating: current / 1.35, current: current / 2, awg }).protectsWire,
  harness: !has(net(awg, current, 1000), "wire-overloaded", "wire-burns"),
})
const everyone = (answers: object) => [...new Set(Object.values(answers))]

describe("one rule for what a wire bears, at its threshold by a second calculation", () => {
  const gauges = [30, 26, 22, 18, 14]

  it.each(gauges)("AWG %i for good: five solvers say yes just below and no just above", (awg) => {
    const rated = currentFor(gauge(awg), inStillAir, 80)
    expect(everyone(bearing(awg, rated * (1 - 1e-7)))).toEqual([true])
    expect(everyone(bearing(awg, rated * (1 + 1e-7)))).toEqual([false])
  })

  it.each(gauges)("AWG %i behind a fuse: sizing, coordination and harness agree on both sides of the largest", (awg) => {
    const largest = largestFuse(gauge(awg), inStillAir, 80, 160)
    const guarded = (fuse: number) => {
      const pair = fuseCoordination({ fuseRating: fuse, current: fuse / 2, awg })
      return {
        fuseCoordination: pair.protectsWire && pair.survivesOverload,
        conductorSize: !fails(awg, fuse / 2, fuse, "fuse"),
        harness: !has(net(awg, fuse / 2, fuse), "fuse-above-wire"),
      }
    }
    expect(everyone(guarded(largest * (1 - 1e-6)))).toEqual([true])
    expect(everyone(guarded(largest * (1 + 1e-6)))).toEqual([false])
  })

  it.each(gauges)("AWG %i against skin: all warn from 43 °C of surface on", (awg) => {
    let [low, high] = [25, 80]
    for (let k = 0; k < 60; k++) {
      const mid = (low + high) / 2
      if (flow(gauge(awg), inStillAir, mid).surface < 43) low = mid
      else high = mid
    }
    const warm = currentFor(gauge(awg), inStillAir, low)
    const warns = (current: number) => ({
      voltageDrop: has(voltageDrop({ current, length: 1, awg }), "burns"),
      wireHeating: has(wireHeating({ current, awg }), "burns"),
      fuseCoordination: has(fuseCoordination({ fuseRating: current, current, awg }), "burns"),
      harness: has(net(awg, current, 1000), "burns"),
      // of conductorSize the size chosen speaks: the thinnest, for its own current
      ...(awg === 30 ? { conductorSize: has(sized(current, null), "burns") } : {}),
    })
    expect(everyone(warns(warm * (1 - 1e-6)))).toEqual([false])
    expect(everyone(warns(warm * (1 + 1e-6)))).toEqual([true])
    // and go on warning of it where the insulation is past its rating too
    const { conductorSize: _, ...overloaded } = warns(currentFor(gauge(awg), inStillAir, 80) * 1.02)
    expect(everyone(overloaded)).toEqual([true])
  })
})
