import { describe, expect, it } from "vitest"
import { heatStress } from "../../src/worn/index.js"

const grid = (from: number, to: number, steps: number) => Array.from({ length: steps + 1 }, (_, i) => from + ((to - from) * i) / steps)

describe("heatStress by second routes", () => {
  it("the rate at the limit is where the limit, searched for, meets the heat", () => {
    let worst = 0
    for (const acclimatized of [true, false])
      for (const wbgt of grid(14, 34, 80)) {
        const at = (rate: number) => heatStress({ rate, restRate: 60, wbgt, clothing: "workClothes", acclimatized })
        const { rateAtLimit } = at(300)
        let [low, high] = [60, 1200]
        if (at(low).exceeded || !at(high).exceeded) continue
        for (let i = 0; i < 100; i++) {
          const middle = (low + high) / 2
          if (at(middle).exceeded) high = middle
          else low = middle
        }
        worst = Math.max(worst, Math.abs(rateAtLimit / low - 1))
      }
    expect(worst).toBeLessThan(1e-9)
  })

  it("an hour of the work share and the rest has the mean rate of the limit, minute by minute", () => {
    for (const wbgt of grid(15, 31, 32)) {
      const out = heatStress({ rate: 415, restRate: 115, wbgt, clothing: "workClothes", acclimatized: true })
      if (out.workShare === 0 || out.workShare === 1) continue
      let sum = 0
      for (let i = 0; i < 60000; i++) sum += i + 0.5 < 60000 * out.workShare ? 415 : 115
      expect(sum / 60000).toBeCloseTo(out.rateAtLimit, 1)
    }
  })

  it("ISO's class limits lie within 3.1 K of the NIOSH curve at each class's own rate", () => {
    for (const acclimatized of [true, false])
      for (const rate of [180, 300, 415, 520]) {
        const out = heatStress({ rate, wbgt: 20, clothing: "workClothes", acclimatized })
        expect(Math.abs(out.classLimit - out.curveLimit)).toBeLessThan(3.1)
      }
  })

  it("harder work, hotter weather or tighter clothing never widens the margin, nor allows a larger share", () => {
    let before = Number.POSITIVE_INFINITY
    for (const rate of grid(115, 1000, 200)) {
      const { margin } = heatStress({ rate, wbgt: 24, clothing: "workClothes" })
      expect(margin).toBeLessThanOrEqual(before)
      before = margin
    }
    let share = 1
    for (const wbgt of grid(5, 40, 200)) {
      const out = heatStress({ rate: 350, wbgt, clothing: "doubleLayer" })
      expect(out.workShare).toBeLessThanOrEqual(share)
      expect(out.workShare === 1).toBe(!out.exceeded)
      share = out.workShare
    }
    expect(share).toBe(0)
    const margins = (["workClothes", "doubleLayer", "vapourBarrier"] as const).map(
      (clothing) => heatStress({ rate: 300, wbgt: 20, clothing }).margin,
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
      const out = heatStress({ rate: 300, wbgt: 20, bodyMass, stature })
      const mosteller = Math.sqrt((bodyMass * stature * 100) / 3600)
      expect(Math.abs((out.surface as number) / mosteller - 1)).toBeLessThan(0.03)
      // what the small wearer does at 300 W is what a standard person does at more
      const grown = heatStress({ rate: out.standardRate, wbgt: 20 })
      expect(out.standardRate).toBeCloseTo((300 * 1.8) / (out.surface as number), 9)
      expect([out.limit, out.metabolicClass]).toEqual([grown.limit, grown.metabolicClass])
      expect(out.limit).toBeLessThan(heatStress({ rate: 300, wbgt: 20 }).limit)
      expect(out.rateAtLimit / grown.rateAtLimit).toBeCloseTo((out.surface as number) / 1.8, 9)
    }
    const large = heatStress({ rate: 300, wbgt: 20, bodyMass: 120, stature: 1.95 })
    expect(large.limit).toBe(heatStress({ rate: 300, wbgt: 20 }).limit)
    // 300 W: class 2 for a grown man, class 3 for a wearer of 1.3 m²
    expect(heatStress({ rate: 300, wbgt: 20 }).metabolicClass).toBe(2)
    expect(heatStress({ rate: 300, wbgt: 20, bodyMass: 37, stature: 1.44 }).metabolicClass).toBe(3)
  })

  it("answers light and standing work without being told of rest", () => {
    for (const rate of [60, 80, 100, 114, 115, 116]) {
      const out = heatStress({ rate, wbgt: 40 })
      expect(out.resting).toBe(Math.min(rate, 115))
      expect(out.workShare).toBe(0)
    }
    expect(heatStress({ rate: 100, restRate: 90, wbgt: 20 }).resting).toBe(90)
  })

  it("keeps to the published adjustment where an own one is lower, adds the hood, and takes a higher one", () => {
    const effective = (given: object) => heatStress({ rate: 200, wbgt: 20, ...given }).effective
    expect(effective({})).toBe(31)
    expect(effective({ hood: true })).toBe(32)
    expect(effective({ clothing: "vapourBarrierOverClothes", hood: true })).toBe(33)
    expect(effective({ adjustment: 2 })).toBe(31)
    expect(effective({ adjustment: 14 })).toBe(34)
    expect(effective({ adjustment: 2, clothing: "workClothes" })).toBe(22)
  })

  it("refuses a wet bulb warmer than the globe", () => {
    expect(() => heatStress({ rate: 300, wetBulb: 30, globe: 10 })).toThrow(/30 °C above the globe/)
    expect(heatStress({ rate: 300, wetBulb: 30, globe: 30 }).wbgt).toBe(30)
  })

  it("takes a meter's value or the thermometers, not both, and warns", () => {
    expect(heatStress.attempt({ rate: 300, wbgt: 20, wetBulb: 18 }).ok).toBe(false)
    expect(heatStress.attempt({ rate: 300, wetBulb: 18 }).ok).toBe(false)
    expect(heatStress({ rate: 300, wetBulb: 20, globe: 40, air: 30 }).wbgt).toBeCloseTo(0.7 * 20 + 0.2 * 40 + 0.1 * 30, 12)
    const codes = heatStress({ rate: 300, wbgt: 28 }).cautions.map((c) => c.code)
    expect(codes).toEqual(expect.arrayContaining(["take-it-off", "heat-can-kill", "too-hot"]))
  })
})
