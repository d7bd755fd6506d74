import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { conductorSize, ledRun, wireHeating } from "../../src/wire/index.js"
import { areaOf, inStillAir, perMetre, type Size, settles } from "./second.js"

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true })

describe("conductorSize past the temperature that burns insulation off", () => {
  it("tells of every size its drop where it settles below 300 °C, and none where it does not", () => {
    let [burnt, kept] = [0, 0]
    fc.assert(
      fc.property(
        between(10, 90),
        between(0.2, 4),
        between(5, 24),
        fc.constantFrom("copper", "aluminium"),
        fc.constantFrom("awg", "metric"),
        (current, length, sourceVoltage, material, sizeSystem) => {
          const outcome = conductorSize.attempt({ current, length, sourceVoltage, material, sizeSystem })
          if (!outcome.ok) return
          for (const c of outcome.value.candidates) {
            const size: Size = { awg: c.awg, area: c.awg === null ? c.area : null, material, stranding: "solid" }
            expect(Math.abs(c.area / areaOf(size) - 1)).toBeLessThan(1e-12)
            const hot = settles(size, inStillAir, current)
            if (Math.abs(hot - 300) < 0.01) continue
            if (hot > 300) {
              burnt++
              expect(c.dropShare, `${hot} °C`).toBeNull()
              continue
            }
            kept++
            expect(c.dropShare).not.toBeNull()
            // out and back
            const drop = (current * 2 * length * perMetre(size, hot)) / sourceVoltage
            expect(Math.abs((c.dropShare as number) / drop - 1)).toBeLessThan(1e-6)
          }
        },
      ),
      { numRuns: 40, seed: 41 },
    )
    expect(Math.min(burnt, kept)).toBeGreaterThan(30)
  })
})

describe("wireHeating's nearest current", () => {
  it("answers for insulation rated to the very temperature that burns it", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 10, max: 34 }),
        fc.constantFrom("free-air", "padding"),
        between(0, 40),
        (awg, arrangement, ambientTemperature) => {
          const input = { current: 900, awg, arrangement, ambientTemperature, insulationRating: 300 }
          const refused = wireHeating.attempt(input)
          expect(refused.ok).toBe(false)
          if (refused.ok || !("nearest" in refused.error)) return
          const current = refused.error.nearest.current as number
          const near = wireHeating.attempt({ ...input, current })
          expect(near.ok).toBe(true)
          expect(wireHeating.attempt({ ...input, current: current * 1.0001 }).ok).toBe(false)
        },
      ),
      { numRuns: 60, seed: 42 },
    )
  })
})

describe("ledRun's feeds", () => {
  it("have the voltage of the light at their place", () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 1, max: 16 }), { minLength: 1, maxLength: 4 }),
        fc.array(between(11.5, 12.5), { minLength: 4, maxLength: 4 }),
        fc.array(between(0.01, 0.5), { minLength: 4, maxLength: 4 }),
        between(0.2, 2),
        (places, volts, ohms, current) => {
          const feeds = places.map((p, i) => ({ position: p / 4, sourceVoltage: volts[i] as number, feederResistance: ohms[i] as number }))
          const run = ledRun({ length: 4, current, lightCount: 16, trackResistance: 0.05, feeds })
          for (const feed of run.feeds) {
            const light = run.profile.find((p) => p.position === feed.position)
            expect(Math.abs(feed.voltage - (light?.voltage as number))).toBeLessThan(1e-9)
          }
        },
      ),
      { numRuns: 100, seed: 43 },
    )
  })
})
