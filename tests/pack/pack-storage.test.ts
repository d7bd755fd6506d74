// Second route: published shares are taken off day by day, and figures of other tables have to lie within the range.
import { describe, expect, it } from "vitest"
import { packStorage, runtime, type StandingKind, standingCells } from "../../src/pack/index.js"
import { referenceRows } from "../helpers/references.js"

const DAY = 86400
const stood = (cells: StandingKind, days: number, more: object = {}) =>
  packStorage({ cells, capacity: "5 Ah", duration: days * DAY, ...more })

/** Percent of a full charge: in the first day, and a day after it, at least and at most, at 20 °C; and for 10 K. */
const published: Readonly<Record<StandingKind, readonly [low: readonly [number, number], high: readonly [number, number], ten: number]>> = {
  lithium: [[0, 24 / 365], [0, 60 / 365], 2],
  "lead-sealed": [[0, 36 / 365 / 2 ** 0.5], [0, 40 / 365], 2],
  "lead-flooded": [[0, 48 / 365], [0, 4 / 7 / 2 ** (20 / 30)], 2],
  nickel: [[10, 120 / 365], [20, 180 / 365], 3 ** 0.5],
  "nickel-low-loss": [[0, 15 / 365], [0, 30 / 365], 3 ** 0.5],
  alkaline: [[0, (2 / 365) * 2 ** (-10 / 90)], [0, (3 / 365) * 2 ** (-10 / 90)], 2],
}

describe("packStorage", () => {
  it("takes off day by day what the tables print, at any temperature and with a circuit", () => {
    for (const cells of Object.keys(standingCells) as StandingKind[])
      for (const storageTemperature of cells === "alkaline" ? [-10, 5, 20] : [-10, 5, 20, 35, 50])
        for (const circuitCurrent of [0, 1e-4]) {
          const [low, high, ten] = published[cells]
          const factor = ten ** ((storageTemperature - 20) / 10)
          const left = ([first, later]: readonly [number, number]) => {
            let charge = 100
            for (let hour = 0; hour < 200 * 24 && charge > 0; hour++)
              charge -= (factor * (later + (hour < 24 ? first : 0))) / 24 + (100 * circuitCurrent) / 5
            return Math.max(0, charge) / 100
          }
          const out = stood(cells, 200, { storageTemperature, circuitCurrent })
          const what = `${cells} at ${storageTemperature} °C`
          expect(out.stateOfCharge.high, what).toBeCloseTo(left(low), 9)
          expect(out.stateOfCharge.low, what).toBeCloseTo(left(high), 9)
        }
  })

  it("holds what other tables print within its range", () => {
    const row = (id: string) => referenceRows("pack").find((r) => r.id === id)
    const monthly = row("selfdis-monthly-table")?.expected as Record<string, readonly number[]>
    for (const [kind, place] of [
      ["lithium", 0],
      ["nickel", 3],
      ["lithium", 4],
    ] as const)
      for (const list of [monthly.percent_per_month_min, monthly.percent_per_month_max]) {
        const { low, high } = stood(kind, 365 / 12).selfDischarge
        expect(100 * low).toBeLessThanOrEqual((list?.[place] as number) + 1e-9)
        expect(100 * high).toBeGreaterThanOrEqual((list?.[place] as number) - 1e-9)
      }
    const month = stood("nickel", 28).stateOfCharge
    expect([month.low <= 0.75, month.high >= 0.75]).toEqual([true, true])
    // one year at 0 and 40 °C: a page gives 97 and 62 % of a lead battery's charge
    const lead = (storageTemperature: number) => stood("lead-sealed", 365, { storageTemperature }).stateOfCharge
    expect([lead(0).low <= 0.97, lead(40).low <= 0.62, lead(40).high < lead(0).high]).toEqual([true, true, true])
  })

  it("says when it comes to the minimum, and makers' half year for lead before that", () => {
    for (const cells of ["lithium", "nickel", "nickel-low-loss", "alkaline"] as const)
      for (const minStateOfCharge of [0.1, 0.5, 0.95]) {
        const more = { minStateOfCharge, storageTemperature: 30, circuitCurrent: 3e-4 }
        const { topUpInterval } = stood(cells, 1, more)
        expect(stood(cells, topUpInterval / DAY, more).stateOfCharge.low).toBeCloseTo(minStateOfCharge, 9)
      }
    expect(stood("lead-sealed", 1).topUpInterval).toBeCloseTo(182.5 * DAY, 3)
    expect(stood("lead-sealed", 1, { storageTemperature: 45 }).topUpInterval).toBeLessThanOrEqual(45.7 * DAY)
    expect(stood("lithium", 1, { startStateOfCharge: 0.1 }).topUpInterval).toBe(0)
  })

  it("hands its charge and capacity to runtime", () => {
    const { stateOfCharge, capacityShare } = stood("lithium", 90, { startStateOfCharge: 0.8, storageTemperature: 25 })
    // two thirds of the way from 4 % a year at 40 % of its charge to 20 % full, by the square root of time
    expect(capacityShare).toBeCloseTo(1 - (0.04 + (0.16 * 2) / 3) * Math.sqrt(90 / 365), 12)
    const pack = { series: 3, parallel: 1, cellCapacity: "5 Ah", cellResistance: "30 mohm", pattern: [{ current: "1 A" }] } as const
    const worn = runtime({ ...pack, startStateOfCharge: stateOfCharge.low, capacityShare: capacityShare as number })
    expect(worn.runtime).toBeLessThan(runtime({ ...pack, startStateOfCharge: stateOfCharge.high }).runtime)
  })
})
