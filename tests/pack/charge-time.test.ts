import { describe, expect, it } from "vitest"
import { type ChargeTime, type Chemistry, chargeTime, openCircuitVoltage } from "../../src/pack/index.js"
import { isNoSolution } from "../../src/solver/index.js"

const base = { series: 3, parallel: 2, capacity: 9360, resistance: 0.08, chargeCurrent: 2 }
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
        const out = solved({ chemistry, chargeCurrent, chargeVoltage: perCell, endCurrent: 0.3, startCharge: 0.1 })
        const other = secondBySecond(chemistry, perCell, chargeCurrent, 0.3, 0.1)
        expect(Math.abs(out.time - other.time)).toBeLessThan(1 + 1e-3 * out.time)
        expect(Math.abs(out.endCharge - other.s)).toBeLessThan(1e-4)
        expect(off(out.energy, other.energy)).toBeLessThan(1e-3)
      })

  it("is never shorter than the charge gained over the current", () => {
    for (const chargeCurrent of [0.5, 2, 8]) {
      const out = solved({ chargeCurrent })
      expect(out.time).toBeGreaterThanOrEqual((18720 * out.endCharge) / chargeCurrent - 1e-6)
    }
  })

  it("refuses frost, cells that cannot be charged, and a full pack", () => {
    const code = (more: object) => {
      const out = solve(more)
      return isNoSolution(out) ? out.noSolution : "answered"
    }
    expect(code({ temperature: -0.1 })).toBe("too-cold-to-charge")
    expect(code({ temperature: 0 })).toBe("answered")
    expect(code({ chemistry: "alkaline" })).toBe("not-rechargeable")
    expect(code({ startCharge: 1 })).toBe("already-full")
    expect(code({ chemistry: "lead", temperature: -5 })).toBe("answered")
  })

  it("warns of a rate the temperature does not allow", () => {
    const codes = (temperature: number, chargeCurrent: number) =>
      chargeTime({ ...base, temperature, chargeCurrent }).cautions.map((c) => c.code)
    // 5.2 Ah: 0.52 A, 1.04 A and 2.6 A are the limits of the three bands
    expect(codes(2, 0.5)).not.toContain("charge-rate")
    expect(codes(2, 0.6)).toContain("charge-rate")
    expect(codes(20, 2.5)).not.toContain("charge-rate")
    expect(codes(46, 0.1)).toContain("charge-rate")
  })

  it("warns where other chemistries are too cold to charge", () => {
    const codes = (chemistry: "nimh" | "lead", temperature: number) =>
      chargeTime({ ...base, chemistry, temperature }).cautions.map((c) => c.code)
    expect(codes("nimh", -1)).toContain("cold-charge")
    expect(codes("nimh", 0)).not.toContain("cold-charge")
    expect(codes("lead", -16)).toContain("cold-charge")
    expect(codes("lead", -14)).not.toContain("cold-charge")
  })

  it("expects 1.25 to 2 times charge over current, as datasheets print", () => {
    const { simpleTime, likelyLeast, likelyMost } = chargeTime({ ...base, startCharge: 0 })
    expect(likelyLeast as number).toBeCloseTo(1.25 * simpleTime, 6)
    expect(likelyMost as number).toBeCloseTo(2 * simpleTime, 6)
  })

  it("expects a range that holds what four datasheets print", () => {
    // 5.0 and 4.0 Ah INR21700 cells, standard and rapid charge: currents, stopping currents, printed minutes
    for (const [ampereHours, chargeCurrent, endCurrent, printed] of [
      [5, 2.5, 0.25, 150],
      [5, 6, 0.1, 100],
      [4, 2, 0.1, 180],
      [4, 6, 0.1, 60],
    ] as const) {
      const out = chargeTime({ series: 1, parallel: 1, capacity: ampereHours * 3600, resistance: 0.03, chargeCurrent, endCurrent })
      expect(out.likelyLeast as number, `${ampereHours} Ah at ${chargeCurrent} A`).toBeLessThanOrEqual(printed * 60 + 1e-6)
      expect(out.likelyMost as number, `${ampereHours} Ah at ${chargeCurrent} A`).toBeGreaterThanOrEqual(printed * 60 - 1e-6)
    }
  })
})
