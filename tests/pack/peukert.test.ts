import { describe, expect, it } from "vitest"
import { peukert, peukertExponent } from "../../src/pack/index.js"

describe("peukert", () => {
  it("equals the other published form, C·(C/R)^(k−1)/I^k in hours and amperes, over its range", () => {
    let worst = 0
    for (const ampereHours of [1.3, 40, 200])
      for (const hours of [5, 20, 100])
        for (const exponent of [1, 1.1, 1.25, 1.6])
          for (const current of [0.1, 1, 25, 120]) {
            const other = (ampereHours * (ampereHours / hours) ** (exponent - 1)) / current ** exponent
            const out = peukert.si(
              peukert.read({ capacity: ampereHours * 3600, ratedDuration: hours * 3600, current, exponent }),
            ) as ReturnType<typeof peukert>
            worst = Math.max(worst, Math.abs(out.duration / 3600 / other - 1))
          }
    expect(worst).toBeLessThan(1e-12)
  })

  it("returns both rated points from which the exponent was taken", () => {
    const sheet = { capacity: "40 Ah", secondCapacity: "24 Ah", secondDuration: "1 h" } as const
    expect(peukert({ ...sheet, current: "2 A" }).duration / 3600).toBeCloseTo(20, 10)
    expect(peukert({ ...sheet, current: "24 A" }).duration / 3600).toBeCloseTo(1, 10)
    // slope of the straight line through the points on logarithmic paper
    const slope = -(Math.log10(20) - Math.log10(1)) / (Math.log10(2) - Math.log10(24))
    expect(peukertExponent(40, 20, 24, 1)).toBeCloseTo(slope, 12)
  })

  it("refuses points that give no sensible exponent", () => {
    expect(peukert.attempt({ capacity: "40 Ah", current: "2 A", secondCapacity: "44 Ah", secondDuration: "5 h" }).ok).toBe(false)
    expect(peukert.attempt({ capacity: "40 Ah", current: "2 A", exponent: 1.2, secondCapacity: "34 Ah", secondDuration: "5 h" }).ok).toBe(
      false,
    )
  })
})
