import { describe, expect, it } from "vitest"
import { airTravel, powerBank, runtime } from "../../src/pack/index.js"
import { isNoSolution } from "../../src/solver/index.js"

describe("airTravel", () => {
  it("keeps the limits themselves within, however the watt-hours come about", () => {
    const band = (nominalVoltage: number, ampereHours: number) => airTravel({ nominalVoltage, capacity: ampereHours * 3600 }).band
    for (const voltage of [3.2, 3.6, 3.7, 7.4, 10.8, 11.1, 14.8, 22.2]) {
      expect(band(voltage, 100 / voltage)).toBe("free")
      expect(band(voltage, 100.01 / voltage)).toBe("approval")
      expect(band(voltage, 160 / voltage)).toBe("approval")
      expect(band(voltage, 160.01 / voltage)).toBe("forbidden")
    }
  })

  it("never reads as permission", () => {
    for (const kind of ["lithium-ion", "lithium-metal", "dry"] as const) {
      const out = airTravel({ kind, energy: "20 Wh", lithiumMass: "1 g" })
      expect(out.cautions.map((c) => c.code)).toContain("rules-change")
      expect(out.verdict).not.toMatch(/\b(allowed|permitted|may fly)\b/)
    }
    expect(airTravel({ kind: "lithium-metal", lithiumMass: "9 g" }).band).toBe("forbidden")
    // between 2 g and 8 g is for medical devices alone, which a costume is not
    const medical = airTravel({ kind: "lithium-metal", lithiumMass: "5 g" })
    expect([medical.band, medical.cautions.map((c) => c.code)]).toEqual(["approval", expect.arrayContaining(["medical-only"])])
    expect(medical.verdict).toMatch(/medical/)
    expect(airTravel({ energy: "120 Wh", count: 3 }).countWithin).toBe(false)
  })
})

describe("powerBank", () => {
  it("runs as long as the cells emptied at the power taken from them, without resistance", () => {
    let worst = 0
    for (const power of [0.6, 3, 9])
      for (const bankEfficiency of [0.8, 0.95])
        for (const stepUp of [null, 0.85]) {
          const out = powerBank.si(
            powerBank.read({
              capacity: 36000,
              bankEfficiency,
              power,
              ...(stepUp === null ? {} : { loadVoltage: 12, stepUpEfficiency: stepUp }),
            }),
          )
          const cells = runtime.si(
            runtime.read({
              series: 1,
              parallel: 1,
              capacity: 36000,
              resistance: 0,
              cutOffVoltage: 0.1,
              curve: [
                { stateOfCharge: 0, voltage: 3.7 - 1e-6 },
                { stateOfCharge: 1, voltage: 3.7 + 1e-6 },
              ],
              pattern: [{ power: power / bankEfficiency / (stepUp ?? 1) }],
            }),
          )
          if (isNoSolution(out) || isNoSolution(cells)) throw new Error("both should answer")
          worst = Math.max(worst, Math.abs((out.runtime as number) / cells.runtime - 1))
        }
    expect(worst).toBeLessThan(1e-6)
  })

  it("switches off at small loads and says what keeps it on", () => {
    const sleepy = powerBank({ capacity: "10 Ah", current: "40 mA", switchOffCurrent: "0.1 A" })
    expect(sleepy.staysOn).toBe(false)
    // 60 mA short of 100 mA, at 5 V
    expect(sleepy.keepOnPower).toBeCloseTo(0.3, 12)
    expect(powerBank({ capacity: "10 Ah", power: sleepy.loadPower + sleepy.keepOnPower }).staysOn).toBe(true)
  })

  it("refuses more than the port gives, and names what reaches the load", () => {
    const input = { capacity: 36000, loadVoltage: 12, power: 30, portLimit: 2.4 }
    const refusal = powerBank.si(powerBank.read(input))
    if (!isNoSolution(refusal)) throw new Error("should refuse")
    expect(isNoSolution(powerBank.si(powerBank.read({ ...input, power: refusal.nearest.power as number })))).toBe(false)
  })
})
