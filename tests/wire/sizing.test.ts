import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { isNoSolution } from "../../src/solver/index.js"
import { conductorSize, fuseCoordination, voltageDrop, wireHeating } from "../../src/wire/index.js"

const cases = fc
  .record({
    current: fc.double({ min: 0.2, max: 25, noNaN: true }),
    length: fc.double({ min: 0.1, max: 8, noNaN: true }),
    sourceVoltage: fc.constantFrom(5, 12, 24),
    dropLimit: fc.double({ min: 0.005, max: 0.12, noNaN: true }),
    sizeSystem: fc.constantFrom("awg" as const, "metric" as const),
    arrangement: fc.constantFrom("free-air" as const, "bundle" as const, "padding" as const),
    wires: fc.integer({ min: 1, max: 12 }),
    ambientTemperature: fc.double({ min: 0, max: 40, noNaN: true }),
    fuseRating: fc.option(fc.double({ min: 1, max: 30, noNaN: true })),
  })
  // alone in air there is one wire
  .map((c) => (c.arrangement === "free-air" ? { ...c, wires: 1 } : c))

describe("conductorSize", () => {
  it("picks the first size that meets every rule when each is tried by the other solvers", () => {
    const decided = new Set<string>()
    let refused = 0
    fc.assert(
      fc.property(cases, (input) => {
        const { arrangement, wires, ambientTemperature } = input
        const meets = (size: { awg?: number; area?: number }) => {
          const heated = wireHeating.attempt({ ...size, current: input.current, arrangement, wires, ambientTemperature })
          if (!heated.ok) return false
          const { conductorTemperature, ampacity } = heated.value
          if (ampacity < input.current) return false
          const run = voltageDrop({
            ...size,
            current: input.current,
            length: input.length,
            conductorTemperature,
            sourceVoltage: input.sourceVoltage,
          })
          return (run.dropShare as number) <= input.dropLimit && ampacity >= 1.35 * (input.fuseRating ?? 0)
        }
        const sizes =
          input.sizeSystem === "awg"
            ? [30, 28, 26, 24, 22, 20, 18, 16, 14, 12, 10, 8, 6, 4, 2, 0, -1, -2, -3].map((awg) => ({ awg }))
            : [0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16].map((a) => ({ area: a * 1e-6 }))
        const first = sizes.find(meets)
        const si = conductorSize.read(input)
        const out = conductorSize.si(si)
        if (isNoSolution(out)) {
          refused++
          expect(first).toBeUndefined()
          return
        }
        decided.add(out.decidedBy)
        expect(first && "awg" in first ? first.awg : first?.area).toBe(input.sizeSystem === "awg" ? out.awg : out.area)
      }),
      { numRuns: 150, seed: 61 },
    )
    expect(decided.has("drop") && decided.has("fuse")).toBe(true)
    expect(refused).toBeGreaterThan(0)
  })

  it("lets temperature decide a short run in a bundle, and refuses a run too long with the length it would bear", () => {
    const short = conductorSize({ current: 15, length: 0.05, sourceVoltage: 24, arrangement: "bundle", wires: 12 })
    expect(short.decidedBy).toBe("temperature")
    const input = { current: 4, length: 900, sourceVoltage: 5, sizeSystem: "metric" } as const
    const long = conductorSize.attempt(input)
    expect(!long.ok && "noSolution" in long.error && long.error.noSolution).toBe("no-candidate")
    if (long.ok || !("nearest" in long.error)) return
    const most = long.error.nearest.length as number
    expect(long.error.shortBy).toBeGreaterThan(0)
    expect(conductorSize.attempt({ ...input, length: most * 0.9999 }).ok).toBe(true)
    expect(conductorSize.attempt({ ...input, length: most * 1.0001 }).ok).toBe(false)
  })

  it.each([
    ["fuse", { current: 2, length: 1, voltage: 12, fuse: 600, series: "metric" }],
    ["current", { current: 400, length: 0.1, voltage: 48, series: "metric", arrangement: "bundle", wires: 20 }],
    ["all three", { current: 400, length: 50, voltage: 12, fuse: 600, series: "metric", arrangement: "padding", wires: 6 }],
  ] as const)("names what works in place of a %s too great, and that does work", (_, input) => {
    const refused = conductorSize.attempt(input)
    expect(refused.ok).toBe(false)
    if (refused.ok || !("nearest" in refused.error)) return
    const { nearest } = refused.error
    expect(Object.keys(nearest).length).toBeGreaterThan(0)
    expect(conductorSize.attempt({ ...input, ...nearest }).ok).toBe(true)
    for (const [key, value] of Object.entries(nearest))
      expect(conductorSize.attempt({ ...input, ...nearest, [key]: value * 1.01 }).ok, key).toBe(false)
  })
})

describe("fuseCoordination", () => {
  it("withstands in k²·A² exactly the heat that a stepped adiabatic conductor takes to its limit", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 10, max: 26 }),
        fc.double({ min: 20, max: 90, noNaN: true }),
        fc.double({ min: 120, max: 250, noNaN: true }),
        fc.constantFrom("copper" as const, "aluminium" as const),
        (awg, initialTemperature, faultLimit, metal) => {
          const out = fuseCoordination({
            fuseRating: 5,
            current: 1,
            datasheetAmpacity: 10,
            awg,
            initialConductorTemperature: initialTemperature,
            faultTemperatureLimit: faultLimit,
            material: metal,
          })
          const area = (Math.PI / 4) * (0.127e-3 * 92 ** ((36 - awg) / 39)) ** 2
          // heat capacity and resistivity of the standard's annex: K = 226 and 148 A·√s/mm²
          const [capacity, rho, beta] = metal === "copper" ? [3.45e6, 1 / 58e6, 234.5] : [2.5e6, 28.264e-9, 228]
          const steps = 20000
          let integral = 0
          for (let k = 0; k < steps; k++) {
            const t = initialTemperature + ((k + 0.5) * (faultLimit - initialTemperature)) / steps
            // dT = ρ(T)·I²·dt/(c·A²), so the integral grows by c·A²·dT/ρ(T)
            integral += (capacity * area ** 2 * ((faultLimit - initialTemperature) / steps)) / (rho * ((beta + t) / (beta + 20)))
          }
          expect(out.wireWithstand / integral).toBeCloseTo(1, 6)
        },
      ),
      { numRuns: 60, seed: 62 },
    )
  })

  it("has pulse factors that numerical integration of each shape gives", () => {
    const shapes = {
      square: () => 1,
      "half-sine": (x: number) => Math.sin(Math.PI * x),
      triangle: (x: number) => 1 - x,
      parabola: (x: number) => (1 - x) ** 2,
    } as const
    for (const [inrushShape, of] of Object.entries(shapes) as [keyof typeof shapes, (x: number) => number][]) {
      let sum = 0
      for (let k = 0; k < 10000; k++) sum += of((k + 0.5) / 10000) ** 2 / 10000
      const out = fuseCoordination({
        fuseRating: 5,
        current: 1,
        datasheetAmpacity: 10,
        awg: 20,
        peakInrushCurrent: 30,
        inrushDuration: 0.02,
        inrushShape,
      })
      expect((out.inrushIntegral as number) / (30 ** 2 * 0.02)).toBeCloseTo(sum, 6)
    }
    let decay = 0
    for (let k = 0; k < 40000; k++) decay += Math.exp(-2 * ((k + 0.5) / 1000)) / 1000
    const out = fuseCoordination({ fuseRating: 5, current: 1, datasheetAmpacity: 10, awg: 20, peakInrushCurrent: 30, inrushDuration: 0.02 })
    expect((out.inrushIntegral as number) / (30 ** 2 * 0.02)).toBeCloseTo(decay, 6)
  })

  it("is coordinated at the rating it suggests, and says which rule each step beyond breaks", () => {
    const base = { current: 4, awg: 18, datasheetAmpacity: 16, meltingIntegral: 100, peakInrushCurrent: 20, inrushDuration: 0.05 } as const
    const { suggestedFuseRating } = fuseCoordination({ ...base, fuseRating: 7.5 })
    const fit = fuseCoordination({ ...base, fuseRating: suggestedFuseRating as number })
    expect([fit.coordinated, fit.carriesLoad, fit.protectsWire, fit.survivesOverload, fit.passesInrush]).toEqual([
      true,
      true,
      true,
      true,
      true,
    ])
    expect(fuseCoordination({ ...base, fuseRating: 4 }).carriesLoad).toBe(false)
    expect(fuseCoordination({ ...base, fuseRating: 15 }).protectsWire).toBe(false)
    expect(fuseCoordination({ ...base, fuseRating: 7.5, peakInrushCurrent: 60 }).passesInrush).toBe(false)
    expect(fuseCoordination({ ...base, fuseRating: 30, awg: 28 }).survivesOverload).toBe(false)
    expect(fit.cautions.map((c) => c.code)).toContain("fuse-ahead")
  })
})
