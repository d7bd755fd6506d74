import { describe, expect, it } from "vitest"
import { heatStress } from "../../src/worn/index.js"

const grid = (from: number, to: number, steps: number) => Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * i) / steps)

describe("heatStress by second routes", () => {
  it("the rate at the limit is where the limit, searched for, meets the heat", () => {
    let worst = 0
    for (const acclimatized of [true, false])
      for (const wbgt of grid(14, 34, 80)) {
        const at = (rate: number) =>
          heatStress({ metabolicRate: rate, restMetabolicRate: 60, wbgt, clothing: "work-clothes", acclimatized })
        const { metabolicRateAtLimit } = at(300)
        let [low, high] = [60, 1200]
        if (at(low).exceeded || !at(high).exceeded) continue
        for (let i = 0; i < 100; i++) {
          const middle = (low + high) / 2
          if (at(middle).exceeded) high = middle
          else low = middle
        }
        worst = Math.max(worst, Math.abs(metabolicRateAtLimit / low - 1))
      }
    expect(worst).toBeLessThan(1e-9)
  })

  it("an hour of the work share and the rest has the mean rate of the limit, minute by minute", () => {
    for (const wbgt of grid(15, 31, 32)) {
      const out = heatStress({ metabolicRate: 415, restMetabolicRate: 115, wbgt, clothing: "work-clothes", acclimatized: true })
      if (out.workShare === 0 || out.workShare === 1) continue
      let sum = 0
      for (let i = 0; i < 60000; i++) sum += i + 0.5 < 60000 * out.workShare ? 415 : 115
      expect(sum / 60000).toBeCloseTo(out.metabolicRateAtLimit, 1)
    }
  })

  it("ISO's class limits lie within 3.1 K of the NIOSH curve at each class's own rate", () => {
    for (const acclimatized of [true, false])
      for (const metabolicRate of [180, 300, 415, 520]) {
        const out = heatStress({ metabolicRate, wbgt: 20, clothing: "work-clothes", acclimatized })
        expect(Math.abs(out.classLimit - out.curveLimit)).toBeLessThan(3.1)
      }
  })

  it("harder work, hotter weather or tighter clothing never widens the margin, nor allows a larger share", () => {
    let before = Number.POSITIVE_INFINITY
    for (const metabolicRate of grid(115, 1000, 200)) {
      const { wbgtMargin } = heatStress({ metabolicRate, wbgt: 24, clothing: "work-clothes" })
      expect(wbgtMargin).toBeLessThanOrEqual(before)
      before = wbgtMargin
    }
    let share = 1
    for (const wbgt of grid(5, 40, 200)) {
      const out = heatStress({ metabolicRate: 350, wbgt, clothing: "double-layer" })
      expect(out.workShare).toBeLessThanOrEqual(share)
      expect(out.workShare === 1).toBe(!out.exceeded)
      share = out.workShare
    }
    expect(share).toBe(0)
    const margins = (["work-clothes", "double-layer", "vapour-barrier"] as const).map(
      (clothing) => heatStress({ metabolicRate: 300, wbgt: 20, clothing }).wbgtMargin,
    )
    expect(margins).toEqual([...margins].sort((a, b) => b - a))
  })

  it("scales the limits down to a small wearer by body surface, and gives a large one nothing", () => {
    // Mosteller's formula for body surface, a second one beside Du Bois: within 3 % of it for these
    for (const [bodyMass, stature] of [
      [40, 1.45],
      [48, 1.5],
      [55, 1.6],
    ] as const) {
      const out = heatStress({ metabolicRate: 300, wbgt: 20, bodyMass, stature })
      const mosteller = Math.sqrt((bodyMass * stature * 100) / 3600)
      expect(Math.abs((out.bodySurface as number) / mosteller - 1)).toBeLessThan(0.03)
      // what the small wearer does at 300 W is what a standard person does at more
      const grown = heatStress({ metabolicRate: out.standardMetabolicRate, wbgt: 20 })
      expect(out.standardMetabolicRate).toBeCloseTo((300 * 1.8) / (out.bodySurface as number), 9)
      expect([out.wbgtLimit, out.metabolicClass]).toEqual([grown.wbgtLimit, grown.metabolicClass])
      expect(out.wbgtLimit).toBeLessThan(heatStress({ metabolicRate: 300, wbgt: 20 }).wbgtLimit)
      expect(out.metabolicRateAtLimit / grown.metabolicRateAtLimit).toBeCloseTo((out.bodySurface as number) / 1.8, 9)
    }
    const large = heatStress({ metabolicRate: 300, wbgt: 20, bodyMass: 120, stature: 1.95 })
    expect(large.wbgtLimit).toBe(heatStress({ metabolicRate: 300, wbgt: 20 }).wbgtLimit)
    // 300 W: class 2 for a grown man, class 3 for a wearer of 1.3 m²
    expect(heatStress({ metabolicRate: 300, wbgt: 20 }).metabolicClass).toBe(2)
    expect(heatStress({ metabolicRate: 300, wbgt: 20, bodyMass: 37, stature: 1.44 }).metabolicClass).toBe(3)
  })

  it("answers light and standing work without being told of rest", () => {
    for (const metabolicRate of [60, 80, 100, 114, 115, 116]) {
      const out = heatStress({ metabolicRate, wbgt: 40 })
      expect(out.restMetabolicRate).toBe(Math.min(metabolicRate, 115))
      expect(out.workShare).toBe(0)
    }
    expect(heatStress({ metabolicRate: 100, restMetabolicRate: 90, wbgt: 20 }).restMetabolicRate).toBe(90)
  })

  it("keeps to the published adjustment where an own one is lower, adds the hood, and takes a higher one", () => {
    const effective = (given: object) => heatStress({ metabolicRate: 200, wbgt: 20, ...given }).effectiveWbgt
    expect(effective({})).toBe(31)
    expect(effective({ hooded: true })).toBe(32)
    expect(effective({ clothing: "vapour-barrier-over-clothes", hooded: true })).toBe(33)
    expect(effective({ clothingAdjustment: 2 })).toBe(31)
    expect(effective({ clothingAdjustment: 14 })).toBe(34)
    expect(effective({ clothingAdjustment: 2, clothing: "work-clothes" })).toBe(22)
  })

  it("refuses a wet bulb warmer than the globe", () => {
    expect(() => heatStress({ metabolicRate: 300, wetBulbTemperature: 30, globeTemperature: 10 })).toThrow(/30 °C above the globe/)
    expect(heatStress({ metabolicRate: 300, wetBulbTemperature: 30, globeTemperature: 30 }).wbgt).toBe(30)
  })

  it("takes a meter's value or the thermometers, not both, and warns", () => {
    expect(heatStress.attempt({ metabolicRate: 300, wbgt: 20, wetBulbTemperature: 18 }).ok).toBe(false)
    expect(heatStress.attempt({ metabolicRate: 300, wetBulbTemperature: 18 }).ok).toBe(false)
    expect(heatStress({ metabolicRate: 300, wetBulbTemperature: 20, globeTemperature: 40, ambientTemperature: 30 }).wbgt).toBeCloseTo(
      0.7 * 20 + 0.2 * 40 + 0.1 * 30,
      12,
    )
    const codes = heatStress({ metabolicRate: 300, wbgt: 28 }).cautions.map((c) => c.code)
    expect(codes).toEqual(expect.arrayContaining(["take-it-off", "heat-can-kill", "too-hot"]))
  })
})
