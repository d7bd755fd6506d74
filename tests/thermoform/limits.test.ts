import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { type Plastic, plastics } from "../../src/thermoform/data.js"
import { coolDown, formingWindow, type HeatThroughInput, heatThrough } from "../../src/thermoform/index.js"
import { finiteVolume } from "./finite-volume.js"

const names = Object.keys(plastics) as Plastic[]

/** Heating over the whole declared range, wide of what is usual. */
const heating = fc.record({
  plastic: fc.constantFrom(...names),
  form: fc.constantFrom("sheet", "rod", "tube"),
  size: fc.double({ min: Math.log(1e-4), max: Math.log(0.1), noNaN: true }),
  share: fc.double({ min: 0.01, max: 0.48, noNaN: true }),
  source: fc.constantFrom("oven", "heatGun", "radiant"),
  // spread by hand: drawn numbers favour their ends
  above: fc.integer({ min: 1, max: 96 }).map((i) => 3 + 3 * ((i * 61) % 97)),
  film: fc.option(fc.double({ min: 0.5, max: 20000, noNaN: true })),
  faces: fc.constantFrom(1, 2),
})

function inputOf(h: typeof heating extends fc.Arbitrary<infer T> ? T : never): HeatThroughInput {
  const size = Math.exp(h.size)
  const diameter = Math.min(0.3, Math.max(1e-3, size / h.share))
  const shape =
    h.form === "sheet"
      ? { form: "sheet" as const, thickness: size, faces: h.faces }
      : h.form === "rod"
        ? { form: "rod" as const, diameter }
        : { form: "tube" as const, diameter, thickness: Math.max(1e-4, Math.min(diameter * h.share, 0.1)) }
  const { from } = formingWindow({ plastic: h.plastic })
  return { ...shape, plastic: h.plastic, source: h.source as "oven", sourceTemperature: Math.min(1200, from + h.above), film: h.film }
}

describe("advice never passes a limit of its own", () => {
  it("over the declared range of plastics, sizes, sources and films", () => {
    let answered = 0
    let orders = 0
    fc.assert(
      fc.property(heating, (h) => {
        const input = inputOf(h)
        const outcome = heatThrough.attempt(input)
        if (!outcome.ok) return
        answered++
        const out = outcome.value
        const codes = out.cautions.map((c) => c.code)
        // the surface's earliest time is no later than the usual, and a core that comes later than it is said to be late
        if (out.surfaceTime !== null) expect(out.surfaceTimeShort as number).toBeLessThanOrEqual(out.surfaceTime * (1 + 1e-9))
        expect(out.surfaceFirst).toBe(out.surfaceTimeShort !== null && out.surfaceTimeShort < out.timeLong)
        expect(codes.includes("surface-first")).toBe(out.surfaceFirst)
        if (out.surfaceTimeShort !== null && !out.surfaceFirst) expect(codes).toContain("take-out-in-time")
        // a source that may char is never passed over in silence
        const { scorch, upper, to } = formingWindow({ plastic: h.plastic })
        const ceiling = scorch?.low ?? upper.high
        expect(codes.includes("source-chars")).toBe(out.equivalent > ceiling)
        if (h.source !== "radiant" && out.sourceLimit !== null) {
          expect(out.sourceLimit).toBeLessThanOrEqual(ceiling * (1 + 1e-12))
          // the hottest source named is itself no source that overheats
          const there = heatThrough.attempt({ ...input, sourceTemperature: out.sourceLimit - 1e-3 })
          if (there.ok) expect(there.value.surfaceFirst).toBe(false)
        }
        if (out.advisedSource !== null) {
          orders++
          expect(out.advisedTimeShort as number).toBeLessThanOrEqual(out.advisedTimeLong as number)
          const hot = heatThrough.attempt({ ...input, sourceTemperature: out.advisedSource + 5 - 1e-6 })
          if (hot.ok) expect([hot.value.surfaceTimeShort, hot.value.surfaceFirst]).toEqual([null, false])
          if (h.source !== "radiant") expect(out.advisedSource + 5).toBeLessThanOrEqual(to + 1e-9)
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
        const input = { form: "sheet", thickness, plastic: plastic as Plastic, source: "oven", sourceTemperature: 200 } as const
        const spread = heatThrough(input)
        const one = heatThrough({ ...input, conductivity: k as number, density: rho as number, specificHeat: c as number })
        expect(one.surfaceTime as number).toBeGreaterThanOrEqual((spread.surfaceTimeShort as number) * (1 - 1e-9))
        expect(one.time).toBeLessThanOrEqual(spread.timeLong * (1 + 1e-9))
        expect(one.time).toBeGreaterThanOrEqual(spread.timeShort * (1 - 1e-9))
      }),
      { numRuns: 40 },
    )
  })

  it("calls no 245 °C oven workable for PVC, whose browning begins at 160 °C", () => {
    const pipe = { form: "tube", diameter: "26.7 mm", thickness: "2.9 mm", plastic: "pvc", source: "oven" } as const
    for (const sourceTemperature of [161, 201, 245]) {
      const out = heatThrough({ ...pipe, sourceTemperature })
      expect(out.sourceLimit as number).toBeLessThanOrEqual(160)
      expect(out.cautions[0]?.severity).toBe("warning")
      expect(out.cautions.map((c) => c.code)).toContain("source-chars")
    }
  })

  it("says so when a part leaves the heat above its limit, for every plastic and over the whole range", () => {
    for (const plastic of names) {
      const { to, from } = formingWindow({ plastic })
      for (let formed = Math.ceil(from) + 2; formed <= 260; formed += 7) {
        const outcome = coolDown.attempt({ form: "sheet", thickness: "3 mm", plastic, formed })
        if (!outcome.ok) throw outcome.error
        const codes = outcome.value.cautions.map((c) => c.code)
        expect(codes.includes("overheated"), `${plastic} at ${formed}`).toBe(formed > to)
        if (formed > to) expect(codes).toContain("ventilation")
      }
    }
    const hot = coolDown({ form: "tube", diameter: "26.7 mm", thickness: "2.9 mm", plastic: "pvc", formed: 260 })
    expect(hot.cautions.slice(0, 2).map((c) => [c.code, c.severity])).toEqual([
      ["overheated", "warning"],
      ["hydrogen-chloride", "warning"],
    ])
  })

  it("heats preheated sand's pipe by a source that only arrives long after heat has crossed it", () => {
    // Biot number of 0.02: the core arrives after fifty crossing times and more
    const out = heatThrough({
      form: "tube",
      diameter: "20 mm",
      thickness: "2 mm",
      plastic: "pvc",
      filling: "drySand",
      sandTemperature: 30,
      source: "oven",
      sourceTemperature: 112,
      film: 0.5,
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
    for (const diameter of [0.0267, 0.15, 0.3, 0.004]) {
      let [work, hold] = [0, 0]
      for (let i = 0; i <= 70; i++) {
        const thickness = Math.max(1e-4, diameter * 0.004) * (0.4 / 0.004) ** (i / 70) * (diameter < 0.025 ? 0.02 / 0.4 : 1)
        if (!(thickness >= 1e-4 && thickness < Math.min(0.1, 0.48 * diameter))) continue
        const out = coolDown({ form: "tube", diameter, thickness, plastic: "pvc", formed: 130 })
        expect(out.working, `${diameter} × ${thickness}`).toBeGreaterThan(work * (1 - 1e-9))
        expect(out.hold).toBeGreaterThan(hold)
        work = out.working
        hold = out.hold
      }
    }
  })

  it("a millionth on the wall changes nothing to speak of, for random tubes", () => {
    fc.assert(
      fc.property(
        fc.double({ min: Math.log(1e-3), max: Math.log(0.3), noNaN: true }),
        fc.double({ min: Math.log(4e-3), max: Math.log(0.47), noNaN: true }),
        (size, share) => {
          const diameter = Math.exp(size)
          const thickness = Math.min(0.0999, Math.max(1e-4, diameter * Math.exp(share)))
          if (!(thickness < 0.48 * diameter)) return
          const of = (wall: number) => coolDown({ form: "tube", diameter, thickness: wall, plastic: "pvc", formed: 130 })
          const [a, b] = [of(thickness), of(thickness * (1 + 1e-6))]
          for (const key of ["working", "workingSafe", "hold", "holdSafe"] as const)
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
      const out = coolDown({ form: "tube", diameter, thickness, plastic: "pvc", formed: 130, ...properties })
      const body = {
        shape: "cylinder",
        start: diameter / 2 - thickness,
        layers: [{ thickness, conductivity: 0.16, heatCapacity: 1.4e6 }],
        inside: 0,
        outside: 15,
      } as const
      const [, skin] = finiteVolume(body, { inside: 20, outside: 20, initial: [130] }, out.working) as [number, number]
      expect(Math.abs(skin - 107.2) / 110).toBeLessThan(1e-5)
    }
  })
})
