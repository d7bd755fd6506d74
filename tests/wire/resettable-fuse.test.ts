// Second route: the part's warming is stepped through in time, and the wire's by another calculation.
import { describe, expect, it } from "vitest"
import { type HoldTable, holdTables, publishedShare, resettableFuse } from "../../src/wire/index.js"
import { referenceRows } from "../helpers/references.js"
import { currentFor, heated, inStillAir } from "./second.js"

const radial = { holdCurrent: 2.5, tripTime: 10.3, minResistance: 0.025, maxResistance: 0.07, maxVoltage: 30, sourceVoltage: 12.6 } as const
const solved = (more: object) => resettableFuse({ ...radial, current: 1.5, awg: 14, ...more })

/** Seconds until a body warmed by I² and cooled by what it has passes the mark, by fourth-order steps; 1e5 where it has not. */
function stepped(constant: number, current: number, trip: number): number {
  const rate = (x: number) => ((current / trip) ** 2 - x) / constant
  // a hundred steps for the way that goes without cooling, which is the shortest
  const h = (constant * (trip / current) ** 2) / 100
  let [x, time] = [0, 0]
  while (time < 1e5) {
    const a = rate(x)
    const b = rate(x + (h * a) / 2)
    const c = rate(x + (h * b) / 2)
    const d = rate(x + h * c)
    const next = x + (h * (a + 2 * b + 2 * c + d)) / 6
    if (next >= 1) return time + (h * (1 - x)) / (next - x)
    x = next
    time += h
  }
  return time
}
const halved = (low: number, high: number, isLow: (x: number) => boolean) => {
  let [a, b] = [low, high]
  for (let k = 0; k < 60; k++) {
    const mid = Math.sqrt(a * b)
    if (isLow(mid)) a = mid
    else b = mid
  }
  return b
}

describe("resettableFuse", () => {
  it("trips when a body that warms in steps of time does, from its one printed time on", () => {
    for (const [trip, test, time] of [
      [5, 12.5, 10.3],
      [1, 2.5, 4],
      [18, 45, 20],
      [2, 8, 0.3],
    ] as const) {
      const constant = halved(0.01, 1e4, (tau) => stepped(tau, test, trip) < time)
      const part = { holdCurrent: trip / 2, tripCurrent: trip, testCurrent: test, tripTime: time }
      const at = { minDeviceTemperature: 23, maxDeviceTemperature: 23, maxFaultCurrent: 1000 }
      for (const ratio of [1.02, 1.2, 2, 5, 20, 200 / trip]) {
        const out = solved({ ...part, ...at, faultCurrent: ratio * trip })
        expect((out.tripDuration as number) / stepped(constant, ratio * trip, trip)).toBeCloseTo(1, 3)
      }
      const slow = halved(trip, 1000 * trip, (current) => stepped(constant, current, trip) > 5)
      expect(solved({ ...part, ...at }).slowCurrent / slow).toBeCloseTo(1, 3)
    }
  })

  it("agrees with a part and a wire stepped through at many currents, over parts and gauges", () => {
    const seen = new Set<string>()
    for (const [holdCurrent, tripTime] of [
      [0.5, 0.2],
      [0.5, 0.45],
      [0.5, 4],
      [2.5, 1],
      [2.5, 10.3],
      [9, 20],
    ] as const)
      for (const awg of [36, 32, 26, 20, 14, 8]) {
        const size = { awg, area: null, material: "copper" as const, stranding: "solid" }
        const out = solved({ holdCurrent, tripTime, awg, current: 0.1, minDeviceTemperature: 23 })
        const constant = tripTime / Math.log(25 / 21)
        const timeAt = (current: number) => constant * Math.log(current ** 2 / (current ** 2 - 4 * holdCurrent ** 2))
        const most = currentFor(size, inStillAir, 80)
        const currents = Array.from({ length: 60 }, (_, k) => 2 * holdCurrent * 1.0001 * (40 / (2.0002 * holdCurrent)) ** (k / 59))
        // beyond 5 s what the wire bears for good counts, up to 5 s its short-time limit
        const slow = currents.filter((current) => timeAt(current) > 5)
        const short = currents.filter((current) => timeAt(current) <= 5).filter((_, i, all) => i % 6 === 0 || i === all.length - 1)
        const edge = Math.abs(Math.min(out.slowCurrent, 40) / most - 1) < 0.1
        if (!edge) expect(out.protectsWire, `${holdCurrent} A on AWG ${awg}`).toBe(slow.every((current) => current <= most))
        const hottest = Math.max(...short.map((current) => heated(size, inStillAir, current, timeAt(current), 80, 120)))
        if (out.protectsWire && Math.abs(hottest - 160) > 3)
          expect(out.survivesFault, `${holdCurrent} A, ${tripTime} s on AWG ${awg}: ${hottest} °C`).toBe(hottest <= 160)
        seen.add(`${out.protectsWire} ${out.survivesFault}`)
      }
    expect([...seen].sort()).toEqual(["false false", "true false", "true true"])
  })

  it("holds less in the warmth and lets more through in the cold, within what every sheet prints", () => {
    for (const rows of Object.values(holdTables) as HoldTable[])
      for (const [celsius, share] of rows) {
        // printed against 20 or 23 °C
        const against = rows.some(([t]) => t === 20) ? 1 - (3 * 0.005) / 0.55 : 1
        const { low, high } = publishedShare(celsius)
        expect(low, `${celsius} °C`).toBeLessThanOrEqual(share / against + 1e-12)
        expect(high, `${celsius} °C`).toBeGreaterThanOrEqual(share / against - 1e-12)
      }
    let before = { holdLimit: Number.POSITIVE_INFINITY, tripLimit: Number.POSITIVE_INFINITY }
    for (let celsius = -40; celsius <= 85; celsius += 2.5) {
      const out = solved({ minDeviceTemperature: celsius, maxDeviceTemperature: celsius })
      expect(out.holdLimit).toBeLessThan(before.holdLimit)
      expect(out.tripLimit).toBeLessThan(before.tripLimit)
      expect(out.tripLimit).toBeGreaterThanOrEqual(2 * out.holdLimit - 1e-12)
      before = out
    }
  })

  it("takes twice the hold current for the trip current only where none is given: parts print 1.75 to 3 times", () => {
    const row = referenceRows("wire").find((r) => r.id === "ptc-not-always-twice")
    const [holds, trips] = [row?.inputs.hold_A as number[], row?.expected.trip_A as number[]]
    holds.forEach((holdCurrent, k) => {
      const at = { minDeviceTemperature: 23, maxDeviceTemperature: 23, current: 0.05 }
      expect(solved({ holdCurrent, tripCurrent: trips[k], ...at }).tripLimit).toBeCloseTo(trips[k] as number, 12)
      expect(solved({ holdCurrent, ...at }).tripLimit).toBeCloseTo(2 * holdCurrent, 12)
    })
  })

  it("speaks of what is still live, and never passes a part that the pack or the fault is too much for", () => {
    for (const more of [{}, { sourceVoltage: 40 }, { faultCurrent: 60 }, { current: 4 }, { awg: 30 }])
      expect(solved(more).cautions.map((c) => c.code)).toContain("still-live")
    expect(solved({ sourceVoltage: 40 })).toMatchObject({ withinRating: false, coordinated: false })
    expect(solved({ faultCurrent: 60 })).toMatchObject({ withinRating: false, coordinated: false })
    expect(solved({ current: 4 })).toMatchObject({ carriesLoad: false, coordinated: false })
    // what may never trip in the cold, or is not judged against a short circuit, is not passed
    const sound = { current: 1.5, awg: 10 }
    expect(solved({ ...sound, faultCurrent: 30 })).toMatchObject({ withinRating: true, coordinated: true })
    expect(solved({ ...sound, faultCurrent: null })).toMatchObject({ withinRating: null, coordinated: false })
    const cold = solved({ ...sound, faultCurrent: 6 })
    expect(cold).toMatchObject({ protectsWire: true, withinRating: true, tripDuration: null, coordinated: false })
    expect(solved({ trippedPower: 1.26 }).trippedCurrent).toBeCloseTo(0.1, 12)
  })
})
