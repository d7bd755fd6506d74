import fc from "fast-check"
import { describe, expect, it } from "vitest"
import { conductor, harness, type Stranding, voltageDrop } from "../../src/wire/index.js"

const wires = fc.record({
  awg: fc.integer({ min: -3, max: 40 }),
  conductorTemperature: fc.double({ min: -50, max: 200, noNaN: true }),
  length: fc.double({ min: 0.01, max: 100, noNaN: true }),
})

describe("conductor", () => {
  it("agrees with the inch tables' way: 10.371 ohm·cmil/ft over the square of the mils, (234.5 + T)/254.5, over all sizes and temperatures", () => {
    let worst = 0
    fc.assert(
      fc.property(wires, ({ awg, conductorTemperature, length }) => {
        const mils = 1000 * 0.46 * (0.005 / 0.46) ** ((awg + 3) / 39)
        const feet = length / 0.3048
        const ohms = ((10.371 * feet) / mils ** 2) * ((234.5 + conductorTemperature) / 254.5)
        worst = Math.max(worst, Math.abs(conductor({ awg, conductorTemperature, length }).resistance / ohms - 1))
      }),
      { numRuns: 500, seed: 71 },
    )
    // 10.371 and 234.5 are printed to four and five figures
    expect(worst).toBeLessThan(2e-4)
  })

  it("weighs what resistance and mass resistivity say: R·m/L² = 0.15328 ohm·g/m² for solid copper at 20 °C", () => {
    fc.assert(
      fc.property(wires, ({ awg, length }) => {
        const { resistance, mass } = conductor({ awg, length })
        expect(Math.abs((resistance * mass * 1000) / length ** 2 / 0.15328 - 1)).toBeLessThan(5e-5)
      }),
    )
  })

  it("takes the IEC classes only in copper and only at their nominal areas", () => {
    const faults = (input: object) => {
      const outcome = conductor.attempt(input)
      return outcome.ok || !("issues" in outcome.error) ? [] : outcome.error.issues.map((i) => i.path.join("."))
    }
    expect(faults({ area: "1.2 mm2", stranding: "class5" })).toEqual(["area"])
    expect(faults({ awg: 18, stranding: "class2" })).toEqual(["awg"])
    expect(faults({ area: "1.5 mm2", stranding: "class5", material: "aluminium" })).toEqual(["material"])
    const by = (stranding: Stranding) => conductor({ area: "1.5 mm2", stranding }).resistance
    expect(by("solid")).toBeLessThan(by("class2"))
    expect(by("class2")).toBeLessThan(by("class5"))
    expect(by("class5")).toBeLessThan(by("class5-tinned"))
  })
})

describe("voltageDrop", () => {
  it("agrees with the same run as a harness of wires and contacts, to 1e-12", () => {
    let worst = 0
    fc.assert(
      fc.property(wires, fc.double({ min: 0.01, max: 20, noNaN: true }), fc.integer({ min: 0, max: 6 }), (wire, current, contacts) => {
        const run = voltageDrop({ ...wire, current, contacts, sourceVoltage: 1000 })
        const net = harness({
          sources: [{ name: "source", positive: "n0", negative: "z", sourceVoltage: 1000 }],
          wires: [
            { name: "out", from: `n${contacts}`, to: "load", ...wire },
            { name: "back", from: "return", to: "z", ...wire },
          ],
          contacts: Array.from({ length: contacts }, (_, i) => ({ name: `c${i}`, from: `n${i}`, to: `n${i + 1}`, resistance: 0.005 })),
          currentLoads: [{ name: "l", from: "load", to: "return", current }],
        })
        worst = Math.max(worst, Math.abs((run.loadVoltage as number) - net.minLoadVoltage) / 1000)
      }),
      { numRuns: 300, seed: 72 },
    )
    expect(worst).toBeLessThan(1e-12)
  })

  it("never drops more with a thicker wire, and drops more when warm", () => {
    fc.assert(
      fc.property(wires, ({ awg, conductorTemperature, length }) => {
        const drop = (change: object) => voltageDrop({ awg, conductorTemperature, length, current: 2, ...change }).drop
        expect(drop({ awg: Math.max(-3, awg - 1) })).toBeLessThanOrEqual(drop({}))
        expect(drop({ conductorTemperature: 200 })).toBeGreaterThanOrEqual(drop({}))
      }),
    )
  })
})
