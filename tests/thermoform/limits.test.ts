import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { type Plastic, plastics } from "../../src/thermoform/data.js"
import { coolingTime, formingWindow, type HeatingTimeInput, heatingTime } from "../../src/thermoform/index.js"
import { finiteVolume } from "./finite-volume.js"

const names = Object.keys(plastics) as Plastic[]

/** Heating over the whole declared range, wide of what is usual. */
const heating = fc.record({
  plastic: fc.constantFrom(...names),
  form: fc.constantFrom("sheet", "rod", "tube"),
  size: fc.double({ min: Math.log(1e-4), max: Math.log(0.1), noNaN: true }),
  share: fc.double({ min: 0.01, max: 0.48, noNaN: true }),
  source: fc.constantFrom("oven", "heat-gun", "radiant"),
  // spread by hand: drawn numbers favour their ends
  above: fc.integer({ min: 1, max: 96 }).map((i) => 3 + 3 * ((i * 61) % 97)),
  film: fc.option(fc.double({ min: 0.5, max: 20000, noNaN: true })),
  faces: fc.constantFrom(1, 2),
})

function inputOf(h: typeof heating extends fc.Arbitrary<infer T> ? T : never): HeatingTimeInput {
  const size = Math.exp(h.size)
  const outsideDiameter = Math.min(0.3, Math.max(1e-3, size / h.share))
  const shape =
    h.form === "sheet"
      ? { shape: "sheet" as const, thickness: size, faces: h.faces }
      : h.form === "rod"
        ? { shape: "rod" as const, outsideDiameter }
        : { shape: "tube" as const, outsideDiameter, thickness: Math.max(1e-4, Math.min(outsideDiameter * h.share, 0.1)) }
  const { low: from } = formingWindow({ material: h.plastic }).window
  return {
    ...shape,
    material: h.plastic,
    heatSource: h.source as "oven",
    sourceTemperature: Math.min(1200, from + h.above),
    filmCoefficient: h.film,
  }
}

describe("advice never passes a limit of its own", () => {
  it("over the declared range of plastics, sizes, sources and films", () => {
    let answered = 0
    let orders = 0
    fc.assert(
      fc.property(heating, (h) => {
        const input = inputOf(h)
        const outcome = heatingTime.attempt(input)
        if (!outcome.ok) return
        answered++
        const out = outcome.value
        const codes = out.cautions.map((c) => c.code)
        // the surface's earliest time is no later than the usual, and a core that comes later than it is said to be late
        if (out.surfaceLimitTime !== null) expect(out.minSurfaceLimitTime as number).toBeLessThanOrEqual(out.surfaceLimitTime * (1 + 1e-9))
        expect(out.overheatsFirst).toBe(out.minSurfaceLimitTime !== null && out.minSurfaceLimitTime < out.timeRange.high)
        expect(codes.includes("surface-first")).toBe(out.overheatsFirst)
        if (out.minSurfaceLimitTime !== null && !out.overheatsFirst) expect(codes).toContain("take-out-in-time")
        // a source that may char is never passed over in silence
        const {
          scorch,
          upper,
          window: { high: to },
        } = formingWindow({ material: h.plastic })
        const ceiling = scorch?.low ?? upper.high
        expect(codes.includes("source-chars")).toBe(out.equivalentTemperature > ceiling)
        if (h.source !== "radiant" && out.maxSourceTemperature !== null) {
          expect(out.maxSourceTemperature).toBeLessThanOrEqual(ceiling * (1 + 1e-12))
          // the hottest source named is itself no source that overheats
          const there = heatingTime.attempt({ ...input, sourceTemperature: out.maxSourceTemperature - 1e-3 })
          if (there.ok) expect(there.value.overheatsFirst).toBe(false)
        }
        if (out.advisedSourceTemperature !== null) {
          orders++
          expect(out.advisedTime?.low as number).toBeLessThanOrEqual(out.advisedTime?.high as number)
          const hot = heatingTime.attempt({ ...input, sourceTemperature: out.advisedSourceTemperature + 5 - 1e-6 })
          if (hot.ok) expect([hot.value.minSurfaceLimitTime, hot.value.overheatsFirst]).toEqual([null, false])
          if (h.source !== "radiant") expect(out.advisedSourceTemperature + 5).toBeLessThanOrEqual(to + 1e-9)
        }
      }),
      { numRuns: 50 },
    )
    expect(answered).toBeGreaterThan(25)
    expect(orders).toBeGreaterThan(8)
  })

  it("puts no plastic within the spread ahead of the earliest surface, nor behind the slowest core", () => {
    const inside = fc.tuple(...[0, 1, 2].map(() => fc.double({ min: 0, max: 1, noNaN: true })))
    fc.assert(
      fc.property(fc.constantFrom("pvc", "petg", "abs", "hips"), fc.constantFrom(0.002, 0.01), inside, (plastic, thickness, at) => {
        const { conductivity, density, specificHeat } = plastics[plastic as Plastic]
        const [k, rho, c] = [conductivity, density, specificHeat].map((f, i) => f.low + (at[i] as number) * (f.high - f.low))
        const input = { shape: "sheet", thickness, material: plastic as Plastic, heatSource: "oven", sourceTemperature: 200 } as const
        const spread = heatingTime(input)
        const one = heatingTime({ ...input, conductivity: k as number, density: rho as number, specificHeat: c as number })
        expect(one.surfaceLimitTime as number).toBeGreaterThanOrEqual((spread.minSurfaceLimitTime as number) * (1 - 1e-9))
        expect(one.time).toBeLessThanOrEqual(spread.timeRange.high * (1 + 1e-9))
        expect(one.time).toBeGreaterThanOrEqual(spread.timeRange.low * (1 - 1e-9))
      }),
      { numRuns: 40 },
    )
  })

  it("calls no 245 °C oven workable for PVC, whose browning begins at 160 °C", () => {
    const pipe = { shape: "tube", outsideDiameter: "26.7 mm", thickness: "2.9 mm", material: "pvc", heatSource: "oven" } as const
    for (const sourceTemperature of [161, 201, 245]) {
      const out = heatingTime({ ...pipe, sourceTemperature })
      expect(out.maxSourceTemperature as number).toBeLessThanOrEqual(160)
      expect(out.cautions[0]?.severity).toBe("warning")
      expect(out.cautions.map((c) => c.code)).toContain("source-chars")
    }
  })

  it("says so when a part leaves the heat above its limit, for every plastic and over the whole range", () => {
    for (const material of names) {
      const { high: to, low: from } = formingWindow({ material }).window
      for (let formingTemperature = Math.ceil(from) + 2; formingTemperature <= 260; formingTemperature += 7) {
        const outcome = coolingTime.attempt({ shape: "sheet", thickness: "3 mm", material, formingTemperature })
        if (!outcome.ok) throw outcome.error
        const codes = outcome.value.cautions.map((c) => c.code)
        expect(codes.includes("overheated"), `${material} at ${formingTemperature}`).toBe(formingTemperature > to)
        if (formingTemperature > to) expect(codes).toContain("fumes")
      }
    }
    const hot = coolingTime({ shape: "tube", outsideDiameter: "26.7 mm", thickness: "2.9 mm", material: "pvc", formingTemperature: 260 })
    expect(hot.cautions.slice(0, 2).map((c) => [c.code, c.severity])).toEqual([
      ["overheated", "warning"],
      ["hydrogen-chloride", "warning"],
    ])
  })

  it("heats preheated sand's pipe by a source that only arrives long after heat has crossed it", () => {
    // Biot number of 0.02: the core arrives after fifty crossing times and more
    const out = heatingTime({
      shape: "tube",
      outsideDiameter: "20 mm",
      thickness: "2 mm",
      material: "pvc",
      filling: "dry-sand",
      sandTemperature: 30,
      heatSource: "oven",
      sourceTemperature: 112,
      filmCoefficient: 0.5,
    })
    const layers = [
      { thickness: 0.008, conductivity: 0.27, heatCapacity: 1515 * 800 },
      { thickness: 0.002, conductivity: 0.16, heatCapacity: 1400 * 1000 },
    ]
    const body = { shape: "cylinder", start: 0, layers, inside: 0, outside: 0.5 } as const
    const [, bore] = finiteVolume(body, { inside: 20, outside: 112, initial: [30, 20] }, out.time) as [number, number, number]
    expect(Math.abs(bore - 107.2) / 92).toBeLessThan(1e-4)
  })
})

describe("tubes: times do not jump", () => {
  it("working and holding times rise with the wall, over fine sweeps of walls and diameters", () => {
    for (const outsideDiameter of [0.0267, 0.15, 0.3, 0.004]) {
      let [work, hold] = [0, 0]
      for (let i = 0; i <= 70; i++) {
        const thickness = Math.max(1e-4, outsideDiameter * 0.004) * (0.4 / 0.004) ** (i / 70) * (outsideDiameter < 0.025 ? 0.02 / 0.4 : 1)
        if (!(thickness >= 1e-4 && thickness < Math.min(0.1, 0.48 * outsideDiameter))) continue
        const out = coolingTime({ shape: "tube", outsideDiameter, thickness, material: "pvc", formingTemperature: 130 })
        expect(out.workingTime, `${outsideDiameter} × ${thickness}`).toBeGreaterThan(work * (1 - 1e-9))
        expect(out.holdTime).toBeGreaterThan(hold)
        work = out.workingTime
        hold = out.holdTime
      }
    }
  })

  it("a millionth on the wall changes nothing to speak of, for random tubes", () => {
    fc.assert(
      fc.property(
        fc.double({ min: Math.log(1e-3), max: Math.log(0.3), noNaN: true }),
        fc.double({ min: Math.log(4e-3), max: Math.log(0.47), noNaN: true }),
        (size, share) => {
          const outsideDiameter = Math.exp(size)
          const thickness = Math.min(0.0999, Math.max(1e-4, outsideDiameter * Math.exp(share)))
          if (!(thickness < 0.48 * outsideDiameter)) return
          const of = (wall: number) =>
            coolingTime({ shape: "tube", outsideDiameter, thickness: wall, material: "pvc", formingTemperature: 130 })
          const [a, b] = [of(thickness), of(thickness * (1 + 1e-6))]
          for (const key of ["workingTime", "plannedWorkingTime", "holdTime", "plannedHoldTime"] as const)
            expect(Math.abs(b[key] / a[key] - 1)).toBeLessThan(1e-5)
        },
      ),
      { numRuns: 40 },
    )
  })

  it("agrees with finite volumes for thin walls, where the roots used to be found twice", () => {
    for (const [diameter, thickness] of [
      [0.0267, 0.00098],
      [0.15, 0.001],
      [0.3, 0.0012],
    ] as const) {
      const properties = { conductivity: 0.16, density: 1400, specificHeat: 1000 }
      const out = coolingTime({
        shape: "tube",
        outsideDiameter: diameter,
        thickness,
        material: "pvc",
        formingTemperature: 130,
        ...properties,
      })
      const body = {
        shape: "cylinder",
        start: diameter / 2 - thickness,
        layers: [{ thickness, conductivity: 0.16, heatCapacity: 1.4e6 }],
        inside: 0,
        outside: 15,
      } as const
      const [, skin] = finiteVolume(body, { inside: 20, outside: 20, initial: [130] }, out.workingTime) as [number, number]
      expect(Math.abs(skin - 107.2) / 110).toBeLessThan(1e-5)
    }
  })
})
