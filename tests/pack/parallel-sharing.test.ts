import { lusolve } from "mathjs"
import { describe, expect, it } from "vitest"
import { type ParallelSharing, parallelSharing } from "../../src/pack/index.js"
import { isNoSolution } from "../../src/solver/index.js"

type Input = Parameters<typeof parallelSharing>[0]
const solved = (input: Input): ParallelSharing => {
  const out = parallelSharing.si(parallelSharing.read(input))
  if (isNoSolution(out)) throw new Error(out.message)
  return out
}
const three = [
  { openCircuitVoltage: 12.2, resistance: 0.12, capacity: 9360 },
  { openCircuitVoltage: 11.9, resistance: 0.15, capacity: 9000 },
  { openCircuitVoltage: 12.05, resistance: 0.3, capacity: 5000 },
]

/** Strings followed in small steps of time, current by current. */
function stepped(strings: typeof three, current: number, span: number, until: number, h: number) {
  const emf = strings.map((s) => s.openCircuitVoltage)
  let currents: number[] = []
  for (let t = 0; t <= until; t += h) {
    const g = strings.map((s) => 1 / s.resistance)
    const v = (emf.reduce((sum, e, k) => sum + e * (g[k] as number), 0) - current) / g.reduce((a, b) => a + b)
    currents = emf.map((e, k) => (e - v) * (g[k] as number))
    currents.forEach((i, k) => {
      emf[k] = (emf[k] as number) - (i * h * span) / (strings[k] as (typeof three)[0]).capacity
    })
  }
  return currents
}

describe("parallelSharing", () => {
  it("shares as Kirchhoff's laws solved by mathjs, over loads", () => {
    for (const current of [0, 3, 20]) {
      // unknowns I1, I2, I3, V
      const rows = three.map((s, k) => [...three.map((_, j) => (j === k ? s.resistance : 0)), 1])
      const x = lusolve([...rows, [1, 1, 1, 0]], [...three.map((s) => s.openCircuitVoltage), current]) as number[][]
      const out = solved({ strings: three, current })
      out.strings.forEach((s, k) => {
        expect(s.current).toBeCloseTo(x[k]?.[0] as number, 10)
      })
      expect(out.terminalVoltage).toBeCloseTo(x[3]?.[0] as number, 10)
      // Kirchhoff's residual
      expect(Math.abs(out.strings.reduce((sum, s) => sum + s.current, 0) - current)).toBeLessThan(1e-9)
    }
  })

  it("follows small steps of time", () => {
    for (const laterTime of [10, 600, 4000]) {
      const out = solved({ strings: three, current: 6, voltageSpan: 2.7, laterTime })
      const other = stepped(three, 6, 2.7, laterTime, 0.02)
      out.strings.forEach((s, k) => {
        expect(Math.abs(s.laterCurrent - (other[k] as number))).toBeLessThan(2e-3)
      })
    }
  })

  it("ends up sharing by capacity, and gets there with its time constant", () => {
    // rates well apart, so that the faster difference dies out before the slower
    const apart = three.map((string, k) => ({ ...string, capacity: [9360, 4000, 1000][k] as number }))
    const at = (after: number) => solved({ strings: apart, current: 6, voltageSpan: 2.7, laterTime: after })
    const long = at(36000)
    for (const s of long.strings) expect(s.laterCurrent).toBeCloseTo(s.steadyCurrent, 4)
    const tau = long.timeConstant as number
    const distance = (after: number) => at(after).strings.reduce((sum, s) => sum + Math.abs(s.laterCurrent - s.steadyCurrent), 0)
    expect(distance(11 * tau) / distance(10 * tau)).toBeCloseTo(Math.exp(-1), 3)
    // two strings: τ = (r1 + r2)/(U/Q1 + U/Q2)
    const two = solved({ strings: three.slice(0, 2), current: 6, voltageSpan: 2.7 })
    expect(two.timeConstant).toBeCloseTo((0.12 + 0.15) / (2.7 / 9360 + 2.7 / 9000), 6)
  })

  it("gives a load current at which the first string is just at its limit", () => {
    const strings = three.map((s) => ({ ...s, maxCurrent: 7.8 }))
    const safe = solved({ strings }).loadCurrentAtLimit as number
    const worst = Math.max(...solved({ strings, current: safe }).strings.map((s) => s.current))
    expect(worst).toBeCloseTo(7.8, 9)
    expect(safe).toBeLessThan(3 * 7.8)
  })

  it("takes the rise from empty to full for as many cells as the voltage has, and says so", () => {
    const two = three.slice(0, 2)
    const tau = (input: object) => solved({ strings: two, ...input }).timeConstant as number
    // by the published curves: nickel-rich lithium has 3.3041, 3.7167 and 4.0919 V at 10, 50 and 90 %, so 12.2 V is three cells
    const rise = (4.0919 - 3.3041) / 0.8
    expect(tau({})).toBeCloseTo(tau({ voltageSpan: 3 * rise }), 6)
    // lead of 12 V: 11.958, 12.24 and 12.57 V, six cells; iron phosphate is flatter by far
    expect(tau({ chemistry: "lead" })).toBeCloseTo(tau({ voltageSpan: (12.57 - 11.958) / 0.8 }), 6)
    expect(tau({ chemistry: "lfp" })).toBeGreaterThan(3 * tau({}))
    const single = two.map((s) => ({ ...s, openCircuitVoltage: s.openCircuitVoltage / 3 }))
    expect(tau({ strings: single })).toBeCloseTo(tau({ strings: single, voltageSpan: rise }), 6)
    // nothing is said of the heat where the cells must never be charged
    const alkaline = parallelSharing({ strings: two, chemistry: "alkaline" }).cautions.map((c) => c.code)
    expect(alkaline).toContain("not-rechargeable")
    expect(alkaline).not.toContain("too-hot-to-charge")
    const codes = (input: object) => parallelSharing({ strings: two, ...input }).cautions.map((c) => c.code)
    expect(codes({})).toContain("span-taken")
    expect(codes({ voltageSpan: 2.7 })).not.toContain("span-taken")
  })

  it("falls short by a positive amount at the short-circuit current itself, and names a current that works", () => {
    const strings = [{ openCircuitVoltage: 0.7, resistance: 0.3, capacity: 3600 }]
    const short = 0.7 * (1 / 0.3)
    for (const current of [short, short * (1 + 1e-15), short * 1.01]) {
      const out = parallelSharing.si(parallelSharing.read({ strings, current }))
      if (!isNoSolution(out)) throw new Error("should refuse")
      expect(out.shortBy).toBeGreaterThan(0)
      expect(solved({ strings, current: out.nearest.current as number }).terminalVoltage).toBeGreaterThan(0)
    }
  })

  it("names the string worst over its limit, discharged and charged alike", () => {
    const limits = [
      { maxCurrent: 1, maxChargeCurrent: 5 },
      { maxCurrent: 9, maxChargeCurrent: 0.1 },
      { maxCurrent: 9, maxChargeCurrent: 5 },
    ]
    const strings = three.map((s, k) => ({ ...s, ...limits[k] }))
    const { cautions, strings: shares } = parallelSharing({ strings, current: 0 })
    const values = (code: string) => cautions.find((c) => c.code === code)?.values
    expect(values("over-current")).toEqual({ string: 1, current: shares[0]?.current, limit: 1 })
    expect(values("over-charge")).toEqual({ string: 2, current: -(shares[1]?.current as number), limit: 0.1 })
    // the same strings the other way round
    const turned = parallelSharing({ strings: [...strings].reverse(), current: 0 }).cautions
    expect(turned.find((c) => c.code === "over-current")?.values.string).toBe(3)
    expect(turned.find((c) => c.code === "over-charge")?.values.string).toBe(2)
  })

  it("warns of strings joined at unequal charge", () => {
    expect(parallelSharing({ strings: three }).cautions.map((c) => c.code)).toContain("unequal-charge")
  })
})
