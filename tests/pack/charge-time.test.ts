import { describe, expect, it } from "vitest"
import { type ChargeTime, type Chemistry, chargeTime, openCircuitVoltage } from "../../src/pack/index.js"
import { isNoSolution } from "../../src/solver/index.js"

const base = { series: 3, parallel: 2, cellCapacity: 9360, cellResistance: 0.08, chargeCurrent: 2 }
const solve = (more: object) => chargeTime.si(chargeTime.read({ ...base, ...more }))
const solved = (more: object): ChargeTime => {
  const out = solve(more)
  if (isNoSolution(out)) throw new Error(out.message)
  return out
}
const off = (a: number, b: number) => Math.abs(a - b) / Math.max(Math.abs(a), Math.abs(b), 1e-12)

/** The charger followed second by second. */
function secondBySecond(chemistry: Chemistry, perCell: number, current: number, end: number, start: number, h = 0.2) {
  const [capacity, resistance, limit] = [9360 * 2, (0.08 * 3) / 2, perCell * 3]
  let [s, time, energy] = [start, 0, 0]
  for (;;) {
    const emf = 3 * openCircuitVoltage(chemistry, s)
    const i = Math.min(current, (limit - emf) / resistance)
    if (i <= end || s >= 1) return { time, s, energy }
    energy += (emf + i * resistance) * i * h
    s += (i * h) / capacity
    time += h
  }
}

describe("chargeTime", () => {
  for (const [chemistry, perCell] of [
    ["nmc", 4.1],
    ["lfp", 3.45],
    ["lco", 4.05],
    ["lead", 2.09],
  ] as const)
    for (const chargeCurrent of [1, 4, 12])
      it(`follows the charger second by second: ${chemistry}, ${chargeCurrent} A`, () => {
        const out = solved({ chemistry, chargeCurrent, cellChargeVoltage: perCell, terminationCurrent: 0.3, startStateOfCharge: 0.1 })
        const other = secondBySecond(chemistry, perCell, chargeCurrent, 0.3, 0.1)
        expect(Math.abs(out.minDuration - other.time)).toBeLessThan(1 + 1e-3 * out.minDuration)
        expect(Math.abs(out.endStateOfCharge - other.s)).toBeLessThan(1e-4)
        expect(off(out.energy, other.energy)).toBeLessThan(1e-3)
      })

  it("is never shorter than the charge gained over the current", () => {
    for (const chargeCurrent of [0.5, 2, 8]) {
      const out = solved({ chargeCurrent })
      expect(out.minDuration).toBeGreaterThanOrEqual((18720 * out.endStateOfCharge) / chargeCurrent - 1e-6)
    }
  })

  it("refuses frost, cells that cannot be charged, and a full pack", () => {
    const code = (more: object) => {
      const out = solve(more)
      return isNoSolution(out) ? out.noSolution : "answered"
    }
    expect(code({ cellTemperature: -0.1 })).toBe("too-cold")
    expect(code({ cellTemperature: 0 })).toBe("answered")
    expect(code({ chemistry: "alkaline" })).toBe("not-rechargeable")
    expect(code({ startStateOfCharge: 1 })).toBe("already-full")
    expect(code({ chemistry: "lead", cellTemperature: -5 })).toBe("answered")
  })

  it("warns of a rate the temperature does not allow", () => {
    const codes = (temperature: number, chargeCurrent: number) =>
      chargeTime({ ...base, cellTemperature: temperature, chargeCurrent }).cautions.map((c) => c.code)
    // 5.2 Ah: 0.52 A, 1.04 A and 2.6 A are the limits of the three bands
    expect(codes(2, 0.5)).not.toContain("charge-rate")
    expect(codes(2, 0.6)).toContain("charge-rate")
    expect(codes(20, 2.5)).not.toContain("charge-rate")
    expect(codes(45, 0.1)).not.toContain("too-hot-to-charge")
    expect(codes(45.1, 0.1)).toContain("too-hot-to-charge")
  })

  it("warns where other chemistries are too cold to charge", () => {
    const codes = (chemistry: "nimh" | "lead", temperature: number) =>
      chargeTime({ ...base, chemistry, cellTemperature: temperature }).cautions.map((c) => c.code)
    expect(codes("nimh", -1)).toContain("cold-charge")
    expect(codes("nimh", 0)).not.toContain("cold-charge")
    expect(codes("lead", -10.1)).toContain("cold-charge")
    expect(codes("lead", -10)).not.toContain("cold-charge")
  })

  it("expects a range that holds what datasheets print, from a fifth to one and a half of the capacity per hour", () => {
    // capacity (Ah), charging and stopping current (A), printed minutes: 21700, 18650, polymer and LFP sheets
    for (const [ampereHours, chargeCurrent, endCurrent, printed, chemistry] of [
      [5, 2.5, 0.25, 150, "nmc"],
      [5, 6, 0.1, 100, "nmc"],
      [4, 2, 0.1, 180, "nmc"],
      [4, 6, 0.1, 60, "nmc"],
      [2.6, 1.3, 0.13, 180, "nmc"],
      [2.6, 2.6, 0.13, 150, "nmc"],
      [6.05, 1.21, 0.06, 360, "lco"],
      [1.3, 0.65, 0.026, 210, "lco"],
      [1.3, 1.3, 0.026, 180, "lco"],
      [3.3, 3.3, 0.165, 120, "lfp"],
    ] as const) {
      const out = chargeTime({
        series: 1,
        parallel: 1,
        chemistry,
        cellCapacity: ampereHours * 3600,
        cellResistance: 0.03,
        chargeCurrent,
        terminationCurrent: endCurrent,
      })
      expect(out.likelyDuration?.low as number, `${ampereHours} Ah at ${chargeCurrent} A`).toBeLessThanOrEqual(printed * 60 + 1e-6)
      expect(out.likelyDuration?.high as number, `${ampereHours} Ah at ${chargeCurrent} A`).toBeGreaterThanOrEqual(printed * 60 - 1e-6)
      // the constant-voltage part is never left out of what is to be expected
      expect(out.likelyDuration?.low as number).toBeGreaterThanOrEqual(out.simpleDuration + 1199)
    }
  })

  it("counts less of the last part the fuller the pack starts", () => {
    const from = (startCharge: number) => chargeTime({ ...base, startStateOfCharge: startCharge })
    const half = from(0.5)
    expect((half.likelyDuration?.low as number) - half.simpleDuration).toBeCloseTo(600, 6)
    expect((half.likelyDuration?.high as number) - half.simpleDuration).toBeCloseTo(7200, 6)
  })

  it("says for lead and nickel what it leaves out, and what they can do to people", () => {
    const codes = (more: object) => chargeTime({ ...base, ...more }).cautions.map((c) => c.code)
    // 5.2 Ah: 0.3 of the capacity per hour is 1.56 A, ten times it is 52 A
    expect(codes({ chemistry: "lead", chargeCurrent: 1.5 })).toEqual(["lead-battery", "lead-tail"])
    expect(codes({ chemistry: "lead", chargeCurrent: 1.6 })).toContain("charge-rate")
    expect(codes({ chemistry: "nimh", chargeCurrent: 52 })).toEqual(expect.arrayContaining(["nickel-battery", "charge-rate"]))
    expect(codes({ chemistry: "nimh", chargeCurrent: 5.2 })).not.toContain("charge-rate")
    expect(codes({ chemistry: "nimh", cellTemperature: 46 })).toContain("too-hot-to-charge")
    expect(codes({ chemistry: "lead", cellTemperature: 51 })).toContain("too-hot-to-charge")
    // 2.45 V a cell is 14.7 V for twelve volts, the upper end of the cycle setting
    expect(codes({ chemistry: "lead", cellChargeVoltage: 2.46 })).toContain("over-charge")
    expect(codes({ chemistry: "lead", cellChargeVoltage: 2.45 })).not.toContain("over-charge")
    // iron phosphate sheets print 3.65 V with 50 mV either way
    expect(codes({ chemistry: "lfp", cellChargeVoltage: 3.7 })).not.toContain("over-charge")
    expect(codes({ chemistry: "lfp", cellChargeVoltage: 3.71 })).toContain("over-charge")
  })

  it("refuses a charge voltage that no charge can reach, naming one that works", () => {
    const out = solve({ cellChargeVoltage: 2.5 })
    if (!isNoSolution(out)) throw new Error("should refuse")
    expect(out.noSolution).toBe("insufficient-voltage")
    expect(out.shortBy).toBeGreaterThan(0)
    expect(solved({ cellChargeVoltage: out.nearest.cellChargeVoltage }).minDuration).toBeGreaterThan(0)
  })

  it("expects of sealed lead the 12 to 16 h from empty that its pages print, and no sooner than the ampere-hour law lets it", () => {
    const lead = { chemistry: "lead", series: 6, parallel: 1, cellCapacity: 18000, cellResistance: 0.0045 } as const
    const empty = solved({ ...lead, chargeCurrent: 1.5 }).likelyDuration
    expect([(empty?.low as number) / 3600, (empty?.high as number) / 3600]).toEqual([12, 16])
    for (const startStateOfCharge of [0, 0.3, 0.5, 0.8, 0.95])
      for (const chargeCurrent of [0.15, 0.25, 0.4, 0.5, 0.9, 1.5]) {
        const out = solved({ ...lead, chargeCurrent, startStateOfCharge })
        // without gas a battery takes at most as many amperes as ampere-hours are missing; losses come on top
        let [missing, time] = [5 * (1 - startStateOfCharge), 0]
        while (missing > 0.05) {
          missing -= (Math.min(chargeCurrent, missing) * 20) / 3600
          time += 20
        }
        const what = `${chargeCurrent} A from ${startStateOfCharge}`
        expect(out.likelyDuration?.high as number, what).toBeGreaterThan(1.05 * time)
        expect(out.likelyDuration?.low as number, what).toBeGreaterThanOrEqual(1.1 * out.simpleDuration)
        expect(out.likelyDuration?.high as number, what).toBeLessThan(1.1 * out.simpleDuration + 16.001 * 3600)
        expect(out.chargeIn, what).toBeCloseTo(1.1 * 18000 * (1 - startStateOfCharge), 6)
      }
  })

  it("holds lead to less in the warm and more in the cold, and stops nickel by what can be measured at its rate", () => {
    const high = (cellTemperature: number) =>
      solved({ chemistry: "lead", cellTemperature, openCircuitCurve: steep, chargeCurrent: 0.5 }).changeOverStateOfCharge
    // a straight curve of 0.8 V a cell: 5 mV/K move the change-over by 1/160 a kelvin, next to what the resistance does
    const steep = [
      { stateOfCharge: 0, voltage: 1.9 },
      { stateOfCharge: 1, voltage: 2.7 },
    ]
    const ohm = (celsius: number) => 0.08 * Math.exp((15e3 / 8.314462618) * (1 / (celsius + 273.15) - 1 / 298.15))
    for (const celsius of [-10, 10, 25, 30, 48])
      expect(high(celsius)).toBeCloseTo((14.5 / 6 - 0.005 * (celsius - 25) - 0.25 * ohm(celsius) - 1.9) / 0.8, 9)
    expect(high(60)).toBeCloseTo(high(50) + (0.25 * (ohm(50) - ohm(60))) / 0.8, 9)
    const nickel = (chargeCurrent: number) => solved({ chemistry: "nimh", chargeCurrent })
    // 5.2 Ah in three cells: a tenth, three tenths and once the capacity per hour
    expect(nickel(0.52).termination).toEqual({ timer: expect.closeTo(16 * 3600, 6), voltageDip: null })
    expect(nickel(1.56).termination).toEqual({ timer: expect.closeTo(5 * 3600, 6), voltageDip: null })
    expect(nickel(5.2).termination).toEqual({ timer: expect.closeTo(1.5 * 3600, 6), voltageDip: expect.closeTo(0.009, 12) })
    for (const rate of [0.02, 0.1, 0.2, 0.3, 0.5, 1, 3]) {
      const out = nickel(5.2 * rate)
      expect(out.termination?.timer as number).toBeGreaterThanOrEqual(out.minDuration)
      expect(out.chargeIn).toBeCloseTo(out.minDuration * 5.2 * rate, 6)
    }
    expect(solved({}).termination).toBeNull()
  })
})
