import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { brent } from "../../src/numeric/index.js"
import { burnTemperature, burnTime, type TouchMaterial, touchMaterials } from "../../src/worn/contact/data-touch.js"
import { touchTemperature } from "../../src/worn/index.js"
import { between, log } from "./draws.js"

const materials = Object.keys(touchMaterials) as TouchMaterial[]
const touches = fc.record({
  surfaceTemperature: between(-40, 300),
  material: fc.constantFrom(...materials),
  contactDuration: log(0.01, 86400),
  measuredAmbientTemperature: between(-40, 60),
  ambientTemperature: between(-40, 60),
})

describe("touchTemperature", () => {
  it("burn times solve the curves: against root finding over their whole range", () => {
    let worst = 0
    for (const injury of ["reversible", "lasting"] as const)
      for (let t = burnTemperature(21600, injury) + 1e-6; t < 300; t += 0.37) {
        const root = brent((x) => burnTemperature(Math.exp(x) / 1000, injury) - t, 1e-3, Math.log(21600 * 1000) + 1e-6)
        const time = burnTime(t, injury) as number
        worst = Math.max(worst, Math.abs(Math.log(time * 1000) - (root?.x as number)))
      }
    expect(worst).toBeLessThan(1e-9)
  })

  it("agrees with the classic damage integral to a factor of three for slow burns, 45 to 51 °C", () => {
    // Henriques 1947: rate 3.1e98·exp(−75000/T) per second, injury through the epidermis at 1 (from memory). Above 51 °C
    // contact lasts under two minutes and the deeper skin lags behind its surface, which this integral leaves out.
    for (let t = 45; t <= 51; t += 0.5) {
      const henriques = 1 / (3.1e98 * Math.exp(-75000 / (t + 273.15)))
      const ratio = (burnTime(t, "lasting") as number) / henriques
      expect(ratio, `${t} °C`).toBeGreaterThan(1 / 3)
      expect(ratio, `${t} °C`).toBeLessThan(3)
    }
  })

  it("law: hotter, longer or in warmer surroundings is never safer", () => {
    fc.assert(
      fc.property(touches, between(0, 50), (i, more) => {
        const now = touchTemperature(i)
        const longer = touchTemperature({ ...i, contactDuration: Math.min(86400, i.contactDuration * (1 + more)) })
        expect(longer.limit.low).toBeLessThanOrEqual(now.limit.low)
        for (const worse of [
          { ...i, surfaceTemperature: Math.min(300, i.surfaceTemperature + more) },
          { ...i, ambientTemperature: Math.min(60, i.ambientTemperature + more) },
        ]) {
          const next = touchTemperature(worse)
          expect(next.temperatureMargin).toBeLessThanOrEqual(now.temperatureMargin)
          expect(next.burnTime ?? Number.POSITIVE_INFINITY).toBeLessThanOrEqual(now.burnTime ?? Number.POSITIVE_INFINITY)
        }
        expect(now.temperatureInUse).toBeGreaterThanOrEqual(now.comparedTemperature)
        expect(now.limit.low).toBe(Math.min(...now.limits.map((l) => l.limit)))
        expect(now.limit.high).toBe(Math.max(...now.limits.map((l) => l.limit)))
        expect(now.tooHot).toBe(now.temperatureMargin < 0)
      }),
      { numRuns: 400 },
    )
  })

  it("keeps 43 °C against the skin for what is worn, whatever it is made of", () => {
    for (const material of materials) {
      expect(touchTemperature({ surfaceTemperature: 43, material }).tooHot).toBe(false)
      expect(touchTemperature({ surfaceTemperature: 43.1, material }).tooHot).toBe(true)
    }
    const codes = touchTemperature({ surfaceTemperature: 42.5, material: "plastic" }).cautions.map((c) => c.code)
    expect(codes).toEqual(["not-a-clearance", "adults-only", "painful"])
  })

  it("changes from one printed contact time to the next just where each standard does", () => {
    // ISO 13732-1 keeps a time's limit up to and with that time, the other tables from it on; metal, °C
    const changes = [
      ["ISO 13732-1", [1, 10, 60, 600], [65, 55, 51, 48, 43], true],
      ["IEC 62368-1 TS1", [1, 10, 60, 28800], [70, 60, 51, 48, 43], false],
      ["ECMA-287", [1, 10], [65, 55, 43], false],
      ["IEC 60601-1 applied parts", [60, 600], [51, 48, 43], false],
    ] as const
    const limit = (standard: string, contactTime: number) =>
      touchTemperature({ surfaceTemperature: 30, material: "metal", contactDuration: contactTime }).limits.find(
        (l) => l.standard === standard,
      )?.limit
    for (const [standard, times, limits, upTo] of changes)
      times.forEach((t, i) => {
        const [before, after] = [limits[i], limits[i + 1]]
        expect([limit(standard, t * 0.999), limit(standard, t), limit(standard, t * 1.001)], `${standard} ${t} s`).toEqual([
          before,
          upTo ? before : after,
          after,
        ])
      })
  })

  it("gives each burn time only within the range of its own curve", () => {
    const at = (surface: number) => touchTemperature({ surfaceTemperature: surface, material: "metal" })
    // six hours: 43.77 and 44.67 °C by the curves; 44 to 51 °C by the halving rule
    expect([at(43.76).reversibleTime, at(43.78).reversibleTime === null]).toEqual([null, false])
    expect([at(44.66).lastingTime, at(44.68).lastingTime === null]).toEqual([null, false])
    expect([at(43.99).halvingTime, at(44).halvingTime]).toEqual([null, 21600])
    expect([at(51).halvingTime, at(51.01).halvingTime]).toEqual([21600 / 128, null])
    const all = at(50)
    expect(all.burnTime).toBe(Math.min(all.reversibleTime as number, all.lastingTime as number, all.halvingTime as number))
    expect(at(43.9).burnTime).toBe(at(43.9).reversibleTime)
    expect(at(60).painful).toBe(true)
    expect([at(41.99).painful, at(42).painful]).toEqual([false, true])
  })

  it("agrees with printed seconds to a full-thickness scald within a factor of two", () => {
    // Burn Foundation: 15, 5, 2 and 1 s at 133, 140, 149 and 156 °F
    for (const [fahrenheit, seconds] of [
      [133, 15],
      [140, 5],
      [149, 2],
      [156, 1],
    ] as const) {
      const ratio = (touchTemperature({ surfaceTemperature: `${fahrenheit} degF`, material: "metal" }).lastingTime as number) / seconds
      expect(ratio).toBeGreaterThan(0.5)
      expect(ratio).toBeLessThan(2)
    }
  })

  it("warns of metal in the cold, and of any cold surface, by the colder of where it is worn and measured", () => {
    const codes = (surface: number, material: TouchMaterial, wornAt = 20) =>
      touchTemperature({ surfaceTemperature: surface, material, measuredAmbientTemperature: 20, ambientTemperature: wornAt }).cautions.map(
        (c) => c.code,
      )
    expect(codes(0, "metal")).toContain("cold-metal")
    expect(codes(0, "coated-metal")).toContain("cold-metal")
    expect(codes(0, "plastic")).not.toContain("cold-metal")
    expect(codes(0, "plastic")).toContain("cold-surface")
    expect(codes(15.1, "metal")).not.toContain("cold-surface")
    expect(codes(20, "metal", 0)).toContain("cold-metal")
    expect(codes(-5, "metal", 40)).toContain("cold-metal")
  })

  it("says where it goes past its sources", () => {
    const quick = touchTemperature({ surfaceTemperature: 90, material: "metal", contactDuration: 0.1 }).cautions.map((c) => c.code)
    expect(quick).toEqual(expect.arrayContaining(["shorter-than-scope", "curve-extrapolated", "too-hot"]))
    const cool = touchTemperature({ surfaceTemperature: 30, material: "metal" })
    expect([cool.reversibleTime, cool.lastingTime, cool.halvingTime, cool.burnTime]).toEqual([null, null, null, null])
  })
})
